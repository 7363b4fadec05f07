"""A number sentence with one box, as typed ('7 × _ + 5 = 47') and as a tree."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.equations import (
    PLUS,
    Equation,
    Expression,
    Operation,
    Unknown,
    has_unknown,
    value_of,
)
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.parsing import parse_amount
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_NUMBER = r"(?:\d+\s)?\d+/\d+|\d[\d,]*(?:\.\d+)?"
_BOX = r"\?|\u25a1|_+|\[\s?\]"
_TOKEN = re.compile(rf"\s*(?:(?P<number>{_NUMBER})|(?P<box>{_BOX})|(?P<sign>.))", re.ASCII)
_SIGNS = {
    "+": PLUS,
    "-": MINUS,
    "\u2013": MINUS,
    MINUS: MINUS,
    TIMES: TIMES,
    "x": TIMES,
    "*": TIMES,
    DIVIDE: DIVIDE,
    "/": DIVIDE,
    "(": "(",
    ")": ")",
    "=": "=",
}
_MOST_NUMBERS = 8
_HOW = "write such as 7 × _ + 5 = 47, with _ for the box"


@dataclass(frozen=True, slots=True)
class Sentence:
    """Two sides joined by '='; one of them holds the box."""

    left: Expression
    right: Expression

    @property
    def box_side(self) -> Expression:
        """The side with the box."""
        return self.left if has_unknown(self.left) else self.right

    @property
    def known_side(self) -> Expression:
        """The side without."""
        return self.right if has_unknown(self.left) else self.left

    @property
    def numbers(self) -> tuple[Amount, ...]:
        """The numbers in the order of reading."""
        return (*leaves(self.left), *leaves(self.right))

    def equation(self) -> Equation:
        """The sentence as it is set."""
        return Equation((self.left, self.right))

    def with_numbers(self, numbers: Iterator[Amount]) -> Sentence:
        """The same sentence with other numbers, in the order of reading."""
        return Sentence(_replaced(self.left, numbers), _replaced(self.right, numbers))


def leaves(expression: Expression) -> Iterator[Amount]:
    """The numbers of an expression in the order of reading."""
    if isinstance(expression, Operation):
        yield from leaves(expression.left)
        yield from leaves(expression.right)
    elif isinstance(expression, Amount):
        yield expression


def filled(expression: Expression, number: Amount) -> Expression:
    """The expression with a number in its box."""
    if isinstance(expression, Operation):
        left, right = filled(expression.left, number), filled(expression.right, number)
        return Operation(expression.sign, left, right)
    return number if isinstance(expression, Unknown) else expression


def _replaced(expression: Expression, numbers: Iterator[Amount]) -> Expression:
    if isinstance(expression, Operation):
        left = _replaced(expression.left, numbers)
        return Operation(expression.sign, left, _replaced(expression.right, numbers))
    return next(numbers) if isinstance(expression, Amount) else expression


def box_value(sentence: Sentence) -> Fraction:
    """The number that belongs into the box.

    As a function of the box the side that holds it is (p·x + q) ÷ (r·x + s), so the sentence
    is one linear equation. Raises AmountError where no number fits, or any; ZeroDivisionError.
    """
    p, q, r, s = _fraction_of(sentence.box_side)
    known = value_of(sentence.known_side)
    over, under = known * s - q, p - known * r
    if not under:
        what = "no number" if over else "every number"
        raise AmountError(f"{what} fits in the box", "choose other numbers")
    found = over / under
    if not r * found + s:
        raise AmountError("the only number for the box would divide by 0", "choose other numbers")
    return found


_Form = tuple[Fraction, Fraction, Fraction, Fraction]
_ONE, _NOUGHT = Fraction(1), Fraction(0)


def _fraction_of(expression: Expression) -> _Form:
    """(p, q, r, s) of an expression that holds the box once."""
    if not isinstance(expression, Operation):
        return _ONE, _NOUGHT, _NOUGHT, _ONE
    is_first = has_unknown(expression.left)
    inner, other = (
        (expression.left, expression.right) if is_first else (expression.right, expression.left)
    )
    p, q, r, s = _fraction_of(inner)
    c = value_of(other)
    match expression.sign:
        case "+":
            return p + c * r, q + c * s, r, s
        case "\u2212":
            return (p - c * r, q - c * s, r, s) if is_first else (c * r - p, c * s - q, r, s)
        case "\u00d7":
            return p * c, q * c, r, s
        case _:
            if is_first and not c:
                raise ZeroDivisionError
            return (p, q, r * c, s * c) if is_first else (c * r, c * s, p, q)


def read_sentence(text: str) -> Sentence:
    """The sentence that the text says. Raises AmountError with what would be right."""
    tokens = list(_tokens(text))
    if tokens.count("=") != 1:
        raise AmountError("a number sentence has one equals sign", _HOW)
    if sum(isinstance(each, Unknown) for each in tokens) != 1:
        raise AmountError("a number sentence has one box", _HOW)
    if not 2 <= sum(isinstance(each, Amount) for each in tokens) <= _MOST_NUMBERS:
        raise AmountError(
            f"a number sentence has 2 to {_MOST_NUMBERS} numbers besides the box", _HOW
        )
    cut = tokens.index("=")
    left, right = (_Parser(side).whole() for side in (tokens[:cut], tokens[cut + 1 :]))
    sentence = Sentence(left, right)
    if isinstance(sentence.box_side, Unknown):
        raise AmountError("the box stands alone on its side", "put it into the sum: 3 + _ = 9")
    return sentence


def _tokens(text: str) -> Iterator[Amount | Unknown | str]:
    for match in _TOKEN.finditer(text.strip()):
        if match["number"]:
            yield parse_amount(match["number"])
        elif match["box"]:
            yield Unknown()
        elif match["sign"] in _SIGNS:
            yield _SIGNS[match["sign"]]
        else:
            raise AmountError(f"'{match['sign']}' does not belong in a number sentence", _HOW)


@dataclass(slots=True)
class _Parser:
    """One side, by the usual order: brackets, then × and ÷, then + and −, from the left."""

    tokens: list[Amount | Unknown | str]

    def whole(self) -> Expression:
        """The whole side."""
        found = self._sum()
        if self.tokens:
            raise AmountError("two numbers, or a bracket, stand without a sign between", _HOW)
        return found

    def _sum(self) -> Expression:
        found = self._product()
        while self.tokens and self.tokens[0] in (PLUS, MINUS):
            found = Operation(str(self.tokens.pop(0)), found, self._product())
        return found

    def _product(self) -> Expression:
        found = self._one()
        while self.tokens and self.tokens[0] in (TIMES, DIVIDE):
            found = Operation(str(self.tokens.pop(0)), found, self._one())
        return found

    def _one(self) -> Expression:
        first = self.tokens.pop(0) if self.tokens else ""
        if isinstance(first, Amount | Unknown):
            return first
        if first != "(":
            raise AmountError("a number is missing in the number sentence", _HOW)
        found = self._sum()
        if not self.tokens or self.tokens.pop(0) != ")":
            raise AmountError("a bracket is not closed", _HOW)
        return found
