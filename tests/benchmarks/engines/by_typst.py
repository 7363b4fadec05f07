"""Typst: its own language, compiled in this process by its Python package."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

import typst

from tests.benchmarks.fonts import FAMILY, FOLDER
from tests.benchmarks.plain_shapes import PlainFigure, PlainShape
from tests.benchmarks.sheets import (
    BOX_BASELINE_PT,
    BOX_GAP_PT,
    BOX_LEFT_PT,
    BOX_PT,
    INDENT_PT,
    LEADING,
    MARGIN_PT,
    PART_GAP_PT,
    PROBLEM_GAP_PT,
    TYPE_SIZE_PT,
    Material,
    Problem,
)

# `par.leading` is the white between lines, which here reach from cap height to baseline.
_CAP_EMS = 0.668
_HEAD = f"""
#set page(paper: "a4", margin: {MARGIN_PT}pt)
#set text(font: "{FAMILY}", size: {TYPE_SIZE_PT}pt, lang: "en", region: "gb")
#set par(leading: {LEADING - _CAP_EMS:.3f}em, spacing: {PART_GAP_PT}pt, justify: false)
#let at(x, y, body) = place(dx: x * 1pt, dy: y * 1pt, body)
#let T(x, y, body, size, weight) = at(x, y, text(
  size: size * 1pt, weight: weight, top-edge: "baseline", bottom-edge: "baseline", body))
#let L(x1, y1, x2, y2, w) = at(0, 0, line(
  start: (x1 * 1pt, y1 * 1pt), end: (x2 * 1pt, y2 * 1pt), stroke: w * 1pt))
#let R(x, y, w, h, s, fill) = at(x, y, rect(
  width: w * 1pt, height: h * 1pt, stroke: s * 1pt, fill: fill))
#let P(w, ..steps) = at(0, 0, curve(stroke: w * 1pt, ..steps))
#let p(x, y) = (x * 1pt, y * 1pt)
#let answer(unit) = block(height: {BOX_PT[1]}pt, width: 100%, {{
  let base = {BOX_BASELINE_PT}pt
  let set-at(x, body, side) = place(dx: x, dy: base, box(width: 0pt, align(side, box(text(
    top-edge: "baseline", bottom-edge: "baseline", body)))))
  set-at({BOX_LEFT_PT - INDENT_PT - BOX_GAP_PT}pt, "Answer", right)
  place(dx: {BOX_LEFT_PT - INDENT_PT}pt, rect(
    width: {BOX_PT[0]}pt, height: {BOX_PT[1]}pt, stroke: 0.75pt))
  set-at({BOX_LEFT_PT - INDENT_PT + BOX_PT[0] + BOX_GAP_PT}pt, unit, left)
}})
#let problem(number, story, unit, model) = block(
  breakable: false, above: {PROBLEM_GAP_PT}pt, grid(columns: ({INDENT_PT}pt, 1fr),
    strong(number), {{ par(story); model; answer(unit) }}))
#let model(height, body) = block(height: height * 1pt, width: 100%, body)
"""


def make(material: Material) -> bytes:
    """The file, without tags."""
    return _compiled(material, tags=False)


def make_tagged(material: Material) -> bytes:
    """The file, tagged, as Typst writes it by default."""
    return _compiled(material, tags=True)


def _compiled(material: Material, tags: bool) -> bytes:
    source = "\n".join(_source(material)).encode()
    return bytes(_compiler().compile(input=source, format="pdf", pdf_tags=tags))


@cache
def _compiler() -> Any:
    """Kept, with its fonts: what a server that sets many documents would do."""
    return typst.Compiler(font_paths=[str(FOLDER)], ignore_system_fonts=True)


def _source(material: Material) -> Iterator[str]:
    yield _HEAD
    figures = iter(material.figures)
    for index, sheet in enumerate(material.sheets):
        if index:
            yield "#pagebreak()"
        yield f"#strong({_quoted(sheet.heading)})"
        yield from (_problem(problem, figures) for problem in sheet.problems)


def _problem(problem: Problem, figures: Iterator[PlainFigure]) -> str:
    model = _model(next(figures)) if problem.model is not None else "none"
    texts = ", ".join(map(_quoted, (problem.number, problem.story, problem.unit)))
    return f"#problem({texts}, {model})"


def _model(figure: PlainFigure) -> str:
    drawn = "; ".join(_shape(shape) for shape in figure.shapes)
    return f"model({figure.height_pt}, {{ {drawn} }})"


def _shape(shape: PlainShape) -> str:
    kind, *rest = shape
    if kind == "text":
        x, y, text, size, bold = rest
        return f'T({x}, {y}, {_quoted(text)}, {size}, "{"bold" if bold else "regular"}")'
    if kind == "rule":
        return f"L({', '.join(str(n) for n in rest[:5])})"
    if kind == "rect":
        fill = "none" if rest[6] is None else f"luma({100 * rest[6]}%)"
        return f"R({', '.join(str(n) for n in rest[:5])}, {fill})"
    return f"P({rest[1]}, {', '.join(map(_step, rest[0]))})"


def _step(step: Any) -> str:
    command, *at = step
    points = ", ".join(f"p({x}, {y})" for x, y in zip(at[::2], at[1::2], strict=True))
    return f"curve.{ {'M': 'move', 'L': 'line', 'C': 'cubic'}[command] }({points})"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
