"""Equal groups: so many groups, the same in each; also groups of groups, and prices."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import prod
from types import MappingProxyType
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus, times
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.methods import (
    Method,
    conversion,
    in_unit,
    is_counted,
    just_above,
    place_parts,
    without_noun,
)
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit, noun
from typeset.quantities.writing import write

TOTAL = "total"
_GROUP = noun("group", "groups")
# More equal parts than these make a bar that nobody can count.
_MOST_PARTS = 12
_MOST_TERMS = 6


def _by_name(value: Any) -> Any:
    """One number of groups is called 'groups'; groups of groups have names of their own."""
    return {"groups": value} if isinstance(value, str) else value


class EqualGroupsFields(FamilyFields):
    """`groups: 6 crates`, `each: 12 floats`; or `groups: {shelves: 3 shelves, crates: 4 crates}`.

    Several groups go from the outermost to the innermost: crates on every shelf, then what
    is in each crate.
    """

    groups: Annotated[dict[str, PositiveAmount], BeforeValidator(_by_name)]
    each: PositiveAmount
    find: Literal["total"] = "total"


class EqualGroups(Family[EqualGroupsFields]):
    """total = number of groups × amount in each."""

    name = "equal groups"
    fields_model = EqualGroupsFields

    def build(self, fields: EqualGroupsFields) -> Problem[EqualGroupsFields]:
        """The problem; the total is measured like one group unless 'answer in' says otherwise."""
        _check(fields)
        givens = MappingProxyType({**fields.groups, "each": fields.each})
        unit = fields.answer_in or fields.each.unit
        in_unit(fields.each, unit)
        return Problem(self.name, givens, (TOTAL,), MappingProxyType({TOTAL: unit}), fields)

    def relation(self, problem: Problem[EqualGroupsFields]) -> Mapping[str, AnswerValue]:
        """total = the product of all numbers of groups and of what is in each."""
        counts = prod(problem.given(name).value for name in problem.fields.groups)
        total = counts * problem.given("each").base
        return {TOTAL: problem.answer(TOTAL, total / problem.units[TOTAL].per_base)}

    def strategies(self, problem: Problem[EqualGroupsFields]) -> Iterator[Working]:
        """Every way to multiply; for groups of groups, from the inside, the outside or freely."""
        view = _View(problem)
        if len(view.counts) == 1:
            methods = ways_to_multiply(view.lots())
        else:
            methods = iter((_inside_first(view), _groups_first(view), *_friendly_first(view)))
        for method in methods:
            total, closing = conversion(method.result, problem.units[TOTAL])
            yield method.after(*view.opening).working({TOTAL: total}, *closing)

    def mistakes(self, problem: Problem[EqualGroupsFields]) -> Iterator[MistakenWorking]:
        """Adding, a group left out, a part left out, adjusting by too little, stopping early."""
        view = _View(problem)
        if len(view.counts) > 1:
            yield from _stopped_early(view)
            yield from _all_added(view)
            return
        yield from _all_added(view)
        yield from _group_left_out(view)
        yield from _part_left_out(view)
        yield from _too_little_taken_off(view)

    def figure(
        self, problem: Problem[EqualGroupsFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """One bar in equal parts, where they can be counted at a glance."""
        view = _View(problem)
        count = view.counts[0]
        if len(view.counts) > 1 or not count.is_whole or count.value > _MOST_PARTS:
            return None
        part = Part(Fraction(1), Mark((write(problem.given("each")),)))
        answer = answers[TOTAL]
        assert isinstance(answer, Amount)
        bar = Bar(view.lot(0).plural, (part,) * int(count.value))
        return BarModel((bar,), (), Mark((write(answer),), is_given=False))


def _check(fields: EqualGroupsFields) -> None:
    for name, count in fields.groups.items():
        if count.value == 1:
            raise AmountError(
                f"there is only one in '{name}', so there is nothing to multiply",
                "choose at least 2",
            )
        if is_counted(count) and not count.is_whole:
            raise AmountError(f"'{name}' is not a whole number", "choose a whole number of groups")
        if count.unit.dimension is Dimension.MONEY:
            raise AmountError(
                f"'{name}' is a sum of money", "give the price as 'each' and how many as 'groups'"
            )
        if len(fields.groups) > 1 and not is_counted(count):
            raise AmountError(f"'{name}' is not a number of groups", "count it, such as 4 crates")
    if TOTAL in fields.groups or "each" in fields.groups or not fields.groups:
        raise AmountError("groups need names of their own", "write such as {shelves: 3 shelves}")
    if fields.each.value == 1 and is_counted(fields.each):
        raise AmountError("there is only one in each group", "choose at least 2 in each")


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with the words that the workings need."""

    problem: Problem[EqualGroupsFields]

    @property
    def counts(self) -> tuple[Amount, ...]:
        """How many groups, from the outermost to the innermost."""
        return tuple(self.problem.given(name) for name in self.problem.fields.groups)

    @property
    def each(self) -> Amount:
        """What is in each, in one unit: 80 min for 1 h 20 min."""
        given = self.problem.given("each")
        return conversion(given, given.unit)[0] if given.form is Form.COMPOUND else given

    @property
    def opening(self) -> tuple[Step, ...]:
        given = self.problem.given("each")
        return conversion(given, given.unit)[1]

    def lot(self, level: int) -> Unit:
        """What one group of this level is called."""
        unit = self.counts[level].unit
        return unit if unit.singular else _GROUP

    def lots(self) -> Lots:
        """The only number of groups, as lots of what is in each."""
        return Lots(self.counts[0].value, self.each, self.lot(0))

    def so_many(self, count: Fraction, level: int) -> Amount:
        return Amount(count, self.lot(level))


