"""A number sequence in boxes, with what leads from each to the next."""

from __future__ import annotations

import itertools
from fractions import Fraction

from typeset.arithmetic.families.sequence_view import (
    GROWING,
    IN_IT,
    MULTIPLY,
    ORDINALS,
    VALUE,
    Sequence,
)
from typeset.arithmetic.figures import Mark, SequenceBoxes
from typeset.arithmetic.methods import without_noun
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, words
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, say, write, write_plain

# More boxes than these are not drawn one by one.
_MOST_BOXES = 8
_AND_SO_ON = Mark(words("…"))


def boxes_of(view: Sequence) -> SequenceBoxes | None:
    """The terms told, and those that lead to what is asked; far ones after '…'.

    None where the question is whether a value is a term at all: its box would say so.
    """
    if IN_IT in view.problem.finds:
        return None
    goals = [position for _name, position in view.asked()] or [view.reach(view.value.value)[0]]
    last = goals[-1]
    is_long = last > _MOST_BOXES or VALUE in view.problem.givens
    shown = [*range(1, view.known + 1)]
    if is_long:
        shown += goals
    else:
        shown += range(view.known + 1, last + 1)
    terms = tuple(_term(view, position, goals) for position in shown)
    steps = tuple(
        _step(view, before) if after == before + 1 else _AND_SO_ON
        for before, after in itertools.pairwise(shown)
    )
    told = ", ".join(
        f"{view.low_place(position)} is {text}"
        for position, text in ((at, _plain(view, at)) for at in shown)
    )
    return SequenceBoxes(terms, steps, f"Terms in boxes: {told}.")


def _term(view: Sequence, position: int, goals: list[int]) -> Mark:
    text = (write(_amount(view, position)),)
    is_given = position <= view.known or VALUE in view.problem.givens
    return Mark(text, is_given, hidden=not is_given and position not in goals)


def _step(view: Sequence, before: int) -> Mark:
    """What leads from this place to the next; shown when all is."""
    return Mark(_sign_and_size(view, before), is_given=False, hidden=True)


def _sign_and_size(view: Sequence, before: int) -> Rich:
    if view.rule == MULTIPLY:
        rises = view.factor > 1
        size: Fraction = view.factor if rises else 1 / view.factor
        return say(f"{TIMES if rises else DIVIDE}\u00a0{size}")
    gap = view.step + (before - 1) * view.growth if view.rule == GROWING else view.step
    sign = "+" if gap > 0 else MINUS
    return say(f"{sign}\u00a0{{gap}}", gap=view.bare(abs(gap)))


def _plain(view: Sequence, position: int) -> str:
    return write_plain(_amount(view, position))


def _amount(view: Sequence, position: int) -> Amount:
    """What stands at a place, as the story writes it where it tells it; without its noun."""
    if position <= view.known:
        return without_noun(view.problem.given(ORDINALS[position - 1]))
    if VALUE in view.problem.givens:
        return without_noun(view.problem.given(VALUE))
    return view.bare(view.at(position))
