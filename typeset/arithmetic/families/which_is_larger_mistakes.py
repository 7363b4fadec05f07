"""The wrong ways that a comparison invites."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.equations import equation, minus, over, plus
from typeset.arithmetic.families.which_is_larger_view import Candidate, View, comparing, head
from typeset.arithmetic.phrases import bare
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.writing import say


def mistakes_with_rates(view: View) -> Iterator[MistakenWorking]:
    """Differences instead of ratios (Noelting 1980), one amount only, the rate upside down."""
    if view.compared.word == "to":
        yield _differences(view)
    elif len(view.candidates) == 2:
        yield from _same_growth(view, *view.candidates)
    yield from _one_only(view)
    yield _turned_round(view)
    if len(view.candidates) == 2:
        yield from _larger_numbers(view, *view.candidates)


def mistakes_with_products(view: View) -> Iterator[MistakenWorking]:
    """One amount only; the two added."""
    yield from _one_only(view)
    if view.compared.word == "×":
        sums = [Amount(each.first.value + each.second.value) for each in view.candidates]
        steps = []
        for each, total in zip(view.candidates, sums, strict=True):
            added = plus(bare(each.first), bare(each.second))
            steps.append(step(f"{head(each)}: {{total}}.", equation(added, total), total=total))
        steps.append(_compared(sums))
        yield view.mistake("adding instead of multiplying", steps, sums)


def _compared(values: Sequence[Amount]) -> Step:
    return comparing(values, [say("{value}", value=each) for each in values])


def _differences(view: View) -> MistakenWorking:
    first, second = view.compared.first, view.compared.second
    gaps, steps = [], []
    for each in view.candidates:
        x, y = bare(each.first), bare(each.second)
        gaps.append(Amount(x.value - y.value))
        gap = Amount(abs(x.value - y.value))
        if not gap.value:
            steps.append(step(f"{head(each)}: as much {first} as {second}."))
            continue
        more, less = (first, second) if x.value > y.value else (second, first)
        large, small = (x, y) if x.value > y.value else (y, x)
        told = equation(minus(large, small), gap)
        steps.append(step(f"{head(each)}: {{gap}} more of {more} than of {less}.", told, gap=gap))
    if len({gap.value for gap in gaps}) == 1:
        steps.append(step("The difference is the same each time."))
    return view.mistake("differences compared instead of ratios", steps, gaps)


def _same_growth(view: View, one: Candidate, other: Candidate) -> Iterator[MistakenWorking]:
    """Both numbers go up by as many, so nothing seems to change."""
    small, large = sorted((one, other), key=lambda each: each.second.value)
    grown = large.second.value - small.second.value
    if grown <= 0 or large.first.value - small.first.value != grown:
        return
    more = Amount(grown)
    steps: list[Step] = []
    for word, old, new in (
        ("From", small.second, large.second),
        ("And from", small.first, large.first),
    ):
        told = equation(minus(bare(new), bare(old)), more)
        text = f"{word} {{old}} to {{new}} is {{more}} more{' too' if steps else ''}."
        steps.append(step(text, told, old=bare(old), new=bare(new), more=more))
    steps.append(step("Both go up by the same."))
    yield view.mistake("differences compared instead of ratios", steps, [more, more])


def _one_only(view: View) -> Iterator[MistakenWorking]:
    """Looks at the price and not at the amount, or the other way round."""
    name = "only one of the two amounts compared"
    for values, spoken, upside in (
        ([each.first for each in view.candidates], view.first, False),
        ([each.second for each in view.candidates], view.second, view.compared.is_rate),
    ):
        if len({each.base for each in values}) == 1:
            continue
        said = comparing(values, [spoken(each) for each in values], view.tells_things)
        yield view.mistake(name, (said,), values, upside)


def _turned_round(view: View) -> MistakenWorking:
    """Divides the second by the first, and judges as if it were the other way."""
    values, steps = [], []
    for each in view.candidates:
        x, y = bare(each.first), bare(each.second)
        quotient = Amount(y.value / x.value, form=Form.FRACTION)
        told = equation(over(y, x), quotient)
        steps.append(step(f"{head(each)}: divide {{y}} by {{x}}.", told, y=y, x=x))
        values.append(quotient)
    steps.append(_compared(values))
    return view.mistake("rate turned round", steps, values)


def _larger_numbers(view: View, one: Candidate, other: Candidate) -> Iterator[MistakenWorking]:
    """Takes larger numbers for a larger rate."""
    small, large = sorted((one, other), key=lambda each: each.first.value)
    if large.first.value == small.first.value or large.second.value <= small.second.value:
        return
    told = {
        "x": view.first(large.first), "a": view.first(small.first),
        "y": view.second(large.second), "b": view.second(small.second),
    }  # fmt: skip
    steps = (
        step(f"{head(large)} has the larger numbers: {{x}} against {{a}}, and {{y}} against "
             "{b}.", **told),
    )  # fmt: skip
    sums = [Amount(each.first.value + each.second.value) for each in view.candidates]
    yield view.mistake("larger numbers taken for the larger rate", steps, sums)
