"""Faults in home packs: what leads where, which page is called what, and where answers are."""

from __future__ import annotations

import random
import re
from typing import Any

from pypdf import PdfWriter
from pypdf.annotations import Link, Text
from pypdf.generic import ArrayObject, NameObject, NumberObject, TextStringObject

from tests.proofing.faults import Theme
from tests.proofing.faults_in_the_file import draw_too, some_page
from tests.proofing.originals import PACK_ANSWERS, PACK_END, PACK_NONE, PACK_SHEETS
from tests.proofing.planting import Lines, dictionary, pick, runs_of

PACKS = Theme("Home packs: links, bookmarks, labels")
# Their pages: letter, two sheets of one side, and in the first one answers.
LETTER, MONDAY, FRIDAY, ANSWERS = 0, 1, 2, 3
EVERY = (PACK_END, PACK_NONE, PACK_SHEETS)
MARKED = (*EVERY, PACK_ANSWERS)


def marks_of(writer: PdfWriter) -> list[Any]:
    """The outermost bookmarks."""
    found: list[Any] = []
    reference = writer._root_object["/Outlines"].get_object()["/First"]  # type: ignore[index]  # pypdf types no deeper
    while reference is not None:
        found.append(reference.get_object())
        reference = found[-1].get("/Next")
    return found


def link_of(writer: PdfWriter, index: int) -> Any:
    return writer.pages[LETTER]["/Annots"][index].get_object()  # type: ignore[index]  # pypdf types no deeper


def leading_to(writer: PdfWriter, page: int, down: float = 40.0) -> ArrayObject:
    target = writer.pages[page]
    top = float(target.mediabox.height) - down
    kinds = (target.indirect_reference, NameObject("/XYZ"), NumberObject(0), NumberObject(int(top)))
    return ArrayObject([*kinds, NumberObject(0)])


@PACKS.filed(EVERY, told="leads to page ")
def a_link_to_the_wrong_page(writer: PdfWriter, rng: random.Random) -> None:
    page = rng.choice([LETTER, FRIDAY])
    for index in (0, 1):
        link_of(writer, index)[NameObject("/Dest")] = leading_to(writer, page)


@PACKS.filed(EVERY, told="belongs to nothing")
def half_of_a_line_leads_elsewhere(writer: PdfWriter, rng: random.Random) -> None:
    link_of(writer, 0)[NameObject("/Dest")] = leading_to(writer, FRIDAY, 60.0)


@PACKS.filed(EVERY, "link")
def a_link_to_the_foot_of_the_page(writer: PdfWriter, rng: random.Random) -> None:
    for index in (0, 1):
        link_of(writer, index)[NameObject("/Dest")] = leading_to(
            writer, MONDAY, rng.uniform(300, 600)
        )


