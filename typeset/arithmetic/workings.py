"""Workings: the steps a pupil would write, right ones and wrong ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Equation
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working: a sentence that gives the reason, and its equation if any."""

    sentence: Rich
    equation: Equation | None = None


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
    return Step(say(template, **values), result)
