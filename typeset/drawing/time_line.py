"""A time line of two things that change alike: the gap between them stays the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise

from typeset.arithmetic.figures import Show, TimeLine, TimeRow
from typeset.drawing.figure_words import time_line_words
from typeset.drawing.labels import Label, mark_label, wrapped_label
from typeset.drawing.pens import (
    FINE_PT,
    OUTLINE_PT,
    arrow_head,
    break_mark,
    dot,
    rule,
    straight_arrow,
)
from typeset.drawing.placing import place_rows
from typeset.drawing.shapes import Drawing, Face, Path
from typeset.drawing.sketch import OUTSIDE, Sketch, largest_with_names
from typeset.errors import FitError

_NAME_GAP_PT = 8.0
_DOT_PT = 2.2
_TAIL_PT = 12.0
_BETWEEN_EMS = 3.0
_CLEAR_PT = 4.0
_WRITING_PT = 24.0
_OUTSIDE_LEFT_PT = 1.0


def draw_time_line(figure: TimeLine, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """Moments from left to right, two rows, and the gap marked at each moment.

    Raises FitError, GlyphError.
    """
    return largest_with_names(
        lambda size, share: _time_line(figure, show, width_pt, (size, share)), size_pt
    )


def _time_line(figure: TimeLine, show: Show, width_pt: float, plan: tuple[float, float]) -> Drawing:
    """`plan` is the label size and the names' share of the width."""
    size_pt, share = plan
    sketch = Sketch(width_pt)
    gap = mark_label(figure.gap, show, size_pt)
    between = _BETWEEN_EMS * size_pt
    room = width_pt if share == OUTSIDE else share * width_pt
    names = [wrapped_label(row.name, size_pt, room) for row in _rows(figure)]
    if share != OUTSIDE:
        between = max(
            between, names[0].height_pt - names[0].middle_pt + names[1].middle_pt + 0.7 * size_pt
        )
    if gap is not None:
        between = max(between, gap.level_height_pt + 4 * _CLEAR_PT)
    left = _OUTSIDE_LEFT_PT if share == OUTSIDE else _put_names(sketch, names, between)
    labels = [[mark_label(m, show, size_pt) for m in row.marks] for row in _rows(figure)]
    most = width_pt if share == OUTSIDE else width_pt / 2
    heads = [wrapped_label(m.name, size_pt, most, Face.BOLD) for m in figure.moments]
    xs = _places(figure, [*labels, heads], (left, width_pt), gap)
    for y in (0.0, between):
        _draw_row(sketch, left, xs, y)
        sketch.add(*_broken(figure, xs, y))
    top = _put_values(sketch, xs, labels[0], (left, width_pt), -_DOT_PT, up=True)
    _put_values(sketch, xs, labels[1], (left, width_pt), between + _DOT_PT, up=False)
    if show is Show.FRAME:
        top -= _WRITING_PT
        sketch.room_to(between + _WRITING_PT)
    if share == OUTSIDE:
        top -= names[0].height_pt + _CLEAR_PT
        sketch.put(names[0], 0.0, top)
        sketch.put(names[1], 0.0, sketch.lowest_pt() + _CLEAR_PT)
    _put_values(sketch, xs, heads, (0.0, width_pt), top - _CLEAR_PT, up=True)
    if gap is not None:
        _draw_gaps(sketch, xs, between, gap)
    return sketch.finished(time_line_words(figure, show))


def _rows(figure: TimeLine) -> tuple[TimeRow, TimeRow]:
    return figure.upper, figure.lower


def _put_names(sketch: Sketch, names: Sequence[Label], between: float) -> float:
    """The names at the left of their rows; the x at which the rows may start."""
    for name, y in zip(names, (0.0, between), strict=True):
        sketch.put(name, 0.0, y - name.middle_pt)
    return max(name.width_pt for name in names) + _NAME_GAP_PT


def _places(
    figure: TimeLine,
    labels: Sequence[Sequence[Label | None]],
    room: tuple[float, float],
    gap: Label | None,
) -> list[float]:
    """The x of each moment, with room for the first and the last label; to scale where the
    gap's value can stand beside each moment so.

    Raises FitError where it cannot stand there at all.
    """
    low, high = room
    half = max((label.width_pt / 2 for row in labels for label in row if label), default=0.0)
    half = min(half, (high - low) / 4)
    beside = 2 * _CLEAR_PT + gap.width_pt if gap is not None else 0.0
    start, end = low + max(half, _DOT_PT), high - max(half, beside, _TAIL_PT)
    ats = [moment.at for moment in figure.moments]
    steps = [float(after - before) for before, after in pairwise(ats)]
    if not steps:
        return [start]
    least = beside if gap is not None else 2 * _DOT_PT + _CLEAR_PT
    if end - start < least * len(steps):
        raise FitError(
            f"{len(ats)} moments of the time line have {end - start:.0f} pt and need "
            f"{least * len(steps):.0f} pt; a wider column or fewer moments would help"
        )
    return list(accumulate(_drawn(steps, end - start, least), initial=start))


def _drawn(steps: Sequence[float], room_pt: float, least_pt: float) -> list[float]:
    """The steps to scale; where one would be too short, it gets the least that it needs, and
    the others share what is left in proportion."""
    short: set[int] = set()
    while True:
        left = room_pt - least_pt * len(short)
        whole = sum(step for index, step in enumerate(steps) if index not in short)
        drawn = [
            least_pt if index in short else step / whole * left for index, step in enumerate(steps)
        ]
        found = {index for index, step in enumerate(drawn) if step < least_pt - 1e-6}
        if not found - short or len(short | found) == len(steps):
            return drawn if not found - short else [room_pt / len(steps)] * len(steps)
        short |= found


def _broken(figure: TimeLine, xs: Sequence[float], y: float) -> Iterator[Path]:
    """Marks on the steps that are shorter than the scale of the shortest one would have them."""
    ats = [moment.at for moment in figure.moments]
    scales = [
        (x2 - x1) / float(after - before)
        for (before, after), (x1, x2) in zip(pairwise(ats), pairwise(xs), strict=True)
    ]
    for scale, (x1, x2) in zip(scales, pairwise(xs), strict=True):
        if scale < max(scales) * 0.999:
            yield from break_mark((x1 + x2) / 2, y)


def _draw_row(sketch: Sketch, left: float, xs: Sequence[float], y: float) -> None:
    right = min(xs[-1] + _TAIL_PT, sketch.width_pt - FINE_PT)
    sketch.add(rule((left, y), (right - 1, y), OUTLINE_PT), arrow_head((right, y), 1.0, 0.0))
    for x in xs:
        sketch.add(dot(x, y, _DOT_PT))


def _put_values(
    sketch: Sketch,
    xs: Sequence[float],
    labels: Sequence[Label | None],
    room: tuple[float, float],
    base: float,
    up: bool,
) -> float:
    """Labels beside their moments; the y that they reach to."""
    shown = [(x, label) for x, label in zip(xs, labels, strict=True) if label is not None]
    rows = place_rows([x for x, _ in shown], [label for _, label in shown], *room)
    sketch.put_rows(rows, base, up)
    return base - rows.height_pt if up else base + rows.height_pt


def _draw_gaps(sketch: Sketch, xs: Sequence[float], between: float, gap: Label) -> None:
    """The same distance, with its value right of it, at every moment."""
    for x in xs:
        ends = (x, _CLEAR_PT), (x, between - _CLEAR_PT)
        sketch.add(*straight_arrow(*ends, both_ends=True))
        sketch.put(gap, x + _CLEAR_PT, between / 2 - gap.middle_pt)
