"""Straight lines that meet in a point, and circles, among the strokes of a page."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, dist
from typing import TypeAlias

from typeset.proofing.page_marks import Stroke
from typeset.proofing.places import Box

Point: TypeAlias = tuple[float, float]

_TOUCH_PT = 0.6


def centre_of(box: Box) -> Point:
    """The middle of a box."""
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2


def turn_of(centre: Point, to: Point) -> float:
    """The way from the centre to a point, in degrees clockwise from straight up."""
    return degrees(atan2(to[0] - centre[0], centre[1] - to[1])) % 360


def lines_from(strokes: Sequence[Stroke], centre: Point) -> list[tuple[float, float]]:
    """The turn and length of every straight line that starts or ends at the point."""
    found = []
    for stroke in strokes:
        if stroke.shape != "line":
            continue
        for end, other in (stroke.points, stroke.points[::-1]):
            if dist(end, centre) <= _TOUCH_PT < dist(other, centre):
                found.append((turn_of(centre, other), dist(other, centre)))
    return found


def rounds(strokes: Sequence[Stroke], least_pt: float) -> list[Box]:
    """Circles that are not filled, from left to right in rows."""
    found = [
        s.box
        for s in strokes
        if s.shape == "curve"
        and not s.filled
        and s.box.width >= least_pt
        and abs(s.box.width - s.box.height) < 0.5
        and is_closed(s)
    ]
    return sorted(found, key=lambda box: (round(box.top / 10), box.left))


def is_closed(stroke: Stroke) -> bool:
    """True for an outline that ends where it starts."""
    return dist(stroke.points[0], stroke.points[-1]) < 0.1
