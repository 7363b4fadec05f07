"""Unit conversion: the curriculum's metric facts, and the classroom fact 5 miles = 8 km."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.arithmetic.families.time_and_measure_cases import (
    Fields,
    Solve,
    check_guard,
    complaint,
    only_answer,
    refused,
    wrong,
)
from typeset.arithmetic.families import conversion_view
from typeset.arithmetic.figures import RatioTable, Show
from typeset.arithmetic.solving import Solution
from typeset.drawing.figures import draw_figure
from typeset.errors import SolvingError

NAME = "unit conversion"
MILES: Fields = {
    "amount": "20 miles",
    "answer in": "km",
    "together": {"miles": "5 miles", "kilometres": "8 km"},
}
WEIGHT: Fields = {"amount": "2.35 kg", "answer in": "g"}
BOXES: Fields = {"amount": "350 g", "times": "5 boxes", "answer in": "kg"}
MIXED: Fields = {"amount": "155 min", "mixed units": "yes"}
ROPE: Fields = {"amount": "1.2 m", "more": "45 cm", "answer in": "cm"}
MULTIPLY, BOTH = "multiply or divide", "both"
ANSWERS: list[tuple[Fields, str, str]] = [
    (WEIGHT, "2,350 g", MULTIPLY),
    ({"amount": "2,350 g", "answer in": "kg"}, "2.35 kg", MULTIPLY),
    (BOXES, "1.75 kg", MULTIPLY),
    ({"amount": "3 kg", "shared among": "8 bowls", "answer in": "g"}, "375 g", MULTIPLY),
    ({"amount": "2 m 35 cm", "answer in": "cm"}, "235 cm", MULTIPLY),
    ({"amount": "2 kg 50 g", "answer in": "kg"}, "2.05 kg", MULTIPLY),
    (MIXED, "2 h 35 min", MULTIPLY),
    (MILES, "32 km", MULTIPLY),
    (MILES | {"amount": "12 miles"}, "19.2 km", MULTIPLY),
    (MILES | {"amount": "24 km", "answer in": "miles"}, "15 miles", MULTIPLY),
    (MILES | {"times": "3 trips"}, "96 km", MULTIPLY),
    (ROPE, "165 cm", BOTH),
    ({"amount": "1 kg", "less": "350 g", "answer in": "kg"}, "0.65 kg", BOTH),
    ({"amount": "90 min", "answer in": "h"}, "1.5 h", MULTIPLY),
    ({"amount": "2 days", "answer in": "min"}, "2,880 min", MULTIPLY),
    ({"amount": "100 min", "answer in": "h", "round to": "1 decimal place"}, "1.7 h", MULTIPLY),
    # cm and m: the base unit of length must not hide that 100 is divided by.
    ({"amount": "450 cm", "answer in": "m"}, "4.5 m", MULTIPLY),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), ANSWERS, ids=[str(a[0]) for a in ANSWERS])
def test_answers(fields: Fields, answer: str, kind: str, solved: Solve) -> None:
    solution = solved(NAME, fields)
    assert only_answer(solution) == answer
    assert solution.kind.decision.value == kind
    assert len(solution.workings) >= 2


WRONG: list[tuple[Fields, dict[str, str]]] = [
    (WEIGHT, {"unit converted by the wrong number": "235 g"}),
    (BOXES, {"unit not converted": "1,750 kg", "unit converted by the wrong number": "17.5 kg"}),
    (MIXED, {"100 minutes in an hour": "1 h 55 min"}),
    (MILES, {"conversion turned round": "12.5 km", "additive strategy": "23 km"}),
    (ROPE, {"unit not converted": "46.2 cm"}),
    ({"amount": "2 kg 50 g", "answer in": "g"}, {"units put side by side": "250 g"}),
    ({"amount": "2 h 35 min", "answer in": "min"}, {"100 minutes in an hour": "235 min"}),
    ({"amount": "6 h", "answer in": "min"}, {"100 minutes in an hour": "600 min"}),
    ({"amount": "24 feet", "answer in": "yards"}, {"conversion turned round": "72 yards"}),
]


@pytest.mark.parametrize(("fields", "answers"), WRONG, ids=[str(each[0]) for each in WRONG])
def test_wrong_answers(fields: Fields, answers: dict[str, str], solved: Solve) -> None:
    reached = wrong(solved(NAME, fields))
    assert reached | answers == reached


def test_mistakes_that_do_not_show(solved: Solve) -> None:
    whole = solved(NAME, {"amount": "2 m 35 cm", "answer in": "cm"})
    assert refused(whole)["units put side by side"] == "it would give the right answer"
    assert "unit not converted" not in wrong(whole)


def test_the_ways_are_told(solved: Solve, told: Callable[[Solution], list[str]]) -> None:
    names = {working.strategy for working in solved(NAME, MILES).workings}
    assert names == {"Scale factor", "Through one"}
    said = told(solved(NAME, WEIGHT))
    assert "Make the number 10 times as large three times: 23.5, 235, 2,350. So 2,350 g." in said
    by_units = solved(NAME, {"amount": "1 h", "answer in": "s"})
    assert by_units.workings[0].strategy == "Unit by unit"


COMPLAINTS: list[tuple[Fields, str]] = [
    ({"amount": "3 kg"}, "unit of the answer is not given"),
    ({"amount": "3 kg", "answer in": "kg"}, "nothing has to be converted"),
    ({"amount": "3 kg", "answer in": "cm"}, "cannot be given in cm"),
    ({"amount": "3 crates", "answer in": "cm"}, "no unit that can be changed"),
    ({"amount": "100 min", "answer in": "h"}, "would be 1 2/3 h"),
    (BOXES | {"more": "3 g"}, "two operations"),
    (BOXES | {"times": "5 kg"}, "'times' is a number of things"),
    (MILES | {"amount": "20 kg"}, "'together' does not lead"),
    (MILES | {"more": "3 km"}, "'together' goes with"),
    (MIXED | {"amount": "45 min"}, "less than 1 h"),
    ({"amount": "1 kg", "less": "1,350 g", "answer in": "g"}, "nothing would be left"),
    ({"amount": "1 kg", "more": "1 m", "answer in": "g"}, "cannot be put together"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS, ids=[each[1] for each in COMPLAINTS])
def test_complaints(fields: Fields, problem: str, solved: Solve) -> None:
    assert problem in complaint(solved, NAME, fields).problem


@pytest.mark.parametrize("fields", [WEIGHT, BOXES, MILES, MIXED, ROPE], ids=str)
def test_the_guard(fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    check_guard(NAME, fields, solved, monkeypatch)


def test_a_slip_in_the_factor_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(conversion_view.Fact, "factor", 100)
    with pytest.raises(SolvingError):
        solved(NAME, WEIGHT)


def test_the_ratio_table_hides_the_answer(solved: Solve) -> None:
    figure = solved(NAME, MILES).figure
    assert isinstance(figure, RatioTable)
    first = draw_figure(figure, Show.FIRST_STEP, 400, 11).reads_as
    assert "8 km" in first
    assert "32" not in first
