"""Number lines: ticks to scale, two scales aligned, jumps that land where they say."""

from __future__ import annotations

from fractions import Fraction

import pytest

from typeset.arithmetic.figures import (
    DoubleNumberLine,
    Jump,
    Mark,
    NumberLine,
    PairTick,
    Show,
    Tick,
)
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, Rule, TextRun
from typeset.quantities.inline import words

ASKED = Mark(words("£30"), is_given=False)
LINE = DoubleNumberLine(
    "ropes",
    "pounds",
    (
        PairTick(Fraction(0), Mark(words("0")), Mark(words("0"))),
        PairTick(Fraction(3), Mark(words("3")), Mark(words("£7.50"))),
        PairTick(Fraction(12), Mark(words("12")), ASKED),
    ),
    (
        Jump(1, 2, Mark(words("× 4"), is_given=False, hidden=True)),
        Jump(2, 0, Mark(words("÷ 9"), is_given=False, hidden=True), below=True),
    ),
)


def ticks(drawing: Drawing) -> list[Rule]:
    rules = [shape for shape in drawing.shapes if isinstance(shape, Rule)]
    return [rule for rule in rules if rule.x1_pt == rule.x2_pt and rule.dash_pt is None]


def heads(drawing: Drawing) -> list[tuple[float, float]]:
    """The tips of the arrow heads that point up or down."""
    filled = [s for s in drawing.shapes if isinstance(s, Path) and s.fill is not None]
    tips = [(float(s.steps[0][1]), float(s.steps[0][2])) for s in filled]
    backs = [float(s.steps[1][1]) + float(s.steps[2][1]) for s in filled]
    return [tip for tip, back in zip(tips, backs, strict=True) if abs(back / 2 - tip[0]) < 0.01]


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]


def test_ticks_stand_to_scale_and_one_over_the_other() -> None:
    rows: dict[float, list[float]] = {}
    for tick in ticks(draw_figure(LINE, Show.COMPLETE, 400.0, 12.0)):
        rows.setdefault(round(tick.y1_pt, 6), []).append(tick.x1_pt)
    upper, lower = (sorted(xs) for _, xs in sorted(rows.items()))
    assert upper == pytest.approx(lower)
    assert (upper[1] - upper[0]) / (upper[2] - upper[0]) == pytest.approx(3 / 12)


def test_jumps_land_beside_their_ticks() -> None:
    drawing = draw_figure(LINE, Show.COMPLETE, 400.0, 12.0)
    xs = sorted({tick.x1_pt for tick in ticks(drawing)})
    above, below = sorted(heads(drawing), key=lambda tip: tip[1])
    # The arrow lands at its tick's value, a few points before the middle of it.
    assert abs(above[0] - xs[2]) < 4
    assert abs(below[0] - xs[0]) < 4
    assert above[1] < min(tick.y1_pt for tick in ticks(drawing))
    assert below[1] > max(tick.y2_pt for tick in ticks(drawing))


def test_hidden_jumps_appear_with_the_answer_only() -> None:
    first = draw_figure(LINE, Show.FIRST_STEP, 400.0, 12.0)
    assert heads(first) == []
    assert sorted(texts(first)) == sorted(["ropes", "pounds", "0", "0", "3", "£7.50", "12", "?"])
    complete = draw_figure(LINE, Show.COMPLETE, 400.0, 12.0)
    assert {"× 4", "÷ 9", "£30"} <= set(texts(complete))


def test_the_empty_frame_has_two_lines_and_a_start() -> None:
    frame = draw_figure(LINE, Show.FRAME, 400.0, 12.0)
    assert texts(frame) == ["ropes", "pounds"]
    assert len(ticks(frame)) == 2
    assert frame.height_pt >= 70.0  # room for a row of writing over and under the lines


def test_one_number_line_reads_in_order() -> None:
    marks = [Tick(Fraction(n), Mark(words(str(n)))) for n in (46, 50, 100)]
    line = NumberLine(
        tuple(marks), (Jump(0, 1, Mark(words("+ 4"))), Jump(1, 2, Mark(words("+ 50"))))
    )
    drawing = draw_figure(line, Show.FIRST_STEP, 400.0, 12.0)
    assert drawing.reads_as == (
        "Number line: ticks at 46, 50 and 100; + 4 from 46 to 50; + 50 from 50 to 100"
    )
    xs = sorted(tick.x1_pt for tick in ticks(drawing))
    assert (xs[1] - xs[0]) / (xs[2] - xs[0]) == pytest.approx(4 / 54)
