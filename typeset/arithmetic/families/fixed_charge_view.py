"""The numbers of a fixed charge: by its equations, and as they are reckoned with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.equations import equation
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, Dimension, Unit

FIXED, RATE, COUNT, TOTAL = "fixed", "rate", "count", "total"
PLACES = (FIXED, RATE, COUNT, TOTAL)
FIRST_COUNT, FIRST_TOTAL = "first count", "first total"
_MONEY_LIKE = (FIXED, RATE, TOTAL, FIRST_TOTAL)


@dataclass(frozen=True, slots=True)
class Charge:
    """Everything in one unit of each kind; what is not given follows from the rest."""

    problem: Problem[Any]
    fixed: Amount
    rate: Amount
    count: Amount
    total: Amount
    # The pair that is known beside the one asked about, if any.
    first: tuple[Amount, Amount] | None
    conversions: tuple[Step, ...]

    def knows(self, name: str) -> bool:
        """True for what the story gives."""
        return name in self.problem.givens


def values_of(problem: Problem[Any]) -> dict[str, Fraction]:
    """Fixed part, rate and total in base units and the count in its own, by the equations.

    The rate is for one of the unit that the counts are given in.
    Raises AmountError where they do not follow from what is given.
    """
    base = {
        name: amount.value if name in (COUNT, FIRST_COUNT) else amount.base
        for name, amount in problem.givens.items()
    }
    rules = [Linear({name: 1}, base[name]) for name in (FIXED, RATE) if name in base]
    for count, total in ((COUNT, TOTAL), (FIRST_COUNT, FIRST_TOTAL)):
        if count in base and total in base:
            rules.append(Linear({FIXED: 1, RATE: base[count]}, base[total]))
    found = solve_linear(rules or [Linear({FIXED: 0})])
    if FIXED not in found or RATE not in found:
        raise AmountError("the numbers leave more than one answer", "give one more number")
    values = {FIXED: found[FIXED], RATE: found[RATE], **base}
    if COUNT in base and TOTAL not in base:
        values[TOTAL] = found[FIXED] + found[RATE] * base[COUNT]
    elif TOTAL in base and COUNT not in base:
        rest = Linear({COUNT: found[RATE]}, base[TOTAL] - found[FIXED])
        values[COUNT] = solve_linear([rest])[COUNT]
    elif COUNT not in base:
        values[COUNT], values[TOTAL] = _first_pair(base)
    return values


def _first_pair(base: Mapping[str, Fraction]) -> tuple[Fraction, Fraction]:
    """The one known pair, where nothing but the fixed part or the rate is asked for."""
    if FIRST_COUNT not in base:
        raise AmountError("neither count nor total is given", "give one of them")
    return base[FIRST_COUNT], base[FIRST_TOTAL]


def view_of(problem: Problem[Any]) -> Charge:
    """The amounts in one unit, with the steps that change units."""
    values = values_of(problem)
    money = _common(problem, _MONEY_LIKE)
    counted = _common(problem, (COUNT, FIRST_COUNT))
    if COUNT in problem.units and counted == NUMBER:
        counted = problem.units[COUNT]
    # The count has the unit that its rate is for, so it is never changed to another.
    sized = {name: Amount(values[name] / money.per_base, money) for name in (FIXED, RATE, TOTAL)}
    count = Amount(values[COUNT], counted)
    first = None
    if FIRST_COUNT in values:
        first = (
            Amount(values[FIRST_COUNT], counted),
            Amount(values[FIRST_TOTAL] / money.per_base, money),
        )
    steps = _conversions(problem, money, _MONEY_LIKE)
    return Charge(problem, sized[FIXED], sized[RATE], count, sized[TOTAL], first, steps)


def _common(problem: Problem[Any], names: tuple[str, ...]) -> Unit:
    """The smallest unit among those given, so that numbers stay whole."""
    units = [problem.given(name).unit for name in names if name in problem.givens]
    nouns = [unit for unit in units if unit.is_noun]
    if nouns:
        return nouns[0]
    return min(units, key=lambda unit: unit.per_base, default=NUMBER)


def _conversions(problem: Problem[Any], unit: Unit, names: tuple[str, ...]) -> tuple[Step, ...]:
    steps = []
    for name in names:
        amount = problem.givens.get(name)
        if amount is None or amount.unit == unit or amount.unit.dimension is not unit.dimension:
            continue
        if unit.dimension in (Dimension.COUNT, Dimension.NUMBER):
            continue
        changed = amount.to(unit)
        text = "Use one unit: {old} is {new}."
        steps.append(step(text, equation(amount, changed), old=amount, new=changed))
    return tuple(steps)
