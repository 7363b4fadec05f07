"""Change: something grows or shrinks; its start, its change or its end is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Literal

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.additive import (
    Plan,
    check_additive,
    probed_additive,
    slips,
    workings,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit
from typeset.quantities.writing import write

START, END = "start", "end"
INCREASE, DECREASE = "increase", "decrease"


class ChangeFields(FamilyFields):
    """Two of `start: 340 mackerel`, `increase:` or `decrease: 185 mackerel`, `end:`."""

    start: AnyAmount | None = None
    increase: PositiveAmount | None = None
    decrease: PositiveAmount | None = None
    end: AnyAmount | None = None
    find: Literal["start", "increase", "decrease", "end"] | None = None


class Change(Family[ChangeFields]):
    """end = start + increase, or end = start − decrease."""

    name = "change"
    fields_model = ChangeFields

    def build(self, fields: ChangeFields) -> Problem[ChangeFields]:
        """The problem; what is not given is asked for."""
        named = {
            START: fields.start,
            INCREASE: fields.increase,
            DECREASE: fields.decrease,
            END: fields.end,
        }
        givens = {name: amount for name, amount in named.items() if amount is not None}
        if len(givens) != 2 or {INCREASE, DECREASE} <= set(givens):
            raise AmountError(
                "two of start, increase (or decrease) and end are known",
                "give exactly two of them",
            )
        check_additive(*givens.values())
        missing = _missing(givens)
        asked = fields.find or missing
        if asked != missing:
            raise AmountError(f"'{asked}' cannot be asked for here", f"write find: {missing}")
        unit = fields.answer_in or _unit(tuple(givens.values()))
        in_unit(next(iter(givens.values())), unit)
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[ChangeFields]) -> Mapping[str, AnswerValue]:
        """end − start − increase = 0, or end − start + decrease = 0."""
        asked = problem.finds[0]
        change = next(name for name in (*problem.givens, asked) if name in (INCREASE, DECREASE))
        sign = -1 if change == INCREASE else 1
        equations = [Linear({END: 1, START: -1, change: sign})]
        equations += [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        value = solve_linear(equations)[asked] / problem.units[asked].per_base
        return {asked: problem.answer(asked, value)}

    def strategies(self, problem: Problem[ChangeFields]) -> Iterator[Working]:
        """Forwards for the end, backwards for the start, the way between for the change."""
        yield from workings(problem, _plan(problem))

    def mistakes(self, problem: Problem[ChangeFields]) -> Iterator[MistakenWorking]:
        """The operation that a word of the story suggests; slips in columns."""
        yield from slips(problem, _plan(problem))

    def probed(self, problem: Problem[ChangeFields]) -> tuple[str, ...]:
        """All that is given, but beside a 0 only that."""
        return probed_additive(problem)

    def figure(
        self, problem: Problem[ChangeFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """The larger amount over the smaller one and the change."""
        return _figure(problem, answers)


def _missing(givens: Mapping[str, Amount]) -> str:
    """The one that is not given. Raises AmountError where nothing changes."""
    if END not in givens:
        return END
    if START not in givens:
        return START
    if givens[START].base == givens[END].base:
        raise AmountError("start and end are the same, so nothing changes", "change one of them")
    return INCREASE if givens[START].base < givens[END].base else DECREASE


def _unit(amounts: tuple[Amount, ...]) -> Unit:
    return next((each.unit for each in amounts if each.unit.plural), amounts[0].unit)


def _plan(problem: Problem[ChangeFields]) -> Plan:
    asked, givens = problem.finds[0], problem.givens
    if asked == END and INCREASE in givens:
        why = step("Start at {start} and go up by {by}: add.", start=givens[START],
                   by=givens[INCREASE])  # fmt: skip
        return Plan(why, (givens[START], givens[INCREASE]))
    if asked == END:
        why = step("Start at {start} and go down by {by}: subtract.", start=givens[START],
                   by=givens[DECREASE])  # fmt: skip
        return Plan(why, (givens[START],), givens[DECREASE])
    if asked == START and INCREASE in givens:
        why = step(
            "It ends at {end} after {by} more, so go back and take that off: subtract.",
            end=givens[END],
            by=givens[INCREASE],
        )
        return Plan(why, (givens[END],), givens[INCREASE])
    if asked == START:
        why = step("It ends at {end} after going down by {by}, so go back: add.",
                   end=givens[END], by=givens[DECREASE])  # fmt: skip
        return Plan(why, (givens[END], givens[DECREASE]))
    larger, smaller = (END, START) if asked == INCREASE else (START, END)
    why = step("How far is it from {start} to {end}? That is a difference, so subtract.",
               start=givens[START], end=givens[END])  # fmt: skip
    return Plan(why, (givens[larger],), givens[smaller])


def _figure(problem: Problem[ChangeFields], answers: Mapping[str, AnswerValue]) -> BarModel | None:
    asked = problem.finds[0]
    answer = answers[asked]
    assert isinstance(answer, Amount)
    all_three = {**problem.givens, asked: answer}
    if any(amount.base <= 0 for amount in all_three.values()):
        return None
    marks = {
        name: Mark((write(amount),), is_given=name != asked) for name, amount in all_three.items()
    }
    change = INCREASE if INCREASE in all_three else DECREASE
    first, whole = (START, END) if change == INCREASE else (END, START)
    parts = (
        Part(all_three[first].base, marks[first]),
        Part(all_three[change].base, marks[change], shaded=True, dashed=change == DECREASE),
    )
    return BarModel((Bar("", parts),), (), marks[whole])
