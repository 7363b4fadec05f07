"""Faults in what a screen reader is led through: answers that hide there, and a wrong way."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
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

from tests.proofing.faults import Theme
from tests.proofing.originals import (
    COSTS,
    FILLED,
    KEY,
    LARGE,
    PACK_ANSWERS,
    STRETCH,
    SUPPORT,
    TUESDAY,
    WEDNESDAY,
    WEEKLY,
)
from tests.proofing.planting import Lines, dictionary, pick, stream_object

STRUCTURE = Theme("What a screen reader is led through")
_BEGINS = re.compile(r"^/(\w+) <</MCID (\d+)>> BDC$")
TAGGED = (TUESDAY, COSTS, WEDNESDAY, LARGE, KEY, SUPPORT, STRETCH, FILLED, WEEKLY, PACK_ANSWERS)
WITHOUT_FIELDS = tuple(each for each in TAGGED if each != FILLED)
WITH_FIGURES = (TUESDAY, WEEKLY)
WITH_LISTS = (TUESDAY, COSTS, WEDNESDAY, LARGE, SUPPORT, STRETCH, WEEKLY)


def elements(writer: PdfWriter, tag: str) -> list[Any]:
    """The elements of this name in the order of the tree."""
    every = _below(writer._root_object["/StructTreeRoot"])
    return [each for each in every if each.get("/S") == tag]


def _below(node: Any) -> Iterator[Any]:
    kids = node.get("/K", ArrayObject())
    for kid in kids if isinstance(kids, ArrayObject) else [kids]:
        below = kid.get_object()
        if isinstance(below, DictionaryObject):
            yield below
            yield from _below(below)


def say(element: Any, key: str, text: str) -> None:
    element[NameObject(key)] = TextStringObject(text)


@STRUCTURE.filed(WITH_FIGURES, told="is told as")
def an_answer_in_an_alternative_text(writer: PdfWriter, rng: random.Random) -> None:
    figure = rng.choice(elements(writer, "/Figure"))
    say(figure, "/Alt", f"{figure['/Alt']}; gulls 36")


@STRUCTURE.filed(WITH_FIGURES, told="is told as")
def an_alternative_text_of_another_figure(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, "/Figure")), "/Alt", "Bar model: terns, 4 equal parts")


@STRUCTURE.filed(WITH_FIGURES, told="is told as ''")
def no_alternative_text(writer: PdfWriter, rng: random.Random) -> None:
    del rng.choice(elements(writer, "/Figure"))["/Alt"]


@STRUCTURE.filed(WITH_FIGURES, told="is told ")
def an_equation_told_wrongly(writer: PdfWriter, rng: random.Random) -> None:
    formula = rng.choice(elements(writer, "/Formula"))
    say(formula, "/Alt", f"{formula['/Alt']}1")


@STRUCTURE.filed(WITH_LISTS[:-1], told="is told '75'")
def an_answer_told_for_a_blank(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(_blanks(writer)), "/ActualText", "75")


def _blanks(writer: PdfWriter) -> list[Any]:
    """What stands for a room to write in."""
    return [each for each in elements(writer, "/Span") if each.get("/ActualText") == "blank"]


@STRUCTURE.filed(WITH_LISTS[:-1], told="is told ''; 'blank'")
def a_blank_that_is_not_told(writer: PdfWriter, rng: random.Random) -> None:
    del rng.choice(_blanks(writer))["/ActualText"]


@STRUCTURE.filed(TAGGED, told="is told '75' for 'P'")
def other_words_for_a_paragraph(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, "/P")), "/ActualText", "75")


@STRUCTURE.filed(WITH_LISTS, told="is told '75' for 'L'")
def an_answer_told_for_a_list(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, "/L")), "/Alt", "75")


@STRUCTURE.filed(TAGGED, told="holds /T")
def a_name_of_an_element(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, rng.choice(["/P", "/H1"]))), "/T", "75")


@STRUCTURE.filed(TAGGED, told="holds /E")
def an_expansion_of_letters(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, "/P")), "/E", "75")


@STRUCTURE.filed(WITH_LISTS, told="holds the text '75'")
def an_answer_in_an_attribute(writer: PdfWriter, rng: random.Random) -> None:
    lists = [each for each in elements(writer, "/L") if "/A" in each]
    rng.choice(lists)["/A"][NameObject("/ListNumbering")] = TextStringObject("75")


@STRUCTURE.filed(TAGGED, told="holds the text '75'")
def an_element_beside_the_tree(writer: PdfWriter, rng: random.Random) -> None:
    stray = writer._add_object(dictionary(Type="/StructElem", S="/P", Alt="75"))
    writer.pages[0]["/Resources"][NameObject("/Quay")] = stray  # type: ignore[index]  # pypdf types no deeper


@STRUCTURE.filed(TAGGED, told="holds /RoleMap")
def elements_of_another_meaning(writer: PdfWriter, rng: random.Random) -> None:
    root: Any = writer._root_object["/StructTreeRoot"]
    root[NameObject("/RoleMap")] = dictionary(H1="/P")


@STRUCTURE.filed(TAGGED, told="a heading of level 3 follows one of level 1")
def a_level_skipped(writer: PdfWriter, rng: random.Random) -> None:
    elements(writer, "/H2")[0][NameObject("/S")] = NameObject("/H3")


@STRUCTURE.filed(TAGGED, told="is told to a screen reader as 'P'")
def a_heading_told_as_a_paragraph(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice([*elements(writer, "/H1"), *elements(writer, "/H2")])[NameObject("/S")] = NameObject(
        "/P"
    )


@STRUCTURE.filed(TAGGED, told="is a 'Quay'")
def an_element_of_no_kind(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(elements(writer, "/P"))[NameObject("/S")] = NameObject("/Quay")


@STRUCTURE.filed(WITH_LISTS, told="in another order than it is printed")
def another_order(writer: PdfWriter, rng: random.Random) -> None:
    body = rng.choice([each for each in elements(writer, "/LBody") if len(_kids(each)) > 1])
    kids = _kids(body)
    body[NameObject("/K")] = ArrayObject([kids[1], kids[0], *kids[2:]])


@STRUCTURE.filed(WITH_LISTS, told="something is drawn that a screen reader does not find")
def a_paragraph_left_out(writer: PdfWriter, rng: random.Random) -> None:
    body = rng.choice([each for each in elements(writer, "/LBody") if len(_kids(each)) > 1])
    body[NameObject("/K")] = ArrayObject(_kids(body)[:-1])


def _kids(element: Any) -> list[Any]:
    kids = element["/K"]
    return list(list.__iter__(kids)) if isinstance(kids, ArrayObject) else [kids]


@STRUCTURE.filed(TAGGED, told="is left out of the structure")
def a_page_left_out(writer: PdfWriter, rng: random.Random) -> None:
    del rng.choice(list(writer.pages))["/StructParents"]


@STRUCTURE.filed(WITHOUT_FIELDS, told="its way back from the pages do not agree")
def a_wrong_way_back(writer: PdfWriter, rng: random.Random) -> None:
    root: Any = writer._root_object["/StructTreeRoot"]
    numbers = root["/ParentTree"]["/Nums"]
    owners = numbers[1].get_object()
    owners[0], owners[1] = list.__getitem__(owners, 1), list.__getitem__(owners, 0)


@STRUCTURE.filed(WITH_LISTS, told="names another parent")
def another_parent(writer: PdfWriter, rng: random.Random) -> None:
    item = rng.choice(elements(writer, "/LI"))
    others = [each for each in elements(writer, "/LBody") if item not in _kids(each)]
    item[NameObject("/P")] = rng.choice(others).indirect_reference


@STRUCTURE.filed(TAGGED, told="no structure to be read by")
def no_structure(writer: PdfWriter, rng: random.Random) -> None:
    del writer._root_object["/StructTreeRoot"]


@STRUCTURE.filed(TAGGED, told="does not say that it can be read by its structure")
def not_marked(writer: PdfWriter, rng: random.Random) -> None:
    del writer._root_object["/MarkInfo"]


@STRUCTURE.filed(TAGGED, told="does not say that it can be read by its structure")
def suspect_marks(writer: PdfWriter, rng: random.Random) -> None:
    info: Any = writer._root_object["/MarkInfo"]
    info[NameObject("/Suspects")] = NameObject("/true")


@STRUCTURE.filed(TAGGED, told="the language of the file is 'fr'")
def another_language(writer: PdfWriter, rng: random.Random) -> None:
    writer._root_object[NameObject("/Lang")] = TextStringObject("fr")


@STRUCTURE.filed(TAGGED, told="is not gone through in the order of its structure")
def tabs_in_another_order(writer: PdfWriter, rng: random.Random) -> None:
    page: Any = rng.choice(list(writer.pages))
    page[NameObject("/Tabs")] = NameObject(rng.choice(["/R", "/C"]))


@STRUCTURE.filed(TAGGED, told="shows the name of the file")
def a_title_that_is_not_shown(writer: PdfWriter, rng: random.Random) -> None:
    preferences: Any = writer._root_object["/ViewerPreferences"]
    del preferences["/DisplayDocTitle"]


@STRUCTURE.filed(WITHOUT_FIELDS, told="which is no part of the text")
def a_foot_line_that_is_told(writer: PdfWriter, rng: random.Random) -> None:
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


@STRUCTURE.filed(TAGGED, told="the second description of the file says")
def another_title_in_the_second_description(writer: PdfWriter, rng: random.Random) -> None:
    _describe(writer, b"</rdf:li>", b" 75</rdf:li>")


@STRUCTURE.filed(TAGGED, told="the second description of the file says")
def another_claim(writer: PdfWriter, rng: random.Random) -> None:
    _describe(writer, b"<pdfuaid:part>1", b"<pdfuaid:part>2")


@STRUCTURE.filed(TAGGED, told="holds more than it shows")
def an_answer_in_a_remark_of_the_second_description(writer: PdfWriter, rng: random.Random) -> None:
    _describe(writer, b"</x:xmpmeta>", b"<!-- 75 --></x:xmpmeta>")


@STRUCTURE.filed(TAGGED, told="the second description of the file holds 'Description'")
def an_answer_in_an_attribute_of_the_second_description(
    writer: PdfWriter, rng: random.Random
) -> None:
    _describe(writer, b'rdf:about=""', b'rdf:about="75"')


@STRUCTURE.filed(TAGGED, told="the second description of the file holds 'creator'")
def an_answer_in_a_field_of_the_second_description(writer: PdfWriter, rng: random.Random) -> None:
    _describe(writer, b"</rdf:Description>", b"<dc:creator>75</dc:creator></rdf:Description>")


@STRUCTURE.filed(TAGGED, told="holds /Lang")
def a_language_of_an_element(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(elements(writer, "/P")), "/Lang", "75")


@STRUCTURE.filed(TAGGED, told="is on no page")
def a_section_of_no_page(writer: PdfWriter, rng: random.Random) -> None:
    del rng.choice([each for each in elements(writer, "/P") if "/Pg" in each])["/Pg"]


@STRUCTURE.filed(TAGGED, told="in another order than it is printed")
def a_section_that_is_not_drawn(writer: PdfWriter, rng: random.Random) -> None:
    elements(writer, "/H1")[0]["/K"].append(NumberObject(999))


@STRUCTURE.drawn(TAGGED, told="something is drawn that a screen reader does not find")
def something_outside_the_structure(pages: list[Lines], rng: random.Random) -> None:
    page, begin = _sections(pages, rng, "P")
    end = page.index("EMC", begin)
    del page[end], page[begin]


def _sections(pages: list[Lines], rng: random.Random, *tags: str) -> tuple[Lines, int]:
    """A page, and where a section of one of these names begins on it."""
    found = [
        (page, index)
        for page in pages
        for index, line in enumerate(page)
        if (match := _BEGINS.match(line)) and match[1] in tags
    ]
    chosen: tuple[Lines, int] = pick(rng, found)
    return chosen


@STRUCTURE.drawn(TAGGED, told="is told to a screen reader as 'decoration'")
def a_heading_taken_for_decoration(pages: list[Lines], rng: random.Random) -> None:
    page, begin = _sections(pages, rng, "H1", "H2")
    page[begin] = "/Artifact <</Type /Layout>> BDC"


@STRUCTURE.drawn(TAGGED, told="marked content ('BDC')")
def other_words_within_the_drawing(pages: list[Lines], rng: random.Random) -> None:
    page, begin = _sections(pages, rng, "P")
    page[begin] = page[begin].replace(">>", " /ActualText (75)>>")


@STRUCTURE.drawn(TAGGED, told="marked content ('BDC')")
def a_layer_within_the_drawing(pages: list[Lines], rng: random.Random) -> None:
    page, begin = _sections(pages, rng, "P")
    page.insert(begin, "/OC /Quay BDC")
    page.insert(page.index("EMC", begin), "EMC")


@STRUCTURE.drawn(TAGGED, told="something is drawn that a screen reader does not find")
def a_section_under_another_name(pages: list[Lines], rng: random.Random) -> None:
    page, begin = _sections(pages, rng, "P")
    page[begin] = page[begin].replace("/P ", "/H1 ")


@STRUCTURE.drawn(TAGGED, told="in another order than it is printed")
def two_sections_numbered_the_other_way(pages: list[Lines], rng: random.Random) -> None:
    page = pages[0]
    at = [i for i, line in enumerate(page) if _BEGINS.match(line) and line.startswith("/P ")]
    one, other = rng.sample(at, 2)
    page[one], page[other] = page[other], page[one]
