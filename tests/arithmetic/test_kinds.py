"""The kind follows the structure, not the words: twins with the same words and numbers.

The four classes are those of Van Dooren, De Bock, Hessels, Janssens & Verschaffel 2005,
Cognition & Instruction 23(1), 57-86 (from memory); the laps item is Cramer, Post & Currier
1993 (read).
"""

from __future__ import annotations

from typing import Any

import pytest

from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.kinds import Decision, Reaction
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.inline import plain

TWIN = {
    "together": {"Julie": "3 laps", "Sue": "9 laps"},
    "wanted": {"Julie": "15 laps"},
    "find": "Sue",
}


def solved(structure: str, fields: dict[str, Any]) -> Solution:
    family = FAMILIES[structure]
    return solve(family, family.build(family.fields_model.model_validate(fields)))


@pytest.mark.parametrize(
    ("structure", "answer", "decision"),
    [
        ("proportion", 45, Decision.MULTIPLY),
        ("constant difference", 21, Decision.ADD),
        ("unchanging", 9, Decision.NEITHER),
    ],
)
def test_twins_differ_by_structure_alone(structure: str, answer: int, decision: Decision) -> None:
    solution = solved(structure, TWIN)
    assert solution.answers["Sue"].value == answer  # type: ignore[union-attr]
    assert solution.kind.decision is decision


def test_a_fixed_charge_with_a_rate_is_both() -> None:
    steps = {
        "quantities": {"hire": "£12", "hour rate": "£4", "hours": "3"},
        "steps": ["for the hours = hours × hour rate", "total = hire + for the hours"],
        "find": "total",
    }
    solution = solved("steps", steps)
    assert solution.kind.decision is Decision.BOTH
    reactions = {probe.name: probe.reaction for probe in solution.kind.probes}
    assert reactions["hours"] is Reaction.FIXED_AND_RATE
    assert reactions["hire"] in (Reaction.DIFFERENCE_KEPT, Reaction.FIXED_AND_RATE)


def test_an_inverse_proportion_keeps_the_product() -> None:
    fields = {
        "together": {"people": "4 people", "time": "6 h"},
        "wanted": {"people": "8 people"},
        "find": "time",
    }
    solution = solved("inverse proportion", fields)
    assert solution.kind.decision is Decision.MULTIPLY
    reactions = {probe.name: probe.reaction for probe in solution.kind.probes}
    assert reactions["wanted"] is Reaction.PRODUCT_KEPT


def test_the_reason_uses_this_problems_numbers() -> None:
    reason = plain(solved("constant difference", TWIN).kind.reason)
    assert "15 laps" in reason and "21 laps" in reason
