"""Which documents a week makes, and how each is composed and proofed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.answer_booklet import compose_answer_booklet, compose_folded_booklet
from typeset.documents.folding import Flip
from typeset.documents.layout import Layout
from typeset.documents.marking_strips import compose_marking_strips
from typeset.documents.sorting_cards import (
    cards_of,
    compose_sorting_cards,
    compose_sorting_key,
)
from typeset.documents.task_sheet import compose_task_sheet
from typeset.errors import OutputError
from typeset.proofing import (
    Finding,
    proof_booklet,
    proof_cards,
    proof_folded_booklet,
    proof_key,
    proof_sheet,
    proof_strips,
)
from typeset.reading.complaints import nearest
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout

SHEET = "task-sheet"
BOOKLET = "answer-booklet"
FOLDED = "folded-booklet"
STRIPS = "marking-strips"
CARDS = "sorting-cards"
KEY = "sorting-key"
KINDS = (SHEET, BOOKLET, FOLDED, STRIPS, CARDS, KEY)
# What is made unless something else is asked for.
USUAL = (SHEET, BOOKLET)


@dataclass(frozen=True, slots=True)
class Job:
    """One file to make. `lesson` is a lesson's name, empty where the file is for the week."""

    file: str
    kind: str
    lesson: str
    layout: str
    compose: Callable[[], tuple[Document, PageLayout]]
    proof: Callable[[bytes], list[Finding]]


def plan_jobs(
    solved: SolvedWeek,
    layouts: Sequence[Layout],
    lesson: str | None = None,
    kinds: Sequence[str] = KINDS,
) -> tuple[Job, ...]:
    """The files of the week in order, in every layout, narrowed to one lesson or some kinds.

    Raises OutputError for a lesson that the week does not have.
    """
    names = tuple(each.lesson.name for each in solved.lessons)
    if lesson is not None and lesson not in names:
        raise OutputError(f"the week has no lesson '{lesson}'; {nearest(lesson, names)}")
    jobs = (job for layout in layouts for job in _jobs_in(solved, layout))
    return tuple(
        job for job in jobs if job.kind in kinds and (lesson is None or job.lesson == lesson)
    )


def _jobs_in(solved: SolvedWeek, layout: Layout) -> Iterator[Job]:
    yield from (_sheet(solved, each, layout) for each in solved.lessons)
    yield _booklet(solved, layout)
    yield from (_folded(solved, each, layout) for each in solved.lessons)
    yield _strips(solved, layout)
    sorting = [each for each in solved.lessons if cards_of(each)]
    yield from (_cards(solved, each, layout) for each in sorting)
    if sorting:
        yield _key(solved, layout)


def _file(solved: SolvedWeek, layout: Layout, *parts: str) -> str:
    """'monday-task-sheet.pdf'; a layout other than the week's own stands in the name."""
    named = parts if layout.name == solved.week.layout else (*parts, layout.name)
    return f"{'-'.join(named)}.pdf"


def _sheet(solved: SolvedWeek, lesson: SolvedLesson, layout: Layout) -> Job:
    file = _file(solved, layout, lesson.lesson.name, SHEET)
    return Job(
        file,
        SHEET,
        lesson.lesson.name,
        layout.name,
        compose=lambda: compose_task_sheet(solved, lesson, layout),
        proof=lambda pdf: proof_sheet(pdf, file, solved, lesson, layout),
    )


def _booklet(solved: SolvedWeek, layout: Layout) -> Job:
    file = _file(solved, layout, BOOKLET)
    return Job(
        file,
        BOOKLET,
        "",
        layout.name,
        compose=lambda: compose_answer_booklet(solved, layout),
        proof=lambda pdf: proof_booklet(pdf, file, solved, layout),
    )


def _folded(solved: SolvedWeek, lesson: SolvedLesson, layout: Layout) -> Job:
    file = _file(solved, layout, lesson.lesson.name, FOLDED)
    return Job(
        file,
        FOLDED,
        lesson.lesson.name,
        layout.name,
        compose=lambda: compose_folded_booklet(solved, layout, lesson, Flip(layout.backs)),
        proof=lambda pdf: proof_folded_booklet(pdf, file, solved, layout, lesson),
    )


def _strips(solved: SolvedWeek, layout: Layout) -> Job:
    file = _file(solved, layout, STRIPS)
    return Job(
        file,
        STRIPS,
        "",
        layout.name,
        compose=lambda: compose_marking_strips(solved, layout),
        proof=lambda pdf: proof_strips(pdf, file, solved, layout),
    )


def _cards(solved: SolvedWeek, lesson: SolvedLesson, layout: Layout) -> Job:
    file = _file(solved, layout, lesson.lesson.name, CARDS)
    return Job(
        file,
        CARDS,
        lesson.lesson.name,
        layout.name,
        compose=lambda: compose_sorting_cards(solved, lesson, layout),
        proof=lambda pdf: proof_cards(pdf, file, solved, lesson, layout),
    )


def _key(solved: SolvedWeek, layout: Layout) -> Job:
    file = _file(solved, layout, KEY)
    return Job(
        file,
        KEY,
        "",
        layout.name,
        compose=lambda: compose_sorting_key(solved, layout),
        proof=lambda pdf: proof_key(pdf, file, solved, layout),
    )
