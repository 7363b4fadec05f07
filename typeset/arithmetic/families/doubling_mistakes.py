"""Wrong ways through repeated doubling."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, plus, times
from typeset.arithmetic.families.doubling_ways import Growth, is_past, say_lower, table_of
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import so_many
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount
from typeset.quantities.nouns import plural


def mistakes_of(growth: Growth) -> Iterator[MistakenWorking]:
    """The wrong ways that the story invites."""
    if growth.threshold is not None:
        yield from _about_the_day(growth, growth.threshold)
    elif growth.asks_total:
        yield from _about_the_total(growth)
    else:
        yield from _about_the_last(growth)


def _about_the_last(growth: Growth) -> Iterator[MistakenWorking]:
    steps, first = growth.steps, growth.first
    if growth.factor > 1:
        count = Fraction(steps + 1)
        linear = first.like(first.value * count)
        only = step(
            f"Every {growth.every} {_verb(first)} {{first}} more: {{found}}.",
            equation(times(Amount(count), first), linear),
            first=first,
            found=linear,
        )
        yield MistakenWorking("same amount added each time", (only,), growth.answer(linear.value))
        yield _factor_times_steps(growth)
    for name, count_of in (("one step too many", steps + 1), ("one step too few", steps - 1)):
        reached = growth.at(count_of)
        if not is_sensible(reached, growth.problem.fields.may_be_cut):
            continue
        line: Expression = first
        for _ in range(count_of):
            line = growth.once_more(line)
        only = step(
            f"{growth.verb.capitalize()} {{often}}: {{found}}.",
            equation(line, reached),
            often=so_many(Fraction(count_of), "time"),
            found=reached,
        )
        yield MistakenWorking(name, (only,), growth.answer(reached.value))


def _verb(amount: Amount) -> str:
    """'there are 3 shells more', but 'it is 2 m more'."""
    if not is_counted(amount):
        return "it is"
    return "there is" if amount.value == 1 else "there are"


def _factor_times_steps(growth: Growth) -> MistakenWorking:
    """5 doublings taken for 5 × 2 times as much."""
    steps = Amount(Fraction(growth.steps))
    factor = Amount(steps.value * growth.by.value)
    found = growth.first.like(growth.first.value * factor.value)
    lines = (
        step(
            "{often} make {factor} times as much.",
            equation(times(steps, growth.by), factor),
            often=growth.so_often(growth.steps),
            factor=factor,
        ),
        step("So {found}.", equation(times(factor, growth.first), found), found=found),
    )
    return MistakenWorking(
        "factor multiplied instead of repeated", lines, growth.answer(found.value)
    )


def _about_the_total(growth: Growth) -> Iterator[MistakenWorking]:
    table, last = table_of(growth, growth.steps)
    yield MistakenWorking("last value given for the total", tuple(table), growth.answer(last.value))
    terms = [growth.at(at) for at in range(1, growth.steps + 1)]
    total = growth.first.like(sum((term.value for term in terms), Fraction(0)))
    adding = step("Together: {total}.", equation(plus(*terms), total), total=total)
    yield MistakenWorking(
        "first value left out of the total", (*table, adding), growth.answer(total.value)
    )
    if growth.factor > 1:
        count = Fraction(growth.steps + 1)
        flat = growth.first.like(growth.first.value * count)
        only = step(
            "There are {days}, and each brings {first}: {total}.",
            equation(times(Amount(count), growth.first), flat),
            days=so_many(count, growth.every, plural(growth.every)),
            first=growth.first,
            total=flat,
        )
        yield MistakenWorking("same amount added each time", (only,), growth.answer(flat.value))


def _about_the_day(growth: Growth, threshold: Amount) -> Iterator[MistakenWorking]:
    steps = 0
    while not is_past(growth, growth.at(steps + 1), threshold):
        steps += 1
    table, now = table_of(growth, steps)
    label = growth.label(steps)
    closing = step("So it is {label}, with {now}.", label=say_lower(label), now=now)
    yield MistakenWorking("one step too few", (*table, closing), growth.answer(steps + 1))
    if growth.factor > 1:
        count = threshold.value // growth.first.value + 1
        found = growth.first.like(growth.first.value * count)
        only = step(
            f"Every {growth.every} {_verb(growth.first)} {{first}} more, so it takes {{days}}.",
            equation(times(Amount(Fraction(count)), growth.first), found),
            first=growth.first,
            days=so_many(Fraction(count), growth.every, plural(growth.every)),
        )
        yield MistakenWorking("same amount added each time", (only,), growth.answer(count))
