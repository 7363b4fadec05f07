"""Changes in a row: something grows and shrinks several times; its start, its end or one of
the changes is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from pydantic import BaseModel, ConfigDict, model_validator

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.additive import check_additive, probed_additive
from typeset.arithmetic.families.changes_in_a_row_mistakes import row_mistakes
from typeset.arithmetic.families.changes_in_a_row_view import END, START, View
from typeset.arithmetic.families.changes_in_a_row_ways import row_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, refuse
from typeset.arithmetic.figures import Jump, Mark, NumberLine, Tick
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import MINUS, say, write, write_plain

_LEAST, _MOST = 2, 6
_MAY_BE_BELOW_ZERO = (Dimension.TEMPERATURE, Dimension.NUMBER)


class ChangeOf(BaseModel):
    """`{increase: 6 people}` or `{decrease: 8 people}`."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)

    increase: PositiveAmount | None = None
    decrease: PositiveAmount | None = None

    @model_validator(mode="after")
    def _one_way(self) -> ChangeOf:
        if (self.increase is None) == (self.decrease is None):
            raise refuse("a change is an increase or a decrease", "write one of the two")
        return self

    @property
    def by(self) -> Amount:
        """By how much."""
        amount = self.increase or self.decrease
        assert amount is not None
        return amount


class ChangesFields(FamilyFields):
    """`start: 48 people`, `changes: {off: {decrease: 8 people}, on: {increase: 6 people}}`; or
    `end:` instead of `start:`. With both, one change is unknown: `on: increase`."""

    start: PositiveAmount | None = None
    changes: dict[str, ChangeOf | Literal["increase", "decrease"]]
    end: PositiveAmount | None = None


class ChangesInARow(Family[ChangesFields]):
    """end = start + all increases − all decreases."""

    name = "changes in a row"
    fields_model = ChangesFields

    def build(self, fields: ChangesFields) -> Problem[ChangesFields]:
        """The problem; what is not given is asked for."""
        asked = _asked(fields)
        ends = {START: fields.start, END: fields.end}
        givens = {name: amount for name, amount in ends.items() if amount is not None}
        givens |= {n: each.by for n, each in fields.changes.items() if isinstance(each, ChangeOf)}
        check_additive(*givens.values())
        amounts = list(givens.values())
        unit = fields.answer_in or _unit(amounts)
        in_unit(amounts[0], unit)
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[ChangesFields]) -> Mapping[str, AnswerValue]:
        """end − start − increases + decreases = 0, with everything but one known."""
        asked = problem.finds[0]
        signs = {name: 1 if goes_up(each) else -1 for name, each in problem.fields.changes.items()}
        sums = {END: 1, START: -1, **{name: -sign for name, sign in signs.items()}}
        equations = [Linear(sums)]
        equations += [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        values = solve_linear(equations)
        if values[asked] < 0 and asked not in (START, END):
            raise AmountError(
                f"'{asked}' would go the other way", "exchange increase and decrease there"
            )
        _check_on_the_way(values, signs, problem.units[asked])
        return {asked: problem.answer(asked, problem.units[asked].of_base(values[asked]))}

    def strategies(self, problem: Problem[ChangesFields]) -> Iterator[Working]:
        """One after another, forwards or back; or all that comes and goes together first."""
        yield from row_ways(View.of(problem))

    def mistakes(self, problem: Problem[ChangesFields]) -> Iterator[MistakenWorking]:
        """A change the wrong way or left out; forwards where one must go back."""
        yield from row_mistakes(View.of(problem))

    def reason(self, problem: Problem[ChangesFields]) -> Rich | None:
        """Every change is a sum or a difference."""
        told = next(each for name, each in problem.givens.items() if name not in (START, END))
        return say("Every change, such as {by}, is only added or taken off.", by=told)

    def probed(self, problem: Problem[ChangesFields]) -> tuple[str, ...]:
        """All that is given."""
        return probed_additive(problem)

    def figure(
        self, problem: Problem[ChangesFields], answers: Mapping[str, AnswerValue]
    ) -> NumberLine:
        """A number line with a jump for each change."""
        view = View.of(problem)
        reached = view.reached
        places = sorted({value for _name, value in reached})
        ends = ((START, reached[0][1]), (END, reached[-1][1]))
        given = {value for name, value in ends if name in problem.givens}
        asked = {value for name, value in ends if name in problem.finds}
        ticks = tuple(
            Tick(
                place,
                Mark((write(view.amount(place)),), is_given=place in given)
                if place in given | asked
                else Mark((write(view.amount(place)),), is_given=False, hidden=True),
            )
            for place in places
        )
        jumps = tuple(
            Jump(
                places.index(before),
                places.index(after),
                Mark(
                    say(f"{'+' if after > before else MINUS} {{by}}", by=view.by(name)),
                    is_given=name in problem.givens,
                ),
                below=after < before,
            )
            for (_, before), (name, after) in pairwise(reached)
        )
        told = ", ".join(f"{name} {write_plain(each)}" for name, each in problem.givens.items())
        return NumberLine(ticks, jumps, reads_as=f"A number line with {len(jumps)} jumps: {told}.")


def goes_up(change: ChangeOf | str) -> bool:
    """True for an increase, known or not."""
    if isinstance(change, ChangeOf):
        return change.increase is not None
    return change == "increase"


def _asked(fields: ChangesFields) -> str:
    """What is not given. Raises AmountError where that is not exactly one."""
    if not _LEAST <= len(fields.changes) <= _MOST:
        raise AmountError(
            f"there are {_LEAST} to {_MOST} changes in a row", "for one, write structure: change"
        )
    for name in (START, END):
        if name in fields.changes:
            raise AmountError(f"'{name}' is no change", "call the change otherwise")
    unknown = [name for name, each in fields.changes.items() if not isinstance(each, ChangeOf)]
    if fields.start is None:
        unknown.append(START)
    if fields.end is None:
        unknown.append(END)
    if len(unknown) != 1:
        raise AmountError(
            "all but one of start, the changes and end are known",
            "leave out start or end, or write one change without its amount (on: increase)",
        )
    return unknown[0]


def _check_on_the_way(values: Mapping[str, Fraction], signs: Mapping[str, int], unit: Unit) -> None:
    reached = values[START]
    for name, sign in signs.items():
        reached += sign * values[name]
        if reached < 0 and unit.dimension not in _MAY_BE_BELOW_ZERO:
            raise AmountError(
                f"after '{name}' there would be less than nothing", "choose other numbers"
            )


def _unit(amounts: list[Amount]) -> Unit:
    return next((each.unit for each in amounts if each.unit.plural), amounts[0].unit)
