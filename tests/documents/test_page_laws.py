"""The laws of pages can fail: each is broken once on a good sheet, and the breach is told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from tests.documents.page_boxes import Sheet
from tests.documents.page_laws import broken_laws
from tests.proofing.making import made_week
from typeset.documents.task_sheet import compose_task_sheet
from typeset.drawing.shapes import TextRun, moved
from typeset.setting.frames import Placed, Role

Items = list[Placed]


@cache
def good() -> Sheet:
    made = made_week()
    lesson = made.lesson("tuesday")
    _, pages = compose_task_sheet(made.solved, lesson, made.layout)
    return Sheet(pages, made.layout, lesson, lesson.lesson.sides)


def changed(change: Callable[[Items], None]) -> Sheet:
    """The sheet with the items of its first page changed."""
    sheet = good()
    first, *others = sheet.pages.pages
    items = list(first.placed)
    change(items)
    pages = (replace(first, placed=tuple(items)), *others)
    return replace(sheet, pages=replace(sheet.pages, pages=pages))


def place_of(items: Items, role: Role, number: int = 0) -> int:
    return [index for index, item in enumerate(items) if item.role is role][number]


def shifted(item: Placed, right_pt: float, down_pt: float) -> Placed:
    shapes = tuple(moved(shape, right_pt, down_pt) for shape in item.shapes)
    return replace(item, x_pt=item.x_pt + right_pt, y_pt=item.y_pt + down_pt, shapes=shapes)


def into_the_margin(items: Items) -> None:
    at = place_of(items, Role.TITLE)
    items[at] = shifted(items[at], -20, 0)


def over_another(items: Items) -> None:
    at = place_of(items, Role.QUESTION, 1)
    items[at] = shifted(items[at], 0, -30)


def out_of_its_box(items: Items) -> None:
    at = place_of(items, Role.QUESTION, 1)
    items[at] = replace(items[at], shapes=tuple(moved(s, 0, 9) for s in items[at].shapes))


def letters_over_letters(items: Items) -> None:
    at = place_of(items, Role.QUESTION, 1)
    first = items[at].shapes[0]
    items[at] = replace(items[at], shapes=(*items[at].shapes, moved(first, 3, 0)))


def without_a_question(items: Items) -> None:
    source = items[place_of(items, Role.QUESTION)].source
    items[:] = [item for item in items if item.source != source]


def split_question(items: Items) -> None:
    later = good().pages.pages[1]
    at = next(index for index, item in enumerate(items) if item.source)
    other = next(item for item in later.placed if item.source)
    items[at] = replace(items[at], source=other.source)


def heading_last(items: Items) -> None:
    at = place_of(items, Role.HEADING, -1)
    items[:] = [*items[: at + 1], *items[-2:]]


def small_type(items: Items) -> None:
    at = place_of(items, Role.QUESTION, 1)
    shapes = tuple(
        replace(shape, size_pt=shape.size_pt - 1) if isinstance(shape, TextRun) else shape
        for shape in items[at].shapes
    )
    items[at] = replace(items[at], shapes=shapes)


def little_room(items: Items) -> None:
    at = next(i for i, item in enumerate(items) if item.role is Role.ANSWER_SPACE and item.source)
    items[at] = replace(items[at], height_pt=12.0)


def short_page(items: Items) -> None:
    del items[len(items) // 2 : -2]


def line_too_wide(items: Items) -> None:
    at = place_of(items, Role.QUESTION, 1)
    items[at] = replace(items[at], width_pt=items[at].width_pt + 200)


def bad_ending(items: Items) -> None:
    """The instruction broken by hand after 'a', which could have stood on the next line."""
    at = place_of(items, Role.INSTRUCTION)
    item = items[at]
    first = next(shape for shape in item.shapes if isinstance(shape, TextRun))
    lines = ("On the wall sat a", "gull.")
    shapes = tuple(
        replace(first, text=text, y_pt=first.y_pt + 18 * index) for index, text in enumerate(lines)
    )
    items[at] = replace(item, reads_as=" ".join(lines), shapes=shapes)


BREACHES = [
    (into_the_margin, "stands in the margin"),
    (over_another, "overlaps"),
    (out_of_its_box, "outside its box"),
    (letters_over_letters, "over '"),
    (without_a_question, "the questions are"),
    (split_question, "is split over pages [1, 2]"),
    (heading_last, "is the last thing"),
    (small_type, "is set in"),
    (little_room, "mm of room, not"),
    (short_page, "full, not"),
    (line_too_wide, "pt wide, its measure"),
    (bad_ending, "has 1 bad line endings, not 0"),
]


def test_the_good_sheet_keeps_every_law() -> None:
    assert broken_laws(good()) == []


@pytest.mark.parametrize(
    ("breach", "told"), BREACHES, ids=lambda each: getattr(each, "__name__", "")
)
def test_a_breach_is_told(breach: Callable[[Items], None], told: str) -> None:
    assert told in "\n".join(broken_laws(changed(breach)))


def test_other_sides_than_asked_are_told() -> None:
    assert "2 sides, not 3" in broken_laws(replace(good(), sides=3))


def test_a_side_that_is_not_full_must_be_told_of() -> None:
    """Where it is and nothing says so, the law is broken; where a note says so, it is kept."""
    sheet = changed(short_page)
    fill = next(told for told in broken_laws(sheet) if "full, not" in told).split()[3]
    fills = (float(fill), *sheet.pages.fills[1:])
    short = replace(sheet, pages=replace(sheet.pages, fills=fills))
    assert any("nothing says why" in told for told in broken_laws(short))
    noted = replace(short, pages=replace(short.pages, notes=("side 1 is not full: it is so",)))
    assert not any("nothing says why" in told for told in broken_laws(noted))
