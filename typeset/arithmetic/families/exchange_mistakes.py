"""The wrong ways to share with exchange."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Remainder, equation, over, plus, times
from typeset.arithmetic.families.exchange_view import EACH, Exchange
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension

# A number that is often taken for how many small units make a large one.
_TAKEN = {10: 100, 100: 10, 1000: 100}


def mistakes_of(view: Exchange) -> Iterator[MistakenWorking]:
    """The rest dropped, written as it is, or exchanged by the wrong number; multiplied."""
    whole, part = divmod(view.total.base, view.large.per_base)
    each, rest = divmod(whole, view.shares)
    if rest and not part:
        division = over(Amount(Fraction(whole)), Amount(view.shares))
        result = Remainder(Amount(Fraction(each)), Amount(Fraction(rest)))
        told = step("{each} each, and {rest} left over.", equation(division, result),
                    each=view.large_of(each), rest=view.large_of(rest))  # fmt: skip
        if each:
            yield from _rest_misread(view, Fraction(each), Fraction(rest), told)
        yield from _wrongly_exchanged(view, Fraction(each), Fraction(rest), told)
    product = view.total.base * view.shares
    made = view.share_of(product)
    only = step("It is about {shares}, so multiply: {made}.",
                equation(times(Amount(view.shares), view.total), made),
                shares=view.problem.given("groups"), made=made)  # fmt: skip
    yield MistakenWorking("multiplying instead of dividing", (only,), {EACH: made})


def _rest_misread(
    view: Exchange, each: Fraction, rest: Fraction, told: Step
) -> Iterator[MistakenWorking]:
    whole = view.large_of(each)
    last = step("So the answer is {each}.", each=whole)
    yield MistakenWorking("remainder ignored", (told, last), {EACH: whole})
    if rest < view.per_large:
        beside = view.share_of(each * view.large.per_base + rest * view.small_size)
        last = step("Write the rest beside it: {beside}.", beside=beside)
        yield MistakenWorking("remainder taken as the smaller unit", (told, last), {EACH: beside})
    if rest < 10:
        behind = view.large_of(each + rest / 10).written_as(Form.DECIMAL)
        last = step("Write the rest behind the point: {behind}.", behind=behind)
        yield MistakenWorking("remainder written behind the point", (told, last), {EACH: behind})


def _wrongly_exchanged(
    view: Exchange, each: Fraction, rest: Fraction, told: Step
) -> Iterator[MistakenWorking]:
    is_time = view.large.dimension is Dimension.TIME
    taken = 100 if is_time else _TAKEN.get(int(view.per_large), 10)
    loose = rest * taken
    if (loose / view.shares).denominator != 1 or view.is_money:
        return
    piece = view.small_of(loose / view.shares)
    answer = view.share_of(each * view.large.per_base + piece.base)
    steps = [
        told,
        step("Exchange {rest} for {loose}: {piece} each.",
             equation(over(view.small_of(loose), Amount(view.shares)), piece),
             rest=view.large_of(rest), loose=view.small_of(loose), piece=piece),
    ]  # fmt: skip
    if each:
        worked = equation(plus(view.large_of(each), piece), answer)
        steps.append(step("Together: {answer}.", worked, answer=answer))
    name = "100 minutes in an hour" if _is_hours(view) else "unit converted by the wrong number"
    yield MistakenWorking(name, tuple(steps), {EACH: answer})


def _is_hours(view: Exchange) -> bool:
    return view.large.dimension is Dimension.TIME and view.per_large == 60
