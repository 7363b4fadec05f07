"""The answer booklet of a week, for the adults: answers first, then ways, models and mistakes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from typeset.arithmetic.answers import answer_text
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
from typeset.documents.composer import (
    HEADING_SCALE,
    TITLE_SCALE,
    Composer,
    stage_heading,
    week_names,
)
from typeset.documents.entries import Entry, entry_blocks, extension_blocks
from typeset.documents.folding import Flip, folded
from typeset.documents.layout import Layout
from typeset.documents.numbering import footless, with_feet
from typeset.documents.versions import Versions
from typeset.quantities.inline import words
from typeset.setting.blocks import Block, Column, Spacing, text_block
from typeset.setting.frames import Document, Role
from typeset.setting.pages import PageFrame, PageLayout, flow
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import text
from typeset.setting.stretch import Stretch

# Adults look things up here rather than read on, so entries stand closer than on the pupils'
# sheets.
BOOKLET_SPACING = Spacing(
    inner=Stretch(0.45, 0.6, 0.9),
    paragraph=Stretch(0.6, 0.9, 1.3),
    question=Stretch(1.2, 1.5, 2.6),
    heading=Stretch(1.4, 1.8, 3.2),
)


def compose_answer_booklet(
    versions: Versions, layout: Layout, lesson: SolvedLesson | None = None
) -> tuple[Document, PageLayout]:
    """The finished booklet of a lesson, or of the whole week, every lesson on its own sides.

    It tells the core; answers that differ in other versions stand beside its own.

    Raises FitError where one entry is taller than a page, GlyphError for a character that
    cannot be drawn.
    """
    told = versions.core.lessons if lesson is None else (lesson,)
    parts = [
        set_booklet_part(versions, layout, each, index, alone=lesson is not None)
        for index, each in enumerate(told)
    ]
    return bind_booklet(versions, layout, parts, lesson)


def set_booklet_part(
    versions: Versions, layout: Layout, lesson: SolvedLesson, index: int, alone: bool = False
) -> PageLayout:
    """The sides of one lesson as yet without feet: part `index` (from 0) of the week's booklet,
    or one that stands `alone`.

    The first part begins with title and introduction. Raises FitError, GlyphError.
    """
    composer, solved = Composer(layout.for_booklet()), versions.core
    size_pt = layout.booklet.size_pt
    frame = footless(_frame(composer, solved, lesson if alone else None))
    booklet = Answers(composer, replace(solved, lessons=(lesson,)), versions)

    def blocks(size: float) -> list[Block]:
        column = booklet.column(size)
        head = _head(composer, solved, column) if index == 0 else ()
        return [*head, *booklet.lessons(column, own_sides=True)]

    return flow(blocks, frame, size_pt)


def bind_booklet(
    versions: Versions,
    layout: Layout,
    parts: Sequence[PageLayout],
    lesson: SolvedLesson | None = None,
) -> tuple[Document, PageLayout]:
    """The booklet of these parts, in the order of the lessons, with its feet."""
    composer, solved = Composer(layout.for_booklet()), versions.core
    frame, about = _frame(composer, solved, lesson), booklet_about(solved, lesson)
    unfooted = [page for part in parts for page in part.pages]
    pages = with_feet(unfooted, frame, 0, len(unfooted))
    size_pt = layout.booklet.size_pt
    document = Document(
        title=f"{about} – {composer.say('booklet', 'title').lower()}",
        subject=solved.week.title,
        pages=pages,
        type_size_pt=size_pt,
        fingerprint=solved.week.fingerprint if lesson is None else lesson.lesson.fingerprint,
        tagged=True,
    )
    fills = tuple(fill for part in parts for fill in part.fills)
    looseness = tuple(each for part in parts for each in part.looseness)
    return document, PageLayout(pages, size_pt, fills, looseness)


def _frame(composer: Composer, solved: SolvedWeek, lesson: SolvedLesson | None) -> PageFrame:
    """The page, with a foot that says what the booklet is about."""
    foot = f"{composer.say('booklet', 'title')} · {booklet_about(solved, lesson)}"
    return composer.frame(foot, composer.layout.booklet.size_pt)


def compose_folded_booklet(
    versions: Versions, layout: Layout, lesson: SolvedLesson, flip: Flip
) -> tuple[Document, PageLayout]:
    """The booklet of a lesson at half the size of the paper, to be folded and stapled."""
    document, pages = compose_answer_booklet(versions, layout.for_folding(), lesson)
    return folded(document, layout.upright.turned(), flip), pages


def booklet_about(solved: SolvedWeek, lesson: SolvedLesson | None) -> str:
    """What a booklet is about: 'Harbour festival week', 'Harbour festival week, Tuesday'."""
    week = solved.week.title
    return week if lesson is None else f"{week}, {lesson.lesson.day}"


def _head(composer: Composer, solved: SolvedWeek, column: Column) -> Iterator[Block]:
    """Title, week and class, and what the booklet is for."""
    week = solved.week
    style = column.style.scaled(TITLE_SCALE).bold()
    title = text(composer.rich("booklet", "title"), style, column.width_pt, Role.TITLE)
    yield Block("the title", title, keep_with_next=True)
    names = {"week": week.title, "class": week.class_name}
    yield text_block("the subtitle", composer.rich("booklet", "subtitle", **names), column)
    yield text_block("the introduction", composer.rich("booklet", "about"), column)
    if week.note:
        yield text_block("the note", words(week.note), column)


def answers_anchor(lesson: SolvedLesson) -> str:
    """The name of the place where the answers of a lesson begin, for bookmarks."""
    return f"answers/{lesson.lesson.name}"


class Answers:
    """The answers of lessons as blocks, at any type size."""

    def __init__(self, composer: Composer, solved: SolvedWeek, versions: Versions) -> None:
        self.composer = composer
        self.solved = solved
        self.versions = versions

    def column(self, size_pt: float) -> Column:
        """What the blocks are set in."""
        return replace(
            self.composer.column(size_pt),
            style=TextStyle(size_pt, self.composer.layout.booklet.leading),
            spacing=BOOKLET_SPACING,
        )

    def lessons(self, column: Column, own_sides: bool) -> Iterator[Block]:
        """Lesson after lesson, each but the first on a new side if asked for."""
        for index, lesson in enumerate(self.solved.lessons):
            yield from self._lesson(lesson, column, starts_page=own_sides and index > 0)

    def _lesson(self, lesson: SolvedLesson, column: Column, starts_page: bool) -> Iterator[Block]:
        style = column.style.scaled((HEADING_SCALE + TITLE_SCALE) / 2).bold()
        names = week_names(self.solved, lesson)
        heading = self.composer.rich("booklet", "lesson", day=names["day"], lesson=names["lesson"])
        yield Block(
            f"the heading of {lesson.lesson.day}",
            text(heading, style, column.width_pt, Role.HEADING),
            column.gap(column.spacing.heading),
            keep_with_next=True,
            starts_page=starts_page,
            anchor=answers_anchor(lesson),
        )
        for stage in lesson.stages:
            yield from self._stage(lesson, stage, column)

    def _stage(self, lesson: SolvedLesson, stage: SolvedStage, column: Column) -> Iterator[Block]:
        match stage:
            case SolvedRecap():
                yield self._heading("recap", column)
                yield from self._entries(lesson, stage.problems, column)
            case SolvedSpot():
                yield self._heading("spot", column)
                entry = self._spot_entry(lesson, stage)
                yield from entry_blocks(self.composer, entry, column)
            case SolvedSort():
                yield self._heading("sort", column)
                for problem in stage.problems:
                    elsewhere = self.versions.elsewhere(lesson, problem)
                    entry = Entry(problem, is_sorted=True, elsewhere=elsewhere)
                    yield from entry_blocks(self.composer, entry, column)
            case SolvedPractise():
                yield self._heading("practise", column)
                for each in stage.sets:
                    name = self.composer.rich("sheet", "set", letter=each.name)
                    style, width = column.style.bold(), column.width_pt
                    heading = text(name, style, width, Role.HEADING, level=4)
                    gap = column.gap(column.spacing.question)
                    yield Block(f"set {each.name}", heading, gap, keep_with_next=True)
                    yield from self._entries(lesson, each.problems, column)
            case SolvedExtension():
                yield self._heading("extension", column, title=stage.content.title)
                yield from extension_blocks(self.composer, stage, column)

    def _heading(self, key: str, column: Column, **names: str) -> Block:
        heading = self.composer.rich("headings", key, **names)
        return stage_heading(f"the heading '{key}'", heading, column, level=3)

    def _entries(
        self, lesson: SolvedLesson, problems: tuple[SolvedProblem, ...], column: Column
    ) -> Iterator[Block]:
        for problem in problems:
            entry = Entry(problem, elsewhere=self.versions.elsewhere(lesson, problem))
            yield from entry_blocks(self.composer, entry, column)

    def _spot_entry(self, lesson: SolvedLesson, stage: SolvedSpot) -> Entry:
        """What went wrong, what it shows, and what to ask."""
        right = stage.problem.solution.answers
        # A mistake may answer only some of several questions.
        name = next(each for each in right if each in stage.mistake.answers)
        shown = self.composer.rich_with(
            "booklet",
            "what it shows",
            pupil=stage.pupil,
            shows=stage.misconception.shows,
            wrong=answer_text(stage.mistake.answers[name]),
            right=answer_text(right[name]),
        )
        asked = self.composer.rich("booklet", "ask", prompt=stage.misconception.prompt)
        return Entry(
            stage.problem,
            spotted=(shown, asked),
            spotted_name=stage.misconception.name,
            elsewhere=self.versions.elsewhere(lesson, stage.problem),
        )
