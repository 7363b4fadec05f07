"""Boxes on a page, in points from its top left corner."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

MM_PT = 72 / 25.4


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top

    @property
    def centre(self) -> tuple[float, float]:
        """The middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    @property
    def place_mm(self) -> tuple[float, float]:
        """The top left corner in millimetres, for a finding."""
        return round(self.left / MM_PT, 1), round(self.top / MM_PT, 1)

    def shrunk(self, by: float) -> Box:
        """The box with every side moved inwards."""
        return Box(self.left + by, self.top + by, self.right - by, self.bottom - by)

    def overlaps(self, other: Box) -> bool:
        """True where the insides meet."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def holds(self, x: float, y: float) -> bool:
        """True where the point is inside or on the edge."""
        return self.left <= x <= self.right and self.top <= y <= self.bottom

    def covers(self, other: Box, slack: float = 0.5) -> bool:
        """True where the other lies inside this one."""
        return (
            self.left <= other.left + slack
            and self.top <= other.top + slack
            and self.right >= other.right - slack
            and self.bottom >= other.bottom - slack
        )


def around(boxes: Iterable[Box]) -> Box:
    """The smallest box around all of them (at least one)."""
    every = list(boxes)
    return Box(
        min([box.left for box in every]),
        min([box.top for box in every]),
        max([box.right for box in every]),
        max([box.bottom for box in every]),
    )
