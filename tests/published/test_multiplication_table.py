"""The multiplication table of oeis.org, A003991 (from memory; its meaning m × n is sure), read
by antidiagonals, against the structures that multiply two numbers."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.published.published_items import exact_answers, solved

ANTIDIAGONALS = [[1], [2, 2], [3, 4, 3], [4, 6, 6, 4], [5, 8, 9, 8, 5], [6, 10, 12, 12, 10, 6]]
ENTRIES = [
    (place + 1, len(line) - place, value)
    for line in ANTIDIAGONALS
    for place, value in enumerate(line)
    if 1 <= place < len(line) - 1
]
PROBLEMS = {
    "equal groups": "{{structure: equal groups, groups: {m} rows, each: {n} floats, story: "
    "'{{groups}} of {{each}}?'}}",
    "combinations": "{{structure: combinations, choices: {{hulls: {m}, sails: {n}}}, "
    "answer in: boats, story: '{{hulls}} hulls, {{sails}} sails?'}}",
    "rectangle": "{{structure: rectangle, length: {m} cm, width: {n} cm, find: area, story: "
    "'{{length}} by {{width}}?'}}",
}


@pytest.mark.parametrize("structure", PROBLEMS)
@pytest.mark.parametrize(("m", "n", "value"), ENTRIES)
def test_entry(structure: str, m: int, n: int, value: int, tmp_path: Path) -> None:
    solution = solved(PROBLEMS[structure].format(m=m, n=n) + "\n", tmp_path)
    assert exact_answers(solution.answers, {"": ""}) == {"": str(value)}
    assert solution.kind.decision.value == "multiply or divide"
