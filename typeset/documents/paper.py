"""Paper sizes of the A and B series.

ISO 216 by its rule: A0 has an area of one square metre, B0 a short side of one metre, sides
stand as 1 : √2, and each size is the one before halved across and rounded down to the millimetre.
"""

from __future__ import annotations

from dataclasses import dataclass

# ISO 216, whole millimetres (short side, long side) of size 0.
_LARGEST_MM = {"A": (841, 1189), "B": (1000, 1414)}
# Smaller than A7 nothing of a lesson can be read.
_SIZES = {"A": range(8), "B": range(8)}


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet, upright unless turned."""

    name: str
    width_mm: float
    height_mm: float

    def turned(self) -> Paper:
        """The same sheet in landscape."""
        return Paper(self.name, self.height_mm, self.width_mm)


def paper_names() -> tuple[str, ...]:
    """The sizes that a layout may name."""
    return tuple(f"{series}{number}" for series, numbers in _SIZES.items() for number in numbers)


def paper_named(name: str) -> Paper:
    """The paper of this name, one of `paper_names()`; KeyError for another."""
    if name not in paper_names():
        raise KeyError(name)
    short, long = _LARGEST_MM[name[0]]
    for _ in range(int(name[1:])):
        short, long = long // 2, short
    return Paper(name, short, long)


def half_of(paper: Paper) -> Paper:
    """The upright paper cut across once, upright again: half of A4 has the size of A5."""
    size = f"{paper.name[0]}{int(paper.name[1:]) + 1}"
    return Paper(size, paper.height_mm / 2, paper.width_mm)
