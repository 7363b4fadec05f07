"""Any TrueType font by its path: read, checked, and refused with the reason.

Only fonts with TrueType outlines (a 'glyf' table) can be embedded here, as subsets.
Tables by the OpenType specification (Microsoft): 'head', 'OS/2', 'loca', 'glyf'.
"""

from __future__ import annotations

import struct
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from types import MappingProxyType

from typeset.errors import GlyphError, LayoutError

# The first four bytes of a file, and what is wrong with it.
_TRUETYPE = (b"\x00\x01\x00\x00", b"true")
_STRANGERS = {
    b"OTTO": "has PostScript (CFF) outlines, which cannot be embedded here",
    b"ttcf": "is a collection of several fonts",
    b"wOFF": "is a web font (WOFF)",
    b"wOF2": "is a web font (WOFF2)",
}
# OS/2 fsType, the lower four bits: 2 forbids embedding, 0 allows it, 4 and 8 allow it too.
_RESTRICTED = 2
# Bit 8 of fsType forbids subsets.
_NO_SUBSETS = 0x100
# What every document of ours may print, whatever its content.
ALWAYS_NEEDED = (
    "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
    " .,;:!?'\"()/%&+=<>£\u00b0\u00b2\u00b3\u00d7\u00f7\u2212\u2013\u2018\u2019\u201c\u201d\u2026"
)


@dataclass(frozen=True, slots=True)
class Measures:
    """Heights in ems: of letters over and under the baseline, of figures, and of the middle of
    the minus sign, where the bar of a fraction belongs."""

    ascent: float
    descent: float
    figure_height: float
    maths_axis: float


@dataclass(frozen=True, slots=True, eq=False)
class FontFile:
    """A font that can be embedded. `widths` are in thousandths of the type size.

    Each file is read once (see `read_font`), so that a font is equal to itself alone: fonts are
    in the keys of all caches of widths, and no hash is faster than that of an object.
    """

    path: Path
    name: str
    widths: Mapping[int, float] = field(repr=False)
    measures: Measures
    cap_height: float = 0.0


def load_font(path: Path) -> FontFile:
    """The font in the file, checked.

    Raises LayoutError where the file is missing, is no TrueType font, or may not be embedded,
    and GlyphError where it lacks characters that every document needs.
    """
    font = read_font(path)
    require(font, ALWAYS_NEEDED)
    return font


@cache
def read_font(path: Path) -> FontFile:
    """The font without a check of its characters. Raises LayoutError."""
    # Here, since what only checks content reads no font.
    from reportlab.pdfbase.ttfonts import TTFError, TTFontFile

    try:
        data = path.read_bytes()
    except OSError as error:
        raise LayoutError(
            f"the font '{path}' cannot be read ({error.strerror or error}); "
            "give the path of a .ttf file"
        ) from error
    _check_kind(path, data)
    try:
        parsed = TTFontFile(str(path), validate=0)
        tables = _Tables(data, parsed.charToGlyph)
    except (TTFError, struct.error, KeyError, IndexError, ValueError) as error:
        raise LayoutError(
            f"the font '{path.name}' cannot be read ({error}); it may be damaged, "
            "so take another copy of it"
        ) from error
    _check_licence(path, tables.embedding)
    widths = MappingProxyType(dict(parsed.charWidths))
    return FontFile(path, path.stem, widths, tables.measures(), parsed.capHeight)


def _check_kind(path: Path, data: bytes) -> None:
    kind = data[:4]
    if kind in _TRUETYPE:
        return
    what = _STRANGERS.get(kind, "is not a TrueType font")
    raise LayoutError(f"the font '{path.name}' {what}; give a .ttf file with TrueType outlines")


def _check_licence(path: Path, embedding: int) -> None:
    if embedding & 0xF == _RESTRICTED or embedding & _NO_SUBSETS:
        raise LayoutError(
            f"the font '{path.name}' says that it may not be embedded (fsType {embedding}); "
            "choose a font whose licence allows it, such as one under the Open Font License"
        )


def missing(font: FontFile, text: Iterable[str]) -> tuple[str, ...]:
    """The characters of the text that the font lacks, each once, in order of first use."""
    return tuple(dict.fromkeys(each for each in text if ord(each) not in font.widths))


def require(font: FontFile, text: Iterable[str]) -> None:
    """Raises GlyphError that lists every character of the text that the font lacks."""
    lost = missing(font, text)
    if lost:
        listed = ", ".join(named(each) for each in lost)
        count = "a character" if len(lost) == 1 else f"{len(lost)} characters"
        raise GlyphError(f"the font '{font.path.name}' lacks {count}: {listed}")


def named(character: str) -> str:
    """ "'→' (U+2192, rightwards arrow)"."""
    name = unicodedata.name(character, "unnamed").lower()
    return f"'{character}' (U+{ord(character):04X}, {name})"


class _Tables:
    """What reportlab does not tell: whether embedding is allowed, and heights of letters."""

    def __init__(self, data: bytes, glyphs: Mapping[int, int]) -> None:
        self.data = data
        self.glyphs = glyphs
        count = struct.unpack(">H", data[4:6])[0]
        self.at = {
            data[row : row + 4].decode("latin-1"): struct.unpack(">I", data[row + 8 : row + 12])[0]
            for row in range(12, 12 + 16 * count, 16)
        }
        self.per_em = self._number(">H", self.at["head"] + 18)
        self.is_long = bool(self._number(">h", self.at["head"] + 50))

    def _number(self, kind: str, at: int) -> int:
        return int(struct.unpack_from(kind, self.data, at)[0])

    @property
    def embedding(self) -> int:
        """The licence bits; 0, which allows all, where the font has no OS/2 table."""
        return self._number(">H", self.at["OS/2"] + 8) if "OS/2" in self.at else 0

    def extent(self, character: str) -> tuple[float, float]:
        """The lowest and highest point of a letter, in ems."""
        glyph = self.glyphs[ord(character)]
        if self.is_long:
            start = self._number(">I", self.at["loca"] + 4 * glyph)
        else:
            start = 2 * self._number(">H", self.at["loca"] + 2 * glyph)
        low, _, high = struct.unpack_from(">hhh", self.data, self.at["glyf"] + start + 4)
        return low / self.per_em, high / self.per_em

    def measures(self) -> Measures:
        """Heights from the outlines themselves; a letter that is missing counts for nothing."""
        tall = [self.extent(each)[1] for each in "bdfhkl()/" if ord(each) in self.glyphs]
        deep = [-self.extent(each)[0] for each in "gjpqy()," if ord(each) in self.glyphs]
        figures = [self.extent(each)[1] for each in "0123456789" if ord(each) in self.glyphs]
        middle = [sum(self.extent(e)) / 2 for e in "\u2212+=" if ord(e) in self.glyphs]
        if not (tall and deep and figures and middle):
            raise ValueError("it has no letters, figures and signs")
        return Measures(max(*tall, *figures), max(deep), max(figures), middle[0])
