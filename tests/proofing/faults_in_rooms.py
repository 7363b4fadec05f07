"""Faults in the rooms to answer in, and in figures: bars, braces, labels."""

from __future__ import annotations

import random
import re
from typing import Any

from tests.proofing.faults import Theme, text_run
from tests.proofing.originals import (
    COSTS,
    FILLED,
    LARGE,
    OWN,
    PACK_NONE,
    SAVING,
    SET,
    STRETCH,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, Run, pick, rects_of, rules_of, runs_of

ROOMS, FIGURES = Theme("Rooms to answer in"), Theme("Figures")
SHEETS = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, FILLED, LARGE, SAVING)
Rule = tuple[int, tuple[float, ...]]


def _answer_lines(pages: list[Lines]) -> list[tuple[Lines, Rule]]:
    """Level rules that begin in the middle of the page: to write the answer on."""
    return [
        (page, rule)
        for page in pages
        for rule in rules_of(page)
        if rule[1][1] == rule[1][3]
        and rule[1][0] > 190
        and rule[1][2] - rule[1][0] > 60
        and rule[1][1] < 700
    ]


@ROOMS.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, FILLED, LARGE), "space")
def an_answer_line_lost(pages: list[Lines], rng: random.Random) -> None:
    page, (index, _) = pick(rng, _answer_lines(pages))
    del page[index]


@ROOMS.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, FILLED, LARGE), "space")
def an_answer_line_too_short(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x1, y1, _, y2)) = pick(rng, _answer_lines(pages))
    page[index] = f"n {x1} {y1} m {x1 + rng.uniform(10, 50)} {y2} l S"


@ROOMS.drawn((COSTS, TUESDAY, WEDNESDAY, SUPPORT, STRETCH, FILLED, LARGE), "space", "overlap")
def an_answer_line_moved_up(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x1, y1, x2, y2)) = pick(rng, _answer_lines(pages))
    up = rng.uniform(9, 20)
    page[index] = f"n {x1} {y1 + up} m {x2} {y2 + up} l S"


def _ruled(page: Lines) -> list[Rule]:
    """Rules over the whole width, below the heading of the page; not the heavy ones."""
    level = [r for r in rules_of(page) if r[1][1] == r[1][3] < 560 and page[r[0] - 1] != "2 w"]
    return [r for r in level if r[1][0] < 80 and r[1][2] > 530]


@ROOMS.drawn((TUESDAY, COSTS, SUPPORT, STRETCH, OWN), "space")
def a_ruled_line_lost(pages: list[Lines], rng: random.Random) -> None:
    page, rules = pick(rng, [(p, _ruled(p)) for p in pages if len(_ruled(p)) > 2])
    index, _ = pick(rng, rules[1:-1])
    del page[index]


@ROOMS.drawn((TUESDAY, COSTS, SUPPORT, STRETCH, OWN), "space")
def ruled_lines_too_close(pages: list[Lines], rng: random.Random) -> None:
    page, rules = pick(rng, [(p, _ruled(p)) for p in pages if len(_ruled(p)) > 2])
    share = rng.uniform(0.5, 0.9)
    top = rules[0][1][1]
    for index, (x1, y, x2, _) in rules[1:]:
        new = top + (y - top) * share
        page[index] = f"n {x1} {new} m {x2} {new} l S"


def _squares(pages: list[Lines]) -> tuple[Lines, list[Rule]]:
    """The rules of a field of squares, and their page: upright ones first."""
    for page in pages:
        upright = [r for r in rules_of(page) if r[1][0] == r[1][2]]
        if len(upright) > 8:
            ends = [y for r in upright for y in (r[1][1], r[1][3])]
            low, high = min(ends), max(ends)
            level = [
                r for r in rules_of(page) if r[1][1] == r[1][3] and low - 1 <= r[1][1] <= high + 1
            ]
            return page, [*upright, *level]
    raise AssertionError("no squares")


