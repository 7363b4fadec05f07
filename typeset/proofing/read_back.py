"""Opens a finished PDF and reads back what every page holds, in the order of drawing.

A file that cannot be read is a finding, never a traceback: a damaged or foreign PDF can make
the readers fail in any way, so everything that they raise is caught here, at the edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO

import pdfplumber
from pdfminer.layout import LTChar, LTCurve
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
    with told_as_unreadable(), seldom_collecting(), pdfplumber.open(BytesIO(data)) as pdf:
        faces, wanted = Faces(), pages if pages is not None else range(len(pdf.pages))
        read = tuple(read_page(pdf.pages[index], faces) for index in wanted)
    return ReadDocument(name, read)


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

    The page is closed, since pdfplumber would keep everything it has parsed.
    """
    try:
        return _read(page, faces)
    finally:
        page.close()


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
