"""What part–whole, change and comparison share: one sum or difference, told and mistaken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.adding import total_of, ways_to_add
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.methods import (
    Method,
    check_alike,
    conversion,
    finest_unit,
    in_unit,
    is_counted,
    without_noun,
)
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.subtracting import across_zero, at_once, through_zero, ways_to_subtract
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, Dimension, Unit

_MAY_BE_BELOW_ZERO = (Dimension.TEMPERATURE, Dimension.NUMBER)


@dataclass(frozen=True, slots=True)
class Operation:
    """Amounts to be added, or one to be taken from another; all bare and in one unit."""

    terms: tuple[Amount, ...]
    taken: Amount | None = None

    @property
    def result(self) -> Amount:
        """What comes of it."""
        total = total_of(self.terms)
        return total.like(total.value - self.taken.value) if self.taken else total

    def ways(self) -> Iterator[Method]:
        """The methods that suit the numbers, also below zero."""
        numbers = (*self.terms, *((self.taken,) if self.taken else ()))
        first = self.terms[0]
        if all(each.value >= 0 for each in numbers) and self.result.value >= 0:
            yield from self._ordinary_ways()
        elif self.taken is None:
            yield from through_zero(first, self.terms[1])
        elif self.taken.value >= 0:
            yield from through_zero(first, self.taken.like(-self.taken.value))
        else:
            yield from across_zero(first, self.taken)

    def _ordinary_ways(self) -> Iterator[Method]:
        if self.taken is None:
            yield from ways_to_add(self.terms)
        elif not self.taken.value or not self.result.value:
            yield at_once(self.terms[0], self.taken)
        else:
            yield from ways_to_subtract(self.terms[0], self.taken)


@dataclass(frozen=True, slots=True)
class Plan:
    """How an unknown is found: why this operation, and the amounts as they are given."""

    why: Step
    terms: tuple[Amount, ...]
    taken: Amount | None = None


def common_unit(problem: Problem[Any]) -> Unit:
    """The finest unit of the givens; numbers and nouns stay what they are."""
    amounts = tuple(problem.givens.values())
    return NUMBER if is_counted(amounts[0]) else finest_unit(*amounts)


def check_additive(*amounts: Amount) -> None:
    """Raises AmountError where the amounts do not add."""
    for amount in amounts:
        if amount.unit.dimension is Dimension.CLOCK:
            raise AmountError(
                "a time of day is not added to another time of day",
                "give lengths of time, such as 1 h 20 min",
            )
        if amount.value < 0 and amount.unit.dimension not in _MAY_BE_BELOW_ZERO:
            raise AmountError("an amount here is less than nothing", "write it without the sign")
    check_alike(*amounts)


def probed_additive(problem: Problem[Any]) -> tuple[str, ...]:
    """The givens to probe. Beside a 0 another number looks as if it were multiplied (0 − 9 and
    0 − 18), so then only the 0 is probed."""
    noughts = tuple(name for name, amount in problem.givens.items() if not amount.value)
    return noughts or tuple(problem.givens)


def operation_of(plan: Plan, unit: Unit) -> Operation:
    """The plan's amounts made bare and brought to one unit."""
    taken = _bare(plan.taken, unit) if plan.taken is not None else None
    return Operation(tuple(_bare(term, unit) for term in plan.terms), taken)


def _bare(amount: Amount, unit: Unit) -> Amount:
    return without_noun(in_unit(amount, unit))


def workings(problem: Problem[Any], plan: Plan) -> Iterator[Working]:
    """The plan worked out in every way that suits its numbers."""
    unit = common_unit(problem)
    given = (*plan.terms, *((plan.taken,) if plan.taken is not None else ()))
    opening = [each for amount in given for each in conversion(amount, unit)[1]]
    for method in operation_of(plan, unit).ways():
        yield finished(problem, method.after(plan.why, *opening))


def finished(problem: Problem[Any], method: Method) -> Working:
    """The method carried into the unit of the answer."""
    asked = problem.finds[0]
    answer, closing = conversion(method.result, problem.units[asked])
    if is_counted(answer) and answer.unit.singular:
        closing = (*closing, step("So {answer}.", answer=answer))
    return method.working({asked: answer}, *closing)


def slips(problem: Problem[Any], plan: Plan) -> Iterator[MistakenWorking]:
    """The wrong operation, and the slips of the written methods."""
    operation = operation_of(plan, common_unit(problem))
    yield from _wrong_operation(problem, operation)
    if operation.taken is not None:
        yield from _smaller_from_larger(problem, operation)
    else:
        yield from _carried_ten_forgotten(problem, operation)


def _answered(problem: Problem[Any], result: Amount) -> tuple[str, Amount]:
    asked = problem.finds[0]
    return asked, in_unit(result, problem.units[asked])


def _wrong_operation(problem: Problem[Any], operation: Operation) -> Iterator[MistakenWorking]:
    first, taken = operation.terms[0], operation.taken
    if taken is not None:
        result = first.like(first.value + taken.value)
        name, worked = "adding instead of subtracting", plus(first, taken)
        text = "Put the two numbers together: {answer}."
    elif len(operation.terms) == 2:
        large, small = sorted(operation.terms, key=lambda each: -each.value)
        result = large.like(large.value - small.value)
        name, worked = "subtracting instead of adding", minus(large, small)
        text = "Take the smaller number from the larger: {answer}."
    else:
        return
    if any(each.value < 0 for each in (*operation.terms, result, *((taken,) if taken else ()))):
        return
    asked, answer = _answered(problem, result)
    only = step(text, equation(worked, result), answer=answer)
    yield MistakenWorking(name, (only,), {asked: answer})


def _smaller_from_larger(problem: Problem[Any], operation: Operation) -> Iterator[MistakenWorking]:
    """52 − 38 as 26: in each column the smaller digit from the larger."""
    first, taken = operation.terms[0], operation.taken
    assert taken is not None
    if not _in_columns(first, taken) or first.value < taken.value:
        return
    top = str(first.value)
    bottom = str(taken.value).rjust(len(top), "0")
    digits = "".join(str(abs(int(a) - int(b))) for a, b in zip(top, bottom, strict=True))
    result = first.like(int(digits))
    asked, answer = _answered(problem, result)
    only = step(
        "In each column, the smaller digit from the larger: {answer}.",
        equation(minus(first, taken), result),
        answer=answer,
    )
    yield MistakenWorking("smaller digit from larger", (only,), {asked: answer}, slip=True)


def _carried_ten_forgotten(
    problem: Problem[Any], operation: Operation
) -> Iterator[MistakenWorking]:
    """47 + 38 as 75: the ten of 15 is not carried."""
    if not _in_columns(*operation.terms):
        return
    width = max(len(str(term.value)) for term in operation.terms)
    rows = [str(term.value).rjust(width, "0") for term in operation.terms]
    sums = [sum(int(digit) for digit in column) for column in zip(*rows, strict=True)]
    kept = str(sums[0]) + "".join(str(each % 10) for each in sums[1:])
    result = operation.result.like(Fraction(int(kept)))
    asked, answer = _answered(problem, result)
    only = step(
        "Add in columns and write the ones of each: {answer}.",
        equation(plus(*operation.terms), result),
        answer=answer,
    )
    yield MistakenWorking("carried ten forgotten", (only,), {asked: answer}, slip=True)


def _in_columns(*amounts: Amount) -> bool:
    return all(each.value.denominator == 1 and each.value >= 0 for each in amounts) and any(
        each.value > 10 for each in amounts
    )
