"""Answers in several units where the story gives them so: 1 h 20 min three times is 4 h, not
240 min. The workings reckon in the smallest of the units, and say the answer on a last line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Unit


@dataclass(frozen=True, slots=True)
class SeveralUnits:
    """The units of the story's compound amounts, largest first; none where there is none, or
    where the author asks for a unit or a rounding."""

    parts: tuple[Unit, ...]

    @classmethod
    def of(cls, problem: Problem[Any]) -> SeveralUnits:
        """What the story of this problem does."""
        fields = problem.fields
        if fields.answer_in is not None or fields.round_to is not None:
            return cls(())
        given = (each for each in problem.givens.values() if each.form is Form.COMPOUND)
        return cls(max((each.parts for each in given), key=len, default=()))

    def answers(self, answers: Mapping[str, AnswerValue]) -> dict[str, AnswerValue]:
        """The answers as the story would say them."""
        if not self.parts:
            return dict(answers)
        return {name: self._said(value) for name, value in answers.items()}

    def working(self, working: Working) -> Working:
        """A working that says its answers so on its last line; a check begins with the answer
        and ends with the story, so it needs no such line."""
        if not self.parts:
            return working
        answers = self.answers(working.answers)
        lines = [] if working.strategy.startswith("Checking") else self._lines(working.answers)
        steps = (*working.steps, *lines)
        return Working(working.strategy, steps, answers)

    def mistakes(self, mistakes: Iterable[MistakenWorking]) -> Iterator[MistakenWorking]:
        """The same for mistakes."""
        if not self.parts:
            yield from mistakes
            return
        for each in mistakes:
            steps = (*each.steps, *self._lines(each.answers))
            yield replace(each, steps=steps, answers=self.answers(each.answers))

    def _said(self, value: AnswerValue) -> AnswerValue:
        if not isinstance(value, Amount) or not self._is_long(value):
            return value
        return Amount(value.value, value.unit, Form.COMPOUND, parts=self.parts)

    def _is_long(self, value: Amount) -> bool:
        """True for an amount in the smallest unit that fills the next larger one."""
        return (
            len(self.parts) > 1
            and value.form is Form.AUTO
            and value.unit == self.parts[-1]
            and value.base >= self.parts[-2].per_base
        )

    def _lines(self, answers: Mapping[str, AnswerValue]) -> list[Step]:
        return [
            step("That is {said}.", equation(value, said), said=said)
            for value in answers.values()
            if isinstance(value, Amount)
            and isinstance(said := self._said(value), Amount)
            and said.form is not value.form
        ]
