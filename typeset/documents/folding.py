"""A booklet to fold and staple: small pages two to a side, in the order that folding needs.

With N pages (a multiple of four) every side carries two that sum to N + 1, the odd one at the
right on fronts; the outermost paper carries N, 1 and behind them 2, N − 1 (the rule as told at
mindprod.com/jgloss/imposition.html, read; examples for 4, 8 and 16 pages in the tests).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import Enum

from typeset.documents.grid import CUT_COLOUR, CUT_FROM_EDGE_MM, Grid, on_papers, rule_item
from typeset.documents.paper import Paper
from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.shapes import PT_PER_MM, Rule
from typeset.setting.frames import Document, Duplex, Page, Placed

_FOLD_DASH_PT = (1.5, 2.5)
_TICK_MM = 5.0
_STAPLE_MM = 8.0
# Staples sit a quarter of the way from head and foot (common practice, no source).
_STAPLES_AT = (0.25, 0.75)


class Flip(Enum):
    """The edge over which a printer turns the paper for its back."""

    SHORT_EDGE = "short edge"
    LONG_EDGE = "long edge"


def folding_order(count: int) -> tuple[tuple[int, int], ...]:
    """The pages (from 1) at the left and the right of every side, front, back, front, back …

    `count` is a multiple of four.
    """
    if count % 4:
        raise ValueError(f"{count} is not a multiple of four")
    sides: list[tuple[int, int]] = []
    for first in range(1, count // 2, 2):
        last = count + 1 - first
        sides += [(last, first), (first + 1, last - 1)]
    return tuple(sides)


def folded(document: Document, paper: Paper, flip: Flip) -> Document:
    """The document's pages, each half of this paper (which lies), ready to print and fold.

    White pages fill it up to a multiple of four. Landscape papers turned over their short edge
    keep their top; where the printer turns over the long edge, the backs lie upside down.
    """
    pages: list[Page | None] = [*document.pages]
    pages += [None] * (-len(pages) % 4)
    cells = [pages[number - 1] for side in folding_order(len(pages)) for number in side]
    sides = on_papers(cells, Grid(paper, 2, 1), cuts=False)
    turned = flip is Flip.LONG_EDGE
    return replace(
        document,
        pages=tuple(_finished(side, index, turned) for index, side in enumerate(sides)),
        duplex=Duplex.LONG_EDGE if turned else Duplex.SHORT_EDGE,
        bookmarks=(),
        labels=(),
        tagged=False,
    )


def _finished(side: Page, index: int, backs_turned: bool) -> Page:
    """The side with its aids; only the outermost front shows where to staple."""
    aids = tuple(_aids(side, with_staples=index == 0))
    return replace(side, placed=(*side.placed, *aids), upside_down=backs_turned and index % 2 == 1)


def _aids(side: Page, with_staples: bool) -> Iterator[Placed]:
    middle, edge, tick = side.width_pt / 2, CUT_FROM_EDGE_MM * PT_PER_MM, _TICK_MM * PT_PER_MM
    for top in (edge, side.height_pt - edge - tick):
        yield _upright(middle, top, top + tick, _FOLD_DASH_PT)
    half = _STAPLE_MM * PT_PER_MM / 2
    for share in _STAPLES_AT if with_staples else ():
        centre = share * side.height_pt
        yield _upright(middle, centre - half, centre + half, None)


def _upright(
    x_pt: float, top_pt: float, foot_pt: float, dash_pt: tuple[float, float] | None
) -> Placed:
    rule = Rule(x_pt, top_pt, x_pt, foot_pt, LEAST_RULE_PT, CUT_COLOUR, dash_pt)
    return rule_item(rule)
