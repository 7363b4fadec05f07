"""What a page is found to hold when it is read back: letters, strokes, and words made of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from typeset.proofing.form_read import ReadForm
from typeset.proofing.places import Box
from typeset.proofing.structure_read import ReadStructure

# Red, green, blue from 0 to 1; None for a pattern or a colour space that is not understood.
Rgb: TypeAlias = tuple[float, float, float]
Point: TypeAlias = tuple[float, float]
# How an empty box and a rule to write on are told among the words of a page.
OPEN_BOX = "\u25a1"
WRITING_RULE = "____"


@dataclass(frozen=True, slots=True)
class Glyph:
    """A printed letter. `order` is its turn in the drawing of the page."""

    text: str
    box: Box
    baseline: float
    size_pt: float
    font: str
    colour: Rgb | None
    order: int
    upright: bool
    # The section of a tagged page that it is drawn in: its name, and its number if any.
    tag: str = ""
    mcid: int | None = None


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line, rectangle or curve. `points` are its corners, from the page's top left corner;
    `bends` is the way it runs, in short pieces, where it is not straight between them."""

    shape: str
    box: Box
    points: tuple[Point, ...]
    thickness_pt: float
    # None where it is not stroked or not filled.
    ink: Rgb | None
    fill: Rgb | None
    stroked: bool
    filled: bool
    dashed: bool
    order: int
    tag: str = ""
    mcid: int | None = None
    bends: tuple[Point, ...] = ()

    @property
    def is_level(self) -> bool:
        """True for a level line, also one drawn as a very low rectangle."""
        if self.shape == "line":
            return self.box.height < 0.3 and self.box.width > 0.3
        return self.shape == "rect" and self.filled and self.box.height < 1.5 < self.box.width

    @property
    def is_upright(self) -> bool:
        """True for an upright line."""
        return self.shape == "line" and self.box.width < 0.3 < self.box.height


@dataclass(frozen=True, slots=True)
class Word:
    """Letters that stand together, or an open box or writing rule, with where it is printed.

    `size_pt` is that of its full-size letters (of its figures where it is a fraction alone),
    `least_pt` that of its smallest (the numbers of a stacked fraction). `bars` are the orders
    of the fraction bars that belong to it.
    """

    text: str
    page: int
    box: Box
    baseline: float
    size_pt: float
    least_pt: float
    glyphs: tuple[Glyph, ...]
    order: int
    is_fraction: bool = False
    has_letters: bool = True
    bars: frozenset[int] = frozenset()

    @property
    def is_text(self) -> bool:
        """True for letters, false for a box or rule."""
        return bool(self.glyphs)


@dataclass(frozen=True, slots=True)
class ReadPage:
    """One page as read back. `cropped` is true where not all of the page is shown.

    A small page that shares a side with others knows which `side` of the file that is (from 1;
    0 where page and side are the same), where its corner is, and the size of a side that lies
    upside down.
    """

    number: int
    width_pt: float
    height_pt: float
    rotation: int
    cropped: bool
    glyphs: tuple[Glyph, ...]
    strokes: tuple[Stroke, ...]
    words: tuple[Word, ...]
    images: tuple[Box, ...]
    side: int = 0
    corner_pt: tuple[float, float] = (0.0, 0.0)
    turned_pt: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class ReadDocument:
    """A whole document as read back."""

    name: str
    pages: tuple[ReadPage, ...]
    # What a screen reader is led through, where the file has a structure that is to be checked.
    structure: ReadStructure | None = None
    # The fields of a file that is to be filled in.
    form: ReadForm | None = None

    @property
    def words(self) -> tuple[Word, ...]:
        """All words in the order of drawing."""
        return tuple(word for page in self.pages for word in page.words)
