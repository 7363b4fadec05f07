"""Units of count, money and measure, each with its exact size in the base unit.

Metric factors are decimal by definition. Imperial factors: Weights and Measures Act 1985,
Schedule 1 (pound 0.45359237 kg, gallon 4.54609 l; inch 25.4 mm from memory, NIST SP 811 B.8).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction


class Dimension(Enum):
    """What kind of thing a unit measures; amounts of one dimension can be added."""

    NUMBER = "number"
    COUNT = "count"
    MONEY = "money"
    LENGTH = "length"
    MASS = "mass"
    CAPACITY = "capacity"
    TIME = "time"
    CLOCK = "clock time"
    AREA = "area"
    VOLUME = "volume"
    ANGLE = "angle"
    TEMPERATURE = "temperature"
    PERCENT = "percentage"

    # Members are single objects; `Enum` would hash the name anew at every look-up.
    __hash__ = object.__hash__


# The size of every base unit is this one object, so that reckoning can pass over it quickly.
ONE = Fraction(1)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: how it is written for one and for many, and its size in the base unit."""

    dimension: Dimension
    singular: str
    plural: str
    per_base: Fraction = ONE

    def __hash__(self) -> int:
        """By its words alone, which tell units apart: a fraction is slow to hash."""
        return hash((self.singular, self.plural))

    def of_base(self, value: Fraction) -> Fraction:
        """So many of this unit are this value in the base unit."""
        return value if self.per_base is ONE else value / self.per_base

    @property
    def is_noun(self) -> bool:
        """True for things that are counted ('tern', 'terns')."""
        return self.dimension is Dimension.COUNT


def noun(singular: str, plural: str) -> Unit:
    """The unit for counted things."""
    return Unit(Dimension.COUNT, singular, plural)


def _symbol(dimension: Dimension, symbol: str, size: str) -> Unit:
    return Unit(dimension, symbol, symbol, _size(size))


def _named(dimension: Dimension, singular: str, plural: str, size: str) -> Unit:
    return Unit(dimension, singular, plural, _size(size))


def _size(text: str) -> Fraction:
    return ONE if text == "1" else Fraction(text)


NUMBER = Unit(Dimension.NUMBER, "", "")
POUND = Unit(Dimension.MONEY, "£", "£")
PERCENT = _symbol(Dimension.PERCENT, "%", "1/100")
DEGREE = _symbol(Dimension.ANGLE, "°", "1")
CELSIUS = _symbol(Dimension.TEMPERATURE, "°C", "1")
# Minutes after midnight.
CLOCK = _symbol(Dimension.CLOCK, "", "60")

_MEASURES = (
    # Length, base metre.
    _symbol(Dimension.LENGTH, "mm", "1/1000"),
    _symbol(Dimension.LENGTH, "cm", "1/100"),
    _symbol(Dimension.LENGTH, "m", "1"),
    _symbol(Dimension.LENGTH, "km", "1000"),
    _named(Dimension.LENGTH, "inch", "inches", "0.0254"),
    _named(Dimension.LENGTH, "foot", "feet", "0.3048"),
    _named(Dimension.LENGTH, "yard", "yards", "0.9144"),
    _named(Dimension.LENGTH, "mile", "miles", "1609.344"),
    # Mass, base kilogram.
    _symbol(Dimension.MASS, "mg", "1/1000000"),
    _symbol(Dimension.MASS, "g", "1/1000"),
    _symbol(Dimension.MASS, "kg", "1"),
    _named(Dimension.MASS, "tonne", "tonnes", "1000"),
    _named(Dimension.MASS, "ounce", "ounces", "0.028349523125"),
    _named(Dimension.MASS, "pound", "pounds", "0.45359237"),
    _named(Dimension.MASS, "stone", "stone", "6.35029318"),
    # Capacity, base litre.
    _symbol(Dimension.CAPACITY, "ml", "1/1000"),
    _symbol(Dimension.CAPACITY, "cl", "1/100"),
    _named(Dimension.CAPACITY, "litre", "litres", "1"),
    _named(Dimension.CAPACITY, "pint", "pints", "0.56826125"),
    _named(Dimension.CAPACITY, "fluid ounce", "fluid ounces", "0.0284130625"),
    _named(Dimension.CAPACITY, "gallon", "gallons", "4.54609"),
    # Time, base second.
    _named(Dimension.TIME, "second", "seconds", "1"),
    _symbol(Dimension.TIME, "s", "1"),
    _symbol(Dimension.TIME, "min", "60"),
    _named(Dimension.TIME, "minute", "minutes", "60"),
    _symbol(Dimension.TIME, "h", "3600"),
    _named(Dimension.TIME, "hour", "hours", "3600"),
    _named(Dimension.TIME, "day", "days", "86400"),
    _named(Dimension.TIME, "week", "weeks", "604800"),
    # Area, base square metre; volume, base cubic metre.
    _symbol(Dimension.AREA, "mm²", "1/1000000"),
    _symbol(Dimension.AREA, "cm²", "1/10000"),
    _symbol(Dimension.AREA, "m²", "1"),
    _symbol(Dimension.AREA, "km²", "1000000"),
    _named(Dimension.AREA, "hectare", "hectares", "10000"),
    _symbol(Dimension.VOLUME, "mm³", "1/1000000000"),
    _symbol(Dimension.VOLUME, "cm³", "1/1000000"),
    _symbol(Dimension.VOLUME, "m³", "1"),
)

