"""Booklets for folding: the published order, and what the folded paper reads."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from pypdf import PdfReader, PdfWriter

from tests.proofing.making import made_week
from typeset.documents.answer_booklet import compose_folded_booklet
from typeset.documents.folding import Flip, folded, folding_order
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.paper import paper_named
from typeset.documents.versions import Versions
from typeset.drawing.shapes import PT_PER_MM
from typeset.proofing import proof_folded_booklet
from typeset.setting.frames import Document, Duplex, Page
from typeset.setting.pdf import write_pdf

A4_LYING = paper_named("A4").turned()


def test_four_pages() -> None:
    """4,1 / 2,3 (vesterkopi.dk, read)."""
    assert folding_order(4) == ((4, 1), (2, 3))


def test_eight_pages() -> None:
    """Pairs 8+1 and 6+3 as printed at magazine-printer.com (read); the rest by the rule."""
    assert folding_order(8) == ((8, 1), (2, 7), (6, 3), (4, 5))


def test_sixteen_pages() -> None:
    """Fronts 16,1 14,3 12,5 10,7 and, in the order of re-feeding, backs 8,9 6,11 4,13 2,15
    (Finale notes at johnpaulandbertha.org, 1999, read)."""
    order = folding_order(16)
    assert order[::2] == ((16, 1), (14, 3), (12, 5), (10, 7))
    assert tuple(reversed(order[1::2])) == ((8, 9), (6, 11), (4, 13), (2, 15))


@pytest.mark.parametrize("count", range(4, 84, 4))
def test_pairs_sum_to_one_more_than_the_pages_and_odd_ones_are_right_on_fronts(count: int) -> None:
    """mindprod.com/jgloss/imposition.html (read)."""
    order = folding_order(count)
    assert all(left + right == count + 1 for left, right in order)
    assert all(right % 2 == 1 for _, right in order[::2])
    assert sorted(page for side in order for page in side) == list(range(1, count + 1))


def test_a_number_that_cannot_be_folded_is_refused() -> None:
    with pytest.raises(ValueError, match="multiple of four"):
        folding_order(6)


@pytest.mark.parametrize(("pages", "sides"), [(1, 2), (4, 2), (5, 4), (8, 4), (9, 6)])
def test_white_pages_fill_up_to_a_multiple_of_four(pages: int, sides: int) -> None:
    half = (148.5 * PT_PER_MM, 210 * PT_PER_MM)
    document = Document("t", "s", tuple(Page(*half, ()) for _ in range(pages)), 10.0)
    assert len(folded(document, A4_LYING, Flip.SHORT_EDGE).pages) == sides


@cache
def booklet(flip: Flip) -> tuple[bytes, Layout]:
    """A lesson's booklet for this printer, with its layout."""
    layout = find_layout("standard", Path("nowhere")).model_copy(update={"backs": flip.value})
    made = made_week()
    document, _ = compose_folded_booklet(
        Versions(made.solved), layout, made.lesson("wednesday"), flip
    )
    return write_pdf(document), layout


def findings(pdf: bytes, flip: Flip) -> list[str]:
    made, (_, layout) = made_week(), booklet(flip)
    lesson = made.lesson("wednesday")
    return [str(each) for each in proof_folded_booklet(pdf, "b.pdf", made.solved, layout, lesson)]


@pytest.mark.parametrize("flip", Flip)
def test_a_booklet_for_folding_has_no_finding(flip: Flip) -> None:
    assert findings(booklet(flip)[0], flip) == []


@pytest.mark.parametrize("flip", Flip)
def test_the_folded_paper_reads_from_page_to_page(flip: Flip) -> None:
    """The numbers at the feet, read in the order in which the leaves are turned."""
    pdf, _ = booklet(flip)
    halves: list[list[str]] = []
    with pdfplumber.open(BytesIO(pdf)) as read:
        for index, page in enumerate(read.pages):
            # As the paper lies when its back is turned up: a turned side stands upright again.
            turned = page.page_obj.attrs.get("Rotate", 0) == 180
            assert turned == (flip is Flip.LONG_EDGE and index % 2 == 1)
        straight = PdfWriter(clone_from=PdfReader(BytesIO(pdf)))
    for side in straight.pages:
        side.rotation = 0
    out = BytesIO()
    straight.write(out)
    with pdfplumber.open(out) as read:
        for page in read.pages:
            middle = page.width / 2
            parts = (
                page.crop((0, 0, middle, page.height)),
                page.crop((middle, 0, page.width, page.height)),
            )
            halves.append([part.extract_text() or "" for part in parts])
    papers = [halves[i : i + 2] for i in range(0, len(halves), 2)]
    inward = [text for front, back in papers for text in (front[1], back[0])]
    outward = [text for front, back in reversed(papers) for text in (back[1], front[0])]
    told = [text for text in (*inward, *outward) if text]
    count = len(told)
    for number, text in enumerate(told, 1):
        assert text.splitlines()[-1].endswith(f"Page {number} of {count}")


def test_the_file_tells_the_printer_which_edge() -> None:
    for flip, told in ((Flip.LONG_EDGE, Duplex.LONG_EDGE), (Flip.SHORT_EDGE, Duplex.SHORT_EDGE)):
        root: Any = PdfReader(BytesIO(booklet(flip)[0])).trailer["/Root"]
        assert root["/ViewerPreferences"]["/Duplex"] == f"/{told.value}"


def test_a_back_that_lies_wrong_is_found() -> None:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(booklet(Flip.LONG_EDGE)[0])))
    writer.pages[1].rotation = 0
    out = BytesIO()
    writer.write(out)
    assert any("turned by 0 degrees" in each for each in findings(out.getvalue(), Flip.LONG_EDGE))


def test_papers_in_the_wrong_order_are_found() -> None:
    writer = PdfWriter()
    reader = PdfReader(BytesIO(booklet(Flip.SHORT_EDGE)[0]))
    for index in (2, 3, 0, 1, *range(4, len(reader.pages))):
        writer.add_page(reader.pages[index])
    out = BytesIO()
    writer.write(out)
    assert findings(out.getvalue(), Flip.SHORT_EDGE)


def test_missing_marks_where_to_fold_are_found() -> None:
    made, layout = made_week(), booklet(Flip.SHORT_EDGE)[1]
    lesson = made.lesson("wednesday")
    document, _ = compose_folded_booklet(Versions(made.solved), layout, lesson, Flip.SHORT_EDGE)
    first = document.pages[2]
    bare = replace(first, placed=first.placed[:-2])
    pages = (*document.pages[:2], bare, *document.pages[3:])
    told = findings(write_pdf(replace(document, pages=pages)), Flip.SHORT_EDGE)
    assert any("no marks where to fold" in each for each in told)
