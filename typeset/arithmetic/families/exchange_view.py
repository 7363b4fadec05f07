"""A sharing with exchange: the larger unit, the smaller one, and amounts written in both."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.problem import Problem
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import POUND, UNITS, Dimension, Unit, noun

EACH = "each"
PENNY = Fraction(1, 100)
_SHARE = noun("share", "shares")
# What a rest is usually exchanged for, by the unit's own word or symbol.
_USUAL = {
    "km": "m", "m": "cm", "cm": "mm", "kg": "g", "tonne": "kg", "litre": "ml", "week": "day",
    "day": "h", "h": "min", "hour": "min", "min": "s", "minute": "s", "foot": "inch",
    "yard": "foot", "stone": "pound", "pound": "ounce",
}  # fmt: skip


def smaller_unit(total: Amount, named: Unit | None) -> Unit:
    """The unit that the rest is exchanged for.

    Raises AmountError where there is none, or it is not smaller than the unit of the total.
    """
    large = total.parts[0] if total.parts else total.unit
    if large.dimension is Dimension.MONEY:
        return POUND
    if named is None and total.parts:
        return total.parts[-1]
    if named is None:
        usual = _USUAL.get(large.singular)
        if usual is None:
            raise AmountError(
                f"no smaller unit is usual beside {large.plural}",
                "name one with 'exchange into'",
            )
        return UNITS[usual]
    if named.dimension is not large.dimension or named.per_base >= large.per_base:
        raise AmountError(
            f"{named.plural} is not a smaller unit than {large.plural}",
            "name a smaller one of the same kind",
        )
    return named


@dataclass(frozen=True, slots=True)
class Exchange:
    """The problem's sharing."""

    problem: Problem[Any]

    @property
    def total(self) -> Amount:
        """What is shared."""
        return self.problem.given("total")

    @property
    def shares(self) -> Fraction:
        """Among how many."""
        return self.problem.given("groups").value

    @property
    def group(self) -> Unit:
        """What a share is for."""
        unit = self.problem.given("groups").unit
        return unit if unit.singular else _SHARE

    @property
    def large(self) -> Unit:
        """The unit that is shared whole first."""
        return self.total.parts[0] if self.total.parts else self.total.unit

    @property
    def small(self) -> Unit:
        """The unit that the rest is exchanged for; of money, pounds written as pence."""
        return self.problem.units[EACH]

    @property
    def is_money(self) -> bool:
        """True for pounds and pence."""
        return self.large.dimension is Dimension.MONEY

    @property
    def small_size(self) -> Fraction:
        """The smaller unit in the base unit."""
        return PENNY if self.is_money else self.small.per_base

    @property
    def per_large(self) -> Fraction:
        """How many of the smaller unit make one of the larger."""
        return self.large.per_base / self.small_size

    def large_of(self, count: Fraction | int) -> Amount:
        """So many of the larger unit."""
        return Amount(Fraction(count), self.large)

    def small_of(self, count: Fraction | int) -> Amount:
        """So many of the smaller unit: 300 cm, 100p."""
        if self.is_money:
            return Amount(Fraction(count) * PENNY, POUND, Form.PENCE)
        return Amount(Fraction(count), self.small)

    def share_of(self, base: Fraction) -> Amount:
        """A share (in base units) as it is answered: 1 m 75 cm, £4.25."""
        if self.is_money:
            return Amount(base, POUND)
        value = base / self.small.per_base
        return Amount(value, self.small, Form.COMPOUND, parts=(self.large, self.small))
