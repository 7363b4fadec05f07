"""Which texts of a problem are numbers that may vary, and others typed in their place."""

from __future__ import annotations

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.numbers_typed import choices_in, numbers_in, with_numbers
from typeset.errors import Complaint
from typeset.quantities.parsing import parse_amount
from typeset.reading.tree import bare

LUNCH = """\
structure: steps
quantities: {bowls: 2..5 bowls, price: £4.50, terms: "3 or 4"}
steps: [{find: cost, by: bowls × price, say: 2 or 3}]
find: cost
round to: 2 decimal places
terms called: 4 or 5
story: "{bowls} for {price}"
"""


def test_sentences_formulas_and_roundings_are_no_numbers(typed: Typed) -> None:
    complaints: list[Complaint] = []
    content = typed(LUNCH)
    choices = choices_in(content, complaints)
    assert complaints == []
    assert [each.path for each in choices] == [("quantities", "bowls"), ("quantities", "terms")]
    assert [each.name for each in choices] == ["bowls", "terms"]
    assert [each.path for each in numbers_in(content)] == [("quantities", "price")]


def test_numbers_of_a_list(typed: Typed) -> None:
    content = typed("structure: number sequence\nterms: [3, 5..7, 9]\nfind: next\nstory: A")
    assert [each.path for each in numbers_in(content)] == [("terms", 0), ("terms", 2)]
    (choice,) = choices_in(content, [])
    new = with_numbers(content, {choice.path: parse_amount("6")})
    assert bare(new.fields)["terms"] == ["3", "6", "9"]
    assert new.drawn == (("terms 2", "6"),)


def test_what_is_drawn_later_stands_beside_what_was_drawn_before(typed: Typed) -> None:
    content = typed(LUNCH)
    bowls, price = ("quantities", "bowls"), ("quantities", "price")
    once = with_numbers(content, {bowls: parse_amount("3 bowls")})
    twice = with_numbers(once, {bowls: parse_amount("4 bowls"), price: parse_amount("£2")})
    assert once.drawn == (("bowls", "3 bowls"),)
    assert twice.drawn == (("bowls", "4 bowls"), ("price", "£2"))
    assert content.drawn == ()
