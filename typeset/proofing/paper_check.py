"""Sides, paper and page geometry as promised."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.proofing.checks import Proof, in_mm
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadPage
from typeset.proofing.places import MM_PT

# Half a millimetre is far within the tolerance of ISO 216 (1.5 mm and more).
_TOLERANCE_PT = 0.5 * MM_PT


def check_paper(proof: Proof, sides: int | None) -> Iterator[Finding]:
    """Findings about the number of sides, their size and how they lie."""
    pages = proof.document.pages
    if sides is not None and len(pages) != sides:
        what = f"the document has {_sides(len(pages))}"
        yield proof.finding(0, None, what, str(sides), "page")
    for page in pages:
        yield from _check_page(proof, page)


def _sides(count: int) -> str:
    return "1 side" if count == 1 else f"{count} sides"


def _check_page(proof: Proof, page: ReadPage) -> Iterator[Finding]:
    paper = proof.layout.page
    wide, high = paper.width_mm * MM_PT, paper.height_mm * MM_PT
    differs = max(abs(page.width_pt - wide), abs(page.height_pt - high))
    if differs > _TOLERANCE_PT:
        what = f"the page is {in_mm(page.width_pt)} wide and {in_mm(page.height_pt)} high"
        should = f"{paper.width_mm:g} by {paper.height_mm:g} mm ({paper.name})"
        yield proof.finding(page.number, None, what, should, "page")
    if page.rotation:
        what = f"the page is turned by {page.rotation} degrees"
        yield proof.finding(page.number, None, what, "", "page")
    if page.cropped:
        yield proof.finding(page.number, None, "the page is cropped when it is shown", "", "page")
    for box in page.images:
        what = "a picture is on the page; text in it cannot be checked"
        yield proof.finding(page.number, box, what, "", "hidden")
