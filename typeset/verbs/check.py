"""Checks the content of a week.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, say, say_remarks


def add_check(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "check",
        _check,
        "check the content of a week, and list every complaint with its file and line",
        "typeset check content/harbour-festival",
    )
    parser.add_argument("week", type=Path, metavar="WEEK", help="the folder with week.yaml")


def _check(options: argparse.Namespace) -> int:
    from typeset.arithmetic.remarks import remarks_on
    from typeset.documents.solutions_text import drawn_text
    from typeset.documents.solved_week import solved_with_layouts

    versions, _layouts = solved_with_layouts(options.week, ())
    solved = versions.core
    say_remarks(remarks_on(solved))
    count = sum(len(lesson.problems()) for lesson in solved.lessons)
    lessons = len(solved.lessons)
    say(f"{options.week}: {lessons} lessons, {count} problems, nothing to complain about")
    for lesson in solved.lessons:
        for problem in lesson.problems():
            if problem.content.drawn:
                say(f"    {lesson.lesson.name}, {problem.number}: {drawn_text(problem)}")
    return DONE
