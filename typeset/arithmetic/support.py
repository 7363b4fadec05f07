"""What a support version gives besides easier numbers: models begun and sentences begun."""

from __future__ import annotations

from dataclasses import replace

from typeset.arithmetic.clock_faces import clocks_for
from typeset.arithmetic.counters import counters_for
from typeset.arithmetic.figures import Angles, BarModel, Figure, Outline
from typeset.arithmetic.lessons import (
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedSet,
    SolvedStage,
)
from typeset.arithmetic.solving import Solution
from typeset.reading.content import LAYOUTS_STARTER, Space

# Figures that show what the story describes.
_SEEN_SHAPES = (Outline, Angles)
_TO_WORK_IN = (None, Space.WORKING, Space.MODEL)


def supported(lesson: SolvedLesson) -> SolvedLesson:
    """The lesson with help where pupils work alone: in the practise sets.

    A few things in equal groups are drawn as counters in rings, times of day as clock faces.
    Another problem with a bar model has its first step drawn in the frame, a shape is shown; the
    rest begin the pupil's first sentence. What the author asks for otherwise stays as it is.
    """
    return replace(lesson, stages=tuple(_stage(stage) for stage in lesson.stages))


def _stage(stage: SolvedStage) -> SolvedStage:
    if not isinstance(stage, SolvedPractise):
        return stage
    return SolvedPractise(tuple(_set(each) for each in stage.sets))


def _set(each: SolvedSet) -> SolvedSet:
    return replace(each, problems=tuple(_problem(problem) for problem in each.problems))


def _problem(problem: SolvedProblem) -> SolvedProblem:
    content = problem.content
    if content.space not in _TO_WORK_IN:
        return problem
    picture = _picture(problem.solution)
    if picture is not None:
        drawn = replace(problem.solution, figure=picture)
        return replace(problem, content=replace(content, show_model=True), solution=drawn)
    if isinstance(problem.solution.figure, BarModel):
        helped = replace(content, space=Space.MODEL, show_model=True)
    elif isinstance(problem.solution.figure, _SEEN_SHAPES) and content.space is not Space.MODEL:
        helped = replace(content, show_model=True)
    elif content.space is Space.MODEL or content.starter is not None:
        return problem
    else:
        helped = replace(content, starter=LAYOUTS_STARTER)
    return replace(problem, content=helped)


def _picture(solution: Solution) -> Figure | None:
    """What shows the things themselves: counters, or clocks."""
    problem, answers = solution.problem, solution.answers
    return counters_for(problem, answers) or clocks_for(problem, answers)
