"""A column of working: each step's sentence, then its equation, the equations aligned on '='.

Five parts are the gulls, two the terns, so three parts are the difference.
        5 − 2 = 3
    36 ÷ 3 = 12
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from typeset.drawing.inline_maths import (
    Atom,
    Atoms,
    atoms_of,
    atoms_width_pt,
    lay_out_atoms,
    sign_atoms,
)
from typeset.drawing.shapes import PT_PER_MM, Drawing, Heard, Shape, heard_as, moved
from typeset.errors import FitError
from typeset.quantities.inline import Equals, Rich, plain
from typeset.quantities.spoken import spoken_formula
from typeset.setting.frames import Role
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import DrawingPiece, Indented, Piece, Stack, text
from typeset.setting.stretch import TOLERANCE_PT, Stretch

# Equations stand in from the sentences, by the width of two figures.
INDENT_EMS = 1.5
# A step's equation is close under its sentence, the next step further down.
_EQUATION_GAP_EMS = Stretch(0.4, 0.5, 0.6)
_STEP_GAP_EMS = Stretch(0.55, 0.75, 1.0)
# As in a paragraph: what must stay white between a fraction and the line under it.
_LINE_CLEAR_EMS = 0.1
_NO_BREAK = "\u00a0"
# Before a sign of operation, where a long sum breaks if it must.
_BEFORE_OPERATION = re.compile("\u00a0(?=[+\u2212\u00d7\u00f7]\u00a0)")


@dataclass(frozen=True, slots=True)
class WorkingStep:
    """A sentence that gives the reason (may be empty), and its equation if any."""

    sentence: Rich
    equation: Equals | None = None


def working(
    steps: Sequence[WorkingStep],
    style: TextStyle,
    width_pt: float,
    role: Role = Role.WORKING,
    source: str = "",
    folds: bool = False,
) -> Piece:
    """The steps as one piece of this width.

    With `folds` a side of an equation that is too long for the column goes on under itself.

    Raises GlyphError, and FitError for a side of an equation wider than the column.
    """
    indent = INDENT_EMS * style.size_pt
    measure = width_pt - indent
    equations = [step.equation for step in steps if step.equation is not None]
    sign_at = alignment_pt(equations, style, measure)
    pieces: list[Piece] = []
    gaps: list[Stretch] = []
    for step in steps:
        if step.sentence:
            gaps.append(_ems(_STEP_GAP_EMS, style))
            pieces.append(text(step.sentence, style, width_pt, role, source))
        if step.equation is not None:
            gaps.append(_ems(_EQUATION_GAP_EMS if step.sentence else _STEP_GAP_EMS, style))
            drawing = lay_out_aligned(step.equation, style, measure, sign_at, folds)
            pieces.append(Indented(DrawingPiece(drawing, role, source), indent))
    return Stack(tuple(pieces), tuple(gaps[1:]))


def alignment_pt(equations: Sequence[Equals], style: TextStyle, measure_pt: float) -> float:
    """How far from the left the first signs of a column stand.

    One of the left sides decides: the one with which most equations find room on both sides
    of their signs, and of several such the widest.
    """
    widths = [(_side_pt(e, style), _rest_pt(e, style)) for e in equations]

    def aligned(candidate: float) -> int:
        return sum(_fits_at(candidate, left, rest, measure_pt) for left, rest in widths)

    return max((left for left, _ in widths), key=lambda c: (aligned(c), c), default=0.0)


def _fits_at(sign_at_pt: float, left_pt: float, rest_pt: float, measure_pt: float) -> bool:
    room_left = left_pt <= sign_at_pt + TOLERANCE_PT
    return room_left and sign_at_pt + rest_pt <= measure_pt + TOLERANCE_PT


def lay_out_aligned(
    equation: Equals,
    style: TextStyle,
    measure_pt: float,
    sign_at_pt: float,
    folds: bool = False,
) -> Drawing:
    """The equation with its signs at this place, on one line or a line for every sign.

    A left side that is too long for the place starts at the left, and its signs follow on
    lines of their own. With `folds` a side too long for the column breaks before its signs
    of operation. Raises GlyphError, and FitError for a side that is too wide.
    """
    lines = _lines(equation, style, measure_pt, sign_at_pt)
    if folds:
        lines = [part for line in lines for part in _folded(line, style, measure_pt)]
    _check(equation, lines, style, measure_pt)
    shapes: list[Shape] = []
    baseline = below = first = 0.0
    for index, (left, atoms) in enumerate(lines):
        drawing = lay_out_atoms(atoms, style.size_pt, style.colour)
        needed = below + drawing.baseline_pt + _LINE_CLEAR_EMS * style.size_pt
        baseline += max(style.leading_pt, needed) if index else drawing.baseline_pt
        first = first or baseline
        shapes += [moved(s, left, baseline - drawing.baseline_pt) for s in drawing.shapes]
        below = drawing.height_pt - drawing.baseline_pt
    reading = plain((equation,))
    told = heard_as(shapes, Heard.FORMULA, spoken_formula(reading))
    return Drawing(measure_pt, baseline + below, told, first, reading)


def _lines(
    equation: Equals, style: TextStyle, measure_pt: float, sign_at_pt: float
) -> list[tuple[float, Atoms]]:
    """Each line with where it starts."""
    left = _side_pt(equation, style)
    whole = atoms_of(equation, style.face)
    whole_pt = atoms_width_pt(whole, style.size_pt)
    if not equation.signs:
        return [(0.0, whole)]
    aligns = _fits_at(sign_at_pt, left, _rest_pt(equation, style), measure_pt)
    start = sign_at_pt - left if aligns else 0.0
    if start + whole_pt <= measure_pt + TOLERANCE_PT:
        return [(start, whole)]
    tails = [_tail(equation, index, style) for index in range(len(equation.signs))]
    if aligns:
        return _hung_from_signs(equation, tails, style, start)
    return _hung_from_left(equation, tails, style, measure_pt)


def _hung_from_signs(
    equation: Equals, tails: Sequence[Atoms], style: TextStyle, start_pt: float
) -> list[tuple[float, Atoms]]:
    """The first sign on the line of the left side, every further one on a line under it."""
    head = (*atoms_of(equation.sides[0], style.face), Atom(_NO_BREAK, style.face))
    sign_at = start_pt + atoms_width_pt(head, style.size_pt)
    return [(start_pt, head + tails[0]), *((sign_at, tail) for tail in tails[1:])]


def _hung_from_left(
    equation: Equals, tails: Sequence[Atoms], style: TextStyle, measure_pt: float
) -> list[tuple[float, Atoms]]:
    """The left side on a line of its own, every sign on a line under it, a little indented."""
    widest = max(atoms_width_pt(tail, style.size_pt) for tail in tails)
    start = max(0.0, min(INDENT_EMS * style.size_pt, measure_pt - widest))
    return [(0.0, atoms_of(equation.sides[0], style.face)), *((start, tail) for tail in tails)]


def _folded(
    line: tuple[float, Atoms], style: TextStyle, measure_pt: float
) -> list[tuple[float, Atoms]]:
    """The line; one that is too long for the column goes on under itself, before a sign of
    operation and indented."""
    left, atoms = line
    if left + atoms_width_pt(atoms, style.size_pt) <= measure_pt + TOLERANCE_PT:
        return [line]
    first, *others = _before_operations(atoms)
    lines = [(left, first)]
    for part in others:
        start, gathered = lines[-1]
        longer = (*gathered, Atom(_NO_BREAK, style.face), *part)
        if start + atoms_width_pt(longer, style.size_pt) <= measure_pt + TOLERANCE_PT:
            lines[-1] = (start, longer)
        else:
            lines.append((left + INDENT_EMS * style.size_pt, part))
    return lines


def _before_operations(atoms: Atoms) -> list[Atoms]:
    """A sum parted before its signs of operation: '12 m + 7 m' gives '12 m' and '+ 7 m'."""
    parts: list[Atoms] = [()]
    for atom in atoms:
        if not isinstance(atom.piece, str):
            parts[-1] += (atom,)
            continue
        first, *others = _BEFORE_OPERATION.split(atom.piece)
        parts[-1] += (Atom(first, atom.face),)
        parts += [(Atom(text, atom.face),) for text in others]
    return [part for part in parts if part]


def _tail(equation: Equals, index: int, style: TextStyle) -> Atoms:
    """A sign with the side after it, as a line starts with it."""
    sign = (Atom(f"{equation.signs[index]}{_NO_BREAK}", style.face),)
    return sign + atoms_of(equation.sides[index + 1], style.face)


def _side_pt(equation: Equals, style: TextStyle) -> float:
    return atoms_width_pt(atoms_of(equation.sides[0], style.face), style.size_pt)


def _rest_pt(equation: Equals, style: TextStyle) -> float:
    """The widest sign with its side: what must find room right of the alignment."""
    face, size = style.face, style.size_pt
    rests = (
        atoms_width_pt(sign_atoms(sign, face) + atoms_of(side, face), size)
        for sign, side in zip(equation.signs, equation.sides[1:], strict=True)
    )
    return max(rests, default=0.0)


def _check(
    equation: Equals, lines: Sequence[tuple[float, Atoms]], style: TextStyle, measure_pt: float
) -> None:
    for left, atoms in lines:
        if left + atoms_width_pt(atoms, style.size_pt) > measure_pt + TOLERANCE_PT:
            raise FitError(
                f"the equation '{plain((equation,))}' has a side too wide for its column of "
                f"{measure_pt / PT_PER_MM:.0f} mm at {style.size_pt:g} pt; give it a wider column"
            )


def _ems(gap: Stretch, style: TextStyle) -> Stretch:
    size = style.size_pt
    return Stretch(gap.least_pt * size, gap.natural_pt * size, gap.greatest_pt * size)
