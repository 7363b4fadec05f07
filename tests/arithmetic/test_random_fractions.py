"""Random fractions and percentages of quantities, against sympy; see test_random_references."""

from __future__ import annotations

from fractions import Fraction

import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    hundredths,
    middle,
    rational,
    refused_unless_whole,
    root,
    solved,
    tried,
    typed,
    value_of,
)

NAMES = ("whole", "part", "rest")


@tried
@given(
    percent=st.integers(1, 99),
    amount=hundredths,
    names=st.permutations(NAMES),
    as_text=st.booleans(),
)
def test_fraction_of_a_length(
    percent: int, amount: Fraction, names: list[str], as_text: bool
) -> None:
    """The equations of a whole in two parts, with one of the three amounts known."""
    known, asked, _ = names
    whole, part, rest = sympy.symbols(NAMES)
    symbols = dict(zip(NAMES, (whole, part, rest), strict=True))
    share = Fraction(percent, 100)
    text = f"{percent}%" if as_text else str(share)
    solution = solved(
        "fraction of a quantity",
        fraction=text,
        find=asked,
        **{known: f"{typed(amount)} m"},
    )
    expected = root(
        symbols[asked],
        whole - part - rest,
        part - rational(share) * whole,
        symbols[known] - rational(amount),
    )
    assert value_of(solution, asked) == expected


@tried
@given(over=st.integers(1, 11), under=st.integers(2, 12), whole=middle)
def test_fraction_of_what_is_counted(over: int, under: int, whole: int) -> None:
    """A cut kite is refused."""
    assume(over < under)
    reference = Fraction(over, under) * whole
    solution = refused_unless_whole(
        reference,
        "fraction of a quantity",
        fraction=f"{over}/{under}",
        whole=f"{whole} kites",
        find="part",
    )
    assert solution is None or value_of(solution, "part") == reference


@tried
@given(part=hundredths, rest=hundredths, in_percent=st.booleans())
def test_what_fraction(part: Fraction, rest: Fraction, in_percent: bool) -> None:
    unit = {"answer_in": "%"} if in_percent else {}
    solution = solved(
        "fraction of a quantity",
        part=f"{typed(part)} g",
        whole=f"{typed(part + rest)} g",
        find="fraction",
        **unit,
    )
    reference = sympy.Rational(rational(part), rational(part + rest)) * (100 if in_percent else 1)
    assert value_of(solution, "fraction") == Fraction(int(reference.p), int(reference.q))
