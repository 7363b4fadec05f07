"""Random sums, comparisons and chains of steps against sympy, pint, math and statistics."""

from __future__ import annotations

import math
import statistics
from fractions import Fraction

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    MASSES,
    PINT,
    hundredths,
    large,
    middle,
    rational,
    root,
    solved,
    tried,
    typed,
    value_of,
)
from typeset.errors import AmountError


@tried
@given(parts=st.lists(hundredths, min_size=2, max_size=4), data=st.data())
def test_part_whole_with_units(parts: list[Fraction], data: st.DataObject) -> None:
    units = [data.draw(st.sampled_from(sorted(MASSES))) for _ in parts]
    asked = data.draw(st.sampled_from(sorted(MASSES)))
    named = {
        f"part {letter}": f"{typed(part)} {unit}"
        for letter, part, unit in zip("abcd", parts, units, strict=False)
    }
    weighed = [PINT.Quantity(part, MASSES[unit]) for part, unit in zip(parts, units, strict=True)]
    together = sum(weighed[1:], weighed[0])
    solution = solved("part whole", parts=named, answer_in=asked)
    assert value_of(solution, "whole") == together.to(MASSES[asked]).magnitude


@tried
@given(parts=st.lists(large, min_size=2, max_size=4), whole=large)
def test_part_of_a_known_whole(parts: list[int], whole: int) -> None:
    x = sympy.Symbol("x")
    reference = root(x, x + sum(parts) - whole)
    fields = {
        "whole": f"{whole} kites",
        "parts": {
            f"part {letter}": f"{part} kites" for letter, part in zip("abcd", parts, strict=False)
        },
        "find": "rest",
    }
    if reference < 0:
        with pytest.raises(AmountError):
            solved("part whole", **fields)
        return
    assert value_of(solved("part whole", **fields), "rest") == reference


@tried
@given(one=large, other=large, missing=st.sampled_from(["start", "by", "end"]), is_up=st.booleans())
def test_change(one: int, other: int, missing: str, is_up: bool) -> None:
    by = "increase" if is_up else "decrease"
    names = [name if name != "by" else by for name in ("start", "by", "end")]
    asked = missing if missing != "by" else by
    numbers = dict(zip([name for name in names if name != asked], (one, other), strict=True))
    x = {name: rational(numbers[name]) if name in numbers else sympy.Symbol("x") for name in names}
    reference = root(x[asked], x["start"] + (x[by] if is_up else -x[by]) - x["end"])
    fields = {name: f"{number} boats" for name, number in numbers.items()} | {"find": asked}
    if reference < 0 or (reference == 0 and asked == by):
        with pytest.raises(AmountError):
            solved("change", **fields)
        return
    assert value_of(solved("change", **fields), asked) == reference


@tried
@given(
    one=hundredths, other=hundredths, missing=st.sampled_from(["smaller", "larger", "difference"])
)
def test_comparison(one: Fraction, other: Fraction, missing: str) -> None:
    names = ("smaller", "larger", "difference")
    numbers = dict(zip([name for name in names if name != missing], (one, other), strict=True))
    x = {name: rational(numbers[name]) if name in numbers else sympy.Symbol("x") for name in names}
    reference = root(x[missing], x["smaller"] + x["difference"] - x["larger"])
    fields = {name: f"{typed(number)} m" for name, number in numbers.items()}
    if reference < 0 or (reference == 0 and missing == "difference"):
        with pytest.raises(AmountError):
            solved("comparison", **fields)
        return
    assert value_of(solved("comparison", **fields), missing) == reference


SIGNS = ("+", "−", "×", "÷")
NAMES = ("ropes", "nets", "corks", "floats")
# A formula as typed, over all four names: any signs, with or without one pair of brackets.
formulas = st.tuples(
    st.lists(st.sampled_from(SIGNS), min_size=3, max_size=3), st.sampled_from([None, 0, 1, 2])
)


def formula_text(signs: list[str], bracket: int | None) -> str:
    names = list(NAMES)
    if bracket is not None:
        names[bracket] = f"({names[bracket]}"
        names[bracket + 1] = f"{names[bracket + 1]})"
    tail = [f"{sign} {name}" for sign, name in zip(signs, names[1:], strict=True)]
    return " ".join([names[0], *tail])


@tried
@given(numbers=st.lists(middle, min_size=4, max_size=4), formula=formulas)
def test_steps_by_the_rules_of_sympy(
    numbers: list[int], formula: tuple[list[str], int | None]
) -> None:
    text = formula_text(*formula)
    values = {name: sympy.Integer(n) for name, n in zip(NAMES, numbers, strict=True)}
    expression = sympy.parse_expr(
        text.replace("×", "*").replace("÷", "/").replace("−", "-"), local_dict=values
    )
    quantities = {name: str(number) for name, number in zip(NAMES, numbers, strict=True)}
    fields = {"quantities": quantities, "steps": [f"result = {text}"], "find": "result"}
    if not expression.is_finite:
        with pytest.raises((AmountError, ZeroDivisionError)):
            solved("steps", **fields)
        return
    found = value_of(solved("steps", **fields), "result")
    assert sympy.Rational(found.numerator, found.denominator) == expression


@tried
@given(one=large, other=middle, third=middle)
def test_steps_by_functions(one: int, other: int, third: int) -> None:
    reference = {
        "full": one // other,
        "over": one % other,
        "shared": math.gcd(one, other),
        "together": math.lcm(other, third),
        "average": statistics.mean([Fraction(one), Fraction(other), Fraction(third)]),
        "trips": math.ceil(Fraction(one, other)),
    }
    steps = [
        "full = quotient(one, other)",
        "over = remainder(one, other)",
        "shared = hcf(one, other)",
        "together = lcm(other, third)",
        "average = mean(one, other, third)",
        "trips = round up(one ÷ other)",
    ]
    quantities = {"one": str(one), "other": str(other), "third": str(third)}
    solution = solved("steps", quantities=quantities, steps=steps, find=list(reference))
    assert {name: value_of(solution, name) for name in reference} == reference
