"""Posts and gaps along a line: one more post than gaps, as many, or one fewer."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.figures import PostsAndGaps, Show
from typeset.drawing.figure_words import posts_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import BRACE_PT, OUTLINE_PT, brace, dot, rule, straight_arrow
from typeset.drawing.shapes import BLACK, Drawing, Rect
from typeset.drawing.sketch import Sketch, largest_that_fits

_POST_WIDTH_PT = 3.0
_POST_HEIGHT_PT = 24.0
_LEAST_PITCH_PT = 14.0
_MOST_PITCH_PT = 60.0
_GAP_PT = 3.0
# A long row: this many gaps at its start, dots, and one gap at its end.
_FIRST_GAPS = 3
_WRITING_PT = 24.0


def draw_posts(figure: PostsAndGaps, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The row of posts with one gap's length, the whole length and the number of posts.

    Raises FitError, GlyphError.
    """
    return largest_that_fits(lambda size: _posts(figure, show, width_pt, size), size_pt)


def _posts(figure: PostsAndGaps, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    left, right = _POST_WIDTH_PT, width_pt - _POST_WIDTH_PT
    room = right - left
    folded = room / figure.gaps < _LEAST_PITCH_PT and figure.gaps > _FIRST_GAPS + 2
    drawn = _FIRST_GAPS + 2 if folded else figure.gaps
    pitch = min(_MOST_PITCH_PT, room / drawn)
    right = left + drawn * pitch
    sketch.add(rule((left, 0.0), (right, 0.0), OUTLINE_PT))
    if show is Show.FRAME:
        sketch.add(_post(left))
        sketch.room_to(-_POST_HEIGHT_PT - _WRITING_PT)
        sketch.room_to(_WRITING_PT)
        return sketch.finished(posts_words(figure, show))
    for x in _post_places(figure, left, pitch, drawn):
        sketch.add(_post(x))
    if folded:
        middle = left + (_FIRST_GAPS + 0.5) * pitch
        sketch.add(*(dot(middle + step, -_POST_HEIGHT_PT / 2, 1.3) for step in (-6, 0, 6)))
    _put_lengths(sketch, figure, (show, size_pt), (left, pitch, right))
    return sketch.finished(posts_words(figure, show))


def _post(x: float) -> Rect:
    left, top = x - _POST_WIDTH_PT / 2, -_POST_HEIGHT_PT
    return Rect(left, top, _POST_WIDTH_PT, _POST_HEIGHT_PT, OUTLINE_PT, BLACK, BLACK)


def _post_places(figure: PostsAndGaps, left: float, pitch: float, drawn: int) -> Sequence[float]:
    """The x of each post. As many posts as gaps: none at the start; one fewer: none at the end."""
    first = 0 if figure.posts > figure.gaps else 1
    last = drawn if figure.posts >= figure.gaps else drawn - 1
    return [left + step * pitch for step in range(first, last + 1)]


def _put_lengths(
    sketch: Sketch,
    figure: PostsAndGaps,
    look: tuple[Show, float],
    place: tuple[float, float, float],
) -> None:
    left, pitch, right = place
    gap = mark_label(figure.gap, *look)
    length = mark_label(figure.length, *look)
    count = mark_label(figure.count, *look)
    base = _GAP_PT
    if gap is not None:
        y = base + _GAP_PT
        sketch.add(*straight_arrow((left + 2, y), (left + pitch - 2, y), both_ends=True))
        _put_near(sketch, gap, left + pitch / 2, y + _GAP_PT)
        base = y + _GAP_PT + gap.height_pt
    if length is not None:
        sketch.add(brace(left, right, base + _GAP_PT, BRACE_PT))
        _put_near(sketch, length, (left + right) / 2, base + 1.5 * _GAP_PT + BRACE_PT)
    if count is not None:
        top = -_POST_HEIGHT_PT - _GAP_PT
        sketch.add(brace(left - _POST_WIDTH_PT / 2, right + _POST_WIDTH_PT / 2, top, -BRACE_PT))
        _put_near(sketch, count, (left + right) / 2, top - BRACE_PT - _GAP_PT / 2 - count.height_pt)


def _put_near(sketch: Sketch, label: Label, centre: float, top: float) -> None:
    """Centred where there is room, moved inwards at an edge."""
    left = max(0.0, min(centre - label.width_pt / 2, sketch.width_pt - label.width_pt))
    sketch.put(label, left, top)
