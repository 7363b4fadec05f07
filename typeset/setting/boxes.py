"""A text cut into boxes that no line break may enter.

A box is what stands between two spaces: a word with its punctuation, an amount with its
unit, an equation with the comma after it. Since only spaces part boxes, punctuation stays
with what it follows, and brackets and quotation marks with what they open.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from typeset.drawing.inline_maths import (
    Atom,
    Atoms,
    atoms_of,
    atoms_width_pt,
    sign_atoms,
)
from typeset.drawing.shapes import Face
from typeset.drawing.symbols import text_width_pt
from typeset.quantities.inline import Blank, Equals, Inline, MissingBox, Rich, Stacked, Words

# Breaking white space: everything Unicode calls a space but U+00A0, U+2007 and U+202F.
_BREAKING = re.compile(r"[^\S\u00a0\u2007\u202f]+")
_SPACE = " "


@dataclass(frozen=True, slots=True)
class Box:
    """What never breaks, with the space that parts it from the box before (none at a start)."""

    atoms: Atoms
    width_pt: float
    space: Atoms
    space_pt: float
    # What it reads as, to judge line endings by.
    text: str


# What stands between two boxes, by its face.
_SPACES: Mapping[Face, Atoms] = {face: (Atom(_SPACE, face),) for face in Face}


class _Cutter:
    """Gathers atoms into a box until a breaking space comes."""

    def __init__(self, size_pt: float) -> None:
        self.size_pt = size_pt
        self.done: list[Box] = []
        self.atoms: list[Atom] = []
        self.space: Atoms = ()
        self.space_pt = 0.0
        self.spaces_pt = {face: text_width_pt(_SPACE, size_pt, face) for face in Face}

    def add(self, atoms: Atoms) -> None:
        self.atoms += [atom for atom in atoms if atom.piece != ""]

    def part(self, face: Face) -> None:
        """End the box that is being gathered; the next one stands after a space of this face."""
        if self.atoms:
            self.done.append(self._box())
            self.atoms = []
        if self.done:
            self.space = _SPACES[face]
            self.space_pt = self.spaces_pt[face]

    def _box(self) -> Box:
        atoms = tuple(self.atoms)
        width = atoms_width_pt(atoms, self.size_pt)
        return Box(atoms, width, self.space, self.space_pt, _text(atoms))


def boxes_of(rich: Rich, size_pt: float, face: Face, measure_pt: float) -> tuple[Box, ...]:
    """The text as boxes. An equation wider than the measure is one box a side.

    Raises GlyphError for a character that the face does not hold.
    """
    cutter = _Cutter(size_pt)
    for item in rich:
        _cut(cutter, item, face, measure_pt)
    cutter.part(face)
    return tuple(cutter.done)


def _cut(cutter: _Cutter, item: Inline, face: Face, measure_pt: float) -> None:
    match item:
        case Words(text=text, bold=bold):
            own = Face.BOLD if bold else face
            for index, word in enumerate(_BREAKING.split(text)):
                if index:
                    cutter.part(own)
                if word:
                    cutter.atoms.append(Atom(word, own))
        case Equals():
            _cut_equation(cutter, item, face, measure_pt)
        case _:
            cutter.add(atoms_of(item, face))


def _cut_equation(cutter: _Cutter, item: Equals, face: Face, measure_pt: float) -> None:
    whole = atoms_of(item, face)
    if atoms_width_pt(whole, cutter.size_pt) <= measure_pt:
        cutter.add(whole)
        return
    cutter.add(atoms_of(item.sides[0], face))
    for sign, side in zip(item.signs, item.sides[1:], strict=True):
        cutter.part(face)
        sign_and_gap = tuple(_without_first_space(sign_atoms(sign, face)))
        cutter.add(sign_and_gap + atoms_of(side, face))


def _without_first_space(atoms: Atoms) -> Iterator[Atom]:
    for atom in atoms:
        yield Atom(atom.piece.lstrip() if isinstance(atom.piece, str) else atom.piece, atom.face)


def _text(atoms: Atoms) -> str:
    """The letters of a box; a fraction stands as '1/2', a box or blank as '_'."""
    if len(atoms) == 1 and isinstance(atoms[0].piece, str):
        return atoms[0].piece
    parts: list[str] = []
    for atom in atoms:
        match atom.piece:
            case str() as text:
                parts.append(text)
            case Stacked(over=over, under=under):
                parts.append(f"{over}/{under}")
            case MissingBox() | Blank():
                parts.append("_")
    return "".join(parts)
