"""Laws for the families of inverse operations, means and searches, over random problems.

Every sentence reads well (as in test_wording_laws.py), every mistake has a name, and a broken
relation or strategy stops the build. Wording: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.arithmetic.families.test_wording_laws import any_of, check_sentence, counted, each_of
from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.workings import Working
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount

Solve = Callable[..., Solution]
Fields = dict[str, Any]
few, small, middle = st.integers(1, 6), st.integers(2, 12), st.integers(1, 120)


def joined(*parts: st.SearchStrategy[Any]) -> st.SearchStrategy[str]:
    return st.tuples(*parts).map(lambda found: " ".join(str(each) for each in found))


OPERATION = st.one_of(
    any_of("halve", "double", "treble"),
    joined(any_of("add", "subtract"), counted(few, "floats")),
    joined(any_of("multiply by", "divide by"), small),
)
PROBLEMS: dict[str, st.SearchStrategy[Fields]] = {
    "think of a number": each_of(
        operations=st.lists(OPERATION, min_size=1, max_size=3), result=counted(middle, "floats")
    )
    | each_of(
        operations=st.lists(OPERATION, min_size=1, max_size=3), start=counted(middle, "floats")
    )
    | each_of(
        operations=st.tuples(OPERATION, any_of("add _", "subtract _", "multiply by _")).map(list),
        start=counted(middle, "floats"),
        result=counted(middle, "floats"),
    ),
    "missing number": each_of(
        sentence=joined(middle, any_of("+", "−", "×", "÷"), any_of("_"), any_of("="), middle)
        | joined(any_of("_"), any_of("+", "−", "×", "÷"), small, any_of("="), middle)
        | joined(any_of("_ +"), small, any_of("="), middle, any_of("+", "−"), small)
        | joined(small, any_of("× _ +"), small, any_of("="), middle)
    ),
    "mean": each_of(
        values=st.lists(counted(st.integers(0, 9), "terns"), min_size=2, max_size=6)
    )
    | each_of(
        values=st.lists(counted(st.integers(0, 9), "terns"), min_size=1, max_size=5).map(
            lambda values: [*values, "_"]
        ),
        mean=counted(few, "terns"),
    )
    | each_of(mean=counted(few, "terns"), count=counted(small, "boxes")),
    "two sorts": st.builds(
        lambda each, more, crates, boxes, find: {
            "sorts": {"crates": f"{each} kg", "boxes": f"{each + more} kg"},
            "count": f"{crates + boxes} parts",
            "total": f"{crates * each + boxes * (each + more)} kg",
            "find": find,
        },
        few,
        few,
        few,
        few,
        any_of("crates", "boxes", ["crates", "boxes"]),
    ),
    "repeated doubling": each_of(
        first=counted(middle, "terns"),
        times=any_of("double", "half", "treble", "4"),
        until=any_of("3", "4", "6"),
        find=any_of("last", "total"),
    )
    | each_of(first=counted(few, "terns"), **{"more than": counted(middle, "terns")}),
    "digits of a number": each_of(
        digits=any_of("2", "3"), **{"digit sum": st.integers(1, 18).map(str)},
        **{"is": any_of("odd", "even", "square", "prime")}, find=any_of("number", "least"),
    )
    | each_of(using=st.lists(any_of(*"0123456789"), min_size=2, max_size=4),
              find=any_of("greatest", "least")),
}  # fmt: skip


@pytest.mark.parametrize("family", PROBLEMS)
@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=st.data())
def test_every_sentence_reads_well(
    family: str, data: st.DataObject, solved: Solve, told: Callable[[Solution], list[str]]
) -> None:
    fields = data.draw(PROBLEMS[family])
    try:
        solution = solved(family, fields)
    except (AmountError, ZeroDivisionError):
        return
    for sentence in told(solution):
        check_sentence(sentence)
    named = {mistake.misconception for mistake in solution.mistakes}
    named |= {refusal.misconception for refusal in solution.refused}
    assert named <= set(MISCONCEPTIONS)


SAMPLES: dict[str, Fields] = {
    "think of a number": {"operations": ["halve", "add 6", "divide by 3"], "result": "4.5"},
    "missing number": {"sentence": "7 × _ + 5 = 47"},
    "mean": {"values": ["12 boats", "15 boats", "9 boats"]},
    "two sorts": {"sorts": {"crabs": "10 legs", "gulls": "2 legs"}, "count": "9",
                  "total": "50 legs", "find": "gulls"},
    "repeated doubling": {"first": "3 shells", "until": "6"},
    "digits of a number": {"digits": "2", "digit sum": "11", "turned round": "27 more"},
}  # fmt: skip


def shifted(answers: Mapping[str, AnswerValue]) -> dict[str, AnswerValue]:
    return {
        name: replace(each, value=each.value + 1) if isinstance(each, Amount) else each
        for name, each in answers.items()
    }


@pytest.mark.parametrize("structure", SAMPLES)
def test_a_broken_relation_stops(
    structure: str, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    family = type(FAMILIES[structure])
    sound = family.relation
    assert solved(structure, SAMPLES[structure]).workings
    monkeypatch.setattr(family, "relation", lambda self, problem: shifted(sound(self, problem)))
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])


@pytest.mark.parametrize("structure", SAMPLES)
@pytest.mark.parametrize("at", [0, 1])
def test_a_broken_strategy_stops(
    structure: str, at: int, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    family = type(FAMILIES[structure])
    sound = family.strategies

    def broken(self: Any, problem: Problem[Any]) -> list[Working]:
        ways = list(sound(self, problem))
        ways[at] = replace(ways[at], answers=shifted(ways[at].answers))
        return ways

    monkeypatch.setattr(family, "strategies", broken)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])
