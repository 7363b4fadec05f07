"""Values near a fixed number: its size, its roundness, its kind."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.variation.around import values_around
from typeset.arithmetic.variation.choices import typed
from typeset.arithmetic.variation.wishes import Wish
from typeset.quantities.parsing import parse_amount

NEW = {
    "2": ["3", "4"],
    "6 crates": [f"{n} crates" for n in (3, 4, 5, 7, 8, 9, 10, 11, 12)],
    "25": ["15", "20", "30", "35", "40"],
    "50p": ["30p", "40p", "60p", "70p", "80p"],
    # A banknote becomes its neighbour (£5, £10, £20 and £50 are the notes).
    "£20": ["£10", "£50"],
    "£4.50": ["£3", "£3.50", "£4", "£5", "£5.50", "£6", "£6.50", "£7"],
    "2.5 kg": ["1.5 kg", "2 kg", "3 kg", "3.5 kg", "4 kg"],
    "2 1/2": ["1 1/2", "3 1/2", "4 1/2"],
    "1/3": ["1/4", "1/2"],
    "3/5": ["2/5", "3/4", "4/5", "5/6"],
    "25%": ["50%", "75%"],
    "10%": [f"{n}%" for n in range(20, 100, 10)],
    "15:30": [*("12:30", "13:00", "13:30", "14:00", "14:30"), *("15:00", "16:00", "16:30"),
              *("17:00", "17:30", "18:00", "18:30")],
    "1 h 30 min": ["30 min", "1 h", "2 h", "2 h 30 min"],
}  # fmt: skip


@pytest.mark.parametrize("text", NEW)
def test_new_values(text: str) -> None:
    assert [typed(each) for each in values_around(parse_amount(text), Wish.NEW)] == NEW[text]


@pytest.mark.parametrize("text", ["1 float", "0", "-3 °C"])
def test_numbers_that_had_better_stay(text: str) -> None:
    assert values_around(parse_amount(text), Wish.NEW) == ()


def amounts() -> st.SearchStrategy[str]:
    """Numbers as teachers type them."""
    wholes = st.integers(1, 5000).map(lambda n: f"{n} floats")
    tens = st.integers(1, 90).map(lambda n: f"{n * 10} g")
    money = st.integers(1, 400).map(lambda n: f"£{n // 20}.{n % 20 * 5:02d}")
    decimals = st.integers(1, 99).map(lambda n: f"{n // 10}.{n % 10} m")
    percents = st.integers(1, 99).map(lambda n: f"{n}%")
    fractions = st.tuples(st.integers(1, 11), st.integers(2, 12)).map(lambda p: f"{p[0]}/{p[1]}")
    return st.one_of(wholes, tens, money, decimals, percents, fractions)


@settings(max_examples=150, deadline=None)
@given(amounts(), st.sampled_from([Wish.NEW, Wish.EASIER, Wish.HARDER]))
def test_laws_of_size(text: str, wish: Wish) -> None:
    amount = parse_amount(text)
    values = values_around(amount, wish)
    assert len(values) <= 60
    for each in values:
        assert each.value > 0
        assert each.value != amount.value
        assert each.unit == amount.unit
        assert parse_amount(typed(each)).same_as(each)
        if wish is Wish.EASIER:
            assert each.value < amount.value
        if wish is Wish.HARDER:
            assert each.value > amount.value


@settings(max_examples=60, deadline=None)
@given(st.integers(13, 400), st.integers(1, 3))
def test_round_numbers_stay_round(count: int, noughts: int) -> None:
    """So many noughts at the end, so many again; only 2 and 3 with noughts may end on 5."""
    value = count * 10**noughts
    for each in values_around(parse_amount(str(value)), Wish.NEW):
        assert each.value % (10 ** (noughts - 1) * 5) == 0
        if count % 10:
            assert each.value % 10**noughts == 0


@settings(deadline=None)
@given(st.integers(1, 99))
def test_pence_stay_pence(pence: int) -> None:
    for each in values_around(parse_amount(f"{pence}p"), Wish.HARDER):
        assert Fraction(each.value * 100).denominator == 1
