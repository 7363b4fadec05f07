"""Constant difference: two amounts that grow by the same, as when one has a head start."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.pair_mistakes import (
    as_proportion,
    change_step,
    opposite_change,
)
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
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write, write_plain


class ConstantDifference(Family[PairFields]):
    """The one is always as much more than the other."""

    name = "constant difference"
    fields_model = PairFields

    def build(self, fields: PairFields) -> Problem[PairFields]:
        """The problem; all amounts are of one kind."""
        return build_pair(self.name, fields, one_kind=True)

    def relation(self, problem: Problem[PairFields]) -> Mapping[str, AnswerValue]:
        """other − known = difference = other as wanted − wanted, in base units."""
        base = next(iter(problem.fields.wanted))
        known, wanted = problem.given(base).base, problem.given(WANTED).base
        answers: dict[str, AnswerValue] = {}
        for name in problem.finds:
            before = Linear({"difference": 1}, problem.given(name).base - known)
            after = Linear({"other": 1, "difference": -1}, wanted)
            found = solve_linear([before, after])["other"]
            answers[name] = problem.answer(name, found / problem.units[name].per_base)
        return answers

    def strategies(self, problem: Problem[PairFields]) -> Iterator[Working]:
        """Keep the difference between the two; or let both change alike."""
        pair = pair_of(problem, one_kind=True)
        yield _difference_kept(pair)
        yield _both_change(pair)

    def mistakes(self, problem: Problem[PairFields]) -> Iterator[MistakenWorking]:
        """Scaling, keeping the sum, or the difference put on the wrong side."""
        pair = pair_of(problem, one_kind=True)
        yield as_proportion(pair)
        yield opposite_change(pair, "constant sum")
        yield _difference_turned_round(pair)
        yield _only_difference(pair)

    def probed(self, problem: Problem[PairFields]) -> tuple[str, ...]:
        """What is wanted tells most; then the amounts that go together."""
        return (WANTED, *problem.fields.wanted, problem.finds[0])

    def figure(
        self, problem: Problem[PairFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """Two bars as they will be, with the same difference as before."""
        return _bar_model(pair_of(problem, one_kind=True), answers)


def _difference_kept(pair: Pair) -> Working:
    steps: list[Step] = []
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        steps.append(_difference_step(pair, name, amount))
        gap = amount.like(abs(amount.value - pair.known.value))
        is_more = amount.value >= pair.known.value
        reached[name] = _moved(pair.wanted, gap, amount, up=is_more)
        sign = plus if is_more else minus
        steps.append(
            step(
                f"{title(name)}: the difference stays the same.",
                equation(sign(pair.wanted, gap), reached[name]),
            )
        )
    return working_of(pair, "Keeping the difference", steps, reached)


def _difference_step(pair: Pair, name: str, amount: Amount) -> Step:
    """How much more the one is than the other."""
    high, low = sorted((amount, pair.known), key=lambda each: -each.value)
    gap = amount.like(high.value - low.value)
    return step(
        f"Compare {the(pair.base)} with {the(name)}: the difference is {{gap}}.",
        equation(minus(high, low), gap),
        gap=gap,
    )


def _moved(start: Amount, by: Amount, like: Amount, up: bool) -> Amount:
    return like.like(start.value + by.value if up else start.value - by.value)


def _both_change(pair: Pair) -> Working:
    steps = [change_step(pair)]
    reached: dict[str, Amount] = {}
    rises, by = pair.change >= 0, abs(pair.change)
    for name, amount in pair.others.items():
        change = amount.like(by)
        reached[name] = _moved(amount, change, amount, up=rises)
        sign = plus if rises else minus
        way = "more" if rises else "less"
        steps.append(
            step(
                f"{title(name)}: {{by}} {way} as well.",
                equation(sign(amount, change), reached[name]),
                by=Amount(by) if change.unit.is_noun else change,
            )
        )
    return working_of(pair, "Both change alike", steps, reached)


def _difference_turned_round(pair: Pair) -> MistakenWorking:
    """The difference taken off the wrong one."""
    steps: list[Step] = []
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        gap = amount.like(abs(amount.value - pair.known.value))
        is_more = amount.value < pair.known.value
        reached[name] = _moved(pair.wanted, gap, amount, up=is_more)
        sign = plus if is_more else minus
        way = "Add it to" if is_more else "Take it from"
        steps.append(_difference_step(pair, name, amount))
        steps.append(
            step(
                f"{way} {{wanted}}.",
                equation(sign(pair.wanted, gap), reached[name]),
                wanted=pair.wanted,
            )
        )
    return mistaken(pair, "difference turned round", steps, reached)


def _only_difference(pair: Pair) -> MistakenWorking:
    """Stops at the difference."""
    steps = [_difference_step(pair, name, amount) for name, amount in pair.others.items()]
    reached = {
        name: amount.like(abs(amount.value - pair.known.value))
        for name, amount in pair.others.items()
    }
    return mistaken(pair, "step left out", steps, reached)


def _bar_model(pair: Pair, answers: Mapping[str, AnswerValue]) -> BarModel | None:
    """The bars of what is wanted and what is asked; the brace over the gap is their difference."""
    name, amount = next(iter(pair.others.items()))
    answer = answers[name]
    gap = amount.value - pair.known.value
    if len(pair.others) > 1 or not gap or not isinstance(answer, Amount):
        return None
    asked = pair.wanted.value + gap
    bars = (
        Bar(pair.base, (Part(pair.wanted.value, Mark((write(pair.wanted),))),)),
        Bar(name, (Part(asked, Mark((write(answer),), is_given=False)),)),
    )
    longer = 1 if gap > 0 else 0
    size = amount.like(abs(gap))
    difference = Brace(longer, Mark((write(size),)), gap_to=1 - longer)
    reads_as = (
        f"Two bars, {pair.base} {write_plain(pair.wanted)} and {name}, "
        f"which differ by {write_plain(size)}."
    )
    return BarModel(bars, (difference,), reads_as=reads_as)
