"""Clock faces: hands at the angles of a real clock, hour hand moved on with the minutes."""

from __future__ import annotations

from fractions import Fraction
from math import atan2, degrees, hypot

import pytest

from typeset.arithmetic.figures import ClockFace, ClockFaces, Mark, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Rule, TextRun
from typeset.quantities.inline import words


def at(minutes: int, given: bool = True, hands: bool = True) -> ClockFace:
    return ClockFace(Fraction(minutes), Mark(words("time"), given), hands_given=hands)


def hands(drawing: Drawing) -> list[Rule]:
    """The heavy strokes: minute marks are thinner."""
    rules = [s for s in drawing.shapes if isinstance(s, Rule)]
    return sorted((r for r in rules if r.thickness_pt > 1.45), key=lambda r: -r.thickness_pt)


def turn(hand: Rule) -> float:
    """Degrees clockwise from twelve."""
    return degrees(atan2(hand.x2_pt - hand.x1_pt, hand.y1_pt - hand.y2_pt)) % 360


# Angles by the clock itself: 6 degrees a minute, 30 an hour and half a degree a minute.
@pytest.mark.parametrize(
    ("minutes", "hour", "minute"),
    [
        (0, 0, 0),
        (180, 90, 0),
        (220, 110, 240),
        (45, 22.5, 270),
        (719, 359.5, 354),
        (395, 197.5, 210),
    ],
)
def test_both_hands_are_exact(minutes: int, hour: float, minute: float) -> None:
    short, long = hands(draw_figure(ClockFaces((at(minutes),)), Show.COMPLETE, 300.0, 12.0))
    assert turn(short) == pytest.approx(hour, abs=1e-6)
    assert turn(long) == pytest.approx(minute, abs=1e-6)
    lengths = [hypot(r.x2_pt - r.x1_pt, r.y2_pt - r.y1_pt) for r in (short, long)]
    assert lengths[0] < 0.7 * lengths[1]


def test_figures_stand_where_a_clock_has_them() -> None:
    drawing = draw_figure(ClockFaces((at(0),)), Show.FRAME, 300.0, 12.0)
    runs = {s.text: s for s in drawing.shapes if isinstance(s, TextRun)}
    assert sorted(map(int, runs)) == list(range(1, 13))
    assert runs["12"].y_pt < runs["1"].y_pt < runs["2"].y_pt < runs["3"].y_pt < runs["6"].y_pt
    assert runs["9"].x_pt < runs["12"].x_pt < runs["3"].x_pt


def test_there_is_a_mark_for_every_minute() -> None:
    drawing = draw_figure(ClockFaces((at(0),)), Show.FRAME, 300.0, 12.0)
    assert len([s for s in drawing.shapes if isinstance(s, Rule)]) == 60


def test_hands_are_drawn_only_where_they_are_known() -> None:
    pair = ClockFaces((at(45), at(135, given=False, hands=False)), Mark(words("1 h 30 min")))
    counts = {show: len(hands(draw_figure(pair, show, 400.0, 12.0))) for show in Show}
    assert counts == {Show.FRAME: 0, Show.FIRST_STEP: 2, Show.COMPLETE: 4}


def test_a_pair_stands_under_each_other_where_the_width_is_short() -> None:
    pair = ClockFaces((at(45), at(135)), Mark(words("1 h 30 min")))
    wide, narrow = (draw_figure(pair, Show.COMPLETE, width, 12.0) for width in (400.0, 180.0))
    assert narrow.height_pt > 1.8 * wide.height_pt


def test_hands_are_told_by_where_they_point() -> None:
    told = draw_figure(ClockFaces((at(220, given=False),)), Show.FIRST_STEP, 300.0, 12.0).reads_as
    assert told == "Clock face: the hour hand between 3 and 4, the minute hand at 8, ?"