@ROOMS.drawn((TUESDAY, COSTS, SUPPORT, STRETCH, LARGE), "space")
def rows_of_squares_lost(pages: list[Lines], rng: random.Random) -> None:
    page, rules = _squares(pages)
    level = [r for r in rules if r[1][1] == r[1][3]]
    for index, _ in sorted(level[rng.randrange(1, 3) :], reverse=True):
        del page[index]


@ROOMS.drawn((TUESDAY, COSTS, SUPPORT, STRETCH, LARGE), "space")
def squares_too_small(pages: list[Lines], rng: random.Random) -> None:
    page, rules = _squares(pages)
    upright = [r for r in rules if r[1][0] == r[1][2]]
    left, share = upright[0][1][0], rng.uniform(0.6, 0.9)
    for index, (x1, y1, _, y2) in upright:
        x = left + (x1 - left) * share
        page[index] = f"n {x} {y1} m {x} {y2} l S"


def _frames(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    """Large empty rectangles."""
    large = [
        (p, r) for p in pages for r in rects_of(p) if r[2] == "S" and r[1][2] > 150 < r[1][3] * 3
    ]
    return [(p, r) for p, r in large if not any(_within(run, r[1]) for run in runs_of(p))]


def _within(run: Run, rect: tuple[float, ...]) -> bool:
    x, y, width, height = rect
    return x < run.x < x + width and y < run.y < y + height


@ROOMS.drawn((TUESDAY, OWN), "space")
def a_frame_halved(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x, y, width, height), paint) = pick(rng, _frames(pages))
    share = rng.uniform(0.3, 0.6)
    page[index] = f"n {x} {y + height * (1 - share)} {width} {height * share} re {paint}"


@ROOMS.drawn((TUESDAY, OWN), "space")
def a_frame_lost(pages: list[Lines], rng: random.Random) -> None:
    page, (index, _, _) = pick(rng, _frames(pages))
    del page[index]


@ROOMS.drawn(TUESDAY, "space")
def room_to_work_taken_away(pages: list[Lines], rng: random.Random) -> None:
    # The wrong working, the last of question 1's text, is drawn lower into the room.
    page = pages[0]
    (run,) = (r for r in runs_of(page) if r.text.startswith("5 ") and " 36 = 180" in r.text)
    page[run.index] = run.line(y=run.y - rng.uniform(45, 55))


def _small_boxes(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    return [(p, r) for p in pages for r in rects_of(p) if r[2] == "S" and r[1][2] == r[1][3] < 30]


@ROOMS.drawn((WEDNESDAY, FILLED, OWN), "space", "wording", "structure")
def a_tick_box_lost(pages: list[Lines], rng: random.Random) -> None:
    page, (index, _, _) = pick(rng, _small_boxes(pages))
    del page[index]


@ROOMS.drawn((WEDNESDAY, FILLED, OWN), "space", "wording")
def a_tick_box_too_small(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x, y, width, height), paint) = pick(rng, _small_boxes(pages))
    page[index] = f"n {x} {y} {width * 0.5} {height * 0.5} re {paint}"


@ROOMS.drawn((WEDNESDAY, FILLED), "space", "wording")
def a_box_for_a_number_halved(pages: list[Lines], rng: random.Random) -> None:
    boxes = [(p, r) for p in pages for r in rects_of(p) if 35 < r[1][2] < 45 and r[1][3] < 30]
    page, (index, (x, y, width, height), paint) = pick(rng, boxes)
    page[index] = f"n {x} {y} {width} {height * rng.uniform(0.3, 0.6)} re {paint}"


@ROOMS.drawn((COSTS, TUESDAY, WEDNESDAY, SET, PACK_NONE, OWN))
def the_line_for_the_name_lost(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.choice([i for i, p in enumerate(pages) if _has_name(p)])]
    name = next(run for run in runs_of(page) if run.text in ("Name", "Date"))
    at = [r for r in rules_of(page) if abs(r[1][1] - name.y) < 4]
    index, _ = pick(rng, at)
    del page[index]


def _has_name(page: Lines) -> bool:
    return any(run.text == "Date" for run in runs_of(page))


