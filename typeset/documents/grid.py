"""Small pages together on one paper: copies of a sheet, cards, strips, the leaves of a booklet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.documents.paper import Paper
from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.shapes import PT_PER_MM, Rule, grey, moved
from typeset.setting.frames import Page, Placed, Role

# Where to cut: short dashes, pale enough not to be taken for a line to write on.
_CUT_DASH_PT = (3.0, 3.0)
CUT_COLOUR = grey(0.6)
# Printers leave the edge of the paper white; a cut is found without it.
CUT_FROM_EDGE_MM = 10.0


@dataclass(frozen=True, slots=True)
class Grid:
    """So many cells across and down a paper, all of one size."""

    paper: Paper
    columns: int
    rows: int

    @property
    def cell(self) -> Paper:
        """One cell's share of the paper."""
        paper = self.paper
        return Paper(paper.name, paper.width_mm / self.columns, paper.height_mm / self.rows)

    @property
    def count(self) -> int:
        """How many cells the paper has."""
        return self.columns * self.rows

    def corner_pt(self, index: int) -> tuple[float, float]:
        """The top left corner of a cell; cells are counted row by row."""
        row, column = divmod(index, self.columns)
        cell = self.cell
        return column * cell.width_mm * PT_PER_MM, row * cell.height_mm * PT_PER_MM


def on_papers(pages: Sequence[Page | None], grid: Grid, cuts: bool = True) -> tuple[Page, ...]:
    """The pages in the cells of as many papers as they need; None leaves a cell empty.

    Every page has the size of a cell. With `cuts` dashed lines show where to cut.
    """
    starts = range(0, len(pages), grid.count)
    return tuple(_paper(pages[start : start + grid.count], grid, cuts) for start in starts)


def copied(pages: Sequence[Page], grid: Grid) -> tuple[Page, ...]:
    """Every page in all the cells of a paper of its own, to be cut apart.

    The copies are alike, so that the backs meet the fronts however the paper is turned.
    """
    return on_papers([page for page in pages for _ in range(grid.count)], grid)


def _paper(cells: Sequence[Page | None], grid: Grid, cuts: bool) -> Page:
    width, height = grid.paper.width_mm * PT_PER_MM, grid.paper.height_mm * PT_PER_MM
    placed: list[Placed] = []
    for index, page in enumerate(cells):
        if page is not None:
            placed.extend(_moved(item, *grid.corner_pt(index)) for item in page.placed)
    if cuts:
        placed.extend(_cuts(grid, width, height))
    tint = next((page.tint for page in cells if page is not None), None)
    return Page(width, height, tuple(placed), tint)


def _moved(item: Placed, right_pt: float, down_pt: float) -> Placed:
    shapes = tuple(moved(shape, right_pt, down_pt) for shape in item.shapes)
    return replace(item, x_pt=item.x_pt + right_pt, y_pt=item.y_pt + down_pt, shapes=shapes)


def _cuts(grid: Grid, width_pt: float, height_pt: float) -> Iterator[Placed]:
    edge = CUT_FROM_EDGE_MM * PT_PER_MM
    for column in range(1, grid.columns):
        x = width_pt * column / grid.columns
        yield rule_item(Rule(x, edge, x, height_pt - edge, LEAST_RULE_PT, CUT_COLOUR, _CUT_DASH_PT))
    for row in range(1, grid.rows):
        y = height_pt * row / grid.rows
        yield rule_item(Rule(edge, y, width_pt - edge, y, LEAST_RULE_PT, CUT_COLOUR, _CUT_DASH_PT))


def rule_item(rule: Rule) -> Placed:
    """A rule of the furniture, as an item of a page."""
    left, top = min(rule.x1_pt, rule.x2_pt), min(rule.y1_pt, rule.y2_pt)
    size = (abs(rule.x2_pt - rule.x1_pt), abs(rule.y2_pt - rule.y1_pt))
    return Placed(Role.FURNITURE, left, top, *size, (rule,))
