"""Bar models."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.arithmetic.figures.marks import Mark, Part


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
