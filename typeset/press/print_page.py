"""The page on printing: planned last, since it tells of all that stands in the folder."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.print_list import PrintedFile, print_lines
from typeset.press.job import Job
from typeset.press.keys import digest_of, stem_of
from typeset.press.record import Made
from typeset.reading.content import HOW_TO_PRINT, Week

if TYPE_CHECKING:
    from typeset.proofing.finding import Finding
    from typeset.setting.frames import Document
    from typeset.setting.pages import PageLayout

FILE = f"{HOW_TO_PRINT.replace(' ', '-')}.pdf"


class Layouts:
    """The layouts of a week by name, each read once."""

    def __init__(self, week: Week, known: Iterable[Layout] = ()) -> None:
        self._week = week
        self._known = {layout.name: layout for layout in known}

    def named(self, name: str) -> Layout:
        """The layout. Raises LayoutError where it is gone."""
        if name not in self._known:
            self._known[name] = find_layout(name, self._week.folder)
        return self._known[name]

    @property
    def own(self) -> Layout:
        """The one that the week names."""
        return self.named(self._week.layout)


def print_job(solved: SolvedWeek, made: Sequence[Made], layouts: Layouts) -> Job:
    """The page about the made files. Raises LayoutError where a layout is gone."""
    files, layout = printed_files(solved.week, made, layouts), layouts.own

    def compose() -> tuple[Document, PageLayout]:
        from typeset.documents.how_to_print import compose_how_to_print

        return compose_how_to_print(solved, files, layout)

    def proof(pdf: bytes) -> list[Finding]:
        from typeset.proofing.print_text import proof_how_to_print

        return proof_how_to_print(pdf, FILE, solved, files, layout)

    key = digest_of(stem_of(layout), FILE, solved.week.fingerprint, repr(files))
    own = (layout.name, layout.fonts)
    return Job(FILE, HOW_TO_PRINT, "", "", *own, compose, proof, key=key)


def lines_of(week: Week, made: Sequence[Made], layouts: Layouts) -> Iterator[str]:
    """The same for the terminal."""
    return print_lines(printed_files(week, made, layouts), layouts.own)


def printed_files(week: Week, made: Sequence[Made], layouts: Layouts) -> tuple[PrintedFile, ...]:
    """The made files with their layouts, in the order of the week's lessons."""
    names = ["", *(each.name for each in week.lessons)]
    told = [each for each in made if each.kind != HOW_TO_PRINT and each.lesson in names]
    told.sort(key=lambda each: (names.index(each.lesson), each.file))
    return tuple(
        PrintedFile(each.file, each.kind, each.sides, layouts.named(each.layout)) for each in told
    )
