"""Sheets that are alike but for the name are proofed once; what is wrong on any one of them is
found all the same, and told in the same words as by the whole proof of every sheet.
"""

from __future__ import annotations

import os
import random
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from functools import cache
from typing import Any
from unittest.mock import patch

import pytest
from pypdf import PdfWriter
from pypdf.generic import (
    ArrayObject,
    DecodedStreamObject,
    DictionaryObject,
    FloatObject,
    NameObject,
    NumberObject,
)

from tests.proofing.faults_of_a_name import FAULTS, a_digit, name_run, on_sheet
from tests.proofing.making_class import CLASS, NAMES, about, composed, made, sheets_of
from tests.proofing.planting import Lines, dictionary, rebuild, redraw, runs_of
from typeset.documents.class_work import PupilsSheet
from typeset.proofing import Finding
from typeset.proofing.alike import KnownSheets
from typeset.proofing.order import Order
from typeset.proofing.page_marks import ReadDocument
from typeset.proofing.proof import proof_pages
from typeset.setting.pdf import write_pdf

FEW = NAMES[:4]
# TYPESET_DEEP=2000 spoils so many pages; 1 stands for the usual long run.
_deep = int(os.environ.get("TYPESET_DEEP") or 0)
_SPOILT = (600 if _deep == 1 else _deep) or 40
_PARTS = 2


@cache
def sheets(odd: bool = True, names: tuple[str, ...] = FEW) -> tuple[PupilsSheet, ...]:
    return sheets_of(names, odd=odd)


@cache
def good(odd: bool = True, names: tuple[str, ...] = FEW) -> bytes:
    """Sheets of one side with a white back, or of two sides."""
    return made(sheets(odd, names))


@contextmanager
def every_sheet_whole() -> Iterator[None]:
    """The proof as strict as can be: no sheet is taken for a known one."""
    with patch.object(KnownSheets, "sides_of", return_value=0):
        yield


@contextmanager
def counted() -> Iterator[list[int]]:
    """How many pages each sheet has that is proofed whole."""
    counts: list[int] = []

    def counting(document: ReadDocument, order: Order) -> list[Finding]:
        counts.append(len(document.pages))
        return proof_pages(document, order)

    with patch("typeset.proofing.named_set.proof_pages", counting):
        yield counts


def told(pdf: bytes, odd: bool = True, names: tuple[str, ...] = FEW) -> list[str]:
    return [str(each) for each in about(pdf, sheets(odd, names))]


def found_by_both(pdf: bytes, odd: bool = True, names: tuple[str, ...] = FEW) -> list[str]:
    """What the proof tells, which is what it tells when every sheet is proofed whole."""
    found = told(pdf, odd, names)
    with every_sheet_whole():
        assert told(pdf, odd, names) == found
    return found


@pytest.mark.parametrize("layout", ["standard", "low-glare", "large-print-18", "large-print-24"])
def test_of_each_kind_only_the_first_sheet_is_proofed_whole(layout: str) -> None:
    own = sheets_of(NAMES, dict.fromkeys(range(1, 13), layout), odd=False)
    with counted() as counts:
        assert about(made(own), own) == []
    assert len(counts) == 1


def test_sheets_of_several_layouts_are_each_known_by_their_own_first() -> None:
    own = sheets_of(CLASS, {3: "large-print-18", 9: "low-glare", 10: "low-glare"})
    with counted() as counts:
        assert about(made(own), own) == []
    assert len(counts) == 3


def test_other_content_is_no_sheet_of_the_kind() -> None:
    """Sheets of another lesson in the same set, though they look the same."""
    own = sheets()
    twin = replace(own[2].lesson, lesson=replace(own[2].lesson.lesson))
    mixed = (*own[:2], replace(own[2], lesson=twin), own[3])
    with counted() as counts:
        assert about(good(), mixed) == []
    assert len(counts) == 2


def test_a_name_that_is_not_letters_alone_is_proofed_whole() -> None:
    names = ("Asha", "Kofi 2", "Leila-Nell B.")
    with counted() as counts:
        assert told(good(True, names), True, names) == []
    assert len(counts) == 2


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.__name__)
def test_a_fault_on_the_third_sheet_is_found(fault: Callable[[Lines, int], None]) -> None:
    found = found_by_both(redraw(good(), on_sheet(3, fault)))
    assert any("page 5" in each for each in found)


