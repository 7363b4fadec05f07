"""Changes in a row with their numbers in one unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.equations import Expression, equation, minus, plus
from typeset.arithmetic.methods import conversion, finest_unit, in_unit, is_counted
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit

START, END = "start", "end"


@dataclass(frozen=True, slots=True)
class One:
    """One change; `by` is None where it is asked for."""

    name: str
    is_up: bool
    by: Amount | None

    @property
    def signed(self) -> Fraction:
        """By how much it changes the amount; 0 where that is asked for."""
        value = self.by.value if self.by is not None else Fraction(0)
        return value if self.is_up else -value


@dataclass(frozen=True, slots=True)
class View:
    """What the workings need. Amounts are in `unit`, which is the noun for counted things."""

    problem: Problem[Any]
    unit: Unit
    changes: tuple[One, ...]

    @classmethod
    def of(cls, problem: Problem[Any]) -> View:
        """The view of a problem."""
        amounts = tuple(problem.givens.values())
        unit = problem.units[problem.finds[0]] if is_counted(amounts[0]) else finest_unit(*amounts)
        changes = []
        for name, each in problem.fields.changes.items():
            is_up = each == "increase" if isinstance(each, str) else each.increase is not None
            given = problem.givens.get(name)
            changes.append(One(name, is_up, None if given is None else in_unit(given, unit)))
        return cls(problem, unit, tuple(changes))

    @property
    def asked(self) -> str:
        """What is asked for."""
        return self.problem.finds[0]

    @property
    def opening(self) -> list[Step]:
        """The steps that bring the story's amounts to one unit."""
        given = self.problem.givens.values()
        return [each for amount in given for each in conversion(amount, self.unit)[1]]

    def given(self, name: str) -> Amount:
        """A number of the story in the unit of the workings."""
        return in_unit(self.problem.given(name), self.unit)

    def amount(self, value: Fraction | int) -> Amount:
        """A value in the unit of the workings."""
        return Amount(Fraction(value), self.unit)

    def answer(self, value: Fraction) -> Amount:
        """A value in the unit that is asked for."""
        unit = self.problem.units[self.asked]
        return self.problem.answer(self.asked, value * self.unit.per_base / unit.per_base)

    def closing(self, value: Fraction) -> tuple[Step, ...]:
        """The step into the unit that is asked for, where it is another one."""
        return conversion(self.amount(value), self.problem.units[self.asked])[1]

    @property
    def net(self) -> Fraction:
        """All known changes together."""
        return sum((each.signed for each in self.changes), Fraction(0))

    @property
    def found(self) -> Fraction:
        """The number asked for, in `unit`."""
        if self.asked == END:
            return self.given(START).value + self.net
        if self.asked == START:
            return self.given(END).value - self.net
        return abs(self.given(END).value - self.given(START).value - self.net)

    def by(self, name: str) -> Amount:
        """By how much a change goes, also the one that is asked for."""
        one = next(each for each in self.changes if each.name == name)
        return one.by if one.by is not None else self.amount(self.found)

    @property
    def reached(self) -> list[tuple[str, Fraction]]:
        """The start and what there is after each change; the last is called 'end'."""
        value = self.found if self.asked == START else self.given(START).value
        told = [(START, value)]
        for each in self.changes:
            size = self.by(each.name).value
            value += size if each.is_up else -size
            told.append((each.name, value))
        # The last place is the end's; its jump keeps the name of the last change.
        return told

    def does(self, one: One, start: Amount, *, undo: bool) -> tuple[Step, Amount]:
        """One change done or undone from `start`."""
        assert one.by is not None
        adds = one.is_up != undo
        end = start.like(start.value + one.by.value if adds else start.value - one.by.value)
        made: Expression = plus(start, one.by) if adds else minus(start, one.by)
        verb = "add {by}" if adds else "take off {by}"
        if undo:
            was = "added" if one.is_up else "taken off"
            verb = f"{{by}} was {was}, so {'add it' if adds else 'take it off'} again"
            if one.by.value != 1 and one.by.unit.is_noun:
                verb = f"{{by}} were {was}, so {'add them' if adds else 'take them off'} again"
        text = f"{title(one.name)}: {verb}."
        return step(text, equation(made, end), by=one.by), end

    def known_changes(self) -> Iterator[One]:
        """The changes that the story tells."""
        return (each for each in self.changes if each.by is not None)
