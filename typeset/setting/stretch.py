"""Heights that can give way: least, natural and greatest, and one tightness for all of them.

A page is filled by one number, its looseness: 0 puts every height at its least, 1 at its
natural, 2 at its greatest, and between them all move together. So a space takes part in
proportion to its range, and two questions with equal spaces stay equal on a side.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

# Lengths that differ by less are the same: far below what a printer can show (0.004 mm).
TOLERANCE_PT = 0.01
LEAST, NATURAL, GREATEST = 0.0, 1.0, 2.0


@dataclass(frozen=True, slots=True)
class Stretch:
    """A height or gap in points: `least_pt <= natural_pt <= greatest_pt`."""

    least_pt: float
    natural_pt: float
    greatest_pt: float

    def __add__(self, other: Stretch) -> Stretch:
        return Stretch(
            self.least_pt + other.least_pt,
            self.natural_pt + other.natural_pt,
            self.greatest_pt + other.greatest_pt,
        )

    def at(self, looseness: float) -> float:
        """The height at a looseness from 0 (least) over 1 (natural) to 2 (greatest)."""
        if looseness <= NATURAL:
            return self.least_pt + looseness * (self.natural_pt - self.least_pt)
        return self.natural_pt + (looseness - NATURAL) * (self.greatest_pt - self.natural_pt)

    def looseness(self, height_pt: float) -> float:
        """The looseness that gives this height; 0 below the least, 2 above the greatest.

        What cannot stretch counts as natural when its height is met exactly.
        """
        if height_pt < self.natural_pt:
            room = self.natural_pt - self.least_pt
            return max(LEAST, (height_pt - self.least_pt) / room) if room > 0 else LEAST
        room = self.greatest_pt - self.natural_pt
        if room <= 0:
            return NATURAL if height_pt <= self.natural_pt + TOLERANCE_PT else GREATEST
        return min(GREATEST, NATURAL + (height_pt - self.natural_pt) / room)

    def plus(self, length_pt: float) -> Stretch:
        """Every height larger by a fixed length."""
        return self + fixed(length_pt)


def fixed(height_pt: float) -> Stretch:
    """A height that cannot give way."""
    return Stretch(height_pt, height_pt, height_pt)


def total(parts: Iterable[Stretch]) -> Stretch:
    """The heights one under the other."""
    least = natural = greatest = 0.0
    for part in parts:
        least += part.least_pt
        natural += part.natural_pt
        greatest += part.greatest_pt
    return Stretch(least, natural, greatest)


def tallest(parts: Iterable[Stretch]) -> Stretch:
    """The heights side by side; nothing side by side is a ValueError."""
    given = tuple(parts)
    return Stretch(
        max(part.least_pt for part in given),
        max(part.natural_pt for part in given),
        max(part.greatest_pt for part in given),
    )
