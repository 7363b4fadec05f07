"""Units of results, against pint where both speak of the same thing."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pint
import pytest

from typeset.arithmetic.formulas.parsing import parse_formula
from typeset.arithmetic.formulas.units import meeting
from typeset.arithmetic.formulas.whole import value_of_whole
from typeset.errors import AmountError
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import NUMBER, POUND, UNITS, Unit, noun

KITES, BOXES = noun("kite", "kites"), noun("box", "boxes")
# Ours: m, kg, litre and second; pint's names for them.
PINT = {
    "kg": "kilogram",
    "g": "gram",
    "m": "meter",
    "cm": "centimeter",
    "km": "kilometer",
    "litre": "liter",
    "ml": "milliliter",
    "min": "minute",
    "h": "hour",
}
registry: Any = pint.UnitRegistry(non_int_type=Fraction)

WITH_PINT = [
    ("+", "1.5 kg", "250 g", "g"),
    ("−", "2 litres", "350 ml", "ml"),
    ("+", "1 h", "35 min", "min"),
    ("−", "3 km", "400 m", "m"),
    ("÷", "2 m", "25 cm", ""),
    ("÷", "1.5 kg", "50 g", ""),
    ("×", "3 m", "4 m", "m²"),
    ("×", "3 m", "50 cm", "cm²"),
]


@pytest.mark.parametrize(("sign", "left", "right", "unit"), WITH_PINT)
def test_against_pint(sign: str, left: str, right: str, unit: str) -> None:
    amounts = {"a": parse_amount(left), "b": parse_amount(right)}
    one, other = (
        amount.value * registry(PINT[amount.unit.singular]) for amount in amounts.values()
    )
    expected = {"+": one.__add__, "−": one.__sub__, "÷": one.__truediv__, "×": one.__mul__}[sign](
        other
    )
    made = value_of_whole(parse_formula(f"a {sign} b", amounts), amounts)
    assert made.unit == UNITS.get(unit, NUMBER)
    assert made.base == expected.to_base_units().magnitude * _base_size(unit)


def _base_size(unit: str) -> int:
    """pint's base of mass is the kilogram and of capacity the cubic metre; ours the litre."""
    return 1000 if unit in ("ml", "litre") else 1


MEETINGS = [
    ("×", NUMBER, POUND, POUND),
    ("×", KITES, POUND, POUND),
    ("×", UNITS["kg"], POUND, POUND),
    ("×", UNITS["g"], UNITS["day"], UNITS["g"]),
    ("×", UNITS["km"], UNITS["h"], UNITS["km"]),
    ("×", KITES, BOXES, NUMBER),
    ("÷", POUND, KITES, POUND),
    ("÷", POUND, UNITS["kg"], POUND),
    ("÷", UNITS["m²"], UNITS["m"], UNITS["m"]),
    ("÷", KITES, KITES, NUMBER),
    ("+", KITES, KITES, KITES),
    ("+", KITES, BOXES, NUMBER),
    ("−", KITES, NUMBER, KITES),
    ("of", UNITS["%"], POUND, POUND),
    ("of", NUMBER, KITES, KITES),
]


@pytest.mark.parametrize(("sign", "left", "right", "result"), MEETINGS)
def test_results(sign: str, left: Unit, right: Unit, result: Unit) -> None:
    assert meeting(sign, left, right).result == result


IMPOSSIBLE = [
    ("+", "3 kg", "4 m", "cannot add kg to m"),
    ("−", "£3", "4 m", "cannot subtract m from money"),
    ("×", "3 kg", "4 m", "cannot multiply kg by m"),
    ("×", "15%", "£4", "cannot multiply % by money"),
    ("÷", "3", "4 m", "cannot divide a number by m"),
    ("of", "3 kg", "4 m", "'of' cannot follow kg"),
    ("+", "9:30", "10:30", "cannot take a time of day + a time of day"),
    ("÷", "3 m", "0", "divided by 0"),
]


@pytest.mark.parametrize(("sign", "left", "right", "message"), IMPOSSIBLE)
def test_impossible(sign: str, left: str, right: str, message: str) -> None:
    amounts = {"a": parse_amount(left), "b": parse_amount(right)}
    with pytest.raises(AmountError) as caught:
        value_of_whole(parse_formula(f"a {sign} b", amounts), amounts)
    assert message in str(caught.value)
