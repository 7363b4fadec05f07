"""The task sheet of a lesson: its stages in order, on exactly the sides the lesson asks for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from typeset.arithmetic.figures import Show
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
)
from typeset.arithmetic.names import listed
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_spaces import answer_space_of, room_of, rows_of, starter_of
from typeset.documents.characters import check_characters
from typeset.documents.composer import (
    TITLE_SCALE,
    Composer,
    stage_heading,
    week_names,
)
from typeset.documents.fields import with_fields
from typeset.documents.grid import Grid, copied
from typeset.documents.layout import Layout
from typeset.documents.name_line import filled_in, name_width_pt
from typeset.documents.numbering import footless, stage_anchor, with_feet
from typeset.documents.versions import version_mark
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing
from typeset.errors import FitError
from typeset.quantities.inline import Rich, Words, words
from typeset.reading.content import LAST_WEEK, Space
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind, answer_space
from typeset.setting.blocks import (
    Block,
    Column,
    Question,
    Spacing,
    number_label,
    question_block,
    text_block,
)
from typeset.setting.framed import Framed
from typeset.setting.frames import Document, Page, Role
from typeset.setting.pages import PageFrame, PageLayout, fill_needed, fill_sides
from typeset.setting.pieces import Columns, Piece, hanging, stack, text
from typeset.setting.stretch import Stretch
from typeset.setting.workings import WorkingStep, working

# A figure for a pupil is at most this wide: bars longer than this are slow to read along.
_FIGURE_WIDTH_EMS = 30.0
_FRAME_PADDING_EMS = 0.8
_CHOICES = ("multiply", "add", "both", "neither")
# A full sheet may close up to the least of these, an airy one grows to the greatest.
SHEET_SPACING = Spacing(
    inner=Stretch(0.35, 0.7, 1.1),
    paragraph=Stretch(0.4, 0.7, 1.2),
    question=Stretch(0.85, 1.5, 2.8),
    heading=Stretch(1.0, 1.8, 3.4),
)


def compose_task_sheet(
    solved: SolvedWeek,
    lesson: SolvedLesson,
    layout: Layout,
    pupil: str = "",
    fields: bool = False,
) -> tuple[Document, PageLayout]:
    """The finished task sheet, and its pages as one copy with how full they are.

    With a `pupil` the name is printed on the name line, and at the foot of later sides; with
    `fields` every answer space can be typed in (where the layout has one copy).
    Raises FitError where the lesson cannot be made to fill its sides, GlyphError for a
    character that cannot be drawn.
    """
    pages, frame = lay_out_sheet(solved, lesson, layout, pupil)
    footed = with_feet(pages.pages, frame, 0, len(pages.pages))
    if fields:
        footed = with_fields(footed, lesson, pages.type_size_pt)
    document = Document(
        title=sheet_title(layout, solved, lesson),
        subject=solved.week.title,
        pages=_papers(footed, layout),
        type_size_pt=pages.type_size_pt,
        fingerprint=lesson.lesson.fingerprint,
        # Copies side by side are cut apart: nobody reads that file from its first page on.
        tagged=layout.copies == 1,
    )
    return document, replace(pages, pages=footed)


def lay_out_sheet(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout, pupil: str = ""
) -> tuple[PageLayout, PageFrame]:
    """The pages without their feet, which count the pages of the document they stand in, and
    the frame that has them. Raises as `compose_task_sheet` does.
    """
    check_characters(lesson)
    composer = Composer(layout)
    frame = sheet_frame(composer, solved, lesson, pupil)
    sheet = _Sheet(composer, solved, lesson, pupil)
    try:
        pages = _pages(sheet, footless(frame), layout, solved.version)
    except FitError as error:
        raise FitError(f"{lesson.lesson.place.file}: {error}") from error
    return pages, frame


def sheet_frame(
    composer: Composer, solved: SolvedWeek, lesson: SolvedLesson, pupil: str
) -> PageFrame:
    """The page of the sheet with its foot line, which names a `pupil` on later sides."""
    mark = version_mark(composer.layout, solved)
    foot = composer.say("sheet", "foot", **week_names(solved, lesson) | {"version": mark})
    named = composer.say("sheet", "named foot", pupil=pupil, foot=foot) if pupil else None
    return composer.frame(foot, composer.layout.type_size.smallest, named)


def sheet_title(layout: Layout, solved: SolvedWeek, lesson: SolvedLesson) -> str:
    """What the file calls itself."""
    mark = version_mark(layout, solved)
    return f"{lesson.lesson.title} – task sheet{f' ({mark})' if mark else ''}"


def _pages(sheet: _Sheet, frame: PageFrame, layout: Layout, version: Version) -> PageLayout:
    """On the sides that the lesson asks for; a sister of the sheet may need others."""
    sizes = layout.type_size.sizes_pt()
    if layout.sides == "as asked":
        try:
            return fill_sides(sheet.blocks, frame, sheet.lesson.lesson.sides, sizes)
        except FitError:
            if version is Version.CORE:
                raise
    return fill_needed(sheet.blocks, frame, sizes)


def _papers(pages: tuple[Page, ...], layout: Layout) -> tuple[Page, ...]:
    """The pages as they are printed: each twice on a paper where the layout wants two copies."""
    return pages if layout.copies == 1 else copied(pages, Grid(layout.paper, layout.copies, 1))


class _Sheet:
    """The blocks of one lesson's sheet at any type size."""

    def __init__(
        self, composer: Composer, solved: SolvedWeek, lesson: SolvedLesson, pupil: str
    ) -> None:
        self.composer = composer
        self.solved = solved
        self.lesson = lesson
        self.pupil = pupil

    def blocks(self, size_pt: float) -> list[Block]:
        """The whole sheet, from its title to the open task."""
        column = replace(self.composer.column(size_pt), spacing=SHEET_SPACING)
        first, *rest = self._head(column)
        blocks = [replace(first, anchor=self.lesson.lesson.name), *rest]
        for index, stage in enumerate(self.lesson.stages):
            heading, *others = self._stage(stage, column)
            anchor = stage_anchor(self.lesson.lesson.name, index)
            blocks += [replace(heading, anchor=anchor), *others]
        return blocks

    def _head(self, column: Column) -> Iterator[Block]:
        """Name and date to fill in, the title, the aim."""
        composer, lesson = self.composer, self.lesson.lesson
        shows = composer.layout.sheet
        if shows.name_and_date or self.pupil:
            line = name_and_date(composer, column, self.pupil)
            yield Block("the name line", line, keep_with_next=True)
        title = column.style.scaled(TITLE_SCALE).bold()
        yield Block(
            "the title",
            text(words(lesson.title), title, column.width_pt, Role.TITLE),
            column.gap(column.spacing.heading),
            keep_with_next=True,
        )
        if shows.aim:
            label = f"{composer.say('sheet', 'aim')}: "
            yield text_block("the aim", (*words(label, bold=True), *words(lesson.aim)), column)

    def _stage(self, stage: SolvedStage, column: Column) -> Iterator[Block]:
        match stage:
            case SolvedRecap():
                yield from self._opening("recap", self._recap_instruction(stage), column)
                yield from self._questions(stage.problems, Space.LINE, column)
            case SolvedSpot():
                yield from self._spot(stage, column)
            case SolvedSort():
                yield from self._opening("sort", self.composer.say("instructions", "sort"), column)
                for problem in stage.problems:
                    yield self._sorted_question(problem, column)
            case SolvedPractise():
                yield from self._practise(stage, column)
            case SolvedExtension():
                yield from self._extension(stage, column)

    def _opening(self, key: str, instruction: str, column: Column, **names: str) -> Iterator[Block]:
        """The heading of a stage with its instruction, kept with its first question."""
        heading = self.composer.rich("headings", key, **names)
        yield stage_heading(f"the heading '{key}'", heading, column)
        block = text_block("its instruction", words(instruction), column, Role.INSTRUCTION)
        yield _kept(block)

    def _recap_instruction(self, stage: SolvedRecap) -> str:
        if not stage.titles:
            return self.composer.say("instructions", "recap first")
        quoted = [t if t == LAST_WEEK else f"\u2018{t}\u2019" for t in stage.titles]
        titles = listed(quoted, "and")
        return self.composer.say("instructions", "recap", lessons=titles)

    def _questions(
        self, problems: Sequence[SolvedProblem], usual: Space, column: Column
    ) -> Iterator[Block]:
        for problem in problems:
            yield question_block(self._question(problem, usual, column), column)

    def _question(self, problem: SolvedProblem, usual: Space, column: Column) -> Question:
        figure = _figure(problem, column)
        in_frame = problem.content.space is Space.MODEL
        space = answer_space_of(self.composer, problem, usual, started=figure if in_frame else None)
        return Question(
            name=f"question {problem.number}",
            number=str(problem.number),
            story=problem.story,
            space=space,
            figure=None if in_frame else figure,
            source=problem.content.id,
            starter=starter_of(self.composer, problem, usual),
        )

    def _spot(self, stage: SolvedSpot, column: Column) -> Iterator[Block]:
        """The story, the wrong working in a frame, and room to put it right (maybe begun)."""
        instruction = self.composer.say("instructions", "spot", pupil=stage.pupil)
        yield from self._opening("spot", instruction, column)
        source = stage.problem.content.id
        starter = starter_of(self.composer, stage.problem, Space.WORKING)
        space = answer_space_of(self.composer, stage.problem, Space.WORKING)

        def body(inner: Column) -> list[Piece]:
            rooms = [room for room in (starter, space) if room is not None]
            return [
                self._wrong_working(stage, inner),
                *(answer_space(room, inner.style, inner.width_pt, source) for room in rooms),
            ]

        yield _numbered(stage.problem, body, column)

    def _wrong_working(self, stage: SolvedSpot, column: Column) -> Piece:
        """The pupil's steps, framed."""
        style, source = column.style, stage.problem.content.id
        padding = _FRAME_PADDING_EMS * style.size_pt
        width = column.width_pt - 2 * padding
        title = self.composer.rich("sheet", "working by", pupil=stage.pupil)
        steps = [
            WorkingStep(step.sentence, step.equation.written() if step.equation else None)
            for step in stage.mistake.steps
        ]
        inside = stack(
            (
                text(title, style.bold(), width, Role.WORKING, source),
                working(steps, style, width, Role.WORKING, source, folds=True),
            ),
            column.gap(column.spacing.inner),
        )
        return Framed(inside, padding)

    def _sorted_question(self, problem: SolvedProblem, column: Column) -> Block:
        """The story, the boxes to tick, and a line for the reason."""
        composer = self.composer
        choices = tuple(composer.rich("choices", key) for key in _CHOICES)
        ticks = AnswerSpace(SpaceKind.TICKS, answers=(), choices=choices, choice_names=_CHOICES)
        because = composer.rich("sheet", "because")
        reason = AnswerLine(label=because, long=True, name="because")
        line = room_of(composer, SpaceKind.LINE, Rows(), (reason,))

        def body(inner: Column) -> list[Piece]:
            source = problem.content.id
            return [
                answer_space(space, inner.style, inner.width_pt, source) for space in (ticks, line)
            ]

        return _numbered(problem, body, column)

    def _practise(self, stage: SolvedPractise, column: Column) -> Iterator[Block]:
        instruction = self.composer.say("instructions", "practise")
        yield from self._opening("practise", instruction, column)
        for each in stage.sets:
            heading = self.composer.rich("sheet", "set", letter=each.name)
            block = text_block(f"set {each.name}", _bold(heading), column, Role.HEADING, level=3)
            yield replace(_kept(block), before=column.gap(column.spacing.question))
            yield from self._questions(each.problems, Space.WORKING, column)

    def _extension(self, stage: SolvedExtension, column: Column) -> Iterator[Block]:
        instruction = self.composer.say("instructions", "extension")
        yield from self._opening("extension", instruction, column, title=stage.content.title)
        space = stage.content.space or Space.LINES
        room = None
        if space is not Space.NONE:
            rows = rows_of(self.composer, space, stage.content.lines or 3)
            kind = SpaceKind.SQUARES if space is Space.SQUARES else SpaceKind.LINES
            if space in (Space.WORKING, Space.MODEL):
                kind = SpaceKind.WORKING if space is Space.WORKING else SpaceKind.BAR_MODEL
            growing = Rows(rows.least, rows.natural, rows.greatest + 6)
            room = room_of(self.composer, kind, growing, ())
        yield question_block(
            Question(
                name=f"question {stage.number}",
                number=str(stage.number),
                story=stage.story,
                space=room,
                source=stage.content.id,
            ),
            column,
        )


