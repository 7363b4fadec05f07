"""The name line of a pupil's own sheet: the name is printed where others have a rule."""

from __future__ import annotations

from dataclasses import replace

from typeset.documents.composer import Composer
from typeset.documents.layout import Layout
from typeset.drawing.fonts import width_pt
from typeset.drawing.inline_maths import lay_out_rich_line
from typeset.drawing.shapes import Face, Rule, Shape, TextRun, moved
from typeset.errors import FitError
from typeset.quantities.inline import Rich, plain, words
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, SpaceKind, SpacePiece, answer_space
from typeset.setting.blocks import Column

# The name line takes this share of the width, the date line the rest.
NAME_SHARE = 0.62


def name_width_pt(column: Column) -> float:
    """The width of the name line, its label included."""
    return NAME_SHARE * (column.width_pt - column.spacing.column * column.style.size_pt)


def filled_in(label: Rich, name: str, column: Column, width_pt: float) -> SpacePiece:
    """The line with the name in place of its rule, just as high as the line to fill in, so that
    a named sheet is set as any other.

    Raises FitError for a name that is longer than the rule, GlyphError.
    """
    style = column.style
    line = AnswerSpace(SpaceKind.LINE, answers=(AnswerLine(label=label, long=True),))
    empty = answer_space(line, style, width_pt)
    bold = style.bold()
    written = lay_out_rich_line(words(name, bold=True), bold.size_pt, bold.face, bold.colour)
    rule = _rule(empty.draw(empty.height.natural_pt))
    if written.width_pt > rule.x2_pt - rule.x1_pt:
        raise FitError(f"the name is {written.width_pt:.0f} pt wide, its line is shorter")

    def draw(height_pt: float) -> tuple[Shape, ...]:
        shapes = empty.draw(height_pt)
        rule, drop = _rule(shapes), _baseline_pt(shapes) - written.baseline_pt
        name_shapes = (moved(shape, rule.x1_pt, drop) for shape in written.shapes)
        return (*(shape for shape in shapes if shape is not rule), *name_shapes)

    return replace(empty, draw=draw, reads_as=f"{plain(label)} {name}")


def why_not_printed(name: str, layout: Layout) -> str:
    """Why the name cannot be printed in this layout; empty where it can.

    Raises GlyphError for a character that a face does not hold.
    """
    composer = Composer(layout)
    column = composer.column(layout.type_size.largest)
    for face in Face:
        width_pt(name, 1.0, face)
    try:
        filled_in(composer.rich("sheet", "name"), name, column, name_width_pt(column))
    except FitError:
        return f"the name is longer than the name line of the layout '{layout.name}'"
    return ""


def _rule(shapes: tuple[Shape, ...]) -> Rule:
    return next(shape for shape in shapes if isinstance(shape, Rule))


def _baseline_pt(shapes: tuple[Shape, ...]) -> float:
    """Where the letters of the label stand."""
    return next(shape.y_pt for shape in shapes if isinstance(shape, TextRun))
