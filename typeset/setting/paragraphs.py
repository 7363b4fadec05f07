"""A text set as a paragraph: lines of a measure on an even leading."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from typeset.drawing.fonts import TypeFamily, family
from typeset.drawing.inline_maths import Atom, lay_out_atoms
from typeset.drawing.shapes import BLACK, Colour, Drawing, Face, Shape, TextRun, moved
from typeset.quantities.inline import Rich, plain
from typeset.setting.boxes import Box, boxes_of
from typeset.setting.lines import break_lines, line_width_pt

# White between what hangs down from one line and what rises from the next, in ems: a
# fraction or box pushes lines apart only where less than this would be left.
_CLEAR_EMS = 0.1


@dataclass(frozen=True, slots=True)
class TextStyle:
    """How a text is set. `leading` is the distance of baselines as a multiple of the size.

    1.5 is the line spacing of the clear-print guides (sources.md section 4).
    """

    size_pt: float
    leading: float = 1.5
    face: Face = Face.REGULAR
    colour: Colour = BLACK

    @property
    def leading_pt(self) -> float:
        """The distance from baseline to baseline."""
        return self.leading * self.size_pt

    def bold(self) -> TextStyle:
        """The same in the bold face."""
        return replace(self, face=Face.BOLD)

    def scaled(self, ratio: float) -> TextStyle:
        """The same at another size."""
        return replace(self, size_pt=self.size_pt * ratio)


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the paragraph: its drawing, and its baseline down from the paragraph's top."""

    drawing: Drawing
    baseline_pt: float
    boxes: tuple[Box, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Lines within a measure. The height is from the first ascent to the last descent."""

    measure_pt: float
    height_pt: float
    lines: tuple[Line, ...]
    reads_as: str

    @property
    def baseline_pt(self) -> float:
        """The first baseline, down from the top (0 without lines)."""
        return self.lines[0].baseline_pt if self.lines else 0.0

    @property
    def width_pt(self) -> float:
        """The width of the widest line."""
        return max((line.drawing.width_pt for line in self.lines), default=0.0)

    @property
    def shapes(self) -> tuple[Shape, ...]:
        """The shapes of all lines, from the paragraph's top left corner, in reading order."""
        return tuple(
            moved(shape, 0.0, line.baseline_pt - line.drawing.baseline_pt)
            for line in self.lines
            for shape in line.drawing.shapes
        )

    def drawing(self) -> Drawing:
        """The paragraph as one drawing, its baseline that of the first line."""
        return Drawing(self.measure_pt, self.height_pt, self.shapes, self.baseline_pt)


def set_paragraph(rich: Rich, style: TextStyle, measure_pt: float) -> Paragraph:
    """The text broken into lines of the measure by an optimum over the whole paragraph.

    Raises GlyphError for a character that the face does not hold, FitError for a word or
    expression wider than the measure.
    """
    return _set_paragraph(rich, style, measure_pt, family())


# Sheets that differ in a name or in some of their numbers share most of their texts.
@lru_cache(maxsize=512)
def _set_paragraph(
    rich: Rich, style: TextStyle, measure_pt: float, _family: TypeFamily
) -> Paragraph:
    boxes = boxes_of(rich, style.size_pt, style.face, measure_pt)
    broken = break_lines(boxes, measure_pt, style.size_pt)
    lines = _stacked(broken, style)
    height = lines[-1].baseline_pt + _below_pt(lines[-1].drawing) if lines else 0.0
    return Paragraph(measure_pt, height, lines, plain(rich))


def natural_width_pt(rich: Rich, style: TextStyle) -> float:
    """The width of the text on one line."""
    return line_width_pt(boxes_of(rich, style.size_pt, style.face, float("inf")))


def _stacked(broken: Sequence[tuple[Box, ...]], style: TextStyle) -> tuple[Line, ...]:
    lines: list[Line] = []
    for number, boxes in enumerate(broken, 1):
        drawing = lay_out_atoms(_line_atoms(boxes), style.size_pt, style.colour)
        if number < len(broken):
            drawing = _parted(drawing, style)
        baseline = drawing.baseline_pt
        if lines:
            needed = _below_pt(lines[-1].drawing) + baseline + _CLEAR_EMS * style.size_pt
            baseline = lines[-1].baseline_pt + max(style.leading_pt, needed)
        lines.append(Line(drawing, baseline, boxes))
    return tuple(lines)


def _parted(drawing: Drawing, style: TextStyle) -> Drawing:
    """The line with a space after its last word, as wide as before.

    Whoever listens to a page, or copies from it, would else hear two words as one (ISO 32000-1,
    14.8.2.5, from memory: words are told apart by spaces, not by their places).
    """
    *others, last = drawing.shapes
    if isinstance(last, TextRun) and last.reading is None:
        others.append(replace(last, text=f"{last.text} "))
    else:
        at = (drawing.width_pt, drawing.baseline_pt)
        others += [last, TextRun(*at, " ", style.size_pt, style.face, style.colour)]
    return replace(drawing, shapes=tuple(others))


def _line_atoms(boxes: Sequence[Box]) -> list[Atom]:
    atoms: list[Atom] = []
    for index, box in enumerate(boxes):
        if index:
            atoms += box.space
        atoms += box.atoms
    return atoms


def _below_pt(drawing: Drawing) -> float:
    return drawing.height_pt - drawing.baseline_pt
