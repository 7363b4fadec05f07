"""Worked examples and tables from outside, run through the YAML reader and the core.

Every data file beside this test has

    source:   where all its items are from, in full
    sure:     read | read in part | from memory | computed (from the numbers of the source)
    note:     what a reader of the file should know
    items:    a list, each item with
      name:     its place in the source
      source:   only where it is another than the file's; so with sure and note
      problem:  a problem exactly as in a lesson file, its story in our own words
      answer:   the published answer, exact ('21', '7/2', '2.5'), or {name: answer} for several
      unit:     the unit of the answer
      kind:     what the pupil decides, as the program words it
      wrong:    {misconception: the wrong answer that the source documents}

Items from memory say so in the name of their test: `pytest -k 'not memory'` leaves them out.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.published.published_items import (
    HERE,
    SURE,
    Item,
    exact_answers,
    items_of,
    solved,
    units_of,
)
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.misconceptions import MISCONCEPTIONS

FILES = sorted(HERE.glob("*.yaml"))
ITEMS = [item for file in FILES for item in items_of(file)]


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.title)
def test_published(item: Item, tmp_path: Path) -> None:
    solution = solved(item.problem, tmp_path)
    assert exact_answers(solution.answers, item.answer) == item.answer
    if item.unit:
        assert units_of(solution.answers) == {item.unit}
    if item.kind:
        assert solution.kind.decision.value == item.kind
    reached = {each.misconception: each.answers for each in solution.mistakes}
    for misconception, answer in item.wrong.items():
        assert misconception in reached, list(solution.refused)
        assert exact_answers(reached[misconception], answer) == answer


def test_the_published_items_are_many_and_well_named() -> None:
    assert len(ITEMS) >= 100
    titles = [item.title for item in ITEMS]
    assert len(set(titles)) == len(titles)
    assert {item.kind for item in ITEMS} <= {"", *(each.value for each in Decision)}
    assert {name for item in ITEMS for name in item.wrong} <= set(MISCONCEPTIONS)
    assert all(len(item.source) > 20 and item.sure in SURE for item in ITEMS)
