"""How each document of a week is composed and proofed, and what tells its file from others.

To plan a week is not to make it: what composes and proofs a kind of document is loaded when the
first of that kind is made. So a build in which nothing has changed loads none of it, and one of
task sheets nothing of cards or home packs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING, TypeAlias

from typeset.arithmetic.lessons import SolvedLesson, SolvedSort, SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.versions import Versions
from typeset.press.job import InParts, Job, Part
from typeset.press.keys import digest_of
from typeset.reading.content import (
    ANSWER_BOOKLET,
    ANSWERS,
    CORE,
    END,
    FOLDED_BOOKLET,
    HOME_PACK,
    MARKING_STRIPS,
    NONE,
    OWN_PROBLEMS,
    SEPARATE,
    SORTING_CARDS,
    SORTING_KEY,
    TASK_SHEET,
)

if TYPE_CHECKING:
    from typeset.proofing.finding import Finding
    from typeset.proofing.order import Order
    from typeset.setting.frames import Document
    from typeset.setting.pages import PageLayout

    Composed: TypeAlias = tuple[Document, PageLayout]
    Findings: TypeAlias = list[Finding]


@dataclass(frozen=True, slots=True)
class Planner:
    """The jobs of a week in one layout."""

    versions: Versions
    layout: Layout
    # What the keys of all its jobs begin with.
    stem: str

    @property
    def solved(self) -> SolvedWeek:
        """The week as its author typed it."""
        return self.versions.core

    def jobs(self) -> Iterator[Job]:
        """Every file of the week, in order."""
        lessons = self.solved.lessons
        for week in self.versions.all:
            yield from (self.sheet(week, lesson) for lesson in week.lessons)
            # Copies side by side are cut apart, not filled in.
            if self.layout.copies == 1:
                yield from (self.sheet(week, lesson, fields=True) for lesson in week.lessons)
        yield self.booklet()
        yield from (self.lesson_booklet(lesson) for lesson in lessons)
        yield from (self.folded(lesson) for lesson in lessons)
        yield self.strips()
        sorting = [lesson for lesson in lessons if _sorts(lesson)]
        yield from (self.cards(lesson) for lesson in sorting)
        if sorting:
            yield self.key()
        yield from (self.own_problems(lesson) for lesson in lessons if lesson.own)
        for week in self.versions.all:
            yield from (self.pack(week, answers) for answers in ANSWERS)
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
        compose: Callable[[], Composed],
        proof: Callable[[bytes, str], Findings],
        lesson: str = "",
        version: str = CORE,
    ) -> Job:
        """A file whose `proof` is told what it is called; of the week where no lesson is named."""
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

    def sheet(self, week: SolvedWeek, lesson: SolvedLesson, fields: bool = False) -> Job:
        """To print, or with `fields` to fill in on a screen."""
        layout = self.layout

        def compose() -> Composed:
            from typeset.documents.task_sheet import compose_task_sheet

            return compose_task_sheet(week, lesson, layout, fields=fields)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_sheet

            return proof_sheet(pdf, file, week, lesson, layout, fields=fields)

        kind = f"{TASK_SHEET} to fill in" if fields else TASK_SHEET
        job = self.job(kind, compose, proof, lesson.lesson.name, week.version.value)
        return replace(job, kind=TASK_SHEET, fields=fields)

    def booklet(self) -> Job:
        """The answers of the week."""
        versions, layout = self.versions, self.layout

        def compose() -> Composed:
            from typeset.documents.answer_booklet import compose_answer_booklet

            return compose_answer_booklet(versions, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_booklet

            return proof_booklet(pdf, file, versions.core, layout, versions.others)

        job = self.job(ANSWER_BOOKLET, compose, proof)
        return replace(job, in_parts=self.booklet_in_parts(job.file))

    def booklet_in_parts(self, file: str) -> InParts:
        """A part a lesson, which stays what it is when another lesson changes."""
        versions, layout = self.versions, self.layout

        @cache
        def proofs() -> tuple[Order, tuple[Order, ...]]:
            from typeset.proofing.parts import booklet_parts

            return booklet_parts(file, versions.core, layout, versions.others)

        def part(lesson: SolvedLesson, index: int) -> Part:
            def compose() -> PageLayout:
                from typeset.documents.answer_booklet import set_booklet_part

                return set_booklet_part(versions, layout, lesson, index)

            def proof(pdf: bytes, first: int, count: int, of_all: int) -> Findings:
                from typeset.proofing.parts import proof_part

                return proof_part(pdf, proofs()[1][index], first, count, of_all)

            key = self.digest(file, self.made_of(lesson.lesson.name), str(index))
            return Part(key, compose, proof)

        def bind(parts: Sequence[PageLayout]) -> Composed:
            from typeset.documents.answer_booklet import bind_booklet

            return bind_booklet(versions, layout, parts)

        def proof_around(pdf: bytes) -> Findings:
            from typeset.proofing.parts import proof_frame

            return proof_frame(pdf, proofs()[0])

        parts = (part(lesson, index) for index, lesson in enumerate(self.solved.lessons))
        return InParts(tuple(parts), bind, proof_around)

    def lesson_booklet(self, lesson: SolvedLesson) -> Job:
        """The answers of a lesson alone."""
        versions, layout = self.versions, self.layout

        def compose() -> Composed:
            from typeset.documents.answer_booklet import compose_answer_booklet

            return compose_answer_booklet(versions, layout, lesson)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_lesson_booklet

            return proof_lesson_booklet(pdf, file, versions.core, layout, lesson, versions.others)

        return self.job(ANSWER_BOOKLET, compose, proof, lesson.lesson.name)

    def folded(self, lesson: SolvedLesson) -> Job:
        """The same as a small booklet, to fold and staple."""
        versions, layout = self.versions, self.layout

        def compose() -> Composed:
            from typeset.documents.answer_booklet import compose_folded_booklet
            from typeset.documents.folding import Flip

            return compose_folded_booklet(versions, layout, lesson, Flip(layout.backs))

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_folded_booklet

            return proof_folded_booklet(pdf, file, versions.core, layout, lesson, versions.others)

        return self.job(FOLDED_BOOKLET, compose, proof, lesson.lesson.name)

    def strips(self) -> Job:
        """The answers alone, in strips to cut apart."""
        versions, layout = self.versions, self.layout

        def compose() -> Composed:
            from typeset.documents.marking_strips import compose_marking_strips

            return compose_marking_strips(versions, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_strips

            return proof_strips(pdf, file, versions.core, layout, versions.others)

        return self.job(MARKING_STRIPS, compose, proof)

    def cards(self, lesson: SolvedLesson) -> Job:
        """The problems that the lesson sorts."""
        solved, layout = self.solved, self.layout

        def compose() -> Composed:
            from typeset.documents.sorting_cards import compose_sorting_cards

            return compose_sorting_cards(solved, lesson, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_cards

            return proof_cards(pdf, file, solved, lesson, layout)

        return self.job(SORTING_CARDS, compose, proof, lesson.lesson.name)

    def key(self) -> Job:
        """The key to all cards of the week."""
        solved, layout = self.solved, self.layout

        def compose() -> Composed:
            from typeset.documents.sorting_cards import compose_sorting_key

            return compose_sorting_key(solved, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_key

            return proof_key(pdf, file, solved, layout)

        return self.job(SORTING_KEY, compose, proof)

    def own_problems(self, lesson: SolvedLesson) -> Job:
        """Room for problems of the pupils' own."""
        solved, layout = self.solved, self.layout

        def compose() -> Composed:
            from typeset.documents.own_problems import compose_own_problems

            return compose_own_problems(solved, lesson, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.documents import proof_own_problems

            return proof_own_problems(pdf, file, solved, lesson, layout)

        return self.job(OWN_PROBLEMS, compose, proof, lesson.lesson.name)

    def pack(self, week: SolvedWeek, answers: str) -> Job:
        """Families without a printer fill it in on a screen, so it always has fields."""
        layout = self.layout

        def compose() -> Composed:
            from typeset.documents.home_pack import compose_home_pack
            from typeset.documents.letter import Answers

            return compose_home_pack(week, layout, Answers(answers), fields=True)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.home_pack import proof_home_pack

            return proof_home_pack(pdf, file, week, layout, answers, True)

        kind = f"{HOME_PACK}{_PACK_NAMES[answers]}"
        job = self.job(kind, compose, proof, version=week.version.value)
        return replace(job, kind=HOME_PACK, answers=answers, fields=True)

    def pack_answers(self, week: SolvedWeek) -> Job:
        """The answers of a home pack in a file of their own."""
        layout = self.layout

        def compose() -> Composed:
            from typeset.documents.home_pack import compose_home_answers

            return compose_home_answers(week, layout)

        def proof(pdf: bytes, file: str) -> Findings:
            from typeset.proofing.home_pack import proof_home_answers

            return proof_home_answers(pdf, file, week, layout)

        job = self.job(f"{HOME_PACK} answers", compose, proof, version=week.version.value)
        return replace(job, kind=HOME_PACK, answers=SEPARATE)


def _sorts(lesson: SolvedLesson) -> bool:
    """True where the lesson has problems to sort."""
    sorts = (stage for stage in lesson.stages if isinstance(stage, SolvedSort))
    return any(stage.problems for stage in sorts)


# A file's name says whether answers are in it, so that the wrong one is not sent by mistake.
_PACK_NAMES = {END: "", SEPARATE: " sheets", NONE: " without answers"}
