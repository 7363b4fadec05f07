"""Boxes and strokes as geometry: does a label touch another label, or a line cross it?

Placement is solved before anything is drawn; this is the guard behind it, so that a case
that the solver did not foresee becomes another layout or an error, never a collision.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias, cast

from typeset.drawing.shapes import Path, Rect, Rule, Shape, TextRun

Point: TypeAlias = tuple[float, float]
Segment: TypeAlias = tuple[Point, Point]

# Pieces of a Bézier curve; at the sizes of a figure the error is far below a hairline.
_PIECES = 12


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle by its four edges, y growing downwards, in points."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box, clear_pt: float = 0.0) -> bool:
        """True where the boxes come nearer to each other than `clear_pt`."""
        return (
            self.left < other.right + clear_pt
            and other.left < self.right + clear_pt
            and self.top < other.bottom + clear_pt
            and other.top < self.bottom + clear_pt
        )

    def crossed_by(self, segment: Segment) -> bool:
        """True where some of the segment lies inside the box (Liang and Barsky's clipping)."""
        (x1, y1), (x2, y2) = segment
        start, end = 0.0, 1.0
        for distance, low, high in (
            (x2 - x1, self.left - x1, self.right - x1),
            (y2 - y1, self.top - y1, self.bottom - y1),
        ):
            if distance == 0:
                if low >= 0 or high <= 0:
                    return False
                continue
            near, far = sorted((low / distance, high / distance))
            start, end = max(start, near), min(end, far)
            if start >= end:
                return False
        return True


def segments(shape: Shape) -> Iterator[Segment]:
    """The straight pieces of a shape's line; none for text and for fills without a line."""
    match shape:
        case Rule():
            yield (shape.x1_pt, shape.y1_pt), (shape.x2_pt, shape.y2_pt)
        case Rect() if shape.thickness_pt > 0:
            left, top = shape.x_pt, shape.y_pt
            right, bottom = left + shape.width_pt, top + shape.height_pt
            corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
            yield from pairwise(corners)
        case Path():
            yield from _path_segments(shape)
        case Rect() | TextRun():
            return


def _path_segments(path: Path) -> Iterator[Segment]:
    here: Point = (0.0, 0.0)
    for step in path.steps:
        command, *numbers = cast("tuple[str, *tuple[float, ...]]", step)
        end: Point = (numbers[-2], numbers[-1])
        if command == "L":
            yield here, end
        elif command == "C":
            yield from pairwise(_curve_points(*here, *numbers))
        here = end


def _curve_points(
    x0: float, y0: float, x1: float, y1: float, x2: float, y2: float, x3: float, y3: float
) -> Iterator[Point]:
    """Points on a Bézier curve, its ends among them."""
    yield x0, y0
    for a, b, c, d in _WEIGHTS:
        yield a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3


def _weights(t: float) -> tuple[float, float, float, float]:
    """How much the four points of a Bézier curve count at t (Bernstein's polynomials)."""
    s = 1 - t
    return s**3, 3 * s * s * t, 3 * s * t * t, t**3


_WEIGHTS = tuple(_weights(piece / _PIECES) for piece in range(1, _PIECES + 1))


def bounds(shape: Shape) -> Box | None:
    """The box of a shape with its line's thickness; None for text, whose box its label knows."""
    if isinstance(shape, TextRun):
        return None
    if isinstance(shape, Rect):
        corner = (shape.x_pt + shape.width_pt, shape.y_pt + shape.height_pt)
        return _around(((shape.x_pt, shape.y_pt), corner), shape.thickness_pt)
    return around_segments(tuple(segments(shape)), shape.thickness_pt)


def around_segments(pieces: Sequence[Segment], thickness_pt: float) -> Box:
    """The box of a line of at least one piece, with its thickness."""
    return _around([point for piece in pieces for point in piece], thickness_pt)


def _around(points: Sequence[Point], thickness_pt: float) -> Box:
    half = thickness_pt / 2
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half)


def clear_of(boxes: Iterable[Box], segment: Segment) -> list[Segment]:
    """What is left of an upright or level segment outside the boxes, in order.

    A guide line passes behind a label instead of through it.
    """
    (x1, y1), (x2, y2) = segment
    length = abs(x2 - x1) + abs(y2 - y1)
    cuts = sorted(_covered(box, segment) for box in boxes if box.crossed_by(segment))
    left: list[Segment] = []
    at = 0.0
    for start, end in [*cuts, (1.0, 1.0)]:
        if (start - at) * length > 1.0:
            left.append(
                (
                    (x1 + at * (x2 - x1), y1 + at * (y2 - y1)),
                    (x1 + start * (x2 - x1), y1 + start * (y2 - y1)),
                )
            )
        at = max(at, end)
    return left


def _covered(box: Box, segment: Segment) -> tuple[float, float]:
    (x1, y1), (x2, y2) = segment
    if x1 == x2:
        ends = ((box.top - y1) / (y2 - y1), (box.bottom - y1) / (y2 - y1))
    else:
        ends = ((box.left - x1) / (x2 - x1), (box.right - x1) / (x2 - x1))
    return max(0.0, min(ends)), min(1.0, max(ends))
