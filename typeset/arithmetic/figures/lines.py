"""Figures along a line: number lines, time lines, posts with their gaps, sequences."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.figures.marks import Jump, Mark


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
