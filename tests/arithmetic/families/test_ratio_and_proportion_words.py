"""Ratios from a part to the difference, mass nouns, and decimals that stay decimals."""

from __future__ import annotations

from collections.abc import Callable

from typeset.arithmetic.solving import Solution

Solve = Callable[..., Solution]
BIRDS = {"parts": {"gulls": "5", "terns": "2"}, "known": {"gulls": "20"}}
PAINT = {
    "parts": {"blue paint": "2", "white paint": "3"},
    "known": {"white paint": "6 litres"},
    "find": "blue paint",
}
# An invented currency.
MONEY = {
    "together": {"pounds": "£1", "shellings": "1.15 shellings"},
    "wanted": {"pounds": "£30"},
    "find": "shellings",
    "may be cut": "yes",
}


def test_from_a_part_to_the_difference(
    solved: Solve,
    answers_of: Callable[[Solution], list[str]],
    wrong_answers: Callable[[Solution], dict[str, str]],
) -> None:
    solution = solved("ratio", BIRDS | {"find": "difference"})
    assert answers_of(solution) == ["12"]
    # The other side, and the difference of the parts (Misailidou & Williams 2003 by name).
    reached = wrong_answers(solution)
    assert (reached["step left out"], reached["additive strategy"]) == ("8", "3")


def test_from_a_part_to_the_other_part(
    solved: Solve, answers_of: Callable[[Solution], list[str]]
) -> None:
    assert answers_of(solved("ratio", BIRDS | {"find": "terns"})) == ["8 terns"]


def test_rows_are_told_in_one_sentence(
    solved: Solve, told: Callable[[Solution], list[str]]
) -> None:
    sentences = told(solved("ratio", BIRDS | {"find": "difference"}))
    assert "2 times: gulls 10, the difference 6." in sentences


def test_paint_is_and_gulls_are(solved: Solve, told: Callable[[Solution], list[str]]) -> None:
    paint = told(solved("ratio", PAINT))
    assert "The white paint is 3 parts, and they make 6 litres." in paint
    assert "So the blue paint goes up by 3 litres as well." in paint
    birds = told(solved("ratio", BIRDS | {"find": "terns"}))
    assert "The gulls are 5 parts, and they make 20." in birds
    assert "So the terns go up by 15 as well." in birds


def test_a_decimal_rate_gives_decimal_answers(
    solved: Solve, answers_of: Callable[[Solution], list[str]]
) -> None:
    assert answers_of(solved("proportion", MONEY)) == ["34.5 shellings"]


def test_nobody_stops_at_one_where_one_is_known(solved: Solve) -> None:
    mistakes = {each.misconception for each in solved("proportion", MONEY).mistakes}
    assert "step left out" not in mistakes
