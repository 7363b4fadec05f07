from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.drawing.pens import GUIDE_COLOUR
from typeset.drawing.shapes import Drawing, Rect, Rule, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import words
from typeset.setting.answer_lines import AnswerLine, answer_lines, answer_lines_reading
from typeset.setting.answer_spaces import (
    ANSWER_LINE_MM,
    AnswerSpace,
    Rows,
    SpaceKind,
    SpacePiece,
    answer_space,
)
from typeset.setting.frames import Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.tick_boxes import lay_out_tick_boxes

MM = 72 / 25.4
STYLE = TextStyle(14)
WIDTH = 150 * MM
NO_ANSWER: tuple[AnswerLine, ...] = ()
GULLS = AnswerLine(after=words("gulls"))


def piece(kind: SpaceKind) -> SpacePiece:
    return answer_space(AnswerSpace(kind, Rows(2, 3, 7), NO_ANSWER), STYLE, WIDTH, "q1")


@pytest.mark.parametrize("kind", [SpaceKind.WORKING, SpaceKind.LINES, SpaceKind.BAR_MODEL])
def test_rows_are_eight_millimetres_high(kind: SpaceKind) -> None:
    height = piece(kind).height
    assert height.least_pt == pytest.approx(2 * 8 * MM)
    assert height.natural_pt == pytest.approx(3 * 8 * MM)
    assert height.greatest_pt == pytest.approx(7 * 8 * MM)


def test_ruled_lines_are_eight_millimetres_apart_and_end_at_the_foot() -> None:
    # 8 mm: common practice, no source (issue 4).
    (item,) = piece(SpaceKind.LINES).place(10, 20, 5.5 * 8 * MM)
    rules = [shape for shape in item.shapes if isinstance(shape, Rule)]
    assert len(rules) == 5
    steps = [b.y1_pt - a.y1_pt for a, b in pairwise(rules)]
    assert steps == pytest.approx([8 * MM] * 4)
    assert rules[-1].y1_pt + rules[-1].thickness_pt == pytest.approx(20 + 5.5 * 8 * MM)
    assert {(rule.x1_pt, rule.x2_pt) for rule in rules} == {(10, 10 + WIDTH)}


@pytest.mark.parametrize("side_mm", [10.0, 7.0])
def test_squares_are_square_and_whole(side_mm: float) -> None:
    # 10 mm for younger, 7 mm for older pupils: common practice, no source (issue 4).
    space = AnswerSpace(SpaceKind.SQUARES, Rows(2, 3, 7), NO_ANSWER, side_mm)
    (item,) = answer_space(space, STYLE, WIDTH).place(0, 0, 4.6 * side_mm * MM)
    rules = [shape for shape in item.shapes if isinstance(shape, Rule)]
    level = sorted({rule.y1_pt for rule in rules if rule.y1_pt == rule.y2_pt})
    upright = sorted({rule.x1_pt for rule in rules if rule.x1_pt == rule.x2_pt})
    assert len(level) == 4 + 1 and len(upright) == int(150 / side_mm) + 1
    for edges in (level, upright):
        steps = [b - a for a, b in pairwise(edges)]
        assert steps == pytest.approx([side_mm * MM] * len(steps))
    assert {rule.y2_pt for rule in rules if rule.x1_pt == rule.x2_pt} == {level[-1]}


def test_a_frame_is_as_high_as_its_room_and_holds_the_first_bar() -> None:
    bar = Drawing(60, 90, (Rect(0, 0, 60, 30, 1.0),))
    space = AnswerSpace(SpaceKind.BAR_MODEL, Rows(1, 2, 3), NO_ANSWER, started=bar)
    made = answer_space(space, STYLE, WIDTH)
    assert made.height.least_pt == pytest.approx(90 + 6 * MM)
    (item,) = made.place(0, 0, made.height.least_pt)
    frame, first = item.shapes
    assert isinstance(frame, Rect) and isinstance(first, Rect)
    assert (frame.width_pt, frame.height_pt) == (WIDTH, made.height.least_pt)
    assert first.x_pt > frame.x_pt and first.y_pt > frame.y_pt


