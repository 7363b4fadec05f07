"""Angles that make a right angle, a straight line, a full turn, a triangle or a quadrilateral."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.angles_view import CROSSING, NEXT, OPPOSITE, TOTALS, AnglesView
from typeset.arithmetic.families.angles_ways import angle_mistakes, ways_to_angles
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount
from typeset.arithmetic.figures import Angles as Drawn
from typeset.arithmetic.figures import AngleSetting, Bar, BarModel, Mark, Part, Wedge
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import as_list, listed, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import DEGREE, Dimension
from typeset.quantities.writing import say, write

_Make = Literal[
    "right angle",
    "straight line",
    "full turn",
    "triangle",
    "quadrilateral",
    "crossing lines",
]


_SETTINGS = {
    "straight line": AngleSetting.LINE,
    "full turn": AngleSetting.POINT,
    "triangle": AngleSetting.TRIANGLE,
}
# A sharper angle has no room for its size; then all are told in a bar.
_LEAST_DRAWN = 25


class AnglesFields(FamilyFields):
    """`make: triangle`, `angles: {a: 65°, b: 40°}`, `find: c`.

    Several names under `find` are equal angles, unless `multiples: {d: 2}` says that d is
    twice the other. `how many: {base: 2}` counts an angle more than once. Where lines cross, `find`
    is 'opposite' or 'next'.
    """

    make: _Make
    angles: dict[str, PositiveAmount]
    find: str | list[str]
    how_many: dict[str, WholeAmount] = Field(default_factory=dict, alias="how many")
    multiples: dict[str, PositiveAmount] = Field(default_factory=dict)


class Angles(Family[AnglesFields]):
    """The angles together make a known total."""

    name = "angles"
    fields_model = AnglesFields

    def build(self, fields: AnglesFields) -> Problem[AnglesFields]:
        """The problem; all angles are in degrees."""
        finds = as_list(fields.find)
        if not finds or len(set(finds)) != len(finds):
            raise AmountError("each angle is asked for once", "name what is to be found")
        if not fields.angles:
            raise AmountError("no angle is known", "give at least one under 'angles'")
        for name, amount in fields.angles.items():
            if amount.unit.dimension is not Dimension.ANGLE:
                raise AmountError(f"'{name}' is not an angle", "write degrees, such as 65°")
        problem = Problem(
            self.name,
            MappingProxyType(dict(fields.angles)),
            finds,
            MappingProxyType(dict.fromkeys(finds, DEGREE)),
            fields,
        )
        if fields.make == CROSSING:
            _check_crossing(fields, finds)
        else:
            _check_together(AnglesView(problem))
        return problem

    def relation(self, problem: Problem[AnglesFields]) -> Mapping[str, AnswerValue]:
        """total = sum of all angles; equal ones are equal, and a multiple is so many times one."""
        fields = problem.fields
        equations = [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        if fields.make == CROSSING:
            known = next(iter(problem.givens))
            equations.append(Linear({OPPOSITE: 1, known: -1}))
            equations.append(Linear({NEXT: 1, known: 1}, TOTALS["straight line"]))
        else:
            view = AnglesView(problem)
            one, *others = sorted(view.unknown, key=lambda name: name in fields.multiples)
            equations += [Linear({name: 1, one: -view.times(name)}) for name in others]
            names = (*problem.givens, *view.unknown)
            counts = {name: view.count(name) for name in names}
            equations.append(Linear(counts, TOTALS[fields.make]))
        values = solve_linear(equations)
        return {name: problem.answer(name, values[name]) for name in problem.finds}

    def strategies(self, problem: Problem[AnglesFields]) -> Iterator[Working]:
        """The known angles together first, one after another, or made up to the total."""
        yield from ways_to_angles(AnglesView(problem))

    def mistakes(self, problem: Problem[AnglesFields]) -> Iterator[MistakenWorking]:
        """The wrong total, an angle left out, angles subtracted from one another."""
        yield from angle_mistakes(AnglesView(problem))

    def reason(self, problem: Problem[AnglesFields]) -> Rich | None:
        """Why the rest is shared, and why nothing is done with an opposite angle."""
        view = AnglesView(problem)
        if problem.fields.make == CROSSING:
            if problem.finds[0] == NEXT:
                return None
            known = next(iter(problem.givens.values()))
            return say("Where two straight lines cross, opposite angles are equal, so {angle} "
                       "stays {angle}.", angle=known)  # fmt: skip
        if view.shares == 1:
            return _counted_twice(view)
        return say(
            "What is known comes off {total} first; the rest is then shared into {shares} equal "
            "parts.",
            total=view.total, shares=Amount(view.shares),
        )  # fmt: skip

    def figure(
        self, problem: Problem[AnglesFields], answers: Mapping[str, AnswerValue]
    ) -> Drawn | BarModel | None:
        """The angles where they lie, to scale; else the total as one bar of them."""
        if problem.fields.make == CROSSING:
            return None
        return _figure(AnglesView(problem))


def _figure(view: AnglesView) -> Drawn | BarModel:
    known = [(amount.base, Mark((write(amount),))) for amount in view.known]
    unknown = [
        (size, Mark((write(Amount(size, DEGREE)),), is_given=False))
        for name in view.unknown
        for size in [view.one * view.times(name)] * int(view.count(name))
    ]
    setting = _SETTINGS.get(view.problem.fields.make)
    angles = [*known, *unknown]
    if setting is not None and min(size for size, _ in angles) >= _LEAST_DRAWN:
        return Drawn(setting, tuple(Wedge(size, mark) for size, mark in angles))
    parts = [Part(size, mark) for size, mark in known]
    parts += [Part(size, mark, shaded=True) for size, mark in unknown]
    return BarModel((Bar("", tuple(parts)),), (), Mark((write(view.total),)))


def _counted_twice(view: AnglesView) -> Rich | None:
    """One degree more takes several off the answer, where a known angle is there twice."""
    name = next((name for name in view.problem.givens if view.count(name) > 1), None)
    if name is None:
        return None
    known = view.problem.given(name)
    return say(
        "With {more} instead of {known} the answer would go down by {by}, since that angle is "
        "there {times} times.",
        more=known.like(known.value + 1), known=known,
        by=known.like(view.count(name)), times=Amount(view.count(name)),
    )  # fmt: skip


def _check_crossing(fields: AnglesFields, finds: tuple[str, ...]) -> None:
    for name in finds:
        one_of(name, (OPPOSITE, NEXT))
    (known, *more) = fields.angles.values()
    if more or fields.how_many or fields.multiples:
        raise AmountError(
            "where two lines cross, one known angle gives the others", "give one angle only"
        )
    if known.base >= TOTALS["straight line"]:
        raise AmountError(
            "an angle between crossing lines is less than 180°", "give a smaller angle"
        )


def _check_together(view: AnglesView) -> None:
    fields = view.problem.fields
    for name in (*fields.how_many, *fields.multiples):
        one_of(name, (*view.unknown, *fields.angles))
    both = [name for name in view.unknown if name in fields.angles]
    if both:
        raise AmountError(f"'{both[0]}' is both given and asked for", "ask for another angle")
    if all(name in fields.multiples for name in view.unknown):
        raise AmountError(
            f"'{view.unknown[0]}' is so many times nothing",
            "name the angle that it is a multiple of under 'find' as well",
        )
    _check_corners(view)
    if view.known_total >= view.total.value:
        raise AmountError(
            f"the known angles alone make {view.known_total}°",
            f"angles in a {fields.make} make {view.total.value}° with the missing one, so give "
            "smaller ones",
        )


def _check_corners(view: AnglesView) -> None:
    """A triangle has three angles, a quadrilateral four."""
    corners = {"triangle": 3, "quadrilateral": 4}.get(view.problem.fields.make)
    names = (*view.problem.givens, *view.unknown)
    have = sum((view.count(name) for name in names), Fraction(0))
    if corners is not None and have != corners:
        raise AmountError(
            f"a {view.problem.fields.make} has {corners} angles, and these are {have}: "
            f"{listed(names, 'and')}",
            "name every angle once, or say 'how many' there are of one",
        )
