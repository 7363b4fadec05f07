"""Workings: the steps a pupil would write, right ones and wrong ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import FrozenInstanceError, dataclass
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Equation
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say


class Step:
    """One line of a working: a sentence that gives the reason, and its equation if any.

    A value like any frozen dataclass. Its sentence is put together when it is first read:
    most workings and mistakes that are looked at, for other numbers above all, are never told.
    """

    __slots__ = ("_sentence", "_template", "_values", "equation")

    _sentence: Rich | None
    _template: str
    _values: Mapping[str, Amount | Rich | str]
    equation: Equation | None

    def __init__(self, sentence: Rich, equation: Equation | None = None) -> None:
        self._set(sentence, "", _NOTHING, equation)

    def _set(
        self,
        sentence: Rich | None,
        template: str,
        values: Mapping[str, Amount | Rich | str],
        equation: Equation | None,
    ) -> None:
        keep = object.__setattr__
        keep(self, "_sentence", sentence)
        keep(self, "_template", template)
        keep(self, "_values", values)
        keep(self, "equation", equation)

    @classmethod
    def told(
        cls,
        template: str,
        values: Mapping[str, Amount | Rich | str],
        equation: Equation | None,
    ) -> Step:
        """A step whose sentence is the template with the values put in for its `{names}`."""
        made = cls.__new__(cls)
        made._set(None, template, values, equation)
        return made

    @property
    def sentence(self) -> Rich:
        """The words of the line."""
        if self._sentence is None:
            object.__setattr__(self, "_sentence", say(self._template, **self._values))
        assert self._sentence is not None
        return self._sentence

    def __setattr__(self, name: str, _value: object) -> None:
        raise FrozenInstanceError(f"cannot assign to field {name!r}")

    def __getstate__(self) -> tuple[Rich, Equation | None]:
        return self.sentence, self.equation

    def __setstate__(self, state: tuple[Rich, Equation | None]) -> None:
        sentence, equation = state
        self._set(sentence, "", _NOTHING, equation)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Step):
            return NotImplemented
        return (self.sentence, self.equation) == (other.sentence, other.equation)

    def __hash__(self) -> int:
        return hash((self.sentence, self.equation))

    def __repr__(self) -> str:
        return f"Step(sentence={self.sentence!r}, equation={self.equation!r})"


_NOTHING: Mapping[str, Amount | Rich | str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Working:
    """A way of solving: the strategy's name as printed, its steps, and the answers it reaches."""

    strategy: str
    steps: tuple[Step, ...]
    answers: Mapping[str, AnswerValue]


@dataclass(frozen=True, slots=True)
class MistakenWorking:
    """A wrong way of solving in a pupil's manner.

    `misconception` is a name in `misconceptions.py`. Its equations are true unless
    `slip` is set: the pupil reckons rightly in a wrong method.
    """

    misconception: str
    steps: tuple[Step, ...]
    answers: Mapping[str, AnswerValue]
    slip: bool = False


def step(template: str, result: Equation | None = None, /, **values: Amount | Rich | str) -> Step:
    """A step whose sentence has amounts put in for its `{names}`."""
    return Step.told(template, values, result)