def _inside_first(view: _View) -> Method:
    """What one crate holds, then one shelf, then all shelves."""
    worth = view.each
    steps: list[Step] = []
    for level in reversed(range(len(view.counts))):
        count = view.counts[level].value
        total = view.each.like(count * worth.value)
        lead = f"One {view.lot(level - 1).singular}" if level else "All together"
        steps.append(
            step(
                f"{lead}: {{n}} of {{size}}, so {{total}}.",
                equation(times(Amount(count), worth), total),
                n=view.so_many(count, level),
                size=worth,
                total=total,
            )
        )
        worth = total
    return Method("From the inside out", tuple(steps), worth)


def _groups_first(view: _View) -> Method:
    """All the innermost groups counted first, then what is in each of them."""
    count, steps = view.counts[0].value, []
    innermost = len(view.counts) - 1
    for level in range(1, len(view.counts)):
        inner = view.counts[level].value
        steps.append(
            step(
                "{outer} with {inner} each make {all}.",
                equation(times(Amount(count), Amount(inner)), Amount(count * inner)),
                outer=view.so_many(count, level - 1),
                inner=view.so_many(inner, level),
                all=view.so_many(count * inner, level),
            )
        )
        count *= inner
    total = view.each.like(count * view.each.value)
    steps.append(
        step(
            "{n} of {size}: {total}.",
            equation(times(Amount(count), view.each), total),
            n=view.so_many(count, innermost),
            size=view.each,
            total=total,
        )
    )
    return Method("All groups first", tuple(steps), total)


def _friendly_first(view: _View) -> Iterator[Method]:
    """Two factors that make a round number, taken first (4 × 12 × 5 = 20 × 12)."""
    if not is_counted(view.each):
        return
    factors = [*(count.value for count in view.counts), view.each.value]
    pairs = [(i, j) for i in range(len(factors)) for j in range(i + 1, len(factors))]
    # Neighbours are what the other two ways begin with.
    apart = [(i, j) for i, j in pairs if j - i > 1 and factors[i] * factors[j] % 10 == 0]
    if not apart or any(factor % 10 == 0 for factor in factors):
        return
    first, second = apart[0]
    rest = [factor for at, factor in enumerate(factors) if at not in (first, second)]
    product = factors[first] * factors[second]
    total = view.each.like(product * prod(rest))
    steps = (
        step(
            "Factors may change places. Begin with two that make a round number.",
            equation(times(Amount(factors[first]), Amount(factors[second])), Amount(product)),
        ),
        step(
            "Then the rest: {total}.",
            equation(times(Amount(product), *(Amount(each) for each in rest)), without_noun(total)),
            total=total,
        ),
    )
    yield Method("Friendly factors first", steps, total)


