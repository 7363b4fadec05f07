"""Answers in hours and minutes where the story has them, checked against datetime."""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.arithmetic.random_problems import solved
from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.solving import Solution
from typeset.quantities.inline import plain


def text_of(solution: Solution) -> str:
    (answer,) = solution.answers.values()
    return plain(answer_text(answer)).replace("\u00a0", " ")


def last_lines(solution: Solution) -> set[str]:
    return {plain(each.steps[-1].sentence).replace("\u00a0", " ") for each in solution.workings}


@settings(max_examples=30, deadline=None, derandomize=True)
@given(one=st.integers(61, 600), other=st.integers(61, 600))
def test_times_like_datetime(one: int, other: int) -> None:
    parts = {
        name: f"{minutes // 60} h {minutes % 60} min"
        for name, minutes in (("out", one), ("back", other))
        if minutes % 60
    }
    if len(parts) < 2:
        return
    whole = timedelta(minutes=one) + timedelta(minutes=other)
    hours, minutes = divmod(int(whole.total_seconds()) // 60, 60)
    expected = f"{hours} h {minutes} min" if minutes else f"{hours} h"
    solution = solved("part whole", parts=parts)
    assert text_of(solution) == expected
    assert last_lines(solution) == {f"That is {expected}."}


@pytest.mark.parametrize(
    ("structure", "fields", "answer"),
    [
        ("equal groups", {"groups": "3 trips", "each": "1 h 20 min"}, "4 h"),
        ("sharing", {"total": "2 h 40 min", "groups": "4 trips"}, "40 min"),
        ("sharing", {"total": "5 h 20 min", "groups": "4 trips"}, "1 h 20 min"),
        ("change", {"start": "1 h 20 min", "increase": "50 min"}, "2 h 10 min"),
        ("change", {"start": "80 min", "increase": "50 min"}, "130 min"),
        ("equal groups", {"groups": "3 ropes", "each": "2 m 35 cm"}, "7 m 5 cm"),
        (
            "equal groups",
            {"groups": "3 trips", "each": "1 h 20 min", "answer in": "min"},
            "240 min",
        ),
    ],
)
def test_the_answer_is_written_as_the_story_writes(
    structure: str, fields: dict[str, str], answer: str
) -> None:
    assert text_of(solved(structure, **fields)) == answer


def test_a_mistake_is_written_so_too() -> None:
    solution = solved("change", start="1 h 55 min", increase="1 h 36 min")
    wrong = next(each for each in solution.mistakes if "subtracting" in each.misconception)
    (answer,) = wrong.answers.values()
    assert plain(answer_text(answer)).replace("\u00a0", " ") == "19 min"
    carried = next(each for each in solution.mistakes if "carried" in each.misconception)
    (answer,) = carried.answers.values()
    assert plain(answer_text(answer)).replace("\u00a0", " ") == "1 h 41 min"
