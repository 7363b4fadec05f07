"""A chain of comparisons with its numbers in one unit, walked from any of those compared."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.methods import conversion, finest_unit, in_unit, is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit

TOTAL = "total"


def link_name(who: str, word: str) -> str:
    """What a comparison's amount is called in the story: 'Nell more'."""
    return f"{who} {word}"


@dataclass(frozen=True, slots=True)
class Link:
    """`who` is `by` more (or fewer) than `than`."""

    name: str
    who: str
    than: str
    by: Amount
    is_more: bool

    @property
    def larger(self) -> str:
        """The one that has more."""
        return self.who if self.is_more else self.than

    @property
    def smaller(self) -> str:
        """The one that has less."""
        return self.than if self.is_more else self.who


@dataclass(frozen=True, slots=True)
class Walk:
    """From one that is known to the next. `turned` where the story says it the other way."""

    start: str
    end: str
    link: Link

    @property
    def turned(self) -> bool:
        """True where the story compares the start with the end."""
        return self.link.who == self.start

    @property
    def goes_up(self) -> bool:
        """True where the end is the larger one."""
        return self.link.larger == self.end


@dataclass(frozen=True, slots=True)
class View:
    """What the workings need. Amounts are in `unit`, which is the noun for counted things."""

    problem: Problem[Any]
    unit: Unit
    links: tuple[Link, ...]
    people: tuple[str, ...]
    known: str
    start: Amount

    @classmethod
    def of(cls, problem: Problem[Any]) -> View:
        """The view of a problem."""
        amounts = tuple(problem.givens.values())
        unit = problem.units[problem.finds[0]] if is_counted(amounts[0]) else finest_unit(*amounts)
        links = []
        for who, each in problem.fields.comparisons.items():
            name = link_name(who, each.word)
            by = in_unit(problem.given(name), unit)
            links.append(Link(name, who, each.than, by, each.word == "more"))
        people = tuple(dict.fromkeys(n for link in links for n in (link.who, link.than)))
        (known,) = problem.fields.known
        return cls(problem, unit, tuple(links), people, known, in_unit(problem.given(known), unit))

    @property
    def count(self) -> Fraction:
        """How many are compared."""
        return Fraction(len(self.people))

    @property
    def conversions(self) -> tuple[Step, ...]:
        """The steps that bring the story's amounts to one unit."""
        given = self.problem.givens.values()
        return tuple(each for amount in given for each in conversion(amount, self.unit)[1])

    @property
    def fewer(self) -> str:
        """The opposite of more: of what is counted, or of what is measured."""
        return "fewer" if self.unit.is_noun or not self.unit.plural else "less"

    def amount(self, value: Fraction | int) -> Amount:
        """A value in the unit of the workings."""
        return Amount(Fraction(value), self.unit)

    def walks(self, start: str) -> Iterator[Walk]:
        """The way from `start` to all others, each reached from one that is reached already."""
        reached, left = [start], list(self.links)
        while left:
            link = next(each for each in left if each.who in reached or each.than in reached)
            left.remove(link)
            here, there = link.who, link.than
            if here not in reached:
                here, there = there, here
            reached.append(there)
            yield Walk(here, there, link)

    def path(self, start: str, end: str) -> list[Walk]:
        """The way from `start` to `end` alone."""
        by_end = {walk.end: walk for walk in self.walks(start)}
        way: list[Walk] = []
        while end != start:
            way.insert(0, by_end[end])
            end = by_end[end].start
        return way

    def offsets(self, start: str) -> dict[str, Fraction]:
        """By how much each is more than `start`; negative for fewer."""
        reached = {start: Fraction(0)}
        for walk in self.walks(start):
            change = walk.link.by.value if walk.goes_up else -walk.link.by.value
            reached[walk.end] = reached[walk.start] + change
        return {name: reached[name] for name in self.people}

    @property
    def values(self) -> dict[str, Fraction]:
        """All amounts, in `unit`."""
        if self.known != TOTAL:
            return {n: self.start.value + each for n, each in self.offsets(self.known).items()}
        offsets = self.offsets(self.people[0])
        first = (self.start.value - sum(offsets.values())) / self.count
        return {name: first + each for name, each in offsets.items()}

    def end_links(self) -> tuple[str, ...]:
        """The comparisons on which only one amount hangs, seen from the known one."""
        starts = {walk.start for walk in self.walks(self.known)}
        return tuple(w.link.name for w in self.walks(self.known) if w.end not in starts)

    def answers(self, values: Mapping[str, Fraction]) -> dict[str, AnswerValue]:
        """What is asked for, of these values."""
        every = {**values, TOTAL: values.get(TOTAL, sum(values.values(), Fraction(0)))}
        size = self.unit.per_base
        return {
            name: self.problem.answer(name, every[name] * size / self.problem.units[name].per_base)
            for name in self.problem.finds
        }

    def closing(self, values: Mapping[str, Fraction]) -> list[Step]:
        """The unit of the question, where it is another one."""
        every = {**values, TOTAL: sum(values.values(), Fraction(0))}
        return [
            each
            for name in self.problem.finds
            for each in conversion(self.amount(every[name]), self.problem.units[name])[1]
        ]

    def asks(self, names: Sequence[str]) -> bool:
        """True where one of these is asked for."""
        return any(name in self.problem.finds for name in names)
