"""Twins: the same words and numbers, another structure. The verdict follows the structure.

The data files are in `twins/`. That the words are alike is checked, not claimed: twins use the
same numbers, and most of their words are the same.
"""

from __future__ import annotations

import re
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.published.published_items import solved
from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.diagnosis import Verdict, diagnose
from typeset.arithmetic.solving import Solution
from typeset.quantities.inline import plain

FILES = sorted((Path(__file__).parent / "twins").glob("*.yaml"))
SETS = [
    each
    for file in FILES
    for each in yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
]


def solution_of(twin: dict[str, Any], folder: Path) -> Solution:
    """The problem read by the program's own reader, so that its story is checked too."""
    typed = yaml.dump(twin["problem"], default_style='"', width=10_000, sort_keys=False)
    return solved(typed, folder)


def numbers(solution: Solution) -> list[str]:
    return sorted(str(each.value) for each in solution.problem.givens.values())


def words(twin: dict[str, Any]) -> set[str]:
    told = re.sub(r"\{[^}]*\}", " ", twin["problem"]["story"])
    return set(re.findall(r"[a-z]+", told.lower()))


@pytest.mark.parametrize("twins", SETS, ids=lambda each: each["name"])
def test_the_verdict_follows_the_structure(twins: dict[str, Any], tmp_path: Path) -> None:
    for twin in twins["twins"]:
        solution = solution_of(twin, tmp_path)
        assert solution.kind.decision.value == twin["kind"]
        (value,) = solution.answers.values()
        assert diagnose(solution, twin["answer"]).verdict is Verdict.RIGHT, plain(
            answer_text(value)
        )


@pytest.mark.parametrize("twins", SETS, ids=lambda each: each["name"])
def test_twins_have_the_same_numbers_and_nearly_the_same_words(
    twins: dict[str, Any], tmp_path: Path
) -> None:
    for one, other in combinations(twins["twins"], 2):
        assert numbers(solution_of(one, tmp_path)) == numbers(solution_of(other, tmp_path))
        shared = words(one) & words(other)
        assert 2 * len(shared) > max(len(words(one)), len(words(other)))


@pytest.mark.parametrize("twins", SETS, ids=lambda each: each["name"])
def test_twins_differ_in_answer_and_say_why(twins: dict[str, Any], tmp_path: Path) -> None:
    solutions = [solution_of(twin, tmp_path) for twin in twins["twins"]]
    answers = [plain(answer_text(value)) for each in solutions for value in each.answers.values()]
    reasons = [plain(each.kind.reason) for each in solutions]
    assert len(set(answers)) == len(answers) and len(set(reasons)) == len(reasons)


def test_there_are_enough_twins_and_most_differ_in_kind() -> None:
    assert len(SETS) >= 12
    differing = [each for each in SETS if len({twin["kind"] for twin in each["twins"]}) > 1]
    assert len(differing) >= 10
    kinds = {twin["kind"] for each in SETS for twin in each["twins"]}
    assert kinds == {"multiply or divide", "add or subtract", "both", "neither"}
