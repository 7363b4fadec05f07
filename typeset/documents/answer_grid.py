"""The answer grid of a named set: names down, questions across, for whoever marks the sheets.

Where all pupils have the numbers of their version, a row stands for a version, and the names
stand below. A grid too wide for the paper goes on below with the next questions; every page
repeats the heads of its columns.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedLesson
from typeset.documents.class_work import PupilsSheet, lying
from typeset.documents.composer import HEADING_SCALE, Composer, week_names
from typeset.documents.entries import all_answers
from typeset.documents.layout import Layout
from typeset.drawing.shapes import grey
from typeset.errors import FitError
from typeset.quantities.inline import Rich, words
from typeset.reading.content import VERSIONS
from typeset.setting.blocks import Column
from typeset.setting.frames import Document, Duplex, Page, Placed, Role
from typeset.setting.pages import PageFrame, PageLayout
from typeset.setting.paragraphs import TextStyle, natural_width_pt
from typeset.setting.pieces import Columns, Piece, RulePiece, Stack, text
from typeset.setting.stretch import NATURAL, fixed

# Between columns, and between a row's text and its rule, in ems: rows close up a little where
# that saves a page.
_GAP_EMS = 1.2
_ROW_EMS = (0.3, 0.2, 0.12)
# Where there is room columns stand further apart, but no table is pulled out over a page.
_MORE_EMS = 1.5
# A cell is as wide as its answer, up to this; longer answers take several lines.
_WIDEST_EMS = 14.0
_LEADING = 1.2
# Groups of columns are made alike in steps of this part of the width.
_PARTS = 24
_HEAD_RULE_PT = 1.6
_ROW_RULE_PT = 0.5
_ROW_RULE = grey(0.55)


def compose_answer_grid(
    sheets: Sequence[PupilsSheet], layout: Layout, varied: bool
) -> tuple[Document, PageLayout]:
    """The grid of one lesson's named set; with `varied` numbers a row for each pupil.

    `layout` is the week's own. Raises FitError for an answer that no column can hold, GlyphError.
    """
    composer = Composer(lying(layout))
    first, size_pt = sheets[0], layout.booklet.size_pt
    foot = composer.say("sheet", "foot", **week_names(first.solved, first.lesson))
    frame, style = composer.frame(foot, size_pt), TextStyle(size_pt, _LEADING)
    tables = (_Table(composer, tuple(sheets), varied, style, row_ems) for row_ems in _ROW_EMS)
    pages = min((_paged(table, frame) for table in tables), key=len)
    document = Document(
        title=f"{first.lesson.lesson.title} – {composer.say('class', 'grid')}",
        subject=first.solved.week.title,
        pages=pages,
        type_size_pt=size_pt,
        fingerprint=first.solved.week.fingerprint,
        duplex=Duplex.SHORT_EDGE,
    )
    return document, PageLayout(pages, size_pt, (), ())


@dataclass(frozen=True, slots=True)
class _Row:
    """A row: its labels (name, version), then an answer and the problem's id for each question."""

    labels: tuple[Rich, ...]
    answers: tuple[tuple[Rich, str], ...]


