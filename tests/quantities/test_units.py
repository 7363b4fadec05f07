"""Sizes of units against the law, NIST and pint."""

from __future__ import annotations

import pickle
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.quantities.amount import Amount
from typeset.quantities.units import (
    CLOCK,
    UNITS,
    Dimension,
    Unit,
    square_of,
    unit_meant,
    unit_named,
)

# pint reckons with exact fractions here; its names where ours differ. Pints and gallons are the
# imperial ones.
PINT: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
PINT_NAMES = {
    "pint": "imperial_pint",
    "gallon": "imperial_gallon",
    "fluid ounce": "imperial_fluid_ounce",
    "tonne": "metric_ton",
    "mm²": "mm ** 2",
    "cm²": "cm ** 2",
    "m²": "m ** 2",
    "km²": "km ** 2",
    "mm³": "mm ** 3",
    "cm³": "cm ** 3",
    "m³": "m ** 3",
}
MEASURED = {
    Dimension.LENGTH,
    Dimension.MASS,
    Dimension.CAPACITY,
    Dimension.TIME,
    Dimension.AREA,
    Dimension.VOLUME,
}
MEASURES = sorted(
    {unit for unit in UNITS.values() if unit.dimension in MEASURED}, key=lambda unit: unit.singular
)


def known(name: str) -> Unit:
    unit = unit_named(name)
    assert unit is not None
    return unit


def in_pint(unit: Unit) -> str:
    return PINT_NAMES.get(unit.singular, unit.singular)


@pytest.mark.parametrize("unit", MEASURES, ids=lambda unit: unit.singular)
def test_sizes_are_pints(unit: Unit) -> None:
    base = next(
        each for each in MEASURES if each.dimension is unit.dimension and each.per_base == 1
    )
    theirs = PINT.Quantity(Fraction(1), in_pint(unit)).to(in_pint(base)).magnitude
    assert theirs == unit.per_base


@settings(max_examples=60, deadline=None)
@given(st.fractions(0, 1000, max_denominator=1000), st.data())
def test_conversions_are_pints(value: Fraction, data: st.DataObject) -> None:
    unit = data.draw(st.sampled_from(MEASURES))
    other = data.draw(st.sampled_from([u for u in MEASURES if u.dimension is unit.dimension]))
    theirs = PINT.Quantity(value, in_pint(unit)).to(in_pint(other)).magnitude
    assert Amount(value, unit).to(other).value == theirs
    assert Amount(value, unit).to(other).same_as(Amount(value, unit))


# Sources, section 5: Weights and Measures Act 1985 Sch 1 (pound, ounce, litre, tonne, hectare)
# and the Australian National Measurement Regulations 1999 reg 88 (yard, mile) were read; inch,
# foot, gallon, pint and stone are from memory of the Act and NIST SP 811 App. B.8.
FACTS = [
    ("1 pound", "0.45359237", "kg"),
    ("16 ounce", "1", "pound"),
    ("1000 cm³", "1000", "cm³"),
    ("1 tonne", "1000", "kg"),
    ("1 hectare", "10000", "m²"),
    ("1 yard", "0.9144", "m"),
    ("1 mile", "1.609344", "km"),
    ("1 inch", "25.4", "mm"),
    ("1 foot", "304.8", "mm"),
    ("1 gallon", "4.54609", "litre"),
    ("8 pint", "1", "gallon"),
    ("1 pint", "568.26125", "ml"),
    ("20 fluid ounce", "1", "pint"),
    ("14 pound", "1", "stone"),
    ("1 stone", "6.35029318", "kg"),
    ("5 mile", "8.04672", "km"),
    # Test items of 2016, paper 3, question 14 (sources, section 3).
    ("1 hour", "3600", "second"),
    ("1 day", "1440", "min"),
]


@pytest.mark.parametrize(("amount", "value", "unit"), FACTS)
def test_facts(amount: str, value: str, unit: str) -> None:
    count, name = amount.split(" ", 1)
    assert Amount(Fraction(count), known(name)).to(known(unit)).value == Fraction(value)


def test_what_is_not_of_one_kind_cannot_be_converted() -> None:
    with pytest.raises(ValueError, match="length is not mass"):
        Amount(Fraction(1), known("m")).to(known("kg"))
    assert not Amount(Fraction(1), known("m")).same_as(Amount(Fraction(1), known("kg")))


def test_a_time_of_day_is_no_duration() -> None:
    assert not Amount(Fraction(60), CLOCK).same_as(Amount(Fraction(60), known("min")))


@pytest.mark.parametrize(
    ("spelt", "meant"), [("metres", "m"), ("square metre", "m²"), ("mins", "min"), ("lb", "pound")]
)
def test_spellings(spelt: str, meant: str) -> None:
    assert unit_named(spelt) is unit_named(meant)


@pytest.mark.parametrize(("typed", "meant"), [("Kg", "kg"), ("ML", "ml"), ("km.", "km")])
def test_units_in_other_letters_are_recognised(typed: str, meant: str) -> None:
    assert unit_named(typed) is None
    assert unit_meant(typed) == meant


def test_words_that_are_no_units() -> None:
    assert unit_named("crates") is None
    assert unit_meant("crates") is None
    assert unit_meant("kg") is None


def test_areas_of_squares() -> None:
    assert square_of(known("m")) is unit_named("m²")
    assert square_of(known("mile")) is None


@pytest.mark.parametrize("name", ["mm", "km", "kg", "minute", "stone", "£", "%"])
def test_a_value_in_the_base_unit_is_so_many_of_the_unit(name: str) -> None:
    unit = UNITS[name]
    for value in (Fraction(0), Fraction(7, 3), Fraction(-1200)):
        assert unit.of_base(value) == value / unit.per_base
        assert unit.of_base(value * unit.per_base) == value


def test_a_unit_is_the_same_after_a_journey_to_another_process() -> None:
    """Its size is then another object of the same value, which must make no difference."""
    for name in ("m", "cm", "kg", "minute"):
        unit = UNITS[name]
        again = pickle.loads(pickle.dumps(unit))
        assert (again, hash(again)) == (unit, hash(unit))
        there = Amount(Fraction(5, 2), again)
        assert there.base == Amount(Fraction(5, 2), unit).base
        assert there.same_as(Amount(Fraction(5, 2), unit))
        assert there.to(unit) == Amount(Fraction(5, 2), unit).to(again)
