"""The laws of room to answer in: never less than the layout's least, nor than was asked for."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from tests.documents.page_boxes import Sheet
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
)
from typeset.documents.layout import Layout
from typeset.drawing.shapes import PT_PER_MM
from typeset.reading.content import Space
from typeset.setting.frames import Role


def room_laws(sheet: Sheet) -> Iterator[str]:
    """Room to answer in: at least the layout's least, for everything that asks for room."""
    rooms: dict[str, float] = {}
    for page in sheet.pages.pages:
        for item in page.placed:
            if item.role is Role.ANSWER_SPACE and item.source:
                rooms[item.source] = rooms.get(item.source, 0.0) + item.height_pt / PT_PER_MM
    for source, least in _least_rooms(sheet.lesson, sheet.layout):
        if rooms.get(source, 0.0) < least - 0.01:
            yield f"{source} has {rooms.get(source, 0.0):.1f} mm of room, not {least:.1f}"


def _least_rooms(lesson: SolvedLesson, layout: Layout) -> Iterator[tuple[str, float]]:
    """The least height of what each question's answer is written in, in mm."""
    for stage in lesson.stages:
        match stage:
            case SolvedRecap():
                problems, usual = stage.problems, Space.LINE
            case SolvedPractise():
                problems = tuple(problem for each in stage.sets for problem in each.problems)
                usual = Space.WORKING
            case SolvedSpot():
                problems, usual = (stage.problem,), Space.WORKING
            case SolvedSort():
                yield from (
                    (each.content.id, layout.answer_spaces.line_mm) for each in stage.problems
                )
                continue
            case SolvedExtension():
                space = stage.content.space or Space.LINES
                # An open task is answered in sentences where no other room is asked for.
                space = Space.LINES if space in (Space.LINE, Space.BOX) else space
                yield stage.content.id, _rows_mm(layout, space, stage.content.lines or 3)
                continue
        for problem in problems:
            yield problem.content.id, _least_mm(problem, usual, layout)


def _least_mm(problem: SolvedProblem, usual: Space, layout: Layout) -> float:
    space = problem.content.space or usual
    if space is Space.NONE:
        return 0.0
    lines = len(problem.solution.answers) * layout.answer_spaces.line_mm
    return lines + _rows_mm(layout, space, problem.content.lines)


def _rows_mm(layout: Layout, space: Space, asked: int | None) -> float:
    spaces = layout.answer_spaces
    if space in (Space.LINE, Space.BOX, Space.NONE):
        return 0.0
    rows = spaces.least_lines(asked, layout.page.height_mm)
    if space is Space.SQUARES:
        return rows * spaces.square_mm
    if space is Space.MODEL and asked is None:
        rows = max(1, ceil(spaces.bar_model_mm / spaces.ruled_mm))
    return rows * spaces.ruled_mm
