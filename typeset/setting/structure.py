"""Finished pages as a structure to be read by: what a screen reader is led through, as data.

The tree follows the placed items, whose order is the order of reading: titles and headings,
lists of questions, paragraphs, figures. What a page draws is cut into sections, each of which
belongs to one element of the tree or is decoration (ISO 32000-1, 14.7 and 14.8; ISO 14289-1).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from typeset.drawing.shapes import Heard, Reading, Shape
from typeset.quantities.spoken import spoken
from typeset.setting.frames import Document, Field, ListPart, Page, Placed, Role

ARTIFACT = "Artifact"
_LEVELS = {Role.TITLE: 1, Role.HEADING: 2}
_MARKS = {"•": "Disc", "–": "Disc"}
_LETTERS = Reading(Heard.LETTERS)


@dataclass(frozen=True, slots=True)
class Section:
    """Shapes that are drawn in one go. `number` tells the sections of a page that belong to
    the tree; decoration has None. `is_foot` is true for what stands on every page."""

    tag: str
    shapes: tuple[Shape, ...]
    number: int | None = None
    is_foot: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a section is: on which page (from 0), and its number there."""

    page: int
    number: int


@dataclass(slots=True, eq=False)
class Element:
    """A node of the tree. `alt` stands for a picture or formula, `actual_text` for letters
    that do not read as what they mean; `item` is the placed item of a figure or a link."""

    tag: str
    children: list[Element | Mark] = field(default_factory=list)
    alt: str = ""
    actual_text: str = ""
    numbering: str = ""
    item: Placed | None = None

    def add(self, tag: str) -> Element:
        """A new last child."""
        child = Element(tag)
        self.children.append(child)
        return child


@dataclass(frozen=True, slots=True)
class Marked:
    """A placed item with its sections in the order of drawing; `link` is its element if any,
    `forms` are those of its fields."""

    item: Placed
    sections: tuple[Section, ...]
    link: Element | None = None
    forms: tuple[tuple[Field, Element], ...] = ()


@dataclass(frozen=True, slots=True)
class Structure:
    """The tree, and what each page draws."""

    root: Element
    pages: tuple[tuple[Marked, ...], ...]


def structure_of(document: Document) -> Structure:
    """The structure of a document, to be written into its file."""
    builder = _Builder()
    pages = tuple(builder.page(index, page) for index, page in enumerate(document.pages))
    return Structure(builder.root, pages)


def unmarked(document: Document) -> tuple[tuple[Marked, ...], ...]:
    """What each page draws where the file carries no structure."""
    return tuple(
        tuple(Marked(item, (Section("", item.shapes),)) for item in page.placed)
        for page in document.pages
    )


@dataclass(slots=True)
class _OpenList:
    """A list that may go on, with its last entry and that entry's body."""

    element: Element
    entry: Element | None = None
    body: Element | None = None


