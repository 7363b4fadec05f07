"""A ratio's parts and what is known of it, with the words that workings need."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, minus, plus, times
from typeset.arithmetic.names import so_many
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.nouns import looks_plural

WHOLE = "whole"
DIFFERENCE = "difference"


def given_name(known: str) -> str:
    """`{difference}`, `{whole}`; `{known}` for a side, whose own name means its parts."""
    return known if known in (WHOLE, DIFFERENCE) else "known"


@dataclass(frozen=True, slots=True)
class RatioView:
    """The problem with the words that the workings need."""

    problem: Problem[Any]

    @property
    def sides(self) -> tuple[str, ...]:
        """The names of the sides."""
        return tuple(self.problem.fields.parts)

    @property
    def known(self) -> str:
        """What is known: a side, 'whole' or 'difference'."""
        return str(next(iter(self.problem.fields.known)))

    @property
    def amount(self) -> Amount:
        """The amount that is known."""
        return self.problem.given(given_name(self.known))

    @property
    def one(self) -> Fraction:
        """The size of one part, by sharing what is known among its parts."""
        return self.amount.value / self.parts_of(self.known)

    def parts_of(self, side: str) -> Fraction:
        """How many parts a side, the whole or the difference has."""
        counts = [self.problem.given(name).value for name in self.sides]
        if side == WHOLE:
            return sum(counts, Fraction(0))
        if side == DIFFERENCE:
            return max(counts) - min(counts)
        return self.problem.given(side).value

    def sum_of_parts(self, side: str) -> Expression:
        """How the parts of the whole or the difference come about, as a sum."""
        counts = sorted(
            (Amount(self.problem.given(name).value) for name in self.sides),
            key=lambda count: -count.value,
        )
        return minus(*counts) if side == DIFFERENCE else plus(*counts)

    def part(self, value: Fraction) -> Amount:
        """An amount measured like the known one, but not called by its noun."""
        is_noun = self.amount.unit.is_noun
        return Amount(value) if is_noun else self.amount.like(value)


def counting_parts(view: RatioView) -> Step:
    """Which parts make up what is known."""
    count = view.parts_of(view.known)
    told = {"n": so_many(count, "part"), "amount": view.amount}
    if view.known == WHOLE:
        text = "All the parts together are {n}, and they make {amount}."
    elif view.known == DIFFERENCE:
        text = "The difference is {n}, and that makes {amount}."
    else:
        they = "it makes" if count == 1 else "they make"
        verb = "are" if looks_plural(view.known) else "is"
        return step(f"The {view.known} {verb} {{n}}, and {they} {{amount}}.", **told)
    return step(text, equation(view.sum_of_parts(view.known), Amount(count)), **told)


def sides_from_one(view: RatioView, one: Fraction) -> Iterator[Step]:
    """Each side asked for, from the size of one part."""
    for asked in view.problem.finds:
        count = view.parts_of(asked)
        total = view.problem.answer(asked, count * one)
        yield step(
            f"{side_title(asked)}: {{n}}, so {{total}}.",
            equation(times(Amount(count), view.part(one)), view.part(total.value)),
            n=so_many(count, "part"),
            total=total,
        )


def side_title(side: str) -> str:
    """The side at the head of a line."""
    return {WHOLE: "The whole", DIFFERENCE: "The difference"}.get(
        side, f"{side[:1].upper()}{side[1:]}"
    )


def told_side(side: str) -> str:
    """The side inside a sentence."""
    return f"the {side}" if side in (WHOLE, DIFFERENCE) else side


def answers_of(view: RatioView, one: Fraction) -> dict[str, AnswerValue]:
    """What is asked for, where one part is so large."""
    return {
        asked: view.problem.answer(asked, view.parts_of(asked) * one)
        for asked in view.problem.finds
    }
