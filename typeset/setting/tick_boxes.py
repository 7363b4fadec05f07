"""Tick boxes with words after each, for sorting: in a row where they fit, else in fewer columns."""

from __future__ import annotations

from collections.abc import Sequence

from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.shapes import Drawing, Heard, Rect, Shape, heard_as, moved, on_new_line
from typeset.quantities.inline import BOX_TEXT, Rich, plain
from typeset.quantities.spoken import TICK_BOX
from typeset.setting.paragraphs import Paragraph, TextStyle, natural_width_pt, set_paragraph

# As high as a capital letter and a little more: 5 mm at 14 pt, enough for a pencil's tick.
_SIDE_EMS = 1.0
_TO_WORDS_EMS = 0.5
_BETWEEN_EMS = 2.2
_ROW_GAP_EMS = 0.7


def lay_out_tick_boxes(choices: Sequence[Rich], style: TextStyle, width_pt: float) -> Drawing:
    """The choices, each behind its box. Raises GlyphError, FitError for a word too wide."""
    lead = (_SIDE_EMS + _TO_WORDS_EMS) * style.size_pt
    widths = [lead + natural_width_pt(choice, style) for choice in choices]
    between = _BETWEEN_EMS * style.size_pt
    if sum(widths) + between * (len(choices) - 1) <= width_pt:
        return _row(choices, style, widths)
    for columns in range(len(choices) // 2, 1, -1):
        columns_pt = [max(widths[index::columns]) for index in range(columns)]
        if sum(columns_pt) + between * (columns - 1) <= width_pt:
            rows = [choices[i : i + columns] for i in range(0, len(choices), columns)]
            return _under_each_other([_row(row, style, columns_pt) for row in rows], style)
    return _under_each_other([_item(choice, style, width_pt) for choice in choices], style)


def tick_boxes_reading(choices: Sequence[Rich]) -> str:
    """What they read as: '[ ] multiply [ ] do not multiply'."""
    return " ".join(f"{BOX_TEXT} {plain(choice)}" for choice in choices)


def _row(choices: Sequence[Rich], style: TextStyle, widths: Sequence[float]) -> Drawing:
    """As many as there are, each in its width."""
    items = [_item(c, style, w + 1.0) for c, w in zip(choices, widths, strict=False)]
    baseline = max(item.baseline_pt for item in items)
    shapes: list[Shape] = []
    left = 0.0
    for item, width in zip(items, widths, strict=False):
        shapes += [moved(s, left, baseline - item.baseline_pt) for s in item.shapes]
        left += width + _BETWEEN_EMS * style.size_pt
    below = max(item.height_pt - item.baseline_pt for item in items)
    width = left - _BETWEEN_EMS * style.size_pt
    return Drawing(width, baseline + below, tuple(shapes), baseline)


def _under_each_other(rows: Sequence[Drawing], style: TextStyle) -> Drawing:
    shapes: list[Shape] = []
    top = 0.0
    for row in rows:
        shapes += [moved(shape, 0.0, top) for shape in row.shapes]
        top += row.height_pt + _ROW_GAP_EMS * style.size_pt
    width = max(row.width_pt for row in rows)
    return Drawing(width, top - _ROW_GAP_EMS * style.size_pt, tuple(shapes))


def _item(choice: Rich, style: TextStyle, width_pt: float) -> Drawing:
    """One box with its words, the box centred on the capitals of the first line."""
    side = _SIDE_EMS * style.size_pt
    lead = side + _TO_WORDS_EMS * style.size_pt
    paragraph: Paragraph = set_paragraph(choice, style, width_pt - lead)
    top = paragraph.baseline_pt - 0.34 * style.size_pt - side / 2
    drop = max(0.0, -top)
    box = Rect(0.0, top + drop, side, side, LEAST_RULE_PT, style.colour)
    ticked = heard_as((box,), Heard.WORDS, TICK_BOX)
    shapes = on_new_line((*ticked, *(moved(shape, lead, drop) for shape in paragraph.shapes)))
    height = max(paragraph.height_pt + drop, top + drop + side)
    width = lead + paragraph.width_pt
    return Drawing(width, height, shapes, paragraph.baseline_pt + drop)
