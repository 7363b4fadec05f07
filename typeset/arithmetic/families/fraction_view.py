"""A whole cut into a part and the rest: the numbers that the workings share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import NUMBER, PERCENT, Dimension

FRACTION, WHOLE, PART, REST = "fraction", "whole", "part", "rest"
AMOUNTS = (WHOLE, PART, REST)
_COUNTS = {Dimension.NUMBER, Dimension.COUNT}


@dataclass(frozen=True, slots=True)
class Cut:
    """The problem with one known amount, `known`, of which all others are so many parts."""

    problem: Problem[Any]
    known: str
    amount: Amount
    fraction: Fraction

    @property
    def is_percent(self) -> bool:
        """True where the fraction is typed as a percentage."""
        return self.problem.given(FRACTION).unit == PERCENT

    @property
    def pieces(self) -> int:
        """How many equal parts the whole has."""
        return self.fraction.denominator

    def share(self, name: str) -> Fraction:
        """What fraction of the whole this is."""
        return {WHOLE: Fraction(1), PART: self.fraction, REST: 1 - self.fraction}[name]

    def parts(self, name: str) -> Fraction:
        """How many of the equal parts this is."""
        return self.share(name) * self.pieces

    def written_share(self, name: str) -> Amount:
        """The share as the story writes the fraction."""
        if self.is_percent:
            return Amount(self.share(name) * 100, PERCENT)
        return Amount(self.share(name), form=Form.FRACTION)

    def like(self, value: Fraction | int) -> Amount:
        """An amount measured like the known one."""
        return self.amount.like(value)

    def value(self, name: str) -> Amount:
        """The amount of this name, by the known one."""
        return self.like(self.amount.value / self.share(self.known) * self.share(name))

    def is_sensible(self, *amounts: Amount) -> bool:
        """True where none is a cut thing or a part of a penny."""
        return all(is_sensible(each, self.problem.fields.may_be_cut) for each in amounts)

    def working(self, strategy: str, steps: list[Step], reached: Mapping[str, Amount]) -> Working:
        """A right working that has reached these."""
        return Working(strategy, (*steps, *self._closing(reached)), self._answers(reached))

    def mistake(
        self, name: str, steps: list[Step], reached: Mapping[str, Amount]
    ) -> MistakenWorking:
        """A wrong working in the same manner."""
        return MistakenWorking(name, (*steps, *self._closing(reached)), self._answers(reached))

    def _answers(self, reached: Mapping[str, Amount]) -> dict[str, AnswerValue]:
        units = self.problem.units
        return {
            name: self.problem.answer(name, each.base / units[name].per_base)
            for name, each in reached.items()
            if name in units
        }

    def _closing(self, reached: Mapping[str, Amount]) -> list[Step]:
        """The change to the unit asked for."""
        steps = []
        for name, amount in reached.items():
            unit = self.problem.units.get(name)
            if unit is None or unit.dimension in _COUNTS or unit.per_base == amount.unit.per_base:
                continue
            answer = amount.to(unit)
            result = equation(amount, answer)
            steps.append(step("That is {answer}.", result, answer=answer))
        return steps


def cut_of(problem: Problem[Any]) -> Cut:
    """The view of a problem whose fraction is given."""
    known = next(name for name in AMOUNTS if name in problem.givens)
    amount, fraction = problem.given(known), problem.given(FRACTION)
    if fraction.unit == PERCENT and amount.unit == NUMBER:
        # Hundredths of a bare number are written with a point.
        amount = amount.written_as(Form.DECIMAL)
    return Cut(problem, known, amount, fraction.base)
