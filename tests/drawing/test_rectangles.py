"""Arrays and divided rectangles: as many dots as the product, sides in proportion."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from typeset.arithmetic.figures import AreaRectangle, DotArray, Mark, Part, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Path, Rect, TextRun
from typeset.quantities.inline import words


def mark(number: int, given: bool = True) -> Mark:
    return Mark(words(f"{number:,}"), given)


def dots(drawing: Drawing) -> list[Path]:
    return [s for s in drawing.shapes if isinstance(s, Path) and s.fill is not None]


def rects(drawing: Drawing) -> list[Rect]:
    return [shape for shape in drawing.shapes if isinstance(shape, Rect)]


def area(widths: tuple[int, ...], heights: tuple[int, ...]) -> AreaRectangle:
    cells = tuple(tuple(mark(w * h, given=False) for w in widths) for h in heights)
    sides = [tuple(Part(Fraction(n), mark(n)) for n in side) for side in (widths, heights)]
    return AreaRectangle(sides[0], sides[1], cells)


@pytest.mark.parametrize(("rows", "columns"), [(1, 1), (4, 7), (12, 3), (20, 20)])
def test_an_array_has_as_many_dots_as_the_product(rows: int, columns: int) -> None:
    array = DotArray(rows, columns, mark(rows), mark(columns))
    centres = [s.steps[0] for s in dots(draw_figure(array, Show.COMPLETE, 400.0, 12.0))]
    assert len(centres) == rows * columns
    assert len({round(float(c[1]), 4) for c in centres}) == columns
    assert len({round(float(c[2]), 4) for c in centres}) == rows


def test_an_array_too_large_to_count_is_a_rectangle() -> None:
    array = DotArray(23, 48, mark(23), mark(48))
    drawing = draw_figure(array, Show.COMPLETE, 400.0, 12.0)
    assert dots(drawing) == []
    (only,) = rects(drawing)
    assert only.width_pt / only.height_pt == pytest.approx(48 / 23)


def test_an_empty_array_shows_no_dots_to_count() -> None:
    frame = draw_figure(DotArray(4, 7, mark(4), mark(7)), Show.FRAME, 400.0, 12.0)
    assert dots(frame) == []
    assert not [shape for shape in frame.shapes if isinstance(shape, TextRun)]


def test_fields_are_in_proportion_where_their_products_fit() -> None:
    fields = rects(draw_figure(area((40, 8), (20, 10)), Show.COMPLETE, 400.0, 12.0))
    assert len(fields) == 4
    assert fields[0].width_pt / fields[1].width_pt == pytest.approx(40 / 8)
    assert fields[0].height_pt / fields[2].height_pt == pytest.approx(20 / 10)


def test_each_product_stands_in_its_field_however_small(
    assert_clean: Callable[[Drawing], None],
) -> None:
    drawing = draw_figure(area((4000, 300, 20, 2), (90, 7)), Show.COMPLETE, 400.0, 12.0)
    assert_clean(drawing)
    runs = {s.text: s for s in drawing.shapes if isinstance(s, TextRun)}
    fields = rects(drawing)
    for index, (height, width) in enumerate((h, w) for h in (90, 7) for w in (4000, 300, 20, 2)):
        run, field = runs[f"{width * height:,}"], fields[index]
        assert field.x_pt < run.x_pt < field.x_pt + field.width_pt
        assert field.y_pt < run.y_pt < field.y_pt + field.height_pt
    # Larger parts stay larger.
    widths = [field.width_pt for field in fields[:4]]
    assert widths == sorted(widths, reverse=True)


@pytest.mark.parametrize(("rows", "columns"), [(21, 23), (21, 60), (60, 21), (25, 300), (300, 22)])
def test_a_large_array_is_to_scale_or_marked_as_broken(rows: int, columns: int) -> None:
    drawing = draw_figure(
        DotArray(rows, columns, mark(rows), mark(columns)), Show.COMPLETE, 400.0, 12.0
    )
    (only,) = rects(drawing)
    is_true = only.width_pt / only.height_pt == pytest.approx(columns / rows, rel=0.02)
    assert is_true == (dots(drawing) == [])
    assert min(only.width_pt, only.height_pt) >= 24.0 - 1e-9
    assert (only.width_pt > only.height_pt) == (columns > rows)
