"""The demand score only has to be in the right order: harder numbers never cost less."""

from __future__ import annotations

from fractions import Fraction

import pytest

from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.equations import Expression, equation, minus, over, part_of, plus, times
from typeset.arithmetic.workings import Working, step
from typeset.quantities.amount import Amount, number


def score(expression: Expression, steps: int = 1) -> Fraction:
    line = step("Work it out.", equation(expression, number(0)))
    return demand_of(Working("some way", (line,) * steps, {}))


@pytest.mark.parametrize(
    ("easier", "harder"),
    [
        (plus(number(3), number(4)), plus(number(8), number(7))),
        (plus(number(23), number(14)), plus(number(27), number(18))),
        (minus(number(28), number(4)), minus(number(24), number(8))),
        (plus(number(3), number(4)), times(number(3), number(4))),
        (times(number(6), number(12)), times(number(6), number(13))),
        (times(number(6), number(13)), times(number(16), number(13))),
        (times(number(6), number(7)), over(number(42), number(7))),
        (over(number(420), number(7)), over(number(423), number(9))),
        (times(number(2), number(9)), times(number("2.5"), number(9))),
        (plus(number(3), number(4)), part_of(Amount(Fraction(3, 4)), number(12))),
    ],
)
def test_harder_costs_more(easier: Expression, harder: Expression) -> None:
    assert score(easier) < score(harder)


def test_more_steps_cost_more() -> None:
    assert score(plus(number(3), number(4))) < score(plus(number(3), number(4)), steps=2)


def test_noughts_on_a_table_fact_cost_little() -> None:
    assert score(times(number(60), number(12))) < score(times(number(17), number(13)))
