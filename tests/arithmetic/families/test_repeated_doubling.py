"""Repeated doubling. Powers of 2: OEIS A000079 (from memory); the rest by hand."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.equations import plus
from typeset.arithmetic.families import doubling_ways
from typeset.arithmetic.figures import SequenceBoxes
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

NAME = "repeated doubling"
SHELLS: dict[str, Any] = {"first": "3 shells", "until": "6"}
TOTAL: dict[str, Any] = {**SHELLS, "find": "total"}
WHEN: dict[str, Any] = {"first": "3 shells", "more than": "100 shells"}
HALVES: dict[str, Any] = {"first": "96 kg", "times": "half", "until": "5", "every": "week"}

ANSWERS = [
    (SHELLS, "96 shells", "multiply or divide"),
    (TOTAL, "189 shells", "both"),
    (WHEN, "7", "multiply or divide"),
    (HALVES, "6 kg", "multiply or divide"),
    ({"first": "2 m", "times": "3", "after": "4", "every": "hour"}, "162 m", "multiply or divide"),
    ({"first": "96 kg", "times": "half", "less than": "10 kg"}, "5", "multiply or divide"),
    ({"first": "1p", "until": "10", "find": "total"}, "£10.23", "both"),
    # A000079: 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024.
    ({"first": "1 tern", "after": "10", "every": "year"}, "1,024 terns", "multiply or divide"),
    ({"first": "5 boats", "until": "3", "answer in": "ships"}, "20 ships", "multiply or divide"),
    ({"first": "80 kg", "times": "1/4", "until": "3", "find": "total"}, "105 kg", "both"),
    ({"first": "60 shells", "more than": "100 shells"}, "2", "multiply or divide"),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), ANSWERS)
def test_answers(
    solved: Any, answers_of: Any, told: Any, fields: Any, answer: str, kind: str
) -> None:
    solution = solved(NAME, fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == kind
    assert len(solution.workings) >= 2
    for said in told(solution):
        assert said[0].isupper() or said[0].isdigit() or said[0] == "£", said
        assert said.endswith("."), said


WAYS = [
    (SHELLS, {"Step by step", "One factor for all the steps"}),
    (TOTAL, {"Step by step", "In parts of the smallest", "One step further, less the first"}),
    (WHEN, {"Step by step", "One factor for all the steps"}),
    ({**HALVES, "find": "total"}, {"Step by step", "In parts of the smallest"}),
]


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    assert {way.strategy for way in solved(NAME, fields).workings} == names


# 6 × 3; (5 × 2) × 3; 3 × 64; 3 × 16; 189 − 3; 34 × 3 is the first of the table beyond 100.
WRONG = [
    (SHELLS, "same amount added each time", "18 shells"),
    (SHELLS, "factor multiplied instead of repeated", "30 shells"),
    (SHELLS, "one step too many", "192 shells"),
    (SHELLS, "one step too few", "48 shells"),
    (TOTAL, "last value given for the total", "96 shells"),
    (TOTAL, "first value left out of the total", "186 shells"),
    (TOTAL, "same amount added each time", "18 shells"),
    (WHEN, "one step too few", "6"),
    (WHEN, "same amount added each time", "34"),
    (HALVES, "one step too many", "3 kg"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[mistake] == answer


def test_mistakes_that_the_numbers_do_not_show(solved: Any) -> None:
    # Two doublings are 2 × 2 either way; 7 shells are not halved.
    solution = solved(NAME, {"first": "3 shells", "until": "3"})
    refused = {each.misconception: each.why for each in solution.refused}
    assert refused["factor multiplied instead of repeated"] == "it would give the right answer"
    solution = solved(NAME, {"first": "28 shells", "times": "half", "until": "3"})
    assert "one step too many" not in {each.misconception for each in solution.mistakes}


def test_words_need_not_be_told_but_numbers_must(solved: Any) -> None:
    assert list(solved(NAME, HALVES).problem.givens) == ["first", "until"]
    trebled = solved(NAME, {**SHELLS, "times": "3"})
    assert list(trebled.problem.givens) == ["first", "times", "until"]


def test_the_row_of_boxes(solved: Any) -> None:
    figure = solved(NAME, HALVES).figure
    assert isinstance(figure, SequenceBoxes)
    assert [plain(term.text) for term in figure.terms] == [
        "96 kg",
        "48 kg",
        "24 kg",
        "12 kg",
        "6 kg",
    ]
    assert [plain(each.text) for each in figure.steps if each] == ["÷ 2"] * 4
    assert solved(NAME, {**SHELLS, "until": "12"}).figure is None


COMPLAINTS: list[tuple[dict[str, Any], str]] = [
    ({"until": None}, "not clear where to stop"),
    ({"after": "3"}, "not clear where to stop"),
    ({"until": "2"}, "that makes 1 step,"),
    ({"until": "20"}, "that makes 19 steps,"),
    ({"times": "1"}, "no factor that can be repeated"),
    ({"times": "2.5"}, "no factor that can be repeated"),
    ({"times": "2 kg"}, "no factor that can be repeated"),
    ({"every": "first"}, "'every' is no name"),
    ({"first": "9:30"}, "cannot be doubled"),
    ({"times": "half"}, "not a whole number of shells"),
    ({"answer in": "kg"}, "another unit than that of 'first'"),
    ({"until": None, "more than": "2 shells"}, "is more than that already"),
    (
        {"until": None, "less than": "1 shell"},
        "the numbers grow, so 'less than' does not fit; write 'more than'",
    ),
    ({"until": None, "more than": "9 kg"}, "not in the unit of 3 shells"),
    ({"until": None, "more than": "9 shells", "find": "total"}, "needs the day"),
    ({"until": None, "more than": "999999999 shells"}, "even 24 steps do not lead so far"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    fields = {name: value for name, value in {**SHELLS, **changed}.items() if value is not None}
    with pytest.raises(AmountError) as caught:
        solved(NAME, fields)
    assert message in str(caught.value)
    assert caught.value.remedy


def test_an_unknown_word_for_the_factor(solved: Any) -> None:
    with pytest.raises(ValidationError):
        solved(NAME, {**SHELLS, "times": "lots"})


@pytest.mark.parametrize("fields", [SHELLS, TOTAL, WHEN])
def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any, fields: Any) -> None:
    monkeypatch.setattr(doubling_ways, "times", plus)
    with pytest.raises(SolvingError):
        solved(NAME, fields)
