"""Answers that make sense, and mistakes that a pupil could make and a teacher could use."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from typeset.arithmetic.answers import AnswerValue, answer_text, same_answer
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.quantities.units import Dimension

_MAY_BE_NEGATIVE = {Dimension.TEMPERATURE, Dimension.NUMBER}


def check_answers(problem: Problem[Any], answers: Mapping[str, AnswerValue]) -> None:
    """Raises AmountError for a part of a person or thing, or less than none of it."""
    for name, answer in answers.items():
        fault = nonsense(answer, problem.fields.may_be_cut)
        if fault:
            raise AmountError(
                f"the answer for '{name}' would be {plain(answer_text(answer))}, {fault}",
                "choose other numbers",
            )


def nonsense(answer: AnswerValue, may_be_cut: bool) -> str:
    """Why the answer makes no sense; empty where it does.

    `may_be_cut` allows a part of a counted thing (half an onion).
    """
    if not isinstance(answer, Amount):
        return ""
    dimension = answer.unit.dimension
    if answer.value < 0 and dimension not in _MAY_BE_NEGATIVE:
        return "which is less than nothing"
    if dimension is Dimension.COUNT and not answer.is_whole and not may_be_cut:
        return f"which is not a whole number of {answer.unit.plural}"
    if dimension is Dimension.MONEY and (answer.value * 100).denominator != 1:
        return "which is not a whole number of pence"
    return ""


def why_not_usable(
    mistake: MistakenWorking, problem: Problem[Any], answers: Mapping[str, AnswerValue]
) -> str:
    """Why this mistake must not be shown with these numbers; empty where it may."""
    reached = {name: value for name, value in mistake.answers.items() if name in answers}
    if all(same_answer(value, answers[name]) for name, value in reached.items()):
        return "it would give the right answer"
    for value in reached.values():
        fault = nonsense(value, problem.fields.may_be_cut)
        if fault:
            return f"it would give {plain(answer_text(value))}, {fault}"
        if isinstance(value, Amount) and value.value == 0:
            return "it would give nothing at all"
    return ""
