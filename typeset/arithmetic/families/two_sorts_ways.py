"""Ways to the number of each of two sorts, right ones and wrong ones."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, number
from typeset.quantities.nouns import counted, plural, singular
from typeset.quantities.units import Unit, noun

COUNT, TOTAL = "count", "total"
# A longer table nobody writes.
_MOST_ROWS = 8


def unit_of_sort(name: str) -> Unit:
    """What one of a sort is called, whether its name is typed for one or for many."""
    if singular(name) == name and plural(name) != name:
        return noun(name, plural(name))
    return counted(name, False)


@dataclass(frozen=True, slots=True)
class Sorts:
    """The two sorts as lesser and greater, by what one of them has."""

    problem: Problem[Any]
    low: str
    high: str

    @classmethod
    def of(cls, problem: Problem[Any]) -> Sorts:
        """The sorts of a problem."""
        low, high = sorted(problem.fields.sorts, key=lambda name: problem.given(name).base)
        return cls(problem, low, high)

    @property
    def count(self) -> Amount:
        """How many there are in all."""
        return self.problem.given(COUNT)

    @property
    def total(self) -> Amount:
        """How much they have in all."""
        return self.problem.given(TOTAL)

    @property
    def gap(self) -> Amount:
        """By how much one of the greater sort has more."""
        return self.total.like(self.problem.given(self.high).value - self.low_each)

    @property
    def low_each(self) -> Fraction:
        """What one of the lesser sort has."""
        return self.problem.given(self.low).value

    @property
    def missing(self) -> Amount:
        """What is missing if all were of the lesser sort."""
        return self.total.like(self.total.value - self.low_each * self.count.value)

    def each(self, name: str) -> Amount:
        """What one of the sort has, in the total's unit."""
        return self.total.like(self.problem.given(name).value)

    def of_low(self, count: Fraction) -> Amount:
        """What so many of the lesser sort have."""
        return self.worth(self.low, count)

    def worth(self, name: str, count: Fraction) -> Amount:
        """What so many of this sort have."""
        return self.total.like(self.problem.given(name).value * count)

    def together(self, low: Fraction, high: Fraction) -> Amount:
        """What so many of both have."""
        return self.total.like(self.worth(self.low, low).value + self.worth(self.high, high).value)

    def so_many(self, name: str, count: Fraction) -> Amount:
        """'5 large boats'."""
        return Amount(count, unit_of_sort(name))

    def one(self, name: str) -> str:
        """'large boat'."""
        return unit_of_sort(name).singular

    def answers(self, low: Fraction, high: Fraction) -> dict[str, AnswerValue]:
        """The numbers that are asked for."""
        found = {self.low: low, self.high: high}
        return {name: self.problem.answer(name, found[name]) for name in self.problem.finds}

    def asks(self, name: str) -> bool:
        """True where the number of this sort is asked for."""
        return name in self.problem.finds


def ways_of(sorts: Sorts) -> Iterator[Working]:
    """Every way that these numbers allow; at least two."""
    yield _supposing(sorts, sorts.low, sorts.high)
    yield _supposing(sorts, sorts.high, sorts.low)
    yield from _table(sorts)
    yield from _from_half(sorts)


def _supposed(sorts: Sorts, name: str) -> tuple[Amount, list[Step]]:
    """Suppose all are of the sort `name`: what is missing or too much, with its steps."""
    supposed = sorts.worth(name, sorts.count.value)
    off = sorts.total.like(abs(sorts.total.value - supposed.value))
    first = step(
        f"Suppose all {{count}} were {unit_of_sort(name).plural}: {{supposed}}.",
        equation(times(Amount(sorts.count.value), sorts.each(name)), supposed),
        count=sorts.count,
        supposed=supposed,
    )
    is_less = name == sorts.low
    line = minus(sorts.total, supposed) if is_less else minus(supposed, sorts.total)
    how = "missing" if is_less else "too much"
    verb = "are" if off.unit.is_noun and off.value != 1 else "is"
    if not is_less and off.unit.is_noun:
        how = "too many"
    return off, [first, step(f"{{off}} {verb} {how}.", equation(line, off), off=off)]


def _supposing(sorts: Sorts, name: str, other: str) -> Working:
    off, steps = _supposed(sorts, name)
    more = "more" if name == sorts.low else "less"
    if more == "less" and sorts.gap.unit.is_noun:
        more = "fewer"
    found = off.value / sorts.gap.value
    rest = sorts.count.value - found
    high, low = sorts.each(sorts.high), sorts.each(sorts.low)
    steps += [
        step(
            f"Each {sorts.one(other)} instead of {_a(sorts.one(name))} brings {{gap}} {more}.",
            equation(minus(high, low), sorts.gap),
            gap=sorts.gap,
        ),
        step(
            "So {found}.",
            equation(over(off, sorts.gap), Amount(found)),
            found=sorts.so_many(other, found),
        ),
    ]
    if sorts.asks(name):
        steps.append(
            step(
                "The others: {rest}.",
                equation(minus(Amount(sorts.count.value), Amount(found)), Amount(rest)),
                rest=sorts.so_many(name, rest),
            )
        )
    numbers = (rest, found) if name == sorts.low else (found, rest)
    strategy = f"Supposing all are {unit_of_sort(name).plural}"
    return Working(strategy, tuple(steps), sorts.answers(*numbers))


def _rows(sorts: Sorts, low: Fraction, way: int) -> list[tuple[Fraction, Fraction]] | None:
    """Rows of the table from `low` of the lesser sort on, until the total is right."""
    rows: list[tuple[Fraction, Fraction]] = []
    while 0 <= low <= sorts.count.value and len(rows) < _MOST_ROWS:
        rows.append((low, sorts.count.value - low))
        if sorts.together(*rows[-1]).value == sorts.total.value:
            return rows
        low += way
    return None


