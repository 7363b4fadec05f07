"""Faults in the file around the pages: hidden answers, things that run, paper, pages, versions."""

from __future__ import annotations

import random
import re
from io import BytesIO
from typing import Any

from pypdf import PdfReader, PdfWriter
from pypdf.annotations import FreeText, Link, Text
from pypdf.generic import (
    ArrayObject,
    DictionaryObject,
    NameObject,
    NumberObject,
    RectangleObject,
    StreamObject,
)

from tests.proofing.faults import Theme
from tests.proofing.originals import (
    CARDS,
    COSTS,
    FOLDED,
    GRID,
    KEY,
    LARGE,
    LESSONS,
    OWN,
    PACK_NONE,
    PRINTING,
    SAVING,
    SET,
    STRIPS,
    TUESDAY,
    WEDNESDAY,
)
from tests.proofing.planting import dictionary, stream_object, written

HIDDEN, RUNS, PAGES = Theme("Hidden in the file"), Theme("What runs"), Theme("Pages and paper")
ANY = (COSTS, CARDS, KEY, STRIPS, OWN, SET, GRID, PRINTING, TUESDAY, LARGE, SAVING, FOLDED)
_RECT = (100, 100, 200, 130)


def some_page(writer: PdfWriter, rng: random.Random) -> Any:
    """A page. pypdf's types say little of what it may hold."""
    return rng.choice(list(writer.pages))


def draw_too(writer: PdfWriter, page: Any, before: bytes = b"", after: bytes = b"") -> None:
    """Draws something before and after what the page draws already."""
    drawing = page.get_contents()
    data = drawing.get_data() if drawing is not None else b""
    stream = stream_object(b"\n".join(each for each in (before, data, after) if each))
    page[NameObject("/Contents")] = writer._add_object(stream)