@dataclass(frozen=True, slots=True)
class _Band:
    """Questions `first` to before `end` that stand side by side, with the widths of all cells."""

    first: int
    end: int
    widths_pt: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class _Table:
    """What the grid says, ready to be set."""

    composer: Composer
    sheets: tuple[PupilsSheet, ...]
    varied: bool
    style: TextStyle
    row_ems: float

    @property
    def column(self) -> Column:
        """The width of the page."""
        return Column(self.style, self.composer.width_pt)

    def title(self) -> Piece:
        """Day and lesson."""
        lesson = self.sheets[0].lesson.lesson
        heading = self.composer.rich("class", "grid title", day=lesson.day, lesson=lesson.title)
        style = self.style.scaled(HEADING_SCALE).bold()
        return text(heading, style, self.column.width_pt, Role.HEADING)

    def heads(self) -> tuple[Rich, ...]:
        """What the columns of labels are called."""
        by_version = [] if self.varied else ["version"]
        keys = ["name", "version"] if self.varied else by_version
        kept = keys if self.has_versions else ["name"]
        return tuple(self.composer.rich("class", key) for key in kept)

    @property
    def has_versions(self) -> bool:
        """True where not all pupils get the same version."""
        return len({each.solved.version for each in self.sheets}) > 1

    def rows(self) -> list[_Row]:
        """A row for each pupil, or for each version."""
        told = self.sheets if self.varied else one_of_each(self.sheets)
        return [_Row(self.labels(each), _answers(each.lesson)) for each in told]

    def labels(self, sheet: PupilsSheet) -> tuple[Rich, ...]:
        """Whose the answers of the row are."""
        everybody = self.composer.rich("class", "everybody")
        name = (words(sheet.pupil.name),) if self.varied else ()
        version = self.composer.rich("versions", sheet.solved.version.value)
        return (*name, version) if self.has_versions else name or (everybody,)

    def who(self) -> Iterator[Piece]:
        """Who has which version, where the rows do not tell."""
        told = [] if self.varied or not self.has_versions else one_of_each(self.sheets)
        for one in told:
            names = [
                each.pupil.name for each in self.sheets if each.solved.version is one.solved.version
            ]
            version = self.composer.say("versions", one.solved.version.value)
            said = self.composer.rich("class", "who", version=version, names=", ".join(names))
            yield text(said, self.style, self.column.width_pt)

    def bands(self) -> list[_Band]:
        """The questions in as few groups as the width allows, about as wide as each other."""
        labels = tuple(
            max(self._width(each) for each in (head, *told))
            for head, *told in zip(self.heads(), *(row.labels for row in self.rows()), strict=True)
        )
        gap = _GAP_EMS * self.style.size_pt
        room = self.column.width_pt - sum(labels) - gap * len(labels)
        needed = self._needed(room)
        fewest = len(_broken(needed, room, gap))
        narrowest = next(
            room * part / _PARTS
            for part in range(1, _PARTS + 1)
            if len(_broken(needed, room * part / _PARTS, gap)) == fewest
            and room * part / _PARTS >= max(needed)
        )
        bands = []
        for first, end in _broken(needed, narrowest, gap):
            own = needed[first:end]
            left = room - sum(own) - gap * (len(own) - 1)
            more = min(_MORE_EMS * self.style.size_pt, left / len(own))
            bands.append(_Band(first, end, (*labels, *(each + more for each in own))))
        return bands

    def _needed(self, room_pt: float) -> list[float]:
        """The width of each question's column."""
        widest = min(_WIDEST_EMS * self.style.size_pt, room_pt)
        rows, bold = self.rows(), self.style.bold()
        return [
            max(
                natural_width_pt(words(number), bold) + 0.1,
                min(widest, max(self._width(row.answers[index][0]) for row in rows)),
            )
            for index, number in enumerate(self.numbers())
        ]

    def numbers(self) -> list[str]:
        """The numbers of the questions, which head the columns."""
        return [str(each.number) for each in self.sheets[0].lesson.problems()]

    def head(self, band: _Band) -> Piece:
        """The heads of the columns over a heavy rule."""
        bold = self.style.bold()
        heads = (*self.heads(), *(words(each) for each in self.numbers()[band.first : band.end]))
        cells = [
            text(head, bold, width, Role.HEADING)
            for head, width in zip(heads, band.widths_pt, strict=True)
        ]
        return self._ruled(cells, RulePiece(self.column.width_pt, _HEAD_RULE_PT))

    def row(self, row: _Row, band: _Band) -> Piece:
        """The labels in bold and the answers over a fine rule."""
        bold, count = self.style.bold(), len(row.labels)
        labels = [
            text(each, bold, width)
            for each, width in zip(row.labels, band.widths_pt[:count], strict=True)
        ]
        answers = [
            text(rich, self.style, width, Role.ANSWER, source)
            for (rich, source), width in zip(
                row.answers[band.first : band.end], band.widths_pt[count:], strict=True
            )
        ]
        rule = RulePiece(self.column.width_pt, _ROW_RULE_PT, _ROW_RULE)
        return self._ruled([*labels, *answers], rule)

    def _ruled(self, cells: Sequence[Piece], rule: Piece) -> Piece:
        gap = _GAP_EMS * self.style.size_pt
        return Stack(
            (Columns(tuple(cells), gap), rule), (fixed(self.row_ems * self.style.size_pt),)
        )

    def _width(self, rich: Rich) -> float:
        """The width on one line, for the bold face if need be."""
        return max(natural_width_pt(rich, each) for each in (self.style, self.style.bold())) + 0.1


