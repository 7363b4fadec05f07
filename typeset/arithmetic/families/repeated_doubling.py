"""Repeated doubling: from each day to the next the same factor, again and again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.doubling_mistakes import mistakes_of
from typeset.arithmetic.families.doubling_ways import (
    AFTER,
    FIRST,
    LESS,
    MORE,
    TIMES_KEY,
    UNTIL,
    Growth,
    ways_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount
from typeset.arithmetic.figures import Mark, SequenceBoxes
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import so_many
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.sense import nonsense
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import DIVIDE, TIMES, say, write, write_plain

LAST, TOTAL = "last", "total"
_WORDS = {
    "double": "2",
    "twice": "2",
    "treble": "3",
    "halve": "1/2",
    "half": "1/2",
}
# Further than this nobody goes step by step, and no more boxes are drawn.
_MOST_STEPS = 12
_MOST_SEARCHED = 24
_MOST_BOXES = 9


def _in_words(value: Any) -> Any:
    """'double' and 'half' are words of the story, so they are no number that it has to tell."""
    if isinstance(value, str) and value.strip() in _WORDS:
        return Fraction(_WORDS[value.strip()])
    return value


class RepeatedDoublingFields(FamilyFields):
    """`first: 3 shells`, `every: day`, and `until: 6` (day 6), or `after: 5` (5 days later), or
    `more than: 100 shells` (on which day first?). `times: 3` or `times: half` where it is not
    doubling; `find: total` asks for all the days together."""

    first: PositiveAmount
    times: Annotated[Fraction | PositiveAmount, BeforeValidator(_in_words)] = Fraction(2)
    every: str = "day"
    until: WholeAmount | None = None
    after: WholeAmount | None = None
    more_than: PositiveAmount | None = Field(default=None, alias="more than")
    less_than: PositiveAmount | None = Field(default=None, alias="less than")
    find: Literal["last", "total"] = "last"


class RepeatedDoubling(Family[RepeatedDoublingFields]):
    """The amount after k steps is first × times to the power k."""

    name = "repeated doubling"
    fields_model = RepeatedDoublingFields

    def build(self, fields: RepeatedDoublingFields) -> Problem[RepeatedDoublingFields]:
        """The problem; with 'more than' or 'less than' the number of the day is asked for."""
        ends = {
            UNTIL: fields.until,
            AFTER: fields.after,
            MORE: fields.more_than,
            LESS: fields.less_than,
        }
        known = {name: amount for name, amount in ends.items() if amount is not None}
        if len(known) != 1:
            raise AmountError(
                "it is not clear where to stop",
                "give one of 'until: 6', 'after: 5', 'more than' and 'less than'",
            )
        end = next(iter(known))
        givens = {FIRST: fields.first}
        if isinstance(fields.times, Amount):
            givens[TIMES_KEY] = fields.times
        _check(fields, end, known[end])
        asked = fields.every if end in (MORE, LESS) else str(fields.find)
        unit = NUMBER if end in (MORE, LESS) else _unit(fields)
        givens[end] = known[end]
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[RepeatedDoublingFields]) -> Mapping[str, AnswerValue]:
        """first × timesᵏ; the sum of such a row; or the smallest k that is far enough."""
        growth = Growth.of(problem)
        steps = _steps(growth)
        last = growth.first.like(growth.first.value * growth.factor**steps)
        fault = nonsense(last, problem.fields.may_be_cut)
        if fault:
            raise AmountError(
                f"in the end there would be {write_plain(last)}, {fault}", "choose other numbers"
            )
        return growth.answer(_value(growth, steps))

    def smooth(self, problem: Problem[RepeatedDoublingFields]) -> Mapping[str, AnswerValue]:
        """Where the day is asked for, the factor that has to be reached by then."""
        growth = Growth.of(problem)
        if growth.threshold is not None:
            return growth.answer(growth.threshold.base / growth.first.base)
        return growth.answer(_value(growth, growth.steps))

    def probed(self, problem: Problem[RepeatedDoublingFields]) -> tuple[str, ...]:
        """The first number; the factor is the rule of the story. A total also grows with the
        number of days, and in another way."""
        ends = (MORE, LESS, UNTIL, AFTER) if problem.finds[0] == TOTAL else (MORE, LESS)
        return (FIRST, *(name for name in ends if name in problem.givens))

    def strategies(self, problem: Problem[RepeatedDoublingFields]) -> Iterator[Working]:
        """Step by step, or one factor for all the steps."""
        yield from ways_of(Growth.of(problem))

    def mistakes(self, problem: Problem[RepeatedDoublingFields]) -> Iterator[MistakenWorking]:
        """Adding for multiplying, a step too many or too few, the last for the total."""
        yield from mistakes_of(Growth.of(problem))

    def reason(self, problem: Problem[RepeatedDoublingFields]) -> Rich:
        """The same factor each time, and nothing that is added each time."""
        growth = Growth.of(problem)
        text = "From each {every} to the next you {verb}: {first}, {second}, {third}."
        if growth.asks_total:
            text += " Then all of them are added up."
        return say(
            text,
            every=growth.every,
            verb=growth.verb,
            first=growth.bare(growth.at(0)),
            second=growth.bare(growth.at(1)),
            third=growth.bare(growth.at(2)),
        )

    def figure(
        self, problem: Problem[RepeatedDoublingFields], answers: Mapping[str, AnswerValue]
    ) -> SequenceBoxes | None:
        """The numbers in boxes, with the factor on every arrow."""
        growth = Growth.of(problem)
        steps = _steps(growth)
        if steps >= _MOST_BOXES:
            return None
        terms = tuple(
            Mark((write(growth.bare(growth.at(at))),), is_given=not at) for at in range(steps + 1)
        )
        sign, by = (TIMES, growth.factor) if growth.factor > 1 else (DIVIDE, 1 / growth.factor)
        arrow = Mark(say(f"{sign}\u00a0{{by}}", by=Amount(by)))
        told = f"A row of numbers, one for each {growth.every}; from each to the next you "
        return SequenceBoxes(terms, (arrow,) * steps, f"{told}{growth.verb}.")


def _unit(fields: RepeatedDoublingFields) -> Unit:
    """The unit of the answer: another noun, where the author gives one."""
    first, unit = fields.first, fields.answer_in
    if unit is None or unit == first.unit:
        return first.unit
    if not is_counted(first) or unit.dimension not in (Dimension.COUNT, Dimension.NUMBER):
        raise AmountError("'answer in' is another unit than that of 'first'", "leave it out")
    return unit


def _check(fields: RepeatedDoublingFields, end: str, amount: Amount) -> None:
    """Raises AmountError where the numbers do not go together."""
    times = fields.times.base if isinstance(fields.times, Amount) else fields.times
    plain = not isinstance(fields.times, Amount) or not fields.times.unit.plural
    if times == 1 or not plain or 1 not in (times.numerator, times.denominator):
        raise AmountError(
            "'times' is no factor that can be repeated here", "write double, treble, half, 3 or 1/3"
        )
    if not fields.every.strip() or fields.every in (FIRST, TIMES_KEY, UNTIL, AFTER, MORE, LESS):
        raise AmountError("'every' is no name for a step", "write such as day, week or hour")
    if fields.first.unit.dimension in (Dimension.CLOCK, Dimension.TEMPERATURE):
        raise AmountError("'first' cannot be doubled", "give a number or a measure")
    if end in (UNTIL, AFTER):
        steps = amount.value - (1 if end == UNTIL else 0)
        if not 2 <= steps <= _MOST_STEPS:
            told = write_plain(so_many(steps, "step"))
            raise AmountError(
                f"that makes {told}, and 2 to {_MOST_STEPS} can be told",
                f"change '{end}'",
            )
        return
    if fields.find == TOTAL:
        raise AmountError("'find: total' needs the day on which to stop", "give 'until' or 'after'")
    same = amount.unit == fields.first.unit or (is_counted(amount) and is_counted(fields.first))
    if not same:
        raise AmountError(
            f"{write_plain(amount)} is not in the unit of {write_plain(fields.first)}",
            "give both in one unit",
        )
    if (end == MORE) != (times > 1):
        way, wanted = ("grow", MORE) if times > 1 else ("shrink", LESS)
        raise AmountError(f"the numbers {way}, so '{end}' does not fit", f"write '{wanted}'")
    is_there = (
        fields.first.value > amount.value if end == MORE else fields.first.value < amount.value
    )
    if is_there:
        raise AmountError(f"the first number is {end} that already", "change one of them")


def _steps(growth: Growth) -> int:
    """How many times it is multiplied, by trying one power after the other where it is asked."""
    if growth.threshold is None:
        return growth.steps
    goal = growth.threshold.value / growth.first.value
    for power in range(1, _MOST_SEARCHED + 1):
        reached = growth.factor**power
        if (reached > goal) if growth.factor > 1 else (reached < goal):
            return power
    raise AmountError(
        f"even {_MOST_SEARCHED} steps do not lead so far", "choose a number that is nearer"
    )


def _value(growth: Growth, steps: int) -> Fraction:
    first, factor = growth.first.value, growth.factor
    if growth.threshold is not None:
        return Fraction(steps + 1)
    if growth.asks_total:
        # The sum of a geometric row: first × (factorⁿ − 1) ÷ (factor − 1).
        return first * (factor ** (steps + 1) - 1) / (factor - 1)
    return Fraction(first * factor**steps)
