"""Time lines: the gap between two rows is drawn alike at every moment."""

from __future__ import annotations

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


def test_moments_too_near_for_the_gap_are_an_error() -> None:
    close = TimeLine(
        (Moment("now", Fraction(0)), Moment("soon", Fraction(1)), Moment("late", Fraction(900))),
        TimeRow("a", (None, None, None)),
        TimeRow("b", (None, None, None)),
        mark("215 litres"),
    )
    with pytest.raises(FitError, match="moments"):
        draw_figure(close, Show.COMPLETE, 300.0, 12.0)
