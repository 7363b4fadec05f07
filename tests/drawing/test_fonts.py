"""The face's measures against its own outlines, read by the OpenType specification."""

from __future__ import annotations

import struct
from dataclasses import dataclass

import pytest
from reportlab.pdfbase.ttfonts import TTFontFile

from typeset.drawing.fonts import (
    FIGURE_HEIGHT_EMS,
    MATHS_AXIS_EMS,
    TEXT_ASCENT_EMS,
    TEXT_DESCENT_EMS,
    drawable,
    font_path,
    width_pt,
)
from typeset.drawing.shapes import Face
from typeset.errors import GlyphError


@dataclass(frozen=True)
class Outline:
    """The vertical extent of a letter, in ems."""

    low: float
    high: float


def outline(character: str, face: Face) -> Outline:
    """From the tables 'head', 'loca' and 'glyf' (OpenType specification, Microsoft)."""
    data = font_path(face).read_bytes()
    tables = {
        data[at : at + 4].decode(): struct.unpack(">I", data[at + 8 : at + 12])[0]
        for at in range(12, 12 + 16 * struct.unpack(">H", data[4:6])[0], 16)
    }
    head, loca, glyf = (tables[name] for name in ("head", "loca", "glyf"))
    per_em = struct.unpack(">H", data[head + 18 : head + 20])[0]
    long_offsets = struct.unpack(">h", data[head + 50 : head + 52])[0]
    glyph = TTFontFile(str(font_path(face))).charToGlyph[ord(character)]
    if long_offsets:
        start = struct.unpack(">I", data[loca + 4 * glyph : loca + 4 * glyph + 4])[0]
    else:
        start = 2 * struct.unpack(">H", data[loca + 2 * glyph : loca + 2 * glyph + 2])[0]
    _, low, _, high = struct.unpack(">hhhh", data[glyf + start + 2 : glyf + start + 10])
    return Outline(low / per_em, high / per_em)


@pytest.mark.parametrize("face", Face)
def test_the_maths_axis_is_the_middle_of_the_minus_sign(face: Face) -> None:
    minus = outline("−", face)
    assert (minus.low + minus.high) / 2 == pytest.approx(MATHS_AXIS_EMS, abs=0.01)


@pytest.mark.parametrize("face", Face)
@pytest.mark.parametrize("sign", "+=×÷:")
def test_all_signs_stand_on_the_axis(face: Face, sign: str) -> None:
    mark = outline(sign, face)
    assert (mark.low + mark.high) / 2 == pytest.approx(MATHS_AXIS_EMS, abs=0.015)


@pytest.mark.parametrize("face", Face)
def test_no_figure_is_higher_than_the_height_of_figures(face: Face) -> None:
    heights = [outline(figure, face).high for figure in "0123456789"]
    assert max(heights) == pytest.approx(FIGURE_HEIGHT_EMS, abs=0.001)


@pytest.mark.parametrize("face", Face)
@pytest.mark.parametrize("letter", "bdfhklAZgpqy,()[]£%?0")
def test_letters_stay_within_ascent_and_descent(face: Face, letter: str) -> None:
    extent = outline(letter, face)
    assert extent.low >= -TEXT_DESCENT_EMS and extent.high <= TEXT_ASCENT_EMS


def test_width_is_the_sum_of_advances_and_grows_with_the_size() -> None:
    # Advances of the 'hmtx' table: 4 is 614 and 2 is 549 thousandths of an em.
    assert width_pt("42", 10) == pytest.approx(11.63)
    assert width_pt("42", 20) == pytest.approx(23.26)


def test_a_no_break_space_is_drawn_as_a_space() -> None:
    assert width_pt("6\u00a0kg", 12) == width_pt("6 kg", 12)
    assert drawable("6\u00a0kg") == "6 kg"


@pytest.mark.parametrize("character", ["→", "✓", "⅓", "漢", "\u200b", "\t", "😀"])
def test_a_character_that_the_font_lacks_is_named(character: str) -> None:
    with pytest.raises(GlyphError, match=f"U\\+{ord(character):04X}"):
        width_pt(f"gulls {character}", 12)
