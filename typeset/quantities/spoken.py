"""Text for ears: how maths in a plain text is said aloud, for a screen reader.

Fractions are said as children learn them ('three quarters', '2 and one half'), with the lower
number as an ordinal as far as one is in common use, else '7 over 13'. Signs are said in words.
The conventions are those of two published sets of rules for reading maths aloud, ClearSpeak
(Educational Testing Service, 2016) and MathSpeak (Nemeth), both from memory, in British words:
'quarters' and 'brackets', and 'negative 3' but '5 minus 3'.
"""

from __future__ import annotations

import re

from typeset.quantities.inline import BLANK_TEXT, BOX_TEXT

BLANK = "blank"
TICK_BOX = "tick box"
_UP_TO_TWELVE = (
    *("zero", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)
# One part and several parts, for lower numbers whose ordinals are in common use.
_PARTS = {
    2: ("half", "halves"),
    4: ("quarter", "quarters"),
    **{
        number: (name, f"{name}s")
        for number, name in {
            3: "third",
            5: "fifth",
            6: "sixth",
            7: "seventh",
            8: "eighth",
            9: "ninth",
            10: "tenth",
            11: "eleventh",
            12: "twelfth",
            15: "fifteenth",
            16: "sixteenth",
            20: "twentieth",
            100: "hundredth",
            1000: "thousandth",
        }.items()
    },
}
_NUMBER = r"\d[\d,]*"
_FRACTION = re.compile(
    rf"(?:(?P<whole>{_NUMBER}) )?(?<![\d/])(?P<over>{_NUMBER})/(?P<under>\d[\d,]*)"
)
_ROOM = re.compile("|".join(re.escape(text) for text in (BLANK_TEXT, BOX_TEXT, "\u25a1")))
# A minus sign with nothing before it to take away from.
_NEGATIVE = re.compile(r"(?:^|(?<=[(=<>+\u2212\u00d7\u00f7,;:]\s)|(?<=\())\u2212(?=[\d£])")
_SIGNS = {
    "\u00d7": "times",
    "\u00f7": "divided by",
    "\u2212": "minus",
    "+": "plus",
    "=": "equals",
    "\u2260": "is not equal to",
    "\u2248": "is about",
    "<": "is less than",
    ">": "is greater than",
}
_SIGN = re.compile(f"[{re.escape(''.join(_SIGNS))}]")
# '7 r 3', as children write a remainder.
_REMAINDER = re.compile(r"(?<=\d) r (?=\d)")
_RATIO = re.compile(r"(?<=[\w%]) : (?=[\w£])")
# Square and cubic units, then other powers.
_UNIT_POWER = re.compile(r"\b(?P<unit>[mck]?m)(?P<power>[\u00b2\u00b3])")
_POWERS = {"\u00b2": " squared", "\u00b3": " cubed"}
_BRACKETS = {"(": " open bracket ", ")": " close bracket "}
# Drawn signs by name.
SYMBOL_NAMES = {
    "\u2192": "arrow",
    "\u2190": "arrow to the left",
    "\u2194": "arrow both ways",
    "\u2191": "arrow up",
    "\u2193": "arrow down",
    "\u2713": "tick",
    "\u2714": "tick",
    "\u2717": "cross",
    "\u2718": "cross",
    "\u25a1": BLANK,
    "\u2610": BLANK,
    "\u25a2": BLANK,
}
_ASKED = re.compile(r"(?<![^\s(])\?(?![^\s,;.)])")
_SPACES = re.compile(r"\s+")


def spoken(text: str) -> str:
    """A plain text with its maths in words: '3/4 of 36 kites' is 'three quarters of 36 kites'."""
    said = _FRACTION.sub(_said_fraction, text.replace("\u00a0", " "))
    said = _ASKED.sub("question mark", _ROOM.sub(f" {BLANK} ", said))
    said = _REMAINDER.sub(" remainder ", said)
    said = _RATIO.sub(" to ", _NEGATIVE.sub("negative ", said))
    said = _SIGN.sub(lambda match: f" {_SIGNS[match[0]]} ", said)
    said = _UNIT_POWER.sub(_said_unit, said)
    for sign, word in (*_POWERS.items(), *SYMBOL_NAMES.items()):
        said = said.replace(sign, word)
    return _tidied(said)


def spoken_formula(text: str) -> str:
    """An equation or expression in words: '5 × (2 + 1) = 15' with its brackets said, too."""
    said = spoken(text)
    for sign, words in _BRACKETS.items():
        said = said.replace(sign, words)
    return _tidied(said)


def spoken_fraction(over: str, under: str) -> str:
    """A fraction in words: 'three quarters', 'one half', '17 twentieths', '7 over 13'."""
    count, parts = _value(over), _value(under)
    if parts not in _PARTS:
        return f"{over} over {under}"
    one, several = _PARTS[parts]
    return f"{_counted(count, over)} {one if count == 1 else several}"


def is_formula(text: str) -> bool:
    """True for a text with a sign that is said as a word: '5 × 12', but not '12 kg' or '−5'."""
    return _SIGN.search(_NEGATIVE.sub("", text.replace("\u00a0", " "))) is not None


def _said_fraction(match: re.Match[str]) -> str:
    said = spoken_fraction(match["over"], match["under"])
    return f"{match['whole']} and {said}" if match["whole"] else said


def _said_unit(match: re.Match[str]) -> str:
    return f"{'square' if match['power'] == chr(0xB2) else 'cubic'} {match['unit']}"


def _counted(count: int, typed: str) -> str:
    return _UP_TO_TWELVE[count] if count < len(_UP_TO_TWELVE) else typed


def _value(digits: str) -> int:
    return int(digits.replace(",", ""))


def _tidied(text: str) -> str:
    """Single spaces, none before a comma or full stop."""
    return re.sub(r" (?=[,.;])", "", _SPACES.sub(" ", text)).strip()
