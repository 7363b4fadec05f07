"""Solving as a section: its own tables, and the slowest of its mixed lessons held to the bound."""

from __future__ import annotations

from tests.benchmarks.report import Bound, Section, Settings, cells_of
from tests.benchmarks.solving import tables

_LEAST_A_SECOND = 2000.0
_MIXED = "mixed lesson"


def solving(_settings: Settings) -> Section:
    """All times in it are of one core."""
    text = tables()
    rates = [
        float(cells[-1].replace(",", "")) for cells in cells_of(text) if cells[0].startswith(_MIXED)
    ]
    what = "problems of a mixed lesson solved in a second by one core"
    bound = Bound(what, _LEAST_A_SECOND, min(rates), " a second", is_least=True)
    return Section("Solving, and drawing numbers", text, (bound,))
