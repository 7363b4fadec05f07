"""Elapsed time: answers counted out by hand on a clock, wrong answers in the known ways."""

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
from typeset.arithmetic.families import elapsed_minutes, elapsed_times
from typeset.arithmetic.figures import NumberLine, Show
from typeset.arithmetic.solving import Solution
from typeset.drawing.figures import draw_figure
from typeset.errors import SolvingError
from typeset.quantities.inline import plain

NAME = "elapsed time"
LATE: Fields = {"start": "21:40", "duration": "2 h 35 min"}
DAYTIME: Fields = {"start": "9:40", "end": "14:15"}
OVERNIGHT: Fields = {"start": "22:45", "end": "1:10", "next day": "yes"}
BACK: Fields = {"end": "14:15", "duration": "2 h 35 min"}
CHAIN: Fields = {
    "start": "9:40",
    "durations": {"crossing": "45 min", "waiting": "20 min", "tour": "1 h 10 min"},
}
MISSING: Fields = {
    "start": "9:40",
    "end": "12:00",
    "durations": {"crossing": "45 min", "waiting": "20 min"},
    "find": "tour",
}
ANSWERS: list[tuple[Fields, str]] = [
    (LATE, "00:15"),
    (DAYTIME, "4 h 35 min"),
    (OVERNIGHT, "2 h 25 min"),
    (BACK, "11:40"),
    (CHAIN, "11:55"),
    (MISSING, "1 h 15 min"),
    ({"end": "1:10", "duration": "2 h 50 min"}, "22:20"),
    ({"start": "21:30", "duration": "2 h 30 min"}, "00:00"),
    ({"start": "8:15", "duration": "2 days 5 h"}, "13:15"),
    ({"start": "8:15", "end": "10:00", "days later": "3"}, "3 days 1 h 45 min"),
    (DAYTIME | {"answer in": "min"}, "275 min"),
    ({"start": "9:05", "duration": "1 1/2 h"}, "10:35"),
]


@pytest.mark.parametrize(("fields", "answer"), ANSWERS, ids=[str(each[0]) for each in ANSWERS])
def test_answers(fields: Fields, answer: str, solved: Solve) -> None:
    solution = solved(NAME, fields)
    assert only_answer(solution) == answer
    assert solution.kind.decision.value == "add or subtract"
    assert len(solution.workings) >= 2


WRONG: list[tuple[Fields, dict[str, str]]] = [
    (
        LATE,
        {
            "100 minutes in an hour": "23:75",
            "hour boundary not carried": "23:15",
            "counting both ends": "23:15",
            "subtracting instead of adding": "19:05",
        },
    ),
    (
        DAYTIME,
        {
            "100 minutes in an hour": "4 h 75 min",
            "hour boundary not carried": "5 h 35 min",
            "counting both ends": "5 h 35 min",
            "minutes of the start added": "4 h 55 min",
            "12 hours out": "7 h 25 min",
        },
    ),
    (OVERNIGHT, {"midnight overlooked": "21 h 35 min", "minutes of the start added": "2 h 55 min"}),
    (
        BACK,
        {
            "100 minutes in an hour": "11:80",
            "hour boundary not carried": "12:40",
            "adding instead of subtracting": "16:50",
        },
    ),
    ({"start": "10:30", "duration": "4 h 50 min"}, {"12 hours out": "3:20"}),
    (CHAIN, {"quantity left out": "10:45"}),
    (MISSING, {"quantity left out": "1 h 35 min"}),
    # The task's own example: 9:40 and 35 minutes read as 9:75.
    ({"start": "9:40", "duration": "35 min"}, {"100 minutes in an hour": "9:75"}),
]


@pytest.mark.parametrize(("fields", "answers"), WRONG, ids=[str(each[0]) for each in WRONG])
def test_wrong_answers(fields: Fields, answers: dict[str, str], solved: Solve) -> None:
    reached = wrong(solved(NAME, fields))
    assert reached | answers == reached


