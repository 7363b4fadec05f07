"""Faults in how the pages look: places, sizes, rooms to answer in, figures."""

from __future__ import annotations

import random
import re
from itertools import pairwise

from tests.proofing.faults import BOOKLET, TUESDAY, WEDNESDAY, fault, retype, text_run
from tests.proofing.planting import Lines, pick, rects_of, rules_of, runs_of


@fault(WEDNESDAY, "margin")
def text_beyond_a_margin(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+ \w+ \w+ \w+")
    page[run.index] = run.line(x=run.x + rng.choice([-40, 300]))


@fault(WEDNESDAY, "margin")
def a_rule_beyond_the_margin(pages: list[Lines], rng: random.Random) -> None:
    page = pages[rng.randrange(2)]
    index, (x1, y1, x2, y2) = pick(rng, [r for r in rules_of(page) if r[1][2] > 500])
    page[index] = f"n {x1} {y1} m {x2 + 60} {y2} l S"


@fault(TUESDAY, "overlap")
def lines_over_each_other(pages: list[Lines], rng: random.Random) -> None:
    runs = runs_of(pages[0])
    pairs = [(a, b) for a, b in pairwise(runs) if 10 < a.y - b.y < 20]
    _above, below = pick(rng, pairs)
    pages[0][below.index] = below.line(y=below.y + 10)


@fault(TUESDAY, "overlap")
def a_line_through_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page.append(f"n {run.x} {run.y + 3} m {run.x + 100} {run.y + 3} l S")


@fault(TUESDAY, "overlap")
def a_box_over_text(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page.append(f"1 g\nn {run.x} {run.y - 3} 90 16 re f")


@fault(TUESDAY, "overlap")
def letters_squeezed(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = f"-3 Tc\n{run.line()}\n0 Tc"


@fault(TUESDAY, "font")
def letters_made_narrow(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = f"70 Tz\n{run.line()}\n100 Tz"


@fault(TUESDAY, "size")
def type_made_smaller(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    page[run.index] = run.line(size=run.size * 0.7)


@fault(TUESDAY, "colour")
def text_made_pale(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w+ \w+ \w+")
    # #777777 on white is 4.478 : 1, just too little (sources.md section 4).
    page[run.index] = f"{0x77 / 255:.4f} g\n{run.line()}\n0 g"


@fault(TUESDAY, "font")
def text_turned(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^\w+$")
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
    retype(page, run, run.text[:-1] + "3")


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
    page, run = text_run(pages, rng, r"^Answer: ")
    del page[run.index : run.index + 2]


@fault(BOOKLET, "wording", "number", "order")
def a_working_of_the_booklet_lost(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r" = \d")
    del page[run.index]
