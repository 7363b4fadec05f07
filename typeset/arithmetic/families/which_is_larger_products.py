"""Ways to compare products and fractions of amounts: worked out, or matched piece by piece."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.equations import Expression, equation, minus, over, part_of, times
from typeset.arithmetic.families.which_is_larger_view import (
    Candidate,
    View,
    comparing,
    head,
    named,
)
from typeset.arithmetic.methods import Method
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.phrases import the
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit


def ways_with_products(view: View) -> Iterator[Working]:
    """Each worked out in two ways; two products also matched."""
    if view.compared.word == "of":
        yield _shares(view, "Share, then multiply", divides_first=True)
        yield _shares(view, "Multiply, then share", divides_first=False)
        return
    ranked = [_methods(view, each) for each in view.candidates]
    yield _worked_out(view, "Working each out", [ways[0] for ways in ranked])
    yield _worked_out(view, "Working each out in another way", [ways[-1] for ways in ranked])
    if len(view.candidates) == 2:
        yield from _matched(view, *view.candidates)


def total_of(each: Candidate) -> Amount:
    """What a candidate comes to."""
    return each.second.like(each.first.base * each.second.value)


def _lot(view: View, each: Candidate) -> Unit:
    unit = named(each.first, view.compared.first).unit
    return each.first.unit if each.first.unit.dimension is Dimension.COUNT else unit


def _methods(view: View, each: Candidate) -> list[Method]:
    """The two easiest ways to multiply, the easiest first."""
    lots = Lots(each.first.value, each.second, _lot(view, each))
    ways = sorted(
        ways_to_multiply(lots), key=lambda way: demand_of(Working(way.name, way.steps, {}))
    )
    return ways[:2]


def _worked_out(view: View, strategy: str, methods: list[Method]) -> Working:
    steps: list[Step] = []
    for each, method in zip(view.candidates, methods, strict=True):
        told = {"x": view.first(each.first), "y": view.second(each.second)}
        steps.append(step(f"{head(each)}: {{x}} of {{y}} each.", **told))
        steps.extend(method.steps)
    values = [method.result for method in methods]
    steps.append(comparing(values, [view.second(each) for each in values], things=True))
    return view.working(strategy, steps, values)


def _matched(view: View, one: Candidate, other: Candidate) -> Iterator[Working]:
    """As many of each against each other, then what the one has left over."""
    few, many = sorted((one, other), key=lambda each: each.first.value)
    extra = many.first.value - few.first.value
    gap = few.second.value - many.second.value
    if extra <= 0 or gap <= 0 or many.first.value.denominator != 1:
        return
    ahead = few.second.like(few.first.value * gap)
    behind = few.second.like(extra * many.second.value)
    lot, more = _lot(view, few), few.second.like(gap)
    steps = (
        step(
            f"Match {{few}} of each. In each of them {the(few.name)} "
            "has {more} more.",
            equation(minus(few.second, many.second), more),
            few=Amount(few.first.value, lot), more=more,
        ),
        step("That is {ahead} more so far.", equation(times(Amount(few.first.value), more), ahead),
             ahead=ahead),
        step(
            f"{head(many)}: {{extra}} more, and that is {{behind}}.",
            equation(times(Amount(extra), many.second), behind),
            extra=Amount(extra, lot), behind=behind,
        ),
        comparing([ahead, behind], [view.second(ahead), view.second(behind)], things=True),
    )  # fmt: skip
    values = {few.name: ahead, many.name: behind}
    yield view.working("Matching one with the other", steps, [values[one.name], values[other.name]])


def _shares(view: View, strategy: str, divides_first: bool) -> Working:
    steps: list[Step] = []
    values = []
    for each in view.candidates:
        result = total_of(each)
        steps.extend(_share(view, each, divides_first))
        values.append(result)
    steps.append(comparing(values, [view.second(each) for each in values], things=True))
    return view.working(strategy, steps, values)


def _share(view: View, each: Candidate, divides_first: bool) -> Iterator[Step]:
    share, whole, result = each.first.base, each.second, total_of(each)
    up, down = Amount(Fraction(share.numerator)), Amount(Fraction(share.denominator))
    fraction = Amount(share, form=Form.FRACTION)
    told: dict[str, Amount | Rich | str] = {
        "share": each.first,
        "whole": view.second(whole),
        "result": view.second(result),
    }
    if each.first.unit.dimension is Dimension.PERCENT:
        yield step(f"{head(each)}: {{share}} is {{fraction}}.", equation(each.first, fraction),
                   share=each.first, fraction=fraction)  # fmt: skip
    whole_share = equation(part_of(fraction, whole), result)
    if 1 in (share.numerator, share.denominator):
        yield step(f"{head(each)}: {{share}} of {{whole}} is {{result}}.", whole_share, **told)
        return
    between = whole.like(whole.value / down.value if divides_first else whole.value * up.value)
    first: Expression = over(whole, down)
    then: Expression = times(up, between)
    text = f"{head(each)}: one of {{down}} equal parts of {{whole}} is {{between}}."
    if not divides_first:
        first, then = times(up, whole), over(between, down)
        text = f"{head(each)}: {{up}} times {{whole}} is {{between}}."
    told |= {"between": view.second(between), "down": down, "up": up}
    yield step(text, equation(first, between), **told)
    closing = "{up} of them are {result}." if divides_first else "Divided by {down}: {result}."
    yield step(closing, equation(then, result), **told)
