"""Draws the placed rows of a bar model."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.figures import BarModel, Show
from typeset.drawing.bar_layout import (
    BRACE_GAP_PT,
    FRAME_GAP_PT,
    GAP_SIDE_PT,
    LABEL_GAP_PT,
    NAME_ABOVE_PT,
    BarPlan,
    BarRow,
    BarSide,
    level_height,
)
from typeset.drawing.bar_scale import BarScale
from typeset.drawing.boxes import Box
from typeset.drawing.labels import Label
from typeset.drawing.pens import (
    BRACE_PT,
    FINE_PT,
    OUTLINE_PT,
    SHADE,
    brace,
    break_mark,
    line,
    rule,
    side_brace,
)
from typeset.drawing.placing import Span
from typeset.drawing.shapes import BLACK, WHITE, Rect
from typeset.drawing.sketch import Sketch

# Neighbouring braces do not touch.
_BRACE_INSET_PT = 1.0


def draw_row(
    sketch: Sketch,
    model: BarModel,
    row_index: tuple[BarRow, int],
    span: tuple[float, float],
    look: tuple[Show, BarPlan, BarScale],
) -> None:
    """One bar with its name, values and braces; `span` is its top edge and height."""
    (row, index), (top, height), (show, plan, scale) = row_index, span, look
    _draw_name(sketch, row, plan, top, height)
    if show is Show.FRAME:
        _draw_empty_bar(sketch, row, index, len(model.bars), (top, height))
        return
    _draw_parts(sketch, model, row_index, top, height)
    for x in scale.breaks:
        if x < row.ends_pt[-1]:
            sketch.add(*break_mark(x, top), *break_mark(x, top + height))
    for x, label in row.parts.inside:
        sketch.put_level(label, x, top + height / 2)
    _draw_side(sketch, row.above, top, up=True)
    _draw_side(sketch, row.below, top + height, up=False)


def _draw_name(sketch: Sketch, row: BarRow, plan: BarPlan, top: float, height: float) -> None:
    if row.name is None:
        return
    if plan.names_pt is None:
        over = row.above.height_pt + row.name.height_pt + NAME_ABOVE_PT
        sketch.put(row.name, row.ends_pt[0], top - over)
    else:
        sketch.put(row.name, 0.0, top + height / 2 - row.name.middle_pt)


def _draw_empty_bar(
    sketch: Sketch, row: BarRow, index: int, count: int, span: tuple[float, float]
) -> None:
    """The first bar as an outline at its true length; for the others a line to start from."""
    top, height = span
    left, right = row.ends_pt[0], row.ends_pt[-1]
    if index == 0:
        # Room above for a brace and a number by hand.
        sketch.room_to(top - FRAME_GAP_PT * 0.75)
        sketch.add(Rect(left, top, right - left, height, OUTLINE_PT, BLACK, WHITE))
    else:
        sketch.add(rule((left, top), (left, top + height), OUTLINE_PT))
    if index == count - 1:
        sketch.room_to(top + height + FRAME_GAP_PT * 0.75)


def _draw_parts(
    sketch: Sketch, model: BarModel, row_index: tuple[BarRow, int], top: float, height: float
) -> None:
    row, index = row_index
    # Dashed parts first: where one meets a solid part, the shared end is solid.
    parts = sorted(
        zip(model.bars[index].parts, row.ends_pt, row.ends_pt[1:], strict=False),
        key=lambda part: not part[0].dashed,
    )
    for part, left, right in parts:
        fill = SHADE if part.shaded else WHITE
        dash = (3.0, 2.0) if part.dashed else None
        sketch.add(Rect(left, top, right - left, height, OUTLINE_PT, BLACK, fill, dash))


def _draw_side(sketch: Sketch, side: BarSide, edge: float, up: bool) -> None:
    way = -1.0 if up else 1.0
    sketch.put_rows(side.rows, edge, up)
    base = edge + way * side.rows.height_pt
    for depth in range(1 + max((level.level for level in side.levels), default=-1)):
        for span, level in zip(side.spans, side.levels, strict=True):
            if level.level == depth:
                _draw_brace(sketch, span, level.centre_pt, base + way * BRACE_GAP_PT, up)
        base += way * level_height(side.spans, side.levels, depth)


def _draw_brace(sketch: Sketch, span: Span, centre: float, base: float, up: bool) -> None:
    assert span.label is not None
    way = -1.0 if up else 1.0
    inset = min(_BRACE_INSET_PT, (span.end_pt - span.start_pt) / 4)
    sketch.add(brace(span.start_pt + inset, span.end_pt - inset, base, way * BRACE_PT))
    near = base + way * (BRACE_PT + LABEL_GAP_PT)
    top = near - span.label.height_pt if up else near
    sketch.put(span.label, centre - span.label.width_pt / 2, top)


def draw_differences(
    sketch: Sketch,
    pairs: Sequence[tuple[int, int]],
    rows: Sequence[BarRow],
    tops: Sequence[float],
    height: float,
) -> None:
    """A brace beside each shorter bar, and dashed guides from the ends of the longer ones."""
    for row, top in zip(rows, tops, strict=True):
        if row.gap is not None and row.gap.label is not None:
            _draw_gap(sketch, row.gap, row.gap.label, top)
    bars = [
        Box(row.ends_pt[0] - 1, top, row.ends_pt[-1] + 0.2, top + height)
        for row, top in zip(rows, tops, strict=True)
    ]
    for short, long in pairs:
        start, end = tops[short], tops[long]
        if long < short:
            start, end = tops[long] + height, tops[short] + height
        sketch.guide(rows[long].ends_pt[-1], start, end, bars)


def _draw_gap(sketch: Sketch, gap: Span, label: Label, top: float) -> None:
    """The difference beside the end of the shorter bar, its value under the brace."""
    sketch.add(brace(min(gap.start_pt + 2, gap.tip_pt), gap.end_pt, top + 0.5, BRACE_PT))
    low = gap.start_pt + GAP_SIDE_PT + label.width_pt / 2
    centre = max(gap.tip_pt, low)
    sketch.put(label, centre - label.width_pt / 2, top + BRACE_PT + LABEL_GAP_PT)


def draw_total(
    sketch: Sketch, total: Label, plan: BarPlan, span: tuple[float, float, float]
) -> None:
    """The brace right of all bars; `span` is their right end, the top and the bottom."""
    right, top, bottom = span
    base = right + OUTLINE_PT / 2 + 3
    sketch.add(side_brace(base, top, bottom, BRACE_PT))
    tip, middle = base + BRACE_PT, (top + bottom) / 2
    if plan.total_beside:
        sketch.put(total, sketch.width_pt - total.width_pt, middle - total.middle_pt)
        return
    # Too long to stand beside: a line leads down to it, below everything.
    low = sketch.lowest_pt() + 5
    sketch.add(line([(tip, middle), (tip + 3, middle), (tip + 3, low)], FINE_PT))
    sketch.put(total, max(0.0, sketch.width_pt - total.width_pt), low + 1)
