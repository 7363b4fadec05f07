"""Figures as data: what a drawing must show, without a length or a position."""

from __future__ import annotations

from typing import TypeAlias

from typeset.arithmetic.figures.bars import (
    Bar,
    BarModel,
    Brace,
)
from typeset.arithmetic.figures.dials import (
    ClockFace,
    ClockFaces,
    MeasuringScale,
    ScaleLabel,
    ScaleShape,
)
from typeset.arithmetic.figures.lines import (
    DoubleNumberLine,
    Moment,
    NumberLine,
    PairTick,
    PostsAndGaps,
    SequenceBoxes,
    Tick,
    TimeLine,
    TimeRow,
)
from typeset.arithmetic.figures.marks import (
    Jump,
    Mark,
    Part,
    Show,
)
from typeset.arithmetic.figures.shapes import (
    Angles,
    AngleSetting,
    AreaRectangle,
    DotArray,
    GroupedObjects,
    JoinedPoints,
    Outline,
    Wedge,
)
from typeset.arithmetic.figures.tables import (
    BranchingTree,
    Choice,
    RatioTable,
    TwoWayTable,
)

Figure: TypeAlias = (
    BarModel
    | NumberLine
    | DoubleNumberLine
    | RatioTable
    | DotArray
    | AreaRectangle
    | Outline
    | BranchingTree
    | TwoWayTable
    | TimeLine
    | PostsAndGaps
    | SequenceBoxes
    | ClockFaces
    | MeasuringScale
    | GroupedObjects
    | Angles
    | JoinedPoints
)

__all__ = [
    "AngleSetting",
    "Angles",
    "AreaRectangle",
    "Bar",
    "BarModel",
    "Brace",
    "BranchingTree",
    "Choice",
    "ClockFace",
    "ClockFaces",
    "DotArray",
    "DoubleNumberLine",
    "Figure",
    "GroupedObjects",
    "JoinedPoints",
    "Jump",
    "Mark",
    "MeasuringScale",
    "Moment",
    "NumberLine",
    "Outline",
    "PairTick",
    "Part",
    "PostsAndGaps",
    "RatioTable",
    "ScaleLabel",
    "ScaleShape",
    "SequenceBoxes",
    "Show",
    "Tick",
    "TimeLine",
    "TimeRow",
    "TwoWayTable",
    "Wedge",
]
