"""Kinds thought of after the checks were written, that no check was written for.

What a printer's devil would try: what prints differs from what is read back, or shows otherwise
than it was drawn.
"""

from __future__ import annotations

import random
import re
import struct
from itertools import pairwise
from typing import Any

from pypdf import PdfWriter
from pypdf.generic import NameObject, NumberObject

from tests.proofing.faults import Theme, text_run
from tests.proofing.faults_in_fonts import some_font
from tests.proofing.faults_in_the_file import ANY, draw_too, some_page
from tests.proofing.originals import (
    CARDS,
    COSTS,
    FOLDED,
    GRID,
    KEY,
    LARGE,
    OWN,
    SET,
    STRIPS,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, dictionary, pick, rules_of, runs_of, stream_object

DEVILS = Theme("Thought of afterwards")
TEXT = (COSTS, TUESDAY, WEDNESDAY, LARGE, SUPPORT, KEY, STRIPS, CARDS, OWN, SET, GRID, WEEKLY)
WITH_NUMBERS = tuple(each for each in TEXT if each not in (OWN, CARDS, KEY))
ROOMS = (COSTS, TUESDAY, WEDNESDAY, SUPPORT, LARGE)
_DIGITS = "0123456789"


def tables_of(program: bytes) -> dict[str, tuple[int, int]]:
    """Where the tables of a TrueType program are: by name, offset and length (OpenType 1.9)."""
    (count,) = struct.unpack_from(">H", program, 4)
    found = {}
    for index in range(count):
        name, _sum, offset, length = struct.unpack_from(">4sLLL", program, 12 + 16 * index)
        found[name.decode()] = (offset, length)
    return found


def places_of_outlines(program: bytes) -> list[int]:
    """Where in its table of outlines every glyph begins, and the end of the last."""
    tables = tables_of(program)
    (long,) = struct.unpack_from(">h", program, tables["head"][0] + 50)
    offset, length = tables["loca"]
    if long:
        return list(struct.unpack_from(f">{length // 4}L", program, offset))
    return [2 * each for each in struct.unpack_from(f">{length // 2}H", program, offset)]


def _spoil_program(writer: PdfWriter, font: Any, program: bytes) -> None:
    file = stream_object(program)
    file[NameObject("/Length1")] = NumberObject(len(program))
    descriptor = font["/FontDescriptor"].get_object()
    descriptor[NameObject("/FontFile2")] = writer._add_object(file)


@DEVILS.filed(TEXT)
def another_outline_in_the_font(writer: PdfWriter, rng: random.Random) -> None:
    """One figure prints as another, and is read back as before."""
    font = some_font(writer, rng)
    program = bytearray(font["/FontDescriptor"]["/FontFile2"].get_object().get_data())
    tables, places = tables_of(bytes(program)), places_of_outlines(bytes(program))
    glyphs = {each: _glyph_of(bytes(program), ord(each)) for each in _DIGITS}
    one, other = (glyphs[each] for each in rng.sample(_DIGITS, 2))
    start = tables["glyf"][0]
    first = bytes(program[start + places[one] : start + places[one + 1]])
    second = bytes(program[start + places[other] : start + places[other + 1]])
    # The shorter one fits into the room of the longer.
    short = min(first, second, key=len)
    at = start + (places[one] if short is second else places[other])
    program[at : at + len(short)] = short
    _spoil_program(writer, font, bytes(program))


def _glyph_of(program: bytes, code: int) -> int:
    """The number of a glyph by the table of characters, of the form 4 or 6 or 0."""
    offset, _ = tables_of(program)["cmap"]
    (count,) = struct.unpack_from(">H", program, offset + 2)
    for index in range(count):
        (at,) = struct.unpack_from(">L", program, offset + 4 + 8 * index + 4)
        (form,) = struct.unpack_from(">H", program, offset + at)
        if form == 6:
            first, _entries = struct.unpack_from(">HH", program, offset + at + 6)
            (glyph,) = struct.unpack_from(">H", program, offset + at + 10 + 2 * (code - first))
            return int(glyph)
        if form == 0:
            return int(program[offset + at + 6 + code])
    raise AssertionError("no table of characters that can be read")


@DEVILS.filed(TEXT)
def one_face_in_place_of_the_other(writer: PdfWriter, rng: random.Random) -> None:
    """The program of the bold face under the name of the plain one, or the other way round."""
    fonts: Any = [p["/Resources"]["/Font"] for p in writer.pages if "/Font" in p["/Resources"]]  # type: ignore[index,operator]  # pypdf types no deeper
    one, other = rng.sample([each.get_object() for each in fonts[0].values()], 2)
    descriptor, from_other = one["/FontDescriptor"], other["/FontDescriptor"]
    descriptor[NameObject("/FontFile2")] = from_other.raw_get("/FontFile2")


@DEVILS.filed(TEXT)
def other_glyphs_by_an_encoding(writer: PdfWriter, rng: random.Random) -> None:
    """Codes that print other glyphs, by a table of differences."""
    first, name = rng.choice([(48, "/three"), (51, "/eight"), (97, "/o"), (101, "/a")])
    differences = dictionary(Type="/Encoding", Differences=[first, name])
    some_font(writer, rng)[NameObject("/Encoding")] = differences


@DEVILS.filed(ANY)
def a_remark_in_the_drawing(writer: PdfWriter, rng: random.Random) -> None:
    draw_too(writer, some_page(writer, rng), after=b"% the answer to question 4 is 75")


@DEVILS.raw(ANY)
def a_remark_between_objects(pdf: bytes, rng: random.Random) -> bytes:
    """The table of objects is moved on, and what it says stays true."""
    remark = b"% the answer to question 4 is 75\n"
    at = pdf.rindex(b"xref\n", 0, pdf.rindex(b"startxref"))
    moved = pdf[:at] + remark + pdf[at:]
    last = int(pdf.rpartition(b"startxref")[2].split()[0])
    head, _, tail = moved.rpartition(b"startxref")
    return head + b"startxref" + tail.replace(str(last).encode(), str(at + len(remark)).encode(), 1)


@DEVILS.filed(ANY)
def only_some_pages_are_printed(writer: PdfWriter, rng: random.Random) -> None:
    """The wishes for the printer leave pages out, or ask for many copies."""
    wishes = writer._root_object.setdefault(NameObject("/ViewerPreferences"), dictionary())
    wish = rng.choice([dictionary(PrintPageRange=[0, 0]), dictionary(NumCopies=99)])
    wishes.get_object().update(wish)


@DEVILS.filed(ANY)
def fitted_to_the_paper(writer: PdfWriter, rng: random.Random) -> None:
    """Printed smaller than it is, so that cards and their backs would not register."""
    wishes: Any = writer._root_object.setdefault(NameObject("/ViewerPreferences"), dictionary())
    wishes.get_object()[NameObject("/PrintScaling")] = NameObject("/AppDefault")
    wishes.get_object()[NameObject("/Duplex")] = NameObject("/Simplex")


@DEVILS.drawn(TEXT)
def letters_narrowed_by_their_matrix(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w")
    share = rng.choice([0.6, 0.8, 1.3])
    page[run.index] = run.line().replace("BT 1 0 0 1", f"BT {share} 0 0 1")


@DEVILS.drawn(TEXT)
def letters_slanted_by_their_matrix(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w")
    page[run.index] = run.line().replace("BT 1 0 0 1", f"BT 1 0 {rng.uniform(0.2, 0.5):.2f} 1")


@DEVILS.drawn(TEXT)
def letters_mirrored(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w\w")
    page[run.index] = run.line(x=run.x + 60).replace("BT 1 0 0 1", "BT -1 0 0 1")


@DEVILS.drawn(TEXT)
def a_figure_raised(pages: list[Lines], rng: random.Random) -> None:
    """By the rise of text: 23 becomes 2 to the power of 3."""
    page, run = text_run(pages, rng, r"\w\d\d|\d\w\w|\w\w\w")
    first, rest = run.text[:1], run.text[1:]
    width = run.line(text=first)
    page[run.index] = width.replace(") Tj T* ET", f") Tj 5 Ts ({rest}) Tj 0 Ts T* ET")


@DEVILS.drawn(WITH_NUMBERS)
def a_figure_made_into_another_by_a_stroke(pages: list[Lines], rng: random.Random) -> None:
    """Short strokes over a figure: 3 becomes 8, 1 becomes 7."""
    page, run = text_run(pages, rng, r"^\d")
    x, y = run.x + 0.08 * run.size, run.y
    high = 0.6 * run.size
    page[run.index] += f"\nn {x} {y + 0.1 * high} m {x} {y + 0.9 * high} l S"


@DEVILS.drawn(WITH_NUMBERS)
def a_minus_drawn_as_a_stroke(pages: list[Lines], rng: random.Random) -> None:
    """A number becomes negative by a line before it, which is no letter."""
    page, run = text_run(pages, rng, r"^\d")
    y, wide = run.y + 0.3 * run.size, 0.5 * run.size
    page[run.index] += f"\nn {run.x - wide - 1} {y} m {run.x - 1} {y} l S"


@DEVILS.drawn(WITH_NUMBERS)
def a_decimal_point_drawn_as_a_spot(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"^\d")
    x, size = run.x + 0.56 * run.size, 0.1 * run.size
    page[run.index] += f"\nn {x:.2f} {run.y} {size:.2f} {size:.2f} re f"


@DEVILS.drawn(WITH_NUMBERS)
def half_a_letter_painted_over(pages: list[Lines], rng: random.Random) -> None:
    """White over the left edge of a figure, beside its middle: 8 becomes 3."""
    page, run = text_run(pages, rng, r"^\d")
    wide, high = 0.25 * run.size, 0.8 * run.size
    page[run.index] += f"\nq\n1 g\nn {run.x - 0.5} {run.y - 1} {wide} {high} re f\nQ"


def writing_rules(pages: list[Lines]) -> list[tuple[Lines, int, tuple[float, ...]]]:
    return [
        (page, index, ends)
        for page in pages
        for index, ends in rules_of(page)
        if ends[1] == ends[3] and ends[0] > 160 and ends[2] - ends[0] > 60 and ends[1] < 700
    ]


@DEVILS.drawn(ROOMS)
def a_writing_rule_in_white(pages: list[Lines], rng: random.Random) -> None:
    page, index, _ = pick(rng, writing_rules(pages))
    page[index] = f"q\n{rng.uniform(0.93, 1):.3f} G\n{page[index]}\nQ"


@DEVILS.drawn(ROOMS)
def a_writing_rule_of_long_dashes(pages: list[Lines], rng: random.Random) -> None:
    """Hardly anything of it is drawn."""
    page, index, _ = pick(rng, writing_rules(pages))
    page[index] = f"q\n[1 {rng.randrange(60, 200)}] 0 d\n{page[index]}\nQ"


@DEVILS.drawn(ROOMS)
def a_writing_rule_too_thin_to_print(pages: list[Lines], rng: random.Random) -> None:
    page, index, _ = pick(rng, writing_rules(pages))
    page[index] = f"q\n{rng.choice([0, 0.01, 0.05])} w\n{page[index]}\nQ"


@DEVILS.drawn(ROOMS)
def a_writing_rule_as_thick_as_a_bar(pages: list[Lines], rng: random.Random) -> None:
    page, index, _ = pick(rng, writing_rules(pages))
    page[index] = f"q\n{rng.randrange(8, 20)} w\n{page[index]}\nQ"


@DEVILS.drawn((TUESDAY, WEEKLY))
def the_outline_of_a_part_in_white(pages: list[Lines], rng: random.Random) -> None:
    """Two parts of a bar look like one."""
    parts = [(p, i) for p in pages for i, line in enumerate(p) if re.search(r" re B\*?$", line)]
    page, index = pick(rng, parts)
    page[index] = f"q\n1 G\n{page[index]}\nQ"


@DEVILS.filed(ANY)
def a_group_that_blends(writer: PdfWriter, rng: random.Random) -> None:
    group = dictionary(S="/Transparency", CS="/DeviceCMYK")
    some_page(writer, rng)[NameObject("/Group")] = group


@DEVILS.filed(ANY)
def a_soft_mask(writer: PdfWriter, rng: random.Random) -> None:
    page = some_page(writer, rng)
    mask = dictionary(Type="/ExtGState", SMask=dictionary(S="/Alpha"))
    page["/Resources"][NameObject("/ExtGState")] = dictionary(Quay=mask)
    draw_too(writer, page, before=b"/Quay gs")


@DEVILS.drawn(TEXT)
def letters_drawn_as_outlines(pages: list[Lines], rng: random.Random) -> None:
    page, run = text_run(pages, rng, r"\w\w")
    page[run.index] = f"{rng.choice([1, 2])} Tr\n{run.line()}\n0 Tr"


@DEVILS.drawn((COSTS, TUESDAY, WEDNESDAY, WEEKLY, SET, KEY))
def two_lines_of_a_text_in_each_others_place(pages: list[Lines], rng: random.Random) -> None:
    """Two whole lines of a text stand in each other's place, and every word is still there."""
    pairs = [
        (page, above, below)
        for page in pages
        for above, below in pairwise(runs_of(page))
        if above.x == below.x and above.font == below.font and 8 < above.y - below.y < 30
        if len(above.text) > 8 and len(below.text) > 3 and above.text != below.text
    ]
    page, above, below = pick(rng, pairs)
    page[above.index], page[below.index] = below.line(y=above.y), above.line(y=below.y)


@DEVILS.filed((COSTS, FOLDED, GRID, STRIPS))
def a_pattern_in_place_of_ink(writer: PdfWriter, rng: random.Random) -> None:
    """Letters are filled with a pattern that paints nothing."""
    page = some_page(writer, rng)
    page["/Resources"][NameObject("/Pattern")] = dictionary(Quay=dictionary(PatternType=2))
    draw_too(writer, page, before=b"/Pattern cs /Quay scn")
