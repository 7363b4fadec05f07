"""What leads somewhere in a document: bookmarks, links and page labels, exactly as expected.

Where they lead is looked up on the page itself: the words that stand there must be those that
the bookmark or the line of the contents names.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject

from typeset.proofing.finding import Finding
from typeset.proofing.opened import opened
from typeset.proofing.page_marks import ReadDocument, ReadPage, Word
from typeset.proofing.places import Box
from typeset.proofing.read_back import Unreadable

# A place may lie a little over the letters that it leads to.
_SLACK_PT = 1.0
_MARK_KEYS = {"/Title", "/Parent", "/Prev", "/Next", "/First", "/Last", "/Count", "/Dest"}
_LINK_KEYS = {"/Type", "/Subtype", "/Rect", "/Border", "/Dest", "/Contents"}
_LINK_KEYS |= {"/F", "/StructParent"}
# Printed with its page, neither hidden nor locked (ISO 32000-1, table 165).
_PRINTED = 4
# More bookmarks than a year of weeks has: the list runs in a circle.
_MOST_MARKS = 2000


@dataclass(frozen=True, slots=True)
class Target:
    """A place in the document: its page, counted from 1, and the words that begin there."""

    page: int
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """A bookmark: its title, how deep it stands, and where it leads."""

    title: str
    level: int
    target: Target


@dataclass(frozen=True, slots=True)
class Line:
    """A line that leads somewhere: its words, all of which can be tapped, and where it leads."""

    words: tuple[str, ...]
    target: Target


@dataclass(frozen=True, slots=True)
class Navigation:
    """All that leads somewhere, in order; `labels` are what a reader calls the pages."""

    marks: tuple[Mark, ...] = ()
    lines: tuple[Line, ...] = ()
    labels: tuple[str, ...] = ()

    @property
    def texts(self) -> frozenset[str]:
        """Every title of a bookmark."""
        return frozenset(mark.title for mark in self.marks)


def check_navigation(
    data: bytes, document: ReadDocument, expected: Navigation
) -> Iterator[Finding]:
    """Findings about bookmarks, links and page labels. Raises Unreadable."""
    try:
        yield from _check(_Reader(opened(data).reader, document), expected)
    except RecursionError:
        raise Unreadable("its bookmarks point at each other in a circle") from None
    except Exception as error:
        raise Unreadable(f"{type(error).__name__}: {error}".rstrip(": ")) from error


def _check(reader: _Reader, expected: Navigation) -> Iterator[Finding]:
    yield from _check_marks(reader, expected.marks)
    yield from _check_lines(reader, expected.lines)
    yield from _check_labels(reader, expected.labels)
    yield from _check_strays(reader)


@dataclass(frozen=True, slots=True)
class _Place:
    """Where something leads: a page from 1 (0 for none), and how far down it."""

    page: int
    down_pt: float


@dataclass(slots=True)
class _Reader:
    pdf: PdfReader
    document: ReadDocument
    numbers: dict[int, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for number, page in enumerate(self.pdf.pages, 1):
            if page.indirect_reference is not None:
                self.numbers[page.indirect_reference.idnum] = number

    @property
    def catalogue(self) -> Any:
        """The root of the file."""
        return self.pdf.trailer["/Root"].get_object()

    def finding(self, page: int, what: str, should: str = "", box: Box | None = None) -> Finding:
        place = box.place_mm if box else None
        return Finding(self.document.name, page, place, what, should, "", "link")

    def place(self, destination: Any) -> _Place:
        """Where an explicit destination leads; page 0 for anything else."""
        if not isinstance(destination, ArrayObject) or len(destination) < 4:
            return _Place(0, 0.0)
        page, kind, _left, top = list.__iter__(destination[:4])
        number = self.numbers.get(page.idnum, 0) if isinstance(page, IndirectObject) else 0
        if number == 0 or kind != "/XYZ" or not isinstance(top, int | float):
            return _Place(number, 0.0)
        return _Place(number, self.document.pages[number - 1].height_pt - float(top))

    def amiss(self, place: _Place, target: Target) -> str:
        """How a place differs from the target; empty where it does not."""
        if place.page != target.page:
            return f"leads to page {place.page}" if place.page else "leads to no page"
        page = self.document.pages[place.page - 1]
        below = [word for word in page.words if word.box.bottom > place.down_pt + _SLACK_PT]
        found = tuple(word.text for word in below[: len(target.words)])
        return "" if found == target.words else f"leads to '{' '.join(found[:6])}'"


def _check_marks(reader: _Reader, expected: Sequence[Mark]) -> Iterator[Finding]:
    found = list(_marks(reader))
    for number, (item, mark) in enumerate(zip_longest(found, expected), 1):
        if item is None:
            yield reader.finding(0, f"bookmark {number} '{mark.title}' is missing")
            continue
        title, level, entry = item
        if mark is None:
            yield reader.finding(0, f"bookmark {number} '{title}' belongs to nothing")
        elif title != mark.title:
            yield reader.finding(0, f"bookmark {number} is '{title}'", f"'{mark.title}'")
        elif level != mark.level:
            yield reader.finding(0, f"the bookmark '{title}' stands at level {level}")
        elif strange := sorted(set(entry) - _MARK_KEYS):
            yield reader.finding(0, f"the bookmark '{title}' does more than lead ({strange[0]})")
        elif told := reader.amiss(reader.place(entry.get("/Dest")), mark.target):
            should = f"page {mark.target.page}, '{' '.join(mark.target.words[:6])}'"
            yield reader.finding(0, f"the bookmark '{title}' {told}", should)


def _marks(reader: _Reader) -> Iterator[tuple[str, int, DictionaryObject]]:
    """Title, level and entry of every bookmark, in the order in which they are shown."""
    outlines = reader.catalogue.get("/Outlines")
    root = outlines.get_object() if outlines is not None else DictionaryObject()
    open_items = [(root.get("/First"), 0)]
    count = 0
    while open_items and count < _MOST_MARKS:
        reference, level = open_items.pop()
        entry = reference.get_object() if reference is not None else None
        if not isinstance(entry, DictionaryObject):
            continue
        count += 1
        yield str(entry.get("/Title", "")), level, entry
        open_items.append((entry.get("/Next"), level))
        open_items.append((entry.get("/First"), level + 1))


def _check_lines(reader: _Reader, expected: Sequence[Line]) -> Iterator[Finding]:
    """Links that lead to the same place belong together: their words are those of one line."""
    groups: dict[tuple[int, _Place], list[Word]] = {}
    for page, link in _links(reader):
        box = _box(link, page)
        words = [word for word in page.words if box is not None and box.holds(*word.box.centre)]
        place = reader.place(link.get("/Dest"))
        told = str(link.get("/Contents", ""))
        is_plain = not set(link) - _LINK_KEYS and link.get("/F", _PRINTED) == _PRINTED
        if link.get("/Subtype") != "/Link" or not is_plain or place.page == 0:
            what = "something on the page is neither text nor a link within the document"
            yield reader.finding(page.number, what, "", box)
        elif told and "".join(told.split()) != "".join(word.text for word in words):
            what = f"a link on '{' '.join(word.text for word in words)}' is told as '{told[:80]}'"
            yield reader.finding(page.number, what, "", box)
        else:
            groups.setdefault((page.number, place), []).extend(words)
    for item, line in zip_longest(groups.items(), expected):
        if item is None:
            yield reader.finding(0, f"nothing leads on from '{' '.join(line.words)}'")
            continue
        (number, place), words = item
        texts = tuple(word.text for word in sorted(words, key=lambda each: each.order))
        if line is None:
            yield reader.finding(number, f"a link on '{' '.join(texts)}' belongs to nothing")
        elif texts != line.words:
            what = f"a link lies on '{' '.join(texts)}'"
            yield reader.finding(number, what, f"'{' '.join(line.words)}'")
        elif told := reader.amiss(place, line.target):
            should = f"page {line.target.page}, '{' '.join(line.target.words[:6])}'"
            yield reader.finding(number, f"the line '{' '.join(texts)}' {told}", should)


def _links(reader: _Reader) -> Iterator[tuple[ReadPage, DictionaryObject]]:
    """Everything that lies over a page, but for the fields of a form (field_check.py)."""
    form = reader.document.form
    fields = {field.number for field in form.fields} if form is not None else set()
    for number, page in enumerate(reader.pdf.pages, 1):
        for each in list.__iter__(page.get("/Annots", ArrayObject())):
            link = each.get_object()
            is_field = isinstance(each, IndirectObject) and each.idnum in fields
            if isinstance(link, DictionaryObject) and not is_field:
                yield reader.document.pages[number - 1], link


def _box(link: DictionaryObject, page: ReadPage) -> Box | None:
    """The place of a link from the page's top left corner."""
    corners = link.get("/Rect")
    if not isinstance(corners, ArrayObject) or len(corners) != 4:
        return None
    x1, y1, x2, y2 = (float(each) for each in corners)
    high = page.height_pt
    return Box(min(x1, x2), high - max(y1, y2), max(x1, x2), high - min(y1, y2))


