"""Fractions and percentages of a quantity against published items and sympy."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import plus, times
from typeset.arithmetic.families import (
    FAMILIES,
    fraction_asked,
    fraction_of_quantity,
    fraction_ways,
)
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.linear import solve_linear
from typeset.arithmetic.solving import solve
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

NAME = "fraction of a quantity"
KITES: dict[str, Any] = {"fraction": "3/5", "whole": "40 kites", "find": "part"}
PRICE: dict[str, Any] = {"fraction": "15%", "rest": "£68", "find": "whole"}

PUBLISHED = [
    # STA 2017 P1 Q29: 45 % of 460. (R*)
    ({"fraction": "45%", "whole": "460", "find": "part"}, "207"),
    # STA 2017 P2 Q18: 12 of 24 hours are 50 %; 18 hours. (R*)
    ({"part": "12 h", "whole": "24 h", "find": "fraction", "answer in": "%"}, "50%"),
    ({"part": "18 h", "whole": "24 h", "find": "fraction", "answer in": "%"}, "75%"),
    # National curriculum, Year 6: 15 % of 360. (C)
    ({"fraction": "15%", "whole": "360", "find": "part"}, "54"),
    # National curriculum, Year 6 guidance: 3/5 of a class; here of 30. (C)
    ({"fraction": "3/5", "whole": "30 pupils", "find": "part"}, "18 pupils"),
]


@pytest.mark.parametrize(("fields", "answer"), PUBLISHED)
def test_published_items(solved: Any, answers_of: Any, fields: Any, answer: str) -> None:
    solution = solved(NAME, fields)
    assert answers_of(solution) == [answer]
    assert solution.kind.decision is Decision.MULTIPLY


# By hand: 24 of 40 are 3/5 and leave 16; 15 % of £80 is £12 and leaves £68.
ANSWERS = [
    (KITES, ["24 kites"]),
    ({**KITES, "find": ["part", "rest"]}, ["24 kites", "16 kites"]),
    ({"fraction": "3/5", "part": "24 kites", "find": "whole"}, ["40 kites"]),
    ({"fraction": "3/5", "part": "24 kites", "find": "rest"}, ["16 kites"]),
    ({"fraction": "3/5", "rest": "16 kites", "find": ["whole", "part"]}, ["40 kites", "24 kites"]),
    ({"part": "24 kites", "whole": "40 kites", "find": "fraction"}, ["3/5"]),
    ({"rest": "16 kites", "whole": "40 kites", "find": "fraction"}, ["3/5"]),
    ({"part": "24 kites", "rest": "16 kites", "find": "fraction"}, ["3/5"]),
    (PRICE, ["£80"]),
    ({"fraction": "15%", "whole": "£80", "find": "rest"}, ["£68"]),
    ({"fraction": "1/4", "whole": "2 kg", "find": "part", "answer in": "g"}, ["500 g"]),
    ({"part": "250 g", "whole": "1 kg", "find": "fraction"}, ["1/4"]),
    ({"fraction": "37%", "whole": "200 g", "find": "part"}, ["74 g"]),
]


@pytest.mark.parametrize(("fields", "answers"), ANSWERS)
def test_every_place_may_be_the_unknown(
    solved: Any, answers_of: Any, fields: Any, answers: list[str]
) -> None:
    assert answers_of(solved(NAME, fields)) == answers


PARTS, UP_FIRST, CHECK = "One part first", "Multiplying first", "Checking"
TENTH, HUNDREDTH, STONES = "Through 10%", "Through 1%", "Putting the percentage together"
PART_FIRST = "The part first"

WAYS = [
    (KITES, {PARTS, UP_FIRST, CHECK}),
    ({**KITES, "fraction": "1/5"}, {PARTS, CHECK}),
    ({"fraction": "45%", "whole": "460", "find": "part"}, {PARTS, HUNDREDTH, STONES, CHECK}),
    ({"fraction": "30%", "whole": "£80", "find": "part"}, {PARTS, TENTH, HUNDREDTH, CHECK, STONES}),
    ({"fraction": "43%", "whole": "200 g", "find": "part"}, {HUNDREDTH, CHECK}),
    ({"fraction": "15%", "whole": "£80", "find": "rest"}, {PARTS, HUNDREDTH, PART_FIRST, CHECK}),
    (PRICE, {PARTS, HUNDREDTH, CHECK}),
    # One hundredth of 40 kites would cut a kite.
    ({"fraction": "15%", "whole": "40 kites", "find": "part"}, {PARTS, CHECK, STONES}),
    ({"part": "3 h", "whole": "4 h", "find": "fraction"}, {"Counting equal pieces", "Dividing"}),
    (
        {"part": "12 h", "whole": "20 h", "find": "fraction", "answer in": "%"},
        {"Counting equal pieces", "Dividing", "From 100%"},
    ),
]


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    found = {each.strategy for each in solved(NAME, fields).workings}
    assert found == names


WRONG_WHOLE, EXCHANGED = "fraction of the wrong whole", "numerator and denominator exchanged"
AS_AMOUNT, OTHER_PART = "percentage taken as the amount", "part and rest exchanged"

# By hand: each wrong way reckoned on the numbers beside it.
WRONG = [
    (PRICE, WRONG_WHOLE, "£78.20"),
    (PRICE, AS_AMOUNT, "£83"),
    (PRICE, "step left out", "£4"),
    ({"fraction": "3/5", "part": "25 m", "find": "whole"}, WRONG_WHOLE, "15 m"),
    ({"fraction": "3/5", "part": "25 m", "find": "rest"}, WRONG_WHOLE, "10 m"),
    ({"fraction": "3/5", "rest": "20 m", "find": "part"}, WRONG_WHOLE, "12 m"),
    ({"fraction": "3/5", "whole": "30 m", "find": "part"}, EXCHANGED, "50 m"),
    ({"fraction": "3/5", "part": "30 m", "find": "whole"}, EXCHANGED, "18 m"),
    ({"fraction": "15%", "whole": "£80", "find": "rest"}, AS_AMOUNT, "£65"),
    ({"fraction": "15%", "whole": "£80", "find": "rest"}, OTHER_PART, "£12"),
    (KITES, OTHER_PART, "16 kites"),
    (KITES, "step left out", "8 kites"),
    ({"part": "24 m", "rest": "16 m", "find": "fraction"}, "part compared with the rest", "1 1/2"),
    ({"part": "24 m", "rest": "16 m", "find": "fraction"}, OTHER_PART, "2/5"),
]


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved(NAME, fields))[name] == answer


REFUSED = [
    (KITES, EXCHANGED, "whole number of kites"),
    ({"fraction": "3/5", "part": "24 kites", "find": "whole"}, WRONG_WHOLE, "whole"),
    ({"fraction": "15%", "whole": "£100", "find": "part"}, AS_AMOUNT, "right"),
    ({"fraction": "1/2", "whole": "30 m", "find": "part"}, OTHER_PART, "right"),
    ({"fraction": "1/5", "whole": "30 m", "find": "part"}, "step left out", "right"),
    ({"part": "1 m", "rest": "1 m", "find": "fraction"}, OTHER_PART, "right"),
    ({"fraction": "90%", "whole": "£80", "find": "rest"}, AS_AMOUNT, "nothing"),
]


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: str, why: str) -> None:
    refused = {each.misconception: each.why for each in solved(NAME, fields).refused}
    assert why in refused[name]


@settings(max_examples=60, deadline=None)
@given(
    over_=st.integers(1, 11),
    under=st.integers(2, 12),
    size=st.integers(1, 40),
    known=st.sampled_from(["whole", "part", "rest"]),
    asked=st.sampled_from(["whole", "part", "rest", "fraction"]),
    as_percent=st.booleans(),
)
def test_against_sympy(
    over_: int, under: int, size: int, known: str, asked: str, as_percent: bool
) -> None:
    """One amount and the fraction, or two amounts, by equations written here."""
    if over_ >= under or known == asked:
        return
    if as_percent and 100 % under:
        return
    share = sympy.Rational(over_, under)
    sizes = {"whole": size * under, "part": size * over_, "rest": size * (under - over_)}
    if asked == "fraction":
        other = "whole" if known != "whole" else "part"
        typed = {known: f"{sizes[known]} m", other: f"{sizes[other]} m"}
    else:
        text = f"{share * 100}%" if as_percent else f"{over_}/{under}"
        typed = {"fraction": text, known: f"{sizes[known]} m"}
    whole, part, rest = sympy.symbols("whole part rest")
    symbols = {"whole": whole, "part": part, "rest": rest}
    facts = [sympy.Eq(part + rest, whole), sympy.Eq(part, share * whole)]
    facts.append(sympy.Eq(symbols[known], sizes[known]))
    found = sympy.solve(facts, [whole, part, rest])
    expected = share if asked == "fraction" else found[symbols[asked]]
    family = FAMILIES[NAME]
    fields = family.fields_model.model_validate({**typed, "find": asked})
    answer = solve(family, family.build(fields)).answers[asked]
    assert isinstance(answer, Amount)
    assert answer.value == Fraction(int(expected.p), int(expected.q))


BROKEN = [
    (fraction_ways, "times", plus, KITES),
    (fraction_ways, "over", times, {**PRICE}),
    (fraction_asked, "over", times, {"part": "18 h", "whole": "24 h", "find": "fraction"}),
]


@pytest.mark.parametrize(("module", "sign", "instead", "fields"), BROKEN)
def test_a_broken_strategy_stops_the_build(
    solved: Any, monkeypatch: Any, module: Any, sign: str, instead: Any, fields: Any
) -> None:
    monkeypatch.setattr(module, sign, instead)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved(NAME, fields)


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    def wrong(rules: Any) -> Any:
        return {name: value * 2 for name, value in solve_linear(rules).items()}

    monkeypatch.setattr(fraction_of_quantity, "solve_linear", wrong)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(NAME, KITES)


def test_models(solved: Any) -> None:
    bar = solved(NAME, KITES).figure.bars[0]
    assert [part.shaded for part in bar.parts] == [True, True, True, False, False]
    bar = solved(NAME, PRICE).figure.bars[0]
    assert [str(part.size) for part in bar.parts] == ["3/20", "17/20"]
    assert [part.mark.is_given for part in bar.parts] == [False, True]


COMPLAINTS = [
    ({"part": "24 kites"}, "3 of fraction, whole, part and rest are given"),
    ({"fraction": None}, "1 of fraction, whole, part and rest are given"),
    ({"find": "whole"}, "both given and asked for"),
    ({"find": "hole"}, "did you mean 'whole'"),
    ({"fraction": "3/2"}, "not a part of a whole"),
    ({"fraction": "100%"}, "not a part of a whole"),
    ({"fraction": "3 kg"}, "not a fraction"),
    ({"whole": "42 kites"}, "not a whole number of kites"),
    ({"whole": "9:30"}, "time of day"),
    ({"answer in": "kg"}, "not measured in kg"),
    ({"fraction": None, "part": "50 kites", "find": "fraction"}, "is not less than the whole"),
    ({"fraction": None, "part": "5 kg", "find": "fraction"}, "not of one kind"),
    ({"fraction": None, "part": "5 kites", "find": ["fraction", "rest"]}, "asked for alone"),
    ({"fraction": None, "part": "5 kites", "find": "fraction", "answer in": "kg"}, "answer in: %"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    fields = {name: value for name, value in {**KITES, **changed}.items() if value is not None}
    with pytest.raises(AmountError) as caught:
        solved(NAME, fields)
    assert message in str(caught.value)


def test_sentences(solved: Any, told: Any) -> None:
    for fields, _answers in ANSWERS:
        for said in told(solved(NAME, fields)):
            assert said[0].isupper() or said[0].isdigit(), said
            assert said.endswith("."), said
