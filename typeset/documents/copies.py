"""Copies of a sheet side by side on one paper, to be cut apart."""

from __future__ import annotations

from dataclasses import replace

from typeset.documents.paper import Paper
from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.shapes import PT_PER_MM, Rule, grey, moved
from typeset.setting.frames import Page, Placed, Role

# Where to cut: short dashes, pale enough not to be taken for a line to write on.
_CUT_DASH_PT = (3.0, 3.0)
_CUT_COLOUR = grey(0.6)
# Printers leave the edge of the paper white; a cut is found without it.
_CUT_FROM_EDGE_MM = 10.0


def side_by_side(pages: tuple[Page, ...], paper: Paper, copies: int) -> tuple[Page, ...]:
    """Every page so many times on a sheet of this paper, with a dashed line to cut along.

    The copies on a sheet are alike, so that the backs meet the fronts however it is turned.
    """
    return pages if copies == 1 else tuple(_sheet(page, paper, copies) for page in pages)


def _sheet(page: Page, paper: Paper, copies: int) -> Page:
    width, height = paper.width_mm * PT_PER_MM, paper.height_mm * PT_PER_MM
    lefts = [width * index / copies for index in range(copies)]
    placed = [_moved(item, left) for left in lefts for item in page.placed]
    cuts = (_cut(left, height) for left in lefts[1:])
    return Page(width, height, (*placed, *cuts), page.tint)


def _moved(item: Placed, right_pt: float) -> Placed:
    shapes = tuple(moved(shape, right_pt, 0.0) for shape in item.shapes)
    return replace(item, x_pt=item.x_pt + right_pt, shapes=shapes)


def _cut(x_pt: float, height_pt: float) -> Placed:
    edge = _CUT_FROM_EDGE_MM * PT_PER_MM
    rule = Rule(x_pt, edge, x_pt, height_pt - edge, LEAST_RULE_PT, _CUT_COLOUR, _CUT_DASH_PT)
    return Placed(Role.FURNITURE, x_pt, edge, 0.0, height_pt - 2 * edge, (rule,))
