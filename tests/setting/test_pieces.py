from __future__ import annotations

import pytest

from typeset.drawing.shapes import Drawing, Rect, Rule, TextRun
from typeset.quantities.inline import Rich, Solid, Stacked, Words, words
from typeset.setting.frames import Placed, Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import (
    Columns,
    DrawingPiece,
    Indented,
    Piece,
    Room,
    RulePiece,
    Stack,
    hanging,
    stack,
    text,
)
from typeset.setting.stretch import Stretch, fixed

STYLE = TextStyle(12)
GAP = Stretch(2, 4, 10)
BOX = Drawing(30, 20, (Rect(0, 0, 30, 20, 1.0),), reads_as="a box")


def runs(placed: tuple[Placed, ...]) -> list[TextRun]:
    return [s for item in placed for s in item.shapes if isinstance(s, TextRun)]


def test_a_text_is_one_item_with_its_role_source_and_reading() -> None:
    piece = text(words("How many gulls are on the quay?"), STYLE, 90, Role.QUESTION, "q1")
    (item,) = piece.place(50, 100, piece.height.natural_pt)
    assert (item.role, item.source) == (Role.QUESTION, "q1")
    assert item.reads_as == "How many gulls are on the quay?"
    assert (item.x_pt, item.y_pt) == (50, 100)
    assert runs((item,))[0].x_pt == 50
    assert runs((item,))[0].y_pt == pytest.approx(100 + 0.75 * 12)


def test_an_empty_text_places_nothing() -> None:
    assert text((), STYLE, 90).place(0, 0, 0) == ()


def test_a_drawing_keeps_its_alternative_text() -> None:
    (item,) = DrawingPiece(BOX, source="q1").place(5, 7, 20)
    assert (item.role, item.reads_as, item.source) == (Role.FIGURE, "a box", "q1")
    assert item.shapes == (Rect(5, 7, 30, 20, 1.0),)


def test_a_rule_is_furniture() -> None:
    (item,) = RulePiece(80, 2).place(10, 20, 2)
    assert item.role is Role.FURNITURE
    assert item.shapes == (Rule(10, 21, 90, 21, 2),)


def test_a_stack_shares_its_height_evenly() -> None:
    pieces = (Room(10, Stretch(10, 20, 30)), DrawingPiece(BOX), DrawingPiece(BOX))
    piece = stack(pieces, GAP)
    assert piece.height == Stretch(54, 68, 90)
    first, second = piece.place(0, 0, 90)
    assert (first.y_pt, second.y_pt) == (40, 70)
    first, second = piece.place(0, 0, 54)
    assert (first.y_pt, second.y_pt) == (12, 34)


def test_a_surplus_stays_at_the_end_or_goes_before_the_last() -> None:
    pieces = (DrawingPiece(BOX), DrawingPiece(BOX))
    assert Stack(pieces, (fixed(5),)).place(0, 0, 100)[1].y_pt == 25
    assert Stack(pieces, (fixed(5),), on_foot=True).place(0, 0, 100)[1].y_pt == 80


def test_cells_stand_side_by_side_on_one_baseline() -> None:
    fraction: Rich = (Solid((Stacked("1", "2"),)), Words(" of it"))
    cells = (text(words("7"), STYLE, 40), text(fraction, STYLE, 60))
    row = Columns(cells, 10)
    assert row.width_pt == 110
    placed = row.place(0, 0, row.height.natural_pt)
    label, *_, after = runs(placed)
    assert label.y_pt == pytest.approx(after.y_pt)
    assert placed[1].x_pt == 50
    assert max(item.y_pt + item.height_pt for item in placed) == pytest.approx(
        row.height.natural_pt
    )


def test_a_figure_without_baseline_stands_at_the_top_of_its_row() -> None:
    row = Columns((text(words("gulls"), STYLE, 40), DrawingPiece(BOX)), 10)
    assert [item.y_pt for item in row.place(0, 3, 20)] == [3, 3]


def test_all_cells_get_the_height_of_the_row() -> None:
    room: Piece = Room(10, Stretch(10, 20, 400))
    cells = (Stack((room, DrawingPiece(BOX)), (fixed(0),)), Room(10, fixed(100)))
    (box,) = Columns(cells, 5).place(0, 0, 100)
    assert box.y_pt + box.height_pt == pytest.approx(100)


def test_a_number_hangs_left_of_its_text() -> None:
    label, body = text(words("12"), STYLE, 15), text(words("gulls"), STYLE, 70)
    piece = hanging(label, body, 26)
    number, story = piece.place(100, 0, 12)
    assert (number.x_pt, story.x_pt) == (100, 126)
    assert piece.width_pt == 96


def test_indented() -> None:
    piece = Indented(DrawingPiece(BOX), 12)
    assert piece.width_pt == 42
    assert piece.place(100, 5, 20)[0].x_pt == 112
