"""What the tests with random problems share: how many they try, and how the core is asked."""

from __future__ import annotations

import os
from fractions import Fraction
from typing import Any

import pint
import pytest
import sympy
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from typeset.arithmetic.answers import AnswerValue, same_answer
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

settings.register_profile("always", deadline=None, suppress_health_check=[HealthCheck.too_slow])
_ALWAYS = settings.get_profile("always")
settings.register_profile("ordinary", _ALWAYS, max_examples=60, derandomize=True)
# TYPESET_DEEP=10000 tries so many of every family; 1 stands for the usual long run.
_deep = int(os.environ.get("TYPESET_DEEP") or 0)
_examples = 2000 if _deep == 1 else max(1, _deep)
settings.register_profile("deep", _ALWAYS, max_examples=_examples, derandomize=False)
tried = settings.get_profile("deep" if _deep else "ordinary")

PINT: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
LENGTHS = {"mm": "mm", "cm": "cm", "m": "m", "km": "km", "feet": "foot", "miles": "mile"}
MASSES = {"g": "g", "kg": "kg", "tonnes": "metric_ton", "ounces": "ounce", "pounds": "pound"}

small = st.integers(2, 12)
middle = st.integers(2, 200)
large = st.integers(2, 5000)
# As typed: to hundredths, so that nothing but the numbers themselves is tried.
hundredths = st.integers(1, 20000).map(lambda count: Fraction(count, 100))


def solved(structure: str, **fields: Any) -> Solution:
    """The problem of these fields as the builder makes it, without its story."""
    family = FAMILIES[structure]
    named = {name.replace("_", " "): value for name, value in fields.items()}
    checked = family.fields_model.model_validate(named, context={"nouns": {}})
    solution = solve(family, family.build(checked))
    for mistake in solution.mistakes:
        wrong = [not same_answer(each, solution.answers[name]) for name, each in told(mistake)]
        assert any(wrong), f"the mistake '{mistake.misconception}' is right"
    return solution


def told(mistake: Any) -> list[tuple[str, AnswerValue]]:
    return list(mistake.answers.items())


def typed(value: Fraction | int) -> str:
    """A number as an author types it: a decimal, or a fraction where none ends."""
    hundreds = Fraction(value) * 100
    if hundreds.denominator != 1:
        return str(value)
    whole, part = divmod(int(hundreds), 100)
    return f"{whole}.{part:02d}".rstrip("0").rstrip(".")


def value_of(solution: Solution, name: str) -> Fraction:
    answer = solution.answers[name]
    assert isinstance(answer, Amount)
    return answer.value


def root(asked: sympy.Symbol, *equations: sympy.Expr) -> Fraction:
    """The one value of the unknown for which all expressions vanish, by sympy."""
    (found,) = sympy.solve(equations, dict=True)
    value = sympy.Rational(found[asked])
    return Fraction(int(value.p), int(value.q))


def rational(value: Fraction | int) -> sympy.Rational:
    return sympy.Rational(Fraction(value).numerator, Fraction(value).denominator)


def refused_unless_whole(reference: Fraction, structure: str, **fields: Any) -> Solution | None:
    """The solution; where the reference is no whole number, the refusal is checked instead."""
    if reference.denominator == 1 and reference >= 0:
        return solved(structure, **fields)
    with pytest.raises(AmountError):
        solved(structure, **fields)
    return None
