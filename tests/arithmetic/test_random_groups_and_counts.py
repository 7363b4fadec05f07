"""Random problems of groups, areas and choices against sympy, pint and itertools."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations, permutations, product

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import (
    LENGTHS,
    PINT,
    hundredths,
    large,
    middle,
    rational,
    root,
    small,
    solved,
    tried,
    typed,
    value_of,
)
from typeset.arithmetic.answers import WithRemainder
from typeset.errors import AmountError


@tried
@given(counts=st.lists(small, min_size=1, max_size=3), each=small)
def test_equal_groups_counted_one_by_one(counts: list[int], each: int) -> None:
    reference = len(list(product(*(range(count) for count in counts), range(each))))
    groups = {f"level {index}": f"{count} boxes" for index, count in enumerate(counts)}
    solution = solved("equal groups", groups=groups, each=f"{each} hooks")
    assert value_of(solution, "total") == reference


@tried
@given(count=large, each=hundredths, data=st.data())
def test_equal_groups_of_a_measure(count: int, each: Fraction, data: st.DataObject) -> None:
    unit, asked = (data.draw(st.sampled_from(sorted(LENGTHS))) for _ in range(2))
    reference = (count * PINT.Quantity(each, LENGTHS[unit])).to(LENGTHS[asked]).magnitude
    solution = solved(
        "equal groups", groups=f"{count} ropes", each=f"{typed(each)} {unit}", answer_in=asked
    )
    assert value_of(solution, "total") == reference


def dealt(total: int, hands: int) -> tuple[int, int]:
    """What each gets when things are dealt out round by round, and what stays over."""
    rounds = [range(start, start + hands) for start in range(0, total, hands)]
    full = [each for each in rounds if each.stop <= total]
    return len(full), total - sum(len(each) for each in full)


@tried
@given(total=large, groups=small)
def test_sharing(total: int, groups: int) -> None:
    each, rest = dealt(total, groups)
    assume(each > 0)
    fields = {"total": f"{total} shells", "groups": f"{groups} pupils"}
    if not rest:
        assert value_of(solved("sharing", **fields), "each") == each
        return
    with pytest.raises(AmountError):
        solved("sharing", **fields)
    exact = solved("sharing", **fields, remainder="as a fraction")
    assert value_of(exact, "each") == Fraction(total, groups)
    both = solved("sharing", **fields, remainder="both").answers["each"]
    assert isinstance(both, WithRemainder)
    assert both.groups.value == each
    assert both.rest.value == rest


@tried
@given(total=large, each=middle)
def test_grouping(total: int, each: int) -> None:
    groups, rest = dealt(total, each)
    assume(groups > 0)
    fields = {"total": f"{total} hooks", "each": f"{each} hooks", "answer_in": "boxes"}
    if not rest:
        assert value_of(solved("grouping", **fields), "groups") == groups
        return
    with pytest.raises(AmountError):
        solved("grouping", **fields)
    assert value_of(solved("grouping", **fields, remainder="round up"), "groups") == groups + 1
    assert value_of(solved("grouping", **fields, remainder="round down"), "groups") == groups
    fields.pop("answer_in")
    assert value_of(solved("grouping", **fields, find="left over"), "left over") == rest
    assert value_of(solved("grouping", **fields, find="short"), "short") == each - rest


@tried
@given(
    smaller=hundredths, factor=hundredths, missing=st.sampled_from(["smaller", "times", "larger"])
)
def test_times_as_many(smaller: Fraction, factor: Fraction, missing: str) -> None:
    assume(factor != 1)
    values = {"smaller": smaller, "times": factor, "larger": smaller * factor}
    asked = {name: sympy.Symbol(name) for name in (missing, "difference", "total")}
    x = {name: asked.get(name, rational(value)) for name, value in values.items()}
    equations = (
        x["smaller"] * x["times"] - x["larger"],
        asked["difference"] - (x["larger"] - x["smaller"]),
        asked["total"] - (x["larger"] + x["smaller"]),
    )
    units = {"smaller": " m", "times": "", "larger": " m"}
    given_ = {
        name: f"{typed(each)}{units[name]}" for name, each in values.items() if name != missing
    }
    finds = [missing, "difference", "total"]
    if factor < 1:
        with pytest.raises(AmountError):
            solved("times as many", **given_, find=finds)
        return
    solution = solved("times as many", **given_, find=finds)
    for name in finds:
        assert value_of(solution, name) == root(asked[name], *equations)


@tried
@given(counts=st.lists(small, min_size=2, max_size=3))
def test_combinations_counted_one_by_one(counts: list[int]) -> None:
    choices = dict(zip(("hulls", "sails", "flags"), map(str, counts), strict=False))
    reference = len(list(product(*(range(count) for count in counts))))
    assert value_of(solved("combinations", choices=choices), "ways") == reference


@tried
@given(things=st.integers(3, 7), data=st.data())
def test_arrangements_counted_one_by_one(things: int, data: st.DataObject) -> None:
    places = data.draw(st.integers(2, things))
    reference = len(list(permutations(range(things), places)))
    fields = {"things": f"{things} boats"} | ({"places": str(places)} if places < things else {})
    assert value_of(solved("arrangements", **fields), "orders") == reference


@tried
@given(things=st.integers(3, 60), meetings=st.integers(1, 4))
def test_handshakes_counted_one_by_one(things: int, meetings: int) -> None:
    reference = meetings * len(list(combinations(range(things), 2)))
    fields = {"things": f"{things} teams"} | ({"meetings": str(meetings)} if meetings > 1 else {})
    assert value_of(solved("handshakes", **fields), "pairs") == reference


@tried
@given(length=hundredths, width=hundredths, data=st.data())
def test_rectangle(length: Fraction, width: Fraction, data: st.DataObject) -> None:
    values = {
        "length": length,
        "width": width,
        "area": length * width,
        "perimeter": 2 * (length + width),
    }
    one = data.draw(st.sampled_from(["length", "width"]))
    other = data.draw(st.sampled_from([name for name in values if name != one]))
    symbols = {name: sympy.Symbol(name, positive=True) for name in values}
    equations = [
        symbols["area"] - symbols["length"] * symbols["width"],
        symbols["perimeter"] - 2 * (symbols["length"] + symbols["width"]),
        *(symbols[name] - rational(values[name]) for name in (one, other)),
    ]
    units = {"area": "m²"}
    fields = {name: f"{typed(values[name])} {units.get(name, 'm')}" for name in (one, other)}
    finds = [name for name in values if name not in fields]
    solution = solved("rectangle", **fields, find=finds)
    for name in finds:
        assert value_of(solution, name) == root(symbols[name], *equations)
