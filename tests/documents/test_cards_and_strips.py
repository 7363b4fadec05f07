"""Sorting cards, their key, and marking strips: made, read back, and found where they are wrong."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from tests.proofing.making import made_week
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.documents.grid import Grid, on_papers
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.marking_strips import compose_marking_strips
from typeset.documents.paper import paper_named
from typeset.documents.sorting_cards import (
    cards_of,
    compose_sorting_cards,
    compose_sorting_key,
    letter_of,
    room_left,
)
from typeset.documents.versions import Versions
from typeset.drawing.shapes import PT_PER_MM
from typeset.proofing import proof_cards, proof_key, proof_strips
from typeset.setting.frames import Document, Page
from typeset.setting.pdf import write_pdf

SORTING = "wednesday"


@cache
def layout(backs: str = "long edge") -> Layout:
    return find_layout("standard", Path("nowhere")).model_copy(update={"backs": backs})


@cache
def cards(backs: str = "long edge") -> Document:
    made = made_week()
    return compose_sorting_cards(made.solved, made.lesson(SORTING), layout(backs))[0]


def about_cards(pdf: bytes, backs: str = "long edge") -> list[str]:
    made = made_week()
    found = proof_cards(pdf, "c.pdf", made.solved, made.lesson(SORTING), layout(backs))
    return [str(each) for each in found]


@cache
def strips() -> bytes:
    return write_pdf(compose_marking_strips(Versions(made_week().solved), layout())[0])


def about_strips(pdf: bytes) -> list[str]:
    return [str(each) for each in proof_strips(pdf, "s.pdf", made_week().solved, layout())]


@cache
def key() -> bytes:
    return write_pdf(compose_sorting_key(made_week().solved, layout())[0])


def about_key(pdf: bytes) -> list[str]:
    return [str(each) for each in proof_key(pdf, "k.pdf", made_week().solved, layout())]


@pytest.mark.parametrize("backs", ["long edge", "short edge"])
def test_cards_have_no_finding(backs: str) -> None:
    assert about_cards(write_pdf(cards(backs)), backs) == []


def test_strips_and_key_have_no_finding() -> None:
    assert about_strips(strips()) == []
    assert about_key(key()) == []


def letters(page: Any) -> dict[str, Any]:
    """The large letters of the cards on a page."""
    words = page.extract_words(extra_attrs=["size"])
    return {word["text"]: word for word in words if word["size"] > 18 and len(word["text"]) == 1}


def test_each_back_lies_behind_its_front() -> None:
    """Turned over its left edge, the letter of every back is where its front's card is."""
    pdf = write_pdf(cards())
    with pdfplumber.open(BytesIO(pdf)) as read:
        for front, back in zip(read.pages[::2], read.pages[1::2], strict=True):
            fronts, backs = letters(front), letters(back)
            for letter, word in backs.items():
                middle = front.width / 2
                assert (fronts[letter]["x0"] < middle) == (word["x0"] > middle)
                assert fronts[letter]["top"] == pytest.approx(word["top"], abs=1)


def test_backs_that_do_not_register_are_found() -> None:
    """Printed as if the paper were not turned over: every row the wrong way round."""
    made, grid = made_week(), Grid(layout().upright, 2, 4)
    document = cards()
    from typeset.documents.composer import Composer
    from typeset.documents.sorting_cards import _Maker

    maker = _Maker(Composer(layout().for_cell(grid.cell)), document.type_size_pt)
    backs = [maker.back(card) for card in cards_of(made.lesson(SORTING))][: grid.count]
    (wrong,) = on_papers(backs, grid, cuts=False)
    pages = (document.pages[0], wrong, *document.pages[2:])
    assert about_cards(write_pdf(replace(document, pages=pages)))


@pytest.mark.parametrize(
    ("old", "new"), [("A", "B"), ("9", "8"), ("question", "problem"), ("neither", "both")]
)
def test_a_wrong_word_on_a_card_is_found(old: str, new: str) -> None:
    """The first place on the fronts that prints it."""

    def plant(pages: list[Lines]) -> None:
        for page in pages:
            for run in runs_of(page):
                if old in run.text.split() or run.text == old:
                    page[run.index] = run.line(text=run.text.replace(old, new))
                    return
        raise AssertionError(old)

    assert about_cards(redraw(write_pdf(cards()), plant))


def test_a_wrong_answer_on_a_strip_is_found() -> None:
    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[0]) if run.text.startswith("60"))
        pages[0][run.index] = run.line(text=run.text.replace("60", "61"))

    assert any(
        "'61' where '60' should be" in each for each in about_strips(redraw(strips(), plant))
    )


def test_two_letters_exchanged_in_the_key_are_found() -> None:
    def plant(pages: list[Lines]) -> None:
        runs = {run.text: run for run in runs_of(pages[0]) if run.text in ("A", "B")}
        for one, other in (("A", "B"), ("B", "A")):
            pages[0][runs[one].index] = runs[one].line(text=other)

    assert about_key(redraw(key(), plant))


def test_a_strip_without_a_line_to_cut_is_found() -> None:
    document = compose_marking_strips(Versions(made_week().solved), layout())[0]
    bare = tuple(replace(page, placed=page.placed[:-1]) for page in document.pages)
    found = about_strips(write_pdf(replace(document, pages=bare)))
    assert any("no line to cut along" in each for each in found)


def test_letters_go_on_after_z() -> None:
    assert [letter_of(i) for i in (0, 25, 26, 51, 52)] == ["A", "Z", "A2", "Z2", "A3"]


@pytest.mark.parametrize(("cards", "free"), [(5, 3), (8, 0), (9, 7), (16, 0)])
def test_room_left_on_the_last_paper(cards: int, free: int) -> None:
    assert room_left(cards, 8) == free


def test_cells_stand_row_by_row() -> None:
    grid = Grid(paper_named("A4"), 2, 4)
    corners = [grid.corner_pt(index) for index in range(3)]
    half, quarter = 105 * PT_PER_MM, 297 / 4 * PT_PER_MM
    assert corners == [(0.0, 0.0), (half, 0.0), (0.0, pytest.approx(quarter))]
    (paper,) = on_papers([Page(half, quarter, ())], grid)
    # One upright and three level lines to cut along.
    assert len(paper.placed) == 4
