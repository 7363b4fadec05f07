"""Solves a problem twice and says everything about it, or refuses.

The relation and every strategy must reach the same answer, and every equation that may be
printed is evaluated again. Disagreement is a fault of ours, and stops the build.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice
from typing import Any

from typeset.arithmetic.answers import AnswerValue, answer_exact, same_answer
from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.family import AnyFamily
from typeset.arithmetic.figures import Figure
from typeset.arithmetic.kinds import Kind
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.reaching import reaches
from typeset.arithmetic.reasons import kind_of
from typeset.arithmetic.rounding import rounded_answers, rounded_mistakes, rounded_working
from typeset.arithmetic.rounding_mistakes import rounding_mistakes
from typeset.arithmetic.sense import check_answers, why_not_usable
from typeset.arithmetic.several_units import SeveralUnits
from typeset.arithmetic.workings import MistakenWorking, Step, Working
from typeset.errors import SolvingError


@dataclass(frozen=True, slots=True)
class Refused:
    """A mistake that these numbers do not show, and why."""

    misconception: str
    why: str


@dataclass(frozen=True, slots=True)
class Solution:
    """All that is known of a problem. `workings` are in order of demand, easiest first."""

    problem: Problem[Any]
    answers: Mapping[str, AnswerValue]
    workings: tuple[Working, ...]
    mistakes: tuple[MistakenWorking, ...]
    refused: tuple[Refused, ...]
    kind: Kind
    demand: Fraction
    figure: Figure | None


def solve(
    family: AnyFamily,
    problem: Problem[Any],
    related: Mapping[str, AnswerValue] | None = None,
    ways: Iterable[Working] | None = None,
) -> Solution:
    """The solution of the problem.

    Who has asked the family for its relation and its strategies already may give them here.
    Raises AmountError where the numbers have no answer or one that makes no sense,
    SolvingError where two ways of solving disagree or an equation is untrue.
    """
    proven = _proven(
        family,
        problem,
        family.relation(problem) if related is None else related,
        family.strategies(problem) if ways is None else ways,
    )
    rounding = problem.fields.round_to
    wrong: Iterable[MistakenWorking] = family.mistakes(problem)
    if rounding is not None:
        wrong = [*rounded_mistakes(wrong, rounding), *rounding_mistakes(proven.exact, rounding)]
    mistakes, refused = _sifted(proven.several.mistakes(wrong), problem, proven.answers)
    return Solution(
        problem=problem,
        answers=proven.answers,
        workings=proven.workings,
        mistakes=mistakes,
        refused=refused,
        kind=kind_of(family, problem),
        demand=demand_of(proven.workings[0]),
        figure=family.figure(problem, proven.answers),
    )


def solve_answers(family: AnyFamily, problem: Problem[Any]) -> Mapping[str, AnswerValue]:
    """The answers alone, where no working will be printed.

    The relation and the first strategy must still reach the same, by equations that are true.
    Raises AmountError, SolvingError as `solve` does.
    """
    exact = family.relation(problem)
    answers = _rounded(exact, problem)
    check_answers(problem, answers)
    _checked(islice(family.strategies(problem), 1), exact, family.name)
    return SeveralUnits.of(problem).answers(answers)


def _rounded(exact: Mapping[str, AnswerValue], problem: Problem[Any]) -> Mapping[str, AnswerValue]:
    """The answers as they are asked for."""
    rounding = problem.fields.round_to
    return exact if rounding is None else rounded_answers(exact, rounding)


@dataclass(frozen=True, slots=True)
class _Proven:
    """Answers that both ways reach, and the workings that do; `exact` before any rounding."""

    answers: Mapping[str, AnswerValue]
    workings: tuple[Working, ...]
    exact: tuple[Working, ...]
    several: SeveralUnits


def _proven(
    family: AnyFamily,
    problem: Problem[Any],
    exact: Mapping[str, AnswerValue],
    ways: Iterable[Working],
) -> _Proven:
    rounding = problem.fields.round_to
    answers = _rounded(exact, problem)
    check_answers(problem, answers)
    ranked = workings = _ranked(_checked(ways, exact, family.name))
    if rounding is not None:
        workings = tuple(rounded_working(each, rounding) for each in workings)
    several = SeveralUnits.of(problem)
    said = tuple(several.working(each) for each in workings)
    return _Proven(several.answers(answers), said, ranked, several)


def _checked(
    workings: Iterable[Working], answers: Mapping[str, AnswerValue], name: str
) -> list[Working]:
    checked = list(workings)
    if not checked:
        raise SolvingError(f"{name}: no strategy solves this problem")
    for working in checked:
        _check_steps(working.steps, f"{name}, {working.strategy}")
        _check_agreement(working, answers, name)
    return checked


def _check_agreement(working: Working, answers: Mapping[str, AnswerValue], name: str) -> None:
    for asked, answer in answers.items():
        reached = working.answers.get(asked)
        if reached is None or not same_answer(reached, answer):
            found = answer_exact(reached) if reached is not None else "nothing"
            raise SolvingError(
                f"{name}, {working.strategy}: reaches {found} for '{asked}', "
                f"but the relation gives {answer_exact(answer)}"
            )
        if not reaches(working.steps, answer):
            raise SolvingError(
                f"{name}, {working.strategy}: no step comes to {answer_exact(answer)} for '{asked}'"
            )


def _check_steps(steps: Iterable[Step], where: str) -> None:
    for each in steps:
        if each.equation is not None and not each.equation.holds():
            raise SolvingError(f"{where}: untrue equation {each.equation.text()}")


def _ranked(workings: list[Working]) -> tuple[Working, ...]:
    """Easiest first; a strategy's name stands once."""
    ranked: dict[str, Working] = {}
    for working in sorted(workings, key=demand_of):
        ranked.setdefault(working.strategy, working)
    return tuple(ranked.values())


def _sifted(
    mistakes: Iterable[MistakenWorking], problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> tuple[tuple[MistakenWorking, ...], tuple[Refused, ...]]:
    usable: dict[str, MistakenWorking] = {}
    refused: dict[str, Refused] = {}
    for mistake in mistakes:
        name = mistake.misconception
        if not mistake.slip:
            _check_steps(mistake.steps, f"{problem.family}, mistake '{name}'")
        why = why_not_usable(mistake, problem, answers)
        if why:
            refused.setdefault(name, Refused(name, why))
        else:
            usable.setdefault(name, mistake)
    left = tuple(each for name, each in refused.items() if name not in usable)
    return tuple(usable.values()), left
