"""A tagged document is read to a listener as it is printed, and nothing else is read.

Everything that is drawn belongs to the structure or is decoration; the structure follows the
page; and each text that stands for something drawn (the alternative text of a figure, the
words for a fraction or an equation) is what the core and the letters on the page say: so no
answer can hide there.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise, zip_longest

from typeset.drawing.figure_reading import figure_reading
from typeset.proofing.account import Account, take_account
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.opened import opened
from typeset.proofing.page_marks import (
    OPEN_BOX,
    WRITING_RULE,
    Glyph,
    ReadDocument,
    ReadPage,
    Stroke,
    Word,
)
from typeset.proofing.read_back import Unreadable
from typeset.proofing.sections_read import Section, sections_of
from typeset.proofing.structure_read import (
    HEADINGS,
    Mark,
    ReadElement,
    ReadStructure,
)
from typeset.proofing.words import words_of
from typeset.quantities.spoken import BLANK, TICK_BOX, spoken, spoken_formula

_ARTIFACT = "Artifact"


def check_structure(
    document: ReadDocument, account: Account, structure: ReadStructure
) -> Iterator[Finding]:
    """Findings about the structure as far as it tells these pages of a tagged document."""
    check = _Check(document, account, structure)
    yield from check.texts()
    if structure.sections:
        yield from check.headings()
        yield from check.pages()


def check_structure_of_part(
    document: ReadDocument, account: Account, structure: ReadStructure
) -> Iterator[Finding]:
    """The same for some of the pages, where `check_structure_around` looks at what is of the
    whole. `structure` is what is told on them."""
    check = _Check(document, account, structure)
    yield from check.texts()
    yield from check.pages()


def check_structure_around(name: str, structure: ReadStructure) -> Iterator[Finding]:
    """Findings about the structure that its parts do not tell: the tree itself, elements
    without a section of their own, and how the parts follow each other."""
    yield from faults_of(ReadDocument(name, (), structure))
    outer = [each for each in structure.elements if not each.marks]
    yield from _Check(ReadDocument(name, ()), take_account((), ()), ReadStructure(outer)).texts()
    if structure.sections:
        yield from _headings(name, [each for each in structure.elements if each.marks])
    for (before, _), (after, _) in pairwise(structure.sections):
        if after < before:
            what = "a screen reader goes through the pages in another order than they are printed"
            yield Finding(name, after + 1, None, what, "", "", "structure")
            return


def with_structure(document: ReadDocument, data: bytes) -> ReadDocument:
    """The document with the structure of its file. Raises Unreadable."""
    try:
        return replace(document, structure=opened(data).structure)
    except Exception as error:
        # A damaged or foreign file can make the reader fail in any way.
        raise Unreadable(f"{type(error).__name__}: {error}") from error


def faults_of(document: ReadDocument) -> Iterator[Finding]:
    """What is wrong with the structure of a whole file as a tree."""
    for fault in document.structure.faults if document.structure is not None else ():
        yield Finding(document.name, 0, None, fault, "", "", "structure")


@dataclass(frozen=True)
class _Check:
    document: ReadDocument
    account: Account
    structure: ReadStructure

    @cached_property
    def elements(self) -> tuple[ReadElement, ...]:
        """The elements that are drawn on these pages."""
        pages = {page.number for page in self.document.pages}
        return tuple(each for each in self.structure.elements if _page_of(each) in pages)

    @cached_property
    def marks(self) -> dict[Mark, ReadElement]:
        """The element of every section."""
        return self.structure.marks

    @cached_property
    def content(self) -> dict[Mark, Section]:
        """What is drawn in every section, page by page in the order of drawing."""
        return sections_of(self.document.pages)

    def finding(self, what: str, should: str = "", page: int = 0) -> Finding:
        return Finding(self.document.name, page, None, what, should, "", "structure")

    def pages(self) -> Iterator[Finding]:
        """Everything about the sections of these pages."""
        yield from self.drawn()
        yield from self.order()
        yield from self.parts()
        yield from self.feet()
        yield from self.figures()

    def drawn(self) -> Iterator[Finding]:
        """Nothing is drawn outside the structure, and each section under its own name."""
        lost = {page for (page, _), each in self.content.items() if each.tags - {self._tag(each)}}
        for page in self.document.pages:
            strays = {each.tag for each in _drawn_on(page) if each.mcid is None} - {_ARTIFACT}
            if strays or page.number - 1 in lost:
                what = "something is drawn that a screen reader does not find"
                yield self.finding(what, "it should belong to the structure", page.number)
            if page.images:
                what = "a picture belongs to no figure of the structure"
                yield self.finding(what, page=page.number)

    def _tag(self, section: Section) -> str | None:
        owner = self.marks.get(section.mark)
        return owner.tag if owner is not None else None

    def order(self) -> Iterator[Finding]:
        """The structure goes through the pages in the order of their drawing."""
        pages = {page.number - 1 for page in self.document.pages}
        read = [mark for mark in self.structure.sections if mark[0] in pages]
        for told, seen in zip_longest(read, self.content):
            if told != seen:
                where = (seen or told or (0, 0))[0] + 1
                what = "a screen reader goes through the page in another order than it is printed"
                yield self.finding(what, page=where)
                return

    def headings(self) -> Iterator[Finding]:
        """The first heading is a title, and no level is skipped on the way down."""
        yield from _headings(self.document.name, self.elements)

    def parts(self) -> Iterator[Finding]:
        """Titles, headings, numbers, figures and text are told as what they are."""
        for index, passage in enumerate(self.account.passages):
            words = self.account.words_of(index)
            in_label = True
            for word in words:
                owner = self._owner(word)
                # A text may begin with the label of its entry, but not be one.
                in_label &= owner is not None and "Lbl" in owner.path and word is not words[-1]
                if owner is None or not _fits(passage.part, owner, in_label):
                    tag = owner.tag if owner is not None else "decoration"
                    what = f"{passage.about} is told to a screen reader as '{tag}'"
                    yield self.finding(what, f"it is {passage.part.value}", word.page)
                    break

    def feet(self) -> Iterator[Finding]:
        """What is no part of the text, such as a foot line, is decoration."""
        passages = range(len(self.account.passages))
        told = {(word.page, word.order) for i in passages for word in self.account.words_of(i)}
        for page in self.document.pages:
            for word in page.words:
                if word.is_text and (word.page, word.order) not in told and self._owner(word):
                    what = f"a screen reader is told '{word.text}', which is no part of the text"
                    yield self.finding(what, page=page.number)
                    break

    def _owner(self, word: Word) -> ReadElement | None:
        """The element that a word begins in."""
        first = next((each for each in word.glyphs if each.order == word.order), None)
        if first is not None:
            return self._element(word.page, first)
        return self._element(word.page, self._strokes.get((word.page, word.order)))

    def _element(self, page: int, drawn: Glyph | Stroke | None) -> ReadElement | None:
        if drawn is None or drawn.mcid is None:
            return None
        return self.marks.get((page - 1, drawn.mcid))

    @cached_property
    def _strokes(self) -> dict[tuple[int, int], Stroke]:
        pages = self.document.pages
        return {(page.number, each.order): each for page in pages for each in page.strokes}

    def figures(self) -> Iterator[Finding]:
        """Every figure is told by its own data, and no other text stands for it."""
        told = [each for each in self.elements if each.tag == "Figure"]
        wanted = [
            (passage.about, spoken(figure_reading(passage.figure, passage.show)))
            for passage in self.account.passages
            if passage.figure is not None
        ]
        for element, figure in zip_longest(told, wanted):
            if figure is None:
                what = f"a figure that belongs to nothing is told as '{element.alt[:80]}'"
                yield self.finding(what)
            elif element is None:
                yield self.finding(f"the figure of {figure[0]} is not told")
            elif element.alt != figure[1]:
                what = f"the figure of {figure[0]} is told as '{element.alt[:120]}'"
                yield self.finding(what, f"'{figure[1][:120]}'", _page_of(element))

    def texts(self) -> Iterator[Finding]:
        """Words stand only for what is no letters, and say what is drawn there."""
        outer = [each for each in self.structure.elements if not each.marks]
        for each in (*self.elements, *outer):
            said, other = each.alt, each.actual_text
            if each.tag == "Span":
                said, other = other, said
            if each.tag == "Figure":
                said = ""
            wanted = tuple(_heard(each, self.content))
            if other or (said and not wanted):
                what = f"a screen reader is told '{(other or said)[:80]}' for '{each.tag}'"
                yield self.finding(what, "nothing", _page_of(each))
            elif wanted and _squeezed(said) not in map(_squeezed, wanted):
                what = f"a screen reader is told '{said[:80]}'"
                yield self.finding(what, f"'{wanted[0][:80]}'", _page_of(each))


def _headings(name: str, elements: Sequence[ReadElement]) -> Iterator[Finding]:
    before = 0
    for each in elements:
        if each.tag in HEADINGS:
            level = HEADINGS.index(each.tag) + 1
            if level > before + 1:
                what = f"a heading of level {level} follows one of level {before}"
                told = what if before else f"the first heading is of level {level}"
                yield Finding(name, 0, None, told, "", "", "structure")
            before = level


def _drawn_on(page: ReadPage) -> list[Glyph | Stroke]:
    return [*page.glyphs, *page.strokes]


def _fits(part: Part, owner: ReadElement, in_label: bool) -> bool:
    """True where an element may hold a word of such a part."""
    path = owner.path
    held = next((tag for tag in reversed(path) if tag not in ("Span", "Link")), "")
    match part:
        case Part.TITLE:
            return held == "H1"
        case Part.HEADING:
            return held in HEADINGS[1:]
        case Part.NUMBER:
            return held == "Lbl"
        case Part.FIGURE:
            return held == "Figure"
        case _:
            return held in ("P", "Formula") or (held == "Lbl" and in_label)


def _heard(element: ReadElement, content: Mapping[Mark, Section]) -> Iterator[str]:
    """What may stand for the element, by what is drawn in it; nothing where letters do."""
    if element.tag not in ("Span", "Formula"):
        return
    drawn = [content[mark] for mark in element.marks if mark in content]
    glyphs = [glyph for section in drawn for glyph in section.glyphs]
    strokes = [stroke for section in drawn for stroke in section.strokes]
    text = _text(glyphs, strokes)
    if element.tag == "Formula":
        yield spoken_formula(text)
    elif not glyphs and text in ("", WRITING_RULE, OPEN_BOX):
        # A rule, a box, or the guides of a room to write in.
        yield from (BLANK, TICK_BOX) if text == OPEN_BOX else (BLANK,)
    elif not glyphs and set(text.split()) <= {WRITING_RULE}:
        yield BLANK
    else:
        yield spoken(text)


def _text(glyphs: Sequence[Glyph], strokes: Sequence[Stroke]) -> str:
    return " ".join(word.text for word in words_of(glyphs, strokes, 0))


def _squeezed(text: str) -> str:
    """The text without its spaces, which letters on a page tell only by their distance."""
    return "".join(text.split())


def _page_of(element: ReadElement) -> int:
    return element.marks[0][0] + 1 if element.marks else 0
