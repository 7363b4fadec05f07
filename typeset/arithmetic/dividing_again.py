"""A second way to divide, for numbers that invite one way alone."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.division import Division, closing
from typeset.arithmetic.equations import equation, over
from typeset.arithmetic.methods import TABLES_TO, Method
from typeset.arithmetic.workings import step
from typeset.quantities.amount import Amount


def by_factors(division: Division) -> Iterator[Method]:
    """Shares among 6 as shares among 2, and each of those among 3."""
    first = _smallest_factor(division.by)
    if division.grouping or division.rest or first is None:
        return
    second = division.by / first
    half_way, share = division.part(division.total.value / first), division.part(division.quotient)
    steps = (
        step(
            "Share among {first} first: {part} each.",
            equation(over(division.total, Amount(first)), half_way),
            first=Amount(first),
            part=half_way,
        ),
        step(
            "Share each of those among {second}: {share}.",
            equation(over(half_way, Amount(second)), share),
            second=Amount(second),
            share=share,
        ),
        closing(division),
    )
    yield Method("Dividing by factors", steps, division.said(division.quotient), division.rest)


def _smallest_factor(by: Fraction) -> Fraction | None:
    """The smallest factor that leaves another one of the tables; None where there is none."""
    if by.denominator != 1:
        return None
    factors = (
        each
        for each in range(2, TABLES_TO + 1)
        if by.numerator % each == 0 and 1 < by.numerator // each <= TABLES_TO
    )
    return next((Fraction(each) for each in factors), None)
