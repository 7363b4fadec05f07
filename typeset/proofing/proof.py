"""Reads a finished document back and proves that it says what the arithmetic says."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.paper import Paper
from typeset.proofing.account import Account, take_account
from typeset.proofing.bars import check_bars
from typeset.proofing.booklet_text import expect_booklet
from typeset.proofing.cells import Cells, cells_of, check_cuts, check_papers, numbered
from typeset.proofing.checks import Proof, owners_of
from typeset.proofing.edges import check_edges
from typeset.proofing.expected import Expected, said
from typeset.proofing.file_check import FileFacts, check_file
from typeset.proofing.finding import Finding
from typeset.proofing.flow import check_flow
from typeset.proofing.folding import check_fold, check_turns, lying_straight, unfolded
from typeset.proofing.foot import body_words, check_feet
from typeset.proofing.overlaps import check_overlaps
from typeset.proofing.page_marks import ReadDocument
from typeset.proofing.paper_check import check_paper
from typeset.proofing.print_quality import check_print
from typeset.proofing.promises import Promise, promised_rooms
from typeset.proofing.read_back import Unreadable, read_document
from typeset.proofing.rooms import check_rooms
from typeset.proofing.sheet_text import expect_sheet
from typeset.proofing.side_by_side import check_copies, first_copy
from typeset.proofing.strip_text import LEAST_STRIP_PT, expect_strips
from typeset.proofing.telling import tell_account
from typeset.proofing.values import check_values


@dataclass(frozen=True, slots=True)
class _Folding:
    """The paper that a booklet for folding is printed on, as it lies."""

    paper: Paper
    backs_turned: bool


@dataclass(frozen=True, slots=True)
class _Cut:
    """The paper that small pages share, as it lies, and how they stand on it."""

    paper: Paper
    cells: Cells


@dataclass(frozen=True, slots=True)
class _Order:
    """What a document is proofed against. `sides` is None where any number will do."""

    name: str
    expected: Expected
    facts: FileFacts
    layout: Layout
    least_pt: float
    sides: int | None
    promises: tuple[Promise, ...]
    nouns: Mapping[str, str]
    folding: _Folding | None = None
    cells: _Cut | None = None
    has_columns: bool = False


def proof_sheet(
    pdf: Path | bytes, name: str, solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> list[Finding]:
    """Everything that is wrong with a lesson's finished task sheet; empty where nothing is.

    A file that is no readable PDF is a finding too. Raises OSError where a path cannot be read.
    """
    week = solved.week
    facts = FileFacts(f"{lesson.lesson.title} – task sheet", week.title, week.fingerprint)
    order = _Order(
        name,
        expect_sheet(solved, lesson, layout),
        facts,
        layout,
        layout.type_size.smallest,
        lesson.lesson.sides if layout.sides == "as asked" else None,
        tuple(promised_rooms(lesson, layout)),
        _nouns((lesson,)),
    )
    return _proof(pdf, order)


def proof_booklet(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    lesson: SolvedLesson | None = None,
) -> list[Finding]:
    """Everything that is wrong with the finished answer booklet of the week, or of a lesson."""
    return _proof(pdf, _booklet_order(name, solved, layout.for_booklet(), lesson))


def proof_folded_booklet(
    pdf: Path | bytes, name: str, solved: SolvedWeek, layout: Layout, lesson: SolvedLesson
) -> list[Finding]:
    """Everything that is wrong with a lesson's booklet for folding: unfolded, then read."""
    order = _booklet_order(name, solved, layout.for_folding(), lesson)
    turned = layout.backs == "long edge"
    return _proof(pdf, replace(order, folding=_Folding(layout.upright.turned(), turned)))


def proof_strips(pdf: Path | bytes, name: str, solved: SolvedWeek, layout: Layout) -> list[Finding]:
    """Everything that is wrong with the week's finished marking strips; see `proof_sheet`."""
    week, title = solved.week, said(layout, "strip", "title")
    paper = layout.upright
    order = _Order(
        name,
        expect_strips(solved, layout),
        FileFacts(f"{week.title} – {title.lower()}", week.title, week.fingerprint),
        layout.for_cell(Paper(paper.name, paper.width_mm, paper.height_mm / 2)),
        LEAST_STRIP_PT,
        None,
        (),
        _nouns(solved.lessons),
        cells=_Cut(paper, Cells(1, 2)),
        has_columns=True,
    )
    return _proof(pdf, order)


