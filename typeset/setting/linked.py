"""A piece that leads somewhere else in its document when it is tapped."""

from __future__ import annotations

from dataclasses import dataclass, replace

from typeset.setting.frames import Placed
from typeset.setting.pieces import Piece
from typeset.setting.stretch import Stretch


@dataclass(frozen=True, slots=True)
class Linked:
    """The body, every item of which leads to the place of this name."""

    body: Piece
    leads_to: str

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
        """The body's items, leading there."""
        placed = self.body.place(x_pt, y_pt, height_pt)
        return tuple(replace(item, leads_to=self.leads_to) for item in placed)
