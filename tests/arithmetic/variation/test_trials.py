"""Sets of numbers that come again in a search are answered from the first time, and only those."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.numbers_typed import numbers_in
from typeset.arithmetic.variation.search import Trials
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.workings import Working
from typeset.errors import AmountError

PRICES = "structure: equal groups\ngroups: 4 crates\neach: £2.50\nstory: A\n"


def test_a_set_is_tried_once_and_another_by_itself(typed: Typed) -> None:
    content = typed(PRICES)
    numbers = {each.path: each.amount for each in numbers_in(content)}
    trials = Trials(content)
    first = trials.of(numbers)
    assert trials.of(dict(numbers)) is first
    path = next(path for path in numbers if path[-1] == "groups")
    more = {**numbers, path: replace(numbers[path], value=Fraction(5))}
    assert trials.of(more) is not first
    assert {*trials.of(more).answers.values()} != {*first.answers.values()}


def test_numbers_that_look_otherwise_are_another_set(typed: Typed) -> None:
    content = typed(PRICES.replace("£2.50", "2.50 m"))
    numbers = {each.path: each.amount for each in numbers_in(content)}
    path = next(path for path in numbers if path[-1] == "each")
    bare = {**numbers, path: replace(numbers[path], places=0)}
    trials = Trials(content)
    assert trials.of(numbers).content.drawn != trials.of(bare).content.drawn


def test_an_error_is_raised_again(typed: Typed) -> None:
    trial = Trial(typed(PRICES.replace("4 crates", "0 crates")))
    for _ in range(3):
        with pytest.raises(AmountError, match="more than 0"):
            _ = trial.answers


def test_a_verdict_is_asked_once_for_each_test(typed: Typed) -> None:
    asked: list[str] = []

    def first(_trial: Trial) -> bool:
        asked.append("first")
        return True

    def second(_trial: Trial) -> bool:
        asked.append("second")
        return False

    one, other = Trial(typed(PRICES)), Trial(typed(PRICES))
    assert [one.verdict(first), one.verdict(second), one.verdict(first)] == [True, False, True]
    assert other.verdict(first)
    assert asked == ["first", "second", "first"]


@pytest.mark.parametrize("bound", [0, 1, 3, 5, 8, 12, 20, 100])
def test_the_ways_looked_at_so_far_are_not_all(typed: Typed, bound: int) -> None:
    """Whoever asks for the ways afterwards gets each of them once, in their order."""
    whole, begun = Trial(typed(PRICES)), Trial(typed(PRICES))
    is_below = whole.demand < bound
    assert whole.has_way_below(Fraction(bound)) is is_below
    for _ in range(2):
        assert begun.has_way_below(Fraction(bound)) is is_below
    assert begun.ways == whole.ways
    assert begun.demand == whole.demand
    assert begun.has_way_below(Fraction(bound)) is is_below


def test_ways_that_end_in_an_error_are_begun_anew(
    typed: Typed, monkeypatch: pytest.MonkeyPatch
) -> None:
    trial = Trial(typed(PRICES))
    right = Trial(typed(PRICES)).ways[0]

    def broken(_problem: object) -> Iterator[Working]:
        yield right
        raise AmountError("it ends here", "")

    monkeypatch.setattr(trial.family, "strategies", broken)
    for _ in range(2):
        with pytest.raises(AmountError, match="ends here"):
            trial.has_way_below(Fraction(0))
    with pytest.raises(AmountError, match="ends here"):
        _ = trial.ways
