"""Opens a finished PDF and reads back what every page holds, in the order of drawing.

A file that cannot be read is a finding, never a traceback: a damaged or foreign PDF can make
the readers fail in any way, so everything that they raise is caught here, at the edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from io import BytesIO

import pdfplumber
from pdfminer.layout import LTChar, LTCurve
from pdfminer.pdftypes import PDFStream, resolve1
from pdfplumber.page import Page

from typeset.proofing.collecting import seldom_collecting
from typeset.proofing.drawing_read import Faces, drawn_on
from typeset.proofing.page_marks import Glyph, ReadDocument, ReadPage, Stroke
from typeset.proofing.places import Box
from typeset.proofing.shapes_read import box_of, letter_of, stroke_of
from typeset.proofing.words import words_of


class Unreadable(Exception):  # noqa: N818  # a state of the file, not a fault of ours
    """The file is no PDF that can be read; the text says why."""


def read_document(data: bytes, name: str, pages: range | None = None) -> ReadDocument:
    """Every page read once, or only those with an index (from 0) in `pages`; they keep the
    numbers that they have in the file. Raises Unreadable.
    """
    with told_as_unreadable(), seldom_collecting():
        file = _opened(data)
        wanted = pages if pages is not None else range(len(file.pages))
        read = tuple(read_page(file.pages[index], file.faces) for index in wanted)
    return ReadDocument(name, read)


class _File:
    """The pages of a file. Raises whatever the readers raise."""

    def __init__(self, data: bytes) -> None:
        self.pages = pdfplumber.open(BytesIO(data)).pages
        self.faces = Faces()


# The file that was read last, known by all its bytes: its parts are read one after another. One
# whose pages cannot be found is never kept: pdfplumber would find some the second time.
@lru_cache(maxsize=1)
def _opened(data: bytes) -> _File:
    return _File(data)


@contextmanager
def told_as_unreadable() -> Iterator[None]:
    """Whatever the readers raise over a damaged or foreign file, as Unreadable."""
    try:
        yield
    except Unreadable:
        raise
    except RecursionError:
        raise Unreadable("its objects point at each other in a circle") from None
    except Exception as error:
        raise Unreadable(f"{type(error).__name__}: {error}".rstrip(": ")) from error


def read_page(page: Page, faces: Faces) -> ReadPage:
    """All that the page holds; `faces` are those of its file. Raises whatever the readers raise.

    The page is closed, and its drawing packed again: pdfplumber would keep everything it has
    parsed, and pdfminer what it has unpacked.
    """
    streams = [each for each in map(resolve1, page.page_obj.contents) if _is_packed(each)]
    packed = [(each, each.rawdata) for each in streams]
    try:
        return _read(page, faces)
    finally:
        page.close()
        for stream, raw in packed:
            stream.rawdata, stream.data = raw, None


def _is_packed(content: object) -> bool:
    return isinstance(content, PDFStream) and content.data is None


def _read(page: Page, faces: Faces) -> ReadPage:
    glyphs: list[Glyph] = []
    strokes: list[Stroke] = []
    images: list[Box] = []
    for order, each in enumerate(drawn_on(page, faces)):
        if isinstance(each, Glyph):
            glyphs.append(each)
        elif isinstance(each, LTChar):
            glyphs.append(letter_of(each, page, order))
        elif isinstance(each, LTCurve):
            strokes.append(stroke_of(each, page, order))
        else:
            images.append(box_of(each, page))
    words = words_of(glyphs, strokes, page.page_number)
    return ReadPage(
        number=page.page_number,
        width_pt=float(page.width),
        height_pt=float(page.height),
        rotation=int(page.rotation),
        cropped=tuple(page.cropbox) != tuple(page.mediabox),
        glyphs=tuple(glyphs),
        strokes=tuple(strokes),
        words=words,
        images=tuple(images),
    )
