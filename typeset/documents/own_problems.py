"""Frames for the problems that pupils make up themselves, to be solved by others on another day."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek, ToldOwnProblems
from typeset.documents.answer_spaces import room_of, rows_of
from typeset.documents.composer import TITLE_SCALE, Composer, stage_heading, week_names
from typeset.documents.layout import Layout
from typeset.documents.task_sheet import SHEET_SPACING, name_and_date
from typeset.errors import FitError
from typeset.quantities.inline import words
from typeset.reading.content import Space
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind, answer_space
from typeset.setting.blocks import Block, Column, cell_width_pt, text_block
from typeset.setting.frames import Document, Role
from typeset.setting.pages import PageLayout, fill_needed, fill_sides
from typeset.setting.pieces import Columns, Piece, stack, text
from typeset.setting.stretch import Stretch

# With more on a side there is no room left to draw and to explain.
FRAMES_A_SIDE = 2
# The least: a question of one's own takes a few sentences, and how one knows some more in a
# column half as wide.
QUESTION_LINES = 2
ANSWER_LINES = 4
# Room to write in comes before large type here, and so does air between the rooms.
_SPACING = replace(SHEET_SPACING, paragraph=Stretch(0.75, 0.9, 1.5))
HARDNESS = ("easy", "middling", "tricky")


def compose_own_problems(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> tuple[Document, PageLayout]:
    """The sheet of a lesson that has one: what to choose from, then frames to fill, two a side.

    Raises FitError where it finds no room, GlyphError for a character that cannot be drawn.
    """
    layout = layout.for_booklet()
    composer = Composer(layout)
    foot = composer.say("sheet", "foot", **week_names(solved, lesson))
    frame = composer.frame(foot, layout.type_size.smallest)
    sheet = _Sheet(composer, own_of(lesson))
    sizes = layout.type_size.sizes_pt()
    try:
        pages = (
            fill_sides(sheet.blocks, frame, sheet.sides, sizes)
            if layout.sides == "as asked"
            else fill_needed(sheet.blocks, frame, sizes)
        )
    except FitError as error:
        where = f"{lesson.lesson.place.file}: on the sheet for own problems"
        raise FitError(f"{where} {error}") from error
    document = Document(
        title=f"{lesson.lesson.title} – own problems",
        subject=solved.week.title,
        pages=pages.pages,
        type_size_pt=pages.type_size_pt,
        fingerprint=lesson.lesson.fingerprint,
    )
    return document, pages


def own_of(lesson: SolvedLesson) -> ToldOwnProblems:
    """What pupils make up problems from; only lessons that have it get a sheet."""
    assert lesson.own is not None, "a sheet is planned only for a lesson with 'own problems'"
    return lesson.own


class _Sheet:
    """The blocks of the sheet at any type size."""

    def __init__(self, composer: Composer, own: ToldOwnProblems) -> None:
        self.composer = composer
        self.own = own

    @property
    def sides(self) -> int:
        """So many that two frames stand on each."""
        return -(-self.own.content.frames // FRAMES_A_SIDE)

    def blocks(self, size_pt: float) -> list[Block]:
        """Name and date, title, what to choose from, what to do, and the frames."""
        column = replace(self.composer.column(size_pt), spacing=_SPACING)
        count = self.own.content.frames
        blocks = list(self._head(column, count))
        for number in range(1, count + 1):
            blocks.extend(self._frame(number, column))
        return blocks

    def _head(self, column: Column, count: int) -> Iterator[Block]:
        composer, content = self.composer, self.own.content
        if composer.layout.sheet.name_and_date:
            line = name_and_date(composer, column)
            yield Block("the name line", line, keep_with_next=True)
        style = column.style.scaled(TITLE_SCALE).bold()
        title = text(words(content.title), style, column.width_pt, Role.TITLE)
        gap = column.gap(column.spacing.heading)
        yield Block("the title", title, gap, keep_with_next=True)
        yield text_block("the story", self.own.story, column, Role.QUESTION, content.id)
        about = composer.rich("own", "about", count=str(count))
        yield text_block("what to do", about, column, Role.INSTRUCTION)

    def _frame(self, number: int, column: Column) -> Iterator[Block]:
        """Its heading, and room for the question, a model, the answer, and how hard it is."""
        heading = self.composer.rich("own", "frame", number=str(number))
        yield stage_heading(f"the heading of problem {number}", heading, column)
        parts = (
            ("question", self._labelled("question", (self._lines(QUESTION_LINES),), column)),
            ("model and answer", self._model_and_answer(column)),
            ("hardness", self._labelled("hard", self._hardness(), column)),
        )
        for index, (name, piece) in enumerate(parts):
            gap = column.gap(column.spacing.paragraph if index else column.spacing.inner)
            is_last = index == len(parts) - 1
            yield Block(f"{name} of problem {number}", piece, gap, keep_with_next=not is_last)

    def _model_and_answer(self, column: Column) -> Piece:
        """The two side by side, since a model is looked at while it is explained."""
        cell = column.narrowed(cell_width_pt(2, column))
        model = self._labelled("model", (self._model(),), cell)
        answer = self._labelled("answer", (self._lines(ANSWER_LINES),), cell)
        return Columns((model, answer), column.spacing.column * column.style.size_pt)

    def _labelled(self, key: str, rooms: Sequence[AnswerSpace], column: Column) -> Piece:
        """A line that says what goes below it, and the room."""
        source, style = self.own.content.id, column.style
        rich = self.composer.rich("own", key)
        label = text(rich, style.bold(), column.width_pt, Role.TEXT, source)
        spaces = [answer_space(room, style, column.width_pt, source) for room in rooms]
        return stack((label, *spaces), column.gap(column.spacing.inner))

    def _lines(self, least: int) -> AnswerSpace:
        rows = rows_of(self.composer, Space.LINES, least)
        return room_of(self.composer, SpaceKind.LINES, rows, ())

    def _model(self) -> AnswerSpace:
        rows = rows_of(self.composer, Space.MODEL, ANSWER_LINES)
        return room_of(self.composer, SpaceKind.BAR_MODEL, rows, ())

    def _hardness(self) -> tuple[AnswerSpace, ...]:
        """Boxes to tick, and a line for the reason."""
        choices = tuple(self.composer.rich("own", key) for key in HARDNESS)
        ticks = AnswerSpace(SpaceKind.TICKS, answers=(), choices=choices)
        because = AnswerLine(label=self.composer.rich("own", "because"), long=True)
        return (ticks, room_of(self.composer, SpaceKind.LINE, Rows(), (because,)))
