"""Random problems of inverse operations, means and searches, checked by sympy, statistics and
itertools; see test_random_references.py for how many are tried."""

from __future__ import annotations

import itertools
import operator
import statistics
from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    hundredths,
    middle,
    rational,
    root,
    small,
    solved,
    tried,
    typed,
    value_of,
)
from typeset.errors import AmountError

X = sympy.Symbol("x")
operation = st.tuples(st.sampled_from(["add", "subtract", "multiply by", "divide by"]), small)
WORDS = {"add": 1, "subtract": -1}


def chained(links: list[tuple[str, Any]], start: Any) -> Any:
    """The chain as sympy has it."""
    value = start
    for word, by in links:
        if word in WORDS:
            value = value + WORDS[word] * by
        else:
            value = value * by if word == "multiply by" else value / by
    return value


@tried
@given(links=st.lists(operation, min_size=1, max_size=4), end=hundredths)
def test_think_of_a_number(links: list[tuple[str, int]], end: Fraction) -> None:
    operations = [f"{word} {by}" for word, by in links]
    solution = solved("think of a number", operations=operations, result=typed(end))
    assert value_of(solution, "start") == root(X, chained(links, X) - rational(end))
    solution = solved("think of a number", operations=operations, start=typed(end))
    reached = sympy.Rational(chained(links, rational(end)))
    assert value_of(solution, "result") == Fraction(int(reached.p), int(reached.q))


@tried
@given(links=st.lists(operation, min_size=1, max_size=4), start=middle, data=st.data())
def test_a_missing_number_in_the_chain(
    links: list[tuple[str, int]], start: int, data: st.DataObject
) -> None:
    at = data.draw(st.integers(0, len(links) - 1))
    end = sympy.Rational(chained(links, rational(Fraction(start))))
    # Only what is typed as a decimal or a fraction is given; nothing below nought.
    assume(end > 0)
    operations = [f"{word} {'_' if place == at else by}" for place, (word, by) in enumerate(links)]
    fields = {"start": str(start), "result": typed(Fraction(int(end.p), int(end.q)))}
    open_links = [(word, X if place == at else by) for place, (word, by) in enumerate(links)]
    if links[at][0] not in WORDS and not chained(links[:at], rational(Fraction(start))):
        # Nothing times or divided by any number is nothing: every number would do.
        with pytest.raises(AmountError):
            solved("think of a number", operations=operations, **fields)
        return
    solution = solved("think of a number", operations=operations, **fields)
    equation = chained(open_links, rational(Fraction(start))) - end
    assert value_of(solution, "missing number") == root(X, equation)


NODE = st.recursive(
    st.integers(1, 30).map(str),
    lambda inner: st.tuples(inner, st.sampled_from("+-×÷"), inner).map(
        lambda parts: f"({parts[0]} {parts[1]} {parts[2]})"
    ),
    max_leaves=2,
)


AROUND = st.tuples(st.sampled_from("+-×÷"), NODE, st.booleans())


@tried
@given(
    inside=st.integers(1, 30).map(str),
    around=st.lists(AROUND, min_size=1, max_size=2),
    box=st.integers(1, 60),
)
def test_missing_number(inside: str, around: list[tuple[str, str, bool]], box: int) -> None:
    """Both sides as sympy reads them; the known side is made from a number for the box."""
    side = "_"
    for sign, other, first in around:
        side = f"({side} {sign} {other})" if first else f"({other} {sign} {side})"
    known = read_by_sympy(side.replace("_", str(box)))
    assume(known.is_finite and known >= 0)
    sentence = f"{side} = {known} + {inside} - {inside}"
    difference = sympy.together(read_by_sympy(side.replace("_", "x")) - known)
    roots = sympy.solve(difference, X)
    if len(roots) != 1:
        # Multiplied by nought, or nought divided: any number would do, or the box is lost.
        with pytest.raises((AmountError, ZeroDivisionError)):
            solved("missing number", sentence=sentence)
        return
    solution = solved("missing number", sentence=sentence)
    assert value_of(solution, "missing number") == Fraction(int(roots[0].p), int(roots[0].q))


