"""A PDF kept open: its pages read one at a time, or taken as they are written without reading.

So a file of thousands of pages is read in the memory that one of them needs, and a page that
is written just as one that was read already need not be read again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO
from typing import Any, TypeAlias

import pdfplumber
from pdfminer.pdffont import PDFFont
from pdfminer.pdftypes import PDFObjRef, PDFStream, dict_value, resolve1
from pdfminer.psparser import PSLiteral
from pdfplumber.page import Page
from pdfplumber.pdf import PDF

from typeset.proofing.drawing_read import Faces
from typeset.proofing.page_marks import ReadPage
from typeset.proofing.read_back import read_page, told_as_unreadable

# What stands in an entry of a page, in a form that can be compared.
Entry: TypeAlias = Any
# What a page draws, and the node of the page tree that it hangs on; all that a page inherits
# from this is among its own entries.
_NOT_OF_THE_FRAME = ("Contents", "Parent")


@dataclass(frozen=True, slots=True)
class WrittenPage:
    """A page as it stands in the file: its drawing, unpacked, and in `frame` all its other
    entries (boxes, rotation, fonts, notes), where an object of the file stands as its number."""

    frame: frozenset[tuple[str, Entry]]
    drawing: bytes


class OpenFile:
    """The pages of a file, by their index from 0."""

    def __init__(self, pdf: PDF) -> None:
        self._pdf = pdf
        self._pages = pdf.pages
        self._faces = Faces()

    def __len__(self) -> int:
        return len(self._pages)

    def close(self) -> None:
        """Let go of all that has been read of it."""
        self._pdf.close()

    def read(self, index: int, number: int = 1) -> ReadPage:
        """All that the page holds, numbered so. Raises Unreadable."""
        page = self._pages[index]
        page.page_number = number
        with told_as_unreadable(), _unpacked(page):
            return read_page(page, self._faces)

    def written(self, index: int) -> WrittenPage | None:
        """The page as it is written; None where its drawing is not a single stream. Raises
        Unreadable."""
        page = self._pages[index]
        with told_as_unreadable(), _unpacked(page) as streams:
            if len(streams) != 1:
                return None
            attributes = page.page_obj.attrs.items()
            frame = (
                (str(key), _comparable(value))
                for key, value in attributes
                if key not in _NOT_OF_THE_FRAME
            )
            return WrittenPage(frozenset(frame), streams[0].get_data())

    def fonts(self, index: int) -> Callable[[str], PDFFont | None]:
        """Finds the fonts of the page by the names that it calls them; None for an unknown name.
        What it gives raises Unreadable."""

        def font(name: str) -> PDFFont | None:
            with told_as_unreadable():
                fonts = resolve1(self._pages[index].page_obj.resources.get("Font"))
                reference = fonts.get(name) if isinstance(fonts, dict) else None
                if not isinstance(reference, PDFObjRef):
                    return None
                found: PDFFont = self._pdf.rsrcmgr.get_font(reference.objid, dict_value(reference))
                return found

        return font


@contextmanager
def open_file(data: bytes) -> Iterator[OpenFile]:
    """The file, open as long as it is worked with. Raises Unreadable."""
    with told_as_unreadable():
        opened = OpenFile(pdfplumber.open(BytesIO(data)))
    try:
        yield opened
    finally:
        opened.close()


@contextmanager
def _unpacked(page: Page) -> Iterator[list[PDFStream]]:
    """The streams of the page's drawing, packed again afterwards: pdfminer would otherwise keep
    every drawing that it has unpacked."""
    streams = [resolve1(each) for each in page.page_obj.contents]
    plain = [each for each in streams if isinstance(each, PDFStream)]
    packed = [(each, each.rawdata, each.data) for each in plain]
    try:
        yield plain if len(plain) == len(streams) else []
    finally:
        for stream, raw, data in packed:
            stream.rawdata, stream.data = raw, data


def _comparable(value: object) -> Entry:
    """The value so that equal ones are equal, each told from those of another kind."""
    if isinstance(value, PDFObjRef):
        return ("object", value.objid)
    if isinstance(value, PSLiteral):
        return ("name", value.name)
    if isinstance(value, list):
        return ("array", tuple(_comparable(each) for each in value))
    if isinstance(value, dict):
        entries = ((str(key), _comparable(each)) for key, each in value.items())
        return ("dictionary", frozenset(entries))
    if isinstance(value, PDFStream):
        return ("stream", id(value))
    return (type(value).__name__, value)
