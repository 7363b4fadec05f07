"""One tern, three terns: the singular and plural of the things an author counts.

The regular rules of British spelling; words without a rule are in `irregular_nouns.py`.
An author's own pairs (`nouns:` in week.yaml) come first.
"""

from __future__ import annotations

from collections.abc import Mapping

from typeset.quantities.irregular_nouns import ENDINGS, IRREGULAR, NO_MEN, SAME, SAME_ENDINGS
from typeset.quantities.units import Unit, noun

_PLURALS = {many: one for one, many in IRREGULAR.items()}
_VOWELS = "aeiou"
_HISSING = ("s", "x", "z", "ch", "sh")
# Before a plural -es that belongs to the singular's sound, not to its spelling.
_HISSING_STEMS = ("ss", "x", "zz", "tz", "ch", "sh")
# The words after which the rest of a noun phrase does not change: 'pots of paint'.
_AFTER_HEAD = (
    *(" of ", " in ", " with ", " without ", " for ", " to ", " from ", " on ", " at ", " by "),
    *(" per ", " a ", " an ", " who ", " that ", " which "),
)


def plural(singular: str, own: Mapping[str, str] | None = None) -> str:
    """The plural of a noun or noun phrase ('pot of paint' gives 'pots of paint')."""
    own = own or {}
    if singular in own:
        return own[singular]
    before, head, after = _split(singular)
    return before + _like_cased(head, _plural_word(head.lower(), own)) + after


def singular(many: str, own: Mapping[str, str] | None = None) -> str:
    """The singular of a plural noun or noun phrase ('pots of paint' gives 'pot of paint')."""
    singulars = {each: one for one, each in (own or {}).items()}
    if many in singulars:
        return singulars[many]
    before, head, after = _split(many)
    return before + _like_cased(head, _singular_word(head.lower(), singulars)) + after


def counted(phrase: str, is_one: bool, own: Mapping[str, str] | None = None) -> Unit:
    """The unit of a noun as the author typed it after a number: singular after 1, else plural."""
    if is_one and plural(phrase, own) != phrase:
        return noun(phrase, plural(phrase, own))
    return noun(singular(phrase, own), phrase)


def looks_plural(phrase: str, own: Mapping[str, str] | None = None) -> bool:
    """True for what the rules and tables take for the plural of another word."""
    one = singular(phrase, own)
    head = _split(phrase)[1].lower()
    return one != phrase and plural(one, own) == phrase and head not in IRREGULAR


def _split(phrase: str) -> tuple[str, str, str]:
    """The phrase as what stands before its head noun, the head, and what follows."""
    cut = min((at for mark in _AFTER_HEAD if (at := phrase.find(mark)) > 0), default=len(phrase))
    front, after = phrase[:cut], phrase[cut:]
    before, space, head = front.rpartition(" ")
    return before + space, head, after


def _like_cased(model: str, word: str) -> str:
    """The word with a capital where the model has one ('Loaf', 'Loaves')."""
    if word.lower() == model.lower():
        return model
    return word[:1].upper() + word[1:] if model[:1].isupper() else word


def _plural_word(word: str, own: Mapping[str, str]) -> str:
    if word in own:
        return own[word]
    if word in IRREGULAR:
        return IRREGULAR[word]
    front, hyphen, last = word.rpartition("-")
    if hyphen:
        return f"{front}-{_plural_word(last, own)}"
    if word in SAME or word.endswith(SAME_ENDINGS) or not word:
        return word
    for one, many in ENDINGS:
        if word.endswith(one) and word not in NO_MEN:
            return word.removesuffix(one) + many
    if word.endswith(_HISSING):
        return word + "es"
    if word.endswith("y") and word[-2:-1] not in _VOWELS:
        return word[:-1] + "ies"
    return word + "s"


def _singular_word(word: str, own: Mapping[str, str]) -> str:
    if word in own:
        return own[word]
    if word in _PLURALS:
        return _PLURALS[word]
    front, hyphen, last = word.rpartition("-")
    if hyphen:
        return f"{front}-{_singular_word(last, own)}"
    for one, many in ENDINGS:
        if word.endswith(many):
            return word.removesuffix(many) + one
    if word in SAME or word.endswith(SAME_ENDINGS) or not word.endswith("s"):
        return word
    return _without_s(word)


def _without_s(word: str) -> str:
    if word.endswith("ss"):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith("es") and word[:-2].endswith(_HISSING_STEMS):
        return word[:-2]
    return word[:-1]
