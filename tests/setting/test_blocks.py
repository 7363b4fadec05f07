from __future__ import annotations

import pytest

from typeset.drawing.shapes import PT_PER_MM as MM
from typeset.drawing.shapes import Drawing, Face, Rect, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import words
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind
from typeset.setting.blocks import (
    Block,
    Column,
    Question,
    cell_width_pt,
    question_block,
    question_piece,
    text_block,
)
from typeset.setting.frames import Placed, Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import Columns

COLUMN = Column(TextStyle(12), 170 * MM)
STORY = words("For every five gulls on the quay there are two terns. How many terns are there?")
SPACE = AnswerSpace(SpaceKind.WORKING, Rows(3, 4, 8))


def placed(block: Block) -> tuple[Placed, ...]:
    return block.piece.place(0, 0, block.piece.height.natural_pt)


def figure(width: float) -> Drawing:
    return Drawing(width, 40, (Rect(0, 0, width, 40, 1.0),), reads_as="Bar model")


def test_a_question_is_number_story_figure_and_space_in_order() -> None:
    question = Question("question 3", "3", STORY, SPACE, figure(100), source="q3")
    items = placed(question_block(question, COLUMN))
    roles = [item.role for item in items]
    assert roles == [Role.QUESTION, Role.QUESTION, Role.FIGURE, Role.ANSWER_SPACE]
    assert {item.source for item in items} == {"q3"}
    number, story, drawn, space = items
    assert (number.reads_as, story.reads_as) == ("3", STORY[0].text)  # type: ignore[union-attr]
    assert number.x_pt < story.x_pt == drawn.x_pt == space.x_pt
    assert story.y_pt + story.height_pt < drawn.y_pt < drawn.y_pt + drawn.height_pt < space.y_pt


def test_the_number_is_bold_and_on_the_first_baseline() -> None:
    number, story = placed(question_block(Question("q", "3", STORY), COLUMN))
    (label,), first = number.shapes, story.shapes[0]
    assert isinstance(label, TextRun) and isinstance(first, TextRun)
    assert label.face is Face.BOLD
    assert label.y_pt == pytest.approx(first.y_pt)


def test_stories_start_in_one_line_whatever_the_number() -> None:
    starts = [placed(question_block(Question("q", n, STORY), COLUMN))[1].x_pt for n in ("1", "12")]
    assert starts[0] == starts[1]


def test_a_figure_may_stand_beside_the_story() -> None:
    question = Question("q", "3", STORY, SPACE, figure(150), beside=True)
    _, story, space, drawn = placed(question_block(question, COLUMN))
    assert drawn.role is Role.FIGURE
    assert drawn.y_pt == story.y_pt
    assert max(story.x_pt + story.width_pt, space.x_pt + space.width_pt) < drawn.x_pt
    assert drawn.x_pt + drawn.width_pt <= COLUMN.width_pt + 0.01


def test_a_figure_wider_than_its_column_is_named() -> None:
    with pytest.raises(FitError, match="the figure of question 3 is 176 mm wide, its column 161"):
        question_block(Question("question 3", "3", STORY, figure=figure(500)), COLUMN)


def test_a_question_offers_less_room_to_work_as_a_saving() -> None:
    block = question_block(Question("question 3", "3", STORY, SPACE), COLUMN)
    assert [(s.what, round(s.saves_pt / MM)) for s in block.savings] == [
        ("give question 3 2 lines to work on, not 3", 8),
        ("give question 3 1 line to work on, not 3", 16),
    ]
    assert block.optional


def test_the_space_can_give_way_and_the_story_cannot() -> None:
    with_space = question_block(Question("q", "3", STORY, SPACE), COLUMN).piece.height
    bare = question_block(Question("q", "3", STORY), COLUMN).piece.height
    assert bare.least_pt == bare.greatest_pt
    assert with_space.greatest_pt - with_space.least_pt > 5 * 8 * MM


def test_a_text_block_has_its_role() -> None:
    (item,) = placed(text_block("aim", STORY, COLUMN, Role.INSTRUCTION))
    assert item.role is Role.INSTRUCTION


def test_cells_of_a_row_fill_the_column_and_their_answers_are_level() -> None:
    cell = COLUMN.narrowed(cell_width_pt(3, COLUMN))
    short, space = words("7 × 12 is"), AnswerSpace(SpaceKind.LINE)
    questions = [
        Question("q", str(n), text, space) for n, text in enumerate((short, STORY, short), 1)
    ]
    gap = COLUMN.spacing.column * COLUMN.style.size_pt
    row = Columns(tuple(question_piece(q, cell) for q in questions), gap)
    assert row.width_pt == pytest.approx(COLUMN.width_pt)
    items = row.place(0, 0, row.height.at(2))
    feet = [i.y_pt + i.height_pt for i in items if i.role is Role.ANSWER_SPACE]
    assert feet == pytest.approx([feet[0]] * 3)
