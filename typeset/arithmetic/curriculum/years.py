"""The national curriculum's limits by year group: one row a year.

Source: National curriculum in England, mathematics programmes of study, key stages 1 and 2
(Department for Education, September 2013), "NC" below. Read: tables, numbers, multiplication,
Year 3, 4 and 6 number, Year 5 measures, ratio. From memory: column addition's digits, decimals,
money in Year 3, area, the fractions that percentages stand for. The 10,000 of Year 4 is an
inference from 'four-digit numbers' (NC says 'beyond 1000').
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from typeset.quantities.units import Dimension


@dataclass(frozen=True, slots=True)
class Year:
    """What a year group works with. Numbers are the largest allowed, digits the most."""

    year: int
    numbers_to: int
    # The multiplication tables known by heart at the end of the year.
    tables: frozenset[int]
    # Most digits in written addition and subtraction.
    sum_digits: int
    # Most digits of the two factors, and of dividend and divisor, in written methods.
    product_digits: tuple[int, int]
    division_digits: tuple[int, int]
    decimal_places: int
    # Sums of money with a point (£2.50); before that pounds and pence are kept apart.
    money_with_point: bool
    negative_numbers: bool
    # Units of measure, by their singular.
    units: frozenset[str]


_TO_YEAR_3 = frozenset({2, 3, 4, 5, 8, 10})
_ALL_TABLES = frozenset(range(2, 13))

_TIME = frozenset({"second", "s", "min", "minute", "h", "hour", "day", "week"})
_UNITS_3 = frozenset({"mm", "cm", "m", "g", "kg", "ml", "litre", "°C", "£"}) | _TIME
_UNITS_4 = _UNITS_3 | {"km"}
_UNITS_5 = _UNITS_4 | {"cm²", "m²", "cm³", "°", "%", "inch", "pound", "pint"}
_UNITS_6 = _UNITS_5 | {"mile", "mm²", "km²", "mm³", "m³"}

YEARS: Mapping[int, Year] = MappingProxyType(
    {
        3: Year(3, 1_000, _TO_YEAR_3, 3, (2, 1), (2, 1), 0, False, False, _UNITS_3),
        4: Year(4, 10_000, _ALL_TABLES, 4, (3, 1), (3, 1), 2, True, True, _UNITS_4),
        5: Year(5, 1_000_000, _ALL_TABLES, 7, (4, 2), (4, 1), 3, True, True, _UNITS_5),
        6: Year(6, 10_000_000, _ALL_TABLES, 8, (4, 2), (4, 2), 3, True, True, _UNITS_6),
    }
)

# Units that NC does not name for any of these years, and what may be said of them.
NOT_NAMED = frozenset(
    ("mg", "tonne", "cl", "foot", "yard", "ounce", "stone", "fluid ounce", "gallon", "hectare")
)

# Structures that NC names first in a year, and its words for them.
FIRST_TAUGHT: Mapping[str, tuple[int, str]] = MappingProxyType(
    {
        "ratio": (6, "ratio and the notation a:b are Year 6"),
        "highest common factor": (5, "common factors are Year 5"),
        "lowest common multiple": (6, "common multiples are Year 6"),
        "scale drawing": (6, "scale drawings and scale factors are Year 6"),
        "mean": (6, "the mean as an average is Year 6"),
    }
)

# Percentages whose fractions Year 5 knows: denominators that are a multiple of 10 or 25.
PERCENTAGES_BY_FRACTION = (10, 25)
PERCENTAGES_CALCULATED_IN = 6

MEASURED = frozenset(set(Dimension) - {Dimension.NUMBER, Dimension.COUNT, Dimension.CLOCK})
