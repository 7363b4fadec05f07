"""Faults in what tells one text from another: its face, its size, the rule or frame about it."""

from __future__ import annotations

import random
import re

from tests.proofing.faults import Theme, text_run
from tests.proofing.originals import (
    COSTS,
    FILLED,
    FOLDED,
    LARGE,
    LESSONS,
    PACK_ANSWERS,
    SAVING,
    SET,
    STRETCH,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, pick, rects_of, rules_of, runs_of

FACES = Theme("Faces, rules over headings, frames")
SHEETS = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, LARGE, SET, FILLED)
RULED = (*SHEETS, SAVING, LESSONS, FOLDED, WEEKLY, PACK_ANSWERS)


def other_face(pages: list[Lines], rng: random.Random, wanted: str, bold: bool) -> None:
    """A run in plain ASCII letters is set in the other face of its page."""
    found = []
    for page in pages:
        runs = [run for run in runs_of(page) if run.y > 60]
        # The first run of the largest letters on a page is bold: its title or a heading.
        fonts = {run.font for run in runs}
        if len(fonts) != 2:
            continue
        heavy = max(runs, key=lambda run: run.size).font
        (plain,) = fonts - {heavy}
        found += [
            (page, run, plain if run.font == heavy else heavy)
            for run in runs
            if (run.font == heavy) is bold and re.fullmatch(wanted, run.text)
        ]
    page, run, font = pick(rng, found)
    page[run.index] = run.line(font=font)


@FACES.drawn(SHEETS, "font")
def a_number_that_is_not_bold(pages: list[Lines], rng: random.Random) -> None:
    other_face(pages, rng, r"\d+", bold=True)


@FACES.drawn(SHEETS, "font")
def a_heading_that_is_not_bold(pages: list[Lines], rng: random.Random) -> None:
    other_face(pages, rng, r"(Set [A-Z]|Practise|Spot the mistake|Warm-up: look back)", bold=True)


@FACES.drawn(SHEETS, "font")
def a_line_of_a_story_in_bold(pages: list[Lines], rng: random.Random) -> None:
    other_face(pages, rng, r"[A-Za-z0-9,. ]+\?", bold=False)


@FACES.drawn(SHEETS, "size")
def a_text_larger_than_the_rest(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^(Answer|Aim: *|Name|Date)$")
    page[run.index] = run.line(size=run.size * rng.uniform(1.2, 2.2))


def heavy_rules(pages: list[Lines]) -> list[tuple[Lines, int, tuple[float, ...]]]:
    """Rules that stand just over a run of larger letters."""
    found = []
    for page in pages:
        runs = runs_of(page)
        text = min((run.size for run in runs), default=0)
        for index, ends in rules_of(page):
            over = next((r for r in runs if r.index > index), None)
            if over is None or over.size <= 1.05 * text or abs(ends[0] - over.x) > 1:
                continue
            if 0 < ends[1] - over.y < 2 * over.size and ends[2] - ends[0] > 300:
                found.append((page, index, ends))
    return found


@FACES.drawn(RULED, "figure", "wording")
def the_rule_over_a_heading_lost(pages: list[Lines], rng: random.Random) -> None:
    page, index, _ = pick(rng, heavy_rules(pages))
    page[index] = ""


@FACES.drawn(RULED, "figure", "wording")
def the_rule_over_a_heading_thinned(pages: list[Lines], rng: random.Random) -> None:
    page, index, _ = pick(rng, heavy_rules(pages))
    page[index] = f"q\n{rng.uniform(0.3, 1.5):.2f} w\n{page[index]}\nQ"


@FACES.drawn(RULED, "figure", "wording")
def the_rule_over_a_heading_shortened(pages: list[Lines], rng: random.Random) -> None:
    page, index, (x1, y1, x2, y2) = pick(rng, heavy_rules(pages))
    page[index] = f"n {x1} {y1} m {x2 - rng.uniform(20, 200)} {y2} l S"


@FACES.drawn((TUESDAY, SET), "figure")
def the_frame_around_a_working_lost(pages: list[Lines], rng: random.Random) -> None:
    page, index = _frame(pages, rng)
    page[index] = ""


@FACES.drawn((TUESDAY, SET), "figure")
def the_frame_around_a_working_too_small(pages: list[Lines], rng: random.Random) -> None:
    page, index = _frame(pages, rng)
    _, (x, y, wide, high), paint = next(each for each in rects_of(page) if each[0] == index)
    page[index] = f"n {x} {y + high / 2} {wide} {high / 2} re {paint}"


def _frame(pages: list[Lines], rng: random.Random) -> tuple[Lines, int]:
    """A frame that a working stands in: the widest rectangle that is drawn and not filled."""
    frames = []
    for page in pages:
        for index, (x, y, wide, high), paint in rects_of(page):
            inside = [r for r in runs_of(page) if x < r.x < x + wide and y < r.y < y + abs(high)]
            if paint == "S" and wide > 300 and any("working" in run.text for run in inside):
                frames.append((page, index))
    page, index = pick(rng, frames)
    return page, index