def test_room_for_working_is_empty_but_is_an_answer_space() -> None:
    (item,) = piece(SpaceKind.WORKING).place(3, 4, 50)
    assert item.shapes == ()
    assert (item.role, item.source) == (Role.ANSWER_SPACE, "q1")
    assert (item.x_pt, item.y_pt, item.width_pt, item.height_pt) == (3, 4, WIDTH, 50)


def test_guides_stay_visible_on_white_by_the_wcag_formula() -> None:
    # WCAG 2.2 relative luminance and contrast (sources.md section 4), 3 : 1 for graphics.
    level = ((GUIDE_COLOUR[0] + 0.055) / 1.055) ** 2.4
    assert 1.05 / (level + 0.05) >= 3


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from([kind for kind in SpaceKind if kind is not SpaceKind.TICKS]),
    st.integers(1, 4),
    st.floats(0, 2),
    st.floats(60, 170),
    st.integers(0, 3),
)
def test_nothing_leaves_the_space_and_rules_copy(
    kind: SpaceKind, least: int, looseness: float, width_mm: float, count: int
) -> None:
    space = AnswerSpace(kind, Rows(least, least + 1, least + 3), (GULLS,) * count)
    made = answer_space(space, STYLE, width_mm * MM)
    height = made.height.at(looseness)
    for shape in made.draw(height):
        left, top, right, foot = edges(shape)
        assert left >= -0.01 and right <= width_mm * MM + 0.01
        assert top >= -0.4 and foot <= height + 0.4
        if isinstance(shape, Rule):
            # 0.25 mm at least (sources.md section 4).
            assert shape.thickness_pt >= 0.25 * MM - 1e-9


def edges(shape: object) -> tuple[float, float, float, float]:
    if isinstance(shape, Rule):
        return shape.x1_pt, shape.y1_pt, shape.x2_pt, shape.y2_pt
    if isinstance(shape, Rect):
        right, foot = shape.x_pt + shape.width_pt, shape.y_pt + shape.height_pt
        return shape.x_pt, shape.y_pt, right, foot
    assert isinstance(shape, TextRun)
    return shape.x_pt, shape.y_pt - 0.68 * shape.size_pt, shape.x_pt, shape.y_pt


def test_the_answer_line_is_at_the_foot_with_its_unit_after_it() -> None:
    made = answer_space(AnswerSpace(SpaceKind.WORKING, answers=(GULLS,)), STYLE, WIDTH)
    height = made.height.greatest_pt
    label, rule, unit = made.draw(height)
    assert isinstance(label, TextRun) and isinstance(rule, Rule) and isinstance(unit, TextRun)
    assert (label.text, unit.text) == ("Answer", "gulls")
    assert label.x_pt < rule.x1_pt < rule.x2_pt < unit.x_pt
    assert height - 0.3 * 14 < label.y_pt < rule.y1_pt < height
    assert made.reads_as == "Answer ____ gulls"


def test_answer_lines_are_far_enough_apart_to_write_on() -> None:
    # 9 mm at least: common practice, no source.
    space = AnswerSpace(SpaceKind.LINE, answers=(GULLS, AnswerLine(words("Terns"))))
    made = answer_space(space, STYLE, WIDTH)
    rules = [s for s in made.draw(made.height.least_pt) if isinstance(s, Rule)]
    assert rules[1].y1_pt - rules[0].y1_pt == pytest.approx(ANSWER_LINE_MM * MM)
    assert ANSWER_LINE_MM >= 9


def test_rules_start_in_one_line_whatever_the_unit() -> None:
    answers = (AnswerLine(), GULLS, AnswerLine(before=words("£")), AnswerLine(words("Terns")))
    lines = answer_lines(answers, STYLE, WIDTH).lines
    starts = [s.x1_pt for line in lines for s in line.shapes if isinstance(s, Rule)]
    assert starts == pytest.approx([starts[0]] * 4)


