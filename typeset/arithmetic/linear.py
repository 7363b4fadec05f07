"""An exact solver for the small systems of equations that state a structure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from typeset.errors import AmountError


@dataclass(frozen=True, slots=True)
class Linear:
    """`sum of coefficient × unknown = constant`."""

    coefficients: Mapping[str, Fraction | int]
    constant: Fraction | int = 0


def solve_linear(equations: Sequence[Linear]) -> dict[str, Fraction]:
    """The one value of every unknown: Gauss–Jordan elimination in whole numbers, each row
    multiplied until it has no fractions and divided by what its numbers share.

    Raises AmountError where no value or more than one fits.
    """
    names = sorted({name for each in equations for name in each.coefficients})
    rows = [_whole_row(each, names) for each in equations]
    pivots = _eliminate(rows, len(names))
    for row in rows[len(pivots) :]:
        if row[-1]:
            raise AmountError("the numbers contradict each other", "check them against the story")
    if len(pivots) < len(names):
        raise AmountError("the numbers leave more than one answer", "give one more number")
    return {
        names[column]: Fraction(rows[index][-1], rows[index][column])
        for index, column in enumerate(pivots)
    }


def _whole_row(each: Linear, names: Sequence[str]) -> list[int]:
    """The coefficients and the constant, all multiplied by their least common denominator."""
    row = [*(each.coefficients.get(name, 0) for name in names), each.constant]
    size = lcm(*[value.denominator for value in row if not isinstance(value, int)])
    if size == 1:
        return [int(value) for value in row]
    return [value.numerator * (size // value.denominator) for value in row]


def _eliminate(rows: list[list[int]], columns: int) -> list[int]:
    """Reduces the rows in place; gives the pivot column of each of the first rows."""
    pivots: list[int] = []
    for column in range(columns):
        top = len(pivots)
        pivot = next((i for i in range(top, len(rows)) if rows[i][column]), None)
        if pivot is None:
            continue
        rows[top], rows[pivot] = rows[pivot], rows[top]
        for index, row in enumerate(rows):
            if index != top and row[column]:
                rows[index] = _without(row, rows[top], column)
        pivots.append(column)
    return pivots


def _without(row: list[int], top: list[int], column: int) -> list[int]:
    """A multiple of the row less one of `top`, so that nothing is left in the column."""
    mine, theirs = row[column], top[column]
    left = [a * theirs - b * mine for a, b in zip(row, top, strict=True)]
    shared = gcd(*left) or 1
    return [value // shared for value in left]
