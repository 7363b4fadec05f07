"""Ways to a mean, to a value that is missing, and to the total."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.methods import without_noun
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import noun
from typeset.quantities.writing import decimal

MEAN, TOTAL, COUNT, MISSING = "mean", "total", "count", "missing value"
_VALUE = noun("value", "values")


@dataclass(frozen=True, slots=True)
class Values:
    """The problem with its values as amounts of one unit."""

    problem: Problem[Any]

    @classmethod
    def of(cls, problem: Problem[Any]) -> Values:
        """The values of a problem."""
        return cls(problem)

    @property
    def names(self) -> tuple[str, ...]:
        """All values by name, the missing one among them."""
        return tuple(self.problem.fields.values or ())

    @property
    def missing(self) -> str:
        """The name of the value that is missing."""
        return next(name for name in self.names if name not in self.problem.givens)

    @property
    def known(self) -> tuple[Amount, ...]:
        """The values that are given, in one unit and without their noun."""
        return tuple(
            self.amount(self.problem.givens[name].value)
            for name in self.names
            if name in self.problem.givens
        )

    @property
    def count(self) -> Fraction:
        """How many values there are."""
        if self.names:
            return Fraction(len(self.names))
        return self.problem.given(COUNT).value

    @property
    def mean(self) -> Amount:
        """The mean, where it is given."""
        return self.amount(self.problem.given(MEAN).value)

    def amount(self, value: Fraction) -> Amount:
        """An amount of this kind; a decimal where one ends, since a mean is seldom whole."""
        unit = self.problem.units[self.problem.finds[0]]
        ends = decimal(value) is not None and (value * 100).denominator == 1
        return Amount(value, unit, Form.DECIMAL if ends and value.denominator > 1 else Form.AUTO)

    def total(self) -> Amount:
        """What the values that are given make together."""
        return self.amount(sum((each.value for each in self.known), Fraction(0)))

    def answer(self, value: Fraction) -> dict[str, AnswerValue]:
        """The answer of this value."""
        return {self.problem.finds[0]: self.amount(value)}


def ways_of(values: Values) -> Iterator[Working]:
    """Every way that these numbers allow; at least two."""
    asked = values.problem.finds[0]
    if asked == TOTAL:
        yield from _ways_to_the_total(values)
    elif asked == MEAN:
        yield _shared(values)
        guessed = list(_levelled_from_guess(values))
        yield from guessed
        if all(each.value for each in values.known) or not guessed:
            # From nought, levelling out is the same as sharing.
            yield _levelled_from_least(values)
    else:
        yield _total_less_total(values)
        yield _balanced(values)


def _ways_to_the_total(values: Values) -> Iterator[Working]:
    count = values.problem.given(COUNT)
    lot = count.unit if count.unit.singular else _VALUE
    opening = step("With the same total, all could be equal: each {mean}.", mean=values.mean)
    for method in ways_to_multiply(Lots(count.value, values.mean, lot)):
        told = method.after(opening)
        yield told.working(values.answer(told.result.value))


def added(values: Values, text: str = "Add the values: {total}.") -> tuple[Amount, Step]:
    """The sum of the values that are given."""
    total = values.total()
    if len(values.known) == 1:
        return total, step("So far: {total}.", total=total)
    return total, step(text, equation(plus(*values.known), total), total=total)


def _shared(values: Values) -> Working:
    total, first = added(values)
    mean = values.amount(total.value / values.count)
    second = step(
        "Share the total equally among {count}: {mean} each.",
        equation(over(total, Amount(values.count)), mean),
        count=Amount(values.count, _VALUE),
        mean=mean,
    )
    return Working("The total shared equally", (first, second), values.answer(mean.value))


def _gaps(amounts: Sequence[Amount], level: Amount) -> list[Amount]:
    """How far each lies above the level; those that lie on it or below are left out."""
    return [each.like(each.value - level.value) for each in amounts if each.value > level.value]


def _sum_step(values: Values, gaps: list[Amount], text: str) -> tuple[Amount, Step]:
    """What some differences make together."""
    total = values.amount(sum((gap.value for gap in gaps), Fraction(0)))
    worked = equation(plus(*gaps), total) if gaps[1:] else None
    return total, step(text, worked, total=total)


def _levelled_from_least(values: Values) -> Working:
    """All are taken down to the least, and what was above it is shared."""
    least = min(values.known, key=lambda each: each.value)
    above, summed = _sum_step(
        values, _gaps(values.known, least), "All that lies above it: {total}."
    )
    part = values.amount(above.value / values.count)
    mean = values.amount(least.value + part.value)
    steps = (
        step("Take all down to the least, {least}.", least=least),
        summed,
        step("Share that equally among {count}: {part} each.",
             equation(over(above, Amount(values.count)), part),
             count=Amount(values.count, _VALUE), part=part),
        step("Put it back on the least: {mean}.", equation(plus(least, part), mean), mean=mean),
    )  # fmt: skip
    return Working("Levelling out from the least", steps, values.answer(mean.value))


def _levelled_from_guess(values: Values) -> Iterator[Working]:
    """From a guess near the middle: what lies above fills up what lies below."""
    ordered = sorted(values.known, key=lambda each: each.value)
    guess = ordered[len(ordered) // 2]
    above, below = _gaps(values.known, guess), _below(values.known, guess)
    if not above or not below:
        return
    high, high_step = _sum_step(values, above, "Those above it have {total} more.")
    low, low_step = _sum_step(values, below, f"Those below it have {{total}} {_less(guess)}.")
    steps = [step("Guess a number in the middle: {guess}.", guess=guess), high_step, low_step]
    if high.value == low.value:
        steps.append(step("What is above fills up what is below, so the mean is {mean}.",
                          mean=guess))  # fmt: skip
        yield Working("Differences from a guess", tuple(steps), values.answer(guess.value))
        return
    more, less = (high, low) if high.value > low.value else (low, high)
    rest = values.amount(more.value - less.value)
    part = values.amount(rest.value / values.count)
    is_over = high.value > low.value
    mean = values.amount(guess.value + part.value if is_over else guess.value - part.value)
    what = "left over" if is_over else "missing"
    turn = plus(guess, part) if is_over else minus(guess, part)
    steps += [
        step(f"After filling up, {{rest}} {_is(rest)} {what}.",
             equation(minus(more, less), rest), rest=rest),
        step("Share that equally among {count}: {part} each.",
             equation(over(rest, Amount(values.count)), part),
             count=Amount(values.count, _VALUE), part=part),
        step("So the mean is that much " + ("more" if is_over else "less") + " than the guess: "
             "{mean}.", equation(turn, mean), mean=mean),
    ]  # fmt: skip
    yield Working("Differences from a guess", tuple(steps), values.answer(mean.value))


def _below(amounts: Sequence[Amount], level: Amount) -> list[Amount]:
    return [each.like(level.value - each.value) for each in amounts if each.value < level.value]


def _less(amount: Amount) -> str:
    return "fewer" if amount.unit.is_noun else "less"


def _is(amount: Amount) -> str:
    return "are" if amount.unit.is_noun and amount.value > 1 else "is"


def _total_less_total(values: Values) -> Working:
    mean, count = values.mean, Amount(values.count)
    needed = values.amount(mean.value * count.value)
    so_far, adding = added(values, "So far: {total}.")
    found = values.amount(needed.value - so_far.value)
    steps = (
        step("For this mean the total has to be {needed}.",
             equation(times(count, mean), needed), needed=needed),
        adding,
        step("What is missing: {found}.", equation(minus(needed, so_far), found), found=found),
    )  # fmt: skip
    return Working("Total needed less total so far", steps, values.answer(found.value))


def _balanced(values: Values) -> Working:
    """What the others lie above the mean, the missing one lies below it, and the reverse."""
    mean = values.mean
    above, below = _gaps(values.known, mean), _below(values.known, mean)
    steps: list[Step] = []
    high, low = mean.like(0), mean.like(0)
    if above:
        high, told = _sum_step(values, above, "Those above the mean have {total} more.")
        steps.append(told)
    if below:
        low, told = _sum_step(values, below, f"Those below the mean have {{total}} {_less(mean)}.")
        steps.append(told)
    if high.value == low.value:
        steps.append(step("So the missing one lies on the mean: {mean}.", mean=mean))
        return Working("Balancing around the mean", tuple(steps), values.answer(mean.value))
    is_short = low.value > high.value
    more, less = (low, high) if is_short else (high, low)
    gap = values.amount(more.value - less.value)
    if less.value:
        steps.append(
            step("Together they are {gap} " + ("short." if is_short else "over."),
                 equation(minus(more, less), gap), gap=gap)
        )  # fmt: skip
    found = values.amount(mean.value + gap.value if is_short else mean.value - gap.value)
    line = plus(mean, gap) if is_short else minus(mean, gap)
    how = "more" if is_short else "less"
    steps.append(
        step(f"So the missing one has {{gap}} {how} than the mean: {{found}}.",
             equation(line, found), gap=without_noun(gap), found=found)
    )  # fmt: skip
    return Working("Balancing around the mean", tuple(steps), values.answer(found.value))
