"""Angles that lie together: sums by Euclid I.13 and I.32; vertically opposite by I.15."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from typeset.arithmetic.figures import Angles, AngleSetting, BarModel
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.inline import plain

Solve = Callable[..., Solution]
Fields = dict[str, Any]


def angles(make: str, find: Any, /, *, more: Fields | None = None, **known: str) -> Fields:
    return {"make": make, "angles": known, "find": find, **(more or {})}


TRIANGLE = angles("triangle", "c", a="65°", b="40°")
BASES = angles("triangle", "base", top="40°", more={"how many": {"base": "2"}})
TWICE = angles("full turn", ["c", "d"], a="90°", b="120°", more={"multiples": {"d": "2"}})
OPPOSITE = angles("crossing lines", "opposite", a="65°")
NEXT = angles("crossing lines", "next", a="65°")

SOLVED = [
    (angles("right angle", "b", a="35°"), ["55°"], "add or subtract"),
    (angles("straight line", "b", a="65°"), ["115°"], "add or subtract"),
    (angles("straight line", "c", a="62.5°", b="30°"), ["87.5°"], "add or subtract"),
    (angles("full turn", "d", a="90°", b="120°", c="60°"), ["90°"], "add or subtract"),
    (angles("quadrilateral", "d", a="90°", b="120°", c="60°"), ["90°"], "add or subtract"),
    (TRIANGLE, ["75°"], "add or subtract"),
    (BASES, ["70°"], "both"),
    (angles("triangle", "top", base="70°", more={"how many": {"base": "2"}}), ["40°"], "both"),
    (TWICE, ["50°", "100°"], "both"),
    (angles("straight line", ["b", "c"], a="80°"), ["50°", "50°"], "both"),
    (OPPOSITE, ["65°"], "neither"),
    (NEXT, ["115°"], "add or subtract"),
]


@pytest.mark.parametrize(("fields", "answers", "kind"), SOLVED)
def test_answers(
    solved: Solve,
    answers_of: Callable[[Solution], list[str]],
    fields: Fields,
    answers: list[str],
    kind: str,
) -> None:
    solution = solved("angles", fields)
    assert answers_of(solution) == answers
    assert solution.kind.decision.value == kind
    assert len({working.strategy for working in solution.workings}) >= 2


WRONG = [
    (TRIANGLE, "wrong total of the angles", "255°"),
    (TRIANGLE, "one angle left out", "115°"),
    (TRIANGLE, "angles subtracted from one another", "25°"),
    (TRIANGLE, "step left out", "105°"),
    (BASES, "step left out", "140°"),
    (angles("straight line", "b", a="65°"), "wrong total of the angles", "295°"),
    (OPPOSITE, "opposite and next angle exchanged", "115°"),
    (NEXT, "opposite and next angle exchanged", "65°"),
    (NEXT, "wrong total of the angles", "295°"),
]


@pytest.mark.parametrize(("fields", "mistake", "answer"), WRONG)
def test_wrong_angles(
    solved: Solve,
    wrong_answers: Callable[[Solution], dict[str, str]],
    fields: Fields,
    mistake: str,
    answer: str,
) -> None:
    assert wrong_answers(solved("angles", fields))[mistake] == answer


def test_mistakes_that_these_numbers_do_not_show(solved: Solve) -> None:
    # Two equal angles leave nothing when subtracted; 200° are more than half a turn.
    equal = solved("angles", angles("triangle", "c", a="50°", b="50°"))
    assert "angles subtracted from one another" not in names(equal)
    large = solved("angles", angles("full turn", "c", a="150°", b="50°"))
    assert "wrong total of the angles" not in names(large)
    square = solved("angles", NEXT | {"angles": {"a": "90°"}})
    assert "opposite and next angle exchanged" in {r.misconception for r in square.refused}


def names(solution: Solution) -> set[str]:
    return {each.misconception for each in solution.mistakes}


def test_reasons(solved: Solve) -> None:
    assert plain(solved("angles", BASES).kind.reason) == (
        "What is known comes off 180° first; the rest is then shared into 2 equal parts. So this "
        "one needs both."
    )
    assert plain(solved("angles", OPPOSITE).kind.reason) == (
        "Where two straight lines cross, opposite angles are equal, so 65° stays 65°. So there is "
        "nothing to multiply and nothing to add."
    )


def test_a_letter_keeps_its_case(solved: Solve, told: Callable[[Solution], list[str]]) -> None:
    assert "Angle d: 2 times 50° is 100°." in told(solved("angles", TWICE))


@pytest.mark.parametrize(
    ("fields", "setting"),
    [
        (TRIANGLE, AngleSetting.TRIANGLE),
        (TWICE, AngleSetting.POINT),
        (angles("straight line", "b", a="65°"), AngleSetting.LINE),
    ],
)
def test_the_angles_are_drawn_where_they_lie(
    solved: Solve, fields: Fields, setting: AngleSetting
) -> None:
    figure = solved("angles", fields).figure
    assert isinstance(figure, Angles)
    assert figure.setting is setting
    whole = 360 if setting is AngleSetting.POINT else 180
    assert sum(wedge.degrees for wedge in figure.wedges) == whole
    given = [wedge.mark.is_given for wedge in figure.wedges if wedge.mark]
    assert given == [True] * len(fields["angles"]) + [False] * (len(given) - len(fields["angles"]))


def test_a_sharp_angle_is_told_in_a_bar(solved: Solve) -> None:
    figure = solved("angles", angles("straight line", "b", a="5°")).figure
    assert isinstance(figure, BarModel)
    assert sum(part.size for part in figure.bars[0].parts) == 180


COMPLAINTS = [
    (angles("triangle", "b", a="65°"), "a triangle has 3 angles, and these are 2"),
    (angles("triangle", "c", a="65°", b="115°"), "the known angles alone make 180°"),
    (angles("straight line", "b", a="65 cm"), "'a' is not an angle"),
    (angles("straight line", "a", a="65°"), "both given and asked for"),
    (angles("straight line", "b"), "no angle is known"),
    (angles("crossing lines", "oposite", a="65°"), "unknown name 'oposite'"),
    (angles("crossing lines", "next", a="65°", b="20°"), "one known angle gives the others"),
    (angles("crossing lines", "next", a="180°"), "less than 180°"),
    (
        angles("straight line", "b", a="65°", more={"multiples": {"b": "2"}}),
        "so many times nothing",
    ),
    (angles("straight line", "b", a="65°", more={"how many": {"c": "2"}}), "unknown name 'c'"),
    (angles("straight line", ["b", "b"], a="65°"), "each angle is asked for once"),
]


@pytest.mark.parametrize(("fields", "problem"), COMPLAINTS)
def test_complaints(solved: Solve, fields: Fields, problem: str) -> None:
    with pytest.raises(AmountError) as caught:
        solved("angles", fields)
    assert problem in caught.value.problem
    assert caught.value.remedy
