"""The laws of a task sheet, asked of its finished pages as data, before any PDF exists.

`broken_laws` gives a sentence for each law that a page breaks. Where things may stand and how
much room they get is worked out here anew from the layout, not asked of the composer.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tests.documents.line_laws import line_laws
from tests.documents.page_boxes import (
    HAIR_PT,
    Box,
    Sheet,
    area_of,
    box_of,
    named,
    reach_of,
)
from tests.documents.room_laws import room_laws
from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, problems_of
from typeset.drawing.fonts import measures
from typeset.drawing.shapes import PT_PER_MM, Rect, TextRun
from typeset.setting.frames import Page, Placed, Role

# Half of a line's thickness may lie outside the box of what it belongs to.
_THICK_PT = 1.6
# Letters are a little lower than their boxes, and may reach into each other (kerning).
_INK_PT = 0.6
# What a teacher sees as full (issue 4).
_FULL, _LAST_FULL = 0.92, 0.85
_FOOT_GAP_MM = 5.0


def broken_laws(sheet: Sheet) -> list[str]:
    """Every law that the sheet breaks, with the page and what breaks it."""
    found = [*_sides(sheet), *_sizes(sheet), *_wholeness(sheet), *room_laws(sheet)]
    for number, page in enumerate(sheet.pages.pages, 1):
        laws = (_edges, _items_apart, _inside_their_boxes, _letters_apart, line_laws)
        found += [f"page {number}: {told}" for law in laws for told in law(sheet, page)]
        found += [f"page {number}: {told}" for told in _last_thing(page)]
    return [*found, *_fullness(sheet)]


def _edges(sheet: Sheet, page: Page) -> Iterator[str]:
    """Nothing outside the margins."""
    area = area_of(sheet.layout)
    for item in page.placed:
        if not area.holds(box_of(item), HAIR_PT):
            yield f"{named(item)} stands in the margin"
        for shape in item.shapes:
            if not area.holds(reach_of(shape), _THICK_PT):
                yield f"{named(item)} draws {shape} in the margin"


def _items_apart(_sheet: Sheet, page: Page) -> Iterator[str]:
    """No two items overlap, except a frame and what it holds."""
    boxes = [(item, box_of(item)) for item in page.placed]
    for index, (one, box) in enumerate(boxes):
        for other, lower in boxes[index + 1 :]:
            if box.overlaps(lower) and not (_is_frame(one) and box.holds(lower, HAIR_PT)):
                yield f"{named(one)} overlaps {named(other)}"


def _is_frame(item: Placed) -> bool:
    return (
        item.role is Role.FURNITURE and len(item.shapes) == 1 and isinstance(item.shapes[0], Rect)
    )


def _inside_their_boxes(_sheet: Sheet, page: Page) -> Iterator[str]:
    """What an item draws stands in the item's box: else the boxes would prove nothing."""
    for item in page.placed:
        for shape in item.shapes:
            if not box_of(item).holds(reach_of(shape), _THICK_PT):
                yield f"{named(item)} draws {shape} outside its box"


def _letters_apart(_sheet: Sheet, page: Page) -> Iterator[str]:
    """No letters over letters, within an item either."""
    for item in page.placed:
        runs = [(shape, _ink(shape)) for shape in item.shapes if isinstance(shape, TextRun)]
        for index, (one, box) in enumerate(runs):
            for other, lower in runs[index + 1 :]:
                if box.overlaps(lower, _INK_PT):
                    yield f"{named(item)} prints '{one.text}' over '{other.text}'"


def _ink(run: TextRun) -> Box:
    """From the top of a figure to the foot of a letter with a tail: less than the line's height."""
    box, measured = reach_of(run), measures()
    top = run.y_pt - measured.figure_height * run.size_pt
    tail = run.y_pt + (measured.descent * run.size_pt if set(run.text) & set("gjpqy,;") else 0.0)
    return replace(box, top=top, bottom=tail)


