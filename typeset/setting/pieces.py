"""Pieces: what a block is made of. Each has a width, a stretchable height, and can be placed.

A piece is set for its width when it is made (a text is broken into lines then), so that its
heights are known before pages are made; only the height it gets is decided later.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Protocol

from typeset.drawing.shapes import BLACK, Colour, Drawing, Rule, moved
from typeset.quantities.inline import Rich
from typeset.setting.frames import ListPart, Placed, Role
from typeset.setting.paragraphs import Paragraph, TextStyle, set_paragraph
from typeset.setting.stretch import Stretch, fixed, tallest, total


class Piece(Protocol):
    """Something with a width and a stretchable height that can be placed."""

    @property
    def width_pt(self) -> float:
        """The width it was made for."""
        ...

    @property
    def height(self) -> Stretch:
        """Least, natural and greatest height."""
        ...

    @property
    def baseline_pt(self) -> float | None:
        """The first baseline, down from the top; None where there is no text to align."""
        ...

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The piece with its top left corner at (x, y), as high as given, in reading order."""
        ...


@dataclass(frozen=True, slots=True)
class TextPiece:
    """A paragraph with its role, its problem's id, and its level as a heading."""

    paragraph: Paragraph
    role: Role = Role.TEXT
    source: str = ""
    level: int = 0

    @property
    def width_pt(self) -> float:
        """The measure."""
        return self.paragraph.measure_pt

    @property
    def height(self) -> Stretch:
        """The height of the lines, fixed."""
        return fixed(self.paragraph.height_pt)

    @property
    def baseline_pt(self) -> float | None:
        """The first baseline."""
        return self.paragraph.baseline_pt

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The paragraph at the top of its height, as one item."""
        if not self.paragraph.lines:
            return ()
        shapes = tuple(moved(shape, x_pt, y_pt) for shape in self.paragraph.shapes)
        width, height = self.paragraph.width_pt, self.paragraph.height_pt
        reads_as = self.paragraph.reads_as
        box = (x_pt, y_pt, width, height)
        return (Placed(self.role, *box, shapes, self.source, reads_as, level=self.level),)


@dataclass(frozen=True, slots=True)
class DrawingPiece:
    """A finished drawing; `reads_as` of the drawing is its alternative text."""

    drawing: Drawing
    role: Role = Role.FIGURE
    source: str = ""

    @property
    def width_pt(self) -> float:
        """The width of the drawing."""
        return self.drawing.width_pt

    @property
    def height(self) -> Stretch:
        """The height of the drawing, fixed."""
        return fixed(self.drawing.height_pt)

    @property
    def baseline_pt(self) -> float | None:
        """The baseline where the drawing has one."""
        return self.drawing.baseline_pt or None

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The drawing at the top of its height, as one item."""
        drawing = self.drawing
        shapes = tuple(moved(shape, x_pt, y_pt) for shape in drawing.shapes)
        size = (drawing.width_pt, drawing.height_pt)
        return (Placed(self.role, x_pt, y_pt, *size, shapes, self.source, drawing.reads_as),)


@dataclass(frozen=True, slots=True)
class RulePiece:
    """A horizontal rule over the width: decoration, not read."""

    width_pt: float
    thickness_pt: float
    colour: Colour = BLACK

    @property
    def height(self) -> Stretch:
        """The thickness."""
        return fixed(self.thickness_pt)

    @property
    def baseline_pt(self) -> float | None:
        """None: nothing to align."""
        return None

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The rule at the top of its height."""
        middle = y_pt + self.thickness_pt / 2
        right = x_pt + self.width_pt
        rule = Rule(x_pt, middle, right, middle, self.thickness_pt, self.colour)
        return (Placed(Role.FURNITURE, x_pt, y_pt, self.width_pt, self.thickness_pt, (rule,)),)


@dataclass(frozen=True, slots=True)
class Room:
    """Empty room."""

    width_pt: float
    height: Stretch

    @property
    def baseline_pt(self) -> float | None:
        """None: nothing to align."""
        return None

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """Nothing is drawn."""
        return ()


@dataclass(frozen=True, slots=True)
class Stack:
    """Pieces one under the other; `gaps[i]` stands before `pieces[i + 1]`.

    With `on_foot` the last piece stands on the foot of a height that is more than the
    greatest: so the answer lines of questions side by side are level.
    """

    pieces: tuple[Piece, ...]
    gaps: tuple[Stretch, ...]
    on_foot: bool = False
    # The sum of pieces and gaps, added up once: whoever breaks pages asks for it often.
    height: Stretch = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        heights = (*(piece.height for piece in self.pieces), *self.gaps)
        object.__setattr__(self, "height", total(heights))

    @property
    def width_pt(self) -> float:
        """The width of the widest piece."""
        return max((piece.width_pt for piece in self.pieces), default=0.0)

    @property
    def baseline_pt(self) -> float | None:
        """That of the first piece."""
        return self.pieces[0].baseline_pt if self.pieces else None

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The pieces from the top, all equally loose."""
        looseness = self.height.looseness(height_pt)
        surplus = max(0.0, height_pt - self.height.greatest_pt) if self.on_foot else 0.0
        placed: list[Placed] = []
        top = y_pt
        for index, piece in enumerate(self.pieces):
            if index:
                top += self.gaps[index - 1].at(looseness)
            if index == len(self.pieces) - 1:
                top += surplus
            height = piece.height.at(looseness)
            placed.extend(piece.place(x_pt, top, height))
            top += height
        return tuple(placed)


