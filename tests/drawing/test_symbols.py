"""Symbols that the face lacks are drawn, stay clear of their neighbours and survive a copier."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from types import MappingProxyType

import pytest

from typeset.drawing.boxes import bounds
from typeset.drawing.fonts import (
    TypeFamily,
    has_glyph,
    in_family,
    own_family,
    width_pt,
)
from typeset.drawing.inline_maths import lay_out_rich_line
from typeset.drawing.shapes import Face, Path, Rect, TextRun
from typeset.drawing.symbols import SYMBOLS, symbol_width_pt, text_width_pt
from typeset.quantities.inline import words

# 0.25 mm: our own choice for what a photocopier keeps (sources.md section 4).
LEAST_PT = 0.25 * 72 / 25.4


@pytest.mark.parametrize("symbol", sorted(SYMBOLS))
@pytest.mark.parametrize("size", [10.0, 24.0])
def test_a_symbol_keeps_within_its_width_and_the_line(symbol: str, size: float) -> None:
    line = lay_out_rich_line(words(symbol), size)
    (shape,) = line.shapes
    box = bounds(shape)
    assert box is not None
    assert 0 < box.left < box.right < line.width_pt
    assert 0 <= box.top < box.bottom <= line.height_pt
    assert line.width_pt == pytest.approx(symbol_width_pt(symbol, size))


@pytest.mark.parametrize("symbol", sorted(SYMBOLS))
def test_the_own_face_lacks_every_symbol_that_is_drawn(symbol: str) -> None:
    assert not any(has_glyph(symbol, face) for face in Face)


def test_letters_and_symbols_follow_each_other_without_overlap() -> None:
    text = "so 12 → 48 ✓ or ✗, □ ↔ □"
    line = lay_out_rich_line(words(text), 12.0)
    edges = []
    for shape in line.shapes:
        if isinstance(shape, TextRun):
            edges.append((shape.x_pt, shape.x_pt + width_pt(shape.text, 12.0)))
        else:
            box = bounds(shape)
            assert box is not None
            edges.append((box.left, box.right))
    assert all(before[1] <= after[0] for before, after in pairwise(edges))
    assert "".join(s.text for s in line.shapes if isinstance(s, TextRun)) == "so 12  48  or ,   "
    assert line.width_pt == pytest.approx(text_width_pt(text, 12.0))


def test_an_arrow_shaft_is_no_thinner_than_a_copier_keeps_at_the_smallest_size() -> None:
    (arrow,) = lay_out_rich_line(words("→"), 10.0).shapes
    assert isinstance(arrow, Path)
    left = min(float(step[1]) for step in arrow.steps)
    ends = {float(step[2]) for step in arrow.steps if abs(float(step[1]) - left) < 0.01}
    assert max(ends) - min(ends) >= LEAST_PT


def test_a_box_has_a_line_and_no_ground() -> None:
    (box,) = lay_out_rich_line(words("☐"), 10.0).shapes
    assert isinstance(box, Rect)
    assert box.width_pt == box.height_pt
    assert box.thickness_pt >= LEAST_PT
    assert box.fill is None


def test_a_font_that_has_the_sign_uses_its_own() -> None:
    own = own_family()
    widths = MappingProxyType({**own.regular.widths, ord("→"): 1000.0})
    richer = replace(own.regular, path=own.regular.path.with_name("richer.ttf"), widths=widths)
    with in_family(TypeFamily(richer, own.bold, own.measures)):
        (run,) = lay_out_rich_line(words("→"), 12.0).shapes
        assert isinstance(run, TextRun)
        assert run.text == "→"
    (drawn,) = lay_out_rich_line(words("→"), 12.0).shapes
    assert isinstance(drawn, Path)
