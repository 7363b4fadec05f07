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
class Choice:
    """A thing that is chosen ('sail') and what there is to choose from."""

    name: str
    options: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BranchingTree:
    """Every choice after every other, branch by branch; a large tree is told in part."""

    choices: tuple[Choice, ...]
    total: Mark | None = None
    reads_as: str = ""


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


Figure: TypeAlias = (
    BarModel
    | NumberLine
    | DoubleNumberLine
    | RatioTable
    | DotArray
    | AreaRectangle
    | BranchingTree
    | TwoWayTable
    | TimeLine
    | PostsAndGaps
    | SequenceBoxes
)
