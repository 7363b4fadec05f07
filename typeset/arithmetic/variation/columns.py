"""What a working's sums ask of a pupil: carrying, exchanging, facts beyond the tables.

Carrying: a column of an addition comes to 10 or more; or, in a multiplication digit by digit,
a product of 10 or more has a further digit to its left (the last product is written down
whole, as a fact of the tables is) or the rows added up carry. Exchanging: a digit to take away
is larger than the one it is taken from. Fractions carry at a whole, clock times at the hour.
The terms are those of the national curriculum's appendix on written methods (Mathematics
Appendix 1, 2013, from memory); where they leave a case open, the reading here is ours.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

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
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_TABLES_TO = 12
_MINUTES = 60
# Decimals beyond this nobody adds in columns at this age.
_MOST_PLACES = 6


def has_carrying(working: Working) -> bool:
    """True where a printed addition or multiplication carries."""
    return any(_carries(each) for equation in _equations(working) for each in _parts(equation))


def has_exchanging(working: Working) -> bool:
    """True where a printed subtraction exchanges."""
    return any(
        each.sign == MINUS and _exchanges(each)
        for equation in _equations(working)
        for each in _parts(equation)
    )


def is_within_tables(working: Working) -> bool:
    """True where every printed multiplication and division is a fact to 12 × 12."""
    return all(_is_fact(each, eq) for eq in _equations(working) for each in _parts(eq))


def _equations(working: Working) -> Iterator[Equation]:
    return (each.equation for each in working.steps if each.equation is not None)


def _parts(equation: Equation) -> Iterator[Operation]:
    for side in equation.sides:
        yield from operations(side)


def _written(expression: Expression) -> Fraction:
    """The number as the pupil sees it, in its own unit."""
    return expression.value if isinstance(expression, Amount) else value_of(expression)


def _carries(each: Operation) -> bool:
    left, right = _written(each.left), _written(each.right)
    if each.sign == PLUS:
        if _is_clock(each.left):
            return left % _MINUTES + _minutes(each.right) % _MINUTES >= _MINUTES
        return _sum_carries(left, right)
    return each.sign == TIMES and _product_carries(left, right)


def _exchanges(each: Operation) -> bool:
    left, right = _written(each.left), _written(each.right)
    if _is_clock(each.left):
        return left % _MINUTES < _minutes(each.right) % _MINUTES
    columns = _columns(left, right)
    if columns is None:
        return left % 1 < right % 1 or _exchanges_in(int(left), int(right))
    return _exchanges_in(*columns)


def _exchanges_in(left: int, right: int) -> bool:
    while right:
        if left % 10 < right % 10:
            return True
        left, right = left // 10, right // 10
    return False


def _sum_carries(left: Fraction, right: Fraction) -> bool:
    columns = _columns(left, right)
    if columns is None:
        return left % 1 + right % 1 >= 1 or _adds_over(int(left), int(right))
    return _adds_over(*columns)


def _adds_over(left: int, right: int) -> bool:
    while left and right:
        if left % 10 + right % 10 > 9:
            return True
        left, right = left // 10, right // 10
    return False


def _product_carries(left: Fraction, right: Fraction) -> bool:
    columns = _columns(left, right)
    if columns is None:
        return False
    below, above = sorted((_without_noughts(each) for each in columns), key=_length)
    if _length(below) < _length(above):
        return _rows_carry(above, below)
    # Of two equally long numbers either may be written on top.
    return _rows_carry(above, below) and _rows_carry(below, above)


def _rows_carry(number: int, by: int) -> bool:
    """True where a row for a digit of `by` carries, or adding the rows up does."""
    total = 0
    for place, digit in enumerate(reversed(str(by))):
        if _row_carries(number, int(digit)):
            return True
        row = number * int(digit) * 10**place
        if _adds_over(total, row):
            return True
        total += row
    return False


def _length(number: int) -> int:
    return len(str(number))


def _row_carries(number: int, digit: int) -> bool:
    while number > 9:
        if number % 10 * digit > 9:
            return True
        number //= 10
    return False


def _columns(left: Fraction, right: Fraction) -> tuple[int, int] | None:
    """Both numbers with the decimal point taken out; None where one has no end."""
    for places in range(_MOST_PLACES + 1):
        one, other = abs(left) * 10**places, abs(right) * 10**places
        if one.denominator == 1 and other.denominator == 1:
            return one.numerator, other.numerator
    return None


def _without_noughts(number: int) -> int:
    while number and number % 10 == 0:
        number //= 10
    return number


def _is_clock(expression: Expression) -> bool:
    return isinstance(expression, Amount) and expression.unit.dimension is Dimension.CLOCK


def _minutes(expression: Expression) -> Fraction:
    """A time of day or a time that passes, in minutes."""
    return value_of(expression) / _MINUTES


def _is_fact(each: Operation, equation: Equation) -> bool:
    left, right = _written(each.left), _written(each.right)
    if each.sign == TIMES:
        return _in_tables(left) and _in_tables(right)
    if each.sign == DIVIDE:
        return bool(right) and _is_fact_backwards(left, right, _leaves_rest(equation))
    if each.sign == OF:
        share = right / left.denominator
        return _in_tables(Fraction(left.denominator)) and _in_tables(share) and left.numerator <= 12
    return True


def _is_fact_backwards(left: Fraction, right: Fraction, may_leave: bool) -> bool:
    times = left / right
    if may_leave and left.denominator == 1:
        times = Fraction(times.numerator // times.denominator)
    return _in_tables(right) and _in_tables(times)


def _leaves_rest(equation: Equation) -> bool:
    return any(isinstance(side, Remainder) for side in equation.sides)


def _in_tables(value: Fraction) -> bool:
    return value.denominator == 1 and 0 <= value <= _TABLES_TO
