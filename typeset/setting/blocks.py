"""Blocks: what a page break may stand between, and never within.

A document makes its blocks for a type size, `compose(size_pt) -> list[Block]`, since every
height depends on it. The kinds that documents need are made by the functions below; any
other is a `Block` around a `Piece`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from typeset.drawing.shapes import PT_PER_MM, Drawing
from typeset.errors import FitError
from typeset.quantities.inline import Rich, words
from typeset.setting.answer_spaces import (
    AnswerSpace,
    Rows,
    SpaceKind,
    answer_space,
)
from typeset.setting.frames import Role
from typeset.setting.paragraphs import TextStyle, natural_width_pt
from typeset.setting.pieces import Columns, DrawingPiece, Piece, Stack, hanging, text
from typeset.setting.stretch import TOLERANCE_PT, Stretch, fixed

NO_GAP = fixed(0.0)
# Distances in ems. Parts of a question stand closer than questions, those closer than stages:
# the eye groups by distance, so each is about half as large again as the one within it.
INNER_EMS = Stretch(0.6, 0.8, 1.1)
PARAGRAPH_EMS = Stretch(0.6, 0.8, 1.2)
QUESTION_EMS = Stretch(1.2, 1.7, 2.8)
HEADING_EMS = Stretch(1.6, 2.2, 3.4)


@dataclass(frozen=True, slots=True)
class Saving:
    """A change to the content that makes a block lower, as it is said to the teacher."""

    what: str
    saves_pt: float


@dataclass(frozen=True, slots=True)
class Block:
    """A piece that is never split over two pages.

    `name` is what messages call it ('question 3'). The gap before it is left out at the top
    of a page.
    `may_part` gives up being kept with the next block where the two are higher than a page.
    `optional` marks what a teacher could leave out to make a sheet fit. `anchor` names the
    place for links and bookmarks.
    """

    name: str
    piece: Piece
    before: Stretch = NO_GAP
    keep_with_next: bool = False
    may_part: bool = False
    starts_page: bool = False
    optional: bool = False
    savings: tuple[Saving, ...] = ()
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Spacing:
    """The distances of a layout in ems of the body type, so that they grow with it."""

    # From the left edge to the text beside a number.
    hang: float = 2.2
    # Between the columns of a row.
    column: float = 2.0
    # Between the pieces of a question.
    inner: Stretch = INNER_EMS
    paragraph: Stretch = PARAGRAPH_EMS
    question: Stretch = QUESTION_EMS
    heading: Stretch = HEADING_EMS

    def points(self, ems: Stretch, size_pt: float) -> Stretch:
        """A distance in points at this type size."""
        return Stretch(ems.least_pt * size_pt, ems.natural_pt * size_pt, ems.greatest_pt * size_pt)


@dataclass(frozen=True, slots=True)
class Column:
    """What every builder needs: the body's style, the width, and the layout's distances.

    No line of running text is longer than `longest_pt`, however wide the column.
    """

    style: TextStyle
    width_pt: float
    spacing: Spacing = Spacing()
    longest_pt: float | None = None

    @property
    def text_pt(self) -> float:
        """The width in which running text is set."""
        return self.width_pt if self.longest_pt is None else min(self.width_pt, self.longest_pt)

    def narrowed(self, width_pt: float) -> Column:
        """The same with another width."""
        return replace(self, width_pt=width_pt)

    def gap(self, ems: Stretch) -> Stretch:
        """A distance of the spacing in points."""
        return self.spacing.points(ems, self.style.size_pt)


@dataclass(frozen=True, slots=True)
class Question:
    """What a question shows. `name` is for messages, `number` is printed in the margin.

    `beside` sets the figure right of the text instead of under it. `starter` is a sentence to
    finish, before the room to work in.
    """

    name: str
    number: str
    story: Rich
    space: AnswerSpace | None = None
    figure: Drawing | None = None
    source: str = ""
    beside: bool = False
    starter: AnswerSpace | None = None


def text_block(
    name: str,
    rich: Rich,
    column: Column,
    role: Role = Role.TEXT,
    source: str = "",
    level: int = 0,
) -> Block:
    """A paragraph over the whole width. Raises GlyphError, FitError."""
    piece = text(rich, column.style, column.text_pt, role, source, level)
    return Block(name, piece, column.gap(column.spacing.paragraph))


def question_block(question: Question, column: Column) -> Block:
    """A question: its number in the margin, then story, figure and answer space.

    Raises GlyphError; FitError where a word, figure or unit is wider than the column.
    """
    piece = question_piece(question, column)
    savings = _savings(question)
    gap = column.gap(column.spacing.question)
    return Block(question.name, piece, gap, optional=True, savings=savings)


def cell_width_pt(count: int, column: Column) -> float:
    """The width of one of `count` equal cells of a row."""
    gaps = (count - 1) * column.spacing.column * column.style.size_pt
    return (column.width_pt - gaps) / count


def question_piece(question: Question, column: Column) -> Piece:
    """The question as a piece, for a row of questions. Raises as `question_block` does."""
    style = column.style
    label = number_label(question.number, style, Role.QUESTION, question.source)
    indent = column.spacing.hang * style.size_pt
    body = _body(question, column.narrowed(column.width_pt - max(indent, label.width_pt)))
    return hanging(label, body, max(indent, label.width_pt))


def number_label(number: str, style: TextStyle, role: Role, source: str = "") -> Piece:
    """A number in bold, to hang in the margin."""
    bold = style.bold()
    return text(words(number), bold, natural_width_pt(words(number), bold) + 0.1, role, source)


def _body(question: Question, column: Column) -> Piece:
    figure, beside = question.figure, question.beside
    if figure is not None and figure.width_pt > column.width_pt + TOLERANCE_PT:
        raise FitError(_wider(f"the figure of {question.name}", figure.width_pt, column.width_pt))
    if figure is not None and beside:
        gap = column.spacing.column * column.style.size_pt
        left = column.narrowed(column.width_pt - figure.width_pt - gap)
        drawing = DrawingPiece(figure, Role.FIGURE, question.source)
        return Columns((_story_and_space(question, left, None), drawing), gap)
    return _story_and_space(question, column, figure)


def _story_and_space(question: Question, column: Column, figure: Drawing | None) -> Piece:
    style, width, source = column.style, column.width_pt, question.source
    pieces: list[Piece] = [text(question.story, style, column.text_pt, Role.QUESTION, source)]
    if figure is not None:
        pieces.append(DrawingPiece(figure, Role.FIGURE, source))
    if question.starter is not None:
        pieces.append(answer_space(question.starter, style, width, source))
    if question.space is not None:
        pieces.append(answer_space(question.space, style, width, source))
    gaps = (column.gap(column.spacing.inner),) * (len(pieces) - 1)
    return Stack(tuple(pieces), gaps, on_foot=question.space is not None)


def _savings(question: Question) -> tuple[Saving, ...]:
    """The answer space with one row less at a time: what a teacher may give up."""
    space = question.space
    if space is None or space.kind in (SpaceKind.LINE, SpaceKind.TICKS) or space.started:
        return ()
    row = (space.square_mm if space.kind is SpaceKind.SQUARES else space.ruled_mm) * PT_PER_MM
    return tuple(
        Saving(f"give {question.name} {_rows(space, kept)}", (space.rows.least - kept) * row)
        for kept in range(space.rows.least - 1, 0, -1)
    )


def _rows(space: AnswerSpace, kept: int) -> str:
    rows: Rows = space.rows
    word = "row of squares" if space.kind is SpaceKind.SQUARES else "line"
    return f"{kept} {word}{'s' if kept > 1 and word == 'line' else ''} to work on, not {rows.least}"


def _wider(what: str, width_pt: float, column_pt: float) -> str:
    return (
        f"{what} is {width_pt / PT_PER_MM:.0f} mm wide, its column {column_pt / PT_PER_MM:.0f} mm; "
        "make it narrower or give it the whole width"
    )
