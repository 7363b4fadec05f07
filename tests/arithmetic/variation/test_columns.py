"""Carrying, exchanging and the tables.

Outside checks: the number of carries in a + b is (s(a) + s(b) − s(a + b)) ÷ 9, where s is the
sum of the digits (Kummer 1852, by Legendre's formula; from memory). A subtraction
exchanges where the addition that undoes it carries.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import (
    Equation,
    Expression,
    Remainder,
    equation,
    minus,
    over,
    part_of,
    plus,
    times,
)
from typeset.arithmetic.variation.columns import has_carrying, has_exchanging, is_within_tables
from typeset.arithmetic.workings import Working, step
from typeset.quantities.amount import Amount, number
from typeset.quantities.parsing import parse_amount


def _one(made: Equation) -> Working:
    return Working("A way", (step("So it is.", made),), {})


def working(sum_: Expression) -> Working:
    return _one(equation(sum_, number(0)))


def digits(value: int) -> int:
    return sum(map(int, str(value)))


@settings(max_examples=150, deadline=None)
@given(st.integers(0, 9999), st.integers(0, 9999))
def test_sums_and_differences_by_their_digits(one: int, other: int) -> None:
    carries = digits(one) + digits(other) != digits(one + other)
    assert has_carrying(working(plus(number(one), number(other)))) is carries
    assert has_exchanging(working(minus(number(one + other), number(other)))) is carries
    # A decimal point changes nothing in the columns.
    tenths = plus(number(Fraction(one, 10)), number(Fraction(other, 10)))
    assert has_carrying(working(tenths)) is carries


@pytest.mark.parametrize(
    ("one", "other", "carries"),
    [
        (7, 8, False),  # a fact, written down whole
        (61, 8, False),
        (14, 6, True),
        (23, 3, False),
        (230, 30, False),
        (25, 2, True),
        (21, 34, True),  # 84 + 630
        (12, 13, False),
        (31, 12, False),
        (41, 23, False),
        (54, 21, True),  # 54 + 1,080
        (91, 92, True),
        ("2.5", 3, True),
        ("2.1", 4, False),
    ],
)
def test_products(one: int | str, other: int, carries: bool) -> None:
    assert has_carrying(working(times(number(one), number(other)))) is carries
    assert has_carrying(working(times(number(other), number(one)))) is carries


def test_fractions_and_clock_times() -> None:
    def both(left: str, right: str) -> tuple[Amount, Amount]:
        return parse_amount(left), parse_amount(right)

    assert not has_carrying(working(plus(*both("1 1/3", "2 1/3"))))
    assert has_carrying(working(plus(*both("1 2/3", "2 2/3"))))
    assert not has_exchanging(working(minus(*both("3 2/3", "1 1/3"))))
    assert has_exchanging(working(minus(*both("3 1/3", "1 2/3"))))
    assert not has_carrying(working(plus(*both("9:20", "35 min"))))
    assert has_carrying(working(plus(*both("9:40", "35 min"))))
    assert has_exchanging(working(minus(*both("9:20", "35 min"))))


@pytest.mark.parametrize(
    ("sum_", "is_fact"),
    [
        (times(number(12), number(12)), True),
        (times(number(13), number(2)), False),
        (times(number(20), number(6)), False),
        (over(number(84), number(7)), True),
        (over(number(91), number(7)), False),
        (over(number(84), number(14)), False),
        (part_of(number(Fraction(3, 4)), number(48)), True),
        (part_of(number(Fraction(3, 4)), number(60)), False),
        (plus(number(190), number(345)), True),
    ],
)
def test_tables(sum_: Expression, is_fact: bool) -> None:
    assert is_within_tables(working(sum_)) is is_fact


def test_a_fact_may_leave_a_remainder_only_where_it_is_written() -> None:
    left = over(number(50), number(8))
    assert is_within_tables(_one(Equation((left, Remainder(number(6), number(2))))))
    assert not is_within_tables(working(left))


def test_lines_without_an_equation_ask_for_nothing() -> None:
    quiet = Working("A way", (step("Nothing changes."),), {})
    assert not has_carrying(quiet)
    assert not has_exchanging(quiet)
    assert is_within_tables(quiet)
