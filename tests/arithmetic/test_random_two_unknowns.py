"""Random problems with two unknowns, and with a fixed charge and a rate, against sympy and pint."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    MASSES,
    PINT,
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

NAMES = {"larger": "Asha", "smaller": "Kofi"}
LARGER, SMALLER = sympy.symbols("larger smaller")
mass = st.sampled_from(sorted(MASSES))


def weight(value: Fraction, unit: str) -> Fraction:
    """The value in kilograms, by pint."""
    return Fraction(PINT.Quantity(value, MASSES[unit]).to("kg").magnitude)


@tried
@given(total=hundredths, gap=hundredths, units=st.tuples(mass, mass))
def test_sum_and_difference_with_units(
    total: Fraction, gap: Fraction, units: tuple[str, str]
) -> None:
    together, apart = weight(total, units[0]), weight(gap, units[1])
    fields = {
        **NAMES,
        "sum": f"{typed(total)} {units[0]}",
        "difference": f"{typed(gap)} {units[1]}",
        "find": ["Asha", "Kofi"],
        "answer_in": "kg",
    }
    if apart >= together:
        with pytest.raises(AmountError):
            solved("sum and difference", **fields)
        return
    equations = (LARGER + SMALLER - rational(together), LARGER - SMALLER - rational(apart))
    solution = solved("sum and difference", **fields)
    assert value_of(solution, "Asha") == root(LARGER, *equations)
    assert value_of(solution, "Kofi") == root(SMALLER, *equations)


@tried
@given(total=hundredths, times=small, asked=st.sampled_from(["Asha", "Kofi", "difference"]))
def test_sum_and_multiple(total: Fraction, times: int, asked: str) -> None:
    equations = (LARGER + SMALLER - rational(total), LARGER - times * SMALLER)
    larger, smaller = root(LARGER, *equations), root(SMALLER, *equations)
    solution = solved(
        "sum and multiple", **NAMES, sum=f"{typed(total)} m", times=str(times), find=asked
    )
    expected = {"Asha": larger, "Kofi": smaller, "difference": larger - smaller}
    assert value_of(solution, asked) == expected[asked]


@tried
@given(gap=hundredths, times=small, asked=st.sampled_from(["Asha", "Kofi", "sum"]))
def test_difference_and_multiple(gap: Fraction, times: int, asked: str) -> None:
    equations = (LARGER - SMALLER - rational(gap), LARGER - times * SMALLER)
    larger, smaller = root(LARGER, *equations), root(SMALLER, *equations)
    solution = solved(
        "difference and multiple",
        **NAMES,
        difference=f"{typed(gap)} m",
        times=str(times),
        find=asked,
    )
    expected = {"Asha": larger, "Kofi": smaller, "sum": larger + smaller}
    assert value_of(solution, asked) == expected[asked]


@tried
@given(total=middle, times=small)
def test_shells_are_not_cut(total: int, times: int) -> None:
    fields = {**NAMES, "sum": f"{total} shells", "times": str(times), "find": "Kofi"}
    reference = root(SMALLER, LARGER + SMALLER - total, LARGER - times * SMALLER)
    if reference.denominator == 1:
        assert value_of(solved("sum and multiple", **fields), "Kofi") == reference
        return
    with pytest.raises(AmountError):
        solved("sum and multiple", **fields)


PLACES = ("fixed", "rate", "count", "total")


@tried
@given(
    fixed=hundredths,
    rate=hundredths,
    counts=st.tuples(middle, middle),
    data=st.data(),
)
def test_fixed_charge(
    fixed: Fraction, rate: Fraction, counts: tuple[int, int], data: st.DataObject
) -> None:
    first, count = counts
    assume(first != count)
    values: dict[str, Fraction] = {
        "fixed": fixed,
        "rate": rate,
        "count": Fraction(count),
        "total": fixed + rate * count,
    }
    typed_as = {
        name: f"{count} carriages" if name == "count" else f"{typed(value)} m"
        for name, value in values.items()
    }
    asked = data.draw(st.sampled_from(PLACES))
    given_names = {name for name in PLACES if name != asked}
    fields: dict[str, Any] = {name: typed_as[name] for name in given_names}
    x = {name: sympy.Symbol(name) for name in PLACES}
    equations = [x["fixed"] + x["rate"] * x["count"] - x["total"]]
    if asked != "rate" and data.draw(st.booleans()):
        # A known pair instead of the rate.
        fields["together"] = {
            "count": f"{first} carriages",
            "total": f"{typed(fixed + rate * first)} m",
        }
        del fields["rate"]
        given_names.remove("rate")
        equations.append(x["fixed"] + x["rate"] * first - rational(fixed + rate * first))
    equations += [x[name] - rational(values[name]) for name in sorted(given_names)]
    assert value_of(solved("fixed charge", **fields, find=asked), asked) == root(
        x[asked], *equations
    )
