"""A booklet imposed for folding, unfolded again: its pages in the order in which they are read.

The order is found as one would with paper in hand: the papers lie in each other as they were
printed; turning the leaves shows the right half of a front and the left half of its back, paper
by paper to the middle, and then the other halves on the way out again.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO

from pypdf import PdfReader, PdfWriter

from typeset.documents.paper import Paper
from typeset.proofing.cells import Cells, cells_of, check_papers, numbered, without_white
from typeset.proofing.finding import Finding
from typeset.proofing.opened import opened
from typeset.proofing.page_marks import ReadDocument, ReadPage, Stroke

_HALVES = Cells(2, 1)
_SLACK_PT = 0.5
# On the outermost front.
_STAPLES = 2


def lying_straight(data: bytes) -> bytes:
    """The file with no page turned, to be read."""
    if not any(page.rotation for page in opened(data).reader.pages):
        return data
    writer = PdfWriter(clone_from=PdfReader(BytesIO(data)))
    for page in writer.pages:
        page.rotation = 0
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def check_turns(data: bytes, name: str, backs_turned: bool) -> Iterator[Finding]:
    """Findings about sides that do not lie as the printer needs them."""
    for number, page in enumerate(opened(data).reader.pages, 1):
        wanted = 180 if backs_turned and number % 2 == 0 else 0
        if page.rotation % 360 != wanted:
            what = f"this side is turned by {page.rotation} degrees"
            should = f"{wanted} degrees, to be read when the paper is folded"
            yield Finding(name, number, None, what, should, "", "page")


def check_fold(document: ReadDocument, paper: Paper) -> Iterator[Finding]:
    """Findings about papers: their size, two sides each, a mark where to fold."""
    yield from check_papers(document, paper)
    if len(document.pages) % 2:
        yield Finding(document.name, 0, None, "the last paper has no back", "", "", "page")
    for page in document.pages:
        marks = [s.box for s in page.strokes if _is_aid(s, page) and s.dashed]
        middle = page.height_pt / 2
        if not (any(m.bottom < middle for m in marks) and any(m.top > middle for m in marks)):
            what = "there are no marks where to fold"
            yield Finding(document.name, page.number, None, what, "", "", "page")
    outer = document.pages[0].strokes if document.pages else ()
    if sum(_is_aid(s, document.pages[0]) and not s.dashed for s in outer) < _STAPLES:
        what = "there are not two marks where to staple"
        yield Finding(document.name, 1, None, what, "", "", "page")


def unfolded(document: ReadDocument) -> ReadDocument:
    """The pages in reading order, numbered anew, without white ones at the end."""
    halves = [cells_of(_bare(page), _HALVES) for page in document.pages]
    papers = [halves[index : index + 2] for index in range(0, len(halves) - 1, 2)]
    turning = [(front[1], back[0]) for front, back in papers]
    returning = [(back[1], front[0]) for front, back in reversed(papers)]
    pages = [page for pair in (*turning, *returning) for page in pair]
    return numbered(document.name, without_white(pages))


def _bare(page: ReadPage) -> ReadPage:
    """The side without the marks where to fold and staple."""
    return replace(page, strokes=tuple(s for s in page.strokes if not _is_aid(s, page)))


def _is_aid(stroke: Stroke, page: ReadPage) -> bool:
    return stroke.is_upright and abs(stroke.box.left - page.width_pt / 2) < _SLACK_PT
