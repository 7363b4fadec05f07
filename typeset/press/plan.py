"""Which documents a week makes, and how each is composed and proofed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.answer_booklet import (
    bind_booklet,
    compose_answer_booklet,
    compose_folded_booklet,
    set_booklet_part,
)
from typeset.documents.folding import Flip
from typeset.documents.home_pack import compose_home_answers, compose_home_pack
from typeset.documents.layout import Layout
from typeset.documents.letter import Answers
from typeset.documents.marking_strips import compose_marking_strips
from typeset.documents.own_problems import compose_own_problems
from typeset.documents.sorting_cards import (
    cards_of,
    compose_sorting_cards,
    compose_sorting_key,
)
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.errors import OutputError
from typeset.press.job import InParts, Job, Part
from typeset.press.keys import digest_of, stem_of
from typeset.proofing import (
    Finding,
    proof_booklet,
    proof_cards,
    proof_folded_booklet,
    proof_home_answers,
    proof_home_pack,
    proof_key,
    proof_lesson_booklet,
    proof_own_problems,
    proof_sheet,
    proof_strips,
)
from typeset.proofing.parts import booklet_parts, proof_frame, proof_part
from typeset.reading.complaints import nearest
from typeset.reading.content import (
    ANSWER_BOOKLET,
    CORE,
    DOCUMENTS,
    FOLDED_BOOKLET,
    HOME_PACK,
    MARKING_STRIPS,
    OWN_PROBLEMS,
    SORTING_CARDS,
    SORTING_KEY,
    TASK_SHEET,
    VERSIONS,
)
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout


@dataclass(frozen=True, slots=True)
class Wanted:
    """What of a week is to be made. `lesson` None stands for all."""

    kinds: tuple[str, ...] = DOCUMENTS
    versions: tuple[str, ...] = VERSIONS
    lesson: str | None = None
    # The versions of a home pack, and where its answers are; None for every way.
    packs: tuple[str, ...] = VERSIONS
    answers: str | None = None
    # True for the booklet of a lesson alone, False for that of the week, None for both.
    of_lesson: bool | None = None
    # True for task sheets to fill in on a screen, False for those to print, None for both.
    fields: bool | None = False


def plan_jobs(
    versions: Versions, layouts: Sequence[Layout], wanted: Wanted = Wanted()
) -> tuple[Job, ...]:
    """The files of the week in order, in every layout, as far as they are wanted.

    Raises OutputError for a lesson that the week does not have.
    """
    check_lesson(versions.core, wanted.lesson)
    jobs = (job for layout in layouts for job in _Planner(versions, layout, stem_of(layout)).jobs())
    return tuple(job for job in jobs if _is_wanted(job, wanted))


def check_lesson(solved: SolvedWeek, lesson: str | None) -> None:
    """Raises OutputError for a lesson that the week does not have; None stands for all."""
    names = tuple(each.name for each in solved.week.lessons)
    if lesson is not None and lesson not in names:
        raise OutputError(f"the week has no lesson '{lesson}'; {nearest(lesson, names)}")


def _is_wanted(job: Job, wanted: Wanted) -> bool:
    return (
        job.kind in wanted.kinds
        and (job.kind != TASK_SHEET or job.version in wanted.versions)
        and (job.kind != TASK_SHEET or wanted.fields in (None, job.fields))
        and (job.kind != HOME_PACK or _is_wanted_pack(job, wanted))
        and (job.kind != ANSWER_BOOKLET or wanted.of_lesson in (None, bool(job.lesson)))
        and wanted.lesson in (None, job.lesson)
    )


def _is_wanted_pack(job: Job, wanted: Wanted) -> bool:
    return job.version in wanted.packs and wanted.answers in (None, job.answers)


@dataclass(frozen=True, slots=True)
class _Planner:
    """The jobs of a week in one layout."""

    versions: Versions
    layout: Layout
    # What the keys of all its jobs begin with.
    stem: str

    @property
    def solved(self) -> SolvedWeek:
        return self.versions.core

    def jobs(self) -> Iterator[Job]:
        lessons = self.solved.lessons
        for week in self.versions.all:
            yield from (self.sheet(week, lesson) for lesson in week.lessons)
            # Copies side by side are cut apart, not filled in.
            if self.layout.copies == 1:
                yield from (self.sheet_to_fill_in(week, lesson) for lesson in week.lessons)
        yield self.booklet()
        yield from (self.lesson_booklet(lesson) for lesson in lessons)
        yield from (self.folded(lesson) for lesson in lessons)
        yield self.strips()
        sorting = [lesson for lesson in lessons if cards_of(lesson)]
        yield from (self.cards(lesson) for lesson in sorting)
        if sorting:
            yield self.key()
        yield from (self.own_problems(lesson) for lesson in lessons if lesson.own)
        for week in self.versions.all:
            yield from (self.pack(week, answers) for answers in Answers)
            yield self.pack_answers(week)

    def file(self, kind: str, lesson: str = "", version: str = CORE) -> str:
        """'monday-task-sheet.pdf'; another version than the core and another layout than the
        week's own stand in the name."""
        layout = self.layout.name
        parts = (
            lesson,
            kind.replace(" ", "-"),
            version if version != CORE else "",
            layout if layout != self.solved.week.layout else "",
        )
        return f"{'-'.join(part for part in parts if part)}.pdf"

    def job(
        self,
        kind: str,
        compose: Callable[[], tuple[Document, PageLayout]],
        proof: Callable[[bytes, str], list[Finding]],
        lesson: str = "",
        version: str = CORE,
    ) -> Job:
        file = self.file(kind, lesson, version)
        layout = self.layout
        own = (file, kind, lesson, version, layout.name, layout.fonts)
        key = self.digest(file, self.made_of(lesson))
        return Job(*own, compose, lambda pdf: proof(pdf, file), key=key)

    def digest(self, *words: str) -> str:
        """The key of what these words tell from all else in this layout; other versions are
        told in booklets and on strips."""
        versions = (week.version.value for week in self.versions.all)
        return digest_of(self.stem, *words, *versions)

    def made_of(self, lesson: str) -> str:
        """The fingerprint of a lesson, or of the whole week."""
        week = self.solved.week
        found = (each.fingerprint for each in week.lessons if each.name == lesson)
        return next(found, week.fingerprint)

    def sheet(self, week: SolvedWeek, lesson: SolvedLesson) -> Job:
        layout = self.layout
        return self.job(
            TASK_SHEET,
            lambda: compose_task_sheet(week, lesson, layout),
            lambda pdf, file: proof_sheet(pdf, file, week, lesson, layout),
            lesson.lesson.name,
            week.version.value,
        )

    def sheet_to_fill_in(self, week: SolvedWeek, lesson: SolvedLesson) -> Job:
        layout = self.layout
        job = self.job(
            f"{TASK_SHEET} to fill in",
            lambda: compose_task_sheet(week, lesson, layout, fields=True),
            lambda pdf, file: proof_sheet(pdf, file, week, lesson, layout, fields=True),
            lesson.lesson.name,
            week.version.value,
        )
        return replace(job, kind=TASK_SHEET, fields=True)

    def booklet(self) -> Job:
        versions, layout = self.versions, self.layout
        job = self.job(
            ANSWER_BOOKLET,
            lambda: compose_answer_booklet(versions, layout),
            lambda pdf, file: proof_booklet(pdf, file, versions.core, layout, versions.others),
        )
        return replace(job, in_parts=self.booklet_in_parts(job.file))

    def booklet_in_parts(self, file: str) -> InParts:
        """A part a lesson, which stays what it is when another lesson changes."""
        versions, layout = self.versions, self.layout
        proofs = cache(lambda: booklet_parts(file, versions.core, layout, versions.others))

        def part(lesson: SolvedLesson, index: int) -> Part:
            return Part(
                self.digest(file, self.made_of(lesson.lesson.name), str(index)),
                lambda: set_booklet_part(versions, layout, lesson, index),
                lambda pdf, first, count, of_all: proof_part(
                    pdf, proofs()[1][index], first, count, of_all
                ),
            )

        return InParts(
            tuple(part(lesson, index) for index, lesson in enumerate(self.solved.lessons)),
            lambda parts: bind_booklet(versions, layout, parts),
            lambda pdf: proof_frame(pdf, proofs()[0]),
        )

    def lesson_booklet(self, lesson: SolvedLesson) -> Job:
        versions, layout = self.versions, self.layout
        return self.job(
            ANSWER_BOOKLET,
            lambda: compose_answer_booklet(versions, layout, lesson),
            lambda pdf, file: proof_lesson_booklet(
                pdf, file, versions.core, layout, lesson, versions.others
            ),
            lesson.lesson.name,
        )

    def folded(self, lesson: SolvedLesson) -> Job:
        versions, layout = self.versions, self.layout
        return self.job(
            FOLDED_BOOKLET,
            lambda: compose_folded_booklet(versions, layout, lesson, Flip(layout.backs)),
            lambda pdf, file: proof_folded_booklet(
                pdf, file, versions.core, layout, lesson, versions.others
            ),
            lesson.lesson.name,
        )

    def strips(self) -> Job:
        versions, layout = self.versions, self.layout
        return self.job(
            MARKING_STRIPS,
            lambda: compose_marking_strips(versions, layout),
            lambda pdf, file: proof_strips(pdf, file, versions.core, layout, versions.others),
        )

    def cards(self, lesson: SolvedLesson) -> Job:
        solved, layout = self.solved, self.layout
        return self.job(
            SORTING_CARDS,
            lambda: compose_sorting_cards(solved, lesson, layout),
            lambda pdf, file: proof_cards(pdf, file, solved, lesson, layout),
            lesson.lesson.name,
        )

    def key(self) -> Job:
        solved, layout = self.solved, self.layout
        return self.job(
            SORTING_KEY,
            lambda: compose_sorting_key(solved, layout),
            lambda pdf, file: proof_key(pdf, file, solved, layout),
        )

    def own_problems(self, lesson: SolvedLesson) -> Job:
        solved, layout = self.solved, self.layout
        return self.job(
            OWN_PROBLEMS,
            lambda: compose_own_problems(solved, lesson, layout),
            lambda pdf, file: proof_own_problems(pdf, file, solved, lesson, layout),
            lesson.lesson.name,
        )

    def pack(self, week: SolvedWeek, answers: Answers) -> Job:
        """Families without a printer fill it in on a screen, so it always has fields."""
        layout = self.layout
        job = self.job(
            f"{HOME_PACK}{_PACK_NAMES[answers]}",
            lambda: compose_home_pack(week, layout, answers, fields=True),
            lambda pdf, file: proof_home_pack(pdf, file, week, layout, answers.value, True),
            version=week.version.value,
        )
        return replace(job, kind=HOME_PACK, answers=answers.value, fields=True)

    def pack_answers(self, week: SolvedWeek) -> Job:
        layout = self.layout
        job = self.job(
            f"{HOME_PACK} answers",
            lambda: compose_home_answers(week, layout),
            lambda pdf, file: proof_home_answers(pdf, file, week, layout),
            version=week.version.value,
        )
        return replace(job, kind=HOME_PACK, answers=Answers.SEPARATE.value)


# A file's name says whether answers are in it, so that the wrong one is not sent by mistake.
_PACK_NAMES = {Answers.END: "", Answers.SEPARATE: " sheets", Answers.NONE: " without answers"}
