"""Grouped objects: counters in rings, what is left over outside, for counting one by one."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt

from typeset.arithmetic.figures import GroupedObjects, Show
from typeset.drawing.boxes import Point
from typeset.drawing.figure_words import groups_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import BRACE_PT, OUTLINE_PT, ROUND, dot, left_brace
from typeset.drawing.placing import place_rows
from typeset.drawing.shapes import BLACK, WHITE, Drawing, Path, PathStep, Rect
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

# More than these nobody counts one by one (our own limits).
MOST_GROUPS = 12
MOST_EACH = 12
MOST_COUNTERS = 72
_PITCH_EMS = 0.85
_SMALLER_PITCHES_EMS = (0.65, 0.5)
# Rings under one another alone are hard to compare: two in a row where there are two.
_FEWEST_COLUMNS = 2
_LEAST_PITCH_PT = 7.0
_DOT_SHARE = 0.3
_RING_GAP_PT = 8.0
_GAP_PT = 4.0
_WRITING_PT = 23.0
# Loose counters stand in rows of ten, as on a counting board.
_POOL_ROW = 10


@dataclass(frozen=True, slots=True)
class Plan:
    """What is drawn: so many rings with so many counters in each, and loose counters."""

    rings: int
    inside: int
    loose: int
    ring_for: int
    is_whole: bool = False


@dataclass(frozen=True, slots=True)
class _Rings:
    """So many rings of one size in rows, from their left edge at y = 0."""

    left: float
    count: int
    columns: int
    size: tuple[float, float]
    across: int
    pitch_pt: float

    @property
    def corners(self) -> list[Point]:
        """The top left corner of each."""
        width, height = (side + _RING_GAP_PT for side in self.size)
        return [
            (self.left + index % self.columns * width, index // self.columns * height)
            for index in range(self.count)
        ]

    @property
    def right(self) -> float:
        """Where the widest row ends, with the white after it."""
        return self.left + self.columns * (self.size[0] + _RING_GAP_PT)

    @property
    def foot(self) -> float:
        """The bottom of the lowest row."""
        rows = ceil(self.count / self.columns)
        return rows * (self.size[1] + _RING_GAP_PT) - _RING_GAP_PT


@dataclass(frozen=True, slots=True)
class _Pool:
    """Loose counters, with their label where they are what is left over."""

    count: int
    label: Label | None
    pitch_pt: float

    @property
    def across(self) -> int:
        return min(self.count, _POOL_ROW)

    @property
    def width_pt(self) -> float:
        return self.across * self.pitch_pt

    def beside(self, left: float, foot: float, most_pt: float) -> Point | None:
        """Where they stand beside the rings, level with their middle; None if there is no room."""
        height = ceil(self.count / _POOL_ROW) * self.pitch_pt
        width = max(self.width_pt, self.label.width_pt if self.label else 0.0)
        if left + width > most_pt or height > foot + self.pitch_pt:
            return None
        return left, max(0.0, (foot - height) / 2)

    def draw(self, sketch: Sketch, corner: Point, across: int) -> float:
        """In rows of so many; the y of their foot."""
        for index in range(self.count):
            x = corner[0] + (index % across + 0.5) * self.pitch_pt
            y = corner[1] + (index // across + 0.5) * self.pitch_pt
            sketch.add(dot(x, y, _DOT_SHARE * self.pitch_pt))
        return corner[1] + ceil(self.count / across) * self.pitch_pt


def draw_groups(figure: GroupedObjects, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The rings and counters; an empty box to draw in for the frame.

    Raises FitError where there are too many to be counted one by one, GlyphError.
    """
    counters = figure.groups * figure.each + figure.left_over
    most = max(figure.each, figure.left_over)
    if figure.groups > MOST_GROUPS or most > MOST_EACH or counters > MOST_COUNTERS:
        raise FitError(
            f"{figure.groups} groups of {figure.each} are too many counters to be counted one by "
            f"one (at most {MOST_GROUPS} groups, {MOST_EACH} in each, {MOST_COUNTERS} in all); "
            "a bar model or a number line would help"
        )
    return largest_that_fits(lambda size: _groups(figure, show, width_pt, size), size_pt)


def plan_of(figure: GroupedObjects, show: Show) -> Plan:
    """What of the figure this state draws; the frame draws nothing of it."""
    knows_groups = show is Show.COMPLETE or figure.groups_mark.is_given
    knows_each = show is Show.COMPLETE or figure.each_mark.is_given
    all_of_them = figure.groups * figure.each + figure.left_over
    if knows_groups and knows_each:
        return Plan(figure.groups, figure.each, figure.left_over, figure.each, is_whole=True)
    if knows_groups:
        return Plan(figure.groups, 0, all_of_them, figure.each)
    return Plan(1, figure.each, all_of_them - figure.each, figure.each)


