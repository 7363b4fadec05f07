"""An exact solver for the small systems of equations that state a structure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from typeset.errors import AmountError


@dataclass(frozen=True, slots=True)
class Linear:
    """`sum of coefficient × unknown = constant`."""

    coefficients: Mapping[str, Fraction | int]
    constant: Fraction | int = 0


def solve_linear(equations: Sequence[Linear]) -> dict[str, Fraction]:
    """The one value of every unknown (Gauss–Jordan elimination in exact fractions).

    Raises AmountError where no value or more than one fits.
    """
    names = sorted({name for each in equations for name in each.coefficients})
    rows = [
        [Fraction(each.coefficients.get(name, 0)) for name in names] + [Fraction(each.constant)]
        for each in equations
    ]
    pivots = _eliminate(rows, len(names))
    for row in rows[len(pivots) :]:
        if row[-1]:
            raise AmountError("the numbers contradict each other", "check them against the story")
    if len(pivots) < len(names):
        raise AmountError("the numbers leave more than one answer", "give one more number")
    return {names[column]: rows[index][-1] for index, column in enumerate(pivots)}


def _eliminate(rows: list[list[Fraction]], columns: int) -> list[int]:
    """Reduces the rows in place; gives the pivot column of each of the first rows."""
    pivots: list[int] = []
    for column in range(columns):
        top = len(pivots)
        pivot = next((i for i in range(top, len(rows)) if rows[i][column]), None)
        if pivot is None:
            continue
        rows[top], rows[pivot] = rows[pivot], rows[top]
        rows[top] = [value / rows[top][column] for value in rows[top]]
        for index, row in enumerate(rows):
            if index != top and row[column]:
                factor = row[column]
                rows[index] = [a - factor * b for a, b in zip(row, rows[top], strict=True)]
        pivots.append(column)
    return pivots
