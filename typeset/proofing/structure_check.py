"""A tagged document is read to a listener as it is printed, and nothing else is read.

Everything that is drawn belongs to the structure or is decoration; the structure follows the
page; and each text that stands for something drawn (the alternative text of a figure, the
words for a fraction or an equation) is what the core and the letters on the page say: so no
answer can hide there.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from io import BytesIO
from itertools import zip_longest

from pypdf import PdfReader

from typeset.drawing.figure_reading import figure_reading
from typeset.proofing.account import Account
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import (
    OPEN_BOX,
    WRITING_RULE,
    Glyph,
    ReadDocument,
    ReadPage,
    Stroke,
)
from typeset.proofing.read_back import Unreadable
from typeset.proofing.structure_read import (
    HEADINGS,
    Mark,
    ReadElement,
    ReadStructure,
    read_structure,
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
        yield from check.drawn()
        yield from check.order()
        yield from check.headings()
        yield from check.parts()
        yield from check.feet()
        yield from check.figures()


def with_structure(document: ReadDocument, data: bytes) -> ReadDocument:
    """The document with the structure of its file. Raises Unreadable."""
    try:
        return replace(document, structure=read_structure(PdfReader(BytesIO(data))))
    except Exception as error:
        # A damaged or foreign file can make the reader fail in any way.
        raise Unreadable(f"{type(error).__name__}: {error}") from error


def faults_of(document: ReadDocument) -> Iterator[Finding]:
    """What is wrong with the structure of a whole file as a tree."""
    for fault in document.structure.faults if document.structure is not None else ():
        yield Finding(document.name, 0, None, fault, "", "", "structure")


@dataclass(frozen=True, slots=True)
class _Check:
    document: ReadDocument
    account: Account
    structure: ReadStructure

    @property
    def elements(self) -> Iterator[ReadElement]:
        """The elements that are drawn on these pages."""
        pages = {page.number for page in self.document.pages}
        for each in self.structure.elements:
            if _page_of(each) in pages:
                yield each

    def finding(self, what: str, should: str = "", page: int = 0) -> Finding:
        return Finding(self.document.name, page, None, what, should, "", "structure")

    def drawn(self) -> Iterator[Finding]:
        """Nothing is drawn outside the structure, and each section under its own name."""
        marks = self.structure.marks
        for page in self.document.pages:
            for each in _drawn_on(page):
                owner = marks.get((page.number - 1, each.mcid)) if each.mcid is not None else None
                is_silent = each.tag == _ARTIFACT and each.mcid is None
                if not is_silent and (owner is None or owner.tag != each.tag):
                    what = "something is drawn that a screen reader does not find"
                    yield self.finding(what, "it should belong to the structure", page.number)
                    break
            if page.images:
                what = "a picture belongs to no figure of the structure"
                yield self.finding(what, page=page.number)

    def order(self) -> Iterator[Finding]:
        """The structure goes through the pages in the order of their drawing."""
        pages = {page.number - 1 for page in self.document.pages}
        read = [mark for mark in self.structure.sections if mark[0] in pages]
        drawn: dict[Mark, None] = {}
        for page in self.document.pages:
            for each in sorted(_drawn_on(page), key=lambda each: each.order):
                if each.mcid is not None:
                    drawn.setdefault((page.number - 1, each.mcid))
        for told, seen in zip_longest(read, drawn):
            if told != seen:
                where = (seen or told or (0, 0))[0] + 1
                what = "a screen reader goes through the page in another order than it is printed"
                yield self.finding(what, page=where)
                return

    def headings(self) -> Iterator[Finding]:
        """The first heading is a title, and no level is skipped on the way down."""
        before = 0
        for each in self.elements:
            if each.tag in HEADINGS:
                level = HEADINGS.index(each.tag) + 1
                if level > before + 1:
                    what = f"a heading of level {level} follows one of level {before}"
                    yield self.finding(what if before else f"the first heading is of level {level}")
                before = level

    def parts(self) -> Iterator[Finding]:
        """Titles, headings, numbers, figures and text are told as what they are."""
        owners = self._owners()
        for index, passage in enumerate(self.account.passages):
            words = self.account.words_of(index)
            in_label = True
            for word in words:
                owner = owners.get((word.page, word.order))
                # A text may begin with the label of its entry, but not be one.
                in_label &= owner is not None and "Lbl" in owner.path and word is not words[-1]
                if owner is None or not _fits(passage.part, owner, in_label):
                    tag = owner.tag if owner is not None else "decoration"
                    what = f"{passage.about} is told to a screen reader as '{tag}'"
                    yield self.finding(what, f"it is {passage.part.value}", word.page)
                    break

    def feet(self) -> Iterator[Finding]:
        """What is no part of the text, such as a foot line, is decoration."""
        owners, passages = self._owners(), range(len(self.account.passages))
        told = {(word.page, word.order) for i in passages for word in self.account.words_of(i)}
        for page in self.document.pages:
            for word in page.words:
                at = (word.page, word.order)
                if word.is_text and at not in told and at in owners:
                    what = f"a screen reader is told '{word.text}', which is no part of the text"
                    yield self.finding(what, page=page.number)
                    break

    def _owners(self) -> dict[tuple[int, int], ReadElement]:
        """The element of everything drawn, by its page and turn."""
        marks = self.structure.marks
        return {
            (page.number, each.order): marks[mark]
            for page in self.document.pages
            for each in _drawn_on(page)
            if each.mcid is not None and (mark := (page.number - 1, each.mcid)) in marks
        }

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
        content = self._content()
        inner = list(self.elements)
        outer = [each for each in self.structure.elements if not each.marks]
        for each in (*inner, *outer):
            said, other = each.alt, each.actual_text
            if each.tag == "Span":
                said, other = other, said
            if each.tag == "Figure":
                said = ""
            wanted = tuple(_heard(each, content))
            if other or (said and not wanted):
                what = f"a screen reader is told '{(other or said)[:80]}' for '{each.tag}'"
                yield self.finding(what, "nothing", _page_of(each))
            elif wanted and _squeezed(said) not in map(_squeezed, wanted):
                what = f"a screen reader is told '{said[:80]}'"
                yield self.finding(what, f"'{wanted[0][:80]}'", _page_of(each))

    def _content(self) -> _Content:
        """The letters and strokes of every section."""
        content: _Content = defaultdict(lambda: ([], []))
        for page in self.document.pages:
            for glyph in page.glyphs:
                if glyph.mcid is not None:
                    content[page.number - 1, glyph.mcid][0].append(glyph)
            for stroke in page.strokes:
                if stroke.mcid is not None:
                    content[page.number - 1, stroke.mcid][1].append(stroke)
        return content


def _drawn_on(page: ReadPage) -> list[Glyph | Stroke]:
    return [*page.glyphs, *page.strokes]


_Content = dict[Mark, tuple[list[Glyph], list[Stroke]]]


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


def _heard(element: ReadElement, content: _Content) -> Iterator[str]:
    """What may stand for the element, by what is drawn in it; nothing where letters do."""
    if element.tag not in ("Span", "Formula"):
        return
    glyphs = [glyph for mark in element.marks for glyph in content[mark][0]]
    strokes = [stroke for mark in element.marks for stroke in content[mark][1]]
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
