"""The kinds of answer a problem may have, and how each is printed and compared."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from typeset.quantities.amount import Amount
from typeset.quantities.inline import Piece, Rich, Solid, Words
from typeset.quantities.writing import NO_BREAK, exact, unit_text, whole, write


@dataclass(frozen=True, slots=True)
class RatioAnswer:
    """A ratio in the order asked for; as an answer it is in simplest form."""

    parts: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class WithRemainder:
    """A number of groups and what is left over, where the answer is both."""

    groups: Amount
    rest: Amount


@dataclass(frozen=True, slots=True)
class NameAnswer:
    """A choice between named things ('the larger tin'), or 'equal'."""

    name: str


AnswerValue: TypeAlias = Amount | RatioAnswer | WithRemainder | NameAnswer


def same_answer(one: AnswerValue, other: AnswerValue) -> bool:
    """True where both say the same, in whatever unit or form."""
    if isinstance(one, Amount) and isinstance(other, Amount):
        return one.same_as(other)
    return one == other


def answer_text(value: AnswerValue) -> Rich:
    """The answer as it is printed in the booklet."""
    match value:
        case Amount():
            return (write(value),)
        case RatioAnswer(parts=parts):
            return (Solid(tuple(_ratio_pieces(parts))),)
        case WithRemainder(groups=groups, rest=rest):
            return (write(groups), Words(", "), write(rest), Words(" left over"))
        case NameAnswer(name=name):
            return (Words(name),)


def answer_exact(value: AnswerValue) -> str:
    """The value as an exact string for other programs: '7/2', '2.5', '3:14', '86 r 2'."""
    match value:
        case Amount():
            return exact(value)
        case RatioAnswer(parts=parts):
            return ":".join(str(part) for part in parts)
        case WithRemainder(groups=groups, rest=rest):
            return f"{exact(groups)} r {exact(rest)}"
        case NameAnswer(name=name):
            return name


def answer_unit(value: AnswerValue) -> str:
    """The unit's word or symbol ('gulls', 'g', '£'), empty where there is none."""
    match value:
        case Amount():
            return unit_text(value.unit, value.value)
        case WithRemainder(groups=groups):
            return unit_text(groups.unit, groups.value)
        case _:
            return ""


def _ratio_pieces(parts: tuple[Fraction, ...]) -> list[Piece]:
    pieces: list[Piece] = []
    for index, part in enumerate(parts):
        if index:
            pieces.append(f"{NO_BREAK}:{NO_BREAK}")
        pieces.extend(
            [whole(part.numerator)] if part.denominator == 1 else write(Amount(part)).pieces
        )
    return pieces
