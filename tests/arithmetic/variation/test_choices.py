"""Ranges and lists of numbers as a teacher types them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.variation.choices import offers_choice, read_choice, typed
from typeset.errors import AmountError
from typeset.quantities.parsing import parse_amount

READ = {
    "12..48 step 12 floats": ["12 floats", "24 floats", "36 floats", "48 floats"],
    "12 floats..14 floats": ["12 floats", "13 floats", "14 floats"],
    "12 .. 50 step 24": ["12", "36"],
    "£1.50..£4 step 50p": ["£1.50", "£2", "£2.50", "£3", "£3.50", "£4"],
    # Without a step, the largest of £1, 50p, 10p, 5p and 1p that leads from end to end.
    "£1.50..£3": ["£1.50", "£2", "£2.50", "£3"],
    "20p..50p": ["20p", "30p", "40p", "50p"],
    "0.5..2 step 0.5 kg": ["0.5 kg", "1 kg", "1.5 kg", "2 kg"],
    "1..2 step 0.5 m": ["1 m", "1.5 m", "2 m"],
    "2.3..2.6 m": ["2.3 m", "2.4 m", "2.5 m", "2.6 m"],
    "80 cm..1 m step 10 cm": ["80 cm", "90 cm", "100 cm"],
    "1/2..1 1/2 step 1/4": ["1/2", "3/4", "1", "1 1/4", "1 1/2"],
    "9:30..11:00 step 30 min": ["9:30", "10:00", "10:30", "11:00"],
    "09:00..10:30": ["09:00", "09:30", "10:00", "10:30"],
    "1 h 40 min..2 h step 10 min": ["1 h 40 min", "1 h 50 min", "2 h"],
    "10..30% step 10%": ["10%", "20%", "30%"],
    "1..3 loaves": ["1 loaf", "2 loaves", "3 loaves"],
    "1..2 step 1 float": ["1 float", "2 floats"],
    "12, 18 or 24 floats": ["12 floats", "18 floats", "24 floats"],
    "2 or 3 or 5": ["2", "3", "5"],
    "1,250, 1,500 or 2,000 g": ["1,250 g", "1,500 g", "2,000 g"],
    "£2, £2.50 or £3": ["£2", "£2.50", "£3"],
    "½ or ¾": ["1/2", "3/4"],
    "1 or 2 pots of paint": ["1 pot of paint", "2 pots of paint"],
    "12 or 12 or 18": ["12", "18"],
}
NOT_CHOICES = [
    "12",
    "12 floats",
    "5:2",
    "12:30",
    "2.5 kg",
    "gulls or terns",
    "12 port or starboard lamps",
    "cost = tickets × price",
    "the nearest 10 m",
    "",
    "3 or 4" + " or 5" * 100,
]


@pytest.mark.parametrize("text", READ)
def test_a_choice_and_its_values(text: str) -> None:
    assert offers_choice(text)
    assert [typed(amount) for amount in read_choice(text, {})] == READ[text]


@pytest.mark.parametrize("text", NOT_CHOICES)
def test_what_is_no_choice(text: str) -> None:
    assert not offers_choice(text)


def test_the_authors_own_nouns() -> None:
    values = read_choice("1..2 sea-chandleries", {"sea-chandlery": "sea-chandleries"})
    assert [typed(each) for each in values] == ["1 sea-chandlery", "2 sea-chandleries"]


@settings(max_examples=60, deadline=None)
@given(
    low=st.integers(0, 400),
    length=st.integers(1, 60),
    step=st.integers(1, 9),
    unit=st.sampled_from(["", " floats", " g", "°"]),
)
def test_a_range_has_the_numbers_of_pythons_own(
    low: int, length: int, step: int, unit: str
) -> None:
    high = low + length * step
    values = read_choice(f"{low}..{high} step {step}{unit}", {})
    assert [each.value for each in values] == list(range(low, high + 1, step))
    for each in values:
        again = parse_amount(typed(each))
        assert (again.value, again.unit) == (each.value, each.unit)


def test_values_stay_exact() -> None:
    tenths = read_choice("0.1..0.7 step 0.1", {})
    assert [each.value for each in tenths] == [Fraction(n, 10) for n in range(1, 8)]


@pytest.mark.parametrize("text", ["48..12", "3..3", "1..99999", "1..5 step 0", "1..5 step 9 m"])
def test_ranges_that_lead_nowhere_are_refused(text: str) -> None:
    with pytest.raises(AmountError):
        read_choice(text, {})
