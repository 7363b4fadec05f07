"""Comparison by difference: how many more or fewer; one of the three amounts is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Literal

from pydantic import Field

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
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import in_unit, is_counted
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write

SMALLER, LARGER, DIFFERENCE = "smaller", "larger", "difference"
_Side = Literal["smaller", "larger"]


class ComparisonFields(FamilyFields):
    """Two of `smaller`, `larger` and `difference`; `names` makes the workings speak of them."""

    smaller: AnyAmount | None = None
    larger: AnyAmount | None = None
    difference: PositiveAmount | None = None
    find: Literal["smaller", "larger", "difference"] | None = None
    names: dict[_Side, str] = Field(default_factory=dict)


class Comparison(Family[ComparisonFields]):
    """larger − smaller = difference."""

    name = "comparison"
    fields_model = ComparisonFields

    def build(self, fields: ComparisonFields) -> Problem[ComparisonFields]:
        """The problem; what is not given is asked for."""
        named = {SMALLER: fields.smaller, LARGER: fields.larger, DIFFERENCE: fields.difference}
        givens = {name: amount for name, amount in named.items() if amount is not None}
        if len(givens) != 2:
            raise AmountError(
                "two of smaller, larger and difference are known", "give exactly two of them"
            )
        check_additive(*givens.values())
        missing = next(name for name in named if name not in givens)
        asked = fields.find or missing
        if asked != missing:
            raise AmountError(f"'{asked}' is both given and asked for", f"write find: {missing}")
        if asked == DIFFERENCE and givens[LARGER].base <= givens[SMALLER].base:
            raise AmountError("the larger amount is not larger", "exchange smaller and larger")
        amounts = tuple(givens.values())
        unit = next((each.unit for each in amounts if each.unit.plural), amounts[0].unit)
        unit = fields.answer_in or unit
        in_unit(amounts[0], unit)
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[ComparisonFields]) -> Mapping[str, AnswerValue]:
        """larger − smaller − difference = 0."""
        asked = problem.finds[0]
        equations = [Linear({LARGER: 1, SMALLER: -1, DIFFERENCE: -1})]
        equations += [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        value = solve_linear(equations)[asked] / problem.units[asked].per_base
        return {asked: problem.answer(asked, value)}

    def strategies(self, problem: Problem[ComparisonFields]) -> Iterator[Working]:
        """Every way to subtract for the difference or the smaller, to add for the larger."""
        yield from workings(problem, _plan(problem))

    def mistakes(self, problem: Problem[ComparisonFields]) -> Iterator[MistakenWorking]:
        """The operation that 'more' or 'fewer' suggests; slips in columns."""
        yield from slips(problem, _plan(problem))

    def probed(self, problem: Problem[ComparisonFields]) -> tuple[str, ...]:
        """All that is given, but beside a 0 only that."""
        return probed_additive(problem)

    def figure(
        self, problem: Problem[ComparisonFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """Two bars, and the gap between their ends."""
        return _figure(problem, answers)


def _named(problem: Problem[ComparisonFields], side: _Side) -> str:
    return the(problem.fields.names.get(side, side))


def _plan(problem: Problem[ComparisonFields]) -> Plan:
    asked, givens = problem.finds[0], problem.givens
    larger, smaller = _named(problem, "larger"), _named(problem, "smaller")
    if asked == DIFFERENCE:
        why = step("The difference is what one has beyond the other, so subtract.")
        return Plan(why, (givens[LARGER],), givens[SMALLER])
    by = givens[DIFFERENCE]
    fewer = "fewer" if is_counted(by) else "less"
    if asked == LARGER:
        why = step(f"{title(larger)}: {{by}} more than {smaller}, so add.", by=by)
        return Plan(why, (givens[SMALLER], by))
    why = step(f"{title(smaller)}: {{by}} {fewer} than {larger}, so subtract.", by=by)
    return Plan(why, (givens[LARGER],), by)


def _figure(
    problem: Problem[ComparisonFields], answers: Mapping[str, AnswerValue]
) -> BarModel | None:
    asked = problem.finds[0]
    answer = answers[asked]
    assert isinstance(answer, Amount)
    all_three = {**problem.givens, asked: answer}
    if any(amount.base <= 0 for amount in all_three.values()):
        return None
    marks = {
        name: Mark((write(amount),), is_given=name != asked) for name, amount in all_three.items()
    }
    sides: tuple[_Side, ...] = ("larger", "smaller")
    bars = tuple(
        Bar(
            problem.fields.names.get(side, side),
            (Part(all_three[side].base, marks[side], shaded=side == SMALLER),),
        )
        for side in sides
    )
    return BarModel(bars, (Brace(0, marks[DIFFERENCE], gap_to=1),))
