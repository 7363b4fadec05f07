"""The guard proved: break a relation or a strategy of each family, and nothing is printed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction
from types import ModuleType
from typing import Any

import pytest

from typeset.arithmetic import adding, dividing, division, multiplying, subtracting
from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, minus, plus, times
from typeset.arithmetic.families import (
    FAMILIES,
    arrangements,
    combinations,
    equal_groups,
    grouping,
    handshakes,
    part_whole,
    rectangle,
    sharing,
    times_as_many,
)
from typeset.arithmetic.methods import Method
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.workings import Working
from typeset.errors import SolvingError
from typeset.quantities.amount import Amount

Solve = Callable[..., Solution]

SAMPLES: dict[str, dict[str, Any]] = {
    "equal groups": {"groups": "14 crates", "each": "6 floats"},
    "sharing": {"total": "84 mackerel", "groups": "7 buckets"},
    "grouping": {"total": "53 people", "each": "8 people", "remainder": "round up"},
    "times as many": {"smaller": "12 shells", "times": "5", "find": "difference"},
    "combinations": {"choices": {"hulls": "3", "sails": "4"}},
    "arrangements": {"things": "4 boats"},
    "handshakes": {"things": "6 people"},
    "part whole": {"parts": {"red": "36 kites", "green": "27 kites"}},
    "change": {"start": "340 mackerel", "decrease": "185 mackerel"},
    "comparison": {"smaller": "47 m", "difference": "38 m"},
    "rectangle": {"length": "7 cm", "width": "5 cm", "find": "perimeter"},
}
LONG_DIVISION = {"total": "1128 people", "each": "36 people", "remainder": "round up"}
THREE_PARTS = {"parts": {"red": "36 kites", "green": "27 kites"}, "whole": "99 kites", "find": "x"}


def shifted(answers: Mapping[str, AnswerValue]) -> dict[str, AnswerValue]:
    return {
        name: replace(each, value=each.value + 1) if isinstance(each, Amount) else each
        for name, each in answers.items()
    }


@pytest.mark.parametrize("structure", SAMPLES)
def test_sound_families_solve(structure: str, solved: Solve) -> None:
    assert solved(structure, SAMPLES[structure]).workings


@pytest.mark.parametrize("structure", SAMPLES)
def test_a_broken_relation_stops(
    structure: str, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    family = type(FAMILIES[structure])
    sound = family.relation
    monkeypatch.setattr(family, "relation", lambda self, problem: shifted(sound(self, problem)))
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])


@pytest.mark.parametrize("structure", SAMPLES)
def test_one_broken_strategy_stops(
    structure: str, solved: Solve, monkeypatch: pytest.MonkeyPatch
) -> None:
    family = type(FAMILIES[structure])
    sound = family.strategies

    def broken(self: Any, problem: Problem[Any]) -> list[Working]:
        *others, last = sound(self, problem)
        return [*others, replace(last, answers=shifted(last.answers))]

    monkeypatch.setattr(family, "strategies", broken)
    with pytest.raises(SolvingError, match="but the relation gives"):
        solved(structure, SAMPLES[structure])


def ten_and_one(value: Fraction) -> tuple[Fraction, ...]:
    return (Fraction(10), value - 11)


def doubled(first: Expression, *others: Expression) -> Expression:
    return plus(first, first, *others)


def swapped(left: Expression, right: Expression) -> Expression:
    return minus(right, left)


def no_ways(*_arguments: Any) -> list[Method]:
    return []


# A slip inside the reckoning of each family or method: where, what, and instead of what.
SLIPS: list[tuple[str, dict[str, Any], ModuleType, str, Any]] = [
    ("equal groups", SAMPLES["equal groups"], multiplying, "place_parts", ten_and_one),
    ("equal groups", SAMPLES["equal groups"], multiplying, "times", plus),
    ("equal groups", SAMPLES["equal groups"], equal_groups, "ways_to_multiply", no_ways),
    ("sharing", SAMPLES["sharing"], division, "over", times),
    ("sharing", SAMPLES["sharing"], sharing, "ways_to_divide", no_ways),
    ("grouping", LONG_DIVISION, dividing, "minus", swapped),
    ("grouping", LONG_DIVISION, dividing, "_CHUNKS", (20, 10)),
    ("grouping", LONG_DIVISION, grouping, "plus", times),
    ("times as many", SAMPLES["times as many"], times_as_many, "minus", plus),
    ("combinations", SAMPLES["combinations"], combinations, "times", plus),
    ("arrangements", SAMPLES["arrangements"], arrangements, "perm", lambda n, k: n * k),
    ("handshakes", SAMPLES["handshakes"], handshakes, "over", minus),
    ("part whole", SAMPLES["part whole"], adding, "plus", doubled),
    ("part whole", THREE_PARTS, part_whole, "minus", swapped),
    ("change", SAMPLES["change"], subtracting, "minus", swapped),
    ("comparison", SAMPLES["comparison"], adding, "minus", plus),
    ("rectangle", SAMPLES["rectangle"], rectangle, "plus", lambda *terms: terms[0]),
]


@pytest.mark.parametrize(
    ("structure", "fields", "module", "name", "instead"),
    SLIPS,
    ids=[f"{case[0]}: {case[2].__name__.rpartition('.')[2]}.{case[3]}" for case in SLIPS],
)
def test_a_slip_in_the_reckoning_stops(
    structure: str,
    fields: dict[str, Any],
    module: ModuleType,
    name: str,
    instead: Any,
    solved: Solve,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    solved(structure, fields)
    monkeypatch.setattr(module, name, instead)
    with pytest.raises(SolvingError):
        solved(structure, fields)
