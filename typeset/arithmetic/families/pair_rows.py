"""Rows of amounts that go together, made from one another line by line."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd, lcm

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.pairs import Pair, mistaken, working_of
from typeset.arithmetic.phrases import as_much, is_sensible, title
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount


@dataclass(frozen=True, slots=True)
class Row:
    """An amount of what changes, and the amounts that go with it."""

    base: Amount
    others: Mapping[str, Amount]


@dataclass(slots=True)
class RowWriter:
    """Writes each step for every amount of a row; remembers whether all rows made sense."""

    pair: Pair
    steps: list[Step] = field(default_factory=list)
    all_sensible: bool = True

    def start(self) -> Row:
        """The row that the story gives."""
        return Row(self.pair.known, self.pair.others)

    def multiply(self, row: Row, factor: Fraction | int) -> Row:
        """The row taken so many times."""
        name, base = title(self.pair.base), row.base.like(row.base.value * factor)
        if factor == 2:
            self._say(f"{name}: double {{old}} to get {{new}}.", row.base, factor, base)
        else:
            text = f"{name}: from {{old}} to {{new}} is {{factor}}."
            self._say(text, row.base, factor, base)
        for other, amount in row.others.items():
            grown = amount.like(amount.value * factor)
            text = "double it too." if factor == 2 else "{factor} too."
            self._say(f"{title(other)}: {text}", amount, factor, grown)
        return self._made(base, {n: a.value * factor for n, a in row.others.items()})

    def _say(self, text: str, old: Amount, factor: Fraction | int, new: Amount) -> None:
        result = equation(times(old, Amount(Fraction(factor))), new)
        self.steps.append(step(text, result, old=old, new=new, factor=as_much(factor, old.unit)))

    def divide(self, row: Row, divisor: Fraction | int) -> Row:
        """One of so many equal parts of the row."""
        by = Amount(Fraction(divisor))
        base = row.base.like(row.base.value / divisor)
        whole_text = (
            "halve {old} to get {new}." if divisor == 2 else "divide {old} by {by} to get {new}."
        )
        part_text = "halve it too." if divisor == 2 else "divide by {by} too."
        named = {self.pair.base: (row.base, whole_text)}
        named |= {other: (amount, part_text) for other, amount in row.others.items()}
        for name, (amount, text) in named.items():
            new = amount.like(amount.value / divisor)
            result = equation(over(amount, by), new)
            said = step(f"{title(name)}: {text}", result, old=amount, by=by, new=new)
            self.steps.append(said)
        return self._made(base, {n: a.value / divisor for n, a in row.others.items()})

    def add(self, row: Row, more: Row) -> Row:
        """Two rows put together."""
        base = row.base.like(row.base.value + more.base.value)
        self.steps.append(
            step(
                f"{title(self.pair.base)}: {{old}} and {{more}} make {{new}}.",
                equation(plus(row.base, more.base), base),
                old=row.base,
                more=more.base,
                new=base,
            )
        )
        made = {n: a.value + more.others[n].value for n, a in row.others.items()}
        for other, amount in row.others.items():
            result = equation(plus(amount, more.others[other]), amount.like(made[other]))
            self.steps.append(step(f"{title(other)}: put the same two together.", result))
        return self._made(base, made)

    def take_off(self, row: Row, less: Row) -> Row:
        """One row without another."""
        base = row.base.like(row.base.value - less.base.value)
        self.steps.append(
            step(
                f"{title(self.pair.base)}: take {{less}} off {{old}} to get {{new}}.",
                equation(minus(row.base, less.base), base),
                old=row.base,
                less=less.base,
                new=base,
            )
        )
        made = {n: a.value - less.others[n].value for n, a in row.others.items()}
        for other, amount in row.others.items():
            result = equation(minus(amount, less.others[other]), amount.like(made[other]))
            text = f"{title(other)}: take off what goes with {{less}}."
            self.steps.append(step(text, result, less=less.base))
        return self._made(base, made)

    def working(self, strategy: str, row: Row) -> Working:
        """The right working that ends in this row."""
        return working_of(self.pair, strategy, self.steps, row.others)

    def mistake(self, misconception: str, row: Row) -> MistakenWorking:
        """The wrong working that ends in this row."""
        return mistaken(self.pair, misconception, self.steps, row.others)

    def _made(self, base: Amount, others: Mapping[str, Fraction]) -> Row:
        row = Row(base, {name: self.pair.others[name].like(v) for name, v in others.items()})
        cut = self.pair.problem.fields.may_be_cut
        amounts = (row.base, *row.others.values())
        self.all_sensible = self.all_sensible and all(is_sensible(each, cut) for each in amounts)
        return row


def common_chunk(one: Fraction, other: Fraction) -> Fraction:
    """The largest amount that goes a whole number of times into both."""
    under = lcm(one.denominator, other.denominator)
    return Fraction(gcd(int(one * under), int(other * under)), under)


def in_step(writer: RowWriter) -> Row:
    """The row for what is wanted, all amounts scaled alike, by the shortest way."""
    row, factor = writer.start(), writer.pair.factor
    if factor.denominator == 1:
        return writer.multiply(row, factor)
    if factor.numerator == 1:
        return writer.divide(row, 1 / factor)
    chunk = common_chunk(writer.pair.known.value, writer.pair.wanted.value)
    row = writer.divide(row, writer.pair.known.value / chunk)
    return writer.multiply(row, writer.pair.wanted.value / chunk)