@HIDDEN.filed(ANY, told="title is 'Answer: 75'")
def an_answer_in_the_title(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({"/Title": "Answer: 75"})


@HIDDEN.filed(ANY, told="is '75'")
def an_answer_as_the_author(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({rng.choice(["/Author", "/Subject", "/Creator"]): "75"})


@HIDDEN.filed(ANY, told="holds '75' (Remark)")
def an_answer_in_a_description_of_its_own(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({"/Remark": "75"})


@PAGES.filed(ANY, told="content has been changed")
def made_from_other_content(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({"/Keywords": f"content:{rng.randrange(16**16):016x}"})


@PAGES.filed(ANY, told="does not say what content")
def made_from_unknown_content(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({"/Keywords": rng.choice(["", "75", "content"])})


@HIDDEN.filed(ANY, told="was written by 'Quay'")
def written_by_another_program(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_metadata({"/Producer": "Quay"})


@HIDDEN.filed(ANY, told="'75'")
def an_answer_in_a_note(writer: PdfWriter, rng: random.Random) -> None:
    page = rng.randrange(len(writer.pages))
    writer.add_annotation(page, Text(rect=_RECT, text="75"))


@HIDDEN.filed(ANY, told="notes, links or form fields")
def a_text_box_over_the_page(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_annotation(rng.randrange(len(writer.pages)), FreeText(rect=_RECT, text="75"))


@RUNS.filed(ANY, told="can run something (/URI)")
def a_link_to_another_place(writer: PdfWriter, rng: random.Random) -> None:
    page = rng.randrange(len(writer.pages))
    writer.add_annotation(page, Link(rect=_RECT, url="https://quay.example/answers"))


@HIDDEN.filed(ANY, told="form fields")
def an_answer_in_a_form_field(writer: PdfWriter, rng: random.Random) -> None:
    field = dictionary(
        Type="/Annot", Subtype="/Widget", FT="/Tx", T="a4", TU="75 green flags", V="75"
    )
    field[NameObject("/Rect")] = RectangleObject(_RECT)
    form = dictionary(Fields=[writer._add_object(field)])
    writer._root_object[NameObject("/AcroForm")] = writer._add_object(form)


@HIDDEN.filed(ANY, told="bookmarks")
def an_answer_in_a_bookmark(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_outline_item(title="Answer 75", page_number=rng.randrange(len(writer.pages)))


@HIDDEN.filed((*ANY, PACK_NONE), told="attachments")
def answers_attached(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_attachment("answers.txt", b"75")


@RUNS.filed((*ANY, PACK_NONE), told="can run something (/JavaScript)")
def a_script(writer: PdfWriter, rng: random.Random) -> None:
    script = dictionary(S="/JavaScript", JS="app.alert('75');")
    names = dictionary(JavaScript=dictionary(Names=["quay", writer._add_object(script)]))
    writer._root_object[NameObject("/Names")] = writer._add_object(names)


@RUNS.filed((*ANY, PACK_NONE), told="when it is opened")
def an_action_on_opening(writer: PdfWriter, rng: random.Random) -> None:
    action = dictionary(S="/Launch", F="calc.exe")
    writer._root_object[NameObject("/OpenAction")] = writer._add_object(action)


@RUNS.filed(ANY, told="does something by itself")
def an_action_of_a_page(writer: PdfWriter, rng: random.Random) -> None:
    action = dictionary(O=dictionary(S="/JavaScript", JS="app.alert('75');"))
    some_page(writer, rng)[NameObject("/AA")] = action


@RUNS.filed(ANY, told="can run something (/GoToR)")
def a_link_to_another_file(writer: PdfWriter, rng: random.Random) -> None:
    link = dictionary(Type="/Annot", Subtype="/Link", A=dictionary(S="/GoToR", F="answers.pdf"))
    link[NameObject("/Rect")] = RectangleObject(_RECT)
    some_page(writer, rng)[NameObject("/Annots")] = ArrayObject([writer._add_object(link)])


@HIDDEN.filed((COSTS, TUESDAY, LARGE, KEY), told="does not claim to be accessible")
def no_claim_to_be_accessible(writer: PdfWriter, rng: random.Random) -> None:
    stream = stream_object(b"<x>75</x>", Type=NameObject("/Metadata"))
    writer._root_object[NameObject("/Metadata")] = writer._add_object(stream)


@HIDDEN.filed((CARDS, STRIPS, OWN, SET, GRID), told="second description of itself")
def a_second_description(writer: PdfWriter, rng: random.Random) -> None:
    stream = stream_object(b"<x>75</x>", Type=NameObject("/Metadata"))
    writer._root_object[NameObject("/Metadata")] = writer._add_object(stream)


@HIDDEN.filed(ANY, told="belongs to no page and no font")
def data_that_no_page_uses(writer: PdfWriter, rng: random.Random) -> None:
    stream = writer._add_object(stream_object(b"75"))
    some_page(writer, rng)["/Resources"][NameObject("/Properties")] = dictionary(A=stream)


@HIDDEN.filed(ANY, told="holds the text '75'")
def a_text_that_no_page_uses(writer: PdfWriter, rng: random.Random) -> None:
    some_page(writer, rng)["/Resources"][NameObject("/Quay")] = dictionary(Alt="75")


@HIDDEN.filed(ANY, told="layers")
def a_layer(writer: PdfWriter, rng: random.Random) -> None:
    writer._root_object[NameObject("/OCProperties")] = dictionary(OCGs=[])


@HIDDEN.filed((CARDS, STRIPS, OWN, SET, GRID), told="a second text for screen readers")
def a_second_text_for_the_whole(writer: PdfWriter, rng: random.Random) -> None:
    element = writer._add_object(dictionary(Type="/StructElem", Alt="75"))
    writer._root_object[NameObject("/StructTreeRoot")] = dictionary(K=element)


@HIDDEN.filed((COSTS, TUESDAY, WEDNESDAY, LARGE, KEY), told="is told '75'")
def a_second_text_in_place_of_the_structure(writer: PdfWriter, rng: random.Random) -> None:
    element = writer._add_object(dictionary(Type="/StructElem", Alt="75"))
    writer._root_object[NameObject("/StructTreeRoot")] = dictionary(K=element)


@HIDDEN.filed(ANY, told="a picture")
def a_picture(writer: PdfWriter, rng: random.Random) -> None:
    """Text as a bitmap could stand in it."""
    image = stream_object(
        b"\x00" * 100,
        Type=NameObject("/XObject"),
        Subtype=NameObject("/Image"),
        Width=NumberObject(10),
        Height=NumberObject(10),
        ColorSpace=NameObject("/DeviceGray"),
        BitsPerComponent=NumberObject(8),
    )
    place = f"q 50 0 0 50 {rng.randrange(50, 400)} {rng.randrange(100, 500)} cm /X Do Q"
    _paint(writer, some_page(writer, rng), image, place)


@HIDDEN.filed(ANY, told="a picture")
def a_picture_within_the_drawing(writer: PdfWriter, rng: random.Random) -> None:
    draw_too(
        writer,
        some_page(writer, rng),
        after=b"q 50 0 0 50 300 300 cm BI /W 1 /H 1 /BPC 8 /CS /G ID \x00 EI Q",
    )


@HIDDEN.filed(ANY, told="a page within the page")
def a_page_within_the_page(writer: PdfWriter, rng: random.Random) -> None:
    page = some_page(writer, rng)
    form = stream_object(
        b"BT 1 0 0 1 20 20 Tm /F1+0 12 Tf (75) Tj ET",
        Type=NameObject("/XObject"),
        Subtype=NameObject("/Form"),
        BBox=RectangleObject((0, 0, 90, 90)),
        Resources=page["/Resources"],
    )
    _paint(writer, page, form, "q 1 0 0 1 100 300 cm /X Do Q")


def _paint(writer: PdfWriter, page: Any, thing: StreamObject, how: str) -> None:
    page["/Resources"][NameObject("/XObject")] = dictionary(X=writer._add_object(thing))
    draw_too(writer, page, after=how.encode())


@HIDDEN.filed(ANY, told="transparency")
def transparent_ink(writer: PdfWriter, rng: random.Random) -> None:
    page = some_page(writer, rng)
    page["/Resources"][NameObject("/ExtGState")] = dictionary(G=dictionary(ca=0))
    draw_too(writer, page, before=b"/G gs")


@HIDDEN.filed(ANY, told="a clip")
def a_clip(writer: PdfWriter, rng: random.Random) -> None:
    """Half of a page is not shown."""
    draw_too(writer, some_page(writer, rng), before=b"n 0 0 300 842 re W n")


@PAGES.filed((TUESDAY, COSTS, CARDS, FOLDED, SET, LARGE, SAVING))
def a_page_missing(writer: PdfWriter, rng: random.Random) -> None:
    writer.remove_page(rng.randrange(len(writer.pages)))


@PAGES.filed((TUESDAY, COSTS, CARDS, FOLDED, SET, LARGE, KEY, STRIPS))
def a_page_twice(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_page(some_page(writer, rng))


@PAGES.filed((TUESDAY, COSTS, WEDNESDAY, LARGE, SAVING, LESSONS, FOLDED))
def two_pages_exchanged(writer: PdfWriter, rng: random.Random) -> None:
    pages: Any = writer._root_object["/Pages"]
    kids = list(pages["/Kids"])
    one, other = rng.sample(range(len(kids)), 2)
    kids[one], kids[other] = kids[other], kids[one]
    pages[NameObject("/Kids")] = ArrayObject(kids)


@PAGES.filed(ANY, "order", told="turned by ")
def a_page_turned(writer: PdfWriter, rng: random.Random) -> None:
    some_page(writer, rng).rotate(rng.choice([90, 270]))


@PAGES.filed(ANY, "page")
def a_page_upside_down(writer: PdfWriter, rng: random.Random) -> None:
    some_page(writer, rng).rotate(180)


@PAGES.filed(ANY, "page", "hidden")
def a_page_cropped(writer: PdfWriter, rng: random.Random) -> None:
    page = some_page(writer, rng)
    wide, high = float(page.mediabox.width), float(page.mediabox.height)
    page.cropbox = RectangleObject((0, 0, wide * rng.uniform(0.7, 0.95), high))


@PAGES.filed(ANY, "page", "margin")
def other_paper(writer: PdfWriter, rng: random.Random) -> None:
    some_page(writer, rng).mediabox = RectangleObject((0, 0, *rng.choice([(612, 792), (700, 900)])))


@PAGES.filed(ANY, told="the page holds /UserUnit")
def larger_units(writer: PdfWriter, rng: random.Random) -> None:
    """Everything twice as large."""
    some_page(writer, rng)[NameObject("/UserUnit")] = NumberObject(2)


@HIDDEN.raw(ANY, told="goes on after its end")
def more_after_the_end(pdf: bytes, rng: random.Random) -> bytes:
    return pdf + rng.choice([b"75\n", b"% the answer is 75\n"])


@HIDDEN.raw((*ANY, PACK_NONE), told="earlier version")
def an_earlier_version_in_the_file(pdf: bytes, rng: random.Random) -> bytes:
    # ISO 32000-1, 7.5.6: an update adds objects, a table of them, and where the last one is.
    last = int(pdf.rpartition(b"startxref")[2].split()[0])
    root = re.search(rb"/Root (\d+ 0 R)", pdf)
    assert root is not None
    added = pdf + b"900 0 obj\n<< >>\nendobj\n"
    table = f"xref\n900 1\n{len(pdf):010d} 00000 n \ntrailer\n<< /Size 901 /Root ".encode()
    return added + table + root[1] + f" /Prev {last} >>\nstartxref\n{len(added)}\n%%EOF\n".encode()


@HIDDEN.raw(ANY, told="locked with a password")
def a_password(pdf: bytes, rng: random.Random) -> bytes:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(pdf)))
    writer.encrypt("", "quay", algorithm="RC4-128")
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


@HIDDEN.raw(ANY, told="earlier version")
def an_answer_in_the_page_before_it_was_updated(pdf: bytes, rng: random.Random) -> bytes:
    """An update that takes a note away again: the note is still in the file."""
    first = PdfWriter(clone_from=BytesIO(pdf))
    first.add_annotation(0, Text(rect=_RECT, text="75"))
    before = written(first)
    update = PdfWriter(BytesIO(before), incremental=True)
    page: DictionaryObject = update.pages[0]
    del page["/Annots"]
    out = BytesIO()
    update.write(out)
    return out.getvalue()
