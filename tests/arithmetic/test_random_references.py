"""Random problems of every family, checked against references outside the project.

sympy solves the equations of each structure, written here a second time; itertools counts
choices and groups one by one; pint converts units; fractions and math do the rest. A problem
that the reference finds senseless (half a gull) must be refused.

The ordinary run tries 40 problems a family, the same ones every time. TYPESET_DEEP=1 tries
2,000 a family, other ones every time:

    TYPESET_DEEP=1 python -m pytest tests/arithmetic/test_random_references.py
"""

from __future__ import annotations

import os
from fractions import Fraction
from itertools import combinations, permutations, product
from typing import Any

import pint
import pytest
import sympy
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from typeset.arithmetic.answers import AnswerValue, WithRemainder, same_answer
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution, solve
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

settings.register_profile("always", deadline=None, suppress_health_check=[HealthCheck.too_slow])
_ALWAYS = settings.get_profile("always")
settings.register_profile("ordinary", _ALWAYS, max_examples=40, derandomize=True)
settings.register_profile("deep", _ALWAYS, max_examples=2000)
tried = settings.get_profile("deep" if os.environ.get("TYPESET_DEEP") == "1" else "ordinary")

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


@tried
@given(counts=st.lists(small, min_size=1, max_size=3), each=small)
def test_equal_groups_counted_one_by_one(counts: list[int], each: int) -> None:
    reference = len(list(product(*(range(count) for count in counts), range(each))))
    groups = {f"level {index}": f"{count} boxes" for index, count in enumerate(counts)}
    solution = solved("equal groups", groups=groups, each=f"{each} hooks")
    assert value_of(solution, "total") == reference


@tried
@given(count=large, each=hundredths, data=st.data())
def test_equal_groups_of_a_measure(count: int, each: Fraction, data: st.DataObject) -> None:
    unit, asked = (data.draw(st.sampled_from(sorted(LENGTHS))) for _ in range(2))
    reference = (count * PINT.Quantity(each, LENGTHS[unit])).to(LENGTHS[asked]).magnitude
    solution = solved(
        "equal groups", groups=f"{count} ropes", each=f"{typed(each)} {unit}", answer_in=asked
    )
    assert value_of(solution, "total") == reference


def dealt(total: int, hands: int) -> tuple[int, int]:
    """What each gets when things are dealt out round by round, and what stays over."""
    rounds = [range(start, start + hands) for start in range(0, total, hands)]
    full = [each for each in rounds if each.stop <= total]
    return len(full), total - sum(len(each) for each in full)


@tried
@given(total=large, groups=small)
def test_sharing(total: int, groups: int) -> None:
    each, rest = dealt(total, groups)
    assume(each > 0)
    fields = {"total": f"{total} shells", "groups": f"{groups} pupils"}
    if not rest:
        assert value_of(solved("sharing", **fields), "each") == each
        return
    with pytest.raises(AmountError):
        solved("sharing", **fields)
    exact = solved("sharing", **fields, remainder="as a fraction")
    assert value_of(exact, "each") == Fraction(total, groups)
    both = solved("sharing", **fields, remainder="both").answers["each"]
    assert isinstance(both, WithRemainder)
    assert both.groups.value == each
    assert both.rest.value == rest


@tried
@given(total=large, each=middle)
def test_grouping(total: int, each: int) -> None:
    groups, rest = dealt(total, each)
    assume(groups > 0)
    fields = {"total": f"{total} hooks", "each": f"{each} hooks", "answer_in": "boxes"}
    if not rest:
        assert value_of(solved("grouping", **fields), "groups") == groups
        return
    with pytest.raises(AmountError):
        solved("grouping", **fields)
    assert value_of(solved("grouping", **fields, remainder="round up"), "groups") == groups + 1
    assert value_of(solved("grouping", **fields, remainder="round down"), "groups") == groups
    fields.pop("answer_in")
    assert value_of(solved("grouping", **fields, find="left over"), "left over") == rest
    assert value_of(solved("grouping", **fields, find="short"), "short") == each - rest


@tried
@given(
    smaller=hundredths, factor=hundredths, missing=st.sampled_from(["smaller", "times", "larger"])
)
def test_times_as_many(smaller: Fraction, factor: Fraction, missing: str) -> None:
    assume(factor != 1)
    values = {"smaller": smaller, "times": factor, "larger": smaller * factor}
    asked = {name: sympy.Symbol(name) for name in (missing, "difference", "total")}
    x = {name: asked.get(name, rational(value)) for name, value in values.items()}
    equations = (
        x["smaller"] * x["times"] - x["larger"],
        asked["difference"] - (x["larger"] - x["smaller"]),
        asked["total"] - (x["larger"] + x["smaller"]),
    )
    units = {"smaller": " m", "times": "", "larger": " m"}
    given_ = {
        name: f"{typed(each)}{units[name]}" for name, each in values.items() if name != missing
    }
    finds = [missing, "difference", "total"]
    if factor < 1:
        with pytest.raises(AmountError):
            solved("times as many", **given_, find=finds)
        return
    solution = solved("times as many", **given_, find=finds)
    for name in finds:
        assert value_of(solution, name) == root(asked[name], *equations)


@tried
@given(counts=st.lists(small, min_size=2, max_size=3))
def test_combinations_counted_one_by_one(counts: list[int]) -> None:
    choices = dict(zip(("hulls", "sails", "flags"), map(str, counts), strict=False))
    reference = len(list(product(*(range(count) for count in counts))))
    assert value_of(solved("combinations", choices=choices), "ways") == reference


@tried
@given(things=st.integers(3, 7), data=st.data())
def test_arrangements_counted_one_by_one(things: int, data: st.DataObject) -> None:
    places = data.draw(st.integers(2, things))
    reference = len(list(permutations(range(things), places)))
    fields = {"things": f"{things} boats"} | ({"places": str(places)} if places < things else {})
    assert value_of(solved("arrangements", **fields), "orders") == reference


@tried
@given(things=st.integers(3, 60), meetings=st.integers(1, 4))
def test_handshakes_counted_one_by_one(things: int, meetings: int) -> None:
    reference = meetings * len(list(combinations(range(things), 2)))
    fields = {"things": f"{things} teams"} | ({"meetings": str(meetings)} if meetings > 1 else {})
    assert value_of(solved("handshakes", **fields), "pairs") == reference
