"""A division: what is divided by what, and how its parts and its end are told."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from typeset.arithmetic.equations import Equation, Remainder, equation, over, times
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Unit
from typeset.quantities.writing import say


# Without slots, which would leave no room for what is worked out once and asked for again.
@dataclass(frozen=True)
class Division:
    """`total` divided by `by`.

    In grouping `by` is measured like the total and `group` is what a group is called; in
    sharing `by` is the number of shares. Where `exact`, a share may be a part of one
    (money, measures) and nothing is left over.
    """

    total: Amount
    by: Fraction
    group: Unit
    grouping: bool
    exact: bool = False

    @cached_property
    def quotient(self) -> Fraction:
        """Of the shares or groups, whole ones unless `exact`."""
        value = self.total.value / self.by
        return value if self.exact else Fraction(value.numerator // value.denominator)

    @cached_property
    def rest(self) -> Fraction:
        """What is left over, in the total's unit."""
        return self.total.value - self.quotient * self.by

    @property
    def divisor(self) -> Amount:
        """What is divided by, as an equation holds it."""
        return self.total.like(self.by) if self.grouping else Amount(self.by)

    def part(self, value: Fraction) -> Amount:
        """A part of the total."""
        return self.total.like(value)

    def said(self, quotient: Fraction) -> Amount:
        """A quotient as the answer would say it: boxes, or floats."""
        return Amount(quotient, self.group) if self.grouping else self.total.like(quotient)

    def saying(self, quotient: Fraction) -> Rich:
        """'12 boxes', or '12 floats each'."""
        return say("{q}" if self.grouping else "{q} each", q=self.said(quotient))

    def fact(self, quotient: Fraction) -> Equation:
        """The multiplication that stands behind a quotient."""
        factors = (Amount(quotient), self.divisor)
        if not self.grouping:
            factors = (self.divisor, self.said(quotient))
        return equation(times(*factors), self.part(quotient * self.by))

    def dividing(self, part: Fraction) -> Equation:
        """`part ÷ by = quotient`, for a part that leaves nothing over."""
        quotient = Amount(part / self.by) if self.grouping else self.total.like(part / self.by)
        return equation(over(self.part(part), self.divisor), quotient)


def closing(division: Division) -> Step:
    """'So 12 boxes, and 3 floats left over.', with the whole division."""
    saying = division.saying(division.quotient)
    if not division.rest:
        return step("So {saying}.", division.dividing(division.total.value), saying=saying)
    rest = division.part(division.rest)
    if division.grouping:
        whole = over(division.total, division.divisor)
        result = Remainder(Amount(division.quotient), rest)
    else:
        whole = over(Amount(division.total.value), division.divisor)
        result = Remainder(Amount(division.quotient), Amount(division.rest))
    return step(
        "So {saying}, and {rest} left over.", equation(whole, result), saying=saying, rest=rest
    )
