"""The wrong ways with a fixed charge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.fixed_charge_view import COUNT, FIXED, RATE, TOTAL, Charge
from typeset.arithmetic.families.fixed_charge_ways import as_asked, groundwork, number_of
from typeset.arithmetic.phrases import as_much
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount

_FORGOTTEN = "fixed charge forgotten"
_EACH_TIME = "fixed charge counted each time"
_EXCHANGED = "fixed charge and rate exchanged"


def charge_mistakes(view: Charge) -> Iterator[MistakenWorking]:
    """Those that fit what is asked for; one thing is asked for."""
    if len(view.problem.finds) > 1:
        return
    (asked,) = view.problem.finds
    if asked == TOTAL:
        yield from _scaled_total(view)
        yield from _wrong_totals(view)
    elif asked == COUNT:
        yield from _wrong_counts(view)
    elif asked == RATE:
        yield from _wrong_rates(view)
    else:
        yield from _wrong_fixed_parts(view)


def _mistake(
    view: Charge, name: str, steps: Sequence[Step], asked: str, reached: Amount
) -> MistakenWorking:
    shown = (*view.conversions, *steps)
    return MistakenWorking(name, shown, {asked: as_asked(view, asked, reached)})


def _scaled_total(view: Charge) -> Iterator[MistakenWorking]:
    """The known total scaled with its fixed part in it."""
    if view.first is None:
        return
    count, total = view.first
    factor = view.count.value / count.value
    reached = total.like(total.value * factor)
    if factor.denominator == 1:
        steps = [
            step(
                "From {first} to {count} is {factor}.",
                equation(times(count, Amount(factor)), view.count),
                first=count,
                count=view.count,
                factor=as_much(factor, count.unit),
            ),
            step(
                "So the total is {factor} too.",
                equation(times(total, Amount(factor)), reached),
                factor=as_much(factor, total.unit),
            ),
        ]
    else:
        each = total.like(total.value / count.value)
        steps = [
            step(
                "Share {total} among {first}.",
                equation(over(total, number_of(count)), each),
                total=total,
                first=count,
            ),
            step(
                "Multiply by {count}.",
                equation(times(each, number_of(view.count)), reached),
                count=number_of(view.count),
            ),
        ]
    yield _mistake(view, "over-use of proportionality", steps, TOTAL, reached)


def _wrong_totals(view: Charge) -> Iterator[MistakenWorking]:
    product = view.rate.like(view.rate.value * view.count.value)
    at_rate = step(
        "{count} at {rate} each: {product}.",
        equation(times(number_of(view.count), view.rate), product),
        count=view.count,
        rate=view.rate,
        product=product,
    )
    yield _mistake(view, _FORGOTTEN, [*groundwork(view), at_rate], TOTAL, product)
    both = view.rate.like(view.fixed.value + view.rate.value)
    repeated = both.like(both.value * view.count.value)
    yield _mistake(
        view,
        _EACH_TIME,
        [
            *groundwork(view),
            step("For each one: {both}.", equation(plus(view.fixed, view.rate), both), both=both),
            step(
                "That {count} times.",
                equation(times(number_of(view.count), both), repeated),
                count=number_of(view.count),
            ),
        ],
        TOTAL,
        repeated,
    )
    times_fixed = view.fixed.like(view.fixed.value * view.count.value)
    reached = view.total.like(times_fixed.value + view.rate.value)
    yield _mistake(
        view,
        _EXCHANGED,
        [
            *groundwork(view),
            step(
                "{count} at {fixed} each.",
                equation(times(number_of(view.count), view.fixed), times_fixed),
                count=view.count,
                fixed=view.fixed,
            ),
            step("Add {rate}.", equation(plus(times_fixed, view.rate), reached), rate=view.rate),
        ],
        TOTAL,
        reached,
    )


def _wrong_counts(view: Charge) -> Iterator[MistakenWorking]:
    quotient = Amount(view.total.value / view.rate.value)
    text = "How many times does {rate} go into {total}?"
    whole = step(
        text, equation(over(view.total, view.rate), quotient), rate=view.rate, total=view.total
    )
    yield _mistake(view, _FORGOTTEN, [*groundwork(view), whole], COUNT, quotient)
    both = view.rate.like(view.fixed.value + view.rate.value)
    per_both = Amount(view.total.value / both.value)
    yield _mistake(
        view,
        _EACH_TIME,
        [
            *groundwork(view),
            step("For each one: {both}.", equation(plus(view.fixed, view.rate), both), both=both),
            step(text, equation(over(view.total, both), per_both), rate=both, total=view.total),
        ],
        COUNT,
        per_both,
    )
    rest = view.total.like(view.total.value - view.rate.value)
    exchanged = Amount(rest.value / view.fixed.value)
    yield _mistake(
        view,
        _EXCHANGED,
        [
            *groundwork(view),
            step("Take {rate} off.", equation(minus(view.total, view.rate), rest), rate=view.rate),
            step(
                "How many times does {fixed} go into the rest?",
                equation(over(rest, view.fixed), exchanged),
                fixed=view.fixed,
            ),
        ],
        COUNT,
        exchanged,
    )


def _wrong_rates(view: Charge) -> Iterator[MistakenWorking]:
    count, total = view.first or (view.count, view.total)
    each = total.like(total.value / count.value)
    whole = step(
        "Share {total} among {count}.",
        equation(over(total, number_of(count)), each),
        total=total,
        count=count,
    )
    yield _mistake(view, _FORGOTTEN, [whole], RATE, each)
    if not view.knows(FIXED):
        return
    rest = total.like(total.value - view.fixed.value)
    taken = step(
        "Take the fixed {fixed} off.", equation(minus(total, view.fixed), rest), fixed=view.fixed
    )
    yield _mistake(view, "step left out", [taken], RATE, rest)


def _wrong_fixed_parts(view: Charge) -> Iterator[MistakenWorking]:
    if not view.knows(RATE):
        return
    count, total = view.first or (view.count, view.total)
    rest = total.like(total.value - view.rate.value)
    once = step(
        "Take {rate} off {total}.",
        equation(minus(total, view.rate), rest),
        rate=view.rate,
        total=total,
    )
    yield _mistake(view, "rate counted once", [once], FIXED, rest)
    product = total.like(view.rate.value * count.value)
    at_rate = step(
        "{count} at {rate} each.",
        equation(times(number_of(count), view.rate), product),
        count=count,
        rate=view.rate,
    )
    yield _mistake(view, "step left out", [at_rate], FIXED, product)