def _figure(problem: SolvedProblem, column: Column) -> Drawing | None:
    """The first step of the model, where the author asks for it."""
    figure = problem.solution.figure
    if not problem.content.show_model or figure is None:
        return None
    size = column.style.size_pt
    indent = (column.spacing.hang + 2 * _FRAME_PADDING_EMS) * size
    width = min(_FIGURE_WIDTH_EMS * size, column.width_pt - indent)
    try:
        return draw_figure(figure, Show.FIRST_STEP, width, size)
    except FitError as error:
        raise FitError(f"the model of question {problem.number}: {error}") from error


def _numbered(
    problem: SolvedProblem, body: Callable[[Column], list[Piece]], column: Column
) -> Block:
    """A question whose parts under the story are made by `body` for the narrowed column."""
    style, source = column.style, problem.content.id
    label = number_label(str(problem.number), style, Role.QUESTION, source)
    indent = max(column.spacing.hang * style.size_pt, label.width_pt)
    inner = column.narrowed(column.width_pt - indent)
    story = text(problem.story, style, inner.text_pt, Role.QUESTION, source)
    pieces = stack((story, *body(inner)), column.gap(column.spacing.inner))
    gap = column.gap(column.spacing.question)
    return Block(f"question {problem.number}", hanging(label, pieces, indent), gap, optional=True)


def name_and_date(composer: Composer, column: Column, pupil: str = "") -> Piece:
    """Lines to write a name and a date on; the name is printed where it is known."""
    gap = column.spacing.column * column.style.size_pt
    name, name_width = composer.rich("sheet", "name"), name_width_pt(column)
    date_width = column.width_pt - gap - name_width
    return Columns(
        (
            filled_in(name, pupil, column, name_width)
            if pupil
            else _fill_in(name, column, name_width, "name"),
            _fill_in(composer.rich("sheet", "date"), column, date_width, "date"),
        ),
        gap,
    )


def _fill_in(label: Rich, column: Column, width_pt: float, name: str) -> Piece:
    """A label with a rule to write on over the rest of the width."""
    line = AnswerSpace(SpaceKind.LINE, answers=(AnswerLine(label=label, long=True, name=name),))
    return answer_space(line, column.style, width_pt)


def _kept(block: Block) -> Block:
    return replace(block, keep_with_next=True)


def _bold(rich: Rich) -> Rich:
    return tuple(replace(item, bold=True) if isinstance(item, Words) else item for item in rich)
