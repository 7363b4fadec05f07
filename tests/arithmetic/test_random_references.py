"""Random problems of every family, checked against references outside the project.

sympy solves the equations of each structure, written here a second time; itertools counts
choices and groups one by one; pint converts units; fractions and math do the rest. A problem
that the reference finds senseless (half a gull) must be refused.

The ordinary run tries 60 problems a test, the same ones every time. TYPESET_DEEP=1 tries
2,000 a family, other ones every time, and a larger number tries so many:

    TYPESET_DEEP=10000 python -m pytest tests/arithmetic/test_random_*.py

Here: ratios and pairs of amounts. Groups and counting, sums and steps have files of their own
beside this one; `random_problems.py` holds what they share.
"""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    LENGTHS,
    MASSES,
    PINT,
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
from typeset.arithmetic.families import FAMILIES


@tried
@given(
    counts=st.lists(st.integers(1, 12), min_size=2, max_size=3),
    amount=hundredths,
    data=st.data(),
)
def test_ratio(counts: list[int], amount: Fraction, data: st.DataObject) -> None:
    sides = ("gulls", "terns", "puffins")[: len(counts)]
    names = [*sides, "whole"]
    if len(counts) == 2 and counts[0] != counts[1]:
        names.append("difference")
    known, asked = data.draw(st.permutations(names))[:2]
    symbols = {name: sympy.Symbol(name) for name in (*names, "one")}
    equations = [
        symbols[side] - count * symbols["one"] for side, count in zip(sides, counts, strict=True)
    ]
    equations.append(symbols["whole"] - sum(symbols[side] for side in sides))
    if "difference" in names:
        high, low = sorted(sides, key=lambda side: -counts[sides.index(side)])
        equations.append(symbols["difference"] - symbols[high] + symbols[low])
    equations.append(symbols[known] - rational(amount))
    parts = {side: str(count) for side, count in zip(sides, counts, strict=True)}
    solution = solved("ratio", parts=parts, known={known: f"{typed(amount)} kg"}, find=asked)
    assert value_of(solution, asked) == root(symbols[asked], *equations)


@tried
@given(known=hundredths, wanted=hundredths, other=hundredths, data=st.data())
def test_proportion_with_units(
    known: Fraction, wanted: Fraction, other: Fraction, data: st.DataObject
) -> None:
    first, second, asked = (data.draw(st.sampled_from(sorted(LENGTHS))) for _ in range(3))
    one = PINT.Quantity(known, LENGTHS[first])
    two = PINT.Quantity(wanted, LENGTHS[second])
    assume(one != two)
    mass, asked = (
        data.draw(st.sampled_from(sorted(MASSES))),
        data.draw(st.sampled_from(sorted(MASSES))),
    )
    reference = (PINT.Quantity(other, MASSES[mass]) * two / one).to(MASSES[asked]).magnitude
    solution = solved(
        "proportion",
        together={"rope": f"{typed(known)} {first}", "lead": f"{typed(other)} {mass}"},
        wanted={"rope": f"{typed(wanted)} {second}"},
        find="lead",
        answer_in=asked,
    )
    assert value_of(solution, "lead") == reference


@tried
@given(known=middle, wanted=middle, other=middle)
def test_proportion_of_counted_things(known: int, wanted: int, other: int) -> None:
    assume(known != wanted)
    x = sympy.Symbol("x")
    reference = root(x, x * known - other * wanted)
    solution = refused_unless_whole(
        reference,
        "proportion",
        together={"boats": f"{known} boats", "nets": f"{other} nets"},
        wanted={"boats": f"{wanted} boats"},
        find="nets",
    )
    assert solution is None or value_of(solution, "nets") == reference


@tried
@given(known=middle, wanted=middle, other=middle)
def test_constant_difference(known: int, wanted: int, other: int) -> None:
    assume(known != wanted)
    x = sympy.Symbol("x")
    reference = root(x, (x - wanted) - (other - known))
    solution = refused_unless_whole(
        reference,
        "constant difference",
        together={"Yuki": f"{known} laps", "Kofi": f"{other} laps"},
        wanted={"Yuki": f"{wanted} laps"},
        find="Kofi",
    )
    assert solution is None or value_of(solution, "Kofi") == reference


@tried
@given(known=middle, wanted=middle, other=middle)
def test_constant_sum(known: int, wanted: int, other: int) -> None:
    assume(known != wanted)
    x = sympy.Symbol("x")
    reference = root(x, x + wanted - other - known)
    solution = refused_unless_whole(
        reference,
        "constant sum",
        together={"out": f"{known} boats", "in": f"{other} boats"},
        wanted={"out": f"{wanted} boats"},
        find="in",
    )
    assert solution is None or value_of(solution, "in") == reference


@tried
@given(known=middle, wanted=middle, other=hundredths)
def test_inverse_proportion(known: int, wanted: int, other: Fraction) -> None:
    assume(known != wanted)
    x = sympy.Symbol("x")
    solution = solved(
        "inverse proportion",
        together={"crew": f"{known} sailors", "rope": f"{typed(other)} m"},
        wanted={"crew": f"{wanted} sailors"},
        find="rope",
    )
    assert value_of(solution, "rope") == root(x, x * wanted - known * rational(other))


@tried
@given(known=middle, wanted=middle, other=hundredths)
def test_unchanging(known: int, wanted: int, other: Fraction) -> None:
    assume(known != wanted)
    solution = solved(
        "unchanging",
        together={"nets": f"{known} nets", "time": f"{typed(other)} h"},
        wanted={"nets": f"{wanted} nets"},
        find="time",
    )
    assert value_of(solution, "time") == other


# The family that a test asks for, as it stands in its source.
ASKED = re.compile(r'(?:solved|refused_unless_whole)\(\s*(?:reference,\s*)?"([a-z ]+)"')


def test_every_family_has_a_reference() -> None:
    files = Path(__file__).parent.glob("test_random_*.py")
    asked = {name for file in files for name in ASKED.findall(file.read_text(encoding="utf-8"))}
    assert asked >= set(FAMILIES)
