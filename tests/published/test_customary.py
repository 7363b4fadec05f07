"""What classrooms take units for, against their lawful size (`tables/units.yaml`).

Customary, no source: 8 km for 5 miles, 2.5 cm for an inch, 2.2 pounds for a kilogram, 570 ml
for a pint. How far off each is was computed; a fact given so in a problem (`facts`) is near
enough to a hundredth or two.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from typeset.quantities.parsing import parse_amount


@pytest.mark.parametrize(
    ("exact", "customary", "off_per_cent"),
    [
        ("5 miles", "8 km", "-0.58"),
        ("1 inch", "2.5 cm", "-1.57"),
        ("1 kg", "2.2 pounds", "-0.21"),
        ("1 pint", "570 ml", "0.31"),
    ],
)
def test_how_far_off_a_customary_fact_is(exact: str, customary: str, off_per_cent: str) -> None:
    true, taken = parse_amount(exact).base, parse_amount(customary).base
    off = (taken - true) / true * 100
    assert abs(off - Fraction(off_per_cent)) < Fraction(1, 200)
    assert abs(off) < 2
