"""Rectangles: area and perimeter from the sides, and a side from the area or perimeter."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import islice
from types import MappingProxyType
from typing import Literal

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.rectangle_mistakes import rectangle_mistakes
from typeset.arithmetic.families.rectangle_view import (
    AREA,
    LENGTH,
    PERIMETER,
    SIDES,
    WIDTH,
    View,
    side_of,
    working_unit,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import AreaRectangle, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import Method, place_parts
from typeset.arithmetic.names import as_list
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit, noun, square_of
from typeset.quantities.writing import say, write

_Found = Literal["length", "width", "area", "perimeter"]
_TWO = Amount(Fraction(2))
_SQUARE = noun("square", "squares")
_ROW = noun("row", "rows")


class RectangleFields(FamilyFields):
    """Two of `length: 6 cm`, `width: 3 cm`, `area: 18 cm²`, `perimeter: 18 cm`, one a side."""

    length: PositiveAmount | None = None
    width: PositiveAmount | None = None
    area: PositiveAmount | None = None
    perimeter: PositiveAmount | None = None
    find: _Found | list[_Found] | None = None


class Rectangle(Family[RectangleFields]):
    """area = length × width; perimeter = 2 × (length + width)."""

    name = "rectangle"
    fields_model = RectangleFields

    def build(self, fields: RectangleFields) -> Problem[RectangleFields]:
        """The problem; without `find`, the area of two sides or else the missing side."""
        named = {
            LENGTH: fields.length,
            WIDTH: fields.width,
            AREA: fields.area,
            PERIMETER: fields.perimeter,
        }
        givens = {name: amount for name, amount in named.items() if amount is not None}
        _check(givens)
        missing = next((side for side in SIDES if side not in givens), AREA)
        finds = as_list(fields.find) if fields.find else (missing,)
        for name in finds:
            if name in givens:
                raise AmountError(f"'{name}' is both given and asked for", f"find {missing}")
        units = {name: _unit(name, givens, fields.answer_in) for name in finds}
        return Problem(self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[RectangleFields]) -> Mapping[str, AnswerValue]:
        """area − known side × other side = 0; perimeter − 2 length − 2 width = 0."""
        known = {name: amount.base for name, amount in problem.givens.items()}
        side = LENGTH if LENGTH in known else WIDTH
        other = WIDTH if side == LENGTH else LENGTH
        equations = [
            Linear({AREA: 1, other: -known[side]}),
            Linear({PERIMETER: 1, LENGTH: -2, WIDTH: -2}),
            *(Linear({name: 1}, value) for name, value in known.items()),
        ]
        values = solve_linear(equations)
        return {
            name: problem.answer(name, values[name] / problem.units[name].per_base)
            for name in problem.finds
        }

    def strategies(self, problem: Problem[RectangleFields]) -> Iterator[Working]:
        """The missing side first where there is one, then area and perimeter in several ways."""
        view = View(problem)
        for index, to_side in enumerate(_ways_to_side(view)):
            # Two steps in every combination would be more than anybody compares.
            yield from islice(_carried_on(view, to_side), 1 if index else None)

    def mistakes(self, problem: Problem[RectangleFields]) -> Iterator[MistakenWorking]:
        """Area and perimeter exchanged, two sides only, the wrong operation."""
        yield from rectangle_mistakes(View(problem))

    def reason(self, problem: Problem[RectangleFields]) -> Rich | None:
        """Why a perimeter, or a step by way of the other side, both multiplies and adds."""
        asked, view = problem.finds[0], View(problem)
        known = problem.given(view.known_side)
        if set(SIDES) <= set(problem.givens):
            if asked != PERIMETER:
                return None
            return say(
                "With {new} instead of {old} for one side the perimeter would go up by {more}, "
                "since the side is there twice; the two sides next to it are added.",
                new=known.like(known.value + 1),
                old=known,
                more=known.like(2),
            )
        if AREA in problem.givens:
            if asked != PERIMETER:
                return None
            return say("The area divided by {known} gives the other side; the perimeter then "
                       "adds the sides.", known=known)  # fmt: skip
        if asked == AREA:
            return say("Half the perimeter without {known} is the other side; the area then "
                       "multiplies the two.", known=known)  # fmt: skip
        return say("The perimeter has to be halved, and {known} taken off.", known=known)

    def figure(
        self, problem: Problem[RectangleFields], answers: Mapping[str, AnswerValue]
    ) -> AreaRectangle:
        """The rectangle with its sides, its area inside and its perimeter beside it."""
        view = View(problem)

        def mark(name: str, amount: Amount) -> Mark:
            given = problem.givens.get(name)
            asked = answers.get(name)
            shown = given or (asked if isinstance(asked, Amount) else amount)
            hidden = given is None and asked is None
            return Mark((write(shown),), is_given=given is not None, hidden=hidden)

        length, width = view.side(LENGTH), view.side(WIDTH)
        area = mark(AREA, view.wide(length.value * width.value))
        around = mark(PERIMETER, view.long(2 * (length.value + width.value)))
        perimeter = Mark((*say("Perimeter: "), *around.text), around.is_given, around.hidden)
        return AreaRectangle(
            (Part(length.value, mark(LENGTH, length)),),
            (Part(width.value, mark(WIDTH, width)),),
            ((None if area.hidden else area,),),
            None if around.hidden else perimeter,
        )


def _check(givens: Mapping[str, Amount]) -> None:
    sides = [name for name in SIDES if name in givens]
    if len(givens) != 2 or not sides:
        raise AmountError(
            "a rectangle is known by two sides, or by one side and its area or perimeter",
            "give exactly two of length, width, area and perimeter, at least one a side",
        )
    for name, amount in givens.items():
        wanted = Dimension.AREA if name == AREA else Dimension.LENGTH
        side_of(amount)
        if amount.unit.dimension is not wanted:
            kind = "an area" if name == AREA else "a length"
            raise AmountError(
                f"the {name} is not {kind}",
                "write such as 18 cm²" if name == AREA else "write such as 6 cm",
            )
    if PERIMETER in givens and givens[PERIMETER].base <= 2 * givens[sides[0]].base:
        raise AmountError(
            "the two known sides alone are as long as the whole perimeter",
            "give a longer perimeter, or a shorter side",
        )


def _unit(name: str, givens: Mapping[str, Amount], answer_in: Unit | None) -> Unit:
    """The author's unit where it measures this; else the unit of the first side given."""
    wanted = Dimension.AREA if name == AREA else Dimension.LENGTH
    if answer_in is not None and answer_in.dimension is wanted:
        return answer_in
    if answer_in is not None and answer_in.dimension not in (Dimension.AREA, Dimension.LENGTH):
        raise AmountError(f"the {name} is not measured in {answer_in.plural}", "change 'answer in'")
    unit = working_unit(givens)
    square = square_of(unit)
    return square if name == AREA and square is not None else unit


