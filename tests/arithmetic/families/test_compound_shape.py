"""L-shapes: area, perimeter and sides; the numbers can be counted on squared paper."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.figures import Outline
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.inline import plain

Solve = Callable[..., Solution]
Fields = dict[str, Any]
SHAPE = {"bottom": "10 m", "left": "8 m", "top": "6 m", "right": "5 m"}
AROUND = SHAPE | {"find": "perimeter"}

SOLVED = [
    (SHAPE, ["68 m²"], "both"),
    (AROUND, ["36 m"], "both"),
    (SHAPE | {"find": "step across"}, ["4 m"], "add or subtract"),
    (SHAPE | {"find": ["step down", "area"]}, ["3 m", "68 m²"], "add or subtract"),
    (SHAPE | {"find": "area", "answer in": "cm²"}, ["680,000 cm²"], "both"),
    (
        {"bottom": "2 m", "left": "80 cm", "step across": "1.2 m", "step down": "30 cm"},
        ["12,400 cm²"],
        "both",
    ),
    (
        {"step across": "5 cm", "top": "3 cm", "step down": "2 cm", "right": "4 cm"}
        | {"find": ["left", "perimeter"]},
        ["6 cm", "28 cm"],
        "add or subtract",
    ),
]


@pytest.mark.parametrize(("fields", "answers", "kind"), SOLVED)
def test_answers(
    solved: Solve,
    answers_of: Callable[[Solution], list[str]],
    fields: Fields,
    answers: list[str],
    kind: str,
) -> None:
    solution = solved("compound shape", fields)
    assert answers_of(solution) == answers
    assert solution.kind.decision.value == kind
    assert len({working.strategy for working in solution.workings}) >= 2


def test_strategies(solved: Solve) -> None:
    area = {working.strategy for working in solved("compound shape", SHAPE).workings}
    assert area == {
        "Cut level into two rectangles",
        "Cut upright into two rectangles",
        "The whole without the missing corner",
    }
    around = {working.strategy for working in solved("compound shape", AROUND).workings}
    assert around == {
        "Round the shape",
        "As long round as the whole rectangle",
        "Level sides, then upright sides",
    }


WRONG = [
    (SHAPE, "bounding rectangle taken for the shape", "80 m²"),
    (SHAPE, "overlapping part counted twice", "98 m²"),
    (SHAPE, "area and perimeter exchanged", "36 m²"),
    (SHAPE, "step left out", "50 m²"),
    (AROUND, "missing side not found", "29 m"),
    (AROUND, "inner side counted", "48 m"),
    (AROUND, "area and perimeter exchanged", "68 m"),
    (SHAPE | {"find": "step across"}, "adding instead of subtracting", "16 m"),
    (SHAPE | {"find": "step across"}, "level and upright sides mixed up", "3 m"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_answers(
    solved: Solve,
    wrong_answers: Callable[[Solution], dict[str, str]],
    fields: Fields,
    mistake: str,
    answer: str,
) -> None:
    assert wrong_answers(solved("compound shape", fields))[mistake] == answer


def test_with_both_asked_for_both_are_exchanged(
    solved: Solve, answers_of: Callable[[Solution], list[str]]
) -> None:
    solution = solved("compound shape", SHAPE | {"find": ["area", "perimeter"]})
    assert answers_of(solution) == ["68 m²", "36 m"]
    (only,) = solution.mistakes
    assert only.misconception == "area and perimeter exchanged"
    assert [plain(answer_text(each)) for each in only.answers.values()] == ["36 m²", "68 m"]


def test_a_mistake_that_a_square_corner_hides(solved: Solve) -> None:
    fields = {"bottom": "7 m", "left": "7 m", "top": "4 m", "right": "4 m", "find": "step down"}
    refused = {each.misconception for each in solved("compound shape", fields).refused}
    assert "level and upright sides mixed up" in refused


def test_a_side_that_two_answers_need_is_found_once(solved: Solve) -> None:
    fields = SHAPE | {"find": ["area", "perimeter"]}
    for working in solved("compound shape", fields).workings:
        sentences = [plain(step.sentence) for step in working.steps]
        assert len(set(sentences)) == len(sentences)


def test_the_figure_has_the_shape_and_hides_what_is_not_told(solved: Solve) -> None:
    figure = solved("compound shape", SHAPE).figure
    assert isinstance(figure, Outline)
    assert [(int(x), int(y)) for x, y in figure.corners] == [
        (0, 0), (6, 0), (6, 3), (10, 3), (10, 8), (0, 8),
    ]  # fmt: skip
    seen = {plain(mark.text): (mark.is_given, mark.hidden) for mark in figure.marks if mark}
    assert seen["10 m"] == (True, False)
    assert seen["4 m"] == (False, True)
    assert figure.inside is not None
    assert not figure.inside.is_given
    asked = solved("compound shape", SHAPE | {"find": "step across"}).figure
    assert isinstance(asked, Outline)
    assert {plain(m.text): m.hidden for m in asked.marks if m}["4 m"] is False


def test_the_reason_of_a_perimeter(solved: Solve) -> None:
    assert plain(solved("compound shape", AROUND).kind.reason) == (
        "With 11 m instead of 10 m for the bottom side the perimeter would go up by 2 m, since "
        "there is as much again on the way back; the sides are added. So this one needs both."
    )


COMPLAINTS = [
    (SHAPE | {"top": "12 m"}, "the top side is not shorter than the bottom side"),
    (
        {"bottom": "10 m", "left": "8 m", "top": "6 m"},
        "two of left, right and step down are known, and not 1",
    ),
    (SHAPE | {"step across": "4 m"}, "two of bottom, top and step across are known, and not 3"),
    (SHAPE | {"top": "6 kg"}, "is not measured in kg"),
    (SHAPE | {"find": "left"}, "both given and asked for"),
    (SHAPE | {"answer in": "m"}, "the area is an area"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS)
def test_complaints(solved: Solve, fields: Fields, problem: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved("compound shape", fields)
    assert problem in caught.value.problem
    assert caught.value.remedy
