"""A check of any drawing that knows nothing of how labels were placed.

It reads the finished shapes only: the letters' own boxes against one another, against every
stroke, and against the figure's box.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

import pytest

from typeset.drawing.fonts import family, width_pt
from typeset.drawing.shapes import Drawing, Path, Rect, Rule, Shape, TextRun

Edges = tuple[float, float, float, float]
# 0.25 mm: the narrowest line that we trust to a photocopier (our choice; sources.md section 4).
LEAST_PT = 0.25 * 72 / 25.4
SLACK_PT = 0.06


def ink(run: TextRun) -> Edges:
    """Left, top, right, bottom of the letters, by the font's own cap height."""
    tall = family().file(run.face).cap_height / 1000 * run.size_pt
    deep = 0.2 * run.size_pt if any(letter in "gjpqy,;_" for letter in run.text) else 0.0
    right = run.x_pt + width_pt(run.text, run.size_pt, run.face)
    return run.x_pt, run.y_pt - tall, right, run.y_pt + deep


def points_of(shape: Shape) -> Iterator[tuple[float, float]]:
    """Points along a stroke, at most about half a point apart."""
    lines: list[tuple[tuple[float, float], tuple[float, float]]] = []
    match shape:
        case Rule():
            lines = [((shape.x1_pt, shape.y1_pt), (shape.x2_pt, shape.y2_pt))]
        case Rect() if shape.thickness_pt > 0:
            a, b = shape.x_pt, shape.y_pt
            c, d = a + shape.width_pt, b + shape.height_pt
            lines = [((a, b), (c, b)), ((c, b), (c, d)), ((c, d), (a, d)), ((a, d), (a, b))]
        case Path():
            here = (0.0, 0.0)
            for command, *numbers in shape.steps:
                values = [float(number) for number in numbers]
                if command == "C":
                    yield from curve(here, values)
                elif command == "L":
                    lines.append((here, (values[0], values[1])))
                here = (values[-2], values[-1])
        case _:
            pass
    for (x1, y1), (x2, y2) in lines:
        count = int((abs(x2 - x1) + abs(y2 - y1)) * 2) + 1
        for step in range(count + 1):
            yield x1 + (x2 - x1) * step / count, y1 + (y2 - y1) * step / count


def curve(start: tuple[float, float], values: list[float]) -> Iterator[tuple[float, float]]:
    ends = [start, *zip(values[::2], values[1::2], strict=True)]
    for step in range(25):
        t = step / 24
        row = ends
        while len(row) > 1:  # de Casteljau's construction
            row = [(p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t) for p, q in pairwise(row)]
        yield row[0]


def complaints(drawing: Drawing) -> Iterator[str]:
    runs = [shape for shape in drawing.shapes if isinstance(shape, TextRun)]
    lines = [shape for shape in drawing.shapes if not isinstance(shape, TextRun)]
    boxes = [(run.text, ink(run)) for run in runs if run.text.strip()]
    for index, (text, box) in enumerate(boxes):
        for other, its in boxes[:index]:
            across = min(box[2], its[2]) - max(box[0], its[0])
            down = min(box[3], its[3]) - max(box[1], its[1])
            if across > SLACK_PT and down > SLACK_PT:
                yield f"'{text}' and '{other}' overlap"
        if box[0] < -SLACK_PT or box[2] > drawing.width_pt + SLACK_PT:
            yield f"'{text}' leaves the width"
        if box[1] < -SLACK_PT or box[3] > drawing.height_pt + SLACK_PT:
            yield f"'{text}' leaves the height"
    for line in lines:
        assert not isinstance(line, TextRun)
        # A rectangle without a line of its own is a tint.
        bare = isinstance(line, Rect) and line.thickness_pt == 0
        if line.thickness_pt < LEAST_PT - 1e-9 and not bare:
            yield f"{line} is thinner than 0.25 mm"
        for x, y in points_of(line):
            if not (-SLACK_PT <= x <= drawing.width_pt + SLACK_PT):
                yield f"{line} leaves the width"
                break
            if not (-SLACK_PT <= y <= drawing.height_pt + SLACK_PT):
                yield f"{line} leaves the height"
                break
            crossed = [t for t, b in boxes if b[0] < x < b[2] and b[1] < y < b[3]]
            if crossed:
                yield f"{line} crosses '{crossed[0]}'"
                break


def check_clean(drawing: Drawing) -> None:
    found = list(complaints(drawing))
    assert not found, "\n".join(found)


@pytest.fixture(scope="session")
def assert_clean() -> Callable[[Drawing], None]:
    """Fails where labels touch, a stroke crosses one or is too thin, or anything leaves the box."""
    return check_clean
