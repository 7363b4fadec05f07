"""Faults in numbers: figures, signs, money, times, fractions, units, and which question it is."""

from __future__ import annotations

import random
import re
from itertools import pairwise

from tests.proofing.faults import Theme, retype, text_run
from tests.proofing.originals import (
    CARDS,
    COSTS,
    FILLED,
    FOLDED,
    GRID,
    KEY,
    LARGE,
    LESSONS,
    OWN,
    PACK_ANSWERS,
    PACK_END,
    PACK_NONE,
    PACK_SHEETS,
    PRINTING,
    SAVING,
    SET,
    STRETCH,
    STRIPS,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Codes, Lines, Run, pick, rules_of, runs_of

NUMBERS = Theme("Numbers")
SHEETS = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, LARGE, SAVING, FILLED)
FOR_TEACHERS = (STRIPS, KEY, GRID, PACK_ANSWERS, WEEKLY, LESSONS, FOLDED)
OTHERS = (CARDS, OWN, SET, PACK_END, PACK_SHEETS, PACK_NONE)
EVERY = (*SHEETS, *FOR_TEACHERS, *OTHERS, PRINTING)
WITH_ANSWERS = (STRIPS, PACK_ANSWERS, GRID, WEEKLY, LESSONS, FOLDED)
# A digit that is one: letters outside ASCII are written as octal numbers, 222 after a backslash.
_PLAIN = r"(?<!\\)(?<!\\\d)(?<!\\\d\d)"
DIGIT = rf"{_PLAIN}\d"
PAIR = rf"{_PLAIN}(\d)(?!\1)(\d)"
NUMBER = rf"(?<![\d.:\\]){_PLAIN}\d+(?![\d.:])"


def other_digit(digit: str, rng: random.Random) -> str:
    return rng.choice([each for each in "23456789" if each != digit])


def at_match(rng: random.Random, pattern: str, run: Run) -> re.Match[str]:
    """One of the places in the text of the run that match."""
    found: re.Match[str] = pick(rng, list(re.finditer(pattern, run.text)))
    return found


def put(page: Lines, run: Run, match: re.Match[str], text: str) -> None:
    """The run with other text in the place of the match."""
    retype(page, run, run.text[: match.start()] + text + run.text[match.end() :])


@NUMBERS.drawn(EVERY)
def a_digit_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, DIGIT)
    match = at_match(rng, DIGIT, run)
    put(page, run, match, other_digit(match[0], rng))


@NUMBERS.drawn(EVERY)
def two_digits_swapped(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, PAIR)
    match = at_match(rng, PAIR, run)
    put(page, run, match, match[2] + match[1])


@NUMBERS.drawn(EVERY)
def a_digit_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, rf"{DIGIT}")
    put(page, run, at_match(rng, DIGIT, run), "")


@NUMBERS.drawn(EVERY)
def a_digit_doubled(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, DIGIT)
    match = at_match(rng, DIGIT, run)
    put(page, run, match, match[0] * 2)


@NUMBERS.drawn((TUESDAY, WEDNESDAY, SUPPORT, STRETCH, COSTS, SAVING))
def two_numbers_of_a_line_exchanged(pages: list[Lines], rng: random.Random) -> None:
    """A ratio turned, most of the time."""
    page, run = text_run(pages, rng, rf"({NUMBER})(\D+)(?!\1\b)({NUMBER})")
    match = at_match(rng, rf"({NUMBER})(\D+)(?!\1\b)({NUMBER})", run)
    put(page, run, match, match[3] + match[2] + match[1])


@NUMBERS.coded((COSTS, STRETCH, LESSONS, SAVING, FOLDED))
def a_minus_lost(pages: list[Lines], rng: random.Random, codes: Codes) -> None:
    _lose_sign(pages, rng, codes, "\N{MINUS SIGN}")


@NUMBERS.coded((COSTS, STRIPS, LESSONS, SAVING, LARGE))
def a_pound_sign_lost(pages: list[Lines], rng: random.Random, codes: Codes) -> None:
    _lose_sign(pages, rng, codes, "£")


def signed(
    pages: list[Lines], rng: random.Random, codes: Codes, sign: str
) -> tuple[Lines, Run, list[int], str]:
    """A page, a run with this sign, where in its text it is, and how it is written there."""
    found = []
    for page in pages:
        for run in runs_of(page):
            code = codes.get(run.font, {}).get(sign)
            at = [m.start() for m in re.finditer(re.escape(code), run.text)] if code else []
            if code and at:
                found.append((page, run, at, code))
    chosen: tuple[Lines, Run, list[int], str] = pick(rng, found)
    return chosen


def _lose_sign(pages: list[Lines], rng: random.Random, codes: Codes, sign: str) -> None:
    page, run, places, code = signed(pages, rng, codes, sign)
    at = rng.choice(places)
    retype(page, run, run.text[:at] + run.text[at + len(code) :])


@NUMBERS.coded((COSTS, LESSONS, STRETCH))
def a_minus_too_many(pages: list[Lines], rng: random.Random, codes: Codes) -> None:
    fonts = [font for font, own in codes.items() if "\N{MINUS SIGN}" in own]
    page, run = pick(
        rng,
        [
            (page, run)
            for page in pages
            for run in runs_of(page)
            if run.font in fonts and re.search(rf"(^| ){NUMBER}", run.text)
        ],
    )
    match = at_match(rng, rf"(?<!\S){NUMBER}", run)
    put(page, run, match, codes[run.font]["\N{MINUS SIGN}"] + match[0])


