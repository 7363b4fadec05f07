"""Scales of maps, plans and models: both ways, with and without units."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from pydantic import ValidationError

from typeset.arithmetic.families.scale_view import read_scale
from typeset.arithmetic.figures import DoubleNumberLine
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.writing import write_plain

Solve = Callable[..., Solution]
Fields = dict[str, Any]
# Key stage 2, 2017 paper 2 question 21 (read in part).
CHART = {"scale": "1 cm to 20 km", "real": "250 km", "find": "map"}
PLAN = {"scale": "2 cm to 5 m", "plan": "7 cm"}
WALK = {"scale": "1:25,000", "map": "6 cm", "answer in": "km"}

SOLVED = [
    (CHART, "12.5 cm"),
    ({"scale": "1 cm to 20 km", "map": "12.5 cm"}, "250 km"),
    (PLAN, "17.5 m"),
    (WALK, "1.5 km"),
    ({"scale": "1 : 50", "real": "3 m", "find": "model"}, "6 cm"),
    ({"scale": "1 cm to 250 m", "real": "3 km"}, "12 cm"),
    ({"scale": "1:25,000", "map": "6 cm", "answer in": "m"}, "1,500 m"),
]


@pytest.mark.parametrize(("fields", "answer"), SOLVED)
def test_answers(
    solved: Solve, answers_of: Callable[[Solution], list[str]], fields: Fields, answer: str
) -> None:
    solution = solved("scale", fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision.value == "multiply or divide"
    assert len({working.strategy for working in solution.workings}) >= 2
    assert solution.mistakes


WRONG = [
    (PLAN, "scale used the wrong way round", "2.8 m"),
    (PLAN, "scale added", "9.5 m"),
    (PLAN, "additive strategy", "10 m"),
    (WALK, "unit not converted", "150,000 km"),
    (CHART, "magical doubling", "2 cm"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Solve,
    wrong_answers: Callable[[Solution], dict[str, str]],
    fields: Fields,
    mistake: str,
    answer: str,
) -> None:
    assert wrong_answers(solved("scale", fields))[mistake] == answer


def test_a_scale_without_units_is_first_put_in_words(
    solved: Solve, told: Callable[[Solution], list[str]]
) -> None:
    assert "1 cm on the map stands for 25,000 cm." in told(solved("scale", WALK))


def test_nobody_divides_one_centimetre_by_one(
    solved: Solve, told: Callable[[Solution], list[str]]
) -> None:
    assert not [sentence for sentence in told(solved("scale", WALK)) if "by 1 " in sentence]


def test_the_line_has_nothing_the_scale_and_the_answer(solved: Solve) -> None:
    figure = solved("scale", PLAN).figure
    assert isinstance(figure, DoubleNumberLine)
    assert [tick.at for tick in figure.ticks] == [0, 2, 7]
    assert [tick.lower.is_given for tick in figure.ticks if tick.lower] == [True, True, False]


@pytest.mark.parametrize(
    ("text", "lengths"),
    [
        ("1 cm to 20 km", ("1 cm", "20 km")),
        ("5 mm to 1 m", ("5 mm", "1 m")),
        ("1:25,000", ("1", "25,000")),
        ("1 : 50", ("1", "50")),
    ],
)
def test_scales_as_typed(text: str, lengths: tuple[str, str]) -> None:
    first, second = read_scale(text)
    assert (write_plain(first), write_plain(second)) == lengths


@pytest.mark.parametrize("text", ["25", "1 cm to 250 kg", "1:2:3", "1 cm to", "to 5 km", "1:0"])
def test_no_scales(text: str) -> None:
    with pytest.raises(AmountError) as caught:
        read_scale(text)
    assert caught.value.remedy


COMPLAINTS = [
    ({"scale": "1 cm to 20 km"}, "exactly one length is known besides the scale"),
    (CHART | {"map": "3 cm"}, "exactly one length is known besides the scale"),
    ({"scale": "1:50", "model": "3 kg"}, "'model' is not a length"),
    (PLAN | {"find": "map"}, "'map' is not asked for here"),
    (CHART | {"find": "real"}, "both given and asked for"),
    (PLAN | {"answer in": "kg"}, "the answer is a length"),
    ({"scale": "2 cm to 5 m", "plan": "2 cm"}, "does not change"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS)
def test_complaints(solved: Solve, fields: Fields, problem: str) -> None:
    with pytest.raises((AmountError, ValidationError), match=problem):
        solved("scale", fields)
