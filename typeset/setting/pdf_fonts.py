"""The document's faces as reportlab fonts: embedded as subsets, readable again as text."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from typeset.drawing.fonts import font_path
from typeset.drawing.shapes import Face

_BFCHAR = re.compile(r"^<[0-9A-F]{2}> <[0-9A-F]{4,}>$", re.MULTILINE)
_BFCHARS = re.compile(r"\d+ beginbfchar\n.*?endbfchar", re.DOTALL)
# ISO 32000-1 section 9.10.3 gives no limit, Adobe's CMap format (Technical Note 5014) does.
_MOST_A_BLOCK = 100
# The file behind each name that reportlab knows.
_REGISTERED: dict[str, Path] = {}


class EmbeddedFont(TTFont):  # type: ignore[misc]  # reportlab is not typed
    """A TrueType font whose map back to text names only characters that are in the font.

    reportlab maps unused codes to U+0000, which no reader can make sense of; those rows go.
    """

    def addObjects(self, doc: Any) -> None:  # noqa: N802  # reportlab's own hook
        """Add the font to the document, then mend its maps to Unicode."""
        before = set(doc.idToObject)
        super().addObjects(doc)
        for name in set(doc.idToObject) - before:
            if name.startswith("toUnicodeCMap:"):
                stream = doc.idToObject[name]
                stream.content = without_unused_codes(stream.content)


def without_unused_codes(cmap: str) -> str:
    """The map without rows to U+0000, in blocks of at most 100 rows with right counts."""
    rows = [row for row in _BFCHAR.findall(cmap) if not row.endswith("<0000>")]
    blocks = [rows[i : i + _MOST_A_BLOCK] for i in range(0, len(rows), _MOST_A_BLOCK)]
    text = "\n".join(
        "\n".join((f"{len(block)} beginbfchar", *block, "endbfchar")) for block in blocks
    )
    return _BFCHARS.sub(lambda _: text, cmap, count=1)


def font_name(face: Face) -> str:
    """The name of the face for a canvas; the font is registered when it is first named, and
    again where another file of the same name was meanwhile."""
    path = font_path(face)
    if _REGISTERED.get(path.stem) != path:
        pdfmetrics.registerFont(EmbeddedFont(path.stem, str(path)))
        _REGISTERED[path.stem] = path
    return path.stem
