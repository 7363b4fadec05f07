"""Ratio tables and two-way tables: every cell, arrows between the right columns, folding."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from typeset.arithmetic.figures import Choice, Jump, Mark, RatioTable, Show, TwoWayTable
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, Rect, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import words

KITES = RatioTable(
    ("kites", "metres"),
    (
        tuple(Mark(words(text)) for text in ("4", "2", "6")),
        tuple(Mark(words(text), is_given=text == "14") for text in ("14", "7", "21")),
    ),
    (Jump(0, 1, Mark(words("÷ 2"))), Jump(1, 2, Mark(words("× 3")), below=True)),
    (Jump(0, 1, Mark(words("× 3.5"))),),
)


def cells(drawing: Drawing) -> list[Rect]:
    """The fields, without the frame round all of them."""
    found = [shape for shape in drawing.shapes if isinstance(shape, Rect)]
    return found[:-1]


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]


def tips(drawing: Drawing) -> list[tuple[float, float]]:
    filled = [s for s in drawing.shapes if isinstance(s, Path) and s.fill is not None]
    return [(float(s.steps[0][1]), float(s.steps[0][2])) for s in filled]


def table(rows: int, columns: int) -> TwoWayTable:
    down = Choice("sail", tuple(f"s{n}" for n in range(rows)))
    across = Choice("flag", tuple(f"f{n}" for n in range(columns)))
    marks = tuple(
        tuple(Mark(words(f"{d}{a}"), is_given=d == "s0", hidden=True) for a in across.options)
        for d in down.options
    )
    return TwoWayTable(down, across, marks, Mark(words(f"{rows * columns} kites"), is_given=False))


def test_arrows_land_on_the_columns_and_rows_they_name() -> None:
    drawing = draw_figure(KITES, Show.COMPLETE, 400.0, 12.0)
    fields = cells(drawing)
    assert len(fields) == 6
    middles = sorted({field.x_pt + field.width_pt / 2 for field in fields})
    top = min(field.y_pt for field in fields)
    bottom = max(field.y_pt + field.height_pt for field in fields)
    right = max(field.x_pt + field.width_pt for field in fields)
    over, under, beside = tips(drawing)
    assert abs(over[0] - middles[1]) < 4
    assert over[1] < top
    assert abs(under[0] - middles[2]) < 4
    assert under[1] > bottom
    assert beside[0] > right
    assert top < beside[1] < bottom


def test_an_empty_table_keeps_its_names_and_room_to_write() -> None:
    drawing = draw_figure(KITES, Show.FRAME, 400.0, 12.0)
    assert texts(drawing) == ["kites", "metres"]
    # 12 by 9 mm: our own choice for a number in a child's hand.
    assert all(cell.width_pt >= 34.0 and cell.height_pt >= 25.5 for cell in cells(drawing))


def test_every_pair_stands_in_its_row_and_column() -> None:
    drawing = draw_figure(table(3, 4), Show.COMPLETE, 400.0, 12.0)
    runs = {shape.text: shape for shape in drawing.shapes if isinstance(shape, TextRun)}
    for row, column in product(range(3), range(4)):
        run = runs[f"s{row}f{column}"]
        field = cells(drawing)[row * 4 + column]
        assert field.x_pt < run.x_pt < field.x_pt + field.width_pt
        assert field.y_pt < run.y_pt < field.y_pt + field.height_pt
        assert runs[f"s{row}"].x_pt < field.x_pt
        assert runs[f"f{column}"].y_pt < field.y_pt
    assert "12 kites" in runs


def test_the_first_step_shows_the_row_that_is_given() -> None:
    seen = texts(draw_figure(table(3, 4), Show.FIRST_STEP, 400.0, 12.0))
    assert {"s0f0", "s0f3", "?"} <= set(seen)
    assert "s1f0" not in seen


def test_a_large_table_is_told_in_part_with_its_last_row_and_column() -> None:
    drawing = draw_figure(table(20, 30), Show.COMPLETE, 400.0, 12.0)
    seen = texts(drawing)
    assert seen.count("…") == 2
    assert {"s0", "s19", "f0", "f29", "s19f29"} <= set(seen)
    assert "s10" not in seen
    assert drawing.height_pt < 300


WIDE = RatioTable(
    ("a", "b"),
    tuple(tuple(Mark(words(f"{row}23,456,78{at}")) for at in range(4)) for row in (1, 2)),
    (
        Jump(0, 1, Mark(words("× 3"))),
        Jump(0, 1, Mark(words("÷ 3")), below=True),
    ),
)


def test_a_table_too_wide_for_its_room_is_turned(assert_clean: Callable[[Drawing], None]) -> None:
    drawing = draw_figure(WIDE, Show.COMPLETE, 230.0, 12.0)
    assert_clean(drawing)
    at = {s.text: (s.x_pt, s.y_pt) for s in drawing.shapes if isinstance(s, TextRun)}
    for row in (1, 2):
        ys = [at[f"{row}23,456,78{column}"][1] for column in range(4)]
        assert ys == sorted(ys)
        xs = [at[f"{row}23,456,78{column}"][0] for column in range(4)]
        assert max(xs) - min(xs) < 3
    # What ran over the table runs at its left, what ran under it at its right.
    assert at["× 3"][0] < at["123,456,780"][0] < at["223,456,780"][0] < at["÷ 3"][0]


def test_a_table_too_wide_even_when_turned_is_an_error() -> None:
    with pytest.raises(FitError, match="2 columns"):
        draw_figure(WIDE, Show.COMPLETE, 100.0, 12.0)
