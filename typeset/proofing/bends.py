"""Where a curve runs: as short straight pieces, so that what it meets can be measured.

A reader of PDF files gives a curve's corners; between two of them it bends by control points,
and may run far from the straight way.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from typeset.proofing.page_marks import Point

# Pieces of a bend: of a corner of 10 pt each is off by less than 0.1 pt.
_PIECES = 6


def bends_of(path: list[Any] | None) -> tuple[Point, ...]:
    """The points of a path in turn, its bends in pieces; nothing where it has no bend.

    A path is as pdfplumber gives it: ('m', point), ('l', point), ('c', two control points and
    the end), ('h',).
    """
    steps = path or []
    if not any(step[0] == "c" for step in steps):
        return ()
    points: list[Point] = []
    for letter, *numbers in steps:
        ends = [(float(x), float(y)) for x, y in numbers]
        if letter == "c" and points:
            points.extend(_bend((points[-1], *ends)))
        elif letter == "h" and points:
            points.append(points[0])
        elif ends:
            points.append(ends[-1])
    return tuple(points)


def _bend(corners: tuple[Point, ...]) -> Iterator[Point]:
    """A cubic Bézier curve (ISO 32000-1, 8.5.2.2) without its start."""
    for piece in range(1, _PIECES + 1):
        t = piece / _PIECES
        weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        yield (
            sum(w * x for w, (x, _) in zip(weights, corners, strict=True)),
            sum(w * y for w, (_, y) in zip(weights, corners, strict=True)),
        )
