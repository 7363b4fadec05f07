"""One line of text and maths: words, stacked fractions, missing-number boxes, blanks, symbols.

Everything stands on one baseline; what is higher than a letter is centred on the maths axis,
the height at which the font draws its minus sign. An inline item is first cut into atoms,
so that neighbouring letters of one face become one run: then the text of the finished PDF
comes back as words with spaces.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeAlias

from typeset.drawing.fonts import (
    drawable,
    measures,
    width_pt,
)
from typeset.drawing.shapes import (
    BLACK,
    PT_PER_MM,
    Colour,
    Drawing,
    Face,
    Heard,
    Reading,
    Rect,
    Rule,
    Shape,
    TextRun,
    moved,
)
from typeset.drawing.symbols import runs, symbol_shape, symbol_width_pt, text_width_pt
from typeset.quantities.inline import (
    Blank,
    Equals,
    Inline,
    MissingBox,
    Rich,
    Solid,
    Stacked,
    Words,
    plain,
)
from typeset.quantities.spoken import (
    BLANK,
    SYMBOL_NAMES,
    is_formula,
    spoken,
    spoken_formula,
)

# The numbers of a fraction against the text. At 12 pt they are 9.6 pt: still a clear size
# for a pupil, and the whole fraction stays within a leading of 1.5.
FRACTION_RATIO = 0.8
# Clear room between the bar and the figures over and under it, in ems of the text.
_FRACTION_GAP_EMS = 0.11
# How far the bar reaches beyond the wider number, and the white beside the bar.
_BAR_REACH_EMS = 0.07
_BAR_SIDE_EMS = 0.06
# A photocopier keeps lines of 0.25 mm (sources.md section 4, our own choice).
LEAST_RULE_PT = 0.25 * PT_PER_MM
_BAR_THICKNESS_EMS = 0.06
# Between the whole number and its fraction: less than a word space, more than none.
_MIXED_GAP_EMS = 0.1
# High enough to write a number into at 12 pt (5.7 mm), and within a leading of 1.5.
_BOX_HEIGHT_EMS = 1.35
_BOX_SIDE_EMS = 0.06
# A rule to write on lies a little under the baseline, clear of the letters before it.
_BLANK_DEPTH_EMS = 0.12
_NO_BREAK = "\u00a0"


@dataclass(frozen=True, slots=True)
class Atom:
    """The smallest thing on a line, with its face."""

    piece: str | Stacked | MissingBox | Blank
    face: Face = Face.REGULAR
    # How it is heard, where that is not as its letters.
    reading: Reading | None = None


Atoms: TypeAlias = tuple[Atom, ...]


def lay_out_rich_line(
    rich: Rich, size_pt: float, face: Face = Face.REGULAR, colour: Colour = BLACK
) -> Drawing:
    """Any text on one line, its height with a letter's ascent and descent. Raises GlyphError."""
    atoms = [atom for item in rich for atom in atoms_of(item, face)]
    return lay_out_atoms(atoms, size_pt, colour)


@lru_cache(maxsize=8192)
def atoms_of(item: Inline, face: Face = Face.REGULAR) -> Atoms:
    """The item cut into atoms; an item marked bold is bold in any face."""
    match item:
        case Words(text=text, bold=bold):
            return (Atom(text, Face.BOLD if bold else face),)
        case Solid(bold=bold):
            return _solid_atoms(item, Face.BOLD if bold else face)
        case Equals(sides=sides, signs=signs):
            atoms = atoms_of(sides[0], face)
            for sign, side in zip(signs, sides[1:], strict=True):
                atoms += sign_atoms(sign, face) + atoms_of(side, face)
            return _heard_as(atoms, Heard.FORMULA, spoken_formula(plain((item,))))
        case Blank():
            return _heard_as((Atom(item, face),), Heard.WORDS, BLANK)


def _solid_atoms(item: Solid, face: Face) -> Atoms:
    """Maths is heard as a whole; within other runs only what is no letters is put in words."""
    text = plain((item,))
    if is_formula(text):
        whole = tuple(Atom(piece, face) for piece in item.pieces)
        return _heard_as(whole, Heard.FORMULA, spoken_formula(text))
    atoms: Atoms = ()
    for piece in item.pieces:
        match piece:
            case str():
                atoms += (Atom(piece, face),)
            case Stacked(over=over, under=under):
                before, count = _split_count(atoms)
                said = spoken(f"{_plain_count(count)}{over}/{under}")
                atoms = before + _heard_as((*count, Atom(piece, face)), Heard.WORDS, said)
            case MissingBox():
                atoms += _heard_as((Atom(piece, face),), Heard.WORDS, BLANK)
    return atoms


