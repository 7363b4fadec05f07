"""Ratios in simplest form: answers, strategies, mistakes and complaints."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from typeset.arithmetic.equations import Equation, Parts
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.amount import number
from typeset.quantities.inline import plain

Solve = Callable[..., Solution]
BIRDS = {"gulls": "12", "terns": "18"}
FROM_WHOLE = {"parts": {"gulls": "12"}, "whole": "30 birds", "find": ["gulls", "terns"]}
ROPES = {"parts": {"rope": "50 cm", "chain": "2 m"}}

SOLVED = [
    ({"parts": BIRDS}, "2 : 3", "multiply or divide"),
    ({"parts": BIRDS, "find": ["terns", "gulls"]}, "3 : 2", "multiply or divide"),
    ({"parts": BIRDS, "find": ["terns", "whole"]}, "3 : 5", "both"),
    (FROM_WHOLE, "2 : 3", "both"),
    (ROPES, "1 : 4", "multiply or divide"),
    ({"parts": {"a": "12", "b": "8", "c": "20"}}, "3 : 2 : 5", "multiply or divide"),
    # Key stage 2, 2017 paper 2 question 22: 2 : 8 and 0.5 : 2 are 1 : 4 (read in part).
    ({"parts": {"a": "2", "b": "8"}}, "1 : 4", "multiply or divide"),
    ({"parts": {"a": "0.5", "b": "2"}}, "1 : 4", "multiply or divide"),
    ({"parts": {"a": "1/2", "b": "2/3"}}, "3 : 4", "multiply or divide"),
    ({"parts": {"a": "3", "b": "5"}}, "3 : 5", "multiply or divide"),
    ({"parts": {"a": "£1.20", "b": "80p"}}, "3 : 2", "multiply or divide"),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), SOLVED)
def test_answers(
    solved: Solve,
    answers_of: Callable[[Solution], list[str]],
    fields: dict[str, Any],
    answer: str,
    kind: str,
) -> None:
    solution = solved("simplest ratio", fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == kind
    assert len({working.strategy for working in solution.workings}) >= 2


WRONG = [
    ({"parts": BIRDS}, "ratio turned round", "3 : 2"),
    ({"parts": BIRDS}, "ratio not in simplest form", "6 : 9"),
    ({"parts": BIRDS}, "part compared with the whole", "2 : 5"),
    ({"parts": BIRDS}, "same amount taken from both", "2 : 8"),
    (FROM_WHOLE, "part compared with the whole", "2 : 5"),
    (ROPES, "unit not converted", "25 : 1"),
    # A prime factor: there is no half-way stop but the beginning.
    ({"parts": {"a": "14", "b": "21"}}, "ratio not in simplest form", "14 : 21"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_ratios(
    solved: Solve,
    wrong_answers: Callable[[Solution], dict[str, str]],
    fields: dict[str, Any],
    mistake: str,
    answer: str,
) -> None:
    reached = wrong_answers(solved("simplest ratio", fields))
    assert reached[mistake] == answer


def test_mistakes_that_these_numbers_do_not_show(solved: Solve) -> None:
    solution = solved("simplest ratio", {"parts": {"a": "5", "b": "5"}})
    why = {each.misconception: each.why for each in solution.refused}
    assert why["ratio turned round"] == "it would give the right answer"
    coprime = solved("simplest ratio", {"parts": {"a": "3", "b": "5"}})
    assert "ratio not in simplest form" not in {each.misconception for each in coprime.mistakes}


def test_the_order_of_a_ratio_matters() -> None:
    """2017 paper 2 question 22: 2 : 8 and 0.5 : 2 were accepted for 1 : 4, and 4 : 1 was not."""
    wanted = Parts((number(1), number(4)))
    accepted = [Parts((number(2), number(8))), Parts((number("0.5"), number(2)))]
    assert all(Equation((wanted, each)).holds() for each in accepted)
    assert not Equation((wanted, Parts((number(4), number(1))))).holds()


def test_the_reason_tells_what_comes_first(solved: Solve) -> None:
    assert plain(solved("simplest ratio", FROM_WHOLE).kind.reason) == (
        "To find the terns, the amounts have to be subtracted first. Twice as many of each, 24 "
        "and 36, would be in the same ratio as 12 and 18. So this one needs both."
    )


COMPLAINTS = [
    ({"parts": {"gulls": "12"}}, "two, three or four sides"),
    ({"parts": BIRDS, "find": ["gulls", "tern"]}, "unknown name 'tern'"),
    ({"parts": {"gulls": "12", "rope": "3 m"}}, "cannot be put together"),
    (FROM_WHOLE | {"whole": "12 birds"}, "nothing of the whole is left for 'terns'"),
    ({"parts": BIRDS, "whole": "30 birds"}, "the whole is known without it"),
    ({"parts": {"start": "9:30", "end": "10:30"}}, "times of day are in no ratio"),
    ({"parts": BIRDS | {"whole": "30"}}, "'whole' is not one of the parts"),
    ({"parts": {"a": "3"}, "whole": "9", "find": ["b", "c"]}, "neither 'b' nor 'c' is known"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS)
def test_complaints(solved: Solve, fields: dict[str, Any], problem: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved("simplest ratio", fields)
    assert problem in caught.value.problem
    assert caught.value.remedy
