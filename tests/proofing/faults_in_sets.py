"""Faults in what is cut, folded, or handed to one pupil each: sets, cards, strips, booklets."""

from __future__ import annotations

import random
import re
from dataclasses import replace
from functools import cache
from typing import Any

from pypdf import PdfWriter
from pypdf.generic import NameObject, NumberObject

from tests.proofing.faults import Theme
from tests.proofing.making_class import composed, made, other_numbers, sheets_of, standard
from tests.proofing.originals import (
    CARDS,
    CLASS,
    FOLDED,
    GRID,
    PRINTING,
    SAVING,
    SET,
    STRIPS,
    stalls,
)
from tests.proofing.planting import Lines, pick, rules_of, runs_of
from typeset.documents.answer_grid import compose_answer_grid
from typeset.documents.composer import Composer
from typeset.documents.grid import Grid, on_papers
from typeset.documents.sorting_cards import _Maker, cards_of, compose_sorting_cards
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf

SETS, CUT = Theme("Named sets and grids"), Theme("Cut and folded")


def _names(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    return [(page, run) for page in pages for run in runs_of(page) if run.text in CLASS]


def _on_name_line(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    """The names after the word on the first line of every sheet."""
    return [(page, run) for page, run in _names(pages) if run.y > 700]


@SETS.drawn(SET, told="the name line prints '")
def a_name_on_anothers_sheet(pages: list[Lines], rng: random.Random) -> None:
    page, run = pick(rng, _on_name_line(pages))
    page[run.index] = run.line(text=rng.choice([name for name in CLASS if name != run.text]))


@SETS.drawn(SET)
def a_name_missing(pages: list[Lines], rng: random.Random) -> None:
    page, run = pick(rng, _on_name_line(pages))
    del page[run.index]


@SETS.drawn(SET, "wording", "number", "order", told="name line")
def a_name_misspelt(pages: list[Lines], rng: random.Random) -> None:
    page, run = pick(rng, _on_name_line(pages))
    at = rng.randrange(1, len(run.text))
    page[run.index] = run.line(text=run.text[:at] + run.text[at - 1] + run.text[at:])


@SETS.drawn(SET, told="is printed")
def a_second_name_on_a_sheet(pages: list[Lines], rng: random.Random) -> None:
    page = pick(rng, [page for page in pages if runs_of(page)])
    run = runs_of(page)[-1]
    page.append(run.line(text=rng.choice(CLASS), y=run.y + rng.uniform(120, 300)))


def _ordered(order: list[int]) -> bytes:
    """The set with its pages in another order: three sheets, each with a white back."""
    document = composed(sheets_of(CLASS))
    return write_pdf(replace(document, pages=tuple(document.pages[index] for index in order)))


@SETS.made(SET, told="where '")
def two_sheets_of_a_set_exchanged(rng: random.Random) -> bytes:
    order = [(0, 1), (2, 3), (4, 5)]
    one, other = rng.sample(range(3), 2)
    order[one], order[other] = order[other], order[one]
    return _ordered([page for sheet in order for page in sheet])


@SETS.made(SET, told="back")
def a_white_side_missing(rng: random.Random) -> bytes:
    lost = rng.choice([1, 3, 5])
    return _ordered([page for page in range(6) if page != lost])


@SETS.made(SET, told="white side stands where none is needed")
def white_sides_too_many(rng: random.Random) -> bytes:
    at = rng.choice([1, 3, 5])
    return _ordered([page for page in range(6) for _ in range(3 if page == at else 1)])


@SETS.made(SET, told="is missing")
def a_sheet_of_the_set_lost(rng: random.Random) -> bytes:
    lost = rng.choice([0, 2, 4])
    return _ordered([page for page in range(6) if page not in (lost, lost + 1)])


@SETS.made(SET, told="nobody's on the list")
def a_sheet_of_nobody(rng: random.Random) -> bytes:
    return made(sheets_of((*CLASS, rng.choice(["Leila", "Nell", "Idris", "Femi", "Marta"]))))


@SETS.made(SET, told="'39' where '36' should be")
def numbers_of_another_pupil(rng: random.Random) -> bytes:
    sheets = list(sheets_of(CLASS))
    at = rng.randrange(3)
    sheets[at] = replace(sheets[at], lesson=other_numbers())
    return made(tuple(sheets))


@SETS.made(SET, told="subject is '")
def names_in_the_description(rng: random.Random) -> bytes:
    names = ", ".join(rng.sample(CLASS, rng.randrange(1, 4)))
    return write_pdf(replace(composed(sheets_of(CLASS)), subject=names))


@SETS.filed((SET, FOLDED), told="asks the printer")
def a_printer_asked_for_the_wrong_edge(writer: PdfWriter, rng: random.Random) -> None:
    wish: Any = writer._root_object["/ViewerPreferences"]
    long, short = "/DuplexFlipLongEdge", "/DuplexFlipShortEdge"
    other = short if wish["/Duplex"] == long else long
    wish[NameObject("/Duplex")] = NameObject(rng.choice([other, "/Simplex"]))


@SETS.drawn(GRID, told="prints '")
def a_name_of_the_grid_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = pick(rng, _names(pages))
    page[run.index] = run.line(text=rng.choice([name for name in CLASS if name != run.text]))


@SETS.drawn(GRID, told="does not stand under")
def an_answer_under_another_question(pages: list[Lines], rng: random.Random) -> None:
    """The words in their order, but a cell moved to the right."""
    page, run = pick(
        rng, [(page, r) for page in pages for r in runs_of(page) if re.match(r"\d\d", r.text)]
    )
    page[run.index] = run.line(x=run.x + rng.uniform(6, 14))


@SETS.made(GRID)
def a_row_of_the_grid_lost(rng: random.Random) -> bytes:
    sheets = list(sheets_of(CLASS))
    del sheets[rng.randrange(len(sheets))]
    return write_pdf(compose_answer_grid(sheets, standard(), True)[0])


@SETS.made(GRID)
def rows_of_the_grid_exchanged(rng: random.Random) -> bytes:
    sheets = list(sheets_of(CLASS))
    one, other = rng.sample(range(len(sheets)), 2)
    sheets[one], sheets[other] = sheets[other], sheets[one]
    return write_pdf(compose_answer_grid(sheets, standard(), True)[0])


@SETS.drawn(PRINTING)
def another_edge_to_turn_over(pages: list[Lines], rng: random.Random) -> None:
    found = [(p, r) for p in pages for r in runs_of(p) if re.search("long|short", r.text)]
    page, run = pick(rng, found)
    new = "short" if "long" in run.text else "long"
    page[run.index] = run.line(text=re.sub("long|short", new, run.text, count=1))


@SETS.drawn(PRINTING)
def another_file_to_print(pages: list[Lines], rng: random.Random) -> None:
    found = [(p, r) for p in pages for r in runs_of(p) if ".pdf" in r.text]
    page, run = pick(rng, found)
    old, new = rng.sample(["monday", "tuesday"], 2) if "day" in run.text else (".pdf", ".doc")
    old, new = (old, new) if old in run.text else (new, old)
    page[run.index] = run.line(text=run.text.replace(old, new, 1))


@cache
def _cards() -> Document:
    solved = stalls().solved
    return compose_sorting_cards(solved, solved.lessons[0], standard())[0]


@CUT.made(CARDS)
def backs_as_if_the_paper_were_not_turned(rng: random.Random) -> bytes:
    """Every row of backs the wrong way round; the last of them at a random place."""
    document, grid = _cards(), Grid(standard().upright, 2, 4)
    maker = _Maker(Composer(standard().for_cell(grid.cell)), document.type_size_pt)
    backs = [maker.back(card) for card in cards_of(stalls().solved.lessons[0])]
    backs = backs if rng.random() < 0.5 else backs[:1]
    (wrong,) = on_papers(backs, grid, cuts=False)
    return write_pdf(replace(document, pages=(document.pages[0], wrong, *document.pages[2:])))


@CUT.drawn(CARDS)
def a_back_shifted(pages: list[Lines], rng: random.Random) -> None:
    """By more than a card's margin, as if cards and backs did not register."""
    for run in reversed(runs_of(pages[1])):
        pages[1][run.index] = run.line(x=run.x + rng.choice([-60, 140]))


@CUT.drawn(CARDS)
def a_letter_of_a_card_changed(pages: list[Lines], rng: random.Random) -> None:
    found = [(p, r) for p in pages for r in runs_of(p) if r.text in ("A", "B")]
    page, run = pick(rng, found)
    page[run.index] = run.line(text=rng.choice([each for each in "ABC" if each != run.text]))


@CUT.drawn(CARDS)
def a_heading_card_changed(pages: list[Lines], rng: random.Random) -> None:
    found = [(p, r) for p in pages for r in runs_of(p) if r.text in ("both", "neither")]
    page, run = pick(rng, found)
    page[run.index] = run.line(text="neither" if run.text == "both" else "both")


def _cuts(pages: list[Lines]) -> list[tuple[Lines, int]]:
    """The lines to cut along: from edge to edge, or nearly."""
    return [
        (page, index)
        for page in pages
        for index, (x1, y1, x2, y2) in rules_of(page)
        if (x1 == x2 or y1 == y2)
        and abs(x2 - x1) + abs(y2 - y1) > 500
        and page[index - 1].startswith("[")
    ]


@CUT.drawn((STRIPS, SAVING, CARDS))
def a_line_to_cut_along_lost(pages: list[Lines], rng: random.Random) -> None:
    page, index = pick(rng, _cuts(pages))
    del page[index]


@CUT.drawn((STRIPS, SAVING))
def a_line_to_cut_along_moved(pages: list[Lines], rng: random.Random) -> None:
    page, index = pick(rng, _cuts(pages))
    by = rng.choice([-1, 1]) * rng.uniform(15, 60)
    page[index] = f"q\n1 0 0 1 {by} {by} cm\n{page[index]}\nQ"


@CUT.filed(FOLDED, "page", told="turned by ")
def a_side_of_a_booklet_turned(writer: PdfWriter, rng: random.Random) -> None:
    page: Any = rng.choice(list(writer.pages))
    now = int(page.get("/Rotate", 0))
    page[NameObject("/Rotate")] = NumberObject((now + 180) % 360)


@CUT.filed(FOLDED)
def front_and_back_of_a_paper_exchanged(writer: PdfWriter, rng: random.Random) -> None:
    """The order of imposition is wrong: the reader would begin in the middle."""
    kids: Any = writer._root_object["/Pages"]["/Kids"]  # type: ignore[index]  # pypdf types no deeper
    at = 2 * rng.randrange(len(kids) // 2)
    kids[at], kids[at + 1] = kids[at + 1], kids[at]


@CUT.drawn(FOLDED)
def the_halves_of_a_side_exchanged(pages: list[Lines], rng: random.Random) -> None:
    page = pick(rng, pages)
    for run in reversed(runs_of(page)):
        middle = 842 / 2
        page[run.index] = run.line(x=run.x - middle if run.x > middle else run.x + middle)


@CUT.drawn(FOLDED, "space", "page", "figure", told="marks where to ")
def a_mark_where_to_fold_or_staple_lost(pages: list[Lines], rng: random.Random) -> None:
    marks = [
        (page, index)
        for page in pages
        for index, (x1, y1, x2, y2) in rules_of(page)
        if x1 == x2 and abs(x1 - 841.89 / 2) < 2 and abs(y2 - y1) < 60
    ]
    page, index = pick(rng, marks)
    del page[index]
