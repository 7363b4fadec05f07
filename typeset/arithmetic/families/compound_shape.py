"""Compound shapes: an L of two rectangles, its area, its perimeter, and its missing sides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.compound_shape_mistakes import mistakes_with_shapes
from typeset.arithmetic.families.compound_shape_view import (
    ACROSS,
    AREA,
    BOTTOM,
    DOWN,
    LEFT,
    MADE_UP,
    PERIMETER,
    RIGHT,
    SIDES,
    TOP,
    ShapeView,
    long_side_of,
    spoken,
)
from typeset.arithmetic.families.compound_shape_ways import ways_round_shape
from typeset.arithmetic.families.rectangle_view import side_of, working_unit
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Mark, Outline
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import as_list, listed
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit, square_of
from typeset.quantities.writing import say, write

_Found = Literal["area", "perimeter", "bottom", "left", "top", "right", "step across", "step down"]


class CompoundShapeFields(FamilyFields):
    """An L-shape, its corner missing at the top right: `bottom: 10 m`, `left: 8 m`, `top: 6 m`,
    `right: 5 m`. Of `top`, `step across` and `bottom` two are given, and two of `right`,
    `step down` and `left`."""

    bottom: PositiveAmount | None = None
    left: PositiveAmount | None = None
    top: PositiveAmount | None = None
    right: PositiveAmount | None = None
    step_across: PositiveAmount | None = Field(default=None, alias="step across")
    step_down: PositiveAmount | None = Field(default=None, alias="step down")
    find: _Found | list[_Found] = "area"


class CompoundShape(Family[CompoundShapeFields]):
    """bottom = top + step across; left = right + step down; area = whole − missing corner."""

    name = "compound shape"
    fields_model = CompoundShapeFields

    def build(self, fields: CompoundShapeFields) -> Problem[CompoundShapeFields]:
        """The problem of four sides."""
        named = {
            TOP: fields.top,
            DOWN: fields.step_down,
            ACROSS: fields.step_across,
            RIGHT: fields.right,
            BOTTOM: fields.bottom,
            LEFT: fields.left,
        }
        givens = {name: amount for name, amount in named.items() if amount is not None}
        _check(givens)
        finds: tuple[str, ...] = as_list(fields.find)
        for name in finds:
            if name in givens:
                raise AmountError(f"'{name}' is both given and asked for", f"find {AREA}")
        units = {name: _unit(name, givens, fields.answer_in) for name in finds}
        return Problem(self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[CompoundShapeFields]) -> Mapping[str, AnswerValue]:
        """Each long side is its two parts; the area is the whole without the corner."""
        equations = [
            Linear({long: 1, first: -1, second: -1}) for long, (first, second) in MADE_UP.items()
        ]
        equations.append(Linear({PERIMETER: 1, **dict.fromkeys(SIDES, -1)}))
        equations += [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        values = dict(solve_linear(equations))
        values[AREA] = values[BOTTOM] * values[LEFT] - values[ACROSS] * values[DOWN]
        return {
            name: problem.answer(name, values[name] / problem.units[name].per_base)
            for name in problem.finds
        }

    def strategies(self, problem: Problem[CompoundShapeFields]) -> Iterator[Working]:
        """Cut one way, cut the other way, the whole without the corner; round the shape."""
        yield from ways_round_shape(ShapeView(problem))

    def mistakes(self, problem: Problem[CompoundShapeFields]) -> Iterator[MistakenWorking]:
        """The rectangle round it, an overlap, an inner side, a side that has no number."""
        yield from mistakes_with_shapes(ShapeView(problem))

    def reason(self, problem: Problem[CompoundShapeFields]) -> Rich | None:
        """The pieces multiply and are added; a perimeter adds and doubles."""
        asked, view = problem.finds[0], ShapeView(problem)
        if asked == AREA:
            one, other = view.side(BOTTOM), view.side(RIGHT)
            return say(
                "Each of the two rectangles multiplies its sides, such as {one} by {other}, and "
                "their areas are added.",
                one=one, other=other,
            )  # fmt: skip
        if asked == PERIMETER:
            return _perimeter_reason(view)
        return None

    def figure(
        self, problem: Problem[CompoundShapeFields], answers: Mapping[str, AnswerValue]
    ) -> Outline:
        """The shape with the lengths of its sides."""
        view = ShapeView(problem)

        def mark(name: str, amount: Amount) -> Mark:
            given, asked = problem.givens.get(name), answers.get(name)
            shown = given or (asked if isinstance(asked, Amount) else amount)
            hidden = given is None and asked is None
            return Mark((write(shown),), is_given=given is not None, hidden=hidden)

        sides = {name: view.side(name) for name in SIDES}
        area = answers.get(AREA)
        around = answers.get(PERIMETER)
        total = None
        if isinstance(around, Amount):
            total = Mark((*say("Perimeter: "), write(around)), is_given=False)
        return Outline(
            _corners({name: amount.value for name, amount in sides.items()}),
            tuple(mark(name, amount) for name, amount in sides.items()),
            Mark((write(area),), is_given=False) if isinstance(area, Amount) else None,
            total,
        )


def _perimeter_reason(view: ShapeView) -> Rich:
    """One side longer, and the way round is twice as much longer."""
    longer = {
        name: view.problem.with_given(name, amount.like(amount.value + 1))
        for name, amount in view.problem.givens.items()
    }
    name = next(name for name in longer if _around(longer[name]) != _around(view.problem))
    known = view.problem.given(name)
    gone = _around(longer[name]) - _around(view.problem)
    more = known.like(gone / known.unit.per_base)
    return say(
        f"With {{new}} instead of {{old}} for the {spoken(name)} the perimeter would go up by "
        "{more}, since there is as much again on the way back; the sides are added.",
        new=known.like(known.value + 1),
        old=known,
        more=more,
    )


def _around(problem: Problem[CompoundShapeFields]) -> Fraction:
    view = ShapeView(problem)
    return sum((2 * view.side(name).base for name in MADE_UP), Fraction(0))


def _corners(side: Mapping[str, Fraction]) -> tuple[tuple[Fraction, Fraction], ...]:
    zero = Fraction(0)
    return (
        (zero, zero),
        (side[TOP], zero),
        (side[TOP], side[DOWN]),
        (side[BOTTOM], side[DOWN]),
        (side[BOTTOM], side[LEFT]),
        (zero, side[LEFT]),
    )


def _check(givens: Mapping[str, Amount]) -> None:
    for long, parts in MADE_UP.items():
        way = (long, *parts)
        have = [name for name in way if name in givens]
        if len(have) != 2:
            raise AmountError(
                f"two of {listed(way, 'and')} are known, and not {len(have)}",
                "give two of them, so that the third can be found",
            )
    for name, amount in givens.items():
        side_of(amount)
        if amount.unit.dimension is not Dimension.LENGTH:
            raise AmountError(f"the {name} is not a length", "write such as 6 m")
    for name in givens:
        long = long_side_of(name)
        if name != long and long in givens and givens[name].base >= givens[long].base:
            raise AmountError(
                f"the {spoken(name)} is not shorter than the {spoken(long)}",
                f"give a longer {spoken(long)}",
            )


def _unit(name: str, givens: Mapping[str, Amount], answer_in: Unit | None) -> Unit:
    wanted = Dimension.AREA if name == AREA else Dimension.LENGTH
    if answer_in is not None:
        if answer_in.dimension is not wanted:
            kind = "an area" if name == AREA else "a length"
            raise AmountError(
                f"the {name} is {kind}, not in {answer_in.plural}",
                "leave out 'answer in' or give another unit",
            )
        return answer_in
    unit = working_unit(givens)
    square = square_of(unit)
    assert square is not None
    return square if name == AREA else unit
