"""The whole of something as a number: for 'one more lot of it' and 'what is left of it'."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from typeset.arithmetic.formulas.tree import Name
from typeset.quantities.amount import Amount, number
from typeset.quantities.units import UNITS

# No author's name begins with a digit, so these cannot be taken for one.
ONE: Final = Name("1")
HUNDRED_PER_CENT: Final = Name("100%")
ONES: Final[dict[str, Amount]] = {
    ONE.name: number(1),
    HUNDRED_PER_CENT.name: Amount(Fraction(100), UNITS["%"]),
}
