"""Ways to multiply: which suit which numbers, and that each gives the product."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount

TABLES, NOUGHTS, ADDING = "Multiplying", "A table fact and place value", "Repeated addition"
DOUBLING, TEN, FIVE = "Doubling", "Half of ten times", "Building on five times"
COUNT, SIZE = "Partitioning the number of groups", "Partitioning the amount in each"
NEAR, ROUNDING = "A near multiple, adjusted", "Rounding up and adjusting"
SWAP, SHORT = "Doubling one number and halving the other", "Short multiplication"

# Which methods a teacher would expect for these numbers (common practice, no source).
FITTING = [
    ("3", "6 floats", {TABLES, ADDING}),
    ("4", "7 floats", {TABLES, ADDING, DOUBLING}),
    ("8", "25 cm", {DOUBLING, SIZE, SHORT}),
    ("14", "6 floats", {COUNT, SWAP, SHORT}),
    ("19", "6 floats", {NEAR, COUNT, SHORT}),
    ("15", "18 floats", {SWAP, SIZE, COUNT, ROUNDING}),
    ("5", "48 floats", {TEN, SIZE, ADDING, ROUNDING, SHORT}),
    ("7", "8 floats", {TABLES, FIVE}),
    ("4", "£2.99", {DOUBLING, ADDING, SIZE, ROUNDING}),
    ("6", "40p", {NOUGHTS, ADDING, FIVE}),
    ("7", "342 floats", {SIZE, SHORT}),
    ("24", "16 floats", {COUNT, SIZE}),
]


@pytest.mark.parametrize(("count", "size", "names"), FITTING)
def test_fitting_methods(count: str, size: str, names: set[str]) -> None:
    lots = Lots(Fraction(count), parse_amount(size))
    assert {method.name for method in ways_to_multiply(lots)} == names


def test_a_near_multiple_is_told_step_by_step() -> None:
    lots = Lots(Fraction(19), parse_amount("6 floats"), parse_amount("2 crates").unit)
    (near,) = (each for each in ways_to_multiply(lots) if each.name == NEAR)
    told = [(plain(each.sentence), each.equation and each.equation.text()) for each in near.steps]
    assert told == [
        ("20 crates would be 120 floats.", "20 × 6 = 120"),
        ("That is 1 crate too many, so take off 6 floats: 114 floats.", "120 − 6 = 114"),
    ]


def test_short_multiplication_carries() -> None:
    # National curriculum in England 2013, mathematics appendix 1: 342 × 7 = 2,394 (from memory).
    lots = Lots(Fraction(7), parse_amount("342"))
    (short,) = (each for each in ways_to_multiply(lots) if each.name == SHORT)
    assert [plain(each.sentence) for each in short.steps] == [
        "Ones: 14. Write 4 and carry 1.",
        "Tens: 29. Write 9 and carry 2.",
        "Hundreds: 23.",
        "So 2,394.",
    ]


SIZES = st.one_of(
    st.integers(2, 2000).map(Fraction),
    st.integers(1, 5000).map(lambda hundredths: Fraction(hundredths, 100)),
)


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.integers(2, 200), SIZES, st.sampled_from(["floats", "m"]))
def test_every_method_gives_the_product(count: int, size: Fraction, unit: str) -> None:
    amount = parse_amount(f"2 {unit}").like(size)
    methods = list(ways_to_multiply(Lots(Fraction(count), amount)))
    assert methods
    assert len({method.name for method in methods}) == len(methods)
    for method in methods:
        assert method.result.value == count * size, method.name
        assert method.steps[-1].equation is not None
        for step in method.steps:
            assert step.equation is None or step.equation.holds(), (method.name, step)
