"""Mistakes that sharing and grouping have in common."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.division import Division, closing
from typeset.arithmetic.equations import equation, minus, over, times
from typeset.arithmetic.methods import is_counted, without_noun
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form


def wrong_operations(problem: Problem[Any], division: Division) -> Iterator[MistakenWorking]:
    """Multiplying or taking away where the total is to be divided."""
    asked, total = problem.finds[0], division.total
    if asked != "left over":
        product = problem.answer(asked, total.value * division.by)
        multiplied = step(
            "It is about groups, so multiply: {product}.",
            equation(
                times(_number(division, total.value), _factor(division)),
                _number(division, product.value),
            ),
            product=product,
        )
        yield MistakenWorking("multiplying instead of dividing", (multiplied,), {asked: product})
    if not is_counted(total) and not division.grouping:
        return
    less = problem.answer(asked, total.value - division.by)
    taken = step(
        "Take one number from the other: {less}.",
        equation(
            minus(_number(division, total.value), _number(division, division.by)),
            _number(division, less.value),
        ),
        less=less,
    )
    yield MistakenWorking("subtracting instead of dividing", (taken,), {asked: less})


def _number(division: Division, value: Fraction) -> Amount:
    """A number as the pupil reckons with it: bare in grouping, where units cancel."""
    if is_counted(division.total):
        return Amount(value)
    return Amount(value, form=Form.DECIMAL) if division.grouping else division.part(value)


def _factor(division: Division) -> Amount:
    return _number(division, division.by) if division.grouping else Amount(division.by)


def nought_left_out(problem: Problem[Any], division: Division) -> Iterator[MistakenWorking]:
    """612 ÷ 6 as 12: the 1 that does not divide leaves no nought behind."""
    quotient = division.quotient
    digits = str(quotient)
    if division.rest or quotient.denominator != 1 or "0" not in digits.strip("0"):
        return
    head = digits.rstrip("0")
    wrong = Fraction(int(head.replace("0", "") + digits[len(head) :]))
    answer = division.said(wrong)
    only = step(
        "Divide digit by digit: {answer}.",
        equation(over(division.total, division.divisor), without_noun(answer)),
        answer=answer,
    )
    asked = problem.finds[0]
    reached: dict[str, AnswerValue] = {asked: problem.answer(asked, wrong)}
    yield MistakenWorking("nought left out of the quotient", (only,), reached, slip=True)


def misread(
    problem: Problem[Any], division: Division, name: str, answer: AnswerValue, last: Step
) -> MistakenWorking:
    """A right division whose remainder is then read wrongly."""
    divided = step(
        "Divide: {saying}, and {rest} left over.",
        closing(division).equation,
        saying=division.saying(division.quotient),
        rest=division.part(division.rest),
    )
    return MistakenWorking(name, (divided, last), {problem.finds[0]: answer})
