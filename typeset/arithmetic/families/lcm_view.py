"""The amounts of a lowest common multiple, and how what is asked is spoken of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, over, plus
from typeset.arithmetic.families.shared_numbers import in_one_unit, lead
from typeset.arithmetic.methods import in_unit, is_counted, without_noun
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import CLOCK, NUMBER, Dimension, Unit, noun
from typeset.quantities.writing import whole

TOGETHER, NEXT, EACH, START, LEFT = "together", "next", "each", "start", "left over"
_TURN = noun("turn", "turns")
_PACK = noun("pack", "packs")
_MINUTES_OF_DAY = 24 * 60
# In seconds, the base unit of time.
_HOUR = 3600
# Further than this nobody lists multiples in these years.
_LARGEST = 100_000


@dataclass(frozen=True, slots=True)
class Lcm:
    """The problem with its amounts in one unit, where they have one."""

    problem: Problem[Any]
    amounts: Mapping[str, Amount]
    conversions: tuple[Step, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The names in the author's order."""
        return tuple(self.amounts)

    @property
    def counts(self) -> tuple[int, ...]:
        """The whole numbers of the amounts."""
        return tuple(int(amount.value) for amount in self.amounts.values())

    @property
    def is_packs(self) -> bool:
        """True for packs of equal number, False for what comes round again and again."""
        return self.problem.fields.packs is not None

    @property
    def group(self) -> Unit:
        """What a pack or a turn is called."""
        return turn_of(self.problem.fields)

    @property
    def start(self) -> Amount | None:
        """The time of day at which all begin together, where the story tells it."""
        return self.problem.givens.get(START)

    @property
    def left(self) -> Amount | None:
        """What is left over in packs of every kind, where the story tells it."""
        return self.problem.givens.get(LEFT)

    def lowest(self) -> int:
        """The first multiple of the largest that is one of the others too, found by counting.

        Raises AmountError where there is none within reach.
        """
        largest = max(self.counts)
        for multiple in range(largest, _LARGEST + 1, largest):
            if not any(multiple % count for count in self.counts):
                return multiple
        raise AmountError(
            f"the lowest common multiple would be larger than {whole(_LARGEST)}",
            "choose smaller numbers, or such as share a factor",
        )

    def size(self, value: Fraction | int) -> Amount:
        """A multiple as the story has it: '36 min', '24 floats', or '24' of different things."""
        first = next(iter(self.amounts.values()))
        units = {amount.unit for amount in self.amounts.values()}
        return Amount(Fraction(value), first.unit if len(units) == 1 else NUMBER)

    def clock(self, multiple: Fraction | int) -> Amount:
        """The time of day when so much time has gone. Raises AmountError past midnight."""
        assert self.start is not None
        minutes = self.start.value + self.size(multiple).base / CLOCK.per_base
        if minutes >= _MINUTES_OF_DAY:
            raise AmountError(
                "the next time together would be after midnight", "choose an earlier 'start'"
            )
        return self.start.like(minutes)

    def answers(self, multiple: int) -> dict[str, AnswerValue]:
        """The answers that this multiple gives, in the units asked for."""
        return {asked: self.answer(asked, multiple) for asked in self.problem.finds}

    def answer(self, asked: str, multiple: int) -> Amount:
        """One answer."""
        unit = self.problem.units[asked]
        if asked == NEXT:
            return self.clock(multiple)
        if asked in (TOGETHER, EACH):
            return in_unit(self.with_left(multiple), unit)
        return Amount(multiple / self.amounts[asked].value, unit)

    def with_left(self, multiple: Fraction | int) -> Amount:
        """A multiple and what is left over beside it."""
        return self.size(multiple + (self.left.value if self.left is not None else 0))

    def leaving(self, multiple: int) -> Iterator[Step]:
        """'With 1 shell left over: 25 shells.'"""
        if self.left is not None:
            total, whole_ = self.size(multiple), self.with_left(multiple)
            sides = plus(without_noun(total), without_noun(self.left)), without_noun(whole_)
            text = "With {left} left over: {all}."
            yield step(text, equation(*sides), left=self.left, all=whole_)

    def closing(self, multiple: int) -> Iterator[Step]:
        """What the multiple means in the story, and everything that is asked for."""
        total = self.size(multiple)
        yield step(self._meaning(), total=total)
        yield from self.leaving(multiple)
        if NEXT in self.problem.finds:
            yield from self.on_the_clock(multiple)
        for name in self.names:
            if name in self.problem.finds:
                yield self.turns(name, multiple)
        if TOGETHER in self.problem.finds:
            last = self.answer(TOGETHER, multiple)
            if not is_counted(last) and last.unit != total.unit:
                text = "Write {old} as {new}."
                yield step(text, equation(total, last), old=total, new=last)

    def on_the_clock(self, multiple: int) -> Iterator[Step]:
        """'08:00 and 36 min more: 08:36.'"""
        assert self.start is not None
        total, time = self.size(multiple), self.clock(multiple)
        if total.base > _HOUR and total.unit.per_base < _HOUR:
            told = total.written_as(Form.COMPOUND)
            yield step("{old} is {new}.", equation(total, told), old=total, new=told)
            total = told
        result = equation(plus(self.start, total), time)
        text = "{start} and {total} more: {time}."
        yield step(text, result, start=self.start, total=total, time=time)

    def turns(self, name: str, multiple: int) -> Step:
        """'36 min is 3 crossings of 12 min', '24 hooks in packs of 8, so 3 packs.'"""
        amount = self.amounts[name]
        total = amount.like(multiple)
        count = Amount(multiple / amount.value, self.group)
        result = equation(over(total, amount), without_noun(count))
        text = "{total} is {count} of {amount}."
        if self.is_packs:
            text = f"{{total}} in {self.group.plural} of {{amount}}, so {{count}}."
        return step(
            f"{lead(name, self.amounts)}{text}",
            result,
            total=total,
            count=count,
            amount=without_noun(amount),
        )

    def _meaning(self) -> str:
        if self.left is not None:
            return "So the fewest with nothing left over would be {total}."
        if self.is_packs:
            return "So the fewest there can be is {total} of each."
        if self.size(1).unit.dimension is Dimension.TIME:
            return "So they come together again after {total}."
        return "So they first come together at {total}."


def lcm_of(problem: Problem[Any]) -> Lcm:
    """The view of a problem."""
    amounts = {name: problem.given(name) for name in problem.fields.amounts()}
    return Lcm(problem, *in_one_unit(amounts))


def turn_of(fields: Any) -> Unit:
    """What a pack or a turn is called: as the author names it, or plainly."""
    named = fields.groups_called
    if isinstance(named, Unit) and named.singular:
        return named
    return _PACK if fields.packs is not None else _TURN
