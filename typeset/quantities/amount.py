"""An amount: an exact number of a unit. No float ever stands for one."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum
from fractions import Fraction

from typeset.quantities.units import NUMBER, ONE, Dimension, Unit


class Form(Enum):
    """How the number is to be written; AUTO leaves it to the unit's custom."""

    AUTO = "auto"
    DECIMAL = "decimal"
    FRACTION = "fraction"
    # As several units: 1 h 20 min, 2 m 35 cm.
    COMPOUND = "compound"
    # Money in pence alone: 250p.
    PENCE = "pence"

    # As in `Dimension`: members are single objects.
    __hash__ = object.__hash__


_COUNTS = (Dimension.NUMBER, Dimension.COUNT)


@dataclass(frozen=True, slots=True)
class Amount:
    """`value` of `unit`, exact.

    `form`, `places` and `parts` concern only how it is written, so they take no part in
    comparing amounts. `places` counts the digits after the point as the author typed them; of
    a fraction it is the lower number, of a clock time the digits of its hour. `parts` are the
    units of a compound amount, largest first.
    """

    value: Fraction
    unit: Unit = NUMBER
    form: Form = field(default=Form.AUTO, compare=False)
    places: int = field(default=0, compare=False)
    parts: tuple[Unit, ...] = field(default=(), compare=False)

    @property
    def base(self) -> Fraction:
        """The value in the base unit of its dimension."""
        unit = self.unit
        return self.value if unit.per_base is ONE else self.value * unit.per_base

    @property
    def is_whole(self) -> bool:
        """True where the value in its own unit is a whole number."""
        return self.value.denominator == 1

    def like(self, value: Fraction | int) -> Amount:
        """Another value of the same unit, written as custom has it."""
        places = self.places if self.unit.dimension is Dimension.CLOCK else 0
        exact = value if isinstance(value, Fraction) else Fraction(value)
        return Amount(exact, self.unit, self._lasting_form, places)

    def to(self, unit: Unit) -> Amount:
        """The same amount in another unit of its dimension.

        Raises ValueError where the dimensions differ: a mistake of ours, not of the author.
        """
        if unit.dimension is not self.unit.dimension:
            raise ValueError(f"{self.unit.dimension.value} is not {unit.dimension.value}")
        if unit.per_base is self.unit.per_base:
            return Amount(self.value, unit, self._lasting_form)
        return Amount(unit.of_base(self.base), unit, self._lasting_form)

    @property
    def _lasting_form(self) -> Form:
        """The form that another value takes over: several units and pence are one value's own."""
        return Form.AUTO if self.form in (Form.COMPOUND, Form.PENCE) else self.form

    def same_as(self, other: Amount) -> bool:
        """True where both are the same amount, whatever units they are written in.

        Things that are counted and plain numbers compare by value alone.
        """
        mine, theirs = self.unit, other.unit
        if mine.dimension is not theirs.dimension:
            counts = mine.dimension in _COUNTS and theirs.dimension in _COUNTS
            return counts and self.base == other.base
        if mine.per_base is theirs.per_base:
            return self.value == other.value
        return self.base == other.base

    def written_as(self, form: Form) -> Amount:
        """The same amount to be written in another form."""
        return replace(self, form=form)


def number(value: Fraction | int | str) -> Amount:
    """A plain number. A string is read exactly ('2.5' is 5/2)."""
    return Amount(Fraction(value))
