"""Ways to add and to subtract: which suit which numbers, and that each is right."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.adding import ways_to_add
from typeset.arithmetic.methods import Method
from typeset.arithmetic.subtracting import across_zero, through_zero, ways_to_subtract
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount

PARTS, NEXT, ROUND = "Adding in parts", "Making the next round number", "Rounding and adjusting"
PLACES, COLUMNS = "Tens with tens, ones with ones", "Column addition"
ON, BACK = "Counting on from the larger", "Counting back"
UP, AWAY, SAME = "Counting up", "Taking away in parts", "The same difference"
DOWN = "Column subtraction"

# Which methods a teacher would expect for these numbers (common practice, no source).
SUMS = [
    ("47 38", {PARTS, NEXT, ROUND, PLACES, COLUMNS}),
    ("47 35", {PARTS, NEXT, PLACES, COLUMNS}),
    ("14 6", {ON, "Adding"}),
    ("36 27 14", {"One after another", "A round pair first", PLACES, COLUMNS}),
    ("£12.60 £3.99", {PARTS, ROUND}),
]
DIFFERENCES = [
    ("85 47", {UP, AWAY, SAME, DOWN}),
    ("85 39", {UP, AWAY, SAME, ROUND, DOWN}),
    ("340 185", {UP, AWAY, DOWN}),
    ("24 3", {BACK, UP, DOWN}),
    ("15 7", {UP, "Subtracting"}),
]


@pytest.mark.parametrize(("terms", "names"), SUMS)
def test_fitting_ways_to_add(terms: str, names: set[str]) -> None:
    amounts = [parse_amount(term) for term in terms.split()]
    assert {method.name for method in ways_to_add(amounts)} == names


@pytest.mark.parametrize(("pair", "names"), DIFFERENCES)
def test_fitting_ways_to_subtract(pair: str, names: set[str]) -> None:
    large, small = (parse_amount(each) for each in pair.split())
    assert {method.name for method in ways_to_subtract(large, small)} == names


def told(methods: list[Method], name: str) -> list[str]:
    (method,) = (each for each in methods if each.name == name)
    return [plain(each.sentence) for each in method.steps]


def test_columns_carry_and_exchange() -> None:
    added = list(ways_to_add([parse_amount("47"), parse_amount("38")]))
    assert told(added, COLUMNS) == [
        "Ones: 15. Write 5 and carry 1.",
        "Tens: 8.",
        "Read the digits: 85.",
    ]
    taken = list(ways_to_subtract(parse_amount("304"), parse_amount("47")))
    assert told(taken, DOWN) == [
        "Ones: exchange one ten, and 7 stay.",
        "Tens: exchange one hundred, and 5 stay.",
        "Hundreds: 2.",
        "Read the digits: 257.",
    ]


def test_counting_up_stops_at_round_numbers() -> None:
    methods = list(ways_to_subtract(parse_amount("340"), parse_amount("185")))
    assert told(methods, UP) == [
        "From 185 up to 190: 5.",
        "From 190 up to 200: 10.",
        "From 200 up to 340: 140.",
        "Together: 155.",
    ]


def check(methods: list[Method], result: Fraction) -> None:
    assert methods
    assert len({method.name for method in methods}) == len(methods)
    for method in methods:
        assert method.result.value == result, method.name
        for step in method.steps:
            assert step.equation is None or step.equation.holds(), (method.name, step)


amounts = st.one_of(
    st.integers(1, 99_999).map(Fraction), st.integers(1, 9999).map(lambda part: Fraction(part, 100))
)


@settings(max_examples=150, deadline=None, derandomize=True)
@given(st.lists(amounts, min_size=2, max_size=4))
def test_every_way_to_add_gives_the_sum(values: list[Fraction]) -> None:
    terms = [parse_amount("1 m").like(value) for value in values]
    check(list(ways_to_add(terms)), sum(values, Fraction(0)))


@settings(max_examples=150, deadline=None, derandomize=True)
@given(amounts, amounts)
def test_every_way_to_subtract_gives_the_difference(one: Fraction, other: Fraction) -> None:
    small, large = sorted((one, other))
    unit = parse_amount("1 m")
    check(list(ways_to_subtract(unit.like(large), unit.like(small))), large - small)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(st.integers(-30, 30), st.integers(-30, 30).filter(bool))
def test_below_zero(start: int, change: int) -> None:
    degree = parse_amount("1 °C")
    check(list(through_zero(degree.like(start), degree.like(change))), Fraction(start + change))
    if change > 0 > start:
        higher = degree.like(start + change)
        check(list(across_zero(higher, degree.like(start))), Fraction(change))
