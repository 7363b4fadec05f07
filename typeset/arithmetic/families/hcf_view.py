"""The amounts of a highest common factor, and how its sets or pieces are spoken of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import prod
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, over, plus, times
from typeset.arithmetic.families.shared_numbers import in_one_unit, lead
from typeset.arithmetic.methods import in_unit, is_counted, without_noun
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import join, words
from typeset.quantities.units import Dimension, Unit, noun
from typeset.quantities.writing import say

SETS, EACH, PIECES, TILES = "sets", "each", "pieces", "tiles"
_SET = noun("set", "sets")
_PIECE = noun("piece", "pieces")
_TILE = noun("tile", "tiles")


@dataclass(frozen=True, slots=True)
class Hcf:
    """The problem with its amounts in one unit, where they have one."""

    problem: Problem[Any]
    amounts: Mapping[str, Amount]
    conversions: tuple[Step, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The names in the author's order."""
        return tuple(self.amounts)

    @property
    def counts(self) -> tuple[int, ...]:
        """The whole numbers of the amounts."""
        return tuple(int(amount.value) for amount in self.amounts.values())

    @property
    def is_sets(self) -> bool:
        """True for identical sets, False for equal pieces and tiles."""
        return self.problem.fields.identical_sets is not None

    @property
    def is_tiles(self) -> bool:
        """True for square tiles, which cover a rectangle."""
        return self.problem.fields.square_tiles is not None

    @property
    def group(self) -> Unit:
        """What a set or a piece is called."""
        return group_of(self.problem.fields)

    def greatest(self) -> int:
        """The greatest number that divides all amounts, found by trying every one."""
        return next(
            number
            for number in range(min(self.counts), 0, -1)
            if not any(count % number for count in self.counts)
        )

    def groups(self, count: Fraction | int) -> Amount:
        """'12 bundles'."""
        return Amount(Fraction(count), self.group)

    def size(self, value: Fraction | int) -> Amount:
        """What one piece holds: '12 cm', '12 floats'."""
        first = next(iter(self.amounts.values()))
        units = {amount.unit for amount in self.amounts.values()}
        return Amount(Fraction(value), first.unit) if len(units) == 1 else Amount(Fraction(value))

    def quotients(self, factor: int) -> dict[str, Fraction]:
        """Each amount divided by the factor."""
        return {name: amount.value / factor for name, amount in self.amounts.items()}

    def values(self, factor: int) -> dict[str, Amount]:
        """Everything that may be asked, as the workings say it."""
        quotients = self.quotients(factor)
        if self.is_sets:
            said = {name: self.amounts[name].like(value) for name, value in quotients.items()}
            return {SETS: self.groups(factor), **said}
        said = {name: self.groups(value) for name, value in quotients.items()}
        total = self.groups(sum(quotients.values(), Fraction(0)))
        tiles = self.groups(prod(quotients.values(), start=Fraction(1)))
        return {EACH: self.size(factor), PIECES: total, TILES: tiles, **said}

    def answers(self, factor: int) -> dict[str, AnswerValue]:
        """The answers that this factor gives, in the units asked for."""
        values = self.values(factor)
        return {
            asked: in_unit(values[asked], self.problem.units[asked]) for asked in self.problem.finds
        }

    def largest(self, factor: int) -> Step:
        """'Each piece can be at most 12 cm long.'"""
        text = f"Each {self.group.singular} can have at most {{each}}."
        if self.is_tiles:
            text = f"The side of each {self.group.singular} can be at most {{each}}."
        elif self.size(factor).unit.dimension is Dimension.LENGTH:
            text = f"Each {self.group.singular} can be at most {{each}} long."
        return step(text, each=self.size(factor))

    def closing(self, factor: int) -> tuple[Step, ...]:
        """What the factor means in the story; every amount is divided by it."""
        values = self.values(factor)
        if self.is_sets:
            opening = step("The most there can be: {sets}.", sets=values[SETS])
            return (opening, *(self.shared(name, factor) for name in self.names))
        steps = [self.largest(factor), *(self.cut(name, factor) for name in self.names)]
        counts = [without_noun(values[name]) for name in self.names]
        if PIECES in self.problem.finds:
            total = values[PIECES]
            joined = equation(plus(*counts), without_noun(total))
            steps.append(step("Together: {total}.", joined, total=total))
        if TILES in self.problem.finds:
            total = values[TILES]
            product = equation(times(*counts), without_noun(total))
            steps.append(step("Rows and columns make {total}.", product, total=total))
        last = self.answers(factor).get(EACH)
        if isinstance(last, Amount) and not is_counted(last) and last.unit != values[EACH].unit:
            told = equation(values[EACH], last)
            steps.append(step("Write {old} as {new}.", told, old=values[EACH], new=last))
        return tuple(steps)

    def shown(self, factor: int) -> tuple[Step, ...]:
        """The closing where the divisions are done already: what is left is what each gives."""
        values = self.values(factor)
        if not self.is_sets:
            told = [say(f"{title(name)}: {{n}}.", n=values[name]) for name in self.names]
            rest = self.closing(factor)[1 + len(told) :]
            return (self.largest(factor), Step(join(told, " ")), *rest)
        told = [say(f"{lead(name, self.amounts)}{{n}}", n=values[name]) for name in self.names]
        each = join([join(told[:-1], ", "), (*told[-1], *words(" in each."))], " and ")
        return (*self.closing(factor)[:1], Step(each))

    def shared(self, name: str, factor: int) -> Step:
        """'48 red floats shared into 12 bundles, 4 red floats in each.'"""
        amount, each = self.amounts[name], self.values(factor)[name]
        return step(
            f"{lead(name, self.amounts)}{{amount}} shared into {{sets}}, {{each}} in each.",
            equation(over(amount, Amount(Fraction(factor))), each),
            amount=amount,
            sets=self.groups(factor),
            each=each,
        )

    def cut(self, name: str, factor: int) -> Step:
        """'Blue rope: 84 cm in pieces of 12 cm, so 7 pieces.'"""
        amount, count = self.amounts[name], self.values(factor)[name]
        size = amount.like(factor)
        pieces = f"{self.group.plural} of {{size}}"
        return step(
            f"{lead(name, self.amounts)}{{amount}} in {pieces}, so {{count}}.",
            equation(over(amount, size), without_noun(count)),
            amount=amount,
            size=without_noun(size),
            count=count,
        )


def hcf_of(problem: Problem[Any]) -> Hcf:
    """The view of a problem."""
    amounts = {name: problem.given(name) for name in problem.fields.amounts()}
    return Hcf(problem, *in_one_unit(amounts))


def group_of(fields: Any) -> Unit:
    """What a set or piece is called: as the author names it, or plainly."""
    named = fields.groups_called
    if named is None and SETS in fields.find and fields.answer_in is not None:
        named = fields.answer_in
    if isinstance(named, Unit) and named.singular:
        return named
    if fields.square_tiles is not None:
        return _TILE
    return _SET if fields.identical_sets is not None else _PIECE
