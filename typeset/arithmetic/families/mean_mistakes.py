"""Wrong ways to a mean."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.mean_ways import COUNT, MEAN, TOTAL, Values, added
from typeset.arithmetic.families.number_chain_ways import is_tidy
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, number
from typeset.quantities.inline import join
from typeset.quantities.writing import say

WRONG_COUNT = "divided by the wrong count"


def mistakes_of(values: Values) -> Iterator[MistakenWorking]:
    """The wrong ways that the problem invites, those with tidy numbers above 0."""
    asked = values.problem.finds[0]
    wrong = {MEAN: _about_the_mean, TOTAL: _about_the_total}.get(asked, _about_the_missing)
    for name, found, steps in wrong(values):
        if is_tidy(found) and found.value > 0:
            yield MistakenWorking(name, tuple(steps), values.answer(found.value))


def _about_the_mean(values: Values) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    total, first = added(values)
    yield "total not divided", total, [first]
    zeros = sum(not each.value for each in values.known)
    count = values.count - zeros if zeros else values.count - 1
    if count > 1:
        mean = values.amount(total.value / count)
        text = "There are {count} numbers: {mean}."
        told = step(text, equation(over(total, Amount(count)), mean), count=Amount(count),
                    mean=mean)  # fmt: skip
        yield WRONG_COUNT, mean, [first, told]
    ordered = sorted(values.known, key=lambda each: each.value)
    if len(ordered) % 2:
        middle = ordered[len(ordered) // 2]
        row = join([say("{n}", n=each) for each in ordered], ", ")
        told = step("In order: {row}. In the middle stands {middle}.", row=row, middle=middle)
        yield "middle value given for the mean", middle, [told]
    if len(ordered) > 2:
        ends = values.amount(ordered[0].value + ordered[-1].value)
        half = values.amount(ends.value / 2)
        steps = [
            step("Least and greatest together: {ends}.",
                 equation(plus(ordered[0], ordered[-1]), ends), ends=ends),
            step("Half of that: {half}.", equation(over(ends, number(2)), half), half=half),
        ]  # fmt: skip
        yield "halfway between least and greatest", half, steps


def _about_the_missing(values: Values) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    mean = values.mean
    only = step("The mean is {mean}, so the missing one is {mean} as well.", mean=mean)
    yield "missing value taken as the mean", mean, [only]
    needed = values.amount(mean.value * values.count)
    first = step("The total has to be {needed}.",
                 equation(times(Amount(values.count), mean), needed), needed=needed)  # fmt: skip
    yield "total needed given for the missing value", needed, [first]
    if len(values.known) > 1:
        fewer = Amount(values.count - 1)
        wrong = values.amount(mean.value * fewer.value)
        so_far, adding = added(values, "So far: {total}.")
        found = values.amount(wrong.value - so_far.value)
        steps = [
            step("There are {n} numbers, so the total has to be {wrong}.",
                 equation(times(fewer, mean), wrong), n=fewer, wrong=wrong),
            adding,
            step("What is missing: {found}.", equation(minus(wrong, so_far), found), found=found),
        ]  # fmt: skip
        yield WRONG_COUNT, found, steps


def _about_the_total(values: Values) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    mean, count = values.mean, values.problem.given(COUNT)
    bare = Amount(count.value)
    found = values.amount(mean.value / bare.value)
    only = step("Share {mean} among {count}: {found}.", equation(over(mean, bare), found),
                mean=mean, count=count, found=found)  # fmt: skip
    yield "dividing instead of multiplying", found, [only]
    fewer = Amount(bare.value - 1)
    if fewer.value > 1:
        less = values.amount(mean.value * fewer.value)
        only = step("Take {mean} {n} times: {less}.", equation(times(fewer, mean), less),
                    mean=mean, n=fewer, less=less)  # fmt: skip
        yield WRONG_COUNT, less, [only]
    total = values.amount(mean.value + bare.value)
    if not mean.unit.plural or mean.unit.is_noun:
        only = step("Put the two numbers together: {total}.",
                    equation(plus(mean, bare), total), total=total)  # fmt: skip
        yield "adding instead of multiplying", total, [only]
