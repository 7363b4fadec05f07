"""Random common factors, common multiples and sequences against math, sympy and itertools."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import LENGTHS, PINT, solved, tried, value_of
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
@given(counts=st.lists(st.integers(2, 60), min_size=2, max_size=3))
def test_together_again(counts: list[int]) -> None:
    assume(len(set(counts)) > 1)
    ferries = sizes(counts, 1, "min")
    reference = lcm(*counts)
    fields = {"every": ferries, "find": ["together", *ferries], "groups_called": "crossings"}
    if reference > 10_000:
        with pytest.raises(AmountError, match="larger than 10,000"):
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
