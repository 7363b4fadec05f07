"""How the tests of the families of time and measures read a problem, and break the core."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from typeset.arithmetic.answers import AnswerValue, answer_text
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.workings import Working
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain

Solve = Callable[..., Solution]
Fields = dict[str, Any]


def only_answer(solution: Solution) -> str:
    """The one answer as it is printed."""
    (value,) = solution.answers.values()
    return plain(answer_text(value))


def wrong(solution: Solution) -> dict[str, str]:
    """The wrong answer of every usable mistake, by its name."""
    return {
        mistake.misconception: plain(answer_text(next(iter(mistake.answers.values()))))
        for mistake in solution.mistakes
    }


def refused(solution: Solution) -> dict[str, str]:
    """Why a mistake is not shown, by its name."""
    return {each.misconception: each.why for each in solution.refused}


def complaint(solved: Solve, structure: str, fields: Fields) -> AmountError:
    """What the author is told about these fields."""
    with pytest.raises(AmountError) as caught:
        solved(structure, fields)
    assert caught.value.remedy
    return caught.value


def _moved(value: AnswerValue) -> AnswerValue:
    return replace(value, value=value.value + 1) if isinstance(value, Amount) else value


def check_guard(
    structure: str, fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Breaks the relation, then each strategy in turn: every time the build has to stop."""
    family = type(FAMILIES[structure])
    count = len(solved(structure, fields).workings)
    assert count >= 2
    sound_relation, sound_strategies = family.relation, family.strategies
    with monkeypatch.context() as patch:
        patch.setattr(
            family,
            "relation",
            lambda self, problem: {
                name: _moved(each) for name, each in sound_relation(self, problem).items()
            },
        )
        with pytest.raises(SolvingError):
            solved(structure, fields)

    def broken(at: int) -> Callable[[Any, Problem[Any]], list[Working]]:
        def strategies(self: Any, problem: Problem[Any]) -> list[Working]:
            ways = list(sound_strategies(self, problem))
            answers = {name: _moved(each) for name, each in ways[at].answers.items()}
            return [*ways[:at], replace(ways[at], answers=answers), *ways[at + 1 :]]

        return strategies

    for at in range(count):
        with monkeypatch.context() as patch:
            patch.setattr(family, "strategies", broken(at))
            with pytest.raises(SolvingError):
                solved(structure, fields)
