"""A week in its versions: the same questions under the same numbers, easier or harder."""

from __future__ import annotations

import re
from dataclasses import dataclass

from typeset.arithmetic.answers import same_answer
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.lessons import SolvedLesson, SolvedProblem, SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.layout import Layout
from typeset.documents.wording import phrase
from typeset.quantities.inline import Rich, join
from typeset.quantities.writing import write

_NAME = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True, slots=True)
class Versions:
    """The week as its author typed it (the core), and its other versions, easiest first."""

    core: SolvedWeek
    others: tuple[SolvedWeek, ...] = ()

    @property
    def all(self) -> tuple[SolvedWeek, ...]:
        """Every version, easiest first."""
        order = list(Version)
        return tuple(sorted((self.core, *self.others), key=lambda week: order.index(week.version)))

    def elsewhere(
        self, lesson: SolvedLesson, problem: SolvedProblem
    ) -> tuple[tuple[Version, SolvedProblem], ...]:
        """The same question in the other versions, where its answers differ."""
        twins = ((week.version, _twin(week, lesson, problem)) for week in self.others)
        return tuple((version, twin) for version, twin in twins if twin and _differs(problem, twin))


def _twin(week: SolvedWeek, lesson: SolvedLesson, problem: SolvedProblem) -> SolvedProblem | None:
    own = next(each for each in week.lessons if each.lesson.name == lesson.lesson.name)
    return next((each for each in own.problems() if each.number == problem.number), None)


def _differs(one: SolvedProblem, other: SolvedProblem) -> bool:
    mine, theirs = one.solution.answers, other.solution.answers
    return any(not same_answer(mine[name], theirs[name]) for name in mine)


def version_mark(layout: Layout, solved: SolvedWeek) -> str:
    """What a sheet is called that has sisters; empty where the week has one version alone."""
    if solved.version is Version.CORE and len(solved.week.versions) == 1:
        return ""
    return phrase(layout.wording, "versions", solved.version.value)


def numbers_of(problem: SolvedProblem) -> Rich:
    """The amounts of the story in the order in which it tells them."""
    solved, content = problem.solution.problem, problem.content
    quotes = FAMILIES[content.structure].quotes(solved)
    told: list[Rich] = []
    for braced in _NAME.findall(content.story.template):
        name = " ".join(braced.split())
        if name in quotes:
            told.append(quotes[name].text)
        elif name in solved.givens:
            told.append((write(solved.givens[name]),))
    return join(told, ", ")
