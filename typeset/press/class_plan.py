"""Which files a class list makes: a named set and an answer grid for each lesson.

What is printed carries names; what the files are called, and what they say about themselves,
does not.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import TypeAlias

from typeset.arithmetic.building import solve_for_pupil, solve_week
from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.arithmetic.variation.pupils import Class
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_grid import compose_answer_grid
from typeset.documents.class_work import PupilsSheet, paper_key
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.named_set import compose_named_set, same_for_all
from typeset.documents.versions import Versions
from typeset.errors import ContentError
from typeset.press.class_check import check_pupils, check_variation, list_complaints
from typeset.press.job import Job
from typeset.press.plan import check_lesson
from typeset.proofing import Finding
from typeset.proofing.answer_grid import proof_answer_grid
from typeset.proofing.named_set import proof_named_set
from typeset.reading.class_list import ClassList, Pupil
from typeset.reading.content import ANSWER_GRID, CORE, NAMED_SET, VERSIONS, Week
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout

VARIED = "varied"
Sheets: TypeAlias = Callable[[], tuple[PupilsSheet, ...]]


@dataclass(frozen=True, slots=True)
class ClassOrder:
    """What is wanted for a class: the week's folder, the list, one lesson or all, the layout of
    pupils for whom the list names none (the week's own for None), and other numbers for each."""

    folder: Path
    class_list: Path
    lesson: str | None = None
    layout: str | None = None
    varied: bool = False


def plan_class(order: ClassOrder) -> tuple[SolvedWeek, tuple[Job, ...]]:
    """The week's core, and the files to make.

    Raises ContentError with every complaint about week and list, LayoutError, OutputError for
    an unknown lesson, SolvingError.
    """
    try:
        week = read_week(order.folder)
    except ContentError as error:
        raise ContentError([*error.complaints, *list_complaints(order.class_list)]) from None
    usual = find_layout(order.layout or week.layout, week.folder)
    pupils, layouts = check_pupils(order.class_list, usual, week.folder)
    versions = _solved(week, pupils, order.lesson)
    check_lesson(versions.core, order.lesson)
    check_variation(versions, pupils, order.lesson)
    planner = _ClassPlanner(week, _marked(versions, pupils), pupils, layouts, usual, order.varied)
    lessons = [each for each in versions.core.lessons if order.lesson in (None, each.lesson.name)]
    return versions.core, tuple(job for each in lessons for job in planner.jobs(each.lesson.name))


def _solved(week: Week, pupils: ClassList, lesson: str | None) -> Versions:
    """The versions that pupils get, of one lesson or of all."""
    others = [Version(each) for each in pupils.versions if each != CORE]
    solved = tuple(solve_week(week, each, lesson) for each in others)
    return Versions(solve_week(week, only=lesson), solved)


def _marked(versions: Versions, pupils: ClassList) -> Versions:
    """The same, every sheet with the mark of its version where the class has several."""
    wanted = {*versions.core.week.versions, *pupils.versions}
    told = tuple(each for each in VERSIONS if each in wanted)

    def marked(solved: SolvedWeek) -> SolvedWeek:
        return replace(solved, week=replace(solved.week, versions=told))

    return Versions(marked(versions.core), tuple(marked(each) for each in versions.others))


@dataclass(frozen=True, slots=True)
class _ClassPlanner:
    """The jobs of a class. `typed` is the week before its numbers were drawn, `layouts` are
    those of the pupils by number."""

    typed: Week
    versions: Versions
    pupils: ClassList
    layouts: Mapping[int, Layout]
    usual: Layout
    varied: bool

    @property
    def numbers(self) -> str:
        """Stands in names and record in place of a version."""
        return VARIED if self.varied else ""

    def jobs(self, lesson: str) -> Iterator[Job]:
        """The sets of the lesson, one for each kind of paper, and its grid."""
        sheets = cache(lambda: tuple(self.sheet(each, lesson) for each in self.pupils.pupils))
        for suffix, layout, numbers in self.papers():

            def own(numbers: frozenset[int] = numbers) -> tuple[PupilsSheet, ...]:
                return tuple(each for each in sheets() if each.pupil.number in numbers)

            yield self.set(self.file(lesson, NAMED_SET, suffix), lesson, own, layout)
        yield self.grid(lesson, sheets)

    def sheet(self, pupil: Pupil, lesson: str) -> PupilsSheet:
        """What the pupil gets."""
        solved = next(w for w in self.versions.all if w.version.value == pupil.version)
        own = next(each for each in solved.lessons if each.lesson.name == lesson)
        if self.varied:
            own = self.with_own_numbers(solved, lesson, pupil.number)
        return PupilsSheet(pupil, solved, own, self.layouts[pupil.number])

    def with_own_numbers(self, solved: SolvedWeek, lesson: str, number: int) -> SolvedLesson:
        """The lesson with the numbers of this place in the list."""
        core, own = self.versions.core.week.lessons, solved.week.lessons
        given = Class(self.typed.seed, self.typed.lessons, core, own, solved.version)
        titles = {each.name: each.title for each in self.typed.lessons}
        return solve_for_pupil(given, titles, lesson, number)

    def papers(self) -> Iterator[tuple[str, Layout, frozenset[int]]]:
        """The pupils whose sheets can be printed in one go, one of their layouts, and what tells
        their file from others: nothing where there is one for all."""
        groups: dict[object, list[int]] = {}
        for number, layout in self.layouts.items():
            groups.setdefault(paper_key(layout), []).append(number)
        taken: Counter[str] = Counter()
        for numbers in groups.values():
            layout = self.layouts[numbers[0]]
            lying = "-lying" if layout.orientation == "landscape" else ""
            lying = "-to-cut" if layout.copies > 1 else lying
            name = f"{layout.upright.name.lower()}{lying}" if len(groups) > 1 else ""
            taken[name] += 1
            again = f"-{taken[name]}" if taken[name] > 1 else ""
            yield f"{name}{again}", layout, frozenset(numbers)

    def set(self, file: str, lesson: str, own: Sheets, layout: Layout) -> Job:
        """The named set of the pupils with one kind of paper; `layout` is one of theirs."""
        usual, everybody = self.usual, len(self.pupils.pupils)

        def compose() -> tuple[Document, PageLayout]:
            document, pages = compose_named_set(own(), usual)
            notes = list(pages.notes)
            if len(own()) < everybody:
                notes.insert(0, f"{len(own())} of {everybody} sheets: those on this kind of paper")
            if self.varied:
                notes += same_for_all(own())
            return document, replace(pages, notes=tuple(notes))

        def proof(pdf: bytes) -> list[Finding]:
            return proof_named_set(pdf, file, own(), usual)

        own_layout = (layout.name, layout.fonts)
        return Job(file, NAMED_SET, lesson, self.numbers, *own_layout, compose, proof)

    def grid(self, lesson: str, sheets: Sheets) -> Job:
        """The answer grid of the whole class."""
        usual, varied, file = self.usual, self.varied, self.file(lesson, ANSWER_GRID)

        def compose() -> tuple[Document, PageLayout]:
            return compose_answer_grid(sheets(), usual, varied)

        def proof(pdf: bytes) -> list[Finding]:
            return proof_answer_grid(pdf, file, sheets(), usual, varied)

        own_layout = (usual.name, usual.fonts)
        return Job(file, ANSWER_GRID, lesson, self.numbers, *own_layout, compose, proof)

    def file(self, lesson: str, kind: str, suffix: str = "") -> str:
        """'tuesday-named-set.pdf'; other numbers for each, another usual layout than the week's
        own, and the paper where there are several stand in the name."""
        layout = self.usual.name if self.usual.name != self.typed.layout else ""
        parts = (lesson, kind.replace(" ", "-"), self.numbers, layout, suffix)
        return f"{'-'.join(part for part in parts if part)}.pdf"
