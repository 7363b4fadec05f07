"""Any figure, drawn: the entry of this step."""

from __future__ import annotations

from functools import lru_cache

from typeset.arithmetic.figures import (
    Angles,
    AreaRectangle,
    BarModel,
    BranchingTree,
    ClockFaces,
    DotArray,
    DoubleNumberLine,
    Figure,
    GroupedObjects,
    JoinedPoints,
    MeasuringScale,
    NumberLine,
    Outline,
    PostsAndGaps,
    RatioTable,
    SequenceBoxes,
    Show,
    TimeLine,
    TwoWayTable,
)
from typeset.drawing.angles import draw_angles
from typeset.drawing.bar_model import draw_bar_model
from typeset.drawing.clocks import draw_clocks
from typeset.drawing.fonts import TypeFamily, family
from typeset.drawing.groups import draw_groups
from typeset.drawing.joined import draw_joined
from typeset.drawing.number_lines import draw_double_number_line, draw_number_line
from typeset.drawing.outline import draw_outline
from typeset.drawing.posts import draw_posts
from typeset.drawing.rectangles import draw_area, draw_array
from typeset.drawing.scales import draw_scale
from typeset.drawing.sequence import draw_sequence
from typeset.drawing.shapes import Drawing
from typeset.drawing.tables import draw_ratio_table, draw_two_way_table
from typeset.drawing.time_line import draw_time_line
from typeset.drawing.tree import draw_tree


def draw_figure(figure: Figure, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The figure in one of its states, at most `width_pt` wide; its height follows.

    `size_pt` is the body type: labels are of that size, or down to 0.8 of it where space
    is short. Raises FitError where it cannot be drawn with every label clear, GlyphError
    for a character that the font lacks.
    """
    return _draw_figure(figure, show, (width_pt, size_pt), family())


# The same model may stand on a sheet, in a booklet and in a pack, and is asked for twice where
# it might stand beside something.
@lru_cache(maxsize=128)
def _draw_figure(
    figure: Figure, show: Show, width_and_size_pt: tuple[float, float], _family: TypeFamily
) -> Drawing:
    width_pt, size_pt = width_and_size_pt
    match figure:
        case BarModel():
            return draw_bar_model(figure, show, width_pt, size_pt)
        case NumberLine():
            return draw_number_line(figure, show, width_pt, size_pt)
        case DoubleNumberLine():
            return draw_double_number_line(figure, show, width_pt, size_pt)
        case RatioTable():
            return draw_ratio_table(figure, show, width_pt, size_pt)
        case DotArray():
            return draw_array(figure, show, width_pt, size_pt)
        case AreaRectangle():
            return draw_area(figure, show, width_pt, size_pt)
        case Outline():
            return draw_outline(figure, show, width_pt, size_pt)
        case BranchingTree():
            return draw_tree(figure, show, width_pt, size_pt)
        case TwoWayTable():
            return draw_two_way_table(figure, show, width_pt, size_pt)
        case TimeLine():
            return draw_time_line(figure, show, width_pt, size_pt)
        case PostsAndGaps():
            return draw_posts(figure, show, width_pt, size_pt)
        case SequenceBoxes():
            return draw_sequence(figure, show, width_pt, size_pt)
        case ClockFaces():
            return draw_clocks(figure, show, width_pt, size_pt)
        case MeasuringScale():
            return draw_scale(figure, show, width_pt, size_pt)
        case GroupedObjects():
            return draw_groups(figure, show, width_pt, size_pt)
        case Angles():
            return draw_angles(figure, show, width_pt, size_pt)
        case JoinedPoints():
            return draw_joined(figure, show, width_pt, size_pt)
