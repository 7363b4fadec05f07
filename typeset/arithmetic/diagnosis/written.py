"""What a pupil wrote, in every way it can be read: '43 gulls', '1:3', '3 r 2', '£2.5', 'ten to 4'.

A text may be read in several ways ('1:20' is a ratio, a time of day, a length of time); all
are kept, and the answer wanted tells which of them is meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from typeset.arithmetic.diagnosis.written_units import measure_of
from typeset.quantities.amount import Amount

_SIGNS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅛": "1/8"}
_SIGNS |= {"⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅜": "3/8", "⅝": "5/8"}
_SIGNS |= {"⅞": "7/8"}
# Not those of 'half past 3' and 'a quarter to 4'.
_FRACTION_WORDS = (
    (re.compile(r"\b(?:an? )?half\b(?! past)(?: an?\b)?", re.I), "1/2"),
    (re.compile(r"\bthree[ -]quarters\b", re.I), "3/4"),
    (re.compile(r"\b(?:an?|one) quarter\b(?! past| to)", re.I), "1/4"),
    (re.compile(r"\b(?:an?|one) third\b", re.I), "1/3"),
    (re.compile(r"\btwo[ -]thirds\b", re.I), "2/3"),
)
_POWER = re.compile(r"\b([mck]?m)\^?([23])\b")
_POWERS = {"2": "²", "3": "³"}
_WHOLE = r"\d{1,3}(?:[, ]\d{3})+(?!\d)|\d+"
_FRACTION = rf"(?:(?P<count>{_WHOLE})\s+(?:and\s+)?)?(?P<over>\d+)\s?/\s?(?P<under>\d+)"
_DECIMAL = rf"(?P<whole>{_WHOLE})?(?:\.(?P<places>\d+))?"
_NUMBER = re.compile(
    rf"[^\d£.\-\u2212]*(?P<sign>[-\u2212])?\s*(?P<pound>£)?\s*(?:{_FRACTION}|{_DECIMAL})(?P<unit>\D*)",
    re.ASCII,
)
# '£3 20' and '£3-20', which markers take for £3.20; 'three pounds and 20p' in figures.
_SPLIT_POUNDS = re.compile(
    r"(?:£\s?(?P<sign>\d+)|(?P<word>\d+)\s?pounds?)(?:[ \-:]| and )"
    r"(?P<pence>\d\d(?:\s?p| pence)?|\d(?:\s?p| pence))",
    re.ASCII,
)
_RATIO = re.compile(r"(?:\d+(?:\.\d+)?)(?:\s?(?::|to)\s?\d+(?:\.\d+)?)+", re.ASCII)
_REMAINDER = re.compile(
    r"(?P<groups>\d[\d,]*)\s*(?P<unit>[^\d]*?)\s*\b(?:r|rem|remainder)\.?\s*(?:of\s+)?"
    r"(?P<rest>\d+(?:\.\d+)?)\D*",
    re.ASCII | re.IGNORECASE,
)
_LEFT_OVER = re.compile(
    r"(?P<groups>\d[\d,]*)\s*(?P<unit>[^\d]*?)(?:,|and|with)\s*"
    r"(?P<rest>\d+(?:\.\d+)?)[^\d]*\b(?:left|over|remain)\w*.*",
    re.ASCII | re.IGNORECASE,
)
_TIME = re.compile(r"(?P<hour>\d{1,2})[:.](?P<minute>\d\d)\s*(?P<half>[ap]\.?\s?m\.?)?", re.I)
_HOUR = re.compile(r"(?P<hour>\d{1,2})\s*(?:(?P<half>[ap]\.?\s?m\.?)|o['’]?clock)", re.I)
_TOLD = re.compile(
    r"(?P<by>half|(?:a )?quarter|\d{1,2})(?: minutes?)? (?P<way>past|to) (?P<hour>\d{1,2})"
    r"\s*(?P<half>[ap]\.?m\.?)?",
    re.I,
)
_MEASURE = re.compile(r"(?P<number>\d[\d,]*(?:\.\d+)?)\s*(?P<unit>[A-Za-z£]+)?")
_COMPOUND = re.compile(
    r"\d[\d,]*(?:\.\d+)?\s*[A-Za-z]+(?:\s*(?:,|and)?\s*\d[\d,]*(?:\.\d+)?\s*[A-Za-z]*)+", re.ASCII
)
_NOON = {"noon": 720, "midday": 720, "midnight": 0}
_PLAIN = {"the", "a", "an", "it", "is", "its", "they", "are", "one", "answer", "because"}
_MOST_CHARACTERS = 200


@dataclass(frozen=True, slots=True)
class WrittenNumber:
    """A number with whatever words follow it. `places` counts digits after a point, if any."""

    value: Fraction
    unit: str = ""
    pound: bool = False
    places: int | None = None


@dataclass(frozen=True, slots=True)
class WrittenRatio:
    """Numbers with colons (or 'to') between them."""

    parts: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class WrittenRemainder:
    """A number of groups and what is left."""

    groups: Fraction
    rest: Fraction


@dataclass(frozen=True, slots=True)
class WrittenTime:
    """A time of day in minutes; `half` is 'a' or 'p' where morning or afternoon is said."""

    minutes: int
    half: str = ""


@dataclass(frozen=True, slots=True)
class WrittenMeasure:
    """An amount in several units, as one amount: '1 h 20'."""

    amount: Amount


@dataclass(frozen=True, slots=True)
class WrittenName:
    """The telling words of a text, in small letters."""

    words: tuple[str, ...]


Reading: TypeAlias = (
    WrittenNumber | WrittenRatio | WrittenRemainder | WrittenTime | WrittenMeasure | WrittenName
)


def readings_of(text: str) -> tuple[Reading, ...]:
    """Every way to read the text; the words alone come last and are always there."""
    tidy = tidied(text)
    found: list[Reading] = [*_remainders(tidy), *_ratios(tidy), *_times(tidy), *_measures(tidy)]
    found += _numbers(tidy)
    return (*found, WrittenName(name_words(tidy)))


def tidied(text: str) -> str:
    """The text with single spaces, '2½' spelt '2 1/2', and nothing after its last word."""
    for sign, spelt in _SIGNS.items():
        text = text.replace(sign, f" {spelt} ")
    text = text.replace("\u2044", "/").replace("\u00a0", " ")
    for words, spelt in _FRACTION_WORDS:
        text = words.sub(f" {spelt} ", text)
    text = _POWER.sub(lambda match: match[1] + _POWERS[match[2]], text)
    return " ".join(text[:_MOST_CHARACTERS].split()).rstrip(" .!;,").removeprefix("= ")


def name_words(text: str) -> tuple[str, ...]:
    """The telling words of a name: 'the red tin' and 'It is the red tin.' are the same."""
    words = re.findall(r"[^\W_]+", text.lower())
    return tuple(word for word in words if word not in _PLAIN)


def _numbers(text: str) -> Iterator[WrittenNumber]:
    if split := _SPLIT_POUNDS.fullmatch(text):
        pounds = int(split["sign"] or split["word"])
        pence = 100 * pounds + int(re.sub(r"\D", "", split["pence"]))
        yield WrittenNumber(Fraction(pence, 100), pound=True, places=2)
    match = _NUMBER.fullmatch(text)
    if match is None or not (match["over"] or match["whole"] or match["places"]):
        return
    value = _value(match)
    if value is None:
        return
    places = len(match["places"]) if match["places"] else None
    signed = -value if match["sign"] else value
    yield WrittenNumber(signed, match["unit"].strip(" .,"), bool(match["pound"]), places)


def _value(match: re.Match[str]) -> Fraction | None:
    """The number of the match; None for a fraction over nothing."""
    if match["over"]:
        if not int(match["under"]):
            return None
        return _digits(match["count"] or "0") + Fraction(int(match["over"]), int(match["under"]))
    return Fraction(f"{_digits(match['whole'] or '0')}.{match['places'] or '0'}")


def _digits(text: str) -> int:
    return int(text.replace(",", "").replace(" ", ""))


def _ratios(text: str) -> Iterator[WrittenRatio]:
    if _RATIO.fullmatch(text):
        parts = tuple(Fraction(part.strip()) for part in re.split(r":|to", text))
        if all(parts):
            yield WrittenRatio(parts)


def _remainders(text: str) -> Iterator[WrittenRemainder]:
    for pattern in (_REMAINDER, _LEFT_OVER):
        if match := pattern.fullmatch(text):
            yield WrittenRemainder(Fraction(_digits(match["groups"])), Fraction(match["rest"]))
            return


def _times(text: str) -> Iterator[WrittenTime]:
    text = text.lower().removeprefix("at ")
    bare = text.removeprefix("12 ")
    if bare in _NOON:
        yield WrittenTime(_NOON[bare], "a" if bare == "midnight" else "p")
    if match := _TIME.fullmatch(text) or _HOUR.fullmatch(text):
        minute = int(match["minute"]) if "minute" in match.re.groupindex else 0
        yield from _time(int(match["hour"]), minute, match["half"])
    if match := _TOLD.fullmatch(text):
        by = {"half": 30, "quarter": 15, "a quarter": 15}.get(match["by"].lower())
        minutes = by if by is not None else int(match["by"])
        signed = minutes if match["way"].lower() == "past" else -minutes
        total = (60 * int(match["hour"]) + signed) % 1440
        yield from _time(total // 60, total % 60, match["half"])


def _time(hour: int, minute: int, half: str | None) -> Iterator[WrittenTime]:
    if hour < 24 and minute < 60:
        yield WrittenTime(60 * hour + minute, half[0].lower() if half else "")


def _measures(text: str) -> Iterator[WrittenMeasure]:
    """Units of one kind after each other; the last may be left out ('1 h 20')."""
    match = _COMPOUND.fullmatch(text)
    if match is None:
        return
    parts = [(each["number"], each["unit"] or "") for each in _MEASURE.finditer(text)]
    units = [measure_of(unit) for _number, unit in parts]
    if units[-1] is None and not parts[-1][1] and units[-2] is not None:
        below = {"h": "min", "hour": "minutes", "m": "cm", "kg": "g", "min": "s", "km": "m"}
        units[-1] = measure_of(below.get(units[-2].singular, ""))
    first = units[0]
    if first is None:
        return
    total = Fraction(0)
    for (number, _word), unit in zip(parts, units, strict=True):
        if unit is None or unit.dimension is not first.dimension:
            return
        total += Fraction(number.replace(",", "")) * unit.per_base
    yield WrittenMeasure(Amount(total / first.per_base, first))
