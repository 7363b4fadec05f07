"""Solving by typed fields, as the tests of all families need it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.inline import plain

Solve = Callable[..., Solution]


@pytest.fixture(scope="session")
def solved() -> Solve:
    """`solved('proportion', {...})`: the solution of a problem as typed in a content file."""

    def _solved(
        structure: str, fields: dict[str, Any], nouns: dict[str, str] | None = None
    ) -> Solution:
        family = FAMILIES[structure]
        context = {"nouns": nouns or {}}
        checked = family.fields_model.model_validate(fields, context=context)
        return solve(family, family.build(checked))

    return _solved


@pytest.fixture(scope="session")
def answers_of() -> Callable[[Solution], list[str]]:
    """The answers as plain text."""

    def _answers(solution: Solution) -> list[str]:
        return [plain(answer_text(value)) for value in solution.answers.values()]

    return _answers


@pytest.fixture(scope="session")
def wrong_answers() -> Callable[[Solution], dict[str, str]]:
    """The first wrong answer of every usable mistake, by its name."""

    def _wrong(solution: Solution) -> dict[str, str]:
        return {
            mistake.misconception: plain(answer_text(next(iter(mistake.answers.values()))))
            for mistake in solution.mistakes
        }

    return _wrong


@pytest.fixture(scope="session")
def told() -> Callable[[Solution], list[str]]:
    """Every sentence that the solution would print, right and wrong."""

    def _told(solution: Solution) -> list[str]:
        written = [*(each.steps for each in solution.workings)]
        written += [each.steps for each in solution.mistakes]
        said = [plain(step.sentence) for steps in written for step in steps]
        return [*said, plain(solution.kind.reason)]

    return _told