def _answer(view: _View, amount: Amount) -> dict[str, AnswerValue]:
    return {TOTAL: in_unit(amount, view.problem.units[TOTAL])}


def _all_added(view: _View) -> Iterator[MistakenWorking]:
    numbers = [*view.counts, view.each]
    if not all(is_counted(each) for each in numbers):
        return
    total = view.each.like(sum((each.value for each in numbers), Fraction(0)))
    only = step(
        "It asks how many in all, so add the numbers: {total}.",
        equation(plus(*(Amount(each.value) for each in numbers)), without_noun(total)),
        total=total,
    )
    yield MistakenWorking("adding instead of multiplying", (only,), _answer(view, total))


def _group_left_out(view: _View) -> Iterator[MistakenWorking]:
    """Adds once for every plus sign instead of once for every group."""
    count = view.counts[0]
    if not (count.is_whole and 2 < count.value <= _MOST_TERMS):
        return
    terms = [view.each] * (int(count.value) - 1)
    total = view.each.like((count.value - 1) * view.each.value)
    only = step(
        "Add {each} again and again: {total}.",
        equation(plus(*terms), total),
        each=view.each,
        total=total,
    )
    yield MistakenWorking("one group left out", (only,), _answer(view, total))


def _part_left_out(view: _View) -> Iterator[MistakenWorking]:
    """14 × 6 as 10 × 6 + 4."""
    count, size = view.counts[0].value, view.each.value
    if count > 10 and len(place_parts(count)) > 1 and is_counted(view.each):
        split, other = count, size
    elif size > 10 and len(place_parts(size)) > 1 and is_counted(view.each):
        split, other = size, count
    else:
        return
    large, *small = place_parts(split)
    rest = sum(small, Fraction(0))
    product = large * other
    total = view.each.like(product + rest)
    steps = (
        step(
            "Multiply {large} by {other}.",
            equation(times(Amount(large), Amount(other)), Amount(product)),
            large=Amount(large),
            other=Amount(other),
        ),
        step(
            "Add the other {rest}: {total}.",
            equation(plus(Amount(product), Amount(rest)), without_noun(total)),
            rest=Amount(rest),
            total=total,
        ),
    )
    yield MistakenWorking("only one part multiplied", steps, _answer(view, total))


def _too_little_taken_off(view: _View) -> Iterator[MistakenWorking]:
    """Rounds one number up, then takes off one instead of one for each of the other."""
    count, each = view.counts[0].value, view.each
    above_count, above_size = just_above(count), just_above(each.value)
    if above_size is not None:
        factor, size, gap = count, each.like(above_size), each.like(above_size - each.value)
        rounded = size
    elif above_count is not None and is_counted(each) and count.denominator == 1:
        factor, size, gap = above_count, each, Amount(above_count - count)
        rounded = view.so_many(above_count, 0)
    else:
        return
    much = each.like(factor * size.value)
    total = each.like(much.value - gap.value)
    steps = (
        step(
            "Take {rounded} instead, which is easier: {much}.",
            equation(times(Amount(factor), size), much),
            rounded=rounded,
            much=much,
        ),
        step(
            "That was {gap} too much, so take {gap} off: {total}.",
            equation(minus(much, without_noun(gap)), total),
            gap=without_noun(gap),
            total=total,
        ),
    )
    yield MistakenWorking("adjusting by too little", steps, _answer(view, total))


def _stopped_early(view: _View) -> Iterator[MistakenWorking]:
    """Multiplies what is in each by the innermost groups and stops."""
    count = view.counts[-1]
    total = view.each.like(count.value * view.each.value)
    only = step(
        "{n} of {size}: {total}.",
        equation(times(Amount(count.value), view.each), total),
        n=view.so_many(count.value, len(view.counts) - 1),
        size=view.each,
        total=total,
    )
    yield MistakenWorking("step left out", (only,), _answer(view, total))
