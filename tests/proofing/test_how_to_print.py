"""The page on printing: what it says of each kind, and that its proof sees what is wrong."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tests.proofing.making import made_week
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.documents.how_to_print import compose_how_to_print
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout, layout_names
from typeset.documents.print_list import PrintedFile, print_lines
from typeset.proofing.print_text import proof_how_to_print
from typeset.reading.content import ANSWER_GRID, DOCUMENTS, NAMED_SET
from typeset.setting.pdf import write_pdf


@cache
def layout(name: str = "standard") -> Layout:
    return find_layout(name, Path("nowhere"))


def files() -> tuple[PrintedFile, ...]:
    """Two of every kind."""
    kinds = (*DOCUMENTS, NAMED_SET, ANSWER_GRID)
    return tuple(
        PrintedFile(f"{day}-{kind.replace(' ', '-')}.pdf", kind, sides, layout())
        for kind in kinds
        for day, sides in (("monday", 2), ("tuesday", 3))
    )


@cache
def page() -> bytes:
    return write_pdf(compose_how_to_print(made_week().solved, files(), layout())[0])


def told(pdf: bytes, own: tuple[PrintedFile, ...] = ()) -> list[str]:
    found = proof_how_to_print(pdf, "h.pdf", made_week().solved, own or files(), layout())
    return [str(each) for each in found]


def test_all_kinds_stand_on_one_page_without_a_finding() -> None:
    document = compose_how_to_print(made_week().solved, files(), layout())[0]
    assert len(document.pages) == 1
    assert told(page()) == []


@pytest.mark.parametrize("name", layout_names())
def test_a_week_in_every_layout_has_no_finding(name: str) -> None:
    own = tuple(
        PrintedFile(f"{day}-task-sheet-{name}.pdf", "task sheet", 4, layout(name))
        for day in ("monday", "tuesday", "wednesday", "thursday", "friday")
    )
    document = compose_how_to_print(made_week().solved, own, layout(name))[0]
    found = proof_how_to_print(write_pdf(document), "h.pdf", made_week().solved, own, layout(name))
    assert [str(each) for each in found] == []


def test_long_names_stand_under_each_other() -> None:
    """A name that is too wide for half the page takes all of it."""
    own = tuple(
        PrintedFile(
            f"{'wednesday' * 4}-task-sheet-{kind}-large-print-24.pdf", "task sheet", 4, layout()
        )
        for kind in ("support", "stretch")
    )
    pdf = write_pdf(compose_how_to_print(made_week().solved, own, layout())[0])
    assert told(pdf, own) == []


HOW = [
    ("task sheet", 4, "standard", "Task sheets: A4, both sides, flipped on the long edge (4 "),
    ("task sheet", 1, "standard", "Task sheets: A4, one side (1 side, 1 sheet of paper)"),
    ("task sheet", 3, "paper-saving", "flipped on the long edge; cut along the dashed lines (3 "),
    (
        "named set",
        4,
        "paper-saving",
        "lay the right-hand pile under the left-hand one (4 sides, 2 ",
    ),
    ("marking strips", 3, "standard", "A4, one side; cut along the dashed lines (3 sides, 3 "),
    ("folded booklet", 8, "standard", "fold the pile in the middle, and staple it on the fold (8"),
    ("sorting cards", 2, "standard", "on card, if you have some; cut along the dashed lines (2 "),
    ("answer grid", 3, "standard", "both sides, flipped on the short edge; they carry pupils"),
    ("named set", 61, "standard", "fetch them from the printer at once (61 sides, 31 sheets"),
]


@pytest.mark.parametrize(("kind", "sides", "name", "how"), HOW)
def test_the_terminal_says_how(kind: str, sides: int, name: str, how: str) -> None:
    first, line = print_lines([PrintedFile("x.pdf", kind, sides, layout(name))], layout())
    assert "actual size (100 %)" in first
    assert how in line


def test_a_printer_that_flips_on_the_short_edge() -> None:
    short = layout().model_copy(update={"backs": "short edge"})
    _, line = print_lines([PrintedFile("x.pdf", "task sheet", 2, short)], layout())
    assert "flipped on the short edge" in line


@pytest.mark.parametrize(
    ("old", "new"),
    [("long", "short"), ("(3", "(4"), ("dashed", "solid"), ("100", "97"), ("A4", "A5")],
)
def test_a_wrong_word_is_found(old: str, new: str) -> None:
    def plant(pages: list[Lines]) -> None:
        escaped = old.replace("(", "\\(")
        run = next(r for r in runs_of(pages[0]) if escaped in r.text)
        pages[0][run.index] = run.line(text=run.text.replace(escaped, new.replace("(", "\\("), 1))

    assert any(f"{new}" in each for each in told(redraw(page(), plant)))


def test_a_file_that_is_not_told_of_is_found() -> None:
    found = told(
        page(), (*files(), PrintedFile("friday-task-sheet.pdf", "task sheet", 2, layout()))
    )
    assert any("friday-task-sheet.pdf" in each for each in found)
