"""The floor: a raw reportlab canvas, every line broken already and every place known.

No engine on top of this canvas can be faster than the calls that it cannot do without.
"""

from __future__ import annotations

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


def draw(canvas: Any, shapes: tuple[PlainShape, ...], top_pt: float) -> None:
    """The shapes, down from `top_pt`; font, thickness and ink are set when they change."""
    font: tuple[bool, float] | None = None
    pen: tuple[float, float] | None = None
    paper: float | None = 0.0
    for kind, *rest in shapes:
        if kind == "text":
            x, y, text, size, bold = rest
            if paper != 0.0:
                paper = 0.0
                canvas.setFillGray(0.0)
            if font != (bold, size):
                font = bold, size
                canvas.setFont(FACES[bold], size)
            canvas.drawString(x, top_pt - y, text)
            continue
        thickness, ink = rest[-3:-1] if kind == "rect" else rest[-2:]
        if pen != (thickness, ink):
            pen = thickness, ink
            canvas.setLineWidth(thickness)
            canvas.setStrokeGray(ink)
        if kind == "rule":
            x1, y1, x2, y2 = rest[:4]
            canvas.line(x1, top_pt - y1, x2, top_pt - y2)
        elif kind == "rect":
            x, y, width, height = rest[:4]
            fill = rest[-1]
            if fill is not None and fill != paper:
                paper = fill
                canvas.setFillGray(fill)
            canvas.rect(x, top_pt - y - height, width, height, stroke=1, fill=int(fill is not None))
        else:
            _path(canvas, rest[0], top_pt)


def _path(canvas: Any, steps: Any, top_pt: float) -> None:
    path = canvas.beginPath()
    for command, *at in steps:
        if command == "M":
            path.moveTo(at[0], top_pt - at[1])
        elif command == "L":
            path.lineTo(at[0], top_pt - at[1])
        else:
            x1, y1, x2, y2, x, y = at
            path.curveTo(x1, top_pt - y1, x2, top_pt - y2, x, top_pt - y)
    canvas.drawPath(path, stroke=1, fill=0)
