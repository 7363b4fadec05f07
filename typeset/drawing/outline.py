"""The outline of a shape with square corners, and its sides' lengths beside them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from typeset.arithmetic.figures import Outline, Show
from typeset.drawing.boxes import Point
from typeset.drawing.figure_words import outline_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import OUTLINE_PT, line
from typeset.drawing.shapes import Drawing
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

_GAP_PT = 4.0
_MOST_WIDTH_PT = 240.0
_MOST_HEIGHT_PT = 170.0
# Room beside an empty outline for the pupil's numbers (8 mm), as beside an empty rectangle.
_WRITING_PT = 23.0
# A label may stand beside one in a corner, so a strip holds the height of three.
_STACKED = 3


def draw_outline(figure: Outline, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The shape to scale where every length can stand at its side; else its strips are widened.

    Raises FitError, GlyphError.
    """
    return largest_that_fits(lambda size: _outline(figure, show, width_pt, size), size_pt)


@dataclass(frozen=True, slots=True)
class _Side:
    """A side from one corner to the next, clockwise, with its label."""

    start: tuple[Fraction, Fraction]
    end: tuple[Fraction, Fraction]
    label: Label | None

    @property
    def is_level(self) -> bool:
        return self.start[1] == self.end[1]


def _outline(figure: Outline, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    sides = _sides(figure, show, size_pt)
    xs, ys = (sorted({corner[axis] for corner in figure.corners}) for axis in (0, 1))
    left, right = _margins(sides, xs, show)
    inside = mark_label(figure.inside, show, size_pt)
    field = _largest_field(figure, xs, ys)
    needs = _needs(sides, xs, level=True), _needs(sides, ys, level=False)
    if inside is not None:
        needs[0][field[0]] = max(needs[0][field[0]], inside.width_pt + 2 * _GAP_PT)
    columns, rows = _strips((xs, ys), needs, width_pt - left - right)
    across = _places(xs, left, columns)
    down = _places(ys, 0.0, rows)
    points = [(across[x], down[y]) for x, y in (*figure.corners, figure.corners[0])]
    sketch.add(line(points, OUTLINE_PT))
    if show is Show.FRAME:
        sketch.room_to(-_WRITING_PT)
        sketch.room_to(down[ys[-1]] + _WRITING_PT)
    for side in sides:
        if side.label is not None:
            _put_beside(sketch, side, (across[side.start[0]], down[side.start[1]]),
                        (across[side.end[0]], down[side.end[1]]), side.label)  # fmt: skip
    if inside is not None:
        centre = across[xs[field[0]]] + columns[field[0]] / 2
        sketch.put_level(inside, centre, down[ys[field[1]]] + rows[field[1]] / 2)
    total = mark_label(figure.total, show, size_pt)
    if total is not None:
        low = max(0.0, (across[xs[0]] + across[xs[-1]] - total.width_pt) / 2)
        top = sketch.lowest_pt() + _GAP_PT
        sketch.put(total, min(low, width_pt - total.width_pt), top)
    return sketch.finished(outline_words(figure, show))


def _sides(figure: Outline, show: Show, size_pt: float) -> list[_Side]:
    ends = pairwise((*figure.corners, figure.corners[0]))
    labels = (mark_label(mark, show, size_pt) for mark in figure.marks)
    return [_Side(start, end, label) for (start, end), label in zip(ends, labels, strict=True)]


def _margins(sides: Sequence[_Side], xs: Sequence[Fraction], show: Show) -> tuple[float, float]:
    """Room left and right of the shape for the labels of its outermost upright sides."""
    least = _WRITING_PT if show is Show.FRAME else OUTLINE_PT
    widths = []
    for edge in (xs[0], xs[-1]):
        labels = [each.label for each in sides if not each.is_level and each.start[0] == edge]
        found = (label.width_pt + 2 * _GAP_PT for label in labels if label is not None)
        widths.append(max(found, default=least))
    return widths[0], widths[1]


def _strips(
    places: tuple[Sequence[Fraction], Sequence[Fraction]],
    needs: tuple[Sequence[float], Sequence[float]],
    room_pt: float,
) -> tuple[list[float], list[float]]:
    """The widths of the columns and the heights of the rows between the corners."""
    xs, ys = places
    scale = min(
        min(room_pt, _MOST_WIDTH_PT) / float(xs[-1] - xs[0]),
        _MOST_HEIGHT_PT / float(ys[-1] - ys[0]),
    )
    columns, rows = (
        [max(float(b - a) * scale, need) for (a, b), need in zip(pairwise(way), own, strict=True)]
        for way, own in zip(places, needs, strict=True)
    )
    if sum(columns) > room_pt:
        columns = _squeezed(columns, needs[0], room_pt)
    return columns, rows


def _needs(sides: Sequence[_Side], along: Sequence[Fraction], level: bool) -> list[float]:
    """The least extent of each strip: a column holds labels side by side, a row stacked."""
    labels = [each.label for each in sides if each.label is not None]
    uprights = [s.label.width_pt for s in sides if s.label is not None and not s.is_level]
    needs = []
    for low, high in pairwise(along):
        own = [
            each.label
            for each in sides
            if each.label is not None
            and each.is_level == level
            and {each.start[0 if level else 1], each.end[0 if level else 1]} == {low, high}
        ]
        if level:
            # A label of an upright side may stand in the same notch.
            beside = max(uprights, default=0.0) + _GAP_PT
            need = max([*(label.width_pt for label in own), beside]) + 2 * _GAP_PT
        else:
            tallest = max((label.level_height_pt for label in labels), default=0.0)
            need = _STACKED * (tallest + _GAP_PT)
        needs.append(need)
    return needs


def _squeezed(have: Sequence[float], needs: Sequence[float], most_pt: float) -> list[float]:
    """The strips made narrower, none below its need. Raises FitError where they need more."""
    spare = most_pt - sum(needs)
    if spare < 0:
        raise FitError(
            f"the sides of a shape need {sum(needs):.0f} pt and have {most_pt:.0f} pt; "
            "shorter labels or a wider column would help"
        )
    over = sum(each - need for each, need in zip(have, needs, strict=True))
    share = spare / over if over else 0.0
    return [need + (each - need) * share for each, need in zip(have, needs, strict=True)]


def _places(
    along: Sequence[Fraction], start_pt: float, strips: Sequence[float]
) -> dict[Fraction, float]:
    """Where each coordinate lies on the page."""
    places, at = {along[0]: start_pt}, start_pt
    for value, strip in zip(along[1:], strips, strict=True):
        at += strip
        places[value] = at
    return places


def _put_beside(sketch: Sketch, side: _Side, start: Point, end: Point, label: Label) -> None:
    """The label outside the shape: clockwise, outside is at the left hand."""
    (x1, y1), (x2, y2) = start, end
    middle_x, middle_y = (x1 + x2) / 2, (y1 + y2) / 2
    if side.is_level:
        top = y1 - _GAP_PT / 2 - label.height_pt if x2 > x1 else y1 + _GAP_PT
        low = middle_x - label.width_pt / 2
        low = max(0.0, min(low, sketch.width_pt - label.width_pt))
        sketch.put(label, low, top)
        return
    low = x1 + _GAP_PT if y2 > y1 else x1 - _GAP_PT - label.width_pt
    sketch.put(label, low, middle_y - label.middle_pt)


def _largest_field(
    figure: Outline, xs: Sequence[Fraction], ys: Sequence[Fraction]
) -> tuple[int, int]:
    """The column and row of the largest field between the corners that lies in the shape."""
    fields = [
        ((x2 - x1) * (y2 - y1), column, row)
        for column, (x1, x2) in enumerate(pairwise(xs))
        for row, (y1, y2) in enumerate(pairwise(ys))
        if _holds(figure, (x1 + x2) / 2, (y1 + y2) / 2)
    ]
    _, column, row = max(fields)
    return column, row


def _holds(figure: Outline, x: Fraction, y: Fraction) -> bool:
    """True for a point inside: an upright line up from it crosses an odd number of sides."""
    ends = pairwise((*figure.corners, figure.corners[0]))
    crossed = [
        a for a, b in ends if a[1] == b[1] and a[1] < y and min(a[0], b[0]) < x < max(a[0], b[0])
    ]
    return len(crossed) % 2 == 1
