"""WeasyPrint: HTML and CSS, the boxes and bar models as SVG within them."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from typing import Any

from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration

from tests.benchmarks.fonts import BOLD, REGULAR
from tests.benchmarks.plain_shapes import PlainFigure, PlainShape
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
    Problem,
)

_STYLE = f"""
@font-face {{ font-family: Text; src: url({REGULAR.as_uri()}); }}
@font-face {{ font-family: Text; font-weight: bold; src: url({BOLD.as_uri()}); }}
@page {{ size: A4; margin: {MARGIN_PT}pt; }}
body {{ margin: 0; font: {TYPE_SIZE_PT}pt/{LEADING} Text; }}
section + section {{ break-before: page; }}
h1 {{ font-size: {TYPE_SIZE_PT}pt; margin: 0; }}
div {{ position: relative; padding-left: {INDENT_PT}pt; margin-top: {PROBLEM_GAP_PT}pt; }}
b {{ position: absolute; left: 0; top: 0; }}
p {{ margin: 0 0 {PART_GAP_PT}pt; }}
svg {{ display: block; margin-bottom: {PART_GAP_PT}pt; }}
"""


def make(material: Material) -> bytes:
    """The file."""
    fonts = FontConfiguration()
    style = CSS(string=_STYLE, font_config=fonts)
    html = HTML(string="".join(_html(material)))
    written: Any = html.write_pdf(stylesheets=[style], font_config=fonts)
    return bytes(written)


def _html(material: Material) -> Iterator[str]:
    figures = iter(material.figures)
    yield '<html lang="en-GB"><body>'
    for sheet in material.sheets:
        problems = "".join(_problem(problem, figures) for problem in sheet.problems)
        yield f"<section><h1>{escape(sheet.heading)}</h1>{problems}</section>"
    yield "</body></html>"


def _problem(problem: Problem, figures: Iterator[PlainFigure]) -> str:
    model = ""
    if problem.model is not None:
        figure = next(figures)
        drawn = "".join(_shape(shape) for shape in figure.shapes)
        model = _svg(figure.width_pt, figure.height_pt, drawn)
    story = f"<b>{problem.number}</b><p>{escape(problem.story)}</p>"
    return f"<div>{story}{model}{_answer_box(problem.unit)}</div>"


def _svg(width_pt: float, height_pt: float, drawn: str) -> str:
    size = f'width="{width_pt}pt" height="{height_pt}pt" viewBox="0 0 {width_pt} {height_pt}"'
    return f"<svg {size}>{drawn}</svg>"


def _answer_box(unit: str) -> str:
    left = BOX_LEFT_PT - INDENT_PT
    label = _text(left - BOX_GAP_PT, BOX_BASELINE_PT, "Answer", 'text-anchor="end"')
    box = _rect(left, 0.375, BOX_PT[0], BOX_PT[1], 0.75, None)
    after = _text(left + BOX_PT[0] + BOX_GAP_PT, BOX_BASELINE_PT, unit)
    return _svg(COLUMN_PT - INDENT_PT, BOX_PT[1] + 0.75, label + box + after)


def _shape(shape: PlainShape) -> str:
    kind, *rest = shape
    if kind == "text":
        x, y, text, size, bold = rest
        return _text(x, y, text, 'font-weight="bold"' if bold else "", size)
    if kind == "rule":
        x1, y1, x2, y2, thickness, *_ = rest
        ends = f'x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"'
        return f'<line {ends} stroke="black" stroke-width="{thickness}"/>'
    if kind == "rect":
        x, y, width, height, thickness, _, fill, _ = rest
        return _rect(x, y, width, height, thickness, fill)
    steps, thickness, *_ = rest
    path = " ".join(" ".join(map(str, step)) for step in steps)
    return f'<path d="{path}" fill="none" stroke="black" stroke-width="{thickness}"/>'


def _rect(
    x: float, y: float, width: float, height: float, thickness: float, fill: float | None
) -> str:
    ink = "none" if fill is None else f"rgb({', '.join([str(round(255 * fill))] * 3)})"
    box = f'x="{x}" y="{y}" width="{width}" height="{height}"'
    return f'<rect {box} fill="{ink}" stroke="black" stroke-width="{thickness}"/>'


def _text(x: float, y: float, text: str, more: str = "", size_pt: float = TYPE_SIZE_PT) -> str:
    look = f'font-family="Text" font-size="{size_pt}" {more}'
    return f'<text x="{x}" y="{y}" {look}>{escape(text)}</text>'
