"""The right ways to a fixed charge, its rate, a count or a total."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.checks import told_after
from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.fixed_charge_view import COUNT, FIXED, RATE, TOTAL, Charge
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount

_BY_ITSELF = "The fixed part by itself"
# More lines than this nobody counts on.
_MOST_JUMPS = 6


def charge_ways(view: Charge) -> Iterator[Working]:
    """The fixed part by itself; only what is added; one after another; a check."""
    first = _by_itself(view)
    yield first
    yield from _only_the_extra(view)
    yield from _one_after_another(view)
    yield told_after(_checked(view), first)


def number_of(count: Amount) -> Amount:
    """The count as it stands in an equation: how many times the rate counts."""
    return Amount(count.value)


def as_asked(view: Charge, name: str, amount: Amount) -> Amount:
    """What was reached, in the unit asked for."""
    unit = view.problem.units[name]
    return Amount(amount.value if name == COUNT else amount.base / unit.per_base, unit)


def in_asked_unit(view: Charge) -> list[Step]:
    """The change to the unit asked for, where it is another one."""
    steps = []
    for name, amount in _found(view).items():
        answer = as_asked(view, name, amount)
        if name != COUNT and answer.unit.per_base != amount.unit.per_base:
            text = "That is {answer}."
            steps.append(step(text, equation(amount, answer), answer=answer))
    return steps


def _found(view: Charge) -> Mapping[str, Amount]:
    places = {FIXED: view.fixed, RATE: view.rate, COUNT: view.count, TOTAL: view.total}
    return {name: places[name] for name in view.problem.finds}


def _working(view: Charge, strategy: str, steps: list[Step]) -> Working:
    answers: dict[str, AnswerValue] = {
        name: as_asked(view, name, amount) for name, amount in _found(view).items()
    }
    return Working(strategy, (*view.conversions, *steps, *in_asked_unit(view)), answers)


def _pair(view: Charge) -> tuple[Amount, Amount]:
    """A count whose total is given."""
    return view.first or (view.count, view.total)


def groundwork(view: Charge) -> list[Step]:
    """How the fixed part and the rate come about, where they are not given."""
    count, total = _pair(view)
    if view.knows(FIXED) and view.knows(RATE):
        return []
    if view.knows(RATE):
        return _fixed_from_rate(view, count, total)
    steps = []
    if not view.knows(FIXED):
        steps = _rate_from_two(view)
        return [*steps, *_fixed_from_rate(view, count, total)]
    rest = total.like(total.value - view.fixed.value)
    return [
        step(
            "For {count}, take the fixed {fixed} off {total}.",
            equation(minus(total, view.fixed), rest),
            count=count,
            fixed=view.fixed,
            total=total,
        ),
        step(
            "Share the rest among {count}: {rate} each.",
            equation(over(rest, number_of(count)), view.rate),
            count=count,
            rate=view.rate,
        ),
    ]


def _rate_from_two(view: Charge) -> list[Step]:
    """Two counts with their totals: the fixed part is in both, so it cancels out."""
    (few, less), (many, more) = sorted(
        (_pair(view), (view.count, view.total)), key=lambda pair: pair[0].value
    )
    extra, rise = many.like(many.value - few.value), more.like(more.value - less.value)
    return [
        step(
            "From {few} to {many} is {extra} more.",
            equation(minus(many, few), extra),
            few=few,
            many=many,
            extra=number_of(extra),
        ),
        step(
            "The total goes up by {rise}. The fixed part stays the same.",
            equation(minus(more, less), rise),
            rise=rise,
        ),
        step(
            "So for each one: {rate}.",
            equation(over(rise, number_of(extra)), view.rate),
            rate=view.rate,
        ),
    ]


def _fixed_from_rate(view: Charge, count: Amount, total: Amount) -> list[Step]:
    product = view.rate.like(view.rate.value * count.value)
    return [
        step(
            "{count} at {rate} each: {product}.",
            equation(times(number_of(count), view.rate), product),
            count=count,
            rate=view.rate,
            product=product,
        ),
        step(
            "What is left of {total} is the fixed part.",
            equation(minus(total, product), view.fixed),
            total=total,
        ),
    ]


def _by_itself(view: Charge) -> Working:
    steps = groundwork(view)
    if TOTAL in view.problem.finds:
        steps += _total_from_rate(view)
    elif COUNT in view.problem.finds:
        rest = view.total.like(view.total.value - view.fixed.value)
        steps.append(
            step(
                "Take the fixed {fixed} off {total}.",
                equation(minus(view.total, view.fixed), rest),
                fixed=view.fixed,
                total=view.total,
            )
        )
        steps.append(
            step(
                "How many times does {rate} go into the rest?",
                equation(over(rest, view.rate), number_of(view.count)),
                rate=view.rate,
            )
        )
    return _working(view, _BY_ITSELF, steps)


def _total_from_rate(view: Charge) -> list[Step]:
    product = view.rate.like(view.rate.value * view.count.value)
    return [
        step(
            "{count} at {rate} each: {product}.",
            equation(times(number_of(view.count), view.rate), product),
            count=view.count,
            rate=view.rate,
            product=product,
        ),
        step(
            "Add the fixed {fixed} once.",
            equation(plus(product, view.fixed), view.total),
            fixed=view.fixed,
        ),
    ]


def _only_the_extra(view: Charge) -> Iterator[Working]:
    """From the pair that is known: what more, or fewer, of them change."""
    if view.first is None or view.problem.finds != (TOTAL,):
        return
    count, total = view.first
    grows = view.count.value > count.value
    extra = count.like(abs(view.count.value - count.value))
    change = view.rate.like(view.rate.value * extra.value)
    sign, word = (plus, "more") if grows else (minus, "fewer")
    steps = [
        *groundwork(view),
        step(
            f"From {{first}} to {{count}} is {{extra}} {word}: {{change}}.",
            equation(times(number_of(extra), view.rate), change),
            count=view.count,
            extra=number_of(extra),
            first=count,
            change=change,
        ),
        step(
            "The fixed part is in {total} already.",
            equation(sign(total, change), view.total),
            total=total,
        ),
    ]
    yield _working(view, "Only what is added", steps)


def _one_after_another(view: Charge) -> Iterator[Working]:
    """From the fixed part on, one rate at a time."""
    asks = set(view.problem.finds) & {TOTAL, COUNT}
    if not asks or not view.count.is_whole or not 1 < view.count.value <= _MOST_JUMPS:
        return
    steps = groundwork(view)
    steps.append(step("Begin with the fixed {fixed}.", fixed=view.fixed))
    reached = view.fixed
    for index in range(1, int(view.count.value) + 1):
        following = reached.like(reached.value + view.rate.value)
        so_far = view.count.like(index)
        result = equation(plus(reached, view.rate), following)
        steps.append(step("{count}: {total}.", result, count=so_far, total=following))
        reached = following
    if COUNT in asks:
        steps.append(step("That makes {count}.", count=view.count))
    if is_sensible(view.rate, view.problem.fields.may_be_cut):
        yield _working(view, "One after another", steps)


def _checked(view: Charge) -> Working:
    """The numbers put back: the rate times the count, and the fixed part."""
    product = view.rate.like(view.rate.value * view.count.value)
    if TOTAL in view.problem.finds:
        steps = [
            step(
                "Start from {total} and take the fixed part off again.",
                equation(minus(view.total, view.fixed), product),
                total=view.total,
            ),
            step(
                "Share it among {count}: {rate} each, as it should be.",
                equation(over(product, number_of(view.count)), view.rate),
                count=view.count,
                rate=view.rate,
            ),
        ]
    else:
        steps = [
            step(
                "Put the numbers back: {count} at {rate} each.",
                equation(times(number_of(view.count), view.rate), product),
                count=view.count,
                rate=view.rate,
            ),
            step(
                "With the fixed {fixed} that makes {total}, as it should be.",
                equation(plus(product, view.fixed), view.total),
                fixed=view.fixed,
                total=view.total,
            ),
        ]
    return _working(view, "Checking backwards", steps)
