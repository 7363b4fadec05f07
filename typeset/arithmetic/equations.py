"""Equations as trees: written for a pupil, and evaluated again before they may be printed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from typeset.quantities.amount import Amount
from typeset.quantities.inline import Equals, MissingBox, Piece, Solid, plain
from typeset.quantities.units import ONE, Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, write

PLUS = "+"
OF = "of"
EQUAL = "="
LESS = "<"
MORE = ">"

_STRENGTH = {PLUS: 1, MINUS: 1, TIMES: 2, DIVIDE: 2, OF: 2}
_GAP = "\u00a0"


@dataclass(frozen=True, slots=True)
class Operation:
    """`left sign right`; the sign is one of + − × ÷ of."""

    sign: str
    left: Expression
    right: Expression


@dataclass(frozen=True, slots=True)
class Parts:
    """A ratio written with colons, `a : b : c`. It has no value of its own."""

    parts: tuple[Amount, ...]


@dataclass(frozen=True, slots=True)
class Remainder:
    """A quotient with what is left over, `86 r 2`; stands only alone after '='."""

    quotient: Amount
    rest: Amount


@dataclass(frozen=True, slots=True)
class Unknown:
    """A missing-number box. An equation that holds one is printed but proves nothing."""


Expression: TypeAlias = Amount | Operation | Parts | Remainder | Unknown


@dataclass(frozen=True, slots=True)
class Equation:
    """Expressions joined by relation signs. `len(sides) == len(signs) + 1`."""

    sides: tuple[Expression, ...]
    signs: tuple[str, ...] = (EQUAL,)

    def holds(self) -> bool:
        """True where every neighbouring pair of sides stands in its relation exactly."""
        pairs = zip(self.sides, self.sides[1:], self.signs, strict=False)
        return all(_related(left, right, sign) for left, right, sign in pairs)

    def written(self) -> Equals:
        """The equation as it is set: counted things as bare numbers, measures with units."""
        return Equals(tuple(Solid(tuple(_pieces(side))) for side in self.sides), self.signs)

    def text(self) -> str:
        """The equation as plain text."""
        return plain((self.written(),))


def equation(*sides: Expression) -> Equation:
    """The sides joined by '='."""
    return Equation(sides, (EQUAL,) * (len(sides) - 1))


def plus(*terms: Expression) -> Expression:
    """The sum of the terms, from the left."""
    return _chain(PLUS, terms)


def minus(left: Expression, right: Expression) -> Operation:
    """`left − right`."""
    return Operation(MINUS, left, right)


def times(*factors: Expression) -> Expression:
    """The product of the factors, from the left."""
    return _chain(TIMES, factors)


def over(left: Expression, right: Expression) -> Operation:
    """`left ÷ right`."""
    return Operation(DIVIDE, left, right)


def part_of(part: Expression, whole: Expression) -> Operation:
    """`part of whole`, for a fraction or percentage."""
    return Operation(OF, part, whole)


def value_of(expression: Expression) -> Fraction:
    """The exact value in base units.

    Raises ZeroDivisionError for ÷ 0, ValueError for an expression without a single value.
    """
    if isinstance(expression, Amount):
        return expression.base
    return Fraction(*_over_and_under(expression))


def _over_and_under(expression: Expression) -> tuple[int, int]:
    """The value as two whole numbers, one over the other, exact but not in lowest terms.

    Sums of a working are short, so the numbers stay small, and this is several times as fast
    as fractions that are brought to lowest terms after every operation.
    """
    match expression:
        case Amount(value=value, unit=unit):
            size = unit.per_base
            if size is ONE:
                return value.numerator, value.denominator
            return value.numerator * size.numerator, value.denominator * size.denominator
        case Operation(sign=sign, left=left, right=right):
            return _apply(sign, _over_and_under(left), _over_and_under(right))
        case _:
            raise ValueError("a ratio, remainder or missing number has no single value")


def has_unknown(expression: Expression) -> bool:
    """True where a missing number stands anywhere in the expression."""
    if isinstance(expression, Operation):
        return has_unknown(expression.left) or has_unknown(expression.right)
    return isinstance(expression, Unknown)


def operations(expression: Expression) -> Iterator[Operation]:
    """Every operation of the expression, innermost first."""
    if isinstance(expression, Operation):
        yield from operations(expression.left)
        yield from operations(expression.right)
        yield expression


def _chain(sign: str, terms: tuple[Expression, ...]) -> Expression:
    result = terms[0]
    for term in terms[1:]:
        result = Operation(sign, result, term)
    return result


def _apply(sign: str, left: tuple[int, int], right: tuple[int, int]) -> tuple[int, int]:
    (a, b), (c, d) = left, right
    match sign:
        case "+":
            return (a + c, b) if b == d else (a * d + c * b, b * d)
        case "\u2212":
            return (a - c, b) if b == d else (a * d - c * b, b * d)
        case "\u00d7" | "of":
            return a * c, b * d
        case "\u00f7":
            if not c:
                raise ZeroDivisionError("a sum divides by 0")
            # What is under stays above 0, so that values can be compared crosswise.
            return (a * d, b * c) if c > 0 else (-a * d, -b * c)
    raise ValueError(f"unknown sign {sign!r}")


def _related(left: Expression, right: Expression, sign: str) -> bool:
    if isinstance(right, Parts) and isinstance(left, Parts):
        return _same_ratio(left, right)
    if isinstance(right, Remainder):
        return has_unknown(left) or _divides_with(left, right)
    try:
        (a, b), (c, d) = _over_and_under(left), _over_and_under(right)
    except (ValueError, ZeroDivisionError):
        if has_unknown(left) or has_unknown(right):
            return True
        raise
    first, second = a * d, c * b
    if sign == EQUAL:
        return first == second
    return first < second if sign == LESS else first > second


def _same_ratio(left: Parts, right: Parts) -> bool:
    if len(left.parts) != len(right.parts):
        return False
    first = right.parts[0].base * left.parts[0].unit.per_base
    scales = {theirs.base / mine.base for mine, theirs in zip(left.parts, right.parts, strict=True)}
    return bool(first) and len(scales) == 1


def _divides_with(left: Expression, right: Remainder) -> bool:
    """Euclid's division: dividend = divisor × quotient + rest, with 0 ≤ rest < divisor."""
    if not (isinstance(left, Operation) and left.sign == DIVIDE):
        return False
    dividend, divisor = value_of(left.left), value_of(left.right)
    rest = right.rest.base
    return 0 <= rest < divisor and dividend == divisor * right.quotient.value + rest


