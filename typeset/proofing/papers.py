"""How the pages of a document lie on its papers, and how they are taken from them to be read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Protocol, TypeAlias

from typeset.documents.layout import Layout
from typeset.documents.paper import Paper
from typeset.proofing.as_printed import check_edge
from typeset.proofing.cells import (
    Cells,
    cells_of,
    check_cuts,
    check_papers,
    numbered,
    without_white,
)
from typeset.proofing.finding import Finding
from typeset.proofing.folding import check_fold, check_turns, lying_straight, unfolded
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.read_back import read_document
from typeset.proofing.side_by_side import check_copies, first_copy

# The pages in the order of reading, and what is wrong with the papers they lie on.
Read: TypeAlias = tuple[ReadDocument, list[Finding]]


class Papers(Protocol):
    """A way of lying on paper."""

    def read(self, data: bytes, name: str) -> Read:
        """The pages of the file in the order of reading. Raises Unreadable."""


@dataclass(frozen=True, slots=True)
class Whole:
    """A page a side, or copies of it beside each other."""

    layout: Layout

    def read(self, data: bytes, name: str) -> Read:
        """The sides, or the first copy on each."""
        papers = read_document(data, name)
        return first_copy(papers, self.layout), list(check_copies(papers, self.layout))


@dataclass(frozen=True, slots=True)
class Folded:
    """Two pages a side of a lying paper, to be folded."""

    paper: Paper
    backs_turned: bool

    def read(self, data: bytes, name: str) -> Read:
        """The pages in the order in which the leaves are turned."""
        turns = [
            *check_turns(data, name, self.backs_turned),
            *check_edge(data, name, is_long=self.backs_turned),
        ]
        papers = with_turned_backs(read_document(lying_straight(data), name), self.backs_turned)
        return unfolded(papers), [*turns, *check_fold(papers, self.paper)]


@dataclass(frozen=True, slots=True)
class Cut:
    """Several small pages a paper, to be cut apart."""

    paper: Paper
    cells: Cells

    def read(self, data: bytes, name: str) -> Read:
        """The cells of all papers, white ones at the end left out."""
        papers = read_document(data, name)
        findings = list(check_papers(papers, self.paper))
        for paper in papers.pages:
            findings.extend(check_cuts(paper, self.cells, name))
        cells = [cell for paper in papers.pages for cell in cells_of(paper, self.cells)]
        return numbered(name, without_white(cells)), findings


@dataclass(frozen=True, slots=True)
class CutWithBacks:
    """Cards: their fronts on one side, their backs on the other, cut from the front."""

    paper: Paper
    cells: Cells
    backs_turned: bool

    def read(self, data: bytes, name: str) -> Read:
        """The fronts of a paper, then its backs in the order of the fronts that they meet."""
        papers = with_turned_backs(read_document(lying_straight(data), name), self.backs_turned)
        findings = [*check_turns(data, name, self.backs_turned), *check_papers(papers, self.paper)]
        findings += check_edge(data, name, is_long=not self.backs_turned)
        for front in papers.pages[::2]:
            findings.extend(check_cuts(front, self.cells, name))
        if len(papers.pages) % 2:
            findings.append(Finding(name, 0, None, "the last paper has no backs", "", "", "page"))
        pages: list[ReadPage] = []
        for number, paper in enumerate(papers.pages):
            cells = list(cells_of(paper, self.cells))
            pages.extend(without_white(self._behind(cells) if number % 2 else cells))
        return numbered(name, pages), findings

    def _behind(self, cells: Sequence[ReadPage]) -> list[ReadPage]:
        """The backs by the front that each lies behind: the paper is turned over its left edge."""
        wide = self.cells.columns
        rows = (cells[start : start + wide] for start in range(0, len(cells), wide))
        return [cell for row in rows for cell in reversed(row)]


def with_turned_backs(papers: ReadDocument, are_turned: bool) -> ReadDocument:
    """The sides, each back told that it lies upside down in the file, where it does."""
    if not are_turned:
        return papers
    pages = (
        replace(page, turned_pt=(page.width_pt, page.height_pt)) if page.number % 2 == 0 else page
        for page in papers.pages
    )
    return ReadDocument(papers.name, tuple(pages))


def cut_into(data: bytes, name: str, grids: Sequence[Cells]) -> Iterator[Cells]:
    """Which of these grids the first paper shows lines to cut for."""
    first = read_document(lying_straight(data), name).pages[:1]
    for cells in grids:
        if first and not list(check_cuts(first[0], cells, name)):
            yield cells
