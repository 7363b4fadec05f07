"""Sharing with exchange: shares checked by hand, each times the shares is the total again."""

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
from typeset.arithmetic.families import exchange_view
from typeset.arithmetic.figures import Show
from typeset.arithmetic.solving import Solution
from typeset.drawing.figures import draw_figure
from typeset.errors import SolvingError
from typeset.quantities.units import UNITS

NAME = "sharing with exchange"
ROPE: Fields = {"total": "7 m", "groups": "4 kites"}
WATCH: Fields = {"total": "5 h", "groups": "3 keepers"}
MONEY: Fields = {"total": "£17", "groups": "4 friends"}
ANSWERS: list[tuple[Fields, str]] = [
    (ROPE, "1 m 75 cm"),
    (WATCH, "1 h 40 min"),
    (MONEY, "£4.25"),
    ({"total": "5 h 20 min", "groups": "4 watches"}, "1 h 20 min"),
    ({"total": "2 m", "groups": "8 kites"}, "25 cm"),
    ({"total": "3 weeks", "groups": "7 boats"}, "3 days"),
    ({"total": "£2", "groups": "8 friends"}, "25p"),
    ({"total": "7 m", "groups": "4 kites", "exchange into": "mm"}, "1 m 750 mm"),
]


@pytest.mark.parametrize(("fields", "answer"), ANSWERS, ids=[str(each[0]) for each in ANSWERS])
def test_answers(fields: Fields, answer: str, solved: Solve) -> None:
    solution = solved(NAME, fields)
    assert only_answer(solution) == answer
    assert solution.kind.decision.value == "multiply or divide"
    assert len(solution.workings) >= 2


def test_the_exchange_is_told(solved: Solve, told: Callable[[Solution], list[str]]) -> None:
    said = told(solved(NAME, ROPE))
    assert "Give 1 m to each, 4 m in all: 3 m left." in said
    assert "Exchange the 3 m for 300 cm." in said
    assert "Together: 1 m 75 cm each." in said


WRONG: list[tuple[Fields, dict[str, str]]] = [
    (
        ROPE,
        {
            "remainder ignored": "1 m",
            "remainder taken as the smaller unit": "1 m 3 cm",
            "remainder written behind the point": "1.3 m",
            "multiplying instead of dividing": "28 m",
        },
    ),
    (WATCH, {"remainder taken as the smaller unit": "1 h 2 min"}),
    (MONEY, {"remainder taken as the smaller unit": "£4.01", "remainder ignored": "£4"}),
    # 2 h taken for 200 min, and 50 min each of 4.
    ({"total": "6 h", "groups": "4 keepers"}, {"100 minutes in an hour": "1 h 50 min"}),
    ({"total": "14 kg", "groups": "5 crates"}, {"unit converted by the wrong number": "2 kg 80 g"}),
]


@pytest.mark.parametrize(("fields", "answers"), WRONG, ids=[str(each[0]) for each in WRONG])
def test_wrong_answers(fields: Fields, answers: dict[str, str], solved: Solve) -> None:
    reached = wrong(solved(NAME, fields))
    assert reached | answers == reached


def test_mistakes_that_do_not_show(solved: Solve) -> None:
    nothing_whole = solved(NAME, {"total": "2 m", "groups": "8 kites"})
    assert "remainder ignored" not in wrong(nothing_whole) | refused(nothing_whole)


COMPLAINTS: list[tuple[Fields, str]] = [
    ({"total": "7 m", "groups": "3 kites"}, "not a whole number of cm each"),
    ({"total": "8 m", "groups": "4 kites"}, "leaves nothing to exchange"),
    ({"total": "8 crates", "groups": "3 boats"}, "cannot be exchanged for smaller units"),
    ({"total": "£5.50", "groups": "4 friends"}, "not a whole number of pence"),
    (ROPE | {"exchange into": "kg"}, "kg is not a smaller unit than m"),
    (ROPE | {"groups": "1 kite"}, "one alone does not share"),
    (ROPE | {"groups": "4 kg"}, "'groups' is a number of shares"),
    (ROPE | {"answer in": "cm"}, "in two units"),
    (MONEY | {"exchange into": "£"}, "pounds are exchanged for pence"),
    ({"total": "7 s", "groups": "2 boats"}, "no smaller unit is usual"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS, ids=[each[1] for each in COMPLAINTS])
def test_complaints(fields: Fields, problem: str, solved: Solve) -> None:
    assert problem in complaint(solved, NAME, fields).problem


@pytest.mark.parametrize("fields", [ROPE, WATCH, MONEY], ids=str)
def test_the_guard(fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    check_guard(NAME, fields, solved, monkeypatch)


def test_a_slip_in_the_exchange_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(exchange_view.Exchange, "per_large", 10)
    with pytest.raises(SolvingError):
        solved(NAME, ROPE)


def test_every_usual_smaller_unit_is_smaller() -> None:
    for large, small in exchange_view._USUAL.items():
        assert UNITS[small].dimension is UNITS[large].dimension
        assert UNITS[small].per_base < UNITS[large].per_base


def test_the_bar_hides_the_share(solved: Solve) -> None:
    figure = solved(NAME, ROPE).figure
    assert figure is not None
    assert "75" not in draw_figure(figure, Show.FIRST_STEP, 400, 11).reads_as
    assert "1 m 75 cm" in draw_figure(figure, Show.COMPLETE, 400, 11).reads_as
