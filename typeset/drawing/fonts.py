"""The document's typeface: widths, and a check that every letter can be drawn.

Atkinson Hyperlegible (Braille Institute, SIL Open Font License) is drawn for low vision:
1, l and I, 0 and O differ. The package brings the files, so nothing has to be installed.
A layout may choose another family, which then holds for all that is drawn `in_family`.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

from typeset.drawing.font_files import FontFile, Measures, load_font, named, read_font
from typeset.drawing.shapes import Face
from typeset.errors import GlyphError, LayoutError

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
_OWN = Measures(TEXT_ASCENT_EMS, TEXT_DESCENT_EMS, FIGURE_HEIGHT_EMS, MATHS_AXIS_EMS)


@dataclass(frozen=True, slots=True)
class TypeFamily:
    """The two files that a document is set in, and the heights that hold for both."""

    regular: FontFile
    bold: FontFile
    measures: Measures

    def __hash__(self) -> int:
        # Equal families have equal fonts; the measures follow from these, and are slow to hash.
        return hash((self.regular, self.bold))

    def file(self, face: Face) -> FontFile:
        """The file of the face."""
        return self.regular if face is Face.REGULAR else self.bold


_CHOSEN: ContextVar[TypeFamily | None] = ContextVar("_CHOSEN", default=None)


def load_family(regular: Path, bold: Path) -> TypeFamily:
    """A family from its two files.

    Raises LayoutError for a file that is missing, is no TrueType font or may not be embedded,
    and for two files of one name; GlyphError where characters that are always needed lack.
    """
    fonts = load_font(regular), load_font(bold)
    if regular != bold and fonts[0].name == fonts[1].name:
        raise LayoutError(
            f"the regular and the bold font are both called '{regular.name}'; rename one of them"
        )
    one, other = fonts[0].measures, fonts[1].measures
    measures = Measures(
        max(one.ascent, other.ascent),
        max(one.descent, other.descent),
        max(one.figure_height, other.figure_height),
        one.maths_axis,
    )
    return TypeFamily(*fonts, measures)


@cache
def own_family() -> TypeFamily:
    """The family that comes with the package."""
    return TypeFamily(read_font(own_path(Face.REGULAR)), read_font(own_path(Face.BOLD)), _OWN)


def own_path(face: Face) -> Path:
    """Where its file is; the font itself is not read."""
    # Here, since what only checks content looks for no font.
    from importlib.resources import files

    return Path(str(files("fontpkg_atkinson_hyperlegible") / "files" / _FILES[face]))


@contextmanager
def in_family(family: TypeFamily | None) -> Iterator[None]:
    """All that is measured and drawn within is in this family; in our own one for None."""
    token = _CHOSEN.set(family)
    try:
        yield
    finally:
        _CHOSEN.reset(token)


def family() -> TypeFamily:
    """The family in use."""
    return _CHOSEN.get() or own_family()


def measures() -> Measures:
    """The heights of the family in use."""
    return family().measures


def font_path(face: Face) -> Path:
    """The file of the face."""
    return family().file(face).path


def has_glyph(character: str, face: Face) -> bool:
    """True for a character that the face can draw."""
    return ord(character) in family().file(face).widths


def width_pt(text: str, size_pt: float, face: Face = Face.REGULAR) -> float:
    """The width of the text on one line.

    Raises GlyphError for a character that the face does not hold.
    """
    known = _width_per_mille(text, family().file(face))
    if known is None:
        raise _glyph_error(text, face)
    return known * size_pt / 1000


def known_width_pt(text: str, size_pt: float, face: Face) -> float | None:
    """The same; None where the face does not hold all characters."""
    known = _width_per_mille(text, family().file(face))
    return None if known is None else known * size_pt / 1000


def drawable(text: str) -> str:
    """The text as it is drawn: no-break spaces have done their work and become plain ones."""
    for space, drawn in _SPACES.items():
        text = text.replace(space, drawn)
    return text


@lru_cache(maxsize=65536)
def _width_per_mille(text: str, font: FontFile) -> float | None:
    total = 0.0
    for character in drawable(text):
        known = font.widths.get(ord(character))
        if known is None:
            return None
        total += known
    return total


def _glyph_error(text: str, face: Face) -> GlyphError:
    """What to say of the first character that the face lacks."""
    lost = next(each for each in text if not has_glyph(drawable(each), face))
    return GlyphError(
        f"the {face.value} font has no {named(lost)}, needed in '{text}'; write it in another way"
    )
