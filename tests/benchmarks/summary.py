"""All bounds on one page: what was promised, what was measured, and whether it is kept."""

from __future__ import annotations

from collections.abc import Sequence

from tests.benchmarks.report import Bound, Section, table


def summary(sections: Sequence[Section]) -> Section:
    """The bounds of all sections, in their order."""
    rows = [_row(bound) for section in sections for bound in section.bounds]
    return Section("Bounds", table(("bound", "at most", "measured", "met"), rows))


def _row(bound: Bound) -> list[str]:
    least = " at least" if bound.is_least else ""
    met = "yes" if bound.is_met else "**no**"
    return [bound.what, f"{bound.bound:g}{bound.unit}{least}", _figure(bound), met]


def _figure(bound: Bound) -> str:
    """Two decimals for ratios, whole numbers for the rest; never rounded onto the bound."""
    decimals = 2 if not bound.unit else 0
    text = f"{bound.measured:,.{decimals}f}"
    if not bound.is_met and float(text.replace(",", "")) == bound.bound:
        text = f"{bound.measured:,.{decimals + 2}f}"
    return f"{text}{bound.unit}"
