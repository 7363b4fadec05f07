"""What a structure of problems must be able to do. One file a family, in `families/`."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, ClassVar, Generic, TypeVar

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.fields import FamilyFields
from typeset.arithmetic.figures import Figure
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.quotes import Quote
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.quantities.inline import Rich

F = TypeVar("F", bound=FamilyFields)


class Family(ABC, Generic[F]):
    """A structure of word problems.

    The relation and the strategies are two separate ways to the answer. They share no
    reckoning, so that each guards the other.
    """

    # As typed after `structure:`.
    name: ClassVar[str]
    fields_model: type[F]

    @abstractmethod
    def build(self, fields: F) -> Problem[F]:
        """The problem of these checked fields.

        Raises AmountError where the fields do not go together.
        """

    @abstractmethod
    def relation(self, problem: Problem[F]) -> Mapping[str, AnswerValue]:
        """The answers by the equations (or the enumeration) that state the structure.

        Raises AmountError where these numbers have no single answer.
        """

    @abstractmethod
    def strategies(self, problem: Problem[F]) -> Iterator[Working]:
        """The ways a pupil would solve it, each written out."""

    @abstractmethod
    def mistakes(self, problem: Problem[F]) -> Iterator[MistakenWorking]:
        """The wrong ways that the structure invites; unusable ones are sifted out later."""

    def figure(self, problem: Problem[F], answers: Mapping[str, AnswerValue]) -> Figure | None:
        """The model to draw, or None where none helps."""
        return None

    def probed(self, problem: Problem[F]) -> Iterable[str]:
        """The givens that could be other amounts in the same story."""
        return tuple(name for name in problem.givens if name not in problem.fields.facts)

    def smooth(self, problem: Problem[F]) -> Mapping[str, AnswerValue]:
        """The answers before any rounding to whole groups, for finding the kind."""
        return self.relation(problem)

    def reason(self, problem: Problem[F]) -> Rich | None:
        """What tells the kind, where this family says it better than its probes; the verdict
        is added. None leaves it to the probes."""
        return None

    def counts_choices(self, problem: Problem[F]) -> bool:
        """True where the answer is a number of ways to choose."""
        return False

    def is_search(self, problem: Problem[F]) -> bool:
        """True where no sum leads to the answer: it is found by listing and striking out."""
        return False

    def quotes(self, problem: Problem[F]) -> Mapping[str, Quote]:
        """Texts that the story may mention by a name, besides the givens."""
        return {}


AnyFamily = Family[Any]
