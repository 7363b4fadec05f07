"""Scale: lengths on a map, a plan or a model, and the real ones."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated, Literal

from pydantic import BeforeValidator

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, over, times
from typeset.arithmetic.families.pairs import PairFields, build_pair
from typeset.arithmetic.families.proportion import Proportion
from typeset.arithmetic.families.scale_mistakes import mistakes_with_scales
from typeset.arithmetic.families.scale_view import (
    ON_PAPER,
    REAL,
    REAL_LENGTH,
    SCALE,
    STANDS_FOR,
    ScaleView,
    read_scale,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, refuse
from typeset.arithmetic.figures import DoubleNumberLine, Mark, PairTick
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import conversion
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import UNITS, Dimension
from typeset.quantities.writing import write


def _read(value: object) -> object:
    if not isinstance(value, str):
        return value
    try:
        return read_scale(value)
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None


# The name of a proportion's way that looks from one amount to the other.
ACROSS = "Across from one amount to the other"
# So many times is told down to thousandths.
_FINEST = 1000
_ScaleField = Annotated[tuple[Amount, Amount], BeforeValidator(_read)]


class ScaleFields(FamilyFields):
    """`scale: 1 cm to 20 km` or `scale: 1:25,000`, with `map: 12.5 cm` or `real: 250 km`.

    Besides `map` it may be a `drawing`, a `plan` or a `model`. In the story `{scale}` is the
    first number of the scale and `{stands for}` the second one.
    """

    scale: _ScaleField
    map: PositiveAmount | None = None
    drawing: PositiveAmount | None = None
    plan: PositiveAmount | None = None
    model: PositiveAmount | None = None
    real: PositiveAmount | None = None
    find: Literal["map", "drawing", "plan", "model", "real"] | None = None


class Scale(Family[ScaleFields]):
    """real = scale × drawing."""

    name = "scale"
    fields_model = ScaleFields

    def build(self, fields: ScaleFields) -> Problem[ScaleFields]:
        """The problem; what is not given is asked for."""
        given, asked = _names(fields)
        amount = getattr(fields, given)
        first, second = fields.scale
        if amount.unit.dimension is not Dimension.LENGTH:
            raise AmountError(f"'{given}' is not a length", "write such as 12.5 cm")
        answer_in = fields.answer_in
        if answer_in is not None and answer_in.dimension is not Dimension.LENGTH:
            raise AmountError(
                "the answer is a length", "leave out 'answer in', or write such as km"
            )
        givens = MappingProxyType({SCALE: first, STANDS_FOR: second, given: amount})
        own = {REAL: second.unit}.get(asked, first.unit)
        if own.dimension is not Dimension.LENGTH:
            # What is drawn to a scale without units is measured in centimetres.
            own = amount.unit if asked == REAL else UNITS["cm"]
        units = MappingProxyType({asked: answer_in or own})
        return Problem(self.name, givens, (asked,), units, fields)

    def relation(self, problem: Problem[ScaleFields]) -> Mapping[str, AnswerValue]:
        """first of the scale × real − second of the scale × on paper = 0, in base units."""
        view = ScaleView(problem)
        paper, real = (problem.given(name).base for name in (SCALE, STANDS_FOR))
        equations = [
            Linear({REAL: paper, ON_PAPER: -real}),
            Linear({REAL if view.given == REAL else ON_PAPER: 1}, problem.given(view.given).base),
        ]
        value = solve_linear(equations)[REAL if view.asked == REAL else ON_PAPER]
        unit = problem.units[view.asked]
        return {view.asked: problem.answer(view.asked, value / unit.per_base)}

    def strategies(self, problem: Problem[ScaleFields]) -> Iterator[Working]:
        """How many times the scale's own length; and every way that a proportion has."""
        view = ScaleView(problem)
        yield from _times_the_scale(view)
        for way in Proportion().strategies(_in_step(view)):
            (reached,) = way.answers.values()
            if way.strategy == ACROSS and view.asked != REAL and view.one.value == 1:
                # From the real length to one centimetre is told better by how many times.
                continue
            yield Working(way.strategy, (*view.opening(), *way.steps), {view.asked: reached})

    def mistakes(self, problem: Problem[ScaleFields]) -> Iterator[MistakenWorking]:
        """The wrong way round, the scale added, the unit not converted; as with a proportion."""
        view = ScaleView(problem)
        yield from mistakes_with_scales(view)
        for wrong in Proportion().mistakes(_in_step(view)):
            (reached,) = wrong.answers.values()
            steps = (*view.opening(), *wrong.steps)
            yield MistakenWorking(wrong.misconception, steps, {view.asked: reached}, wrong.slip)

    def probed(self, problem: Problem[ScaleFields]) -> tuple[str, ...]:
        """The length that is known, and what the scale stands for."""
        return (ScaleView(problem).given, STANDS_FOR)

    def figure(
        self, problem: Problem[ScaleFields], answers: Mapping[str, AnswerValue]
    ) -> DoubleNumberLine | None:
        """Both lengths from nothing, the scale's and the one that is asked for."""
        return _figure(ScaleView(problem), answers)


