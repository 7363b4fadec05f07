"""Two sorts: so many in all, so much in all; how many of each? Supposing all are of one sort."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.two_sorts_ways import (
    COUNT,
    TOTAL,
    Sorts,
    mistakes_of,
    unit_of_sort,
    ways_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension
from typeset.quantities.writing import say, write, write_plain


class TwoSortsFields(FamilyFields):
    """`sorts: {small boats: 3 seats, large boats: 5 seats}`, `count: 12 boats`,
    `total: 46 seats`, `find: large boats` (or both, in a list)."""

    sorts: Annotated[dict[str, PositiveAmount], Field(min_length=2)]
    count: WholeAmount
    total: PositiveAmount
    find: str | list[str]


class TwoSorts(Family[TwoSortsFields]):
    """The numbers of both make the count; with what each has they make the total."""

    name = "two sorts"
    fields_model = TwoSortsFields

    def build(self, fields: TwoSortsFields) -> Problem[TwoSortsFields]:
        """The problem; each sort is counted by its own name."""
        _check(fields)
        givens = {**fields.sorts, COUNT: fields.count, TOTAL: fields.total}
        finds = as_list(fields.find)
        for name in finds:
            one_of(name, tuple(fields.sorts))
        units = {name: unit_of_sort(name) for name in finds}
        return Problem(self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[TwoSortsFields]) -> Mapping[str, AnswerValue]:
        """one + other = count; each × one + each × other = total; some of both."""
        sorts = Sorts.of(problem)
        ends = [sorts.worth(name, sorts.count.value) for name in (sorts.low, sorts.high)]
        if not ends[0].value < sorts.total.value < ends[1].value:
            raise AmountError(
                f"{write_plain(sorts.count)} of both sorts together have more than "
                f"{write_plain(ends[0])} and less than {write_plain(ends[1])}, "
                f"not {write_plain(sorts.total)}",
                "change the count or the total",
            )
        return self.smooth(problem)

    def smooth(self, problem: Problem[TwoSortsFields]) -> Mapping[str, AnswerValue]:
        """The numbers whatever they are."""
        found = _solved(problem)
        return {name: problem.answer(name, found[name]) for name in problem.finds}

    def strategies(self, problem: Problem[TwoSortsFields]) -> Iterator[Working]:
        """Suppose all are of the one sort, or of the other; a table from an end or from half."""
        yield from ways_of(Sorts.of(problem))

    def mistakes(self, problem: Problem[TwoSortsFields]) -> Iterator[MistakenWorking]:
        """Half of each; divided by one each; the sorts exchanged; the count ignored."""
        yield from mistakes_of(Sorts.of(problem))

    def reason(self, problem: Problem[TwoSortsFields]) -> Rich:
        """What is missing if all were of one sort, and what an exchange brings."""
        sorts = Sorts.of(problem)
        return say(
            f"If all {{count}} were {unit_of_sort(sorts.low).plural}, {{missing}} would be "
            "missing. Each exchange brings {gap}, so that difference is divided.",
            count=sorts.count,
            missing=sorts.missing,
            gap=sorts.gap,
        )

    def figure(
        self, problem: Problem[TwoSortsFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """The total as a bar: what there would be if all were of the lesser sort, and the rest."""
        sorts = Sorts.of(problem)
        supposed = sorts.of_low(sorts.count.value)
        parts = (
            Part(supposed.value, Mark((write(supposed),), is_given=False)),
            Part(sorts.missing.value, Mark((write(sorts.missing),), is_given=False), dashed=True),
        )
        told = (
            f"The total {write_plain(sorts.total)}: as if all were "
            f"{unit_of_sort(sorts.low).plural}, and the rest."
        )
        return BarModel((Bar("", parts),), (), Mark((write(sorts.total),)), told)


def _solved(problem: Problem[TwoSortsFields]) -> dict[str, Fraction]:
    one, other = problem.fields.sorts
    return solve_linear(
        [
            Linear({one: 1, other: 1}, problem.given(COUNT).value),
            Linear(
                {one: problem.given(one).base, other: problem.given(other).base},
                problem.given(TOTAL).base,
            ),
        ]
    )


def _check(fields: TwoSortsFields) -> None:
    """Raises AmountError where names or amounts do not go together."""
    if len(fields.sorts) != 2:
        raise AmountError("there are more than two sorts", "give two")
    for name in fields.sorts:
        if name in (COUNT, TOTAL) or not name.strip():
            raise AmountError(f"'{name}' cannot be the name of a sort", "name what is counted")
    first, second = fields.sorts.values()
    if not is_counted(fields.count):
        raise AmountError("'count' is not a number of things", "write such as 12 boats")
    for amount in (first, second):
        same = amount.unit == fields.total.unit or (is_counted(amount) and is_counted(fields.total))
        if not same or amount.unit.dimension is Dimension.CLOCK:
            raise AmountError(
                f"{write_plain(amount)} and {write_plain(fields.total)} are not in one unit",
                "give what each has in the unit of the total",
            )
    if first.value == second.value:
        raise AmountError(f"both sorts have {write_plain(first)} each", "change one of them")
    if fields.count.value < 2:
        raise AmountError("there is only one in all", "choose a larger count")
