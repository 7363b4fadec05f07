"""Measuring scales: a straight one, a ruler with what it measures, a jug, a dial.

The scale itself is printed in every state; its pointer, level or measured thing only where it
is known. Long marks have their values where the scale is labelled, short ones never.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import cos, hypot, pi, sin

from typeset.arithmetic.figures import MeasuringScale, ScaleShape, Show
from typeset.drawing.boxes import Point
from typeset.drawing.figure_words import scale_words
from typeset.drawing.labels import Label, line_label, mark_label
from typeset.drawing.pens import (
    FINE_PT,
    OUTLINE_PT,
    SHADE,
    arc,
    at_angle,
    circle,
    dot,
    rule,
    solid_head,
)
from typeset.drawing.shapes import BLACK, PT_PER_MM, Drawing, Path, PathStep, Rect, Rule
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError
from typeset.quantities.inline import words

# Marks nearer than the millimetres of a ruler cannot be counted.
_LEAST_PITCH_PT = PT_PER_MM - 0.01
# A ruler is drawn in its true size where it fits, so that nothing on it can be mistaken.
_TRUE_PT = {"mm": PT_PER_MM, "cm": 10 * PT_PER_MM}
_MOST_LENGTH_PT = 400.0
# Lengths of the marks grow with the type, from these at 12 pt.
_LONG_EMS = 0.92
_HALF_EMS = 0.67
_SHORT_EMS = 0.42
_LONG_THICK_PT = 1.2
_GAP_PT = 3.0
_BODY_PT = 1.6
_POINTER_EMS = 0.75
_NEEDLE_EMS = 0.165
_WRITING_PT = 23.0
_THING_PT = 14.0
_JUG_EMS = 8.0
_JUG_HEIGHT_EMS = 11.5
_DIAL_EMS = 6.2
# A dial leaves 60 degrees open at its foot, between its greatest and its least value.
_DIAL_START, _DIAL_END = -5 * pi / 6, 5 * pi / 6


@dataclass(frozen=True, slots=True)
class _Division:
    """A mark of the scale; `share` is its place from 0 (the start) to 1 (the end)."""

    share: float
    length_pt: float
    thickness_pt: float


def draw_scale(scale: MeasuringScale, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The scale with what it shows. Raises FitError where marks or labels would run together,
    GlyphError."""
    draw = {
        ScaleShape.LINE: _line,
        ScaleShape.RULER: _ruler,
        ScaleShape.JUG: _jug,
        ScaleShape.DIAL: _dial,
    }[scale.shape]
    return largest_that_fits(lambda size: draw(scale, show, width_pt, size), size_pt)


def _is_read(scale: MeasuringScale, show: Show) -> bool:
    """True where the pointer is drawn."""
    return show is Show.COMPLETE or (show is Show.FIRST_STEP and scale.pointer_given)


def _share(scale: MeasuringScale, at: Fraction) -> float:
    start, end = scale.labels[0].at, scale.labels[-1].at
    return float((at - start) / (end - start))


def _divisions(scale: MeasuringScale, length_pt: float, size_pt: float) -> Iterator[_Division]:
    """Every mark. Raises FitError where they would stand too near to be counted."""
    count = (len(scale.labels) - 1) * scale.divisions
    if length_pt / count < _LEAST_PITCH_PT:
        raise FitError(
            f"a scale of {count} divisions needs {count * _LEAST_PITCH_PT:.0f} pt and has "
            f"{length_pt:.0f} pt; fewer divisions or a wider column would help"
        )
    for index in range(count + 1):
        part = index % scale.divisions
        if part == 0:
            yield _Division(index / count, _LONG_EMS * size_pt, _LONG_THICK_PT)
        elif 2 * part == scale.divisions and scale.divisions > 2:
            yield _Division(index / count, _HALF_EMS * size_pt, FINE_PT)
        else:
            yield _Division(index / count, _SHORT_EMS * size_pt, FINE_PT)


def _labels(scale: MeasuringScale, size_pt: float) -> Iterator[tuple[float, Label]]:
    for label in scale.labels:
        if label.text:
            yield _share(scale, label.at), line_label(label.text, size_pt)


