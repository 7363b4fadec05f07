"""Faults in the file around the pages: hidden answers, things that run, fonts, pages, paper."""

from __future__ import annotations

import re
from collections.abc import Callable
from io import BytesIO

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

from tests.proofing.planting import dictionary, rebuild, stream_object

# A spoilt file, and a word that one of the findings must say.
FileFault = tuple[Callable[[bytes], bytes], str]
FAULTS: dict[str, FileFault] = {}
_RECT = (100, 100, 200, 130)


def fault(told: str) -> Callable[[Callable[[PdfWriter], None]], Callable[[PdfWriter], None]]:
    """Registers a change to the file with what a finding must say about it."""

    def register(change: Callable[[PdfWriter], None]) -> Callable[[PdfWriter], None]:
        FAULTS[change.__name__.replace("_", " ")] = (lambda pdf: rebuild(pdf, change), told)
        return change

    return register


def raw_fault(told: str) -> Callable[[Callable[[bytes], bytes]], Callable[[bytes], bytes]]:
    """The same for a change to the bytes."""

    def register(change: Callable[[bytes], bytes]) -> Callable[[bytes], bytes]:
        FAULTS[change.__name__.replace("_", " ")] = (change, told)
        return change

    return register


@fault("title is 'Answer: 75'")
def an_answer_in_the_title(writer: PdfWriter) -> None:
    writer.add_metadata({"/Title": "Answer: 75"})


@fault("holds '75' (Remark)")
def an_answer_in_a_description_of_its_own(writer: PdfWriter) -> None:
    writer.add_metadata({"/Remark": "75"})


@fault("content has been changed")
def made_from_other_content(writer: PdfWriter) -> None:
    writer.add_metadata({"/Keywords": "content:0123456789abcdef"})


@fault("does not say what content")
def made_from_unknown_content(writer: PdfWriter) -> None:
    writer.add_metadata({"/Keywords": ""})


@fault("was written by 'Quay'")
def written_by_another_program(writer: PdfWriter) -> None:
    writer.add_metadata({"/Producer": "Quay"})


@fault("'75'")
def an_answer_in_a_note(writer: PdfWriter) -> None:
    writer.add_annotation(0, Text(rect=_RECT, text="75"))


@fault("notes, links or form fields")
def a_text_box_over_the_page(writer: PdfWriter) -> None:
    writer.add_annotation(1, FreeText(rect=_RECT, text="75"))


@fault("can run something (/URI)")
def a_link_out(writer: PdfWriter) -> None:
    writer.add_annotation(0, Link(rect=_RECT, url="https://quay.example/answers"))


@fault("form fields")
def an_answer_in_a_form_field(writer: PdfWriter) -> None:
    field = dictionary(
        Type="/Annot", Subtype="/Widget", FT="/Tx", T="a4", TU="75 green flags", V="75"
    )
    field[NameObject("/Rect")] = RectangleObject(_RECT)
    form = dictionary(Fields=[writer._add_object(field)])
    writer._root_object[NameObject("/AcroForm")] = writer._add_object(form)


@fault("bookmarks")
def an_answer_in_a_bookmark(writer: PdfWriter) -> None:
    writer.add_outline_item(title="Answer 75", page_number=0)


@fault("attachments")
def answers_attached(writer: PdfWriter) -> None:
    writer.add_attachment("answers.txt", b"75")


@fault("can run something (/JavaScript)")
def a_script(writer: PdfWriter) -> None:
    script = dictionary(S="/JavaScript", JS="app.alert('75');")
    names = dictionary(JavaScript=dictionary(Names=["quay", writer._add_object(script)]))
    writer._root_object[NameObject("/Names")] = writer._add_object(names)


@fault("when it is opened")
def an_action_on_opening(writer: PdfWriter) -> None:
    action = dictionary(S="/Launch", F="calc.exe")
    writer._root_object[NameObject("/OpenAction")] = writer._add_object(action)


@fault("does not claim to be accessible")
def a_second_description(writer: PdfWriter) -> None:
    stream = stream_object(b"<x>75</x>", Type=NameObject("/Metadata"))
    writer._root_object[NameObject("/Metadata")] = writer._add_object(stream)


@fault("belongs to no page and no font")
def data_that_no_page_uses(writer: PdfWriter) -> None:
    stream = writer._add_object(stream_object(b"75"))
    writer.pages[0]["/Resources"][NameObject("/Properties")] = dictionary(A=stream)  # type: ignore[index]  # pypdf types no deeper


@fault("holds the text '75'")
def a_text_that_no_page_uses(writer: PdfWriter) -> None:
    writer.pages[0]["/Resources"][NameObject("/Quay")] = dictionary(Alt="75")  # type: ignore[index]  # pypdf types no deeper


@fault("layers")
def a_layer(writer: PdfWriter) -> None:
    writer._root_object[NameObject("/OCProperties")] = dictionary(OCGs=[])


@fault("is told '75'")
def a_second_text(writer: PdfWriter) -> None:
    element = writer._add_object(dictionary(Type="/StructElem", Alt="75"))
    writer._root_object[NameObject("/StructTreeRoot")] = dictionary(K=element)