def _sides(sheet: Sheet) -> Iterator[str]:
    """Exactly the sides that were asked for, all of one paper."""
    pages, page = sheet.pages.pages, sheet.layout.page
    if sheet.sides is not None and len(pages) != sheet.sides:
        yield f"{len(pages)} sides, not {sheet.sides}"
    for each in pages:
        size = (each.width_pt / PT_PER_MM, each.height_pt / PT_PER_MM)
        if max(abs(size[0] - page.width_mm), abs(size[1] - page.height_mm)) > 0.01:
            yield f"a page of {size}, not {page}"


def _sizes(sheet: Sheet) -> Iterator[str]:
    """Type within the layout's range, and of one size in all stories."""
    size, range_ = sheet.pages.type_size_pt, sheet.layout.type_size
    if not range_.smallest - 1e-6 <= size <= range_.largest + 1e-6:
        yield f"type of {size} pt"
    for page in sheet.pages.pages:
        for item in page.placed:
            own = [shape.size_pt for shape in item.shapes if isinstance(shape, TextRun)]
            if item.role in (Role.QUESTION, Role.INSTRUCTION) and own and max(own) != size:
                yield f"{named(item)} is set in {max(own)} pt, not {size}"
            # The numbers of a fraction, and labels where a figure is full, are 0.8 as large.
            if own and min(own) < 0.79 * range_.smallest:
                yield f"{named(item)} has letters of {min(own)} pt"


def _wholeness(sheet: Sheet) -> Iterator[str]:
    """Every question on one page, in order, and none left out."""
    seen: dict[str, set[int]] = {}
    order: list[str] = []
    for number, page in enumerate(sheet.pages.pages, 1):
        for item in page.placed:
            if item.source:
                seen.setdefault(item.source, set()).add(number)
                if item.source not in order:
                    order.append(item.source)
                elif order[-1] != item.source:
                    yield f"{item.source} goes on after {order[-1]}"
    for source, pages in seen.items():
        if len(pages) > 1:
            yield f"{source} is split over pages {sorted(pages)}"
    asked = list(_asked(sheet.lesson))
    if order != asked:
        yield f"the questions are {order}, not {asked}"


def _last_thing(page: Page) -> Iterator[str]:
    """No heading, and no instruction, is the last thing on its page."""
    told = [item for item in page.placed if item.role is not Role.FURNITURE]
    if not told:
        yield "nothing stands on it"
    elif told[-1].role in (Role.HEADING, Role.INSTRUCTION, Role.TITLE):
        yield f"{named(told[-1])} is the last thing"


def _fullness(sheet: Sheet) -> Iterator[str]:
    """How full each side is, measured anew; a side that is not full is told of."""
    pages, area = sheet.pages.pages, area_of(sheet.layout)
    for index, page in enumerate(pages):
        feet = [item.y_pt for item in page.placed[-2:]]
        room = min(feet) - _FOOT_GAP_MM * PT_PER_MM - area.top
        lowest = max(item.y_pt + item.height_pt for item in page.placed[:-2])
        fill = (lowest - area.top) / room
        if abs(fill - sheet.pages.fills[index]) > 0.002:
            yield f"side {index + 1} is {fill:.3f} full, not {sheet.pages.fills[index]:.3f}"
        enough = _LAST_FULL if index == len(pages) - 1 else _FULL
        told = any(f"side {index + 1} " in note for note in sheet.pages.notes)
        if fill < enough - 0.001 and not told:
            yield f"side {index + 1} is {fill:.3f} full, and nothing says why"
        if fill > 1 + 1e-3:
            yield f"side {index + 1} is {fill:.3f} full"


def _asked(lesson: SolvedLesson) -> Iterator[str]:
    """The ids of all questions in the order of the lesson."""
    for stage in lesson.stages:
        if isinstance(stage, SolvedExtension):
            yield stage.content.id
        else:
            yield from (problem.content.id for problem in problems_of(stage))
