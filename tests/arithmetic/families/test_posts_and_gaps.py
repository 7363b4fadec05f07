"""Posts and gaps: the standard result (length L, gap d: L/d + 1 posts in a line, L/d in a loop,
from memory) and rows counted by hand."""

from __future__ import annotations

import pytest

from tests.arithmetic.families.time_and_measure_cases import (
    Fields,
    Solve,
    check_guard,
    complaint,
    only_answer,
    wrong,
)
from typeset.arithmetic.equations import minus
from typeset.arithmetic.families import posts_view, posts_ways
from typeset.arithmetic.figures import PostsAndGaps
from typeset.errors import SolvingError

NAME = "posts and gaps"
FENCE: Fields = {"length": "60 m", "gap": "5 m"}
LAMPS: Fields = {"length": "84 m", "posts": "8 lamps", "posts at": "both ends"}
STAIRS: Fields = {
    "gap": "18 steps",
    "posts": "5 floors",
    "posts at": "both ends",
    "gaps called": "flights",
}
CLIMB: Fields = {
    "posts": "3 floors",
    "length": "4 min",
    "wanted": "6 floors",
    "posts at": "both ends",
    "gaps called": "flights",
}
BOTH, MULTIPLY = "both", "multiply or divide"
ANSWERS: list[tuple[Fields, str, str]] = [
    (FENCE | {"posts at": "both ends"}, "13 posts", BOTH),
    (FENCE | {"posts at": "one end"}, "12 posts", MULTIPLY),
    (FENCE | {"posts at": "neither end"}, "11 posts", BOTH),
    (FENCE | {"posts at": "round a loop", "answer in": "lanterns"}, "12 lanterns", MULTIPLY),
    (FENCE | {"posts at": "both ends", "find": "gaps"}, "12 gaps", MULTIPLY),
    ({"length": "1.2 km", "gap": "50 m", "posts at": "both ends"}, "25 posts", BOTH),
    (LAMPS, "12 m", BOTH),
    (LAMPS | {"posts at": "round a loop"}, "10.5 m", MULTIPLY),
    (STAIRS, "72 steps", BOTH),
    (LAMPS | {"length": "85 m", "round to": "1 decimal place"}, "12.1 m", BOTH),
    (CLIMB, "10 min", BOTH),
    (CLIMB | {"wanted": "7 floors"}, "12 min", BOTH),
    (CLIMB | {"posts": "3", "wanted": "6", "posts called": "floors"}, "10 min", BOTH),
    (FENCE | {"posts at": "both ends", "posts called": "lamps"}, "13 lamps", BOTH),
]


@pytest.mark.parametrize(("fields", "answer", "kind"), ANSWERS, ids=[str(a[0]) for a in ANSWERS])
def test_answers(fields: Fields, answer: str, kind: str, solved: Solve) -> None:
    solution = solved(NAME, fields)
    assert only_answer(solution) == answer
    assert solution.kind.decision.value == kind
    # A quotient that does not end leaves a single way to divide.
    assert len(solution.workings) >= (1 if "round to" in fields else 2)


WRONG: list[tuple[Fields, dict[str, str]]] = [
    (
        FENCE | {"posts at": "both ends"},
        {"one post too few": "12 posts", "end post counted the wrong way": "11 posts"},
    ),
    (
        FENCE | {"posts at": "neither end"},
        {"one post too many": "12 posts", "end post counted the wrong way": "13 posts"},
    ),
    (
        FENCE | {"posts at": "round a loop"},
        {"one post too few": "11 posts", "one post too many": "13 posts"},
    ),
    (FENCE | {"posts at": "both ends", "find": "gaps"}, {"gaps counted as posts": "13 gaps"}),
    (LAMPS, {"posts counted as gaps": "10.5 m"}),
    (STAIRS, {"posts counted as gaps": "90 steps", "end post counted the wrong way": "108 steps"}),
    (CLIMB, {"over-use of proportionality": "8 min"}),
]


@pytest.mark.parametrize(("fields", "answers"), WRONG, ids=[str(each[0]) for each in WRONG])
def test_wrong_answers(fields: Fields, answers: dict[str, str], solved: Solve) -> None:
    reached = wrong(solved(NAME, fields))
    assert reached | answers == reached


def test_round_a_loop_posts_are_gaps(solved: Solve) -> None:
    looped = solved(NAME, LAMPS | {"posts at": "round a loop"})
    assert "posts counted as gaps" not in wrong(looped)


COMPLAINTS: list[tuple[Fields, str]] = [
    (FENCE, "it is not said where"),
    ({"length": "60 m", "posts at": "both ends"}, "two of length, gap and posts"),
    (LAMPS | {"gap": "12 m"}, "two of length, gap and posts"),
    ({"length": "60 m", "gap": "7 m", "posts at": "both ends"}, "not a whole number of gaps"),
    ({"length": "10 m", "posts": "4 posts", "posts at": "both ends"}, "the gap would be 3 1/3 m"),
    ({"length": "10 m", "posts": "1 post", "posts at": "both ends"}, "leave no gap"),
    ({"length": "5 m", "gap": "5 m", "posts at": "neither end"}, "nothing to count"),
    (FENCE | {"wanted": "6 posts", "posts at": "both ends"}, "'wanted' goes with"),
    (LAMPS | {"find": "posts"}, "cannot be asked for"),
    (FENCE | {"gap": "5 min", "posts at": "both ends"}, "cannot be put together"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS, ids=[each[1] for each in COMPLAINTS])
def test_complaints(fields: Fields, problem: str, solved: Solve) -> None:
    assert problem in complaint(solved, NAME, fields).problem


@pytest.mark.parametrize(
    "fields", [FENCE | {"posts at": "both ends"}, LAMPS, STAIRS, CLIMB], ids=str
)
def test_the_guard(fields: Fields, solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    check_guard(NAME, fields, solved, monkeypatch)


def test_a_slip_in_the_ways_stops(solved: Solve, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(posts_ways, "plus", minus)
    with pytest.raises(SolvingError):
        solved(NAME, FENCE | {"posts at": "both ends"})


def test_the_row_is_drawn_with_its_posts(solved: Solve) -> None:
    for where, more in posts_view.MORE.items():
        figure = solved(NAME, FENCE | {"posts at": where}).figure
        assert isinstance(figure, PostsAndGaps)
        assert (figure.posts, figure.gaps) == (12 + more, 12)
        assert figure.count is not None
        assert not figure.count.is_given
