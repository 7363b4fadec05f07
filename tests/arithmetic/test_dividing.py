"""Ways to divide: which suit which numbers, and that each gives quotient and rest."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division, closing
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import noun

BOX = noun("box", "boxes")
FACT, NOUGHTS, UP = "A table fact backwards", "A table fact and place value", "Counting up"
ROUNDS, CHUNKS, PARTS = "Dealing out in rounds", "Chunking", "Partitioning the total"
HALVES, TENTH, SHORT = "Halving", "A tenth, doubled", "Short division"
TRYING = "Trying multiples"
SMALLER, WHOLE = "Making both numbers smaller", "Making both numbers whole"

# Which methods a teacher would expect for these numbers (common practice, no source).
GROUPING = [
    ("72 floats", "6", {FACT, CHUNKS, PARTS, SMALLER}),
    ("52 floats", "8", {FACT, UP}),
    ("1128 floats", "36", {CHUNKS, PARTS}),
    ("1500 g", "50", {NOUGHTS, SMALLER, CHUNKS}),
    ("12 m", "1.5", {TRYING, UP, WHOLE}),
    ("130 people", "24", {TRYING, UP}),
    ("144 floats", "8", {CHUNKS, PARTS, HALVES, SMALLER, SHORT}),
]
SHARING = [
    ("84 floats", "7", {FACT, CHUNKS, PARTS}),
    ("£80", "5", {CHUNKS, PARTS, TENTH, SHORT}),
    ("432 floats", "5", {CHUNKS, PARTS, SHORT}),
    ("24 floats", "4", {FACT, ROUNDS, HALVES}),
]


@pytest.mark.parametrize(("total", "by", "names"), GROUPING)
def test_fitting_methods_for_grouping(total: str, by: str, names: set[str]) -> None:
    division = Division(parse_amount(total), Fraction(by), BOX, grouping=True)
    assert {method.name for method in ways_to_divide(division)} == names


@pytest.mark.parametrize(("total", "by", "names"), SHARING)
def test_fitting_methods_for_sharing(total: str, by: str, names: set[str]) -> None:
    division = Division(parse_amount(total), Fraction(by), BOX, grouping=False)
    assert {method.name for method in ways_to_divide(division)} == names


def test_short_division_carries_on() -> None:
    # National curriculum in England 2013, mathematics appendix 1: 432 ÷ 5 = 86 r 2 (from memory).
    division = Division(parse_amount("432"), Fraction(5), BOX, grouping=True)
    (short,) = (each for each in ways_to_divide(division) if each.name == SHORT)
    assert [plain(each.sentence) for each in short.steps] == [
        "43 tens divided by 5: 8 tens, and 3 tens to carry on.",
        "32 ones divided by 5: 6 ones, and 2 ones left over.",
        "So 86 boxes, and 2 left over.",
    ]
    last = closing(division).equation
    assert last is not None and last.text() == "432 ÷ 5 = 86 r 2"


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.integers(1, 5000), st.integers(2, 120), st.booleans())
def test_every_method_gives_quotient_and_rest(total: int, by: int, grouping: bool) -> None:
    amount = parse_amount("2 floats").like(total)
    division = Division(amount, Fraction(by), BOX, grouping)
    methods = list(ways_to_divide(division))
    assert methods
    for method in methods:
        assert method.result.value == total // by, method.name
        assert method.rest == total % by, method.name
        for step in method.steps:
            assert step.equation is None or step.equation.holds(), (method.name, step)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(st.integers(1, 5000), st.integers(2, 40), st.booleans())
def test_exact_division_leaves_nothing(pence: int, by: int, grouping: bool) -> None:
    total = parse_amount("£1").like(Fraction(pence, 100))
    for method in ways_to_divide(Division(total, Fraction(by), BOX, grouping, exact=True)):
        assert method.result.value == Fraction(pence, 100 * by), method.name
        assert not method.rest
        for step in method.steps:
            assert step.equation is None or step.equation.holds(), (method.name, step)
