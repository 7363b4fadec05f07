"""A finished sheet and the boxes of what stands on its pages, for the laws that it must keep."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedLesson
from typeset.documents.layout import Layout
from typeset.drawing.fonts import measures, width_pt
from typeset.drawing.shapes import PT_PER_MM, Path, Rect, Rule, Shape, TextRun
from typeset.setting.frames import Placed
from typeset.setting.pages import PageLayout

# Far below what a printer can show.
HAIR_PT = 0.05


@dataclass(frozen=True, slots=True)
class Sheet:
    """A finished sheet with what it was made from."""

    pages: PageLayout
    layout: Layout
    lesson: SolvedLesson
    # So many sides were asked for; None where it may have as many as it needs.
    sides: int | None


@dataclass(frozen=True, slots=True)
class Box:
    """Edges in points from the top left corner of the page."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box, slack: float = HAIR_PT) -> bool:
        """True where the two meet by more than the slack."""
        return (
            self.left < other.right - slack
            and other.left < self.right - slack
            and self.top < other.bottom - slack
            and other.top < self.bottom - slack
        )

    def holds(self, other: Box, slack: float) -> bool:
        """True where the other is within, but for the slack."""
        return (
            self.left - slack <= other.left
            and self.top - slack <= other.top
            and other.right <= self.right + slack
            and other.bottom <= self.bottom + slack
        )


def box_of(item: Placed) -> Box:
    """The box that an item says it takes."""
    return Box(item.x_pt, item.y_pt, item.x_pt + item.width_pt, item.y_pt + item.height_pt)


def reach_of(shape: Shape) -> Box:
    """The box of a shape's letters or middle line."""
    match shape:
        case TextRun():
            # Figures, such as those of a fraction, neither rise as high as letters nor hang down.
            measured, is_number = measures(), not any(map(str.isalpha, shape.text))
            above = shape.size_pt * (measured.figure_height if is_number else measured.ascent)
            below = shape.size_pt * (0.0 if is_number else measured.descent)
            right = shape.x_pt + width_pt(shape.text.rstrip(), shape.size_pt, shape.face)
            return Box(shape.x_pt, shape.y_pt - above, right, shape.y_pt + below)
        case Rect():
            right, bottom = shape.x_pt + shape.width_pt, shape.y_pt + shape.height_pt
            return Box(shape.x_pt, shape.y_pt, right, bottom)
        case Rule():
            across, down = (shape.x1_pt, shape.x2_pt), (shape.y1_pt, shape.y2_pt)
            return Box(min(across), min(down), max(across), max(down))
        case Path():
            numbers = [float(n) for step in shape.steps for n in step[1:]]
            return Box(min(numbers[::2]), min(numbers[1::2]), max(numbers[::2]), max(numbers[1::2]))


def area_of(layout: Layout) -> Box:
    """The page within its margins."""
    page, margins = layout.page, layout.margins
    right, bottom = page.width_mm - margins.right, page.height_mm - margins.bottom
    edges = (margins.left, margins.top, right, bottom)
    return Box(*(edge * PT_PER_MM for edge in edges))


def named(item: Placed) -> str:
    """What a broken law calls an item."""
    return f"{item.role.value} {item.source!r} ‘{item.reads_as[:40]}’"
