"""Ways to the area, the perimeter and the missing sides of an L-shape."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import zip_longest

from typeset.arithmetic.equations import equation, minus, plus, times
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
    other_part,
    spoken,
)
from typeset.arithmetic.methods import Method
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount

_TWO = Amount(Fraction(2))


def ways_round_shape(view: ShapeView) -> Iterator[Working]:
    """Every way to what is asked for first, with the easiest to what is asked for after it."""
    each = [list(_ways_to(view, name)) for name in view.problem.finds]
    for row in zip_longest(*each):
        methods = [method or ways[0] for method, ways in zip(row, each, strict=True)]
        results = {
            name: method.result for name, method in zip(view.problem.finds, methods, strict=True)
        }
        steps = _once([told for method in methods for told in method.steps])
        yield view.working(methods[0].name, steps, results)


def _once(steps: Sequence[Step]) -> tuple[Step, ...]:
    """A side that two of the answers need is found once."""
    return tuple(dict.fromkeys(steps))


def _ways_to(view: ShapeView, name: str) -> Iterator[Method]:
    if name == AREA:
        yield from _areas(view)
    elif name == PERIMETER:
        yield from _perimeters(view)
    else:
        yield from _sides(view, name)


def _areas(view: ShapeView) -> Iterator[Method]:
    yield _in_two(view, "Cut level", ("lower", BOTTOM, RIGHT), ("upper", TOP, DOWN))
    yield _in_two(view, "Cut upright", ("left", TOP, LEFT), ("right", ACROSS, RIGHT))
    yield _without_corner(view)


def _in_two(
    view: ShapeView, name: str, one: tuple[str, str, str], other: tuple[str, str, str]
) -> Method:
    """Two rectangles, each by the two sides named."""
    steps = list(view.finding(one[1], one[2], other[1], other[2]))
    pieces = []
    for place, across, down in (one, other):
        wide, high = view.side(across), view.side(down)
        piece = view.wide(wide.value * high.value)
        steps.append(
            step(f"The {place} rectangle is {{wide}} by {{high}}: {{piece}}.",
                 equation(times(wide, high), piece), wide=wide, high=high, piece=piece)
        )  # fmt: skip
        pieces.append(piece)
    area = view.wide(pieces[0].value + pieces[1].value)
    steps.append(step("Together: {area}.", equation(plus(*pieces), area), area=area))
    return Method(f"{name} into two rectangles", tuple(steps), area)


def _without_corner(view: ShapeView) -> Method:
    steps = list(view.finding(BOTTOM, LEFT, ACROSS, DOWN))
    bottom, left, across, down = (view.side(name) for name in (BOTTOM, LEFT, ACROSS, DOWN))
    whole = view.wide(bottom.value * left.value)
    corner = view.wide(across.value * down.value)
    area = view.wide(whole.value - corner.value)
    steps += [
        step("The whole rectangle round the shape: {whole}.",
             equation(times(bottom, left), whole), whole=whole),
        step("The corner that is missing: {corner}.", equation(times(across, down), corner),
             corner=corner),
        step("Without the corner: {area}.", equation(minus(whole, corner), area), area=area),
    ]  # fmt: skip
    return Method("The whole without the missing corner", tuple(steps), area)


def _perimeters(view: ShapeView) -> Iterator[Method]:
    sides = [view.side(name) for name in SIDES]
    around = view.long(sum((each.value for each in sides), Fraction(0)))
    all_six = step("Go round and add all six sides: {around}.", equation(plus(*sides), around),
                   around=around)  # fmt: skip
    yield Method("Round the shape", (*view.finding(*SIDES), all_six), around)
    yield _as_a_rectangle(view, doubled=True)
    yield _as_a_rectangle(view, doubled=False)


def _as_a_rectangle(view: ShapeView, doubled: bool) -> Method:
    """The two steps could be pushed out to the corner: as long round as the whole rectangle."""
    bottom, left = view.side(BOTTOM), view.side(LEFT)
    half = view.long(bottom.value + left.value)
    around = view.long(2 * half.value)
    why = step(
        f"The {spoken(TOP)} and the {ACROSS} are together as long as the {spoken(BOTTOM)}, and "
        f"the {spoken(RIGHT)} and the {DOWN} as long as the {spoken(LEFT)}."
    )
    lead = (*view.finding(BOTTOM, LEFT), why)
    if doubled:
        steps = (
            step("Half the way round: {half}.", equation(plus(bottom, left), half), half=half),
            step("Twice that: {around}.", equation(times(_TWO, half), around), around=around),
        )
        return Method("As long round as the whole rectangle", (*lead, *steps), around)
    level, upright = view.long(2 * bottom.value), view.long(2 * left.value)
    both = (
        step("All the level sides: {level}.", equation(times(_TWO, bottom), level), level=level),
        step("All the upright sides: {upright}.", equation(times(_TWO, left), upright),
             upright=upright),
        step("Together: {around}.", equation(plus(level, upright), around), around=around),
    )  # fmt: skip
    return Method("Level sides, then upright sides", (*lead, *both), around)


def _sides(view: ShapeView, name: str) -> Iterator[Method]:
    side = view.side(name)
    (only,) = view.finding(name)
    yield Method("Sides that run the same way", (only,), side)
    if name in MADE_UP:
        one, other = (view.side(part) for part in MADE_UP[name])
        first, second = (spoken(part) for part in MADE_UP[name])
        told = equation(plus(other, one), side)
        text = f"Push the {first} and the {second} against the {spoken(name)}: "
        text += "they cover it, {side}."
    else:
        whole, part = view.side(long_side_of(name)), view.side(other_part(name))
        told = equation(plus(part, side), whole)
        text = f"The {spoken(other_part(name))} reaches {{part}} of {{whole}}, "
        text += "and {side} is missing."
        yield Method("Making up the long side",
                     (step(text, told, part=part, whole=whole, side=side),), side)  # fmt: skip
        return
    yield Method("Making up the long side", (step(text, told, side=side),), side)