# Spellings a teacher may type, besides the unit's own two.
_SPELLINGS = {
    "l": "litre",
    "sec": "s",
    "secs": "s",
    "mins": "min",
    "hr": "h",
    "hrs": "h",
    "oz": "ounce",
    "lb": "pound",
    "ft": "foot",
    "yd": "yard",
    "fl oz": "fluid ounce",
    "degree": "°",
    "degrees": "°",
    "per cent": "%",
}

# The long names of units that are written as symbols.
_LONG_NAMES = {
    "millimetre": "mm",
    "centimetre": "cm",
    "metre": "m",
    "kilometre": "km",
    "milligram": "mg",
    "gram": "g",
    "kilogram": "kg",
    "millilitre": "ml",
    "centilitre": "cl",
}
_SQUARED = {"mm": "mm²", "cm": "cm²", "m": "m²", "km": "km²"}
_CUBED = {"mm": "mm³", "cm": "cm³", "m": "m³"}


def _spellings() -> dict[str, str]:
    """Every spelling besides a unit's own two, and the unit's own that it stands for."""
    spellings = dict(_SPELLINGS)
    for name, symbol in _LONG_NAMES.items():
        spellings |= {name: symbol, f"{name}s": symbol}
        if symbol in _SQUARED:
            spellings |= {f"square {name}": _SQUARED[symbol], f"square {name}s": _SQUARED[symbol]}
        if symbol in _CUBED:
            spellings |= {f"cubic {name}": _CUBED[symbol], f"cubic {name}s": _CUBED[symbol]}
    for symbol, power in _SQUARED.items():
        spellings |= {f"{symbol}2": power, f"sq {symbol}": power}
    for symbol, power in _CUBED.items():
        spellings |= {f"{symbol}3": power, f"cu {symbol}": power}
    return spellings


def _table() -> dict[str, Unit]:
    table: dict[str, Unit] = {"%": PERCENT, "°": DEGREE, "°C": CELSIUS, "£": POUND}
    for unit in _MEASURES:
        table[unit.singular] = unit
        table[unit.plural] = unit
    for spelling, symbol in _spellings().items():
        table[spelling] = table[symbol]
    return table


UNITS: dict[str, Unit] = _table()


_LOWERED = {name.lower(): name for name in UNITS}


def unit_meant(text: str) -> str | None:
    """The unit that a text means by other letters ('Kg', 'ML', 'Metres', 'kg.'), or None."""
    word = text.rstrip(".").lower()
    return _LOWERED.get(word) if text not in UNITS else None


def unit_named(text: str) -> Unit | None:
    """The measure written so ('kg', 'metres', '%'), or None for a noun or an unknown word."""
    return UNITS.get(text)


def square_of(unit: Unit) -> Unit | None:
    """The unit of area whose side is one `unit` of length; None where there is none."""
    return UNITS.get(f"{unit.singular}²")
