"""Chance that falls the same on every machine and with every version of Python.

Each throw is a SHA-256 digest (FIPS 180-4) of the seed and a counter, so nothing depends on
the random module, on hashes of texts, or on the order in which other problems are drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256
from typing import TypeVar

T = TypeVar("T")

_BYTES = 16
_FACES = 256**_BYTES


class Dice:
    """Throws from a seed of any parts: Dice(1, 'monday', 'corks')."""

    def __init__(self, *seed: str | int) -> None:
        # The length before each part keeps ('a', 'bc') from ('ab', 'c').
        parts = (str(part) for part in seed)
        self._key = "".join(f"{len(part)}:{part}," for part in parts).encode()
        self._thrown = 0

    def below(self, count: int) -> int:
        """A whole number from 0 to count − 1, each as likely as the others.

        `count` is more than 0 and far below 2 to the power of 128. Throws in the last,
        incomplete row of `count` are thrown again; that happens hardly ever.
        """
        while True:
            digest = sha256(b"%b%d" % (self._key, self._thrown)).digest()
            self._thrown += 1
            thrown = int.from_bytes(digest[:_BYTES], "big")
            # The last row is no longer than `count`; whether it is full matters there alone.
            if thrown < _FACES - count or thrown < _FACES - _FACES % count:
                return thrown % count

    def pick(self, items: Sequence[T]) -> T:
        """One of the items."""
        return items[self.below(len(items))]

    def shuffled(self, items: Sequence[T]) -> list[T]:
        """The items in an order by chance (Fisher and Yates, as Durstenfeld 1964 has it)."""
        mixed = list(items)
        for last in range(len(mixed) - 1, 0, -1):
            other = self.below(last + 1)
            mixed[last], mixed[other] = mixed[other], mixed[last]
        return mixed
