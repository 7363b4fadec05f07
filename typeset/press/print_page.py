"""The page on printing: planned last, since it tells of all that stands in the folder."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.how_to_print import compose_how_to_print
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.print_list import PrintedFile, print_lines
from typeset.press.plan import Job
from typeset.press.record import Made
from typeset.proofing import Finding
from typeset.proofing.print_text import proof_how_to_print
from typeset.reading.content import HOW_TO_PRINT, Week
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout

FILE = f"{HOW_TO_PRINT.replace(' ', '-')}.pdf"


def print_job(solved: SolvedWeek, made: Sequence[Made]) -> Job:
    """The page about the made files. Raises LayoutError where a layout is gone."""
    files, layout = printed_files(solved.week, made), own_layout(solved)

    def compose() -> tuple[Document, PageLayout]:
        return compose_how_to_print(solved, files, layout)

    def proof(pdf: bytes) -> list[Finding]:
        return proof_how_to_print(pdf, FILE, solved, files, layout)

    return Job(FILE, HOW_TO_PRINT, "", "", layout.name, layout.fonts, compose, proof)


def lines_of(week: Path, made: Sequence[Made]) -> Iterator[str]:
    """The same for the terminal, about files of the week in this folder."""
    read = read_week(week)
    layout = find_layout(read.layout, read.folder)
    return print_lines(printed_files(read, made), layout)


def own_layout(solved: SolvedWeek) -> Layout:
    """The layout that the week names."""
    return find_layout(solved.week.layout, solved.week.folder)


def printed_files(week: Week, made: Sequence[Made]) -> tuple[PrintedFile, ...]:
    """The made files with their layouts, in the order of the week's lessons."""
    names = ["", *(each.name for each in week.lessons)]
    told = [each for each in made if each.kind != HOW_TO_PRINT and each.lesson in names]
    told.sort(key=lambda each: (names.index(each.lesson), each.file))
    layouts = {name: find_layout(name, week.folder) for name in {each.layout for each in told}}
    return tuple(
        PrintedFile(each.file, each.kind, each.sides, layouts[each.layout]) for each in told
    )