def _pieces(expression: Expression) -> Iterator[Piece]:
    match expression:
        case Amount():
            yield from write(_bare(expression)).pieces
        case Unknown():
            yield MissingBox()
        case Parts(parts=parts):
            for index, part in enumerate(parts):
                if index:
                    yield f"{_GAP}:{_GAP}"
                yield from write(_bare(part)).pieces
        case Remainder(quotient=quotient, rest=rest):
            yield from write(_bare(quotient)).pieces
            yield f"{_GAP}r{_GAP}"
            yield from write(_bare(rest)).pieces
        case Operation():
            yield from _operand(expression.left, expression, is_right=False)
            yield f"{_GAP}{expression.sign}{_GAP}"
            yield from _operand(expression.right, expression, is_right=True)


def _operand(inner: Expression, outer: Operation, is_right: bool) -> Iterator[Piece]:
    """The operand, in brackets where reading order would otherwise change its meaning."""
    pieces = _pieces(inner)
    if not (isinstance(inner, Operation) and _needs_brackets(inner, outer, is_right)):
        yield from pieces
        return
    yield "("
    yield from pieces
    yield ")"


def _needs_brackets(inner: Operation, outer: Operation, is_right: bool) -> bool:
    weaker = _STRENGTH[inner.sign] < _STRENGTH[outer.sign]
    same = _STRENGTH[inner.sign] == _STRENGTH[outer.sign]
    return weaker or (
        is_right and same and (outer.sign, inner.sign) not in {("+", "+"), (TIMES, TIMES)}
    )


def _bare(amount: Amount) -> Amount:
    """The amount without the noun that is counted: equations hold numbers and measures."""
    if amount.unit.dimension is not Dimension.COUNT:
        return amount
    return Amount(amount.value, form=amount.form, places=amount.places)
