from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from tests.drawing.random_texts import rich_texts
from typeset.drawing.fonts import FIGURE_HEIGHT_EMS, MATHS_AXIS_EMS, width_pt
from typeset.drawing.inline_maths import (
    FRACTION_RATIO,
    lay_out_rich_line,
)
from typeset.drawing.shapes import Drawing, Face, Path, Rect, Rule, TextRun, grey
from typeset.errors import GlyphError
from typeset.quantities.inline import Blank, Equals, MissingBox, Rich, Solid, Stacked, Words, plain

SIZE = 12.0
HALF = Solid((Stacked("1", "24"),))


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]


def test_words_and_amounts_are_one_run_with_plain_spaces() -> None:
    rich: Rich = (Words("needs "), Solid(("250", "\u00a0g")), Words(" of tacks."))
    assert texts(lay_out_rich_line(rich, SIZE)) == ["needs 250 g of tacks."]


def test_an_equation_is_one_run() -> None:
    equals = Equals((Solid(("6\u00a0×\u00a012",)), Solid(("72",))), ("=",))
    drawing = lay_out_rich_line((equals,), SIZE)
    assert texts(drawing) == ["6 × 12 = 72"]
    assert drawing.width_pt == pytest.approx(width_pt("6 × 12 = 72", SIZE))


def test_a_bold_word_is_a_run_of_its_own_and_the_face_of_the_line_reaches_the_rest() -> None:
    plain_and_bold = lay_out_rich_line((Words("the "), Words("Nell", bold=True)), SIZE)
    assert [s.face for s in plain_and_bold.shapes if isinstance(s, TextRun)] == [
        Face.REGULAR,
        Face.BOLD,
    ]
    all_bold = lay_out_rich_line((Words("the "), Solid(("6",))), SIZE, Face.BOLD)
    assert [s.face for s in all_bold.shapes if isinstance(s, TextRun)] == [Face.BOLD]


def test_a_fraction_is_over_bar_under_in_that_order() -> None:
    over, bar, under = lay_out_rich_line((HALF,), SIZE).shapes
    assert isinstance(over, TextRun) and isinstance(bar, Rule) and isinstance(under, TextRun)
    assert (over.text, under.text) == ("1", "24")
    assert over.size_pt == under.size_pt == pytest.approx(FRACTION_RATIO * SIZE)


def test_the_bar_is_on_the_axis_and_wider_than_both_numbers_that_are_centred_on_it() -> None:
    drawing = lay_out_rich_line((HALF,), SIZE)
    over, bar, under = drawing.shapes
    assert isinstance(over, TextRun) and isinstance(bar, Rule) and isinstance(under, TextRun)
    assert bar.y1_pt == bar.y2_pt == pytest.approx(drawing.baseline_pt - MATHS_AXIS_EMS * SIZE)
    middle = (bar.x1_pt + bar.x2_pt) / 2
    for number in (over, under):
        width = width_pt(number.text, number.size_pt)
        assert number.x_pt + width / 2 == pytest.approx(middle)
        assert width < bar.x2_pt - bar.x1_pt


def test_the_numbers_clear_the_bar() -> None:
    over, bar, under = lay_out_rich_line((HALF,), SIZE).shapes
    assert isinstance(over, TextRun) and isinstance(bar, Rule) and isinstance(under, TextRun)
    half = bar.thickness_pt / 2
    figure = FIGURE_HEIGHT_EMS * under.size_pt
    assert bar.y1_pt - half - over.y_pt == pytest.approx(0.11 * SIZE)
    assert (under.y_pt - figure) - (bar.y1_pt + half) == pytest.approx(0.11 * SIZE)


def test_a_bar_is_thick_enough_for_a_photocopier_at_every_size() -> None:
    # 0.25 mm: sources.md section 4 (our own choice, beside ISO 3098).
    for size in (6.0, 12.0, 24.0):
        bar = lay_out_rich_line((HALF,), size).shapes[1]
        assert isinstance(bar, Rule)
        assert bar.thickness_pt >= 0.25 * 72 / 25.4 - 1e-9


