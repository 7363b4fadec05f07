"""Proportion against published items, sympy, and a table of which strategy fits which amounts."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import times
from typeset.arithmetic.families import FAMILIES, proportion
from typeset.arithmetic.families.pair_rows import common_chunk
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.solving import solve
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

UP, DOWN, CHUNK, ONE = "Scaling up", "Scaling down", "Through a common chunk", "Through one"
OVER, UNDER = "A little too much, then take off", "A little too little, then add on"
ADD_ON, TAKE_OFF = "Adding on a part", "Taking off a part"
DOUBLES, ACROSS = "Doubling and halving", "Across from one amount to the other"
ROWS, PART = "Building up row by row", "As a fraction"


def pair(known: str, other: str, wanted: str, **more: Any) -> dict[str, Any]:
    return {
        "together": {"float": known, "rope": other},
        "wanted": {"float": wanted},
        "find": "rope",
        **more,
    }


PUBLISHED = [
    # Cramer, Post & Currier 1993: 3 dollars are 2 pounds. (C)
    (pair("3 dollars", "£2", "21 dollars"), "£14"),
    # Cramer & Post 1993, Math. Teacher 86(5): 3 m = 300 cm. (C)
    (pair("3 m", "300 cm", "4.5 m"), "450 cm"),
    # Van Dooren et al. 2005, category 'proportional', packs and euros as pounds. (M)
    (pair("4 packs", "£8", "24 packs"), "£48"),
    # Karplus, Hart 1981: Mr Short and Mr Tall. (M)
    (pair("4 units", "6 clips", "6 units"), "9 clips"),
    # Hart/CSMS 1981: eels fed in proportion to their length. (M)
    (pair("15 cm", "9 fish", "10 cm"), "6 fish"),
    (pair("10 cm", "12 fish", "15 cm"), "18 fish"),
    # Misailidou & Williams 2003: paint and loaves. (M)
    (pair("3 tins", "6 tins", "7 tins"), "14 tins"),
    (pair("10 campers", "8 loaves", "15 campers"), "12 loaves"),
    # STA 2016 P2 Q13: 20 boxes are 140 cm high; 3 are taken away. (R*)
    (pair("20 boxes", "140 cm", "17 boxes"), "119 cm"),
    # STA 2017 P2 Q18: 24 hours are 100 %; 18 hours. (R*)
    (pair("24 h", "100%", "18 h"), "75%"),
    # STA 2017 P2 Q21: 1 cm for 20 km; 250 km. (R*)
    (pair("20 km", "1 cm", "250 km"), "12.5 cm"),
    # STA 2019 P2 Q19: 250 ml in 4 seconds; litres in a minute. (R*)
    (pair("4 s", "250 ml", "1 min", **{"answer in": "litres"}), "3.75 litres"),
]


@pytest.mark.parametrize(("fields", "answer"), PUBLISHED)
def test_published_items(solved: Any, answers_of: Any, fields: Any, answer: Any) -> None:
    solution = solved("proportion", fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision is Decision.MULTIPLY


def test_soup_for_six(solved: Any, answers_of: Any) -> None:
    # Hart/CSMS 1981: for 8 people 2 pints of water, 4 cubes, half a pint of cream. (M)
    soup = {"people": "8 people", "water": "2 pints", "cubes": "4 cubes", "cream": "1/2 pint"}
    finds = ["water", "cubes", "cream"]
    for people, expected in (
        ("6", ["1.5 pints", "3 cubes", "3/8 pint"]),
        ("4", ["1 pint", "2 cubes", "1/4 pint"]),
    ):
        fields = {"together": soup, "wanted": {"people": people}, "find": finds}
        assert answers_of(solved("proportion", fields)) == expected


WRONG = [
    # The documented additive errors: Karplus/Hart 8, loaves 13, paint 10. (M)
    (pair("4 units", "6 clips", "6 units"), "additive strategy", "8 clips"),
    (pair("10 campers", "8 loaves", "15 campers"), "additive strategy", "13 loaves"),
    (pair("3 tins", "6 tins", "7 tins"), "additive strategy", "10 tins"),
    # 3 tins to 7 tins: twice 3 and 1 more; twice 6 and 1 more. By hand.
    (pair("3 tins", "6 tins", "7 tins"), "incorrect build-up", "13 tins"),
    (pair("3 tins", "6 tins", "7 tins"), "magical doubling", "12 tins"),
    (pair("6 crates", "9 kg", "10 crates"), "constant sum", "5 kg"),
    (pair("3 m", "£4.50", "7 m"), "step left out", "£1.50"),
    (pair("3 m", "£4.50", "150 cm"), "unit not converted", "£225"),
]


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: Any, answer: Any
) -> None:
    assert wrong_answers(solved("proportion", fields))[name] == answer


REFUSED = [
    (pair("3 tins", "3 tins", "7 tins"), "additive strategy", "right answer"),
    (pair("3 tins", "6 tins", "9 tins"), "incorrect build-up", "right answer"),
    (pair("3 tins", "5 tins", "6 tins"), "magical doubling", "right answer"),
    (pair("4 floats", "£6", "19 floats"), "constant sum", "less than nothing"),
    (pair("8 people", "4 cubes", "6 people"), "step left out", "not a whole number"),
    (pair("3 m", "£4.50", "140 cm"), "unit not converted", ""),
]


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: Any, why: Any) -> None:
    solution = solved("proportion", fields)
    refused = {each.misconception: each.why for each in solution.refused}
    usable = {each.misconception for each in solution.mistakes}
    if why:
        assert why in refused[name]
        assert name not in usable
    else:
        assert name in usable


# Amounts, the easiest strategy, others found, and strategies that do not apply.
STRATEGIES = [
    (("3 m", "£2.10", "12 m"), UP, {DOUBLES, ONE, ROWS}, {CHUNK, OVER, DOWN}),
    (("12 m", "£9.60", "4 m"), DOWN, {ONE, PART}, {CHUNK, UP, TAKE_OFF}),
    (("6 crates", "27 kg", "10 crates"), CHUNK, {ACROSS, ONE, OVER}, {UP, DOWN, DOUBLES}),
    (("6 crates", "42 kg", "10 crates"), ACROSS, {CHUNK, ONE}, {UP, DOWN}),
    (("7 h", "28 km", "9 h"), ACROSS, {ONE}, {CHUNK, UP, OVER}),
    (("7 h", "£4.20", "9 h"), ONE, set(), {CHUNK, UP, DOWN, ACROSS}),
    (("5 floats", "£8", "24 floats"), OVER, {ONE}, {CHUNK, ACROSS, UP}),
    (("4 pots", "22 g", "10 pots"), CHUNK, {UNDER, OVER, ONE, ACROSS}, {UP, DOUBLES}),
    (("4 clips", "6 clips", "6 clips"), ADD_ON, {CHUNK, ACROSS}, {UP, ONE}),
    (("20 boxes", "140 cm", "17 boxes"), ACROSS, {ONE, TAKE_OFF}, {CHUNK, UP}),
    (("1 cm", "20 km", "12 cm"), ACROSS, {UP}, {ONE, CHUNK}),
    (("2 h", "£7.10", "10 h"), UP, {DOUBLES, ROWS, ONE}, {CHUNK, OVER}),
    # A half jar, or a part of a penny, never stands in a working.
    (("6 boxes", "9 jars", "10 boxes"), CHUNK, {OVER}, {ONE}),
    (("6 boxes", "£10", "9 boxes"), ADD_ON, {OVER, CHUNK}, {ONE}),
]


@pytest.mark.parametrize(("amounts", "easiest", "found", "absent"), STRATEGIES)
def test_strategies(solved: Any, amounts: Any, easiest: Any, found: Any, absent: Any) -> None:
    names = [each.strategy for each in solved("proportion", pair(*amounts)).workings]
    assert names[0] == easiest
    assert found <= set(names)
    assert not absent & set(names)


@settings(max_examples=60, deadline=None)
@given(
    known=st.integers(2, 40), wanted=st.integers(2, 60), each=st.integers(1, 30), by=st.booleans()
)
def test_against_sympy(known: Any, wanted: Any, each: Any, by: Any) -> None:
    if known == wanted:
        return
    other = each * known
    family = FAMILIES["proportion"]
    last = wanted * 10 if by else wanted
    unit = "mm" if by else "cm"
    fields = family.fields_model.model_validate(pair(f"{known} cm", f"{other} g", f"{last} {unit}"))
    x = sympy.Symbol("x")
    (expected,) = sympy.solve(sympy.Eq(x * known, other * wanted), x)
    answer = solve(family, family.build(fields)).answers["rope"]
    assert isinstance(answer, Amount)
    assert answer.value == Fraction(int(expected.p), int(expected.q))


@given(one=st.integers(1, 200), other=st.integers(1, 200), under=st.integers(1, 12))
@settings(max_examples=50)
def test_common_chunk_is_the_greatest(one: Any, other: Any, under: Any) -> None:
    chunk = common_chunk(Fraction(one, under), Fraction(other, under))
    assert chunk == Fraction(int(sympy.gcd(one, other)), under)


def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    def broken(given_pair: Any) -> Any:
        for working in proportion._through_one(given_pair):
            value = next(iter(working.answers.values()))
            assert isinstance(value, Amount)
            wrong = {"rope": value.like(value.value + 1)}
            yield type(working)(working.strategy, working.steps, wrong)

    monkeypatch.setattr(proportion, "_WAYS", (broken,))
    with pytest.raises(SolvingError, match="Through one: reaches"):
        solved("proportion", pair("3 m", "£4.50", "7 m"))


def test_an_untrue_equation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(proportion, "over", times)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("proportion", pair("8 cm", "4 g", "6 cm"))


def test_model_of_equal_parts(solved: Any) -> None:
    figure = solved("proportion", pair("6 crates", "9 kg", "10 crates")).figure
    assert [(bar.name, len(bar.parts)) for bar in figure.bars] == [
        ("6 crates", 3),
        ("10 crates", 5),
    ]


COMPLAINTS = [
    ({"together": {"rope": "3 m"}}, "one amount alone"),
    ({"wanted": {"rope": "7 m", "cost": "£2"}}, "exactly one amount is changed"),
    ({"wanted": {"roap": "7 m"}}, "did you mean 'rope'"),
    ({"find": "rope"}, "both wanted and asked for"),
    ({"wanted": {"rope": "3 m"}}, "does not change"),
    ({"wanted": {"rope": "7 kg"}}, "not of one kind"),
    ({"answer in": "kg"}, "not in kg"),
    ({"together": {"rope": "3 coils", "cost": "£2"}, "wanted": {"rope": "7 ropes"}}, "one noun"),
    ({"together": {"rope": "9:30", "cost": "£2"}, "wanted": {"rope": "9:40"}}, "time of day"),
    ({"together": {"wanted": "3 m", "rope": "4 m"}}, "cannot be the name"),
    ({"together": {"rope": "3 m", "cost": "£1"}, "wanted": {"rope": "1 m"}}, "pence"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: Any, message: Any) -> None:
    sound = {"together": {"rope": "3 m", "cost": "£4.50"}, "wanted": {"rope": "7 m"}}
    with pytest.raises(AmountError) as caught:
        solved("proportion", {**sound, "find": "cost", **changed})
    assert message in str(caught.value)
