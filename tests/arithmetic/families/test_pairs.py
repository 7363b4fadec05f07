"""The twins of proportion: same words and numbers, another structure, another answer."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import over, plus
from typeset.arithmetic.families import (
    FAMILIES,
    constant_difference,
    constant_sum,
    inverse_proportion,
    unchanging,
)
from typeset.arithmetic.families.pairs import working_of
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.solving import solve
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

DIFFERENCE, SUM = "constant difference", "constant sum"
INVERSE, SAME, PROPORTION = "inverse proportion", "unchanging", "proportion"
OVER_USE = "over-use of proportionality"


def pair(known: str, other: str, wanted: str) -> dict[str, Any]:
    return {
        "together": {"Asha": known, "Kofi": other},
        "wanted": {"Asha": wanted},
        "find": "Kofi",
    }


PUBLISHED = [
    # Cramer, Post & Currier 1993 (R; 21 is C, the wrong 45 is printed).
    (DIFFERENCE, pair("3 laps", "9 laps", "15 laps"), "21 laps", "45 laps"),
    # Van Dooren et al. 2005, additive items: ages, and a later start on the track. (M)
    (DIFFERENCE, pair("2 years", "6 years", "12 years"), "16 years", "36 years"),
    (DIFFERENCE, pair("5 laps", "15 laps", "30 laps"), "40 laps", "90 laps"),
    # The same, constant items: towels in the sun, and musicians. (M)
    (SAME, pair("3 towels", "12 h", "6 towels"), "12 h", "24 h"),
    (SAME, pair("5 players", "10 min", "35 players"), "10 min", "70 min"),
    # 120 players take 40 minutes; aperiodical.com, October 2017 (R): wrong 20 or 80.
    (SAME, pair("120 players", "40 min", "60 players"), "40 min", "20 min"),
]


@pytest.mark.parametrize(("structure", "fields", "answer", "wrong"), PUBLISHED)
def test_published_items(
    solved: Any,
    answers_of: Any,
    wrong_answers: Any,
    structure: Any,
    fields: Any,
    answer: Any,
    wrong: Any,
) -> None:
    solution = solved(structure, fields)
    assert answers_of(solution) == [answer]
    assert wrong_answers(solution)[OVER_USE] == wrong


def test_the_symphony_is_also_taken_for_inverse(solved: Any, wrong_answers: Any) -> None:
    # aperiodical.com, October 2017 (R): the other wrong answer is 80.
    solution = solved(SAME, pair("120 players", "40 min", "60 players"))
    assert wrong_answers(solution)["over-use of inverse proportion"] == "80 min"


TWINS = [
    (PROPORTION, "12 m", Decision.MULTIPLY, "double"),
    (DIFFERENCE, "10 m", Decision.ADD, "the difference stays the same"),
    (SUM, "2 m", Decision.ADD, "the two together stay the same"),
    (INVERSE, "3 m", Decision.MULTIPLY, "halve"),
    (SAME, "6 m", Decision.NEITHER, "still be 6 m"),
]


@pytest.mark.parametrize(("structure", "answer", "decision", "because"), TWINS)
def test_twins_differ_in_one_word(
    solved: Any,
    answers_of: Any,
    told: Any,
    structure: Any,
    answer: Any,
    decision: Any,
    because: Any,
) -> None:
    """Asha 4 m, Kofi 6 m, and Asha has 8 m: the verdict follows the structure alone."""
    solution = solved(structure, pair("4 m", "6 m", "8 m"))
    assert answers_of(solution) == [answer]
    assert solution.kind.decision is decision
    assert because in told(solution)[-1]


STRATEGIES = [
    (
        DIFFERENCE,
        pair("3 laps", "9 laps", "15 laps"),
        {"Keeping the difference", "Both change alike"},
    ),
    (
        SUM,
        pair("12 jars", "8 jars", "15 jars"),
        {"Keeping the total", "What one gains, the other loses"},
    ),
    (INVERSE, pair("3 men", "8 h", "6 men"), {"The one up, the other down", "One alone first"}),
    (INVERSE, pair("6 men", "4 h", "2 men"), {"The one up, the other down", "One alone first"}),
    (INVERSE, pair("6 men", "10 h", "4 men"), {"Through a common chunk", "One alone first"}),
    (SAME, pair("3 flags", "12 h", "6 flags"), {"Asking what changes", "Trying one at a time"}),
]


@pytest.mark.parametrize(("structure", "fields", "names"), STRATEGIES)
def test_strategies(solved: Any, structure: Any, fields: Any, names: Any) -> None:
    assert {each.strategy for each in solved(structure, fields).workings} == names


# By hand: each wrong way reckoned on the numbers beside it.
WRONG = [
    (DIFFERENCE, pair("3 laps", "9 laps", "5 laps"), "constant sum", "7 laps"),
    (DIFFERENCE, pair("3 laps", "9 laps", "15 laps"), "difference turned round", "9 laps"),
    (DIFFERENCE, pair("3 laps", "9 laps", "15 laps"), "step left out", "6 laps"),
    (SUM, pair("12 jars", "8 jars", "15 jars"), OVER_USE, "10 jars"),
    (SUM, pair("12 jars", "8 jars", "15 jars"), "same change to both", "11 jars"),
    (SUM, pair("12 jars", "8 jars", "15 jars"), "step left out", "20 jars"),
    (INVERSE, pair("3 men", "8 h", "6 men"), OVER_USE, "16 h"),
    (INVERSE, pair("3 men", "8 h", "6 men"), "constant sum", "5 h"),
    (INVERSE, pair("3 men", "8 h", "6 men"), "step left out", "24 h"),
    (SAME, pair("3 flags", "12 h", "6 flags"), "same change to both", "15 h"),
    (SAME, pair("3 flags", "12 h", "6 flags"), "over-use of inverse proportion", "6 h"),
]


@pytest.mark.parametrize(("structure", "fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, structure: Any, fields: Any, name: Any, answer: Any
) -> None:
    assert wrong_answers(solved(structure, fields))[name] == answer


REFUSED = [
    (DIFFERENCE, pair("3 laps", "3 laps", "6 laps"), OVER_USE, "right answer"),
    (DIFFERENCE, pair("3 laps", "9 laps", "15 laps"), "constant sum", "less than nothing"),
    (DIFFERENCE, pair("9 laps", "3 laps", "12 laps"), "difference turned round", ""),
    (DIFFERENCE, pair("9 laps", "9 laps", "12 laps"), "step left out", "nothing at all"),
    (SUM, pair("12 jars", "7 jars", "15 jars"), OVER_USE, "not a whole number of jars"),
    (SUM, pair("12 jars", "3 jars", "9 jars"), "same change to both", "nothing at all"),
    (INVERSE, pair("1 man", "8 h", "4 men"), "step left out", ""),
    (INVERSE, pair("2 men", "8 h", "16 men"), "constant sum", "less than nothing"),
    (SAME, pair("3 flags", "5 poles", "4 flags"), OVER_USE, "not a whole number of poles"),
    (SAME, pair("30 flags", "12 h", "6 flags"), "same change to both", "less than nothing"),
]


@pytest.mark.parametrize(("structure", "fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, structure: Any, fields: Any, name: Any, why: Any) -> None:
    solution = solved(structure, fields)
    refused = {each.misconception: each.why for each in solution.refused}
    usable = {each.misconception for each in solution.mistakes}
    assert (name in usable) == (not why)
    assert why in refused.get(name, "")


x = sympy.Symbol("x")
EQUATIONS = {
    PROPORTION: lambda a, b, w: sympy.Eq(a * x, b * w),
    DIFFERENCE: lambda a, b, w: sympy.Eq(x - w, b - a),
    SUM: lambda a, b, w: sympy.Eq(x + w, a + b),
    INVERSE: lambda a, b, w: sympy.Eq(x * w, a * b),
    SAME: lambda a, b, w: sympy.Eq(x, b),
}


@pytest.mark.parametrize("structure", list(EQUATIONS))
@settings(max_examples=50, deadline=None)
@given(a=st.integers(1, 40), b=st.integers(1, 40), w=st.integers(1, 40), in_mm=st.booleans())
def test_against_sympy(structure: Any, a: Any, b: Any, w: Any, in_mm: Any) -> None:
    """Every twin by an equation written here; lengths, so that halves make sense."""
    if a == w or (structure == SUM and w >= a + b):
        return
    family = FAMILIES[structure]
    wanted = f"{1000 * w} mm" if in_mm else f"{w} m"
    fields = family.fields_model.model_validate(pair(f"{a} m", f"{b} m", wanted))
    (expected,) = sympy.solve(EQUATIONS[structure](a, b, w), x)
    try:
        answer = solve(family, family.build(fields)).answers["Kofi"]
    except AmountError:
        assert expected < 0
        return
    assert isinstance(answer, Amount)
    assert answer.base == Fraction(int(expected.p), int(expected.q))


BROKEN = [
    (DIFFERENCE, constant_difference, "minus", plus),
    (SUM, constant_sum, "minus", plus),
    (INVERSE, inverse_proportion, "times", over),
]


@pytest.mark.parametrize(("structure", "module", "sign", "instead"), BROKEN)
def test_a_broken_strategy_stops_the_build(
    solved: Any, monkeypatch: Any, structure: Any, module: Any, sign: Any, instead: Any
) -> None:
    """One sign of the strategies exchanged for another."""
    monkeypatch.setattr(module, sign, instead)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved(structure, pair("4 m", "6 m", "8 m"))


def test_a_broken_unchanging_strategy_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    def broken(pair_: Any, because: Any) -> Any:
        more = {name: each.like(each.value + 1) for name, each in pair_.others.items()}
        return working_of(pair_, "Asking what changes", [], more)

    monkeypatch.setattr(unchanging, "_nothing_changes", broken)
    with pytest.raises(SolvingError, match="reaches 7"):
        solved(SAME, pair("4 m", "6 m", "8 m"))


def test_the_author_tells_why_nothing_changes(solved: Any, told: Any) -> None:
    fields = {**pair("3 flags", "12 h", "6 flags"), "because": "they all dry at the same time."}
    text = " ".join(told(solved(SAME, fields)))
    assert "nothing changes, because they all dry at the same time. So it is still 12 h." in text
    assert "Try 4 flags instead of 3 flags" in text


COMPLAINTS = [
    (DIFFERENCE, pair("3 m", "6 kg", "5 m"), "not of one kind"),
    (SUM, pair("3 m", "£6", "5 m"), "not of one kind"),
    (SUM, {**pair("3 m", "6 m", "5 m"), "find": ["Kofi", "Kofi"]}, "only one other"),
    (SUM, pair("3 m", "6 m", "12 m"), "less than nothing"),
    (INVERSE, pair("3 men", "5 boats", "4 men"), "not a whole number of boats"),
    (SAME, {**pair("3 m", "6 m", "5 m"), "because": "2 is 2"}, "holds a number"),
    (SAME, {**pair("3 m", "6 m", "5 m"), "because": " . "}, "is empty"),
]


@pytest.mark.parametrize(("structure", "fields", "message"), COMPLAINTS)
def test_complaints(solved: Any, structure: Any, fields: Any, message: Any) -> None:
    with pytest.raises(AmountError) as caught:
        solved(structure, fields)
    assert message in str(caught.value)


SENTENCES = [
    (DIFFERENCE, pair("1 crate", "2 crates", "3 crates"), "from 1 crate to 3 crates is 2 more"),
    (DIFFERENCE, pair("3 laps", "9 laps", "15 laps"), "Compare Asha with Kofi"),
    (INVERSE, pair("3 men", "8 h", "6 men"), "1 man alone: Kofi would be 24 h."),
    (INVERSE, pair("3 men", "8 h", "6 men"), "the other way round, so halve it."),
    (SUM, pair("12 jars", "8 jars", "11 jars"), "1 more, because the total stays the same."),
]


@pytest.mark.parametrize(("structure", "fields", "sentence"), SENTENCES)
def test_sentences(solved: Any, told: Any, structure: Any, fields: Any, sentence: Any) -> None:
    said = told(solved(structure, fields))
    assert any(sentence in each for each in said)
    assert all(each[0].isupper() or each[0].isdigit() for each in said)
    assert all(each.endswith(".") for each in said)
