"""Problems ranked by difficulty, each with a reason that its own numbers bear out."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.equations import (
    Equation,
    Expression,
    Remainder,
    equation,
    over,
    plus,
    times,
)
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.ranking import rank, why_harder
from typeset.arithmetic.solving import Solution, solve
from typeset.arithmetic.workings import Working, step
from typeset.quantities.amount import Amount, Form, number


def solved(structure: str, **fields: Any) -> Solution:
    family = FAMILIES[structure]
    named = {name.replace("_", " "): value for name, value in fields.items()}
    return solve(family, family.build(family.fields_model.model_validate(named)))


def groups(groups: str, each: str) -> Solution:
    return solved("equal groups", groups=f"{groups} crates", each=f"{each} floats")


def shared(total: str, groups: str) -> Solution:
    return solved("sharing", total=f"{total} floats", groups=f"{groups} crates")


def added(red: str, green: str) -> Solution:
    return solved("part whole", parts={"red": f"{red} kites", "green": f"{green} kites"})


def working(*sums: Expression | Equation) -> Working:
    lines = [each if isinstance(each, Equation) else equation(each, number(0)) for each in sums]
    return Working("some way", tuple(step("Work it out.", line) for line in lines), {})


TWO_AND_THREE = plus(number(2), number(3))
REST = equation(over(number(50), number(6)), Remainder(number(8), number(2)))


@pytest.mark.parametrize(
    ("easier", "harder", "reason"),
    [
        (working(), working(TWO_AND_THREE), "needs an addition (2 + 3), where the one before"),
        (working(TWO_AND_THREE), working(TWO_AND_THREE, TWO_AND_THREE), "needs 2 sums and not 1"),
        (
            working(times(number(6), number(4))),
            working(over(number(24), number(6))),
            "needs a division (24 ÷ 6) and not only a multiplication (6 × 4)",
        ),
        (
            working(over(number(48), number(6))),
            working(over(number(384), number(16))),
            "has larger numbers (384 ÷ 16 and not 48 ÷ 6)",
        ),
        (working(TWO_AND_THREE), working(plus(number(8), number(7))), "crosses a ten (8 + 7)"),
        (
            working(times(number(6), number(7))),
            working(times(number(6), number(17))),
            "goes beyond the tables (6 × 17)",
        ),
        (working(over(number(48), number(6))), working(REST), "leaves a remainder (50 ÷ 6)"),
        (
            working(times(number(3), number(4))),
            working(times(number(3), Amount(Fraction(21, 5), form=Form.DECIMAL))),
            "brings in a decimal (3 × 4.2)",
        ),
        (
            working(times(number(3), number(4))),
            working(times(number(3), number("3/4"))),
            "brings in a fraction (3 × 3/4)",
        ),
    ],
)
def test_reasons(easier: Working, harder: Working, reason: str) -> None:
    assert demand_of(easier) < demand_of(harder)
    assert reason in why_harder(easier, harder)


def test_two_reasons_at_most_and_easiest_first() -> None:
    first, second = rank([shared("384", "16"), groups("6", "4")])
    assert (first.index, second.index) == (1, 0)
    assert second.reason.count(", and ") == 1


def test_ties_are_said_to_be_ties_and_keep_their_order() -> None:
    ranked = rank([groups("6", "4"), added("3", "4"), groups("4", "6"), groups("17", "16")])
    assert [each.index for each in ranked] == [0, 2, 1, 3]
    assert [each.rank for each in ranked] == [1, 1, 3, 4]
    assert [each.is_tie for each in ranked] == [False, True, False, False]
    assert ranked[1].reason == "as hard as the one before" and ranked[0].reason == ""


def test_every_pair_in_a_mixed_lot_has_a_reason() -> None:
    lot = [groups("6", "4"), groups("17", "16"), shared("384", "16"), added("33", "44")]
    lot += [added("385", "276"), solved("handshakes", things="6 people")]
    lot += [
        solved("ratio", parts={"gulls": "5", "terns": "2"}, known={"gulls": "35"}, find="terns")
    ]
    for one in lot:
        for other in lot:
            if one.demand < other.demand:
                reason = why_harder(one.workings[0], other.workings[0])
                assert reason.startswith(
                    ("needs ", "has ", "crosses ", "goes ", "leaves ", "brings ")
                )
                assert demand_of(one.workings[0]) == one.demand


def test_nothing_to_rank() -> None:
    assert rank([]) == ()
    assert rank([groups("6", "4")])[0].rank == 1