def _check_labels(reader: _Reader, expected: Sequence[str]) -> Iterator[Finding]:
    """What a reader calls the pages; plain numbers where nothing is said."""
    has_labels = "/PageLabels" in reader.catalogue
    if has_labels != bool(expected):
        what = "the pages have labels" if has_labels else "the pages have no labels"
        yield reader.finding(0, what)
        return
    pairs = zip(reader.pdf.page_labels, expected, strict=False)
    for number, (label, wanted) in enumerate(pairs, 1):
        if label != wanted:
            yield reader.finding(number, f"the page is called '{label}'", f"'{wanted}'")
            return


def _check_strays(reader: _Reader) -> Iterator[Finding]:
    """No bookmark or link is in the file that no reader shows."""
    shown = sum(1 for _ in _marks(reader)) + sum(1 for _ in _links(reader))
    held = sum(1 for each in _objects(reader.pdf) if "/Dest" in each or "/Dests" in each)
    if held > shown:
        yield reader.finding(0, "the file holds a bookmark or link that nothing shows")


def _objects(pdf: PdfReader) -> Iterator[DictionaryObject]:
    for generation, numbers in pdf.xref.items():
        for number in numbers:
            each = pdf.get_object(IndirectObject(number, generation, pdf))
            if generation != 65535 and isinstance(each, DictionaryObject):
                yield each
