"""Tells what a pupil's answer shows.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, say


def add_diagnose(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "diagnose",
        _diagnose,
        "tell what a pupil's answer to a question shows: right, or the mistake that leads to it",
        'typeset diagnose content/harbour-festival tuesday 4 "180 gulls"',
    )
    parser.add_argument("week", type=Path, metavar="FOLDER", help="the folder with week.yaml")
    parser.add_argument("lesson", metavar="LESSON", help="such as tuesday")
    parser.add_argument("question", metavar="QUESTION", help="its number on the sheet, or its id")
    parser.add_argument("answer", nargs="+", metavar="ANSWER", help="as the pupil wrote it")


def _diagnose(options: argparse.Namespace) -> int:
    from typeset.arithmetic.building import solve_week
    from typeset.documents.diagnosis_text import diagnosis_text
    from typeset.reading.week import read_week

    solved = solve_week(read_week(options.week))
    say(diagnosis_text(solved, options.lesson, options.question, " ".join(options.answer)))
    return DONE
