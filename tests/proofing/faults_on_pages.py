"""Faults in what the pages show: each plants one, at a random place, and says what must be told."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from tests.proofing.planting import Lines, Run, add_text, pick, rects_of, rules_of, runs_of

Planter = Callable[[list[Lines], random.Random], None]
TUESDAY, WEDNESDAY, BOOKLET = "tuesday", "wednesday", "booklet"


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault for one of the documents; one finding must be of one of the `kinds`."""

    name: str
    document: str
    kinds: frozenset[str]
    plant: Planter


FAULTS: list[Fault] = []


def fault(document: str, *kinds: str) -> Callable[[Planter], Planter]:
    """Registers a planter under its own name."""

    def register(planter: Planter) -> Planter:
        name = planter.__name__.replace("_", " ")
        FAULTS.append(Fault(f"{document}: {name}", document, frozenset(kinds), planter))
        return planter

    return register


def _texts(pages: list[Lines], rng: random.Random, wanted: str, least: float = 0) -> Any:
    """A page and one of its runs whose text matches; feet are left out."""
    found = [
        (page, run)
        for page in pages
        for run in runs_of(page)
        if re.search(wanted, run.text) and run.y > 60 and run.size >= least
    ]
    return pick(rng, found)


def _retype(page: Lines, run: Run, text: str) -> None:
    assert text != run.text
    page[run.index] = run.line(text=text)


def _other_digit(digit: str, rng: random.Random) -> str:
    # Only figures that the page already holds are sure to be in its fonts.
    return rng.choice([each for each in "234568" if each != digit])