def _split_count(atoms: Atoms) -> tuple[Atoms, Atoms]:
    """The atoms, and a whole number at their end, which is heard with the fraction after it."""
    last = atoms[-1] if atoms else None
    if last is None or last.reading is not None or not isinstance(last.piece, str):
        return atoms, ()
    letters = last.piece.rstrip("0123456789,").rstrip(",")
    count = last.piece[len(letters) :]
    if not count[:1].isdigit():
        return atoms, ()
    kept = (*atoms[:-1], Atom(letters, last.face)) if letters else atoms[:-1]
    return kept, (Atom(count, last.face),)


def _plain_count(count: Atoms) -> str:
    """The whole number before a fraction, as plain text has it."""
    return "".join(f"{atom.piece} " for atom in count)


def _heard_as(atoms: Iterable[Atom], heard: Heard, text: str) -> Atoms:
    """The atoms as one run that is heard so."""
    return tuple(
        Atom(atom.piece, atom.face, Reading(heard, text, begins=index == 0))
        for index, atom in enumerate(atom for atom in atoms if atom.piece != "")
    )


def sign_atoms(sign: str, face: Face = Face.REGULAR) -> Atoms:
    """A relation sign with its spaces, between two sides that stay on one line."""
    return (Atom(f"{_NO_BREAK}{sign}{_NO_BREAK}", face),)


def atoms_width_pt(atoms: Sequence[Atom], size_pt: float) -> float:
    """The width of the atoms on one line. Raises GlyphError."""
    if len(atoms) == 1 and isinstance(atoms[0].piece, str) and atoms[0].piece:
        return text_width_pt(atoms[0].piece, size_pt, atoms[0].face)
    return _Line(size_pt, BLACK).add(_merged(atoms)).width_pt


def lay_out_atoms(atoms: Iterable[Atom], size_pt: float, colour: Colour = BLACK) -> Drawing:
    """The atoms on one baseline. Raises GlyphError."""
    merged = _merged(atoms)
    line = _Line(size_pt, colour).add(merged)
    if line.above_pt > line.baseline_pt:
        # What is higher than a letter pushes the baseline down: drawn again from there.
        line = _Line(size_pt, colour, line.above_pt).add(merged)
    return line.drawing()


def _merged(atoms: Iterable[Atom]) -> list[Atom]:
    """Neighbouring letters of one face as one atom."""
    merged: list[Atom] = []
    letters: list[str] = []
    first: Atom | None = None
    for atom in atoms:
        if not isinstance(atom.piece, str):
            _end_run(merged, first, letters)
            merged.append(atom)
            first = None
        elif first is not None and first.face is atom.face and _same_run(first, atom):
            letters.append(atom.piece)
        elif atom.piece:
            _end_run(merged, first, letters)
            first, letters = atom, [atom.piece]
    _end_run(merged, first, letters)
    return merged


def _end_run(merged: list[Atom], first: Atom | None, letters: Sequence[str]) -> None:
    """The run of letters that `first` begins, as one atom more."""
    if first is not None:
        whole = first if len(letters) == 1 else Atom("".join(letters), first.face, first.reading)
        merged.append(whole)


def _same_run(one: Atom, other: Atom) -> bool:
    """True where both are heard in one run."""
    if one.reading is None or other.reading is None:
        return one.reading is other.reading
    return not other.reading.begins


