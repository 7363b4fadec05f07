"""Operators of a page's content: reportlab's own canvas is the outside reference for numbers and
strings, and a drawing by it for whole pages."""

from __future__ import annotations

import subprocess
import sys
from importlib.util import find_spec
from io import BytesIO
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from pypdf.generic import ArrayObject
from reportlab.lib.rl_accel import fp_str
from reportlab.pdfgen.canvas import Canvas

from typeset.drawing.fonts import own_family
from typeset.drawing.shapes import Face, Path, Rect, Rule, Shape, TextRun, grey
from typeset.errors import GlyphError
from typeset.setting.content import Letters, Pen, number
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf
from typeset.setting.pdf_fonts import font_name
from typeset.setting.pdf_parts import identified

PAGE_PT = (400.0, 500.0)
GREEN = (0.9, 1.0, 0.85)


def canvas() -> Any:
    return Canvas(BytesIO(), pagesize=PAGE_PT, initialFontName=font_name(Face.REGULAR))


def pen_on(own: Any) -> Pen:
    return Pen({face: Letters(own, face) for face in Face}, PAGE_PT[1])


NUMBERS = (
    *(0, 1, -1, 10, 100, 1000, 0.5, -0.5, 1e-7, 2e-7, -3e-7, 0.1 + 0.2, 12.0, 16.8),
    *(9.9999999, 99.999996, 999.99996, 1000.00049, 1190.5512, 841.8897637795, 0.70866141732),
)


@pytest.mark.parametrize("value", NUMBERS)
def test_a_number_is_as_reportlab_writes_it(value: float) -> None:
    assert number(value) == fp_str(value)


@given(st.floats(-3000, 3000) | st.floats(-1, 1) | st.integers(-2000, 2000))
@settings(max_examples=500, deadline=None)
def test_any_number_is_as_reportlab_writes_it(value: float) -> None:
    assert number(value) == fp_str(value)


@pytest.mark.parametrize("text", ["gulls", "(6 × 12) ÷ 3 \\ 2", "£1.20 – ‘best’", "a\u00a0b", ""])
def test_a_text_is_as_reportlab_writes_it(text: str) -> None:
    theirs, pen = canvas(), pen_on(canvas())
    theirs.setFont(font_name(Face.BOLD), 14)
    theirs.drawString(50, 400, text.replace("\u00a0", " "))
    pen.draw([TextRun(50, 100, text, 14, Face.BOLD)])
    assert pen.code == ["0 g", theirs._code[-1]]


def test_a_text_in_more_letters_than_a_subset_holds_is_as_reportlab_writes_it() -> None:
    letters = sorted(chr(code) for code in own_family().regular.widths if code > 0xA0)
    # The first subset keeps 95 of its 256 codes for ASCII.
    assert len(letters) > 256 - 95, "the face has too few letters for this test"
    theirs, pen = canvas(), pen_on(canvas())
    theirs.setFont(font_name(Face.REGULAR), 14)
    lines = ["".join(letters[i : i + 40]) for i in range(0, len(letters), 40)]
    for line in [*lines, "gulls", lines[0][:3] + lines[-1]]:
        theirs.drawString(50, 400, line)
        pen.draw([TextRun(50, 100, line, 14)])
        assert pen.code[-1] == theirs._code[-1]


def test_lines_and_areas_are_as_reportlab_writes_them() -> None:
    theirs, pen = canvas(), pen_on(canvas())
    theirs.setStrokeGray(0.55)
    theirs.setLineWidth(0.75)
    theirs.setDash([2.5, 2.0])
    theirs.line(10, 490, 20.123456789, 480)
    theirs.setStrokeColorRGB(*GREEN)
    theirs.setFillGray(0.9)
    theirs.setDash([])
    theirs.rect(10, 400, 30, 90, stroke=1, fill=1)
    theirs.rect(10, 400, 30, 90, stroke=0, fill=1)
    theirs.setFillColorRGB(*GREEN)
    path = theirs.beginPath()
    path.moveTo(1, 499)
    path.lineTo(2, 498)
    path.curveTo(3, 497, 4, 496, 5, 495)
    theirs.drawPath(path, stroke=1, fill=1)
    steps = (("M", 1, 1), ("L", 2, 2), ("C", 3, 3, 4, 4, 5, 5))
    shapes: tuple[Shape, ...] = (
        Rule(10, 10, 20.123456789, 20, 0.75, grey(0.55), (2.5, 2.0)),
        Rect(10, 10, 30, 90, 0.75, GREEN, grey(0.9)),
        Rect(10, 10, 30, 90, 0.0, GREEN, grey(0.9)),
        Path(steps, 0.75, GREEN, GREEN),
    )
    pen.draw(shapes)
    assert sorted(pen.code) == sorted(theirs._code)
    assert [c for c in pen.code if c.startswith("n ")] == [
        c for c in theirs._code if c.startswith("n ")
    ]


def test_a_letter_that_the_face_lacks_is_refused_every_time() -> None:
    pen = pen_on(canvas())
    for _ in range(2):
        with pytest.raises(GlyphError, match="漢"):
            pen.draw([TextRun(50, 100, "gull 漢", 14)])


def document(*shapes: Shape) -> Document:
    item = Placed(Role.TEXT, 0, 0, *PAGE_PT, shapes)
    return Document("Terns", "Task sheet", (Page(*PAGE_PT, (item,)),), 12)


def identifier(data: bytes) -> bytes:
    found = PdfReader(BytesIO(data)).trailer["/ID"].get_object()
    assert isinstance(found, ArrayObject)
    one, other = (each.original_bytes for each in found)
    assert one == other
    return bytes(one)


def test_the_identifier_changes_with_whatever_is_drawn() -> None:
    run = TextRun(50, 100, "gulls", 12)
    drawn = [(run,), (run, run), (TextRun(50, 101, "gulls", 12),), (TextRun(50, 100, "gull", 12),)]
    found = [identifier(write_pdf(document(*shapes))) for shapes in drawn]
    assert len(set(found)) == len(found)
    assert found == [identifier(write_pdf(document(*shapes))) for shapes in drawn]


def test_a_file_without_room_for_an_identifier_is_no_file_of_ours() -> None:
    with pytest.raises(AssertionError):
        identified([b"%PDF-1.7", b"trailer"])


_DIGEST = """
import sys
if sys.argv[1] == "without":
    sys.modules["_rl_accel"] = None
import hashlib
from tests.setting.test_content import document
from typeset.drawing.shapes import Path, Rule, TextRun
from typeset.setting.pdf import write_pdf
shapes = [TextRun(50.1234567, 100 + n / 7, f"({n}) £{n} – gulls", 12 + n / 9) for n in range(20)]
shapes += [Rule(n / 3, 10, 20, n / 11, 0.75) for n in range(20)]
print(hashlib.sha256(write_pdf(document(*shapes))).hexdigest())
"""


@pytest.mark.skipif(find_spec("_rl_accel") is None, reason="reportlab's accelerator is not here")
def test_the_accelerator_changes_no_byte() -> None:
    ways = [[sys.executable, "-c", _DIGEST, way] for way in ("with", "without")]
    one, other = (subprocess.run(way, capture_output=True, check=True).stdout for way in ways)
    assert one == other
