"""What a drawn scale reads: the place of its pointer or level among its own marks.

Start and end are taken from the marks on the page, so that nothing needs to be known of sizes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

from typeset.arithmetic.figures import ScaleShape
from typeset.proofing.page_marks import Stroke
from typeset.proofing.turns import Point, centre_of, lines_from, rounds, turn_of

_ALIGNED_PT = 0.3
# A heavier line is the level in a jug, not a mark.
_HEAVIEST_MARK_PT = 1.5
# A mark of a dial points at its middle; so far off is another line.
_RADIAL_DEGREES = 1.0
_LEAST_DIAL_PT = 40.0
_OFF_CENTRE_PT = 2.0
# Between the marks of a scale and what is shown over them.
_NEAR_PT = 4.0
_TINT = 0.99


def reading_of(strokes: Sequence[Stroke], shape: ScaleShape, count: int) -> float | None:
    """The reading as a share of the scale, from 0 to 1; None where nothing is shown.

    Raises NoMarks where the scale does not have `count` marks.
    """
    if shape is ScaleShape.DIAL:
        return _turned(strokes, count)
    read = {ScaleShape.LINE: _pointed, ScaleShape.RULER: _measured, ScaleShape.JUG: _filled}[shape]
    sets = _marks(strokes, count, upright=shape is not ScaleShape.JUG)
    if not sets:
        raise NoMarks
    # Rules to write on may be as many as the marks: what is read belongs to one of the sets.
    return next((found for marks in sets if (found := read(strokes, marks)) is not None), None)


class NoMarks(Exception):  # noqa: N818  # a state of the page, not a fault of ours
    """A scale does not have as many marks as it should."""


@dataclass(frozen=True, slots=True)
class _Marks:
    """Parallel marks that start on one line: their places along it, and where it lies."""

    at: tuple[float, ...]
    base: float

    def share(self, place: float) -> float:
        """A place as a share of the way from the first mark to the last."""
        return (place - self.at[0]) / (self.at[-1] - self.at[0])


def _marks(strokes: Sequence[Stroke], count: int, upright: bool) -> list[_Marks]:
    """The sets of so many lines; a page may hold other ones than the scale's."""
    found: list[tuple[float, float]] = []
    for stroke in strokes:
        box = stroke.box
        if stroke.shape != "line" or stroke.thickness_pt > _HEAVIEST_MARK_PT:
            continue
        if upright and box.width < _ALIGNED_PT < box.height:
            found.append((box.top, box.left))
        elif not upright and box.height < _ALIGNED_PT < box.width:
            found.append((box.left, box.top))
    sets: list[_Marks] = []
    for base in sorted({base for base, _ in found}):
        at = sorted(place for start, place in found if abs(start - base) < _ALIGNED_PT)
        if len(at) == count and at[-1] > at[0]:
            sets.append(_Marks(tuple(at), base))
    return sets


def _pointed(strokes: Sequence[Stroke], marks: _Marks) -> float | None:
    """By the lowest corner of a filled arrow head just over the marks."""
    for stroke in strokes:
        if stroke.shape == "curve" and stroke.filled and len(set(stroke.points)) == 3:
            tip = max(stroke.points, key=lambda point: point[1])
            if abs(tip[1] - marks.base) < _NEAR_PT:
                return marks.share(tip[0])
    return None


def _measured(strokes: Sequence[Stroke], marks: _Marks) -> float | None:
    """By the right end of the tinted thing that starts at the first mark."""
    for stroke in strokes:
        box = stroke.box
        starts = abs(box.left - marks.at[0]) < 1 and abs(box.bottom - marks.base) < _NEAR_PT
        if starts and _is_tinted(stroke):
            return marks.share(box.right)
    return None


def _filled(strokes: Sequence[Stroke], marks: _Marks) -> float | None:
    """By the upper edge of what is in the jug, which stands on its lowest mark."""
    for stroke in strokes:
        box = stroke.box
        stands = abs(box.left - marks.base) < 1 and abs(box.bottom - marks.at[-1]) < 1
        if stands and _is_tinted(stroke):
            return 1 - marks.share(box.top)
    return None


def _is_tinted(stroke: Stroke) -> bool:
    return (
        stroke.shape == "rect"
        and stroke.filled
        and stroke.fill is not None
        and 0.5 < min(stroke.fill) < _TINT
    )


def _turned(strokes: Sequence[Stroke], count: int) -> float | None:
    """By the turn of the pointer, between those of the first and the last mark."""
    for dial in rounds(strokes, _LEAST_DIAL_PT):
        centre = centre_of(dial)
        turns = sorted(_signed(turn) for turn in _radial(strokes, centre, dial.width / 2))
        if len(turns) != count:
            continue
        needles = lines_from(strokes, centre)
        return _Marks(tuple(turns), 0.0).share(_signed(needles[0][0])) if needles else None
    raise NoMarks


def _signed(turn: float) -> float:
    return turn - 360 if turn > 180 else turn


def _radial(strokes: Sequence[Stroke], centre: Point, radius: float) -> list[float]:
    """The turns of all lines within the circle that point at its centre without reaching it."""
    found = []
    for stroke in strokes:
        if stroke.shape != "line":
            continue
        off = [dist(point, centre) for point in stroke.points]
        if min(off) < _OFF_CENTRE_PT or max(off) > radius:
            continue
        one, other = (turn_of(centre, point) for point in stroke.points)
        if abs(_signed((one - other) % 360)) < _RADIAL_DEGREES:
            found.append(one)
    return found
