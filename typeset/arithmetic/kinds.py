"""What kind of problem it is, found by asking its own solution function.

Each number of the story is scaled and shifted, and the answer watched: is the ratio kept,
the product, the difference, the sum? Does nothing change? (Four classes after Van Dooren
et al. 2005: proportional, additive, constant, affine; from memory.) The verdict is told
as what the pupil has to decide.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from functools import cached_property
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
        doubled=watch.doubled,
        one_more=watch.one_more,
    )


# Without slots, which would leave no room for what is solved once and looked at again.
@dataclass(frozen=True)
class _Watch:
    """The answer as a function of one number of the story; None where there is no answer."""

    family: AnyFamily
    problem: Problem[Any]
    name: str

    @cached_property
    def doubled(self) -> Amount | None:
        """The answer where the number is twice as large."""
        return self.at(2 * self.problem.given(self.name).value)

    @cached_property
    def trebled(self) -> Amount | None:
        """The answer where the number is three times as large."""
        return self.at(3 * self.problem.given(self.name).value)

    @cached_property
    def one_more(self) -> Amount | None:
        """The answer where the number is larger by one of its unit."""
        return self.at(self.problem.given(self.name).value + 1)

    @cached_property
    def two_more(self) -> Amount | None:
        """The answer where the number is larger by two of its unit."""
        return self.at(self.problem.given(self.name).value + 2)

    def at(self, value: Fraction) -> Amount | None:
        """The first answer with the number set to `value`."""
        given = self.problem.given(self.name)
        other = given.like(value)
        if value == given.value and _looks_like(other, given):
            return _first_answer(self.family, self.problem)
        return _answer(self.family, self.problem.with_given(self.name, other))


def _looks_like(one: Amount, other: Amount) -> bool:
    return (one.form, one.places, one.parts) == (other.form, other.places, other.parts)


def _answer(family: AnyFamily, problem: Problem[Any]) -> Amount | None:
    try:
        answers = family.smooth(problem)
    except (AmountError, ZeroDivisionError):
        return None
    answer = answers[problem.finds[0]]
    if isinstance(answer, WithRemainder):
        return answer.groups
    return answer if isinstance(answer, Amount) else None


@once_for_each
def _first_answer(family: AnyFamily, problem: Problem[Any]) -> Amount | None:
    """With the numbers as they are, which every probe begins with."""
    return _answer(family, problem)


def _reaction(watch: _Watch, given: Amount, answer: Amount) -> Reaction:
    """Two scalings and two shifts tell all the classes apart; the second of each is solved
    for only where the first leaves it open."""
    start, step = answer.base, given.unit.per_base
    doubled, one_more = _base(watch.doubled), _base(watch.one_more)
    if doubled == start == one_more and _base(watch.trebled) == start == _base(watch.two_more):
        return Reaction.UNCHANGED
    keeps_ratio = doubled == 2 * start and _base(watch.trebled) == 3 * start
    keeps_difference = one_more == start + step and _base(watch.two_more) == start + 2 * step
    if keeps_ratio and keeps_difference:
        return Reaction.IS_ANSWER
    if keeps_ratio:
        return Reaction.RATIO_KEPT
    if doubled == start / 2 and _base(watch.trebled) == start / 3:
        return Reaction.PRODUCT_KEPT
    if keeps_difference:
        return Reaction.DIFFERENCE_KEPT
    if one_more == start - step and _base(watch.two_more) == start - 2 * step:
        return Reaction.SUM_KEPT
    two_more = _base(watch.two_more)
    if one_more is not None and two_more is not None and two_more - start == 2 * (one_more - start):
        return Reaction.FIXED_AND_RATE
    return Reaction.MIXED


def _base(amount: Amount | None) -> Fraction | None:
    return amount.base if amount is not None else None
