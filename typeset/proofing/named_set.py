"""The proof of a named set: whose sheet each one is, that it begins on a front, and then the
sheet itself, as strictly as one that is printed alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from typeset.documents.class_work import PupilsSheet
from typeset.documents.layout import Layout
from typeset.proofing.align import align
from typeset.proofing.alike import KnownSheets
from typeset.proofing.as_printed import check_edge
from typeset.proofing.cells import Cells, cells_of, check_cuts, check_papers, numbered
from typeset.proofing.collecting import seldom_collecting
from typeset.proofing.documents import sheet_order
from typeset.proofing.expected import said, source_of
from typeset.proofing.file_check import FileFacts, check_file
from typeset.proofing.finding import Finding
from typeset.proofing.folding import check_turns, lying_straight
from typeset.proofing.found_sheets import Beginnings, FoundSheet, InMemory, Owners, Pages, pages_in
from typeset.proofing.on_paper import on_paper
from typeset.proofing.open_file import open_file
from typeset.proofing.opened import opened
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.papers import with_turned_backs
from typeset.proofing.proof import in_order, proof_pages, unreadable
from typeset.proofing.read_back import Unreadable, read_document


def proof_named_set(
    pdf: Path | bytes, name: str, sheets: Sequence[PupilsSheet], layout: Layout
) -> list[Finding]:
    """Everything that is wrong with the finished sheets of a class, in the order of its list.

    `layout` is the week's own, which gives the file its title.
    """
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    try:
        findings = list(check_file(data, name, _facts(sheets[0], layout)))
        findings += check_edge(data, name, sheets[0].layout.backs == "long edge")
        if sheets[0].layout.copies > 1:
            document, about_papers = _cut(data, name, sheets[0].layout)
            about_sheets = _Walk(name, sheets, InMemory(document.pages)).findings()
            findings += [*about_papers, *(on_paper(each, document) for each in about_sheets)]
        else:
            # Its objects are not needed any more, and are as large as thousands of pages read.
            opened.cache_clear()
            with seldom_collecting(), open_file(data) as file:
                findings += _Walk(name, sheets, file, KnownSheets(file, sheets)).findings()
    except Unreadable as error:
        return [unreadable(name, error)]
    return in_order(findings)


def _cut(data: bytes, name: str, layout: Layout) -> tuple[ReadDocument, list[Finding]]:
    """Small pages in the order of the list, and what is wrong with the papers they lie on, which
    are cut apart, and the piles laid under each other."""
    turned, cells = layout.backs == "long edge", Cells(layout.copies, 1)
    papers = with_turned_backs(read_document(lying_straight(data), name), turned)
    findings = [*check_turns(data, name, turned), *check_papers(papers, layout.paper)]
    sides = [list(cells_of(paper, cells)) for paper in papers.pages]
    for front in papers.pages[::2]:
        findings += check_cuts(front, cells, name)
    pages: list[ReadPage] = []
    for pile in range(layout.copies):
        # The paper is turned over its left edge: what lies behind the left is at the right.
        columns = (side[pile] if at % 2 == 0 else side[-1 - pile] for at, side in enumerate(sides))
        pages += columns
    if not any(page.glyphs for page in pages[-2:]):
        # An odd leaf has no neighbour.
        del pages[-2:]
    return numbered(name, pages), findings


class _Walk:
    """Goes through the pages of the file once, sheet by sheet. No page is kept longer than the
    proof of its sheet takes, so that a file may have any number of them."""

    def __init__(
        self,
        name: str,
        sheets: Sequence[PupilsSheet],
        pages: Pages,
        known: KnownSheets | None = None,
    ) -> None:
        self.name = name
        self.sheets = sheets
        self.pages = pages
        self.known = known
        self.beginnings = Beginnings(sheets)
        self.found: list[FoundSheet] = []
        # Pages that belong to no sheet: their numbers, and whether they are white.
        self.loose: dict[int, bool] = {}

    def findings(self) -> Iterator[Finding]:
        """What is wrong with the sheets, told by their pages in the order of the list."""
        index = 0
        while index < len(self.pages):
            index = self._known_from(index) or self._read_from(index)
        yield from self._collation()
        if len(self.found) == len(self.sheets):
            # A wrong name is told as such.
            for each in self.found:
                yield from each.findings
        else:
            yield from self._by_owners()

    def _next_sheet(self) -> PupilsSheet | None:
        """Whose sheet is to come, where none is lost."""
        count = len(self.found)
        return self.sheets[count] if count < len(self.sheets) else None

    def _known_from(self, index: int) -> int:
        """Where the sheet that begins here ends, if it needs no second proof; else 0."""
        sheet = self._next_sheet()
        sides = self.known.sides_of(sheet, index) if self.known and sheet else 0
        if not sides:
            return 0
        self.found.append(FoundSheet(index, index + sides, ()))
        return index + sides

    def _read_from(self, index: int) -> int:
        """Take up the page, and all of the sheet that may begin on it; where these pages end."""
        page = self.pages.read(index)
        sides = self.beginnings.sides_from(page)
        if not sides:
            # A white side that is turned is not as it was made, and might hide what it is.
            drawn = page.glyphs or page.strokes or page.images
            self.loose[index + 1] = not (drawn or page.rotation)
            return index + 1
        read = [page]
        for at in range(index + 1, min(index + sides, len(self.pages))):
            following = self.pages.read(at, at - index + 1)
            if self.beginnings.sides_from(following):
                break
            read.append(following)
        sheet = self._next_sheet()
        findings = self._proofed(sheet, index, read) if sheet is not None else ()
        self.found.append(FoundSheet(index, index + len(read), findings))
        return index + len(read)

    def _proofed(
        self, sheet: PupilsSheet, index: int, pages: Sequence[ReadPage]
    ) -> tuple[Finding, ...]:
        """What is wrong with the sheet by itself, told by the pages of the file."""
        order = sheet_order(self.name, sheet.solved, sheet.lesson, sheet.layout, sheet.pupil)
        findings = proof_pages(ReadDocument(self.name, tuple(pages)), order)
        if not findings and self.known is not None:
            self.known.learn(sheet, order.expected.first_foot or "", index, pages)
        return tuple(replace(each, page=index + max(each.page, 1)) for each in findings)

    def _collation(self) -> Iterator[Finding]:
        """Every sheet begins on a front; between two there is at most a white back."""
        for each in self.found:
            if each.first % 2:
                what = "a sheet begins on the back of the one before it"
                yield Finding(self.name, each.first + 1, None, what, "a white side", "", "page")
        ends = {each.end for each in self.found}
        for number, is_white in self.loose.items():
            if not is_white:
                what = "this side belongs to no sheet"
                yield Finding(self.name, number, None, what, "", "", "page")
            elif number % 2 or number - 1 not in ends:
                what = "a white side stands where none is needed"
                yield Finding(self.name, number, None, what, "", "", "page")
        last = len(self.pages)
        if last % 2:
            what = "the last paper has no back"
            yield Finding(self.name, last, None, what, "a white side", "", "page")

    def _by_owners(self) -> Iterator[Finding]:
        """Where sheets are lost or too many: each is the one of the pupil whose name it carries,
        as far as they are in the order of the list."""
        owners = Owners(self.sheets)
        wanted = [str(each.pupil.number) for each in self.sheets]
        carried = [owners.of(self.pages.read(each.first)) for each in self.found]
        matched = align(wanted, carried)
        for sheet, at in zip(self.sheets, matched, strict=True):
            if at is None:
                yield _missing(self.name, sheet)
        taken = set(matched)
        for at, found in enumerate(self.found):
            if at not in taken:
                yield _stranger(self.name, found)
        for place, (sheet, at) in enumerate(zip(self.sheets, matched, strict=True)):
            if at is None:
                continue
            found = self.found[at]
            # At its own place it has been proofed already.
            yield from (
                found.findings
                if at == place
                else self._proofed(sheet, found.first, pages_in(self.pages, found))
            )


def _facts(first: PupilsSheet, layout: Layout) -> FileFacts:
    week = first.solved.week
    title = f"{first.lesson.lesson.title} – {said(layout, 'class', 'set')}"
    return FileFacts(title, week.title, week.fingerprint)


def _missing(name: str, sheet: PupilsSheet) -> Finding:
    line = source_of(sheet.pupil.place)
    return Finding(name, 0, None, f"sheet {sheet.pupil.number} is missing", "", line, "order")


def _stranger(name: str, found: FoundSheet) -> Finding:
    what = "this sheet is nobody's on the list, or out of its order"
    return Finding(name, found.first + 1, None, what, "", "", "order")
