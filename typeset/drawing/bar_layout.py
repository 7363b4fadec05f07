"""Places everything about each bar of a bar model: labels, braces, differences."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from typeset.arithmetic.figures import BarModel, Brace, Show
from typeset.drawing.bar_parts import PartLabels, part_labels
from typeset.drawing.bar_scale import BarScale, ends_of
from typeset.drawing.labels import Label, mark_label, shown_text, wrapped_label
from typeset.drawing.pens import BRACE_PT
from typeset.drawing.placing import Level, Rows, Span, place_levels, place_rows

# A bar is tall enough to write a number in by hand (9 mm) at the usual sizes.
_BAR_EMS = 2.1
_BAR_FRAME_PT = 25.5
_ROW_GAP_EMS = 0.75
# Room around an empty bar for the pupil's own braces and values (10 mm of writing).
FRAME_GAP_PT = 28.0
BRACE_GAP_PT = 3.5
LABEL_GAP_PT = 1.8
# Between a bar and its name above it: more than a break mark needs.
NAME_ABOVE_PT = 3.5
# White between the end of the shorter bar and the value of the difference.
GAP_SIDE_PT = 4.0


@dataclass(frozen=True, slots=True)
class BarPlan:
    """One arrangement: label size, width of the name column (None: above the bars), and
    whether the total's value stands right of its brace."""

    size_pt: float
    names_pt: float | None
    total_beside: bool


@dataclass(frozen=True, slots=True)
class BarSide:
    """What lies above or below a bar: outside labels first, then braces in levels."""

    rows: Rows
    spans: tuple[Span, ...]
    levels: tuple[Level, ...]
    height_pt: float


@dataclass(frozen=True, slots=True)
class BarRow:
    """One bar with everything placed about it; heights are measured from the bar's edges."""

    ends_pt: tuple[float, ...]
    name: Label | None
    parts: PartLabels
    above: BarSide
    below: BarSide
    gap: Span | None


def bar_row(
    model: BarModel, index: int, show: Show, scale: BarScale, frame: tuple[BarPlan, float, float]
) -> BarRow:
    """Everything about one bar, placed. Raises FitError."""
    plan, left, right = frame
    bar = model.bars[index]
    ends = tuple(scale.x_pt(end) for end in ends_of([part.size for part in bar.parts]))
    name = _name(bar.name, plan, right - left)
    parts = part_labels(bar, ends, show, plan.size_pt)
    spans = {below: _spans(model, index, show, plan, ends, below) for below in (False, True)}
    gap, gap_below = _gaps(model, index, show, plan, scale, right)
    spans[True] += gap_below
    runs_below = bool(spans[False]) and not spans[True]
    spans[runs_below] += parts.runs
    outside_below = bool(spans[False]) and not spans[True]
    sides = {
        below: _side(
            parts.outside if below == outside_below else (), tuple(spans[below]), (left, right)
        )
        for below in (False, True)
    }
    return BarRow(ends, name, parts, sides[False], sides[True], gap)


def _name(name: str, plan: BarPlan, bars_pt: float) -> Label | None:
    if not name:
        return None
    room = plan.names_pt if plan.names_pt is not None else bars_pt
    return wrapped_label(name, plan.size_pt, room)


def _spans(
    model: BarModel, index: int, show: Show, plan: BarPlan, ends: Sequence[float], below: bool
) -> list[Span]:
    """The braces over runs of parts on one side of a bar."""
    result = []
    for mark in model.braces:
        if mark.bar == index and mark.gap_to is None and mark.below == below:
            label = mark_label(mark.mark, show, plan.size_pt)
            if label is not None:
                result.append(Span(ends[mark.first], ends[mark.last + 1], label))
    return result


