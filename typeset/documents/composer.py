"""What every document is composed with: a layout, its wording, and styles for a type size."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.foot import Foot
from typeset.documents.layout import Layout
from typeset.documents.wording import phrase
from typeset.drawing.fonts import width_pt
from typeset.drawing.shapes import PT_PER_MM
from typeset.quantities.inline import Inline, Rich, words
from typeset.setting.blocks import Block, Column, Spacing
from typeset.setting.frames import Placed, Role
from typeset.setting.pages import PageFrame
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import RulePiece, Stack, text
from typeset.setting.stretch import fixed

# Headings about a fifth larger than the text (British Dyslexia Association style guide,
# from memory); the title a step above them.
HEADING_SCALE = 1.2
TITLE_SCALE = 1.6
# A heavy rule opens every stage: it survives any photocopier, and is our one ornament.
STAGE_RULE_PT = 2.0
# As wide as a page number gets.
_WIDE_NUMBER = "88"
# English as it runs on our sheets, to tell how wide a character is on average.
_SAMPLE = (
    "For every gull on the quay there are two terns, and the ferry carries 24 passengers. "
    "How many of them are left over when the last boat has gone?"
)
# A character that no font and no text holds, to find the names in a filled template again.
_MARK = "\ue000"


@dataclass(frozen=True, slots=True)
class Composer:
    """A layout at work."""

    layout: Layout

    def say(self, group: str, key: str, **names: str) -> str:
        """A text of the layout's wording."""
        return phrase(self.layout.wording, group, key, **names)

    def rich(self, group: str, key: str, **names: str) -> Rich:
        """The same, to be set."""
        return words(self.say(group, key, **names))

    def rich_with(self, group: str, key: str, **names: Rich | str) -> Rich:
        """A text of the wording with set texts (amounts, stacked fractions) put in."""
        marks = {name: f"{_MARK}{index}{_MARK}" for index, name in enumerate(names)}
        said = self.say(group, key, **marks)
        values = list(names.values())
        items: list[Inline] = []
        for index, part in enumerate(said.split(_MARK)):
            # Every second part is the number of a name: marks stand in pairs.
            value = part if index % 2 == 0 else values[int(part)]
            items.extend(value if isinstance(value, tuple) else words(value) if value else ())
        return tuple(items)

    def column(
        self, size_pt: float, leading: float | None = None, spacing: Spacing | None = None
    ) -> Column:
        """The body's style over the whole width of the page, no line longer than is easy.

        `leading` and `spacing` are the usual ones unless they are given.
        """
        style = TextStyle(size_pt, leading or self.layout.leading)
        return Column(style, self.width_pt, spacing or Spacing(), self._longest_pt(size_pt))

    def _longest_pt(self, size_pt: float) -> float | None:
        """The layout's longest line in points, by the average width of a character."""
        if self.layout.longest_line is None:
            return None
        return self.layout.longest_line * width_pt(_SAMPLE, size_pt) / len(_SAMPLE)

    @property
    def width_pt(self) -> float:
        """The width between the margins."""
        margins = self.layout.margins
        return (self.layout.page.width_mm - margins.left - margins.right) * PT_PER_MM

    def bare_frame(self) -> PageFrame:
        """The page between its margins, without a foot line."""
        page, margins = self.layout.page, self.layout.margins
        return PageFrame(
            paper_width_pt=page.width_mm * PT_PER_MM,
            paper_height_pt=page.height_mm * PT_PER_MM,
            left_pt=margins.left * PT_PER_MM,
            top_pt=margins.top * PT_PER_MM,
            width_pt=self.width_pt,
            height_pt=(page.height_mm - margins.top - margins.bottom) * PT_PER_MM,
            tint=self.layout.tint,
        )

    def frame(self, foot: str, foot_size_pt: float, later_foot: str | None = None) -> PageFrame:
        """The page with its foot line: what it belongs to at the left, the page at the right.

        Pages after the first have `later_foot` where it is given.
        """
        layout, margins = self.layout, self.layout.margins
        paper_height = layout.page.height_mm * PT_PER_MM
        left, bottom = margins.left * PT_PER_MM, paper_height - margins.bottom * PT_PER_MM
        lefts = (foot,) if later_foot is None else (foot, later_foot)
        widest = self.say("sheet", "page", page=_WIDE_NUMBER, pages=_WIDE_NUMBER)
        feet = Foot(lefts, widest, TextStyle(foot_size_pt, layout.leading), self.width_pt)
        height = paper_height - (margins.top + margins.bottom) * PT_PER_MM - feet.height_pt

        def furniture(index: int, count: int) -> tuple[Placed, ...]:
            page = self.say("sheet", "page", page=str(index + 1), pages=str(count))
            return feet.place(lefts[0] if index == 0 else lefts[-1], page, left, bottom)

        return PageFrame(
            paper_width_pt=layout.page.width_mm * PT_PER_MM,
            paper_height_pt=paper_height,
            left_pt=left,
            top_pt=margins.top * PT_PER_MM,
            width_pt=self.width_pt,
            height_pt=height,
            furniture=furniture,
            tint=layout.tint,
        )


def stage_heading(name: str, rich: Rich, column: Column, level: int = 2) -> Block:
    """The heading of a stage under its heavy rule, kept with what follows."""
    style = column.style.scaled(HEADING_SCALE).bold()
    rule = RulePiece(column.width_pt, STAGE_RULE_PT)
    heading = text(rich, style, column.width_pt, Role.HEADING, level=level)
    piece = Stack((rule, heading), (fixed(0.35 * style.size_pt),))
    return Block(name, piece, column.gap(column.spacing.heading), keep_with_next=True)


def week_names(solved: SolvedWeek, lesson: SolvedLesson | None = None) -> dict[str, str]:
    """The names that a foot line may use."""
    week = solved.week
    names = {"week": week.title, "class": week.class_name, "day": "", "lesson": "", "version": ""}
    if lesson is not None:
        names |= {"day": lesson.lesson.day, "lesson": lesson.lesson.title}
    return names
