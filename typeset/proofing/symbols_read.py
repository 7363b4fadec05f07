"""Drawn symbols read back: arrows, ticks and crosses that leave no letters on the page.

They are told by their outline alone: filled, without a line, straight-edged, with as many
corners as such a sign has, and these where such a sign has them. Nothing else on a page is
painted so. Each then stands among the letters of its line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from typeset.proofing.page_marks import OPEN_BOX, Glyph, Stroke

RIGHT, LEFT, BOTH, UP, DOWN = "\u2192", "\u2190", "\u2194", "\u2191", "\u2193"
TICK, CROSS = "\u2713", "\u2717"
# Signs that are drawn alike.
_ALIKE = str.maketrans({"\u2714": TICK, "\u2718": CROSS, "\u2610": OPEN_BOX, "\u25a2": OPEN_BOX})
# Corners of an arrow with one head, one with two, a tick and a cross.
_ONE_HEAD, _TWO_HEADS, _TICK_CORNERS, _CROSS_CORNERS = 7, 10, 6, 12
_NEAR = 0.06
# A symbol is between so much and so much of the size of its neighbours.
_HEIGHT_EMS = (0.25, 1.1)
# Where no letter stands beside it, a symbol is taken to be so many ems high.
_USUAL_EMS = 0.7

Shares: TypeAlias = list[tuple[float, float]]


def as_read(text: str) -> str:
    """The text with signs that are drawn alike as they are read back, boxes standing apart."""
    return drawn_alike(text).replace(OPEN_BOX, f" {OPEN_BOX} ")


def drawn_alike(text: str) -> str:
    """The text with one sign for each group of twins."""
    return text.translate(_ALIKE)


def find_symbols(glyphs: Sequence[Glyph], strokes: Sequence[Stroke]) -> Iterator[Glyph]:
    """Every drawn symbol of a page, as a letter on the baseline of its neighbours."""
    for stroke in strokes:
        text = symbol_of(stroke)
        if text is not None:
            yield _as_letter(text, stroke, glyphs)


def symbol_of(stroke: Stroke) -> str | None:
    """The symbol that this outline is; None for anything else."""
    if stroke.shape != "curve" or not stroke.filled or stroke.stroked:
        return None
    corners = _shares(stroke)
    match len(corners):
        case n if n == _ONE_HEAD:
            return _one_headed(corners)
        case n if n == _TWO_HEADS:
            return BOTH if _is_tip(corners, 0, 0.0) and _is_tip(corners, 0, 1.0) else None
        case n if n == _TICK_CORNERS:
            return TICK if _is_tick(corners) else None
        case n if n == _CROSS_CORNERS:
            return CROSS if _is_cross(corners) else None
    return None


def _shares(stroke: Stroke) -> Shares:
    """The corners, each once, as shares of the outline's width and height."""
    box = stroke.box
    corners: list[tuple[float, float]] = []
    for point in stroke.points:
        if not any(abs(point[0] - x) + abs(point[1] - y) < 0.01 for x, y in corners):
            corners.append(point)
    width, height = max(box.width, 0.01), max(box.height, 0.01)
    left, top = min(x for x, _ in corners), min(y for _, y in corners)
    return [((x - left) / width, (y - top) / height) for x, y in corners]


def _one_headed(corners: Shares) -> str | None:
    """The way of the one corner that stands alone in the middle of a side; the side across
    from it has the two ends of a shaft."""
    ways = [(RIGHT, 0, 1.0), (LEFT, 0, 0.0), (DOWN, 1, 1.0), (UP, 1, 0.0)]
    found = [
        text
        for text, axis, end in ways
        if _is_tip(corners, axis, end) and _count(corners, axis, 1 - end) == 2
    ]
    return found[0] if len(found) == 1 else None


def _count(corners: Shares, axis: int, end: float) -> int:
    return sum(abs(corner[axis] - end) < _NEAR for corner in corners)


def _is_tip(corners: Shares, axis: int, end: float) -> bool:
    at = [corner[1 - axis] for corner in corners if abs(corner[axis] - end) < _NEAR]
    return len(at) == 1 and abs(at[0] - 0.5) < _NEAR


def _is_tick(corners: Shares) -> bool:
    """Lowest left of its middle, highest at its right, its left end between."""
    lowest = max(corners, key=lambda corner: corner[1])
    highest = min(corners, key=lambda corner: corner[1])
    leftmost = min(corners, key=lambda corner: corner[0])
    return 0.15 < lowest[0] < 0.55 and highest[0] > 0.7 and 0.3 < leftmost[1] < 0.8


def _is_cross(corners: Shares) -> bool:
    """The same from all four sides, with two corners at each end of its arms."""
    mirrored = all(
        any(abs(x - u) < _NEAR and abs(y - v) < _NEAR for u, v in corners)
        for a, b in corners
        for x, y in ((1 - a, b), (a, 1 - b), (b, a))
    )
    return mirrored and not any(abs(x - 0.5) < 0.02 and abs(y - 0.5) < 0.02 for x, y in corners)


def _as_letter(text: str, stroke: Stroke, glyphs: Sequence[Glyph]) -> Glyph:
    box = stroke.box
    middle = (box.top + box.bottom) / 2
    beside = [
        glyph
        for glyph in glyphs
        if glyph.box.top <= middle <= glyph.box.bottom
        and _HEIGHT_EMS[0] * glyph.size_pt <= box.height <= _HEIGHT_EMS[1] * glyph.size_pt
    ]
    near = min(beside, key=lambda glyph: abs(glyph.order - stroke.order), default=None)
    size = near.size_pt if near else box.height / _USUAL_EMS
    baseline = near.baseline if near else box.bottom
    return Glyph(text, box, baseline, size, "", stroke.fill, stroke.order, True)