def _ends(scale: MeasuringScale, width_pt: float, size_pt: float) -> tuple[float, float]:
    """The x of a level scale's ends, so that its first and last label have room."""
    halves = [label.width_pt / 2 for _, label in _labels(scale, size_pt)]
    inset = max([OUTLINE_PT, *halves]) + 1
    unit = line_width(scale.unit, size_pt) + 2 * _GAP_PT if scale.unit else 0.0
    left, right = inset, width_pt - max(inset, unit)
    if right - left < 4 * size_pt:
        raise FitError(f"a scale does not fit in {width_pt:.0f} pt; a wider column would help")
    longest = _MOST_LENGTH_PT
    if scale.shape is ScaleShape.RULER and scale.unit in _TRUE_PT:
        longest = float(scale.labels[-1].at - scale.labels[0].at) * _TRUE_PT[scale.unit]
    return left, min(right, left + longest)


def line_width(text: str, size_pt: float) -> float:
    """The width of a unit's sign. Raises GlyphError."""
    return _unit_label(text, size_pt).width_pt


def _unit_label(text: str, size_pt: float) -> Label:
    return line_label(words(text), size_pt)


def _put_level_scale(
    sketch: Sketch, scale: MeasuringScale, ends: tuple[float, float], top: float, size_pt: float
) -> float:
    """Marks hanging from y = top with their values under them; the y below the values."""
    left, right = ends
    foot = top + _LONG_EMS * size_pt
    for each in _divisions(scale, right - left, size_pt):
        x = left + each.share * (right - left)
        sketch.add(rule((x, top), (x, top + each.length_pt), each.thickness_pt))
    placed = [(left + share * (right - left), lab) for share, lab in _labels(scale, size_pt)]
    for (x1, one), (x2, other) in pairwise(placed):
        if x2 - x1 < (one.width_pt + other.width_pt) / 2 + _GAP_PT:
            raise FitError(
                f"the values '{one.text}' and '{other.text}' of a scale are {x2 - x1:.0f} pt apart "
                "and would touch; fewer values or a wider column would help"
            )
    for x, label in placed:
        sketch.put(label, x - label.width_pt / 2, foot + 2)
    return max([foot + 2, *(box.bottom for box in sketch.label_boxes)])


