"""Numbers taken apart, amounts brought to one unit."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from typeset.arithmetic.methods import (
    check_alike,
    conversion,
    finest_unit,
    in_tables,
    in_unit,
    just_above,
    place_parts,
    without_noughts,
    without_noun,
)
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import UNITS


@pytest.mark.parametrize(
    ("value", "parts"),
    [("342", "300 40 2"), ("60", "60"), ("2.35", "2 0.35"), ("0.64", "0.6 0.04"), ("7", "7")],
)
def test_place_parts(value: str, parts: str) -> None:
    assert place_parts(Fraction(value)) == tuple(Fraction(part) for part in parts.split())


@given(st.integers(1, 10**7), st.sampled_from([1, 10, 100]))
def test_parts_make_the_number_again(count: int, under: int) -> None:
    value = Fraction(count, under)
    assert sum(place_parts(value)) == value


@pytest.mark.parametrize(
    ("value", "above"),
    [("19", "20"), ("98", "100"), ("9", "10"), ("2.99", "3"), ("0.95", "1"), ("4.9", "5")],
)
def test_just_above(value: str, above: str) -> None:
    assert just_above(Fraction(value)) == Fraction(above)


@pytest.mark.parametrize("value", ["8", "17", "20", "2.5", "21", "3.35"])
def test_nothing_round_just_above(value: str) -> None:
    assert just_above(Fraction(value)) is None


def test_tables_with_noughts() -> None:
    assert [without_noughts(Fraction(n)) for n in (60, 1200, 10, 12, 110)] == [6, 12, 10, 12, 11]
    assert all(in_tables(Fraction(n)) for n in (1, 12, 60, 1200))
    assert not any(in_tables(Fraction(n)) for n in (0, 13, 48, 130))
    assert not in_tables(Fraction(1, 2))


def test_conversion_is_told_only_where_the_unit_changes() -> None:
    same, none = conversion(parse_amount("3 kg"), UNITS["kg"])
    assert (same, none) == (parse_amount("3 kg"), ())
    grams, (told,) = conversion(parse_amount("1.5 kg"), UNITS["g"])
    assert grams == Amount(Fraction(1500), UNITS["g"])
    assert plain(told.sentence) == "Write 1.5 kg as 1,500 g."
    assert told.equation is not None and told.equation.holds()


def test_counted_things_take_a_new_noun() -> None:
    kites = parse_amount("5 kites").unit
    assert in_unit(parse_amount("5 terns"), kites).unit == kites
    assert without_noun(parse_amount("5 terns")) == parse_amount("5")
    assert without_noun(parse_amount("5 cm")) == parse_amount("5 cm")


@pytest.mark.parametrize(("one", "other"), [("3 m", "2 kg"), ("4 terns", "£2"), ("5", "3 h")])
def test_unlike_amounts_are_refused(one: str, other: str) -> None:
    with pytest.raises(AmountError, match="cannot be put together"):
        check_alike(parse_amount(one), parse_amount(other))
    with pytest.raises(AmountError, match="cannot be given in"):
        in_unit(parse_amount(one), parse_amount(other).unit)


def test_finest_unit() -> None:
    assert (
        finest_unit(parse_amount("3 m"), parse_amount("2 cm"), parse_amount("1 km"))
        == (UNITS["cm"])
    )
