"""Number patterns: equal boxes in reading order, an arrow into each but the first."""

from __future__ import annotations

from typeset.arithmetic.figures import Mark, SequenceBoxes, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, Rect, TextRun
from typeset.quantities.inline import words


def pattern(count: int) -> SequenceBoxes:
    terms = tuple(Mark(words(f"{1000 + 3 * n:,}"), is_given=n < 3) for n in range(count))
    steps = tuple(Mark(words("+ 3"), is_given=False, hidden=True) for _ in range(count - 1))
    return SequenceBoxes(terms, steps)


def boxes(drawing: Drawing) -> list[Rect]:
    return [shape for shape in drawing.shapes if isinstance(shape, Rect)]


def test_boxes_are_equal_and_terms_stand_in_them_in_order() -> None:
    drawing = draw_figure(pattern(14), Show.COMPLETE, 300.0, 12.0)
    found = boxes(drawing)
    assert len(found) == 14
    assert len({(round(box.width_pt, 6), round(box.height_pt, 6)) for box in found}) == 1
    assert found == sorted(found, key=lambda box: (round(box.y_pt, 3), box.x_pt))
    runs = {s.text: s for s in drawing.shapes if isinstance(s, TextRun)}
    for n, box in enumerate(found):
        run = runs[f"{1000 + 3 * n:,}"]
        assert box.x_pt < run.x_pt < box.x_pt + box.width_pt
        assert box.y_pt < run.y_pt < box.y_pt + box.height_pt
    heads = [s for s in drawing.shapes if isinstance(s, Path) and s.fill is not None]
    assert len(heads) == 13


def test_terms_to_find_are_asked_and_the_rule_stays_hidden() -> None:
    drawing = draw_figure(pattern(5), Show.FIRST_STEP, 400.0, 12.0)
    texts = [s.text for s in drawing.shapes if isinstance(s, TextRun)]
    assert texts == ["1,000", "1,003", "1,006", "?", "?"]
    assert drawing.reads_as == "Number pattern in boxes: 1,000, 1,003, 1,006, ?, ?"


def test_empty_boxes_have_room_for_a_number_by_hand() -> None:
    frame = draw_figure(pattern(5), Show.FRAME, 400.0, 12.0)
    assert not [s for s in frame.shapes if isinstance(s, TextRun)]
    # 12 by 10 mm: our own choice.
    assert all(box.width_pt >= 34.0 and box.height_pt >= 28.3 for box in boxes(frame))
