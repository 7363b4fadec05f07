"""Marking strips: every answer of a lesson on half a side, in the order of the questions."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedProblem,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
    problems_of,
)
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.composer import HEADING_SCALE, Composer, week_names
from typeset.documents.entries import all_answers
from typeset.documents.grid import Grid, on_papers
from typeset.documents.layout import Layout
from typeset.documents.versions import Versions
from typeset.errors import FitError
from typeset.quantities.inline import Rich, join, words
from typeset.setting.blocks import Block, Column, Spacing, cell_width_pt, number_label
from typeset.setting.frames import Document, Page, Role
from typeset.setting.pages import PageLayout, fill_sides
from typeset.setting.pieces import Columns, Piece, hanging, stack, text
from typeset.setting.stretch import Stretch

# Two strips on an upright paper.
_ROWS = 2
_COLUMNS = 2
# Adults read a strip beside a pile of sheets: largest first, down to the least of a booklet.
SIZES_PT = (12.0, 11.5, 11.0, 10.5, 10.0, 9.5, 9.0)
_SPACING = Spacing(
    hang=2.4,
    inner=Stretch(0.2, 0.5, 1.1),
    paragraph=Stretch(0.3, 0.6, 1.4),
    heading=Stretch(0.5, 0.8, 1.4),
)
_LEADING = 1.25


def compose_marking_strips(versions: Versions, layout: Layout) -> tuple[Document, PageLayout]:
    """The strips of the week, two to a paper, to be cut apart.

    Raises FitError for a lesson whose answers find no room on half a side, GlyphError.
    """
    grid, solved = Grid(layout.upright, 1, _ROWS), versions.core
    composer = Composer(layout.for_cell(grid.cell))
    strips = [_strip(composer, versions, lesson) for lesson in solved.lessons]
    pages: list[Page | None] = [each.pages[0] for each in strips]
    size_pt = min(each.type_size_pt for each in strips)
    document = Document(
        title=f"{solved.week.title} – {composer.say('strip', 'title').lower()}",
        subject=solved.week.title,
        pages=on_papers(pages, grid),
        type_size_pt=size_pt,
        fingerprint=solved.week.fingerprint,
    )
    return document, PageLayout(document.pages, size_pt, (), ())


def _strip(composer: Composer, versions: Versions, lesson: SolvedLesson) -> PageLayout:
    frame = composer.bare_frame()

    def blocks(size_pt: float) -> list[Block]:
        column = composer.column(size_pt, _LEADING, _SPACING)
        return [
            _title(composer, versions.core, lesson, column),
            _answers(composer, versions, lesson, column),
        ]

    try:
        return fill_sides(blocks, frame, 1, SIZES_PT)
    except FitError as error:
        raise FitError(f"{lesson.lesson.place.file}: on a marking strip {error}") from error


def _title(composer: Composer, solved: SolvedWeek, lesson: SolvedLesson, column: Column) -> Block:
    names = week_names(solved, lesson)
    heading = composer.rich("strip", "lesson", day=names["day"], lesson=names["lesson"])
    style = column.style.scaled(HEADING_SCALE).bold()
    piece = text(heading, style, column.width_pt, Role.HEADING)
    return Block("the title of the strip", piece, keep_with_next=True)


def _answers(composer: Composer, versions: Versions, lesson: SolvedLesson, column: Column) -> Block:
    """The answers in two columns, down the first and then down the second."""
    width = cell_width_pt(_COLUMNS, column)
    entries = [
        _entry(number, rich, column.narrowed(width), source)
        for number, rich, source in _lines(composer, versions, lesson)
    ]
    middle = -(-len(entries) // _COLUMNS)
    gap = column.gap(column.spacing.inner)
    halves = [stack(part, gap) for part in (entries[:middle], entries[middle:]) if part]
    between = column.spacing.column * column.style.size_pt
    return Block("its answers", Columns(tuple(halves), between), column.gap(_SPACING.heading))


def _entry(number: str, rich: Rich, column: Column, source: str) -> Piece:
    label = number_label(number, column.style, Role.QUESTION, source)
    indent = max(column.spacing.hang * column.style.size_pt, label.width_pt)
    body = text(rich, column.style, column.width_pt - indent, Role.ANSWER, source)
    return hanging(label, body, indent)


def _lines(
    composer: Composer, versions: Versions, lesson: SolvedLesson
) -> Iterator[tuple[str, Rich, str]]:
    """Number, what is right, and the problem's id, for every question in order."""
    for stage in lesson.stages:
        if isinstance(stage, SolvedExtension):
            yield str(stage.number), composer.rich("strip", "open"), stage.content.id
            continue
        for problem in problems_of(stage):
            answer = _answer(composer, versions, lesson, problem)
            told = _told(composer, stage, problem, answer)
            yield str(problem.number), told, problem.content.id


def _told(composer: Composer, stage: SolvedStage, problem: SolvedProblem, answer: Rich) -> Rich:
    match stage:
        case SolvedSort():
            decision = composer.say("choices", problem.solution.kind.decision.name.lower())
            return (*words(f"{decision}; "), *answer)
        case SolvedSpot():
            mistake = composer.say("strip", "mistake", mistake=stage.misconception.name)
            return (*answer, *words(f"; {mistake}"))
        case _:
            return answer


def _answer(
    composer: Composer, versions: Versions, lesson: SolvedLesson, problem: SolvedProblem
) -> Rich:
    """The answer; that of each version under its name where they differ."""
    elsewhere = versions.elsewhere(lesson, problem)
    if not elsewhere:
        return all_answers(problem)
    every = sorted(
        [(versions.core.version, problem), *elsewhere], key=lambda e: list(Version).index(e[0])
    )
    told = [
        composer.rich_with(
            "strip",
            "version answer",
            version=composer.say("versions", version.value),
            answer=all_answers(each),
        )
        for version, each in every
    ]
    return join(told, "; ")
