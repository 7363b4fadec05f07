"""Content held to the national curriculum's year groups (DfE 2013; see `years.py` for what of
it was read and what is from memory)."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from typeset.arithmetic.curriculum import YEARS, beyond_year
from typeset.arithmetic.curriculum.years import FIRST_TAUGHT, NOT_NAMED
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.units import UNITS, Dimension

GROUPS = "equal groups"
PARTS = "part whole"


def solved(structure: str, fields: dict[str, Any]) -> Solution:
    family = FAMILIES[structure]
    return solve(family, family.build(family.fields_model.model_validate(fields)))


@pytest.mark.parametrize(
    ("structure", "fields", "first_year", "told"),
    [
        # Year 3 table 8, Year 4 table 7 (read).
        (GROUPS, {"groups": "8 crates", "each": "7 floats"}, 3, ""),
        (GROUPS, {"groups": "6 crates", "each": "7 floats"}, 4, "6 × 7 needs a table of Year 4"),
        # Year 3 two digits by one, Year 4 three digits by one, Year 5 by two (read).
        (GROUPS, {"groups": "4 crates", "each": "23 floats"}, 3, ""),
        (GROUPS, {"groups": "4 crates", "each": "123 floats"}, 4, "123"),
        (GROUPS, {"groups": "17 crates", "each": "23 floats"}, 5, "by one digit"),
        # Year 5 divides by one digit, Year 6 by two (read).
        ("sharing", {"total": "432 floats", "groups": "16 crates"}, 6, "divides up to"),
        # Numbers to 1,000, 1,000,000, 10,000,000 (read); 10,000 inferred.
        (PARTS, {"parts": {"a": "600 gulls", "b": "300 gulls"}}, 3, ""),
        (PARTS, {"parts": {"a": "600 gulls", "b": "500 gulls"}}, 4, "1,100 gulls is beyond 1,000"),
        (PARTS, {"parts": {"a": "6000 gulls", "b": "5000 gulls"}}, 5, "beyond 10,000"),
        (PARTS, {"parts": {"a": "600000 gulls", "b": "500000 gulls"}}, 6, "beyond 1,000,000"),
        # Decimals: from memory.
        (PARTS, {"parts": {"a": "2.5 m", "b": "1.25 m"}}, 4, "decimals are Year 4"),
        (PARTS, {"parts": {"a": "2.125 m", "b": "1.25 m"}}, 5, "three places are Year 5"),
        # Pounds and pence in one number: from memory.
        (PARTS, {"parts": {"a": "£2.50", "b": "£1.25"}}, 4, "pounds and pence in one number"),
        (PARTS, {"parts": {"a": "45p", "b": "25p"}}, 3, ""),
        # Units: kilometres, square centimetres, miles.
        (PARTS, {"parts": {"a": "2 km", "b": "3 km"}}, 4, "the unit km is Year 4"),
        ("rectangle", {"length": "5 cm", "width": "3 cm", "find": "area"}, 5, "cm²"),
        (PARTS, {"parts": {"a": "2 miles", "b": "3 miles"}}, 6, "the unit miles is Year 6"),
        # Ratio and calculated percentages: Year 6 (read).
        (
            "ratio",
            {"parts": {"gulls": "5", "terns": "2"}, "known": {"gulls": "35"}, "find": "terns"},
            6,
            "a:b are Year 6",
        ),
        (
            "fraction of a quantity",
            {"fraction": "15%", "whole": "360 gulls", "find": "part"},
            6,
            "calculating percentages is Year 6",
        ),
        (
            "fraction of a quantity",
            {"fraction": "50%", "whole": "360 gulls", "find": "part"},
            5,
            "the unit % is Year 5",
        ),
    ],
)
def test_the_first_year_that_reaches_it(
    structure: str, fields: dict[str, Any], first_year: int, told: str
) -> None:
    solution = solved(structure, fields)
    assert [year for year in YEARS if not beyond_year(solution, year)] == [
        year for year in YEARS if year >= first_year
    ]
    if told:
        assert any(told in words for words in beyond_year(solution, first_year - 1))


def test_a_unit_that_the_curriculum_does_not_name_is_said_so_in_every_year() -> None:
    solution = solved(PARTS, {"parts": {"a": "2 stone", "b": "3 stone"}})
    for year in YEARS:
        assert beyond_year(solution, year) == ("the curriculum does not name stone as a unit",)


def test_later_years_never_reach_less() -> None:
    years = [YEARS[year] for year in sorted(YEARS)]
    for one, other in pairwise(years):
        assert one.tables <= other.tables and one.units <= other.units
        assert one.numbers_to < other.numbers_to
        assert one.decimal_places <= other.decimal_places
        assert one.product_digits <= other.product_digits
        assert one.division_digits <= other.division_digits


def test_every_unit_is_either_of_a_year_or_said_not_to_be_named() -> None:
    counted = {Dimension.NUMBER, Dimension.COUNT, Dimension.CLOCK}
    measures = {unit.singular for unit in UNITS.values() if unit.dimension not in counted}
    assert measures == YEARS[6].units | NOT_NAMED
    assert not YEARS[6].units & NOT_NAMED


def test_years_of_structures_are_years() -> None:
    assert {year for year, _words in FIRST_TAUGHT.values()} <= set(YEARS)
