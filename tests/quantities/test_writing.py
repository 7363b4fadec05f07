"""Amounts as they are written: NIST SP 811 and British school custom."""

from fractions import Fraction

import pytest

from typeset.quantities.amount import Amount, Form, number
from typeset.quantities.inline import Blank, Equals, MissingBox, Solid, Stacked, Words, join, plain
from typeset.quantities.nouns import counted
from typeset.quantities.units import CLOCK, NUMBER, PERCENT, POUND, UNITS, noun
from typeset.quantities.writing import (
    NO_BREAK,
    decimal,
    exact,
    mixed_number,
    say,
    whole,
    write,
    write_plain,
)

TERN = noun("tern", "terns")

WRITTEN = [
    (Amount(Fraction(0), TERN), "0 terns"),
    (Amount(Fraction(1), TERN), "1 tern"),
    (Amount(Fraction(-1), TERN), "−1 tern"),
    (Amount(Fraction(2), TERN), "2 terns"),
    (Amount(Fraction(1, 2), TERN), "1/2 tern"),
    (Amount(Fraction(3, 2), TERN), "1 1/2 terns"),
    (Amount(Fraction(1), UNITS["h"]), "1 h"),
    (Amount(Fraction(1), UNITS["hour"]), "1 hour"),
    (Amount(Fraction(5, 2), UNITS["hour"]), "2 1/2 hours"),
    (Amount(Fraction(5, 2), UNITS["kg"]), "2.5 kg"),
    (Amount(Fraction(1, 3), UNITS["kg"]), "1/3 kg"),
    (Amount(Fraction(45, 2), UNITS["°"]), "22.5°"),
    (Amount(Fraction(100, 3), PERCENT), "33 1/3%"),
    (Amount(Fraction(90), UNITS["min"], Form.COMPOUND), "1 h 30 min"),
    (Amount(Fraction(120), UNITS["min"], Form.COMPOUND), "2 h"),
    (Amount(Fraction(5, 2), UNITS["h"], Form.COMPOUND), "2 h 30 min"),
    (Amount(Fraction(9, 2), UNITS["week"], Form.COMPOUND), "4 weeks 3.5 days"),
    (Amount(Fraction(7), UNITS["mile"], Form.COMPOUND), "7 miles"),
    (Amount(Fraction(0), UNITS["min"], Form.COMPOUND), "0 min"),
    (Amount(Fraction(0), POUND), "£0"),
    (Amount(Fraction(1, 100), POUND), "1p"),
    (Amount(Fraction(99, 100), POUND), "99p"),
    (Amount(Fraction(1), POUND), "£1"),
    (Amount(Fraction(11, 10), POUND), "£1.10"),
    (Amount(Fraction(-1, 4), POUND), "−25p"),
    (Amount(Fraction(-5, 4), POUND), "−£1.25"),
    (Amount(Fraction(13, 8), POUND), "162.5p"),
    (Amount(Fraction(4, 3), POUND), "£1 1/3"),
    (Amount(Fraction(1000), POUND), "£1,000"),
    (Amount(Fraction(605), CLOCK), "10:05"),
    (Amount(Fraction(1211, 2), CLOCK), "10:05:30"),
    (Amount(Fraction(10_000)), "10,000"),
    (Amount(Fraction(2469, 2)), "1,234 1/2"),
    (Amount(Fraction(2469, 2), form=Form.DECIMAL), "1,234.5"),
    (Amount(Fraction(3, 2), form=Form.FRACTION, places=4), "1 2/4"),
    (Amount(Fraction(1, 3), form=Form.FRACTION, places=4), "1/3"),
]


@pytest.mark.parametrize(("amount", "text"), WRITTEN, ids=[text for _amount, text in WRITTEN])
def test_written(amount: Amount, text: str) -> None:
    assert write_plain(amount) == text


@pytest.mark.parametrize(
    ("unit", "text"),
    # NIST SP 811 s. 7.2: a space between number and unit, but for the degree of angle;
    # degrees Celsius have it. The per cent sign without one is common practice, no source.
    [("kg", "5 kg"), ("°C", "5 °C"), ("°", "5°"), ("m²", "5 m²"), ("%", "5%")],
)
def test_space_before_the_unit_never_breaks(unit: str, text: str) -> None:
    (solid,) = (write(Amount(Fraction(5), UNITS[unit])),)
    assert "".join(str(piece) for piece in solid.pieces) == text.replace(" ", NO_BREAK)


