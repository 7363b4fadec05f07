"""Stated roundings against Python's decimal module (ROUND_HALF_UP), and problems that use them."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from tests.arithmetic.random_problems import solved, value_of
from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.equations import Equation
from typeset.arithmetic.rounding import read_rounding
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount


def text_of(solution: Solution, name: str) -> str:
    return plain(answer_text(solution.answers[name])).replace("\u00a0", " ")


def wrong(solution: Solution) -> dict[str, str]:
    return {
        each.misconception: plain(answer_text(next(iter(each.answers.values())))).replace(
            "\u00a0", " "
        )
        for each in solution.mistakes
    }


def sentences(solution: Solution) -> list[str]:
    told = [plain(each.sentence) for working in solution.workings for each in working.steps]
    return [each.replace("\u00a0", " ") for each in told]


@settings(max_examples=80, deadline=None, derandomize=True)
@given(thousandths=st.integers(0, 10**7), places=st.integers(1, 3))
def test_decimal_places_like_the_decimal_module(thousandths: int, places: int) -> None:
    exact = Amount(Fraction(thousandths, 10000))
    expected = (Decimal(thousandths) / 10000).quantize(
        Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP
    )
    near = read_rounding(f"{places} decimal places").nearest(exact)
    assert near.value == Fraction(expected)


@settings(max_examples=80, deadline=None, derandomize=True)
@given(halves=st.integers(0, 10**6), power=st.integers(0, 3))
def test_powers_of_ten_like_the_decimal_module(halves: int, power: int) -> None:
    size = 10**power
    expected = (Decimal(halves) / 2 / size).quantize(Decimal(1), rounding=ROUND_HALF_UP) * size
    assert read_rounding(f"the nearest {size}").nearest(
        Amount(Fraction(halves, 2))
    ).value == Fraction(expected)


@pytest.mark.parametrize(
    ("rounding", "exact", "rounded"),
    [
        # Halfway goes up (national curriculum, Years 4 and 5; common practice in England).
        ("the nearest 10", "65", "70"),
        ("the nearest hundred", "4,649", "4,600"),
        ("nearest whole number", "7.5", "8"),
        ("to the nearest metre", "1.49 m", "1 m"),
        ("the nearest 10 m", "4,665 m", "4,670 m"),
        ("the nearest 10 cm", "5.625 m", "5.6 m"),
        ("the nearest pound", "£2.50", "£3"),
        ("the nearest pound", "7.6 pounds", "8 pounds"),
        ("the nearest penny", "£17.005", "£17.01"),
        ("the nearest 5p", "£1.12", "£1.10"),
        ("the nearest hour", "2 1/2 h", "3 h"),
        ("1 decimal place", "3.04", "3.0"),
        ("two decimal places", "4.698 m", "4.70 m"),
        ("the nearest 10", "14 boats", "10 boats"),
    ],
)
def test_roundings_as_teachers_write_them(rounding: str, exact: str, rounded: str) -> None:
    amount = (
        Amount(Fraction(17005, 1000), parse_amount("£1", {}).unit)
        if exact == "£17.005"
        else parse_amount(exact.replace(",", ""), {})
    )
    near = read_rounding(rounding).nearest(amount)
    assert plain(answer_text(near)).replace("\u00a0", " ") == rounded


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("about 3", "says no rounding"),
        ("the nearest ocean", "nothing can be rounded to the nearest 'ocean'"),
        ("9 decimal places", "says no rounding"),
    ],
)
def test_what_says_no_rounding(text: str, problem: str) -> None:
    with pytest.raises(AmountError) as caught:
        read_rounding(text)
    assert problem in caught.value.problem
    with pytest.raises(ValidationError):
        solved("sharing", total="14 m", groups="3 pieces", round_to=text)


def test_a_rounding_of_another_kind_is_refused() -> None:
    with pytest.raises(AmountError, match="cannot be rounded to the nearest penny"):
        solved("sharing", total="14 m", groups="3 pieces", round_to="the nearest penny")


def test_money_that_does_not_share_asks_for_a_rounding() -> None:
    with pytest.raises(AmountError) as caught:
        solved("sharing", total="£17", groups="3 friends")
    assert "round to: the nearest penny" in caught.value.remedy


def test_the_exact_value_stays_in_the_working_and_is_never_cut_short() -> None:
    solution = solved("sharing", total="£17", groups="3 friends", round_to="the nearest penny")
    assert text_of(solution, "each") == "£5.67"
    assert (
        "Round to the nearest penny: £5 2/3 lies between £5.66 and £5.67, "
        "and is nearer to £5.67." in sentences(solution)
    )
    equations = [
        each.equation for working in solution.workings for each in working.steps if each.equation
    ]
    assert equations
    assert all(each.holds() for each in equations)


def test_halfway_says_so() -> None:
    solution = solved("sharing", total="5 m", groups="2 pieces", round_to="the nearest metre")
    assert text_of(solution, "each") == "3 m"
    assert any(
        "just halfway, and halfway is rounded up: 3 m" in each for each in sentences(solution)
    )


def test_the_mistakes_of_rounding() -> None:
    # 8 ÷ 7 × 19 = 21.71…: cut off 21; with 8 ÷ 7 taken for 1 it would be 19 (both computed).
    solution = solved(
        "proportion",
        together={"pulleys": "7 pulleys", "cost": "£8"},
        wanted={"pulleys": "19 pulleys"},
        find="cost",
        round_to="the nearest pound",
    )
    assert text_of(solution, "cost") == "£22"
    assert wrong(solution)["rounded down always"] == "£21"
    assert wrong(solution)["rounded too early"] == "£19"


def test_rounding_on_the_way_is_told_with_the_numbers_of_that_pupil() -> None:
    solution = solved(
        "steps",
        quantities={"total": "£100", "friends": "7 friends", "days": "3"},
        steps=["share = total ÷ friends", "cost = share × days"],
        find="cost",
        round_to="the nearest pound",
    )
    early = next(each for each in solution.mistakes if each.misconception == "rounded too early")
    written = [each.equation.text() for each in early.steps if isinstance(each.equation, Equation)]
    assert [each.replace("\u00a0", " ") for each in written] == [
        "£100 ÷ 7 = £14",
        "£14 × 3 = £42",
    ]
    assert text_of(solution, "cost") == "£43"


@pytest.mark.parametrize(
    "fields",
    [
        {"total": "14 m", "groups": "3 pieces", "round to": "2 decimal places"},
        {"total": "45 m", "groups": "8 pieces", "round to": "the nearest 10 cm"},
    ],
)
def test_a_rounded_share_against_the_decimal_module(fields: dict[str, Any]) -> None:
    number, groups = int(fields["total"].split()[0]), int(fields["groups"].split()[0])
    step = Decimal("0.01") if "2 decimal" in fields["round to"] else Decimal("0.1")
    expected = (Decimal(number) / groups).quantize(step, rounding=ROUND_HALF_UP)
    assert value_of(solved("sharing", **fields), "each") == Fraction(expected)
