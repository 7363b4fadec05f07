"""Stories: numbers come from names alone, and what is typed prints as itself."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.arithmetic.stories import tell, typographic, unmentioned
from typeset.errors import Complaint, Place
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount
from typeset.reading.content import Story

PLACE = Place(Path("monday.yaml"), 3, 5)
AMOUNTS = {"groups": parse_amount("6 crates"), "share": parse_amount("3/4 kg")}


def told(template: str) -> tuple[str, list[str]]:
    complaints: list[Complaint] = []
    text = tell(Story(template, PLACE), AMOUNTS, complaints).text
    return plain(text), [complaint.problem for complaint in complaints]


def test_names_become_amounts() -> None:
    assert told("Take {groups}, {share} each.") == ("Take 6 crates, 3/4 kg each.", [])
    assert told("Take { groups }.") == ("Take 6 crates.", [])


@pytest.mark.parametrize(
    ("template", "problem"),
    [
        ("Take 6 crates.", "the number 6 is typed straight into the text"),
        ("At 12:30, go.", "the number 12:30 is typed straight into the text"),
        ("Take {boxes}.", "unknown name '{boxes}'"),
        ("Take {groups.", "a brace is not closed"),
    ],
)
def test_what_cannot_be_checked_is_complained_of(template: str, problem: str) -> None:
    assert problem in told(template)[1]


def test_markup_prints_as_itself() -> None:
    text = "<b>Take</b> {groups} & *more* \\n %s {{ no }}"
    assert told("<b>Take</b> {groups} & *more* \\n %s")[0] == "<b>Take</b> 6 crates & *more* \\n %s"
    assert told(text)[1]


def test_a_quantity_that_is_never_told_is_found() -> None:
    story = Story("Take {groups}.", PLACE)
    left = list(unmentioned(story, tell(story, AMOUNTS, []), AMOUNTS, {}))
    assert [complaint.problem for complaint in left] == ["the story never mentions 'share'"]


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("Asha's kite", "Asha’s kite"),
        ("'How many?' said Femi", "‘How many?’ said Femi"),
        ('She said "stop".', "She said “stop”."),
        ("two   spaces\nand a line", "two spaces and a line"),
        ("gulls - and terns", "gulls – and terns"),
    ],
)
def test_typographers_marks(typed: str, printed: str) -> None:
    assert typographic(typed) == printed
