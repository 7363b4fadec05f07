"""Arrays of dots and rectangles whose sides are multiplied."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from typeset.arithmetic.figures import AreaRectangle, DotArray, Part, Show
from typeset.drawing.figure_words import area_words, array_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import (
    BRACE_PT,
    OUTLINE_PT,
    brace,
    break_mark,
    break_mark_upright,
    dot,
    left_brace,
)
from typeset.drawing.placing import place_rows
from typeset.drawing.shapes import BLACK, WHITE, Drawing, Rect
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

_GAP_PT = 3.0
# Nearer to its true proportion than this, a rectangle is drawn to scale.
_NEAR_TRUE = 0.02
# Breaks stand off the middle, where a brace has its tip.
_BREAK_AT = 0.7
_BREAK_ROOM_PT = 4.0
_MOST_DOTS = 20
_PITCH_PT = 16.0
_LEAST_PITCH_PT = 6.5
_MOST_WIDTH_PT = 300.0
_MOST_HEIGHT_PT = 160.0
# A side that would be a line, not a side, is drawn so long; the other is then not to scale,
# and is marked as broken.
_LEAST_SIDE_PT = 24.0
# Room above and beside an empty rectangle for the pupil's numbers (8 mm).
_WRITING_PT = 23.0


def draw_array(array: DotArray, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """Dots in rows and columns, or a rectangle where they are too many to be counted.

    Raises FitError, GlyphError.
    """
    return largest_that_fits(lambda size: _array(array, show, width_pt, size), size_pt)


def draw_area(figure: AreaRectangle, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """A divided rectangle; its sides in proportion where every product fits so.

    Raises FitError, GlyphError.
    """
    return largest_that_fits(lambda size: _area(figure, show, width_pt, size), size_pt)


def _array(array: DotArray, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    down = mark_label(array.down, show, size_pt)
    across = mark_label(array.across, show, size_pt)
    left = _WRITING_PT if show is Show.FRAME else OUTLINE_PT
    if down is not None:
        left = down.width_pt + 2.5 * _GAP_PT + BRACE_PT
    room = width_pt - left - _BREAK_ROOM_PT
    pitch = min(_PITCH_PT, room / array.columns)
    counted = array.rows <= _MOST_DOTS and array.columns <= _MOST_DOTS
    if counted and pitch >= _LEAST_PITCH_PT:
        width, height = pitch * array.columns, pitch * array.rows
        if show is Show.FRAME:
            _outline(sketch, left, width, height, show)
        else:
            _draw_dots(sketch, array, left, pitch)
    else:
        width, height = _sides(Fraction(array.columns), Fraction(array.rows), room)
        _outline(sketch, left, width, height, show)
        sides = Fraction(array.columns), Fraction(array.rows)
        _put_breaks(sketch, (left, width, height), sides)
    _label_sides(sketch, (left, width, height), down, across)
    total = mark_label(array.total, show, size_pt)
    if total is not None:
        centre = min(left + width / 2, width_pt - total.width_pt / 2)
        sketch.put(total, max(0.0, centre - total.width_pt / 2), height + 2 * _GAP_PT)
    return sketch.finished(array_words(array, show))


def _draw_dots(sketch: Sketch, array: DotArray, left: float, pitch: float) -> None:
    for row in range(array.rows):
        for column in range(array.columns):
            x, y = left + (column + 0.5) * pitch, (row + 0.5) * pitch
            sketch.add(dot(x, y, pitch * 0.25))


def _outline(sketch: Sketch, left: float, width: float, height: float, show: Show) -> None:
    if show is Show.FRAME:
        sketch.room_to(-_WRITING_PT)
    sketch.add(Rect(left, 0.0, width, height, OUTLINE_PT, BLACK, WHITE))


def _sides(across: Fraction, down: Fraction, room_pt: float) -> tuple[float, float]:
    """Width and height: in proportion, as large as there is room, but no side a mere line."""
    most = min(room_pt, _MOST_WIDTH_PT)
    scale = min(most / float(across), _MOST_HEIGHT_PT / float(down))
    width, height = float(across) * scale, float(down) * scale
    return max(width, min(_LEAST_SIDE_PT, most)), max(height, _LEAST_SIDE_PT)


def _put_breaks(
    sketch: Sketch, place: tuple[float, float, float], sides: tuple[Fraction, Fraction]
) -> None:
    """Marks on the longer sides of a rectangle that is not in proportion."""
    left, width, height = place
    true, drawn = float(sides[0] / sides[1]), width / height
    if abs(drawn / true - 1) < _NEAR_TRUE:
        return
    if drawn < true:
        for y in (0.0, height):
            sketch.add(*break_mark(left + _BREAK_AT * width, y))
    else:
        for x in (left, left + width):
            sketch.add(*break_mark_upright(x, _BREAK_AT * height))


def _label_sides(
    sketch: Sketch,
    place: tuple[float, float, float],
    down: Label | None,
    across: Label | None,
) -> None:
    """A brace and a label over the width, and beside the height."""
    left, width, height = place
    if across is not None:
        sketch.add(brace(left, left + width, -_GAP_PT, -BRACE_PT))
        middle = left + width / 2
        low = max(0.0, min(middle - across.width_pt / 2, sketch.width_pt - across.width_pt))
        sketch.put(across, low, -_GAP_PT - BRACE_PT - _GAP_PT / 2 - across.height_pt)
    if down is not None:
        sketch.add(left_brace(left - _GAP_PT, 0.0, height, BRACE_PT))
        sketch.put(down, 0.0, height / 2 - down.middle_pt)


def _area(figure: AreaRectangle, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    downs = [mark_label(part.mark, show, size_pt) for part in figure.heights]
    acrosses = [mark_label(part.mark, show, size_pt) for part in figure.widths]
    cells = [[mark_label(mark, show, size_pt) for mark in row] for row in figure.cells]
    least = _WRITING_PT if show is Show.FRAME else 0.0
    left = max((label.width_pt for label in downs if label), default=least) + 2 * _GAP_PT
    room = width_pt - left - OUTLINE_PT
    width, height = _sides(_length(figure.widths), _length(figure.heights), room)
    columns = _divided(figure.widths, width, room, _needs(list(zip(*cells, strict=True)), True))
    row_needs = _needs(cells, False)
    row_needs = [
        max(need, (label.level_height_pt if label else 0.0) + _GAP_PT)
        for need, label in zip(row_needs, downs, strict=True)
    ]
    rows = _divided(figure.heights, height, 10 * height, row_needs)
    if show is Show.FRAME:
        _outline(sketch, left, sum(columns), sum(rows), show)
    else:
        _draw_fields(sketch, left, columns, rows, cells)
        _label_parts(sketch, left, columns, acrosses)
        _label_rows(sketch, left, rows, downs)
    total = mark_label(figure.total, show, size_pt)
    if total is not None:
        low = max(0.0, left + sum(columns) / 2 - total.width_pt / 2)
        sketch.put(total, min(low, width_pt - total.width_pt), sum(rows) + 2 * _GAP_PT)
    return sketch.finished(area_words(figure, show))


def _length(parts: Sequence[Part]) -> Fraction:
    return sum((part.size for part in parts), Fraction(0))


def _needs(lines: Sequence[Sequence[Label | None]], wide: bool) -> list[float]:
    """The least width of each column, or height of each row, for its products."""
    return [
        max(
            (
                (label.width_pt if wide else label.level_height_pt) + 2 * _GAP_PT
                for label in labels
                if label is not None
            ),
            default=2 * _GAP_PT,
        )
        for labels in lines
    ]


def _divided(
    parts: Sequence[Part], length_pt: float, most_pt: float, needs: Sequence[float]
) -> list[float]:
    """In proportion where every part gets what it needs so; else what is spare in proportion.

    Raises FitError where the needs exceed `most_pt`.
    """
    whole = _length(parts)
    true = [float(part.size / whole) * length_pt for part in parts]
    if all(have >= need for have, need in zip(true, needs, strict=True)):
        return true
    if sum(needs) > most_pt:
        raise FitError(
            f"the fields of a rectangle need {sum(needs):.0f} pt and have {most_pt:.0f} pt; "
            "fewer fields or a wider column would help"
        )
    spare = max(0.0, length_pt - sum(needs))
    return [
        need + float(part.size / whole) * spare for part, need in zip(parts, needs, strict=True)
    ]


def _draw_fields(
    sketch: Sketch,
    left: float,
    columns: Sequence[float],
    rows: Sequence[float],
    cells: Sequence[Sequence[Label | None]],
) -> None:
    y = 0.0
    for height, labels in zip(rows, cells, strict=True):
        x = left
        for width, label in zip(columns, labels, strict=True):
            sketch.add(Rect(x, y, width, height, OUTLINE_PT, BLACK, WHITE))
            if label is not None:
                sketch.put_level(label, x + width / 2, y + height / 2)
            x += width
        y += height


def _label_parts(
    sketch: Sketch, left: float, columns: Sequence[float], labels: Sequence[Label | None]
) -> None:
    anchors, shown, x = [], [], left
    for width, label in zip(columns, labels, strict=True):
        if label is not None:
            anchors.append(x + width / 2)
            shown.append(label)
        x += width
    sketch.put_rows(place_rows(anchors, shown, 0.0, sketch.width_pt), -OUTLINE_PT, up=True)


def _label_rows(
    sketch: Sketch, left: float, rows: Sequence[float], labels: Sequence[Label | None]
) -> None:
    y = 0.0
    for height, label in zip(rows, labels, strict=True):
        if label is not None:
            sketch.put(
                label,
                left - 2 * _GAP_PT - label.width_pt + _GAP_PT,
                y + height / 2 - label.middle_pt,
            )
        y += height
