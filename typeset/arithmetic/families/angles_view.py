"""The angles of a problem: what they make together, which are known, and how many of each."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount
from typeset.quantities.units import DEGREE

CROSSING, OPPOSITE, NEXT = "crossing lines", "opposite", "next"
# In degrees; a full turn is 360° by definition, the others follow (Euclid I.13 and I.32).
TOTALS = {
    "right angle": Fraction(90),
    "straight line": Fraction(180),
    "full turn": Fraction(360),
    "triangle": Fraction(180),
    "quadrilateral": Fraction(360),
}
FACTS = {
    "right angle": "Angles that make a right angle add up to {total}.",
    "straight line": "Angles on a straight line add up to {total}.",
    "full turn": "Angles round a point add up to {total}.",
    "triangle": "The angles of a triangle add up to {total}.",
    "quadrilateral": "The angles of a quadrilateral add up to {total}.",
}
# What a pupil takes instead.
WRONG_TOTALS = {
    "right angle": Fraction(180),
    "straight line": Fraction(360),
    "full turn": Fraction(180),
    "triangle": Fraction(360),
    "quadrilateral": Fraction(180),
}


@dataclass(frozen=True, slots=True)
class AnglesView:
    """The problem with what its workings need; all amounts in degrees."""

    problem: Problem[Any]

    @property
    def total(self) -> Amount:
        """What all the angles make."""
        return degrees(TOTALS[self.problem.fields.make])

    @property
    def unknown(self) -> tuple[str, ...]:
        """The angles that are not known: those asked for, and the multiples."""
        fields = self.problem.fields
        finds: tuple[str, ...] = self.problem.finds
        return (*finds, *(n for n in fields.multiples if n not in finds and n not in fields.angles))

    def count(self, name: str) -> Fraction:
        """How many there are of an angle."""
        counts = self.problem.fields.how_many
        return Fraction(counts[name].value) if name in counts else Fraction(1)

    def times(self, name: str) -> Fraction:
        """How many times the single one an unknown angle is."""
        multiples = self.problem.fields.multiples
        return Fraction(multiples[name].value) if name in multiples else Fraction(1)

    @property
    def known(self) -> tuple[Amount, ...]:
        """The known angles, one that is there twice told twice."""
        return tuple(
            amount
            for name, amount in self.problem.givens.items()
            for _ in range(int(self.count(name)))
        )

    @property
    def known_total(self) -> Fraction:
        """The known angles together."""
        return sum((each.value for each in self.known), Fraction(0))

    @property
    def shares(self) -> Fraction:
        """How many times the single unknown angle fits into the rest."""
        return sum((self.times(n) * self.count(n) for n in self.unknown), Fraction(0))

    @property
    def one(self) -> Fraction:
        """The single unknown angle."""
        return (self.total.value - self.known_total) / self.shares


def degrees(value: Fraction) -> Amount:
    """An angle."""
    return Amount(value, DEGREE)