def test_a_mixed_number_has_less_than_a_word_space_before_its_fraction() -> None:
    mixed = lay_out_rich_line((Solid(("2", Stacked("3", "4"))),), SIZE)
    apart = lay_out_rich_line((Solid((Stacked("3", "4"),)),), SIZE).width_pt + width_pt("2", SIZE)
    gap = mixed.width_pt - apart
    assert 0 < gap < width_pt(" ", SIZE)


def test_a_missing_number_box_is_centred_on_the_axis_and_can_be_written_in() -> None:
    drawing = lay_out_rich_line((Solid((MissingBox(Fraction(2)),)),), SIZE)
    (box,) = drawing.shapes
    assert isinstance(box, Rect)
    axis = drawing.baseline_pt - MATHS_AXIS_EMS * SIZE
    assert box.y_pt + box.height_pt / 2 == pytest.approx(axis)
    assert box.width_pt == pytest.approx(2 * SIZE)
    assert box.height_pt >= 5 * 72 / 25.4  # 5 mm: common practice, no source


def test_a_blank_is_a_rule_of_its_width_under_the_baseline() -> None:
    drawing = lay_out_rich_line((Blank(Fraction(5)),), SIZE)
    (rule,) = drawing.shapes
    assert isinstance(rule, Rule)
    assert rule.x2_pt - rule.x1_pt == pytest.approx(5 * SIZE)
    assert drawing.baseline_pt < rule.y1_pt < drawing.height_pt


def test_fractions_and_boxes_fit_a_leading_of_one_and_a_half() -> None:
    for solid in (HALF, Solid((MissingBox(),))):
        assert lay_out_rich_line((solid,), SIZE).height_pt < 1.5 * SIZE


def test_the_colour_reaches_every_shape() -> None:
    rich: Rich = (Words("a "), HALF, Solid((MissingBox(),)), Blank())
    for shape in lay_out_rich_line(rich, SIZE, colour=grey(0.3)).shapes:
        colour = shape.colour if isinstance(shape, TextRun | Rule) else shape.stroke
        assert colour == grey(0.3)


def test_a_missing_character_is_refused_wherever_it_stands() -> None:
    for solid in (Solid(("漢",)), Solid((Stacked("1", "漢"),)), Solid((Stacked("漢", "1"),))):
        with pytest.raises(GlyphError):
            lay_out_rich_line((solid,), SIZE)


def test_nothing_is_an_empty_line_of_full_height() -> None:
    assert lay_out_rich_line((), SIZE) == Drawing(0.0, SIZE * 0.96, (), SIZE * 0.75)


@settings(max_examples=60, deadline=None)
@given(rich_texts)
def test_every_shape_is_within_the_drawing_and_reads_in_order(rich: Rich) -> None:
    drawing = lay_out_rich_line(rich, SIZE)
    for shape in drawing.shapes:
        left, right, top, foot = extent(shape)
        assert 0 <= left <= right <= drawing.width_pt + 0.01
        assert -0.01 <= top <= foot <= drawing.height_pt + 0.01
    letters = "".join(texts(drawing)).replace(" ", "")
    marks = str.maketrans("", "", " /_[]")
    assert letters == plain(rich).translate(marks)


def extent(shape: object) -> tuple[float, float, float, float]:
    """Left, right, top and foot; letters count from figure height to baseline."""
    if isinstance(shape, TextRun):
        top = shape.y_pt - FIGURE_HEIGHT_EMS * shape.size_pt
        right = shape.x_pt + width_pt(shape.text, shape.size_pt, shape.face)
        return shape.x_pt, right, top, shape.y_pt
    if isinstance(shape, Rule):
        return shape.x1_pt, shape.x2_pt, shape.y1_pt, shape.y2_pt
    assert isinstance(shape, Rect) and not isinstance(shape, Path)
    return (
        shape.x_pt,
        shape.x_pt + shape.width_pt,
        shape.y_pt,
        shape.y_pt + shape.height_pt,
    )
