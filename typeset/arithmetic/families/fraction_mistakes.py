"""The wrong ways with a fraction or percentage of a quantity."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.equations import equation, minus, over, part_of, plus, times
from typeset.arithmetic.families.fraction_view import PART, REST, WHOLE, Cut
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount


def cut_mistakes(cut: Cut) -> Iterator[MistakenWorking]:
    """Those that fit what is known and what is asked."""
    if cut.known != WHOLE:
        yield from _of_the_wrong_whole(cut)
    if cut.is_percent:
        yield from _percentage_as_amount(cut)
    else:
        yield from _exchanged(cut)
    yield from _part_for_rest(cut)
    yield from _one_part_only(cut)


def _finds(cut: Cut, values: Mapping[str, Amount]) -> dict[str, Amount]:
    return {name: values[name] for name in cut.problem.finds if name in values}


def _of_the_wrong_whole(cut: Cut) -> Iterator[MistakenWorking]:
    """The fraction taken of the part or of what is left, as if that were the whole."""
    share = cut.written_share(PART)
    taken = cut.like(cut.amount.value * cut.fraction)
    first = step(
        "{share} of {amount}.",
        equation(part_of(share, cut.amount), taken),
        share=share,
        amount=cut.amount,
    )
    if cut.problem.finds == (PART,):
        yield cut.mistake("fraction of the wrong whole", [first], {PART: taken})
        return
    whole = cut.like(cut.amount.value + taken.value)
    added = step(
        "Add that to {amount}.", equation(plus(cut.amount, taken), whole), amount=cut.amount
    )
    if cut.known == REST:
        values = {WHOLE: whole, PART: taken}
        yield cut.mistake("fraction of the wrong whole", [first, added], _finds(cut, values))
    elif cut.problem.finds == (WHOLE,):
        yield cut.mistake("fraction of the wrong whole", [first], {WHOLE: taken})
    elif cut.problem.finds == (REST,):
        rest = cut.like(cut.amount.value - taken.value)
        left = step(
            "Take that off {amount}.", equation(minus(cut.amount, taken), rest), amount=cut.amount
        )
        yield cut.mistake("fraction of the wrong whole", [first, left], {REST: rest})


def _percentage_as_amount(cut: Cut) -> Iterator[MistakenWorking]:
    """15 % read as £15 or 15 g."""
    amount = cut.like(cut.fraction * 100)
    percent = cut.written_share(PART)
    first = step("{percent} is {amount}.", percent=percent, amount=amount)
    name = "percentage taken as the amount"
    if cut.known == WHOLE:
        rest = cut.like(cut.amount.value - amount.value)
        left = step(
            "Take it off {whole}.", equation(minus(cut.amount, amount), rest), whole=cut.amount
        )
        steps = [first, left] if REST in cut.problem.finds else [first]
        yield cut.mistake(name, steps, _finds(cut, {PART: amount, REST: rest}))
    elif cut.known == REST:
        whole = cut.like(cut.amount.value + amount.value)
        added = step(
            "Add it to {rest}.", equation(plus(cut.amount, amount), whole), rest=cut.amount
        )
        steps = [first, added] if WHOLE in cut.problem.finds else [first]
        yield cut.mistake(name, steps, _finds(cut, {WHOLE: whole, PART: amount}))


def _exchanged(cut: Cut) -> Iterator[MistakenWorking]:
    """Shared among the upper number and taken as often as the lower one says."""
    upper, lower = Amount(cut.parts(PART)), Amount(cut.parts(WHOLE))
    pairs = {(WHOLE, PART): (upper, lower), (PART, WHOLE): (lower, upper)}
    if len(cut.problem.finds) > 1 or (cut.known, cut.problem.finds[0]) not in pairs:
        return
    by, into = pairs[cut.known, cut.problem.finds[0]]
    one = cut.like(cut.amount.value / by.value)
    reached = cut.like(one.value * into.value)
    steps: list[Step] = []
    if by.value != 1:
        result = equation(over(cut.amount, by), one)
        steps.append(step("Share {amount} among {by}.", result, amount=cut.amount, by=by))
    if into.value != 1:
        result = equation(times(one, into), reached)
        steps.append(step("Take {into} of them.", result, into=into))
    name = "numerator and denominator exchanged"
    yield cut.mistake(name, steps, {cut.problem.finds[0]: reached})


def _part_for_rest(cut: Cut) -> Iterator[MistakenWorking]:
    """The part given where the rest is asked, or the other way round."""
    finds = cut.problem.finds
    if cut.known != WHOLE or len(finds) > 1:
        return
    asked, given = (REST, PART) if finds == (REST,) else (PART, REST)
    part, rest = cut.value(PART), cut.value(REST)
    share = cut.written_share(PART)
    result = equation(part_of(share, cut.amount), part)
    steps = [step("{share} of {whole}.", result, share=share, whole=cut.amount)]
    if given == REST:
        steps.append(step("Take that off.", equation(minus(cut.amount, part), rest)))
    yield cut.mistake("part and rest exchanged", steps, {asked: cut.value(given)})


def _one_part_only(cut: Cut) -> Iterator[MistakenWorking]:
    """One of the equal parts given as the answer."""
    count = cut.parts(cut.known)
    if len(cut.problem.finds) > 1 or count == 1:
        return
    one = cut.like(cut.amount.value / count)
    steps = [
        step(
            "Share {amount} among {count}.",
            equation(over(cut.amount, Amount(count)), one),
            amount=cut.amount,
            count=so_many(count, "part"),
        )
    ]
    yield cut.mistake("step left out", steps, {cut.problem.finds[0]: one})
