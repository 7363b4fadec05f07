"""Sheets that are alike but for the name: the first of a kind is proofed whole, and what is
written just as that one was, with another pupil's name, needs no second proof.

That is so where every page has the frame and the drawing of the page that was proofed, the
name apart. Anything else is left to the whole proof, which tells what is wrong, if anything.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from typeset.documents.class_work import Kind, PupilsSheet, kind_of
from typeset.documents.layout import Layout
from typeset.proofing.expected import said
from typeset.proofing.name_place import Drawing, NamePlace, is_plain
from typeset.proofing.open_file import OpenFile, WrittenPage
from typeset.proofing.page_marks import ReadPage


@dataclass(frozen=True, slots=True)
class _Side:
    """A page that was proofed, and where the name stands on it."""

    page: WrittenPage
    name: NamePlace


@dataclass(frozen=True, slots=True)
class _Proofed:
    """A sheet without a finding. `foot` is what stands at the foot of its first page."""

    layout: Layout
    foot: str
    sides: tuple[_Side, ...]


@dataclass(slots=True)
class KnownSheets:
    """The first good sheet of each kind that there are several of, in the file `opened`."""

    opened: OpenFile
    sheets: Sequence[PupilsSheet]
    _proofed: dict[Kind, _Proofed | None] = field(default_factory=dict)
    _counts: Counter[Kind] = field(default_factory=Counter)

    def __post_init__(self) -> None:
        self._counts.update(kind_of(each) for each in self.sheets)

    def sides_of(self, sheet: PupilsSheet, index: int) -> int:
        """How many sides the pupil's sheet has, where the pages from `index` on are a known one
        with nothing but the pupil's name put in; else 0. Raises Unreadable."""
        known = self._proofed.get(kind_of(sheet))
        if known is None or known.layout != sheet.layout or not is_plain(sheet.pupil.name):
            return 0
        lines = _lines(sheet, known.foot, len(known.sides))
        if index + len(known.sides) > len(self.opened):
            return 0
        for at, (side, line) in enumerate(zip(known.sides, lines, strict=True), index):
            page = self.opened.written(at)
            if page is None or page.frame != side.page.frame:
                return 0
            if not side.name.says(page.drawing, line):
                return 0
        return len(known.sides)

    def learn(self, sheet: PupilsSheet, foot: str, index: int, pages: Sequence[ReadPage]) -> None:
        """Keep the sheet, whose pages from `index` on were read and found good, where it is the
        first of its kind and others may be like it. Raises Unreadable."""
        kind = kind_of(sheet)
        if self._counts[kind] > 1 and kind not in self._proofed:
            self._proofed[kind] = self._taken_up(sheet, foot, index, pages)

    def _taken_up(
        self, sheet: PupilsSheet, foot: str, index: int, pages: Sequence[ReadPage]
    ) -> _Proofed | None:
        """The sheet; None where it cannot be told for certain where its name stands."""
        sides = []
        label = said(sheet.layout, "sheet", "name")
        lines = _lines(sheet, foot, len(pages))
        for at, (page, line) in enumerate(zip(pages, lines, strict=True)):
            written = self.opened.written(index + at)
            if written is None:
                return None
            drawing = Drawing(written.drawing, page, sheet.layout, self.opened.fonts(index + at))
            place = drawing.place_of(line, sheet.pupil.name, label if at == 0 else None)
            if place is None:
                return None
            sides.append(_Side(written, place))
        return _Proofed(sheet.layout, foot, tuple(sides))


def _lines(sheet: PupilsSheet, foot: str, sides: int) -> list[str]:
    """The text on each side that has the name in it: the name line, and the foots of later
    sides."""
    name = sheet.pupil.name
    later = said(sheet.layout, "sheet", "named foot", pupil=name, foot=foot)
    return [name, *([later] * (sides - 1))]
