"""Number lines: one scale, or two aligned scales, with the jumps of a strategy."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from typeset.arithmetic.figures import (
    DoubleNumberLine,
    Jump,
    Mark,
    NumberLine,
    Show,
)
from typeset.drawing.figure_words import double_line_words, number_line_words
from typeset.drawing.jumps import draw_jumps
from typeset.drawing.labels import Label, mark_label, shown_text, wrapped_label
from typeset.drawing.pens import FINE_PT, OUTLINE_PT, arrow_head, rule
from typeset.drawing.placing import Rows, place_rows
from typeset.drawing.shapes import Drawing
from typeset.drawing.sketch import OUTSIDE, Sketch, largest_with_names

_TICK_PT = 4.0
# The line runs on past its last tick and ends in an arrow head: numbers go on.
_TAIL_PT = 12.0
_BETWEEN_PT = 24.0
_NAME_GAP_PT = 8.0
_NAMES_APART_EMS = 0.7
# Room for a pupil's numbers and jumps (10 mm).
_WRITING_PT = 28.0
_LABEL_GAP_PT = 2.0


def draw_number_line(line: NumberLine, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """One line; values under it, jumps over it. Raises FitError, GlyphError."""
    return largest_with_names(
        lambda size, share: _single(line, show, width_pt, (size, share)), size_pt
    )


def draw_double_number_line(
    figure: DoubleNumberLine, show: Show, width_pt: float, size_pt: float
) -> Drawing:
    """Two aligned lines; each has its values and jumps on its outer side.

    Raises FitError, GlyphError.
    """
    return largest_with_names(
        lambda size, share: _double(figure, show, width_pt, (size, share)), size_pt
    )


def _single(figure: NumberLine, show: Show, width_pt: float, plan: tuple[float, float]) -> Drawing:
    """`plan` is the label size and the names' share of the width."""
    size_pt, share = plan
    sketch = Sketch(width_pt)
    left = _put_names(sketch, [(figure.name, 0.0)], size_pt, share)
    outside = _outside([figure.name], (width_pt, size_pt), share)
    marks = [tick.mark for tick in figure.ticks]
    xs = _places([tick.at for tick in figure.ticks], marks, (left, width_pt), show, size_pt)
    _draw_line(sketch, left, xs, 0.0, show)
    below = _labels(marks, xs, show, size_pt, (left, width_pt))
    sketch.put_rows(below, _TICK_PT, up=False)
    over = [jump for jump in figure.jumps if not jump.below]
    draw_jumps(sketch, over, xs, (show, size_pt), -_TICK_PT - _LABEL_GAP_PT, up=True)
    under = [jump for jump in figure.jumps if jump.below]
    base = _TICK_PT + below.height_pt + _LABEL_GAP_PT
    draw_jumps(sketch, under, _ports(xs, marks, below, show), (show, size_pt), base, up=False)
    _leave_room(sketch, show, -_WRITING_PT, _WRITING_PT)
    _put_over(sketch, outside[0])
    return sketch.finished(number_line_words(figure, show))


def _double(
    figure: DoubleNumberLine, show: Show, width_pt: float, plan: tuple[float, float]
) -> Drawing:
    size_pt, share = plan
    sketch = Sketch(width_pt)
    outside = _outside([figure.upper_name, figure.lower_name], (width_pt, size_pt), share)
    between = _BETWEEN_PT if share == OUTSIDE else _between(figure, share * width_pt, size_pt)
    left = _put_names(
        sketch, [(figure.upper_name, 0.0), (figure.lower_name, between)], size_pt, share
    )
    upper = [tick.upper for tick in figure.ticks]
    lower = [tick.lower for tick in figure.ticks]
    marks = [*upper, *lower]
    xs = _places([tick.at for tick in figure.ticks], marks, (left, width_pt), show, size_pt)
    for y in (0.0, between):
        _draw_line(sketch, left, xs, y, show)
    if show is not Show.FRAME:
        for x in xs:
            ends = (x, _TICK_PT), (x, between - _TICK_PT)
            sketch.add(rule(*ends, FINE_PT, dashed=True))
    for side, edge, up in ((upper, -_TICK_PT, True), (lower, between + _TICK_PT, False)):
        rows = _labels(side, xs, show, size_pt, (left, width_pt))
        sketch.put_rows(rows, edge, up)
        jumps: list[Jump] = [jump for jump in figure.jumps if jump.below != up]
        reach = rows.height_pt + _LABEL_GAP_PT
        ports = _ports(xs, side, rows, show)
        draw_jumps(sketch, jumps, ports, (show, size_pt), edge - reach if up else edge + reach, up)
    _leave_room(sketch, show, -_WRITING_PT, between + _WRITING_PT)
    _put_over(sketch, outside[0])
    if outside[1] is not None:
        sketch.put(outside[1], 0.0, sketch.lowest_pt() + _LABEL_GAP_PT)
    return sketch.finished(double_line_words(figure, show))


