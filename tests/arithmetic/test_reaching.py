"""A working has to come to the answer that it claims, in whatever way it says it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer, WithRemainder
from typeset.arithmetic.equations import (
    Expression,
    Parts,
    Remainder,
    Unknown,
    equation,
    over,
    plus,
    times,
)
from typeset.arithmetic.reaching import reaches
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import number
from typeset.quantities.parsing import parse_amount

GULLS = parse_amount("60 gulls")


def says(sentence: str, *sides: Expression) -> tuple[Step, ...]:
    return (step(sentence, equation(*sides) if sides else None),)


@pytest.mark.parametrize(
    ("steps", "answer", "reached"),
    [
        (says("Multiply.", times(number(5), number(12)), number(60)), GULLS, True),
        (says("Multiply.", times(number(5), number(11)), number(55)), GULLS, False),
        (says("So there are 60 gulls."), GULLS, True),
        (says("So there are 160 gulls."), GULLS, False),
        (says("Check.", plus(number(60), number(3)), number(63)), GULLS, True),
        (says("Box.", times(Unknown(), number(3)), number(180)), GULLS, False),
        (
            says("Metres.", parse_amount("150 cm"), parse_amount("1500 mm")),
            parse_amount("1.5 m"),
            True,
        ),
        (
            says("Divide.", over(number(26), number(8)), Remainder(number(3), number(2))),
            WithRemainder(parse_amount("3 boats"), parse_amount("2 people")),
            True,
        ),
        (
            says("Divide.", over(number(25), number(8)), Remainder(number(3), number(1))),
            WithRemainder(parse_amount("3 boats"), parse_amount("2 people")),
            False,
        ),
        (
            says("Simplify.", Parts((number(2), number(8))), Parts((number(1), number(4)))),
            RatioAnswer((Fraction(1), Fraction(4))),
            True,
        ),
        (says("So 1 gull for every 4 terns."), RatioAnswer((Fraction(1), Fraction(4))), True),
        (says("So 4 gulls for every 1 tern."), RatioAnswer((Fraction(1), Fraction(4))), False),
        (says("So the red tin holds more."), NameAnswer("the red tin"), True),
        (says("So the blue tin holds more."), NameAnswer("the red tin"), False),
        (says("After midnight.", number(1450)), parse_amount("0:10"), True),
        ((), GULLS, False),
    ],
)
def test_reaches(steps: tuple[Step, ...], answer: AnswerValue, reached: bool) -> None:
    assert reaches(steps, answer) is reached
