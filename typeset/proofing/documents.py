"""The proof of each kind of document: what it must say, and how it lies on paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.paper import Paper
from typeset.proofing.booklet_text import expect_booklet
from typeset.proofing.card_text import expect_cards, expect_key, promised_backs
from typeset.proofing.cells import Cells
from typeset.proofing.expected import said
from typeset.proofing.field_text import expect_fields
from typeset.proofing.file_check import FileFacts
from typeset.proofing.finding import Finding
from typeset.proofing.order import Order, nouns_of
from typeset.proofing.own_text import expect_own_problems, promised_frames, sides_of_frames
from typeset.proofing.papers import Cut, CutWithBacks, Folded, cut_into
from typeset.proofing.promises import promised_rooms
from typeset.proofing.proof import proof
from typeset.proofing.read_back import Unreadable
from typeset.proofing.sheet_text import expect_sheet, mark_of
from typeset.proofing.strip_text import LEAST_STRIP_PT, expect_strips
from typeset.reading.class_list import Pupil
from typeset.reading.content import CORE

# How many cards a paper may hold: across and down.
_CARDS = (Cells(2, 4), Cells(2, 3), Cells(2, 2))


def proof_sheet(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    lesson: SolvedLesson,
    layout: Layout,
    fields: bool = False,
) -> list[Finding]:
    """Everything that is wrong with a lesson's finished task sheet, with or without `fields`;
    see `proof`."""
    order = sheet_order(name, solved, lesson, layout)
    if fields:
        wanted = tuple(expect_fields(lesson, layout))
        order = replace(order, facts=replace(order.facts, fields=wanted))
    return proof(pdf, order if layout.copies > 1 else _read_by_structure(order))


def _read_by_structure(order: Order) -> Order:
    """The same for a file that has to carry its structure: what is read, not cut or folded."""
    return replace(order, facts=replace(order.facts, tagged=True))


def sheet_order(
    name: str,
    solved: SolvedWeek,
    lesson: SolvedLesson,
    layout: Layout,
    pupil: Pupil | None = None,
) -> Order:
    """What a lesson's task sheet is proofed against; with a `pupil`, one that carries the name."""
    week, mark = solved.week, mark_of(solved, layout)
    title = f"{lesson.lesson.title} – task sheet{f' ({mark})' if mark else ''}"
    # A sister of the core's sheet may need other sides.
    as_asked = layout.sides == "as asked" and solved.version.value == CORE
    return Order(
        name,
        expect_sheet(solved, lesson, layout, pupil),
        FileFacts(title, week.title, lesson.lesson.fingerprint),
        layout,
        layout.type_size.smallest,
        sides=lesson.lesson.sides if as_asked else None,
        promises=tuple(promised_rooms(lesson, layout)),
        nouns=nouns_of((lesson,)),
    )


def proof_booklet(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    sisters: Sequence[SolvedWeek] = (),
) -> list[Finding]:
    """Everything that is wrong with the week's finished answer booklet.

    `sisters` are the other versions of the week, easiest first.
    """
    return proof(pdf, booklet_order(name, solved, layout, sisters))


def booklet_order(
    name: str, solved: SolvedWeek, layout: Layout, sisters: Sequence[SolvedWeek] = ()
) -> Order:
    """What the week's answer booklet is proofed against."""
    return _read_by_structure(_booklet_order(name, solved, layout.for_booklet(), None, sisters))


def proof_lesson_booklet(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    lesson: SolvedLesson,
    sisters: Sequence[SolvedWeek] = (),
) -> list[Finding]:
    """Everything that is wrong with the finished answer booklet of one lesson."""
    order = _booklet_order(name, solved, layout.for_booklet(), lesson, sisters)
    return proof(pdf, _read_by_structure(order))


def proof_folded_booklet(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    lesson: SolvedLesson,
    sisters: Sequence[SolvedWeek] = (),
) -> list[Finding]:
    """Everything that is wrong with a lesson's booklet for folding: unfolded, then read."""
    order = _booklet_order(name, solved, layout.for_folding(), lesson, sisters)
    papers = Folded(layout.upright.turned(), layout.backs == "long edge")
    return proof(pdf, replace(order, papers=papers))


