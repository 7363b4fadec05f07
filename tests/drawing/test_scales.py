"""Measuring scales: marks evenly spaced, the reading at its true place."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import atan2, degrees

import pytest

from typeset.arithmetic.figures import Mark, MeasuringScale, ScaleLabel, ScaleShape, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import PT_PER_MM, Drawing, Path, Rect, Rule, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import words


def scale(shape: ScaleShape, at: Fraction, **changes: object) -> MeasuringScale:
    labels = tuple(ScaleLabel(Fraction(n), words(str(n))) for n in (0, 250, 500, 750, 1000))
    fields = {"divisions": 5, "unit": "ml", "mark": Mark(words("it"), is_given=False)} | changes
    return MeasuringScale(shape, labels, at=at, **fields)  # type: ignore[arg-type]


def rules(drawing: Drawing) -> list[Rule]:
    return [s for s in drawing.shapes if isinstance(s, Rule)]


def evenly(places: list[float]) -> bool:
    steps = [b - a for a, b in pairwise(places)]
    return max(steps) - min(steps) < 1e-6


@pytest.mark.parametrize("at", [Fraction(0), Fraction(650), Fraction(1000), Fraction(333)])
def test_an_arrow_points_to_the_reading_on_a_straight_scale(at: Fraction) -> None:
    drawing = draw_figure(scale(ScaleShape.LINE, at), Show.COMPLETE, 400.0, 12.0)
    ticks = [r for r in rules(drawing) if r.x1_pt == r.x2_pt and r.thickness_pt < 1.4]
    xs = sorted(r.x1_pt for r in ticks)
    assert len(xs) == 21
    assert evenly(xs)
    (head,) = [s for s in drawing.shapes if isinstance(s, Path) and s.fill]
    tip = float(head.steps[0][1])
    assert (tip - xs[0]) / (xs[-1] - xs[0]) == pytest.approx(float(at) / 1000)


def test_a_jug_is_filled_to_its_reading() -> None:
    drawing = draw_figure(scale(ScaleShape.JUG, Fraction(650)), Show.COMPLETE, 300.0, 12.0)
    ticks = [r for r in rules(drawing) if r.y1_pt == r.y2_pt and r.thickness_pt < 1.4]
    ys = sorted(r.y1_pt for r in ticks)
    assert len(ys) == 21
    assert evenly(ys)
    (water,) = [s for s in drawing.shapes if isinstance(s, Rect)]
    assert (ys[-1] - water.y_pt) / (ys[-1] - ys[0]) == pytest.approx(0.65)
    assert water.y_pt + water.height_pt == pytest.approx(ys[-1])


@pytest.mark.parametrize(("at", "turn"), [(0, -150), (500, 0), (750, 75), (1000, 150)])
def test_a_pointer_turns_evenly_round_a_dial(at: int, turn: float) -> None:
    drawing = draw_figure(scale(ScaleShape.DIAL, Fraction(at)), Show.COMPLETE, 300.0, 12.0)
    (needle,) = [r for r in rules(drawing) if r.thickness_pt > 1.9]
    found = degrees(atan2(needle.x2_pt - needle.x1_pt, needle.y1_pt - needle.y2_pt))
    assert found == pytest.approx(turn, abs=1e-6)


def test_a_ruler_is_drawn_in_its_true_size_where_it_fits() -> None:
    labels = tuple(ScaleLabel(Fraction(n), words(str(n))) for n in range(11))
    ruler = MeasuringScale(ScaleShape.RULER, labels, 10, Fraction(37, 5), None, "cm")
    drawing = draw_figure(ruler, Show.COMPLETE, 400.0, 12.0)
    xs = sorted(r.x1_pt for r in rules(drawing))
    assert len(xs) == 101
    assert xs[1] - xs[0] == pytest.approx(PT_PER_MM)
    thing = min((s for s in drawing.shapes if isinstance(s, Rect)), key=lambda r: r.y_pt)
    assert thing.width_pt == pytest.approx(74 * PT_PER_MM)


@pytest.mark.parametrize("shape", ScaleShape)
def test_the_scale_is_printed_and_its_reading_is_not_in_the_empty_frame(shape: ScaleShape) -> None:
    frame = draw_figure(scale(shape, Fraction(650)), Show.FRAME, 400.0, 12.0)
    texts = {s.text for s in frame.shapes if isinstance(s, TextRun)}
    assert texts == {"0", "250", "500", "750", "1000", "ml"}
    assert "650" not in frame.reads_as
    asked = scale(shape, Fraction(650), pointer_given=False)
    complete = draw_figure(asked, Show.COMPLETE, 400.0, 12.0)
    first = draw_figure(asked, Show.FIRST_STEP, 400.0, 12.0)
    read = draw_figure(scale(shape, Fraction(650)), Show.FIRST_STEP, 400.0, 12.0)
    assert len(complete.shapes) == len(read.shapes) > len(first.shapes)


def test_divisions_too_fine_to_count_are_refused() -> None:
    with pytest.raises(FitError, match="200 divisions"):
        draw_figure(scale(ScaleShape.LINE, Fraction(0), divisions=50), Show.FRAME, 300.0, 12.0)


def test_values_that_would_touch_are_refused_by_name() -> None:
    labels = tuple(ScaleLabel(Fraction(n), words(f"{n:,}")) for n in range(0, 11_000, 1000))
    crowded = MeasuringScale(ScaleShape.LINE, labels, 2, Fraction(2500), None)
    with pytest.raises(FitError, match="of a scale are"):
        draw_figure(crowded, Show.FRAME, 220.0, 12.0)
    assert draw_figure(crowded, Show.FRAME, 480.0, 12.0).reads_as