class _Line:
    """Collects shapes from left to right, the top of the line at y = 0.

    The baseline is where letters alone have it, unless another is given.
    """

    def __init__(self, size_pt: float, colour: Colour, baseline_pt: float | None = None) -> None:
        self.size_pt = size_pt
        self.colour = colour
        self.width_pt = 0.0
        self.measures = measures()
        self.above_pt = self.measures.ascent * size_pt
        self.below_pt = self.measures.descent * size_pt
        self.baseline_pt = self.above_pt if baseline_pt is None else baseline_pt
        self.axis_pt = self.measures.maths_axis * size_pt
        self.shapes: list[Shape] = []

    def add(self, atoms: Sequence[Atom]) -> _Line:
        ends_in_figure = False
        for atom in atoms:
            drawn = len(self.shapes)
            match atom.piece:
                case str() as text:
                    self._add_letters(text, atom.face)
                case Stacked() as fraction:
                    self.width_pt += _MIXED_GAP_EMS * self.size_pt if ends_in_figure else 0
                    self._add_fraction(fraction, atom.face)
                case MissingBox() as box:
                    self._add_box(box)
                case Blank() as blank:
                    self._add_blank(blank)
            self._tell(drawn, atom.reading)
            ends_in_figure = isinstance(atom.piece, str) and atom.piece[-1:].isdigit()
        return self

    def _tell(self, first: int, reading: Reading | None) -> None:
        """The shapes from `first` on are heard so."""
        if reading is None:
            return
        for index in range(first, len(self.shapes)):
            begins = reading.begins and index == first
            told = reading if begins == reading.begins else replace(reading, begins=begins)
            self.shapes[index] = replace(self.shapes[index], reading=told)

    def drawing(self) -> Drawing:
        height = self.above_pt + self.below_pt
        return Drawing(self.width_pt, height, tuple(self.shapes), baseline_pt=self.baseline_pt)

    def _add_letters(self, text: str, face: Face) -> None:
        for run, is_symbol in runs(text, face):
            if is_symbol:
                self._add_symbols(run)
                continue
            width = width_pt(run, self.size_pt, face)
            at = (self.width_pt, self.baseline_pt)
            self.shapes.append(TextRun(*at, drawable(run), self.size_pt, face, self.colour))
            self.width_pt += width

    def _add_symbols(self, symbols: str) -> None:
        for symbol in symbols:
            standing = symbol_shape(symbol, self.width_pt, self.size_pt, self.colour)
            shape = moved(standing, 0.0, self.baseline_pt)
            named = Reading(Heard.WORDS, SYMBOL_NAMES[symbol], begins=True)
            self.shapes.append(replace(shape, reading=named))
            self.width_pt += symbol_width_pt(symbol, self.size_pt)

    def _add_fraction(self, fraction: Stacked, face: Face) -> None:
        size = self.size_pt
        small, side = FRACTION_RATIO * size, _BAR_SIDE_EMS * size
        over = width_pt(fraction.over, small, face)
        under = width_pt(fraction.under, small, face)
        bar = max(over, under) + 2 * _BAR_REACH_EMS * size
        thickness = max(LEAST_RULE_PT, _BAR_THICKNESS_EMS * size)
        clear = thickness / 2 + _FRACTION_GAP_EMS * size
        figure = self.measures.figure_height * small
        left = self.width_pt + side
        self._add_number(fraction.over, left + (bar - over) / 2, self.axis_pt + clear, face)
        level = -self.axis_pt + self.baseline_pt
        self.shapes.append(Rule(left, level, left + bar, level, thickness, self.colour))
        lower = self.axis_pt - clear - figure
        self._add_number(fraction.under, left + (bar - under) / 2, lower, face)
        self._reach(self.axis_pt + clear + figure, -lower)
        self.width_pt += bar + 2 * side

    def _add_number(self, text: str, x_pt: float, baseline_pt: float, face: Face) -> None:
        """A number of a fraction, its baseline this far above that of the line."""
        at = (x_pt, -baseline_pt + self.baseline_pt)
        small = FRACTION_RATIO * self.size_pt
        self.shapes.append(TextRun(*at, drawable(text), small, face, self.colour))

    def _add_box(self, box: MissingBox) -> None:
        size, side = self.size_pt, _BOX_SIDE_EMS * self.size_pt
        width, height = float(box.ems) * size, _BOX_HEIGHT_EMS * size
        top = self.axis_pt + height / 2
        corner = (self.width_pt + side, -top + self.baseline_pt)
        self.shapes.append(Rect(*corner, width, height, LEAST_RULE_PT, self.colour))
        self._reach(top + LEAST_RULE_PT / 2, height - top + LEAST_RULE_PT / 2)
        self.width_pt += width + 2 * side

    def _add_blank(self, blank: Blank) -> None:
        width, left = float(blank.ems) * self.size_pt, self.width_pt
        level = _BLANK_DEPTH_EMS * self.size_pt + self.baseline_pt
        self.shapes.append(Rule(left, level, left + width, level, LEAST_RULE_PT, self.colour))
        self.width_pt += width

    def _reach(self, above_pt: float, below_pt: float) -> None:
        self.above_pt = max(self.above_pt, above_pt)
        self.below_pt = max(self.below_pt, below_pt)
