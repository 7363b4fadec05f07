"""Year groups and difficulty over every family, by the problems in `../examples`."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from typeset.arithmetic.curriculum import YEARS, beyond_year
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.ranking import rank
from typeset.arithmetic.solving import Solution, solve

FOLDER = Path(__file__).parents[1] / "examples"


def solution_of(example: dict[str, Any]) -> Solution:
    family = FAMILIES[example["structure"]]
    fields = {key: value for key, value in example.items() if key not in ("structure", "story")}
    return solve(family, family.build(family.fields_model.model_validate(fields)))


@pytest.fixture(scope="module")
def solutions() -> list[Solution]:
    found = []
    for file in sorted(FOLDER.glob("*.yaml")):
        typed = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
        found += [solution_of(each) for each in (typed if isinstance(typed, list) else [typed])]
    return found


def test_a_later_year_never_finds_more_to_remark_on(solutions: list[Solution]) -> None:
    for solution in solutions:
        counts = [len(beyond_year(solution, year)) for year in sorted(YEARS)]
        assert counts == sorted(counts, reverse=True), solution.problem.family


def test_remarks_are_whole_sentences_without_doubles(solutions: list[Solution]) -> None:
    for solution in solutions:
        for year in YEARS:
            told = beyond_year(solution, year)
            assert len(set(told)) == len(told)
            assert all("{" not in each and each == each.strip() for each in told)


def test_every_neighbour_in_the_order_has_its_reason(solutions: list[Solution]) -> None:
    ranked = rank(solutions)
    assert sorted(each.index for each in ranked) == list(range(len(solutions)))
    assert [each.score for each in ranked] == sorted(each.score for each in ranked)
    beginnings = ("needs ", "has ", "crosses ", "goes ", "leaves ", "brings ", "as hard as ")
    assert all(each.reason.startswith(beginnings) for each in ranked[1:])
