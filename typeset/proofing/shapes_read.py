"""Letters, lines and pictures as pdfminer gives them, as the proof takes them: measured from
the page's top left corner, however the page lies in the coordinates of the file.
"""

from __future__ import annotations

from typing import Any, cast

from pdfminer.layout import LTChar, LTComponent, LTCurve, LTLine, LTRect
from pdfminer.utils import Point
from pdfplumber.page import Page, fix_fontname_bytes

from typeset.proofing.bends import bends_of
from typeset.proofing.colours_read import rgb_of
from typeset.proofing.page_marks import Glyph, Stroke
from typeset.proofing.places import Box

# How far letters reach over and under the baseline in ems, for any plain text face: capitals
# and figures to 0.72, 'g' and 'p' to 0.21.
ASCENT_EMS = 0.72
DESCENT_EMS = 0.21


def letter_of(char: LTChar, page: Page, order: int) -> Glyph:
    """A letter; see `drawing_read` for those of level text."""
    size, baseline = float(char.size), float(page.height) - float(char.matrix[5])
    left = page.mediabox[0]
    box = Box(
        float(char.x0 + left),
        baseline - ASCENT_EMS * size,
        float(char.x1 + left),
        baseline + DESCENT_EMS * size,
    )
    return Glyph(
        text_of(char.get_text()),
        box,
        baseline,
        size,
        font_name(char.fontname),
        rgb_of(char.graphicstate.ncolor),
        order,
        bool(char.upright) and float(char.matrix[3]) > 0,
        *_section(char),
    )


def stroke_of(drawn: LTCurve, page: Page, order: int) -> Stroke:
    """A line, a rectangle or a curve."""
    stroked, filled = bool(drawn.stroke), bool(drawn.fill)
    dash: Any = drawn.dashing_style or ((), 0)
    tag, mcid = _section(drawn)
    return Stroke(
        shape=_shape(drawn),
        box=box_of(drawn, page),
        points=tuple(_from_top(point, page) for point in drawn.pts),
        thickness_pt=float(drawn.linewidth or 0.0),
        ink=rgb_of(drawn.stroking_color) if stroked else None,
        fill=rgb_of(drawn.non_stroking_color) if filled else None,
        stroked=stroked,
        filled=filled,
        dashed=bool(dash[0]),
        order=order,
        tag=tag,
        mcid=mcid,
        bends=bends_of(_path(drawn, page)),
    )


def box_of(drawn: LTComponent, page: Page) -> Box:
    """Where it is drawn."""
    left, top = page.mediabox[:2]
    return Box(
        float(drawn.x0 + left),
        float((page.height - drawn.y1) + top),
        float(drawn.x1 + left),
        float((page.height - drawn.y0) + top),
    )


def text_of(letter: str) -> str:
    """What a letter says: a no-break space is a space to a reader."""
    return letter.replace("\u00a0", " ")


def font_name(name: str | bytes) -> str:
    """The name of a font, which old files write in bytes."""
    return fix_fontname_bytes(name) if isinstance(name, bytes) else str(name)


def section_of(tag: Any, number: Any) -> tuple[str, int | None]:
    """The name and number of the marked content that something stands in."""
    return str(tag or ""), int(number) if number is not None else None


def _section(drawn: LTComponent) -> tuple[str, int | None]:
    # pdfplumber has written them on pdfminer's object.
    return section_of(getattr(drawn, "tag", None), getattr(drawn, "mcid", None))


def _shape(drawn: LTCurve) -> str:
    return {LTLine: "line", LTRect: "rect"}.get(type(drawn), "curve")


def _from_top(point: Point, page: Page) -> Point:
    left, top = page.mediabox[:2]
    return float(left + point[0]), float(top + page.height - point[1])


def _path(drawn: LTCurve, page: Page) -> list[Any]:
    """The way it runs, as `bends_of` takes it; only where it bends."""
    steps = cast(list[Any], drawn.original_path or [])
    if not any(step[0] == "c" for step in steps):
        return []
    return [(letter, *(_from_top(point, page) for point in ends)) for letter, *ends in steps]
