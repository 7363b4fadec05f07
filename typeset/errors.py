"""Every error of the package, on one page.

TypesetError
├── ContentError        the teacher's files are wrong: carries complaints with places
├── AmountError         a text is not a number, measure, sum of money, time or ratio
├── SolvingError        our own guard: two ways of solving disagree, or a step is untrue
├── FitError            the pages cannot be made to fit the sides asked for
├── GlyphError          a character that the font does not hold
├── LayoutError         a layout is wrong (unknown, or a value out of bounds)
└── OutputError         a folder or file cannot be written or read
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path


class TypesetError(Exception):
    """Base of all errors that the command line reports without a traceback."""


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands in a content file. Line and column count from 1."""

    file: Path
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True, order=True)
class Complaint:
    """One thing that is wrong in the content, and what would be right."""

    place: Place
    problem: str
    remedy: str = ""

    def __str__(self) -> str:
        ending = f"; {self.remedy}" if self.remedy else ""
        return f"{self.place}: {self.problem}{ending}"


@dataclass(frozen=True, slots=True, order=True)
class Remark:
    """Something in the content that is worth a look but is no error; it never stops anything."""

    place: Place
    text: str

    def __str__(self) -> str:
        return f"{self.place}: remark: {self.text}"


class ContentError(TypesetError):
    """The content has one or more complaints; all of them, sorted by place."""

    def __init__(self, complaints: Iterable[Complaint]) -> None:
        self.complaints = tuple(sorted(set(complaints)))
        super().__init__("\n".join(str(complaint) for complaint in self.complaints))

    # An exception is sent to another process by what it was made with, not by its message.
    def __reduce__(self) -> tuple[type[ContentError], tuple[object, ...]]:
        return type(self), (self.complaints,)


class AmountError(TypesetError):
    """A text that cannot be read as an amount: `problem` says why, `remedy` what would do."""

    def __init__(self, problem: str, remedy: str = "") -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem}; {remedy}" if remedy else problem)

    def __reduce__(self) -> tuple[type[AmountError], tuple[object, ...]]:
        return type(self), (self.problem, self.remedy)


class SolvingError(TypesetError):
    """The core contradicts itself, so nothing may be printed."""


class FitError(TypesetError):
    """Pages cannot be made to fit; the message names what would help."""


class GlyphError(TypesetError):
    """A character that the chosen font cannot draw."""


class LayoutError(TypesetError):
    """A layout that does not exist or holds a value out of bounds."""


class OutputError(TypesetError):
    """A file or folder that cannot be read or written."""
