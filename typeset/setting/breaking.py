"""Page breaks by an optimum over all of them.

The method is that of the lines, one size up: every way to part the blocks into pages is a
path, and the path of least cost is found by dynamic programming. A page costs by how far
its spaces are from natural (see `Stretch`: 0 least, 1 natural, 2 greatest), squared, so that
two pages a little tight are better than one at its tightest beside a loose one:

    cost of a page = (looseness − 1)²  +  EMPTY_COST × (share left empty)²

What stays empty is what even the greatest heights cannot fill.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from typeset.setting.blocks import Block
from typeset.setting.stretch import GREATEST, TOLERANCE_PT, Stretch, fixed

# A tenth of a page left empty weighs like all its spaces at their least or greatest.
EMPTY_COST = 100.0
_NONE = -1


@dataclass(frozen=True, slots=True)
class Span:
    """The blocks of one page: from `first` to before `end`."""

    first: int
    end: int


def page_height(blocks: Sequence[Block], span: Span) -> Stretch:
    """The heights of the blocks on one page, without the gap before the first."""
    height = fixed(0.0)
    for index in range(span.first, span.end):
        height = height + blocks[index].piece.height
        if index > span.first:
            height = height + blocks[index].before
    return height


def may_break_before(blocks: Sequence[Block], index: int) -> bool:
    """True where a page may end before this block (and at the end of all)."""
    return (
        index == len(blocks) or not blocks[index - 1].keep_with_next or (blocks[index].starts_page)
    )


def page_cost(height: Stretch, room_pt: float, is_last: bool = False) -> float:
    """The cost of filling a page of this room; the last may be short where `is_last` is set."""
    looseness = height.looseness(room_pt)
    if is_last and looseness > 1:
        return 0.0
    empty = max(0.0, room_pt - height.greatest_pt) / room_pt if looseness >= GREATEST else 0.0
    return (looseness - 1) ** 2 + EMPTY_COST * empty**2


def fewest_pages(blocks: Sequence[Block], room_pt: float, natural: bool = False) -> int:
    """How many pages the blocks need at their least (or natural) heights.

    Filling each page before the next is enough for a count: a page that starts later never
    needs more pages after it. Blocks that cannot stand on one page together count as one.
    """
    pages, start = 0, 0
    while start < len(blocks):
        end = _farthest(blocks, start, room_pt, natural)
        start = end if end > start else _next_break(blocks, start)
        pages += 1
    return pages


def best_pages(
    blocks: Sequence[Block], room_pt: float, pages: int, loose_end: bool = False
) -> tuple[Span, ...] | None:
    """The blocks parted into exactly so many pages at least cost; None where it cannot be.

    `loose_end` lets the last page end where it ends, at no cost. Of ways that cost the same
    the one with the fuller first pages wins.
    """
    count = len(blocks)
    best = [[inf] * (count + 1) for _ in range(pages + 1)]
    origin = [[_NONE] * (count + 1) for _ in range(pages + 1)]
    best[0][0] = 0.0
    costs = _page_costs(blocks, room_pt, loose_end)
    for page in range(1, pages + 1):
        for span, cost in costs:
            reached = best[page - 1][span.first] + cost
            if reached < best[page][span.end] or (
                reached == best[page][span.end] < inf and span.first > origin[page][span.end]
            ):
                best[page][span.end], origin[page][span.end] = reached, span.first
    return _path(origin, pages, count) if best[pages][count] < inf else None


def _page_costs(
    blocks: Sequence[Block], room_pt: float, loose_end: bool
) -> list[tuple[Span, float]]:
    """Every page that is possible at all, with its cost, by rising start."""
    costs: list[tuple[Span, float]] = []
    heights = [block.piece.height for block in blocks]
    for first in range(len(blocks)):
        height = heights[first]
        for index in range(first, len(blocks)):
            if index > first:
                if blocks[index].starts_page:
                    break
                height = height + blocks[index].before + heights[index]
            if height.least_pt > room_pt + TOLERANCE_PT:
                break
            if may_break_before(blocks, index + 1):
                is_last = loose_end and index + 1 == len(blocks)
                costs.append((Span(first, index + 1), page_cost(height, room_pt, is_last)))
    return costs


def _path(origin: Sequence[Sequence[int]], pages: int, count: int) -> tuple[Span, ...]:
    spans: list[Span] = []
    end = count
    for page in range(pages, 0, -1):
        first = origin[page][end]
        spans.append(Span(first, end))
        end = first
    return tuple(reversed(spans))


def _farthest(blocks: Sequence[Block], start: int, room_pt: float, natural: bool) -> int:
    """The farthest break that a page from `start` can reach, `start` where there is none."""
    reached, used = start, 0.0
    for index in range(start, len(blocks)):
        block = blocks[index]
        if index > start:
            if block.starts_page:
                break
            gap = blocks[index].before
            used += gap.natural_pt if natural else gap.least_pt
        used += block.piece.height.natural_pt if natural else block.piece.height.least_pt
        if used > room_pt + TOLERANCE_PT:
            break
        if may_break_before(blocks, index + 1):
            reached = index + 1
    return reached


def _next_break(blocks: Sequence[Block], start: int) -> int:
    end = start + 1
    while not may_break_before(blocks, end):
        end += 1
    return end
