"""Cuts and pieces: cuts counted by hand; the over-use of proportionality by its published name
(De Bock et al. 2007), with numbers of our own."""

from __future__ import annotations

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
from typeset.arithmetic.equations import plus
from typeset.arithmetic.families import cuts_ways
from typeset.arithmetic.figures import Show
from typeset.drawing.figures import draw_figure
from typeset.errors import SolvingError
from typeset.quantities.inline import plain

NAME = "cuts and pieces"
ROPE: Fields = {"length": "60 m", "piece": "5 m"}
SAWING: Fields = {"length": "6 m", "piece": "75 cm", "each cut": "2 min"}
AGAIN: Fields = {"pieces": "3 pieces", "time": "4 min", "wanted": "6 pieces"}
BOTH, MULTIPLY, ADD = "both", "multiply or divide", "add or subtract"
ANSWERS: list[tuple[Fields, str, str]] = [
    (ROPE, "11 cuts", BOTH),
    (ROPE | {"find": "pieces"}, "12 pieces", MULTIPLY),
    (ROPE | {"ring": "yes"}, "12 cuts", MULTIPLY),
    (SAWING, "14 min", BOTH),
    (AGAIN, "10 min", BOTH),
    (AGAIN | {"wanted": "7 pieces"}, "12 min", BOTH),
    (AGAIN | {"wanted": "2 pieces"}, "2 min", BOTH),
    ({"pieces": "9 blocks"}, "8 cuts", ADD),
    ({"cuts": "4 cuts"}, "5 pieces", ADD),
    ({"cuts": "4 cuts", "length": "60 m"}, "12 m", BOTH),
    ({"cuts": "7 cuts", "piece": "25 cm", "answer in": "m"}, "2 m", BOTH),
    ({"time": "24 min", "each cut": "3 min"}, "9 pieces", BOTH),
    ({"time": "24 min", "each cut": "3 min", "find": "cuts"}, "8 cuts", MULTIPLY),
    ({"pieces": "9 blocks", "time": "24 min"}, "3 min", BOTH),
    ({"cuts": "9 cuts", "each cut": "3 min"}, "27 min", MULTIPLY),
    ({"cuts": "6 cuts", "length": "25 m", "round to": "1 decimal place"}, "3.6 m", BOTH),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), ANSWERS, ids=[str(a[0]) for a in ANSWERS])
def test_answers(fields: Fields, answer: str, kind: str, solved: Solve) -> None:
    solution = solved(NAME, fields)
    assert only_answer(solution) == answer
    assert solution.kind.decision.value == kind
    # A quotient that does not end leaves a single way to divide.
    assert len(solution.workings) >= (1 if "round to" in fields else 2)


WRONG: list[tuple[Fields, dict[str, str]]] = [
    (ROPE, {"as many cuts as pieces": "12 cuts", "one cut more than pieces": "13 cuts"}),
    (ROPE | {"ring": "yes"}, {"one cut too few for a ring": "11 cuts"}),
    (ROPE | {"find": "pieces"}, {"one piece too many": "13 pieces"}),
    (SAWING, {"as many cuts as pieces": "16 min", "one cut more than pieces": "18 min"}),
    (AGAIN, {"over-use of proportionality": "8 min"}),
    ({"time": "24 min", "each cut": "3 min"}, {"as many cuts as pieces": "8 pieces"}),
    ({"cuts": "4 cuts", "length": "60 m"}, {"as many cuts as pieces": "15 m"}),
    ({"cuts": "9 cuts", "each cut": "3 min"}, {"one cut too few": "24 min"}),
]


@pytest.mark.parametrize(("fields", "answers"), WRONG, ids=[str(each[0]) for each in WRONG])
def test_wrong_answers(fields: Fields, answers: dict[str, str], solved: Solve) -> None:
    reached = wrong(solved(NAME, fields))
    assert reached | answers == reached


def test_a_ring_and_a_cutting_without_a_proportion(solved: Solve) -> None:
    ring = solved(NAME, ROPE | {"ring": "yes"})
    assert "as many cuts as pieces" not in wrong(ring) | refused(ring)
    assert "over-use of proportionality" not in wrong(solved(NAME, AGAIN | {"wanted": "7 pieces"}))


COMPLAINTS: list[tuple[Fields, str]] = [
    ({"length": "60 m"}, "do not belong together"),
    ({"length": "60 m", "piece": "7 m"}, "not a whole number of pieces"),
    ({"length": "5 m", "piece": "5 m"}, "not a whole number of pieces"),
    ({"pieces": "1 piece"}, "one piece needs no cutting"),
    (ROPE | {"find": "time"}, "cannot be asked for"),
    (AGAIN | {"each cut": "2 min"}, "'wanted' goes with"),
    ({"pieces": "9 blocks", "each cut": "3 kg"}, "'each cut' is a length of time"),
    ({"pieces": "9 kg"}, "'pieces' is a number of things"),
    ({"pieces": "7 blocks", "time": "25 h"}, "'each cut' would be 4 1/6 h"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS, ids=[each[1] for each in COMPLAINTS])
def test_complaints(fields: Fields, problem: str, solved: Solve) -> None:
    assert problem in complaint(solved, NAME, fields).problem


@pytest.mark.parametrize("fields", [ROPE, SAWING, AGAIN, {"pieces": "9 blocks"}], ids=str)
def test_the_guard(fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    check_guard(NAME, fields, solved, monkeypatch)


def test_a_slip_in_the_ways_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cuts_ways, "minus", plus)
    with pytest.raises(SolvingError):
        solved(NAME, ROPE)


def test_the_reason_and_the_figure(solved: Solve) -> None:
    solution = solved(NAME, ROPE)
    assert plain(solution.kind.reason) == (
        "Cuts and pieces do not double together: 12 pieces need 11 cuts, but 24 pieces need "
        "23 cuts. So this one needs both."
    )
    assert solution.figure is not None
    first = draw_figure(solution.figure, Show.FIRST_STEP, 400, 11).reads_as
    assert "5 m" in first
    assert "12" not in first
