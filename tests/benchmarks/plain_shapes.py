"""Drawn shapes as plain tuples, so that no engine needs our package to draw them.

All lengths in points, y downwards: ('text', x, baseline, text, size, is bold),
('rule', x1, y1, x2, y2, thickness, grey, dash), ('rect', x, y, width, height, thickness, grey,
fill, dash) and ('path', steps, thickness, grey, fill). A fill of None is an open shape, a dash of
None a whole line; the sheets that all engines set have no dashes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeAlias

PlainShape: TypeAlias = tuple[Any, ...]


@dataclass(frozen=True, slots=True)
class PlainFigure:
    """Shapes within a box of this size."""

    width_pt: float
    height_pt: float
    shapes: tuple[PlainShape, ...]
