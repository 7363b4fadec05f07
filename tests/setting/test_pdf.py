"""The written file, read back by two programs that did not write it (pdfplumber, pypdf)."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path as FilePath

import pdfplumber
import pytest
from hypothesis import assume, given, settings
from pypdf import PdfReader

from tests.drawing.random_texts import rich_texts
from typeset.drawing.shapes import Face, Path, Rect, Rule, Shape, TextRun, grey
from typeset.errors import FitError, GlyphError
from typeset.quantities.inline import Rich, Solid, Stacked, Words, plain, words
from typeset.setting.frames import Document, Page, Placed, Role
from typeset.setting.paragraphs import TextStyle, set_paragraph
from typeset.setting.pdf import write_pdf
from typeset.setting.pdf_fonts import without_unused_codes
from typeset.setting.pieces import text

MM = 72 / 25.4
A4_PT = (210 * MM, 297 * MM)
STORY: Rich = (
    Words("Imogen cuts "),
    Solid(("12", Stacked("3", "4"), "\u00a0m")),
    Words(" of ‘best’ rope for £1.20 – "),
    Words("each", bold=True),
    Words(" piece 6 × 12 ÷ 3 − 1 = 23 cm², at 45° or 50 %. Is she right?"),
)


def document(*shapes: Shape, title: str = "Terns") -> Document:
    item = Placed(Role.TEXT, 0, 0, *A4_PT, shapes)
    return Document(title, "Task sheet", (Page(*A4_PT, (item,)),), 12, "abc123")


def story_document(rich: Rich = STORY, measure: float = 400) -> Document:
    piece = text(rich, TextStyle(12), measure)
    placed = piece.place(50, 60, piece.height.natural_pt)
    return Document("Terns", "Task sheet", (Page(*A4_PT, placed),), 12, "abc123")


def letters(data: bytes) -> str:
    """All characters in the order of the file."""
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        return "".join(char["text"] for page in pdf.pages for char in page.chars)


def levels(colour: float | tuple[float, ...]) -> tuple[float, ...]:
    """pdfplumber gives a grey as a number or as a tuple of one."""
    return colour if isinstance(colour, tuple) else (colour,)


def test_words_come_back_as_they_were_set() -> None:
    with pdfplumber.open(io.BytesIO(write_pdf(story_document()))) as pdf:
        found = [word["text"] for word in pdf.pages[0].extract_words()]
    for word in ("Imogen", "cuts", "‘best’", "£1.20", "–", "each", "×", "÷", "−", "cm²,", "45°"):
        assert word in found


@settings(max_examples=25, deadline=None)
@given(rich_texts)
def test_every_character_comes_back_in_order(rich: Rich) -> None:
    try:
        set_paragraph(rich, TextStyle(12), 400)
    except FitError:
        assume(False)
    expected = "".join(plain(rich).split()).translate(str.maketrans("", "", "/_[]"))
    assert letters(write_pdf(story_document(rich))).replace(" ", "") == expected


def test_shapes_are_where_they_were_placed() -> None:
    shapes = (
        Rule(20, 30, 120, 30, 1.5),
        Rect(40, 50, 60, 70, 0.75, fill=grey(0.9)),
        TextRun(100, 200, "gulls", 14),
        Path((("M", 10.0, 300.0), ("C", 20.0, 310.0, 30.0, 310.0, 40.0, 300.0)), 1.0),
    )
    with pdfplumber.open(io.BytesIO(write_pdf(document(*shapes)))) as pdf:
        page = pdf.pages[0]
        (line,), (rect,), (curve,) = page.lines, page.rects, page.curves
        first = page.chars[0]
    assert (line["x0"], line["x1"], line["top"]) == pytest.approx((20, 120, 30))
    assert line["linewidth"] == 1.5
    assert (rect["x0"], rect["top"], rect["width"], rect["height"]) == pytest.approx(
        (40, 50, 60, 70)
    )
    assert levels(rect["non_stroking_color"]) == pytest.approx((0.9,))
    assert curve["x0"] == pytest.approx(10)
    assert (first["x0"], first["size"]) == pytest.approx((100, 14))
    # pdfplumber's matrix holds the baseline, from the foot of the page.
    assert A4_PT[1] - first["matrix"][5] == pytest.approx(200, abs=0.001)


def test_state_is_set_anew_where_it_changes() -> None:
    shapes = (
        Rule(0, 10, 50, 10, 2.0, grey(0.5), dash_pt=(3, 2)),
        Rule(0, 20, 50, 20, 1.0),
        TextRun(0, 40, "a", 12, colour=(1.0, 0.0, 0.0)),
        TextRun(0, 60, "b", 10, Face.BOLD),
    )
    with pdfplumber.open(io.BytesIO(write_pdf(document(*shapes)))) as pdf:
        first, second = pdf.pages[0].lines
        one, two = pdf.pages[0].chars
    assert (first["linewidth"], second["linewidth"]) == (2.0, 1.0)
    assert [levels(line["stroking_color"]) for line in (first, second)] == [(0.5,), (0,)]
    assert [first["dash"][0], second["dash"][0]] == [[3, 2], []]
    # Greys are one level, so that a printer uses its black alone.
    assert [levels(char["non_stroking_color"]) for char in (one, two)] == [(1, 0, 0), (0,)]
    assert "Regular" in one["fontname"] and "Bold" in two["fontname"]


def test_a4_is_210_by_297_millimetres() -> None:
    # ISO 216 (sources.md section 4).
    box = PdfReader(io.BytesIO(write_pdf(document()))).pages[0].mediabox
    size = (float(box.width) / MM, float(box.height) / MM)
    assert size == pytest.approx((210, 297), abs=0.01)


def test_a_tint_is_under_everything_and_covers_the_page() -> None:
    made = document(TextRun(50, 50, "gulls", 12))
    tinted = replace(made, pages=(replace(made.pages[0], tint=(1.0, 0.98, 0.9)),))
    content = PdfReader(io.BytesIO(write_pdf(tinted))).pages[0].get_contents()
    assert content is not None
    stream = content.get_data()
    assert stream.index(b" re ") < stream.index(b" Tj")
    with pdfplumber.open(io.BytesIO(write_pdf(tinted))) as pdf:
        (rect,) = pdf.pages[0].rects
    assert (rect["width"], rect["height"]) == pytest.approx(A4_PT)


def test_every_font_is_embedded_as_a_subset_and_no_other_is_named() -> None:
    reader = PdfReader(io.BytesIO(write_pdf(story_document())))
    fonts = reader.pages[0]["/Resources"]["/Font"]  # type: ignore[index]
    names = []
    for font in fonts.values():
        described = font.get_object()
        names.append(described["/BaseFont"].split("+")[1])
        assert "/FontFile2" in described["/FontDescriptor"].get_object()
    assert sorted(names) == ["AtkinsonHyperlegible-Bold", "AtkinsonHyperlegible-Regular"]


def test_no_code_means_nothing() -> None:
    reader = PdfReader(io.BytesIO(write_pdf(story_document())))
    for font in reader.pages[0]["/Resources"]["/Font"].values():  # type: ignore[index]
        cmap = font.get_object()["/ToUnicode"].get_object().get_data().decode()
        assert "<0000>" not in cmap
        rows = len(re.findall(r"^<[0-9A-F]{2}> <[0-9A-F]{4}>$", cmap, re.MULTILINE))
        blocks = [int(line.split()[0]) for line in cmap.splitlines() if "beginbfchar" in line]
        assert sum(blocks) == rows and max(blocks) <= 100


def test_a_map_is_cut_into_blocks_of_a_hundred() -> None:
    rows = "\n".join(f"<{n:02X}> <{n if n > 4 else 0:04X}>" for n in range(205))
    mended = without_unused_codes(f"begincmap\n205 beginbfchar\n{rows}\nendbfchar\nendcmap")
    assert mended.splitlines()[1] == "100 beginbfchar"
    assert mended.count("beginbfchar") == 2 and mended.count(" <0000>") == 0
    assert mended.splitlines()[-1] == "endcmap"


def test_the_file_says_what_it_is() -> None:
    data = write_pdf(story_document())
    reader = PdfReader(io.BytesIO(data))
    info = reader.metadata
    assert info is not None
    assert (info.title, info.subject, info.author) == ("Terns", "Task sheet", "")
    assert str(info["/Keywords"]) == "content:abc123"
    root = reader.trailer["/Root"]
    assert root["/Lang"] == "en-GB"  # type: ignore[index]
    wanted = root["/ViewerPreferences"]  # type: ignore[index]
    assert (wanted["/DisplayDocTitle"], wanted["/PrintScaling"]) == (True, "/None")
    assert data.startswith(b"%PDF-1.7")
    assert b"ASCII85" not in data and b"FlateDecode" in data


def test_the_same_document_is_the_same_bytes_whatever_the_clock(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    first = write_pdf(story_document())
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1234567890")
    assert write_pdf(story_document()) == first
    assert b"D:20000101000000" in first


def test_another_document_of_one_title_has_another_identifier() -> None:
    one, two = (
        PdfReader(io.BytesIO(write_pdf(document(TextRun(50, 50, word, 12))))).trailer["/ID"]
        for word in ("gulls", "terns")
    )
    assert one != two


def test_writing_one_file_leaves_no_trace_in_the_next() -> None:
    alone = write_pdf(document(TextRun(50, 50, "gulls", 12)))
    write_pdf(story_document())
    assert write_pdf(document(TextRun(50, 50, "gulls", 12))) == alone


def test_a_missing_character_is_never_drawn() -> None:
    with pytest.raises(GlyphError, match=r"U\+2192"):
        write_pdf(document(TextRun(50, 50, "gulls → terns", 12)))


def test_reportlab_settings_are_put_back_even_after_an_error() -> None:
    from reportlab import rl_config

    before = rl_config.useA85
    with pytest.raises(GlyphError):
        write_pdf(document(TextRun(50, 50, "→", 12)))
    assert rl_config.useA85 == before


def test_the_setting_step_does_not_know_lessons() -> None:
    """A later step may import an earlier one, never the reverse (design.md)."""
    folder = FilePath(write_pdf.__code__.co_filename).parent
    allowed = ("errors", "quantities", "drawing", "setting")
    for module in folder.glob("*.py"):
        for line in module.read_text().splitlines():
            if line.startswith("from typeset."):
                assert line.split(".")[1].split(" ")[0] in allowed, (module.name, line)


def test_words_of_several_pages_stay_in_order() -> None:
    pages = story_document(words("one two")).pages + story_document(words("three")).pages
    made = Document("Terns", "", pages, 12)
    assert letters(write_pdf(made)) == "one twothree"
