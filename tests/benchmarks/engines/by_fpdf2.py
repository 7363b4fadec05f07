"""fpdf2: cells of several lines, and lines and letters at given places."""

from __future__ import annotations

from typing import Any

from fpdf import FPDF

from tests.benchmarks.fonts import BOLD, REGULAR
from tests.benchmarks.plain_shapes import PlainFigure
from tests.benchmarks.sheets import (
    BOX_BASELINE_PT,
    BOX_GAP_PT,
    BOX_LEFT_PT,
    BOX_PT,
    COLUMN_PT,
    INDENT_PT,
    LEADING,
    MARGIN_PT,
    PART_GAP_PT,
    PROBLEM_GAP_PT,
    TYPE_SIZE_PT,
    Material,
    Sheet,
)

_FAMILY = "text"
_LINE_PT = LEADING * TYPE_SIZE_PT


def make(material: Material) -> bytes:
    """The file."""
    pdf = FPDF(unit="pt", format="A4")
    pdf.set_margin(MARGIN_PT)
    pdf.c_margin = 0
    pdf.set_auto_page_break(True, MARGIN_PT)
    pdf.add_font(_FAMILY, "", REGULAR)
    pdf.add_font(_FAMILY, "B", BOLD)
    figures = iter(material.figures)
    for sheet in material.sheets:
        _sheet(pdf, sheet, figures)
    return bytes(pdf.output())


def _sheet(pdf: Any, sheet: Sheet, figures: Any) -> None:
    pdf.add_page()
    pdf.set_font(_FAMILY, "B", TYPE_SIZE_PT)
    pdf.multi_cell(COLUMN_PT, _LINE_PT, sheet.heading, align="L", new_x="LMARGIN", new_y="NEXT")
    for problem in sheet.problems:
        pdf.set_y(pdf.get_y() + PROBLEM_GAP_PT)
        pdf.set_font(_FAMILY, "B", TYPE_SIZE_PT)
        pdf.cell(INDENT_PT, _LINE_PT, problem.number)
        pdf.set_font(_FAMILY, "", TYPE_SIZE_PT)
        width = COLUMN_PT - INDENT_PT
        pdf.multi_cell(width, _LINE_PT, problem.story, align="L", new_x="LMARGIN", new_y="NEXT")
        top = pdf.get_y() + PART_GAP_PT
        if problem.model is not None:
            figure = next(figures)
            _draw(pdf, figure, MARGIN_PT + INDENT_PT, top)
            top += figure.height_pt + PART_GAP_PT
        _answer_box(pdf, problem.unit, top)
        pdf.set_y(top + BOX_PT[1])


def _answer_box(pdf: Any, unit: str, top_pt: float) -> None:
    left, base = MARGIN_PT + BOX_LEFT_PT, top_pt + BOX_BASELINE_PT
    pdf.text(left - BOX_GAP_PT - pdf.get_string_width("Answer"), base, "Answer")
    pdf.set_line_width(0.75)
    pdf.rect(left, top_pt, *BOX_PT)
    pdf.text(left + BOX_PT[0] + BOX_GAP_PT, base, unit)


def _draw(pdf: Any, figure: PlainFigure, left_pt: float, top_pt: float) -> None:
    for kind, *rest in figure.shapes:
        if kind == "text":
            x, y, text, size, bold = rest
            pdf.set_font(_FAMILY, "B" if bold else "", size)
            pdf.text(left_pt + x, top_pt + y, text)
        elif kind == "rule":
            x1, y1, x2, y2, thickness, *_ = rest
            pdf.set_line_width(thickness)
            pdf.line(left_pt + x1, top_pt + y1, left_pt + x2, top_pt + y2)
        elif kind == "rect":
            x, y, width, height, thickness, _, fill, _ = rest
            pdf.set_line_width(thickness)
            pdf.set_fill_color(round(255 * (1.0 if fill is None else fill)))
            style = "D" if fill is None else "DF"
            pdf.rect(left_pt + x, top_pt + y, width, height, style=style)
        else:
            _path(pdf, rest, left_pt, top_pt)


def _path(pdf: Any, rest: Any, left_pt: float, top_pt: float) -> None:
    steps, thickness, *_ = rest
    with pdf.new_path() as path:
        path.style.fill_color = None
        path.style.stroke_width = thickness
        path.style.auto_close = False
        for command, *at in steps:
            points = [n + (top_pt if i % 2 else left_pt) for i, n in enumerate(at)]
            {"M": path.move_to, "L": path.line_to, "C": path.curve_to}[command](*points)