@PACKS.filed(MARKED, told="'Answer: 75'")
def a_bookmark_with_another_title(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(marks_of(writer))[NameObject("/Title")] = TextStringObject("Answer: 75")


@PACKS.filed(EVERY, told="bookmark ")
def two_bookmarks_swapped(writer: PdfWriter, rng: random.Random) -> None:
    one, other = rng.sample(marks_of(writer), 2)
    one[NameObject("/Title")], other[NameObject("/Title")] = other["/Title"], one["/Title"]


@PACKS.filed(EVERY, told="leads to page ")
def a_bookmark_to_the_wrong_page(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(marks_of(writer)[1:3])[NameObject("/Dest")] = leading_to(writer, FRIDAY)


@PACKS.filed(MARKED, told="'Answer 75' belongs to nothing")
def a_bookmark_too_many(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_outline_item(title="Answer 75", page_number=rng.randrange(len(writer.pages)))


@PACKS.filed(MARKED, told="does more than lead (/A)")
def a_bookmark_that_runs_something(writer: PdfWriter, rng: random.Random) -> None:
    action = dictionary(S="/Launch", F="quay.exe")
    rng.choice(marks_of(writer))[NameObject("/A")] = action


@PACKS.filed(EVERY, told="bookmark or link that nothing shows")
def a_bookmark_that_nothing_shows(writer: PdfWriter, rng: random.Random) -> None:
    lost = dictionary(Title="In this pack")
    lost[NameObject("/Dest")] = leading_to(writer, FRIDAY)
    writer.pages[0]["/Resources"][NameObject("/Quay")] = writer._add_object(lost)  # type: ignore[index]  # pypdf types no deeper


@PACKS.filed(EVERY, told="is told as '75'")
def a_link_told_as_an_answer(writer: PdfWriter, rng: random.Random) -> None:
    link_of(writer, rng.randrange(2))[NameObject("/Contents")] = TextStringObject("75")


@PACKS.filed(EVERY, told="neither text nor a link within")
def a_link_that_is_not_printed(writer: PdfWriter, rng: random.Random) -> None:
    link_of(writer, rng.randrange(2))[NameObject("/F")] = NumberObject(2)


@PACKS.filed(EVERY, told="way back from the pages do not agree")
def a_link_of_another_element(writer: PdfWriter, rng: random.Random) -> None:
    one, other = rng.sample(range(2), 2)
    number = link_of(writer, other)["/StructParent"]
    link_of(writer, one)[NameObject("/StructParent")] = number


@PACKS.filed(PACK_END, told="the page is called '")
def a_page_label_wrong(writer: PdfWriter, rng: random.Random) -> None:
    labels = writer._root_object["/PageLabels"].get_object()["/Nums"]  # type: ignore[index]  # pypdf types no deeper
    labels[-1].get_object()[NameObject("/P")] = TextStringObject(rng.choice(["B-", "A", ""]))


@PACKS.filed(EVERY, told="the page is called '")
def page_labels_that_begin_too_late(writer: PdfWriter, rng: random.Random) -> None:
    labels = writer._root_object["/PageLabels"].get_object()["/Nums"]  # type: ignore[index]  # pypdf types no deeper
    labels[3].get_object()[NameObject("/St")] = NumberObject(rng.randrange(2, 9))


@PACKS.filed(EVERY, told="the pages have no labels")
def no_page_labels(writer: PdfWriter, rng: random.Random) -> None:
    del writer._root_object["/PageLabels"]


@PACKS.filed(EVERY, told="neither text nor a link within")
def a_link_out_of_the_pack(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_annotation(
        rng.randrange(len(writer.pages)),
        Link(rect=(100, 100, 200, 130), url="https://quay.example/"),
    )


@PACKS.filed(EVERY, told="neither text nor a link within")
def a_note_on_a_sheet(writer: PdfWriter, rng: random.Random) -> None:
    writer.add_annotation(
        rng.randrange(len(writer.pages)), Text(rect=(100, 100, 200, 130), text="75")
    )


@PACKS.filed(EVERY, told=" is missing")
def a_missing_sheet(writer: PdfWriter, rng: random.Random) -> None:
    writer.remove_page(rng.choice([MONDAY, FRIDAY]))


@PACKS.filed(PACK_END, "order", told="is printed")
def an_answers_page_among_the_sheets(writer: PdfWriter, rng: random.Random) -> None:
    kids = writer._root_object["/Pages"]["/Kids"]  # type: ignore[index]  # pypdf types no deeper
    kids.insert(rng.choice([LETTER, MONDAY, FRIDAY]), kids.pop(ANSWERS))


@PACKS.filed(EVERY, told="the sheet of Friday is missing")
def two_sheets_exchanged(writer: PdfWriter, rng: random.Random) -> None:
    kids = writer._root_object["/Pages"]["/Kids"]  # type: ignore[index]  # pypdf types no deeper
    kids[1:3] = [kids[2], kids[1]]


@PACKS.drawn(EVERY)
def contents_with_a_wrong_page(pages: list[Lines], rng: random.Random) -> None:
    page = pages[LETTER]
    run = pick(rng, [each for each in runs_of(page) if re.match(r"page \d", each.text)])
    page[run.index] = run.line(text=re.sub(r"\d", str(rng.randrange(5, 9)), run.text, count=1))


@PACKS.drawn(EVERY)
def a_page_number_of_the_sheet_alone(pages: list[Lines], rng: random.Random) -> None:
    page = pages[FRIDAY]
    run = next(each for each in runs_of(page) if each.text.startswith("Page 3"))
    page[run.index] = run.line(text="Page 1 of 1")


@PACKS.drawn((PACK_END, PACK_ANSWERS), "number", told="where '")
def a_wrong_answer_for_families(pages: list[Lines], rng: random.Random) -> None:
    page = pages[-1]
    run = pick(rng, [each for each in runs_of(page) if re.match(r"\d\d kites", each.text)])
    page[run.index] = run.line(text=re.sub(r"^\d\d", str(rng.randrange(85, 99)), run.text))


@PACKS.filed(EVERY, "file")
def a_file_too_large_to_send(writer: PdfWriter, rng: random.Random) -> None:
    draw_too(writer, some_page(writer, rng), after=b"\n" * (1_000_000 + rng.randrange(9)))
