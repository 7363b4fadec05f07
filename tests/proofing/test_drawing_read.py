"""Pages read as pdfplumber reads them: every letter, line and picture is set against its
objects, over drawings of every kind and pages that lie in every way."""

from __future__ import annotations

import random
from io import BytesIO
from typing import Any

import pdfplumber
import pytest
from pdfplumber.utils.exceptions import PdfminerException
from pypdf import PdfWriter
from pypdf.generic import (
    ArrayObject,
    DictionaryObject,
    FloatObject,
    NameObject,
    NumberObject,
    RectangleObject,
)
from reportlab.pdfgen.canvas import Canvas

from tests.proofing.making import made_week
from tests.proofing.odd_drawings import BROKEN, GOOD
from tests.proofing.planting import lines_of, rebuild, redraw, stream_object
from typeset.proofing.bends import bends_of
from typeset.proofing.colours_read import rgb_of
from typeset.proofing.page_marks import Glyph, ReadPage, Stroke
from typeset.proofing.places import Box
from typeset.proofing.read_back import Unreadable, read_document
from typeset.proofing.shapes_read import ASCENT_EMS, DESCENT_EMS


def _small() -> bytes:
    """A page with a little of everything that ours have."""
    out = BytesIO()
    canvas = Canvas(out, pagesize=(400, 500), invariant=1)
    canvas.setFont("Helvetica", 14)
    for row, text in enumerate(("Kites and (gulls)", "12 terns \u00a0 \u2019 \\ back", "ropes")):
        canvas.drawString(50, 400 - 30 * row, text)
        canvas.line(50, 390 - 30 * row, 350, 390 - 30 * row)
    canvas.setFillColorCMYK(0.1, 0.2, 0.3, 0.4)
    canvas.circle(100, 100, 20, fill=1)
    canvas.rect(200, 100, 30, 40)
    canvas.drawString(60, 200, "chowder")
    canvas.save()
    return out.getvalue()


SMALL = _small()


def _as_pdfplumber_reads(data: bytes) -> list[tuple[Any, ...]]:
    with pdfplumber.open(BytesIO(data)) as pdf:
        return [_page(page) for page in pdf.pages]


def _page(page: Any) -> tuple[Any, ...]:
    glyphs, strokes, images = [], [], []
    for order, each in enumerate(page.iter_layout_objects(list(page.layout))):
        kind = each["object_type"]
        section = str(each.get("tag") or ""), each.get("mcid")
        if kind == "char":
            glyphs.append(_glyph(each, order, page.height, section))
        elif kind == "image":
            images.append(_box(each))
        else:
            strokes.append(_stroke(each, kind, order, section))
    size = (float(page.width), float(page.height), page.rotation, page.cropbox != page.mediabox)
    return (*size, tuple(glyphs), tuple(strokes), tuple(images))


def _glyph(char: Any, order: int, height: float, section: tuple[str, Any]) -> Glyph:
    size, baseline = char["size"], height - char["matrix"][5]
    top, bottom = baseline - ASCENT_EMS * size, baseline + DESCENT_EMS * size
    return Glyph(
        char["text"].replace("\u00a0", " "),
        Box(char["x0"], top, char["x1"], bottom),
        baseline,
        size,
        char["fontname"],
        rgb_of(char["non_stroking_color"]),
        order,
        char["upright"] and char["matrix"][3] > 0,
        *section,
    )


def _stroke(drawn: Any, kind: str, order: int, section: tuple[str, Any]) -> Stroke:
    return Stroke(
        kind,
        _box(drawn),
        tuple(drawn["pts"]),
        drawn["linewidth"] or 0.0,
        rgb_of(drawn["stroking_color"]) if drawn["stroke"] else None,
        rgb_of(drawn["non_stroking_color"]) if drawn["fill"] else None,
        drawn["stroke"],
        drawn["fill"],
        bool((drawn["dash"] or ((), 0))[0]),
        order,
        *section,
        bends_of(drawn["path"]),
    )


def _box(each: Any) -> Box:
    return Box(each["x0"], each["top"], each["x1"], each["bottom"])


def _as_we_read(page: ReadPage) -> tuple[Any, ...]:
    size = (page.width_pt, page.height_pt, page.rotation, page.cropped)
    return (*size, page.glyphs, page.strokes, page.images)


