"""Constant sum: two amounts of one whole; what the one gains the other loses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.pair_mistakes import as_proportion, change_step, same_change
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
from typeset.arithmetic.names import as_list
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.writing import write, write_plain


class ConstantSum(Family[PairFields]):
    """The two together are always as much."""

    name = "constant sum"
    fields_model = PairFields

    def build(self, fields: PairFields) -> Problem[PairFields]:
        """The problem; all amounts are of one kind, and only one other is asked for."""
        if len(as_list(fields.find)) > 1:
            raise AmountError("only one other amount can keep the sum", "ask for one")
        return build_pair(self.name, fields, one_kind=True)

    def relation(self, problem: Problem[PairFields]) -> Mapping[str, AnswerValue]:
        """other + known = whole = other as wanted + wanted, in base units."""
        base, name = next(iter(problem.fields.wanted)), problem.finds[0]
        whole = problem.given(base).base + problem.given(name).base
        before = Linear({"whole": 1}, whole)
        after = Linear({"other": 1, "whole": -1}, -problem.given(WANTED).base)
        found = solve_linear([before, after])["other"]
        return {name: problem.answer(name, found / problem.units[name].per_base)}

    def strategies(self, problem: Problem[PairFields]) -> Iterator[Working]:
        """The whole without what is wanted; or what moves from the one to the other."""
        pair = pair_of(problem, one_kind=True)
        yield _whole_kept(pair)
        yield _moved_over(pair)

    def mistakes(self, problem: Problem[PairFields]) -> Iterator[MistakenWorking]:
        """Scaling, letting both grow, or stopping at the whole."""
        pair = pair_of(problem, one_kind=True)
        yield as_proportion(pair)
        yield same_change(pair, "same change to both")
        yield _only_whole(pair)

    def probed(self, problem: Problem[PairFields]) -> tuple[str, ...]:
        """What is wanted: the story asks what follows when it is another amount."""
        return (WANTED,)

    def figure(
        self, problem: Problem[PairFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """The whole as one bar twice: as it was, and as it will be."""
        return _bar_model(pair_of(problem, one_kind=True), answers)


def _whole(pair: Pair) -> tuple[str, Amount, Amount]:
    """The other's name and amount, and both together."""
    name, amount = next(iter(pair.others.items()))
    return name, amount, amount.like(amount.value + pair.known.value)


def _whole_step(pair: Pair) -> Step:
    name, amount, whole = _whole(pair)
    return step(
        f"{title(pair.base)} and {name} together: {{whole}}.",
        equation(plus(pair.known, amount), whole),
        whole=whole,
    )


def _whole_kept(pair: Pair) -> Working:
    name, amount, whole = _whole(pair)
    reached = {name: amount.like(whole.value - pair.wanted.value)}
    steps = [
        _whole_step(pair),
        step(
            f"{title(name)}: the total stays the same, so take {{wanted}} from it.",
            equation(minus(whole, pair.wanted), reached[name]),
            wanted=pair.wanted,
        ),
    ]
    return working_of(pair, "Keeping the total", steps, reached)


def _moved_over(pair: Pair) -> Working:
    name, amount, _together = _whole(pair)
    gains, by = pair.change >= 0, amount.like(abs(pair.change))
    reached = {name: amount.like(amount.value - pair.change)}
    sign = minus if gains else plus
    way = "less" if gains else "more"
    told = step(
        f"{title(name)}: {{by}} {way}, because the total stays the same.",
        equation(sign(amount, by), reached[name]),
        by=Amount(by.value) if by.unit.is_noun else by,
    )
    return working_of(pair, "What one gains, the other loses", [change_step(pair), told], reached)


def _only_whole(pair: Pair) -> MistakenWorking:
    """Stops at the whole."""
    name, _amount, whole = _whole(pair)
    return mistaken(pair, "step left out", [_whole_step(pair)], {name: whole})


def _bar_model(pair: Pair, answers: Mapping[str, AnswerValue]) -> BarModel | None:
    name, amount, whole = _whole(pair)
    answer = answers[name]
    left = whole.value - pair.wanted.value
    if left <= 0 or not isinstance(answer, Amount):
        return None
    before = (
        Part(pair.known.value, Mark((write(pair.known),))),
        Part(amount.value, Mark((write(amount),)), shaded=True),
    )
    after = (
        Part(pair.wanted.value, Mark((write(pair.wanted),))),
        Part(left, Mark((write(answer),), is_given=False), shaded=True),
    )
    together = Brace(0, Mark((write(whole),), is_given=False), 0, 1)
    reads_as = (
        f"Two bars of the same length, {write_plain(whole)}: each is {pair.base} and {name}, "
        "before and after."
    )
    return BarModel((Bar("before", before), Bar("after", after)), (together,), reads_as=reads_as)
