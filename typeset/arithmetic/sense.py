"""Answers that make sense, and mistakes that a pupil could make and a teacher could use."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue, answer_text, same_answer
from typeset.arithmetic.equations import Expression, Operation, Remainder
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import plain
from typeset.quantities.units import Dimension
from typeset.quantities.writing import decimal

_MAY_BE_NEGATIVE = {Dimension.TEMPERATURE, Dimension.NUMBER}
# A pupil who reaches a number this many times too large or too small would see it, and so
# would every reader of the sheet (common practice, no source).
_MOST_TIMES = 20
# These mistakes are known by the size of their answers: a hundred or a thousand times too
# much is what a wrong unit gives, and a multiple is much larger than a factor by nature.
_OF_ANY_SIZE = {
    "unit not converted",
    "unit converted by the wrong number",
    "factor and multiple exchanged",
    "numerator and denominator exchanged",
}
# Twelfths are the finest parts that pupils of these years meet, thousandths the finest
# decimals (national curriculum, Years 5 and 6).
_FINEST_PART = 12
_MOST_PLACES = 3
# Of a length of time only halves and quarters are said as parts.
_PARTS_OF_TIME = {1, 2, 4}
_DECIMAL = {
    Dimension.LENGTH,
    Dimension.MASS,
    Dimension.CAPACITY,
    Dimension.AREA,
    Dimension.VOLUME,
    Dimension.TEMPERATURE,
    Dimension.PERCENT,
    Dimension.ANGLE,
}


def check_answers(problem: Problem[Any], answers: Mapping[str, AnswerValue]) -> None:
    """Raises AmountError for a part of a person or thing, or less than none of it."""
    for name, answer in answers.items():
        fault = nonsense(answer, problem.fields.may_be_cut)
        if fault:
            raise AmountError(
                f"the answer for '{name}' would be {plain(answer_text(answer))}, {fault}",
                _remedy(answer),
            )


def _remedy(answer: AnswerValue) -> str:
    if isinstance(answer, Amount) and answer.unit.dimension is Dimension.MONEY and answer.value > 0:
        return "choose other numbers, or write 'round to: the nearest penny'"
    return "choose other numbers"


def nonsense(answer: AnswerValue, may_be_cut: bool) -> str:
    """Why the answer makes no sense; empty where it does.

    `may_be_cut` allows a part of a counted thing (half an onion).
    """
    if not isinstance(answer, Amount):
        return ""
    dimension = answer.unit.dimension
    if answer.value.numerator < 0 and dimension not in _MAY_BE_NEGATIVE:
        return "which is less than nothing"
    if dimension is Dimension.COUNT and not answer.is_whole and not may_be_cut:
        return f"which is not a whole number of {answer.unit.plural}"
    if dimension is Dimension.MONEY and (answer.value * 100).denominator != 1:
        return "which is not a whole number of pence"
    return ""


def why_not_usable(
    mistake: MistakenWorking, problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> str:
    """Why this mistake must not be shown with these numbers; empty where it may.

    It is refused where it would give the right answer, nothing, less than nothing or a part
    of a thing; where its answer is out of all proportion to the right one (see `_MOST_TIMES`)
    or more than 100% where the right one is not; and where its answer, or a number on the
    way to it, is too unwieldy for a pupil to have written (a group that does not fill once
    is among them: nobody goes on from 0 remainder 125 g).
    """
    reached = {name: value for name, value in mistake.answers.items() if name in answers}
    if all(same_answer(value, answers[name]) for name, value in reached.items()):
        return "it would give the right answer"
    for name, value in reached.items():
        fault = nonsense(value, problem.fields.may_be_cut) or _absurd(
            value, answers[name], mistake.misconception
        )
        if fault:
            return f"it would give {plain(answer_text(value))}, {fault}"
        if isinstance(value, Amount) and value.value == 0:
            return "it would give nothing at all"
    if problem.fields.round_to is not None:
        # The exact numbers on the way to a rounded answer are as they are.
        return ""
    return _unwieldy_on_the_way(mistake, answers.values())


def _absurd(value: AnswerValue, answer: AnswerValue, misconception: str) -> str:
    """Why a pupil would see at once that it is wrong, or could not have written it."""
    if not isinstance(value, Amount) or not isinstance(answer, Amount):
        return ""
    if is_unwieldy(value, (answer,)):
        return "which is too unwieldy a number"
    if value.unit.dimension is Dimension.PERCENT and answer.value <= 100 < value.value:
        return "which is more than the whole"
    if misconception in _OF_ANY_SIZE or not value.value or not answer.value:
        return ""
    if value.unit.dimension in (Dimension.TEMPERATURE, Dimension.CLOCK):
        return ""
    reached, right = abs(value.base), abs(answer.base)
    # Crosswise: reached ÷ right, without a fraction of fractions.
    over = reached.numerator * right.denominator
    under = reached.denominator * right.numerator
    if over > _MOST_TIMES * under:
        return f"more than {_MOST_TIMES} times the right answer"
    if over * _MOST_TIMES < under:
        return f"less than a {_MOST_TIMES}th of the right answer"
    return ""


def is_unwieldy(amount: Amount, beside: Iterable[AnswerValue] = ()) -> bool:
    """True for a number that no pupil of these years would write down.

    A number as fine as one of those `beside` it (the right answers) may be written.
    """
    under = amount.value.denominator
    known = [each.value.denominator for each in beside if isinstance(each, Amount)]
    if any(each % under == 0 for each in known):
        return False
    dimension = amount.unit.dimension
    if dimension is Dimension.MONEY:
        return (amount.value * 100).denominator != 1
    if dimension is Dimension.TIME:
        return under not in _PARTS_OF_TIME
    if amount.form is Form.FRACTION or (dimension not in _DECIMAL and amount.form is Form.AUTO):
        return under > _FINEST_PART
    return decimal(amount.value) is None or _is_too_fine(amount.value)


def _is_too_fine(value: Fraction) -> bool:
    return bool((value * 10**_MOST_PLACES).denominator != 1)


def _unwieldy_on_the_way(mistake: MistakenWorking, answers: Iterable[AnswerValue]) -> str:
    """Why a pupil would not have gone on from one of the numbers in between."""
    right = tuple(answers)
    for each in mistake.steps:
        for side in each.equation.sides[1:] if each.equation is not None else ():
            if isinstance(side, Remainder) and not side.quotient.value:
                return f"it would go through 0 remainder {plain(answer_text(side.rest))}"
            for amount in _amounts(side):
                if is_unwieldy(amount, right):
                    return f"it would go through {plain(answer_text(amount))}"
    return ""


def _amounts(side: Expression) -> Iterator[Amount]:
    match side:
        case Amount():
            yield side
        case Remainder(quotient=quotient, rest=rest):
            yield from (quotient, rest)
        case Operation(left=left, right=right):
            yield from _amounts(left)
            yield from _amounts(right)
        case _:
            return
