"""Units as pupils write them: 'Kg', 'grams', 'hrs', 'cm2', 'kilos', and nouns near enough."""

from __future__ import annotations

import re
from collections.abc import Iterator

from typeset.quantities.units import POUND, UNITS, Unit, unit_meant, unit_named

_LOOSE = {"kilo": "kg", "kgs": "kg", "mls": "ml", "gms": "g", "gm": "g", "cms": "cm", "hour": "h"}
_LOOSE |= {
    "liter": "litre",
    "meter": "m",
    "metre": "m",
    "percent": "%",
    "degs": "°",
    "centigrade": "°C",
}
# Words that may follow a number without being its unit.
_FILLERS = {
    *("altogether", "each", "left", "more", "less", "fewer", "total", "in", "all", "of", "them"),
    *("over", "the", "a", "an", "there", "are", "is", "every", "per", "so", "and", "away", "long"),
}
_WORD = re.compile(r"[^\W\d_]+")


def measure_of(text: str) -> Unit | None:
    """The unit of measure that the words begin with, or None: 'kg of flour', 'Grams', 'sq cm'.

    The pound is the one of mass: money is read by its sign.
    """
    words = text.replace("^", "").strip(" .,;!").split()
    for count in (3, 2, 1):
        if len(words) >= count and (unit := _named(" ".join(words[:count]).rstrip(".,"))):
            return unit if unit is not POUND else None
    return None


def _named(word: str) -> Unit | None:
    for spelling in _spellings(word):
        if unit := unit_named(spelling):
            return unit
        if meant := unit_meant(spelling):
            return UNITS[meant]
        if loose := _LOOSE.get(spelling.lower()):
            return UNITS[loose]
    return None


def _spellings(word: str) -> Iterator[str]:
    yield word
    if len(word) > 2 and word.endswith("s"):
        yield word[:-1]


def without_fillers(text: str) -> str:
    """The words without those that say nothing about the unit ('altogether', 'left')."""
    return " ".join(word for word in text.split() if word.lower().strip(".,!") not in _FILLERS)


def same_noun(text: str, unit: Unit) -> bool:
    """True where the words name what the unit counts: any telling word in common will do."""
    wanted = _stems(f"{unit.singular} {unit.plural}")
    return bool(_stems(text) & wanted)


def _stems(text: str) -> set[str]:
    """The words without endings that a pupil may leave out or add ('gull', 'gulls', 'gull's')."""
    words = {word.lower() for word in _WORD.findall(text)} - _FILLERS
    stems = {re.sub(r"(?:es|s)$", "", word) if len(word) > 3 else word for word in words}
    return stems - {""}
