"""Lessons solved: the same stages as the content's, with answers, workings and kinds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from typeset.arithmetic.misconceptions import Misconception
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.variation.wishes import Version
from typeset.arithmetic.workings import MistakenWorking
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.reading.content import Extension, Lesson, OwnProblems, ProblemContent, Week


@dataclass(frozen=True, slots=True)
class SolvedProblem:
    """A problem with its number on the sheet, its story as set, and its solution."""

    number: int
    content: ProblemContent
    story: Rich
    hint: Rich | None
    solution: Solution


@dataclass(frozen=True, slots=True)
class SolvedRecap:
    """The look back. `titles` are those of the lessons looked back at."""

    titles: tuple[str, ...]
    problems: tuple[SolvedProblem, ...]


@dataclass(frozen=True, slots=True)
class SolvedSpot:
    """The worked solution with its mistake."""

    problem: SolvedProblem
    pupil: str
    mistake: MistakenWorking
    misconception: Misconception


@dataclass(frozen=True, slots=True)
class SolvedSort:
    """The problems to sort; each one's kind is in its solution."""

    problems: tuple[SolvedProblem, ...]


@dataclass(frozen=True, slots=True)
class SolvedSet:
    """A set of practise problems."""

    name: str
    problems: tuple[SolvedProblem, ...]


@dataclass(frozen=True, slots=True)
class SolvedPractise:
    """The sets of growing demand."""

    sets: tuple[SolvedSet, ...]


@dataclass(frozen=True, slots=True)
class SolvedExtension:
    """The open task, with its texts as set."""

    number: int
    content: Extension
    story: Rich
    hints: tuple[Rich, ...]
    look_for: tuple[Rich, ...]


SolvedStage: TypeAlias = SolvedRecap | SolvedSpot | SolvedSort | SolvedPractise | SolvedExtension


@dataclass(frozen=True, slots=True)
class ToldOwnProblems:
    """What pupils make up problems from, with its story as set. There is nothing to solve yet."""

    content: OwnProblems
    story: Rich
    # By the names that the story has for them.
    amounts: Mapping[str, Amount]


@dataclass(frozen=True, slots=True)
class SolvedLesson:
    """A lesson with every problem solved."""

    lesson: Lesson
    stages: tuple[SolvedStage, ...]
    own: ToldOwnProblems | None = None

    def problems(self) -> tuple[SolvedProblem, ...]:
        """Every problem in the order of the sheet (the open task is none)."""
        return tuple(problem for stage in self.stages for problem in problems_of(stage))


@dataclass(frozen=True, slots=True)
class SolvedWeek:
    """A week with every lesson solved."""

    week: Week
    lessons: tuple[SolvedLesson, ...]
    version: Version = Version.CORE


def problems_of(stage: SolvedStage) -> tuple[SolvedProblem, ...]:
    """The problems of one stage in order."""
    match stage:
        case SolvedRecap(problems=problems) | SolvedSort(problems=problems):
            return problems
        case SolvedSpot(problem=problem):
            return (problem,)
        case SolvedPractise(sets=sets):
            return tuple(problem for each in sets for problem in each.problems)
        case SolvedExtension():
            return ()