def read_by_sympy(text: str) -> Any:
    return sympy.sympify(text.replace("×", "*").replace("÷", "/"), rational=True)


@tried
@given(count=st.integers(2, 60), each=st.tuples(small, small), total=st.integers(4, 400))
def test_two_sorts(count: int, each: tuple[int, int], total: int) -> None:
    """Every way to divide the count into two is tried."""
    assume(each[0] != each[1])
    fits = [a for a in range(1, count) if a * each[0] + (count - a) * each[1] == total]
    fields = {
        "sorts": {"crabs": f"{each[0]} legs", "gulls": f"{each[1]} legs"},
        "count": str(count),
        "total": f"{total} legs",
        "find": ["crabs", "gulls"],
    }
    if not fits:
        with pytest.raises(AmountError):
            solved("two sorts", **fields)
        return
    solution = solved("two sorts", **fields)
    assert value_of(solution, "crabs") == fits[0]
    assert value_of(solution, "gulls") == count - fits[0]


@tried
@given(count=st.integers(3, 40), part=st.integers(1, 39), each=st.tuples(small, small))
def test_two_sorts_that_fit(count: int, part: int, each: tuple[int, int]) -> None:
    assume(each[0] != each[1] and part < count)
    solution = solved(
        "two sorts",
        sorts={"crabs": f"{each[0]} legs", "gulls": f"{each[1]} legs"},
        count=str(count),
        total=f"{part * each[0] + (count - part) * each[1]} legs",
        find="crabs",
    )
    assert value_of(solution, "crabs") == part


@tried
@given(first=middle, factor=st.integers(2, 5), steps=st.integers(2, 8), total=st.booleans())
def test_repeated_doubling(first: int, factor: int, steps: int, total: bool) -> None:
    """The row itself, by itertools, and sympy for its sum."""
    row = list(itertools.accumulate([factor] * steps, operator.mul, initial=first))
    fields = {"first": f"{first} terns", "times": str(factor)}
    asked = "total" if total else "last"
    solution = solved("repeated doubling", until=str(steps + 1), find=asked, **fields)
    k = sympy.Symbol("k")
    whole = sympy.summation(first * sympy.Integer(factor) ** k, (k, 0, steps))
    assert value_of(solution, asked) == (int(whole) if total else row[-1])
    passed = solved("repeated doubling", more_than=f"{row[-2]} terns", every="year", **fields)
    assert value_of(passed, "year") == steps + 1


@tried
@given(last=small, factor=st.integers(2, 4), steps=st.integers(2, 6))
def test_repeated_halving(last: int, factor: int, steps: int) -> None:
    first = last * factor**steps
    fields = {"first": f"{first} g", "times": f"1/{factor}"}
    solution = solved("repeated doubling", after=str(steps), **fields)
    assert value_of(solution, "last") == last
    passed = solved("repeated doubling", less_than=f"{last * factor} g", **fields)
    assert value_of(passed, "day") == steps + 1


@tried
@given(values=st.lists(hundredths, min_size=2, max_size=8, unique=True), data=st.data())
def test_mean(values: list[Fraction], data: st.DataObject) -> None:
    typed_values = [f"{typed(each)} km" for each in values]
    solution = solved("mean", values=typed_values)
    exact = statistics.mean(values)
    assert value_of(solution, "mean") == exact
    at = data.draw(st.integers(0, len(values) - 1))
    # With this mean the missing value comes back; a mean has to be typed as a decimal or fraction.
    blank = [*typed_values[:at], "_", *typed_values[at + 1 :]]
    solution = solved("mean", values=blank, mean=f"{exact} km")
    assert value_of(solution, "missing value") == values[at]


@tried
@given(mean=hundredths, count=small)
def test_total_behind_a_mean(mean: Fraction, count: int) -> None:
    solution = solved("mean", mean=f"{typed(mean)} kg", count=f"{count} crates")
    total = value_of(solution, "total")
    assert statistics.mean([total, *[Fraction(0)] * (count - 1)]) == mean
