"""The exact solver against sympy."""

from __future__ import annotations

from fractions import Fraction

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.linear import Linear, solve_linear
from typeset.errors import AmountError

SMALL = st.fractions(min_value=-9, max_value=9, max_denominator=6)


@settings(max_examples=80, deadline=None)
@given(st.lists(st.tuples(SMALL, SMALL, SMALL, SMALL), min_size=1, max_size=4))
def test_agrees_with_sympy(rows: list[tuple[Fraction, ...]]) -> None:
    names = ("a", "b", "c")
    symbols = sympy.symbols(names)
    system = [
        sum(
            sympy.Rational(k.numerator, k.denominator) * s
            for k, s in zip(row, symbols, strict=False)
        )
        - sympy.Rational(row[3].numerator, row[3].denominator)
        for row in rows
    ]
    expected = sympy.linsolve(system, *symbols)
    ours = [Linear(dict(zip(names, row, strict=False)), row[3]) for row in rows]
    try:
        found = solve_linear(ours)
    except AmountError as error:
        free = expected and any(value.free_symbols for value in next(iter(expected)))
        assert ("contradict" in error.problem) == (not expected)
        assert ("more than one" in error.problem) == bool(free)
        return
    values = next(iter(expected))
    assert [found[name] for name in names] == [Fraction(int(v.p), int(v.q)) for v in values]


def test_one_equation_for_two_unknowns_is_refused() -> None:
    with pytest.raises(AmountError, match="more than one answer"):
        solve_linear([Linear({"a": 1, "b": 1}, 10)])
