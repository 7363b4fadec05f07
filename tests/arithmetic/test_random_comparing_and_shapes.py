"""Random comparisons, ratios, scales, angles and shapes against fractions, sympy and pint."""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from math import gcd

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
    small,
    solved,
    tried,
    typed,
    value_of,
)
from typeset.arithmetic.answers import NameAnswer, RatioAnswer
from typeset.errors import AmountError

NAMES = ("first", "second", "third")
pairs = st.lists(st.tuples(small, small), min_size=2, max_size=3)


def verdict(values: list[Fraction], wants_most: bool) -> str | None:
    """The name of the best, 'equal' where all are alike, None where two share the best."""
    best = max(values) if wants_most else min(values)
    if len(set(values)) == 1:
        return "equal"
    if values.count(best) > 1:
        return None
    return f"the {NAMES[values.index(best)]}"


def check_verdict(values: list[Fraction], find: str, fields: dict[str, object]) -> None:
    expected = verdict(values, find == "larger")
    if expected is None:
        with pytest.raises(AmountError):
            solved("which is larger", find=find, **fields)
        return
    solution = solved("which is larger", find=find, **fields)
    assert solution.answers[find] == NameAnswer(expected)
    assert len(solution.workings) >= 2
    assert solution.kind.decision.value == "multiply or divide"


@tried
@given(numbers=pairs, find=st.sampled_from(["larger", "smaller"]))
def test_mixtures_by_their_part_of_the_whole(numbers: list[tuple[int, int]], find: str) -> None:
    """The stronger one has the larger juice ÷ (juice + water), as Noelting judged them."""
    choices = {
        name: {"juice": str(x), "water": str(y)}
        for name, (x, y) in zip(NAMES, numbers, strict=False)
    }
    shares = [Fraction(x, x + y) for x, y in numbers]
    check_verdict(shares, find, {"choices": choices, "compare": "juice to water"})


@tried
@given(
    numbers=st.lists(st.tuples(small, hundredths), min_size=2, max_size=3),
    find=st.sampled_from(["larger", "smaller"]),
)
def test_prices_by_what_one_costs(numbers: list[tuple[int, Fraction]], find: str) -> None:
    choices = {
        name: {"floats": f"{x} floats", "cost": f"{typed(100 * y)}p"}
        for name, (x, y) in zip(NAMES, numbers, strict=False)
    }
    each = [y / x for x, y in numbers]
    check_verdict(each, find, {"choices": choices, "compare": "cost for floats"})


@tried
@given(numbers=pairs, find=st.sampled_from(["larger", "smaller"]))
def test_crates_counted_one_by_one(numbers: list[tuple[int, int]], find: str) -> None:
    choices = {
        name: {"crates": f"{x} crates", "crabs": f"{y} crabs"}
        for name, (x, y) in zip(NAMES, numbers, strict=False)
    }
    totals = [Fraction(len(list(product(range(x), range(y))))) for x, y in numbers]
    check_verdict(totals, find, {"choices": choices, "compare": "crates × crabs"})


@tried
@given(data=st.data())
def test_shares_of_two_amounts(data: st.DataObject) -> None:
    choices, parts = {}, []
    for name in NAMES[:2]:
        down = data.draw(small)
        up = data.draw(st.integers(1, down))
        whole = down * data.draw(small)
        choices[name] = {"share": f"{up}/{down}", "shells": f"{whole} shells"}
        parts.append(len(range(0, whole * up, down)))
    check_verdict(
        [Fraction(each) for each in parts],
        "larger",
        {"choices": choices, "compare": "share of shells"},
    )


@tried
@given(counts=st.lists(middle, min_size=2, max_size=4))
def test_simplest_ratio_by_the_divisors_of_all(counts: list[int]) -> None:
    """The largest number that divides every side, found by trying them all."""
    parts = {f"p{chr(97 + at)}": str(count) for at, count in enumerate(counts)}
    common = max(n for n in range(1, min(counts) + 1) if all(c % n == 0 for c in counts))
    answer = solved("simplest ratio", parts=parts).answers["ratio"]
    assert answer == RatioAnswer(tuple(Fraction(count, common) for count in counts))