def test_two_words_of_a_unit_never_part() -> None:
    pieces = write(Amount(Fraction(3), counted("pots of paint", False))).pieces
    assert " " not in "".join(str(piece) for piece in pieces)


def test_fractions_are_stacked() -> None:
    assert write(Amount(Fraction(11, 4))).pieces == ("2", Stacked("3", "4"))
    assert write(Amount(Fraction(-1, 4))).pieces == ("−", Stacked("1", "4"))


EXACT = [
    (number("2.5"), "2.5"),
    (number("7/2").written_as(Form.FRACTION), "7/2"),
    (number("1/3"), "1/3"),
    (number(-1250), "-1250"),
    (Amount(Fraction(-5, 2), POUND), "-2.5"),
    (Amount(Fraction(605), CLOCK), "10:05"),
]


@pytest.mark.parametrize(("amount", "text"), EXACT, ids=[text for _amount, text in EXACT])
def test_exact_values_for_programs(amount: Amount, text: str) -> None:
    assert exact(amount) == text
    assert ":" in text or Fraction(text) == amount.value


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        ("1/8", 0, "0.125"),
        ("1/2", 2, "0.50"),
        ("3", 0, "3"),
        ("3", 1, "3.0"),
        ("-1234567/1000", 0, "−1,234.567"),
        ("1/3", 0, None),
        ("1/6", 5, None),
    ],
)
def test_decimals_are_exact_or_none(value: str, places: int, text: str | None) -> None:
    assert decimal(Fraction(value), places) == text


def test_zero_as_a_mixed_number() -> None:
    assert list(mixed_number(Fraction(0))) == ["0"]


def test_whole_numbers_have_a_true_minus_and_commas() -> None:
    assert whole(-1250) == "−1,250"


class TestAmounts:
    def test_form_takes_no_part_in_comparing(self) -> None:
        assert number("1/2") == number("1/2").written_as(Form.FRACTION)
        assert hash(number("1/2")) == hash(number("1/2").written_as(Form.DECIMAL))
        assert Amount(Fraction(60), UNITS["min"]) != Amount(Fraction(1), UNITS["h"])

    def test_things_counted_and_numbers_compare_by_value(self) -> None:
        assert Amount(Fraction(3), TERN).same_as(number(3))
        assert not Amount(Fraction(3), TERN).same_as(Amount(Fraction(3), UNITS["kg"]))
        assert Amount(Fraction(60), UNITS["min"]).same_as(Amount(Fraction(1), UNITS["h"]))

    def test_another_value_is_written_by_custom(self) -> None:
        typed = Amount(Fraction(80), UNITS["min"], Form.COMPOUND)
        assert write_plain(typed.like(90)) == "90 min"
        assert write_plain(Amount(Fraction(5, 2), POUND, Form.PENCE).like(5)) == "£5"
        assert write_plain(Amount(Fraction(545), CLOCK, places=2).like(600)) == "10:00"
        assert write_plain(Amount(Fraction(1, 2), NUMBER, Form.FRACTION, 4).like(3)) == "3"


class TestSentences:
    def test_amounts_and_texts_are_put_in(self) -> None:
        said = say("{n} is {word}.", n=Amount(Fraction(5, 2), UNITS["kg"]), word="enough")
        assert plain(said) == "2.5 kg is enough."
        assert said == (Solid((f"2.5{''}", f"{NO_BREAK}kg")), Words(" is enough."))

    def test_a_name_that_is_not_given_is_our_mistake(self) -> None:
        with pytest.raises(KeyError):
            say("{n}")

    def test_plain_text(self) -> None:
        equation = Equals(
            (Solid(("6", f"{NO_BREAK}×{NO_BREAK}", MissingBox())), Solid(("72",))), ("=",)
        )
        assert (
            plain((Words("So "), equation, Words(", or "), Blank())) == "So 6 × [ ] = 72, or ____"
        )
        assert plain((Solid(("2", Stacked("3", "4"))),)) == "2 3/4"
        assert plain(join([(Words("a"),), (Words("b"),)], ", ")) == "a, b"
