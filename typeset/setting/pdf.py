"""Finished pages to PDF: a plain loop over placed shapes, decided by nothing but the shapes.

The same document gives the same bytes: the dates in the file are fixed, its identifier is a
digest of all the rest, and neither the clock nor SOURCE_DATE_EPOCH has a say.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from typeset.drawing.shapes import Face, Rect
from typeset.setting.content import Letters, Pen
from typeset.setting.frames import Document, Duplex, Page
from typeset.setting.pdf_fonts import font_name
from typeset.setting.pdf_parts import NO_DIGEST, identified, pack_last_page, written
from typeset.setting.structure import ARTIFACT, Marked, Section, structure_of, unmarked
from typeset.setting.tags import TagWriter, claim, draw_section

_VERSION = (1, 7)


@dataclass(frozen=True, slots=True)
class _FixedDate:
    """The date of every file, in the form that reportlab asks for."""

    YMDhms: tuple[int, ...] = (2000, 1, 1, 0, 0, 0)
    dhh: int = 0
    dmm: int = 0


class _NoDigest:
    """Stands for a digest in a file that is not yet whole."""

    def update(self, _data: bytes) -> None:
        """What reportlab would have in its own."""

    def digest(self) -> bytes:
        """As long as MD5's."""
        return NO_DIGEST


def write_pdf(document: Document) -> bytes:
    """The document as a PDF 1.7 file with embedded fonts.

    Text is written in the order of the placed items, which is the order of reading.
    Raises GlyphError for a character that a face does not hold.
    """
    with _binary_streams():
        return identified(_drawn(document))


def _drawn(document: Document) -> list[bytes]:
    """The parts of the file in their order, without its identifier; the canvas is let go of."""
    canvas = _canvas(document)
    letters = {face: Letters(canvas, face) for face in Face}
    draw = _draw_tagged if document.tagged else _draw_pages
    draw(canvas, document, letters)
    _outline(canvas, document)
    return written(canvas)


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
    # reportlab's `invariant` yields to SOURCE_DATE_EPOCH, and its identifier knows only the
    # title, so that two sheets of one title would share it.
    canvas._doc._timeStamp = _FixedDate()
    canvas._doc.signature = _NoDigest()
    return canvas


def _draw_pages(canvas: Any, document: Document, letters: dict[Face, Letters]) -> None:
    for page, drawn in zip(document.pages, unmarked(document), strict=True):
        pen = _page_pen(page, letters)
        for marked in drawn:
            for section in marked.sections:
                pen.draw(section.shapes)
        _finish(canvas, page, drawn, pen, None)


def _draw_tagged(canvas: Any, document: Document, letters: dict[Face, Letters]) -> None:
    """The pages with the structure that they are read by."""
    claim(canvas, document)
    structure, tags = structure_of(document), TagWriter(canvas)
    for page, drawn in zip(document.pages, structure.pages, strict=True):
        pen = _page_pen(page, letters, marked=True)
        for marked in drawn:
            for section in marked.sections:
                draw_section(pen, section)
        _finish(canvas, page, drawn, pen, tags)
        tags.end_page()
    tags.end(structure.root)


def _page_pen(page: Page, letters: dict[Face, Letters], marked: bool = False) -> Pen:
    """A pen for the page, the tint of its paper drawn."""
    pen = Pen(letters, page.height_pt)
    if page.tint is not None:
        ground = (Rect(0.0, 0.0, page.width_pt, page.height_pt, fill=page.tint),)
        if marked:
            draw_section(pen, Section(ARTIFACT, ground))
        else:
            pen.draw(ground)
    return pen


def _finish(
    canvas: Any, page: Page, drawn: Sequence[Marked], pen: Pen, tags: TagWriter | None
) -> None:
    """What is drawn becomes a page of the file, with what leads to it and away from it."""
    canvas.setPageSize((page.width_pt, page.height_pt))
    canvas.setPageRotation(180 if page.upside_down else 0)
    for marked in drawn:
        _connect(canvas, marked, page.height_pt, tags)
    canvas._code.extend(pen.code)
    canvas.showPage()
    pack_last_page(canvas)


def _connect(canvas: Any, marked: Marked, page_height_pt: float, tags: TagWriter | None) -> None:
    """The item as a place that can be gone to, or as one that leads away."""
    item = marked.item
    if item.anchor or item.leads_to:
        top = page_height_pt - item.y_pt
        if item.anchor:
            canvas.bookmarkPage(item.anchor, fit="XYZ", left=0, top=top)
        if item.leads_to:
            box = (item.x_pt, top - item.height_pt, item.x_pt + item.width_pt, top)
            if tags is not None:
                tags.link(marked, box)
            else:
                canvas.linkAbsolute("", item.leads_to, Rect=box, Border="[0 0 0]")
    if tags is not None and marked.forms:
        tags.fields(marked, page_height_pt)


def _outline(canvas: Any, document: Document) -> None:
    """Bookmarks, and how the pages are counted."""
    for entry in document.bookmarks:
        canvas.addOutlineEntry(entry.title, entry.anchor, entry.level)
    if document.bookmarks:
        canvas.showOutline()
    for label in document.labels:
        canvas.addPageLabel(label.first, style=label.numbering.value, start=1, prefix=label.prefix)
