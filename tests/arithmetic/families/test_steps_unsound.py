"""Wrong workings that no pupil could write are left out, and right ones leave nothing out."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from typeset.arithmetic.families.steps import OpenSteps, Steps, StepsFields
from typeset.errors import AmountError
from typeset.quantities.inline import plain


def test_a_wrong_step_that_divides_by_less_than_nothing_is_left_out(
    solved: Callable[..., Any],
) -> None:
    fields = {
        "quantities": {"a": "3", "b": "5", "n": "23"},
        "steps": ["parts = a + b", "over = remainder(n, parts)"],
        "find": "over",
    }
    solution = solved("steps", fields)
    assert solution.answers["over"].value == 7
    names = {mistake.misconception for mistake in solution.mistakes}
    assert "subtracting instead of adding" not in names


def test_tried_multiples_begin_with_the_steps_before(solved: Callable[..., Any]) -> None:
    fields = {
        "quantities": {"cod": "750 g", "people": "6", "guests": "200", "box": "4 kg"},
        "steps": [
            "cod for one = cod ÷ people",
            "cod for all = cod for one × guests",
            "boxes = round up(cod for all ÷ box)",
        ],
        "find": "boxes",
        "answer in": "boxes",
    }
    solution = solved("steps", fields)
    tried = next(way for way in solution.workings if way.strategy == "Trying multiples")
    assert tried.steps[0].equation.text() == "750 g ÷ 6 = 125 g"
    assert "cod for all" in plain(tried.steps[1].sentence)
    wrong = {mistake.misconception: mistake.answers["boxes"] for mistake in solution.mistakes}
    assert "step left out" not in wrong


def test_an_open_task_may_tell_more_than_it_reckons_with() -> None:
    fields = StepsFields.model_validate(
        {
            "quantities": {"one": "5", "one less": "4"},
            "steps": ["pairs = one less + one less"],
            "find": "pairs",
        }
    )
    with pytest.raises(AmountError, match="'one' is never used"):
        Steps().build(fields)
    assert set(OpenSteps().build(fields).givens) == {"one", "one less"}
