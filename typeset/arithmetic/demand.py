"""How demanding a working is: a score that never falls when its numbers get harder.

Each line costs a little. Each operation costs its kind, plus what its numbers add: digits
beyond one that have to be held, crossing a ten, a multiplication beyond the tables to 12 × 12
(which England's national curriculum asks for by the end of Year 4), a division that is no
table fact backwards, a remainder, and parts of a whole. The weights are ours (common
practice, no source); only order matters. `ranking.py` tells the costs in words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from enum import Enum
from fractions import Fraction
from math import floor

from typeset.arithmetic.equations import (
    OF,
    PLUS,
    Equation,
    Expression,
    Operation,
    Remainder,
    operations,
    value_of,
)
from typeset.arithmetic.workings import Working
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES


class Cost(Enum):
    """What makes a working demanding."""

    LINES = "lines"
    SUMS = "sums"
    DIGITS = "digits"
    CROSSING = "crossing a ten"
    TABLES = "beyond the tables"
    PARTS = "fractions and decimals"


_BASE = {
    PLUS: Fraction(1),
    MINUS: Fraction(5, 4),
    TIMES: Fraction(3, 2),
    DIVIDE: Fraction(2),
    OF: Fraction(3),
}
_DIGIT = Fraction(1, 4)
_CROSSING = Fraction(1, 2)
# For each product of two digits that a written multiplication (or the check of a division) has.
_BEYOND_TABLES = Fraction(3, 4)
# For each further row of a long multiplication (a further subtraction of a long division).
_ROW = Fraction(2)
# A rest to find after the nearest table fact.
_REST = Fraction(1)
_PART = Fraction(2)
# A line to read and keep in mind, even without a sum in it.
_LINE = Fraction(1, 2)
_TABLES_TO = 12


def demand_of(working: Working) -> Fraction:
    """The score of a whole working; never negative."""
    return sum(costs_of(working).values(), Fraction(0))


def demand_of_set(scores: Sequence[Fraction]) -> Fraction:
    """The mean of the scores of several problems, so that sets of any length compare."""
    return sum(scores, Fraction(0)) / max(1, len(scores))


def costs_of(working: Working) -> Mapping[Cost, Fraction]:
    """The score by what it is for."""
    costs = dict.fromkeys(Cost, Fraction(0))
    costs[Cost.LINES] = _LINE * len(working.steps)
    for operation, has_rest in sums_of(working):
        for cost, value in costs_of_sum(operation, has_rest).items():
            costs[cost] += value
    return costs


def sums_of(working: Working) -> Iterator[tuple[Operation, bool]]:
    """Every operation of the working in order; True where its equation has a remainder."""
    for step in working.steps:
        if step.equation is not None:
            yield from _sums_in(step.equation)


def _sums_in(equation: Equation) -> Iterator[tuple[Operation, bool]]:
    has_rest = any(isinstance(side, Remainder) for side in equation.sides)
    for side in equation.sides:
        for operation in operations(side):
            yield operation, has_rest


def costs_of_sum(each: Operation, has_rest: bool = False) -> Mapping[Cost, Fraction]:
    """What one operation costs; `has_rest` where it divides with a remainder."""
    left, right = seen_values(each)
    costs = {
        Cost.SUMS: _BASE[each.sign] + (_BASE[TIMES] if _takes_several(each.sign, left) else 0),
        Cost.DIGITS: _DIGIT * sum(digits_of(value) - 1 for value in (left, right)),
        Cost.PARTS: _PART * sum(value.denominator != 1 for value in (left, right)),
    }
    if each.sign in (PLUS, MINUS):
        costs[Cost.CROSSING] = _CROSSING if _crosses_ten(each.sign, left, right) else Fraction(0)
    elif each.sign == TIMES:
        costs[Cost.TABLES] = _product(left, right)
    elif each.sign == DIVIDE:
        costs[Cost.TABLES] = _quotient(left, right, has_rest)
    else:
        costs[Cost.TABLES] = _part(left, right)
    return costs


def _takes_several(sign: str, part: Fraction) -> bool:
    """True for 'so many parts of', which multiplies after it has divided."""
    return sign == OF and part.denominator != 1 and part.numerator != 1


def seen_values(each: Operation) -> tuple[Fraction, Fraction]:
    """The two numbers as the pupil sees them: in their own units, and pence as whole numbers
    where no pounds stand beside them."""
    left, right = written_value(each.left), written_value(each.right)
    money = [side for side in (each.left, each.right) if _is_money(side)]
    if not money or not all(_in_pence(side) for side in money):
        return left, right
    return (
        left * 100 if _is_money(each.left) else left,
        right * 100 if _is_money(each.right) else right,
    )


def written_value(expression: Expression) -> Fraction:
    """The number in its own unit, not in the base unit; of a sum, what its numbers make."""
    if isinstance(expression, Amount):
        return expression.value
    if isinstance(expression, Operation):
        left, right = written_value(expression.left), written_value(expression.right)
        if expression.sign == DIVIDE and not right:
            return Fraction(0)
        return value_of(replace(expression, left=Amount(left), right=Amount(right)))
    return Fraction(0)


def _is_money(side: Expression) -> bool:
    return isinstance(side, Amount) and side.unit.dimension is Dimension.MONEY


def _in_pence(side: Expression) -> bool:
    is_part = isinstance(side, Amount) and (abs(side.value) < 1 or side.form is Form.PENCE)
    return is_part and isinstance(side, Amount) and (side.value * 100).denominator == 1


def digits_of(value: Fraction) -> int:
    """How many digits take part in a sum; noughts at the end of a whole number do not.

    A decimal has those after its point too; of a fraction that is no decimal, those of the
    whole number before it and of both its numbers count.
    """
    whole, rest = divmod(abs(value), 1)
    if not rest:
        return _length(whole)
    places = _places(rest.denominator)
    if places is None:
        before = _length(whole) if whole else 0
        return before + _length(rest.numerator) + _length(rest.denominator)
    return len(str((abs(value) * 10**places).numerator))


def _length(number: int) -> int:
    return len(str(number).rstrip("0") or "0")


def _places(under: int) -> int | None:
    """Digits after the point of a decimal with this lower number; None where it never ends."""
    counts = []
    for prime in (2, 5):
        count = 0
        while under % prime == 0:
            under //= prime
            count += 1
        counts.append(count)
    return max(counts) if under == 1 else None


def _crosses_ten(sign: str, left: Fraction, right: Fraction) -> bool:
    if left.denominator != 1 or right.denominator != 1:
        return True
    one, other = abs(left.numerator), abs(right.numerator)
    while one or other:
        last, taken = one % 10, other % 10
        if (last + taken > 9) if sign == PLUS else (last < taken):
            return True
        one, other = one // 10, other // 10
    return False


def _product(left: Fraction, right: Fraction) -> Fraction:
    """Nothing for a fact of the tables, whatever noughts hang on its numbers, nor for × 10."""
    if (_in_tables(left) and _in_tables(right)) or _moves_places(left) or _moves_places(right):
        return Fraction(0)
    return _written_product(_places_to_work(left), _places_to_work(right))


def _written_product(one: int, other: int) -> Fraction:
    """The products of digits, and the rows that have to be added where both have several."""
    return _BEYOND_TABLES * max(2, one * other) + _ROW * (min(one, other) - 1)


def _places_to_work(value: Fraction) -> int:
    """The digits that are multiplied; the point of a decimal takes a place of its own."""
    return digits_of(value) + (value.denominator != 1)


def _quotient(left: Fraction, right: Fraction, has_rest: bool) -> Fraction:
    """As the product that checks it; with a remainder, as the whole part and finding the rest."""
    if not right:
        return Fraction(0)
    quotient = left / right
    if has_rest:
        return _product(Fraction(floor(quotient)), right) + _REST
    return _product(quotient, right)


def _part(left: Fraction, right: Fraction) -> Fraction:
    """3/4 of 12 divides by 4 and takes 3 of that; a percentage has its number of hundredths."""
    if left.denominator == 1:
        return _written_product(digits_of(left), digits_of(right))
    under = Fraction(left.denominator)
    taken = _product(right / under, Fraction(left.numerator)) if left.numerator != 1 else 0
    return _quotient(right, under, False) + taken


def _moves_places(value: Fraction) -> bool:
    """True for 1, 10, 100 …, by which a number is multiplied without reckoning."""
    return value.denominator == 1 and str(abs(value.numerator)).rstrip("0") == "1"


def _in_tables(value: Fraction) -> bool:
    if value.denominator != 1:
        return False
    core = abs(value.numerator)
    while core > _TABLES_TO and core % 10 == 0:
        core //= 10
    return core <= _TABLES_TO
