"""Shapes, and things that are counted in them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from typeset.arithmetic.figures.marks import Mark, Part


@dataclass(frozen=True, slots=True)
class DotArray:
    """Rows and columns of dots with a label at each side. Drawn as a plain rectangle where
    there are too many dots to count."""

    rows: int
    columns: int
    down: Mark
    across: Mark
    total: Mark | None = None
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class AreaRectangle:
    """A rectangle divided along both sides; `cells[row][column]` is the product in each field."""

    widths: tuple[Part, ...]
    heights: tuple[Part, ...]
    cells: tuple[tuple[Mark | None, ...], ...]
    total: Mark | None = None
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class Outline:
    """A shape with square corners, by its corners in order, clockwise from the top left.

    Corners are (across, down) in the shape's own unit. `marks[i]` is the length from corner i
    to the next, `inside` the area; `total` stands under the shape.
    """

    corners: tuple[tuple[Fraction, Fraction], ...]
    marks: tuple[Mark | None, ...]
    inside: Mark | None = None
    total: Mark | None = None
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class GroupedObjects:
    """`groups` rings of `each` counters; `left_over` counters stand outside the rings.

    What is not given of `groups_mark` and `each_mark` is not drawn in the first step: only
    empty rings, or only the first full ring, with the other counters beside them.
    """

    groups: int
    each: int
    groups_mark: Mark
    each_mark: Mark
    left_over: int = 0
    rest: Mark | None = None
    total: Mark | None = None
    reads_as: str = ""


class AngleSetting(Enum):
    """Where angles lie together. Around a point they make 360 degrees, else 180."""

    LINE = "on a straight line"
    POINT = "around a point"
    TRIANGLE = "in a triangle"


@dataclass(frozen=True, slots=True)
class Wedge:
    """One angle, to scale, with its size."""

    degrees: Fraction
    mark: Mark | None


@dataclass(frozen=True, slots=True)
class Angles:
    """Angles that lie together, in order: from left to right on a line, and clockwise from
    the top around a point. In a triangle: at its left, its right and its top corner."""

    setting: AngleSetting
    wedges: tuple[Wedge, ...]
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class JoinedPoints:
    """Things on a circle, each joined to each other once. `labels` name them in order."""

    labels: tuple[str, ...]
    total: Mark | None = None
    reads_as: str = ""
