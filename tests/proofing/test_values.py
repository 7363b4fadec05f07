"""Printed numbers read back as exact values, by the reader and not by the writer."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.answers import (
    AnswerValue,
    NameAnswer,
    RatioAnswer,
    WithRemainder,
    answer_text,
)
from typeset.proofing.expected import rich_words, value_in
from typeset.proofing.values import says
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Words, plain
from typeset.quantities.units import CELSIUS, CLOCK, DEGREE, NUMBER, PERCENT, POUND, UNITS, noun

TERNS = noun("tern", "terns")
PAINT = noun("pot of blue paint", "pots of blue paint")


def amount(value: str, unit: object = NUMBER, form: Form = Form.AUTO) -> Amount:
    return Amount(Fraction(value), unit, form)  # type: ignore[arg-type]  # the tests' own short way


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("1,250 g", amount("1250", UNITS["g"])),
        ("1,250 g", amount("5/4", UNITS["kg"])),
        ("2 3/4", amount("11/4")),
        ("£2.50", amount("5/2", POUND)),
        ("40p", amount("2/5", POUND)),
        ("12:30", amount("750", CLOCK)),
        ("1 h 20 min", amount("80", UNITS["min"], Form.COMPOUND)),
        ("45°", amount("45", DEGREE)),
        ("\u22125 °C", amount("-5", CELSIUS)),
        ("20%", amount("20", PERCENT)),
        ("7 terns", amount("7", TERNS)),
        ("1 tern", amount("1", TERNS)),
        ("3 pots of blue paint", amount("3", PAINT)),
        ("3 : 14", RatioAnswer((Fraction(3), Fraction(14)))),
        ("86, 2 left over", WithRemainder(amount("86"), amount("2"))),
        ("the larger tin", NameAnswer("the larger tin")),
    ],
)
def test_a_printed_text_says_its_value(text: str, answer: AnswerValue) -> None:
    assert says(text, answer, {})


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("1,205 g", amount("1250", UNITS["g"])),
        ("1,250 kg", amount("1250", UNITS["g"])),
        ("3/2", amount("2/3")),
        ("5", amount("-5")),
        ("£2.05", amount("5/2", POUND)),
        ("40p", amount("40", POUND)),
        ("14 : 3", RatioAnswer((Fraction(3), Fraction(14)))),
        ("the smaller tin", NameAnswer("the larger tin")),
        ("", amount("5")),
    ],
)
def test_another_text_does_not(text: str, answer: AnswerValue) -> None:
    assert not says(text, answer, {})


units = st.sampled_from(
    [NUMBER, TERNS, PAINT, POUND, PERCENT, DEGREE, UNITS["kg"], UNITS["litre"], UNITS["cm²"]]
)
values = st.fractions(0, 100_000, max_denominator=16)


@given(values, units, st.sampled_from([Form.AUTO, Form.FRACTION, Form.DECIMAL]))
@settings(max_examples=150)
def test_every_amount_that_is_written_can_be_read(
    value: Fraction, unit: object, form: Form
) -> None:
    if unit is POUND:
        value = value.limit_denominator(1) + Fraction(value.numerator % 100, 100)
    written = Amount(value, unit, form)  # type: ignore[arg-type]  # drawn from units
    assert says(plain(answer_text(written)), written, {})


def test_a_value_is_found_within_its_words() -> None:
    rich = (Words("Are (all "), *answer_text(amount("11/4", UNITS["kg"])), Words(") for Nell?"))
    value = value_in(rich, 1, amount("11/4", UNITS["kg"]))
    assert value is not None
    text = " ".join(rich_words(rich)[value.first : value.last + 1])
    assert text[value.lead : len(text) - value.trail] == "2.75 kg"
