"""Named sets of a class: right ones have no finding, and planted faults are found."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from typing import Any

import pdfplumber
import pytest
from pypdf import PdfReader

from tests.proofing.making_class import (
    CLASS,
    NAMES,
    about,
    composed,
    made,
    other_numbers,
    sheets_of,
)
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.setting.frames import Duplex
from typeset.setting.pdf import write_pdf

FEW = NAMES[:4]


@cache
def few() -> bytes:
    """Four sheets of one side, each with a white back: eight pages."""
    return made(sheets_of(FEW))


def told(pdf: bytes) -> list[str]:
    return [str(each) for each in about(pdf, sheets_of(FEW))]


def pages_of(pdf: bytes) -> list[str]:
    """What every page says, read with pdfplumber alone."""
    with pdfplumber.open(BytesIO(pdf)) as read:
        return [" ".join((page.extract_text() or "").split()) for page in read.pages]


def test_a_class_of_thirty_is_collated_for_duplex() -> None:
    sheets = sheets_of(CLASS, {3: "large-print-18", 9: "large-print-24"})
    pdf = made(sheets)
    assert [str(each) for each in about(pdf, sheets)] == []
    pages = pages_of(pdf)
    assert len(pages) % 2 == 0
    firsts = [index for index, text in enumerate(pages) if "Page 1 of" in text]
    assert len(firsts) == len(CLASS) == 30
    assert all(index % 2 == 0 for index in firsts)
    for name, start, end in zip(CLASS, firsts, [*firsts[1:], len(pages)], strict=True):
        own = [text for text in pages[start:end] if text]
        assert own[0].startswith(f"Name {name} Date")
        assert all(f"{name} · " in text for text in own[1:])
        # White is only the last of them, and only where there is an odd number.
        assert len(pages[start:end]) == len(own) + len(own) % 2


def test_each_name_stands_on_its_own_sheet_and_nowhere_else_in_the_file() -> None:
    pages = pages_of(few())
    for number, name in enumerate(FEW):
        assert [index for index, text in enumerate(pages) if name in text] == (
            # The pupil of the worked solution is invented, and called Tomasz on every sheet.
            [2 * number] if name != "Tomasz" else [0, 2, 4, 6]
        )
    reader = PdfReader(BytesIO(few()))
    description = " ".join(map(str, (reader.metadata or {}).values()))
    assert not any(name in description for name in FEW)
    preferences: Any = reader.root_object["/ViewerPreferences"]
    assert preferences["/Duplex"] == "/DuplexFlipLongEdge"


def test_a_set_of_two_sided_sheets_has_no_white_side() -> None:
    sheets = sheets_of(FEW[:2], odd=False)
    pdf = made(sheets)
    assert [str(each) for each in about(pdf, sheets)] == []
    assert all(pages_of(pdf)) and len(pages_of(pdf)) == 4


def test_a_name_on_anothers_sheet_is_found_with_its_line() -> None:
    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[4]) if "Imogen" in run.text)
        pages[4][run.index] = run.line(text="Marta")

    (finding,) = about(redraw(few(), plant), sheets_of(FEW))
    assert finding.message == "the name line prints 'Marta' where 'Imogen' should be"
    assert (finding.page, finding.source) == (5, "class.csv:4")


def test_a_second_name_on_a_sheet_is_found() -> None:
    def plant(pages: list[Lines]) -> None:
        run = runs_of(pages[4])[-1]
        pages[4].append(run.line(text="Kofi", y=run.y + 200.0))

    assert any("'Kofi' is printed" in each for each in told(redraw(few(), plant)))


def swapped(order: list[int]) -> bytes:
    """The same pages in another order."""
    document = composed(sheets_of(FEW))
    return write_pdf(replace(document, pages=tuple(document.pages[index] for index in order)))


def test_two_names_swapped_are_found() -> None:
    found = told(swapped([0, 1, 4, 5, 2, 3, 6, 7]))
    assert any("page 3" in each and "prints 'Imogen' where 'Tomasz'" in each for each in found)
    assert any("page 5" in each and "prints 'Tomasz' where 'Imogen'" in each for each in found)


def test_a_white_side_that_is_missing_is_found() -> None:
    found = told(swapped([0, 2, 3, 4, 5, 6, 7]))
    assert any("page 2" in e and "begins on the back of the one before it" in e for e in found)
    assert any("the last paper has no back" in each for each in found)


def test_a_white_side_too_many_is_found() -> None:
    found = told(swapped([0, 1, 1, 1, 2, 3, 4, 5, 6, 7]))
    assert any("a white side stands where none is needed" in each for each in found)


def test_a_lost_sheet_is_found_by_its_line_and_alone() -> None:
    (finding,) = told(swapped([0, 1, 2, 3, 6, 7]))
    assert "sheet 3 is missing" in finding and "class.csv:4" in finding


def test_a_sheet_of_nobody_is_found() -> None:
    more = sheets_of((*FEW, "Leila"))
    (finding,) = about(made(more), sheets_of(FEW))
    assert finding.message == "this sheet is nobody's on the list, or out of its order"
    assert finding.page == 9


def test_a_lost_side_is_found() -> None:
    sheets = sheets_of(FEW[:2], odd=False)
    document = composed(sheets)
    without = replace(document, pages=(document.pages[0], *document.pages[2:]))
    found = [str(each) for each in about(write_pdf(without), sheets)]
    assert any("begins on the back" in each for each in found)
    assert any("question 3 is missing" in each for each in found)


def test_anothers_numbers_are_found() -> None:
    """A pupil's sheet with the numbers of the class, where the pupil has others."""
    sheets = sheets_of(FEW)
    own = replace(sheets[1], lesson=other_numbers())
    found = [str(each) for each in about(few(), (sheets[0], own, *sheets[2:]))]
    assert any("page 3" in each and "prints '36' where '39' should be" in each for each in found)
    assert not any("page 1" in each or "page 5" in each for each in found)


