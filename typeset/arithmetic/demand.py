"""How demanding a working is: a score that grows when its numbers get harder.

Each operation costs its kind, plus what its numbers add: digits beyond one that have to be
held, crossing a ten, a multiplication beyond the tables to 12 × 12 (which England's national
curriculum asks for by the end of Year 4), a division that is not a table fact backwards, and
parts of a whole. The weights are ours (common practice, no source); only order matters.
"""

from __future__ import annotations

from fractions import Fraction

from typeset.arithmetic.equations import (
    Equation,
    Expression,
    Operation,
    has_unknown,
    operations,
    value_of,
)
from typeset.arithmetic.workings import Working
from typeset.quantities.amount import Amount
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_BASE = {"+": Fraction(1), MINUS: Fraction(5, 4), TIMES: Fraction(3, 2), DIVIDE: Fraction(2)}
_OF = Fraction(3)
_DIGIT = Fraction(1, 4)
_CROSSING = Fraction(1, 2)
# For each product of two digits that a written multiplication (or the check of a division) has.
_BEYOND_TABLES = Fraction(3, 4)
_PART = Fraction(2)
# A line to read and keep in mind, even without a sum in it.
_LINE = Fraction(1, 2)
_TABLES_TO = 12


def demand_of(working: Working) -> Fraction:
    """The score of a whole working; never negative."""
    return sum((_LINE + _step(each.equation) for each in working.steps), Fraction(0))


def _step(equation: Equation | None) -> Fraction:
    if equation is None:
        return Fraction(0)
    return sum(
        (_operation(each) for side in equation.sides for each in operations(side)), Fraction(0)
    )


def _operation(each: Operation) -> Fraction:
    left, right = _written_value(each.left), _written_value(each.right)
    score = _BASE.get(each.sign, _OF)
    score += sum((_number(value) for value in (left, right)), Fraction(0))
    if each.sign in ("+", MINUS):
        return score + (_CROSSING if _crosses_ten(each.sign, left, right) else 0)
    if _is_table_fact(each.sign, left, right):
        return score
    other = left if each.sign != DIVIDE or not right else left / right
    return score + _BEYOND_TABLES * max(2, _digits(other) * _digits(right))


def _written_value(expression: Expression) -> Fraction:
    """The number as the pupil sees it (in its own unit), not in the base unit."""
    if isinstance(expression, Amount):
        return expression.value
    if isinstance(expression, Operation) and not has_unknown(expression):
        return value_of(expression)
    return Fraction(0)


def _number(value: Fraction) -> Fraction:
    digits = len(str(abs(value.numerator)).rstrip("0") or "0")
    return _DIGIT * (digits - 1) + (_PART if value.denominator != 1 else 0)


def _digits(value: Fraction) -> int:
    """How many digits take part in a written sum; noughts at the end do not."""
    numerator, under = abs(value.numerator), value.denominator
    while under % 2 == 0 or under % 5 == 0:
        scale = 5 if under % 2 == 0 else 2
        numerator, under = numerator * scale, under // (10 // scale)
    return len(str(numerator).rstrip("0") or "0")


def _crosses_ten(sign: str, left: Fraction, right: Fraction) -> bool:
    if left.denominator != 1 or right.denominator != 1:
        return True
    one, other = abs(left.numerator), abs(right.numerator)
    while one or other:
        last, taken = one % 10, other % 10
        if (last + taken > 9) if sign == "+" else (last < taken):
            return True
        one, other = one // 10, other // 10
    return False


def _is_table_fact(sign: str, left: Fraction, right: Fraction) -> bool:
    """True for a fact of the tables to 12 × 12, whatever noughts hang on its numbers."""
    if sign == TIMES:
        return _in_tables(left) and _in_tables(right)
    if not right:
        return False
    return _in_tables(right) and _in_tables(left / right)


def _in_tables(value: Fraction) -> bool:
    if value.denominator != 1:
        return False
    core = abs(value.numerator)
    while core and core % 10 == 0 and core > _TABLES_TO:
        core //= 10
    return core <= _TABLES_TO
