"""The proof of a named set: whose sheet each one is, that it begins on a front, and then the
sheet itself, as strictly as one that is printed alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from io import BytesIO
from pathlib import Path
from typing import Any

from pypdf import PdfReader

from typeset.documents.class_work import PupilsSheet
from typeset.documents.layout import Layout
from typeset.proofing.align import align
from typeset.proofing.cells import Cells, cells_of, check_cuts, check_papers, numbered
from typeset.proofing.documents import sheet_order
from typeset.proofing.expected import said, source_of, text_words
from typeset.proofing.file_check import FileFacts, check_file
from typeset.proofing.finding import Finding
from typeset.proofing.folding import check_turns, lying_straight
from typeset.proofing.foot import foot_of
from typeset.proofing.on_paper import on_paper
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.papers import with_turned_backs
from typeset.proofing.proof import in_order, proof_pages, unreadable
from typeset.proofing.read_back import Unreadable, read_document

# No task sheet has more sides.
_MOST_SIDES = 20


def proof_named_set(
    pdf: Path | bytes, name: str, sheets: Sequence[PupilsSheet], layout: Layout
) -> list[Finding]:
    """Everything that is wrong with the finished sheets of a class, in the order of its list.

    `layout` is the week's own, which gives the file its title.
    """
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    try:
        findings = list(check_file(data, name, _facts(sheets[0], layout)))
        findings += _duplex(data, name, sheets[0].layout)
        document, about_papers = _read(data, name, sheets[0].layout)
        findings += about_papers
    except Unreadable as error:
        return [unreadable(name, error)]
    findings += (on_paper(each, document) for each in _about_sheets(document, sheets))
    return in_order(findings)


def _read(data: bytes, name: str, layout: Layout) -> tuple[ReadDocument, list[Finding]]:
    """The pages in the order of the list, and what is wrong with the papers they lie on: several
    side by side are cut apart, and the piles laid under each other."""
    if layout.copies == 1:
        return read_document(data, name), []
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


def _about_sheets(document: ReadDocument, sheets: Sequence[PupilsSheet]) -> Iterator[Finding]:
    """What is wrong with the sheets, told by their pages in the order of the list."""
    name, found = document.name, _sheets_in(document, _layouts(sheets))
    yield from _collation(document, found)
    pairs, strangers = _whose(found, sheets)
    yield from (_missing(name, each) for each in sheets if each.pupil.number not in pairs)
    yield from (_stranger(name, each) for each in strangers)
    for sheet in sheets:
        if own := pairs.get(sheet.pupil.number):
            yield from _proof_sheet(name, own, sheet)


@dataclass(frozen=True, slots=True)
class _Found:
    """A sheet in the file: its pages, the first of which says 'Page 1 of …'."""

    pages: tuple[ReadPage, ...]

    @property
    def first(self) -> int:
        """The number of its first page in the file."""
        return self.pages[0].number


def _facts(first: PupilsSheet, layout: Layout) -> FileFacts:
    week = first.solved.week
    title = f"{first.lesson.lesson.title} – {said(layout, 'class', 'set')}"
    return FileFacts(title, week.title, week.fingerprint)


def _duplex(data: bytes, name: str, layout: Layout) -> Iterator[Finding]:
    """The file asks the printer for both sides, flipped as the layout says (ISO 32000-1, table
    150)."""
    wanted = "/DuplexFlipLongEdge" if layout.backs == "long edge" else "/DuplexFlipShortEdge"
    preferences: Any = PdfReader(BytesIO(data)).root_object.get("/ViewerPreferences", {})
    asked = str(preferences.get_object().get("/Duplex", "no duplex") if preferences else "")
    if asked != wanted:
        what = f"the file asks the printer for '{asked.lstrip('/')}'"
        yield Finding(name, 0, None, what, wanted.lstrip("/"), "", "page")


def _layouts(sheets: Iterable[PupilsSheet]) -> tuple[Layout, ...]:
    return tuple({each.layout.name: each.layout for each in sheets}.values())


def _sheets_in(document: ReadDocument, layouts: Sequence[Layout]) -> list[_Found]:
    """The sheets of the file by what their feet say: each from its page 1 to its last, or to
    where the next one begins."""
    starts = [
        (index, sides)
        for index, page in enumerate(document.pages)
        if (sides := _begins(page, layouts))
    ]
    found = []
    for at, (index, sides) in enumerate(starts):
        limit = starts[at + 1][0] if at + 1 < len(starts) else len(document.pages)
        found.append(_Found(document.pages[index : min(index + sides, limit)]))
    return found


def _begins(page: ReadPage, layouts: Sequence[Layout]) -> int:
    """How many sides the sheet has that begins on this page; 0 where none does."""
    for layout in layouts:
        size = layout.type_size.smallest
        foot = [word.text for word in foot_of(page, layout, size)]
        for sides in range(1, _MOST_SIDES + 1):
            ending = text_words(said(layout, "sheet", "page", page="1", pages=str(sides)))
            if foot[-len(ending) :] == list(ending):
                return sides
    return 0


def _collation(document: ReadDocument, found: Sequence[_Found]) -> Iterator[Finding]:
    """Every sheet begins on a front; between two there is at most a white back."""
    for each in found:
        if each.first % 2 == 0:
            what = "a sheet begins on the back of the one before it"
            yield Finding(document.name, each.first, None, what, "a white side", "", "page")
    owned = {page.number for each in found for page in each.pages}
    ends = {each.pages[-1].number for each in found}
    for page in document.pages:
        if page.number in owned:
            continue
        if page.glyphs or page.strokes or page.images:
            what = "this side belongs to no sheet"
            yield Finding(document.name, page.number, None, what, "", "", "page")
        elif page.number % 2 or page.number - 1 not in ends:
            what = "a white side stands where none is needed"
            yield Finding(document.name, page.number, None, what, "", "", "page")
    last = document.pages[-1].number if document.pages else 0
    if last % 2:
        what = "the last paper has no back"
        yield Finding(document.name, last, None, what, "a white side", "", "page")


def _whose(
    found: Sequence[_Found], sheets: Sequence[PupilsSheet]
) -> tuple[dict[int, _Found], list[_Found]]:
    """The sheet of each pupil, by the pupil's number, and those that are nobody's.

    Where their number is right they are taken in the order of the list, so that a wrong name
    is told as such; where it is not, by the names that they carry.
    """
    if len(found) == len(sheets):
        return {s.pupil.number: f for s, f in zip(sheets, found, strict=True)}, []
    wanted = [str(each.pupil.number) for each in sheets]
    matched = align(wanted, [_owner(each, sheets) for each in found])
    pairs = {
        sheet.pupil.number: found[at]
        for sheet, at in zip(sheets, matched, strict=True)
        if at is not None
    }
    taken = {id(each) for each in pairs.values()}
    return pairs, [each for each in found if id(each) not in taken]


def _owner(found: _Found, sheets: Sequence[PupilsSheet]) -> str:
    """The number of the pupil whose name begins the sheet; empty where it is nobody's."""
    texts = tuple(word.text for word in found.pages[0].words)
    best = ("", 0)
    for each in sheets:
        line = text_words(f"{said(each.layout, 'sheet', 'name')} {each.pupil.name}")
        # 'Asha B' begins as 'Asha' does.
        if texts[: len(line)] == line and len(line) > best[1]:
            best = (str(each.pupil.number), len(line))
    return best[0]


def _proof_sheet(name: str, found: _Found, sheet: PupilsSheet) -> Iterator[Finding]:
    """What is wrong with the sheet by itself, told by the pages of the file."""
    order = sheet_order(name, sheet.solved, sheet.lesson, sheet.layout, sheet.pupil)
    before = found.first - 1
    for each in proof_pages(numbered(name, found.pages), order):
        yield replace(each, page=before + max(each.page, 1))


def _missing(name: str, sheet: PupilsSheet) -> Finding:
    line = source_of(sheet.pupil.place)
    return Finding(name, 0, None, f"sheet {sheet.pupil.number} is missing", "", line, "order")


def _stranger(name: str, found: _Found) -> Finding:
    what = "this sheet is nobody's on the list, or out of its order"
    return Finding(name, found.first, None, what, "", "", "order")
