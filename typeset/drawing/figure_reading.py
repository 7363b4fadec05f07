"""The alternative text of any figure, without drawing it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

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
from typeset.drawing import figure_words as told
from typeset.drawing.bar_words import bar_model_words

_WORDS: dict[type, Callable[[Any, Show], str]] = {
    BarModel: bar_model_words,
    NumberLine: told.number_line_words,
    DoubleNumberLine: told.double_line_words,
    RatioTable: told.ratio_table_words,
    DotArray: told.array_words,
    AreaRectangle: told.area_words,
    Outline: told.outline_words,
    BranchingTree: told.tree_words,
    TwoWayTable: told.two_way_words,
    TimeLine: told.time_line_words,
    PostsAndGaps: told.posts_words,
    SequenceBoxes: told.sequence_words,
    ClockFaces: told.clock_words,
    MeasuringScale: told.scale_words,
    GroupedObjects: told.groups_words,
    Angles: told.angles_words,
    JoinedPoints: told.joined_words,
}


def figure_reading(figure: Figure, show: Show) -> str:
    """What the figure in this state is told as: the same that its drawing reads as."""
    return _WORDS[type(figure)](figure, show)
