"""Answers on pupils' pages: seen, hardly seen, or there for whoever selects the text."""

from __future__ import annotations

import random
from typing import Any

from tests.proofing.faults import Theme, text_run
from tests.proofing.originals import (
    COSTS,
    FILLED,
    LARGE,
    PACK_NONE,
    PACK_SHEETS,
    SAVING,
    SET,
    TUESDAY,
    WEDNESDAY,
)
from tests.proofing.planting import Lines, add_text, pick, runs_of

HIDING = Theme("Answers on pupils' pages")
PUPILS = (COSTS, TUESDAY, WEDNESDAY, LARGE, SAVING, SET, FILLED, PACK_SHEETS, PACK_NONE)
_TOLD = ("answer", "wording", "number", "order")


def _answer(
    pages: list[Lines], rng: random.Random, text: str, before: str = "", **changes: Any
) -> Lines:
    """The answer on a page, somewhere; the page."""
    page: Lines = pick(rng, [page for page in pages if runs_of(page)])
    place: dict[str, Any] = {"x": rng.uniform(80, 200), "y": rng.uniform(120, 500), "size": 12}
    add_text(page, text, before, **(place | changes))
    return page


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_left_in(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer)


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_in_white(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, before="1 g")


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_in_the_palest_grey(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, before=f"{rng.uniform(0.9, 0.99):.3f} g")


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_in_tiny_type(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, size=rng.choice([0.1, 0.5, 1, 2]))


@HIDING.hidden(PUPILS, *_TOLD, "margin")
def an_answer_off_the_page(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, x=rng.choice([-60.0, 640.0, 2000.0]), y=rng.choice([-30.0, 900.0]))


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_without_ink(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, before="3 Tr")


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_behind_a_rectangle(pages: list[Lines], rng: random.Random, answer: str) -> None:
    x, y = rng.uniform(80, 300), rng.uniform(120, 500)
    page = _answer(pages, rng, answer, x=x, y=y)
    page.append(f"{rng.choice([1, 0.5, 0])} g")
    page.append(f"n {x - 10:.1f} {y - 10:.1f} 60 30 re f")


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_at_the_foot(pages: list[Lines], rng: random.Random, answer: str) -> None:
    page = pick(rng, [page for page in pages if runs_of(page)])
    add_text(page, answer, x=rng.uniform(260, 380), y=runs_of(page)[-1].y, size=12)


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_in_the_margin(pages: list[Lines], rng: random.Random, answer: str) -> None:
    _answer(pages, rng, answer, x=rng.uniform(4, 20), size=8)


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_figure_by_figure(pages: list[Lines], rng: random.Random, answer: str) -> None:
    """Each figure is drawn on its own, beside the one before it."""
    page = pick(rng, [page for page in pages if runs_of(page)])
    x, y = rng.uniform(80, 300), rng.uniform(120, 500)
    for index, figure in enumerate(answer):
        add_text(page, figure, x=x + 6.6 * index, y=y, size=12)


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_turned_on_its_side(pages: list[Lines], rng: random.Random, answer: str) -> None:
    page = _answer(pages, rng, answer)
    page[-1] = page[-1].replace("BT 1 0 0 1", "BT 0 1 -1 0")


@HIDING.hidden(PUPILS, *_TOLD)
def an_answer_after_the_words_of_a_line(
    pages: list[Lines], rng: random.Random, answer: str
) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+")
    page[run.index] = run.line(text=f"{run.text} {answer}")


@HIDING.hidden(PUPILS, *_TOLD, "hidden", "structure")
def an_answer_in_place_of_the_letters(pages: list[Lines], rng: random.Random, answer: str) -> None:
    """Other text for whoever copies a line."""
    page, run = text_run(pages, rng, r"\w+")
    page[run.index] = f"/Span <</ActualText ({answer})>> BDC\n{run.line()}\nEMC"


@HIDING.hidden(PUPILS, *_TOLD, "overlap", "space")
def an_answer_on_its_line(pages: list[Lines], rng: random.Random, answer: str) -> None:
    page, run = text_run(pages, rng, r"^Answer$")
    page.append(run.line(text=answer, x=run.x + 70))
