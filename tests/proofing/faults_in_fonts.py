"""Faults in the fonts inside a file: not there, not those that were meant, or told wrongly."""

from __future__ import annotations

import random
import re
from typing import Any

from pypdf import PdfWriter
from pypdf.generic import NameObject

from tests.proofing.faults import Theme
from tests.proofing.faults_in_the_file import ANY
from tests.proofing.originals import CARDS, COSTS, GRID, KEY, LARGE, STRIPS, TUESDAY
from tests.proofing.planting import stream_object

FONTS = Theme("Fonts")


def some_font(writer: PdfWriter, rng: random.Random) -> Any:
    """One of the fonts of a page that has any."""
    pages: list[Any] = list(writer.pages)
    fonts = [page["/Resources"]["/Font"] for page in pages if "/Font" in page["/Resources"]]
    return rng.choice([each.get_object() for own in fonts for each in own.values()])


@FONTS.filed(ANY, told="is not in the file")
def a_font_not_embedded(writer: PdfWriter, rng: random.Random) -> None:
    del some_font(writer, rng)["/FontDescriptor"].get_object()["/FontFile2"]


@FONTS.filed(ANY, told="cannot be read back as text")
def a_font_without_its_letters(writer: PdfWriter, rng: random.Random) -> None:
    del some_font(writer, rng)["/ToUnicode"]


@FONTS.filed(ANY, told="is set in the font Helvetica")
def another_font(writer: PdfWriter, rng: random.Random) -> None:
    some_font(writer, rng)[NameObject("/BaseFont")] = NameObject("/Helvetica")


@FONTS.filed((COSTS, CARDS, KEY, STRIPS, TUESDAY, LARGE, GRID))
def a_digit_told_as_another(writer: PdfWriter, rng: random.Random) -> None:
    """The table by which letters are read back lies about a digit that is printed."""
    font = some_font(writer, rng)
    table = font["/ToUnicode"].get_data()
    one, other = rng.sample("0123456789", 2)
    old, new = f"{ord(one):04X}".encode(), f"{ord(other):04X}".encode()
    spoilt = re.sub(rb"<%s>$" % old, b"<%s>" % new, table, flags=re.MULTILINE)
    for swap in "0123456789":
        # Every digit is told as the next but the one that was chosen: some of them are printed.
        if swap != one:
            place = f"<{ord(swap):02X}> <".encode()
            at = spoilt.index(place) + len(place)
            told = f"{ord('0') + (ord(swap) - 47) % 10:04X}".encode()
            spoilt = spoilt[:at] + told + spoilt[at + 4 :]
    font[NameObject("/ToUnicode")] = writer._add_object(stream_object(spoilt))


@FONTS.filed((COSTS, CARDS, KEY, STRIPS, TUESDAY, LARGE, GRID))
def a_letter_told_as_none(writer: PdfWriter, rng: random.Random) -> None:
    """A letter that the table by which letters are read back leaves out."""
    font = some_font(writer, rng)
    table = font["/ToUnicode"].get_data()
    letter = rng.choice("aeot")
    line = f"<{ord(letter):02X}> <{ord(letter):04X}>\n".encode()
    assert line in table
    spoilt = table.replace(line, b"").replace(b"100 beginbfchar", b"99 beginbfchar", 1)
    font[NameObject("/ToUnicode")] = writer._add_object(stream_object(spoilt))


@FONTS.filed(
    (COSTS, CARDS, KEY, STRIPS, TUESDAY, LARGE),
    "overlap",
    "wording",
    "order",
    "margin",
    "number",
    "font",
    "space",
    "answer",
    "figure",
    "structure",
)
def letters_of_other_widths(writer: PdfWriter, rng: random.Random) -> None:
    """Letters follow each other too closely or too far apart."""
    font = some_font(writer, rng)
    share = rng.choice([0.5, 0.6, 1.7])
    widths: Any = font["/Widths"].get_object()
    for index, width in enumerate(list(widths)):
        widths[index] = type(width)(int(float(width) * share))
