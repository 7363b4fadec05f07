"""Whether what a pupil wrote says the answer: right, right but for its form or unit, or not.

Equivalent forms are right (1/2, 0.5 and 2/4; 1,500 g and 1.5 kg). A ratio that is not in
simplest form is said to be so. A counted thing needs no noun, a measure needs its unit.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer, WithRemainder
from typeset.arithmetic.diagnosis.marking_money import mark_pounds, money_value
from typeset.arithmetic.diagnosis.verdicts import Mark, Verdict, best
from typeset.arithmetic.diagnosis.written import (
    Reading,
    WrittenMeasure,
    WrittenName,
    WrittenNumber,
    WrittenRatio,
    WrittenRemainder,
    WrittenTime,
    name_words,
)
from typeset.arithmetic.diagnosis.written_units import measure_of, same_noun, without_fillers
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension

_DAY = 1440
_HALF_DAY = 720
_COUNTED = {Dimension.NUMBER, Dimension.COUNT}
_SAME = {"same", "equal", "equals", "both", "neither"}
_RIGHT = Mark(Verdict.RIGHT)


def mark(readings: Iterable[Reading], answer: AnswerValue) -> Mark | None:
    """The best mark that any way of reading earns; None where none of them says the answer."""
    return best([_mark_one(each, answer) for each in readings])


def number_meant(readings: Iterable[Reading], answer: Amount) -> Fraction | None:
    """The number that was written, in the answer's own unit; None where there is none."""
    for each in readings:
        match each:
            case WrittenMeasure(amount=amount) if amount.unit.dimension is answer.unit.dimension:
                return amount.base / answer.unit.per_base
            case WrittenTime(minutes=minutes) if answer.unit.dimension is Dimension.CLOCK:
                return Fraction(minutes)
            case WrittenNumber() if answer.unit.dimension is not Dimension.CLOCK:
                return _in_unit_of(each, answer)
    return None


def can_be_read(readings: Iterable[Reading], answer: AnswerValue) -> bool:
    """True where some way of reading is of a kind that could answer the question."""
    if isinstance(answer, NameAnswer):
        return any(isinstance(each, WrittenName) and each.words for each in readings)
    return any(not isinstance(each, WrittenName) for each in readings)


def _mark_one(reading: Reading, answer: AnswerValue) -> Mark | None:
    match answer, reading:
        case Amount(), WrittenNumber():
            return _mark_number(reading, answer)
        case Amount(), WrittenMeasure(amount=amount):
            return _RIGHT if amount.same_as(answer) else None
        case Amount(), WrittenTime():
            return _mark_time(reading, answer)
        case Amount(), WrittenRemainder(groups=groups, rest=rest):
            return _RIGHT if not rest and groups == answer.value else None
        case RatioAnswer(parts=parts), WrittenRatio(parts=written):
            return _mark_ratio(written, parts)
        case WithRemainder(groups=groups, rest=rest), WrittenRemainder():
            same = (reading.groups, reading.rest) == (groups.value, rest.value)
            return _RIGHT if same else None
        case WithRemainder(groups=groups, rest=rest), WrittenNumber(value=value):
            if value != groups.value:
                return None
            return _RIGHT if not rest.value else Mark(Verdict.PART_RIGHT, "what is left is missing")
        case NameAnswer(name=name), WrittenName(words=words):
            return _mark_name(words, name)
        case _:
            return None


def _mark_number(written: WrittenNumber, answer: Amount) -> Mark | None:
    dimension = answer.unit.dimension
    if dimension is Dimension.CLOCK:
        return None
    if dimension is Dimension.MONEY:
        return mark_pounds(written, answer)
    unit = without_fillers(written.unit)
    if written.pound:
        return Mark(Verdict.UNIT_WRONG) if written.value == answer.value else None
    if not unit:
        return _mark_bare(written.value, answer)
    if _converted(written.value, unit, answer):
        return _RIGHT
    if written.value != answer.value:
        return None
    return _RIGHT if _unit_will_do(unit, answer) else Mark(Verdict.UNIT_WRONG)


def _converted(value: Fraction, unit: str, answer: Amount) -> bool:
    measure = measure_of(unit)
    same = measure is not None and measure.dimension is answer.unit.dimension
    return same and measure is not None and value * measure.per_base == answer.base


def _unit_will_do(unit: str, answer: Amount) -> bool:
    """Any noun does for a plain number, the thing's own noun for what is counted."""
    if answer.unit.dimension is Dimension.NUMBER:
        return measure_of(unit) is None
    return answer.unit.dimension is Dimension.COUNT and same_noun(unit, answer.unit)


def _mark_bare(value: Fraction, answer: Amount) -> Mark | None:
    """A number without a unit: enough for things that are counted, not for a measure."""
    if value == answer.value:
        return _RIGHT if answer.unit.dimension in _COUNTED else Mark(Verdict.UNIT_MISSING)
    if answer.unit.dimension is Dimension.PERCENT and value == answer.base:
        return Mark(Verdict.RIGHT, "not written as a percentage")
    return None


def _mark_time(written: WrittenTime, answer: Amount) -> Mark | None:
    if answer.unit.dimension is Dimension.TIME:
        same = 60 * written.minutes == answer.base and not written.half
        note = "a length of time written like a time of day"
        return Mark(Verdict.UNIT_MISSING, note) if same else None
    if answer.unit.dimension is not Dimension.CLOCK:
        return None
    minutes, wanted = written.minutes, answer.value % _DAY
    if written.half:
        minutes = minutes % _HALF_DAY + (_HALF_DAY if written.half == "p" else 0)
    if minutes == wanted:
        return _RIGHT
    if (minutes - wanted) % _HALF_DAY:
        return None
    if written.half:
        return Mark(Verdict.UNIT_WRONG, "morning and afternoon exchanged")
    return Mark(Verdict.UNIT_MISSING, "morning or afternoon is not said")


def _mark_ratio(written: tuple[Fraction, ...], parts: tuple[Fraction, ...]) -> Mark | None:
    if written == parts:
        return _RIGHT
    if len(written) != len(parts):
        return None
    scales = {mine / theirs for mine, theirs in zip(written, parts, strict=True)}
    return Mark(Verdict.NOT_SIMPLEST) if len(scales) == 1 else None


def _mark_name(words: tuple[str, ...], name: str) -> Mark | None:
    """A name may be shortened or spoken about, but not to the noun that all choices share."""
    wanted = name_words(name)
    if set(wanted) & _SAME:
        return _RIGHT if set(words) & _SAME else None
    if set(wanted) <= set(words) and not set(words) & {"not", "or"}:
        return _RIGHT
    shortened = set(words) < set(wanted) and set(words) != set(wanted[-1:])
    return _RIGHT if words and shortened else None


def _in_unit_of(written: WrittenNumber, answer: Amount) -> Fraction:
    if answer.unit.dimension is Dimension.MONEY:
        return money_value(written)
    measure = measure_of(without_fillers(written.unit))
    if measure is not None and measure.dimension is answer.unit.dimension:
        return written.value * measure.per_base / answer.unit.per_base
    return written.value
