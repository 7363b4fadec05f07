"""Laws of the demand score: making numbers harder never makes a working easier.

The laws are ours (the score has no outside reference); each one says what 'harder' means.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from typeset.arithmetic.demand import Cost, costs_of, demand_of
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
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import number

tried = settings(max_examples=80, derandomize=True, deadline=None)
whole = st.integers(1, 99_999)
factor = st.integers(1, 999)
digit = st.integers(1, 9)
proper = st.tuples(st.integers(1, 11), st.integers(2, 12)).filter(lambda pair: pair[0] < pair[1])


def working(*lines: Expression | Equation) -> Working:
    steps = [
        step("Work it out.", line if isinstance(line, Equation) else equation(line, number(0)))
        for line in lines
    ]
    return Working("some way", tuple(steps), {})


def score(*lines: Expression | Equation) -> Fraction:
    return demand_of(working(*lines))


def in_front(value: int, more: int) -> int:
    """The number with a further digit before its first one."""
    return int(f"{more}{value}")


@tried
@given(one=whole, other=whole, more=digit)
def test_a_further_digit_in_front_never_makes_a_sum_easier(one: int, other: int, more: int) -> None:
    long = number(in_front(one, more))
    assert score(plus(number(one), number(other))) <= score(plus(long, number(other)))
    assert score(plus(number(other), number(one))) <= score(plus(number(other), long))


@tried
@given(one=whole, less=whole, more=digit)
def test_a_further_digit_in_front_never_makes_a_difference_easier(
    one: int, less: int, more: int
) -> None:
    assume(less <= one)
    long = number(in_front(one, more))
    assert score(minus(number(one), number(less))) <= score(minus(long, number(less)))


@tried
@given(one=factor, other=factor, more=digit)
def test_a_further_digit_never_makes_a_product_easier(one: int, other: int, more: int) -> None:
    for long in (10 * one + more, in_front(one, more)):
        assert score(times(number(one), number(other))) <= score(times(number(long), number(other)))
        assert score(times(number(other), number(one))) <= score(times(number(other), number(long)))


@tried
@given(quotient=factor, divisor=st.integers(2, 99), more=digit)
def test_a_longer_quotient_or_divisor_never_makes_a_division_easier(
    quotient: int, divisor: int, more: int
) -> None:
    plain = score(over(number(quotient * divisor), number(divisor)))
    longer = (10 * quotient + more) * divisor
    assert plain <= score(over(number(longer), number(divisor)))
    large = 10 * divisor + more
    assert plain <= score(over(number(quotient * large), number(large)))


@tried
@given(divisor=st.integers(2, 99), quotient=factor, data=st.data())
def test_a_remainder_never_makes_a_division_easier(
    divisor: int, quotient: int, data: st.DataObject
) -> None:
    rest = data.draw(st.integers(1, divisor - 1))
    exact = over(number(divisor * quotient), number(divisor))
    left = equation(
        over(number(divisor * quotient + rest), number(divisor)),
        Remainder(number(quotient), number(rest)),
    )
    assert left.holds()
    # The noughts of an exact dividend (1,000 ÷ 8) may save a digit or two, no more than the rest.
    assert score(exact) <= score(left)


@tried
@given(columns=st.lists(st.tuples(digit, digit), min_size=1, max_size=4), at=st.integers(0, 3))
def test_crossing_a_ten_never_makes_a_sum_easier(columns: list[tuple[int, int]], at: int) -> None:
    """The same digits but for one column, which crosses a ten instead of staying below it."""
    assume(at < len(columns))
    below = [(one, min(other, 9 - one)) for one, other in columns]
    assume(all(other > 0 for _one, other in below))
    crossing = [(9, 9) if index == at else pair for index, pair in enumerate(below)]
    sums = [
        plus(*(number("".join(str(pair[side]) for pair in each)) for side in (0, 1)))
        for each in (below, crossing)
    ]
    assert score(sums[0]) < score(sums[1])


@tried
@given(inside=st.tuples(st.integers(2, 12), st.integers(2, 12)), beyond=st.integers(13, 99))
def test_beyond_the_tables_is_never_easier(inside: tuple[int, int], beyond: int) -> None:
    one, other = inside
    # Multiplying by ten moves places, whatever the other number.
    assume(beyond % 10 and other != 10)
    product = score(times(number(one), number(other)))
    assert product < score(times(number(beyond), number(other)))
    assert score(over(number(one * other), number(other))) < score(
        over(number(beyond * other), number(other))
    )


@tried
@given(value=whole, other=st.integers(2, 999), part=proper)
def test_a_fraction_instead_of_a_whole_number_is_never_easier(
    value: int, other: int, part: tuple[int, int]
) -> None:
    mixed, plain, second = number(value + Fraction(*part)), number(value), number(other)
    for sign in (plus, minus, times, over):
        assert score(sign(plain, second)) < score(sign(mixed, second))
        assert score(sign(second, plain)) < score(sign(second, mixed))


@tried
@given(whole=st.integers(1, 9_999), part=proper)
def test_several_parts_are_never_easier_than_one(whole: int, part: tuple[int, int]) -> None:
    unit = part_of(number(Fraction(1, part[1])), number(whole))
    many = part_of(number(Fraction(*part)), number(whole))
    assume(Fraction(*part).denominator == part[1] and part[0] > 1)
    assert score(unit) < score(many)


@tried
@given(lines=st.lists(st.tuples(whole, whole), min_size=1, max_size=5))
def test_a_step_more_is_always_harder(lines: list[tuple[int, int]]) -> None:
    sums = [plus(number(one), number(other)) for one, other in lines]
    assert score(*sums[:-1]) < score(*sums)
    told = Working("some way", (*working(*sums).steps, Step(())), {})
    assert score(*sums) < demand_of(told)


@tried
@given(one=whole, other=whole)
def test_the_score_is_the_sum_of_its_costs(one: int, other: int) -> None:
    way = working(times(number(one), number(other)), plus(number(one), number(other)))
    costs = costs_of(way)
    assert set(costs) == set(Cost) and sum(costs.values()) == demand_of(way)
    assert all(value >= 0 for value in costs.values())


@pytest.mark.parametrize(
    ("easier", "harder"),
    [
        (part_of(number("1/4"), number(12)), part_of(number("1/4"), number(52))),
        (part_of(number("1/4"), number(12)), part_of(number("3/4"), number(12))),
        (over(number(48), number(6)), over(number(384), number(16))),
        (times(number("12333"), number(67)), times(number("37000/3"), number(67))),
        (plus(number("2.5"), number(1)), plus(number("2.75"), number(1))),
    ],
)
def test_pairs_that_once_were_out_of_order(easier: Expression, harder: Expression) -> None:
    assert score(easier) < score(harder)
