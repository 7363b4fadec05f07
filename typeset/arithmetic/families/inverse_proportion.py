"""Inverse proportion: twice as many share the work, and each needs half as long."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.checks import told_after
from typeset.arithmetic.equations import Expression, equation, over, times
from typeset.arithmetic.families.inverse_view import opposite_table
from typeset.arithmetic.families.pair_mistakes import as_proportion, opposite_change
from typeset.arithmetic.families.pair_rows import common_chunk
from typeset.arithmetic.families.pairs import (
    WANTED,
    Pair,
    PairFields,
    build_pair,
    mistaken,
    pair_of,
    working_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.figures import RatioTable
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.phrases import as_much, is_sensible, the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount


class InverseProportion(Family[PairFields]):
    """The product of the two amounts is always the same."""

    name = "inverse proportion"
    fields_model = PairFields

    def build(self, fields: PairFields) -> Problem[PairFields]:
        """The problem; the amounts may be of different kinds."""
        return build_pair(self.name, fields)

    def relation(self, problem: Problem[PairFields]) -> Mapping[str, AnswerValue]:
        """known × other = product = wanted × other as wanted, in base units."""
        base = next(iter(problem.fields.wanted))
        known, wanted = problem.given(base).base, problem.given(WANTED).base
        answers: dict[str, AnswerValue] = {}
        for name in problem.finds:
            before = Linear({"product": 1}, known * problem.given(name).base)
            after = Linear({"other": wanted, "product": -1})
            found = solve_linear([before, after])["other"]
            answers[name] = problem.answer(name, found / problem.units[name].per_base)
        return answers

    def strategies(self, problem: Problem[PairFields]) -> Iterator[Working]:
        """One alone first; or the one scaled up and the other down, straight or by a chunk."""
        pair = pair_of(problem)
        found = [_one_alone(pair), *_scaled(pair), *_through_chunk(pair)]
        yield from found
        if len(found) == 1:
            yield told_after(_checked(pair), found[0])

    def mistakes(self, problem: Problem[PairFields]) -> Iterator[MistakenWorking]:
        """Scaling both alike, adding to one what is taken from the other, or stopping early."""
        pair = pair_of(problem)
        yield as_proportion(pair)
        yield opposite_change(pair, "constant sum")
        yield _only_product(pair)

    def probed(self, problem: Problem[PairFields]) -> tuple[str, ...]:
        """What is wanted: the story asks what follows when it is another amount."""
        return (WANTED,)

    def figure(
        self, problem: Problem[PairFields], answers: Mapping[str, AnswerValue]
    ) -> RatioTable | None:
        """A table with opposite arrows over and under it."""
        return opposite_table(pair_of(problem), answers)


@dataclass(slots=True)
class _Seesaw:
    """Writes both sides: what is done to the one is undone to the other."""

    pair: Pair
    base: Amount
    others: dict[str, Amount]
    steps: list[Step] = field(default_factory=list)

    def scale_up(self, factor: Fraction) -> None:
        """So many times more of the one, so many times less of the other."""
        old, self.base = self.base, self.base.like(self.base.value * factor)
        self.steps.append(
            step(
                f"{title(self.pair.base)}: from {{old}} to {{new}} is {{times}}.",
                equation(times(old, Amount(factor)), self.base),
                old=old,
                new=self.base,
                times=as_much(factor, old.unit),
            )
        )
        self._others(over, factor, "so halve it" if factor == 2 else "so divide by {by}")

    def scale_down(self, divisor: Fraction) -> None:
        """So many times less of the one, so many times more of the other."""
        old, self.base = self.base, self.base.like(self.base.value / divisor)
        told = "halve {old} to get {new}." if divisor == 2 else "divide {old} by {by} to get {new}."
        self.steps.append(
            step(
                f"{title(self.pair.base)}: {told}",
                equation(over(old, Amount(divisor)), self.base),
                old=old,
                new=self.base,
                by=Amount(divisor),
            )
        )
        self._others(times, divisor, "so double it" if divisor == 2 else "so multiply by {by}")

    def working(self, strategy: str) -> Iterator[Working]:
        """The working so far, where it makes sense."""
        cut = self.pair.problem.fields.may_be_cut
        if all(is_sensible(each, cut) for each in (self.base, *self.others.values())):
            yield working_of(self.pair, strategy, self.steps, self.others)

    def _others(self, sign: Callable[..., Expression], factor: Fraction, advice: str) -> None:
        for name, amount in self.others.items():
            value = amount.value * factor if sign is times else amount.value / factor
            self.others[name] = amount.like(value)
            result = equation(sign(amount, Amount(factor)), self.others[name])
            told = step(f"{title(name)}: the other way round, {advice}.", result, by=Amount(factor))
            self.steps.append(told)


def _start(pair: Pair) -> _Seesaw:
    return _Seesaw(pair, pair.known, dict(pair.others))


def _one_alone(pair: Pair) -> Working:
    """What one alone would need, shared among those that are wanted."""
    steps: list[Step] = []
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        product = _product(pair, amount)
        reached[name] = amount.like(product.value / pair.wanted.value)
        steps.append(_product_step(pair, name, amount))
        steps.append(
            step(
                "Share that among {wanted}."
                if pair.wanted.unit.is_noun
                else "Divide that by {wanted}.",
                equation(over(product, Amount(pair.wanted.value)), reached[name]),
                wanted=pair.wanted,
            )
        )
    return working_of(pair, "One alone first", steps, reached)


def _product(pair: Pair, amount: Amount) -> Amount:
    return amount.like(amount.value * pair.known.value)


def _product_step(pair: Pair, name: str, amount: Amount) -> Step:
    product = _product(pair, amount)
    return step(
        f"{{one}} alone: {the(name)} would be {{product}}.",
        equation(times(Amount(pair.known.value), amount), product),
        one=pair.known.like(1),
        product=product,
    )


def _scaled(pair: Pair) -> Iterator[Working]:
    seesaw = _start(pair)
    if pair.factor.denominator == 1:
        seesaw.scale_up(pair.factor)
    elif pair.factor.numerator == 1:
        seesaw.scale_down(1 / pair.factor)
    else:
        return
    yield from seesaw.working("The one up, the other down")


def _through_chunk(pair: Pair) -> Iterator[Working]:
    """Down to an amount that fits into both, then up."""
    chunk = common_chunk(pair.known.value, pair.wanted.value)
    if chunk in (pair.known.value, pair.wanted.value, 1):
        return
    seesaw = _start(pair)
    seesaw.scale_down(pair.known.value / chunk)
    seesaw.scale_up(pair.wanted.value / chunk)
    yield from seesaw.working("Through a common chunk")


def _checked(pair: Pair) -> Working:
    """Both products are the same."""
    steps: list[Step] = []
    reached = {
        n: a.like(_product(pair, a).value / pair.wanted.value) for n, a in pair.others.items()
    }
    for name, amount in pair.others.items():
        product = _product(pair, amount)
        for count, each in ((pair.known, amount), (pair.wanted, reached[name])):
            text = "{count} with {each}: {product}."
            result = equation(times(Amount(count.value), each), product)
            steps.append(step(text, result, count=count, each=each, product=product))
    steps.append(step("Both products are the same, as they should be."))
    return working_of(pair, "Checking the product", steps, reached)


def _only_product(pair: Pair) -> MistakenWorking:
    """Stops at what one alone would need."""
    steps = [_product_step(pair, name, amount) for name, amount in pair.others.items()]
    reached = {name: _product(pair, amount) for name, amount in pair.others.items()}
    return mistaken(pair, "step left out", steps, reached)