def test_mistakes_that_do_not_show(solved: Solve) -> None:
    same_hour = solved(NAME, {"start": "9:10", "duration": "35 min"})
    assert refused(same_hour)["100 minutes in an hour"] == "it would give the right answer"
    assert "hour boundary not carried" not in wrong(same_hour)
    assert "midnight overlooked" not in wrong(solved(NAME, DAYTIME))


def test_the_next_day_is_told_and_never_guessed(
    solved: Solve, told: Callable[[Solution], list[str]]
) -> None:
    assert "So it ends at 00:15 the next day." in told(solved(NAME, LATE))
    assert "So it starts at 22:20 the day before." in told(
        solved(NAME, {"end": "1:10", "duration": "2 h 50 min"})
    )
    silent = complaint(solved, NAME, {"start": "22:45", "end": "1:10"})
    assert "not after the start" in silent.problem
    assert "next day: yes" in silent.remedy
    assert "on the next day" in complaint(solved, NAME, LATE | {"next day": "no"}).problem
    assert "on the same day" in complaint(
        solved, NAME, {"start": "9:00", "duration": "2 h", "next day": "yes"}
    ).problem  # fmt: skip


COMPLAINTS: list[tuple[Fields, str]] = [
    ({"start": "9:40"}, "two of start, duration and end"),
    (LATE | {"end": "0:15"}, "two of start, duration and end"),
    ({"start": "9:40", "duration": "3 kg"}, "'duration' is a length of time"),
    ({"start": "2 h", "duration": "3 h"}, "'start' is a time of day"),
    ({"start": "9:40", "duration": "30 s"}, "not a whole number of minutes"),
    (CHAIN | {"duration": "5 min"}, "both there"),
    (MISSING | {"find": "crossing"}, "are known"),
    (MISSING | {"end": "10:30"}, "fill everything"),
    (LATE | {"find": "start"}, "unknown name 'start'"),
    (LATE | {"answer in": "min"}, "time of day"),
    (OVERNIGHT | {"days later": "1"}, "both there"),
    ({"start": "9:40", "durations": {"end": "3 min"}}, "cannot be called 'end'"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS, ids=[each[1] for each in COMPLAINTS])
def test_complaints(fields: Fields, problem: str, solved: Solve) -> None:
    assert problem in complaint(solved, NAME, fields).problem


@pytest.mark.parametrize("fields", [LATE, DAYTIME, OVERNIGHT, BACK, CHAIN, MISSING], ids=str)
def test_the_guard(fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    check_guard(NAME, fields, solved, monkeypatch)


def test_a_slip_on_the_clock_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(elapsed_times, "DAY", 23 * 60)
        with pytest.raises(SolvingError):
            solved(NAME, LATE)
    monkeypatch.setattr(elapsed_minutes, "HOUR", 100)
    with pytest.raises(SolvingError):
        solved(NAME, LATE)


def test_the_line_tells_no_answer_before_it_is_complete(solved: Solve) -> None:
    figure = solved(NAME, LATE).figure
    assert isinstance(figure, NumberLine)
    first = draw_figure(figure, Show.FIRST_STEP, 400, 11).reads_as
    assert "21:40" in first
    assert "2 h 35 min" in first
    assert "00:15" not in first
    whole = draw_figure(figure, Show.COMPLETE, 400, 11).reads_as
    assert "20 min from 21:40 to 22:00" in whole
    assert "00:15" in whole
    assert solved(NAME, {"start": "8:15", "duration": "2 days 5 h"}).figure is None


def test_the_reason_uses_these_times(solved: Solve) -> None:
    assert plain(solved(NAME, LATE).kind.reason) == (
        "With a start 10 min later, 21:50 instead of 21:40, the end would be 10 min later too, "
        "00:25 instead of 00:15. So this one only adds or subtracts."
    )
