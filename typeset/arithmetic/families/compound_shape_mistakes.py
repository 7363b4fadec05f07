"""Mistakes with the area, the perimeter and the sides of an L-shape."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
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
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form


def mistakes_with_shapes(view: ShapeView) -> Iterator[MistakenWorking]:
    """The mistakes that what is asked for invites; with several answers all must be wrong."""
    finds = view.problem.finds
    if len(finds) == 1:
        yield from _with_one(view)
    elif set(finds) == {AREA, PERIMETER}:
        yield _both_exchanged(view)


def _with_one(view: ShapeView) -> Iterator[MistakenWorking]:
    (asked,) = view.problem.finds
    if asked == AREA:
        yield from _with_area(view)
    elif asked == PERIMETER:
        yield from _with_perimeter(view)
    else:
        yield from _with_side(view, asked)


def _both_exchanged(view: ShapeView) -> MistakenWorking:
    """The perimeter for the area, and the area for the perimeter."""
    name = "area and perimeter exchanged"
    steps: list[Step] = []
    answers: dict[str, AnswerValue] = {}
    for asked in view.problem.finds:
        alone = ShapeView(replace(view.problem, finds=(asked,)))
        wrong = next(each for each in _with_one(alone) if each.misconception == name)
        steps.extend(wrong.steps)
        answers |= wrong.answers
    return MistakenWorking(name, tuple(steps), answers)


def _number(value: Fraction) -> Amount:
    return Amount(value, form=Form.DECIMAL)


def _bare(view: ShapeView, name: str) -> Amount:
    return _number(view.side(name).value)


def _answer(view: ShapeView, value: Fraction) -> Amount:
    return Amount(value, view.unit_of(view.problem.finds[0]))


def _with_area(view: ShapeView) -> Iterator[MistakenWorking]:
    bottom, left = _bare(view, BOTTOM), _bare(view, LEFT)
    whole = bottom.value * left.value
    text = "Length times width: {answer}."
    only = step(text, equation(times(bottom, left), _number(whole)), answer=_answer(view, whole))
    yield view.mistake("bounding rectangle taken for the shape", (only,), whole)
    yield _overlapping(view)
    around = sum((view.side(name).value for name in SIDES), Fraction(0))
    sides = [_bare(view, name) for name in SIDES]
    only = step("Add all the sides: {answer}.", equation(plus(*sides), _number(around)),
                answer=_answer(view, around))  # fmt: skip
    yield view.mistake("area and perimeter exchanged", (only,), around)
    yield _one_piece(view)


def _overlapping(view: ShapeView) -> MistakenWorking:
    """The tall rectangle at the left and the long one at the bottom share a corner."""
    pieces: list[Amount] = []
    steps: list[Step] = []
    for across, down in ((BOTTOM, RIGHT), (TOP, LEFT)):
        wide, high = view.side(across), view.side(down)
        piece = view.wide(wide.value * high.value)
        told = equation(times(wide, high), piece)
        steps.append(step("One rectangle is {wide} by {high}." if not steps
                          else "The other one is {wide} by {high}.", told, wide=wide,
                          high=high))  # fmt: skip
        pieces.append(piece)
    area = view.wide(pieces[0].value + pieces[1].value)
    steps.append(step("Together: {area}.", equation(plus(*pieces), area), area=area))
    return view.mistake("overlapping part counted twice", tuple(steps), area.value)


def _one_piece(view: ShapeView) -> MistakenWorking:
    """Works one of the rectangles out and forgets the other."""
    wide, high = view.side(BOTTOM), view.side(RIGHT)
    piece = view.wide(wide.value * high.value)
    only = step("Length times width: {piece}.", equation(times(wide, high), piece), piece=piece)
    return view.mistake("step left out", (only,), piece.value)


def _with_perimeter(view: ShapeView) -> Iterator[MistakenWorking]:
    printed = [name for name in SIDES if name in view.problem.givens]
    total = sum((view.side(name).value for name in printed), Fraction(0))
    sides = [_bare(view, name) for name in printed]
    only = step("Add all the numbers: {answer}.", equation(plus(*sides), _number(total)),
                answer=_answer(view, total))  # fmt: skip
    yield view.mistake("missing side not found", (only,), total)
    yield _inner_side(view)
    bottom, left, across, down = (_bare(view, name) for name in (BOTTOM, LEFT, ACROSS, DOWN))
    area = bottom.value * left.value - across.value * down.value
    told = equation(minus(times(bottom, left), times(across, down)), _number(area))
    only = step("The rectangle without its corner: {answer}.", told, answer=_answer(view, area))
    yield view.mistake("area and perimeter exchanged", (only,), area)


def _inner_side(view: ShapeView) -> MistakenWorking:
    steps: list[Step] = []
    rounds = []
    for place, across, down in (("lower", BOTTOM, RIGHT), ("upper", TOP, DOWN)):
        wide, high = view.side(across), view.side(down)
        around = view.long(2 * (wide.value + high.value))
        told = equation(plus(wide, high, wide, high), around)
        steps.append(step(f"Round the {place} rectangle: {{around}}.", told, around=around))
        rounds.append(around)
    total = view.long(rounds[0].value + rounds[1].value)
    steps.append(step("Together: {total}.", equation(plus(*rounds), total), total=total))
    return view.mistake("inner side counted", tuple(steps), total.value)


def _with_side(view: ShapeView, asked: str) -> Iterator[MistakenWorking]:
    if asked in MADE_UP:
        low, high = sorted((_bare(view, part) for part in MADE_UP[asked]), key=lambda a: a.value)
        value = high.value - low.value
        name, told = "subtracting instead of adding", equation(minus(high, low), _number(value))
        text = "Take the one from the other: {answer}."
    else:
        whole, part = _bare(view, long_side_of(asked)), _bare(view, other_part(asked))
        value = whole.value + part.value
        name, told = "adding instead of subtracting", equation(plus(whole, part), _number(value))
        text = "Add the two: {answer}."
    yield view.mistake(name, (step(text, told, answer=_answer(view, value)),), value)
    yield _wrong_pair(view, asked)


def _wrong_pair(view: ShapeView, asked: str) -> MistakenWorking:
    """Takes the sides that run the other way."""
    long = next(name for name in MADE_UP if name != long_side_of(asked))
    part = MADE_UP[long][0]
    if asked in MADE_UP:
        one, other = (_bare(view, name) for name in MADE_UP[long])
        value, worked = one.value + other.value, plus(one, other)
    else:
        whole, less = _bare(view, long), _bare(view, part)
        value, worked = whole.value - less.value, minus(whole, less)
    told = equation(worked, _number(value))
    names = MADE_UP[long] if asked in MADE_UP else (long, part)
    first, second = (spoken(name) for name in names)
    verb = "Add" if asked in MADE_UP else "Use"
    text = f"{verb} the {first} and the {second}: {{answer}}."
    only = step(text, told, answer=_answer(view, value))
    return view.mistake("level and upright sides mixed up", (only,), value)
