"""Amounts as a teacher types them: '£2.50', '40p', '1,250 g', '1 h 20 min', '2 1/2', '6 crates'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.nouns import counted
from typeset.quantities.units import CLOCK, NUMBER, POUND, Dimension, Unit, unit_named

_NUMBER = r"(?P<number>\d[\d,]*(?:\.\d+)?(?:\s*/\s*\d+)?(?:\s+\d+\s*/\s*\d+)?)"
_AMOUNT = re.compile(rf"^(?P<sign>[-\u2212])?(?P<pound>£)?\s*{_NUMBER}\s*(?P<unit>.*)$")
_CLOCK = re.compile(r"^(?P<hour>\d{1,2}):(?P<minute>\d{2})$")
_RATIO = re.compile(r"^\d+(?:\.\d+)?(?:\s*:\s*\d+(?:\.\d+)?)+$")
_COMPOUND = re.compile(r"^(?:\d[\d,.]*\s*[A-Za-z]+\s*){2,}$")
_COMPOUND_PART = re.compile(r"(\d[\d,.]*)\s*([A-Za-z]+)")
_GROUPED = re.compile(r"^\d{1,3}(?:,\d{3})+$")
_NOUN = re.compile(r"^[A-Za-z][A-Za-z'’ -]*$")
# Longer numbers than any pupil of these years meets; guards against nonsense and slow sums.
_MOST_DIGITS = 15
EXAMPLES = (
    "write a number, or one with a unit, such as 12, 2.5 kg, £3.50, 40p, 1 h 20 min, 6 crates"
)


def parse_amount(text: str, nouns: Mapping[str, str] | None = None) -> Amount:
    """The amount that the text says, exactly.

    `nouns` maps the author's own singulars to their plurals.
    Raises AmountError saying what is wrong and what would be right.
    """
    tidy = " ".join(text.split())
    if clock := _CLOCK.match(tidy):
        return _parse_clock(tidy, int(clock["hour"]), int(clock["minute"]))
    if _RATIO.match(tidy):
        raise AmountError(f"'{tidy}' is a ratio where one amount is wanted", EXAMPLES)
    if _COMPOUND.match(tidy):
        return _parse_compound(tidy)
    match = _AMOUNT.match(tidy)
    if match is None:
        raise AmountError(f"'{tidy}' is not an amount", EXAMPLES)
    value, form, places = _parse_number(match["number"])
    if match["sign"]:
        value = -value
    return _with_unit(match, value, form, places, nouns)


def parse_ratio(text: str) -> tuple[Fraction, ...]:
    """The parts of a ratio typed as '5:2' or '3 : 2 : 1'.

    Raises AmountError for anything else, or for a part that is nothing.
    """
    tidy = " ".join(text.split())
    if not _RATIO.match(tidy):
        raise AmountError(f"'{tidy}' is not a ratio", "write its parts with colons, such as 5:2")
    parts = tuple(Fraction(part) for part in tidy.split(":"))
    if not all(parts):
        raise AmountError(f"'{tidy}' has a part that is 0", "every part of a ratio is more than 0")
    return parts


def _parse_clock(text: str, hour: int, minute: int) -> Amount:
    if hour > 24 or minute > 59 or (hour == 24 and minute):
        raise AmountError(f"'{text}' is not a time of day", "write 0:00 to 23:59")
    return Amount(Fraction(60 * hour + minute), CLOCK)


def _parse_compound(text: str) -> Amount:
    """'1 h 20 min' in the smallest of its units. Each unit must be smaller than the one before."""
    total = Fraction(0)
    last: Unit | None = None
    for digits, word in _COMPOUND_PART.findall(text):
        unit = unit_named(word)
        if unit is None:
            raise AmountError(f"'{word}' in '{text}' is not a unit of measure", EXAMPLES)
        if last and (unit.dimension is not last.dimension or unit.per_base >= last.per_base):
            raise AmountError(
                f"'{text}' does not go from a larger unit to a smaller one of the same kind",
                "write it such as 1 h 20 min or 2 m 35 cm",
            )
        value, _form, _places = _parse_number(digits)
        total += value * unit.per_base
        last = unit
    assert last is not None
    return Amount(total / last.per_base, last, Form.COMPOUND)


def _parse_number(text: str) -> tuple[Fraction, Form, int]:
    """The exact value, whether it was typed as a decimal or fraction, and its decimal places."""
    if sum(character.isdigit() for character in text) > _MOST_DIGITS:
        raise AmountError(
            f"'{text}' has too many digits", f"at most {_MOST_DIGITS} digits are read"
        )
    if "/" in text:
        return _parse_fraction(text), Form.FRACTION, 0
    whole, point, places = text.partition(".")
    if "," in whole and not _GROUPED.match(whole):
        raise AmountError(
            f"'{text}' has a comma that does not group thousands",
            f"write {whole.replace(',', '')}{point}{places} or {_grouped(whole)}{point}{places}",
        )
    value = Fraction(text.replace(",", ""))
    return (value, Form.DECIMAL, len(places)) if point else (value, Form.AUTO, 0)


def _grouped(digits: str) -> str:
    return f"{int(digits.replace(',', '')):,}"


def _parse_fraction(text: str) -> Fraction:
    *front, last = text.replace(" /", "/").replace("/ ", "/").split()
    over, _slash, under = last.partition("/")
    if int(under) == 0:
        raise AmountError(f"'{text}' divides by 0", "a fraction's lower number is at least 1")
    if not front:
        return Fraction(int(over.replace(",", "")), int(under))
    return int(front[0].replace(",", "")) + Fraction(int(over), int(under))


def _with_unit(
    match: re.Match[str],
    value: Fraction,
    form: Form,
    places: int,
    nouns: Mapping[str, str] | None,
) -> Amount:
    text = match["unit"].strip()
    if match["pound"]:
        return _pounds(match.string, value, places, text)
    if text == "p":
        return Amount(value / 100, POUND)
    if not text:
        return Amount(value, NUMBER, form, places)
    unit = unit_named(text)
    if unit is not None and unit is not POUND:
        return Amount(value, unit, form, places)
    if not _NOUN.match(text):
        raise AmountError(f"'{match.string}' is not an amount", EXAMPLES)
    return Amount(value, counted(text, value == 1, nouns), form, places)


def _pounds(whole: str, value: Fraction, places: int, text: str) -> Amount:
    if text:
        raise AmountError(f"'{text}' follows a sum of money in '{whole}'", "write £2.50 alone")
    if places not in (0, 2):
        raise AmountError(
            f"'{whole}' has {places} digits of pence", "write pounds and two digits, such as £2.50"
        )
    return Amount(value, POUND)


def is_measure(amount: Amount) -> bool:
    """True where the amount has a unit of measure or money, not a noun or nothing."""
    return amount.unit.dimension not in {Dimension.NUMBER, Dimension.COUNT}
