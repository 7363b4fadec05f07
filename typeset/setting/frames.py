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


@dataclass(frozen=True, slots=True)
class Page:
    """One side."""

    width_pt: float
    height_pt: float
    placed: tuple[Placed, ...]
    tint: Colour | None = None


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
