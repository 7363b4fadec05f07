"""What a variation is for."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from typeset.reading import content

# A support version asks for at most three quarters of the demand, a stretch version for at
# least five quarters (ours; a pupil should notice the difference, and a class still talk
# about one question). New numbers for a look back stay within a quarter.
EASIER_AT_MOST = Fraction(3, 4)
HARDER_AT_LEAST = Fraction(5, 4)
NEW_BETWEEN = (Fraction(3, 4), Fraction(5, 4))


class Version(Enum):
    """The versions of a week's sheets."""

    SUPPORT = content.SUPPORT
    CORE = content.CORE
    STRETCH = content.STRETCH


class Wish(Enum):
    """How numbers are to differ from those that stand there."""

    # Draw the ranges that the author typed; fixed numbers stay.
    AS_TYPED = "as typed"
    # Other numbers of the same size and roundness, for another day.
    NEW = "new"
    EASIER = "easier"
    HARDER = "harder"


WISH_OF = {
    Version.SUPPORT: Wish.EASIER,
    Version.CORE: Wish.AS_TYPED,
    Version.STRETCH: Wish.HARDER,
}
