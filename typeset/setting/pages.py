"""Blocks in, finished pages out: exactly the sides asked for, or as many as needed.

`fill_sides` takes the largest type size of a range at which the blocks fit at their least
heights, chooses the page breaks by an optimum, and shares what is left among answer spaces
and gaps. `flow` sets a document of any length at one size.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from typeset.drawing.shapes import Colour
from typeset.errors import FitError
from typeset.setting.advice import parted, too_few_blocks, too_long, too_tall
from typeset.setting.blocks import Block
from typeset.setting.breaking import Span, best_pages, fewest_pages, page_height
from typeset.setting.frames import Page, Placed
from typeset.setting.stretch import GREATEST, NATURAL, TOLERANCE_PT

# What a teacher sees as a full side: a little white at the foot is no matter, and the last
# side may end earlier (issue 4).
FULL_SHARE = 0.92
LAST_FULL_SHARE = 0.85
# A flowing page is stretched to its foot only where that needs no more than this looseness;
# a page that ends early because the next block did not fit is better left short than spread.
_FLOW_LOOSENESS = 1.6

Compose: TypeAlias = Callable[[float], Sequence[Block]]
# Running head and foot of page `index` (from 0) of `count`.
Furniture: TypeAlias = Callable[[int, int], tuple[Placed, ...]]


def no_furniture(_index: int, _count: int) -> tuple[Placed, ...]:
    """Pages without running head or foot."""
    return ()


@dataclass(frozen=True, slots=True)
class PageFrame:
    """The paper, and the area on it that blocks are set in, all in points."""

    paper_width_pt: float
    paper_height_pt: float
    left_pt: float
    top_pt: float
    width_pt: float
    height_pt: float
    furniture: Furniture = no_furniture
    tint: Colour | None = None


@dataclass(frozen=True, slots=True)
class PageLayout:
    """Finished pages, how full each is (1 is to the foot), and notes for the teacher."""

    pages: tuple[Page, ...]
    type_size_pt: float
    fills: tuple[float, ...]
    looseness: tuple[float, ...]
    notes: tuple[str, ...] = ()


def fill_sides(
    compose: Compose, frame: PageFrame, sides: int, sizes: Sequence[float]
) -> PageLayout:
    """The blocks on exactly so many sides, at the largest of the sizes that fits.

    `sizes` descend. Raises FitError naming what would help where even the smallest does not
    fit, and what `compose` raises.
    """
    too_wide: FitError | None = None
    for size in sizes:
        try:
            blocks = compose(size)
        except FitError as error:
            # A word too wide at this size may fit at a smaller one.
            too_wide = error
            continue
        too_wide = None
        spans = best_pages(blocks, frame.height_pt, sides)
        if spans is not None:
            return _filled(blocks, spans, frame, size)
    if too_wide is not None:
        raise too_wide
    raise _misfit(compose(sizes[-1]), frame, sides, sizes[-1])


def fill_needed(compose: Compose, frame: PageFrame, sizes: Sequence[float]) -> PageLayout:
    """The blocks on as many sides as they need at the largest size, the sides evenly filled.

    `sizes` descend; a smaller one is taken only where a block does not fit at a larger.
    Raises FitError for a block that is too wide or too tall at every size.
    """
    failed: FitError | None = None
    for size in sizes:
        try:
            blocks = compose(size)
        except FitError as error:
            failed = error
            continue
        if tall := too_tall(blocks, frame.height_pt, size):
            failed = tall
            continue
        return _fill_fewest(blocks, frame, size)
    raise failed or FitError("there is no type size to set the sheet in")


def _fill_fewest(blocks: Sequence[Block], frame: PageFrame, size_pt: float) -> PageLayout:
    """On the sides that the natural heights need, or one fewer where they then fit."""
    natural = fewest_pages(blocks, frame.height_pt, natural=True)
    for sides in (natural - 1, natural):
        spans = best_pages(blocks, frame.height_pt, sides) if sides else None
        if spans is not None:
            layout = _filled(blocks, spans, frame, size_pt)
            return replace(layout, notes=_note_on_needed(layout))
    raise FitError("these blocks find no place, though each fits on a side")


def flow(compose: Compose, frame: PageFrame, size_pt: float) -> PageLayout:
    """The blocks on as few pages as they need at natural heights, evenly filled.

    Raises FitError for blocks that must stand together and are taller than a page.
    """
    blocks = parted(compose(size_pt), frame.height_pt)
    if not blocks:
        return PageLayout((), size_pt, (), ())
    if tall := too_tall(blocks, frame.height_pt, size_pt):
        raise tall
    needed = fewest_pages(blocks, frame.height_pt, natural=True)
    spans = best_pages(blocks, frame.height_pt, needed, loose_end=True)
    assert spans is not None, "filling page by page is itself a way to make so many pages"
    loosenesses = [_flowing(blocks, span, frame, span is spans[-1]) for span in spans]
    return _laid_out(blocks, spans, loosenesses, frame, size_pt)


def _misfit(blocks: Sequence[Block], frame: PageFrame, sides: int, size_pt: float) -> FitError:
    if tall := too_tall(blocks, frame.height_pt, size_pt):
        return tall
    if fewest_pages(blocks, frame.height_pt) > sides:
        return too_long(blocks, frame.height_pt, sides, size_pt)
    return too_few_blocks(blocks, sides)


def _filled(
    blocks: Sequence[Block], spans: Sequence[Span], frame: PageFrame, size_pt: float
) -> PageLayout:
    heights = [page_height(blocks, span) for span in spans]
    full = [height.looseness(frame.height_pt) for height in heights]
    enough = heights[-1].looseness(LAST_FULL_SHARE * frame.height_pt)
    # The last side is as loose as the others rather than filled at any price.
    calm = max(enough, *full[:-1], NATURAL) if len(full) > 1 else GREATEST
    full[-1] = min(full[-1], calm)
    layout = _laid_out(blocks, spans, full, frame, size_pt)
    return replace(layout, notes=_notes(layout))


def _flowing(blocks: Sequence[Block], span: Span, frame: PageFrame, is_last: bool) -> float:
    full = page_height(blocks, span).looseness(frame.height_pt)
    if full <= NATURAL or (full <= _FLOW_LOOSENESS and not is_last):
        return full
    return NATURAL


def _laid_out(
    blocks: Sequence[Block],
    spans: Sequence[Span],
    loosenesses: Sequence[float],
    frame: PageFrame,
    size_pt: float,
) -> PageLayout:
    pages: list[Page] = []
    fills: list[float] = []
    for index, (span, looseness) in enumerate(zip(spans, loosenesses, strict=True)):
        placed = _placed(blocks, span, looseness, frame)
        furniture = frame.furniture(index, len(spans))
        size = (frame.paper_width_pt, frame.paper_height_pt)
        pages.append(Page(*size, (*placed, *furniture), frame.tint))
        used = page_height(blocks, span).at(looseness)
        fills.append(min(1.0, used / frame.height_pt))
    return PageLayout(tuple(pages), size_pt, tuple(fills), tuple(loosenesses))


def _placed(
    blocks: Sequence[Block], span: Span, looseness: float, frame: PageFrame
) -> tuple[Placed, ...]:
    placed: list[Placed] = []
    top = frame.top_pt
    for index in range(span.first, span.end):
        block = blocks[index]
        top += blocks[index].before.at(looseness) if index > span.first else 0.0
        height = block.piece.height.at(looseness)
        placed.extend(_anchored(block.piece.place(frame.left_pt, top, height), block.anchor))
        top += height
    return tuple(placed)


def _anchored(placed: tuple[Placed, ...], anchor: str) -> tuple[Placed, ...]:
    """The items of a block, the first of them named as the block is."""
    if not anchor or not placed:
        return placed
    return (replace(placed[0], anchor=anchor), *placed[1:])


def _notes(layout: PageLayout) -> tuple[str, ...]:
    return tuple(
        f"side {index + 1} is {fill * 100:.0f} % full: at {layout.type_size_pt:g} pt, the largest "
        "size that fits, and with every space at its greatest there is no more to fill it; "
        "add a question, allow more room to work, or ask for fewer sides"
        for index, fill in _not_full(layout)
    )


def _note_on_needed(layout: PageLayout) -> tuple[str, ...]:
    """One line about all sides that are not full, where the sides are as many as needed."""
    told = [f"side {index + 1} ({fill * 100:.0f} %)" for index, fill in _not_full(layout)]
    if not told:
        return ()
    return (
        f"not full: {', '.join(told)}; at {layout.type_size_pt:g} pt what comes next does not fit "
        "below, and every space is at its greatest",
    )


def _not_full(layout: PageLayout) -> list[tuple[int, float]]:
    last = len(layout.fills) - 1
    return [
        (index, fill)
        for index, fill in enumerate(layout.fills)
        if fill < (LAST_FULL_SHARE if index == last else FULL_SHARE) - TOLERANCE_PT / 100
    ]
