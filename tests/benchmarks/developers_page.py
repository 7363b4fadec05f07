"""Puts the report into the page for contributors, between two marks."""

from __future__ import annotations

from pathlib import Path

BEGIN, END = "<!-- benchmarks: begin -->", "<!-- benchmarks: end -->"


def write_report(page: Path, report: str) -> None:
    """Puts the report in place of what stands between the marks.

    Raises ValueError where the page does not have each mark once, in this order.
    """
    text = page.read_text(encoding="utf-8")
    if text.count(BEGIN) != 1 or text.count(END) != 1 or text.index(BEGIN) > text.index(END):
        raise ValueError(f"{page.name} has not '{BEGIN}' and then '{END}', each once")
    before, _, rest = text.partition(BEGIN)
    after = rest.partition(END)[2]
    page.write_text(f"{before}{BEGIN}\n{report.strip()}\n{END}{after}", encoding="utf-8")
