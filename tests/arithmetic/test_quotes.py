"""Texts that a story mentions by one name. Wording: common practice, no source."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.arithmetic.quotes import Quote, list_of
from typeset.arithmetic.stories import Told, unmentioned
from typeset.errors import Place
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Words, plain, words
from typeset.quantities.parsing import parse_amount
from typeset.reading.content import Story


def amounts(*typed: str) -> dict[str, Amount]:
    return {f"value {at}": parse_amount(each) for at, each in enumerate(typed, 1)}


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (("12 boats", "15 boats", "9 boats"), "12, 15 and 9 boats"),
        (("12 boats", "1 boat"), "12 boats and 1 boat"),
        (("3 m", "2.5 m", "40 cm"), "3 m, 2.5 m and 40 cm"),
        (("3", "4"), "3 and 4"),
        (("£3",), "£3"),
    ],
)
def test_lists(typed: tuple[str, ...], told: str) -> None:
    quote = list_of(amounts(*typed))
    assert plain(quote.text) == told
    # One amount for every item that is not running words: the proof pairs them.
    solids = [item for item in quote.text if not isinstance(item, Words)]
    assert len(solids) == len(quote.amounts) == len(typed)


def test_what_a_quote_tells_need_not_be_mentioned_alone() -> None:
    story = Story("Here are {values}.", Place(Path("a.yaml"), 1, 1))
    quotes = {"values": Quote(words("3 and 4"), (), frozenset({"value 1", "value 2"}))}
    names = ("value 1", "value 2", "other")
    told = Told((), frozenset({"values"}))
    assert [each.problem for each in unmentioned(story, told, names, quotes)] == [
        "the story never mentions 'other'"
    ]
    untold = [each.problem for each in unmentioned(story, Told((), frozenset()), names, quotes)]
    assert untold == ["the story never mentions 'values'", "the story never mentions 'other'"]
