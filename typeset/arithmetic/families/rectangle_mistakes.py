"""Mistakes with the area and the perimeter of a rectangle."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.families.rectangle_view import AREA, LENGTH, PERIMETER, WIDTH, View
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.writing import decimal

_EXCHANGED = "area and perimeter exchanged"
_TWO_SIDES = "only two sides counted"


def rectangle_mistakes(view: View) -> Iterator[MistakenWorking]:
    """The mistakes that the amounts given and asked for invite."""
    asked, givens = view.problem.finds[0], view.problem.givens
    if len(view.problem.finds) > 1:
        return
    if LENGTH in givens and WIDTH in givens:
        yield from _of_area(view) if asked == AREA else _of_perimeter(view)
    elif AREA in givens and asked != PERIMETER:
        yield from _of_side_from_area(view)
    elif PERIMETER in givens and asked != AREA:
        yield from _of_side_from_perimeter(view)
    else:
        yield _stopped_at_the_side(view)


def _told(view: View, text: str, worked: Expression, value: Fraction) -> Step:
    """A step in bare numbers: the pupil reckons without units."""
    asked = view.problem.finds[0]
    return step(text, equation(worked, _number(value)), answer=Amount(value, view.unit_of(asked)))


def _number(value: Fraction) -> Amount:
    return Amount(value, form=Form.DECIMAL)


def _both(view: View) -> tuple[Amount, Amount]:
    return _number(view.given(LENGTH).value), _number(view.given(WIDTH).value)


def _of_area(view: View) -> Iterator[MistakenWorking]:
    length, width = _both(view)
    around = 2 * (length.value + width.value)
    sum_ = plus(length, width, length, width)
    first = _told(view, "Add all the sides: {answer}.", sum_, around)
    yield view.mistake(_EXCHANGED, (first,), around)
    half = length.value + width.value
    first = _told(view, "Add the two numbers: {answer}.", plus(length, width), half)
    yield view.mistake("adding instead of multiplying", (first,), half)


def _of_perimeter(view: View) -> Iterator[MistakenWorking]:
    length, width = _both(view)
    product = length.value * width.value
    first = _told(view, "Length times width: {answer}.", times(length, width), product)
    yield view.mistake(_EXCHANGED, (first,), product)
    half = length.value + width.value
    first = _told(view, "Length and width together: {answer}.", plus(length, width), half)
    yield view.mistake(_TWO_SIDES, (first,), half)


def _of_side_from_area(view: View) -> Iterator[MistakenWorking]:
    area, known = _number(view.given(AREA).value), _number(view.given(view.known_side).value)
    less = area.value - known.value
    text = "Take the side from the area: {answer}."
    first = _told(view, text, minus(area, known), less)
    yield view.mistake("subtracting instead of dividing", (first,), less)
    product = area.value * known.value
    first = _told(view, "Multiply the two: {answer}.", times(area, known), product)
    yield view.mistake("multiplying instead of dividing", (first,), product)
    half = area.value / 2
    if half > known.value:
        steps = (
            step("Half of it is one length and one width.",
                 equation(over(area, _number(Fraction(2))), _number(half))),
            _told(view, "Without the known side: {answer}.", minus(_number(half), known),
                  half - known.value),
        )  # fmt: skip
        yield view.mistake(_EXCHANGED, steps, half - known.value)


def _of_side_from_perimeter(view: View) -> Iterator[MistakenWorking]:
    around = _number(view.given(PERIMETER).value)
    known = _number(view.given(view.known_side).value)
    less = around.value - known.value
    text = "Take the known side from the perimeter: {answer}."
    first = _told(view, text, minus(around, known), less)
    yield view.mistake(_TWO_SIDES, (first,), less)
    rest = around.value - 2 * known.value
    text = "Take off the two known sides: {answer}."
    first = _told(view, text, minus(around, times(_number(Fraction(2)), known)), rest)
    yield view.mistake("step left out", (first,), rest)
    quotient = around.value / known.value
    if decimal(quotient) is None:
        return
    first = _told(view, "Divide by the known side: {answer}.", over(around, known), quotient)
    yield view.mistake(_EXCHANGED, (first,), quotient)


def _stopped_at_the_side(view: View) -> MistakenWorking:
    """Finds the missing side and takes it for the answer."""
    side = view.side(view.missing_side)
    known = view.given(view.known_side)
    if AREA in view.problem.givens:
        worked: Expression = over(view.given(AREA), known)
    else:
        worked = minus(over(view.given(PERIMETER), Amount(Fraction(2))), known)
    only = step("The other side: {side}.", equation(worked, side), side=side)
    return view.mistake("step left out", (only,), side.value)