def _booklet_order(
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    lesson: SolvedLesson | None,
    sisters: Sequence[SolvedWeek],
) -> Order:
    week, title = solved.week, said(layout, "booklet", "title")
    told = solved if lesson is None else replace(solved, lessons=(lesson,))
    about = week.title if lesson is None else f"{week.title}, {lesson.lesson.day}"
    fingerprint = week.fingerprint if lesson is None else lesson.lesson.fingerprint
    return Order(
        name,
        expect_booklet(told, layout, about, sisters),
        FileFacts(f"{about} – {title.lower()}", week.title, fingerprint),
        layout,
        layout.booklet.size_pt,
        nouns=nouns_of(told.lessons),
    )


def proof_strips(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    sisters: Sequence[SolvedWeek] = (),
) -> list[Finding]:
    """Everything that is wrong with the week's finished marking strips."""
    week, title = solved.week, said(layout, "strip", "title")
    paper, cells = layout.upright, Cells(1, 2)
    order = Order(
        name,
        expect_strips(solved, layout, sisters),
        FileFacts(f"{week.title} – {title.lower()}", week.title, week.fingerprint),
        layout.for_cell(_cell(paper, cells)),
        LEAST_STRIP_PT,
        nouns=nouns_of(solved.lessons),
        papers=Cut(paper, cells),
        has_columns=True,
    )
    return proof(pdf, order)


def proof_cards(
    pdf: Path | bytes, name: str, solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> list[Finding]:
    """Everything that is wrong with a lesson's finished sorting cards."""
    week, title = solved.week, said(layout, "cards", "title")
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    cells, paper = _cells_of_cards(data, name), layout.upright
    card = layout.for_cell(_cell(paper, cells))
    order = Order(
        name,
        expect_cards(lesson, layout, cells.count),
        FileFacts(
            f"{lesson.lesson.title} – {title.lower()}", week.title, lesson.lesson.fingerprint
        ),
        card,
        layout.type_size.smallest,
        promises=tuple(promised_backs(lesson, card)),
        nouns=nouns_of((lesson,)),
        papers=CutWithBacks(paper, cells, layout.backs == "short edge"),
    )
    return proof(data, order)


def _cells_of_cards(data: bytes, name: str) -> Cells:
    """The grid that the papers are cut by; that of eight where none can be seen."""
    try:
        return next(cut_into(data, name, _CARDS), _CARDS[0])
    except Unreadable:
        return _CARDS[0]


def proof_own_problems(
    pdf: Path | bytes, name: str, solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> list[Finding]:
    """Everything that is wrong with a lesson's finished sheet for problems of the pupils' own."""
    week, page = solved.week, layout.for_booklet()
    order = Order(
        name,
        expect_own_problems(solved, lesson, page),
        FileFacts(f"{lesson.lesson.title} – own problems", week.title, lesson.lesson.fingerprint),
        page,
        page.type_size.smallest,
        sides=sides_of_frames(lesson) if page.sides == "as asked" else None,
        promises=tuple(promised_frames(lesson, page)),
        has_columns=True,
    )
    return proof(pdf, order)


def proof_key(pdf: Path | bytes, name: str, solved: SolvedWeek, layout: Layout) -> list[Finding]:
    """Everything that is wrong with the finished key to the week's sorting cards."""
    week, title = solved.week, said(layout, "cards", "key")
    order = Order(
        name,
        expect_key(solved, layout),
        FileFacts(f"{week.title} – {title.lower()}", week.title, week.fingerprint),
        layout.for_booklet(),
        layout.booklet.size_pt,
        nouns=nouns_of(solved.lessons),
    )
    return proof(pdf, _read_by_structure(order))


def _cell(paper: Paper, cells: Cells) -> Paper:
    return Paper(paper.name, paper.width_mm / cells.columns, paper.height_mm / cells.rows)
