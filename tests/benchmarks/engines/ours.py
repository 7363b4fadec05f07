"""Our own engine: blocks, paragraphs, boxes and bar models set, then drawn."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from tests.benchmarks.plain_shapes import PlainFigure, PlainShape
from tests.benchmarks.sheets import (
    COLUMN_PT,
    INDENT_PT,
    LEADING,
    MARGIN_PT,
    MODEL_PT,
    PAPER_PT,
    TYPE_SIZE_PT,
    Material,
    Model,
    Problem,
    Sheet,
    make_sheets,
    models_of,
)
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Face, Path, Rect, Rule, Shape, TextRun
from typeset.quantities.inline import words
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, SpaceKind
from typeset.setting.blocks import (
    Block,
    Column,
    Question,
    Spacing,
    question_block,
)
from typeset.setting.frames import Document, Role
from typeset.setting.pages import PageFrame, flow
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pdf import write_pdf
from typeset.setting.pieces import text
from typeset.setting.stretch import Stretch

_SPACING = Spacing(
    hang=INDENT_PT / TYPE_SIZE_PT,
    inner=Stretch(0.2, 0.3, 0.5),
    question=Stretch(0.5, 0.7, 1.2),
    heading=Stretch(0.5, 0.7, 1.2),
)
_STYLE = TextStyle(TYPE_SIZE_PT, LEADING)
_FRAME = PageFrame(*PAPER_PT, MARGIN_PT, MARGIN_PT, COLUMN_PT, PAPER_PT[1] - 2 * MARGIN_PT)


def make(material: Material) -> bytes:
    """The file, without tags."""
    return write_pdf(composed(material.sheets))


def make_tagged(material: Material) -> bytes:
    """The file, with its structure."""
    return write_pdf(replace(composed(material.sheets), tagged=True))


def composed(sheets: Sequence[Sheet]) -> Document:
    """The sheets as finished pages: lines and pages broken, everything placed."""
    pages = flow(lambda _: _blocks(sheets), _FRAME, TYPE_SIZE_PT).pages
    return Document("Harbour festival", "A benchmark", pages, TYPE_SIZE_PT)


def material_of(count: int, seed: int) -> Material:
    """What all engines are given for one round."""
    sheets = make_sheets(count, seed)
    figures = (_drawn(model) for model in models_of(sheets))
    plain = tuple(PlainFigure(f.width_pt, f.height_pt, plain_shapes(f.shapes)) for f in figures)
    placed = (
        plain_shapes(shape for item in page.placed for shape in item.shapes)
        for page in composed(sheets).pages
    )
    return Material(sheets, plain, tuple(placed))


def plain_shapes(shapes: Iterable[Shape]) -> tuple[PlainShape, ...]:
    """The same as tuples; all inks of these sheets are greys."""
    return tuple(_plain(shape) for shape in shapes)


def _blocks(sheets: Sequence[Sheet]) -> list[Block]:
    column = Column(_STYLE, COLUMN_PT, _SPACING)
    blocks: list[Block] = []
    for sheet in sheets:
        heading = text(words(sheet.heading), _STYLE.bold(), COLUMN_PT, Role.HEADING)
        blocks.append(Block("heading", heading, keep_with_next=True, starts_page=True))
        blocks += [question_block(_question(problem), column) for problem in sheet.problems]
    return blocks


def _question(problem: Problem) -> Question:
    space = AnswerSpace(
        SpaceKind.LINE, answers=(AnswerLine(after=words(problem.unit), boxed=True),)
    )
    figure = _drawn(problem.model) if problem.model is not None else None
    return Question(problem.number, problem.number, words(problem.story), space, figure)


def _drawn(model: Model) -> Drawing:
    value = Part(Fraction(model.part), Mark(words(f"{model.part}")))
    bars = tuple(Bar(name, (value,) * count) for name, count in model.bars)
    total = Mark(words(f"{model.total}"))
    figure = BarModel(bars, total=total, reads_as=f"Bars of {model.part}, together {model.total}.")
    return draw_figure(figure, Show.COMPLETE, MODEL_PT, TYPE_SIZE_PT)


def _plain(shape: Shape) -> PlainShape:
    match shape:
        case TextRun():
            bold = shape.face is Face.BOLD
            return ("text", shape.x_pt, shape.y_pt, shape.text, shape.size_pt, bold)
        case Rule():
            ends = (shape.x1_pt, shape.y1_pt, shape.x2_pt, shape.y2_pt)
            return ("rule", *ends, shape.thickness_pt, shape.colour[0], shape.dash_pt)
        case Rect():
            box = (shape.x_pt, shape.y_pt, shape.width_pt, shape.height_pt)
            fill = shape.fill[0] if shape.fill is not None else None
            return ("rect", *box, shape.thickness_pt, shape.stroke[0], fill, shape.dash_pt)
        case Path():
            fill = shape.fill[0] if shape.fill is not None else None
            return ("path", shape.steps, shape.thickness_pt, shape.stroke[0], fill)
