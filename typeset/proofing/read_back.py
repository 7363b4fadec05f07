"""Opens a finished PDF and reads back what every page holds, in the order of drawing.

A file that cannot be read is a finding, never a traceback: a damaged or foreign PDF can make
the readers fail in any way, so everything that they raise is caught here, at the edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pdfplumber

from typeset.proofing.bends import bends_of
from typeset.proofing.page_marks import Glyph, ReadDocument, ReadPage, Rgb, Stroke
from typeset.proofing.places import Box
from typeset.proofing.words import words_of

# How far letters reach over and under the baseline in ems, for any plain text face: capitals
# and figures to 0.72, 'g' and 'p' to 0.21.
ASCENT_EMS = 0.72
DESCENT_EMS = 0.21


class Unreadable(Exception):  # noqa: N818  # a state of the file, not a fault of ours
    """The file is no PDF that can be read; the text says why."""


def read_document(data: bytes, name: str) -> ReadDocument:
    """Every page read once. Raises Unreadable."""
    try:
        with pdfplumber.open(BytesIO(data)) as pdf:
            pages = tuple(_read_and_close(page) for page in pdf.pages)
    except RecursionError:
        raise Unreadable("its objects point at each other in a circle") from None
    except Exception as error:
        raise Unreadable(f"{type(error).__name__}: {error}".rstrip(": ")) from error
    return ReadDocument(name, pages)


def _read_and_close(page: Any) -> ReadPage:
    """The page; pdfplumber would otherwise keep everything it has parsed."""
    try:
        return _read_page(page)
    finally:
        page.close()


def _read_page(page: Any) -> ReadPage:
    glyphs: list[Glyph] = []
    strokes: list[Stroke] = []
    images: list[Box] = []
    for order, each in enumerate(page.iter_layout_objects(list(page.layout))):
        kind = each["object_type"]
        if kind == "char":
            glyphs.append(_glyph(each, order, float(page.height)))
        elif kind in ("line", "rect", "curve"):
            strokes.append(_stroke(each, kind, order))
        else:
            images.append(_box(each))
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


def _glyph(char: dict[str, Any], order: int, height_pt: float) -> Glyph:
    size, baseline = float(char["size"]), height_pt - float(char["matrix"][5])
    box = Box(
        float(char["x0"]),
        baseline - ASCENT_EMS * size,
        float(char["x1"]),
        baseline + DESCENT_EMS * size,
    )
    colour = rgb_of(char["non_stroking_color"])
    upright = bool(char["upright"]) and float(char["matrix"][3]) > 0
    # A no-break space is a space to a reader.
    text = char["text"].replace("\u00a0", " ")
    font = str(char["fontname"])
    return Glyph(text, box, baseline, size, font, colour, order, upright, *_section(char))


def _stroke(drawn: dict[str, Any], kind: str, order: int) -> Stroke:
    stroked, filled = bool(drawn["stroke"]), bool(drawn["fill"])
    dash: Any = drawn.get("dash") or ((), 0)
    return Stroke(
        shape=kind,
        box=_box(drawn),
        points=tuple((float(x), float(y)) for x, y in drawn["pts"]),
        thickness_pt=float(drawn["linewidth"] or 0.0),
        ink=rgb_of(drawn["stroking_color"]) if stroked else None,
        fill=rgb_of(drawn["non_stroking_color"]) if filled else None,
        stroked=stroked,
        filled=filled,
        dashed=bool(dash[0]),
        order=order,
        tag=_section(drawn)[0],
        mcid=_section(drawn)[1],
        bends=bends_of(drawn.get("path")),
    )


def _section(drawn: dict[str, Any]) -> tuple[str, int | None]:
    """The name and number of the marked content that it stands in."""
    number = drawn.get("mcid")
    return str(drawn.get("tag") or ""), int(number) if number is not None else None


def _box(drawn: dict[str, Any]) -> Box:
    return Box(*(float(drawn[key]) for key in ("x0", "top", "x1", "bottom")))


def rgb_of(colour: Any) -> Rgb | None:
    """A grey, RGB or CMYK colour as red, green, blue; None for anything else."""
    levels = list(_levels(colour))
    if len(levels) == 1:
        return (levels[0], levels[0], levels[0])
    if len(levels) == 3:
        return (levels[0], levels[1], levels[2])
    if len(levels) == 4:
        cyan, magenta, yellow, black = levels
        # ISO 32000-1, 10.3.5: the plain conversion without a colour profile.
        red, green, blue = (1 - min(1.0, ink + black) for ink in (cyan, magenta, yellow))
        return (red, green, blue)
    return None


def _levels(colour: Any) -> Iterator[float]:
    if isinstance(colour, int | float):
        yield float(colour)
    elif isinstance(colour, list | tuple):
        for level in colour:
            if isinstance(level, int | float):
                yield float(level)