def _names(fields: ScaleFields) -> tuple[str, str]:
    """What is given, and what is asked for."""
    papers = [name for name in ("map", "drawing", "plan", "model") if getattr(fields, name)]
    if len(papers) + (fields.real is not None) != 1:
        raise AmountError(
            "exactly one length is known besides the scale",
            "give one of map, drawing, plan, model and real",
        )
    if papers:
        if fields.find not in (None, REAL):
            raise AmountError(f"'{fields.find}' is not asked for here", "write find: real")
        return papers[0], REAL
    if fields.find == REAL:
        raise AmountError("'real' is both given and asked for", "write find: map")
    return REAL, fields.find or "drawing"


def _in_step(view: ScaleView) -> Problem[PairFields]:
    """The same as a proportion: what is known goes with what is asked for."""
    known = REAL_LENGTH if view.given == REAL else view.paper
    asked = view.paper if view.given == REAL else REAL_LENGTH
    lengths = {view.paper: view.one, REAL_LENGTH: view.other}
    fields = {
        "together": lengths,
        "wanted": {known: view.problem.given(view.given)},
        "find": asked,
        "answer in": view.problem.units[view.asked],
    }
    return build_pair(Proportion.name, PairFields.model_validate(fields))


def _times_the_scale(view: ScaleView) -> Iterator[Working]:
    """How often the scale's length fits into the known one, and as many times the other."""
    if (view.times * _FINEST).denominator != 1:
        return
    own, other = (view.one, view.other) if view.asked == REAL else (view.other, view.one)
    known, steps = conversion(view.problem.given(view.given), own.unit)
    times_it = Amount(view.times, form=Form.DECIMAL)
    reached = other.like(other.value * view.times)
    told = (
        step("{known} is {times} times {own}.", equation(over(known, own), times_it),
             known=known, times=times_it, own=own),
        step(f"So {'the real length' if view.asked == REAL else f'on the {view.paper} it'} is "
             "{times} times {other}: {reached}.", equation(times(times_it, other), reached),
             times=times_it, other=other, reached=reached),
    )  # fmt: skip
    answer, closing = conversion(reached, view.problem.units[view.asked])
    name = "How many times the scale"
    yield Working(name, (*view.opening(), *steps, *told, *closing), {view.asked: answer})


def _figure(view: ScaleView, answers: Mapping[str, AnswerValue]) -> DoubleNumberLine | None:
    answer = answers[view.asked]
    if not isinstance(answer, Amount):
        return None
    known = Mark((write(view.problem.given(view.given)),))
    asked = Mark((write(answer),), is_given=False)
    upper, lower = (asked, known) if view.given == REAL else (known, asked)
    reached = view.times
    zero = Fraction(0)
    nothing = Mark((write(Amount(zero)),))
    ticks = [
        PairTick(zero, nothing, nothing),
        PairTick(view.one.value, Mark((write(view.one),)), Mark((write(view.other),))),
        PairTick(view.one.value * reached, upper, lower),
    ]
    ticks.sort(key=lambda tick: tick.at)
    return DoubleNumberLine(view.paper, REAL_LENGTH, tuple(ticks))
