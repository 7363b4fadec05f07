"""Bar models: bars on one scale, values where they can be read, braces over what they mean.

Several arrangements are laid out (names beside or above the bars, in narrower or wider
columns; the total beside or below; full size or smaller) and the best one is kept.
"""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.figures import BarModel, Show
from typeset.drawing.bar_layout import BarPlan, bar_height, bar_row, bar_tops, differences
from typeset.drawing.bar_scale import BarScale, bar_scale
from typeset.drawing.bar_strokes import draw_differences, draw_row, draw_total
from typeset.drawing.bar_words import bar_model_words
from typeset.drawing.labels import Label, mark_label, plain_width_pt
from typeset.drawing.pens import BRACE_PT, OUTLINE_PT
from typeset.drawing.shapes import Drawing
from typeset.drawing.sketch import LABEL_SHARES, Sketch
from typeset.errors import FitError

_NAME_GAP_PT = 7.0
# A name column takes at most these shares of the width before it wraps further.
_NAME_SHARES = (1.0, 0.4, 0.3, 0.2)
_LEAST_BARS_PT = 60.0


def draw_bar_model(model: BarModel, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The bar model at most `width_pt` wide, in the best of its arrangements.

    Raises FitError where none of them shows every label clear of the others.
    """
    best: tuple[float, Drawing] | None = None
    problem: FitError | None = None
    least = len(model.bars) * LABEL_SHARES[-1] * size_pt
    for plan in _plans(model, show, width_pt, size_pt):
        if best is not None and _awkwardness(plan, size_pt) + least >= best[0]:
            continue
        try:
            cost, drawing = _drawn(model, show, width_pt, plan)
        except FitError as error:
            problem = error
            continue
        cost += _awkwardness(plan, size_pt)
        if best is None or cost < best[0]:
            best = cost, drawing
    if best is None:
        raise problem or FitError(f"a bar model needs more than {width_pt:.0f} pt")
    return best[1]


def _plans(model: BarModel, show: Show, width_pt: float, size_pt: float) -> Iterator[BarPlan]:
    """The arrangements that are worth trying."""
    totals = (True, False) if model.total is not None and show is not Show.FRAME else (True,)
    for share in LABEL_SHARES:
        size = share * size_pt
        natural = max(plain_width_pt(bar.name, size) for bar in model.bars)
        columns = {min(natural, part * width_pt) for part in _NAME_SHARES}
        for names in (*sorted(columns, reverse=True), None):
            if names is None and natural == 0:
                continue
            for beside in totals:
                yield BarPlan(size, names, beside)


def _awkwardness(plan: BarPlan, size_pt: float) -> float:
    """What an arrangement costs against a lower one, in points of height (our own weights)."""
    cost = (1 - plan.size_pt / size_pt) * 400
    cost += 40 if plan.names_pt is None else 0
    return cost if plan.total_beside else cost + 30


def _drawn(model: BarModel, show: Show, width_pt: float, plan: BarPlan) -> tuple[float, Drawing]:
    """The cost and the drawing of one arrangement. Raises FitError."""
    total = mark_label(model.total, show, plan.size_pt)
    left = OUTLINE_PT / 2
    if plan.names_pt:
        left += plan.names_pt + _NAME_GAP_PT
    right = width_pt - OUTLINE_PT / 2 - _total_width(total, plan)
    if right - left < min(_LEAST_BARS_PT, width_pt / 3):
        raise FitError(f"the names leave no room for the bars in {width_pt:.0f} pt")
    scale = bar_scale(model, left, right)
    rows = [
        bar_row(model, index, show, scale, (plan, left, right)) for index in range(len(model.bars))
    ]
    sketch = Sketch(width_pt)
    height = bar_height(rows, show, plan)
    tops = bar_tops(rows, height, show, plan)
    for row, top, index in zip(rows, tops, range(len(rows)), strict=True):
        draw_row(sketch, model, (row, index), (top, height), (show, plan, scale))
    draw_differences(sketch, differences(model, show), rows, tops, height)
    if total is not None:
        draw_total(sketch, total, plan, (right, tops[0], tops[-1] + height))
    drawing = sketch.finished(bar_model_words(model, show))
    return drawing.height_pt + _cramped(width_pt, right - left, scale), drawing


def _cramped(width_pt: float, bars_pt: float, scale: BarScale) -> float:
    """The cost of bars on less than half of the width, and of a broken scale."""
    narrow = max(0.0, 0.5 - bars_pt / width_pt) * 250
    return narrow + (60 if scale.breaks else 0)


def _total_width(total: Label | None, plan: BarPlan) -> float:
    if total is None:
        return 0.0
    return 4 + BRACE_PT + 3 + (total.width_pt if plan.total_beside else 3)
