"""The fonts inside a file print what is read back: outline by outline those of our own faces.

What a reader of text is told (ToUnicode) and what a printer draws (the outlines) are two things.
Here every code of a font is followed both ways, to the letter that it is told as and to the
outline that it draws, and this has to be the letter's own in the face's file. Tables and forms:
the OpenType specification (Microsoft), 'cmap', 'glyf', 'head', 'loca'; ISO 32000-1, 9.6 and 9.10.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from pypdf import PdfReader
from reportlab.pdfbase.ttfonts import TTFontFile

from typeset.drawing.fonts import font_path
from typeset.drawing.shapes import Face

_TOLD = re.compile(rb"<([0-9A-Fa-f]{2})>\s*<([0-9A-Fa-f]{4})>")
_KEYS = {"/BaseFont", "/FirstChar", "/FontDescriptor", "/LastChar", "/Name", "/Subtype"}
_KEYS |= {"/ToUnicode", "/Type", "/Widths"}
# The letters that are told apart by their own codes (ISO 646), where a subset holds them.
_PLAIN = range(33, 127)
# Widths are written in whole thousandths of the type size.
_SLACK = 1.0
# Of a glyph made of others: words for its places, one more, and its scales.
_WORDS, _MORE = 1, 32
_SCALES = {8: 2, 64: 4, 128: 8}


def check_programs(reader: PdfReader) -> Iterator[str]:
    """What is wrong with the fonts that pages are drawn in. Raises what pypdf raises."""
    faces = {font_path(face).stem: font_path(face) for face in Face}
    for name, font in _drawn_in(reader):
        path = faces.get(name)
        # Another face, or one that is not in the file, is told of already.
        descriptor = font.get("/FontDescriptor", {}).get_object() if path else {}
        if path and "/FontFile2" in descriptor and "/ToUnicode" in font:
            yield from (f"the font {name} {what}" for what in _amiss(font, descriptor, path))


def _drawn_in(reader: PdfReader) -> Iterator[tuple[str, Any]]:
    """The fonts of all pages, each once, with the names of their faces."""
    seen: set[int] = set()
    for page in reader.pages:
        resources: Any = page.get("/Resources", {})
        fonts = resources.get_object().get("/Font", {}).get_object()
        for each in fonts.values():
            font = each.get_object()
            if id(font) not in seen:
                seen.add(id(font))
                yield str(font.get("/BaseFont", "")).lstrip("/").rpartition("+")[2], font


def _amiss(font: Any, descriptor: Any, path: Path) -> Iterator[str]:
    strange = sorted(set(font) - _KEYS)
    if strange:
        yield f"says {', '.join(strange)}, by which other letters could be drawn"
    told = {
        int(code, 16): chr(int(letter, 16))
        for code, letter in _TOLD.findall(font["/ToUnicode"].get_object().get_data())
    }
    try:
        program, own = Program(descriptor["/FontFile2"].get_object().get_data()), _own(path)
        wrong = [letter for code, letter in told.items() if not _draws(program, own, code, letter)]
        untold = [chr(code) for code in _PLAIN if code not in told and program.glyphs.get(code)]
    except (struct.error, IndexError, KeyError, RecursionError):
        yield "is damaged"
        return
    if wrong:
        yield f"draws another shape than its own for '{wrong[0]}'"
    if untold:
        yield f"does not tell what it draws for '{untold[0]}'"
    yield from _widths_amiss(font, told, own)


def _draws(program: Program, own: OwnFace, code: int, letter: str) -> bool:
    wanted = own.glyphs.get(ord(letter))
    return wanted is None or program.shape(program.glyphs.get(code, 0)) == own.program.shape(wanted)


def _widths_amiss(font: Any, told: Mapping[int, str], own: OwnFace) -> Iterator[str]:
    first, widths = int(font["/FirstChar"]), [float(each) for each in font["/Widths"].get_object()]
    for code, letter in told.items():
        wanted = own.widths.get(ord(letter))
        given = widths[code - first] if 0 <= code - first < len(widths) else 0.0
        if wanted is not None and abs(given - wanted) > _SLACK:
            yield f"takes '{letter}' to be {given:.0f} wide, which is {wanted:.0f}"
            return


@dataclass(frozen=True)
class Program:
    """A TrueType program. Raises struct.error, KeyError or IndexError where it is damaged."""

    data: bytes

    @cached_property
    def tables(self) -> dict[bytes, tuple[int, int]]:
        """Offset and length by name."""
        (count,) = struct.unpack_from(">H", self.data, 4)
        entries = (struct.unpack_from(">4s4xLL", self.data, 12 + 16 * n) for n in range(count))
        return {name: (offset, length) for name, offset, length in entries}

    @cached_property
    def places(self) -> tuple[int, ...]:
        """Where in the table of outlines every glyph begins, and the end of the last."""
        (is_long,) = struct.unpack_from(">h", self.data, self.tables[b"head"][0] + 50)
        offset, length = self.tables[b"loca"]
        if is_long:
            return struct.unpack_from(f">{length // 4}L", self.data, offset)
        return tuple(2 * each for each in struct.unpack_from(f">{length // 2}H", self.data, offset))

    @cached_property
    def glyphs(self) -> dict[int, int]:
        """Glyphs by code; every table of characters must say the same, of form 0 or 6."""
        start = self.tables[b"cmap"][0]
        (count,) = struct.unpack_from(">H", self.data, start + 2)
        found: dict[int, int] = {}
        for number in range(count):
            (at,) = struct.unpack_from(">4xL", self.data, start + 4 + 8 * number)
            for code, glyph in self._coded(start + at).items():
                if found.setdefault(code, glyph) != glyph:
                    raise KeyError(code)
        return found

    def _coded(self, at: int) -> dict[int, int]:
        (form,) = struct.unpack_from(">H", self.data, at)
        if form == 0:
            return dict(enumerate(self.data[at + 6 : at + 262]))
        if form == 6:
            first, count = struct.unpack_from(">HH", self.data, at + 6)
            numbers = struct.unpack_from(f">{count}H", self.data, at + 10)
            return dict(enumerate(numbers, first))
        raise KeyError(form)

    def shape(self, glyph: int) -> tuple[bytes, ...]:
        """The outline of a glyph as written, that of its parts in place of their numbers."""
        start = self.tables[b"glyf"][0]
        data = self.data[start + self.places[glyph] : start + self.places[glyph + 1]]
        if not data or struct.unpack_from(">h", data)[0] >= 0:
            return (data.rstrip(b"\0"),)
        return tuple(self._parts(data))

    def _parts(self, data: bytes) -> Iterator[bytes]:
        """Of a glyph that is made of others: the shape of each, and where it stands."""
        at, flags = 10, _MORE
        while flags & _MORE:
            flags, part = struct.unpack_from(">HH", data, at)
            end = at + 4 + (4 if flags & _WORDS else 2)
            end += sum(size for flag, size in _SCALES.items() if flags & flag)
            yield from self.shape(part)
            yield data[at + 4 : end]
            at = end


@dataclass(frozen=True, slots=True)
class OwnFace:
    """A face as it stands in its file: its program, glyphs and widths by their letters."""

    program: Program
    glyphs: Mapping[int, int]
    widths: Mapping[int, float]


@cache
def _own(path: Path) -> OwnFace:
    """The face's file, which does not change while the program runs."""
    read = TTFontFile(str(path), validate=0)
    return OwnFace(Program(path.read_bytes()), read.charToGlyph, read.charWidths)
