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


Figure: TypeAlias = BarModel
