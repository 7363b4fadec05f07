"""The document's typeface: widths, and a check that every letter can be drawn.

Atkinson Hyperlegible (Braille Institute, SIL Open Font License) is drawn for low vision:
1, l and I, 0 and O differ. The package brings the files, so nothing has to be installed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType

from reportlab.pdfbase.ttfonts import TTFontFile

from typeset.drawing.shapes import Face
from typeset.errors import GlyphError

_FILES = {
    Face.REGULAR: "AtkinsonHyperlegible-Regular.ttf",
    Face.BOLD: "AtkinsonHyperlegible-Bold.ttf",
}
# Characters that take room but need no outline.
_SPACES = {"\u00a0": " "}

# Measures of the family in ems, read from its outlines; the bold differs by a hundredth.
# Height of 'l', 'd' and figures with a little air ('j' and '$' reach 0.75; accents may
# rise into the leading), and depth of 'g' and 'p'.
TEXT_ASCENT_EMS = 0.75
TEXT_DESCENT_EMS = 0.21
FIGURE_HEIGHT_EMS = 0.68
# The middle of '−', '+', '=' and ':': where a fraction's bar belongs.
MATHS_AXIS_EMS = 0.25


@dataclass(frozen=True, slots=True)
class Metrics:
    """A face's measures, in thousandths of the type size."""

    widths: Mapping[int, float]
    ascent: float
    descent: float
    cap_height: float


def font_path(face: Face) -> Path:
    """The file of the face."""
    return Path(str(files("fontpkg_atkinson_hyperlegible") / "files" / _FILES[face]))


@cache
def metrics(face: Face) -> Metrics:
    """The measures of the face, read once."""
    font = TTFontFile(str(font_path(face)))
    widths = MappingProxyType(dict(font.charWidths))
    return Metrics(widths, font.ascent, font.descent, font.capHeight)


def width_pt(text: str, size_pt: float, face: Face = Face.REGULAR) -> float:
    """The width of the text on one line.

    Raises GlyphError for a character that the face does not hold.
    """
    return _width_per_mille(text, face) * size_pt / 1000


def drawable(text: str) -> str:
    """The text as it is drawn: no-break spaces have done their work and become plain ones."""
    for space, drawn in _SPACES.items():
        text = text.replace(space, drawn)
    return text


@lru_cache(maxsize=65536)
def _width_per_mille(text: str, face: Face) -> float:
    widths = metrics(face).widths
    total = 0.0
    for character in text:
        known = widths.get(ord(_SPACES.get(character, character)))
        if known is None:
            raise GlyphError(_missing(character, text, face))
        total += known
    return total


def _missing(character: str, text: str, face: Face) -> str:
    return (
        f"the {face.value} font has no '{character}' (U+{ord(character):04X}), "
        f"needed in '{text}'; write it in another way"
    )