def _table(sorts: Sorts) -> Iterator[Working]:
    """From all of one sort, exchanging one at a time."""
    for start, way in ((sorts.count.value, -1), (Fraction(0), 1)):
        rows = _rows(sorts, start, way)
        if rows is not None:
            first = step("Begin with all of one sort and exchange one at a time.")
            yield _told_table(sorts, "A systematic table", rows, first)
            return


def _from_half(sorts: Sorts) -> Iterator[Working]:
    half = Fraction(sorts.count.value.numerator // 2)
    reached = sorts.together(half, sorts.count.value - half)
    way = -1 if reached.value < sorts.total.value else 1
    rows = _rows(sorts, half, way)
    if rows is not None and len(rows) > 1:
        much = "too little" if way < 0 else "too much"
        nearer = unit_of_sort(sorts.high if way < 0 else sorts.low).plural
        turn = step(f"That is {much}, so take more {nearer}.")
        yield _told_table(
            sorts, "Beginning in the middle", rows, step("Begin in the middle."), turn
        )


def _told_table(
    sorts: Sorts, name: str, rows: list[tuple[Fraction, Fraction]], first: Step, *turn: Step
) -> Working:
    low, high = rows[-1]
    steps = [
        step(
            "{low} and {high}: {total}.",
            equation(_both(sorts, *row), sorts.together(*row)),
            low=sorts.so_many(sorts.low, row[0]),
            high=sorts.so_many(sorts.high, row[1]),
            total=sorts.together(*row),
        )
        for row in rows
    ]
    return Working(name, (first, steps[0], *turn, *steps[1:]), sorts.answers(low, high))


def _both(sorts: Sorts, low: Fraction, high: Fraction) -> Expression:
    """What both have together; a sort of which there is none is not written."""
    parts = [
        times(Amount(count), sorts.each(name))
        for name, count in ((sorts.low, low), (sorts.high, high))
        if count
    ]
    return plus(*parts)


def _a(name: str) -> str:
    return f"{'an' if name[:1].lower() in 'aeiou' else 'a'} {name}"


def mistakes_of(sorts: Sorts) -> Iterator[MistakenWorking]:
    """The wrong ways that the numbers invite."""
    half = sorts.count.value / 2
    if half.denominator == 1:
        text = "Half of the {count} are of each sort: {half}."
        only = step(text, equation(over(Amount(sorts.count.value), number(2)), Amount(half)),
                    count=sorts.count, half=Amount(half))  # fmt: skip
        yield MistakenWorking("count halved", (only,), sorts.answers(half, half))
    yield from _divided_by_one(sorts)
    yield _exchanged(sorts)
    yield from _count_ignored(sorts)


def _divided_by_one(sorts: Sorts) -> Iterator[MistakenWorking]:
    """What is missing is divided by what one of the greater sort has."""
    off, steps = _supposed(sorts, sorts.low)
    each = sorts.each(sorts.high)
    found = off.value / each.value
    if found.denominator != 1 or not 0 < found < sorts.count.value:
        return
    rest = sorts.count.value - found
    steps.append(
        step(
            f"Each {sorts.one(sorts.high)} has {{each}}: {{found}}.",
            equation(over(off, each), Amount(found)),
            each=each,
            found=sorts.so_many(sorts.high, found),
        )
    )
    if sorts.asks(sorts.low):
        worked = equation(minus(Amount(sorts.count.value), Amount(found)), Amount(rest))
        told = sorts.so_many(sorts.low, rest)
        steps.append(step("The others: {rest}.", worked, rest=told))
    name = "difference divided by one of them"
    yield MistakenWorking(name, tuple(steps), sorts.answers(rest, found))


def _exchanged(sorts: Sorts) -> MistakenWorking:
    """The exchanges are taken for the sort that all were supposed to be."""
    off, steps = _supposed(sorts, sorts.low)
    found = off.value / sorts.gap.value
    rest = sorts.count.value - found
    steps += [
        step(
            "One has {gap} more than the other.",
            equation(minus(sorts.each(sorts.high), sorts.each(sorts.low)), sorts.gap),
            gap=sorts.gap,
        ),
        step(
            "So {found}.",
            equation(over(off, sorts.gap), Amount(found)),
            found=sorts.so_many(sorts.low, found),
        ),
    ]
    if sorts.asks(sorts.high):
        worked = equation(minus(Amount(sorts.count.value), Amount(found)), Amount(rest))
        told = sorts.so_many(sorts.high, rest)
        steps.append(step("The others: {rest}.", worked, rest=told))
    return MistakenWorking("sorts exchanged", tuple(steps), sorts.answers(found, rest))


def _count_ignored(sorts: Sorts) -> Iterator[MistakenWorking]:
    """Numbers that make the total, with as many of the greater sort as can be."""
    each = sorts.each(sorts.high).value
    most = sorts.total.value // each
    for high in range(int(most), 0, -1):
        low = (sorts.total.value - high * each) / sorts.low_each
        if low.denominator == 1 and low > 0 and low + high != sorts.count.value:
            line = _both(sorts, low, Fraction(high))
            only = step(
                "{low} and {high} make {total}.",
                equation(line, sorts.total),
                high=sorts.so_many(sorts.high, Fraction(high)),
                low=sorts.so_many(sorts.low, low),
                total=sorts.total,
            )
            answers = sorts.answers(low, Fraction(high))
            yield MistakenWorking("only one condition used", (only,), answers)
            return