@fault(TUESDAY, "number")
def a_digit_changed_on_a_sheet(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\d.* ")
    at = pick(rng, [m.start() for m in re.finditer(r"\d", run.text)])
    digit = _other_digit(run.text[at], rng)
    _retype(page, run, run.text[:at] + digit + run.text[at + 1 :])


@fault(BOOKLET, "number", "figure")
def a_digit_changed_in_the_booklet(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\d")
    at = pick(rng, [m.start() for m in re.finditer(r"\d", run.text)])
    digit = _other_digit(run.text[at], rng)
    _retype(page, run, run.text[:at] + digit + run.text[at + 1 :])


@fault(BOOKLET, "number", "figure")
def two_digits_swapped(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"(\d)(?!\1)\d")
    match = pick(rng, list(re.finditer(r"(\d)(?!\1)(\d)", run.text)))
    _retype(page, run, run.text[: match.start()] + match[2] + match[1] + run.text[match.end() :])


@fault(BOOKLET, "wording", "number")
def a_sign_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\d \S \d.*= ")
    _retype(page, run, re.sub(r"(\d) \S (\d)", r"\1 = \2", run.text, count=1))


@fault(WEDNESDAY, "wording")
def a_word_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\b[a-z]{4,}\b")
    word = pick(rng, re.findall(r"\b[a-z]{4,}\b", run.text))
    _retype(page, run, run.text.replace(word, word[::-1] + word[0], 1))


@fault(WEDNESDAY, "wording", "order", "number")
def a_word_dropped(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+ \w+")
    words = run.text.split(" ")
    del words[rng.randrange(1, len(words) - 1)]
    _retype(page, run, " ".join(words))


@fault(WEDNESDAY, "wording", "number")
def a_word_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    words = run.text.split(" ")
    at = rng.randrange(len(words))
    _retype(page, run, " ".join([*words[:at], words[at], *words[at:]]))


@fault(TUESDAY, "wording", "figure")
def a_unit_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"^(litres|gulls|terns|green flags)$")
    _retype(page, run, "metres" if run.text != "metres" else "grams")


@fault(WEDNESDAY, "wording", "number", "order", "figure")
def a_line_of_text_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    del page[run.index]


@fault(TUESDAY, "wording", "order", "number")
def a_line_of_text_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
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
        for over, under in zip(runs, runs[1:], strict=False):
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
    place = {"x": rng.uniform(80, 200), "y": 300.0, "text": "75", "size": 12} | changes
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


@fault(WEDNESDAY, "margin")
def text_beyond_a_margin(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+ \w+ \w+ \w+")
    page[run.index] = run.line(x=run.x + rng.choice([-40, 300]))


@fault(WEDNESDAY, "margin")
def a_rule_beyond_the_margin(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    index, (x1, y1, x2, y2) = pick(rng, [r for r in rules_of(page) if r[1][2] - r[1][0] > 60])
    page[index] = f"n {x1} {y1} m {x2 + 60} {y2} l S"


@fault(TUESDAY, "overlap")
def lines_over_each_other(pages: list[Lines], rng: random.Random) -> None:
    runs = runs_of(pages[0])
    pairs = [(a, b) for a, b in zip(runs, runs[1:], strict=False) if 10 < a.y - b.y < 20]
    _above, below = pick(rng, pairs)
    pages[0][below.index] = below.line(y=below.y + 10)


@fault(TUESDAY, "overlap")
def a_line_through_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    page.append(f"n {run.x} {run.y + 3} m {run.x + 100} {run.y + 3} l S")


@fault(TUESDAY, "overlap")
def a_box_over_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    page.append(f"1 g\nn {run.x} {run.y - 3} 90 16 re f")


@fault(TUESDAY, "overlap")
def letters_squeezed(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = f"-3 Tc\n{run.line()}\n0 Tc"


@fault(TUESDAY, "font")
def letters_made_narrow(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = f"70 Tz\n{run.line()}\n100 Tz"


@fault(TUESDAY, "size")
def type_made_smaller(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = run.line(size=run.size * 0.7)


@fault(TUESDAY, "colour")
def text_made_pale(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"\w+ \w+ \w+")
    # #777777 on white is 4.478 : 1, just too little (sources.md section 4).
    page[run.index] = f"{0x77 / 255:.4f} g\n{run.line()}\n0 g"


@fault(TUESDAY, "font")
def text_turned(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"^\w+$")
    page[run.index] = run.line().replace("BT 1 0 0 1", "BT 0 1 -1 0")


@fault(WEDNESDAY, "order")
def a_line_moved_down(pages: list[Lines], rng: random.Random) -> None:
    wanted = [r for r in runs_of(pages[1]) if re.search(r"\w+ \w+ \w+", r.text) and r.y > 420]
    run = pick(rng, wanted[1:])
    pages[1][run.index] = run.line(y=run.y - 330)


@fault(TUESDAY, "number", "wording")
def a_wrong_page_number(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    run = next(run for run in runs_of(page) if run.text.startswith("Page "))
    _retype(page, run, run.text[:-1] + "3")


@fault(TUESDAY, "space")
def an_answer_line_lost(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    index, _ = pick(rng, [r for r in rules_of(page) if r[1][0] > 300 and r[1][2] - r[1][0] > 60])
    del page[index]


@fault(TUESDAY, "space")
def an_answer_line_too_short(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    lines = [r for r in rules_of(page) if r[1][0] > 300 and r[1][2] - r[1][0] > 60]
    index, (x1, y1, _, y2) = pick(rng, lines)
    page[index] = f"n {x1} {y1} m {x1 + 40} {y2} l S"


@fault(TUESDAY, "space")
def a_ruled_line_lost(pages: list[Lines], rng: random.Random) -> None:
    wide = [r for r in rules_of(pages[1]) if r[1][0] < 80 and r[1][2] > 540 and r[1][1] < 400]
    index, _ = pick(rng, wide[1:-1])
    del pages[1][index]


@fault(TUESDAY, "space")
def a_row_of_squares_lost(pages: list[Lines], rng: random.Random) -> None:
    level = [r for r in rules_of(pages[1]) if r[1][0] < 80 and 530 < r[1][2] < 540]
    for index, _ in sorted(level[1:], reverse=True):
        del pages[1][index]


@fault(TUESDAY, "space")
def squares_too_small(pages: list[Lines], rng: random.Random) -> None:
    upright = [r for r in rules_of(pages[1]) if r[1][0] == r[1][2]]
    for index, (x1, y1, x2, y2) in upright:
        x = 75.69 + (x1 - 75.69) * 0.8
        pages[1][index] = f"n {x} {y1} m {x + x2 - x1} {y2} l S"


@fault(TUESDAY, "space")
def a_frame_halved(pages: list[Lines], rng: random.Random) -> None:
    index, (x, y, width, height), paint = rects_of(pages[1])[0]
    pages[1][index] = f"n {x} {y + height / 2} {width} {height / 2} re {paint}"


@fault(TUESDAY, "space")
def room_to_work_taken_away(pages: list[Lines], rng: random.Random) -> None:
    # The wrong working, the last of question 1's text, is drawn lower into the room.
    page = pages[0]
    for run in runs_of(page):
        if run.text.startswith("5 ") and " 36 = 180" in run.text:
            page[run.index] = run.line(y=run.y - 50)
            return
    raise AssertionError("no working")


@fault(WEDNESDAY, "space", "wording")
def a_tick_box_lost(pages: list[Lines], rng: random.Random) -> None:
    boxes = [(page, r) for page in pages for r in rects_of(page) if r[1][2] == r[1][3]]
    page, (index, _, _) = pick(rng, boxes)
    del page[index]


@fault(WEDNESDAY, "space")
def a_box_for_a_number_halved(pages: list[Lines], rng: random.Random) -> None:
    boxes = [(p, r) for p in pages for r in rects_of(p) if 35 < r[1][2] < 45 and r[1][3] < 30]
    page, (index, (x, y, width, height), paint) = pick(rng, boxes)
    page[index] = f"n {x} {y} {width} {height / 2} re {paint}"


def _parts(page: Lines) -> list[tuple[int, tuple[float, ...], str]]:
    """The parts of bars: painted rectangles."""
    return [rect for rect in rects_of(page) if rect[2].startswith("B")]


@fault(TUESDAY, "figure")
def a_bar_one_part_short(pages: list[Lines], rng: random.Random) -> None:
    index, _, _ = pick(rng, _parts(pages[0]))
    del pages[0][index]


@fault(TUESDAY, "figure")
def a_bar_one_part_long(pages: list[Lines], rng: random.Random) -> None:
    index, (x, y, width, height), paint = _parts(pages[0])[2]
    pages[0].insert(index + 1, f"n {x + width} {y} {width} {height} re {paint}")


@fault(TUESDAY, "figure")
def a_part_too_wide(pages: list[Lines], rng: random.Random) -> None:
    index, (x, y, width, height), paint = pick(rng, _parts(pages[0]))
    pages[0][index] = f"n {x} {y} {width * 1.1} {height} re {paint}"


@fault(BOOKLET, "figure")
def a_part_too_wide_in_the_booklet(pages: list[Lines], rng: random.Random) -> None:
    page = pick(rng, [page for page in pages if _parts(page)])
    index, (x, y, width, height), paint = pick(rng, _parts(page))
    page[index] = f"n {x} {y} {width * 0.9} {height} re {paint}"


@fault(TUESDAY, "figure")
def a_brace_moved(pages: list[Lines], rng: random.Random) -> None:
    braces = [i for i, line in enumerate(pages[0]) if " c " in line and line.startswith("n ")]
    index = braces[0]
    pages[0][index] = f"q\n1 0 0 1 40 0 cm\n{pages[0][index]}\nQ"


@fault(BOOKLET, "figure")
def two_values_of_a_model_exchanged(pages: list[Lines], rng: random.Random) -> None:
    # 12 in the gulls' parts and 36 at the brace change places on the page.
    page = next(page for page in pages if any(run.text == "36" for run in runs_of(page)))
    total = next(run for run in runs_of(page) if run.text == "36")
    part = next(run for run in runs_of(page) if run.text == "12")
    page[total.index] = total.line(x=part.x, y=part.y)
    page[part.index] = part.line(x=total.x, y=total.y)


@fault(BOOKLET, "wording", "number", "order")
def an_answer_of_the_booklet_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r"^Answer: ")
    del page[run.index : run.index + 2]


@fault(BOOKLET, "wording", "number", "order")
def a_working_of_the_booklet_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = _texts(pages, rng, r" = \d")
    del page[run.index]
