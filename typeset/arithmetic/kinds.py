"""What kind of problem it is, found by asking its own solution function.

Each number of the story is scaled and shifted, and the answer watched: is the ratio kept,
the product, the difference, the sum? Does nothing change? (Four classes after Van Dooren
et al. 2005: proportional, additive, constant, affine; from memory.) The verdict is told
as what the pupil has to decide.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import WithRemainder
from typeset.arithmetic.family import AnyFamily
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.remembering import once_for_each
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich


class Reaction(Enum):
    """How the answer follows when one number of the story changes."""

    RATIO_KEPT = "ratio kept"
    PRODUCT_KEPT = "product kept"
    DIFFERENCE_KEPT = "difference kept"
    SUM_KEPT = "sum kept"
    UNCHANGED = "nothing changes"
    IS_ANSWER = "is the answer itself"
    FIXED_AND_RATE = "a fixed part and a rate"
    MIXED = "a mix"

    # Members are single objects; `Enum` would hash the name anew at every look-up.
    __hash__ = object.__hash__


class Decision(Enum):
    """What the pupil decides."""

    MULTIPLY = "multiply or divide"
    ADD = "add or subtract"
    BOTH = "both"
    NEITHER = "neither"

    # Members are single objects; `Enum` would hash the name anew at every look-up.
    __hash__ = object.__hash__


@dataclass(frozen=True, slots=True)
class Probe:
    """One number of the story, its reaction, and the answers watched for it."""

    name: str
    reaction: Reaction
    given: Amount
    answer: Amount
    # The answer when the given is doubled, and when it grows by one of its unit.
    doubled: Amount | None
    one_more: Amount | None


@dataclass(frozen=True, slots=True)
class Kind:
    """The verdict on a problem, with its reason in this problem's numbers."""

    decision: Decision
    counts_choices: bool
    probes: tuple[Probe, ...]
    reason: Rich


_MULTIPLYING = {Reaction.RATIO_KEPT, Reaction.PRODUCT_KEPT}
_ADDING = {Reaction.DIFFERENCE_KEPT, Reaction.SUM_KEPT}
_SILENT = {Reaction.UNCHANGED, Reaction.IS_ANSWER}
# Two scalings and two shifts tell all the classes apart.
_SCALES = (Fraction(2), Fraction(3))
_SHIFTS = (Fraction(1), Fraction(2))


@once_for_each
def probe_all(family: AnyFamily, problem: Problem[Any]) -> tuple[Probe, ...]:
    """Every number of the story that could be another, probed."""
    return tuple(_probe(family, problem, name) for name in family.probed(problem))


def decide(probes: tuple[Probe, ...]) -> Decision:
    """What the pupil decides, by the reactions of all numbers together."""
    loud = {probe.reaction for probe in probes} - _SILENT
    if not loud:
        return Decision.NEITHER
    if loud <= _MULTIPLYING:
        return Decision.MULTIPLY
    if loud <= _ADDING:
        return Decision.ADD
    return Decision.BOTH


def _probe(family: AnyFamily, problem: Problem[Any], name: str) -> Probe:
    given = problem.given(name)
    watch = _Watch(family, problem, name)
    answer = watch.at(given.value)
    if answer is None:
        raise AmountError("the answer is not a number, so its kind cannot be probed")
    return Probe(
        name=name,
        reaction=_reaction(watch, given, answer),
        given=given,
        answer=answer,
        doubled=watch.at(2 * given.value),
        one_more=watch.at(given.value + 1),
    )


@dataclass(frozen=True, slots=True)
class _Watch:
    """The answer as a function of one number of the story; each value is solved for once."""

    family: AnyFamily
    problem: Problem[Any]
    name: str
    _seen: dict[Fraction, Amount | None] = field(default_factory=dict)

    def at(self, value: Fraction) -> Amount | None:
        """The first answer with the number set to `value`; None where there is none."""
        if value not in self._seen:
            self._seen[value] = self._answer(value)
        return self._seen[value]

    def _answer(self, value: Fraction) -> Amount | None:
        changed = self.problem.with_given(self.name, self.problem.given(self.name).like(value))
        try:
            answers = self.family.smooth(changed)
        except (AmountError, ZeroDivisionError):
            return None
        answer = answers[self.problem.finds[0]]
        if isinstance(answer, WithRemainder):
            return answer.groups
        return answer if isinstance(answer, Amount) else None


def _reaction(watch: _Watch, given: Amount, answer: Amount) -> Reaction:
    scaled = tuple(_base(watch.at(given.value * scale)) for scale in _SCALES)
    shifted = tuple(_base(watch.at(given.value + shift)) for shift in _SHIFTS)
    start = answer.base
    steps = tuple(shift * given.unit.per_base for shift in _SHIFTS)
    if set(scaled) | set(shifted) == {start}:
        return Reaction.UNCHANGED
    keeps_ratio = scaled == tuple(start * scale for scale in _SCALES)
    keeps_difference = shifted == tuple(start + step for step in steps)
    if keeps_ratio and keeps_difference:
        return Reaction.IS_ANSWER
    if keeps_ratio:
        return Reaction.RATIO_KEPT
    if scaled == tuple(start / scale for scale in _SCALES):
        return Reaction.PRODUCT_KEPT
    if keeps_difference:
        return Reaction.DIFFERENCE_KEPT
    if shifted == tuple(start - step for step in steps):
        return Reaction.SUM_KEPT
    one, two = shifted
    if one is not None and two is not None and two - start == 2 * (one - start):
        return Reaction.FIXED_AND_RATE
    return Reaction.MIXED


def _base(amount: Amount | None) -> Fraction | None:
    return amount.base if amount is not None else None
