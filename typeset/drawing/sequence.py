"""Number patterns: terms in boxes, and on the arrows between them what leads to the next."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.arithmetic.figures import SequenceBoxes, Show
from typeset.drawing.figure_words import sequence_words
from typeset.drawing.labels import Label, mark_label
from typeset.drawing.pens import OUTLINE_PT, straight_arrow
from typeset.drawing.shapes import BLACK, WHITE, Drawing, Rect
from typeset.drawing.sketch import Sketch, largest_that_fits
from typeset.errors import FitError

_SIDE_PT = 7.0
# A box to write a number in: 12 by 10 mm.
_LEAST_BOX_PT = 34.0
_LEAST_HEIGHT_PT = 28.5
_LEAST_ARROW_PT = 20.0
_CLEAR_PT = 2.5
_ROW_GAP_PT = 12.0


def draw_sequence(figure: SequenceBoxes, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """Equal boxes in as many rows as they need; an arrow leads into each box but the first.

    Raises FitError, GlyphError.
    """
    return largest_that_fits(lambda size: _sequence(figure, show, width_pt, size), size_pt)


def _sequence(figure: SequenceBoxes, show: Show, width_pt: float, size_pt: float) -> Drawing:
    sketch = Sketch(width_pt)
    terms = [mark_label(mark, show, size_pt) for mark in figure.terms]
    steps = [mark_label(mark, show, size_pt) for mark in figure.steps]
    box = max(_LEAST_BOX_PT, _widest(terms) + 2 * _SIDE_PT)
    arrow = max(_LEAST_ARROW_PT, _widest(steps) + 2 * _CLEAR_PT + 4)
    height = max([_LEAST_HEIGHT_PT, *(t.level_height_pt + 8 for t in terms if t is not None)])
    over = max((step.height_pt + _CLEAR_PT for step in steps if step is not None), default=0.0)
    down = max(height, height / 2 + over) + _ROW_GAP_PT
    x, middle = OUTLINE_PT, 0.0
    for index, term in enumerate(terms):
        lead = arrow if index else 0.0
        if x + lead + box > width_pt:
            x, middle = OUTLINE_PT, middle + down
        if x + lead + box > width_pt:
            raise FitError(f"a box of {box:.0f} pt does not fit in {width_pt:.0f} pt")
        if index:
            _draw_step(sketch, steps[index - 1], x, x + arrow, middle)
        x += lead
        sketch.add(Rect(x, middle - height / 2, box, height, OUTLINE_PT, BLACK, WHITE))
        if term is not None:
            sketch.put_level(term, x + box / 2, middle)
        x += box
    return sketch.finished(sequence_words(figure, show))


def _widest(labels: Sequence[Label | None]) -> float:
    return max((label.width_pt for label in labels if label is not None), default=0.0)


def _draw_step(
    sketch: Sketch, label: Label | None, left: float, right: float, middle: float
) -> None:
    sketch.add(*straight_arrow((left + _CLEAR_PT, middle), (right - _CLEAR_PT, middle)))
    if label is not None:
        sketch.put(label, (left + right - label.width_pt) / 2, middle - label.height_pt - _CLEAR_PT)
