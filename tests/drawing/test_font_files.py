"""Any TrueType font by path: measured by its own outlines, refused with the reason.

Bitstream Vera, which reportlab brings, is the outside font here.
"""

from __future__ import annotations

import struct
from io import BytesIO
from pathlib import Path

import pdfplumber
import pytest
import reportlab

from typeset.drawing.font_files import ALWAYS_NEEDED, load_font, missing, require
from typeset.drawing.fonts import font_path, in_family, load_family, measures, own_family, width_pt
from typeset.drawing.inline_maths import lay_out_rich_line
from typeset.drawing.shapes import Face, moved
from typeset.errors import GlyphError, LayoutError
from typeset.quantities.inline import words
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.pdf import write_pdf

VERA = Path(reportlab.__file__).parent / "fonts"
REGULAR, BOLD = VERA / "Vera.ttf", VERA / "VeraBd.ttf"


def altered(folder: Path, name: str, data: bytes) -> Path:
    path = folder / name
    path.write_bytes(data)
    return path


def with_licence(data: bytes, bits: int) -> bytes:
    """fsType is the fifth number of the table 'OS/2' (OpenType specification)."""
    count = struct.unpack(">H", data[4:6])[0]
    rows = {data[at : at + 4]: at for at in range(12, 12 + 16 * count, 16)}
    at = struct.unpack(">I", data[rows[b"OS/2"] + 8 : rows[b"OS/2"] + 12])[0] + 8
    return data[:at] + struct.pack(">H", bits) + data[at + 2 :]


def test_a_font_by_path_is_measured_by_itself() -> None:
    font = load_font(REGULAR)
    assert font.name == "Vera"
    # Advances of 'zero' and 'one' in Vera's own 'hmtx' table: 1303 of 2048 units.
    assert font.widths[ord("0")] == pytest.approx(1303 / 2048 * 1000, abs=0.5)
    assert 0.7 < font.measures.figure_height <= font.measures.ascent < 0.8
    assert 0.2 < font.measures.descent < 0.25


def test_our_own_font_holds_what_is_always_needed() -> None:
    for font in (own_family().regular, own_family().bold):
        assert missing(font, ALWAYS_NEEDED) == ()


def test_a_family_holds_within_its_block_only() -> None:
    ours = width_pt("gulls", 12.0)
    with in_family(load_family(REGULAR, BOLD)):
        assert width_pt("gulls", 12.0) != ours
        assert font_path(Face.BOLD) == BOLD
        assert measures().figure_height > 0.7
    assert width_pt("gulls", 12.0) == ours
    assert font_path(Face.BOLD) != BOLD


def pdf_fonts() -> set[str]:
    line = lay_out_rich_line(words("12 gulls → ") + words("60 terns", bold=True), 12.0)
    shapes = tuple(moved(shape, 50.0, 60.0) for shape in line.shapes)
    item = Placed(Role.TEXT, 50, 60, line.width_pt, line.height_pt, shapes)
    pdf = write_pdf(Document("Quay", "", (Page(400.0, 300.0, (item,)),), 12))
    with pdfplumber.open(BytesIO(pdf)) as read:
        return {char["fontname"].split("+")[-1] for char in read.pages[0].chars}


def test_a_document_is_set_in_the_family_in_use() -> None:
    own = {font_path(face).stem for face in Face}
    assert pdf_fonts() == own
    with in_family(load_family(REGULAR, BOLD)):
        assert not pdf_fonts() & own
        assert len(pdf_fonts()) == 2
    assert pdf_fonts() == own


@pytest.mark.parametrize(
    ("start", "told"),
    [
        (b"OTTO", "CFF"),
        (b"ttcf", "a collection of several fonts"),
        (b"wOF2", "a web font"),
        (b"%PDF", "not a TrueType font"),
    ],
)
def test_a_file_of_another_kind_is_told(tmp_path: Path, start: bytes, told: str) -> None:
    path = altered(tmp_path, "quay.otf", start + REGULAR.read_bytes()[4:])
    with pytest.raises(LayoutError, match=rf"'quay.otf'.*{told}.*give a .ttf file"):
        load_font(path)


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(LayoutError, match=r"nowhere.ttf' cannot be read .*give the path"):
        load_font(tmp_path / "nowhere.ttf")


@pytest.mark.parametrize("length", [5, 40, 300, 5000])
def test_a_damaged_file_is_told(tmp_path: Path, length: int) -> None:
    path = altered(tmp_path, "torn.ttf", REGULAR.read_bytes()[:length])
    with pytest.raises(LayoutError, match=r"'torn\.ttf'"):
        load_font(path)


@pytest.mark.parametrize(("bits", "allowed"), [(0, True), (2, False), (4, True), (0x104, False)])
def test_a_font_that_may_not_be_embedded_is_refused(
    tmp_path: Path, bits: int, allowed: bool
) -> None:
    path = altered(tmp_path, f"licence-{bits}.ttf", with_licence(REGULAR.read_bytes(), bits))
    if allowed:
        load_font(path)
    else:
        with pytest.raises(LayoutError, match="may not be embedded"):
            load_font(path)


def test_missing_characters_are_listed_by_sign_and_name() -> None:
    font = load_font(REGULAR)
    assert missing(font, "漢 gulls 漢 →") == ("漢", "→")
    with pytest.raises(GlyphError, match=r"lacks 2 characters: .*'→' \(U\+2192, rightwards arrow"):
        require(font, "漢→")
    require(font, "12 gulls")


def test_two_files_of_one_name_are_refused(tmp_path: Path) -> None:
    same = altered(tmp_path, "Vera.ttf", BOLD.read_bytes())
    with pytest.raises(LayoutError, match=r"both called 'Vera\.ttf'"):
        load_family(REGULAR, same)
