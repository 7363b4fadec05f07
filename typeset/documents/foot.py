"""The foot of a page: what it belongs to at the left, which page of how many at the right.

On one line where there is room; else, on small paper, the page number on a line of its own.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from typeset.drawing.shapes import PT_PER_MM, moved
from typeset.quantities.inline import words
from typeset.setting.frames import Placed, Role
from typeset.setting.paragraphs import Paragraph, TextStyle, natural_width_pt, set_paragraph

# White between the text of a page and its foot.
FOOT_GAP_MM = 5.0
# Between the two texts on one line, so that they are not read as one.
_BETWEEN_EMS = 1.5
# The lines of a foot stand closer to each other than to the text above them.
_FOOT_LEADING = 1.15


@dataclass(frozen=True, slots=True)
class Foot:
    """The foots of a document, all of one height. `lefts` are the texts that may stand at the
    left, `widest_right` is a page number as wide as any."""

    lefts: tuple[str, ...]
    widest_right: str
    style: TextStyle
    width_pt: float

    @property
    def height_pt(self) -> float:
        """With the white above it. Raises FitError for a word wider than the page."""
        highest = max(self._set(left).height_pt for left in self.lefts)
        page = 0.0 if self._is_one_line else self._tight.leading_pt
        return highest + page + FOOT_GAP_MM * PT_PER_MM

    def place(self, left: str, right: str, x_pt: float, bottom_pt: float) -> tuple[Placed, ...]:
        """The two texts over the bottom edge of the page's area."""
        page = 0.0 if self._is_one_line else self._tight.leading_pt
        told, number = self._set(left), self._set(right)
        number_x = x_pt + self.width_pt - number.width_pt
        return (
            _placed(left, told, x_pt, bottom_pt - page - told.height_pt),
            _placed(right, number, number_x, bottom_pt - number.height_pt),
        )

    @property
    def _is_one_line(self) -> bool:
        texts = (words(text) for text in (*self.lefts, self.widest_right))
        *lefts, right = (natural_width_pt(text, self.style) for text in texts)
        return max(lefts) + right + _BETWEEN_EMS * self.style.size_pt <= self.width_pt

    @property
    def _tight(self) -> TextStyle:
        return replace(self.style, leading=_FOOT_LEADING)

    def _set(self, text: str) -> Paragraph:
        return set_paragraph(words(text), self._tight, self.width_pt)


def _placed(text: str, paragraph: Paragraph, x_pt: float, y_pt: float) -> Placed:
    shapes = tuple(moved(shape, x_pt, y_pt) for shape in paragraph.shapes)
    size = (paragraph.width_pt, paragraph.height_pt)
    return Placed(Role.FURNITURE, x_pt, y_pt, *size, shapes, reads_as=text)
