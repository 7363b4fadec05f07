"""One tern, three terns: the singular and plural of the things an author counts.

The regular rules of British spelling and the irregular nouns of a primary classroom.
An author's own pairs (`nouns:` in week.yaml) come first.
"""

from __future__ import annotations

from collections.abc import Mapping

from typeset.quantities.units import Unit, noun

_IRREGULAR = {
    "child": "children",
    "person": "people",
    "man": "men",
    "woman": "women",
    "fisherman": "fishermen",
    "foot": "feet",
    "tooth": "teeth",
    "goose": "geese",
    "mouse": "mice",
    "loaf": "loaves",
    "half": "halves",
    "shelf": "shelves",
    "knife": "knives",
    "leaf": "leaves",
    "wolf": "wolves",
    "calf": "calves",
    "scarf": "scarves",
    "thief": "thieves",
    "life": "lives",
    "potato": "potatoes",
    "tomato": "tomatoes",
    "hero": "heroes",
    "echo": "echoes",
    "mango": "mangoes",
    "die": "dice",
    "axis": "axes",
    "vertex": "vertices",
    "buoy": "buoys",
    "pence": "pence",
    "quiz": "quizzes",
    "bus": "buses",
    "lens": "lenses",
    "gas": "gases",
    "canvas": "canvases",
    "compass": "compasses",
    "dinghy": "dinghies",
    "tie": "ties",
    "pie": "pies",
    "movie": "movies",
    "cookie": "cookies",
    "shoe": "shoes",
    "canoe": "canoes",
    "toe": "toes",
    "axe": "axes",
    "cache": "caches",
}
_SAME = {"fish", "sheep", "deer", "salmon", "cod", "mackerel", "squid", "aircraft", "scissors"}
_PLURALS = {many: one for one, many in _IRREGULAR.items()}
_VOWELS = "aeiou"
_HISSING = ("s", "x", "z", "ch", "sh")
# The words after which the rest of a noun phrase does not change: 'pots of paint'.
_AFTER_HEAD = (" of ", " in ", " with ", " for ", " to ", " from ", " on ", " at ")


def plural(singular: str, own: Mapping[str, str] | None = None) -> str:
    """The plural of a noun or noun phrase ('pot of paint' gives 'pots of paint')."""
    before, head, after = _split(singular)
    return before + _plural_word(head, own or {}) + after


def singular(many: str, own: Mapping[str, str] | None = None) -> str:
    """The singular of a plural noun or noun phrase ('pots of paint' gives 'pot of paint')."""
    before, head, after = _split(many)
    return before + _singular_word(head, own or {}) + after


def counted(phrase: str, is_one: bool, own: Mapping[str, str] | None = None) -> Unit:
    """The unit of a noun as the author typed it after a number: singular after 1, else plural."""
    if is_one and plural(phrase, own) != phrase:
        return noun(phrase, plural(phrase, own))
    return noun(singular(phrase, own), phrase)


def _split(phrase: str) -> tuple[str, str, str]:
    """The phrase as what stands before its head noun, the head, and what follows."""
    cut = min((at for mark in _AFTER_HEAD if (at := phrase.find(mark)) > 0), default=len(phrase))
    front, after = phrase[:cut], phrase[cut:]
    before, space, head = front.rpartition(" ")
    return before + space, head, after


def _plural_word(word: str, own: Mapping[str, str]) -> str:
    if word in own:
        return own[word]
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word in _SAME or not word:
        return word
    if word.endswith(_HISSING):
        return word + "es"
    if word.endswith("y") and word[-2:-1] not in _VOWELS:
        return word[:-1] + "ies"
    return word + "s"


def _singular_word(word: str, own: Mapping[str, str]) -> str:
    for one, many in own.items():
        if word == many:
            return one
    if word in _PLURALS:
        return _PLURALS[word]
    if word in _SAME or not word.endswith("s") or word.endswith("ss"):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith("es") and word[:-2].endswith(("ss", "x", "zz", "ch", "sh")):
        return word[:-2]
    return word[:-1]
