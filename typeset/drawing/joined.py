"""Joined points: everybody with everybody else once, as lines between points on a circle."""

from __future__ import annotations

from itertools import combinations
from math import pi, sin

from typeset.arithmetic.figures import JoinedPoints, Show
from typeset.drawing.boxes import Point
from typeset.drawing.figure_words import joined_words
from typeset.drawing.labels import Label, mark_label, wrapped_label
from typeset.drawing.pens import FINE_PT, at_angle, dot, rule
from typeset.drawing.shapes import Drawing
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

# Beyond ten points the lines run together into a grey patch (our own limit).
MOST_POINTS = 10
_RADIUS_EMS = 4.6
# A name may take this share of the width before it breaks into lines.
_NAME_SHARE = 0.3
_POINT_PT = 2.6
_GAP_PT = 4.0


def draw_joined(figure: JoinedPoints, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """Points with their names; joined from the first one only in the first step.

    Raises FitError where there are too many points, GlyphError.
    """
    if not 2 <= len(figure.labels) <= MOST_POINTS:
        raise FitError(
            f"{len(figure.labels)} points joined to each other cannot be told apart (at most "
            f"{MOST_POINTS}); fewer points would help"
        )
    return largest_that_fits(lambda size: _joined(figure, show, width_pt, size), size_pt)


def _joined(figure: JoinedPoints, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    count = len(figure.labels)
    labels = [wrapped_label(text, size_pt, _NAME_SHARE * width_pt) for text in figure.labels]
    turns = [index * 2 * pi / count for index in range(count)]
    widest = max(label.width_pt for label in labels)
    radius = max(_RADIUS_EMS * size_pt, 1.2 * size_pt / sin(pi / count))
    radius = min(radius, (width_pt - 2 * widest) / 2 - 2 * _GAP_PT)
    if radius < 2.5 * size_pt:
        raise FitError(f"the names of the points leave no room in {width_pt:.0f} pt")
    centre: Point = (radius + widest + 2 * _GAP_PT, 0.0)
    points = [at_angle(centre, radius, turn) for turn in turns]
    joined = [] if show is Show.FRAME else list(combinations(range(count), 2))
    for one, two in joined:
        if show is Show.COMPLETE or one == 0:
            sketch.add(rule(points[one], points[two], FINE_PT))
    for point, label, turn in zip(points, labels, turns, strict=True):
        sketch.add(dot(*point, _POINT_PT))
        _put_name(sketch, label, centre, (radius, turn))
    total = mark_label(figure.total, show, size_pt)
    if total is not None:
        low = max(0.0, min(centre[0] - total.width_pt / 2, width_pt - total.width_pt))
        sketch.put(total, low, sketch.lowest_pt() + _GAP_PT)
    return sketch.finished(joined_words(figure, show))


def _put_name(sketch: Sketch, label: Label, centre: Point, place: tuple[float, float]) -> None:
    """Outside the point, away from the middle."""
    radius, turn = place
    right, down = at_angle((0.0, 0.0), 1.0, turn)
    out = radius + _POINT_PT + _GAP_PT
    # Beside its point, or centred over or under it.
    aside = 0.0 if abs(right) < 0.1 else label.width_pt / 2 * (1 if right > 0 else -1)
    sketch.put_level(
        label,
        centre[0] + out * right + aside,
        centre[1] + (out + label.level_height_pt / 2) * down,
    )
