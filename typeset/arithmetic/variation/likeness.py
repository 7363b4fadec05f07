"""What a problem with other numbers must have in common with the one that it varies."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations
from math import gcd

from typeset.arithmetic.answers import AnswerValue, same_answer
from typeset.arithmetic.kinds import Decision
from typeset.arithmetic.variation.conditions import (
    Condition,
    Cost,
    Test,
    answers_are_whole,
    number_set,
)
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.wishes import Wish
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension
from typeset.reading.tree import Keyed


def likeness(source: Trial, wish: Wish) -> list[Condition]:
    """The same decision, larger and smaller numbers as before, answers as whole as before."""
    conditions = [
        Condition("the larger number stays the larger", Cost.NUMBERS, _keeps_order(source)),
        Condition("as much a remainder as before", Cost.ANSWERS, _as_much_rest(source)),
        Condition("answers no finer than before", Cost.ANSWERS, _no_finer(source, wish)),
        Condition("the same decision", Cost.KIND, _same_decision(source)),
    ]
    if source.content.structure == "ratio":
        conditions.append(Condition("as simple a ratio", Cost.NUMBERS, _as_simple(source)))
    if answers_are_whole(source):
        conditions.append(Condition("the answer stays whole", Cost.ANSWERS, answers_are_whole))
    return conditions


def other_answers(source: Trial) -> list[Condition]:
    """No answer is the old one, so that nobody can copy it; but where nothing changes it may be."""
    if source.solution.kind.decision is Decision.NEITHER:
        return []
    return [
        Condition(
            "another answer",
            Cost.ANSWERS,
            lambda trial: all(
                not _same(trial.answers.get(name), old) for name, old in source.answers.items()
            ),
        )
    ]


def not_the_numbers_of(source: Trial) -> Condition:
    """Another set of numbers than the source's."""
    old = number_set(source)
    return Condition("other numbers", Cost.NUMBERS, lambda trial: number_set(trial) != old)


def _same(one: AnswerValue | None, other: AnswerValue) -> bool:
    return one is not None and same_answer(one, other)


def _keeps_order(source: Trial) -> Test:
    """Whoever has more in the story still has more, and equal numbers stay equal."""
    order = _order(source)
    return lambda trial: _order(trial) == order


def _order(trial: Trial) -> dict[tuple[str, str], int]:
    givens = trial.problem.givens
    return {
        (one, other): _sign(first.base, second.base)
        for (one, first), (other, second) in combinations(givens.items(), 2)
        if _alike(first, second)
    }


def _alike(one: Amount, other: Amount) -> bool:
    return one.unit.dimension is other.unit.dimension and (
        not one.unit.is_noun or one.unit == other.unit
    )


def _sign(one: Fraction, other: Fraction) -> int:
    """1 where the first is more, −1 where the second is, 0 where they are equal."""
    return (one > other) - (one < other)


def _no_finer(source: Trial, wish: Wish) -> Test:
    """Halves do not become eighths; only the pence of harder prices are left free."""
    before = {
        name: answer.value.denominator
        for name, answer in source.answers.items()
        if isinstance(answer, Amount)
        and not (wish is Wish.HARDER and answer.unit.dimension is Dimension.MONEY)
    }

    def test(trial: Trial) -> bool:
        answers = ((before.get(name), each) for name, each in trial.answers.items())
        return all(
            each.value.denominator <= most
            for most, each in answers
            if most is not None and isinstance(each, Amount)
        )

    return test


def _as_simple(source: Trial) -> Test:
    """A ratio in simplest form stays in simplest form."""
    before = _common_factor(source)
    return lambda trial: _common_factor(trial) == before


def _common_factor(trial: Trial) -> int:
    parts = trial.content.fields.get("parts")
    assert isinstance(parts, Keyed)
    return gcd(*(trial.problem.given(each.key).value.numerator for each in parts))


def _as_much_rest(source: Trial) -> Test:
    leaves = source.leaves_rest
    return lambda trial: trial.leaves_rest is leaves


def _same_decision(source: Trial) -> Test:
    decision = source.solution.kind.decision
    return lambda trial: trial.decision is decision
