"""Grouped objects, angles and joined points: as many counters, degrees and lines as told."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise
from math import atan2, comb, degrees

import pytest

from typeset.arithmetic.figures import (
    Angles,
    AngleSetting,
    GroupedObjects,
    JoinedPoints,
    Mark,
    Show,
    Wedge,
)
from typeset.drawing.boxes import Box, bounds
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, Rule
from typeset.errors import FitError
from typeset.quantities.inline import words


def mark(text: str, given: bool = True) -> Mark:
    return Mark(words(text), given)


def box_of(path: Path) -> Box:
    box = bounds(path)
    assert box is not None
    return box


def counted(drawing: Drawing) -> tuple[list[int], int]:
    """The counters in each ring, and those outside all."""
    paths = [s for s in drawing.shapes if isinstance(s, Path)]
    rings = [box_of(s) for s in paths if s.fill is None and len(s.steps) == 9]
    dots = [box_of(s) for s in paths if s.fill is not None]
    inside: Counter[int] = Counter()
    for dot in dots:
        for index, ring in enumerate(rings):
            if ring.left < dot.left and dot.right < ring.right and dot.overlaps(ring):
                inside[index] += 1
    return [inside[index] for index in range(len(rings))], len(dots) - sum(inside.values())


@pytest.mark.parametrize("width", [160.0, 300.0, 480.0])
@pytest.mark.parametrize(("groups", "each", "rest"), [(5, 6, 0), (4, 5, 3), (12, 6, 0), (1, 1, 9)])
def test_so_many_rings_of_so_many_counters(groups: int, each: int, rest: int, width: float) -> None:
    figure = GroupedObjects(groups, each, mark("g"), mark("e"), rest, mark("r"), mark("t"))
    drawing = draw_figure(figure, Show.COMPLETE, width, 12.0)
    assert counted(drawing) == ([each] * groups, rest)


@pytest.mark.parametrize(
    ("knows_groups", "knows_each", "wanted"),
    [(True, True, ([5] * 4, 3)), (True, False, ([0] * 4, 23)), (False, True, ([5], 18))],
)
def test_the_first_step_draws_what_is_given(
    knows_groups: bool, knows_each: bool, wanted: tuple[list[int], int]
) -> None:
    figure = GroupedObjects(4, 5, mark("4", knows_groups), mark("5", knows_each), 3)
    assert counted(draw_figure(figure, Show.FIRST_STEP, 400.0, 12.0)) == wanted


def test_the_empty_box_tells_nothing() -> None:
    frames = [
        draw_figure(GroupedObjects(n, n, mark("n"), mark("n")), Show.FRAME, 400.0, 12.0)
        for n in (2, 7)
    ]
    assert frames[0] == frames[1]


@pytest.mark.parametrize(
    ("groups", "each", "rest"), [(13, 2, 0), (2, 13, 0), (12, 12, 0), (2, 5, 13)]
)
def test_too_many_to_count_is_refused(groups: int, each: int, rest: int) -> None:
    with pytest.raises(FitError, match="too many counters"):
        draw_figure(
            GroupedObjects(groups, each, mark("g"), mark("e"), rest), Show.COMPLETE, 480.0, 12.0
        )


def angles(setting: AngleSetting, *sizes: int) -> Angles:
    return Angles(setting, tuple(Wedge(Fraction(n), mark(f"{n}°")) for n in sizes))


def turn(rule: Rule) -> float:
    return degrees(atan2(rule.x2_pt - rule.x1_pt, rule.y1_pt - rule.y2_pt)) % 360


def test_angles_around_a_point_are_to_scale() -> None:
    drawing = draw_figure(angles(AngleSetting.POINT, 110, 40, 65, 145), Show.COMPLETE, 400.0, 12.0)
    turns = [turn(s) for s in drawing.shapes if isinstance(s, Rule)]
    assert turns == pytest.approx([0, 110, 150, 215])


def test_angles_on_a_line_are_to_scale() -> None:
    drawing = draw_figure(angles(AngleSetting.LINE, 50, 30, 100), Show.COMPLETE, 400.0, 12.0)
    line, *rays = [s for s in drawing.shapes if isinstance(s, Rule)]
    assert line.y1_pt == line.y2_pt
    assert [turn(ray) for ray in rays] == pytest.approx([320, 350])


@pytest.mark.parametrize("sizes", [(50, 60, 70), (90, 25, 65), (10, 150, 20), (60, 60, 60)])
def test_a_triangle_has_its_angles(sizes: tuple[int, int, int]) -> None:
    drawing = draw_figure(angles(AngleSetting.TRIANGLE, *sizes), Show.FRAME, 400.0, 12.0)
    (outline,) = [s for s in drawing.shapes if isinstance(s, Path)]
    points = [(float(step[1]), float(step[2])) for step in outline.steps][:3]
    sides = [atan2(y2 - y1, x2 - x1) for (x1, y1), (x2, y2) in pairwise((*points, points[0]))]
    inner = [180 - abs(degrees(b - a)) % 360 for a, b in pairwise((sides[-1], *sides))]
    assert [abs(size) for size in inner] == pytest.approx(sizes)


@pytest.mark.parametrize("count", [3, 6, 10])
def test_every_two_points_are_joined_once(count: int) -> None:
    joined = JoinedPoints(tuple("ABCDEFGHIJ"[:count]), mark("n"))
    lines = {
        show: len([s for s in draw_figure(joined, show, 400.0, 12.0).shapes if isinstance(s, Rule)])
        for show in Show
    }
    assert lines == {Show.FRAME: 0, Show.FIRST_STEP: count - 1, Show.COMPLETE: comb(count, 2)}
