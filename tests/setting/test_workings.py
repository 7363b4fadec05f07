from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.drawing.random_texts import equations
from typeset.drawing.fonts import width_pt
from typeset.drawing.shapes import Rule, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import Equals, Solid, Stacked, words
from typeset.setting.frames import Placed, Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.workings import WorkingStep, alignment_pt, lay_out_aligned, working

STYLE = TextStyle(12)
NB = "\u00a0"


def equation(*sides: str) -> Equals:
    solids = tuple(Solid((side.replace(" ", NB),)) for side in sides)
    return Equals(solids, ("=",) * (len(sides) - 1))


STEPS = (
    WorkingStep(words("Three parts are the difference."), equation("5 − 2", "3")),
    WorkingStep(words("So one part is 12."), equation("36 ÷ 3", "12")),
    WorkingStep((), equation("5 × 12", "(5 × 10) + (5 × 2)", "50 + 10", "60")),
)


def placed(width: float) -> tuple[Placed, ...]:
    piece = working(STEPS, STYLE, width, source="q1")
    return piece.place(0, 0, piece.height.natural_pt)


def sign_places(items: tuple[Placed, ...]) -> list[float]:
    """Where the first '=' of every run stands."""
    runs = [s for item in items for s in item.shapes if isinstance(s, TextRun) and "=" in s.text]
    return [run.x_pt + width_pt(run.text.split("=")[0], 12) for run in runs]


@pytest.mark.parametrize("width", [160, 200, 400])
def test_first_signs_stand_under_one_another_and_so_do_those_of_further_lines(
    width: float,
) -> None:
    places = sign_places(placed(width))
    assert len(places) >= 3
    assert places == pytest.approx([places[0]] * len(places))


def test_a_chain_is_on_one_line_where_it_fits_and_else_a_line_for_every_sign() -> None:
    assert len(sign_places(placed(400))) == 3
    assert len(sign_places(placed(200))) == 5


def test_sentences_and_equations_come_in_order_with_role_source_and_reading() -> None:
    items = placed(400)
    assert [item.reads_as for item in items] == [
        "Three parts are the difference.",
        "5 − 2 = 3",
        "So one part is 12.",
        "36 ÷ 3 = 12",
        "5 × 12 = (5 × 10) + (5 × 2) = 50 + 10 = 60",
    ]
    assert {(item.role, item.source) for item in items} == {(Role.WORKING, "q1")}


def test_equations_are_indented_under_their_sentences() -> None:
    sentence, first = placed(400)[:2]
    run = first.shapes[0]
    assert isinstance(run, TextRun)
    assert run.x_pt > sentence.x_pt + 12


def test_an_equation_is_closer_to_its_sentence_than_to_the_next() -> None:
    sentence, first, following = placed(400)[:3]
    over = first.y_pt - (sentence.y_pt + sentence.height_pt)
    under = following.y_pt - (first.y_pt + first.height_pt)
    assert 0 < over < under


def test_one_long_left_side_does_not_push_the_others_out() -> None:
    long = equation("12 + 12 + 12 + 12 + 12", "60")
    short = equation("5 × 12", "60 kites")
    measure = 140.0
    at = alignment_pt((long, short), STYLE, measure)
    assert at == pytest.approx(width_pt("5 × 12", 12))
    drawing = lay_out_aligned(long, STYLE, measure, at)
    first, second = drawing.shapes
    assert isinstance(first, TextRun) and isinstance(second, TextRun)
    assert (first.text, second.text) == ("12 + 12 + 12 + 12 + 12", "= 60")
    assert second.y_pt - first.y_pt == pytest.approx(18)


def test_a_side_too_wide_for_the_column_is_named() -> None:
    with pytest.raises(FitError, match=r"'5 × 12 = 60' has a side too wide .* of 7 mm"):
        working((WorkingStep((), equation("5 × 12", "60")),), STYLE, 38)


def test_a_side_too_long_goes_on_under_itself_where_it_may() -> None:
    long = equation("700 + 20 + 5 + 60", "785 kites")
    with pytest.raises(FitError):
        lay_out_aligned(long, STYLE, 80, 0)
    drawing = lay_out_aligned(long, STYLE, 80, 0, folds=True)
    runs = [run for run in drawing.shapes if isinstance(run, TextRun)]
    assert [run.text for run in runs] == ["700 + 20 + 5", "+ 60", "= 785 kites"]
    assert runs[1].x_pt > runs[0].x_pt
    assert runs[1].y_pt - runs[0].y_pt == pytest.approx(STYLE.leading_pt)
    # A number alone never breaks.
    with pytest.raises(FitError):
        lay_out_aligned(equation("700,000,000 lighthouses", "7"), STYLE, 80, 0, folds=True)


def test_fractions_keep_lines_apart() -> None:
    half = Solid((Stacked("1", "2"), f"{NB}of{NB}lighthouses"))
    drawing = lay_out_aligned(Equals((half, half, half), ("=", "=")), TextStyle(12, 1.0), 240, 98)
    first, beside, under = (s.y1_pt for s in drawing.shapes if isinstance(s, Rule))
    assert first == beside
    assert under - first > 1.3 * 12


@settings(max_examples=80, deadline=None)
@given(st.lists(equations(), min_size=1, max_size=4), st.floats(120, 400))
def test_nothing_leaves_the_column(equals: list[Equals], width: float) -> None:
    try:
        piece = working([WorkingStep((), e) for e in equals], STYLE, width)
    except FitError:
        assume(False)
    for item in piece.place(0, 0, piece.height.natural_pt):
        for shape in item.shapes:
            if isinstance(shape, TextRun):
                right = shape.x_pt + width_pt(shape.text, shape.size_pt, shape.face)
                assert shape.x_pt >= 0 and right <= width + 0.02