def _parts(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    """The parts of bars: painted rectangles."""
    return [(p, r) for p in pages for r in rects_of(p) if r[2].startswith("B")]


BARS = (TUESDAY, WEEKLY)


@FIGURES.drawn(BARS, "figure")
def a_bar_one_part_short(pages: list[Lines], rng: random.Random) -> None:
    page, (index, _, _) = pick(rng, _parts(pages))
    del page[index]


@FIGURES.drawn(BARS, "figure")
def a_bar_one_part_long(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x, y, width, height), paint) = pick(rng, _last_parts(pages))
    page.insert(index + 1, f"n {x + width} {y} {width} {height} re {paint}")


def _last_parts(pages: list[Lines]) -> list[tuple[Lines, Any]]:
    """Parts with no other to their right in the same row."""
    every = _parts(pages)
    return [
        (p, r)
        for p, r in every
        if not any(q is p and o[1][1] == r[1][1] and o[1][0] > r[1][0] + 1 for q, o in every)
    ]


@FIGURES.drawn(BARS, "figure")
def a_part_too_wide(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x, y, width, height), paint) = pick(rng, _parts(pages))
    share = rng.choice([0.85, 0.9, 1.1, 1.2])
    page[index] = f"n {x} {y} {width * share} {height} re {paint}"


@FIGURES.drawn(BARS, "figure")
def a_part_moved(pages: list[Lines], rng: random.Random) -> None:
    page, (index, (x, y, width, height), paint) = pick(rng, _parts(pages))
    page[index] = f"n {x + rng.choice([-1, 1]) * width * 0.3} {y} {width} {height} re {paint}"


@FIGURES.drawn(BARS, "figure")
def a_brace_moved(pages: list[Lines], rng: random.Random) -> None:
    page, index = pick(rng, _braces(pages))
    page[index] = f"q\n1 0 0 1 {rng.choice([-1, 1]) * rng.uniform(25, 45)} 0 cm\n{page[index]}\nQ"


@FIGURES.drawn(BARS, "figure")
def a_brace_lost(pages: list[Lines], rng: random.Random) -> None:
    page, index = pick(rng, _braces(pages))
    del page[index]


def _braces(pages: list[Lines]) -> list[tuple[Lines, int]]:
    return [
        (page, index)
        for page in pages
        for index, line in enumerate(page)
        if " c " in line and line.startswith("n ")
    ]


@FIGURES.drawn(WEEKLY, "figure")
def two_values_of_a_model_exchanged(pages: list[Lines], rng: random.Random) -> None:
    """The value of a part and that of a brace change places on the page."""
    page, (_, (x, y, width, height), _) = pick(rng, _parts(pages))
    within = [r for r in runs_of(page) if x < r.x < x + width and y < r.y < y + height]
    near = [
        r
        for r in runs_of(page)
        if re.fullmatch(r"\d+", r.text)
        and abs(r.y - y) < 80
        and r not in within
        and r.size == (within or [r])[0].size
        and all(r.text != w.text for w in within)
    ]
    if not within or not near:
        two_values_of_a_model_exchanged(pages, rng)
        return
    part, total = within[0], rng.choice(near)
    page[total.index] = total.line(x=part.x, y=part.y)
    page[part.index] = part.line(x=total.x, y=total.y)


@FIGURES.drawn(BARS)
def a_label_of_a_figure_moved(pages: list[Lines], rng: random.Random) -> None:
    page, (_, (_, y, _, height), _) = pick(rng, _parts(pages))
    beside = [r for r in runs_of(page) if y - 4 < r.y < y + height and len(r.text) > 2]
    if not beside:
        a_label_of_a_figure_moved(pages, rng)
        return
    run = rng.choice(beside)
    page[run.index] = run.line(y=run.y + rng.choice([-1, 1]) * rng.uniform(45, 70))


@FIGURES.drawn(BARS)
def a_label_of_a_figure_changed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^(Gulls|Terns|gulls|terns|\?)$")
    page[run.index] = run.line(text="kites")
