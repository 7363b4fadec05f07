"""Every layout that ships, made and read back: a sheet of each kind and a booklet."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from tests.proofing.making import BOOKLET, Made, made_week, make
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.documents.layout_files import find_layout, layout_names
from typeset.documents.task_sheet import compose_task_sheet
from typeset.drawing.contrast import contrast
from typeset.drawing.pens import GUIDE_COLOUR
from typeset.drawing.shapes import BLACK, PT_PER_MM, TextRun
from typeset.setting.frames import Role

OURS = layout_names()


@cache
def made_in(name: str) -> Made:
    """The proofing tests' week in this layout."""
    return make(made_week().solved, find_layout(name, Path("nowhere")))


@pytest.mark.parametrize("name", OURS)
def test_no_document_has_a_finding(name: str) -> None:
    made = made_in(name)
    assert [str(each) for document in made.pdfs for each in made.proof(document)] == []


@pytest.mark.parametrize(("name", "least_pt"), [("large-print-18", 16.0), ("large-print-24", 20.0)])
def test_large_print_is_large(name: str, least_pt: float) -> None:
    """UKAAF: 16 pt at least; nothing on the page but the numbers of a stacked fraction and the
    labels of figures may be smaller."""
    made = made_in(name)
    document, _ = compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)
    sizes = {
        shape.size_pt
        for page in document.pages
        for item in page.placed
        if item.role not in (Role.FIGURE, Role.ANSWER_SPACE)
        for shape in item.shapes
        if isinstance(shape, TextRun) and any(letter.isalpha() for letter in shape.text)
    }
    assert min(sizes) >= least_pt


def test_the_low_glare_tint_keeps_the_contrasts_of_wcag() -> None:
    """WCAG 2.2: text 7 : 1 (1.4.6), lines 3 : 1 (1.4.11), by its formula on the tint."""
    tint = find_layout("low-glare", Path("nowhere")).tint
    assert tint is not None
    assert contrast(BLACK, tint) >= 7
    assert contrast(GUIDE_COLOUR, tint) >= 3


# sources.md section 4, computed from the formula of WCAG 2.2; the first two published widely.
@pytest.mark.parametrize(
    ("hexadecimal", "ratio"),
    [
        ("767676", 4.5422),
        ("777777", 4.4781),
        ("595959", 7.0047),
        ("5A5A5A", 6.8969),
        ("949494", 3.0335),
        ("959595", 2.9953),
        ("888888", 3.5449),
        ("999999", 2.849),
        ("FF0000", 3.9985),
        ("000000", 21.0),
    ],
)
def test_contrast_on_white(hexadecimal: str, ratio: float) -> None:
    levels = [int(hexadecimal[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    assert contrast((levels[0], levels[1], levels[2]), (1.0, 1.0, 1.0)) == pytest.approx(
        ratio, abs=1e-4
    )


def test_two_copies_stand_side_by_side_on_one_paper() -> None:
    made = made_in("paper-saving")
    document, pages = compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)
    for sheet, page in zip(document.pages, pages.pages, strict=True):
        assert sheet.width_pt == pytest.approx(297 * PT_PER_MM)
        assert page.width_pt == pytest.approx(sheet.width_pt / 2)
        assert len(sheet.placed) == 2 * len(page.placed) + 1
        rights = [item for item in sheet.placed if item.x_pt > page.width_pt]
        assert [item.reads_as for item in rights] == [item.reads_as for item in page.placed]


def test_copies_that_differ_are_found() -> None:
    made = made_in("paper-saving")

    def plant(pages: list[Lines]) -> None:
        run = [run for run in runs_of(pages[0]) if "36 more" in run.text][-1]
        pages[0][run.index] = run.line(text=run.text.replace("36", "63"))

    found = made.proof("tuesday", redraw(made.pdfs["tuesday"], plant))
    assert [each.what for each in found] == ["the copies side by side are not alike here"]


def test_a_missing_line_to_cut_along_is_found() -> None:
    """The sheet of two copies without its last item, the dashed line."""
    from typeset.setting.pdf import write_pdf

    made = made_in("paper-saving")
    document, _ = compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)
    bare = tuple(replace(page, placed=page.placed[:-1]) for page in document.pages)
    found = made.proof("tuesday", write_pdf(replace(document, pages=bare)))
    assert {each.what for each in found} == {"there is no line to cut along"}


def test_the_booklet_tells_as_much_as_the_layout_says() -> None:
    """One way, no mistakes, no models: shorter, and still without a finding."""
    made = made_week()
    told = made.layout.booklet.model_copy(update={"ways": 1, "mistakes": 0, "models": False})
    brief = make(made.solved, made.layout.model_copy(update={"booklet": told}))
    assert brief.proof(BOOKLET) == []
    assert len(brief.pdfs[BOOKLET]) < 0.8 * len(made.pdfs[BOOKLET])
    # Proofed against a layout that tells more, what is missing is found.
    more = replace(brief, layout=made.layout)
    assert any("is missing" in each.what or "should" in str(each) for each in more.proof(BOOKLET))