def test_a_wrong_digit_on_one_sheet_is_found_on_its_page() -> None:
    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[6]) if "There are 36 more" in run.text)
        pages[6][run.index] = run.line(text=run.text.replace("36", "63"))

    (finding,) = about(redraw(few(), plant), sheets_of(FEW))
    assert finding.message == "question 1 prints '63' where '36' should be"
    assert finding.page == 7


def test_a_name_in_the_description_is_found() -> None:
    document = replace(composed(sheets_of(FEW)), subject="Asha, Tomasz, Imogen, Kofi")
    assert any("subject is 'Asha," in each for each in told(write_pdf(document)))


def test_a_printer_asked_for_the_wrong_edge_is_found() -> None:
    document = replace(composed(sheets_of(FEW)), duplex=Duplex.SHORT_EDGE)
    (finding,) = told(write_pdf(document))
    assert "asks the printer for 'DuplexFlipShortEdge'" in finding


def test_a_damaged_file_is_a_finding() -> None:
    (finding,) = told(few()[:2000])
    assert "cannot be read as a PDF" in finding


SAVING = dict.fromkeys(range(1, 10), "paper-saving")


@pytest.mark.parametrize(("count", "papers"), [(4, 2), (5, 3), (1, 1)])
@pytest.mark.parametrize("backs", ["long edge", "short edge"])
def test_small_sheets_are_in_order_once_the_pile_is_cut(
    count: int, papers: int, backs: str
) -> None:
    """Cut by the middle of the paper with pdfplumber alone, right-hand pile under the left."""
    sheets = tuple(
        replace(each, layout=each.layout.model_copy(update={"backs": backs}))
        for each in sheets_of(NAMES[:count], SAVING)
    )
    pdf = made(sheets)
    assert [str(each) for each in about(pdf, sheets)] == []
    piles: list[str] = []
    with pdfplumber.open(BytesIO(pdf)) as read:
        assert len(read.pages) == 2 * papers
        fronts = read.pages[::2]
        for left in (0.0, 0.5):
            piles += [
                (
                    page.crop(
                        (left * page.width, 0, (left + 0.5) * page.width, page.height)
                    ).extract_text()
                    or ""
                )
                for page in fronts
            ]
    assert [text.split()[1] for text in piles if text] == list(NAMES[:count])


def test_a_back_behind_anothers_front_is_found() -> None:
    """Two-sided small sheets whose backs were put as the fronts are."""
    sheets = sheets_of(FEW, SAVING, odd=False)
    document = composed(sheets)
    assert [str(each) for each in about(write_pdf(document), sheets)] == []
    wrong = [
        replace(each, upside_down=False) if at % 2 else each
        for at, each in enumerate(document.pages)
    ]
    found = [str(each) for each in about(write_pdf(replace(document, pages=tuple(wrong))), sheets)]
    assert any("page 2" in each and "turned by 0 degrees" in each for each in found)
    mixed = (document.pages[0], document.pages[3], document.pages[2], document.pages[1])
    pages = (*mixed, *document.pages[4:])
    found = [str(each) for each in about(write_pdf(replace(document, pages=pages)), sheets)]
    assert any("page 2" in each for each in found) and any("page 4" in each for each in found)
