"""A long file in little memory: drawings are packed page by page, and the file is put together
from its objects without a second copy of it.

reportlab by itself keeps every drawing unpacked until the file is written, then all objects as
they stand in the file, and last the file. What is written here is the same, byte for byte.
"""

from __future__ import annotations

import hashlib
from io import BytesIO
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream, PDFZCompress

# As long as MD5's digest.
NO_DIGEST = bytes(16)


class _Packed(PDFStream):  # type: ignore[misc]  # reportlab is not typed
    """A stream that is packed already; it lets go of its bytes when they are written."""

    def format(self, document: Any) -> bytes:
        """Its bytes, once."""
        written: bytes = super().format(document)
        self.content = None
        return written


def pack_last_page(canvas: Any) -> None:
    """Pack the drawing of the page that was shown last, as reportlab would at the end."""
    page = canvas._doc.Pages.pages[-1]
    packed = PDFDictionary({"Filter": PDFArray([PDFName(PDFZCompress.pdfname)])})
    page.Contents = _Packed(packed, PDFZCompress.encode(page.stream), [])
    page.stream = None


def written(canvas: Any) -> list[bytes]:
    """All objects of the file as they stand in it, with what is before and after them. The
    canvas is of no use afterwards."""
    taker = _Taker()
    # reportlab shows the parts of a finished file to those who sign it, and then joins them.
    canvas._doc._digiSigs = [taker]
    canvas.getpdfdata()
    return taker.parts


class _Taker:
    def __init__(self) -> None:
        self.parts: list[bytes] = []

    def sign(self, file: Any) -> None:
        """Takes over the parts of the file, and leaves none to be joined."""
        self.parts, file.strings = file.strings, []


def identified(parts: list[bytes]) -> bytes:
    """The file of these parts with its identifier: a digest of all the rest of it. The place
    for it is in the last of them. The parts are used up, so that they and the file are not
    held together."""
    before, blank, after = parts.pop().rpartition(_told(NO_DIGEST.hex()))
    assert blank, "reportlab writes what it is given as a digest"
    digest = hashlib.md5(usedforsecurity=False)
    file = BytesIO()
    parts.append(before)
    parts.reverse()
    while parts:
        part = parts.pop()
        digest.update(part)
        file.write(part)
    digest.update(after)
    file.write(_told(digest.hexdigest()) + after)
    return file.getvalue()


def _told(digest: str) -> bytes:
    return f"[<{digest}><{digest}>]".encode()
