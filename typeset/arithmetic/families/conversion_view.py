"""A conversion with what its workings need: what is changed into what, and by what number."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import UNITS, Dimension, Unit

AMOUNT, TIMES, SHARED, MORE, LESS = "amount", "times", "shared among", "more", "less"
ANSWER = "answer"
OPERATIONS = (TIMES, SHARED, MORE, LESS)
# The units between two others, which pupils go through, largest first.
_LADDERS = (("week", "day", "h", "min", "s"), ("km", "m", "cm", "mm"), ("tonne", "kg", "g"))
_PLAIN = {"hour": "h", "minute": "min", "second": "s"}


@dataclass(frozen=True, slots=True)
class Fact:
    """`one` of the unit that is left and `other` of the unit wanted are as much: 5 miles, 8 km;
    1 kg, 1,000 g. One of the two is 1 where no fact is given by the author."""

    one: Amount
    other: Amount

    @property
    def factor(self) -> Fraction:
        """What the number is multiplied by."""
        return self.other.value / self.one.value

    def converted(self, amount: Amount) -> Amount:
        """The amount in the unit wanted."""
        return decimal_of(amount.value * self.factor, self.other.unit)


@dataclass(frozen=True, slots=True)
class Change:
    """The problem's conversion."""

    problem: Problem[Any]

    @property
    def amount(self) -> Amount:
        """What is converted, or reckoned with first."""
        return self.problem.given(AMOUNT)

    @property
    def target(self) -> Unit:
        """The unit wanted."""
        return self.problem.units[ANSWER]

    @property
    def together(self) -> tuple[Amount, Amount] | None:
        """The author's fact, with the unit of the amount first."""
        names = tuple(self.problem.fields.together)
        if not names:
            return None
        one, other = (self.problem.given(name) for name in names)
        return (one, other) if one.unit == self.amount.unit else (other, one)

    @property
    def operation(self) -> str:
        """The operation besides the conversion, or ''."""
        return next((name for name in OPERATIONS if name in self.problem.givens), "")

    @property
    def operand(self) -> Amount:
        """The other amount or number of the operation."""
        return self.problem.given(self.operation)

    @property
    def is_mixed(self) -> bool:
        """True where the answer is told in two units."""
        return bool(self.problem.fields.mixed_units)

    def fact(self, source: Unit) -> Fact:
        """What leads from this unit to the one wanted."""
        if self.together is not None and source == self.together[0].unit:
            return Fact(*self.together)
        factor = source.per_base / self.target.per_base
        if factor >= 1:
            return Fact(Amount(Fraction(1), source), Amount(factor, self.target))
        return Fact(Amount(1 / factor, source), Amount(Fraction(1), self.target))

    def between(self, source: Unit) -> tuple[Unit, ...]:
        """The units that lie between this one and the one wanted, in the order met."""
        for ladder in _LADDERS:
            names = [_PLAIN.get(unit.singular, unit.singular) for unit in (source, self.target)]
            if set(names) <= set(ladder):
                first, last = (ladder.index(name) for name in names)
                step = 1 if first < last else -1
                return tuple(UNITS[ladder[at]] for at in range(first + step, last, step))
        return ()

    def answered(self, amount: Amount) -> Amount:
        """An amount of the unit wanted as the answer writes it."""
        if not self.is_mixed:
            return amount
        return Amount(amount.value, amount.unit, Form.COMPOUND, parts=self.problem.fields.parts)


def decimal_of(value: Fraction, unit: Unit) -> Amount:
    """So much of the unit; parts of hours and other units are written as decimals here."""
    is_measure = unit.dimension is not Dimension.MONEY
    return Amount(value, unit, Form.DECIMAL if is_measure and value.denominator > 1 else Form.AUTO)


def plain_number(value: Fraction) -> Amount:
    """A bare number, as a decimal where it has parts."""
    return Amount(value, form=Form.DECIMAL if value.denominator > 1 else Form.AUTO)