def _between(figure: DoubleNumberLine, room_pt: float, size_pt: float) -> float:
    """The distance of the two lines: their names may need several lines of type."""
    names = (figure.upper_name, figure.lower_name)
    upper, lower = (wrapped_label(name, size_pt, room_pt) for name in names)
    # More than the distance of the lines of one name, so that the two stay two.
    apart = max(4.0, _NAMES_APART_EMS * size_pt)
    return max(_BETWEEN_PT, upper.height_pt - upper.middle_pt + lower.middle_pt + apart)


def _put_names(
    sketch: Sketch, names: Sequence[tuple[str, float]], size_pt: float, share: float
) -> float:
    """The names at the left of their lines; the x at which the lines may start."""
    if share == OUTSIDE:
        return FINE_PT
    room = share * sketch.width_pt
    labels = [(wrapped_label(name, size_pt, room), y) for name, y in names if name]
    for label, y in labels:
        sketch.put(label, 0.0, y - label.middle_pt)
    widest = max((label.width_pt for label, _ in labels), default=0.0)
    return widest + _NAME_GAP_PT if labels else FINE_PT


def _outside(names: Sequence[str], room: tuple[float, float], share: float) -> list[Label | None]:
    """Names that stand over the upper line and under the lower one, over the whole width."""
    width_pt, size_pt = room
    if share != OUTSIDE:
        return [None] * len(names)
    return [wrapped_label(name, size_pt, width_pt) if name else None for name in names]


def _put_over(sketch: Sketch, name: Label | None) -> None:
    if name is not None:
        sketch.put(name, 0.0, sketch.highest_pt() - _LABEL_GAP_PT - name.height_pt)


def _places(
    at: Sequence[Fraction],
    marks: Sequence[Mark | None],
    room: tuple[float, float],
    show: Show,
    size_pt: float,
) -> list[float]:
    """The x of each tick, to scale. The first and last label get room where they can."""
    low, high = room
    labels = [label for mark in marks if (label := mark_label(mark, show, size_pt)) is not None]
    half = max((label.width_pt for label in labels), default=2 * size_pt) / 2
    inset = min(half, (high - low) / 6)
    start, end = low + max(inset, _TICK_PT), high - max(inset, _TAIL_PT)
    span = at[-1] - at[0]
    if span == 0:
        return [start for _ in at]
    return [start + float((place - at[0]) / span) * (end - start) for place in at]


def _draw_line(sketch: Sketch, left: float, xs: Sequence[float], y: float, show: Show) -> None:
    """A line with its ticks; in the empty frame only the tick at which it starts."""
    right = min(xs[-1] + _TAIL_PT, sketch.width_pt - FINE_PT)
    sketch.add(
        rule((min(left, xs[0]), y), (right - 1, y), OUTLINE_PT), arrow_head((right, y), 1, 0)
    )
    for x in xs[:1] if show is Show.FRAME else xs:
        sketch.add(rule((x, y - _TICK_PT), (x, y + _TICK_PT), FINE_PT))


def _labels(
    marks: Sequence[Mark | None],
    xs: Sequence[float],
    show: Show,
    size_pt: float,
    room: tuple[float, float],
) -> Rows:
    seen: list[tuple[float, Label]] = [
        (x, label)
        for x, mark in zip(xs, marks, strict=True)
        if (label := mark_label(mark, show, size_pt)) is not None
    ]
    return place_rows([x for x, _ in seen], [label for _, label in seen], *room)


def _ports(
    xs: Sequence[float], marks: Sequence[Mark | None], rows: Rows, show: Show
) -> list[float]:
    """Where a jump leaves and lands: at the tick's value, which may stand aside of its tick."""
    centres = iter(spot.centre_pt for spot in rows.spots)
    return [
        next(centres) if shown_text(mark, show) is not None else x
        for x, mark in zip(xs, marks, strict=True)
    ]


def _leave_room(sketch: Sketch, show: Show, top: float, bottom: float) -> None:
    if show is Show.FRAME:
        sketch.room_to(top)
        sketch.room_to(bottom)
