"""Published tables: units of measure, ways of writing amounts, paper, contrast, sequences."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest
import yaml

from tests.published.published_items import HERE, exact_answers, solved
from typeset.documents.paper import paper_named
from typeset.proofing.print_quality import LEAST_CONTRAST, contrast
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import UNITS, Dimension, Unit
from typeset.quantities.writing import write_plain

TABLES = HERE / "tables"
# Exact factors: pint reckons in fractions here, and knows imperial units by their definitions.
PINT: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
PINT_NAMES = {
    "°": "degree",
    "%": "percent",
    "pint": "imperial_pint",
    "gallon": "imperial_gallon",
    "fluid ounce": "imperial_fluid_ounce",
    "tonne": "metric_ton",
}
PINT_BASES = {
    Dimension.LENGTH: "m",
    Dimension.MASS: "kg",
    Dimension.CAPACITY: "litre",
    Dimension.TIME: "second",
    Dimension.AREA: "m**2",
    Dimension.VOLUME: "m**3",
    Dimension.ANGLE: "degree",
    Dimension.PERCENT: "dimensionless",
}
MEASURES = sorted(
    {unit.singular: unit for unit in UNITS.values() if unit.dimension in PINT_BASES}.items()
)


def rows(name: str) -> Any:
    """The table as typed: every value a text."""
    text = (TABLES / f"{name}.yaml").read_text(encoding="utf-8")
    return yaml.load(text, Loader=yaml.BaseLoader)


def title(row: dict[str, str]) -> str:
    return f"[{row['sure']}] {next(iter(row.values()))}".replace("£", "GBP ").replace("°", "deg")


@pytest.mark.parametrize("row", rows("units"), ids=title)
def test_unit_of_the_published_table(row: dict[str, str]) -> None:
    one, other = parse_amount(row["one"]), parse_amount(row["is"])
    assert one.same_as(other)
    assert one.to(other.unit).value == other.value


@pytest.mark.parametrize("unit", [unit for _name, unit in MEASURES], ids=lambda unit: unit.singular)
def test_unit_is_as_large_as_pint_has_it(unit: Unit) -> None:
    symbol = unit.singular.replace("²", "**2").replace("³", "**3")
    named = PINT_NAMES.get(symbol, symbol)
    size = PINT.Quantity(Fraction(1), named).to(PINT_BASES[unit.dimension]).magnitude
    assert size == unit.per_base


@pytest.mark.parametrize("row", rows("writing"), ids=title)
def test_amount_is_written_as_the_style_guides_say(row: dict[str, str]) -> None:
    assert write_plain(parse_amount(row["typed"])) == row["printed"]


@pytest.mark.parametrize(("name", "sides_mm"), rows("paper").items())
def test_paper_is_as_large_as_iso_216_has_it(name: str, sides_mm: list[str]) -> None:
    paper = paper_named(name)
    assert [str(paper.width_mm), str(paper.height_mm)] == sides_mm


@pytest.mark.parametrize("row", rows("contrast"), ids=title)
def test_contrast_is_as_wcag_has_it(row: dict[str, str]) -> None:
    red, green, blue = (int(row["colour"][at : at + 2], 16) / 255 for at in (0, 2, 4))
    ratio = contrast((red, green, blue), (1.0, 1.0, 1.0))
    assert f"{ratio:.4f}" == row["on_white"]
    # 4.5 for text, 3 for large text, never rounded up (Understanding SC 1.4.3, read).
    assert (ratio >= LEAST_CONTRAST) == (row["passes"] == "text")
    assert (ratio >= 3) == (row["passes"] != "nothing")


# Fewer than 3 things are no problem to set, and are refused; the terms for them are left out.
TERMS = [
    pytest.param(row, n + int(row["plus"]), term, id=f"[{row['sure']}] {row['number']}({n})")
    for row in rows("oeis")
    for n, term in enumerate(row["terms"])
    if n + int(row["plus"]) >= 3
]


@pytest.mark.parametrize(("row", "things", "term"), TERMS)
def test_term_of_the_published_sequence(
    row: dict[str, str], things: int, term: str, tmp_path: Path
) -> None:
    places = row.get("more", "")
    story = "With {things}, how many ways are there" + (
        " to fill {places} places" if places else ""
    )
    problem = f"structure: {row['structure']}\nthings: {things} boats\n{places}\nstory: {story}?\n"
    assert exact_answers(solved(problem, tmp_path).answers, {"": term}) == {"": term}
