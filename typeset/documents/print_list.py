"""How each kind of file is printed: papers, which edge to turn them over, cutting, folding."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.documents.layout import Layout
from typeset.documents.wording import phrase
from typeset.reading.content import (
    ANSWER_GRID,
    DOCUMENTS,
    FOLDED_BOOKLET,
    MARKING_STRIPS,
    NAMED_SET,
    SORTING_CARDS,
    TASK_SHEET,
)

LONG_EDGE, SHORT_EDGE = "long edge", "short edge"
# Strips are cut apart, so that a back would be cut wrong.
_ONE_SIDED = frozenset({MARKING_STRIPS})
_AFTERWARDS = {
    FOLDED_BOOKLET: ("fold",),
    MARKING_STRIPS: ("cut",),
    SORTING_CARDS: ("card", "cut"),
    NAMED_SET: ("names",),
    ANSWER_GRID: ("names",),
}
_ORDER = (*DOCUMENTS, NAMED_SET, ANSWER_GRID)


@dataclass(frozen=True, slots=True)
class PrintedFile:
    """A made file. `sides` are printed ones, `layout` is its own."""

    file: str
    kind: str
    sides: int
    layout: Layout


@dataclass(frozen=True, slots=True)
class Printing:
    """Files that are printed alike. `edge` is empty where one side of the paper is printed;
    `afterwards` are the wording's keys for what is done next."""

    kind: str
    paper: str
    edge: str
    afterwards: tuple[str, ...]
    files: tuple[PrintedFile, ...]

    @property
    def sides(self) -> int:
        """All printed sides."""
        return sum(each.sides for each in self.files)

    @property
    def papers(self) -> int:
        """All sheets of paper."""
        return sum(papers_of(each.sides, self.edge) for each in self.files)


def papers_of(sides: int, edge: str) -> int:
    """How many sheets of paper the sides take."""
    return -(-sides // 2) if edge else sides


def printings(files: Sequence[PrintedFile]) -> tuple[Printing, ...]:
    """The files in groups that are printed alike, pupils' sheets first."""
    groups: dict[tuple[str, str, str, tuple[str, ...]], list[PrintedFile]] = {}
    for each in sorted(files, key=lambda file: _ORDER.index(file.kind)):
        key = (each.kind, each.layout.upright.name, _edge(each), _afterwards(each))
        groups.setdefault(key, []).append(each)
    return tuple(Printing(*key, tuple(own)) for key, own in groups.items())


def _edge(file: PrintedFile) -> str:
    if file.sides < 2 or file.kind in _ONE_SIDED:
        return ""
    # A grid lies, and its back is read like its front when it is turned over its short edge.
    return SHORT_EDGE if file.kind == ANSWER_GRID else file.layout.backs


def _afterwards(file: PrintedFile) -> tuple[str, ...]:
    if file.kind == TASK_SHEET and file.layout.copies > 1:
        return ("cut",)
    if file.kind == NAMED_SET and file.layout.copies > 1:
        return ("names", "stack")
    return _AFTERWARDS.get(file.kind, ())


def how(printing: Printing, layout: Layout) -> str:
    """How the files are printed, and how much paper they take, in a line."""
    told = [say(layout, printing.edge or "one side", paper=printing.paper)]
    told += [say(layout, each) for each in printing.afterwards]
    sides, papers = str(printing.sides), str(printing.papers)
    return f"{'; '.join(told)} ({say(layout, 'count', sides=sides, papers=papers)})"


def told_file(file: PrintedFile, layout: Layout) -> str:
    """A file with its sides."""
    return say(layout, "file", file=file.file, sides=str(file.sides))


def print_lines(files: Sequence[PrintedFile], layout: Layout) -> Iterator[str]:
    """The same for the terminal: a line for each group, with how much paper it takes."""
    if files:
        yield say(layout, "about")
    for each in printings(files):
        yield f"{kind_name(each.kind, layout)}: {how(each, layout)}"


def kind_name(kind: str, layout: Layout) -> str:
    """What files of the kind are called."""
    return say(layout, kind)


def say(layout: Layout, key: str, **names: str) -> str:
    """A text of the layout's wording for printing."""
    return phrase(layout.wording, "print", key, **names)
