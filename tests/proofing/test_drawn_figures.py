"""Figures measured on the page: drawn ones agree with their data, altered ones do not.

Every fault is planted by drawing another figure than the one that is expected, as a mistake in
the drawing would: a hand at another minute, a counter too many, a pointer beside its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.drawing.test_figures import KINDS
from tests.proofing.making import made_week
from typeset.arithmetic.figures import (
    Angles,
    AngleSetting,
    ClockFace,
    ClockFaces,
    Figure,
    GroupedObjects,
    JoinedPoints,
    Mark,
    MeasuringScale,
    ScaleLabel,
    ScaleShape,
    Show,
    Wedge,
)
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Path, Rule, Shape, TextRun, moved
from typeset.errors import FitError
from typeset.proofing.account import take_account
from typeset.proofing.checks import Proof, owners_of
from typeset.proofing.drawn_figures import check_drawn_figures, faults_of
from typeset.proofing.expected import Part as PassagePart
from typeset.proofing.expected import Passage
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Stroke
from typeset.proofing.read_back import read_document
from typeset.quantities.inline import words
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf

MM = 72 / 25.4
SHOWN = st.sampled_from([Show.FIRST_STEP, Show.COMPLETE])
# Rules to write on and squares beside a figure must not be taken for a part of it.
RULED: tuple[Shape, ...] = tuple(
    rule
    for n in range(12)
    for rule in (
        Rule(0, 600 + 20 * n, 400, 600 + 20 * n, 0.75),
        Rule(20 * n, 600, 20 * n, 820, 0.75),
    )
)


def strokes_of(shapes: Sequence[Shape]) -> tuple[Stroke, ...]:
    placed = tuple(moved(shape, 20.0, 20.0) for shape in (*shapes, *RULED))
    item = Placed(Role.FIGURE, 20, 20, 500, 800, placed)
    pdf = write_pdf(Document("Quay", "", (Page(210 * MM, 1300.0, (item,)),), 12))
    return read_document(pdf, "quay.pdf").pages[0].strokes


def told(drawn: Figure, wanted: Figure, show: Show = Show.COMPLETE) -> list[str]:
    """What is found where one figure is drawn and another expected. Raises FitError."""
    return list(faults_of(strokes_of(draw_figure(drawn, show, 480.0, 12.0).shapes), wanted, show))


@pytest.mark.parametrize("kind", ["clock", "scale", "groups", "angles", "joined"])
@given(data=st.data())
@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_figure_agrees_with_its_own_data(kind: str, data: st.DataObject) -> None:
    figure, show = data.draw(KINDS[kind]), data.draw(SHOWN)
    try:
        found = told(figure, figure, show)
    except FitError:
        assume(False)
    assert found == []


def mark(text: str, given: bool = True) -> Mark:
    return Mark(words(text), given)


def clock(minutes: int) -> ClockFaces:
    return ClockFaces((ClockFace(Fraction(minutes), mark("time")),))


def scale(shape: ScaleShape, at: int, divisions: int = 5) -> MeasuringScale:
    labels = tuple(ScaleLabel(Fraction(n), words(str(n))) for n in (0, 250, 500))
    return MeasuringScale(shape, labels, divisions, Fraction(at), mark("it"), "ml")


def rings(groups: int, each: int, rest: int) -> GroupedObjects:
    return GroupedObjects(groups, each, mark("g"), mark("e"), rest)


def angles(setting: AngleSetting, *sizes: int) -> Angles:
    return Angles(setting, tuple(Wedge(Fraction(n), mark(f"{n}°")) for n in sizes))


def joined(count: int) -> JoinedPoints:
    return JoinedPoints(tuple("ABCDEFGH"[:count]))


LINE, POINT, TRIANGLE = AngleSetting
FAULTS: list[tuple[str, Figure, Figure, str]] = [
    ("a minute hand one minute late", clock(221), clock(220), "minute hand at 246.0 degrees"),
    ("an hour hand one hour late", clock(280), clock(220), "hour hand at 140.0 degrees, not 110"),
    ("a face too many", ClockFaces(clock(5).faces * 2), clock(5), "2 clock faces, not 1"),
    ("a counter too many in each ring", rings(4, 6, 0), rings(4, 5, 0), "6 + 6 + 6 + 6 counters"),
    ("a ring too few", rings(3, 5, 0), rings(4, 5, 0), "5 + 5 + 5 counters in its rings, not"),
    ("a counter lost outside", rings(4, 5, 2), rings(4, 5, 3), "2 counters outside its rings"),
    *(
        (f"{shape.value} off by a division", scale(shape, 350), scale(shape, 300), "reads 350.00")
        for shape in ScaleShape
    ),
    *(
        (f"{shape.value} divided otherwise", scale(shape, 300, 4), scale(shape, 300), "11 marks")
        for shape in ScaleShape
    ),
    ("an angle on a line", angles(LINE, 51, 129), angles(LINE, 50, 130), "51, 129 degrees"),
    ("angles exchanged", angles(LINE, 130, 50), angles(LINE, 50, 130), "130, 50 degrees"),
    (
        "an angle at a point",
        angles(POINT, 100, 120, 140),
        angles(POINT, 100, 125, 135),
        "100, 120, 140 degrees, not 100, 125, 135",
    ),
    (
        "a triangle",
        angles(TRIANGLE, 50, 60, 70),
        angles(TRIANGLE, 50, 65, 65),
        "50, 60, 70 degrees, not 50, 65, 65",
    ),
    ("a point too many", joined(6), joined(5), "6 points, not 5"),
]


@pytest.mark.parametrize(
    ("drawn", "wanted", "words_told"), [fault[1:] for fault in FAULTS], ids=[f[0] for f in FAULTS]
)
def test_a_planted_fault_is_found(drawn: Figure, wanted: Figure, words_told: str) -> None:
    assert words_told in "; ".join(told(drawn, wanted))
    assert told(wanted, wanted) == []


def test_a_lost_hand_and_a_lost_line_are_found() -> None:
    face = draw_figure(clock(220), Show.COMPLETE, 480.0, 12.0).shapes
    heavy = max((s for s in face if isinstance(s, Rule)), key=lambda s: s.thickness_pt)
    without = [shape for shape in face if shape is not heavy]
    assert "1 hands" in "; ".join(faults_of(strokes_of(without), clock(220), Show.COMPLETE))
    web = draw_figure(joined(5), Show.COMPLETE, 480.0, 12.0).shapes
    lost = next(s for s in web if isinstance(s, Rule))
    found = faults_of(strokes_of([s for s in web if s is not lost]), joined(5), Show.COMPLETE)
    assert list(found) == ["has 9 lines between its points, not 10"]


def test_a_counter_moved_out_of_its_ring_is_found() -> None:
    shapes = list(draw_figure(rings(2, 3, 0), Show.COMPLETE, 480.0, 12.0).shapes)
    at = next(i for i, s in enumerate(shapes) if isinstance(s, Path) and s.fill is not None)
    shapes[at] = moved(shapes[at], 0.0, 60.0)
    found = "; ".join(faults_of(strokes_of(shapes), rings(2, 3, 0), Show.COMPLETE))
    assert "2 + 3 counters in its rings, not 3 + 3" in found
    assert "1 counters outside its rings, not 0" in found


@pytest.mark.parametrize("shape", ScaleShape)
def test_a_reading_that_is_asked_for_must_not_be_shown(shape: ScaleShape) -> None:
    asked = replace(scale(shape, 300), pointer_given=False)
    found = told(scale(shape, 300), asked, Show.FIRST_STEP)
    assert found == ["shows a reading that is asked for"]
    assert told(asked, asked, Show.FIRST_STEP) == []


def test_hands_that_are_asked_for_must_not_be_shown() -> None:
    asked = ClockFaces((replace(clock(220).faces[0], hands_given=False),))
    assert "should have none" in told(clock(220), asked, Show.FIRST_STEP)[0]


def findings(drawn: Figure, wanted: Figure) -> list[Finding]:
    """What the whole check says of a question's figure on a page with a number and room."""
    drawing = draw_figure(drawn, Show.FIRST_STEP, 440.0, 12.0)
    shapes = (
        TextRun(50.0, 60.0, "1", 12.0),
        *(moved(shape, 70.0, 70.0) for shape in drawing.shapes),
        *(moved(shape, 70.0, 0.0) for shape in RULED),
    )
    page = Page(210 * MM, 297 * MM, (Placed(Role.FIGURE, 0, 0, 1, 1, shapes),))
    document = read_document(write_pdf(Document("Quay", "", (page,), 12)), "quay.pdf")
    keeps, show = "question 1", Show.FIRST_STEP
    passages = (
        Passage(keeps, PassagePart.NUMBER, ("1",), keeps=keeps),
        Passage(keeps, PassagePart.FIGURE, (), "quay.yaml:4", keeps, figure=wanted, show=show),
    )
    account = take_account(passages, document.words)
    proof = Proof(document, account, made_week().layout, 12.0, owners_of(account))
    return list(check_drawn_figures(proof))


def test_a_finding_names_the_question_its_page_and_its_line() -> None:
    hour, minute = findings(clock(221), clock(220))
    assert "hour hand at 110.5 degrees, not 110.0" in str(hour)
    assert "the figure of question 1 has its minute hand at 246.0 degrees, not 240.0" in str(minute)
    assert (minute.page, minute.kind) == (1, "figure")
    assert "quay.yaml:4" in str(minute)


@pytest.mark.parametrize(
    "figure", [clock(220), rings(4, 5, 3), joined(5), scale(ScaleShape.JUG, 300)]
)
def test_a_good_figure_among_rules_to_write_on_is_no_finding(figure: Figure) -> None:
    assert findings(figure, figure) == []