def _fonts(writer: PdfWriter) -> list[DictionaryObject]:
    fonts = writer.pages[0]["/Resources"]["/Font"]  # type: ignore[index]  # pypdf types no deeper
    return [each.get_object() for each in fonts.values()]


@fault("is not in the file")
def a_font_not_embedded(writer: PdfWriter) -> None:
    descriptor = _fonts(writer)[0]["/FontDescriptor"].get_object()
    assert isinstance(descriptor, DictionaryObject)
    del descriptor["/FontFile2"]


@fault("cannot be read back as text")
def a_font_without_its_letters(writer: PdfWriter) -> None:
    del _fonts(writer)[0]["/ToUnicode"]


@fault("is set in the font Helvetica")
def another_font(writer: PdfWriter) -> None:
    _fonts(writer)[0][NameObject("/BaseFont")] = NameObject("/Helvetica")


@fault("a picture")
def a_picture(writer: PdfWriter) -> None:
    image = stream_object(
        b"\x00" * 100,
        Type=NameObject("/XObject"),
        Subtype=NameObject("/Image"),
        Width=NumberObject(10),
        Height=NumberObject(10),
        ColorSpace=NameObject("/DeviceGray"),
        BitsPerComponent=NumberObject(8),
    )
    _paint(writer, image)


@fault("answer to question 4 is printed")
def a_page_within_the_page(writer: PdfWriter) -> None:
    form = stream_object(
        b"BT 1 0 0 1 20 20 Tm /F1+0 12 Tf (75) Tj ET",
        Type=NameObject("/XObject"),
        Subtype=NameObject("/Form"),
        BBox=RectangleObject((0, 0, 90, 90)),
        Resources=writer.pages[0]["/Resources"],
    )
    _paint(writer, form, "q 1 0 0 1 100 300 cm /X Do Q")


def _paint(
    writer: PdfWriter, thing: StreamObject, how: str = "q 50 0 0 50 300 300 cm /X Do Q"
) -> None:
    page = writer.pages[0]
    page["/Resources"][NameObject("/XObject")] = dictionary(X=writer._add_object(thing))  # type: ignore[index]  # pypdf types no deeper
    drawing = page.get_contents()
    assert drawing is not None
    stream = stream_object(drawing.get_data() + f"\n{how}".encode())
    page[NameObject("/Contents")] = writer._add_object(stream)


@fault("transparency")
def transparent_ink(writer: PdfWriter) -> None:
    page = writer.pages[0]
    page["/Resources"][NameObject("/ExtGState")] = dictionary(G=dictionary(ca=0))  # type: ignore[index]  # pypdf types no deeper
    drawing = page.get_contents()
    assert drawing is not None
    stream = stream_object(b"/G gs\n" + drawing.get_data())
    page[NameObject("/Contents")] = writer._add_object(stream)


@fault("has 1 side where 2 should be")
def a_page_missing(writer: PdfWriter) -> None:
    writer.remove_page(1)


@fault("the page is page 2 again")
def a_page_twice(writer: PdfWriter) -> None:
    writer.add_page(writer.pages[1])


@fault("question 3 is printed here; this is not its place")
def two_pages_exchanged(writer: PdfWriter) -> None:
    pages = writer._root_object["/Pages"]
    pages[NameObject("/Kids")] = ArrayObject(reversed(pages["/Kids"]))  # type: ignore[index]  # pypdf types no deeper


@fault("turned by 90 degrees")
def a_page_turned(writer: PdfWriter) -> None:
    writer.pages[1].rotate(90)


@fault("cropped")
def a_page_cropped(writer: PdfWriter) -> None:
    writer.pages[1].cropbox = RectangleObject((0, 0, 500, 800))


@fault("210 by 297 mm (A4) should be")
def other_paper(writer: PdfWriter) -> None:
    writer.pages[0].mediabox = RectangleObject((0, 0, 612, 792))


@raw_fault("goes on after its end")
def more_after_the_end(pdf: bytes) -> bytes:
    return pdf + b"75\n"


@raw_fault("earlier version")
def an_earlier_version_in_the_file(pdf: bytes) -> bytes:
    # ISO 32000-1, 7.5.6: an update adds objects, a table of them, and where the last one is.
    last = int(pdf.rpartition(b"startxref")[2].split()[0])
    root = re.search(rb"/Root (\d+ 0 R)", pdf)
    assert root is not None
    added = pdf + b"900 0 obj\n<< >>\nendobj\n"
    table = f"xref\n900 1\n{len(pdf):010d} 00000 n \ntrailer\n<< /Size 901 /Root ".encode()
    return added + table + root[1] + f" /Prev {last} >>\nstartxref\n{len(added)}\n%%EOF\n".encode()


@raw_fault("locked with a password")
def a_password(pdf: bytes) -> bytes:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(pdf)))
    writer.encrypt("", "quay", algorithm="RC4-128")
    out = BytesIO()
    writer.write(out)
    return out.getvalue()
