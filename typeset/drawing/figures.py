"""Any figure, drawn: the entry of this step."""

from __future__ import annotations

from typeset.arithmetic.figures import Figure, Show
from typeset.drawing.bar_model import draw_bar_model
from typeset.drawing.shapes import Drawing


def draw_figure(figure: Figure, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The figure in one of its states, at most `width_pt` wide; its height follows.

    `size_pt` is the body type: labels are of that size, or down to 0.8 of it where space
    is short. Raises FitError where it cannot be drawn with every label clear, GlyphError
    for a character that the font lacks.
    """
    return draw_bar_model(figure, show, width_pt, size_pt)
