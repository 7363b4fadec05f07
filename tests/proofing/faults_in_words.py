"""Faults in what the pages say: numbers, words, questions, answers that should not be there."""

from __future__ import annotations

import random
import re
from itertools import pairwise
from typing import Any

from tests.proofing.faults import BOOKLET, TUESDAY, WEDNESDAY, fault, retype, text_run
from tests.proofing.planting import Lines, add_text, pick, rules_of, runs_of

# A digit that is one: letters outside ASCII are written as octal numbers, 222 after a backslash.
_PLAIN = r"(?<!\\)(?<!\\\d)(?<!\\\d\d)"
DIGIT = rf"{_PLAIN}\d"
PAIR = rf"{_PLAIN}(\d)(?!\1)(\d)"


def _other_digit(digit: str, rng: random.Random) -> str:
    # Only figures that the page already holds are sure to be in its fonts.
    return rng.choice([each for each in "234568" if each != digit])


@fault(TUESDAY, "number")
def a_digit_changed_on_a_sheet(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, rf"{DIGIT}.* ")
    at = pick(rng, [m.start() for m in re.finditer(DIGIT, run.text)])
    digit = _other_digit(run.text[at], rng)
    retype(page, run, run.text[:at] + digit + run.text[at + 1 :])


@fault(BOOKLET, "number", "figure")
def a_digit_changed_in_the_booklet(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, DIGIT)
    at = pick(rng, [m.start() for m in re.finditer(DIGIT, run.text)])
    digit = _other_digit(run.text[at], rng)
    retype(page, run, run.text[:at] + digit + run.text[at + 1 :])


@fault(BOOKLET, "number", "figure")
def two_digits_swapped(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, PAIR)
    match = pick(rng, list(re.finditer(PAIR, run.text)))
    retype(page, run, run.text[: match.start()] + match[2] + match[1] + run.text[match.end() :])


@fault(BOOKLET, "wording", "number")
def a_sign_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\d \S \d.*= ")
    retype(page, run, re.sub(r"(\d) \S (\d)", r"\1 = \2", run.text, count=1))


@fault(WEDNESDAY, "wording")
def a_word_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\b[a-z]{4,}\b")
    word = pick(rng, re.findall(r"\b[a-z]{4,}\b", run.text))
    retype(page, run, run.text.replace(word, word[::-1] + word[0], 1))


@fault(WEDNESDAY, "wording", "order", "number")
def a_word_dropped(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+ \w+")
    words = run.text.split(" ")
    del words[rng.randrange(1, len(words) - 1)]
    retype(page, run, " ".join(words))


@fault(WEDNESDAY, "wording", "number")
def a_word_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    words = run.text.split(" ")
    at = rng.randrange(len(words))
    retype(page, run, " ".join([*words[:at], words[at], *words[at:]]))


@fault(TUESDAY, "wording", "figure")
def a_unit_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^(litres|gulls|terns|green flags)$")
    retype(page, run, "metres" if run.text != "metres" else "grams")


@fault(WEDNESDAY, "wording", "number", "order", "figure")
def a_line_of_text_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    del page[run.index]


@fault(TUESDAY, "wording", "order", "number")
def a_line_of_text_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page.insert(run.index, run.line(y=run.y - 6))


def _question_span(page: Lines, number: int) -> tuple[int, int]:
    """From the number of a question to that of the next."""
    starts = [run for run in runs_of(page) if run.x < 60 and run.text.isdigit()]
    index = next(i for i, run in enumerate(starts) if run.text == str(number))
    return starts[index].index, starts[index + 1].index


@fault(TUESDAY, "order")
def a_question_lost(pages: list[Lines], rng: random.Random) -> None:
    start, end = _question_span(pages[1], 3)
    del pages[1][start:end]


@fault(WEDNESDAY, "order")
def a_question_twice(pages: list[Lines], rng: random.Random) -> None:
    start, end = _question_span(pages[0], 2)
    copy = pages[0][start:end]
    at = len(pages[1]) - rng.randrange(2, 4)
    pages[1][at:at] = copy


@fault(WEDNESDAY, "order")
def two_questions_exchanged(pages: list[Lines], rng: random.Random) -> None:
    page = pages[0]
    first, middle = _question_span(page, 1)
    middle, end = _question_span(page, 2)
    page[first:end] = page[middle:end] + page[first:middle]


@fault(WEDNESDAY, "order")
def a_question_split_over_pages(pages: list[Lines], rng: random.Random) -> None:
    last = [run for run in runs_of(pages[0]) if run.y > 60][-3:]
    moved = [pages[0][run.index] for run in last]
    for run in reversed(last):
        del pages[0][run.index]
    at = runs_of(pages[1])[0].index
    pages[1][at:at] = moved


@fault(WEDNESDAY, "number", "wording")
def a_fraction_turned_over(pages: list[Lines], rng: random.Random) -> None:
    for page in pages:
        runs = runs_of(page)
        for over, under in pairwise(runs):
            if over.text == "1" and under.text == "2" and abs(over.x - under.x) < 3:
                page[over.index] = over.line(text="2")
                page[under.index] = under.line(text="1")
                return
    raise AssertionError("no fraction")


@fault(WEDNESDAY, "size")
def a_fraction_too_small(pages: list[Lines], rng: random.Random) -> None:
    for page in pages:
        for run in runs_of(page):
            if run.text == "2" and run.size < 12:
                page[run.index] = run.line(size=6, x=run.x + 1.2, y=run.y + 1.0)
                return
    raise AssertionError("no fraction")


@fault(WEDNESDAY, "number")
def a_fraction_without_its_bar(pages: list[Lines], rng: random.Random) -> None:
    short = [
        (page, index) for page in pages for index, (x1, _, x2, _) in rules_of(page) if x2 - x1 < 20
    ]
    page, index = pick(rng, short)
    del page[index]


def _answer(pages: list[Lines], rng: random.Random, before: str = "", **changes: Any) -> None:
    """The answer to question 4, 75, on a page of the sheet, somewhere that is free."""
    place: dict[str, Any] = {
        "x": rng.uniform(80, 200),
        "y": 300.0,
        "text": "75",
        "size": 12,
    } | changes
    add_text(pages[rng.randrange(len(pages))], before=before, **place)


@fault(TUESDAY, "answer")
def an_answer_left_in(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng)


@fault(TUESDAY, "answer")
def an_answer_in_white(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng, before="1 g")


@fault(TUESDAY, "answer")
def an_answer_in_tiny_type(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng, size=1)


@fault(TUESDAY, "answer")
def an_answer_off_the_page(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng, x=rng.choice([-60.0, 640.0]), y=rng.choice([-30.0, 300.0, 900.0]))


@fault(TUESDAY, "answer")
def an_answer_without_ink(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng, before="3 Tr")


@fault(TUESDAY, "answer")
def an_answer_under_a_box(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    add_text(page, "75", x=100.0, y=300.0, size=12)
    page.append("1 g")
    page.append("n 90 290 60 30 re f")


@fault(TUESDAY, "answer")
def an_answer_at_the_foot(pages: list[Lines], rng: random.Random) -> None:
    _answer(pages, rng, y=runs_of(pages[0])[-1].y, x=rng.uniform(220, 380))


@fault(TUESDAY, "hidden")
def a_clip(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    page.insert(runs_of(page)[5].index, "n 0 0 300 842 re W n")


@fault(TUESDAY, "hidden")
def marked_content_with_other_text(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    run = pick(rng, runs_of(page))
    page[run.index] = f"/Span <</ActualText (75)>> BDC\n{run.line()}\nEMC"
