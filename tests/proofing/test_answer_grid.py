"""Answer grids: right ones have no finding, and planted faults are found."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO

import pdfplumber
import pytest

from tests.proofing.making import made_week
from tests.proofing.making_class import CLASS, sheets_of, standard
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_grid import compose_answer_grid
from typeset.documents.class_work import PupilsSheet
from typeset.proofing.answer_grid import proof_answer_grid
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf


def versions() -> tuple[PupilsSheet, ...]:
    """Thirty pupils, every third with the support version (here with the same numbers)."""
    made, marked = made_week(), []
    week = replace(made.solved.week, versions=("support", "core"))
    for each in sheets_of(CLASS, odd=False):
        version = Version.CORE if each.pupil.number % 3 else Version.SUPPORT
        marked.append(replace(each, solved=replace(made.solved, week=week, version=version)))
    return tuple(marked)


KINDS = {
    "one row for all": (sheets_of(CLASS, odd=False), False),
    "a row a version": (versions(), False),
    "a row a pupil": (sheets_of(CLASS, odd=False), True),
    "a row a pupil, versions": (versions(), True),
}


@cache
def grid(name: str) -> Document:
    sheets, varied = KINDS[name]
    return compose_answer_grid(sheets, standard(), varied)[0]


def told(name: str, pdf: bytes) -> list[str]:
    sheets, varied = KINDS[name]
    return [str(each) for each in proof_answer_grid(pdf, "g.pdf", sheets, standard(), varied)]


@pytest.mark.parametrize("name", KINDS)
def test_grids_have_no_finding(name: str) -> None:
    assert told(name, write_pdf(grid(name))) == []


def test_a_grid_lies_and_repeats_its_heads_on_every_page() -> None:
    sheets = sheets_of(
        tuple(f"{name} {letter}" for letter in "ABC" for name in CLASS[:12]), odd=False
    )
    layout = standard()
    big = layout.model_copy(update={"booklet": layout.booklet.model_copy(update={"size_pt": 14.0})})
    document = compose_answer_grid(sheets, big, True)[0]
    pdf = write_pdf(document)
    assert proof_answer_grid(pdf, "g.pdf", sheets, big, True) == []
    with pdfplumber.open(BytesIO(pdf)) as read:
        assert len(read.pages) > 1
        for page in read.pages:
            assert page.width > page.height
            assert "Name" in (page.extract_text() or "").split()


FAULTS = [
    ("60", "61", "the row of Asha, question 1, prints '61' where '60' should be"),
    ("Kofi", "Nell", "the row of Kofi prints 'Nell' where 'Kofi' should be"),
    ("2", "3", "the heads of the columns prints '3' where '2' should be"),
]


@pytest.mark.parametrize(("old", "new", "expected"), FAULTS)
def test_a_wrong_word_is_found(old: str, new: str, expected: str) -> None:
    def plant(pages: list[Lines]) -> None:
        run = next(r for r in runs_of(pages[0]) if old in r.text.split())
        pages[0][run.index] = run.line(text=run.text.replace(old, new))

    found = told("a row a pupil", redraw(write_pdf(grid("a row a pupil")), plant))
    assert any(expected in each for each in found), found


def test_an_answer_under_another_question_is_found() -> None:
    """The words in their order, but a cell moved to the right."""

    def plant(pages: list[Lines]) -> None:
        run = [r for r in runs_of(pages[0]) if r.text.startswith("60")][4]
        pages[0][run.index] = run.line(x=run.x + 6.0)

    found = told("a row a pupil", redraw(write_pdf(grid("a row a pupil")), plant))
    assert any("does not stand under '1'" in each for each in found), found


def test_a_lost_row_is_found() -> None:
    sheets, _ = KINDS["a row a pupil"]
    pdf = write_pdf(compose_answer_grid((*sheets[:4], *sheets[5:]), standard(), True)[0])
    found = told("a row a pupil", pdf)
    assert any("Leila" in each for each in found), found


def test_a_name_under_another_version_is_found() -> None:
    sheets = list(versions())
    sheets[3] = replace(sheets[3], solved=sheets[2].solved)
    pdf = write_pdf(compose_answer_grid(sheets, standard(), False)[0])
    found = told("a row a version", pdf)
    assert any("Kofi" in each and "the names under" in each for each in found), found
