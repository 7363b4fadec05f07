"""A number sequence: its first terms, its rule, and how its places are spoken of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice
from typing import Any

from typeset.arithmetic.equations import equation, minus, over
from typeset.arithmetic.families.shared_numbers import in_one_unit
from typeset.arithmetic.methods import in_unit, without_noun
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit, noun

SAME, GROWING, MULTIPLY = "same step", "growing step", "multiply"
TERM, POSITION, VALUE, IN_IT = "term", "position", "value", "in the sequence"
ORDINALS = (
    *("first", "second", "third", "fourth", "fifth"),
    *("sixth", "seventh", "eighth", "ninth", "tenth"),
)
_TERM = noun("term", "terms")
# No sequence is followed further than this.
FURTHEST = 1000


@dataclass(frozen=True, slots=True)
class Sequence:
    """The problem with its terms in one unit."""

    problem: Problem[Any]
    terms: tuple[Amount, ...]
    conversions: tuple[Step, ...]

    @property
    def rule(self) -> str:
        """How each term comes from the one before, as the author states it."""
        return str(self.problem.fields.rule)

    @property
    def known(self) -> int:
        """How many terms the story tells."""
        return len(self.terms)

    @property
    def first(self) -> Fraction:
        """The value of the first term."""
        return self.terms[0].value

    @property
    def last(self) -> Fraction:
        """The value of the last term that the story tells."""
        return self.terms[-1].value

    @property
    def step(self) -> Fraction:
        """The first step; below 0 where the terms fall."""
        return self.terms[1].value - self.first

    @property
    def last_step(self) -> Fraction:
        """The step to the last term that the story tells."""
        return self.last - self.terms[-2].value

    @property
    def growth(self) -> Fraction:
        """How much larger each step is than the one before."""
        return self.terms[2].value - self.terms[1].value - self.step

    @property
    def factor(self) -> Fraction:
        """What each term is multiplied by."""
        return self.terms[1].value / self.first

    @property
    def called(self) -> Unit:
        """What a term is called."""
        return called_by(self.problem.fields)

    @property
    def value(self) -> Amount:
        """The value whose place is asked for, in the unit of the terms."""
        return in_unit(self.problem.given(VALUE), self.terms[0].unit)

    def amount(self, value: Fraction | int) -> Amount:
        """A value in the unit of the terms."""
        written = (Form.DECIMAL, Form.FRACTION)
        model = next((term for term in self.terms if term.form in written), self.terms[0])
        return model.like(Fraction(value))

    def bare(self, value: Fraction | int) -> Amount:
        """The same, without its noun."""
        return without_noun(self.amount(value))

    def place(self, position: int) -> str:
        """'Row 4'."""
        name = self.called.singular
        return f"{name[:1].upper()}{name[1:]} {position}"

    def low_place(self, position: int) -> str:
        """'row 4'."""
        return f"{self.called.singular} {position}"

    def asked(self) -> list[tuple[str, int]]:
        """The terms that are asked for, with their places, in rising order."""
        wanted = []
        for name in self.problem.finds:
            if name == TERM:
                wanted.append((name, int(self.problem.given(POSITION).value)))
            elif name in ORDINALS:
                wanted.append((name, ORDINALS.index(name) + 1))
        return sorted(wanted, key=lambda each: each[1])

    def walk(self) -> Iterator[Fraction]:
        """Every term, one after another, by the rule."""
        value, gap = self.first, self.step
        while True:
            yield value
            value = value * self.factor if self.rule == MULTIPLY else value + gap
            if self.rule == GROWING:
                gap += self.growth

    def at(self, position: int) -> Fraction:
        """The term at a place, by walking there."""
        return next(islice(self.walk(), position - 1, None))

    def passes(self, value: Fraction, goal: Fraction) -> bool:
        """True where a term lies beyond the goal, in the direction of the sequence."""
        rises = self.last > self.first
        return value > goal if rises else value < goal

    def reach(self, goal: Fraction) -> tuple[int, Fraction]:
        """The place and value of the first term that is the goal or lies beyond it; the last
        one within reach where none does."""
        places = enumerate(islice(self.walk(), FURTHEST), 1)
        last = FURTHEST, self.first
        for last in places:
            if last[1] == goal or self.passes(last[1], goal):
                break
        return last

    def opening(self) -> Step:
        """What leads from each term to the next, found from the first two."""
        one, two = self.terms[0], self.terms[1]
        lead = f"From each {self.called.singular} to the next"
        if self.rule == MULTIPLY:
            large, small = (two, one) if self.factor > 1 else (one, two)
            word = "times" if self.factor > 1 else "divided by"
            ratio = Amount(large.value / small.value)
            told = equation(over(large, small), ratio)
            return step(f"{lead}: {word} {{n}}.", told, n=ratio)
        large, small = (two, one) if self.step > 0 else (one, two)
        gap = self.amount(abs(self.step))
        told = equation(minus(large, small), gap)
        return step(f"{lead}: {{gap}} {self.word()}.", told, gap=gap)

    def word(self) -> str:
        """'more', 'fewer' or 'less'."""
        if self.last > self.first:
            return "more"
        return "fewer" if self.terms[0].unit.dimension is Dimension.COUNT else "less"


def sequence_of(problem: Problem[Any]) -> Sequence:
    """The view of a problem."""
    typed = dict(zip(ORDINALS, problem.fields.terms, strict=False))
    amounts, steps = in_one_unit({name: problem.given(name) for name in typed})
    return Sequence(problem, tuple(amounts.values()), steps)


def called_by(fields: Any) -> Unit:
    """What a term is called: as the author names it, or plainly."""
    named = fields.terms_called
    return named if isinstance(named, Unit) and named.singular else _TERM
