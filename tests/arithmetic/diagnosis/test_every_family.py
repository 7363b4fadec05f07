"""Diagnosis over every family, by the problems in `../examples`: what the core can print, right
or wrong, it reads back as what it is."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.diagnosis import Verdict, diagnose
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.inline import plain

FOLDER = Path(__file__).parents[1] / "examples"


def examples() -> list[Any]:
    found = []
    for file in sorted(FOLDER.glob("*.yaml")):
        typed = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
        for number, example in enumerate(typed if isinstance(typed, list) else [typed], 1):
            found.append(pytest.param(example, id=f"{file.stem} {number}"))
    return found


def solution_of(example: dict[str, Any]) -> Solution:
    family = FAMILIES[example["structure"]]
    fields = {key: value for key, value in example.items() if key not in ("structure", "story")}
    return solve(family, family.build(family.fields_model.model_validate(fields)))


def printed(solution: Solution, answers: Any) -> str:
    told = {name: plain(answer_text(answers[name])) for name in solution.answers}
    if len(told) == 1:
        return next(iter(told.values()))
    return "; ".join(f"{name}: {text}" for name, text in told.items())


@pytest.mark.parametrize("example", examples())
def test_the_printed_answer_is_right(example: dict[str, Any]) -> None:
    solution = solution_of(example)
    said = diagnose(solution, printed(solution, solution.answers))
    assert said.verdict is Verdict.RIGHT and said.explanations == ()


@pytest.mark.parametrize("example", examples())
def test_every_printed_mistake_is_traced(example: dict[str, Any]) -> None:
    solution = solution_of(example)
    for mistake in solution.mistakes:
        if set(mistake.answers) < set(solution.answers):
            continue
        said = diagnose(solution, printed(solution, mistake.answers))
        assert said.verdict is not Verdict.RIGHT
        assert mistake.misconception in [each.name for each in said.explanations]


@pytest.mark.parametrize("example", examples())
def test_a_slip_is_named_only_where_nothing_better_is_known(example: dict[str, Any]) -> None:
    solution = solution_of(example)
    for text in ("1", "10", "21", "0.5", "7:3", "12:15", "6 r 1", "no", "£1.50"):
        kinds = [each.is_slip for each in diagnose(solution, text).explanations]
        assert len(set(kinds)) <= 1
