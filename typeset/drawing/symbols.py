"""Symbols that the face lacks, drawn as outlines: arrows, ticks, crosses, boxes to fill in.

A font that has a sign of its own is used as it is. Outlines are filled and have no line, as
letters are, so that whoever reads a page back can tell them from the strokes of a figure.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from typeset.drawing.boxes import Point
from typeset.drawing.fonts import MATHS_AXIS_EMS, has_glyph, known_width_pt, width_pt
from typeset.drawing.shapes import PT_PER_MM, Colour, Face, Path, PathStep, Rect, Shape

# White at each side of a symbol, in ems.
_SIDE_EMS = 0.07
# An arrow as long as a dash and a half, its shaft as heavy as the minus sign.
_LENGTH, _SHAFT, _HEAD, _WING = 0.86, 0.038, 0.27, 0.19
# The middle of an upright arrow: between the baseline and the height of a figure.
_UPRIGHT_MIDDLE = 0.32
_TICK = ((0.0, 0.30), (0.08, 0.375), (0.24, 0.175), (0.56, 0.70), (0.65, 0.645), (0.255, 0.0))
_CROSS_HALF, _CROSS_ARM = 0.28, 0.095
# A box to tick or fill in is as high as a capital, and never too small to be seen as one.
_BOX_EMS = 0.75
_LEAST_BOX_PT = 2.6 * PT_PER_MM
_BOX_DEPTH_EMS = 0.05
_BOX_LINE_PT = 0.25 * PT_PER_MM

_BOXES = frozenset("\u25a1\u2610\u25a2")


def _arrow(heads: str) -> tuple[Point, ...]:
    """A level arrow around the origin, with a head at its right, its left or at both ends."""
    end = _LENGTH / 2
    right = ((end - _HEAD, _SHAFT), (end - _HEAD, _WING), (end, 0.0))
    left = tuple((-x, y) for x, y in reversed(right))
    if heads == "both":
        over: tuple[Point, ...] = (*left, *right)
    elif heads == "right":
        over = ((-end, _SHAFT), *right)
    else:
        over = (*left, (end, _SHAFT))
    under = [(x, -y) for x, y in reversed(over) if y != 0]
    return (*over, *under)


def _moved(points: Sequence[Point], right: float, up: float) -> tuple[Point, ...]:
    return tuple((x + right, y + up) for x, y in points)


def _upright(points: Sequence[Point]) -> tuple[Point, ...]:
    """Turned by a quarter, so that right becomes up."""
    return tuple((-y, x) for x, y in points)


def _cross() -> tuple[Point, ...]:
    s, u = _CROSS_HALF, _CROSS_ARM
    quarter = ((s - u, s), (s, s - u), (u, 0.0))
    turned = [quarter]
    for _ in range(3):
        turned.append(tuple((y, -x) for x, y in turned[-1]))  # type: ignore[arg-type]
    return tuple(point for part in turned for point in part)


_LEVEL = (_SIDE_EMS + _LENGTH / 2, MATHS_AXIS_EMS)
_STANDING = (_SIDE_EMS + _WING, _UPRIGHT_MIDDLE)
_OUTLINES: dict[str, tuple[Point, ...]] = {
    "\u2192": _moved(_arrow("right"), *_LEVEL),
    "\u2190": _moved(_arrow("left"), *_LEVEL),
    "\u2194": _moved(_arrow("both"), *_LEVEL),
    "\u2191": _moved(_upright(_arrow("right")), *_STANDING),
    "\u2193": _moved(_upright(_arrow("left")), *_STANDING),
    "\u2713": _moved(_TICK, _SIDE_EMS, 0.0),
    "\u2717": _moved(_cross(), _SIDE_EMS + _CROSS_HALF, 0.34),
}
# Heavier twins of the same signs are drawn alike.
_OUTLINES |= {"\u2714": _OUTLINES["\u2713"], "\u2718": _OUTLINES["\u2717"]}
SYMBOLS = frozenset(_OUTLINES) | _BOXES


def is_drawn(character: str, face: Face) -> bool:
    """True for a symbol that is drawn, since the face has no glyph for it."""
    return character in SYMBOLS and not has_glyph(character, face)


def runs(text: str, face: Face) -> Iterable[tuple[str, bool]]:
    """The text cut where letters end and drawn symbols begin; true for symbols."""
    if SYMBOLS.isdisjoint(text):
        return ((text, False),) if text else ()
    cut = groupby(text, key=lambda character: is_drawn(character, face))
    return [("".join(run), drawn) for drawn, run in cut]


def text_width_pt(text: str, size_pt: float, face: Face = Face.REGULAR) -> float:
    """The width of letters and drawn symbols on one line. Raises GlyphError."""
    whole = known_width_pt(text, size_pt, face)
    if whole is not None:
        return whole
    return sum(
        sum(symbol_width_pt(each, size_pt) for each in run)
        if drawn
        else width_pt(run, size_pt, face)
        for run, drawn in runs(text, face)
    )


def symbol_width_pt(symbol: str, size_pt: float) -> float:
    """The width of a symbol with the white at its sides."""
    if symbol in _BOXES:
        return _box_pt(size_pt) + 2 * _SIDE_EMS * size_pt
    return (max(x for x, _ in _OUTLINES[symbol]) + _SIDE_EMS) * size_pt


def symbol_shape(symbol: str, x_pt: float, size_pt: float, colour: Colour) -> Shape:
    """The symbol with its left side at x, on a baseline at y = 0."""
    if symbol in _BOXES:
        side, left = _box_pt(size_pt), x_pt + _SIDE_EMS * size_pt
        return Rect(left, _BOX_DEPTH_EMS * size_pt - side, side, side, _BOX_LINE_PT, colour)
    points = [(x_pt + x * size_pt, -y * size_pt) for x, y in _OUTLINES[symbol]]
    steps: list[PathStep] = [("M", *points[0])]
    steps += [("L", *point) for point in (*points[1:], points[0])]
    return Path(tuple(steps), 0.0, colour, colour)


def _box_pt(size_pt: float) -> float:
    return max(_BOX_EMS * size_pt, _LEAST_BOX_PT)
