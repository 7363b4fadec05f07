"""Finished pages as data: everything is placed, and drawing them is a plain loop."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from typeset.drawing.shapes import Colour, Shape


class Role(Enum):
    """What a placed item is, for tests, proof and (later) the structure of the PDF."""

    TITLE = "title"
    HEADING = "heading"
    INSTRUCTION = "instruction"
    QUESTION = "question"
    WORKING = "working"
    ANSWER = "answer"
    ANSWER_SPACE = "answer space"
    FIGURE = "figure"
    TEXT = "text"
    # Running head and foot, page numbers, rules: not part of what is read.
    FURNITURE = "furniture"


class ListPart(Enum):
    """Where an item stands in a list: a label begins the next entry, a body belongs to it."""

    LABEL = "label"
    BODY = "body"


class FieldKind(Enum):
    """What is done in a field."""

    TEXT = "text"
    TICK = "tick"


@dataclass(frozen=True, slots=True)
class Room:
    """Where an answer space can be written in, from the corner of its item.

    `name` says what it is for ('answer', 'working'); `label` and `unit` are printed beside it.
    """

    kind: FieldKind
    x_pt: float
    y_pt: float
    width_pt: float
    height_pt: float
    name: str
    label: str = ""
    unit: str = ""
    several_lines: bool = False


@dataclass(frozen=True, slots=True)
class Field:
    """A field to type in or to tick, from the page's top left corner.

    `name` is its path, unlike any other's of the document ('tuesday.q4.answer'); `tooltip`
    says what it is for; `size_pt` is that of what is typed.
    """

    kind: FieldKind
    name: str
    tooltip: str
    x_pt: float
    y_pt: float
    width_pt: float
    height_pt: float
    size_pt: float
    several_lines: bool = False


@dataclass(frozen=True, slots=True)
class Placed:
    """An item on a page: its box from the page's top left corner, and its shapes (same origin)."""

    role: Role
    x_pt: float
    y_pt: float
    width_pt: float
    height_pt: float
    shapes: tuple[Shape, ...]
    # The id of the problem it belongs to, empty for furniture and headings.
    source: str = ""
    # What it reads as: plain text, or a figure's alternative text.
    reads_as: str = ""
    # A name that links and bookmarks may lead to, and the name that this item leads to.
    anchor: str = ""
    leads_to: str = ""
    # Of a heading: 1 is a title, 2 its parts; 0 stands for what the role usually is.
    level: int = 0
    # The lists that it stands in, the outermost first.
    lists: tuple[ListPart, ...] = ()
    # Of an answer space: where it is written in by hand, and the fields where one can type.
    rooms: tuple[Room, ...] = ()
    fields: tuple[Field, ...] = ()


@dataclass(frozen=True, slots=True)
class Page:
    """One side. `upside_down` is how it lies in the file, for a printer that turns the paper
    over its long edge."""

    width_pt: float
    height_pt: float
    placed: tuple[Placed, ...]
    tint: Colour | None = None
    upside_down: bool = False


@dataclass(frozen=True, slots=True)
class Bookmark:
    """An entry of the outline that a reader shows beside the pages; `level` 0 is the outermost."""

    title: str
    anchor: str
    level: int = 0


class Numbering(Enum):
    """How a reader counts the pages of a part."""

    ARABIC = "ARABIC"
    ROMAN = "ROMAN_LOWER"


@dataclass(frozen=True, slots=True)
class PageLabels:
    """The numbering of the pages from `first` (counted from 0) on: a prefix and numbers from 1."""

    first: int
    prefix: str = ""
    numbering: Numbering = Numbering.ARABIC


class Duplex(Enum):
    """How both sides of the paper are to be printed (ISO 32000-1, table 150)."""

    NO_MATTER = ""
    ONE_SIDE = "Simplex"
    LONG_EDGE = "DuplexFlipLongEdge"
    SHORT_EDGE = "DuplexFlipShortEdge"


@dataclass(frozen=True, slots=True)
class Document:
    """Finished pages with what the file itself says."""

    title: str
    subject: str
    pages: tuple[Page, ...]
    # The size of the body type, for the summary line.
    type_size_pt: float
    # Digest of content and layout; goes into the file's metadata.
    fingerprint: str = ""
    language: str = "en-GB"
    bookmarks: tuple[Bookmark, ...] = ()
    labels: tuple[PageLabels, ...] = ()
    duplex: Duplex = Duplex.NO_MATTER
    # The file claims to be accessible (PDF/UA-1) and carries its structure: for what is read
    # from its first page to its last, not for papers that are cut or folded.
    tagged: bool = False
