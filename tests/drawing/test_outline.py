"""Shapes with square corners: to scale, each length at its own side, outside the shape."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from typeset.arithmetic.figures import Mark, Outline, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, TextRun
from typeset.proofing.figure_text import figure_words
from typeset.quantities.inline import words

# An L: 10 along the bottom, 8 up the left, 6 along the top, 5 up the right.
CORNERS = ((0, 0), (6, 0), (6, 3), (10, 3), (10, 8), (0, 8))
TEXTS = ("6m", "3m", "4m", "5m", "10m", "8m")


def outline(given: str = "6m 5m 10m 8m", hidden: str = "3m 4m", inside: bool = True) -> Outline:
    marks = tuple(Mark(words(t), t in given.split(), t in hidden.split()) for t in TEXTS)
    corners = tuple((Fraction(x), Fraction(y)) for x, y in CORNERS)
    area = Mark(words("68m²"), is_given=False) if inside else None
    return Outline(corners, marks, area)


def drawn(figure: Outline, show: Show, width: float = 400.0) -> Drawing:
    return draw_figure(figure, show, width, 12.0)


def shape_points(drawing: Drawing) -> list[tuple[float, float]]:
    (path,) = (shape for shape in drawing.shapes if isinstance(shape, Path))
    return [(float(step[1]), float(step[2])) for step in path.steps]


def runs(drawing: Drawing) -> dict[str, TextRun]:
    return {shape.text: shape for shape in drawing.shapes if isinstance(shape, TextRun)}


@pytest.mark.parametrize("show", Show)
def test_the_shape_is_closed_and_to_scale_in_every_state(show: Show) -> None:
    points = shape_points(drawn(outline(), show))
    assert points[0] == points[-1]
    assert len(points) == len(CORNERS) + 1
    (x0, y0), (x1, _), *_ = points
    scale = (x1 - x0) / 6
    for (x, y), (across, down) in zip(points, CORNERS, strict=False):
        assert x - x0 == pytest.approx(across * scale)
        assert y - y0 == pytest.approx(down * scale)


@pytest.mark.parametrize(
    ("show", "seen"),
    [
        (Show.FRAME, set()),
        (Show.FIRST_STEP, {"6m", "5m", "10m", "8m", "?"}),
        (Show.COMPLETE, {*TEXTS, "68m²"}),
    ],
)
def test_each_state_shows_what_the_proof_expects(show: Show, seen: set[str]) -> None:
    printed = runs(drawn(outline(), show))
    assert set(printed) == seen
    missing, extra = figure_words(outline(), show).compare(list(printed))
    assert (missing, extra) == ([], [])


def test_each_length_stands_outside_at_its_own_side() -> None:
    drawing = drawn(outline(), Show.COMPLETE)
    points, labels = shape_points(drawing), runs(drawing)
    xs, ys = ([point[axis] for point in points] for axis in (0, 1))
    assert labels["8m"].x_pt < min(xs)
    assert labels["10m"].y_pt > max(ys)
    assert labels["6m"].y_pt < min(ys)
    assert labels["5m"].x_pt > max(xs)
    # The two of the step stand in the corner that is missing.
    corner_x, corner_y = points[2]
    for text in ("3m", "4m"):
        assert labels[text].x_pt > corner_x
        assert labels[text].y_pt < corner_y


def test_the_area_stands_inside() -> None:
    drawing = drawn(outline(), Show.COMPLETE)
    points, area = shape_points(drawing), runs(drawing)["68m²"]
    assert min(p[0] for p in points) < area.x_pt < points[1][0]
    assert points[2][1] < area.y_pt < max(p[1] for p in points)


def test_a_narrow_step_is_widened_for_its_labels(assert_clean: Callable[[Drawing], None]) -> None:
    corners = tuple(
        (Fraction(x), Fraction(y))
        for x, y in ((0, 0), (59, 0), (59, 1), (60, 1), (60, 40), (0, 40))
    )
    marks = tuple(Mark(words(f"{n} cm")) for n in (59, 1, 1, 39, 60, 40))
    assert_clean(drawn(Outline(corners, marks), Show.COMPLETE))


def test_an_area_too_wide_for_its_field_widens_it(assert_clean: Callable[[Drawing], None]) -> None:
    corners = tuple(
        (Fraction(x), Fraction(y))
        for x, y in ((0, 0), (9, 0), (9, 70), (30, 70), (30, 90), (0, 90))
    )
    marks = tuple(Mark(words(f"{n} dm")) for n in (9, 70, 21, 20, 30, 90))
    drawing = drawn(Outline(corners, marks, Mark(words("12,300,000 dm²"))), Show.COMPLETE, 230.0)
    assert_clean(drawing)
    points = shape_points(drawing)
    area = runs(drawing)["12,300,000 dm²"]
    assert min(x for x, _ in points) < area.x_pt
