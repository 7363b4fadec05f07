"""The structure of finished pages as data, before there is a PDF."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.drawing.shapes import Drawing, Rect, TextRun
from typeset.quantities.inline import Equals, Rich, Solid, Stacked, words
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind, answer_space
from typeset.setting.blocks import Column, Question, question_block, text_block
from typeset.setting.frames import Document, ListPart, Page, Placed, Role
from typeset.setting.linked import Linked
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import DrawingPiece, Piece, RulePiece, hanging, text
from typeset.setting.structure import Element, Structure, structure_of
from typeset.setting.workings import WorkingStep, working

STYLE = TextStyle(12.0)
COLUMN = Column(STYLE, 400.0)
SUM = Equals((Solid(("5 × 12",)), Solid(("60",))), ("=",))
PICTURE = Drawing(30, 20, (Rect(0, 0, 30, 20, 1.0),), reads_as="Bar model: gulls, 3/4; terns ?")


def structure(*pieces: Piece) -> Structure:
    """The pieces one under the other on one page."""
    placed: list[Placed] = []
    for piece in pieces:
        top = 40.0 * (len(placed) + 1)
        placed.extend(piece.place(50.0, top, piece.height.natural_pt))
    page = Page(595.0, 842.0, tuple(placed))
    return structure_of(Document("t", "s", (page,), 12.0, tagged=True))


def outline(element: Element) -> Any:
    """The tree as nested lists: ['P', 'Span: blank']."""
    said = element.actual_text or element.alt
    name = f"{element.tag}: {said}" if said else element.tag
    below = [outline(each) for each in element.children if isinstance(each, Element)]
    return [name, *below] if below else name


def paragraph(told: str, role: Role = Role.TEXT, level: int = 0) -> Piece:
    return text(words(told), STYLE, 400.0, role, level=level)


def test_titles_headings_and_paragraphs() -> None:
    made = structure(
        paragraph("Terns", Role.TITLE),
        paragraph("Practise", Role.HEADING),
        paragraph("Set A", Role.HEADING, level=3),
        paragraph("Show how you worked."),
    )
    assert outline(made.root) == ["Document", "H1", "H2", "H3", "P"]


def test_questions_in_a_row_are_one_list_until_something_else_comes() -> None:
    def question(number: str) -> Piece:
        return hanging(paragraph(number), paragraph("How many?", Role.QUESTION), 30)

    made = structure(question("1"), question("2"), paragraph("Set B", Role.HEADING), question("3"))
    item = ["LI", "Lbl", ["LBody", "P"]]
    assert outline(made.root) == ["Document", ["L", item, item], "H2", ["L", item]]


def test_a_list_within_an_entry() -> None:
    hint = hanging(paragraph("•"), paragraph("Draw it."), 10)
    body = hanging(paragraph("1"), hint, 30)
    made = structure(body)
    inner = ["L", ["LI", "Lbl", ["LBody", "P"]]]
    assert outline(made.root) == ["Document", ["L", ["LI", "Lbl", ["LBody", inner]]]]
    numbering = [e.numbering for e in elements(made.root) if e.tag == "L"]
    assert numbering == ["Decimal", "Disc"]


def elements(element: Element) -> list[Element]:
    below = [each for each in element.children if isinstance(each, Element)]
    return [element, *(inner for each in below for inner in elements(each))]


def test_a_question_with_figure_and_answer_space() -> None:
    space = AnswerSpace(SpaceKind.WORKING, Rows(), (AnswerLine(after=words("gulls")),))
    question = Question("question 3", "3", words("How many?"), space, PICTURE)
    made = structure(question_block(question, COLUMN).piece)
    figure = "Figure: Bar model: gulls, three quarters; terns question mark"
    body = ["LBody", "P", figure, ["P", "Span: blank"]]
    assert outline(made.root) == ["Document", ["L", ["LI", "Lbl", body]]]


def test_a_stacked_fraction_is_a_span_within_its_paragraph() -> None:
    rich: Rich = (*words("about "), Solid(("2", Stacked("3", "4"), "\u00a0kg")), *words(" of rope"))
    made = structure(text_block("t", rich, COLUMN).piece)
    assert outline(made.root) == ["Document", ["P", "Span: 2 and three quarters"]]
    (page,) = made.pages
    drawn = [
        "".join(shape.text for shape in section.shapes if isinstance(shape, TextRun))
        for section in page[0].sections
    ]
    assert [each.replace("\u00a0", " ") for each in drawn] == ["about ", "234", " kg of rope"]


def test_two_fractions_beside_each_other_are_two_spans() -> None:
    half = Solid((Stacked("1", "2"),))
    made = structure(text_block("t", (half, half), COLUMN).piece)
    assert outline(made.root) == ["Document", ["P", "Span: one half", "Span: one half"]]


def test_an_equation_in_a_sentence_and_one_of_its_own() -> None:
    made = structure(
        text_block("t", (*words("So "), SUM, *words(".")), COLUMN).piece,
        working([WorkingStep((), SUM)], STYLE, 300.0),
    )
    formula = "Formula: 5 times 12 equals 60"
    assert outline(made.root) == ["Document", ["P", formula], formula]


@pytest.mark.parametrize("kind", [SpaceKind.LINES, SpaceKind.SQUARES, SpaceKind.BAR_MODEL])
def test_a_room_without_an_answer_line_is_a_blank(kind: SpaceKind) -> None:
    made = structure(answer_space(AnswerSpace(kind, answers=()), STYLE, 300.0))
    assert outline(made.root) == ["Document", ["P", "Span: blank"]]


@pytest.mark.parametrize("kind", [SpaceKind.LINES, SpaceKind.SQUARES, SpaceKind.BAR_MODEL])
def test_guides_over_an_answer_line_are_decoration(kind: SpaceKind) -> None:
    made = structure(answer_space(AnswerSpace(kind), STYLE, 300.0))
    assert outline(made.root) == ["Document", ["P", "Span: blank"]]
    (page,) = made.pages
    assert page[0].sections[0].tag == "Artifact"


def test_a_bar_model_that_is_begun_is_a_figure_before_the_answer() -> None:
    begun = AnswerSpace(SpaceKind.BAR_MODEL, started=PICTURE)
    made = structure(answer_space(begun, STYLE, 300.0))
    assert [each.tag for each in elements(made.root)] == ["Document", "Figure", "P", "Span"]


def test_every_answer_line_and_tick_box_is_a_paragraph() -> None:
    lines = AnswerSpace(SpaceKind.LINE, answers=(AnswerLine(), AnswerLine(boxed=True)))
    ticks = AnswerSpace(SpaceKind.TICKS, answers=(), choices=(words("add"), words("multiply")))
    made = structure(answer_space(lines, STYLE, 300.0), answer_space(ticks, STYLE, 300.0))
    blank, box = ["P", "Span: blank"], ["P", "Span: tick box"]
    assert outline(made.root) == ["Document", blank, blank, box, box]


def test_a_link_stands_in_its_paragraph() -> None:
    made = structure(Linked(paragraph("Tuesday"), "tuesday"))
    assert outline(made.root) == ["Document", ["P", "Link"]]
    assert made.pages[0][0].link is elements(made.root)[-1]


def test_rules_and_feet_are_decoration() -> None:
    foot = Placed(Role.FURNITURE, 0, 0, 9, 9, (TextRun(0, 9, "page 1", 9.0),), reads_as="page 1")
    page = Page(595.0, 842.0, (*RulePiece(300.0, 1.0).place(0, 0, 1), foot))
    made = structure_of(Document("t", "s", (page,), 12.0, tagged=True))
    sections = [section for marked in made.pages[0] for section in marked.sections]
    assert [(each.tag, each.number, each.is_foot) for each in sections] == [
        ("Artifact", None, False),
        ("Artifact", None, True),
    ]
    assert outline(made.root) == "Document"


def test_an_entry_that_goes_on_over_the_page_stays_one() -> None:
    def page(*pieces: Piece) -> Page:
        placed = (each for piece in pieces for each in piece.place(9.0, 9.0, 30.0))
        return Page(595.0, 842.0, tuple(placed))

    first = page(hanging(paragraph("1"), paragraph("How many?"), 30.0))
    (item,) = page(paragraph("One way:")).placed
    rest = Page(595.0, 842.0, (replace(item, lists=(ListPart.BODY,)),))
    made = structure_of(Document("t", "s", (first, rest), 12.0, tagged=True))
    assert outline(made.root) == ["Document", ["L", ["LI", "Lbl", ["LBody", "P", "P"]]]]


PIECES = st.sampled_from(
    [
        paragraph("Terns"),
        paragraph("Practise", Role.HEADING),
        hanging(paragraph("1"), paragraph("How many?"), 30.0),
        hanging(paragraph("•"), hanging(paragraph("a"), paragraph("Why?"), 20.0), 20.0),
        DrawingPiece(PICTURE),
        RulePiece(200.0, 1.0),
        answer_space(AnswerSpace(SpaceKind.LINES), STYLE, 300.0),
        working([WorkingStep(words("So:"), SUM)], STYLE, 300.0),
    ]
)


@settings(max_examples=60, deadline=None)
@given(st.lists(PIECES, max_size=8))
def test_every_shape_is_drawn_once_in_order_and_told_once(pieces: list[Piece]) -> None:
    made = structure(*pieces)
    (page,) = made.pages
    for marked in page:
        assert tuple(s for section in marked.sections for s in section.shapes) == marked.item.shapes
    numbers = [s.number for m in page for s in m.sections if s.number is not None]
    assert numbers == list(range(len(numbers)))
    assert list(_told(made.root)) == numbers


def _told(element: Element) -> Any:
    for child in element.children:
        if isinstance(child, Element):
            yield from _told(child)
        else:
            yield child.number
