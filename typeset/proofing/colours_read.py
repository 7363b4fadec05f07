"""Colours as a PDF gives them, in one form."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from typeset.proofing.page_marks import Rgb


def rgb_of(colour: Any) -> Rgb | None:
    """A grey, RGB or CMYK colour as red, green, blue; None for anything else."""
    levels = list(_levels(colour))
    if len(levels) == 1:
        return (levels[0], levels[0], levels[0])
    if len(levels) == 3:
        return (levels[0], levels[1], levels[2])
    if len(levels) == 4:
        cyan, magenta, yellow, black = levels
        # ISO 32000-1, 10.3.5: the plain conversion without a colour profile.
        red, green, blue = (1 - min(1.0, ink + black) for ink in (cyan, magenta, yellow))
        return (red, green, blue)
    return None


def _levels(colour: Any) -> Iterator[float]:
    if isinstance(colour, int | float):
        yield float(colour)
    elif isinstance(colour, list | tuple):
        for level in colour:
            if isinstance(level, int | float):
                yield float(level)
