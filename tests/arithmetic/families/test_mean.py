"""Means against statistics.mean; no published item was found. Other answers by hand."""

from __future__ import annotations

import statistics
from fractions import Fraction
from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.equations import times
from typeset.arithmetic.families import FAMILIES, mean_ways
from typeset.arithmetic.figures import BarModel
from typeset.errors import AmountError, SolvingError
from typeset.quantities.inline import plain

NAME = "mean"
BOATS: dict[str, Any] = {"values": ["12 boats", "15 boats", "9 boats", "16 boats", "13 boats"]}
TERNS: dict[str, Any] = {
    "values": {"Monday": "4 terns", "Tuesday": "0 terns", "Wednesday": "9 terns", "Thursday": "5"}
}
SHELLS: dict[str, Any] = {
    "values": {"Asha": "12 shells", "Kofi": "20 shells", "Nell": "_"},
    "mean": "15 shells",
}
LOAD: dict[str, Any] = {"mean": "12 kg", "count": "5 crates"}

ANSWERS = [
    (BOATS, str(statistics.mean([12, 15, 9, 16, 13])) + " boats", "both"),
    (TERNS, f"{statistics.mean([4, 0, 9, 5])} terns", "both"),
    (SHELLS, "13 shells", "both"),
    (LOAD, "60 kg", "multiply or divide"),
    ({"values": ["4.5 kg", "?", "6 kg", "5 kg"], "mean": "5 kg"}, "4.5 kg", "both"),
    ({"values": ["£1.20", "£3.50", "£1"]}, "£1.90", "both"),
    ({"values": ["3", "4"]}, "3.5", "both"),
    ({"values": ["0", "5"]}, "2.5", "both"),
    ({"values": ["7", "_"], "mean": "5"}, "3", "both"),
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
    (BOATS, {"The total shared equally", "Levelling out from the least",
             "Differences from a guess"}),
    # From nought, levelling out is sharing.
    (TERNS, {"The total shared equally", "Differences from a guess"}),
    (SHELLS, {"Total needed less total so far", "Balancing around the mean"}),
]  # fmt: skip


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    assert {way.strategy for way in solved(NAME, fields).workings} == names


WRONG = [
    (BOATS, "total not divided", "65 boats"),
    (BOATS, "divided by the wrong count", "16.25 boats"),
    (BOATS, "halfway between least and greatest", "12.5 boats"),
    # The day without a tern is left out of the count: 18 ÷ 3.
    (TERNS, "divided by the wrong count", "6 terns"),
    ({"values": ["3", "4", "8"]}, "middle value given for the mean", "4"),
    (SHELLS, "missing value taken as the mean", "15 shells"),
    (SHELLS, "total needed given for the missing value", "45 shells"),
    ({**SHELLS, "mean": "18 shells"}, "divided by the wrong count", "4 shells"),
    (LOAD, "divided by the wrong count", "48 kg"),
    ({"mean": "6", "count": "3"}, "dividing instead of multiplying", "2"),
    ({"mean": "6", "count": "3"}, "adding instead of multiplying", "9"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, mistake: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[mistake] == answer


def test_mistakes_that_the_numbers_do_not_show(solved: Any) -> None:
    refused = {each.misconception: each.why for each in solved(NAME, BOATS).refused}
    assert refused["middle value given for the mean"] == "it would give the right answer"
    on_mean = {**SHELLS, "mean": "16 shells"}
    refused = {each.misconception: each.why for each in solved(NAME, on_mean).refused}
    assert refused["missing value taken as the mean"] == "it would give the right answer"


def test_the_story_may_quote_the_values(solved: Any) -> None:
    quote = FAMILIES[NAME].quotes(solved(NAME, BOATS).problem)["values"]
    assert plain(quote.text) == "12, 15, 9, 16 and 13 boats"
    assert len(quote.tells) == 5
    assert FAMILIES[NAME].quotes(solved(NAME, LOAD).problem) == {}


def test_a_bar_for_each_value_and_one_for_the_mean(solved: Any) -> None:
    figure = solved(NAME, SHELLS).figure
    assert isinstance(figure, BarModel)
    assert [(bar.name, int(bar.parts[0].size)) for bar in figure.bars] == [
        ("Asha", 12),
        ("Kofi", 20),
        ("Nell", 13),
        ("mean", 15),
    ]
    assert [bar.parts[0].mark.is_given for bar in figure.bars if bar.parts[0].mark] == [
        True,
        True,
        False,
        True,
    ]
    # A value of nought has no bar.
    assert solved(NAME, TERNS).figure is None


COMPLAINTS: list[tuple[dict[str, Any], str]] = [
    ({}, "there are no values"),
    ({"mean": "4"}, "there are no values"),
    ({"mean": "4 kg", "count": "1 crate"}, "'count' is not a number of 2 or more"),
    ({"mean": "4 kg", "count": "2 kg"}, "'count' is not a number of 2 or more"),
    ({**BOATS, "count": "5"}, "how many values there are is counted"),
    ({**BOATS, "mean": "5"}, "one number has to be asked for"),
    ({"values": ["4", "_"]}, "one number has to be asked for"),
    ({"values": ["4", "_", "_"], "mean": "5"}, "one number has to be asked for"),
    ({"values": ["4"]}, "too few values"),
    ({"values": ["4", "-3"]}, "below 0"),
    ({"values": ["4", "4", "4"]}, "all values are equal"),
    ({"values": ["4 kg", "500 g"]}, "not in the unit of 4 kg"),
    ({"values": {"mean": "4", "other": "5"}}, "'mean' cannot be the name"),
    ({"values": ["3 kg", "5 kg"], "answer in": "g"}, "'answer in' is another unit"),
    ({"values": ["9 shells", "_"], "mean": "4 shells"}, "less than nothing"),
]


@pytest.mark.parametrize(("fields", "message"), COMPLAINTS)
def test_complaints(solved: Any, fields: Any, message: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved(NAME, fields)
    assert message in caught.value.problem
    assert caught.value.remedy


@pytest.mark.parametrize(
    ("values", "message"),
    [("4 and 5", "'values' is no list"), (["4"] * 13, "more than 12 values"), (["few"], "amount")],
)
def test_values_that_are_none(solved: Any, values: Any, message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        solved(NAME, {"values": values})


@pytest.mark.parametrize("fields", [BOATS, SHELLS])
def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any, fields: Any) -> None:
    monkeypatch.setattr(mean_ways, "plus", times)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved(NAME, fields)


def test_a_mean_is_exact(solved: Any) -> None:
    solution = solved(NAME, {"values": ["3", "4", "6"]})
    assert solution.answers["mean"].value == Fraction(13, 3)
