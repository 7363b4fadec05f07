"""The one-operation families over the tables in `cases/`: one file a family.

`solved` holds answers (with the outside source beside each row), `mistakes` the wrong answers
of usable mistakes, `refused` numbers that do not show a mistake ('not made' where it is not
even tried), `complaints` what a teacher is told about numbers that make no sense.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.inline import plain

CASES = {
    path.stem: yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    for path in sorted((Path(__file__).parent / "cases").glob("*.yaml"))
}
NOT_MADE = "not made"
Solve = Callable[..., Solution]


def rows(kind: str) -> Iterator[Any]:
    for stem, table in CASES.items():
        for row in table[kind]:
            yield pytest.param(table["structure"], row, id=f"{stem} {row['fields']}")


@pytest.mark.parametrize(("structure", "row"), list(rows("solved")))
def test_answers(
    structure: str, row: dict[str, Any], solved: Solve, answers_of: Callable[[Solution], list[str]]
) -> None:
    solution = solved(structure, row["fields"])
    assert dict(zip(solution.answers, answers_of(solution), strict=True)) == row["answers"]
    if "kind" in row:
        assert solution.kind.decision.value == row["kind"]
    if "reason" in row:
        assert plain(solution.kind.reason) == row["reason"]
    if "strategies" in row:
        assert {working.strategy for working in solution.workings} == set(row["strategies"])


@pytest.mark.parametrize(("structure", "row"), list(rows("mistakes")))
def test_wrong_answers(
    structure: str,
    row: dict[str, Any],
    solved: Solve,
    wrong_answers: Callable[[Solution], dict[str, str]],
) -> None:
    reached = wrong_answers(solved(structure, row["fields"]))
    assert reached | row["wrong"] == reached


@pytest.mark.parametrize(("structure", "row"), list(rows("refused")))
def test_refused_mistakes(structure: str, row: dict[str, Any], solved: Solve) -> None:
    solution = solved(structure, row["fields"])
    assert row["mistake"] not in {mistake.misconception for mistake in solution.mistakes}
    why = {refused.misconception: refused.why for refused in solution.refused}
    if row["why"] == NOT_MADE:
        assert row["mistake"] not in why
    else:
        assert row["why"] in why[row["mistake"]]


@pytest.mark.parametrize(("structure", "row"), list(rows("complaints")))
def test_complaints(structure: str, row: dict[str, Any], solved: Solve) -> None:
    with pytest.raises(AmountError) as caught:
        solved(structure, row["fields"])
    assert row["problem"] in caught.value.problem
    assert row.get("remedy", "") in caught.value.remedy
    assert caught.value.remedy


@pytest.mark.parametrize("stem", CASES)
def test_every_mistake_is_usable_here_and_unusable_there(stem: str) -> None:
    table = CASES[stem]
    used = {name for row in table["mistakes"] for name in row["wrong"]}
    refused = {row["mistake"] for row in table["refused"]}
    assert used >= refused
    # With these a mistake can always be made: there is no number that would not show it.
    assert used - refused <= ALWAYS.get(stem, set())
    assert len(used) >= 3


ALWAYS = {
    "combinations": {"counting each choice once"},
    "arrangements": {"counting each choice once", "used more than once"},
    "handshakes": {"each pair counted twice"},
}


def test_every_family_of_this_kind_has_a_table() -> None:
    assert {table["structure"] for table in CASES.values()} <= set(FAMILIES)
    assert len(CASES) >= 14
