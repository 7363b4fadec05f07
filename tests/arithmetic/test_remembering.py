"""What is worked out once an object must never be the answer for another one."""

from __future__ import annotations

import gc
from dataclasses import dataclass

import pytest

from typeset.arithmetic.remembering import once_for_each, once_for_each_of_a_week


@dataclass(frozen=True)
class Given:
    number: int


def test_each_object_is_asked_once() -> None:
    asked: list[int] = []

    @once_for_each
    def doubled(given: Given) -> int:
        asked.append(given.number)
        return 2 * given.number

    one, other = Given(3), Given(4)
    assert [doubled(one), doubled(other), doubled(one), doubled(other)] == [6, 8, 6, 8]
    assert asked == [3, 4]


def test_an_object_at_the_place_of_one_long_gone_is_asked_anew() -> None:
    @once_for_each
    def doubled(given: Given) -> int:
        return 2 * given.number

    # Objects that nobody holds leave their place, and so their identity, to later ones.
    for number in range(500):
        assert doubled(Given(number)) == 2 * number
        if number % 100 == 0:
            gc.collect()


def test_few_results_are_kept() -> None:
    asked: list[int] = []

    @once_for_each
    def noted(given: Given) -> int:
        asked.append(given.number)
        return given.number

    many = [Given(number) for number in range(200)]
    for each in (*many, many[-1], many[0]):
        assert noted(each) == each.number
    assert asked == [*range(200), 0]


def test_a_week_is_kept_and_no_more() -> None:
    asked: list[int] = []

    @once_for_each_of_a_week
    def noted(given: Given) -> int:
        asked.append(given.number)
        return given.number

    many = [Given(number) for number in range(100)]
    for each in (*many, *many):
        assert noted(each) == each.number
    assert asked == [*range(100)]
    for number in range(1000, 1200):
        noted(Given(number))
    assert noted(many[0]) == 0
    assert asked.count(0) == 2


def test_every_argument_counts() -> None:
    @once_for_each
    def total(one: Given, other: Given) -> int:
        return one.number - other.number

    five, two = Given(5), Given(2)
    assert (total(five, two), total(two, five), total(five, two)) == (3, -3, 3)
    assert total(five, other=five) == 0


def test_what_raises_is_asked_again() -> None:
    asked: list[int] = []

    @once_for_each
    def refused(given: Given) -> int:
        asked.append(given.number)
        raise ValueError

    given = Given(1)
    for _ in range(2):
        with pytest.raises(ValueError):
            refused(given)
    assert asked == [1, 1]
