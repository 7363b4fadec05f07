"""Two sorts with a count and a total. No published item was found; answers by hand."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.equations import plus
from typeset.arithmetic.families import two_sorts_ways
from typeset.arithmetic.figures import BarModel
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

NAME = "two sorts"
BOATS: dict[str, Any] = {
    "sorts": {"small boats": "3 seats", "large boats": "5 seats"},
    "count": "12 boats",
    "total": "46 seats",
    "find": ["small boats", "large boats"],
}
TICKETS: dict[str, Any] = {
    "sorts": {"adult": "£4.50", "child": "£2"},
    "count": "30 tickets",
    "total": "£100",
    "find": "adult",
}
LEGS: dict[str, Any] = {
    "sorts": {"crabs": "10 legs", "gulls": "2 legs"},
    "count": "9",
    "total": "50 legs",
    "find": "gulls",
}

# 7 × 3 + 5 × 5 = 46; 16 × £4.50 + 14 × £2 = £100; 4 × 10 + 5 × 2 = 50.
ANSWERS = [(BOATS, ["7 small boats", "5 large boats"]), (TICKETS, ["16 adults"]),
           (LEGS, ["5 gulls"])]  # fmt: skip


@pytest.mark.parametrize(("fields", "answers"), ANSWERS)
def test_answers(solved: Any, answers_of: Any, told: Any, fields: Any, answers: Any) -> None:
    solution = solved(NAME, fields)
    assert answers_of(solution) == answers
    assert solution.kind.decision.value == "both"
    for said in told(solution):
        assert said[0].isupper() or said[0].isdigit() or said[0] == "£", said
        assert said.endswith("."), said


def test_strategies(solved: Any) -> None:
    assert {way.strategy for way in solved(NAME, BOATS).workings} == {
        "Supposing all are small boats",
        "Supposing all are large boats",
        "A systematic table",
        "Beginning in the middle",
    }
    # Nobody writes a table of fifteen rows.
    assert "A systematic table" not in {way.strategy for way in solved(NAME, TICKETS).workings}


def test_the_first_supposition_is_told_step_by_step(solved: Any) -> None:
    ways = {way.strategy: way for way in solved(NAME, BOATS).workings}
    lines = [
        f"{plain(each.sentence)} {each.equation.text() if each.equation else ''}"
        for each in ways["Supposing all are small boats"].steps
    ]
    assert lines == [
        "Suppose all 12 boats were small boats: 36 seats. 12 × 3 = 36",
        "10 seats are missing. 46 − 36 = 10",
        "Each large boat instead of a small boat brings 2 seats more. 5 − 3 = 2",
        "So 5 large boats. 10 ÷ 2 = 5",
        "The others: 7 small boats. 12 − 5 = 7",
    ]


WRONG = [
    (BOATS, "count halved", "6 small boats"),
    (BOATS, "difference divided by one of them", "10 small boats"),
    (BOATS, "sorts exchanged", "5 small boats"),
    (BOATS, "only one condition used", "2 small boats"),
    (TICKETS, "count halved", "15 adults"),
    (LEGS, "sorts exchanged", "4 gulls"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[mistake] == answer


def test_mistakes_that_the_numbers_do_not_show(solved: Any) -> None:
    solution = solved(NAME, {**BOATS, "total": "48 seats"})
    refused = {each.misconception: each.why for each in solution.refused}
    assert refused["count halved"] == "it would give the right answer"
    assert refused["sorts exchanged"] == "it would give the right answer"
    # 32 legs are not shared into tens, and 9 gulls and crabs cannot be halved.
    made = {each.misconception for each in solved(NAME, LEGS).mistakes}
    assert not made & {"count halved", "difference divided by one of them"}


def test_the_bar(solved: Any) -> None:
    figure = solved(NAME, BOATS).figure
    assert isinstance(figure, BarModel)
    assert [part.size for part in figure.bars[0].parts] == [36, 10]
    assert figure.total is not None
    assert plain(figure.total.text) == "46 seats"


COMPLAINTS: list[tuple[dict[str, Any], str]] = [
    ({"total": "47 seats"}, "not a whole number of"),
    ({"total": "60 seats"}, "more than 36 seats and less than 60 seats, not 60 seats"),
    ({"total": "36 seats"}, "more than 36 seats"),
    ({"find": "big boats"}, "unknown name 'big boats'"),
    ({"sorts": {"small boats": "3 seats", "large boats": "3 seats"}}, "both sorts have 3 seats"),
    ({"sorts": {"small boats": "3 kg", "large boats": "5 kg"}}, "are not in one unit"),
    ({"sorts": {"a": "3", "b": "4", "c": "5"}}, "more than two sorts"),
    ({"sorts": {"count": "3", "b": "4"}}, "'count' cannot be the name"),
    ({"count": "12 kg"}, "'count' is not a number of things"),
    ({"count": "1 boat"}, "only one in all"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved(NAME, {**BOATS, **changed})
    assert message in caught.value.problem
    assert caught.value.remedy


def test_one_sort_alone_is_refused(solved: Any) -> None:
    with pytest.raises(ValidationError):
        solved(NAME, {**BOATS, "sorts": {"small boats": "3 seats"}})


def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(two_sorts_ways, "minus", plus)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved(NAME, BOATS)