@dataclass(frozen=True, slots=True)
class Columns:
    """Pieces side by side, `gap_pt` apart, their first baselines aligned where they have one."""

    cells: tuple[Piece, ...]
    gap_pt: float
    # The common baseline, how far each cell is let down to meet it, and the tallest height.
    baseline_pt: float | None = field(init=False, repr=False, compare=False)
    height: Stretch = field(init=False, repr=False, compare=False)
    _drops_pt: tuple[float, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        baselines = [cell.baseline_pt for cell in self.cells]
        common = max((each for each in baselines if each is not None), default=None)
        drops = [common - b if common is not None and b is not None else 0.0 for b in baselines]
        heights = [cell.height.plus(drop) for cell, drop in zip(self.cells, drops, strict=True)]
        object.__setattr__(self, "baseline_pt", common)
        object.__setattr__(self, "height", tallest(heights))
        object.__setattr__(self, "_drops_pt", tuple(drops))

    @property
    def width_pt(self) -> float:
        """The widths of the cells with the gaps between them."""
        return sum(cell.width_pt for cell in self.cells) + self.gap_pt * (len(self.cells) - 1)

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The cells from left to right, each of the height down to the common foot."""
        placed: list[Placed] = []
        left = x_pt
        for cell, drop in zip(self.cells, self._drops_pt, strict=True):
            placed.extend(cell.place(left, y_pt + drop, height_pt - drop))
            left += cell.width_pt + self.gap_pt
        return tuple(placed)


@dataclass(frozen=True, slots=True)
class Indented:
    """A piece moved to the right within its column."""

    body: Piece
    indent_pt: float

    @property
    def width_pt(self) -> float:
        """Indent and body."""
        return self.indent_pt + self.body.width_pt

    @property
    def height(self) -> Stretch:
        """That of the body."""
        return self.body.height

    @property
    def baseline_pt(self) -> float | None:
        """That of the body."""
        return self.body.baseline_pt

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The body, indented."""
        return self.body.place(x_pt + self.indent_pt, y_pt, height_pt)


@dataclass(frozen=True, slots=True)
class Listed:
    """The body as a part of a list entry: its label, or what belongs to it."""

    body: Piece
    part: ListPart

    @property
    def width_pt(self) -> float:
        """The body's."""
        return self.body.width_pt

    @property
    def height(self) -> Stretch:
        """The body's."""
        return self.body.height

    @property
    def baseline_pt(self) -> float | None:
        """The body's."""
        return self.body.baseline_pt

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The body's items, in a list (one more around those that it may hold)."""
        placed = self.body.place(x_pt, y_pt, height_pt)
        return tuple(replace(item, lists=(self.part, *item.lists)) for item in placed)


def text(
    rich: Rich,
    style: TextStyle,
    width_pt: float,
    role: Role = Role.TEXT,
    source: str = "",
    level: int = 0,
) -> TextPiece:
    """A text broken into lines of this width. Raises GlyphError, FitError."""
    return TextPiece(set_paragraph(rich, style, width_pt), role, source, level)


def stack(pieces: Sequence[Piece], gap: Stretch) -> Stack:
    """Pieces one under the other, the same gap between them."""
    return Stack(tuple(pieces), (gap,) * max(0, len(pieces) - 1))


def hanging(label: Piece, body: Piece, indent_pt: float) -> Columns:
    """A label (a number, a letter) in the margin left of the body, on its first baseline.

    The indent is the distance from the left of the label to the left of the body; a label
    that is wider pushes the body to the right. Both are an entry of a list.
    """
    entry = (Listed(label, ListPart.LABEL), Listed(body, ListPart.BODY))
    return Columns(entry, indent_pt - label.width_pt)
