"""Nothing leaves the margins: letters, lines or pictures."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.proofing.checks import Proof, few, in_mm
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import ReadPage, Stroke
from typeset.proofing.places import MM_PT, Box

# Half of a line's thickness may lie in the margin, and a letter may lean out by a hair.
_SLACK_PT = 1.0


def check_edges(proof: Proof) -> Iterator[Finding]:
    """A finding for everything that is printed outside the margins of the layout."""
    for page in proof.document.pages:
        yield from few(_check_page(proof, page))


def text_area(proof: Proof, page: ReadPage) -> Box:
    """The page within its margins."""
    margins = proof.layout.margins
    return Box(
        margins.left * MM_PT,
        margins.top * MM_PT,
        page.width_pt - margins.right * MM_PT,
        page.height_pt - margins.bottom * MM_PT,
    )


def is_tint(proof: Proof, page: ReadPage, stroke: Stroke) -> bool:
    """True for the paper's tint, drawn over the whole page before anything else."""
    whole = Box(0.0, 0.0, page.width_pt, page.height_pt)
    tint = proof.layout.tint
    return (
        tint is not None
        and stroke.order == 0
        and stroke.fill is not None
        and not stroke.stroked
        and stroke.box.covers(whole)
        and all(abs(a - b) < 0.01 for a, b in zip(stroke.fill, tint, strict=True))
    )


def _check_page(proof: Proof, page: ReadPage) -> Iterator[Finding]:
    area = text_area(proof, page)
    for word in page.words:
        if word.is_text and (told := _outside(area, page, word.box)):
            yield proof.about_word(word, f"'{word.text}' {told[0]}", told[1], "margin")
    for stroke in page.strokes:
        if not is_tint(proof, page, stroke) and (told := _outside(area, page, stroke.box)):
            yield proof.finding(page.number, stroke.box, f"a line {told[0]}", told[1], "margin")
    for box in page.images:
        if told := _outside(area, page, box):
            yield proof.finding(page.number, box, f"a picture {told[0]}", told[1], "margin")


def _outside(area: Box, page: ReadPage, box: Box) -> tuple[str, str] | None:
    """How far the box stands out most, and the margin that should be."""
    sides = (
        ("left", area.left - box.left, area.left),
        ("top", area.top - box.top, area.top),
        ("right", box.right - area.right, page.width_pt - area.right),
        ("bottom", box.bottom - area.bottom, page.height_pt - area.bottom),
    )
    side, beyond, margin = max(sides, key=lambda each: each[1])
    if beyond <= _SLACK_PT:
        return None
    if beyond > margin:
        return f"is printed beyond the {side} edge of the paper", f"a margin of {in_mm(margin)}"
    return f"is {in_mm(margin - beyond)} from the {side} edge", f"a margin of {in_mm(margin)}"
