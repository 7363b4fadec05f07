"""The whole formula worked out at once, exactly and in base units.

This is the relation of a `steps` problem: it knows nothing of lines of working, and shares
with them only what unit a product or quotient has.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from math import floor, gcd, lcm

from typeset.arithmetic.equations import PLUS
from typeset.arithmetic.formulas.tree import Apply, As, Call, Formula, Name
from typeset.arithmetic.formulas.units import common_unit, in_unit, meeting
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, Unit
from typeset.quantities.writing import DIVIDE, MINUS


@dataclass(frozen=True, slots=True)
class Whole:
    """A value in the base unit of its dimension, and the unit it is spoken of in."""

    base: Fraction
    unit: Unit


def value_of_whole(formula: Formula, amounts: Mapping[str, Amount], smooth: bool = False) -> Whole:
    """The formula's value over these amounts.

    `smooth` leaves divisions unrounded and takes shared factors and multiples for products,
    so that it can be watched how the value follows its numbers.
    Raises AmountError where units do not go together or something is divided by 0.
    """
    match formula:
        case Name(name=name):
            amount = amounts[name]
            return Whole(amount.base, amount.unit)
        case Apply(sign=sign, left=left, right=right):
            first = value_of_whole(left, amounts, smooth)
            return _applied(sign, first, value_of_whole(right, amounts, smooth))
        case As(inner=inner, unit=unit, name=name):
            value = value_of_whole(inner, amounts, smooth)
            amount = in_unit(Amount(value.unit.of_base(value.base), value.unit), unit, name)
            return Whole(amount.base, unit)
        case Call(function=function, arguments=arguments):
            values = [value_of_whole(each, amounts, smooth) for each in arguments]
            return _called(function, values, smooth)


def _applied(sign: str, left: Whole, right: Whole) -> Whole:
    met = meeting(sign, left.unit, right.unit)
    first = left.unit.of_base(left.base) if met.left_bare else left.base
    second = right.unit.of_base(right.base) if met.right_bare else right.base
    if sign == DIVIDE:
        if not second:
            raise AmountError("something is divided by 0", "choose other numbers")
        return Whole(first / second, met.result)
    if sign == PLUS:
        return Whole(first + second, met.result)
    return Whole(first - second if sign == MINUS else first * second, met.result)


def _called(function: str, values: Sequence[Whole], smooth: bool) -> Whole:
    if function in ("quotient", "round up", "round down", "remainder"):
        return _divided(function, values[0], values[1], smooth)
    unit = common_unit([each.unit for each in values])
    bases = [each.base for each in values]
    match function:
        case "mean":
            return Whole(sum(bases, Fraction(0)) / len(bases), unit)
        case "larger of":
            return Whole(max(bases), unit)
        case "smaller of":
            return Whole(min(bases), unit)
        case "difference":
            return Whole(abs(bases[0] - bases[1]), unit)
    if smooth:
        return Whole(reduce(lambda a, b: a * b, bases), unit)
    counts = [_whole_number(base / unit.per_base, function) for base in bases]
    shared = gcd(*counts) if function == "hcf" else lcm(*counts)
    return Whole(shared * unit.per_base, unit)


def _whole_number(value: Fraction, function: str) -> int:
    if value.denominator != 1 or value <= 0:
        raise AmountError(f"{function} needs whole numbers from 1 up", "choose other numbers")
    return value.numerator


def _divided(function: str, dividend: Whole, divisor: Whole, smooth: bool) -> Whole:
    met = meeting(DIVIDE, dividend.unit, divisor.unit)
    exact = _applied(DIVIDE, dividend, divisor)
    if smooth:
        return exact
    size = met.result.per_base
    whole = Fraction(floor(exact.base / size))
    if function == "remainder":
        # Pieces of one kind fit into the whole; otherwise the whole is shared in its own unit.
        one = divisor.base if met.result == NUMBER else divisor.base / divisor.unit.per_base * size
        return Whole(dividend.base - whole * one, dividend.unit)
    if function == "round up" and exact.base / size != whole:
        whole += 1
    return Whole(whole * size, met.result)
