"""Angles on a line, around a point and in a triangle: to scale, each with its arc and value.

A value stands within its angle where it fits there, else just outside its arc's reach.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import accumulate, pairwise
from math import atan2, pi, radians, tan

from typeset.arithmetic.figures import Angles, AngleSetting, Show, Wedge
from typeset.drawing.boxes import Box, Point
from typeset.drawing.figure_words import angles_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import OUTLINE_PT, arc, at_angle, dot, line, rule
from typeset.drawing.shapes import Drawing
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

_RAY_EMS = 8.5
_ARC_EMS = 2.0
# The arc of a narrow angle lies further out, so that it can be seen.
_NARROW = 35.0
_NARROW_ARC_EMS = 3.4
_LEAST_DEGREES = 3
_TRIANGLE_EMS = 15.0
# A triangle is never drawn higher than this: a flatter one is turned on to a longer side by
# whoever describes it.
_HIGHEST_EMS = 18.0
_GAP_PT = 3.0
# Room beside the rays for a value that stands at their ends.
_VALUE_EMS = 3.5
_RIGHT_EMS = 1.0
# A value moves out along the middle of its angle in these steps until it stands clear, but
# never so far that it would seem to belong to something else.
_STEP_PT = 2.0
_FARTHEST_EMS = 7.0


def draw_angles(figure: Angles, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The angles with their arcs. The frame has the line, the point or the bare triangle only.

    Raises FitError where an angle is too narrow to be seen or the triangle too flat, GlyphError.
    """
    if min(wedge.degrees for wedge in figure.wedges) < _LEAST_DEGREES:
        raise FitError(
            f"an angle of less than {_LEAST_DEGREES} degrees cannot be drawn to scale; "
            "larger angles would help"
        )
    draw = _triangle if figure.setting is AngleSetting.TRIANGLE else _fan
    return largest_that_fits(lambda size: draw(figure, show, width_pt, size), size_pt)