def test_names_exchanged_are_found() -> None:
    def plant(pages: list[Lines]) -> None:
        for page, old, new in ((2, "Tomasz", "Kofi"), (6, "Kofi", "Tomasz")):
            at = name_run(pages[page], old)
            pages[page][at] = pages[page][at].replace(f"({old})", f"({new})")

    found = found_by_both(redraw(good(), plant))
    assert any("page 3" in each and "'Kofi' where 'Tomasz'" in each for each in found)
    assert any("page 7" in each and "'Tomasz' where 'Kofi'" in each for each in found)


def test_a_digit_on_the_seventeenth_sheet_is_found() -> None:
    def plant(pages: list[Lines]) -> None:
        a_digit(pages[32], 0)

    (finding,) = told(redraw(good(True, CLASS), plant), True, CLASS)
    assert "page 33" in finding and "question 1 prints '63' where '36'" in finding


def test_the_second_sides_of_two_sheets_exchanged_are_found() -> None:
    """All that they differ by is the name at the foot."""
    pages = list(composed(sheets(False)).pages)
    pages[3], pages[5] = pages[5], pages[3]
    pdf = write_pdf(replace(composed(sheets(False)), pages=tuple(pages)))
    found = found_by_both(pdf, False)
    assert [each.partition(",")[2][:7] for each in found] == [" page 4", " page 6"]


def test_a_second_side_in_place_of_a_first_is_found() -> None:
    pages = list(composed(sheets(False)).pages)
    pages[2] = pages[3]
    assert found_by_both(write_pdf(replace(composed(sheets(False)), pages=tuple(pages))), False)


@pytest.mark.parametrize("text", ["Kofi", "Page 1 of 2", "63"])
def test_more_text_on_a_later_sheet_is_found(text: str) -> None:
    def plant(pages: list[Lines]) -> None:
        run = runs_of(pages[4])[-1]
        pages[4].append(run.line(text=text, y=run.y + 150.0))

    assert any("page 5" in each for each in found_by_both(redraw(good(), plant)))


def fonts_of(page: Any) -> Any:
    """The fonts of the page by name."""
    return page["/Resources"]["/Font"].get_object()


def is_bold(font: Any) -> bool:
    return "Bold" in str(font["/BaseFont"])


def mapped(font: Any, old: bytes, new: bytes) -> DecodedStreamObject:
    """The font's map to text with something in it changed."""
    stream = DecodedStreamObject()
    stream.set_data(font["/ToUnicode"].get_data().replace(old, new))
    return stream


def test_a_font_of_its_own_with_another_map_to_text_is_found() -> None:
    def plant(writer: PdfWriter) -> None:
        fonts = DictionaryObject(fonts_of(writer.pages[4]))
        for name, font in list(fonts.items()):
            copy = DictionaryObject(font.get_object())
            stream = mapped(copy, b"<49> <0049>", b"<49> <0045>")
            copy[NameObject("/ToUnicode")] = writer._add_object(stream)
            fonts[NameObject(name)] = writer._add_object(copy)
        resources: Any = writer.pages[4]["/Resources"]
        own = DictionaryObject(resources.get_object())
        own[NameObject("/Font")] = fonts
        writer.pages[4][NameObject("/Resources")] = own

    assert any("'Emogen'" in each for each in found_by_both(rebuild(good(), plant)))


def test_a_map_to_text_wrong_for_a_letter_of_one_name_alone_is_found() -> None:
    """The font is one for all sheets; only a name has a bold K in it."""

    def plant(writer: PdfWriter) -> None:
        for font in (each.get_object() for each in fonts_of(writer.pages[0]).values()):
            if is_bold(font):
                stream = mapped(font, b"<4B> <004B>", b"<4B> <004C>")
                font[NameObject("/ToUnicode")] = writer._add_object(stream)

    found = found_by_both(rebuild(good(), plant))
    assert any("page 7" in each and "'Lofi' where 'Kofi'" in each for each in found)


def test_a_letter_given_too_great_a_width_is_found() -> None:
    """So that the name of one pupil alone runs into the date line."""

    def plant(writer: PdfWriter) -> None:
        for font in (each.get_object() for each in fonts_of(writer.pages[0]).values()):
            font["/Widths"][ord("K") - int(font["/FirstChar"])] = NumberObject(30000)

    found = found_by_both(rebuild(good(), plant))
    assert any("page 7" in each for each in found)


