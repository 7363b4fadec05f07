"""What England's national curriculum asks of each year group, as data, and content held to it."""

from __future__ import annotations

from typeset.arithmetic.curriculum.limits import beyond_year
from typeset.arithmetic.curriculum.years import YEARS, Year

__all__ = ["YEARS", "Year", "beyond_year"]
