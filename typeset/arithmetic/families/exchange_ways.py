"""Ways to share with exchange: whole ones first, or all exchanged at once."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import equation, minus, over, plus
from typeset.arithmetic.families.exchange_view import EACH, PENNY, Exchange
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import noun

_PENCE = noun("penny", "pence")


def ways_of(view: Exchange) -> Iterator[Working]:
    """Both ways, the second with every method of dividing that suits."""
    yield _whole_ones_first(view)
    yield from _all_exchanged(view)


def _whole_ones_first(view: Exchange) -> Working:
    whole, part = divmod(view.total.base, view.large.per_base)
    each, rest = divmod(whole, view.shares)
    steps: list[Step] = []
    if each:
        used = view.large_of(each * view.shares)
        steps.append(
            step("Give {each} to each, {used} in all: {rest} left.",
                 equation(minus(view.large_of(whole), used), view.large_of(rest)),
                 each=view.large_of(each), used=used, rest=view.large_of(rest))
        )  # fmt: skip
    exchanged = view.small_of(rest * view.per_large)
    if rest:
        steps.append(
            step(f"Exchange {'the ' if each else ''}{{rest}} for {{small}}.",
                 equation(view.large_of(rest), exchanged), rest=view.large_of(rest),
                 small=exchanged)
        )  # fmt: skip
    over_ = view.small_of(part / view.small_size)
    loose = exchanged.like(exchanged.value + over_.value)
    loose = view.small_of(loose.base / view.small_size)
    if over_.value and rest:
        steps.append(
            step("With the other {part} that is {loose}.", equation(plus(exchanged, over_), loose),
                 part=over_, loose=loose)
        )  # fmt: skip
    piece = view.small_of(loose.base / view.small_size / view.shares)
    told = equation(over(loose, Amount(view.shares)), piece)
    steps.append(step("Share {loose}: {piece} each.", told, loose=loose, piece=piece))
    result = view.share_of(each * view.large.per_base + piece.base)
    if each:
        together = equation(plus(view.large_of(each), piece), result)
        steps.append(step("Together: {result} each.", together, result=result))
    return Working("Whole ones first, then exchange", tuple(steps), {EACH: result})


def _all_exchanged(view: Exchange) -> Iterator[Working]:
    """Everything in the smaller unit, shared, and written in both units again."""
    small = view.small_of(view.total.base / view.small_size)
    opening = step("Exchange all {total} for {small}.", equation(view.total, small),
                   total=view.total, small=small)  # fmt: skip
    # Pence are divided as things that are counted: the pupil has no pounds yet.
    divided = Amount(small.base / PENNY, _PENCE) if view.is_money else small
    for method in ways_to_divide(Division(divided, view.shares, view.group, False, True)):
        result = view.share_of(method.result.value * view.small_size)
        steps: tuple[Step, ...] = (opening, *method.steps)
        if view.is_money or result.base >= view.large.per_base:
            written = view.small_of(method.result.value)
            last = step("Write {small} as {result}.", equation(written, result), small=written,
                        result=result)  # fmt: skip
            steps = (*steps, last)
        yield Working(f"All exchanged: {method.name.lower()}", steps, {EACH: result})
