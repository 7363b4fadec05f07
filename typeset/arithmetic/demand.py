"""How demanding a working is: a score that never falls when its numbers get harder.

Each line costs a little. Each operation costs its kind, plus what its numbers add: digits
beyond one that have to be held, crossing a ten, a multiplication beyond the tables to 12 × 12
(which England's national curriculum asks for by the end of Year 4), a division that is no
table fact backwards, a remainder, and parts of a whole. The weights are ours (common
practice, no source); only order matters. `ranking.py` tells the costs in words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
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
from typeset.arithmetic.remembering import once_for_each
from typeset.arithmetic.workings import Working
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, digits_after_point


class Cost(Enum):
    """What makes a working demanding."""

    LINES = "lines"
    SUMS = "sums"
    DIGITS = "digits"
    CROSSING = "crossing a ten"
    TABLES = "beyond the tables"
    PARTS = "fractions and decimals"

    # Members are single objects; `Enum` would hash the name anew at every look-up.
    __hash__ = object.__hash__


# Weights are in quarters of a point, so that they are added up as whole numbers.
_QUARTERS = 4
_BASE = {PLUS: 4, MINUS: 5, TIMES: 6, DIVIDE: 8, OF: 12}
_DIGIT = 1
_CROSSING = 2
# For each product of two digits that a written multiplication (or the check of a division) has.
_BEYOND_TABLES = 3
# For each further row of a long multiplication (a further subtraction of a long division).
_ROW = 8
# A rest to find after the nearest table fact.
_REST = 4
_PART = 8
# A line to read and keep in mind, even without a sum in it.
_LINE = 2
_TABLES_TO = 12


@once_for_each
def demand_of(working: Working) -> Fraction:
    """The score of a whole working; never negative."""
    quarters = _LINE * len(working.steps)
    for operation, has_rest in sums_of(working):
        quarters += sum(_costs(operation, has_rest))
    return Fraction(quarters, _QUARTERS)


def demand_of_set(scores: Sequence[Fraction]) -> Fraction:
    """The mean of the scores of several problems, so that sets of any length compare."""
    return sum(scores, Fraction(0)) / max(1, len(scores))


def costs_of(working: Working) -> Mapping[Cost, Fraction]:
    """The score by what it is for."""
    costs = dict.fromkeys(Cost, 0)
    costs[Cost.LINES] = _LINE * len(working.steps)
    for operation, has_rest in sums_of(working):
        for cost, quarters in _quarters_of(operation, has_rest).items():
            costs[cost] += quarters
    return _in_points(costs)


def costs_of_sum(each: Operation, has_rest: bool = False) -> Mapping[Cost, Fraction]:
    """What one operation costs; `has_rest` where it divides with a remainder."""
    return _in_points(_quarters_of(each, has_rest))


def _in_points(costs: Mapping[Cost, int]) -> dict[Cost, Fraction]:
    return {cost: Fraction(quarters, _QUARTERS) for cost, quarters in costs.items()}


def sums_of(working: Working) -> Iterator[tuple[Operation, bool]]:
    """Every operation of the working in order; True where its equation has a remainder."""
    for step in working.steps:
        if step.equation is not None:
            yield from _sums_in(step.equation)


def _sums_in(equation: Equation) -> Iterator[tuple[Operation, bool]]:
    sides = equation.sides
    has_rest = any(isinstance(side, Remainder) for side in sides)
    for side in sides:
        if isinstance(side, Operation):
            for operation in operations(side):
                yield operation, has_rest


def _quarters_of(each: Operation, has_rest: bool) -> dict[Cost, int]:
    """What one operation costs by what it is for, in quarters of a point."""
    sums, digits, crossing, tables, parts = _costs(each, has_rest)
    costs = {Cost.SUMS: sums, Cost.DIGITS: digits, Cost.PARTS: parts}
    if each.sign in (PLUS, MINUS):
        costs[Cost.CROSSING] = crossing
    else:
        costs[Cost.TABLES] = tables
    return costs


def _costs(each: Operation, has_rest: bool) -> tuple[int, int, int, int, int]:
    """The kind of sum, its digits, crossing a ten, going beyond the tables, and parts."""
    sign = each.sign
    left, right = seen_values(each)
    sums = _BASE[sign]
    if sign == OF and _takes_several(left):
        sums += _BASE[TIMES]
    digits = _DIGIT * (digits_of(left) + digits_of(right) - 2)
    parts = _PART * ((left.denominator != 1) + (right.denominator != 1))
    if sign in (PLUS, MINUS):
        return sums, digits, _CROSSING * _crosses_ten(sign, left, right), 0, parts
    if sign == TIMES:
        return sums, digits, 0, _product(left, right), parts
    if sign == DIVIDE:
        return sums, digits, 0, _quotient(left, right, has_rest), parts
    return sums, digits, 0, _part(left, right), parts


def _takes_several(part: Fraction) -> bool:
    """True for 'so many parts of', which multiplies after it has divided."""
    return part.denominator != 1 and part.numerator != 1


def seen_values(each: Operation) -> tuple[Fraction, Fraction]:
    """The two numbers as the pupil sees them: in their own units, and pence as whole numbers
    where no pounds stand beside them."""
    left, right = written_value(each.left), written_value(each.right)
    if not (_is_money(each.left) or _is_money(each.right)):
        return left, right
    money = [side for side in (each.left, each.right) if _is_money(side)]
    if not all(_in_pence(side) for side in money):
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
        return value_of(Operation(expression.sign, Amount(left), Amount(right)))
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
    if value.denominator == 1:
        return _length(abs(value.numerator))
    whole, rest = divmod(abs(value), 1)
    places = digits_after_point(rest.denominator)
    if places is None:
        before = _length(whole) if whole else 0
        return before + _length(rest.numerator) + _length(rest.denominator)
    return len(str((abs(value) * 10**places).numerator))


def _length(number: int) -> int:
    return len(str(number).rstrip("0") or "0")


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


def _product(left: Fraction, right: Fraction) -> int:
    """Nothing for a fact of the tables, whatever noughts hang on its numbers, nor for × 10."""
    if (_in_tables(left) and _in_tables(right)) or _moves_places(left) or _moves_places(right):
        return 0
    return _written_product(_places_to_work(left), _places_to_work(right))


def _written_product(one: int, other: int) -> int:
    """The products of digits, and the rows that have to be added where both have several."""
    return _BEYOND_TABLES * max(2, one * other) + _ROW * (min(one, other) - 1)


def _places_to_work(value: Fraction) -> int:
    """The digits that are multiplied; the point of a decimal takes a place of its own."""
    return digits_of(value) + (value.denominator != 1)


def _quotient(left: Fraction, right: Fraction, has_rest: bool) -> int:
    """As the product that checks it; with a remainder, as the whole part and finding the rest."""
    if not right:
        return 0
    quotient = left / right
    if has_rest:
        return _product(Fraction(floor(quotient)), right) + _REST
    return _product(quotient, right)


def _part(left: Fraction, right: Fraction) -> int:
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
