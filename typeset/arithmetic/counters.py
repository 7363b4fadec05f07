"""Pictures of counters in rings, for whoever still counts one by one: few things in few groups."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.figures import GroupedObjects, Mark
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit, noun
from typeset.quantities.writing import write

# What can still be counted one by one at a glance (our own limits).
MOST_GROUPS = 12
MOST_EACH = 12
MOST_COUNTERS = 48
_GROUP = noun("group", "groups")


def can_be_counted(groups: Fraction, each: Fraction, total: Fraction) -> bool:
    """True for whole numbers that are few enough to be drawn one by one."""
    return (
        groups.denominator == each.denominator == total.denominator == 1
        and 1 <= groups <= MOST_GROUPS
        and 1 <= each <= MOST_EACH
        and total <= MOST_COUNTERS
    )


def counters_for(
    problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> GroupedObjects | None:
    """Rings of counters for equal groups and for sharing, where things are few and counted;
    None for any other problem."""
    match problem.family:
        case "equal groups":
            return _equal_groups(problem, answers)
        case "sharing":
            return _sharing(problem)
        case _:
            return None


def _equal_groups(
    problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> GroupedObjects | None:
    """Full rings; how many there are altogether is the question."""
    names = tuple(problem.fields.groups)
    each = problem.given("each")
    total = next(iter(answers.values()))
    if len(names) != 1 or not isinstance(total, Amount):
        return None
    groups = problem.given(names[0])
    all_counted = is_counted(each) and is_counted(groups) and is_counted(total)
    if not all_counted or not can_be_counted(groups.value, each.value, total.value):
        return None
    return GroupedObjects(
        groups=int(groups.value),
        each=int(each.value),
        groups_mark=Mark((write(_called(groups)),)),
        each_mark=Mark((write(each),)),
        total=Mark((write(total),), is_given=False),
    )


def _sharing(problem: Problem[Any]) -> GroupedObjects | None:
    """Empty rings and all the counters to begin with; how many come into each is the question."""
    total, groups = problem.given("total"), problem.given("groups")
    each = Fraction(total.value // groups.value)
    if not is_counted(total) or not can_be_counted(groups.value, each, total.value):
        return None
    rest = total.value - each * groups.value
    if rest and problem.fields.may_be_cut:
        return None
    return GroupedObjects(
        groups=int(groups.value),
        each=int(each),
        groups_mark=Mark((write(_called(groups)),)),
        each_mark=Mark((write(total.like(each)),), is_given=False),
        left_over=int(rest),
        rest=Mark((write(total.like(rest)),), is_given=False) if rest else None,
        total=Mark((write(total),)),
    )


def _called(groups: Amount) -> Amount:
    """'5 nets', or '5 groups' where they have no name."""
    unit: Unit = groups.unit if groups.unit.singular else _GROUP
    return Amount(groups.value, unit)
