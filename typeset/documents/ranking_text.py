"""The problems of a lesson ranked by difficulty, as plain text for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.lessons import SolvedLesson
from typeset.arithmetic.ranking import rank


def ranking_lines(lesson: SolvedLesson) -> Iterator[str]:
    """'By difficulty, easiest first', each problem with what makes it harder than the last."""
    problems = lesson.problems()
    if len(problems) < 2:
        return
    yield "By difficulty, easiest first:"
    for each in rank([problem.solution for problem in problems]):
        place = f"{each.rank}=" if each.is_tie else f"{each.rank}."
        reason = f": {each.reason}" if each.reason else ""
        yield f"   {place:<4}question {problems[each.index].number}{reason}"
