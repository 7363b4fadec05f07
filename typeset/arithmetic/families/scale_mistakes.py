"""Mistakes with scales."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, over, plus, times
from typeset.arithmetic.families.scale_view import REAL, STANDS_FOR, ScaleView
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount, Form


def mistakes_with_scales(view: ScaleView) -> Iterator[MistakenWorking]:
    """The wrong way round, added, or reckoned with the numbers of unlike units."""
    known = _number(view.problem.given(view.given).value)
    scale = _number(view.problem.given(STANDS_FOR).value / view.one.value)
    grows = view.asked == REAL
    turned = known.value / scale.value if grows else known.value * scale.value
    verb = "Divide by" if grows else "Multiply by"
    sign = over(known, scale) if grows else times(known, scale)
    yield from _mistake(view, "scale used the wrong way round", verb, scale, sign, turned)
    added = known.value + scale.value
    yield from _mistake(view, "scale added", "Add", scale, plus(known, scale), added)
    if _needs_units(view):
        plainly = known.value * scale.value if grows else known.value / scale.value
        verb = "Multiply by" if grows else "Divide by"
        sign = times(known, scale) if grows else over(known, scale)
        yield from _mistake(view, "unit not converted", verb, scale, sign, plainly)


def _number(value: Fraction) -> Amount:
    return Amount(value, form=Form.DECIMAL)


def _needs_units(view: ScaleView) -> bool:
    """True where the numbers alone would give another answer than the lengths do."""
    known, unit = view.problem.given(view.given), view.problem.units[view.asked]
    told = view.one if view.given != REAL else view.other
    reached = view.other if view.given != REAL else view.one
    return known.unit != told.unit or unit != reached.unit


def _mistake(
    view: ScaleView, name: str, verb: str, scale: Amount, worked: Expression, value: Fraction
) -> Iterator[MistakenWorking]:
    if (value * 1000).denominator != 1:
        # Nobody writes a number of so many digits down as a length.
        return
    answer = Amount(value, view.problem.units[view.asked])
    told = equation(worked, _number(value))
    only = step(f"{verb} {{scale}}: {{answer}}.", told, scale=scale, answer=answer)
    yield MistakenWorking(name, (only,), {view.asked: answer})
