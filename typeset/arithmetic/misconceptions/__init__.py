"""The known mistakes by name, a file a theme.

Names follow the research where it has one: additive strategy, incorrect build-up, magical
doubling, constant sum (Misailidou & Williams 2003, abstract read); over-use of
proportionality (De Bock et al. 2007); reversal (Clement 1982, from memory). The others
are common practice, no source.
"""

from __future__ import annotations

from typeset.arithmetic.misconceptions import (
    addition,
    averages,
    counting,
    division,
    fractions,
    growth,
    inverse,
    measures,
    multiplication,
    proportion,
    rows,
    searching,
    steps,
    time,
)
from typeset.arithmetic.misconceptions.misconception import Misconception

_THEMES = (
    proportion.MISTAKES,
    division.MISTAKES,
    multiplication.MISTAKES,
    addition.MISTAKES,
    counting.MISTAKES,
    steps.MISTAKES,
    fractions.MISTAKES,
    measures.MISTAKES,
    inverse.MISTAKES,
    averages.MISTAKES,
    searching.MISTAKES,
    growth.MISTAKES,
    time.MISTAKES,
    rows.MISTAKES,
)

MISCONCEPTIONS: dict[str, Misconception] = {each.name: each for theme in _THEMES for each in theme}

__all__ = ["MISCONCEPTIONS", "Misconception"]
