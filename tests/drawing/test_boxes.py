"""The geometry of the guard, against points counted along the line."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.drawing.boxes import Box, bounds, clear_of, segments
from typeset.drawing.pens import brace
from typeset.drawing.shapes import Path, Rect, Rule, TextRun

corner = st.floats(-50, 50).map(lambda value: round(value, 1))
points = st.tuples(corner, corner)
boxes = st.tuples(corner, corner, st.floats(1, 40), st.floats(1, 40)).map(
    lambda b: Box(b[0], b[1], b[0] + b[2], b[1] + b[3])
)


@given(boxes, points, points)
@settings(max_examples=200)
def test_a_line_crosses_a_box_where_one_of_its_points_lies_well_inside(
    box: Box, start: tuple[float, float], end: tuple[float, float]
) -> None:
    def inside(part: float, margin: float) -> bool:
        x = start[0] + (end[0] - start[0]) * part
        y = start[1] + (end[1] - start[1]) * part
        across = box.left + margin < x < box.right - margin
        return across and box.top + margin < y < box.bottom - margin

    parts = [step / 400 for step in range(401)]
    if any(inside(part, 0.01) for part in parts):
        assert box.crossed_by((start, end))
    # The points lie less than 0.4 pt apart, so none near the box means no crossing.
    if not any(inside(part, -0.5) for part in parts):
        assert not box.crossed_by((start, end))


def test_boxes_that_only_touch_do_not_overlap() -> None:
    assert not Box(0, 0, 10, 10).overlaps(Box(10, 0, 20, 10))
    assert Box(0, 0, 10, 10).overlaps(Box(10, 0, 20, 10), clear_pt=1)
    assert Box(0, 0, 10, 10).overlaps(Box(9, 9, 20, 20))


def test_a_guide_passes_behind_boxes() -> None:
    left = clear_of([Box(-5, 20, 5, 30), Box(-5, 25, 5, 40), Box(8, 0, 9, 90)], ((0, 0), (0, 60)))
    assert left == [((0, 0), (0, 20)), ((0, 40), (0, 60))]
    level = clear_of([Box(10, -1, 20, 1)], ((0, 0), (30, 0)))
    assert level == [((0, 0), (10, 0)), ((20, 0), (30, 0))]


def test_the_box_of_a_line_holds_its_thickness() -> None:
    assert bounds(Rule(0, 0, 10, 0, 2.0)) == Box(-1, -1, 11, 1)
    assert bounds(Rect(1, 1, 5, 5, 1.0)) == Box(0.5, 0.5, 6.5, 6.5)
    assert bounds(TextRun(0, 0, "x", 12)) is None


def test_a_brace_reaches_from_end_to_end_and_points_to_its_middle() -> None:
    for depth in (7.0, -7.0):
        shape = brace(10.0, 60.0, 100.0, depth)
        ends = [point for piece in segments(shape) for point in piece]
        assert min(ends)[0] == 10.0
        assert max(ends)[0] == 60.0
        tip = max(ends, key=lambda point: abs(point[1] - 100.0))
        assert tip == (35.0, 100.0 + depth)


def test_a_filled_area_without_a_line_crosses_nothing() -> None:
    assert list(segments(Rect(0, 0, 5, 5))) == []
    assert list(segments(Path((("M", 0, 0), ("L", 4, 0)), 1.0))) == [((0, 0), (4, 0))]