@tried
@given(one=hundredths, other=hundredths, data=st.data())
def test_simplest_ratio_of_lengths(one: Fraction, other: Fraction, data: st.DataObject) -> None:
    units = [data.draw(st.sampled_from(["mm", "cm", "m", "km"])) for _ in range(2)]
    lengths = [
        PINT.Quantity(value, LENGTHS[unit]).to("mm").magnitude
        for value, unit in zip((one, other), units, strict=True)
    ]
    reference = sympy.Rational(*(rational(length) for length in lengths))
    fields = {"rope": f"{typed(one)} {units[0]}", "chain": f"{typed(other)} {units[1]}"}
    answer = solved("simplest ratio", parts=fields).answers["ratio"]
    assert answer == RatioAnswer((Fraction(int(reference.p)), Fraction(int(reference.q))))


@tried
@given(part=middle, more=middle)
def test_simplest_ratio_from_a_part_and_the_whole(part: int, more: int) -> None:
    solution = solved(
        "simplest ratio",
        parts={"gulls": str(part)},
        whole=f"{part + more} birds",
        find=["terns", "gulls"],
    )
    shared = gcd(part, more)
    assert solution.answers["ratio"] == RatioAnswer(
        (Fraction(more // shared), Fraction(part // shared))
    )
    assert solution.kind.decision.value == "both"


@tried
@given(
    paper=st.integers(1, 20),
    real=large,
    length=hundredths,
    units=st.sampled_from([("cm", "km"), ("cm", "m"), ("mm", "m"), ("m", "km")]),
    to_paper=st.booleans(),
)
def test_scale(
    paper: int, real: int, length: Fraction, units: tuple[str, str], to_paper: bool
) -> None:
    small_unit, large_unit = units
    one = PINT.Quantity(Fraction(paper), LENGTHS[small_unit])
    other = PINT.Quantity(Fraction(real), LENGTHS[large_unit])
    scale = f"{paper} {small_unit} to {real} {large_unit}"
    if to_paper:
        known = PINT.Quantity(length, LENGTHS[large_unit])
        expected = (known * one / other).to(LENGTHS[small_unit]).magnitude
        fields = {"real": f"{typed(length)} {large_unit}", "find": "map"}
    else:
        known = PINT.Quantity(length, LENGTHS[small_unit])
        expected = (known * other / one).to(LENGTHS[large_unit]).magnitude
        fields = {"map": f"{typed(length)} {small_unit}"}
    assume(length != (real if to_paper else paper))
    solution = solved("scale", scale=scale, **fields)
    assert value_of(solution, "map" if to_paper else "real") == expected


@tried
@given(times=st.sampled_from([10, 50, 100, 1000, 25000]), length=hundredths)
def test_scale_without_units(times: int, length: Fraction) -> None:
    assume(length != 1)
    solution = solved("scale", scale=f"1:{times}", plan=f"{typed(length)} cm", answer_in="km")
    reference = PINT.Quantity(length * times, "cm").to("km").magnitude
    assert value_of(solution, "real") == reference


TURNS = {
    "right angle": sympy.pi / 2,
    "straight line": sympy.pi,
    "full turn": 2 * sympy.pi,
    "triangle": sympy.pi,
    "quadrilateral": 2 * sympy.pi,
}


def degrees(angle: sympy.Expr) -> Fraction:
    value = sympy.Rational(sympy.deg(angle))
    return Fraction(int(value.p), int(value.q))


@tried
@given(
    make=st.sampled_from(["right angle", "straight line", "full turn"]),
    known=st.lists(st.integers(1, 120), min_size=1, max_size=4),
    equal=st.integers(1, 5),
    times=st.integers(1, 3),
)
def test_angles_in_radians(make: str, known: list[int], equal: int, times: int) -> None:
    """Equal angles a, and one that is so many times as large, by sympy in radians."""
    a = sympy.Symbol("a")
    turned = sum((sympy.rad(each) for each in known), sympy.Integer(0))
    (found,) = sympy.solve(TURNS[make] - turned - equal * a - times * a, a)
    fields = {
        "make": make,
        "angles": {f"k{at}": f"{each}°" for at, each in enumerate(known)},
        "find": ["a", "b"],
        "how_many": {"a": str(equal)},
        "multiples": {"b": str(times)},
    }
    if found <= 0:
        with pytest.raises(AmountError):
            solved("angles", **fields)
        return
    solution = solved("angles", **fields)
    assert value_of(solution, "a") == degrees(found)
    assert value_of(solution, "b") == degrees(times * found)


@tried
@given(sides=st.lists(st.integers(1, 12), min_size=2, max_size=2), turn=st.integers(1, 178))
def test_angles_of_a_real_triangle(sides: list[int], turn: int) -> None:
    """A triangle drawn by two sides and the angle between them: its corners are measured."""
    b, c = sides
    x, y = c * sympy.cos(sympy.rad(turn)), c * sympy.sin(sympy.rad(turn))
    at_b = float(sympy.deg(sympy.atan2(y, b - x)))
    # Typed to whole degrees, so the third corner is known to half a degree.
    known = max(1, round(at_b))
    assume(turn + known < 180)
    solution = solved(
        "angles", make="triangle", angles={"a": f"{turn}°", "b": f"{known}°"}, find="c"
    )
    third = 180 - turn - at_b
    assert abs(float(value_of(solution, "c")) - third) <= 1.0


@tried
@given(known=st.integers(1, 179))
def test_angles_where_lines_cross(known: int) -> None:
    """Directions of two lines through a point: the angles between neighbouring rays."""
    rays = sorted({0, known, 180, 180 + known})
    around = [b - a for a, b in zip(rays, [*rays[1:], 360], strict=True)]
    solution = solved(
        "angles", make="crossing lines", angles={"a": f"{known}°"}, find=["opposite", "next"]
    )
    assert value_of(solution, "opposite") == around[2]
    assert value_of(solution, "next") == around[1]


@tried
@given(data=st.data(), top=small, across=small, step=small, right=small)
def test_compound_shape_counted_in_squares(
    data: st.DataObject, top: int, across: int, step: int, right: int
) -> None:
    """The squares of a grid that lie in the shape, and their edges that have no neighbour."""
    squares = set(product(range(top), range(step + right)))
    squares |= set(product(range(top + across), range(step, step + right)))
    edges = [
        (x + dx, y + dy)
        for x, y in squares
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1))
        if (x + dx, y + dy) not in squares
    ]
    sides = {
        "bottom": top + across, "left": step + right, "top": top, "right": right,
        "step across": across, "step down": step,
    }  # fmt: skip
    missing = [
        data.draw(st.sampled_from(way))
        for way in (("bottom", "top", "step across"), ("left", "right", "step down"))
    ]
    fields = {name: f"{value} m" for name, value in sides.items() if name not in missing}
    finds = ["area", "perimeter", *missing]
    solution = solved("compound shape", **fields, find=finds)
    assert value_of(solution, "area") == len(squares)
    assert value_of(solution, "perimeter") == len(edges)
    for name in missing:
        assert value_of(solution, name) == sides[name]


@tried
@given(top=hundredths, across=hundredths, step=hundredths, right=hundredths)
def test_compound_shape_by_its_corners(
    top: Fraction, across: Fraction, step: Fraction, right: Fraction
) -> None:
    """sympy's polygon (the shoelace formula) for sides that are no whole numbers."""
    wide, high = top + across, step + right
    nothing = Fraction(0)
    corners = (
        (nothing, nothing), (nothing, high), (wide, high), (wide, step), (top, step),
        (top, nothing),
    )  # fmt: skip
    polygon = sympy.Polygon(*((rational(x), rational(y)) for x, y in corners))
    solution = solved(
        "compound shape",
        top=f"{typed(top)} m",
        step_across=f"{typed(across)} m",
        step_down=f"{typed(step)} m",
        right=f"{typed(right)} m",
        find=["area", "perimeter"],
    )
    assert rational(value_of(solution, "area")) == abs(polygon.area)
    assert rational(value_of(solution, "perimeter")) == polygon.perimeter
