"""A piece that does not stretch: what is read, not written in, looks odd when pulled apart."""

from __future__ import annotations

from dataclasses import dataclass

from typeset.setting.frames import Placed
from typeset.setting.pieces import Piece
from typeset.setting.stretch import Stretch, fixed


@dataclass(frozen=True, slots=True)
class Natural:
    """The body at its natural height, whatever room there is."""

    body: Piece

    @property
    def width_pt(self) -> float:
        """The body's."""
        return self.body.width_pt

    @property
    def height(self) -> Stretch:
        """The body's natural height alone."""
        return fixed(self.body.height.natural_pt)

    @property
    def baseline_pt(self) -> float | None:
        """The body's."""
        return self.body.baseline_pt

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The body at the top of the room."""
        return self.body.place(x_pt, y_pt, min(height_pt, self.body.height.natural_pt))
