"""Faults in what a screen reader is led through: answers that hide there, and a wrong way."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from pypdf import PdfWriter
from pypdf.generic import (
    ArrayObject,
    DictionaryObject,
    NameObject,
    NumberObject,
    StreamObject,
    TextStringObject,
)

from tests.proofing.planting import Lines, dictionary, rebuild, redraw, stream_object

# A spoilt file, and a word that one of the findings must say.
FAULTS: dict[str, tuple[Callable[[bytes], bytes], str]] = {}
_BEGINS = re.compile(r"^/(\w+) <</MCID (\d+)>> BDC$")


def fault(told: str) -> Callable[[Callable[[PdfWriter], None]], None]:
    """Registers a change to the objects of the file."""

    def register(change: Callable[[PdfWriter], None]) -> None:
        FAULTS[change.__name__.replace("_", " ")] = (lambda pdf: rebuild(pdf, change), told)

    return register


def drawn_fault(told: str) -> Callable[[Callable[[list[Lines]], None]], None]:
    """Registers a change to what the pages draw."""

    def register(change: Callable[[list[Lines]], None]) -> None:
        FAULTS[change.__name__.replace("_", " ")] = (lambda pdf: redraw(pdf, change), told)

    return register


def elements(writer: PdfWriter, tag: str) -> list[Any]:
    """The elements of this name in the order of the tree."""
    return [each for each in _below(writer._root_object["/StructTreeRoot"]) if each["/S"] == tag]


def _below(node: Any) -> Iterator[Any]:
    kids = node["/K"]
    for kid in kids if isinstance(kids, ArrayObject) else [kids]:
        below = kid.get_object()
        if isinstance(below, DictionaryObject):
            yield below
            yield from _below(below)


def say(element: Any, key: str, text: str) -> None:
    element[NameObject(key)] = TextStringObject(text)


def section(lines: Lines, tag: str) -> int:
    """Where a section of this name begins among the lines of a page."""
    return next(i for i, line in enumerate(lines) if (m := _BEGINS.match(line)) and m[1] == tag)


@fault("the figure of question 2 is told as")
def an_answer_in_an_alternative_text(writer: PdfWriter) -> None:
    figure = elements(writer, "/Figure")[0]
    say(figure, "/Alt", f"{figure['/Alt']}; gulls 36")


@fault("the figure of question 2 is told as")
def an_alternative_text_of_another_figure(writer: PdfWriter) -> None:
    say(elements(writer, "/Figure")[0], "/Alt", "Bar model: terns, 4 equal parts")


@fault("the figure of question 2 is told as ''")
def no_alternative_text(writer: PdfWriter) -> None:
    del elements(writer, "/Figure")[0]["/Alt"]


@fault("is told '5 times 36 equals 181'; '5 times 36 equals 180'")
def an_equation_told_wrongly(writer: PdfWriter) -> None:
    say(elements(writer, "/Formula")[0], "/Alt", "5 times 36 equals 181")


@fault("is told '75'; 'blank'")
def an_answer_told_for_a_blank(writer: PdfWriter) -> None:
    say(elements(writer, "/Span")[-2], "/ActualText", "75")


@fault("is told ''; 'blank'")
def a_blank_that_is_not_told(writer: PdfWriter) -> None:
    del elements(writer, "/Span")[0]["/ActualText"]


@fault("is told '75' for 'P'")
def other_words_for_a_paragraph(writer: PdfWriter) -> None:
    say(elements(writer, "/P")[4], "/ActualText", "75")


@fault("is told '75' for 'L'")
def an_answer_told_for_a_list(writer: PdfWriter) -> None:
    say(elements(writer, "/L")[1], "/Alt", "75")


@fault("holds /T")
def a_name_of_an_element(writer: PdfWriter) -> None:
    say(elements(writer, "/LI")[1], "/T", "75")


@fault("holds /E")
def an_expansion_of_letters(writer: PdfWriter) -> None:
    say(elements(writer, "/P")[2], "/E", "75")


@fault("holds the text '75'")
def an_answer_in_an_attribute(writer: PdfWriter) -> None:
    elements(writer, "/L")[0]["/A"][NameObject("/ListNumbering")] = TextStringObject("75")


@fault("holds the text '75'")
def an_element_beside_the_tree(writer: PdfWriter) -> None:
    stray = writer._add_object(dictionary(Type="/StructElem", S="/P", Alt="75"))
    writer.pages[0]["/Resources"][NameObject("/Quay")] = stray  # type: ignore[index]  # pypdf types no deeper


@fault("holds /RoleMap")
def elements_of_another_meaning(writer: PdfWriter) -> None:
    root: Any = writer._root_object["/StructTreeRoot"]
    root[NameObject("/RoleMap")] = dictionary(H1="/P")


@fault("a heading of level 3 follows one of level 1")
def a_level_skipped(writer: PdfWriter) -> None:
    elements(writer, "/H2")[0][NameObject("/S")] = NameObject("/H3")


@fault("is told to a screen reader as 'P'; it is the heading")
def a_heading_told_as_a_paragraph(writer: PdfWriter) -> None:
    elements(writer, "/H2")[0][NameObject("/S")] = NameObject("/P")


@fault("is a 'Quay'")
def an_element_of_no_kind(writer: PdfWriter) -> None:
    elements(writer, "/P")[3][NameObject("/S")] = NameObject("/Quay")


@fault("in another order than it is printed")
def another_order(writer: PdfWriter) -> None:
    body = elements(writer, "/LBody")[0]
    kids = list(list.__iter__(body["/K"]))
    body[NameObject("/K")] = ArrayObject([kids[1], kids[0], *kids[2:]])


@fault("something is drawn that a screen reader does not find")
def a_paragraph_left_out(writer: PdfWriter) -> None:
    body = elements(writer, "/LBody")[1]
    body[NameObject("/K")] = ArrayObject(list(list.__iter__(body["/K"]))[:-1])


@fault("page 2 is left out of the structure")
def a_page_left_out(writer: PdfWriter) -> None:
    del writer.pages[1]["/StructParents"]


@fault("its way back from the pages do not agree")
def a_wrong_way_back(writer: PdfWriter) -> None:
    root: Any = writer._root_object["/StructTreeRoot"]
    numbers = root["/ParentTree"]["/Nums"]
    owners = numbers[1].get_object()
    owners[0], owners[1] = list.__getitem__(owners, 1), list.__getitem__(owners, 0)


@fault("names another parent")
def another_parent(writer: PdfWriter) -> None:
    item = elements(writer, "/LI")[0]
    item[NameObject("/P")] = elements(writer, "/L")[1].indirect_reference


@fault("no structure to be read by")
def no_structure(writer: PdfWriter) -> None:
    del writer._root_object["/StructTreeRoot"]


@fault("does not say that it can be read by its structure")
def not_marked(writer: PdfWriter) -> None:
    del writer._root_object["/MarkInfo"]


@fault("does not say that it can be read by its structure")
def suspect_marks(writer: PdfWriter) -> None:
    info: Any = writer._root_object["/MarkInfo"]
    info[NameObject("/Suspects")] = NameObject("/true")


@fault("the language of the file is 'fr'")
def another_language(writer: PdfWriter) -> None:
    writer._root_object[NameObject("/Lang")] = TextStringObject("fr")


@fault("page 1 is not gone through in the order of its structure")
def tabs_in_another_order(writer: PdfWriter) -> None:
    writer.pages[0][NameObject("/Tabs")] = NameObject("/R")


@fault("shows the name of the file")
def a_title_that_is_not_shown(writer: PdfWriter) -> None:
    preferences: Any = writer._root_object["/ViewerPreferences"]
    del preferences["/DisplayDocTitle"]


@fault("which is no part of the text")
def a_foot_line_that_is_told(writer: PdfWriter) -> None:
    page, root = writer.pages[0], writer._root_object["/StructTreeRoot"].get_object()
    owners: Any = root["/ParentTree"]["/Nums"][1].get_object()  # type: ignore[index]  # pypdf types no deeper
    document: Any = elements(writer, "/Document")[0]
    foot = writer._add_object(dictionary(S="/P", K=[len(owners)]))
    made: Any = foot.get_object()
    made[NameObject("/P")], made[NameObject("/Pg")] = (
        document.indirect_reference,
        page.indirect_reference,
    )
    drawing = page.get_contents()
    assert drawing is not None
    begins = b"/Artifact <</Type /Pagination /Subtype /Footer>> BDC"
    spoilt = drawing.get_data().replace(begins, b"/P <</MCID %d>> BDC" % len(owners), 1)
    page[NameObject("/Contents")] = writer._add_object(stream_object(spoilt))
    owners.append(foot)
    document["/K"].append(foot)


def _describe(writer: PdfWriter, old: bytes, new: bytes) -> None:
    stream: Any = writer._root_object["/Metadata"]
    assert isinstance(stream, StreamObject)
    data = stream.get_data()
    assert old in data
    made = stream_object(
        data.replace(old, new), Type=NameObject("/Metadata"), Subtype=NameObject("/XML")
    )
    writer._root_object[NameObject("/Metadata")] = writer._add_object(made)


@fault("the second description of the file says")
def another_title_in_the_second_description(writer: PdfWriter) -> None:
    _describe(writer, b"More terns than gulls", b"75 green flags")


@fault("the second description of the file says")
def another_claim(writer: PdfWriter) -> None:
    _describe(writer, b"<pdfuaid:part>1", b"<pdfuaid:part>2")


@fault("holds more than it shows")
def an_answer_in_a_remark_of_the_second_description(writer: PdfWriter) -> None:
    _describe(writer, b"</x:xmpmeta>", b"<!-- 75 --></x:xmpmeta>")


@fault("the second description of the file holds 'Description'")
def an_answer_in_an_attribute_of_the_second_description(writer: PdfWriter) -> None:
    _describe(writer, b'rdf:about=""', b'rdf:about="75"')


@fault("the second description of the file holds 'creator'")
def an_answer_in_a_field_of_the_second_description(writer: PdfWriter) -> None:
    _describe(writer, b"</rdf:Description>", b"<dc:creator>75</dc:creator></rdf:Description>")


@fault("holds /Lang")
def a_language_of_an_element(writer: PdfWriter) -> None:
    say(elements(writer, "/P")[1], "/Lang", "75")


@fault("is on no page")
def a_section_of_no_page(writer: PdfWriter) -> None:
    del elements(writer, "/P")[1]["/Pg"]


@fault("in another order than it is printed")
def a_section_that_is_not_drawn(writer: PdfWriter) -> None:
    elements(writer, "/H1")[0]["/K"].append(NumberObject(999))


@drawn_fault("something is drawn that a screen reader does not find")
def something_outside_the_structure(pages: list[Lines]) -> None:
    begin = section(pages[0], "H1")
    assert pages[0][begin + 2] == "EMC" or "EMC" in pages[0][begin:]
    end = pages[0].index("EMC", begin)
    del pages[0][end], pages[0][begin]


@drawn_fault("is told to a screen reader as 'decoration'; it is the heading")
def a_heading_taken_for_decoration(pages: list[Lines]) -> None:
    begin = section(pages[0], "H2")
    pages[0][begin] = "/Artifact <</Type /Layout>> BDC"


@drawn_fault("marked content ('BDC')")
def other_words_within_the_drawing(pages: list[Lines]) -> None:
    begin = section(pages[0], "P")
    pages[0][begin] = pages[0][begin].replace(">>", " /ActualText (75)>>")


@drawn_fault("marked content ('BDC')")
def a_layer_within_the_drawing(pages: list[Lines]) -> None:
    begin = section(pages[0], "P")
    pages[0].insert(begin, "/OC /Quay BDC")
    pages[0].insert(pages[0].index("EMC", begin), "EMC")


@drawn_fault("something is drawn that a screen reader does not find")
def a_section_under_another_name(pages: list[Lines]) -> None:
    begin = section(pages[0], "Figure")
    pages[0][begin] = pages[0][begin].replace("/Figure", "/P")


@drawn_fault("in another order than it is printed")
def two_sections_numbered_the_other_way(pages: list[Lines]) -> None:
    at = [i for i, line in enumerate(pages[0]) if _BEGINS.match(line) and line.startswith("/P ")]
    one, other = at[2], at[3]
    pages[0][one], pages[0][other] = pages[0][other], pages[0][one]
