"""A formula's text cut into names, signs and functions.

Names may have several words, even 'of' or a hyphen among them ('cost of tickets'), so the
names that are known are looked for first, the longest before the shorter.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from enum import Enum

from typeset.arithmetic.equations import OF, PLUS
from typeset.arithmetic.names import listed, near_name
from typeset.errors import AmountError
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

# How many arguments a function takes: at least, at most.
FUNCTIONS = {
    "quotient": (2, 2),
    "remainder": (2, 2),
    "round up": (1, 2),
    "round down": (1, 2),
    "hcf": (2, 4),
    "lcm": (2, 4),
    "mean": (2, 12),
    "larger of": (2, 2),
    "smaller of": (2, 2),
    "difference": (2, 2),
    "which is larger": (2, 4),
    "which is smaller": (2, 4),
}
# The functions that answer with a name, and whether they choose the larger.
CHOICES = {"which is larger": True, "which is smaller": False}
_SIGNS = {
    "+": PLUS,
    "-": MINUS,
    "–": MINUS,
    MINUS: MINUS,
    TIMES: TIMES,
    "*": TIMES,
    DIVIDE: DIVIDE,
    "/": DIVIDE,
}
_SIGN_WORDS = {"of": OF, "x": TIMES}
_FUNCTION = re.compile(rf"({'|'.join(FUNCTIONS)})\s*(?=\()")
_WORDS = re.compile(r"[^\W\d][\w’']*(?:[ -][^\W\d][\w’']*)*")
_NUMBER = re.compile(r"[£\d][\d.,]*\s*%?")
_WORD = re.compile(r"[^\W\d]+")


class Mark(Enum):
    """What a token is."""

    NAME = "name"
    SIGN = "sign"
    FUNCTION = "function"
    OPEN = "("
    CLOSE = ")"
    COMMA = ","
    END = "the end"


@dataclass(frozen=True, slots=True)
class Token:
    """A token with its text; a sign's text is the true sign (×, not *)."""

    mark: Mark
    text: str


def tokens_of(text: str, names: Collection[str]) -> list[Token]:
    """The tokens of the formula, the last of them an END.

    Raises AmountError for an unknown name, a bare number or a stray character.
    """
    return [*_tokens(text, sorted(names, key=len, reverse=True)), Token(Mark.END, "the end")]


def _tokens(text: str, names: list[str]) -> Iterator[Token]:
    at = 0
    while at < len(text):
        if text[at].isspace():
            at += 1
            continue
        token, length = _token_at(text, at, names)
        yield token
        at += length


def _token_at(text: str, at: int, names: list[str]) -> tuple[Token, int]:
    """The token that starts here, and how much text it takes."""
    if function := _FUNCTION.match(text, at):
        return Token(Mark.FUNCTION, function[1]), len(function[0])
    for name in names:
        if text.startswith(name, at) and _ends_word(text, at + len(name)):
            return Token(Mark.NAME, name), len(name)
    if text[at] in _SIGNS:
        return Token(Mark.SIGN, _SIGNS[text[at]]), 1
    if text[at] in "(),":
        return Token(Mark(text[at]), text[at]), 1
    word = _WORD.match(text, at)
    if word and word[0] in _SIGN_WORDS:
        return Token(Mark.SIGN, _SIGN_WORDS[word[0]]), len(word[0])
    raise _stray(text, at, names)


def _ends_word(text: str, at: int) -> bool:
    return at >= len(text) or not (text[at].isalnum() or text[at] in "’'")


def _stray(text: str, at: int, names: list[str]) -> AmountError:
    if number := _NUMBER.match(text, at):
        return AmountError(
            f"'{number[0].strip()}' is a bare number in '{text.strip()}'",
            "give it a name under quantities, or under facts where the story does not tell it",
        )
    if words := _WORDS.match(text, at):
        return unknown_name(re.split(r" (?:of|x) ", words[0])[0], names)
    return AmountError(
        f"'{text[at]}' cannot stand in '{text.strip()}'", "use names, + − × ÷ of, and brackets"
    )


def unknown_name(name: str, names: Collection[str]) -> AmountError:
    """The complaint about a name that nothing has, with the nearest known one."""
    near = near_name(name, [*names, *FUNCTIONS])
    if near:
        return AmountError(f"unknown name '{name}'", f"did you mean '{near}'?")
    return AmountError(f"unknown name '{name}'", f"write {listed(sorted(names))}")