def _booklet_order(
    name: str, solved: SolvedWeek, layout: Layout, lesson: SolvedLesson | None
) -> _Order:
    week, title = solved.week, said(layout, "booklet", "title")
    told = solved if lesson is None else replace(solved, lessons=(lesson,))
    about = week.title if lesson is None else f"{week.title}, {lesson.lesson.day}"
    facts = FileFacts(f"{about} – {title.lower()}", week.title, week.fingerprint)
    return _Order(
        name,
        expect_booklet(told, layout, about),
        facts,
        layout,
        layout.booklet.size_pt,
        None,
        (),
        _nouns(told.lessons),
    )


def _proof(pdf: Path | bytes, order: _Order) -> list[Finding]:
    """Look at the file, read its pages back, set them against what is expected, look at them."""
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    try:
        findings = list(check_file(data, order.name, order.facts))
        document, about_papers = _pages(data, order)
        findings.extend(about_papers)
        words = body_words(
            document, order.layout, order.least_pt, order.expected.foot_left is not None
        )
        account = take_account(order.expected.passages, words)
        findings += [*_say(account, document, order), *_look(account, document, order)]
    except Unreadable as error:
        what = f"the file cannot be read as a PDF ({error})"
        return [Finding(order.name, 0, None, what, "make it again", "", "file")]
    return sorted(_once(findings), key=lambda each: (each.page, each.place or (0.0, 0.0)))


def _pages(data: bytes, order: _Order) -> tuple[ReadDocument, list[Finding]]:
    """The pages in the order of reading, and findings about the papers they are on."""
    if order.cells is not None:
        papers = read_document(data, order.name)
        return _cut_apart(papers, order.cells)
    if order.folding is None:
        papers = read_document(data, order.name)
        return first_copy(papers, order.layout), list(check_copies(papers, order.layout))
    turns = check_turns(data, order.name, order.folding.backs_turned)
    papers = read_document(lying_straight(data), order.name)
    findings = [*turns, *check_fold(papers, order.folding.paper)]
    return unfolded(papers), findings


def _cut_apart(papers: ReadDocument, cut: _Cut) -> tuple[ReadDocument, list[Finding]]:
    """The cells of all papers, white ones at the end left out."""
    findings = list(check_papers(papers, cut.paper))
    for paper in papers.pages:
        findings.extend(check_cuts(paper, cut.cells, papers.name))
    pages = [cell for paper in papers.pages for cell in cells_of(paper, cut.cells)]
    while pages and not pages[-1].glyphs and not pages[-1].strokes:
        pages.pop()
    return numbered(papers.name, pages), findings


def _say(account: Account, document: ReadDocument, order: _Order) -> Iterator[Finding]:
    """What the pages say."""
    yield from tell_account(account, order.name, order.expected.secrets)
    yield from check_feet(document, order.expected, order.layout, order.least_pt)
    yield from check_values(account, order.name, order.nouns)


def _look(account: Account, document: ReadDocument, order: _Order) -> Iterator[Finding]:
    """How the pages look."""
    owners = owners_of(account)
    columns = order.has_columns
    proof = Proof(document, account, order.layout, order.least_pt, owners, columns)
    yield from check_paper(proof, order.sides)
    yield from check_edges(proof)
    yield from check_overlaps(proof)
    yield from check_print(proof)
    yield from check_flow(proof)
    yield from check_rooms(proof, order.promises)
    yield from check_bars(proof)


def _once(findings: Iterable[Finding]) -> list[Finding]:
    """Each finding once, in its first place."""
    return list(dict.fromkeys(findings))


def _nouns(lessons: Iterable[SolvedLesson]) -> dict[str, str]:
    """The authors' own singulars and plurals."""
    return {
        singular: plural
        for lesson in lessons
        for problem in lesson.problems()
        for singular, plural in problem.content.nouns.items()
    }
