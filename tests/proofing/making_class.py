"""Makes the named sets that their proof is tried on."""

from __future__ import annotations

import shutil
import tempfile
from dataclasses import replace
from functools import cache
from pathlib import Path

from tests.proofing.making import WEEK, made_week
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.class_work import PupilsSheet
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.named_set import compose_named_set
from typeset.errors import Place
from typeset.proofing import Finding
from typeset.proofing.named_set import proof_named_set
from typeset.reading.class_list import Pupil
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf

NAMES = (
    *("Asha", "Tomasz", "Imogen", "Kofi", "Leila", "Rhys"),
    *("Yuki", "Odette", "Femi", "Nell", "Idris", "Marta"),
)
# Thirty, as many as a class.
CLASS = (*NAMES, *(f"{name} B" for name in NAMES), *(f"{name} C" for name in NAMES[:6]))
LIST = Path("class.csv")


def standard() -> Layout:
    return find_layout("standard", Path("nowhere"))


@cache
def layout_named(name: str) -> Layout:
    return find_layout(name, Path("nowhere"))


def pupils(names: tuple[str, ...]) -> tuple[Pupil, ...]:
    """A line of the list for each."""
    return tuple(
        Pupil(number, name, "core", "", Place(LIST, number + 1, 1))
        for number, name in enumerate(names, 1)
    )


@cache
def odd_lesson() -> tuple[SolvedWeek, SolvedLesson]:
    """A lesson that fills one side, so that every sheet of it needs a white back."""
    made = made_week()
    lesson = made.lesson("tuesday")
    stages = lesson.stages[:1]
    short = replace(lesson, stages=stages, lesson=replace(lesson.lesson, sides=1))
    return made.solved, short


def sheets_of(
    names: tuple[str, ...], layouts: dict[int, str] | None = None, odd: bool = True
) -> tuple[PupilsSheet, ...]:
    """Their sheets; `layouts` gives some numbers of the list another layout."""
    solved, lesson = odd_lesson() if odd else (made_week().solved, made_week().lesson("tuesday"))
    return tuple(
        PupilsSheet(
            pupil, solved, lesson, layout_named((layouts or {}).get(pupil.number, "standard"))
        )
        for pupil in pupils(names)
    )


def composed(sheets: tuple[PupilsSheet, ...]) -> Document:
    return compose_named_set(sheets, standard())[0]


def made(sheets: tuple[PupilsSheet, ...]) -> bytes:
    return write_pdf(composed(sheets))


def about(pdf: bytes, sheets: tuple[PupilsSheet, ...]) -> list[Finding]:
    return proof_named_set(pdf, "class.pdf", sheets, standard())


@cache
def other_numbers() -> SolvedLesson:
    """The short lesson with another number in its problem."""
    with tempfile.TemporaryDirectory() as folder:
        week = shutil.copytree(WEEK, Path(folder) / "week")
        file = week / "tuesday.yaml"
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("{difference: 36}", "{difference: 39}"), encoding="utf-8")
        lesson = solve_week(read_week(week)).lessons[0]
    _, short = odd_lesson()
    return replace(short, stages=lesson.stages[:1])
