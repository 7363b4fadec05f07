"""Fixed charge and rate: a part that counts once, and a part for each (Van Dooren's affine)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.fixed_charge_mistakes import charge_mistakes
from typeset.arithmetic.families.fixed_charge_view import (
    COUNT,
    FIRST_COUNT,
    FIRST_TOTAL,
    FIXED,
    PLACES,
    RATE,
    TOTAL,
    Charge,
    values_of,
    view_of,
)
from typeset.arithmetic.families.fixed_charge_ways import charge_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.names import as_list, listed, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import say, write, write_plain

_COUNTS = {Dimension.NUMBER, Dimension.COUNT}
# More parts than this nobody draws.
_MOST_PARTS = 12


class FixedChargeFields(FamilyFields):
    """`fixed: £12`, `rate: £4`, `count: 5 hours`, `find: total`; or a known pair beside it:
    `fixed: 12 m`, `together: {count: 4 carriages, total: 52 m}`, `count: 8 carriages`."""

    fixed: PositiveAmount | None = None
    rate: PositiveAmount | None = None
    count: PositiveAmount | None = None
    total: PositiveAmount | None = None
    # A count whose total is known; in the story `{first count}` and `{first total}`.
    together: dict[str, PositiveAmount] | None = None
    find: str | list[str]


class FixedCharge(Family[FixedChargeFields]):
    """total = fixed part + rate × count."""

    name = "fixed charge"
    fields_model = FixedChargeFields

    def build(self, fields: FixedChargeFields) -> Problem[FixedChargeFields]:
        """The problem; what is not given and not asked for has to follow from the rest."""
        givens = _givens(fields)
        finds = as_list(fields.find)
        for name in finds:
            one_of(name, PLACES)
            if name in givens:
                raise AmountError(f"'{name}' is both given and asked for", "leave one out")
        _check_kinds(givens)
        units = {name: _unit(name, givens, fields.answer_in) for name in finds}
        problem = Problem(
            self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields
        )
        values_of(problem)
        return problem

    def relation(self, problem: Problem[FixedChargeFields]) -> Mapping[str, AnswerValue]:
        """total = fixed + rate × count, for every count whose total is known."""
        values = values_of(problem)
        sizes = {name: problem.units[name].per_base for name in problem.finds}
        return {
            name: problem.answer(name, values[name] / (1 if name == COUNT else sizes[name]))
            for name in problem.finds
        }

    def strategies(self, problem: Problem[FixedChargeFields]) -> Iterator[Working]:
        """The fixed part by itself; only what is added; one after another; and checked."""
        yield from charge_ways(view_of(problem))

    def mistakes(self, problem: Problem[FixedChargeFields]) -> Iterator[MistakenWorking]:
        """Scaling all, or the fixed part forgotten, repeated or taken for the rate."""
        yield from charge_mistakes(view_of(problem))

    def reason(self, problem: Problem[FixedChargeFields]) -> Rich | None:
        """What counts once is added; what counts for each is multiplied."""
        view = view_of(problem)
        return say(
            "The fixed part, {fixed}, counts only once, so it is added or taken off. The rate, "
            "{rate}, counts for every one of {count}, so it is multiplied or divided by.",
            fixed=view.fixed,
            rate=view.rate,
            count=view.count,
        )

    def figure(
        self, problem: Problem[FixedChargeFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """The fixed part, then a part for each."""
        return _bar_model(view_of(problem))


def _givens(fields: FixedChargeFields) -> dict[str, Amount]:
    typed = {FIXED: fields.fixed, RATE: fields.rate, COUNT: fields.count, TOTAL: fields.total}
    givens = {name: amount for name, amount in typed.items() if amount is not None}
    if fields.together is not None:
        if set(fields.together) != {COUNT, TOTAL}:
            raise AmountError(
                f"'together' has {listed(list(fields.together), 'and') or 'nothing'}",
                "give it count and total",
            )
        givens[FIRST_COUNT] = fields.together[COUNT]
        givens[FIRST_TOTAL] = fields.together[TOTAL]
    return givens


def _check_kinds(givens: Mapping[str, Amount]) -> None:
    """Fixed part, rate and totals are of one kind; so are the counts."""
    for names in ((FIXED, RATE, TOTAL, FIRST_TOTAL), (COUNT, FIRST_COUNT)):
        kinds = {givens[name].unit.dimension for name in names if name in givens}
        if Dimension.CLOCK in kinds:
            raise AmountError("a time of day is no amount", "give lengths of time")
        if len(kinds) > 1 and not kinds <= _COUNTS:
            shown = [write_plain(givens[name]) for name in names if name in givens]
            raise AmountError(
                f"{listed(shown, 'and')} are not of one kind", "give them in units of one kind"
            )
    counts = {givens[name].unit for name in (COUNT, FIRST_COUNT) if name in givens}
    if len(counts) > 1:
        raise AmountError("the two counts are in different units", "give both in one unit")


def _unit(name: str, givens: Mapping[str, Amount], answer_in: Unit | None) -> Unit:
    same = (COUNT, FIRST_COUNT) if name == COUNT else (TOTAL, FIRST_TOTAL, FIXED, RATE)
    known = next((givens[each].unit for each in same if each in givens), None)
    if answer_in is None:
        return known or NUMBER
    if name == COUNT and known not in (None, answer_in):
        raise AmountError("the counts are in one unit", "leave out 'answer in'")
    dimensions = {answer_in.dimension} | ({known.dimension} if known else set())
    if len(dimensions) > 1 and not dimensions <= _COUNTS:
        raise AmountError(f"the {name} is not measured in {answer_in.plural}", "change 'answer in'")
    return answer_in


def _bar_model(view: Charge) -> BarModel | None:
    if not view.count.is_whole or view.count.value > _MOST_PARTS:
        return None
    fixed = Part(view.fixed.value, _mark(view, FIXED, view.fixed), shaded=True)
    each = Part(view.rate.value, _mark(view, RATE, view.rate))
    count = int(view.count.value)
    total = Brace(0, _mark(view, TOTAL, view.total), 0, count)
    reads_as = f"One bar: a fixed part, then {count} equal parts; together the total."
    return BarModel((Bar("", (fixed, *(each,) * count)),), (total,), reads_as=reads_as)


def _mark(view: Charge, name: str, amount: Amount) -> Mark:
    return Mark((write(amount),), is_given=name in view.problem.givens)