def _gaps(
    model: BarModel, index: int, show: Show, plan: BarPlan, scale: BarScale, right: float
) -> tuple[Span | None, list[Span]]:
    """The differences that stand on this bar's row: the first that fits beside the bar, and
    the others as braces below it."""
    found = []
    for mark in model.braces:
        pair = _gap_bars(model, mark)
        label = mark_label(mark.mark, show, plan.size_pt)
        if pair is not None and pair[0] == index and label is not None:
            found.append(
                Span(_end_pt(model, pair[0], scale), _end_pt(model, pair[1], scale), label)
            )
    found.sort(key=lambda span: span.end_pt)
    for position, span in enumerate(found):
        width = span.label.width_pt if span.label else 0.0
        # The label may reach beyond the brace to the right, but stays under its middle.
        left_half = span.tip_pt - span.start_pt - GAP_SIDE_PT
        if width <= min(
            right - span.start_pt - GAP_SIDE_PT, max(2 * left_half, left_half + width - 4)
        ):
            return span, found[:position] + found[position + 1 :]
    return None, found


def differences(model: BarModel, show: Show) -> list[tuple[int, int]]:
    """The shorter and the longer bar of each difference that this state shows."""
    return [
        pair
        for mark in model.braces
        if (pair := _gap_bars(model, mark)) is not None and shown_text(mark.mark, show) is not None
    ]


def _gap_bars(model: BarModel, mark: Brace) -> tuple[int, int] | None:
    """The shorter and the longer bar of a difference."""
    if mark.gap_to is None:
        return None
    pair = (mark.bar, mark.gap_to)
    lengths = [sum(part.size for part in model.bars[bar].parts) for bar in pair]
    return pair if lengths[0] <= lengths[1] else (pair[1], pair[0])


def _end_pt(model: BarModel, bar: int, scale: BarScale) -> float:
    return scale.x_pt(ends_of([part.size for part in model.bars[bar].parts])[-1])


def _side(
    outside: Sequence[tuple[float, Label]], spans: tuple[Span, ...], room: tuple[float, float]
) -> BarSide:
    """One side of a bar: labels with leaders, and braces beyond them. Raises FitError."""
    anchors, labels = [x for x, _ in outside], [label for _, label in outside]
    rows = place_rows(anchors, labels, *room, always_lead=True)
    levels = tuple(place_levels(spans, *room)) if spans else ()
    height = rows.height_pt
    for depth in range(1 + max((level.level for level in levels), default=-1)):
        height += level_height(spans, levels, depth)
    return BarSide(rows, spans, levels, height)


def level_height(spans: Sequence[Span], levels: Sequence[Level], depth: int) -> float:
    """The height of the braces of one level with their labels."""
    tallest = max(
        span.label.height_pt
        for span, level in zip(spans, levels, strict=True)
        if level.level == depth and span.label is not None
    )
    return BRACE_GAP_PT + BRACE_PT + LABEL_GAP_PT + tallest


def bar_height(rows: Sequence[BarRow], show: Show, plan: BarPlan) -> float:
    """One height for all bars: their tallest value, and a difference that stands beside one."""
    if show is Show.FRAME:
        return max(_BAR_FRAME_PT, _BAR_EMS * plan.size_pt)
    inside = [label.level_height_pt + 3 for row in rows for _, label in row.parts.inside]
    gaps = [row.gap.label.height_pt for row in rows if row.gap and row.gap.label]
    beside = [BRACE_PT + LABEL_GAP_PT + height for height in gaps]
    return max([_BAR_EMS * plan.size_pt, *inside, *beside])


def bar_tops(rows: Sequence[BarRow], height: float, show: Show, plan: BarPlan) -> list[float]:
    """The y of each bar's top edge, the first at 0."""
    tops = [0.0]
    for before, after in pairwise(rows):
        lanes = before.below.height_pt + after.above.height_pt
        gap = _ROW_GAP_EMS * plan.size_pt + lanes
        if show is Show.FRAME:
            gap = max(gap, FRAME_GAP_PT)
        if plan.names_pt is None:
            gap += after.name.height_pt + 2 + NAME_ABOVE_PT if after.name else 0
        else:
            gap = max(gap, _overhang(before, height) + _overhang(after, height) + 4)
        tops.append(tops[-1] + height + gap)
    return tops


def _overhang(row: BarRow, height: float) -> float:
    """How far a name of several lines reaches beyond its bar."""
    return max(0.0, row.name.level_height_pt - height) / 2 if row.name else 0.0
