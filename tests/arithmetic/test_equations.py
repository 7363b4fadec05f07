"""Equations are written as a pupil writes them, and only true ones hold."""

from __future__ import annotations

from fractions import Fraction

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import (
    Equation,
    Expression,
    Operation,
    Parts,
    Remainder,
    Unknown,
    equation,
    minus,
    over,
    part_of,
    plus,
    times,
    value_of,
)
from typeset.quantities.amount import Amount, number
from typeset.quantities.parsing import parse_amount


def amount(text: str) -> Amount:
    return parse_amount(text)


@pytest.mark.parametrize(
    ("made", "text"),
    [
        (equation(times(number(6), amount("12 floats")), amount("72 floats")), "6 × 12 = 72"),
        (equation(times(number(6), amount("£2.50")), amount("£15")), "6 × £2.50 = £15"),
        (equation(amount("1.5 kg"), amount("1500 g")), "1.5 kg = 1,500 g"),
        (equation(part_of(amount("15%"), number(360)), number(54)), "15% of 360 = 54"),
        # National curriculum 2013, Year 6, guidance on brackets: 2 + 1 × 3 = 5, (2 + 1) × 3 = 9.
        (equation(plus(number(2), times(number(1), number(3))), number(5)), "2 + 1 × 3 = 5"),
        (equation(times(plus(number(2), number(1)), number(3)), number(9)), "(2 + 1) × 3 = 9"),
        # National curriculum 2013, appendix 1: 432 ÷ 5 = 86 r 2 (from memory).
        (
            equation(over(number(432), number(5)), Remainder(number(86), number(2))),
            "432 ÷ 5 = 86 r 2",
        ),
        (equation(times(amount("3 cm"), amount("6 cm")), amount("18 cm²")), "3 cm × 6 cm = 18 cm²"),
        (
            equation(Parts((number(5), number(2))), Parts((number(60), number(24)))),
            "5 : 2 = 60 : 24",
        ),
        (equation(minus(number(9), minus(number(5), number(2))), number(6)), "9 − (5 − 2) = 6"),
    ],
)
def test_true_equations_hold_and_read_well(made: Equation, text: str) -> None:
    assert made.holds()
    assert made.text() == text


@pytest.mark.parametrize(
    "made",
    [
        equation(times(number(6), number(12)), number(73)),
        equation(amount("1.5 kg"), amount("150 g")),
        equation(over(number(432), number(5)), Remainder(number(85), number(7))),
        equation(over(number(432), number(5)), Remainder(number(86), number(3))),
        equation(Parts((number(5), number(2))), Parts((number(2), number(5)))),
        Equation((number(2), number(3)), (">",)),
        equation(number(4), number(4), number(5)),
    ],
)
def test_untrue_equations_do_not_hold(made: Equation) -> None:
    assert not made.holds()


def test_an_equation_with_a_missing_number_proves_nothing() -> None:
    assert equation(Unknown(), number(3)).holds()
    with pytest.raises(ValueError, match="no single value"):
        value_of(Unknown())


@st.composite
def expressions(draw: st.DrawFn, depth: int = 3) -> Expression:
    if depth == 0 or draw(st.booleans()):
        return number(draw(st.integers(1, 40)))
    sign = draw(st.sampled_from("+−×÷"))
    return Operation(sign, draw(expressions(depth - 1)), draw(expressions(depth - 1)))


@settings(max_examples=200, deadline=None)
@given(expressions())
def test_what_is_printed_means_what_is_reckoned(expression: Expression) -> None:
    """sympy reads the printed text, brackets and all, and must find our value."""
    try:
        value = value_of(expression)
    except ZeroDivisionError:
        return
    printed = Equation((expression,), ()).text()
    read = sympy.sympify(
        printed.replace("×", "*").replace("÷", "/").replace("−", "-"), rational=True
    )
    assert Fraction(int(read.p), int(read.q)) == value
