"""Figures in rows and branches: ratio tables, two-way tables, trees."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.arithmetic.figures.marks import Jump, Mark


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
