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


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: how it is written for one and for many, and its size in the base unit."""

    dimension: Dimension
    singular: str
    plural: str
    per_base: Fraction = Fraction(1)

    @property
    def is_noun(self) -> bool:
        """True for things that are counted ('tern', 'terns')."""
        return self.dimension is Dimension.COUNT


def noun(singular: str, plural: str) -> Unit:
    """The unit for counted things."""
    return Unit(Dimension.COUNT, singular, plural)


def _symbol(dimension: Dimension, symbol: str, size: str) -> Unit:
    return Unit(dimension, symbol, symbol, Fraction(size))


def _named(dimension: Dimension, singular: str, plural: str, size: str) -> Unit:
    return Unit(dimension, singular, plural, Fraction(size))


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
    "sq cm": "cm²",
    "sq m": "m²",
    "cm2": "cm²",
    "m2": "m²",
    "km2": "km²",
    "mm2": "mm²",
    "cm3": "cm³",
    "m3": "m³",
    "degrees": "°",
    "metre": "m",
    "metres": "m",
    "kilometre": "km",
    "kilometres": "km",
    "centimetre": "cm",
    "centimetres": "cm",
    "millimetre": "mm",
    "millimetres": "mm",
    "gram": "g",
    "grams": "g",
    "kilogram": "kg",
    "kilograms": "kg",
    "millilitre": "ml",
    "millilitres": "ml",
}


def _table() -> dict[str, Unit]:
    table: dict[str, Unit] = {"%": PERCENT, "°": DEGREE, "°C": CELSIUS, "£": POUND}
    for unit in _MEASURES:
        table[unit.singular] = unit
        table[unit.plural] = unit
    for spelling, symbol in _SPELLINGS.items():
        table[spelling] = table[symbol]
    return table


UNITS: dict[str, Unit] = _table()


def unit_named(text: str) -> Unit | None:
    """The measure written so ('kg', 'metres', '%'), or None for a noun or an unknown word."""
    return UNITS.get(text)


def square_of(unit: Unit) -> Unit | None:
    """The unit of area whose side is one `unit` of length; None where there is none."""
    return UNITS.get(f"{unit.singular}²")