@NUMBERS.coded((WEEKLY, LESSONS, FOLDED))
def a_sign_of_calculation_changed(pages: list[Lines], rng: random.Random, codes: Codes) -> None:
    sign = pick(rng, [each for each in "×÷" if any(each in own for own in codes.values())])
    page, run, places, code = signed(pages, rng, codes, sign)
    at = rng.choice(places)
    retype(page, run, f"{run.text[:at]}+{run.text[at + len(code) :]}")


@NUMBERS.drawn((COSTS, SAVING, LARGE, STRIPS, LESSONS, OWN))
def the_pence_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\d+\.\d\d(?!\d)")
    match = at_match(rng, r"(\d+\.)(\d)(\d)(?!\d)", run)
    put(page, run, match, match[1] + other_digit(match[2], rng) + match[3])


@NUMBERS.drawn((COSTS, SAVING, LARGE, STRIPS, LESSONS))
def a_decimal_point_moved(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\d+\.\d\d(?!\d)")
    match = at_match(rng, r"(\d+)\.(\d)(\d)(?!\d)", run)
    put(page, run, match, f"{match[1]}{match[2]}.{match[3]}")


@NUMBERS.drawn((COSTS, SUPPORT, STRETCH, SAVING, LARGE))
def a_time_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\d:\d\d")
    match = at_match(rng, r"(\d):(\d)(\d)", run)
    new = rng.choice([each for each in "012345" if each != match[2]])
    put(page, run, match, f"{match[1]}:{new}{match[3]}")


_UNITS = r"\b(litres|gulls|terns|boats|pints|crates|lamps|min|metres|kites|oars|kg|m)\b"


@NUMBERS.drawn((TUESDAY, COSTS, SUPPORT, WEDNESDAY, STRIPS, CARDS, OWN))
def a_unit_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, _UNITS)
    match = at_match(rng, _UNITS, run)
    put(page, run, match, rng.choice(["grams", "gallons", "cm"]))


def fractions(pages: list[Lines]) -> list[tuple[Lines, Run, Run]]:
    """The numbers over and under the bars of fractions."""
    return [
        (page, over, under)
        for page in pages
        for over, under in pairwise(runs_of(page))
        if over.text.isdigit() and under.text.isdigit() and over.text != under.text
        if abs(over.x - under.x) < 6 and 4 < over.y - under.y < 16
    ]


@NUMBERS.drawn((WEDNESDAY, COSTS, FILLED, LARGE, LESSONS, FOLDED))
def a_fraction_turned_over(pages: list[Lines], rng: random.Random) -> None:
    page, over, under = pick(rng, fractions(pages))
    page[over.index] = over.line(text=under.text)
    page[under.index] = under.line(text=over.text)


@NUMBERS.drawn((WEDNESDAY, COSTS, FILLED, LESSONS))
def a_fraction_too_small(pages: list[Lines], rng: random.Random) -> None:
    page, over, under = pick(rng, fractions(pages))
    run = rng.choice([over, under])
    page[run.index] = run.line(size=run.size * 0.6, x=run.x + 1.2, y=run.y + 1.0)


@NUMBERS.drawn((WEDNESDAY, COSTS, FILLED, LESSONS))
def a_fraction_without_its_bar(pages: list[Lines], rng: random.Random) -> None:
    page, over, under = pick(rng, fractions(pages))
    (index,) = (
        index
        for index, (x1, y1, x2, y2) in rules_of(page)
        if y1 == y2 and under.y < y1 < over.y + 3 and abs(x1 - over.x) < 8 and x2 - x1 < 30
    )
    del page[index]


def labels(pages: list[Lines]) -> list[tuple[Lines, Run]]:
    """Numbers of questions: at the beginning of a column, or after the word."""
    return [
        (page, run)
        for page in pages
        for run in runs_of(page)
        if re.search(r"[Qq]uestion \d", run.text)
        or (re.fullmatch(r"\d+", run.text) and (run.x < 60 or 300 < run.x < 320))
    ]


@NUMBERS.drawn((COSTS, TUESDAY, LARGE, WEEKLY, LESSONS, STRIPS, CARDS, KEY, SET))
def a_question_under_another_number(pages: list[Lines], rng: random.Random) -> None:
    page, run = pick(rng, labels(pages))
    match = at_match(rng, r"(?<![\\\d])\d+$|(?<=uestion )\d+", run)
    put(page, run, match, str(int(match[0]) + rng.choice([1, 2, 10])))


@NUMBERS.drawn((TUESDAY, WEEKLY, PACK_END, SET, LARGE, OWN, KEY))
def a_wrong_page_number(pages: list[Lines], rng: random.Random) -> None:
    found = [(p, r) for p in pages for r in runs_of(p) if re.match(r"Page \d+ of \d+$", r.text)]
    page, run = pick(rng, found)
    match = at_match(rng, r"\d+", run)
    put(page, run, match, str(int(match[0]) + rng.choice([1, 2, 5])))


@NUMBERS.drawn(WITH_ANSWERS)
def a_number_of_the_answers_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, NUMBER)
    match = at_match(rng, NUMBER, run)
    put(page, run, match, str(int(match[0]) + rng.choice([1, 2, 3, 10])))


@NUMBERS.drawn((WEEKLY, LESSONS, FOLDED))
def a_result_of_a_working_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, rf"= {DIGIT}")
    match = at_match(rng, rf"= ({DIGIT}+)", run)
    put(page, run, match, f"= {int(match[1]) + 1}")


@NUMBERS.drawn(KEY)
def two_letters_of_the_key_swapped(pages: list[Lines], rng: random.Random) -> None:
    found = [(page, run) for page in pages for run in runs_of(page) if run.text in "ABCDE"]
    page, one = pick(rng, found)
    other = pick(rng, [run for _, run in found if run.text != one.text])
    page[one.index], page[other.index] = one.line(text=other.text), other.line(text=one.text)
