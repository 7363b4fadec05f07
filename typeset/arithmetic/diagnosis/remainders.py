"""A remainder written as a part of a group: 12 1/2 or 12.5 for 12 r 18, where 36 fill one."""

from __future__ import annotations

from collections.abc import Iterable

from typeset.arithmetic.answers import AnswerValue, WithRemainder
from typeset.arithmetic.diagnosis.marking import mark
from typeset.arithmetic.diagnosis.verdicts import Mark, Verdict
from typeset.arithmetic.diagnosis.written import Reading, WrittenNumber
from typeset.quantities.amount import Amount

_AS_PART = Mark(Verdict.OTHER_FORM, "what is left is written as a part of a group")


def mark_with_parts(
    readings: tuple[Reading, ...], value: AnswerValue, givens: Iterable[Amount]
) -> Mark | None:
    """As `mark`; a rest may also be written as a part of any of the story's amounts."""
    plain = mark(readings, value)
    if plain is not None or not isinstance(value, WithRemainder):
        return plain
    numbers = {each.value for each in readings if isinstance(each, WrittenNumber)}
    for given in givens:
        if given.base and value.groups.value + value.rest.base / given.base in numbers:
            return _AS_PART
    return None
