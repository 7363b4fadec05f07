"""Amounts as a teacher types them: '£2.50', '40p', '1,250 g', '1 h 20 min', '2 1/2', '6 crates'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.compound import parse_compound
from typeset.quantities.nouns import counted, looks_plural
from typeset.quantities.numerals import (
    Numeral,
    check_length,
    digits_value,
    fraction_numeral,
    numeral,
)
from typeset.quantities.units import CLOCK, NUMBER, POUND, Dimension, unit_meant, unit_named

_FRACTION = r"(?:(?P<count>\d[\d,]*)\s)?(?P<over>\d[\d,]*)\s?/\s?(?P<under>\d[\d,]*)"
_DECIMAL = r"(?P<decimal>\d[\d,]*(?:\.\d+)?)"
_AMOUNT = re.compile(
    rf"(?P<sign>[-\u2212])?(?P<pound>£)?\s?(?:{_FRACTION}|{_DECIMAL})\s?(?P<unit>.*)", re.ASCII
)
_CLOCK = re.compile(r"(?P<hour>\d{1,2}):(?P<minute>\d{2})", re.ASCII)
_RATIO = re.compile(r"\d[\d,.]*(?:\s?:\s?\d[\d,.]*)+", re.ASCII)
_NOUN = re.compile(r"[^\W\d_](?:[^\W\d_]|['’ -])*")
_SPACED_THOUSANDS = re.compile(r"\d{1,3}(?: \d{3})+(?!\d).*", re.ASCII)
_BARE_POINT = re.compile(r"\.\d+.*", re.ASCII)
_NOT_NOUNS = {"st", "nd", "rd", "th"}
_HALVES_OF_DAY = re.compile(r"(?::\d\d)?\s?[ap]\.?m\.?", re.IGNORECASE)
# '½' and its like, which British keyboards and word processors offer, and the fraction slash.
_ONE_SIGN = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5"}
_ONE_SIGN |= {"⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8"}
_ONE_SIGN |= {"⅞": "7/8"}
EXAMPLES = (
    "write a number, or one with a unit, such as 12, 2.5 kg, £3.50, 40p, 1 h 20 min, 6 crates"
)


def parse_amount(text: str, nouns: Mapping[str, str] | None = None) -> Amount:
    """The amount that the text says, exactly.

    `nouns` maps the author's own singulars to their plurals.
    Raises AmountError saying what is wrong and what would be right.
    """
    return _parsed(text, tuple(nouns.items()) if nouns else ())


# The same few texts are read when a file is checked and whenever numbers are tried out.
@lru_cache(maxsize=2048)
def _parsed(text: str, own_nouns: tuple[tuple[str, str], ...]) -> Amount:
    nouns = dict(own_nouns)
    tidy = _tidied(text)
    if clock := _CLOCK.fullmatch(tidy):
        return _clock_time(tidy, clock["hour"], int(clock["minute"]))
    if _RATIO.fullmatch(tidy):
        raise AmountError(f"'{tidy}' is a ratio where one amount is wanted", EXAMPLES)
    if compound := parse_compound(tidy):
        return compound
    match = _AMOUNT.fullmatch(tidy)
    if match is None:
        raise _not_an_amount(tidy)
    read = _numeral_of(match)
    if match["sign"]:
        read = Numeral(-read.value, read.form, read.places)
    unit = match["unit"].strip()
    if match["pound"]:
        return _pounds(tidy, read, unit)
    return _pence(tidy, read) if unit == "p" else _with_unit(tidy, read, unit, nouns)


def parse_ratio(text: str) -> tuple[Fraction, ...]:
    """The parts of a ratio typed as '5:2' or '3 : 2 : 1'.

    Raises AmountError for anything else, or for a part that is nothing.
    """
    tidy = _tidied(text)
    if not _RATIO.fullmatch(tidy):
        raise AmountError(f"'{tidy}' is not a ratio", "write its parts with colons, such as 5:2")
    parts = tuple(numeral(part.strip()).value for part in tidy.split(":"))
    if not all(parts):
        raise AmountError(f"'{tidy}' has a part that is 0", "every part of a ratio is more than 0")
    return parts


def is_measure(amount: Amount) -> bool:
    """True where the amount has a unit of measure or money, not a noun or nothing."""
    return amount.unit.dimension not in {Dimension.NUMBER, Dimension.COUNT}


def _tidied(text: str) -> str:
    """The text with single spaces and with '2½' spelt '2 1/2'."""
    check_length(text)
    for sign, spelt in _ONE_SIGN.items():
        text = text.replace(sign, f" {spelt} ")
    return " ".join(text.replace("\u2044", "/").split())


def _clock_time(text: str, hour: str, minute: int) -> Amount:
    if int(hour) > 23 or minute > 59:
        raise AmountError(f"'{text}' is not a time of day", "write 0:00 to 23:59")
    return Amount(Fraction(60 * int(hour) + minute), CLOCK, places=len(hour))


def _numeral_of(match: re.Match[str]) -> Numeral:
    if match["decimal"]:
        return numeral(match["decimal"])
    count = digits_value(match["count"]) if match["count"] else 0
    return fraction_numeral(count, digits_value(match["over"]), digits_value(match["under"]))


def _pounds(text: str, read: Numeral, unit: str) -> Amount:
    if unit:
        raise AmountError(f"'{unit}' follows a sum of money in '{text}'", "write £2.50 alone")
    if read.form is Form.DECIMAL and read.places != 2:
        raise AmountError(
            f"'{text}' has not two digits of pence", "write pounds and two digits, such as £2.50"
        )
    return Amount(read.value, POUND)


def _pence(text: str, read: Numeral) -> Amount:
    """Pence are pounds, so that all money adds up; from 100p on they are still written as pence."""
    if read.form is Form.DECIMAL and read.places == 2 and abs(read.value) < 1:
        raise AmountError(
            f"'{text}' is less than one penny", f"write {read.value * 100}p or £{text[:-1].strip()}"
        )
    form = Form.PENCE if abs(read.value) >= 100 else Form.AUTO
    return Amount(read.value / 100, POUND, form)


def _with_unit(text: str, read: Numeral, unit: str, nouns: Mapping[str, str] | None) -> Amount:
    if not unit:
        return Amount(read.value, NUMBER, read.form, read.places)
    measure = unit_named(unit)
    if measure is not None and measure is not POUND:
        return Amount(read.value, measure, read.form, read.places)
    if _HALVES_OF_DAY.fullmatch(unit):
        raise AmountError(f"'{text}' is not a time that is read here", "write 9:05 or 15:30")
    if meant := unit_meant(unit):
        raise AmountError(f"'{unit}' in '{text}' is not how that unit is written", f"write {meant}")
    if not _NOUN.fullmatch(unit) or unit in _NOT_NOUNS:
        raise _not_an_amount(text)
    one = _is_one(read.value, unit, nouns)
    return Amount(read.value, counted(unit, one, nouns), read.form, read.places)


def _is_one(value: Fraction, phrase: str, nouns: Mapping[str, str] | None) -> bool:
    """True where the author typed a singular: after 1, and after a part of one ('1/2 pie')."""
    if 0 < abs(value) < 1:
        return not looks_plural(phrase, nouns)
    return abs(value) == 1


def _not_an_amount(text: str) -> AmountError:
    remedy = EXAMPLES
    if _SPACED_THOUSANDS.fullmatch(text):
        remedy = f"write {text.replace(' ', ',')}"
    elif _BARE_POINT.fullmatch(text):
        remedy = f"write 0{text}"
    return AmountError(f"'{text}' is not an amount", remedy)
