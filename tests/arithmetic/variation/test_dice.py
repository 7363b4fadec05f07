"""Throws that fall the same everywhere. Outside check: SHA-256 as hashlib has it (FIPS 180-4)."""

from __future__ import annotations

from collections import Counter
from hashlib import sha256

import pytest

from typeset.arithmetic.variation.dice import Dice


def reference(seed: str, count: int) -> int:
    """The first throw by the definition, for counts so small that no throw is thrown again."""
    return int.from_bytes(sha256(seed.encode() + b"0").digest()[:16], "big") % count


@pytest.mark.parametrize("count", [1, 2, 6, 97, 10**9, 10**18])
def test_the_first_throw_is_the_digest(count: int) -> None:
    assert Dice(7, "corks").below(count) == reference("1:7,5:corks,", count)


def test_throws_beyond_the_last_full_row_are_thrown_again() -> None:
    """Half of all throws are, where the faces are one more than half of what a digest shows."""
    count = 2**127 + 1
    for seed in range(12):
        key = f"{len(str(seed))}:{seed},"
        throws = (
            int.from_bytes(sha256(f"{key}{at}".encode()).digest()[:16], "big") for at in range(99)
        )
        assert Dice(seed).below(count) == next(throw for throw in throws if throw < count)


def test_seeds_that_run_into_each_other_are_still_different() -> None:
    assert [Dice("a", "bc").below(10**9)] != [Dice("ab", "c").below(10**9)]


def test_every_face_comes_about_as_often() -> None:
    dice = Dice("fair")
    faces = Counter(dice.below(6) for _ in range(6000))
    # Chi-squared with 5 degrees of freedom: above 20.5 once in a thousand (any table).
    assert sum((faces[face] - 1000) ** 2 / 1000 for face in range(6)) < 20.5


def test_shuffling_keeps_every_item_and_takes_every_order() -> None:
    orders = Counter(tuple(Dice("mix", at).shuffled("abc")) for at in range(600))
    assert len(orders) == 6
    assert min(orders.values()) > 60
    assert all(sorted(order) == ["a", "b", "c"] for order in orders)
