"""The strokes that figures share: outlines, braces, arrows, leaders, marks of a break.

No stroke is thinner than 0.25 mm, so that a photocopier keeps it (sources.md section 4:
our own choice after ISO 3098's narrowest lettering of 0.18 mm and its next, 0.25 mm).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, cos, pi, sin, tan

from typeset.drawing.boxes import Point
from typeset.drawing.shapes import BLACK, PT_PER_MM, WHITE, Path, PathStep, Rule, grey

LEAST_PT = 0.25 * PT_PER_MM
OUTLINE_PT = 1.0
FINE_PT = 0.75
DASH_PT = (2.5, 2.0)
# Told from white on a copier, and black on it still has a contrast of 15.6 : 1 (WCAG 2.2).
SHADE = grey(0.87)
# Of lines to write on: 3.4 : 1 on white by the WCAG formula, so plain to see; copies well, and
# stays behind pencil.
GUIDE_COLOUR = grey(0.55)

BRACE_PT = 7.0
_ARROW_PT = 4.2
_ARROW_HALF_PT = 1.7
# A circle's quarter by one Bézier curve: control points at 0.5523 of the radius.
ROUND = 0.5523


def brace(start_pt: float, end_pt: float, base_pt: float, depth_pt: float) -> Path:
    """A level brace from x = start to x = end whose tip lies `depth_pt` off its base.

    A negative depth points up. Its quarter circles shrink on a short span.
    """
    middle = (start_pt + end_pt) / 2
    r = min(abs(depth_pt) / 2, (end_pt - start_pt) / 4)
    k = r * (1 - ROUND)
    spine = base_pt + depth_pt / 2
    tip = base_pt + depth_pt
    steps: list[PathStep] = [
        ("M", start_pt, base_pt),
        (
            "C",
            start_pt,
            base_pt + (spine - base_pt) * ROUND,
            start_pt + k,
            spine,
            start_pt + r,
            spine,
        ),
        ("L", middle - r, spine),
        ("C", middle - k, spine, middle, tip - (tip - spine) * ROUND, middle, tip),
        ("C", middle, tip - (tip - spine) * ROUND, middle + k, spine, middle + r, spine),
        ("L", end_pt - r, spine),
        ("C", end_pt - k, spine, end_pt, base_pt + (spine - base_pt) * ROUND, end_pt, base_pt),
    ]
    return Path(tuple(steps), FINE_PT)


def side_brace(base_pt: float, top_pt: float, bottom_pt: float, depth_pt: float) -> Path:
    """An upright brace from y = top to y = bottom, its tip `depth_pt` right of its base."""
    return _mirrored(brace(top_pt, bottom_pt, base_pt, depth_pt))


def _turned(step: PathStep) -> PathStep:
    command, *numbers = step
    return (command, *(n for pair in zip(numbers[1::2], numbers[::2], strict=True) for n in pair))


def line(points: Sequence[Point], thickness_pt: float = FINE_PT) -> Path:
    """An open line through the points."""
    (x, y), *rest = points
    return Path((("M", x, y), *(("L", *point) for point in rest)), thickness_pt)


def rule(start: Point, end: Point, thickness_pt: float = FINE_PT, dashed: bool = False) -> Rule:
    """A straight line, dashed for a guide."""
    return Rule(*start, *end, thickness_pt, BLACK, DASH_PT if dashed else None)


def arrow_head(tip: Point, right_pt: float, down_pt: float) -> Path:
    """A filled head at `tip`, pointing the way of the unit vector (right, down)."""
    x, y = tip
    back_x, back_y = x - right_pt * _ARROW_PT, y - down_pt * _ARROW_PT
    side_x, side_y = -down_pt * _ARROW_HALF_PT, right_pt * _ARROW_HALF_PT
    steps: tuple[PathStep, ...] = (
        ("M", x, y),
        ("L", back_x + side_x, back_y + side_y),
        ("L", back_x - side_x, back_y - side_y),
        ("L", x, y),
    )
    return Path(steps, LEAST_PT, BLACK, BLACK)


def solid_head(tip: Point, way: tuple[float, float], length_pt: float) -> Path:
    """A larger head, for the pointer of a scale; `way` is the unit vector that it points."""
    (x, y), (right, down) = tip, way
    back_x, back_y = x - right * length_pt, y - down * length_pt
    side_x, side_y = -down * length_pt * 0.42, right * length_pt * 0.42
    steps: tuple[PathStep, ...] = (
        ("M", x, y),
        ("L", back_x + side_x, back_y + side_y),
        ("L", back_x - side_x, back_y - side_y),
        ("L", x, y),
    )
    return Path(steps, LEAST_PT, BLACK, BLACK)


def arch_arrow(start_pt: float, end_pt: float, base_pt: float, rise_pt: float) -> tuple[Path, Path]:
    """An arrow that rises from the base, runs level and comes down at `end_pt`.

    A negative rise hangs below the base. Corners are round; the head points to the base.
    """
    way = 1.0 if end_pt > start_pt else -1.0
    up = -1.0 if rise_pt > 0 else 1.0
    top = base_pt - rise_pt
    r = min(abs(rise_pt), abs(end_pt - start_pt) / 2, 9.0)
    k = r * (1 - ROUND)
    corner = top - up * r
    steps: tuple[PathStep, ...] = (
        ("M", start_pt, base_pt),
        ("L", start_pt, corner),
        ("C", start_pt, top - up * k, start_pt + way * k, top, start_pt + way * r, top),
        ("L", end_pt - way * r, top),
        ("C", end_pt - way * k, top, end_pt, top - up * k, end_pt, corner),
        ("L", end_pt, base_pt + up * _ARROW_PT / 2),
    )
    return Path(steps, FINE_PT), arrow_head((end_pt, base_pt), 0.0, -up)


def arch_arrow_sideways(
    start_pt: float, end_pt: float, base_pt: float, rise_pt: float
) -> tuple[Path, Path]:
    """The same arrow standing on an upright base, from y to y, out to its right (to its left
    for a negative rise)."""
    return (
        _mirrored(arch_arrow(start_pt, end_pt, base_pt, -rise_pt)[0]),
        arrow_head((base_pt, end_pt), -1.0 if rise_pt > 0 else 1.0, 0.0),
    )


def _mirrored(path: Path) -> Path:
    return Path(tuple(_turned(step) for step in path.steps), path.thickness_pt)


def straight_arrow(start: Point, end: Point, both_ends: bool = False) -> tuple[Path, ...]:
    """A straight arrow, with heads at both ends for a distance."""
    (x1, y1), (x2, y2) = start, end
    length = max(((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5, 0.001)
    right, down = (x2 - x1) / length, (y2 - y1) / length
    heads = [arrow_head(end, right, down)]
    if both_ends:
        heads.append(arrow_head(start, -right, -down))
    return (line((start, end)), *heads)


def break_mark(x_pt: float, y_pt: float) -> tuple[Path, ...]:
    """Two short slanting strokes across a level line, white between: not drawn to scale here."""
    half, lean, gap = 3.2, 1.6, 1.5
    corners = [
        (x_pt - gap - lean, y_pt + half),
        (x_pt - gap + lean, y_pt - half),
        (x_pt + gap + lean, y_pt - half),
        (x_pt + gap - lean, y_pt + half),
    ]
    (first, *rest) = corners
    opening = Path((("M", *first), *(("L", *point) for point in rest)), LEAST_PT, WHITE, WHITE)
    return (opening, line(corners[:2]), line(corners[2:]))


def break_mark_upright(x_pt: float, y_pt: float) -> tuple[Path, ...]:
    """The same across an upright line."""
    return tuple(
        Path(tuple(_turned(step) for step in path.steps), path.thickness_pt, path.stroke, path.fill)
        for path in break_mark(y_pt, x_pt)
    )


def dot(x_pt: float, y_pt: float, radius_pt: float, filled: bool = True) -> Path:
    """A round dot or ring."""
    r, k = radius_pt, radius_pt * ROUND
    x, y = x_pt, y_pt
    steps: tuple[PathStep, ...] = (
        ("M", x + r, y),
        ("C", x + r, y + k, x + k, y + r, x, y + r),
        ("C", x - k, y + r, x - r, y + k, x - r, y),
        ("C", x - r, y - k, x - k, y - r, x, y - r),
        ("C", x + k, y - r, x + r, y - k, x + r, y),
    )
    return Path(steps, LEAST_PT, BLACK, BLACK if filled else WHITE)


def left_brace(base_pt: float, top_pt: float, bottom_pt: float, depth_pt: float) -> Path:
    """An upright brace left of what it spans, its tip `depth_pt` left of its base."""
    return side_brace(base_pt, top_pt, bottom_pt, -depth_pt)


def at_angle(centre: Point, radius_pt: float, turn: float) -> Point:
    """The point so far from the centre; `turn` counts radians clockwise from straight up."""
    return centre[0] + radius_pt * sin(turn), centre[1] - radius_pt * cos(turn)


def arc_steps(centre: Point, radius_pt: float, start: float, end: float) -> list[PathStep]:
    """Curves along a circle from one turn to another, a piece for every 15 degrees or less.

    Short pieces, so that whoever reads only their ends still sees a circle.
    """
    count = max(1, ceil(abs(end - start) / (pi / 12) - 1e-9))
    part = (end - start) / count
    reach = 4 / 3 * tan(part / 4) * radius_pt
    steps: list[PathStep] = []
    for index in range(count):
        one, two = start + index * part, start + (index + 1) * part
        (x1, y1), (x2, y2) = at_angle(centre, radius_pt, one), at_angle(centre, radius_pt, two)
        out = (x1 + reach * cos(one), y1 + reach * sin(one))
        into = (x2 - reach * cos(two), y2 - reach * sin(two))
        steps.append(("C", *out, *into, x2, y2))
    return steps


def arc(
    centre: Point, radius_pt: float, start: float, end: float, thickness_pt: float = FINE_PT
) -> Path:
    """A part of a circle from one turn to another."""
    first: PathStep = ("M", *at_angle(centre, radius_pt, start))
    return Path((first, *arc_steps(centre, radius_pt, start, end)), thickness_pt)


def circle(centre: Point, radius_pt: float, thickness_pt: float = OUTLINE_PT) -> Path:
    """A whole circle, not filled."""
    return arc(centre, radius_pt, 0.0, 2 * pi, thickness_pt)
