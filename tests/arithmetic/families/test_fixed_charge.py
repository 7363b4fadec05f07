"""Fixed charge and rate against published items and sympy."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.equations import minus, over
from typeset.arithmetic.families import FAMILIES, fixed_charge_view, fixed_charge_ways
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.linear import solve_linear
from typeset.arithmetic.solving import solve
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

# Van Dooren et al. 2005, affine items: the train, and tables set in a line. (M)
TRAIN: dict[str, Any] = {
    "fixed": "12 m",
    "together": {"count": "4 carriages", "total": "52 m"},
    "count": "8 carriages",
    "find": "total",
}
TABLES: dict[str, Any] = {
    "fixed": "2 seats",
    "together": {"count": "2 tables", "total": "10 seats"},
    "count": "6 tables",
    "find": "total",
}
HIRE: dict[str, Any] = {"fixed": "£12", "rate": "£4", "count": "5 hours", "find": "total"}


@pytest.mark.parametrize(
    ("fields", "answer", "wrong"), [(TRAIN, "92 m", "104 m"), (TABLES, "26 seats", "30 seats")]
)
def test_published_items(
    solved: Any, answers_of: Any, wrong_answers: Any, fields: Any, answer: str, wrong: str
) -> None:
    solution = solved("fixed charge", fields)
    assert answers_of(solution) == [answer]
    assert wrong_answers(solution)["over-use of proportionality"] == wrong
    assert solution.kind.decision is Decision.BOTH


# One story, every number of it unknown once. By hand: 12 + 4 × 7 = 40.
BESIDE = {"together": {"count": "3 h", "total": "£24"}}
UNKNOWNS: list[tuple[dict[str, Any], list[str]]] = [
    ({"fixed": "£12", "rate": "£4", "count": "7 hours", "find": "total"}, ["£40"]),
    ({"fixed": "£12", "rate": "£4", "total": "£40", "find": "count", "answer in": "h"}, ["7 h"]),
    ({"fixed": "£12", "count": "7 hours", "total": "£40", "find": "rate"}, ["£4"]),
    ({"rate": "£4", "count": "7 hours", "total": "£40", "find": "fixed"}, ["£12"]),
    (
        {
            "together": {"count": "3 hours", "total": "£24"},
            "count": "7 hours",
            "total": "£40",
            "find": ["fixed", "rate"],
        },
        ["£12", "£4"],
    ),
    ({**BESIDE, "fixed": "£12", "total": "£40", "find": "count"}, ["7 h"]),
    ({**BESIDE, "rate": "£4", "count": "7 h", "find": "total"}, ["£40"]),
    ({**BESIDE, "fixed": "£12", "find": "rate"}, ["£4"]),
    (
        {"fixed": "1 m", "rate": "20 cm", "count": "4 cars", "find": "total", "answer in": "m"},
        ["1.8 m"],
    ),
]


@pytest.mark.parametrize(("fields", "answers"), UNKNOWNS)
def test_every_number_may_be_the_unknown(
    solved: Any, answers_of: Any, fields: Any, answers: list[str]
) -> None:
    assert answers_of(solved("fixed charge", fields)) == answers


WAYS = [
    (HIRE, {"The fixed part by itself", "One after another", "Checking backwards"}),
    (TRAIN, {"The fixed part by itself", "Only what is added", "Checking backwards"}),
    ({**HIRE, "count": "9 hours"}, {"The fixed part by itself", "Checking backwards"}),
]


@pytest.mark.parametrize(("fields", "names"), WAYS)
def test_strategies(solved: Any, fields: Any, names: set[str]) -> None:
    assert {each.strategy for each in solved("fixed charge", fields).workings} == names


# By hand: each wrong way reckoned on the numbers above.
WRONG = [
    (HIRE, "fixed charge forgotten", "£20"),
    (HIRE, "fixed charge counted each time", "£80"),
    (HIRE, "fixed charge and rate exchanged", "£64"),
    (UNKNOWNS[1][0], "fixed charge forgotten", "10 h"),
    (UNKNOWNS[1][0], "fixed charge and rate exchanged", "3 h"),
    (UNKNOWNS[2][0], "step left out", "£28"),
    (UNKNOWNS[3][0], "rate counted once", "£36"),
    (UNKNOWNS[3][0], "step left out", "£28"),
]


@pytest.mark.parametrize(("fields", "name", "answer"), WRONG)
def test_wrong_answers(
    solved: Any, wrong_answers: Any, fields: Any, name: str, answer: str
) -> None:
    assert wrong_answers(solved("fixed charge", fields))[name] == answer


REFUSED = [
    (UNKNOWNS[2][0], "fixed charge forgotten", "pence"),
    ({**HIRE, "count": "1 hour"}, "fixed charge counted each time", "right answer"),
    ({**HIRE, "rate": "£12"}, "fixed charge and rate exchanged", "right answer"),
    ({**UNKNOWNS[3][0], "count": "1 hour"}, "rate counted once", "right answer"),
    (
        {
            **TRAIN,
            "together": {"count": "3 cars", "total": "£30"},
            "fixed": "£12",
            "count": "8 cars",
        },
        "over-use of proportionality",
        "",
    ),
]


@pytest.mark.parametrize(("fields", "name", "why"), REFUSED)
def test_mistakes_refused(solved: Any, fields: Any, name: str, why: str) -> None:
    solution = solved("fixed charge", fields)
    refused = {each.misconception: each.why for each in solution.refused}
    assert (name in refused) == bool(why)
    assert why in refused.get(name, "")


@settings(max_examples=50, deadline=None)
@given(
    fixed=st.integers(1, 40),
    rate=st.integers(1, 15),
    counts=st.lists(st.integers(1, 20), min_size=2, max_size=2, unique=True),
    asked=st.sampled_from(["total", "count", "rate", "fixed"]),
)
def test_against_sympy(fixed: int, rate: int, counts: list[int], asked: str) -> None:
    """Two counts with their totals, one of the numbers unknown, by equations written here."""
    first, second = counts
    x = sympy.Symbol("x")
    known = {"fixed": fixed, "rate": rate, "count": second, "total": fixed + rate * second}
    unknown = {**known, asked: x}
    (expected,) = sympy.solve(
        sympy.Eq(unknown["total"], unknown["fixed"] + unknown["rate"] * unknown["count"]), x
    )
    units = {"fixed": " m", "rate": " m", "count": "", "total": " m"}
    fields = {name: f"{value}{units[name]}" for name, value in known.items() if name != asked}
    if asked in ("total", "count"):
        del fields["rate"]
    pair = {"count": f"{first}", "total": f"{fixed + rate * first} m"}
    family = FAMILIES["fixed charge"]
    typed = family.fields_model.model_validate({**fields, "together": pair, "find": asked})
    answer = solve(family, family.build(typed)).answers[asked]
    assert isinstance(answer, Amount)
    assert answer.value == Fraction(int(expected.p), int(expected.q))


def test_a_broken_strategy_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(fixed_charge_ways, "plus", minus)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("fixed charge", HIRE)


def test_a_broken_check_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    monkeypatch.setattr(fixed_charge_ways, "times", over)
    with pytest.raises(SolvingError, match="untrue equation"):
        solved("fixed charge", TRAIN)


def test_a_broken_relation_stops_the_build(solved: Any, monkeypatch: Any) -> None:
    def wrong(rules: Any) -> Any:
        found = solve_linear(rules)
        return {name: value + 1 if name == "rate" else value for name, value in found.items()}

    monkeypatch.setattr(fixed_charge_view, "solve_linear", wrong)
    with pytest.raises(SolvingError):
        solved("fixed charge", TRAIN)


def test_model(solved: Any) -> None:
    figure = solved("fixed charge", TRAIN).figure
    assert [str(part.size) for part in figure.bars[0].parts] == ["12", *["10"] * 8]
    assert [part.mark.is_given for part in figure.bars[0].parts[:2]] == [True, False]


COMPLAINTS = [
    ({"find": "totals"}, "did you mean 'total'"),
    ({"find": "rate"}, "both given and asked for"),
    ({"fixed": None}, "more than one answer"),
    ({"count": None}, "neither count nor total"),
    ({"fixed": "12 m"}, "not of one kind"),
    ({"together": {"count": "3 hours"}}, "give it count and total"),
    ({"together": {"count": "30 min", "total": "£20"}}, "different units"),
    ({"together": {"count": "3 hours", "total": "£20"}}, "contradict each other"),
    ({"answer in": "kg"}, "not measured in kg"),
    ({"fixed": "9:30"}, "time of day"),
]


@pytest.mark.parametrize(("changed", "message"), COMPLAINTS)
def test_complaints(solved: Any, changed: dict[str, Any], message: str) -> None:
    fields = {name: value for name, value in {**HIRE, **changed}.items() if value is not None}
    with pytest.raises(AmountError) as caught:
        solved("fixed charge", fields)
    assert message in str(caught.value)


def test_sentences(solved: Any, told: Any) -> None:
    for fields in (TRAIN, TABLES, HIRE, *(each for each, _answers in UNKNOWNS)):
        for said in told(solved("fixed charge", fields)):
            assert said[0].isupper() or said[0].isdigit(), said
            assert said.endswith((".", "?")), said
