"""Marking each kind of answer by itself, where no family is needed. Common practice of markers."""

from __future__ import annotations

from fractions import Fraction

import pytest

from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer, WithRemainder
from typeset.arithmetic.diagnosis.marking import mark
from typeset.arithmetic.diagnosis.verdicts import Verdict
from typeset.arithmetic.diagnosis.written import readings_of
from typeset.quantities.parsing import parse_amount

AFTERNOON = parse_amount("15:05")
EIGHTY = parse_amount("80 min")
# 2017 paper 2 question 22: 1:4; 2:8 and 0.5:2 accepted, 4:1 not (order matters).
ONE_TO_FOUR = RatioAnswer((Fraction(1), Fraction(4)))
RED = NameAnswer("the red tin")
BUSES = WithRemainder(parse_amount("3 buses"), parse_amount("2 people"))


@pytest.mark.parametrize(
    ("answer", "text", "verdict"),
    [
        (AFTERNOON, "15:05", Verdict.RIGHT),
        (AFTERNOON, "15.05", Verdict.RIGHT),
        (AFTERNOON, "3:05 pm", Verdict.RIGHT),
        (AFTERNOON, "at 3.05p.m.", Verdict.RIGHT),
        (AFTERNOON, "5 past 3 pm", Verdict.RIGHT),
        (AFTERNOON, "3:05", Verdict.UNIT_MISSING),
        (AFTERNOON, "3:05 am", Verdict.UNIT_WRONG),
        (AFTERNOON, "3:15", None),
        (parse_amount("9:45"), "quarter to 10", Verdict.RIGHT),
        (parse_amount("12:00"), "noon", Verdict.RIGHT),
        (parse_amount("16:00"), "4 o'clock", Verdict.UNIT_MISSING),
        (EIGHTY, "1 h 20 min", Verdict.RIGHT),
        (EIGHTY, "1 hour and 20 minutes", Verdict.RIGHT),
        (EIGHTY, "1 hr 20", Verdict.RIGHT),
        (EIGHTY, "80", Verdict.UNIT_MISSING),
        (EIGHTY, "1:20", Verdict.UNIT_MISSING),
        (EIGHTY, "1 1/3 hours", Verdict.RIGHT),
        (EIGHTY, "80 seconds", Verdict.UNIT_WRONG),
        (ONE_TO_FOUR, "1:4", Verdict.RIGHT),
        (ONE_TO_FOUR, "1 to 4", Verdict.RIGHT),
        (ONE_TO_FOUR, "2:8", Verdict.NOT_SIMPLEST),
        (ONE_TO_FOUR, "0.5 : 2", Verdict.NOT_SIMPLEST),
        (ONE_TO_FOUR, "4:1", None),
        (ONE_TO_FOUR, "1:4:1", None),
        (RED, "the red tin", Verdict.RIGHT),
        (RED, "Red.", Verdict.RIGHT),
        (RED, "It is the red tin because it costs less", Verdict.RIGHT),
        (RED, "not the red tin", None),
        (RED, "tin", None),
        (RED, "the blue tin", None),
        (NameAnswer("equal"), "They are the same.", Verdict.RIGHT),
        (NameAnswer("equal"), "red", None),
        (BUSES, "3 r 2", Verdict.RIGHT),
        (BUSES, "3 buses r 2", Verdict.RIGHT),
        (BUSES, "3 remainder 2", Verdict.RIGHT),
        (BUSES, "3 buses and 2 people left over", Verdict.RIGHT),
        (BUSES, "3", Verdict.PART_RIGHT),
        (BUSES, "2 r 3", None),
        (parse_amount("-4 °C"), "-4 °C", Verdict.RIGHT),
        (parse_amount("-4 °C"), "4 °C", None),
        (parse_amount("25%"), "25", Verdict.UNIT_MISSING),
        (parse_amount("25%"), "1/4", Verdict.RIGHT),
        (parse_amount("3 pounds of flour"), "3 pounds", Verdict.RIGHT),
    ],
)
def test_marks(answer: AnswerValue, text: str, verdict: Verdict | None) -> None:
    given = mark(readings_of(text), answer)
    assert (given.verdict if given is not None else None) is verdict


def test_a_fraction_over_nothing_is_no_number() -> None:
    assert mark(readings_of("1/0"), parse_amount("1")) is None
