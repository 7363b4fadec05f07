"""reportlab's own layout engine: paragraphs and flowables in a document template."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, PageBreak, Paragraph, SimpleDocTemplate, Spacer

from tests.benchmarks.engines.floor import FACES, draw, register
from tests.benchmarks.plain_shapes import PlainFigure
from tests.benchmarks.sheets import (
    BOX_BASELINE_PT,
    BOX_GAP_PT,
    BOX_LEFT_PT,
    BOX_PT,
    INDENT_PT,
    LEADING,
    MARGIN_PT,
    PAPER_PT,
    PART_GAP_PT,
    PROBLEM_GAP_PT,
    TYPE_SIZE_PT,
    Material,
)

_PADDING_PT = 6.0  # that of the template's frame
_LINE_PT = LEADING * TYPE_SIZE_PT


def make(material: Material) -> bytes:
    """The file."""
    rl_config.useA85 = 0
    register()
    file, margin = BytesIO(), MARGIN_PT - _PADDING_PT
    margins = {f"{side}Margin": margin for side in ("left", "right", "top", "bottom")}
    template = SimpleDocTemplate(file, pagesize=PAPER_PT, pageCompression=1, **margins)
    template.build(list(_story(material)))
    return file.getvalue()


def _story(material: Material) -> Iterator[Any]:
    size = {"fontSize": TYPE_SIZE_PT, "leading": _LINE_PT}
    heading = ParagraphStyle("heading", fontName=FACES[1], spaceAfter=PART_GAP_PT, **size)
    text = ParagraphStyle(
        "text",
        fontName=FACES[0],
        leftIndent=INDENT_PT,
        bulletFontName=FACES[1],
        bulletFontSize=TYPE_SIZE_PT,
        spaceAfter=PART_GAP_PT,
        **size,
    )
    figures = iter(material.figures)
    for index, sheet in enumerate(material.sheets):
        if index:
            yield PageBreak()
        yield Paragraph(sheet.heading, heading)
        for problem in sheet.problems:
            yield Paragraph(problem.story, text, bulletText=problem.number)
            if problem.model is not None:
                yield _Figure(next(figures))
            yield _AnswerBox(problem.unit)
            yield Spacer(0, PROBLEM_GAP_PT)


class _Figure(Flowable):  # type: ignore[misc]  # reportlab is not typed
    """A figure that is drawn already, right of the numbers."""

    def __init__(self, figure: PlainFigure) -> None:
        super().__init__()
        self.figure = figure
        self.width, self.height = figure.width_pt, figure.height_pt + PART_GAP_PT

    def draw(self) -> None:
        self.canv.translate(INDENT_PT, 0)
        draw(self.canv, self.figure.shapes, self.height)


class _AnswerBox(Flowable):  # type: ignore[misc]
    """'Answer', a box, and the unit."""

    def __init__(self, unit: str) -> None:
        super().__init__()
        self.unit = unit
        self.width, self.height = BOX_LEFT_PT, BOX_PT[1]

    def draw(self) -> None:
        foot = self.height - BOX_BASELINE_PT
        self.canv.setFont(FACES[0], TYPE_SIZE_PT)
        self.canv.drawRightString(BOX_LEFT_PT - BOX_GAP_PT, foot, "Answer")
        self.canv.rect(BOX_LEFT_PT, 0, *BOX_PT)
        self.canv.drawString(BOX_LEFT_PT + BOX_PT[0] + BOX_GAP_PT, foot, self.unit)
