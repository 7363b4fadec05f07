"""One set of numbers on trial: built, and solved only as far as somebody asks."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from functools import cached_property
from typing import Any, Generic, TypeVar, overload

from pydantic import ValidationError

from typeset.arithmetic.answers import AnswerValue, WithRemainder, same_answer
from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.family import AnyFamily, Family
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.reasons import kind_of
from typeset.arithmetic.sense import check_answers
from typeset.arithmetic.solving import Solution, solve
from typeset.arithmetic.workings import Working
from typeset.errors import AmountError, SolvingError
from typeset.quantities.amount import Amount
from typeset.reading.complaints import complaints_of
from typeset.reading.content import ProblemContent
from typeset.reading.tree import bare

# How the names of written methods begin.
_WRITTEN = ("Column ", "Short ", "Long ")


T = TypeVar("T")


class _Kept(Generic[T]):
    """A property worked out once, like `cached_property`, but an AmountError is kept as well:
    a set that makes no sense comes up again and again in a search."""

    def __init__(self, make: Callable[[Trial], T]) -> None:
        self.make = make
        self.__doc__ = make.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, trial: None, owner: type) -> _Kept[T]: ...
    @overload
    def __get__(self, trial: Trial, owner: type) -> T: ...
    def __get__(self, trial: Trial | None, owner: type) -> _Kept[T] | T:
        if trial is None:
            return self
        if self.name in trial.errors:
            raise trial.errors[self.name].with_traceback(None)
        try:
            made = self.make(trial)
        except AmountError as error:
            trial.errors[self.name] = error
            raise
        # The next look-up finds it here, before this property.
        trial.__dict__[self.name] = made
        return made


class Trial:
    """A problem with fixed numbers, and what it comes to.

    The properties are worked out when first asked for, since most sets fall at the first
    and cheapest question. All but `family` raise AmountError where the numbers make no sense.
    """

    def __init__(self, content: ProblemContent) -> None:
        self.content = content
        # What was raised when a property was first asked for, by its name.
        self.errors: dict[str, AmountError] = {}
        self._verdicts: dict[Callable[[Trial], bool], bool] = {}
        self._ways_begun: tuple[list[Working], Iterator[Working]] | None = None

    def verdict(self, test: Callable[[Trial], bool]) -> bool:
        """What the test says of this trial, asked once. Raises what the test raises."""
        if test not in self._verdicts:
            self._verdicts[test] = test(self)
        return self._verdicts[test]

    @cached_property
    def family(self) -> AnyFamily | None:
        """The problem's structure; None where nobody knows it."""
        return FAMILIES.get(self.content.structure)

    @_Kept
    def problem(self) -> Problem[Any]:
        """The family's problem."""
        family = self._known_family()
        fields = self.content.fields
        model = family.fields_model
        try:
            checked = model.model_validate(bare(fields), context={"nouns": self.content.nouns})
        except ValidationError as error:
            first = min(complaints_of(error, fields, model.keys()))
            raise AmountError(first.problem, first.remedy) from None
        return family.build(checked)

    @_Kept
    def related(self) -> Mapping[str, AnswerValue]:
        """The answers by the relation alone."""
        try:
            return self._known_family().relation(self.problem)
        except ZeroDivisionError:
            raise AmountError("solving it divides by 0") from None

    @_Kept
    def answers(self) -> Mapping[str, AnswerValue]:
        """The answers by the relation alone, checked to make sense."""
        check_answers(self.problem, self.related)
        return self.related

    @_Kept
    def ways(self) -> tuple[Working, ...]:
        """Every way of solving it, in the family's order."""
        looked_at, others = self._begun()
        self._ways_begun = None
        return (*looked_at, *others)

    def has_way_below(self, demand: Fraction) -> bool:
        """True where some way asks for less; looks at no more of them than it takes to know."""
        if "ways" in self.__dict__:
            return self.demand < demand
        looked_at, others = self._begun()
        if any(demand_of(each) < demand for each in looked_at):
            return True
        # What raises on the way leaves nothing half done: the next to ask begins anew.
        self._ways_begun = None
        for each in others:
            looked_at.append(each)
            if demand_of(each) < demand:
                self._ways_begun = looked_at, others
                return True
        self._ways_begun = looked_at, others
        return False

    def _begun(self) -> tuple[list[Working], Iterator[Working]]:
        """The ways looked at so far, and those still to come."""
        if self._ways_begun is None:
            self._ways_begun = [], iter(self._known_family().strategies(self.problem))
        return self._ways_begun

    @cached_property
    def easiest(self) -> Working:
        """The easiest working, as the solution has it first, but without solving it all."""
        return min(self.ways, key=demand_of)

    @property
    def expected(self) -> tuple[Working, ...]:
        """The easiest working, and the written method where there is one: what a teacher
        expects to see."""
        written = (each for each in self.ways if each.strategy.startswith(_WRITTEN))
        return (self.easiest, *written)

    @cached_property
    def demand(self) -> Fraction:
        """The demand of the easiest working."""
        return demand_of(self.easiest)

    @_Kept
    def decision(self) -> Decision:
        """What the pupil has to decide, as the solution has it, but without solving it all."""
        return kind_of(self._known_family(), self.problem).decision

    @_Kept
    def solution(self) -> Solution:
        """All that is known of it. Numbers at which our own guard stops are no numbers to use."""
        try:
            return solve(self._known_family(), self.problem, self.related, self.ways)
        except SolvingError as error:
            raise AmountError(str(error)) from error
        except ZeroDivisionError:
            raise AmountError("solving it divides by 0") from None

    @_Kept
    def leaves_rest(self) -> bool:
        """True where something is left over, whatever the answer does with it."""
        return _leaves_rest(self._known_family(), self.problem, self.answers)

    def why_not_built(self) -> str:
        """Why the family does not take these fields; empty where it does."""
        try:
            _ = self.problem
        except AmountError as error:
            return error.problem
        return ""

    def why_no_sense(self) -> str:
        """Why these numbers cannot stand; empty where they can."""
        try:
            _ = self.answers, self.solution
        except AmountError as error:
            return error.problem
        return ""

    def _known_family(self) -> AnyFamily:
        if self.family is None:
            raise AmountError(f"unknown structure '{self.content.structure}'")
        return self.family


def _leaves_rest(
    family: AnyFamily, problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> bool:
    if any(isinstance(each, WithRemainder) and each.rest.value for each in answers.values()):
        return True
    if type(family).smooth is Family.smooth:
        # It would be the relation over again.
        return False
    try:
        smooth = family.smooth(problem)
    except AmountError:
        return False
    # Before rounding the answer is no whole number, and rounding made another of it.
    return any(
        isinstance(exact, Amount) and not exact.is_whole and not same_answer(exact, answers[name])
        for name, exact in smooth.items()
        if name in answers
    )
