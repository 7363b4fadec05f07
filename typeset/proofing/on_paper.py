"""Findings told by the side of the file and the place on it, however its pages lie on paper."""

from __future__ import annotations

from dataclasses import replace

from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.places import MM_PT


def on_paper(finding: Finding, document: ReadDocument) -> Finding:
    """The finding about a page, told of the side that the page stands on."""
    if not 1 <= finding.page <= len(document.pages):
        return finding
    page = document.pages[finding.page - 1]
    if not page.side:
        return finding
    place = _place(finding.place, page) if finding.place is not None else None
    return replace(finding, page=page.side, place=place)


def _place(place_mm: tuple[float, float], page: ReadPage) -> tuple[float, float]:
    """The place on the side as a reader shows it."""
    left = place_mm[0] + page.corner_pt[0] / MM_PT
    top = place_mm[1] + page.corner_pt[1] / MM_PT
    if page.turned_pt is None:
        return (left, top)
    return (page.turned_pt[0] / MM_PT - left, page.turned_pt[1] / MM_PT - top)
