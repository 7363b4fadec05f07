"""The floor: a raw reportlab canvas, every line broken already and every place known.

No engine on top of this canvas can be faster than the calls that it cannot do without.
"""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from tests.benchmarks.fonts import BOLD, REGULAR
from tests.benchmarks.plain_shapes import PlainShape
from tests.benchmarks.sheets import PAPER_PT, Material

FACES = ("Floor", "Floor-Bold")


def make(material: Material) -> bytes:
    """The file."""
    canvas = new_canvas()
    for shapes in material.placed:
        draw(canvas, shapes, PAPER_PT[1])
        canvas.showPage()
    return bytes(canvas.getpdfdata())


def new_canvas() -> Any:
    """A canvas of A4 with the two faces registered, streams compressed and not in letters."""
    rl_config.useA85 = 0
    register()
    return Canvas(BytesIO(), pagesize=PAPER_PT, pageCompression=1, initialFontName=FACES[0])


def register() -> None:
    """The two faces under names of their own."""
    for name, file in zip(FACES, (REGULAR, BOLD), strict=True):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, str(file)))


def draw(canvas: Any, shapes: Sequence[PlainShape], top_pt: float) -> None:
    """The shapes, down from `top_pt`; what they are drawn with is set when it changes."""
    font: tuple[bool, float] | None = None
    pen: tuple[float, float, Any] | None = None
    ink = 0.0
    for kind, *rest in shapes:
        if kind == "text":
            x, y, text, size, bold = rest
            if ink != 0.0:
                ink = 0.0
                canvas.setFillGray(ink)
            if font != (bold, size):
                font = bold, size
                canvas.setFont(FACES[bold], size)
            canvas.drawString(x, top_pt - y, text)
            continue
        thickness, grey, fill, dash = _look(kind, rest)
        if pen != (thickness, grey, dash):
            pen = thickness, grey, dash
            canvas.setLineWidth(thickness)
            canvas.setStrokeGray(grey)
            canvas.setDash(list(dash) if dash else [])
        if fill is not None and fill != ink:
            ink = fill
            canvas.setFillGray(ink)
        _drawn(canvas, kind, rest, top_pt, fill is not None)


def _look(kind: str, rest: Sequence[Any]) -> tuple[float, float, float | None, Any]:
    """Thickness, grey, fill and dash."""
    if kind == "rule":
        return rest[4], rest[5], None, rest[6]
    if kind == "rect":
        return rest[4], rest[5], rest[6], rest[7]
    return rest[1], rest[2], rest[3], None


def _drawn(canvas: Any, kind: str, rest: Sequence[Any], top_pt: float, is_filled: bool) -> None:
    if kind == "rule":
        x1, y1, x2, y2 = rest[:4]
        canvas.line(x1, top_pt - y1, x2, top_pt - y2)
    elif kind == "rect":
        x, y, width, height, thickness = rest[:5]
        box = (x, top_pt - y - height, width, height)
        canvas.rect(*box, stroke=int(thickness > 0), fill=int(is_filled))
    else:
        path = canvas.beginPath()
        for command, *at in rest[0]:
            if command == "M":
                path.moveTo(at[0], top_pt - at[1])
            elif command == "L":
                path.lineTo(at[0], top_pt - at[1])
            else:
                x1, y1, x2, y2, x, y = at
                path.curveTo(x1, top_pt - y1, x2, top_pt - y2, x, top_pt - y)
        canvas.drawPath(path, stroke=int(rest[1] > 0), fill=int(is_filled))
