"""Makes the documents that the proof is tried on."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.answer_booklet import compose_answer_booklet
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.errors import FitError
from typeset.proofing import Finding, proof_booklet, proof_sheet
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

WEEK = Path(__file__).parent / "week"
BOOKLET = "booklet"


@dataclass(frozen=True, slots=True)
class Made:
    """A week solved, its layout, and its PDFs by the name of their lesson, or 'booklet'."""

    solved: SolvedWeek
    layout: Layout
    pdfs: dict[str, bytes]

    def lesson(self, name: str) -> SolvedLesson:
        return next(each for each in self.solved.lessons if each.lesson.name == name)

    def proof(self, name: str, pdf: bytes | None = None) -> list[Finding]:
        """The findings about a document, or about another PDF in its place."""
        data = self.pdfs[name] if pdf is None else pdf
        if name == BOOKLET:
            return proof_booklet(data, "booklet.pdf", self.solved, self.layout)
        lesson = self.lesson(name)
        return proof_sheet(data, f"{name}.pdf", self.solved, lesson, self.layout)


@cache
def made_week(folder: Path = WEEK) -> Made:
    """The week in the folder, made once for all tests."""
    week = read_week(folder)
    solved = solve_week(week)
    return make(solved, find_layout(week.layout, folder))


@cache
def made_short_week() -> Made:
    """The first lesson alone, for a booklet of a few pages."""
    made = made_week()
    return make(replace(made.solved, lessons=made.solved.lessons[:1]), made.layout)


def make(solved: SolvedWeek, layout: Layout) -> Made:
    """Every document of a solved week."""
    pdfs = {
        each.lesson.name: write_pdf(compose_task_sheet(solved, each, layout)[0])
        for each in solved.lessons
    }
    pdfs[BOOKLET] = write_pdf(compose_answer_booklet(Versions(solved), layout)[0])
    return Made(solved, layout, pdfs)


def sheet_of(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> tuple[bytes, SolvedLesson]:
    """The sheet of a lesson on the first number of sides that it can fill, and the lesson so."""
    for sides in (lesson.lesson.sides, 1, 2, 3, 4, 5, 6):
        asked = replace(lesson, lesson=replace(lesson.lesson, sides=sides))
        try:
            return write_pdf(compose_task_sheet(solved, asked, layout)[0]), asked
        except FitError:
            continue
    raise AssertionError("the lesson fills no number of sides")
