"""The guard: a broken strategy, relation or equation never gets past it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

import pytest

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.equations import equation, plus
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.families.ratio import Ratio, RatioFields
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import solve
from typeset.arithmetic.workings import Step, Working, step
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import number
from typeset.quantities.inline import plain

FIELDS = {
    "parts": {"gulls": "5", "terns": "2"},
    "known": {"difference": "36"},
    "find": "gulls",
}


def ratio_problem(family: Ratio, **changes: Any) -> Problem[RatioFields]:
    return family.build(family.fields_model.model_validate({**FIELDS, **changes}))


class WrongStrategy(Ratio):
    """Gives one too many."""

    def strategies(self, problem: Problem[RatioFields]) -> Iterator[Working]:
        for working in super().strategies(problem):
            answers = {
                name: problem.answer(name, value.value + 1)  # type: ignore[union-attr]
                for name, value in working.answers.items()
            }
            yield replace(working, answers=answers)


class WrongRelation(Ratio):
    """Takes the difference for the whole."""

    def relation(self, problem: Problem[RatioFields]) -> Mapping[str, AnswerValue]:
        return {name: problem.answer(name, 180) for name in problem.finds}


class UntrueStep(Ratio):
    """Reaches the right answer by a step that is wrong."""

    def strategies(self, problem: Problem[RatioFields]) -> Iterator[Working]:
        for working in super().strategies(problem):
            untrue = step("Add.", equation(plus(number(2), number(2)), number(5)))
            yield replace(working, steps=(*working.steps, untrue))


class ForgetfulStrategy(Ratio):
    """Answers another question."""

    def strategies(self, problem: Problem[RatioFields]) -> Iterator[Working]:
        for working in super().strategies(problem):
            yield replace(working, answers={})


class NoStrategy(Ratio):
    """Knows no way."""

    def strategies(self, problem: Problem[RatioFields]) -> Iterator[Working]:
        yield from ()


@pytest.mark.parametrize(
    ("broken", "message"),
    [
        (WrongStrategy(), "reaches 61 for 'gulls', but the relation gives 60"),
        (WrongRelation(), "but the relation gives 180"),
        (UntrueStep(), "untrue equation 2 \\+ 2 = 5"),
        (ForgetfulStrategy(), "reaches nothing for 'gulls'"),
        (NoStrategy(), "no strategy solves this problem"),
    ],
)
def test_a_planted_fault_stops_the_build(broken: Ratio, message: str) -> None:
    with pytest.raises(SolvingError, match=message):
        solve(broken, ratio_problem(broken))


def test_workings_come_easiest_first_and_each_name_once() -> None:
    solution = solve(FAMILIES["ratio"], ratio_problem(Ratio()))
    scores = [demand_of(working) for working in solution.workings]
    assert scores == sorted(scores)
    assert solution.demand == scores[0]
    names = [working.strategy for working in solution.workings]
    assert len(names) == len(set(names)) >= 2


def test_a_mistake_that_numbers_hide_is_refused_with_its_reason() -> None:
    solution = solve(Ratio(), ratio_problem(Ratio()))
    refused = {each.misconception: each.why for each in solution.refused}
    assert refused["difference taken as the whole"] == (
        "it would give 25 5/7 gulls, which is not a whole number of gulls"
    )
    usable = {each.misconception for each in solution.mistakes}
    assert usable.isdisjoint(refused)


def test_a_mistake_that_gives_the_right_answer_is_refused() -> None:
    solution = solve(Ratio(), ratio_problem(Ratio(), parts={"gulls": "3", "terns": "2"}))
    refused = {each.misconception: each.why for each in solution.refused}
    assert refused["difference taken as one part"] == "it would give the right answer"


def test_an_answer_that_makes_no_sense_is_the_authors_to_mend() -> None:
    odd = ratio_problem(Ratio(), known={"difference": "35"})
    with pytest.raises(AmountError, match="not a whole number of gulls"):
        solve(Ratio(), odd)
    cut = ratio_problem(Ratio(), known={"difference": "35"}, **{"may be cut": "yes"})
    assert solve(Ratio(), cut).answers["gulls"] == number("175/3").__class__(
        number("175/3").value, cut.units["gulls"]
    )


def test_every_sentence_is_whole() -> None:
    solution = solve(Ratio(), ratio_problem(Ratio()))
    steps: list[Step] = [each for working in solution.workings for each in working.steps]
    for each in steps:
        text = plain(each.sentence)
        assert text[0].isupper() and text.endswith((".", "?")) and "{" not in text
