"""Time lines: the gap between two rows is drawn alike at every moment."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from typeset.arithmetic.figures import Mark, Moment, Show, TimeLine, TimeRow
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import words


def mark(text: str, given: bool = True) -> Mark:
    return Mark(words(text), given)


TANKS = TimeLine(
    (Moment("noon", Fraction(0)), Moment("two", Fraction(2)), Moment("six", Fraction(6))),
    TimeRow("north tank", (mark("340"), mark("400", False), mark("520", False))),
    TimeRow("south tank", (mark("125"), mark("185", False), mark("305"))),
    mark("215 litres", False),
)


def shafts(drawing: Drawing) -> list[Path]:
    """The upright strokes between the rows."""
    paths = [s for s in drawing.shapes if isinstance(s, Path) and s.fill is None]
    return [path for path in paths if path.steps[0][1] == path.steps[1][1]]


def test_the_same_gap_stands_at_every_moment_to_scale() -> None:
    drawing = draw_figure(TANKS, Show.COMPLETE, 460.0, 12.0)
    found = sorted(shafts(drawing), key=lambda path: float(path.steps[0][1]))
    xs = [float(path.steps[0][1]) for path in found]
    assert len(found) == 3
    assert len({(path.steps[0][2], path.steps[1][2]) for path in found}) == 1
    assert (xs[1] - xs[0]) / (xs[2] - xs[0]) == pytest.approx(2 / 6)
    texts = [s.text for s in drawing.shapes if isinstance(s, TextRun)]
    assert texts.count("215 litres") == 3


def test_the_empty_frame_has_moments_and_names_only() -> None:
    frame = draw_figure(TANKS, Show.FRAME, 460.0, 12.0)
    texts = [s.text for s in frame.shapes if isinstance(s, TextRun)]
    assert sorted(texts) == ["noon", "north tank", "six", "south tank", "two"]
    assert shafts(frame) == []


CLOSE = TimeLine(
    (Moment("now", Fraction(0)), Moment("soon", Fraction(1)), Moment("late", Fraction(900))),
    TimeRow("a", (None, None, None)),
    TimeRow("b", (None, None, None)),
    mark("215 litres"),
)


def breaks(drawing: Drawing) -> list[Path]:
    """The white openings of the marks of a break."""
    paths = [s for s in drawing.shapes if isinstance(s, Path)]
    return [path for path in paths if path.fill is not None and path.fill[0] == 1.0]


def test_a_step_too_short_for_the_gap_breaks_the_scale_of_the_others() -> None:
    drawing = draw_figure(CLOSE, Show.COMPLETE, 300.0, 12.0)
    assert len(shafts(drawing)) == 3
    # One mark on each of the two rows, between 'soon' and 'late'.
    openings = breaks(drawing)
    assert len(openings) == 2
    xs = sorted(float(path.steps[0][1]) for path in shafts(drawing))
    assert all(xs[1] < float(path.steps[0][1]) < xs[2] for path in openings)
    assert breaks(draw_figure(TANKS, Show.COMPLETE, 460.0, 12.0)) == []


def test_moments_without_room_for_the_gap_are_an_error() -> None:
    with pytest.raises(FitError, match="moments"):
        draw_figure(CLOSE, Show.COMPLETE, 120.0, 12.0)


def test_long_names_stand_over_and_under_a_narrow_time_line() -> None:
    rows = [
        replace(row, name=f"breakwaterlighthouse {row.name}") for row in (TANKS.upper, TANKS.lower)
    ]
    drawing = draw_figure(replace(TANKS, upper=rows[0], lower=rows[1]), Show.COMPLETE, 250.0, 12.0)
    runs = {s.text: s.y_pt for s in drawing.shapes if isinstance(s, TextRun)}
    others = [y for text, y in runs.items() if text in ("340", "400", "520")]
    names = [y for text, y in runs.items() if text.startswith("breakwater")]
    assert len(names) == 2
    assert min(names) < min(others) < max(names)
    assert max(y for text, y in runs.items() if text in ("125", "305")) < max(names)
