"""Ways through repeated doubling: step by step, or one factor for all steps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Equation, Expression, equation, minus, over, plus, times
from typeset.arithmetic.methods import without_noun
from typeset.arithmetic.names import so_many
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.nouns import plural
from typeset.quantities.writing import say

FIRST, TIMES_KEY = "first", "times"
UNTIL, AFTER, MORE, LESS = "until", "after", "more than", "less than"
TOTAL = "total"
_VERBS = {Fraction(2): "double", Fraction(3): "treble", Fraction(1, 2): "halve"}
_NAMES = {Fraction(2): "doubling", Fraction(3): "trebling", Fraction(1, 2): "halving"}


@dataclass(frozen=True, slots=True)
class Growth:
    """The problem with its factor and its end."""

    problem: Problem[Any]

    @classmethod
    def of(cls, problem: Problem[Any]) -> Growth:
        """The growth of a problem."""
        return cls(problem)

    @property
    def first(self) -> Amount:
        """The first number."""
        return self.problem.given(FIRST)

    @property
    def factor(self) -> Fraction:
        """What every number is multiplied by."""
        times_ = self.problem.givens.get(TIMES_KEY)
        return times_.base if times_ is not None else Fraction(self.problem.fields.times)

    @property
    def by(self) -> Amount:
        """The whole number that is multiplied or divided by."""
        return Amount(self.factor if self.factor > 1 else 1 / self.factor)

    @property
    def steps(self) -> int:
        """How many steps there are, where the story says so."""
        if UNTIL in self.problem.givens:
            return int(self.problem.given(UNTIL).value) - 1
        return int(self.problem.given(AFTER).value)

    @property
    def threshold(self) -> Amount | None:
        """The number that has to be passed, where the day is asked for."""
        return self.problem.givens.get(MORE) or self.problem.givens.get(LESS)

    @property
    def asks_total(self) -> bool:
        """True where all the days together are asked for."""
        return self.problem.finds[0] == TOTAL

    @property
    def every(self) -> str:
        """What a step is called: 'day'."""
        return str(self.problem.fields.every)

    @property
    def verb(self) -> str:
        """'double', 'multiply by 4', 'halve'."""
        how = "multiply by" if self.factor > 1 else "divide by"
        return _VERBS.get(self.factor, f"{how} {self.by.value}")

    def so_often(self, count: int) -> Amount:
        """'5 doublings', '4 steps of × 4'."""
        name = _NAMES.get(self.factor, "step")
        return so_many(Fraction(count), name)

    def at(self, steps: int) -> Amount:
        """The number after so many steps, one after the other."""
        now = self.first
        for _ in range(steps):
            now = self.after(now)
        return now

    def after(self, amount: Amount) -> Amount:
        """The number after one more step."""
        return amount.like(amount.value * self.factor)

    def bare(self, amount: Amount) -> Amount:
        """The number without its noun."""
        return without_noun(amount)

    def once_more(self, before: Expression) -> Expression:
        """`before × 2`, or `before ÷ 2`."""
        return times(before, self.by) if self.factor > 1 else over(before, self.by)

    def label(self, steps: int) -> Rich:
        """'Day 6', or 'After 5 days'."""
        if AFTER not in self.problem.givens:
            return say(f"{title(self.every)} {{n}}", n=Amount(Fraction(steps + 1)))
        if not steps:
            return say("At the start")
        return say("After {n}", n=so_many(Fraction(steps), self.every, plural(self.every)))

    def answer(self, value: Fraction | int) -> dict[str, AnswerValue]:
        """The answer of this value."""
        asked = self.problem.finds[0]
        unit = self.problem.units[asked]
        if self.threshold is not None:
            return {asked: Amount(Fraction(value), unit)}
        return {asked: Amount(Fraction(value), unit, self.first.like(0).form)}


def ways_of(growth: Growth) -> Iterator[Working]:
    """Every way that these numbers allow; at least two."""
    if growth.threshold is not None:
        yield from _ways_to_the_day(growth, growth.threshold)
    elif growth.asks_total:
        yield from _ways_to_the_total(growth)
    else:
        table, last = table_of(growth, growth.steps)
        yield Working("Step by step", tuple(table), growth.answer(last.value))
        yield _one_factor(growth)


def table_of(growth: Growth, steps: int) -> tuple[list[Step], Amount]:
    """One line for every number, and the last of them."""
    now = growth.first
    lines = [step("{label}: {now}.", label=growth.label(0), now=now)]
    for at in range(1, steps + 1):
        after = growth.after(now)
        worked = equation(growth.once_more(now), after)
        lines.append(step("{label}: {now}.", worked, label=growth.label(at), now=after))
        now = after
    return lines, now


def _power(growth: Growth, steps: int) -> Amount:
    value = Fraction(1)
    for _ in range(steps):
        value *= growth.by.value
    return Amount(value)


def scaled(growth: Growth, power: Amount) -> tuple[Equation, Amount]:
    """The first number times or divided by all the factors together."""
    value = growth.first.value
    if growth.factor > 1:
        found = growth.first.like(value * power.value)
        return equation(times(power, growth.first), found), found
    found = growth.first.like(value / power.value)
    return equation(over(growth.first, power), found), found


def _one_factor(growth: Growth) -> Working:
    steps = growth.steps
    power = _power(growth, steps)
    worked, found = scaled(growth, power)
    how = "{power} times as much" if growth.factor > 1 else "one of {power} equal parts"
    lines = (
        step(
            f"From the first to the last there are {{steps}}. Together that is {how}.",
            equation(times(*[growth.by] * steps), power),
            steps=growth.so_often(steps),
            power=power,
        ),
        step("{label}: {found}.", worked, label=growth.label(steps), found=found),
    )
    return Working("One factor for all the steps", lines, growth.answer(found.value))


def _ways_to_the_total(growth: Growth) -> Iterator[Working]:
    steps = growth.steps
    table, _last = table_of(growth, steps)
    terms = [growth.at(at) for at in range(steps + 1)]
    total = growth.first.like(sum((term.value for term in terms), Fraction(0)))
    adding = step("All together: {total}.", equation(plus(*terms), total), total=total)
    yield Working("Step by step", (*table, adding), growth.answer(total.value))
    yield _in_parts(growth, table)
    if growth.factor == 2:
        yield _one_further(growth)


def _in_parts(growth: Growth, table: list[Step]) -> Working:
    """The smallest number as one part: 1 + 2 + 4 + … parts."""
    steps = growth.steps
    parts = [_power(growth, at) for at in range(steps + 1)]
    count = Amount(sum((part.value for part in parts), Fraction(0)))
    growing = growth.factor > 1
    one = growth.first if growing else growth.at(steps)
    total = one.like(one.value * count.value)
    opening = [] if growing else table
    name = "the first number" if growing else "the last number"
    lines = (
        *opening,
        step(f"Call {name} one part. All together there are {{count}}.",
             equation(plus(*parts), count), count=so_many(count.value, "part")),
        step("One part is {one}: {total}.", equation(times(count, one), total), one=one,
             total=total),
    )  # fmt: skip
    return Working("In parts of the smallest", lines, growth.answer(total.value))


def _one_further(growth: Growth) -> Working:
    """1 + 2 + 4 + … + 32 is one less than 64."""
    steps = growth.steps
    table, _last = table_of(growth, steps)
    more = growth.at(steps + 1)
    total = more.like(more.value - growth.first.value)
    lines = (
        *table,
        step("Go one step further: {more}.",
             equation(growth.once_more(growth.at(steps)), more), more=more),
        step("All the numbers before it fall short of it by the first one, {first}: {total}.",
             equation(minus(more, growth.first), total), first=growth.first, total=total),
    )  # fmt: skip
    return Working("One step further, less the first", lines, growth.answer(total.value))


def _ways_to_the_day(growth: Growth, threshold: Amount) -> Iterator[Working]:
    end = MORE if growth.factor > 1 else LESS
    steps = 1
    while not is_past(growth, growth.at(steps), threshold):
        steps += 1
    table, last = table_of(growth, steps)
    closing = step(
        "{label} is the first with {end} {threshold}.",
        label=growth.label(steps),
        end=end,
        threshold=threshold,
        now=last,
    )
    yield Working("Step by step", (*table, closing), growth.answer(steps + 1))
    lines = [line for at in (steps - 1, steps) if at for line in _tested(growth, at, threshold)]
    label = growth.label(steps)
    lines.append(step("So it is {label}.", label=say_lower(label)))
    yield Working("One factor for all the steps", tuple(lines), growth.answer(steps + 1))


def _tested(growth: Growth, steps: int, threshold: Amount) -> Iterator[Step]:
    """So many steps in one factor, and whether that is far enough."""
    end = MORE if growth.factor > 1 else LESS
    power = _power(growth, steps)
    worked, found = scaled(growth, power)
    verb = "make" if steps > 1 else "makes"
    how = "{power} times as much" if growth.factor > 1 else "one of {power} equal parts"
    together = equation(times(*[growth.by] * steps), power) if steps > 1 else None
    yield step(f"{{often}} {verb} {how}.", together, often=growth.so_often(steps), power=power)
    verdict = "that is" if is_past(growth, found, threshold) else "that is not"
    text = f"{{found}}: {verdict} {end} {{threshold}}."
    yield step(text, worked, found=found, threshold=threshold)


def say_lower(label: Rich) -> Rich:
    """The label inside a sentence: 'day 6'."""
    first, *rest = label
    text = getattr(first, "text", "")
    return (*say(text[:1].lower() + text[1:]), *rest) if text else label


def is_past(growth: Growth, amount: Amount, threshold: Amount) -> bool:
    """True where the number is more than the threshold (or less, where it shrinks)."""
    return amount.value > threshold.value if growth.factor > 1 else amount.value < threshold.value
