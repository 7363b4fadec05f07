"""Faults planted into a good home pack: each must be told."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfWriter
from pypdf.annotations import Link, Text
from pypdf.generic import ArrayObject, NameObject, NumberObject, TextStringObject

from tests.proofing.making import made_short_week
from tests.proofing.planting import Lines, dictionary, rebuild, redraw, runs_of, stream_object
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.home_pack import compose_home_answers, compose_home_pack
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.letter import Answers
from typeset.proofing import proof_home_answers, proof_home_pack
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

WEEK = Path(__file__).parent / "pack_week"
# Its pages: letter, two sheets of one side, answers.
LETTER, MONDAY, FRIDAY, ANSWERS = 0, 1, 2, 3
FAULTS: dict[str, tuple[Callable[[bytes], bytes], str]] = {}


@cache
def layout() -> Layout:
    return find_layout("standard", Path("nowhere"))


@cache
def _solved() -> list[SolvedWeek]:
    return [solve_week(read_week(WEEK))]


def solved_week() -> SolvedWeek:
    return _solved()[0]


@cache
def made(answers: Answers = Answers.END) -> bytes:
    return write_pdf(compose_home_pack(solved_week(), layout(), answers)[0])


def told(pdf: bytes, answers: str = "end") -> str:
    found = proof_home_pack(pdf, "p.pdf", solved_week(), layout(), answers)
    return "\n".join(map(str, found))


def in_the_file(word: str) -> Callable[[Callable[[PdfWriter], None]], Callable[[PdfWriter], None]]:
    """Registers a change to the file, with what a finding must say."""

    def register(change: Callable[[PdfWriter], None]) -> Callable[[PdfWriter], None]:
        FAULTS[change.__name__] = (lambda pdf: rebuild(pdf, change), word)
        return change

    return register


def on_the_page(
    page: int, word: str
) -> Callable[[Callable[[Lines], None]], Callable[[Lines], None]]:
    """Registers a change to what a page draws."""

    def register(change: Callable[[Lines], None]) -> Callable[[Lines], None]:
        FAULTS[change.__name__] = (
            lambda pdf: redraw(pdf, lambda pages: change(pages[page])),
            word,
        )
        return change

    return register


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


@in_the_file("leads to page 3; page 2")
def a_link_to_the_wrong_page(writer: PdfWriter) -> None:
    for index in (0, 1):
        link_of(writer, index)[NameObject("/Dest")] = leading_to(writer, FRIDAY)


@in_the_file("belongs to nothing")
def half_of_a_line_leads_elsewhere(writer: PdfWriter) -> None:
    link_of(writer, 0)[NameObject("/Dest")] = leading_to(writer, FRIDAY, 60.0)


@in_the_file("the line 'page 2 Monday: Boxes of kites' leads to")
def a_link_to_the_foot_of_the_page(writer: PdfWriter) -> None:
    for index in (0, 1):
        link_of(writer, index)[NameObject("/Dest")] = leading_to(writer, MONDAY, 500.0)


@in_the_file("is 'Answer: 75'; 'Monday")
def a_bookmark_with_another_title(writer: PdfWriter) -> None:
    marks_of(writer)[2][NameObject("/Title")] = TextStringObject("Answer: 75")


@in_the_file("bookmark 3 is 'Friday")
def two_bookmarks_swapped(writer: PdfWriter) -> None:
    one, other = marks_of(writer)[2:4]
    one[NameObject("/Title")], other[NameObject("/Title")] = other["/Title"], one["/Title"]


@in_the_file("the bookmark 'Answers' leads to page 3")
def a_bookmark_to_the_wrong_page(writer: PdfWriter) -> None:
    marks_of(writer)[-1][NameObject("/Dest")] = leading_to(writer, FRIDAY)


@in_the_file("'Answer 75' belongs to nothing")
def a_bookmark_too_many(writer: PdfWriter) -> None:
    writer.add_outline_item(title="Answer 75", page_number=0)


@in_the_file("does more than lead (/A)")
def a_bookmark_that_runs_something(writer: PdfWriter) -> None:
    action = dictionary(S="/Launch", F="quay.exe")
    marks_of(writer)[0][NameObject("/A")] = action


@in_the_file("bookmark or link that nothing shows")
def a_bookmark_that_nothing_shows(writer: PdfWriter) -> None:
    lost = dictionary(Title="In this pack")
    lost[NameObject("/Dest")] = leading_to(writer, ANSWERS)
    writer.pages[0]["/Resources"][NameObject("/Quay")] = writer._add_object(lost)  # type: ignore[index]  # pypdf types no deeper


@in_the_file("is told as '75'")
def a_link_told_as_an_answer(writer: PdfWriter) -> None:
    link_of(writer, 0)[NameObject("/Contents")] = TextStringObject("75")


@in_the_file("neither text nor a link within")
def a_link_that_is_not_printed(writer: PdfWriter) -> None:
    link_of(writer, 0)[NameObject("/F")] = NumberObject(2)


@in_the_file("way back from the pages do not agree")
def a_link_of_another_element(writer: PdfWriter) -> None:
    link_of(writer, 0)[NameObject("/StructParent")] = NumberObject(1)


@in_the_file("the page is called 'B-1'; 'A-1'")
def a_page_label_wrong(writer: PdfWriter) -> None:
    labels = writer._root_object["/PageLabels"].get_object()["/Nums"]  # type: ignore[index]  # pypdf types no deeper
    labels[-1].get_object()[NameObject("/P")] = TextStringObject("B-")


@in_the_file("the page is called '2'")
def page_labels_that_begin_too_late(writer: PdfWriter) -> None:
    labels = writer._root_object["/PageLabels"].get_object()["/Nums"]  # type: ignore[index]  # pypdf types no deeper
    labels[3].get_object()[NameObject("/St")] = NumberObject(2)


@in_the_file("the pages have no labels")
def no_page_labels(writer: PdfWriter) -> None:
    del writer._root_object["/PageLabels"]


@in_the_file("neither text nor a link within")
def a_link_out(writer: PdfWriter) -> None:
    writer.add_annotation(0, Link(rect=(100, 100, 200, 130), url="https://quay.example/"))


@in_the_file("neither text nor a link within")
def a_note_on_a_sheet(writer: PdfWriter) -> None:
    writer.add_annotation(MONDAY, Text(rect=(100, 100, 200, 130), text="75"))


@in_the_file("the sheet of Monday is missing")
def a_missing_sheet(writer: PdfWriter) -> None:
    writer.remove_page(MONDAY)


@in_the_file("is printed")
def an_answers_page_among_the_sheets(writer: PdfWriter) -> None:
    kids = writer._root_object["/Pages"]["/Kids"]  # type: ignore[index]  # pypdf types no deeper
    kids.insert(FRIDAY, kids.pop(ANSWERS))


@in_the_file("the sheet of Friday is missing")
def two_sheets_exchanged(writer: PdfWriter) -> None:
    kids = writer._root_object["/Pages"]["/Kids"]  # type: ignore[index]  # pypdf types no deeper
    kids[1:3] = [kids[2], kids[1]]


def retype(page: Lines, old: str, new: str) -> None:
    run = next(run for run in runs_of(page) if old in run.text)
    page[run.index] = run.line(text=run.text.replace(old, new))


@on_the_page(LETTER, "prints '5' where '3' should be")
def contents_with_a_wrong_number(page: Lines) -> None:
    retype(page, "page 3", "page 5")


@on_the_page(LETTER, "'divide'")
def a_word_of_the_letter_changed(page: Lines) -> None:
    retype(page, "multiply", "divide")


@on_the_page(FRIDAY, "the page number")
def a_page_number_of_the_sheet_alone(page: Lines) -> None:
    run = next(run for run in runs_of(page) if run.text.startswith("Page 3"))
    page[run.index] = run.line(text="Page 1 of 1")


@on_the_page(ANSWERS, "'85' where '84' should be")
def a_wrong_answer(page: Lines) -> None:
    run = next(run for run in runs_of(page) if run.text.startswith("84 kites"))
    page[run.index] = run.line(text=run.text.replace("84", "85"))


@pytest.mark.parametrize("name", FAULTS)
def test_the_fault_is_found(name: str) -> None:
    plant, words = FAULTS[name]
    text = told(plant(made()))
    assert words in text, text or "nothing was found"


def test_rebuilding_alone_is_no_fault() -> None:
    assert told(rebuild(made(), lambda writer: None)) == ""


def test_a_pack_with_answers_is_none_without() -> None:
    """And the other way round: what is wanted is what must be there."""
    with_answers = told(made(), "none")
    assert "bookmark" in with_answers
    assert "is printed" in with_answers
    assert "the answers is missing" in told(made(Answers.NONE)).replace("are missing", "is missing")


def test_a_pack_of_another_version_or_week_is_found() -> None:
    other = write_pdf(compose_home_pack(made_short_week().solved, layout(), Answers.END)[0])
    assert "the sheet of Friday is missing" in told(other)


def test_answers_alone_are_proofed_like_the_part() -> None:
    solved = solved_week()
    pdf = write_pdf(compose_home_answers(solved, layout())[0])

    def spoil(pages: list[Lines]) -> None:
        retype(pages[0], "84 kites", "85 kites")

    found = proof_home_answers(redraw(pdf, spoil), "a.pdf", solved, layout())
    assert any("'85'" in str(each) for each in found)


def test_a_file_too_large_is_found() -> None:
    def pad(writer: PdfWriter) -> None:
        page = writer.pages[0]
        drawing = page.get_contents()
        assert drawing is not None
        stream = stream_object(drawing.get_data() + b"\n" * 1_000_000)
        page[NameObject("/Contents")] = writer._add_object(stream)

    assert "under a megabyte" in told(rebuild(made(), pad))
