"""Clock faces: both hands exact, the hour hand moved on with the minutes.

The figures stand outside the ring of minute marks, so that no hand ever runs through one.
"""

from __future__ import annotations

from math import pi

from typeset.arithmetic.figures import ClockFace, ClockFaces, Show
from typeset.drawing.boxes import Point
from typeset.drawing.figure_words import clock_words
from typeset.drawing.labels import Label, figure_label, mark_label, wrapped_label
from typeset.drawing.pens import (
    FINE_PT,
    OUTLINE_PT,
    at_angle,
    circle,
    dot,
    rule,
    straight_arrow,
)
from typeset.drawing.shapes import BLACK, Drawing, Face, Rule
from typeset.drawing.sketch import Sketch, largest_size
from typeset.errors import FitError

# Radii in ems of the figures: the rim, the middle of the figures, the ring of minute marks.
RIM_EMS = 4.65
_FIGURES_EMS = 3.85
_RING_EMS = 3.05
_MINUTE_EMS = 0.18
_HOUR_EMS = 0.42
# The hands differ in length and in weight: the short thick one tells the hours.
_MINUTE_HAND_EMS = 2.75
_HOUR_HAND_EMS = 1.75
_MINUTE_HAND_THICK_EMS = 0.125
_HOUR_HAND_THICK_EMS = 0.27
_PIN_EMS = 0.2
_GAP_PT = 4.0
# An arrow between two faces is never shorter than this.
_LEAST_ARROW_PT = 34.0
_WRITING_PT = 23.0
_MINUTES = 60
HALF_DAY = 12 * _MINUTES


def draw_clocks(figure: ClockFaces, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The faces side by side with an arrow from each to the next; under one another where
    the width is short. Raises FitError, GlyphError."""
    # All states are arranged alike: as the complete one, which has the most on it.
    try:
        size = largest_size(lambda s: _beside(figure, Show.COMPLETE, width_pt, s), size_pt)
        return _beside(figure, show, width_pt, size)
    except FitError:
        size = largest_size(lambda s: _stacked(figure, Show.COMPLETE, width_pt, s), size_pt)
        return _stacked(figure, show, width_pt, size)


def _beside(figure: ClockFaces, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    rim = RIM_EMS * size_pt
    between = mark_label(figure.between, show, size_pt)
    arrow = max(_LEAST_ARROW_PT, (between.width_pt if between else 0.0) + 12)
    column = max([2 * rim, *(_widest(face, show, size_pt) for face in figure.faces)])
    count = len(figure.faces)
    if count * column + (count - 1) * (arrow + 2 * _GAP_PT) > width_pt:
        raise FitError(
            f"{count} clock faces side by side need more than {width_pt:.0f} pt; "
            "a wider column or smaller type would help"
        )
    x = column / 2 if column > 2 * rim else rim + OUTLINE_PT / 2
    for index, face in enumerate(figure.faces):
        if index:
            start = (x - column / 2 - arrow - _GAP_PT, 0.0)
            end = (x - column / 2 - _GAP_PT, 0.0)
            if figure.between is not None:
                sketch.add(*straight_arrow(start, end))
            if between is not None:
                middle = (start[0] + end[0]) / 2
                sketch.put(between, middle - between.width_pt / 2, -between.height_pt - _GAP_PT)
        _draw_face(sketch, face, (x, 0.0), column, (show, size_pt))
        x += column + arrow + 2 * _GAP_PT
    return sketch.finished(clock_words(figure, show))


def _stacked(figure: ClockFaces, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    rim = RIM_EMS * size_pt
    between = mark_label(figure.between, show, size_pt)
    x, y = rim + OUTLINE_PT / 2, 0.0
    for index, face in enumerate(figure.faces):
        if index:
            foot = sketch.lowest_pt() + (_WRITING_PT if show is Show.FRAME else 0.0)
            start, end = foot + _GAP_PT, foot + _GAP_PT + max(1.6 * size_pt, 20.0)
            if figure.between is not None:
                sketch.add(*straight_arrow((x, start), (x, end)))
            if between is not None:
                sketch.put(between, x + 2 * _GAP_PT, (start + end) / 2 - between.middle_pt)
            name = _name(face, width_pt, size_pt)
            y = end + _GAP_PT + rim + (name.height_pt + _GAP_PT if name else 0.0)
        _draw_face(sketch, face, (x, y), width_pt, (show, size_pt))
    return sketch.finished(clock_words(figure, show))


def _widest(face: ClockFace, show: Show, size_pt: float) -> float:
    """The width of what stands over and under a face; a name may take several lines."""
    mark = mark_label(face.mark, show, size_pt)
    name = _name(face, 2 * RIM_EMS * size_pt, size_pt)
    return max((label.width_pt for label in (mark, name) if label), default=0.0)


def _name(face: ClockFace, room_pt: float, size_pt: float) -> Label | None:
    return wrapped_label(face.name, size_pt, room_pt, Face.BOLD) if face.name else None


def _draw_face(
    sketch: Sketch, face: ClockFace, centre: Point, room_pt: float, look: tuple[Show, float]
) -> None:
    show, size_pt = look
    rim = RIM_EMS * size_pt
    sketch.add(circle(centre, rim))
    for minute in range(_MINUTES):
        _draw_minute(sketch, minute, centre, size_pt)
    for hour in range(1, 13):
        x, y = at_angle(centre, _FIGURES_EMS * size_pt, hour * pi / 6)
        sketch.put_level(figure_label(str(hour), size_pt), x, y)
    if show is Show.COMPLETE or (show is Show.FIRST_STEP and face.hands_given):
        sketch.add(*hands(face, centre, size_pt))
    sketch.add(dot(*centre, _PIN_EMS * size_pt))
    name = _name(face, room_pt, size_pt)
    mark = mark_label(face.mark, show, size_pt)
    if name is not None:
        left = max(0.0, centre[0] - name.width_pt / 2)
        sketch.put(name, left, centre[1] - rim - _GAP_PT - name.height_pt)
    if mark is not None:
        left = max(0.0, centre[0] - mark.width_pt / 2)
        sketch.put(mark, left, centre[1] + rim + _GAP_PT)
    if show is Show.FRAME:
        sketch.room_to(centre[1] + rim + _WRITING_PT)


def _draw_minute(sketch: Sketch, minute: int, centre: Point, size_pt: float) -> None:
    """A mark from the ring inwards; every fifth longer and heavier."""
    long = minute % 5 == 0
    turn = minute * 2 * pi / _MINUTES
    ring = _RING_EMS * size_pt
    inner = ring - (_HOUR_EMS if long else _MINUTE_EMS) * size_pt
    ends = at_angle(centre, ring, turn), at_angle(centre, inner, turn)
    sketch.add(rule(*ends, 1.4 if long else FINE_PT))


def hands(face: ClockFace, centre: Point, size_pt: float) -> tuple[Rule, Rule]:
    """The hour hand and the minute hand; the hour hand moves on with the minutes."""
    hour = float(face.at) / HALF_DAY * 2 * pi
    minute = float(face.at % _MINUTES) / _MINUTES * 2 * pi
    short = at_angle(centre, _HOUR_HAND_EMS * size_pt, hour)
    long = at_angle(centre, _MINUTE_HAND_EMS * size_pt, minute)
    return (
        Rule(*centre, *short, _HOUR_HAND_THICK_EMS * size_pt, BLACK),
        Rule(*centre, *long, _MINUTE_HAND_THICK_EMS * size_pt, BLACK),
    )