def check(data: bytes) -> None:
    """Equal to the last figure, since the same sums are done; what one cannot read, neither can
    the other."""
    try:
        wanted = _as_pdfplumber_reads(data)
    except PdfminerException:
        with pytest.raises(Unreadable):
            read_document(data, "x.pdf")
    else:
        assert [_as_we_read(page) for page in read_document(data, "x.pdf").pages] == wanted


def with_odd(*odd: str, seed: int = 0) -> bytes:
    rng = random.Random(f"{odd}/{seed}")

    def plant(pages: list[list[str]]) -> None:
        for each in odd:
            pages[0].insert(rng.randrange(2, len(pages[0])), each)

    return redraw(SMALL, plant)


def test_our_own_pages() -> None:
    check(made_week().pdfs["tuesday"])


@pytest.mark.parametrize("odd", [*GOOD, *BROKEN])
def test_odd_drawings(odd: str) -> None:
    check(with_odd(odd))
    check(with_odd(f"BT /F1 9 Tf {odd} ET"))


def test_several_odd_drawings_in_a_page() -> None:
    rng = random.Random(3)
    for seed in range(40):
        check(with_odd(*rng.sample([*GOOD, *BROKEN], rng.randrange(2, 6)), seed=seed))


_BOXES: dict[str, dict[str, tuple[float, ...]]] = {
    "off its corner": {"MediaBox": (50, 60, 445.3, 561.9)},
    "cropped": {"CropBox": (10, 10, 300, 400)},
    "upside down": {"MediaBox": (400, 500, 0, 0)},
    "below nought": {"MediaBox": (-20, -30, 380, 470), "CropBox": (0, 0, 300, 300)},
}


@pytest.mark.parametrize("turn", [0, 90, 180, 270, -90])
@pytest.mark.parametrize("boxes", _BOXES)
def test_pages_that_lie_in_every_way(boxes: str, turn: int) -> None:
    def change(writer: PdfWriter) -> None:
        for key, corners in _BOXES[boxes].items():
            writer.pages[0][NameObject(f"/{key}")] = RectangleObject(corners)
        writer.pages[0][NameObject("/Rotate")] = NumberObject(turn)

    check(rebuild(SMALL, change))


def test_what_a_page_inherits() -> None:
    def change(writer: PdfWriter) -> None:
        pages: Any = writer._root_object["/Pages"]
        pages[NameObject("/MediaBox")] = RectangleObject((5, 6, 405, 506))
        pages[NameObject("/Rotate")] = NumberObject(90)
        for key in ("/MediaBox", "/Rotate"):
            writer.pages[0].pop(key, None)

    check(rebuild(SMALL, change))


def test_drawings_in_two_streams_or_none() -> None:
    def halve(writer: PdfWriter) -> None:
        lines = lines_of(writer.pages[0])
        halves = (lines[:7], lines[7:])
        streams = [stream_object("\n".join(half).encode("latin-1")) for half in halves]
        parts = ArrayObject([writer._add_object(each) for each in streams])
        writer.pages[0][NameObject("/Contents")] = parts

    def empty(writer: PdfWriter) -> None:
        del writer.pages[0]["/Contents"]

    check(rebuild(SMALL, halve))
    check(rebuild(SMALL, empty))


@pytest.mark.parametrize(
    "inner",
    [
        b"BT 1 0 0 1 20 20 Tm /F1 12 Tf (75) Tj ET",
        b"S n 1 1 m 5 5 l S",
        b"/X Do",
        b"",
        b"/P <</MCID 4>> BDC BT /F1 9 Tf 0 1 -1 0 9 9 Tm (7) Tj ET n 1 1 m 4 4 l S EMC",
    ],
)
def test_pages_within_the_page(inner: bytes) -> None:
    def change(writer: PdfWriter) -> None:
        page: Any = writer.pages[0]
        form = stream_object(
            inner,
            Type=NameObject("/XObject"),
            Subtype=NameObject("/Form"),
            BBox=RectangleObject((0, 0, 90, 90)),
            Matrix=ArrayObject(map(FloatObject, (0.5, 0, 0, 0.5, 3, 4))),
            Resources=page["/Resources"],
        )
        held = DictionaryObject({NameObject("/X"): writer._add_object(form)})
        page["/Resources"][NameObject("/XObject")] = held
        lines = lines_of(page)
        for at in (9, 4):
            lines.insert(at, "q 1 0 0 1 100 300 cm /X Do Q S")
        stream = stream_object("\n".join(lines).encode("latin-1"))
        page[NameObject("/Contents")] = writer._add_object(stream)

    check(rebuild(SMALL, change))