@pytest.mark.parametrize("width_mm", [60, 80])
def test_rules_of_one_space_start_in_one_line_in_a_narrow_column_too(width_mm: float) -> None:
    answers = (AnswerLine(words("Gulls")), AnswerLine(words("Sandwich terns")))
    lines = answer_lines(answers, STYLE, width_mm * MM).lines
    starts = [s.x1_pt for line in lines for s in line.shapes if isinstance(s, Rule)]
    assert starts[0] == pytest.approx(starts[1])


def test_answer_lines_of_large_print_are_further_apart() -> None:
    space = AnswerSpace(SpaceKind.LINE, answers=(GULLS, GULLS))
    made = answer_space(space, TextStyle(24), WIDTH)
    rules = [s for s in made.draw(made.height.least_pt) if isinstance(s, Rule)]
    assert rules[1].y1_pt - rules[0].y1_pt >= 1.3 * 24 - 0.01


def test_a_box_beyond_its_column_is_refused() -> None:
    answer = AnswerLine(after=words("steps to the lantern"), boxed=True)
    with pytest.raises(FitError, match=r"needs \d+ mm"):
        answer_lines((answer,), STYLE, 60 * MM)


def test_a_long_unit_takes_room_at_the_left_before_the_rule_gets_short() -> None:
    (line,) = answer_lines(
        (AnswerLine(after=words("pieces of blue and white rope")),), STYLE, WIDTH
    ).lines
    (rule,) = [s for s in line.shapes if isinstance(s, Rule)]
    assert rule.x2_pt - rule.x1_pt == pytest.approx(30 * MM)


def test_a_boxed_answer_is_a_box_with_words_on_both_sides() -> None:
    answer = AnswerLine(after=words("steps"), boxed=True)
    (line,) = answer_lines((answer,), STYLE, WIDTH).lines
    label, box, unit = line.shapes
    assert isinstance(label, TextRun) and isinstance(box, Rect) and isinstance(unit, TextRun)
    assert label.x_pt < box.x_pt < box.x_pt + box.width_pt < unit.x_pt
    assert answer_lines_reading((answer,)) == "Answer [ ] steps"


def test_a_unit_too_long_for_its_column_is_named() -> None:
    answer = AnswerLine(after=words("pieces of blue and white rope"))
    with pytest.raises(FitError, match="'Answer ____ pieces of blue and white rope' needs"):
        answer_lines((answer,), STYLE, 60 * MM)


CHOICES = (words("multiply"), words("do not multiply"))


def test_tick_boxes_stand_in_a_row_each_before_its_words() -> None:
    shapes = lay_out_tick_boxes(CHOICES, STYLE, WIDTH).shapes
    first, one, second, two = shapes
    assert isinstance(first, Rect) and isinstance(second, Rect)
    assert isinstance(one, TextRun) and isinstance(two, TextRun)
    assert first.x_pt < one.x_pt < second.x_pt < two.x_pt
    assert one.y_pt == two.y_pt
    # Centred on figures and capitals.
    assert first.y_pt + first.height_pt / 2 == pytest.approx(one.y_pt - 0.34 * 14)


def test_tick_boxes_that_do_not_fit_a_row_stand_in_a_column() -> None:
    shapes = lay_out_tick_boxes(CHOICES, STYLE, 45 * MM).shapes
    boxes = [shape for shape in shapes if isinstance(shape, Rect)]
    assert boxes[0].x_pt == boxes[1].x_pt == 0
    assert boxes[1].y_pt > boxes[0].y_pt + boxes[0].height_pt


def test_tick_boxes_read_as_boxes_and_words() -> None:
    space = AnswerSpace(SpaceKind.TICKS, choices=CHOICES)
    assert answer_space(space, STYLE, WIDTH).reads_as == "[ ] multiply [ ] do not multiply"