class _Builder:
    """Adds item after item at the end of the tree."""

    def __init__(self) -> None:
        self.root = Element("Document")
        self.open: list[_OpenList] = []
        self.page_index = 0
        self.count = 0

    def page(self, index: int, page: Page) -> tuple[Marked, ...]:
        self.page_index, self.count = index, 0
        return tuple(self._item(item) for item in page.placed)

    def _item(self, item: Placed) -> Marked:
        marked = self._drawn(item) if item.shapes else Marked(item, ())
        if not item.fields:
            return marked
        home = self._home(item)
        return replace(marked, forms=tuple((each, home.add("Form")) for each in item.fields))

    def _drawn(self, item: Placed) -> Marked:
        if item.role is Role.FURNITURE:
            return Marked(item, (Section(ARTIFACT, item.shapes, is_foot=bool(item.reads_as)),))
        home = self._home(item)
        if item.role is Role.FIGURE:
            return Marked(item, (self._figure(item, item.shapes, spoken(item.reads_as), home),))
        writer = _Writer(self, item, home)
        runs = tuple(_runs(item.shapes))
        if len(runs) == 1 and runs[0].reading.heard is Heard.FORMULA:
            return Marked(item, (self._formula(runs[0], home),))
        sections = tuple(writer.section(run) for run in runs)
        return Marked(item, sections, writer.link)

    def _home(self, item: Placed) -> Element:
        """The element that the item stands in: the body of the document, or a part of a list."""
        del self.open[len(item.lists) :]
        home = self.root
        for depth, part in enumerate(item.lists):
            if depth == len(self.open):
                self.open.append(_OpenList(home.add("L")))
            home = self._list_part(depth, part, item)
        return home

    def _list_part(self, depth: int, part: ListPart, item: Placed) -> Element:
        opened = self.open[depth]
        if part is ListPart.LABEL:
            del self.open[depth + 1 :]
            opened.entry, opened.body = opened.element.add("LI"), None
            opened.element.numbering = opened.element.numbering or _numbering(item.reads_as)
            return opened.entry.add("Lbl")
        if opened.entry is None:
            opened.entry = opened.element.add("LI")
        if opened.body is None:
            opened.body = opened.entry.add("LBody")
        return opened.body

    def _figure(self, item: Placed, shapes: Sequence[Shape], alt: str, home: Element) -> Section:
        figure = home.add("Figure")
        figure.alt, figure.item = alt, item
        return self.mark(figure, shapes)

    def _formula(self, run: _Run, home: Element) -> Section:
        """An equation on lines of its own, in no paragraph."""
        formula = home.add("Formula")
        formula.alt = run.reading.text
        return self.mark(formula, run.shapes)

    def mark(self, element: Element, shapes: Sequence[Shape]) -> Section:
        """The shapes as the next section of the page, belonging to this element."""
        number = self.count
        self.count += 1
        element.children.append(Mark(self.page_index, number))
        return Section(element.tag, tuple(shapes), number)

    def figure_within(self, item: Placed, run: _Run, home: Element) -> Section:
        """A figure that stands inside another item."""
        return self._figure(item, run.shapes, run.reading.text, home)


@dataclass(frozen=True, slots=True)
class _Run:
    """Neighbouring shapes of an item that are heard as one."""

    reading: Reading
    shapes: tuple[Shape, ...]


class _Writer:
    """Writes an item of text: a paragraph or heading with its spans, formulas and links."""

    def __init__(self, builder: _Builder, item: Placed, home: Element) -> None:
        self.builder = builder
        self.item = item
        self.home = home
        self.block: Element | None = None
        self.link: Element | None = None

    def section(self, run: _Run) -> Section:
        """The run as a section, in the element that it belongs to."""
        reading = run.reading
        if reading.heard is Heard.SILENT:
            return Section(ARTIFACT, run.shapes)
        if reading.heard is Heard.FIGURE:
            self.block = None
            return self.builder.figure_within(self.item, run, self.home)
        if reading.new_line:
            self.block = None
        within = self._within()
        if reading.heard is Heard.WORDS:
            within = within.add("Span")
            within.actual_text = reading.text
        elif reading.heard is Heard.FORMULA:
            within = within.add("Formula")
            within.alt = reading.text
        return self.builder.mark(within, run.shapes)

    def _within(self) -> Element:
        """The open block, or the link in it where the item leads somewhere."""
        if self.block is None:
            is_label = self.home.tag == "Lbl"
            self.block = self.home if is_label else self.home.add(_block_tag(self.item))
            if self.item.leads_to:
                self.link = self.block.add("Link")
                self.link.item = self.item
                self.block = self.link
        return self.block


def _block_tag(item: Placed) -> str:
    if item.role in _LEVELS:
        return f"H{item.level or _LEVELS[item.role]}"
    return "P"


def _numbering(label: str) -> str:
    if label.isdigit():
        return "Decimal"
    if len(label) == 1 and label.isupper():
        return "UpperAlpha"
    return _MARKS.get(label, "")


def _runs(shapes: Sequence[Shape]) -> Iterator[_Run]:
    """The shapes cut where what is heard changes, or begins anew."""
    run: list[Shape] = []
    current = _LETTERS
    for shape in shapes:
        reading = shape.reading or _LETTERS
        if run and (reading.begins or reading.heard is not current.heard):
            yield _Run(current, tuple(run))
            run = []
        if not run:
            current = reading
        run.append(shape)
    if run:
        yield _Run(current, tuple(run))
