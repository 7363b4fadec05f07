"""Figures as data: what a drawing must show, without a length or a position."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from typing import TypeAlias

from typeset.quantities.inline import Rich


class Show(Enum):
    """How much of a figure is drawn."""

    # The empty frame for a pupil to draw in.
    FRAME = "frame"
    # The bars with what the story tells; '?' for what is asked.
    FIRST_STEP = "first step"
    # Everything, with the answers.
    COMPLETE = "complete"


@dataclass(frozen=True, slots=True)
class Mark:
    """A value beside or in a figure. `is_given` is true for what the story tells;
    another value shows as '?' until the figure is complete (or not at all if `hidden`)."""

    text: Rich
    is_given: bool = True
    hidden: bool = False


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a bar. Widths are in proportion to `size` over the whole figure."""

    size: Fraction
    mark: Mark | None = None
    # Light grey or hatched, to tell parts apart; never the only sign.
    shaded: bool = False
    # Drawn with a dashed outline: a part that is missing or taken away.
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar with its name at the left."""

    name: str
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Brace:
    """A brace over parts `first` to `last` (counted from 0, both included) of bar `bar`.

    `below` puts it under its bar. `gap_to` makes it span from the end of bar `gap_to` to
    the end of bar `bar` instead: the difference of two bars.
    """

    bar: int
    mark: Mark
    first: int = 0
    last: int = 0
    below: bool = False
    gap_to: int | None = None


@dataclass(frozen=True, slots=True)
class BarModel:
    """Bars under one another on one scale. `total` stands at a brace right of all bars."""

    bars: tuple[Bar, ...]
    braces: tuple[Brace, ...] = ()
    total: Mark | None = None
    # What a screen reader or a listener is told, from the same data.
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class Jump:
    """An arrow from one tick, column or row (counted from 0) to another, with what it does
    ('× 3'). `below` draws it under the figure. Where its mark is not shown, neither is it."""

    start: int
    end: int
    mark: Mark
    below: bool = False


@dataclass(frozen=True, slots=True)
class Tick:
    """A place on a number line; `at` sets its position, to scale."""

    at: Fraction
    mark: Mark | None = None


@dataclass(frozen=True, slots=True)
class NumberLine:
    """A line with ticks in rising order, and jumps between them."""

    ticks: tuple[Tick, ...]
    jumps: tuple[Jump, ...] = ()
    name: str = ""
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class PairTick:
    """A place at which two quantities stand against each other."""

    at: Fraction
    upper: Mark | None
    lower: Mark | None


@dataclass(frozen=True, slots=True)
class DoubleNumberLine:
    """Two aligned scales with ticks in rising order. Jumps run over the upper scale, or
    with `below` under the lower one."""

    upper_name: str
    lower_name: str
    ticks: tuple[PairTick, ...]
    jumps: tuple[Jump, ...] = ()
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class RatioTable:
    """A table of rows with names. `cells[row][column]`; an empty cell is None.

    `jumps` run from column to column (over the table, or below), `across` from row to row
    at its right.
    """

    row_names: tuple[str, ...]
    cells: tuple[tuple[Mark | None, ...], ...]
    jumps: tuple[Jump, ...] = ()
    across: tuple[Jump, ...] = ()
    reads_as: str = ""


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
class Choice:
    """A thing that is chosen ('sail') and what there is to choose from."""

    name: str
    options: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BranchingTree:
    """Every choice after every other, branch by branch; a large tree is told in part.

    `without_repeats` leaves out what the branch has taken already (things put in order); all
    choices then have the same options.
    """

    choices: tuple[Choice, ...]
    total: Mark | None = None
    reads_as: str = ""
    without_repeats: bool = False


@dataclass(frozen=True, slots=True)
class TwoWayTable:
    """Two choices against each other. `cells[row][column]`; a large table is told in part."""

    down: Choice
    across: Choice
    cells: tuple[tuple[Mark | None, ...], ...]
    total: Mark | None = None
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class Moment:
    """A moment on a time line; `at` sets its position, to scale."""

    name: str
    at: Fraction


@dataclass(frozen=True, slots=True)
class TimeRow:
    """One thing over time: a value at each moment."""

    name: str
    marks: tuple[Mark | None, ...]


@dataclass(frozen=True, slots=True)
class TimeLine:
    """Two things that change alike: the same gap between them at every moment."""

    moments: tuple[Moment, ...]
    upper: TimeRow
    lower: TimeRow
    gap: Mark
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class PostsAndGaps:
    """Posts along a line. `posts` is one more than `gaps`, the same, or one fewer.

    `gap` is the length of one gap, `length` of all; `count` is the mark of the number of
    posts. A long row is drawn in part.
    """

    posts: int
    gaps: int
    gap: Mark
    length: Mark
    count: Mark | None = None
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class SequenceBoxes:
    """Terms in boxes with what leads from each to the next; one step fewer than terms."""

    terms: tuple[Mark, ...]
    steps: tuple[Mark | None, ...]
    reads_as: str = ""


@dataclass(frozen=True, slots=True)
class ClockFace:
    """A twelve-hour face. `at` counts minutes after twelve, from 0 up to 720, and sets both hands.

    `mark` is the time under the face; `name` stands over it ('start'). `hands_given` is false
    where the hands are what is asked.
    """

    at: Fraction
    mark: Mark | None
    name: str = ""
    hands_given: bool = True


@dataclass(frozen=True, slots=True)
class ClockFaces:
    """One face, or a start and an end with the time that passes `between` them."""

    faces: tuple[ClockFace, ...]
    between: Mark | None = None
    reads_as: str = ""


class ScaleShape(Enum):
    """What a scale is drawn on."""

    LINE = "straight scale"
    RULER = "ruler"
    JUG = "measuring jug"
    DIAL = "weighing dial"


@dataclass(frozen=True, slots=True)
class ScaleLabel:
    """A long mark of a scale. It is on the scale in every state; its text may be empty."""

    at: Fraction
    text: Rich = ()


@dataclass(frozen=True, slots=True)
class MeasuringScale:
    """A scale with a pointer, a level or a thing that is measured at `at`.

    `labels` rise in equal steps, at least two; the first and last are the ends of the scale.
    `divisions` is the number of parts between two of them. `mark` is what is read off;
    `pointer_given` is false where the pointer is what is asked.
    """

    shape: ScaleShape
    labels: tuple[ScaleLabel, ...]
    divisions: int
    at: Fraction
    mark: Mark | None
    unit: str = ""
    pointer_given: bool = True
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


Figure: TypeAlias = (
    BarModel
    | NumberLine
    | DoubleNumberLine
    | RatioTable
    | DotArray
    | AreaRectangle
    | Outline
    | BranchingTree
    | TwoWayTable
    | TimeLine
    | PostsAndGaps
    | SequenceBoxes
    | ClockFaces
    | MeasuringScale
    | GroupedObjects
    | Angles
    | JoinedPoints
)
