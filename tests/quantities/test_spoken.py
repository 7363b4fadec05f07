"""How maths is said aloud, against published rules for it.

The rules are ClearSpeak's (Educational Testing Service: 'ClearSpeak Rules and Preferences', 2016)
and MathSpeak's (gh LLC, after Nemeth), both from memory: a fraction of small whole numbers is said
with an ordinal, any other as 'over'; a missing number is a 'blank'; a sign before a number alone
is 'negative', between two numbers 'minus'; brackets are said in an expression. Where the published
rules are American, British school words stand: 'quarter' for 'fourth', 'bracket' for 'paren'
(glossary of the national curriculum tests, from memory).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.quantities.inline import Equals, MissingBox, Solid, Stacked, plain, words
from typeset.quantities.spoken import is_formula, spoken, spoken_formula, spoken_fraction

SAID = {
    # ClearSpeak, simple fractions: ordinals, singular for one part.
    "1/2": "one half",
    "3/4": "three quarters",
    "2/3": "two thirds",
    "1/3 of 36 kites": "one third of 36 kites",
    "3/2": "three halves",
    "17/20": "17 twentieths",
    "9/100": "nine hundredths",
    # ClearSpeak: 'over' where there is no common ordinal.
    "7/13": "7 over 13",
    "5/64": "5 over 64",
    # Mixed numbers are joined by 'and'.
    "2 3/4 kg": "2 and three quarters kg",
    "£1 1/2": "£1 and one half",
    # Signs.
    "5 × 12 = 60": "5 times 12 equals 60",
    "84 ÷ 7 = 12": "84 divided by 7 equals 12",
    "5 − 2 = 3": "5 minus 2 equals 3",
    "3 − 5 = −2": "3 minus 5 equals negative 2",
    "−4 °C": "negative 4 °C",
    "4 > 3": "4 is greater than 3",
    "1/2 < 3/4": "one half is less than three quarters",
    "5 : 2": "5 to 2",
    "70 ÷ 9 = 7 r 7": "70 divided by 9 equals 7 remainder 7",
    # What is to be filled in, and what is asked.
    "[ ] × 5 = 60": "blank times 5 equals 60",
    "Answer ____ gulls": "Answer blank gulls",
    "84 birds in all, terns ?": "84 birds in all, terns question mark",
    # Powers of units by their names, others as powers.
    "24 cm²": "24 square cm",
    "8 m³": "8 cubic m",
    "5² = 25": "5 squared equals 25",
    "✓": "tick",
    # No maths.
    "How many gulls are there?": "How many gulls are there?",
    "at 12:30 on Tuesday": "at 12:30 on Tuesday",
    "at 45 km/h": "at 45 km/h",
    "a well-known quay – and more": "a well-known quay – and more",
}


@pytest.mark.parametrize("text", SAID)
def test_said_aloud(text: str) -> None:
    assert spoken(text) == SAID[text]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("5 × (2 + 1) = 15", "5 times open bracket 2 plus 1 close bracket equals 15"),
        ("(3 + 4) × 2", "open bracket 3 plus 4 close bracket times 2"),
        ("12 ÷ 1/2 = 24", "12 divided by one half equals 24"),
        ("£2.50 × 4 = £10", "£2.50 times 4 equals £10"),
    ],
)
def test_brackets_are_said_in_a_formula(text: str, said: str) -> None:
    assert spoken_formula(text) == said


def test_brackets_of_running_text_are_not_said() -> None:
    assert spoken("the terns (all of them)") == "the terns (all of them)"


@pytest.mark.parametrize("text", ["5 × 12", "5 − 2", "[ ] + 4 = 9", "3 < 4", "−5 + 2"])
def test_a_sign_makes_a_formula(text: str) -> None:
    assert is_formula(text)


@pytest.mark.parametrize("text", ["12 kg", "−5", "£2.50", "2 3/4", "12:30", "45 km/h", "10–12"])
def test_an_amount_is_no_formula(text: str) -> None:
    assert not is_formula(text)


def test_rich_text_is_said_by_its_plain_form() -> None:
    equation = Equals((Solid((Stacked("3", "4"), " × 12")), Solid((MissingBox(),))), ("=",))
    rich = (*words("So "), equation, *words("."))
    assert spoken(plain(rich)) == "So three quarters times 12 equals blank."


NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}
NUMBERS |= {"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12}
# Written out here a second time, without use of the code.
PARTS = {"half": 2, "halve": 2, "third": 3, "quarter": 4, "fifth": 5, "sixth": 6, "seventh": 7}
PARTS |= {"eighth": 8, "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12, "fifteenth": 15}
PARTS |= {"sixteenth": 16, "twentieth": 20, "hundredth": 100, "thousandth": 1000}


@settings(max_examples=150, deadline=None)
@given(st.integers(1, 2000), st.integers(2, 1100))
def test_what_is_said_is_the_fraction(over: int, under: int) -> None:
    """Heard and written down again, it is the same value."""
    said = spoken_fraction(str(over), str(under))
    if " over " in said:
        first, second = said.split(" over ")
        heard = Fraction(int(first), int(second))
    else:
        count, part = said.split(" ")
        heard = Fraction(NUMBERS.get(count) or int(count), PARTS[part.removesuffix("s")])
        assert part.endswith("s") is (over != 1)
    assert heard == Fraction(over, under)
