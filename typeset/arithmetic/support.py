"""What a support version gives besides easier numbers: models begun and sentences begun."""

from __future__ import annotations

from dataclasses import replace

from typeset.arithmetic.counters import counters_for
from typeset.arithmetic.figures import BarModel
from typeset.arithmetic.lessons import (
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedSet,
    SolvedStage,
)
from typeset.reading.content import LAYOUTS_STARTER, Space

_TO_WORK_IN = (None, Space.WORKING, Space.MODEL)


def supported(lesson: SolvedLesson) -> SolvedLesson:
    """The lesson with help where pupils work alone: in the practise sets.

    A few things in equal groups are drawn as counters in rings. Another problem with a bar model
    has its first step drawn in the frame; the rest begin the pupil's first sentence. What the
    author asks for otherwise stays as it is.
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
    counters = counters_for(problem.solution.problem, problem.solution.answers)
    if counters is not None:
        drawn = replace(problem.solution, figure=counters)
        return replace(problem, content=replace(content, show_model=True), solution=drawn)
    if isinstance(problem.solution.figure, BarModel):
        helped = replace(content, space=Space.MODEL, show_model=True)
    elif content.space is Space.MODEL or content.starter is not None:
        return problem
    else:
        helped = replace(content, starter=LAYOUTS_STARTER)
    return replace(problem, content=helped)
