"""Both addends: a whole in two parts, and neither is known; in how many ways can it be?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, plus
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, WholeAmount, YesNo
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, noun
from typeset.quantities.writing import say, write

WHOLE, WAYS = "whole", "ways"
# A longer list than this nobody writes, and nobody checks.
_MOST = 30
_WAY = noun("way", "ways")


class BothAddendsFields(FamilyFields):
    """`whole: 5 shells`, `parts: [red pail, blue pail]`; `may be empty: no` where each part has
    at least one; `which is which: no` where the two parts cannot be told apart."""

    whole: WholeAmount
    parts: tuple[str, str] = ("first part", "second part")
    may_be_empty: YesNo = Field(default=True, alias="may be empty")
    which_is_which: YesNo = Field(default=True, alias="which is which")
    find: Literal["ways"] = "ways"


class BothAddends(Family[BothAddendsFields]):
    """whole = first + second, in whole numbers: the pairs are counted one by one."""

    name = "both addends"
    fields_model = BothAddendsFields

    def build(self, fields: BothAddendsFields) -> Problem[BothAddendsFields]:
        """The problem; the whole is a number of things that stay whole."""
        if fields.whole.unit.dimension not in (Dimension.COUNT, Dimension.NUMBER):
            raise AmountError("a measure splits in endlessly many ways", "count whole things")
        if not 2 <= fields.whole.value <= _MOST:
            raise AmountError(f"the whole is from 2 to {_MOST}", "choose another whole")
        if fields.parts[0] == fields.parts[1]:
            raise AmountError("both parts have the same name", "call them otherwise")
        units = MappingProxyType({WAYS: fields.answer_in or _WAY})
        givens = MappingProxyType({WHOLE: fields.whole})
        return Problem(self.name, givens, (WAYS,), units, fields)

    def relation(self, problem: Problem[BothAddendsFields]) -> Mapping[str, AnswerValue]:
        """Every pair of whole numbers is tried, and those that make the whole are counted."""
        total = int(problem.given(WHOLE).value)
        least = 0 if problem.fields.may_be_empty else 1
        numbers = range(least, total + 1)
        pairs = {(one, other) for one in numbers for other in numbers if one + other == total}
        if not problem.fields.which_is_which:
            pairs = {(min(pair), max(pair)) for pair in pairs}
        return {WAYS: problem.answer(WAYS, len(pairs))}

    def strategies(self, problem: Problem[BothAddendsFields]) -> Iterator[Working]:
        """Listed in order; or only the first part is counted, since it settles the second."""
        view = _View(problem)
        yield _listed(view)
        yield _first_part_counted(view)

    def mistakes(self, problem: Problem[BothAddendsFields]) -> Iterator[MistakenWorking]:
        """Empty parts forgotten, turned pairs not counted or counted twice."""
        view = _View(problem)
        if view.least == 0:
            yield view.mistake("nought forgotten", view.pairs_from(1))
        if view.told_apart:
            yield view.mistake("turned pairs counted once", view.halves_from(view.least))
        else:
            yield view.mistake("turned pairs counted twice", view.pairs_from(view.least))

    def smooth(self, problem: Problem[BothAddendsFields]) -> Mapping[str, AnswerValue]:
        """The ways with the parts told apart: one more with every one that is added."""
        least = 0 if problem.fields.may_be_empty else 1
        return {WAYS: Amount(problem.given(WHOLE).value + 1 - 2 * least, problem.units[WAYS])}

    def reason(self, problem: Problem[BothAddendsFields]) -> Rich | None:
        """One that is moved over makes the next way."""
        first, second = (the(name) for name in problem.fields.parts)
        return say(
            f"Each way comes from the one before by moving 1 from {second} to {first}: one part "
            "gains what the other loses, and together they stay {whole}.",
            whole=problem.given(WHOLE),
        )

    def figure(
        self, problem: Problem[BothAddendsFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """The whole over two parts that nobody knows."""
        total = problem.given(WHOLE)
        half = Part(total.value / 2, Mark(say("?")))
        first, second = problem.fields.parts
        return BarModel(
            (Bar("", (half, half)),),
            (),
            Mark((write(total),)),
            f"One bar in two parts, {first} and {second}, both unknown.",
        )


class _View:
    """The problem with what the workings need."""

    def __init__(self, problem: Problem[BothAddendsFields]) -> None:
        self.problem = problem
        self.total = int(problem.given(WHOLE).value)
        self.least = 0 if problem.fields.may_be_empty else 1
        self.told_apart = problem.fields.which_is_which
        self.first, self.second = problem.fields.parts

    def pairs_from(self, least: int) -> list[tuple[int, int]]:
        """All pairs with the parts told apart, the first part rising."""
        return [(one, self.total - one) for one in range(least, self.total - least + 1)]

    def halves_from(self, least: int) -> list[tuple[int, int]]:
        """The pairs whose first part is not the larger one."""
        return [(one, self.total - one) for one in range(least, self.total // 2 + 1)]

    @property
    def pairs(self) -> list[tuple[int, int]]:
        """The pairs that the problem counts."""
        return self.pairs_from(self.least) if self.told_apart else self.halves_from(self.least)

    def ways(self, count: int) -> Amount:
        """A number of ways by the problem's own word."""
        return self.problem.answer(WAYS, count)

    def list_of(self, pairs: list[tuple[int, int]]) -> Step:
        """The pairs in order."""
        text = ", ".join(f"{one}\u00a0+\u00a0{other}" for one, other in pairs)
        starts = f"Write the number for {the(self.first)} first"
        if not self.told_apart:
            rises = all(one <= other for one, other in pairs)
            starts = "Write the smaller number first" if rises else "Write one part and the other"
        return step(f"{starts}: {text}.")

    def mistake(self, name: str, pairs: list[tuple[int, int]]) -> MistakenWorking:
        """A list that is not the right one, counted."""
        ways = self.ways(len(pairs))
        return MistakenWorking(
            name, (self.list_of(pairs), step("That makes {ways}.", ways=ways)), {WAYS: ways}
        )


def _listed(view: _View) -> Working:
    pairs = view.pairs
    ways = view.ways(len(pairs))
    order = step("List them in order, so that none is missed: the one part goes up by 1, the "
                 "other down by 1.")  # fmt: skip
    steps = (order, view.list_of(pairs), step("That makes {ways}.", ways=ways))
    return Working("Listing in order", steps, {WAYS: ways})


def _first_part_counted(view: _View) -> Working:
    """As many ways as there are numbers that the first part can have."""
    largest = view.total - view.least if view.told_apart else view.total // 2
    least, top = Amount(Fraction(view.least)), Amount(Fraction(largest))
    steps: list[Step] = []
    part = the(view.first) if view.told_apart else "the smaller part"
    if not view.told_apart:
        steps.append(
            step(
                "The smaller part is at most half of {whole}, so at most {top}.",
                whole=view.problem.given(WHOLE),
                top=top,
            )
        )
    count = Amount(Fraction(largest - view.least + 1))
    steps.append(
        step(
            f"{title(part)} can have any number from {{least}} to {{top}}, and what is left "
            "goes to the other.",
            least=least,
            top=top,
        )
    )
    one = Amount(Fraction(1))
    if view.least == 0:
        text = "From {least} to {top} there is one number more than {top}: {ways}."
        result = equation(plus(top, one), count)
    else:
        text = "From {least} to {top} there are {top} numbers: {ways}."
        result = None
    ways = view.ways(int(count.value))
    steps.append(step(text, result, least=least, top=top, ways=ways))
    return Working("Counting what one part can have", tuple(steps), {WAYS: ways})
