"""The good documents that faults are planted in: one or more of every kind that is made.

They are small, since each is proofed many times, and each is made once a process.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tests.proofing.making import BOOKLET, Made, made_short_week, made_week
from tests.proofing.making_class import (
    NAMES,
    about,
    layout_named,
    made,
    odd_lesson,
    sheets_of,
    standard,
)
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_booklet import compose_answer_booklet, compose_folded_booklet
from typeset.documents.answer_grid import compose_answer_grid
from typeset.documents.folding import Flip
from typeset.documents.home_pack import compose_home_answers, compose_home_pack
from typeset.documents.how_to_print import compose_how_to_print
from typeset.documents.letter import Answers
from typeset.documents.marking_strips import compose_marking_strips
from typeset.documents.own_problems import compose_own_problems
from typeset.documents.print_list import PrintedFile
from typeset.documents.sorting_cards import compose_sorting_cards, compose_sorting_key
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.proofing import (
    Finding,
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
from typeset.proofing.answer_grid import proof_answer_grid
from typeset.proofing.print_text import proof_how_to_print
from typeset.reading.content import ANSWER_GRID, DOCUMENTS, NAMED_SET
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout
from typeset.setting.pdf import write_pdf

HERE = Path(__file__).parent
PACK, STALLS = HERE / "pack_week", HERE / "stall_week"
CLASS = NAMES[:3]
Proofer = Callable[[bytes], list[Finding]]


@dataclass(frozen=True, slots=True)
class Original:
    """A good PDF and its proof. `secret` is an answer that stands nowhere in it, empty where
    the document is for teachers."""

    name: str
    pdf: bytes
    proof: Proofer
    secret: str = ""


_MAKERS: dict[str, Callable[[str], Original]] = {}


def _original(name: str) -> Callable[[Callable[[str], Original]], Callable[[str], Original]]:
    def register(maker: Callable[[str], Original]) -> Callable[[str], Original]:
        _MAKERS[name] = maker
        return maker

    return register


@cache
def original(name: str) -> Original:
    """The good document of this name, made once a process."""
    return _MAKERS[name](name)


def names() -> tuple[str, ...]:
    return tuple(_MAKERS)


@cache
def stalls() -> Made:
    return made_week(STALLS)


def _pdf(composed: tuple[Document, PageLayout]) -> bytes:
    return write_pdf(composed[0])


def sheet(
    name: str,
    solved: SolvedWeek,
    lesson: str,
    secret: str,
    layout: str = "standard",
    fields: bool = False,
) -> Original:
    """A task sheet of a lesson."""
    own, page = _lesson(solved, lesson), layout_named(layout)
    pdf = _pdf(compose_task_sheet(solved, own, page, fields=fields))
    return Original(
        name, pdf, lambda data: proof_sheet(data, "s.pdf", solved, own, page, fields), secret
    )


def _lesson(solved: SolvedWeek, name: str) -> SolvedLesson:
    return next(each for each in solved.lessons if each.lesson.name == name)


# The little week's two lessons; faults know their questions.
TUESDAY, WEDNESDAY = "task sheet of ratios", "task sheet of scaling"
# Money, times, a temperature below zero, and fractions.
COSTS = "task sheet of costs"
SUPPORT, STRETCH = "support sheet", "stretch sheet"
LARGE, SAVING = "large print sheet", "paper-saving sheet"
FILLED = "sheet to fill in"
WEEKLY, LESSONS, FOLDED = "answer booklet", "lesson booklet", "folded booklet"
STRIPS, CARDS, KEY = "marking strips", "sorting cards", "sorting key"
OWN = "own problems"
PACK_END, PACK_SHEETS = "home pack", "home pack sheets"
PACK_NONE, PACK_ANSWERS = "home pack without answers", "home pack answers"
SET, GRID, PRINTING = "named set", "answer grid", "how to print"
# These take a tenth of a second and more to proof.
SLOW = frozenset({WEEKLY, LESSONS, FOLDED, PACK_END, PACK_SHEETS, PACK_NONE})


@_original(TUESDAY)
def _ratios(name: str) -> Original:
    return sheet(name, made_week().solved, "tuesday", "75")


@_original(WEDNESDAY)
def _scaling(name: str) -> Original:
    return sheet(name, made_week().solved, "wednesday", "2500")


@_original(COSTS)
def _costs(name: str) -> Original:
    return sheet(name, stalls().solved, "tuesday", "54")


@cache
def _version(version: Version) -> SolvedWeek:
    return solve_week(read_week(STALLS), version)


@_original(SUPPORT)
def _support(name: str) -> Original:
    return sheet(name, _version(Version.SUPPORT), "tuesday", "")


@_original(STRETCH)
def _stretch(name: str) -> Original:
    return sheet(name, _version(Version.STRETCH), "tuesday", "")


@_original(LARGE)
def _large(name: str) -> Original:
    return sheet(name, stalls().solved, "tuesday", "54", "large-print-18")


@_original(SAVING)
def _saving(name: str) -> Original:
    return sheet(name, stalls().solved, "tuesday", "54", "paper-saving")


@_original(FILLED)
def _filled(name: str) -> Original:
    return sheet(name, made_week().solved, "wednesday", "2500", fields=True)


@_original(WEEKLY)
def _booklet(name: str) -> Original:
    made = made_short_week()
    return Original(name, made.pdfs[BOOKLET], lambda data: made.proof(BOOKLET, data))


@_original(LESSONS)
def _of_a_lesson(name: str) -> Original:
    solved, page = stalls().solved, standard()
    own = _lesson(solved, "tuesday")
    pdf = _pdf(compose_answer_booklet(Versions(solved), page, own))
    return Original(name, pdf, lambda data: proof_lesson_booklet(data, "b.pdf", solved, page, own))


@_original(FOLDED)
def _folded(name: str) -> Original:
    solved, page = stalls().solved, standard()
    own = _lesson(solved, "tuesday")
    pdf = _pdf(compose_folded_booklet(Versions(solved), page, own, Flip(page.backs)))
    return Original(name, pdf, lambda data: proof_folded_booklet(data, "b.pdf", solved, page, own))


@_original(STRIPS)
def _strips(name: str) -> Original:
    solved, page = stalls().solved, standard()
    pdf = _pdf(compose_marking_strips(Versions(solved), page))
    return Original(name, pdf, lambda data: proof_strips(data, "s.pdf", solved, page))


@_original(CARDS)
def _cards(name: str) -> Original:
    solved, page = stalls().solved, standard()
    own = _lesson(solved, "monday")
    pdf = _pdf(compose_sorting_cards(solved, own, page))
    return Original(name, pdf, lambda data: proof_cards(data, "c.pdf", solved, own, page))


@_original(KEY)
def _key(name: str) -> Original:
    solved, page = stalls().solved, standard()
    pdf = _pdf(compose_sorting_key(solved, page))
    return Original(name, pdf, lambda data: proof_key(data, "k.pdf", solved, page))


@_original(OWN)
def _own_problems(name: str) -> Original:
    solved, page = stalls().solved, standard()
    own = _lesson(solved, "monday")
    pdf = _pdf(compose_own_problems(solved, own, page))
    return Original(name, pdf, lambda data: proof_own_problems(data, "o.pdf", solved, own, page))


@cache
def _pack_week() -> SolvedWeek:
    return solve_week(read_week(PACK))


def _pack(name: str, answers: Answers, secret: str) -> Original:
    solved, page = _pack_week(), standard()
    pdf = _pdf(compose_home_pack(solved, page, answers, fields=True))
    return Original(
        name,
        pdf,
        lambda data: proof_home_pack(data, "p.pdf", solved, page, answers.value, True),
        secret,
    )


@_original(PACK_END)
def _pack_end(name: str) -> Original:
    return _pack(name, Answers.END, "")


@_original(PACK_SHEETS)
def _pack_sheets(name: str) -> Original:
    return _pack(name, Answers.SEPARATE, "84")


@_original(PACK_NONE)
def _pack_none(name: str) -> Original:
    return _pack(name, Answers.NONE, "84")


@_original(PACK_ANSWERS)
def _pack_answers(name: str) -> Original:
    solved, page = _pack_week(), standard()
    pdf = _pdf(compose_home_answers(solved, page))
    return Original(name, pdf, lambda data: proof_home_answers(data, "a.pdf", solved, page))


@_original(SET)
def _set(name: str) -> Original:
    """Three pupils' sheets of one side, each with a white back."""
    sheets = sheets_of(CLASS)
    return Original(name, made(sheets), lambda data: about(data, sheets), "60")


@_original(GRID)
def _grid(name: str) -> Original:
    sheets = sheets_of(CLASS)
    pdf = _pdf(compose_answer_grid(sheets, standard(), True))
    return Original(
        name, pdf, lambda data: proof_answer_grid(data, "g.pdf", sheets, standard(), True)
    )


@_original(PRINTING)
def _printing(name: str) -> Original:
    files = tuple(
        PrintedFile(f"{day}-{kind.replace(' ', '-')}.pdf", kind, sides, standard())
        for kind in (*DOCUMENTS[:3], NAMED_SET, ANSWER_GRID)
        for day, sides in (("monday", 2), ("tuesday", 3))
    )
    solved = odd_lesson()[0]
    pdf = _pdf(compose_how_to_print(solved, files, standard()))
    return Original(
        name, pdf, lambda data: proof_how_to_print(data, "h.pdf", solved, files, standard())
    )
