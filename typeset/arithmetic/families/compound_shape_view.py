"""An L-shape: its six sides in one unit, whichever four of them the author gave."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.rectangle_view import working_unit
from typeset.arithmetic.methods import conversion, in_unit
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit, square_of

BOTTOM, LEFT, TOP, RIGHT = "bottom", "left", "top", "right"
ACROSS, DOWN = "step across", "step down"
AREA, PERIMETER = "area", "perimeter"
# Clockwise from the top left corner.
SIDES = (TOP, DOWN, ACROSS, RIGHT, BOTTOM, LEFT)
# A long side and the two that make it up.
MADE_UP = {BOTTOM: (TOP, ACROSS), LEFT: (RIGHT, DOWN)}


def spoken(name: str) -> str:
    """'bottom side', 'step across'."""
    return name if name in (ACROSS, DOWN) else f"{name} side"


def long_side_of(name: str) -> str:
    """The long side that runs the way of this one."""
    return next(long for long, parts in MADE_UP.items() if name == long or name in parts)


def other_part(name: str) -> str:
    """The part that makes up the long side together with this one."""
    first, second = MADE_UP[long_side_of(name)]
    return second if name == first else first


@dataclass(frozen=True, slots=True)
class ShapeView:
    """The problem with what its workings need, in the finest unit of its sides."""

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

    def unit_of(self, name: str) -> Unit:
        """The working unit of a side, the perimeter or the area."""
        return self.square if name == AREA else self.unit

    def long(self, value: Fraction) -> Amount:
        """A length."""
        return Amount(value, self.unit)

    def wide(self, value: Fraction) -> Amount:
        """An area."""
        return Amount(value, self.square)

    def side(self, name: str) -> Amount:
        """A side, from the other two of its direction where it is not given."""
        if name in self.problem.givens:
            return in_unit(self.problem.given(name), self.unit)
        if name in MADE_UP:
            first, second = (self.side(part) for part in MADE_UP[name])
            return self.long(first.value + second.value)
        whole, part = self.side(long_side_of(name)), self.side(other_part(name))
        return self.long(whole.value - part.value)

    def finding(self, *names: str) -> Iterator[Step]:
        """The steps that find those of the sides that are not given."""
        for name in names:
            if name in self.problem.givens:
                continue
            side = self.side(name)
            if name in MADE_UP:
                parts = MADE_UP[name]
                one, other = (self.side(part) for part in parts)
                first, second = (spoken(part) for part in parts)
                text = f"The {spoken(name)} is as long as the {first} and the {second} together: "
                yield step(text + "{side}.", equation(plus(one, other), side), side=side)
            else:
                whole, part = self.side(long_side_of(name)), self.side(other_part(name))
                first, second = spoken(long_side_of(name)), spoken(other_part(name))
                text = f"The {spoken(name)} is the {first} without the {second}: "
                yield step(text + "{side}.", equation(minus(whole, part), side), side=side)

    def working(self, name: str, steps: tuple[Step, ...], results: Mapping[str, Amount]) -> Working:
        """A working: one unit first, the unit of the answers last."""
        opening = [
            each
            for amount in self.problem.givens.values()
            for each in conversion(amount, self.unit)[1]
        ]
        answers: dict[str, AnswerValue] = {}
        closing: list[Step] = []
        for asked in self.problem.finds:
            answer, more = conversion(results[asked], self.problem.units[asked])
            answers[asked] = answer
            closing.extend(more)
        return Working(name, (*opening, *steps, *closing), answers)

    def mistake(self, name: str, steps: tuple[Step, ...], value: Fraction) -> MistakenWorking:
        """A mistake whose number is given the unit of the answer."""
        asked = self.problem.finds[0]
        answer = in_unit(Amount(value, self.unit_of(asked)), self.problem.units[asked])
        return MistakenWorking(name, steps, {asked: answer})
