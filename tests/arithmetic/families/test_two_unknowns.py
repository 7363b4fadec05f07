"""Two unknowns against sympy's own solutions. No published item was found; common practice."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import minus, plus
from typeset.arithmetic.families import FAMILIES, multiple_bars, sum_and_difference
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.solving import solve
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

S_AND_D, S_AND_M, D_AND_M = "sum and difference", "sum and multiple", "difference and multiple"
NAMES = {"larger": "Asha", "smaller": "Kofi"}
SHELLS: dict[str, Any] = {**NAMES, "sum": "36 shells", "difference": "8", "find": "Asha"}
BIRDS: dict[str, Any] = {
    "larger": "gulls",
    "smaller": "terns",
    "sum": "36 birds",
    "times": "3",
    "find": ["gulls", "terns"],
}
MONEY: dict[str, Any] = {**NAMES, "difference": "£8", "times": "3", "find": "Asha"}
ROPES = {**NAMES, "sum": "2 m", "difference": "40 cm", "find": "Kofi"}
LOAD = {**NAMES, "sum": "2 kg", "times": "4", "find": "Kofi"}

# By hand: 22 + 14 = 36 and 22 − 14 = 8; 27 + 9 = 36; 12 − 4 = 8.
ANSWERS = [
    (S_AND_D, SHELLS, ["22 shells"], Decision.BOTH),
    (S_AND_D, {**SHELLS, "find": ["Kofi", "Asha"]}, ["14 shells", "22 shells"], Decision.BOTH),
    (S_AND_M, BIRDS, ["27 gulls", "9 terns"], Decision.MULTIPLY),
    (S_AND_M, {**BIRDS, "find": "difference"}, ["18 birds"], Decision.MULTIPLY),
    (D_AND_M, MONEY, ["£12"], Decision.MULTIPLY),
    (D_AND_M, {**MONEY, "find": "sum"}, ["£16"], Decision.MULTIPLY),
    (S_AND_D, ROPES, ["0.8 m"], Decision.BOTH),
    (S_AND_M, {**LOAD, "answer in": "g"}, ["400 g"], Decision.MULTIPLY),
]


@pytest.mark.parametrize(("structure", "fields", "answers", "decision"), ANSWERS)
def test_answers(
    solved: Any, answers_of: Any, structure: str, fields: Any, answers: Any, decision: Decision
) -> None:
    solution = solved(structure, fields)
    assert answers_of(solution) == answers
    assert solution.kind.decision is decision


WAYS = [
    (
        S_AND_D,
        SHELLS,
        {"Taking off the difference", "Adding the difference", "Sharing equally, then moving half"},
    ),
    # Half of 7 would cut a shell.
    (
        S_AND_D,
        {**SHELLS, "sum": "35 shells", "difference": "7"},
        {"Taking off the difference", "Adding the difference"},
    ),
    (S_AND_M, BIRDS, {"One part first", "As a fraction of the sum"}),
    (D_AND_M, MONEY, {"One part first", "Trying one and scaling"}),
]


@pytest.mark.parametrize(("structure", "fields", "names"), WAYS)
def test_strategies(solved: Any, structure: str, fields: Any, names: set[str]) -> None:
    assert {each.strategy for each in solved(structure, fields).workings} == names


# By hand: each wrong way reckoned on the numbers above.
WRONG = [
    (S_AND_D, SHELLS, "whole difference on one half", "26 shells"),
    (S_AND_D, SHELLS, "difference ignored", "18 shells"),
    (S_AND_D, SHELLS, "difference taken as one part", "28 shells"),
    (S_AND_M, BIRDS, "one part left out", "36 gulls"),
    (S_AND_M, BIRDS, "ratio turned round", "9 gulls"),
    (
        S_AND_M,
        {**NAMES, "sum": "36 shells", "times": "2", "find": "Asha"},
        "times as many taken as more than",
        "19 shells",
    ),
    (D_AND_M, MONEY, "difference taken as one part", "£24"),
    (D_AND_M, MONEY, "difference taken as the whole", "£6"),
    (D_AND_M, MONEY, "difference taken as the larger", "£8"),
]


@pytest.mark.parametrize(("structure", "fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, structure: str, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved(structure, fields))[name] == answer


REFUSED = [
    (S_AND_D, {**SHELLS, "sum": "35 shells", "difference": "7"}, "difference ignored", "whole"),
    (
        S_AND_D,
        {**SHELLS, "sum": "35 shells", "difference": "7"},
        "whole difference on one half",
        "whole number of shells",
    ),
    (
        S_AND_D,
        {**SHELLS, "sum": "24 shells", "difference": "8", "find": "Kofi"},
        "difference taken as one part",
        "right answer",
    ),
    (S_AND_M, BIRDS, "times as many taken as more than", "whole number of gulls"),
    (S_AND_M, {**BIRDS, "sum": "8 birds"}, "one part left out", "whole number of terns"),
    (D_AND_M, {**MONEY, "times": "2"}, "difference taken as one part", "right answer"),
    (D_AND_M, {**MONEY, "find": "Kofi"}, "difference taken as the larger", "pence"),
    (S_AND_M, {**BIRDS, "find": "difference"}, "ratio turned round", "less than nothing"),
    (
        D_AND_M,
        {**MONEY, "difference": "£7", "times": "2"},
        "difference taken as the whole",
        "pence",
    ),
]


@pytest.mark.parametrize(("structure", "fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, structure: str, fields: Any, name: str, why: str) -> None:
    refused = {each.misconception: each.why for each in solved(structure, fields).refused}
    assert why in refused[name]


larger, smaller = sympy.symbols("larger smaller")
EQUATIONS: dict[str, Any] = {
    "sum": lambda value: larger + smaller - value,
    "difference": lambda value: larger - smaller - value,
    "times": lambda value: larger - value * smaller,
}


@pytest.mark.parametrize(
    ("structure", "given_names"),
    [
        (S_AND_D, ("sum", "difference")),
        (S_AND_M, ("sum", "times")),
        (D_AND_M, ("difference", "times")),
    ],
)
@settings(max_examples=50, deadline=None)
@given(small=st.integers(1, 50), more=st.integers(1, 60), multiple=st.integers(2, 9))
def test_against_sympy(
    structure: str, given_names: tuple[str, str], small: int, more: int, multiple: int
) -> None:
    """Both amounts by sympy from the two facts that are given."""
    big = small + more if structure == S_AND_D else small * multiple
    facts = {"sum": big + small, "difference": big - small, "times": multiple}
    found = sympy.solve([EQUATIONS[name](facts[name]) for name in given_names], [larger, smaller])
    typed = {
        name: str(facts[name]) if name == "times" else f"{facts[name]} g" for name in given_names
    }
    family = FAMILIES[structure]
    fields = family.fields_model.model_validate({**NAMES, **typed, "find": ["Asha", "Kofi"]})
    answers = solve(family, family.build(fields)).answers
    for name, symbol in (("Asha", larger), ("Kofi", smaller)):
        answer = answers[name]
        assert isinstance(answer, Amount)
        assert answer.value == Fraction(int(found[symbol].p), int(found[symbol].q))


BROKEN = [
    (S_AND_D, sum_and_difference, "plus", minus, SHELLS),
    (S_AND_M, multiple_bars, "plus", minus, BIRDS),
    (D_AND_M, multiple_bars, "minus", plus, MONEY),
]


@pytest.mark.parametrize(("structure", "module", "sign", "instead", "fields"), BROKEN)
def test_a_broken_strategy_stops_the_build(
    solved: Any, monkeypatch: Any, structure: str, module: Any, sign: str, instead: Any, fields: Any
) -> None:
    monkeypatch.setattr(module, sign, instead)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved(structure, fields)


def test_models(solved: Any) -> None:
    figure = solved(S_AND_M, BIRDS).figure
    assert [len(bar.parts) for bar in figure.bars] == [3, 1]
    assert figure.total is not None
    figure = solved(S_AND_D, SHELLS).figure
    assert [[str(part.size) for part in bar.parts] for bar in figure.bars] == [["14", "8"], ["14"]]
    figure = solved(D_AND_M, MONEY).figure
    assert any(brace.gap_to == 1 for brace in figure.braces)


COMPLAINTS = [
    (S_AND_D, {"find": "Acha"}, "did you mean 'Asha'"),
    (S_AND_D, {"find": "sum"}, "both given and asked for"),
    (S_AND_D, {"smaller": "Asha"}, "both are called 'Asha'"),
    (S_AND_D, {"smaller": "times", "find": "Asha"}, "cannot be a name"),
    (S_AND_D, {"difference": "40 shells"}, "is not less than the sum"),
    (S_AND_D, {"difference": "£8"}, "not of one kind"),
    (S_AND_D, {"difference": "7"}, "not a whole number of shells"),
    (S_AND_D, {"answer in": "kg"}, "not measured in kg"),
    (S_AND_M, {"times": "1"}, "'times' is less than 2"),
    (S_AND_M, {"sum": "37 shells"}, "not a whole number of shells"),
    (D_AND_M, {"difference": "9:30"}, "time of day"),
]


@pytest.mark.parametrize(("structure", "changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, structure: str, changed: dict[str, Any], message: str) -> None:
    sound = {
        S_AND_D: SHELLS,
        S_AND_M: {**NAMES, "sum": "36 shells", "times": "3", "find": "Asha"},
        D_AND_M: MONEY,
    }
    with pytest.raises(AmountError) as caught:
        solved(structure, {**sound[structure], **changed})
    assert message in str(caught.value)


def test_sentences(solved: Any, told: Any) -> None:
    for structure, fields, _answers, _decision in ANSWERS:
        for said in told(solved(structure, fields)):
            assert said[0].isupper() or said[0].isdigit(), said
            assert said.endswith("."), said
