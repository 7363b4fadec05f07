"""A piece inside a frame: a worked solution to look at, apart from what a pupil writes."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.shapes import Colour, Rect, grey
from typeset.setting.frames import Placed, Role
from typeset.setting.pieces import Piece
from typeset.setting.stretch import Stretch

FRAME_COLOUR: Colour = grey(0.35)


@dataclass(frozen=True, slots=True)
class Framed:
    """The body with a frame around it, `padding_pt` away; the frame itself is not read."""

    body: Piece
    padding_pt: float
    thickness_pt: float = LEAST_RULE_PT
    colour: Colour = FRAME_COLOUR

    @property
    def width_pt(self) -> float:
        """The width of the frame."""
        return self.body.width_pt + 2 * self.padding_pt

    @property
    def height(self) -> Stretch:
        """Body and padding."""
        return self.body.height.plus(2 * self.padding_pt)

    @property
    def baseline_pt(self) -> float | None:
        """The body's, further down."""
        baseline = self.body.baseline_pt
        return None if baseline is None else baseline + self.padding_pt

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The frame, then what is in it."""
        rect = Rect(x_pt, y_pt, self.width_pt, height_pt, self.thickness_pt, self.colour)
        frame = Placed(Role.FURNITURE, x_pt, y_pt, self.width_pt, height_pt, (rect,))
        pad = self.padding_pt
        return (frame, *self.body.place(x_pt + pad, y_pt + pad, height_pt - 2 * pad))
