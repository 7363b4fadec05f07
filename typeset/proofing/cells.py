"""Papers that hold several small pages: each cell read as a page of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.documents.paper import Paper
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Glyph, ReadDocument, ReadPage, Stroke
from typeset.proofing.places import MM_PT, Box
from typeset.proofing.words import words_of

# What a printer cannot show, with room for the rounding of numbers in the file.
_SLACK_PT = 0.5
_LEAST_CUT_SHARE = 0.8


@dataclass(frozen=True, slots=True)
class Cells:
    """So many equal cells across and down a paper."""

    columns: int
    rows: int

    @property
    def count(self) -> int:
        """How many there are."""
        return self.columns * self.rows


def cells_of(page: ReadPage, cells: Cells) -> tuple[ReadPage, ...]:
    """The cells of a paper, row by row, each as a page with its own top left corner."""
    return tuple(_cell(page, cells, index) for index in range(cells.count))


def numbered(name: str, pages: Sequence[ReadPage]) -> ReadDocument:
    """The pages as a document, numbered in this order."""
    return ReadDocument(
        name,
        tuple(
            replace(page, number=n, words=words_of(page.glyphs, page.strokes, n))
            for n, page in enumerate(pages, 1)
        ),
    )


def check_papers(document: ReadDocument, paper: Paper) -> Iterator[Finding]:
    """Findings about papers of another size."""
    wide, high = paper.width_mm * MM_PT, paper.height_mm * MM_PT
    for page in document.pages:
        if max(abs(page.width_pt - wide), abs(page.height_pt - high)) > MM_PT:
            what = f"the paper is {page.width_pt / MM_PT:.0f} by {page.height_pt / MM_PT:.0f} mm"
            should = f"{paper.width_mm:g} by {paper.height_mm:g} mm ({paper.name})"
            yield Finding(document.name, page.number, None, what, should, "", "page")
    yield from check_within(document)


def check_within(document: ReadDocument) -> Iterator[Finding]:
    """Findings about what is drawn off the paper: no cell of it would hold that."""
    for page in document.pages:
        whole = Box(0.0, 0.0, page.width_pt, page.height_pt)
        boxes = [*(each.box for each in page.glyphs), *(each.box for each in page.strokes)]
        if any(not box.overlaps(whole) and not whole.holds(*box.centre) for box in boxes):
            what = "something is printed beyond the edge of the paper"
            yield Finding(document.name, page.number, None, what, "", "", "margin")


def check_cuts(page: ReadPage, cells: Cells, name: str) -> Iterator[Finding]:
    """Findings about cells with no line between them to cut along."""
    wide, high = page.width_pt, page.height_pt
    for column in range(1, cells.columns):
        x = wide * column / cells.columns
        if not any(
            _is_upright_cut(s, x) and s.box.height > _LEAST_CUT_SHARE * high for s in page.strokes
        ):
            yield _no_cut(page, name, f"a dashed line {x / MM_PT:.0f} mm from the left")
    for row in range(1, cells.rows):
        y = high * row / cells.rows
        if not any(
            _is_level_cut(s, y) and s.box.width > _LEAST_CUT_SHARE * wide for s in page.strokes
        ):
            yield _no_cut(page, name, f"a dashed line {y / MM_PT:.0f} mm down")


def _no_cut(page: ReadPage, name: str, should: str) -> Finding:
    what = "there is no line to cut along"
    return Finding(name, page.number, None, what, should, "", "page")


def without_white(pages: Sequence[ReadPage]) -> list[ReadPage]:
    """The pages but for white ones at the end, which may have the paper's tint."""
    kept = list(pages)
    while kept and not kept[-1].glyphs and all(_is_ground(s, kept[-1]) for s in kept[-1].strokes):
        kept.pop()
    return kept


def _cell(page: ReadPage, cells: Cells, index: int) -> ReadPage:
    row, column = divmod(index, cells.columns)
    wide, high = page.width_pt / cells.columns, page.height_pt / cells.rows
    area = Box(column * wide, row * high, (column + 1) * wide, (row + 1) * high)
    glyphs = tuple(_moved_glyph(g, area) for g in page.glyphs if _in(g.box, area))
    strokes = tuple(
        _moved_stroke(stroke, area, page)
        for stroke in page.strokes
        if not _is_cut(stroke, page, cells) and (_in(stroke.box, area) or _is_ground(stroke, page))
    )
    images = tuple(_moved(box, area) for box in page.images if _in(box, area))
    return replace(
        page,
        width_pt=wide,
        height_pt=high,
        glyphs=glyphs,
        strokes=strokes,
        words=words_of(glyphs, strokes, page.number),
        images=images,
        side=page.number,
        corner_pt=(area.left, area.top),
    )


def _in(box: Box, area: Box) -> bool:
    x, y = box.centre
    return area.left <= x < area.right and area.top <= y < area.bottom


def _is_ground(stroke: Stroke, page: ReadPage) -> bool:
    """True for the paper's tint."""
    whole = Box(0.0, 0.0, page.width_pt, page.height_pt)
    return stroke.filled and stroke.order == 0 and stroke.box.covers(whole)


def _moved(box: Box, area: Box) -> Box:
    left, top = area.left, area.top
    return Box(box.left - left, box.top - top, box.right - left, box.bottom - top)


def _moved_glyph(glyph: Glyph, area: Box) -> Glyph:
    return replace(glyph, box=_moved(glyph.box, area), baseline=glyph.baseline - area.top)


def _moved_stroke(stroke: Stroke, area: Box, page: ReadPage) -> Stroke:
    """The stroke moved; the paper's tint is cut to this cell."""
    if _is_ground(stroke, page):
        own = Box(0.0, 0.0, area.right - area.left, area.bottom - area.top)
        return replace(stroke, box=own)
    points, bends = (
        tuple((x - area.left, y - area.top) for x, y in each)
        for each in (stroke.points, stroke.bends)
    )
    return replace(stroke, box=_moved(stroke.box, area), points=points, bends=bends)


def _is_cut(stroke: Stroke, page: ReadPage, cells: Cells) -> bool:
    """True for a dashed line between two cells."""
    xs = (page.width_pt * each / cells.columns for each in range(1, cells.columns))
    ys = (page.height_pt * each / cells.rows for each in range(1, cells.rows))
    return any(_is_upright_cut(stroke, x) for x in xs) or any(_is_level_cut(stroke, y) for y in ys)


def _is_upright_cut(stroke: Stroke, x_pt: float) -> bool:
    return stroke.dashed and stroke.is_upright and abs(stroke.box.left - x_pt) < _SLACK_PT


def _is_level_cut(stroke: Stroke, y_pt: float) -> bool:
    return stroke.dashed and stroke.is_level and abs(stroke.box.top - y_pt) < _SLACK_PT
