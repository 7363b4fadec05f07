"""Random common factors, common multiples and sequences against math, sympy and itertools."""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate
from math import gcd, lcm

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from sympy.ntheory.modular import crt

from tests.arithmetic.random_problems import LENGTHS, PINT, solved, tried, value_of
from typeset.arithmetic.answers import NameAnswer
from typeset.errors import AmountError

NAMES = ("red", "blue", "green")
several = st.lists(st.integers(2, 300), min_size=2, max_size=3)
shared = st.integers(1, 24)


def sizes(counts: list[int], factor: int, noun: str) -> dict[str, str]:
    """The counts times a factor, so that they share one, by name."""
    return {name: f"{count * factor} {noun}" for name, count in zip(NAMES, counts, strict=False)}


@tried
@given(counts=st.lists(st.integers(1, 40), min_size=2, max_size=3), factor=shared)
def test_identical_sets(counts: list[int], factor: int) -> None:
    assume(min(counts) * factor > 1 and len(set(counts)) > 1)
    amounts = sizes(counts, factor, "floats")
    reference = gcd(*(count * factor for count in counts))
    fields = {"identical_sets": amounts, "find": ["sets", *amounts], "groups_called": "bundles"}
    if reference == 1:
        with pytest.raises(AmountError, match="no common factor but 1"):
            solved("highest common factor", **fields)
        return
    solution = solved("highest common factor", **fields)
    assert value_of(solution, "sets") == reference == sympy.igcd(*[c * factor for c in counts])
    for name, count in zip(amounts, counts, strict=True):
        assert value_of(solution, name) == Fraction(count * factor, reference)


@tried
@given(
    counts=st.lists(st.integers(2, 40), min_size=2, max_size=2, unique=True),
    factor=shared,
    units=st.lists(st.sampled_from(["cm", "m"]), min_size=2, max_size=2),
)
def test_equal_pieces_of_a_length(counts: list[int], factor: int, units: list[str]) -> None:
    lengths = [
        int(PINT.Quantity(Fraction(count * factor), LENGTHS[unit]).to("cm").magnitude)
        for count, unit in zip(counts, units, strict=True)
    ]
    both_in_metres = set(units) == {"m"}
    reference = gcd(*lengths) // (100 if both_in_metres else 1)
    assume(len(set(lengths)) > 1 and reference > 1 and max(lengths) <= 9000)
    ropes = {
        name: f"{count * factor} {unit}"
        for name, count, unit in zip(NAMES, counts, units, strict=False)
    }
    finds = ["each", "pieces"]
    solution = solved("highest common factor", equal_pieces=ropes, find=finds, answer_in="cm")
    assert value_of(solution, "each") == reference * (100 if both_in_metres else 1)
    assert value_of(solution, "pieces") == sum(lengths) // int(value_of(solution, "each"))


@tried
@given(sides=st.lists(st.integers(2, 60), min_size=2, max_size=2, unique=True))
def test_square_tiles_laid_one_by_one(sides: list[int]) -> None:
    """The largest square of which whole rows and columns cover the floor, by trying them all."""
    fits = [side for side in range(1, min(sides) + 1) if not any(each % side for each in sides)]
    floor = dict(zip(("length", "width"), (f"{side} cm" for side in sides), strict=True))
    fields = {"square_tiles": floor, "find": ["each", "tiles"]}
    if fits[-1] == 1:
        with pytest.raises(AmountError, match="no common factor but 1"):
            solved("highest common factor", **fields)
        return
    solution = solved("highest common factor", **fields)
    assert value_of(solution, "each") == fits[-1]
    assert value_of(solution, "tiles") * fits[-1] ** 2 == sides[0] * sides[1]


@tried
@given(counts=st.lists(st.integers(2, 60), min_size=2, max_size=3))
def test_together_again(counts: list[int]) -> None:
    assume(len(set(counts)) > 1)
    ferries = sizes(counts, 1, "min")
    reference = lcm(*counts)
    fields = {"every": ferries, "find": ["together", *ferries], "groups_called": "crossings"}
    if reference > 100_000:
        with pytest.raises(AmountError, match="larger than 100,000"):
            solved("lowest common multiple", **fields)
        return
    solution = solved("lowest common multiple", **fields)
    assert value_of(solution, "together") == reference == sympy.ilcm(*counts)
    for name, count in zip(ferries, counts, strict=True):
        assert value_of(solution, name) == reference // count


@tried
@given(
    counts=st.lists(st.integers(2, 45), min_size=2, max_size=2, unique=True),
    start=st.integers(0, 23 * 60),
)
def test_together_on_the_clock_minute_by_minute(counts: list[int], start: int) -> None:
    """Both timetables as sets of minutes of one day; the first that is in both."""
    rows = [set(range(start + count, 24 * 60, count)) for count in counts]
    fields = {
        "every": sizes(counts, 1, "min"),
        "start": f"{start // 60:02d}:{start % 60:02d}",
        "find": "next",
    }
    met = rows[0] & rows[1]
    if not met:
        with pytest.raises(AmountError, match="after midnight"):
            solved("lowest common multiple", **fields)
        return
    assert value_of(solved("lowest common multiple", **fields), "next") == min(met)


