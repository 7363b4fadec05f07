"""A rounding that the author states: 'the nearest 10 m', '2 decimal places', 'the nearest pound'.

An exact answer stays exact through every working, as a fraction where its decimal never ends
(4 2/3, never 4.666…); only the last line rounds it, and says between which two numbers it lies.
Halfway is rounded up, as British schools teach (national curriculum, Year 4: round to the
nearest 10, 100 or 1,000; Year 5: decimals to the nearest whole number).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import Dimension, Unit, unit_named

_PLACES = re.compile(r"(?:to )?([1-3]|one|two|three) decimal places?")
_NEAREST = re.compile(r"(?:to )?(?:the )?nearest (.+)")
_DIGITS = {"one": 1, "two": 2, "three": 3}
_NUMBERS = {
    "whole number": 1,
    "one": 1,
    "ten": 10,
    "hundred": 100,
    "thousand": 1000,
    "ten thousand": 10000,
    "hundred thousand": 100000,
    "million": 1000000,
}
_MONEY = {"penny": Fraction(1, 100), "pound": Fraction(1)}
_COUNTS = {Dimension.NUMBER, Dimension.COUNT}
_EXAMPLE = "write such as 'the nearest 10 m', 'the nearest pound' or '2 decimal places'"


@dataclass(frozen=True, slots=True)
class Rounding:
    """To the nearest multiple of a size. `words` is what the author wrote after 'nearest'
    (empty for decimal places), because a pound is money or a weight as the answer is."""

    words: str
    places: int = 0

    @property
    def said(self) -> str:
        """'to the nearest 10 m', 'to 2 decimal places'."""
        if self.words:
            return f"to the nearest {self.words}"
        return f"to {self.places} decimal place{'s' if self.places > 1 else ''}"

    def size(self, unit: Unit) -> Fraction:
        """What the rounded amount is a multiple of, in `unit`.

        Raises AmountError where an amount of this unit cannot be rounded so.
        """
        if not self.words:
            return Fraction(1, 10**self.places)
        size = self._size_in_base(unit)
        if size is None:
            raise AmountError(
                f"an answer in {unit.plural or 'plain numbers'} cannot be rounded {self.said}",
                "round to the answer's own kind of unit",
            )
        return size / unit.per_base

    def _size_in_base(self, unit: Unit) -> Fraction | None:
        if unit.dimension is Dimension.MONEY and self.words in _MONEY:
            return _MONEY[self.words]
        if self.words in _NUMBERS:
            return _NUMBERS[self.words] * unit.per_base
        named = unit_named(self.words)
        amount = Amount(Fraction(1), named) if named is not None else _amount(self.words)
        if amount is None or amount.value <= 0:
            return None
        if amount.unit.dimension is Dimension.NUMBER:
            return amount.value * unit.per_base
        if amount.unit.dimension is unit.dimension and unit.dimension not in _COUNTS:
            return amount.base
        return amount.value if amount.unit == unit else None

    def down(self, amount: Amount) -> Amount:
        """The multiple at or below the amount."""
        size = self.size(amount.unit)
        return self._as_written(amount, amount.value // size * size)

    def nearest(self, amount: Amount) -> Amount:
        """The nearest multiple; from halfway up, the larger (0.5 becomes 1, −0.5 becomes 0)."""
        size = self.size(amount.unit)
        return self._as_written(amount, (amount.value / size + Fraction(1, 2)) // 1 * size)

    def _as_written(self, amount: Amount, value: Fraction | int) -> Amount:
        """With as many places as were asked for: 4.70 to 2 decimal places."""
        if self.words or amount.unit.dimension is Dimension.MONEY:
            return amount.like(value).written_as(Form.AUTO)
        return Amount(Fraction(value), amount.unit, Form.DECIMAL, self.places)


def read_rounding(text: str) -> Rounding:
    """The rounding that an author has written.

    Raises AmountError where it cannot be understood.
    """
    words = " ".join(text.split())
    if found := _PLACES.fullmatch(words):
        return Rounding("", _DIGITS.get(found[1]) or int(found[1]))
    found = _NEAREST.fullmatch(words)
    if found is None:
        raise AmountError(f"'{text}' says no rounding", _EXAMPLE)
    nearest = found[1]
    known = nearest in _NUMBERS or nearest in _MONEY or unit_named(nearest) is not None
    if not known and _amount(nearest) is None:
        raise AmountError(f"nothing can be rounded to the nearest '{nearest}'", _EXAMPLE)
    return Rounding(nearest)


def _amount(text: str) -> Amount | None:
    try:
        return parse_amount(text, {})
    except AmountError:
        return None


def rounded_answers(
    answers: Mapping[str, AnswerValue], rounding: Rounding
) -> dict[str, AnswerValue]:
    """Every answer rounded. Raises AmountError for one that is no amount."""
    return {name: _rounded(name, value, rounding) for name, value in answers.items()}


def _rounded(name: str, value: AnswerValue, rounding: Rounding) -> Amount:
    if not isinstance(value, Amount) or value.unit.dimension is Dimension.CLOCK:
        raise AmountError(f"'{name}' is no amount that can be rounded", "leave out 'round to'")
    near = rounding.nearest(value)
    return value if near.value == value.value else near


def rounded_working(working: Working, rounding: Rounding) -> Working:
    """The working with its answers rounded on a last line."""
    answers = rounded_answers(working.answers, rounding)
    steps = [*working.steps, *_lines(working.answers, rounding)]
    return Working(working.strategy, tuple(steps), answers)


def rounded_mistakes(
    mistakes: Iterable[MistakenWorking], rounding: Rounding
) -> Iterator[MistakenWorking]:
    """Each mistake, rightly rounded at its end; as it is where its answer is no amount."""
    for each in mistakes:
        if not all(isinstance(value, Amount) for value in each.answers.values()):
            yield each
            continue
        answers = rounded_answers(each.answers, rounding)
        steps = (*each.steps, *_lines(each.answers, rounding))
        yield replace(each, steps=steps, answers=answers)


def _lines(answers: Mapping[str, AnswerValue], rounding: Rounding) -> list[Step]:
    told = []
    for value in answers.values():
        if isinstance(value, Amount) and rounding.nearest(value).value != value.value:
            told.append(_line(value, rounding))
    return told


def _line(exact: Amount, rounding: Rounding) -> Step:
    low, near = rounding.down(exact), rounding.nearest(exact)
    high = rounding.down(exact.like(exact.value + rounding.size(exact.unit)))
    end = "and is nearer to {near}"
    if 2 * exact.value == low.value + high.value:
        end = "just halfway, and halfway is rounded up: {near}"
    text = f"Round {rounding.said}: {{exact}} lies between {{low}} and {{high}}, {end}."
    return step(text, exact=exact, low=low, high=high, near=near)
