"""Random problems of time and measures against datetime, pint and plain counting."""

from __future__ import annotations

from datetime import datetime, timedelta
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import solved, tried
from typeset.arithmetic.answers import answer_exact
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

MIDNIGHT = datetime(2024, 2, 28)
times_of_day = st.integers(0, 24 * 60 - 1)
lengths = st.integers(1, 24 * 60 - 1)


def clock(minutes: int) -> str:
    at = MIDNIGHT + timedelta(minutes=minutes)
    return f"{at:%H:%M}"


def typed_length(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return " ".join(f"{n} {unit}" for n, unit in ((hours, "h"), (rest, "min")) if n)


def on_the_clock(solution: Solution, name: str) -> str:
    """The answer as datetime writes it."""
    return answer_exact(solution.answers[name]).rjust(5, "0")


def minutes_of(solution: Solution, name: str) -> Fraction:
    answer = solution.answers[name]
    assert isinstance(answer, Amount)
    return answer.base / 60


@tried
@given(start=times_of_day, lasts=lengths)
def test_elapsed_time_to_the_end(start: int, lasts: int) -> None:
    later = MIDNIGHT + timedelta(minutes=start + lasts)
    days = (later.date() - MIDNIGHT.date()).days
    fields = {"start": clock(start), "duration": typed_length(lasts)}
    for said in ({}, {"next_day": "yes" if days else "no"}):
        solution = solved("elapsed time", **fields, **said)
        assert on_the_clock(solution, "end") == f"{later:%H:%M}"
    with pytest.raises(AmountError):
        solved("elapsed time", **fields, next_day="no" if days else "yes")


@tried
@given(end=times_of_day, lasts=lengths)
def test_elapsed_time_back_to_the_start(end: int, lasts: int) -> None:
    earlier = MIDNIGHT + timedelta(minutes=end - lasts)
    solution = solved("elapsed time", end=clock(end), duration=typed_length(lasts))
    assert on_the_clock(solution, "start") == f"{earlier:%H:%M}"


@tried
@given(start=times_of_day, end=times_of_day, days=st.integers(0, 3))
def test_elapsed_time_between(start: int, end: int, days: int) -> None:
    between = timedelta(days=days, minutes=end) - timedelta(minutes=start)
    fields = {"start": clock(start), "end": clock(end)} | (
        {"days_later": str(days)} if days else {}
    )
    if between <= timedelta(0):
        with pytest.raises(AmountError):
            solved("elapsed time", **fields)
        return
    solution = solved("elapsed time", **fields)
    assert minutes_of(solution, "duration") == Fraction(between // timedelta(minutes=1))


@tried
@given(
    start=times_of_day,
    parts=st.lists(st.integers(1, 600), min_size=2, max_size=4),
    back=st.booleans(),
)
def test_elapsed_time_in_a_chain(start: int, parts: list[int], back: bool) -> None:
    named = dict(zip(("crossing", "waiting", "walk", "tour"), parts, strict=False))
    durations = {name: f"{minutes} min" for name, minutes in named.items()}
    whole = timedelta(minutes=sum(parts))
    at = MIDNIGHT + timedelta(minutes=start)
    if back:
        solution = solved("elapsed time", end=clock(start), durations=durations)
        assert on_the_clock(solution, "start") == f"{at - whole:%H:%M}"
        return
    solution = solved("elapsed time", start=clock(start), durations=durations)
    assert on_the_clock(solution, "end") == f"{at + whole:%H:%M}"
    assume(start + sum(parts) < 24 * 60)
    missing = durations.popitem()[0]
    rest = solved(
        "elapsed time",
        start=clock(start),
        end=clock(start + sum(parts)),
        durations=durations,
        find=missing,
    )
    assert minutes_of(rest, missing) == named[missing]


@tried
@given(start=times_of_day, days=st.integers(1, 9), lasts=st.integers(0, 1439))
def test_elapsed_time_over_days(start: int, days: int, lasts: int) -> None:
    later = MIDNIGHT + timedelta(days=days, minutes=start + lasts)
    duration = f"{days} day{'' if days == 1 else 's'} {typed_length(lasts)}".strip()
    solution = solved("elapsed time", start=clock(start), duration=duration)
    assert on_the_clock(solution, "end") == f"{later:%H:%M}"
