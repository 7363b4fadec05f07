"""Which room to answer each question of a sheet is promised."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedProblem,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    problems_of,
)
from typeset.documents.layout import Layout
from typeset.reading.content import Space

# An open task gets ruled lines, and three at least.
_EXTENSION_LINES = 3


@dataclass(frozen=True, slots=True)
class Promise:
    """The room for a question: its kind, and how high it is at least, in millimetres.

    `rows` counts ruled lines or rows of squares. `sorts` is true where boxes are ticked and a
    reason is given instead; `begun` where a sentence to finish stands before the room.
    """

    about: str
    space: Space
    rows: int
    least_mm: float
    sorts: bool = False
    begun: bool = False


def promised_rooms(lesson: SolvedLesson, layout: Layout) -> Iterator[Promise]:
    """The rooms of a lesson's questions, in order."""
    for stage in lesson.stages:
        if isinstance(stage, SolvedExtension):
            space = stage.content.space or Space.LINES
            wanted = Space.LINES if space in (Space.LINE, Space.BOX) else space
            lines = stage.content.lines or _EXTENSION_LINES
            yield _promise(stage.number, wanted, lines, layout)
            continue
        for problem in problems_of(stage):
            yield _of_problem(problem, stage, layout)


def _of_problem(problem: SolvedProblem, stage: SolvedStage, layout: Layout) -> Promise:
    about = f"question {problem.number}"
    if isinstance(stage, SolvedSort):
        return Promise(about, Space.LINE, 0, layout.answer_spaces.line_mm, sorts=True)
    usual = Space.LINE if isinstance(stage, SolvedRecap) else Space.WORKING
    space = problem.content.space or usual
    if isinstance(stage, SolvedSpot) and space is Space.LINE:
        return Promise(about, space, 0, layout.answer_spaces.line_mm)
    promise = _promise(problem.number, space, problem.content.lines, layout)
    if space is Space.WORKING and problem.content.starter is not None:
        # The sentence that is begun takes one of the lines.
        least = promise.least_mm - layout.answer_spaces.ruled_mm
        least_mm = max(least, layout.answer_spaces.ruled_mm)
        return replace(promise, least_mm=least_mm, begun=True)
    return promise


def _promise(number: int, space: Space, lines: int | None, layout: Layout) -> Promise:
    about = f"question {number}"
    spaces = layout.answer_spaces
    rows = spaces.least_lines(lines, layout.page.height_mm)
    match space:
        case Space.LINE:
            return Promise(about, space, 0, spaces.line_mm)
        case Space.SQUARES:
            return Promise(about, space, rows, rows * spaces.square_mm)
        case Space.MODEL if lines is None:
            return Promise(about, space, 0, spaces.bar_model_mm)
        case Space.WORKING | Space.LINES | Space.MODEL:
            return Promise(about, space, rows, rows * spaces.ruled_mm)
        case _:
            return Promise(about, space, 0, 0.0)
