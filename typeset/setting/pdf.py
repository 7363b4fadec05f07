"""Finished pages to PDF: a plain loop over placed shapes, decided by nothing but the shapes.

The same document gives the same bytes: the dates in the file are fixed, its identifier is a
digest of the pages, and neither the clock nor SOURCE_DATE_EPOCH has a say.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from typeset.drawing.fonts import drawable, width_pt
from typeset.drawing.shapes import Colour, Face, Path, Rect, Rule, Shape, TextRun
from typeset.setting.frames import Document, Duplex, Page
from typeset.setting.pdf_fonts import font_name
from typeset.setting.structure import ARTIFACT, Marked, Section, structure_of, unmarked
from typeset.setting.tags import TagWriter, claim, marked_section

_VERSION = (1, 7)


@dataclass(frozen=True, slots=True)
class _FixedDate:
    """The date of every file, in the form that reportlab asks for."""

    YMDhms: tuple[int, ...] = (2000, 1, 1, 0, 0, 0)
    dhh: int = 0
    dmm: int = 0


def write_pdf(document: Document) -> bytes:
    """The document as a PDF 1.7 file with embedded fonts.

    Text is written in the order of the placed items, which is the order of reading.
    Raises GlyphError for a character that a face does not hold.
    """
    with _binary_streams():
        canvas = _canvas(document)
        if document.tagged:
            _draw_tagged(canvas, document)
        else:
            for page, drawn in zip(document.pages, unmarked(document), strict=True):
                _draw_page(canvas, page, drawn, None)
        _outline(canvas, document)
        data = canvas.getpdfdata()
    return bytes(data)


@contextmanager
def _binary_streams() -> Iterator[None]:
    """Plain compressed streams. reportlab asks a global setting whether to wrap them once more
    in letters (ASCII 85), which makes files a quarter larger; it is put back afterwards."""
    before = rl_config.useA85
    rl_config.useA85 = 0
    try:
        yield
    finally:
        rl_config.useA85 = before


def _canvas(document: Document) -> Any:
    # A first font of our own keeps Helvetica, which would not be embedded, out of the file.
    canvas = Canvas(
        BytesIO(),
        pageCompression=1,
        invariant=1,
        pdfVersion=_VERSION,
        initialFontName=font_name(Face.REGULAR),
        lang=document.language,
    )
    canvas.setTitle(document.title)
    canvas.setSubject(document.subject)
    canvas.setAuthor("")
    canvas.setCreator("typeset")
    canvas.setKeywords(f"content:{document.fingerprint}" if document.fingerprint else "")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    # Printers then leave the size alone: a 10 mm square stays 10 mm.
    canvas.setViewerPreference("PrintScaling", "None")
    if document.duplex is not Duplex.NO_MATTER:
        canvas.setViewerPreference("Duplex", document.duplex.value)
    _make_reproducible(canvas, document)
    return canvas


def _make_reproducible(canvas: Any, document: Document) -> None:
    """Fixed dates, and an identifier from the pages.

    reportlab's `invariant` yields to SOURCE_DATE_EPOCH, and its identifier knows only the
    title, so that two sheets of one title would share it.
    """
    canvas._doc._timeStamp = _FixedDate()
    signature = hashlib.md5(usedforsecurity=False)
    signature.update(repr(document).encode())
    for field in (f for page in document.pages for item in page.placed for f in item.fields):
        signature.update(repr(field).encode())
    canvas._doc.signature = signature


def _draw_tagged(canvas: Any, document: Document) -> None:
    """The pages with the structure that they are read by."""
    claim(canvas, document)
    structure, tags = structure_of(document), TagWriter(canvas)
    for page, drawn in zip(document.pages, structure.pages, strict=True):
        _draw_page(canvas, page, drawn, tags)
        tags.end_page()
    tags.end(structure.root)


def _draw_page(canvas: Any, page: Page, drawn: Sequence[Marked], tags: TagWriter | None) -> None:
    canvas.setPageSize((page.width_pt, page.height_pt))
    canvas.setPageRotation(180 if page.upside_down else 0)
    pen = _Pen(canvas, page.height_pt)
    if page.tint is not None:
        ground = Rect(0.0, 0.0, page.width_pt, page.height_pt, fill=page.tint)
        _draw_section(pen, Section(ARTIFACT, (ground,)), tags)
    for marked in drawn:
        for section in marked.sections:
            _draw_section(pen, section, tags)
        _connect(canvas, marked, page.height_pt, tags)
    canvas.showPage()


def _draw_section(pen: _Pen, section: Section, tags: TagWriter | None) -> None:
    with marked_section(pen.canvas, section) if tags is not None else nullcontext():
        for shape in section.shapes:
            pen.draw(shape)


def _connect(canvas: Any, marked: Marked, page_height_pt: float, tags: TagWriter | None) -> None:
    """The item as a place that can be gone to, or as one that leads away."""
    item = marked.item
    top = page_height_pt - item.y_pt
    if item.anchor:
        canvas.bookmarkPage(item.anchor, fit="XYZ", left=0, top=top)
    if item.leads_to:
        box = (item.x_pt, top - item.height_pt, item.x_pt + item.width_pt, top)
        if tags is not None:
            tags.link(marked, box)
        else:
            canvas.linkAbsolute("", item.leads_to, Rect=box, Border="[0 0 0]")
    if tags is not None:
        tags.fields(marked, page_height_pt)


def _outline(canvas: Any, document: Document) -> None:
    """Bookmarks, and how the pages are counted."""
    for entry in document.bookmarks:
        canvas.addOutlineEntry(entry.title, entry.anchor, entry.level)
    if document.bookmarks:
        canvas.showOutline()
    for label in document.labels:
        canvas.addPageLabel(label.first, style=label.numbering.value, start=1, prefix=label.prefix)


class _Pen:
    """Draws shapes from a top left corner; sets width, dash and colours only when they change."""

    def __init__(self, canvas: Any, page_height_pt: float) -> None:
        self.canvas = canvas
        self.top_pt = page_height_pt
        self.state: dict[str, object] = {}

    def draw(self, shape: Shape) -> None:
        match shape:
            case TextRun():
                self._letters(shape)
            case Rule():
                self._rule(shape)
            case Rect():
                self._rect(shape)
            case Path():
                self._path(shape)

    def _letters(self, run: TextRun) -> None:
        width_pt(run.text, run.size_pt, run.face)  # raises GlyphError
        self._fill(run.colour)
        self._change("font", (run.face, run.size_pt), self._set_font)
        self.canvas.drawString(run.x_pt, self.top_pt - run.y_pt, drawable(run.text))

    def _rule(self, rule: Rule) -> None:
        self._stroke(rule.colour, rule.thickness_pt, rule.dash_pt)
        ends = (rule.x1_pt, self.top_pt - rule.y1_pt, rule.x2_pt, self.top_pt - rule.y2_pt)
        self.canvas.line(*ends)

    def _rect(self, rect: Rect) -> None:
        stroked, filled = rect.thickness_pt > 0, rect.fill is not None
        if stroked:
            self._stroke(rect.stroke, rect.thickness_pt, rect.dash_pt)
        if rect.fill is not None:
            self._fill(rect.fill)
        foot = self.top_pt - rect.y_pt - rect.height_pt
        size = (rect.width_pt, rect.height_pt)
        self.canvas.rect(rect.x_pt, foot, *size, stroke=int(stroked), fill=int(filled))

    def _path(self, path: Path) -> None:
        stroked, filled = path.thickness_pt > 0, path.fill is not None
        if stroked:
            self._stroke(path.stroke, path.thickness_pt, None)
        if path.fill is not None:
            self._fill(path.fill)
        drawn = self.canvas.beginPath()
        commands = {"M": drawn.moveTo, "L": drawn.lineTo, "C": drawn.curveTo}
        for command, *numbers in path.steps:
            points = [float(n) for n in numbers]
            points[1::2] = [self.top_pt - y for y in points[1::2]]
            commands[str(command)](*points)
        self.canvas.drawPath(drawn, stroke=int(stroked), fill=int(filled))

    def _stroke(
        self, colour: Colour, thickness_pt: float, dash_pt: tuple[float, float] | None
    ) -> None:
        self._change("stroke", colour, self._set_stroke)
        self._change("thickness", thickness_pt, self.canvas.setLineWidth)
        self._change("dash", dash_pt, self._set_dash)

    def _fill(self, colour: Colour) -> None:
        self._change("fill", colour, self._set_fill)

    def _change(self, what: str, value: Any, setter: Any) -> None:
        if what not in self.state or self.state[what] != value:
            setter(value)
            self.state[what] = value

    def _set_font(self, font: tuple[Face, float]) -> None:
        self.canvas.setFont(font_name(font[0]), font[1])

    def _set_stroke(self, colour: Colour) -> None:
        if colour[0] == colour[1] == colour[2]:
            self.canvas.setStrokeGray(colour[0])
        else:
            self.canvas.setStrokeColorRGB(*colour)

    def _set_fill(self, colour: Colour) -> None:
        # Greys stay greys in the file: a printer then uses its black ink alone.
        if colour[0] == colour[1] == colour[2]:
            self.canvas.setFillGray(colour[0])
        else:
            self.canvas.setFillColorRGB(*colour)

    def _set_dash(self, dash_pt: tuple[float, float] | None) -> None:
        self.canvas.setDash(list(dash_pt) if dash_pt else [])
