"""Mistakes with a stated rounding: cut off instead of rounded, or rounded on the way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import (
    EQUAL,
    Expression,
    Operation,
    equation,
    value_of,
)
from typeset.arithmetic.rounding import Rounding, rounded_answers
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Unit
from typeset.quantities.writing import write

_Key = tuple[Fraction, Unit]


def rounding_mistakes(workings: Iterable[Working], rounding: Rounding) -> Iterator[MistakenWorking]:
    """Both mistakes in each of the exact workings, easiest first."""
    for working in workings:
        yield _cut_off(working, rounding)
        early = _rounded_early(working, rounding)
        if early is not None:
            yield early


def _cut_off(working: Working, rounding: Rounding) -> MistakenWorking:
    """A right working whose answers are always rounded down."""
    exact = {name: value for name, value in working.answers.items() if isinstance(value, Amount)}
    lower = {name: rounding.down(each) for name, each in exact.items()}
    text = f"Round {rounding.said}: cut off what is beyond {{answer}}."
    steps = [step(text, answer=value) for value in lower.values()]
    return MistakenWorking("rounded down always", (*working.steps, *steps), {**lower})


def _rounded_early(working: Working, rounding: Rounding) -> MistakenWorking | None:
    """The working with every result rounded at once; None where that changes nothing, or
    where it has lines that are no plain sums."""
    pupil = _Pupil(rounding)
    try:
        steps = tuple(pupil.step(each) for each in working.steps)
        answers = {name: pupil.said(value) for name, value in working.answers.items()}
        rounded = rounded_answers(answers, rounding)
    except (AmountError, ValueError, ZeroDivisionError):
        return None
    if not pupil.has_rounded:
        return None
    return MistakenWorking("rounded too early", steps, rounded, slip=True)


@dataclass(slots=True)
class _Pupil:
    """Reckons with what was written before, not with what it should have been."""

    rounding: Rounding
    instead: dict[_Key, Amount] = field(default_factory=dict)
    has_rounded: bool = False

    def step(self, right: Step) -> Step:
        """The line as this pupil writes it."""
        result = right.equation
        if result is None:
            return Step(self._sentence(right.sentence))
        if len(result.sides) != 2 or result.signs != (EQUAL,):
            raise ValueError("no plain sum")
        left, made = self._expression(result.sides[0]), result.sides[1]
        if not isinstance(made, Amount):
            raise ValueError("no plain sum")
        self._make(made, value_of(left) / made.unit.per_base)
        result = equation(left, self.instead[_key(made)])
        return Step(self._sentence(right.sentence), result)

    def _make(self, exact: Amount, value: Fraction) -> None:
        reckoned = exact.like(value)
        try:
            near = self.rounding.nearest(reckoned)
        except AmountError:
            near = reckoned
        self.has_rounded = self.has_rounded or near.value != reckoned.value
        self.instead[_key(exact)] = near

    def said(self, value: AnswerValue) -> AnswerValue:
        """What this pupil has for an answer."""
        return self.instead.get(_key(value), value) if isinstance(value, Amount) else value

    def _expression(self, right: Expression) -> Expression:
        match right:
            case Amount():
                return self.instead.get(_key(right), right)
            case Operation(sign=sign, left=left, right=other):
                return Operation(sign, self._expression(left), self._expression(other))
        raise ValueError("no plain sum")

    def _sentence(self, right: Rich) -> Rich:
        """The same words, with the numbers that this pupil has reached."""
        written = {write(Amount(value, unit)): new for (value, unit), new in self.instead.items()}
        return tuple(write(written[item]) if item in written else item for item in right)


def _key(amount: Amount) -> _Key:
    return (amount.value, amount.unit)
