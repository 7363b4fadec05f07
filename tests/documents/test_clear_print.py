"""Our layouts against published figures of paper, clear print and lettering.

Each figure is beside its source (sources.md, section 4) and how sure we are of it: read, read in
part, or from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from statistics import mean

import pytest

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.composer import HEADING_SCALE
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout, layout_names
from typeset.documents.paper import paper_named, paper_names
from typeset.documents.task_sheet import compose_task_sheet
from typeset.drawing.shapes import PT_PER_MM, Rect, Rule, Shape, TextRun
from typeset.drawing.shapes import Path as Curve
from typeset.reading.week import read_week
from typeset.setting.frames import Page, Role

WEEK = Path(__file__).parents[2] / "content" / "harbour-festival"

# ISO 216, by an encyclopedia's table; read in part. B6 from memory.
ISO_216_MM = {
    "A0": (841, 1189),
    "A1": (594, 841),
    "A2": (420, 594),
    "A3": (297, 420),
    "A4": (210, 297),
    "A5": (148, 210),
    "A6": (105, 148),
    "B3": (353, 500),
    "B4": (250, 353),
    "B5": (176, 250),
    "B6": (125, 176),
}
# UK Association for Accessible Formats, MS03 (2012) and G003 (2019); read.
CLEAR_PRINT_PT, IDEAL_PT = 12.0, 14.0
LARGE_PRINT_PT, IDEAL_LARGE_PT = 16.0, 18.0
# RNIB clear print guidelines, an appendix reprinted; read in part. The British Dyslexia
# Association's guide (2018, 2023) says the same; from memory.
CHARACTERS_A_LINE = (60, 70)
# British Dyslexia Association, 2018 and 2023; from memory.
LINE_SPACING, HEADINGS_LARGER = 1.5, 1.2
# Beside the strokes of ISO 3098's lettering (0.25 mm for a height of 2.5 mm; read in part): our
# own choice of what a photocopier keeps.
LEAST_RULE_MM = 0.25


def layout(name: str) -> Layout:
    return find_layout(name, Path("nowhere"))


@cache
def solved() -> SolvedWeek:
    return solve_week(read_week(WEEK))


@cache
def pages_in(name: str) -> tuple[Page, ...]:
    """Every page of the demonstration week's sheets."""
    made = (compose_task_sheet(solved(), each, layout(name))[1] for each in solved().lessons)
    return tuple(page for sheet in made for page in sheet.pages)


@pytest.mark.parametrize("name", [name for name in ISO_216_MM if name in paper_names()])
def test_paper_is_as_large_as_iso_216_says(name: str) -> None:
    paper = paper_named(name)
    assert (paper.width_mm, paper.height_mm) == ISO_216_MM[name]


def test_the_papers_of_lessons_are_among_those_of_the_table() -> None:
    assert {"A3", "A4", "A5", "A6", "B4", "B5", "B6"} <= ISO_216_MM.keys() & set(paper_names())


@pytest.mark.parametrize("name", layout_names())
def test_pupils_type_is_clear_print_at_least(name: str) -> None:
    assert layout(name).type_size.smallest >= CLEAR_PRINT_PT


def test_the_standard_layout_reaches_the_ideal_of_clear_print() -> None:
    assert layout("standard").type_size.largest == IDEAL_PT


@pytest.mark.parametrize("name", [name for name in layout_names() if name.startswith("large")])
def test_large_print_is_large_and_ideally_18_pt(name: str) -> None:
    sizes = layout(name).type_size
    assert sizes.smallest >= LARGE_PRINT_PT
    assert sizes.largest >= IDEAL_LARGE_PT


@pytest.mark.parametrize("name", ["standard", "low-glare"])
def test_lines_are_one_and_a_half_apart(name: str) -> None:
    assert layout(name).leading >= LINE_SPACING


def test_headings_are_a_fifth_larger() -> None:
    assert pytest.approx(HEADINGS_LARGER) == HEADING_SCALE


@pytest.mark.parametrize("name", ["standard", "low-glare"])
def test_a_line_has_60_to_70_characters(name: str) -> None:
    """On an average over the full lines of the demonstration week; none has many more."""
    counts = [count for page in pages_in(name) for count in full_lines(page)]
    assert len(counts) > 80
    low, high = CHARACTERS_A_LINE
    assert low <= mean(counts) <= high
    # A line of narrow letters ('till', 'little') holds more of them.
    assert max(counts) <= 1.15 * high


def full_lines(page: Page) -> Iterator[int]:
    """How many characters the lines of stories and instructions have, but for last lines."""
    for item in page.placed:
        if item.role not in (Role.QUESTION, Role.INSTRUCTION):
            continue
        lines: dict[float, str] = {}
        for shape in item.shapes:
            if isinstance(shape, TextRun):
                y = round(shape.y_pt, 2)
                lines[y] = lines.get(y, "") + shape.text
        *full, _last = (lines[y].strip() for y in sorted(lines))
        # The numbers of a fraction stand on levels of their own.
        yield from (len(line) for line in full if " " in line)


@pytest.mark.parametrize("name", layout_names())
def test_no_rule_is_finer_than_a_photocopier_keeps(name: str) -> None:
    thicknesses = [
        thickness
        for page in pages_in(name)
        for item in page.placed
        for shape in item.shapes
        if (thickness := drawn_thickness_pt(shape)) is not None
    ]
    assert len(thicknesses) > 100
    assert min(thicknesses) >= LEAST_RULE_MM * PT_PER_MM - 1e-9


def drawn_thickness_pt(shape: Shape) -> float | None:
    """None for letters, and for what is only filled."""
    match shape:
        case Rule():
            return shape.thickness_pt
        case Rect() | Curve() if shape.thickness_pt > 0:
            return shape.thickness_pt
        case _:
            return None