def _ways_to_side(view: View) -> Iterator[Method]:
    """Ways to the missing side; one empty way where both sides are known."""
    missing = view.missing_side
    if missing in view.problem.givens:
        yield Method("", (), view.given(missing))
    elif AREA in view.problem.givens:
        yield from _side_from_area(view)
    else:
        yield _half_the_perimeter(view)
        yield _both_sides_off(view)


def _side_from_area(view: View) -> Iterator[Method]:
    area, known, side = view.given(AREA), view.given(view.known_side), view.side(view.missing_side)
    plainly = step(
        "Area is length times width, so divide: {side}.",
        equation(over(area, known), side),
        side=side,
    )
    yield Method("Undoing the multiplication", (plainly,), side)
    if known.value.denominator != 1 or area.value.denominator != 1 or side.value < 1:
        return
    squares = Amount(area.value, _SQUARE)
    told = step(
        "Think of rows of squares: {row} in each row, {all} in all.",
        row=Amount(known.value, _SQUARE),
        all=squares,
    )
    closing = step(f"{title(view.missing_side)}: {{side}}.", side=side)
    division = Division(squares, known.value, _ROW, grouping=True, exact=not side.is_whole)
    for way in ways_to_divide(division):
        yield Method(f"Rows of squares: {way.name.lower()}", (told, *way.steps, closing), side)


def _half_the_perimeter(view: View) -> Method:
    around, known, side = (
        view.given(PERIMETER),
        view.given(view.known_side),
        view.side(view.missing_side),
    )
    half = view.long(around.value / 2)
    steps = (
        step("Half the perimeter is one length and one width: {half}.",
             equation(over(around, _TWO), half), half=half),
        step("Without the known side: {side}.", equation(minus(half, known), side), side=side),
    )  # fmt: skip
    return Method("Half the perimeter", steps, side)


