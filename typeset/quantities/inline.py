"""Text as it will be set: words, unbreakable maths, blanks.

A `Rich` text is a tuple of inline items. Arithmetic writes it, setting lays it out,
proofing compares what the page says with `plain()` of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias


@dataclass(frozen=True, slots=True)
class Stacked:
    """A fraction set one number over the other."""

    over: str
    under: str


@dataclass(frozen=True, slots=True)
class MissingBox:
    """An empty box for a missing number inside an expression, `ems` wide."""

    ems: Fraction = Fraction(3, 2)


Piece: TypeAlias = str | Stacked | MissingBox


@dataclass(frozen=True, slots=True)
class Words:
    """Running text; lines may break at its spaces (not at U+00A0)."""

    text: str
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Solid:
    """Maths that never breaks: an amount with its unit, or one side of an equation."""

    pieces: tuple[Piece, ...]
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Equals:
    """An equation: sides that never break, joined by relation signs ('=', '<', '>').

    It stays on one line where it fits; where it cannot, a line may break before a sign.
    `len(sides) == len(signs) + 1`.
    """

    sides: tuple[Solid, ...]
    signs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """A rule to write on, `ems` wide, never broken."""

    ems: Fraction = Fraction(4)


Inline: TypeAlias = Words | Solid | Equals | Blank
Rich: TypeAlias = tuple[Inline, ...]

BLANK_TEXT = "____"
BOX_TEXT = "[ ]"


def words(text: str, bold: bool = False) -> Rich:
    """Running text alone."""
    return (Words(text, bold),)


def solid(*pieces: Piece) -> Rich:
    """One unbreakable run alone."""
    return (Solid(pieces),)


def join(parts: Iterable[Rich], between: str = "") -> Rich:
    """The texts one after another, with `between` as words between them."""
    result: list[Inline] = []
    for index, part in enumerate(parts):
        if index and between:
            result.append(Words(between))
        result.extend(part)
    return tuple(result)


def plain(rich: Rich) -> str:
    """The text for a terminal, JSON, or comparison: '2 3/4 kg', '6 × 12 = 72'.

    No-break spaces become plain spaces. A mixed number has a space between its parts.
    """
    return "".join(_plain_item(item) for item in rich).replace("\u00a0", " ")


def _plain_item(item: Inline) -> str:
    match item:
        case Words(text=text):
            return text
        case Solid(pieces=pieces):
            return _plain_pieces(pieces)
        case Equals(sides=sides, signs=signs):
            text = _plain_pieces(sides[0].pieces)
            for sign, side in zip(signs, sides[1:], strict=True):
                text += f" {sign} {_plain_pieces(side.pieces)}"
            return text
        case Blank():
            return BLANK_TEXT


def _plain_pieces(pieces: tuple[Piece, ...]) -> str:
    text = ""
    for piece in pieces:
        match piece:
            case str():
                text += piece
            case Stacked(over=over, under=under):
                gap = " " if text[-1:].isdigit() else ""
                text += f"{gap}{over}/{under}"
            case MissingBox():
                text += BOX_TEXT
    return text
