"""What a section of the benchmark gives: a text in Markdown, and how it stands to its bounds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tests.benchmarks.timing import Clock


@dataclass(frozen=True, slots=True)
class Settings:
    """How the benchmark runs. `is_quick` takes few rounds and small documents, to see whether
    it works; `is_long` adds the documents of 6,000 pages."""

    clock: Clock
    is_quick: bool
    is_long: bool

    def rounds(self, usual: int) -> int:
        """The usual number of rounds, or one."""
        return 1 if self.is_quick else usual


@dataclass(frozen=True, slots=True)
class Bound:
    """What was promised, and what was measured; the measured may be as large as the bound."""

    what: str
    bound: float
    measured: float
    unit: str = ""
    # True where as much as the bound at least is promised (so many a second).
    is_least: bool = False

    @property
    def is_met(self) -> bool:
        """True where the promise is kept."""
        if self.is_least:
            return self.measured >= self.bound
        return self.measured <= self.bound


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the report."""

    title: str
    text: str
    bounds: tuple[Bound, ...] = ()


def table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """A table in Markdown; the first column is text, the others are numbers."""
    lines = [heads, ["---", *["---:"] * (len(heads) - 1)], *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines) + "\n"


def seconds(value_s: float) -> str:
    """Seconds or milliseconds, in three figures."""
    if value_s < 1:
        return f"{value_s * 1000:.3g} ms"
    return f"{value_s:.2f} s" if value_s < 100 else f"{value_s:.0f} s"


def ratio(value: float, to: float) -> str:
    """How many times the other."""
    return f"{value / to:.2f}"


def cells_of(text: str) -> list[list[str]]:
    """The rows of all tables in a text, heads and rules included."""
    rows = (line.strip("| ").split("|") for line in text.splitlines() if line.startswith("|"))
    return [[cell.strip() for cell in row] for row in rows]