def _both_sides_off(view: View) -> Method:
    around, known, side = (
        view.given(PERIMETER),
        view.given(view.known_side),
        view.side(view.missing_side),
    )
    two, rest = view.long(2 * known.value), view.long(2 * side.value)
    steps = (
        step("The two known sides: {two}.", equation(times(_TWO, known), two), two=two),
        step("That leaves {rest} for the other two.", equation(minus(around, two), rest),
             rest=rest),
        step("One of them: {side}.", equation(over(rest, _TWO), side), side=side),
    )  # fmt: skip
    return Method("Both known sides off", steps, side)


def _carried_on(view: View, to_side: Method) -> Iterator[Working]:
    """The working from the sides on, in every way to the first of area and perimeter asked."""
    finds, missing = view.problem.finds, view.missing_side
    ways = {AREA: _areas, PERIMETER: _perimeters}
    rest = [name for name in finds if name in ways]
    if not rest:
        yield view.working(to_side.name, to_side.steps, {missing: to_side.result})
        return
    for first in ways[rest[0]](view):
        results = {missing: to_side.result, rest[0]: first.result}
        steps: list[Step] = [*to_side.steps, *first.steps]
        for name in rest[1:]:
            more = next(iter(ways[name](view)))
            steps.extend(more.steps)
            results[name] = more.result
        lead, name = to_side.name, first.name
        full = f"{lead}, then {name[:1].lower()}{name[1:]}" if lead else name
        yield view.working(full, tuple(steps), results)


def _areas(view: View) -> Iterator[Method]:
    length, width = view.side(LENGTH), view.side(WIDTH)
    area = view.wide(length.value * width.value)
    only = step("Length times width: {area}.", equation(times(length, width), area), area=area)
    yield Method("Length times width", (only,), area)
    if length.is_whole and width.is_whole:
        squares = Amount(area.value, _SQUARE)
        rows = (
            step("Squares of {one} fit in: {rows} of {row}.",
                 equation(times(Amount(width.value), Amount(length.value)), Amount(area.value)),
                 one=view.wide(Fraction(1)), rows=Amount(width.value, _ROW),
                 row=Amount(length.value, _SQUARE)),
            step("{all}, so {area}.", all=squares, area=area),
        )  # fmt: skip
        yield Method("Rows of squares", rows, area)
    yield from _cut(view, length, width, area)


def _cut(view: View, length: Amount, width: Amount, area: Amount) -> Iterator[Method]:
    """The rectangle cut where one side splits into hundreds, tens, ones and parts."""
    long, short = sorted((length, width), key=lambda side: -len(place_parts(side.value)))
    parts = [view.long(part) for part in place_parts(long.value)]
    if len(parts) < 2:
        return
    pieces = [view.wide(part.value * short.value) for part in parts]
    steps: list[Step] = [
        step("Cut {side} into easy pieces.", equation(long, plus(*parts)), side=long)
    ]
    for part, piece in zip(parts, pieces, strict=True):
        told = equation(times(part, short), piece)
        steps.append(step("{part} by {short}: {piece}.", told, part=part, short=short,
                          piece=piece))  # fmt: skip
    steps.append(step("Together: {area}.", equation(plus(*pieces), area), area=area))
    yield Method("Cutting the rectangle", tuple(steps), area)


def _perimeters(view: View) -> Iterator[Method]:
    length, width = view.side(LENGTH), view.side(WIDTH)
    half = view.long(length.value + width.value)
    around = view.long(2 * half.value)
    all_four = step("Go round and add all four sides: {around}.",
                    equation(plus(length, width, length, width), around),
                    around=around)  # fmt: skip
    yield Method("Round the rectangle", (all_four,), around)
    steps = (
        step("One length and one width: {half}.", equation(plus(length, width), half), half=half),
        step("Twice that: {around}.", equation(times(_TWO, half), around), around=around),
    )
    yield Method("Half of it, doubled", steps, around)
    two_long, two_wide = view.long(2 * length.value), view.long(2 * width.value)
    three = (
        step("Both lengths: {two}.", equation(times(_TWO, length), two_long), two=two_long),
        step("Both widths: {two}.", equation(times(_TWO, width), two_wide), two=two_wide),
        step("Together: {around}.", equation(plus(two_long, two_wide), around), around=around),
    )
    yield Method("Twice each side", three, around)
