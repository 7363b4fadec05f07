"""Drawn symbols read back from a PDF: as the words that they stand in, and none for another."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.drawing.test_figures import KINDS
from typeset.arithmetic.figures import Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.inline_maths import lay_out_rich_line
from typeset.drawing.shapes import Path, Shape, moved
from typeset.errors import FitError
from typeset.proofing.expected import rich_words
from typeset.proofing.page_marks import Word
from typeset.proofing.read_back import read_document
from typeset.proofing.symbols_read import symbol_of
from typeset.quantities.inline import words
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf

MM = 72 / 25.4


def pdf_of(shapes: tuple[Shape, ...]) -> bytes:
    placed = Placed(Role.TEXT, 50, 60, 400, 40, tuple(moved(s, 50.0, 60.0) for s in shapes))
    return write_pdf(Document("Quay", "", (Page(210 * MM, 297 * MM, (placed,)),), 12))


def read(text: str, size: float) -> tuple[Word, ...]:
    shapes = lay_out_rich_line(words(text), size).shapes
    return read_document(pdf_of(shapes), "quay.pdf").words


@pytest.mark.parametrize("size", [10.0, 12.0, 18.0, 24.0])
@pytest.mark.parametrize(
    "text",
    [
        "12 → 48",
        "a ← b ↔ c",
        "up ↑ or down ↓",
        "right ✓ wrong ✗",
        "(✓)",
        "✔ or ✘,",
        "□ + 3 = ☐",
        "→",
    ],
)
def test_symbols_are_read_where_they_stand(text: str, size: float) -> None:
    assert tuple(word.text for word in read(text, size)) == rich_words(words(text))


@given(st.lists(st.sampled_from([*"→←↔↑↓✓✗", "gulls", "12", "(✓)", "4,"]), min_size=1, max_size=8))
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_mixture_is_read_in_order(parts: list[str]) -> None:
    assert [word.text for word in read(" ".join(parts), 12.0)] == parts


@pytest.mark.parametrize(("drawn", "wanted"), [("→", "←"), ("↑", "↓"), ("✓", "✗"), ("↔", "→")])
def test_another_symbol_in_its_place_is_another_word(drawn: str, wanted: str) -> None:
    assert [word.text for word in read(f"12 {drawn} 48", 12.0)] != list(
        rich_words(words(f"12 {wanted} 48"))
    )


def test_a_symbol_mirrored_on_the_page_is_found() -> None:
    (arrow,) = lay_out_rich_line(words("→"), 12.0).shapes
    assert isinstance(arrow, Path)
    across = max(float(step[1]) for step in arrow.steps)
    turned = tuple((c, across - float(x), y) for c, x, y in arrow.steps)
    shapes = (
        *lay_out_rich_line(words("12"), 12.0).shapes,
        moved(Path(turned, 0.0, fill=arrow.fill), 30.0, 0.0),
    )
    found = [word.text for word in read_document(pdf_of(shapes), "quay.pdf").words]
    assert found == ["12", "←"]


@pytest.mark.parametrize("kind", KINDS)
@settings(max_examples=5, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_no_stroke_of_a_figure_is_taken_for_a_symbol(kind: str, data: st.DataObject) -> None:
    try:
        drawing = draw_figure(data.draw(KINDS[kind]), Show.COMPLETE, 480.0, 12.0)
    except FitError:
        return
    pages = read_document(pdf_of(drawing.shapes), "quay.pdf").pages
    assert [
        symbol_of(stroke) for page in pages for stroke in page.strokes if symbol_of(stroke)
    ] == []