def note(writer: PdfWriter) -> None:
    text = dictionary(Type="/Annot", Subtype="/Text", Rect=[10, 10, 30, 30], Contents="42")
    writer.pages[4][NameObject("/Annots")] = ArrayObject([writer._add_object(text)])


def turned(writer: PdfWriter) -> None:
    writer.pages[4][NameObject("/Rotate")] = NumberObject(90)


def cropped(writer: PdfWriter) -> None:
    box = ArrayObject(FloatObject(each) for each in (0, 0, 595.2756, 500))
    writer.pages[4][NameObject("/CropBox")] = box


def narrower(writer: PdfWriter) -> None:
    box = ArrayObject(FloatObject(each) for each in (0, 0, 540, 841.8898))
    writer.pages[4][NameObject("/MediaBox")] = box


def in_pieces(writer: PdfWriter) -> None:
    """The drawing in two streams, the second of which adds something."""
    more = DecodedStreamObject()
    more.set_data(b"BT 1 0 0 1 100 100 Tm /F1+0 12 Tf (42) Tj ET")
    page = writer.pages[4]
    streams = [page.raw_get("/Contents"), writer._add_object(more)]
    page[NameObject("/Contents")] = ArrayObject(streams)


@pytest.mark.parametrize("change", [note, turned, cropped, narrower, in_pieces])
def test_a_change_around_the_drawing_of_one_page_is_found(
    change: Callable[[PdfWriter], None],
) -> None:
    assert found_by_both(rebuild(good(), change))


OPERATORS = ["0.5 g", "1 g", "12 TL", "2 w", "[3 3] 0 d", "9 Tc", "80 Tz", "3 Ts", "3 Tr", "q", "Q"]


def spoilt(lines: Lines, rng: random.Random) -> None:
    """One change at random: of a line, of a number, of a letter."""
    at = rng.randrange(len(lines))
    match rng.randrange(8):
        case 0:
            del lines[at]
        case 1:
            lines.insert(rng.randrange(len(lines)), lines[at])
        case 2:
            other = rng.randrange(len(lines))
            lines[at], lines[other] = lines[other], lines[at]
        case 3:
            lines.insert(at, rng.choice(OPERATORS))
        case 4:
            lines[at] = re.sub(r"\d", str(rng.randrange(10)), lines[at], count=1)
        case 5:
            byte = rng.randrange(max(1, len(lines[at])))
            lines[at] = lines[at][:byte] + chr(rng.randrange(33, 127)) + lines[at][byte + 1 :]
        case 6:
            byte = rng.randrange(max(1, len(lines[at])))
            lines[at] = lines[at][:byte] + lines[at][byte + 1 :]
        case _:
            # The line of the name, where a wrong one would pass most easily.
            run = rng.choice(runs_of(lines)[:2])
            letters = rng.choice(("(Asha)", "(Imogen )", "(Im\\157gen)", "(I) Tj (mogen)", "<49>"))
            lines[run.index] = lines[run.index].replace("(Imogen)", letters)


@pytest.mark.parametrize("part", range(_PARTS))
def test_whatever_is_changed_in_the_drawing_of_a_page_is_found_if_the_whole_proof_finds_it(
    part: int,
) -> None:
    """Property: on the second of two sheets, of two sides each. In a long run both tell the
    very same."""
    names = FEW[1:3]
    rng = random.Random(part)
    for _ in range(_SPOILT // _PARTS):

        def plant(pages: list[Lines]) -> None:
            spoilt(pages[rng.choice((2, 2, 3))], rng)

        pdf = redraw(good(False, names), plant)
        if _deep:
            found_by_both(pdf, False, names)
        elif not told(pdf, False, names):
            with every_sheet_whole():
                assert told(pdf, False, names) == []


def test_a_page_tree_that_cannot_be_followed_is_a_finding() -> None:
    def plant(writer: PdfWriter) -> None:
        writer.pages[4][NameObject("/MediaBox")] = NameObject("/Nowhere")

    (finding,) = told(rebuild(good(), plant))
    assert "cannot be read as a PDF" in finding