@tried
@given(counts=st.lists(st.integers(2, 40), min_size=2, max_size=2, unique=True))
def test_packs_that_match(counts: list[int]) -> None:
    """Packs bought one at a time, always of the kind that there is less of."""
    bought = [1, 1]
    while bought[0] * counts[0] != bought[1] * counts[1]:
        behind = 0 if bought[0] * counts[0] < bought[1] * counts[1] else 1
        bought[behind] += 1
    packs = sizes(counts, 1, "hooks")
    solution = solved("lowest common multiple", packs=packs, find=["red", "blue", "each"])
    assert [value_of(solution, name) for name in ("red", "blue")] == bought
    assert value_of(solution, "each") == bought[0] * counts[0]


@tried
@given(
    counts=st.lists(st.integers(3, 40), min_size=2, max_size=3, unique=True),
    left=st.integers(1, 39),
)
def test_packs_with_some_left_over(counts: list[int], left: int) -> None:
    """The least number above what is left over that leaves it in packs of every kind: sympy's
    Chinese remainder theorem."""
    assume(left < min(counts) and lcm(*counts) <= 5000)
    reference, period = crt(counts, [left] * len(counts), check=True)
    solution = solved(
        "lowest common multiple",
        packs=sizes(counts, 1, "shells"),
        left_over=f"{left} {'shell' if left == 1 else 'shells'}",
        find="each",
    )
    assert value_of(solution, "each") == reference + period


def terms(formula: sympy.Expr, count: int) -> list[str]:
    """The first terms of a formula in n, by sympy, as typed."""
    return [str(formula.subs(N, place)) for place in range(1, count + 1)]


N = sympy.Symbol("n", integer=True, positive=True)
far = st.integers(5, 60)


@tried
@given(first=st.integers(0, 60), gap=st.integers(-9, 12), place=far)
def test_same_step_by_formula(first: int, gap: int, place: int) -> None:
    assume(gap)
    formula = sympy.expand(first + (N - 1) * gap)
    told = terms(formula, 3)
    solution = solved("number sequence", terms=told, position=str(place), find="term")
    value = int(formula.subs(N, place))
    assert value_of(solution, "term") == value
    back = solved("number sequence", terms=told, value=str(value), find="position")
    (reference,) = sympy.solve(sympy.Eq(formula, value), N)
    assert value_of(back, "position") == reference


@tried
@given(first=st.integers(0, 20), gap=st.integers(2, 12), value=st.integers(60, 200))
def test_is_it_in_the_sequence(first: int, gap: int, value: int) -> None:
    told = [str(first + gap * at) for at in range(3)]
    solution = solved("number sequence", terms=told, value=str(value), find="in the sequence")
    is_term = value in range(first, value + 1, gap)
    assert solution.answers["in the sequence"] == NameAnswer("yes" if is_term else "no")


@tried
@given(
    first=st.integers(0, 20),
    gap=st.integers(1, 9),
    growth=st.integers(1, 6),
    place=st.integers(5, 40),
)
def test_growing_step_by_formula(first: int, gap: int, growth: int, place: int) -> None:
    formula = first + (N - 1) * gap + growth * (N - 1) * (N - 2) / 2
    fields = {"terms": terms(formula, 4), "rule": "growing step"}
    solution = solved("number sequence", **fields, position=str(place), find="term")
    assert value_of(solution, "term") == int(formula.subs(N, place))


@tried
@given(
    first=st.integers(0, 20),
    gap=st.integers(1, 9),
    growth=st.integers(1, 6),
    value=st.integers(150, 400),
)
def test_growing_step_reaches_or_passes(first: int, gap: int, growth: int, value: int) -> None:
    """Every term up to the value added up by itertools."""
    steps = range(gap, gap + growth * 14, growth)
    row = list(accumulate(steps, initial=first))[:15]
    assume(row[3] < value <= row[-1])
    fields = {"terms": [str(each) for each in row[:4]], "rule": "growing step"}
    solution = solved("number sequence", **fields, value=str(value), find="in the sequence")
    assert solution.answers["in the sequence"] == NameAnswer("yes" if value in row else "no")
    if value in row:
        back = solved("number sequence", **fields, value=str(value), find="position")
        assert value_of(back, "position") == row.index(value) + 1


@tried
@given(
    first=st.integers(1, 20),
    factor=st.integers(2, 5),
    place=st.integers(4, 13),
    falls=st.booleans(),
)
def test_multiplying_by_powers(first: int, factor: int, place: int, falls: bool) -> None:
    row = [first * factor**at for at in range(13)]
    if falls:
        row = list(reversed(row[:place]))
    fields = {"terms": [str(each) for each in row[:3]], "rule": "multiply"}
    assume(len(row) > 3)
    solution = solved("number sequence", **fields, position=str(place), find="term")
    assert value_of(solution, "term") == row[place - 1]
    back = solved("number sequence", **fields, value=str(row[place - 1]), find="position")
    assert value_of(back, "position") == place
