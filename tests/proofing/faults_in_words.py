"""Faults in what the pages say: words, lines, questions, and their order."""

from __future__ import annotations

import random
import re
from itertools import pairwise

from tests.proofing.faults import Theme, retype, text_run
from tests.proofing.faults_in_numbers import EVERY, SHEETS
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
    PRINTING,
    SET,
    STRETCH,
    STRIPS,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, pick, runs_of

WORDS = Theme("Words, questions, order")
WORD = r"(?<!\\)\b[A-Za-z]{3,}\b"


@WORDS.drawn(EVERY)
def a_word_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, WORD)
    word = pick(rng, re.findall(WORD, run.text))
    retype(page, run, run.text.replace(word, word[::-1] + word[0], 1))


@WORDS.drawn(EVERY)
def a_letter_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, WORD)
    at = pick(rng, [m.start() for m in re.finditer(r"(?<!\\)[a-z]", run.text)])
    letter = rng.choice([each for each in "aeiouxz" if each != run.text[at]])
    retype(page, run, run.text[:at] + letter + run.text[at + 1 :])


@WORDS.drawn((*SHEETS, WEEKLY, CARDS, PACK_END, STRIPS, OWN, PRINTING, SET, LESSONS))
def a_word_dropped(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+ \w+")
    words = run.text.split(" ")
    del words[rng.randrange(1, len(words) - 1)]
    retype(page, run, " ".join(words))


@WORDS.drawn((*SHEETS, WEEKLY, CARDS, PACK_END, OWN, PRINTING, SET, LESSONS))
def a_word_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    words = run.text.split(" ")
    at = pick(rng, [index for index, word in enumerate(words) if word])
    retype(page, run, " ".join([*words[:at], words[at], *words[at:]]))


@WORDS.drawn((*SHEETS, WEEKLY, FOLDED))
def two_words_exchanged(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    words = run.text.split(" ")
    one, other = pick(
        rng,
        [
            (a, b)
            for a in range(len(words))
            for b in range(a)
            if words[a] != words[b] and words[a] and words[b]
        ],
    )
    words[one], words[other] = words[other], words[one]
    retype(page, run, " ".join(words))


@WORDS.drawn((*SHEETS, WEEKLY, STRIPS, CARDS, KEY, OWN, PACK_END, PACK_ANSWERS, SET, GRID))
def a_mark_between_words_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w[.?,:](?!\d)")
    match = pick(rng, list(re.finditer(r"(?<=\w)[.?,:](?!\d)", run.text)))
    mark = rng.choice([each for each in ".?,!;" if each != match[0]])
    retype(page, run, run.text[: match.start()] + mark + run.text[match.end() :])


@WORDS.drawn(EVERY)
def a_line_of_text_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+")
    del page[run.index]


@WORDS.drawn((*SHEETS, WEEKLY, CARDS, OWN, SET, PACK_END, LESSONS))
def a_line_of_text_twice(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page.insert(run.index, run.line(y=run.y - 6))


@WORDS.drawn((*SHEETS, LESSONS, PACK_END, OWN, CARDS))
def two_lines_of_text_exchanged(pages: list[Lines], rng: random.Random) -> None:
    page, one = text_run(pages, rng, r"\w+ \w+ \w+")
    others = [run for run in runs_of(page) if run.text != one.text]
    other = pick(rng, [run for run in others if re.search(r"\w+ \w+ \w+", run.text)])
    page[one.index], page[other.index] = one.line(text=other.text), other.line(text=one.text)


@WORDS.drawn((COSTS, TUESDAY, WEDNESDAY, WEEKLY, PACK_END, SET, LARGE, KEY, OWN))
def a_heading_lost(pages: list[Lines], rng: random.Random) -> None:
    headings = [(p, r) for p in pages for r in runs_of(p) if r.size > 14.5]
    page, run = pick(rng, headings)
    del page[run.index]


@WORDS.drawn((WEEKLY, LESSONS, PACK_ANSWERS, STRIPS))
def an_answer_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^(Answer: )?(\\001)?\d[\d.]*( \w+)?$")
    del page[run.index]


@WORDS.drawn((WEEKLY, LESSONS, FOLDED))
def a_working_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r" = ")
    del page[run.index]


def question_spans(page: Lines) -> list[tuple[int, int]]:
    """From the number of every question to that of the next, where a page has two or more.

    A section of the structure is opened on the line before the number.
    """
    starts = [
        run.index - page[run.index - 1].endswith("BDC")
        for run in runs_of(page)
        if re.fullmatch(r"\d+", run.text) and run.font == "/F2+0" and run.x < 60
    ]
    return list(pairwise(starts))


def _spans(pages: list[Lines]) -> list[tuple[Lines, tuple[int, int]]]:
    return [(page, span) for page in pages for span in question_spans(page)]


QUESTIONS = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, FILLED)


@WORDS.drawn(QUESTIONS, "order")
def a_question_lost(pages: list[Lines], rng: random.Random) -> None:
    page, (start, end) = pick(rng, _spans(pages))
    del page[start:end]


@WORDS.drawn(QUESTIONS, "order")
def a_question_twice(pages: list[Lines], rng: random.Random) -> None:
    page, (start, end) = pick(rng, _spans(pages))
    onto = pick(rng, pages)
    # Behind the body of a page, before its foot.
    at = len(onto) - 2 if onto[-1] == "EMC" else len(onto)
    onto[at:at] = page[start:end]


@WORDS.drawn(QUESTIONS, "order", "structure")
def two_questions_exchanged(pages: list[Lines], rng: random.Random) -> None:
    """In the order of drawing, which is that of reading."""
    page, (start, end) = pick(rng, [each for each in _spans(pages) if len(_later(each))])
    after = pick(rng, _later((page, (start, end))))
    page[start : after[1]] = page[end : after[1]] + page[start:end]


def _later(each: tuple[Lines, tuple[int, int]]) -> list[tuple[int, int]]:
    page, (_, end) = each
    return [span for span in question_spans(page) if span[0] == end]


@WORDS.drawn(QUESTIONS, "order", "structure")
def a_question_moved_to_another_page(pages: list[Lines], rng: random.Random) -> None:
    page, (start, end) = pick(rng, _spans(pages))
    moved = page[start:end]
    del page[start:end]
    onto = pick(rng, [other for other in pages if other is not page])
    at = runs_of(onto)[0].index
    onto[at:at] = moved


@WORDS.drawn(QUESTIONS, "order", "structure")
def a_question_split_over_pages(pages: list[Lines], rng: random.Random) -> None:
    """The last lines of a page stand at the top of the next."""
    runs = [run for run in runs_of(pages[0]) if run.y > 60]
    last = runs[-rng.randrange(1, 4) :]
    moved = [pages[0][run.index] for run in last]
    for run in reversed(last):
        del pages[0][run.index]
    at = runs_of(pages[1])[0].index
    pages[1][at:at] = moved


@WORDS.drawn((TUESDAY, WEDNESDAY, WEEKLY, FILLED))
def a_heading_at_the_foot_of_a_page(pages: list[Lines], rng: random.Random) -> None:
    """Widowed: what it heads stands on the next page."""
    found = [
        (before, after, run)
        for before, after in pairwise(pages)
        for run in runs_of(after)
        if run.font == "/F2+0" and len(run.text) > 3
    ]
    before, after, run = pick(rng, found)
    lowest = min(each.y for each in runs_of(before) if each.y > 60)
    before.append(run.line(y=max(lowest - 20, 62)))
    del after[run.index]
