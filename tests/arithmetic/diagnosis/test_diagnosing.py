"""Pupils' answers diagnosed: a table of what they write, laws, and what the sources document."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.published.published_items import HERE, Item, items_of
from tests.published.published_items import solved as solved_item
from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.diagnosis import Verdict, diagnose
from typeset.arithmetic.diagnosis.splitting import split
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.quantities.inline import plain

TABLE = yaml.load(
    (Path(__file__).parent / "cases.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader
)
ITEMS = [item for file in sorted(HERE.glob("*.yaml")) for item in items_of(file)]
DOCUMENTED = [
    (item, misconception, answer) for item in ITEMS for misconception, answer in item.wrong.items()
]


def solution_of(fields: dict[str, Any]) -> Solution:
    typed = dict(fields)
    family = FAMILIES[typed.pop("structure")]
    checked = family.fields_model.model_validate(typed, context={"nouns": {}})
    return solve(family, family.build(checked))


def rows() -> Iterator[Any]:
    for block in TABLE:
        for row in block["written"]:
            name = f"{block['problem']['structure']}: {row['answer']}"
            yield pytest.param(block["problem"], row, id=name)


@pytest.mark.parametrize(("problem", "row"), list(rows()))
def test_what_pupils_write(problem: dict[str, Any], row: dict[str, Any]) -> None:
    said = diagnose(solution_of(problem), row["answer"])
    assert said.verdict.value == row["verdict"]
    slips = [each.name for each in said.explanations if each.is_slip]
    others = [each.name for each in said.explanations if not each.is_slip]
    assert slips[: len(row.get("slips", []))] == row.get("slips", []) and bool(slips) == (
        "slips" in row
    )
    wanted = row.get("misconceptions", [])
    assert others[: len(wanted)] == wanted
    if said.verdict is Verdict.WRONG:
        assert bool(others) == bool(wanted)


def typed_answer(answer: Mapping[str, str]) -> str:
    """As a pupil would write it: one value, or each after its name."""
    return ", ".join(f"{name}: {value}" if name else value for name, value in answer.items())


@pytest.mark.parametrize(
    ("item", "misconception", "answer"),
    DOCUMENTED,
    ids=[f"{item.title}: {misconception}" for item, misconception, _answer in DOCUMENTED],
)
def test_documented_wrong_answers_are_traced(
    item: Item, misconception: str, answer: dict[str, str], tmp_path: Path
) -> None:
    said = diagnose(solved_item(item.problem, tmp_path), typed_answer(answer))
    assert said.verdict in (Verdict.WRONG, Verdict.PART_RIGHT)
    assert misconception in [each.name for each in said.explanations]


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.title)
def test_published_answers_are_right_as_printed_and_as_typed(item: Item, tmp_path: Path) -> None:
    solution = solved_item(item.problem, tmp_path)
    printed = ", ".join(
        f"{name}: {plain(answer_text(value))}"
        if len(solution.answers) > 1
        else plain(answer_text(value))
        for name, value in solution.answers.items()
    )
    assert diagnose(solution, printed).verdict is Verdict.RIGHT
    if "" in item.answer or len(item.answer) == len(solution.answers):
        assert diagnose(solution, typed_answer(item.answer)).verdict.has_the_number


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.title)
def test_every_mistake_is_found_by_its_own_answer(item: Item, tmp_path: Path) -> None:
    """Whatever wrong answer the core can print, it traces back to the same mistake."""
    solution = solved_item(item.problem, tmp_path)
    for mistake in solution.mistakes:
        if len(solution.answers) > 1 or not mistake.answers.keys() & solution.answers.keys():
            continue
        (asked,) = solution.answers
        said = diagnose(solution, plain(answer_text(mistake.answers[asked])))
        assert mistake.misconception in [each.name for each in said.explanations]


@settings(max_examples=60, derandomize=True, deadline=None)
@given(text=st.text(max_size=40))
def test_nothing_that_is_written_breaks_it(text: str) -> None:
    solution = solution_of({"structure": "equal groups", "groups": "6 crates", "each": "250 g"})
    said = diagnose(solution, text)
    assert said.verdict is not Verdict.RIGHT or "15" in text or "1.5" in text


def test_answers_are_told_apart() -> None:
    two = next(block for block in TABLE if isinstance(block["problem"].get("find"), list))
    answers = solution_of(two["problem"]).answers
    assert list(split("Kofi: 24; Asha: 36", answers)) == ["Asha", "Kofi"]
    assert list(split("1,036 and 24", answers)) == ["Asha", "Kofi"]
    assert list(split("Kofi 24", answers)) == ["Kofi"]
