"""What several kinds of figure share: marks, parts, jumps, and how much is shown."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

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
class Jump:
    """An arrow from one tick, column or row (counted from 0) to another, with what it does
    ('× 3'). `below` draws it under the figure. Where its mark is not shown, neither is it."""

    start: int
    end: int
    mark: Mark
    below: bool = False
