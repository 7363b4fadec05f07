"""A scale read from text, and its two lengths in units that can be reckoned with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.parsing import parse_amount, parse_ratio
from typeset.quantities.units import UNITS, Dimension, Unit

SCALE, STANDS_FOR, REAL = "scale", "stands for", "real"
ON_PAPER, REAL_LENGTH = "on paper", "real length"


def read_scale(text: str) -> tuple[Amount, Amount]:
    """'1 cm to 20 km' as two lengths, '1:25,000' as two numbers.

    Raises AmountError for anything else.
    """
    first, found, second = (part.strip() for part in text.partition(" to "))
    if not found:
        if ":" not in text:
            raise AmountError(f"'{text}' is no scale", "write such as 1 cm to 20 km, or 1:25,000")
        parts = parse_ratio(text)
        if len(parts) != 2:
            raise AmountError(f"'{text}' is no scale", "write such as 1 cm to 20 km, or 1:25,000")
        return Amount(parts[0]), Amount(parts[1])
    amounts = parse_amount(first), parse_amount(second)
    for amount in amounts:
        if amount.unit.dimension is not Dimension.LENGTH or amount.value <= 0:
            raise AmountError(
                f"'{text}' is no scale of two lengths", "write such as 1 cm to 20 km, or 1:25,000"
            )
    return amounts


@dataclass(frozen=True, slots=True)
class ScaleView:
    """The problem with what its workings need."""

    problem: Problem[Any]

    @property
    def given(self) -> str:
        """The name of the length that is known."""
        return next(name for name in self.problem.givens if name not in (SCALE, STANDS_FOR))

    @property
    def asked(self) -> str:
        """The name of the length that is asked for."""
        return str(self.problem.finds[0])

    @property
    def paper(self) -> str:
        """'map', 'drawing', 'plan' or 'model'."""
        return self.asked if self.given == REAL else self.given

    @property
    def is_ratio(self) -> bool:
        """True for a scale without units, 1:25,000."""
        return self.problem.given(SCALE).unit.dimension is Dimension.NUMBER

    @property
    def _small_unit(self) -> Unit:
        """The unit in which a scale without units is taken: that of the paper, or centimetres."""
        if self.given != REAL:
            return self.problem.given(self.given).unit
        unit = self.problem.units[self.asked]
        return unit if unit.per_base < UNITS["m"].per_base else UNITS["cm"]

    @property
    def one(self) -> Amount:
        """The length on paper that the scale tells."""
        first = self.problem.given(SCALE)
        return Amount(first.value, self._small_unit) if self.is_ratio else first

    @property
    def other(self) -> Amount:
        """What it stands for."""
        second = self.problem.given(STANDS_FOR)
        return Amount(second.value, self._small_unit) if self.is_ratio else second

    @property
    def times(self) -> Fraction:
        """How many times the scale's own length the known one is."""
        own = self.other if self.given == REAL else self.one
        return self.problem.given(self.given).base / own.base

    def opening(self) -> Iterator[Step]:
        """What a scale without units means."""
        if self.is_ratio:
            yield step(
                f"{{one}} on the {self.paper} stands for {{other}}.",
                one=self.one,
                other=self.other,
            )
