"""Clock faces for the support version: where the hands stand at the start and at the end."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.figures import ClockFace, ClockFaces, Mark
from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write

# Once round the face, in minutes.
_ROUND = 720


def clocks_for(problem: Problem[Any], answers: Mapping[str, AnswerValue]) -> ClockFaces | None:
    """A face for the start and one for the end of a time; None for any other problem.

    What is asked for is not shown: neither its time nor its hands.
    """
    if problem.family != "elapsed time":
        return None
    # Here, where the family of this problem is loaded, and no other for its sake.
    from typeset.arithmetic.families.elapsed_view import DURATION, END, START

    known = {**problem.givens, **answers}
    start, end, duration = (known.get(name) for name in (START, END, DURATION))
    if not all(isinstance(each, Amount) for each in (start, end, duration)):
        return None
    assert isinstance(start, Amount) and isinstance(end, Amount) and isinstance(duration, Amount)
    given = problem.givens
    return ClockFaces(
        (_face(start, START, START in given), _face(end, END, END in given)),
        between=Mark((write(duration),), is_given=DURATION in given),
    )


def _face(time: Amount, name: str, is_given: bool) -> ClockFace:
    mark = Mark((write(time),), is_given=is_given)
    return ClockFace(time.value % _ROUND, mark, name, hands_given=is_given)