def _line(scale: MeasuringScale, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """A level scale; an arrow points to the reading from above."""
    sketch = Sketch(width_pt)
    left, right = ends = _ends(scale, width_pt, size_pt)
    sketch.add(rule((left, 0.0), (right, 0.0), OUTLINE_PT))
    _put_level_scale(sketch, scale, ends, 0.0, size_pt)
    if scale.unit:
        unit = _unit_label(scale.unit, size_pt)
        sketch.put(unit, right + _GAP_PT + 2, -unit.middle_pt)
    if _is_read(scale, show):
        x = left + _share(scale, scale.at) * (right - left)
        head = _POINTER_EMS * size_pt
        sketch.add(
            rule((x, -3 * head), (x, -head), _NEEDLE_EMS * size_pt),
            solid_head((x, -1.5), (0.0, 1.0), head),
        )
        _put_over(sketch, mark_label(scale.mark, show, size_pt), x, -3 * head - _GAP_PT)
    else:
        _put_asked(sketch, scale, show, (left + right) / 2, -_WRITING_PT, size_pt)
    return sketch.finished(scale_words(scale, show))


def _put_over(sketch: Sketch, label: Label | None, centre: float, foot: float) -> None:
    """A label over its place, moved inwards at an edge."""
    if label is not None:
        left = max(0.0, min(centre - label.width_pt / 2, sketch.width_pt - label.width_pt))
        sketch.put(label, left, foot - label.height_pt)


def _put_under(sketch: Sketch, label: Label, centre: float, top: float) -> None:
    left = max(0.0, min(centre - label.width_pt / 2, sketch.width_pt - label.width_pt))
    sketch.put(label, left, top)


def _put_asked(
    sketch: Sketch, scale: MeasuringScale, show: Show, centre: float, foot: float, size_pt: float
) -> None:
    """What the pupil is to show, with room to draw the pointer."""
    _put_over(sketch, mark_label(scale.mark, show, size_pt), centre, foot - _GAP_PT)
    sketch.room_to(foot)


def _ruler(scale: MeasuringScale, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """A ruler with the thing that it measures lying along its upper edge."""
    sketch = Sketch(width_pt)
    left, right = ends = _ends(scale, width_pt, size_pt)
    foot = _put_level_scale(sketch, scale, ends, 0.0, size_pt)
    margin = min(left - OUTLINE_PT / 2, width_pt - OUTLINE_PT / 2 - right)
    edge = Rect(
        left - margin, 0.0, right - left + 2 * margin, foot + _GAP_PT, OUTLINE_PT, BLACK, None
    )
    sketch.add(edge)
    if scale.unit:
        unit = _unit_label(scale.unit, size_pt)
        low = foot + 2 * _GAP_PT
        sketch.put(unit, right + margin - unit.width_pt, low)
    if _is_read(scale, show):
        x = left + _share(scale, scale.at) * (right - left)
        if x > left:
            thing = Rect(left, -_THING_PT - 2, x - left, _THING_PT, OUTLINE_PT, BLACK, SHADE)
            sketch.add(thing)
        label = mark_label(scale.mark, show, size_pt)
        _put_over(sketch, label, (left + x) / 2, -_THING_PT - 2 - _GAP_PT)
    else:
        _put_asked(sketch, scale, show, (left + right) / 2, -_WRITING_PT, size_pt)
    return sketch.finished(scale_words(scale, show))


def _jug(scale: MeasuringScale, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """A straight-sided jug, values at its left; what is in it is tinted up to a heavy line."""
    sketch = Sketch(width_pt)
    widest = max((label.width_pt for _, label in _labels(scale, size_pt)), default=0.0)
    unit = _unit_label(scale.unit, size_pt) if scale.unit else None
    left = widest + 2 * _GAP_PT
    body = min(_JUG_EMS * size_pt, width_pt - left - 3 * size_pt)
    if body < 3 * size_pt:
        raise FitError(f"a jug does not fit in {width_pt:.0f} pt; a wider column would help")
    count = (len(scale.labels) - 1) * scale.divisions
    height = max(_JUG_HEIGHT_EMS * size_pt, 1.1 * size_pt * (len(scale.labels) - 1))
    height = max(height, _LEAST_PITCH_PT * count * 1.02)
    right = left + body
    brim, foot = -height - 1.5 * size_pt, 0.0
    if _is_read(scale, show) and scale.at > scale.labels[0].at:
        level = -_share(scale, scale.at) * height
        sketch.add(
            Rect(left, level, body, foot - level, 0.0, BLACK, SHADE),
            Rule(left, level, right, level, 1.8, BLACK),
        )
    for each in _divisions(scale, height, size_pt):
        y = -each.share * height
        sketch.add(rule((left, y), (left + each.length_pt, y), each.thickness_pt))
    for share, label in _labels(scale, size_pt):
        sketch.put(label, left - _GAP_PT - label.width_pt, -share * height - label.middle_pt)
    if unit is not None:
        sketch.put_level(unit, (left + right) / 2, (brim - height) / 2)
    sketch.add(*_jug_outline(left, right, brim, foot, size_pt))
    value = mark_label(scale.mark, show, size_pt)
    if value is not None:
        at = -_share(scale, scale.at) * height if _is_read(scale, show) else -height / 2
        beside = right + 2.4 * size_pt + _GAP_PT
        if beside + value.width_pt <= width_pt:
            sketch.put(value, beside, min(at, -value.level_height_pt / 2) - value.middle_pt)
        else:
            _put_under(sketch, value, (left + right) / 2, foot + 2 * _GAP_PT)
    return sketch.finished(scale_words(scale, show))


def _jug_outline(
    left: float, right: float, brim: float, foot: float, size_pt: float
) -> tuple[Path, Path]:
    """Walls and foot with a lip at the left, and a handle at the right."""
    lip = 0.7 * size_pt
    walls: list[PathStep] = [
        ("M", left - lip, brim - lip / 2),
        ("C", left - lip / 3, brim - lip / 3, left, brim + lip / 3, left, brim + lip),
        ("L", left, foot),
        ("L", right, foot),
        ("L", right, brim - lip / 2),
    ]
    high, low = brim + 0.16 * (foot - brim), brim + 0.72 * (foot - brim)
    out = right + 2.2 * size_pt
    handle: list[PathStep] = [
        ("M", right, high),
        ("C", out, high, out, high, out, (high + low) / 2),
        ("C", out, low, out, low, right, low),
    ]
    return Path(tuple(walls), _BODY_PT), Path(tuple(handle), _BODY_PT)


def _dial(scale: MeasuringScale, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """A round dial with its values outside the marks, and a pointer from its middle."""
    sketch = Sketch(width_pt)
    labels = list(_labels(scale, size_pt))
    ring = _DIAL_EMS * size_pt * 0.62
    count = (len(scale.labels) - 1) * scale.divisions
    ring = max(ring, _LEAST_PITCH_PT * count / (_DIAL_END - _DIAL_START) * 1.01)
    ring = max(ring, _room_of_labels([label for _, label in labels], len(scale.labels)))
    outs = [_out(label, _turn(share), ring) for share, label in labels]
    rim = max(
        [
            ring + _GAP_PT,
            *(o + _half_diagonal(label) for o, (_, label) in zip(outs, labels, strict=True)),
        ]
    )
    rim += _GAP_PT
    centre = (rim + _BODY_PT / 2, 0.0)
    sketch.add(circle(centre, rim, _BODY_PT), arc(centre, ring, _DIAL_START, _DIAL_END))
    for each in _divisions(scale, ring * (_DIAL_END - _DIAL_START), size_pt):
        turn = _turn(each.share)
        ends = at_angle(centre, ring, turn), at_angle(centre, ring - each.length_pt, turn)
        sketch.add(rule(*ends, each.thickness_pt))
    for out, (share, label) in zip(outs, labels, strict=True):
        sketch.put_level(label, *at_angle(centre, out, _turn(share)))
    if scale.unit:
        unit = _unit_label(scale.unit, size_pt)
        sketch.put_level(unit, centre[0], 0.72 * ring)
    if _is_read(scale, show):
        sketch.add(*_needle(centre, ring - 2.0, _turn(_share(scale, scale.at)), size_pt))
    sketch.add(dot(*centre, 0.28 * size_pt))
    value = mark_label(scale.mark, show, size_pt)
    if value is not None:
        _put_under(sketch, value, centre[0], rim + _GAP_PT)
    return sketch.finished(scale_words(scale, show))


def _turn(share: float) -> float:
    return _DIAL_START + share * (_DIAL_END - _DIAL_START)


def _room_of_labels(labels: list[Label], count: int) -> float:
    """The least radius at which neighbouring values stand clear of each other."""
    if len(labels) < 2:
        return 0.0
    step = (_DIAL_END - _DIAL_START) / (count - 1)
    widest = max(_half_diagonal(label) for label in labels)
    return (widest + _GAP_PT / 2) / sin(min(step, pi) / 2) - widest


def _half_diagonal(label: Label) -> float:
    return hypot(label.width_pt, label.level_height_pt) / 2


def _out(label: Label, turn: float, ring: float) -> float:
    """How far from the centre a value stands, so that its box just clears the ring."""
    half_width, half_height = label.width_pt / 2, label.level_height_pt / 2
    reach = abs(sin(turn)) * half_width + abs(cos(turn)) * half_height
    return ring + reach + _GAP_PT


def _needle(centre: Point, length_pt: float, turn: float, size_pt: float) -> tuple[Rule, Path]:
    head = _POINTER_EMS * size_pt
    tip = at_angle(centre, length_pt, turn)
    neck = at_angle(centre, length_pt - head + 1, turn)
    return (
        Rule(*centre, *neck, _NEEDLE_EMS * size_pt, BLACK),
        solid_head(tip, (sin(turn), -cos(turn)), head),
    )
