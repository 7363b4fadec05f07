"""Labels of figures: a line of maths, or a name over several lines, with its size."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from typeset.arithmetic.figures import Mark, Show
from typeset.drawing.fonts import TypeFamily, family, measures, width_pt
from typeset.drawing.inline_maths import lay_out_rich_line
from typeset.drawing.shapes import Face, Shape, TextRun, moved
from typeset.drawing.symbols import text_width_pt
from typeset.errors import FitError
from typeset.quantities.inline import Rich, plain, words

# Lines of one name stand close: they are one thing.
_NAME_LEADING_EMS = 1.1
# The middle of a label for the eye: between the middle of a figure (0.34 em over the
# baseline) and the bar of a stacked fraction (0.25 em).
_MIDDLE_EMS = 0.3
ASKED = "?"


@dataclass(frozen=True, slots=True)
class Label:
    """Shapes within a box whose top left corner is the origin.

    `middle_pt` is how far down the eye's middle of the text lies.
    """

    text: str
    shapes: tuple[Shape, ...]
    width_pt: float
    height_pt: float
    middle_pt: float

    @property
    def level_height_pt(self) -> float:
        """The height that a box needs to hold the label with its middle in the box's middle."""
        return 2 * max(self.middle_pt, self.height_pt - self.middle_pt)


def line_label(rich: Rich, size_pt: float, face: Face = Face.REGULAR) -> Label:
    """A label on one line. Raises GlyphError."""
    return _line_label(rich, size_pt, face, family())


# A figure is tried in many arrangements, most of them with the same labels.
@lru_cache(maxsize=4096)
def _line_label(rich: Rich, size_pt: float, face: Face, _family: TypeFamily) -> Label:
    drawn = lay_out_rich_line(rich, size_pt, face)
    middle = drawn.baseline_pt - _MIDDLE_EMS * size_pt
    return Label(plain(rich), drawn.shapes, drawn.width_pt, drawn.height_pt, middle)


def figure_label(text: str, size_pt: float, face: Face = Face.REGULAR) -> Label:
    """A number alone, its box as high as its figures: for scales and clock faces, where lines
    come near. Raises GlyphError."""
    height = measures().figure_height * size_pt
    run = TextRun(0.0, height, text, size_pt, face)
    return Label(text, (run,), width_pt(text, size_pt, face), height, height / 2)


def shown_text(mark: Mark | None, show: Show) -> tuple[Rich, Face] | None:
    """What of a mark may be seen: its value, '?' where it is asked, or nothing.

    Answers are bold in the complete figure, so that they stand out from what was given.
    """
    if mark is None or show is Show.FRAME:
        return None
    if mark.is_given:
        return mark.text, Face.REGULAR
    if show is Show.COMPLETE:
        return mark.text, Face.BOLD
    return None if mark.hidden else (words(ASKED), Face.BOLD)


def mark_label(mark: Mark | None, show: Show, size_pt: float) -> Label | None:
    """The label of a mark in this state of the figure, if it has one. Raises GlyphError."""
    seen = shown_text(mark, show)
    return None if seen is None else line_label(seen[0], size_pt, seen[1])


def plain_width_pt(text: str, size_pt: float) -> float:
    """The width of a name on one line. Raises GlyphError."""
    return text_width_pt(text, size_pt)


def longest_word_pt(text: str, size_pt: float, face: Face = Face.REGULAR) -> float:
    """The least width that a name can be broken to. Raises GlyphError."""
    return max(text_width_pt(word, size_pt, face) for word in text.split(" "))


def wrapped_label(text: str, size_pt: float, room_pt: float, face: Face = Face.REGULAR) -> Label:
    """A name over as many lines as it needs, left-aligned, broken at spaces only.

    Raises FitError where one of its words is wider than `room_pt`, and GlyphError.
    """
    return _wrapped_label(text, (size_pt, room_pt), face, family())


@lru_cache(maxsize=4096)
def _wrapped_label(
    text: str, size_and_room_pt: tuple[float, float], face: Face, _family: TypeFamily
) -> Label:
    size_pt, room_pt = size_and_room_pt
    shapes: list[Shape] = []
    widest, down = 0.0, 0.0
    lines = _lines(text, size_pt, room_pt, face)
    for line in lines:
        drawn = lay_out_rich_line(words(line), size_pt, face)
        shapes.extend(moved(shape, 0.0, down) for shape in drawn.shapes)
        widest = max(widest, drawn.width_pt)
        height = down + drawn.height_pt
        down += _NAME_LEADING_EMS * size_pt
    middle = height / 2 if len(lines) > 1 else drawn.baseline_pt - _MIDDLE_EMS * size_pt
    return Label(text, tuple(shapes), widest, height, middle)


def _lines(text: str, size_pt: float, room_pt: float, face: Face) -> list[str]:
    lines = [""]
    for word in text.split(" "):
        if text_width_pt(word, size_pt, face) > room_pt + 0.01:
            raise FitError(
                f"the word '{word}' is wider than the {room_pt:.0f} pt that a figure has for "
                f"the name '{text}'; a shorter name, smaller type or a wider column would help"
            )
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if text_width_pt(longer, size_pt, face) <= room_pt + 0.01:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