def _fan(figure: Angles, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """Rays from one point, and between each two of them an arc with a value."""
    sketch = Sketch(width_pt)
    on_line = figure.setting is AngleSetting.LINE
    ray = min(_RAY_EMS * size_pt, width_pt * 0.3)
    centre: Point = (min(width_pt / 2, ray + _VALUE_EMS * size_pt), 0.0)
    first = -pi / 2 if on_line else 0.0
    turns = [first, *accumulate((radians(float(w.degrees)) for w in figure.wedges), initial=first)][
        1:
    ]
    shown = turns if show is not Show.FRAME else turns[:1]
    if on_line:
        sketch.add(rule((centre[0] - ray, 0.0), (centre[0] + ray, 0.0), OUTLINE_PT))
        shown = shown[1:-1]
        sketch.room_to(-ray)
    else:
        shown = shown[:-1] if len(shown) > 1 else shown
        if show is Show.FRAME:
            sketch.room_to(ray)
    for turn in shown:
        sketch.add(rule(centre, at_angle(centre, ray, turn), OUTLINE_PT))
    sketch.add(dot(*centre, 2.0))
    if show is not Show.FRAME:
        placed = list(_wedges(figure, turns))
        for wedge, start, end in placed:
            _draw_arc(sketch, wedge, centre, (start, end), size_pt)
        for wedge, start, end in placed:
            label = mark_label(wedge.mark, show, size_pt)
            if label is not None:
                middle = (start + end) / 2
                spots = _along(label, centre, middle, (_reach(wedge, size_pt), 2 * ray))
                _put_value(sketch, label, spots)
    return sketch.finished(angles_words(figure, show))


def _wedges(figure: Angles, turns: list[float]) -> Iterator[tuple[Wedge, float, float]]:
    yield from zip(figure.wedges, turns, turns[1:], strict=False)


def _reach(wedge: Wedge, size_pt: float) -> float:
    """The radius of an angle's arc."""
    return (_NARROW_ARC_EMS if wedge.degrees < _NARROW else _ARC_EMS) * size_pt


def _draw_arc(
    sketch: Sketch, wedge: Wedge, centre: Point, turns: tuple[float, float], size_pt: float
) -> None:
    """An arc, or the two strokes of a square in a right angle."""
    start, end = turns
    if wedge.degrees == 90:
        side = _RIGHT_EMS * size_pt
        one, two = at_angle(centre, side, start), at_angle(centre, side, end)
        corner = (one[0] + two[0] - centre[0], one[1] + two[1] - centre[1])
        sketch.add(line((one, corner, two)))
        return
    sketch.add(arc(centre, _reach(wedge, size_pt), start, end))


def _along(label: Label, at: Point, turn: float, reach_pt: tuple[float, float]) -> Iterator[Point]:
    """Places for a value's middle, from an angle's arc outwards."""
    out = reach_pt[0] + _GAP_PT + label.level_height_pt / 2
    while out <= reach_pt[1]:
        yield at_angle(at, out, turn)
        out += _STEP_PT


def _put_value(sketch: Sketch, label: Label, spots: Iterable[Point]) -> None:
    """The label at the first of the places where its box stands clear of every line.

    Raises FitError where there is none.
    """
    for x, y in spots:
        top = y - label.middle_pt
        box = Box(x - label.width_pt / 2, top, x + label.width_pt / 2, top + label.height_pt)
        if box.left >= 0 and box.right <= sketch.width_pt and sketch.is_clear(box, 1.5):
            sketch.put(label, box.left, top)
            return
    raise FitError(
        f"the value '{label.text}' has no clear place at its angle; "
        "a wider column or larger angles would help"
    )


def corners(figure: Angles, base_pt: float) -> tuple[Point, Point, Point]:
    """The left, the right and the top corner on a level base (law of sines)."""
    left, right, _top = (radians(float(w.degrees)) for w in figure.wedges)
    height = base_pt / (1 / tan(left) + 1 / tan(right))
    return (0.0, 0.0), (base_pt, 0.0), (height / tan(left), -height)


def _triangle(figure: Angles, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    (x0, _), (x1, _), (x2, y2) = corners(figure, 1.0)
    spread = max(x0, x1, x2) - min(x0, x1, x2)
    base = min(_TRIANGLE_EMS * size_pt, (width_pt - 4 * size_pt) / spread)
    base = min(base, _HIGHEST_EMS * size_pt / -y2)
    if base * -y2 < 2.2 * size_pt or base < 3.5 * size_pt:
        raise FitError(
            "a triangle so flat cannot be drawn to scale; less unequal angles would help"
        )
    shift = -min(x0, x2) * base + 2 * size_pt
    points = [(x * base + shift, y) for x, y in ((0.0, 0.0), (1.0, 0.0), (x2, y2 * base))]
    sketch.add(line((*points, points[0]), OUTLINE_PT))
    if show is not Show.FRAME:
        for index, wedge in enumerate(figure.wedges):
            one, two = points[(index + 1) % 3], points[(index + 2) % 3]
            turns = _inner_turns(points[index], one, two)
            _draw_corner(sketch, wedge, points[index], turns, size_pt)
            label = mark_label(wedge.mark, show, size_pt)
            if label is not None:
                middle, reach = sum(turns) / 2, _corner_reach(wedge, size_pt)
                limits = (reach, _FARTHEST_EMS * size_pt)
                inside = [
                    p for p in _along(label, points[index], middle, limits) if _holds(points, p)
                ]
                outside = _along(label, points[index], middle + pi, (0.0, limits[1]))
                _put_value(sketch, label, [*inside, *outside])
    return sketch.finished(angles_words(figure, show))


def _corner_reach(wedge: Wedge, size_pt: float) -> float:
    return (1.9 if wedge.degrees < _NARROW else 1.3) * size_pt


def _inner_turns(at: Point, one: Point, two: Point) -> tuple[float, float]:
    """The turns of a corner's two sides, so that the second lies clockwise of the first."""
    first, second = (_turn(at, point) for point in (one, two))
    while second < first:
        second += 2 * pi
    if second - first > pi:
        return second, first + 2 * pi
    return first, second


def _turn(at: Point, to: Point) -> float:
    return atan2(to[0] - at[0], at[1] - to[1])


def _draw_corner(
    sketch: Sketch, wedge: Wedge, at: Point, turns: tuple[float, float], size_pt: float
) -> None:
    if wedge.degrees == 90:
        _draw_arc(sketch, wedge, at, turns, 0.8 * size_pt)
    else:
        sketch.add(arc(at, _corner_reach(wedge, size_pt), *turns))


def _holds(points: Sequence[Point], at: Point) -> bool:
    """True for a place within the triangle: on the same side of all its sides."""
    sides = [
        (x2 - x1) * (at[1] - y1) - (y2 - y1) * (at[0] - x1)
        for (x1, y1), (x2, y2) in pairwise((*points, points[0]))
    ]
    return all(side > 0 for side in sides) or all(side < 0 for side in sides)
