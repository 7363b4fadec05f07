"""The sheets in the file of a class: where each begins, told by its foot, and whose it is, told by
its name line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from typeset.documents.class_work import PupilsSheet
from typeset.documents.layout import Layout
from typeset.proofing.expected import said, text_words
from typeset.proofing.finding import Finding
from typeset.proofing.foot import foot_of
from typeset.proofing.page_marks import ReadPage

# No task sheet has more sides.
_MOST_SIDES = 20


class Pages(Protocol):
    """The pages of a file in the order of the list."""

    def __len__(self) -> int: ...

    def read(self, index: int, number: int = 1) -> ReadPage:
        """The page with this index, from 0, numbered as a page of its sheet. Raises
        Unreadable."""
        ...


@dataclass(frozen=True, slots=True)
class InMemory:
    """Pages that have all been read."""

    pages: Sequence[ReadPage]

    def __len__(self) -> int:
        return len(self.pages)

    def read(self, index: int, number: int = 1) -> ReadPage:
        """The page with this index, numbered so."""
        page = self.pages[index]
        words = tuple(replace(word, page=number) for word in page.words)
        return replace(page, number=number, words=words)


@dataclass(frozen=True, slots=True)
class FoundSheet:
    """A sheet in the file: the pages with an index from `first` to before `end`, and what is
    wrong with it as the sheet that should stand in its place."""

    first: int
    end: int
    findings: tuple[Finding, ...]


def pages_in(pages: Pages, found: FoundSheet) -> list[ReadPage]:
    """The pages of the sheet, read. Raises Unreadable."""
    numbered = enumerate(range(found.first, found.end), 1)
    return [pages.read(index, number) for number, index in numbered]


class Beginnings:
    """Tells on which pages a sheet begins: where the foot ends with 'Page 1 of 2'."""

    def __init__(self, sheets: Sequence[PupilsSheet]) -> None:
        layouts = {each.layout.name: each.layout for each in sheets}
        self._endings = [(layout, _endings(layout)) for layout in layouts.values()]

    def sides_from(self, page: ReadPage) -> int:
        """How many sides the sheet has that begins on this page; 0 where none does."""
        for layout, endings in self._endings:
            foot = tuple(word.text for word in foot_of(page, layout, layout.type_size.smallest))
            lengths = {len(ending) for ending in endings}
            told = (endings.get(foot[-length:], 0) for length in lengths)
            if sides := min((each for each in told if each), default=0):
                return sides
        return 0


def _endings(layout: Layout) -> dict[tuple[str, ...], int]:
    """The words at the end of a first foot, and how many sides they tell of."""
    endings: dict[tuple[str, ...], int] = {}
    for sides in range(1, _MOST_SIDES + 1):
        text = said(layout, "sheet", "page", page="1", pages=str(sides))
        endings.setdefault(text_words(text), sides)
    return endings


class Owners:
    """Tells whose a sheet is by how its first page begins: 'Name Asha'."""

    def __init__(self, sheets: Sequence[PupilsSheet]) -> None:
        self._numbers: dict[tuple[str, ...], str] = {}
        for each in sheets:
            line = text_words(f"{said(each.layout, 'sheet', 'name')} {each.pupil.name}")
            self._numbers.setdefault(line, str(each.pupil.number))
        # 'Asha B' begins as 'Asha' does, so that the longest is looked for first.
        self._lengths = sorted({len(line) for line in self._numbers}, reverse=True)

    def of(self, page: ReadPage) -> str:
        """The number of the pupil in the list; empty where the sheet is nobody's."""
        texts = tuple(word.text for word in page.words[: self._lengths[0]])
        lines = (texts[:length] for length in self._lengths)
        return next((self._numbers[line] for line in lines if line in self._numbers), "")
