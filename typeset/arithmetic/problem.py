"""A problem ready to be solved: numbers by name, and what is asked for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Generic, TypeVar

from typeset.arithmetic.fields import FamilyFields
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit

F = TypeVar("F", bound=FamilyFields)


@dataclass(frozen=True, slots=True)
class Problem(Generic[F]):
    """What a family works on.

    `givens` are the numbers of the story; a family reads them here and never in `fields`,
    so that asking 'what if this one were twice as large?' is one changed mapping.
    `units` has the unit of every unknown in `finds`, in the order asked for.
    """

    family: str
    givens: Mapping[str, Amount]
    finds: tuple[str, ...]
    units: Mapping[str, Unit]
    fields: F

    def given(self, name: str) -> Amount:
        """The amount of this name."""
        return self.givens[name]

    def answer(self, name: str, value: Fraction | int) -> Amount:
        """A value of the unknown `name`, in its unit."""
        exact = value if isinstance(value, Fraction) else Fraction(value)
        return Amount(exact, self.units[name])

    def with_given(self, name: str, amount: Amount) -> Problem[F]:
        """The same problem with one number changed."""
        givens = MappingProxyType({**self.givens, name: amount})
        return Problem(self.family, givens, self.finds, self.units, self.fields)
