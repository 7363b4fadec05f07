"""Faults in how the pages are printed: places, type, colour, ink."""

from __future__ import annotations

import random
import re
from itertools import pairwise

from tests.proofing.faults import Theme, text_run
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
    STRIPS,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, pick, rules_of, runs_of

PRINT = Theme("Places, type, colour")
SOME = (*SHEETS, WEEKLY, STRIPS, CARDS, KEY, OWN, PACK_ANSWERS, SET, GRID, PRINTING)
WHOLE = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, LARGE, WEEKLY, KEY, OWN, SET, PACK_ANSWERS)
LONG = r"\w+ \w+ \w+"


@PRINT.drawn(WHOLE, "margin")
def text_beyond_a_margin(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+")
    edge = rng.choice([rng.uniform(1, 20), 590])
    page[run.index] = run.line(x=edge)


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, FILLED, SUPPORT, LARGE), "margin")
def a_rule_beyond_the_margin(pages: list[Lines], rng: random.Random) -> None:
    rules = [(p, r) for p in pages for r in rules_of(p) if r[1][2] > 500]
    page, (index, (x1, y1, x2, y2)) = pick(rng, rules)
    page[index] = f"n {x1} {y1} m {x2 + rng.uniform(5, 80)} {y2} l S"


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, FILLED, SET, SUPPORT, LARGE))
def everything_shifted(pages: list[Lines], rng: random.Random) -> None:
    page = pick(rng, [page for page in pages if runs_of(page)])
    page.insert(0, f"q\n1 0 0 1 {rng.choice([-30, 30])} {rng.choice([-20, 0])} cm")
    page.append("Q")


@PRINT.drawn((*SHEETS, WEEKLY, FOLDED, PACK_END), "overlap", "wording")
def lines_over_each_other(pages: list[Lines], rng: random.Random) -> None:
    pairs = [
        (page, below)
        for page in pages
        for above, below in pairwise(runs_of(page))
        if 10 < above.y - below.y < 28 and len(above.text) > 12 < len(below.text)
        if abs(above.x - below.x) < 40
    ]
    page, below = pick(rng, pairs)
    above = next(run for run in runs_of(page) if run.y > below.y and run.index < below.index)
    above = runs_of(page)[runs_of(page).index(below) - 1]
    page[below.index] = below.line(y=above.y - rng.uniform(0.5, 4))


@PRINT.drawn(SOME, "overlap", "wording")
def a_line_through_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w\w")
    page[run.index] += f"\nn {run.x} {run.y + 3} m {run.x + 30} {run.y + 3} l S"


@PRINT.drawn(SOME, "overlap", "wording")
def a_box_over_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w\w")
    grey = rng.choice([1, 0.8, 0])
    page[run.index] += f"\nq\n{grey} g\nn {run.x} {run.y - 3} 40 16 re f\nQ"


@PRINT.drawn(SOME, "overlap")
def letters_squeezed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w\w")
    page[run.index] = f"-3 Tc\n{run.line()}\n0 Tc"


@PRINT.drawn(SOME, "font")
def letters_made_narrow(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w\w")
    page[run.index] = f"{rng.choice([50, 70, 90, 130])} Tz\n{run.line()}\n100 Tz"


@PRINT.drawn(SOME, "size")
def type_made_smaller(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, LONG)
    page[run.index] = run.line(size=run.size * rng.uniform(0.5, 0.65))


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, LARGE, FILLED), "size", "overlap")
def type_made_larger(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ .*\?$")
    page[run.index] = run.line(size=run.size * rng.uniform(1.1, 1.3))


@PRINT.drawn(EVERY, "colour", "wording")
def text_made_pale(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w")
    # #777777 on white is 4.478 : 1, just too little (sources.md section 4).
    page[run.index] = f"q\n{rng.uniform(0x77, 0xFE) / 255:.4f} g\n{run.line()}\nQ"


@PRINT.drawn(EVERY, "font", "answer", "wording", "number", "order")
def text_turned(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^[\w ]{2,}$")
    page[run.index] = run.line().replace("BT 1 0 0 1", "BT 0 1 -1 0")


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, WEEKLY, SET))
def a_line_moved_down(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    others = [each for each in runs_of(page) if 62 < each.y < run.y - 30]
    other = pick(rng, others) if others else None
    page[run.index] = run.line(y=other.y - 8 if other else run.y + 140)


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, LESSONS, WEEKLY))
def lines_set_too_close(pages: list[Lines], rng: random.Random) -> None:
    """Too little leading: the second line of two stands nearly on the first."""
    pairs = [
        (page, above, below)
        for page in pages
        for above, below in pairwise(runs_of(page))
        if 12 < above.y - below.y < 26 and abs(above.x - below.x) < 1 and above.size == below.size
        if re.search(LONG, above.text) and re.search(r"\w\w", below.text)
    ]
    page, above, below = pick(rng, pairs)
    page[below.index] = below.line(y=above.y - rng.uniform(0.4, 0.8) * above.size)


@PRINT.drawn((COSTS, WEDNESDAY, SUPPORT, LARGE))
def a_line_longer_than_its_column(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+ \w+")
    lines = [each for each in runs_of(page) if each.x == run.x and each.text != run.text]
    more = pick(rng, [each for each in lines if len(each.text) > 3])
    page[run.index] = run.line(text=f"{run.text} {more.text} {run.text}")
    del page[more.index]


@PRINT.drawn((COSTS, TUESDAY, WEDNESDAY, LARGE, SET, WEEKLY, KEY, OWN, PRINTING))
def text_cut_off_at_the_foot(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+")
    page[run.index] = run.line(y=rng.uniform(-6, 12))