def _broken(widths_pt: Sequence[float], room_pt: float, gap_pt: float) -> list[tuple[int, int]]:
    """The columns in groups that fit the room, each group as (first, end)."""
    groups: list[tuple[int, int]] = []
    start, used = 0, 0.0
    for index, own in enumerate(widths_pt):
        if index > start and used + gap_pt + own > room_pt:
            groups.append((start, index))
            start, used = index, 0.0
        used += own + (gap_pt if index > start else 0.0)
    return [*groups, (start, len(widths_pt))]


def one_of_each(sheets: Sequence[PupilsSheet]) -> list[PupilsSheet]:
    """A sheet of every version that somebody gets, easiest first."""
    first = {each.solved.version.value: each for each in reversed(sheets)}
    return [first[version] for version in VERSIONS if version in first]


def _answers(lesson: SolvedLesson) -> tuple[tuple[Rich, str], ...]:
    return tuple((all_answers(each), each.content.id) for each in lesson.problems())


@dataclass(slots=True)
class _Press:
    """Puts pieces on pages from the top to the foot."""

    frame: PageFrame
    pages: list[list[Placed]]
    top_pt: float = 0.0

    def has_room(self, gap_pt: float, *pieces: Piece) -> bool:
        """True where all of them fit on the page that is begun, below a gap."""
        needed = gap_pt + sum(each.height.natural_pt for each in pieces)
        return self.top_pt + needed <= self.frame.height_pt + 0.01

    def is_better_turned(self, gap_pt: float, head: Piece, *rows: Piece) -> bool:
        """True where the rows fit a page of their own, or not even one of them fits on this."""
        needed = gap_pt + sum(each.height.natural_pt for each in (head, *rows))
        return needed <= self.frame.height_pt or not self.has_room(gap_pt, head, rows[0])

    def put(self, piece: Piece, gap_pt: float = 0.0) -> None:
        """The piece below what stands there."""
        height = piece.height.at(NATURAL)
        if height > self.frame.height_pt:
            raise FitError("an answer is higher than a page of the answer grid")
        self.top_pt += gap_pt if self.top_pt else 0.0
        x, y = self.frame.left_pt, self.frame.top_pt + self.top_pt
        self.pages[-1].extend(piece.place(x, y, height))
        self.top_pt += height

    def turn(self) -> None:
        """Begin a page."""
        self.pages.append([])
        self.top_pt = 0.0


def _paged(table: _Table, frame: PageFrame) -> tuple[Page, ...]:
    """Title, bands of rows under their heads, and who has what."""
    size_pt = table.style.size_pt
    gap, wide = table.row_ems * size_pt, 2.0 * size_pt
    press = _Press(frame, [[]])
    press.put(table.title())
    for band in table.bands():
        head, rows = table.head(band), [table.row(each, band) for each in table.rows()]
        white = wide + gap * len(rows)
        if not press.has_room(white, head, *rows) and press.is_better_turned(white, head, *rows):
            press.turn()
        press.put(head, wide)
        for row in rows:
            if not press.has_room(gap, row):
                press.turn()
                press.put(head)
            press.put(row, gap)
    for index, piece in enumerate(table.who()):
        if not press.has_room(wide, piece):
            press.turn()
        press.put(piece, gap if index else wide)
    count = len(press.pages)
    return tuple(_finished(each, frame, index, count) for index, each in enumerate(press.pages))


def _finished(placed: Sequence[Placed], frame: PageFrame, index: int, count: int) -> Page:
    size = (frame.paper_width_pt, frame.paper_height_pt)
    return Page(*size, (*placed, *frame.furniture(index, count)), frame.tint)
