"""A rectangle's four amounts in one unit, whichever of them the author gave."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.methods import conversion, in_unit
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import UNITS, Dimension, Unit, square_of

LENGTH, WIDTH = "length", "width"
AREA, PERIMETER = "area", "perimeter"
SIDES = (LENGTH, WIDTH)


def side_of(amount: Amount) -> Unit:
    """The unit of length of an amount of length or area.

    Raises AmountError for another kind, or a unit that has no square here.
    """
    unit = amount.unit
    if unit.dimension is Dimension.LENGTH and square_of(unit) is not None:
        return unit
    for side in UNITS.values():
        if square_of(side) == unit:
            return side
    raise AmountError(
        f"a rectangle is not measured in {unit.plural or 'plain numbers'}",
        "use mm, cm, m or km for sides, and mm², cm², m² or km² for areas",
    )


def working_unit(givens: Mapping[str, Amount]) -> Unit:
    """The finest unit of length among the givens."""
    return min((side_of(each) for each in givens.values()), key=lambda unit: unit.per_base)


@dataclass(frozen=True, slots=True)
class View:
    """The problem with what the workings need; everything in the working unit or its square."""

    problem: Problem[Any]

    @property
    def unit(self) -> Unit:
        """The unit of length that is worked in."""
        return working_unit(self.problem.givens)

    @property
    def square(self) -> Unit:
        """The unit of area that belongs to it."""
        unit = square_of(self.unit)
        assert unit is not None
        return unit

    @property
    def known_side(self) -> str:
        """The side that is given; the length where both are."""
        return LENGTH if LENGTH in self.problem.givens else WIDTH

    @property
    def missing_side(self) -> str:
        """The other one."""
        return WIDTH if self.known_side == LENGTH else LENGTH

    def unit_of(self, name: str) -> Unit:
        """The working unit of one of the four amounts."""
        return self.square if name == AREA else self.unit

    def long(self, value: Fraction) -> Amount:
        """A length in the working unit."""
        return Amount(value, self.unit)

    def wide(self, value: Fraction) -> Amount:
        """An area in the square of the working unit."""
        return Amount(value, self.square)

    def given(self, name: str) -> Amount:
        """A given amount in the working unit."""
        return in_unit(self.problem.given(name), self.unit_of(name))

    def opening(self) -> Iterator[Step]:
        """The steps that bring the givens to one unit."""
        for name, amount in self.problem.givens.items():
            yield from conversion(amount, self.unit_of(name))[1]

    def side(self, name: str) -> Amount:
        """A side, reckoned where it is not given."""
        if name in self.problem.givens:
            return self.given(name)
        known = self.given(self.known_side).value
        if AREA in self.problem.givens:
            return self.long(self.given(AREA).value / known)
        return self.long(self.given(PERIMETER).value / 2 - known)

    def working(self, name: str, steps: tuple[Step, ...], results: Mapping[str, Amount]) -> Working:
        """A working, with its results turned into the units of the answers."""
        answers: dict[str, AnswerValue] = {}
        closing: list[Step] = []
        for asked in self.problem.finds:
            answer, more = conversion(results[asked], self.problem.units[asked])
            answers[asked] = answer
            closing.extend(more)
        return Working(name, (*self.opening(), *steps, *closing), answers)

    def mistake(self, name: str, steps: tuple[Step, ...], value: Fraction) -> MistakenWorking:
        """A mistake whose number is given the unit of the answer."""
        asked = self.problem.finds[0]
        answer = in_unit(Amount(value, self.unit_of(asked)), self.problem.units[asked])
        return MistakenWorking(name, steps, {asked: answer})
