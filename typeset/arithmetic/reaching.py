"""Whether the steps of a working come to the answer that it claims.

A working that stops one step early would still carry the right answer in `answers`; on the
page nobody would see where it comes from. So every answer asked for has to stand in a step:
as a side of an equation, or in a sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer, WithRemainder
from typeset.arithmetic.equations import Equation, Expression, Operation, Parts, Remainder, value_of
from typeset.arithmetic.workings import Step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.quantities.units import Dimension
from typeset.quantities.writing import write_plain

# Minutes: a time of day may be reckoned out as minutes after midnight, and past the next one.
_DAY = 1440


def reaches(steps: Sequence[Step], answer: AnswerValue) -> bool:
    """True where some step comes to the answer."""
    # Most workings end with it, and equations are looked through faster than sentences.
    return any(_reckons(step, answer) for step in reversed(steps)) or any(
        _says(step, answer) for step in reversed(steps)
    )


def _reckons(step: Step, answer: AnswerValue) -> bool:
    """True where the equation of the step comes to the answer."""
    sides = _sides(step.equation)
    match answer:
        case Amount():
            return any(_is(side, answer) for side in sides)
        case WithRemainder(groups=groups, rest=rest):
            return any(_leaves(side, groups, rest) or _is(side, rest) for side in sides)
        case RatioAnswer(parts=parts):
            return any(isinstance(side, Parts) and _values(side) == tuple(parts) for side in sides)
        case NameAnswer():
            return False


def _says(step: Step, answer: AnswerValue) -> bool:
    """True where the sentence of the step says the answer."""
    told = plain(step.sentence).lower()
    match answer:
        case Amount():
            return _told(told, answer)
        case WithRemainder(rest=rest):
            return _told(told, rest)
        case RatioAnswer(parts=parts):
            return _told_in_order(told, parts)
        case NameAnswer(name=name):
            return name.lower() in told


def _leaves(side: Expression, groups: Amount, rest: Amount) -> bool:
    """True for so many groups with this rest."""
    if not isinstance(side, Remainder):
        return False
    return side.quotient.value == groups.value and side.rest.base == rest.base


def _sides(equation: Equation | None) -> Iterator[Expression]:
    """The sides and all numbers in them, since a check begins with the answer: '3 × 4 = 12'."""
    if equation is None:
        return
    for side in equation.sides:
        yield from _inside(side)


def _inside(side: Expression) -> Iterator[Expression]:
    yield side
    if isinstance(side, Operation):
        yield from _inside(side.left)
        yield from _inside(side.right)
    elif isinstance(side, Remainder):
        yield from (side.quotient, side.rest)
    elif isinstance(side, Parts):
        yield from side.parts


def _is(side: Expression, answer: Amount) -> bool:
    if isinstance(side, Amount):
        if answer.unit.dimension is Dimension.CLOCK:
            return side.value % _DAY == answer.value % _DAY
        return side.value == answer.value or side.same_as(answer)
    if isinstance(side, Operation):
        return _value(side) == answer.base
    return False


def _value(side: Operation) -> Fraction | None:
    """The value; None where a missing-number box is in it."""
    try:
        return value_of(side)
    except ValueError:
        return None


def _values(side: Parts) -> tuple[Fraction, ...]:
    return tuple(each.value for each in side.parts)


def _told_in_order(sentence: str, parts: tuple[Fraction, ...]) -> bool:
    """The numbers of a ratio one after the other: '1 shaded for every 4 plain'."""
    numbers = _numbers(sentence)
    ends = range(len(parts), len(numbers) + 1)
    return any(tuple(numbers[end - len(parts) : end]) == parts for end in ends)


def _numbers(sentence: str) -> list[Fraction]:
    """The whole numbers, decimals and fractions of a text."""
    plainly = re.sub(r"(?<=\d),(?=\d{3})", "", sentence)
    return [Fraction(each) for each in re.findall(r"\d+(?:[./][1-9]\d*|\.\d+)?", plainly)]


def _told(sentence: str, answer: Amount) -> bool:
    """The amount, or its number alone, as a word of the sentence, in whatever form."""
    if answer.value in _numbers(sentence):
        return True
    texts = (write_plain(answer), write_plain(Amount(answer.value, form=answer.form)))
    words = f" {sentence} "
    for mark in ",.;:?!()":
        words = words.replace(f"{mark} ", " ")
    return any(f" {text.lower()} " in words for text in texts)