def _groups(figure: GroupedObjects, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    if show is Show.FRAME:
        return _frame(sketch, figure, max(_LEAST_PITCH_PT, _PITCH_EMS * size_pt))
    plan = plan_of(figure, show)
    count = mark_label(figure.groups_mark, show, size_pt)
    left = OUTLINE_PT if count is None else count.width_pt + 2 * _GAP_PT + BRACE_PT
    rings = _rings(plan, left, width_pt, size_pt)
    for corner in rings.corners:
        sketch.add(_ring(corner, rings.size))
        _put_counters(sketch, corner, rings.size, (plan.inside, rings.across), rings.pitch_pt)
    rest = mark_label(figure.rest, show, size_pt) if plan.is_whole else None
    pool = _Pool(plan.loose, rest, rings.pitch_pt)
    beside = pool.beside(rings.right + _RING_GAP_PT, rings.foot, width_pt)
    if beside is not None:
        pool.draw(sketch, beside, _POOL_ROW)
    _put_under(sketch, rings, mark_label(figure.each_mark, show, size_pt), (pool, beside))
    if beside is None:
        _put_pool_below(sketch, pool, left)
    if count is not None:
        sketch.add(left_brace(left - _GAP_PT, 0.0, rings.foot, BRACE_PT))
        sketch.put(count, 0.0, rings.foot / 2 - count.middle_pt)
    total = mark_label(figure.total, show, size_pt)
    if total is not None:
        middle = (left + max(box.right for box in sketch.extents())) / 2
        low = max(left, min(middle - total.width_pt / 2, width_pt - total.width_pt))
        sketch.put(total, min(low, width_pt - total.width_pt), sketch.lowest_pt() + _GAP_PT)
    return sketch.finished(groups_words(figure, show))


def _rings(plan: Plan, left: float, width_pt: float, size_pt: float) -> _Rings:
    """The rings in even rows, their counters nearer to each other where the width is short.

    Raises FitError where even the smallest ring has no room.
    """
    across = ceil(sqrt(plan.ring_for))
    down = ceil(plan.ring_for / across)
    for ems in (_PITCH_EMS, *_SMALLER_PITCHES_EMS):
        pitch = max(_LEAST_PITCH_PT, ems * size_pt)
        size = ((across + 1.1) * pitch, (down + 1.1) * pitch)
        columns = int((width_pt - left - OUTLINE_PT + _RING_GAP_PT) // (size[0] + _RING_GAP_PT))
        if columns >= min(_FEWEST_COLUMNS, plan.rings):
            return _Rings(left, plan.rings, _even(plan.rings, columns), size, across, pitch)
    if columns >= 1:
        return _Rings(left, plan.rings, columns, size, across, pitch)
    raise FitError(
        f"a ring of {size[0]:.0f} pt does not fit in {width_pt:.0f} pt beside its label; "
        "a shorter label or a wider column would help"
    )


def _put_under(
    sketch: Sketch, rings: _Rings, each: Label | None, loose: tuple[_Pool, Point | None]
) -> None:
    """What is in each ring under the first of them, and what is left over under its counters."""
    pool, beside = loose
    labels: list[tuple[float, Label]] = []
    if each is not None:
        labels.append((rings.left + max(rings.size[0], each.width_pt) / 2, each))
    if beside is not None and pool.label is not None:
        labels.append((beside[0] + max(pool.width_pt, pool.label.width_pt) / 2, pool.label))
    if labels:
        low = rings.left - _GAP_PT
        if each is not None and each.width_pt > sketch.width_pt - low:
            low = 0.0
        spots = place_rows([x for x, _ in labels], [lab for _, lab in labels], low, sketch.width_pt)
        sketch.put_rows(spots, rings.foot + 1.0, up=False)


def _frame(sketch: Sketch, figure: GroupedObjects, pitch: float) -> Drawing:
    """An empty box, whose size tells nothing of what belongs into it."""
    width = min(sketch.width_pt - OUTLINE_PT, 36 * pitch)
    sketch.add(Rect(OUTLINE_PT / 2, 0.0, width, 10 * pitch, OUTLINE_PT, BLACK, WHITE))
    return sketch.finished(groups_words(figure, Show.FRAME))


def _even(count: int, most: int) -> int:
    """Columns of rings: as few rows as there must be, filled alike."""
    rows = ceil(count / most)
    return ceil(count / rows)


def _ring(corner: Point, size: tuple[float, float]) -> Path:
    """A round-cornered outline."""
    (x, y), (width, height) = corner, size
    r = min(width, height) * 0.42
    k = r * (1 - ROUND)
    right, foot = x + width, y + height
    steps: tuple[PathStep, ...] = (
        ("M", x + r, y),
        ("L", right - r, y),
        ("C", right - k, y, right, y + k, right, y + r),
        ("L", right, foot - r),
        ("C", right, foot - k, right - k, foot, right - r, foot),
        ("L", x + r, foot),
        ("C", x + k, foot, x, foot - k, x, foot - r),
        ("L", x, y + r),
        ("C", x, y + k, x + k, y, x + r, y),
    )
    return Path(steps, OUTLINE_PT)


def _put_counters(
    sketch: Sketch, corner: Point, ring: tuple[float, float], what: tuple[int, int], pitch: float
) -> None:
    """Counters in rows within a ring; a last short row is centred."""
    count, across = what
    rows = ceil(count / across)
    top = corner[1] + (ring[1] - rows * pitch) / 2
    for row in range(rows):
        here = min(across, count - row * across)
        first = corner[0] + (ring[0] - here * pitch) / 2
        for column in range(here):
            sketch.add(
                dot(first + (column + 0.5) * pitch, top + (row + 0.5) * pitch, _DOT_SHARE * pitch)
            )


def _put_pool_below(sketch: Sketch, pool: _Pool, left: float) -> None:
    """Loose counters under everything, what they are beside them or under them."""
    across = max(1, min(pool.across, int((sketch.width_pt - left) / pool.pitch_pt)))
    top = sketch.lowest_pt() + 2 * _GAP_PT
    foot = pool.draw(sketch, (left, top), across)
    if pool.label is None:
        return
    beside = left + across * pool.pitch_pt + _GAP_PT
    if beside + pool.label.width_pt <= sketch.width_pt:
        sketch.put(pool.label, beside, (top + foot) / 2 - pool.label.middle_pt)
    else:
        sketch.put(pool.label, left, foot + _GAP_PT / 2)
