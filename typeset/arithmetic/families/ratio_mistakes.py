"""The wrong ways that a ratio invites."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.ratio_view import (
    DIFFERENCE,
    WHOLE,
    RatioView,
    answers_of,
    counting_parts,
    side_title,
    sides_from_one,
)
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount
from typeset.quantities.nouns import looks_plural


def mistakes_with_ratios(view: RatioView) -> Iterator[MistakenWorking]:
    """The known amount taken for something else, the sides turned round, or adding."""
    if view.known == DIFFERENCE:
        yield _wrong_share(view, "difference taken as one part", Fraction(1))
        yield _wrong_share(view, "difference taken as the whole", view.parts_of(WHOLE))
    elif view.known == WHOLE:
        yield _wrong_share(view, "whole taken as one part", Fraction(1))
    else:
        yield _wrong_share(view, "part taken as the whole", view.parts_of(WHOLE))
        yield from _additive(view)
        yield from _without_difference(view)
    yield from _turned_round(view)


def _wrong_share(view: RatioView, name: str, count: Fraction) -> MistakenWorking:
    """The known amount shared among the wrong number of parts."""
    one = view.amount.value / count
    if count == 1:
        first = step("One part is {amount}.", amount=view.amount)
    else:
        first = step(
            "There are {n} in all, so one part is {one}.",
            equation(over(view.part(view.amount.value), Amount(count)), view.part(one)),
            n=so_many(count, "part"),
            one=view.part(one),
        )
    return MistakenWorking(name, (first, *sides_from_one(view, one)), answers_of(view, one))


def _turned_round(view: RatioView) -> Iterator[MistakenWorking]:
    """The two sides exchanged, where exactly one side is asked for."""
    asked = view.problem.finds[0]
    if len(view.sides) != 2 or asked not in view.sides or len(view.problem.finds) > 1:
        return
    other = next(side for side in view.sides if side != asked)
    known = {asked: other, other: asked}.get(view.known, view.known)
    one = view.amount.value / view.parts_of(known)
    result = view.problem.answer(asked, view.parts_of(other) * one)
    steps = (
        step(
            "One part is {one}.",
            equation(
                over(view.part(view.amount.value), Amount(view.parts_of(known))), view.part(one)
            ),
            one=view.part(one),
        ),
        step(
            f"{side_title(asked)}: {{n}}, so {{total}}.",
            equation(times(Amount(view.parts_of(other)), view.part(one)), view.part(result.value)),
            n=so_many(view.parts_of(other), "part"),
            total=result,
        ),
    )
    yield MistakenWorking("ratio turned round", steps, {asked: result})


def _additive(view: RatioView) -> Iterator[MistakenWorking]:
    """Adds what was added to the known side (Misailidou & Williams 2003)."""
    asked = view.problem.finds[0]
    if asked not in view.sides or len(view.problem.finds) > 1:
        return
    start = view.parts_of(view.known)
    grown = view.part(view.amount.value - start)
    result = view.problem.answer(asked, view.parts_of(asked) + grown.value)
    if grown.value <= 0:
        return
    steps = (
        step(
            f"The {view.known} went up from {{start}} by {{grown}}.",
            equation(minus(view.part(view.amount.value), view.part(start)), grown),
            start=view.part(start),
            grown=grown,
        ),
        step(
            f"So the {asked} {'go' if looks_plural(asked) else 'goes'} up by {{grown}} as well.",
            equation(plus(view.part(view.parts_of(asked)), grown), view.part(result.value)),
            grown=grown,
        ),
    )
    yield MistakenWorking("additive strategy", steps, {asked: result})


def _without_difference(view: RatioView) -> Iterator[MistakenWorking]:
    """Finds the other side and stops; or keeps the difference of the parts."""
    if view.problem.finds != (DIFFERENCE,):
        return
    other = next(side for side in view.sides if side != view.known)
    found = view.problem.answer(DIFFERENCE, view.parts_of(other) * view.one)
    steps = [
        counting_parts(view),
        step(f"{side_title(other)}: {{n}}, so {{found}}.",
             equation(times(Amount(view.parts_of(other)), view.part(view.one)),
                      view.part(found.value)),
             n=so_many(view.parts_of(other), "part"), found=found),
    ]  # fmt: skip
    yield MistakenWorking("step left out", tuple(steps), {DIFFERENCE: found})
    gap = view.problem.answer(DIFFERENCE, view.parts_of(DIFFERENCE))
    told = equation(view.sum_of_parts(DIFFERENCE), Amount(gap.value))
    only = step("The difference in the ratio is {gap}, so it stays {gap}.", told, gap=gap)
    yield MistakenWorking("additive strategy", (only,), {DIFFERENCE: gap})
