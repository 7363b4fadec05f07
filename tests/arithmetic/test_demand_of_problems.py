"""The demand of whole problems: a digit more in a number never makes a problem easier.

The laws of `test_demand_laws.py` for single sums, held by the easiest working of a problem,
whichever strategy that is.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import solve

tried = settings(max_examples=30, derandomize=True, deadline=None)
number = st.integers(2, 199)
digit = st.integers(1, 9)


def demand(structure: str, **fields: Any) -> Fraction:
    family = FAMILIES[structure]
    return solve(family, family.build(family.fields_model.model_validate(fields))).demand


@tried
@given(groups=st.integers(2, 40), each=number, more=digit)
def test_equal_groups(groups: int, each: int, more: int) -> None:
    plain = demand("equal groups", groups=f"{groups} crates", each=f"{each} floats")
    longer = demand("equal groups", groups=f"{groups} crates", each=f"{10 * each + more} floats")
    assert plain <= longer


@tried
@given(groups=st.integers(2, 40), share=number, more=digit)
def test_sharing(groups: int, share: int, more: int) -> None:
    totals = (groups * share, groups * (10 * share + more))
    plain, longer = (
        demand("sharing", total=f"{total} floats", groups=f"{groups} crates") for total in totals
    )
    assert plain <= longer


@tried
@given(one=number, other=number, more=digit)
def test_part_whole(one: int, other: int, more: int) -> None:
    plain, longer = (
        demand("part whole", parts={"red": f"{red} kites", "green": f"{other} kites"})
        for red in (one, int(f"{more}{one}"))
    )
    assert plain <= longer


@tried
@given(less=number, rest=st.integers(1, 199), more=digit)
def test_change(less: int, rest: int, more: int) -> None:
    start = less + rest
    plain, longer = (
        demand("change", start=f"{each} floats", decrease=f"{less} floats")
        for each in (start, int(f"{more}{start}"))
    )
    assert plain <= longer


@tried
@given(parts=st.permutations(range(1, 10)), one=st.integers(2, 30), more=digit)
def test_ratio_of_a_known_part(parts: list[int], one: int, more: int) -> None:
    gulls, terns = parts[:2]
    plain, longer = (
        demand(
            "ratio",
            parts={"gulls": str(gulls), "terns": str(terns)},
            known={"terns": str(terns * each)},
            find="gulls",
        )
        for each in (one, 10 * one + more)
    )
    assert plain <= longer


@pytest.mark.parametrize("each", ["4 m", "4.5 m", "4.25 m"])
def test_decimals_are_never_easier(each: str) -> None:
    plain = demand("equal groups", groups="3 ropes", each="4 m")
    assert plain <= demand("equal groups", groups="3 ropes", each=each)
