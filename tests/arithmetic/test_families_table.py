"""DEVELOPERS.md tells the families as they are."""

from __future__ import annotations

from tests.arithmetic.families_table import SOURCES, page_table, table
from tests.published.published_items import HERE


def test_the_table_of_families_is_up_to_date() -> None:
    assert page_table() == table(), "run: python -m tests.arithmetic.families_table"


def test_every_published_file_has_a_name_in_the_table() -> None:
    assert set(SOURCES) == {file.stem for file in HERE.glob("*.yaml")}
