"""Arrows of a strategy: from tick to tick, column to column, row to row."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.figures import Jump, Show
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import arch_arrow, arch_arrow_sideways
from typeset.drawing.placing import Span, place_levels
from typeset.drawing.sketch import Sketch
from typeset.errors import FitError

# An arrow leaves a little after its start and lands a little before its end, so that a
# chain of arrows does not share a leg.
_STEP_ASIDE_PT = 3.0
_RISE_PT = 9.0
_LABEL_GAP_PT = 1.5
_LEVEL_GAP_PT = 4.0
# White between a table and the arrows beside it.
SIDE_GAP_PT = 2.0


def draw_jumps(
    sketch: Sketch,
    jumps: Sequence[Jump],
    xs_pt: Sequence[float],
    look: tuple[Show, float],
    base_pt: float,
    up: bool,
) -> None:
    """The arrows above (or below) the base; `look` is the state and the label size.

    Raises FitError where their labels cannot stand clear.
    """
    show, size_pt = look
    shown = _shown(jumps, show, size_pt)
    if not shown:
        return
    spans = [_span(jump, label, xs_pt) for jump, label in shown]
    levels = place_levels(spans, 0.0, sketch.width_pt)
    rise, way = _RISE_PT, -1.0 if up else 1.0
    for depth in range(1 + max(level.level for level in levels)):
        tallest = 0.0
        for span, level, (jump, label) in zip(spans, levels, shown, strict=True):
            if level.level != depth:
                continue
            start, end = span.start_pt, span.end_pt
            if jump.end < jump.start:
                start, end = end, start
            sketch.add(*arch_arrow(start, end, base_pt, -way * rise))
            near = base_pt + way * (rise + _LABEL_GAP_PT)
            top = near - label.height_pt if up else near
            sketch.put(label, level.centre_pt - label.width_pt / 2, top)
            tallest = max(tallest, label.height_pt)
        rise += _LABEL_GAP_PT + tallest + _LEVEL_GAP_PT


def _shown(jumps: Sequence[Jump], show: Show, size_pt: float) -> list[tuple[Jump, Label]]:
    return [
        (jump, label)
        for jump in jumps
        if (label := mark_label(jump.mark, show, size_pt)) is not None
    ]


def _span(jump: Jump, label: Label, xs_pt: Sequence[float]) -> Span:
    low, high = sorted((xs_pt[jump.start], xs_pt[jump.end]))
    aside = min(_STEP_ASIDE_PT, (high - low) / 4)
    return Span(low + aside, high - aside, label, legs=True)


def side_jumps_width_pt(jumps: Sequence[Jump], show: Show, size_pt: float) -> float:
    """The width that arrows beside a table need, with the white between them and the table."""
    shown = _shown(jumps, show, size_pt)
    return sum(_side_step(label) for _, label in shown) + (SIDE_GAP_PT if shown else 0.0)


def _side_step(label: Label) -> float:
    return _RISE_PT + _LABEL_GAP_PT + 1 + label.width_pt


def draw_side_jumps(
    sketch: Sketch,
    jumps: Sequence[Jump],
    ys_pt: Sequence[float],
    look: tuple[Show, float],
    base_pt: float,
) -> None:
    """Arrows at the right of a table, from row to row, each further out than the one before.

    Raises FitError where one leaves the width.
    """
    show, size_pt = look
    shown = _shown(jumps, show, size_pt)
    shown.sort(key=lambda item: abs(item[0].end - item[0].start))
    out = base_pt
    for jump, label in shown:
        start, end = ys_pt[jump.start], ys_pt[jump.end]
        way = 1.0 if end > start else -1.0
        aside = way * _STEP_ASIDE_PT
        rise = out - base_pt + _RISE_PT
        sketch.add(*arch_arrow_sideways(start + aside, end - aside, base_pt, rise))
        left = base_pt + rise + _LABEL_GAP_PT + 1
        sketch.put(label, left, (start + end) / 2 - label.middle_pt)
        out = left + label.width_pt
    if shown and out > sketch.width_pt:
        raise FitError(f"the arrows beside the table leave its {sketch.width_pt:.0f} pt")


def draw_left_jumps(
    sketch: Sketch,
    jumps: Sequence[Jump],
    ys_pt: Sequence[float],
    look: tuple[Show, float],
    base_pt: float,
) -> None:
    """The same at the left of a table. Raises FitError where one leaves the width."""
    show, size_pt = look
    shown = _shown(jumps, show, size_pt)
    shown.sort(key=lambda item: abs(item[0].end - item[0].start))
    out = base_pt
    for jump, label in shown:
        start, end = ys_pt[jump.start], ys_pt[jump.end]
        aside = _STEP_ASIDE_PT if end > start else -_STEP_ASIDE_PT
        rise = base_pt - out + _RISE_PT
        sketch.add(*arch_arrow_sideways(start + aside, end - aside, base_pt, -rise))
        left = base_pt - rise - _LABEL_GAP_PT - 1 - label.width_pt
        sketch.put(label, left, (start + end) / 2 - label.middle_pt)
        out = left
    if shown and out < 0:
        raise FitError(f"the arrows beside the table leave its {sketch.width_pt:.0f} pt")
