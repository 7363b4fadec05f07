"""The proof of a home pack: every part as strictly as if it stood alone, then what leads where.

The parts are told apart by how they begin (letter, each sheet, the answers), so that what the
contents, bookmarks and page labels say can be held against where the parts really are.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path

from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedPractise,
    SolvedRecap,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
)
from typeset.documents.layout import Layout
from typeset.proofing.cells import numbered
from typeset.proofing.collecting import seldom_collecting
from typeset.proofing.documents import sheet_order
from typeset.proofing.expected import Part, called, said, text_words
from typeset.proofing.field_text import ExpectedField, expect_fields
from typeset.proofing.file_check import FileFacts, check_file
from typeset.proofing.finding import Finding
from typeset.proofing.foot import foot_of
from typeset.proofing.form_read import read_form
from typeset.proofing.home_text import (
    contents_lines,
    expect_front,
    expect_home_answers,
    home_title,
    lesson_line,
)
from typeset.proofing.navigation import Line, Mark, Navigation, Target, check_navigation
from typeset.proofing.opened import opened
from typeset.proofing.order import Order, nouns_of
from typeset.proofing.page_marks import ReadDocument, ReadPage
from typeset.proofing.proof import in_order, proof_pages, unreadable
from typeset.proofing.read_back import Unreadable, read_document
from typeset.proofing.structure_check import faults_of, with_structure
from typeset.reading.content import END

# A pack is sent by e-mail, where many are sent at once.
MOST_BYTES = 1_000_000


def proof_home_pack(
    pdf: Path | bytes,
    name: str,
    solved: SolvedWeek,
    layout: Layout,
    answers: str,
    fields: bool = False,
) -> list[Finding]:
    """Everything that is wrong with the finished pack of a week in one version.

    `answers` says where they are: at the 'end', 'separate' or 'none'. With `fields` its sheets
    must have them.
    """
    pack = _Pack(name, solved, layout.for_home(), answers, fields=fields)
    return _proof(pdf, pack, home_title(solved, pack.layout))


def proof_home_answers(
    pdf: Path | bytes, name: str, solved: SolvedWeek, layout: Layout
) -> list[Finding]:
    """Everything that is wrong with the answers of a pack as a file of their own."""
    pack = _Pack(name, solved, layout.for_home(), END, answers_alone=True)
    answers = said(pack.layout, "home", "answers").lower()
    return _proof(pdf, pack, f"{home_title(solved, pack.layout)} – {answers}")


@seldom_collecting()
def _proof(pdf: Path | bytes, pack: _Pack, title: str) -> list[Finding]:
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    week = pack.solved.week
    facts = FileFacts(
        title,
        week.title,
        week.fingerprint,
        navigates=True,
        texts=pack.texts(),
        tagged=True,
        fields=tuple(field for each in pack.fields_of_sheets() for field in each),
    )
    try:
        findings = list(check_file(data, pack.name, facts))
        document = with_structure(read_document(data, pack.name), data)
        if facts.fields:
            form = read_form(opened(data).reader, links=True)
            document = replace(document, form=form)
        starts = tuple(_starts(document, pack))
        findings += _parts_amiss(document, pack, starts)
        findings += faults_of(document)
        findings += check_navigation(data, document, pack.navigation(document, starts))
    except Unreadable as error:
        return [unreadable(pack.name, error)]
    if len(data) >= MOST_BYTES:
        what = f"the file has {len(data):,} bytes"
        findings.append(Finding(pack.name, 0, None, what, "under a megabyte", "", "file"))
    return in_order(findings)


@dataclass(frozen=True, slots=True)
class _Pack:
    """What the file is proofed against, part by part."""

    name: str
    solved: SolvedWeek
    layout: Layout
    answers: str
    answers_alone: bool = False
    fields: bool = False

    @property
    def has_answers(self) -> bool:
        return self.answers == END

    def names(self) -> tuple[str, ...]:
        """What findings call the parts."""
        sheets = tuple(f"the sheet of {called(each.lesson)}" for each in self.solved.lessons)
        answers = ("the answers",) if self.has_answers else ()
        return answers if self.answers_alone else ("the letter", *sheets, *answers)

    def orders(self, starts: Sequence[int]) -> tuple[Order, ...]:
        """The order of every part; the contents name the pages where the others begin."""
        week, solved, layout = self.solved.week, self.solved, self.layout
        facts = FileFacts("", week.title, week.fingerprint)
        booklet_pt = layout.booklet.size_pt
        answers = Order(
            self.name,
            expect_home_answers(solved, layout),
            facts,
            layout,
            booklet_pt,
            nouns=nouns_of(solved.lessons),
        )
        if self.answers_alone:
            return (answers,)
        pages = [start + 1 for start in starts[1:]]
        front = expect_front(solved, layout, pages, self.answers)
        letter_pt = min(layout.type_size.smallest, booklet_pt + 1.0)
        sheets = [sheet_order(self.name, solved, each, layout) for each in solved.lessons]
        if self.fields:
            sheets = [
                replace(sheet, facts=replace(sheet.facts, fields=own))
                for sheet, own in zip(sheets, self.fields_of_sheets(), strict=True)
            ]
        back = (answers,) if self.has_answers else ()
        return (Order(self.name, front, facts, layout, letter_pt), *sheets, *back)

    def fields_of_sheets(self) -> Iterator[tuple[ExpectedField, ...]]:
        """The fields of every sheet, told apart by their day."""
        for each in self.solved.lessons if self.fields else ():
            yield tuple(expect_fields(each, self.layout, each.lesson.day))

    def texts(self) -> frozenset[str]:
        """What bookmarks and page labels may say."""
        titles = {title for title, _level, _part, _head in self.marks()}
        return frozenset(
            titles | ({"A-"} if self.has_answers and not self.answers_alone else set())
        )

    def marks(self) -> Iterator[tuple[str, int, int, str]]:
        """Of every bookmark: title, level, the part that it leads into, and the heading there.

        Empty is the beginning of the part.
        """
        layout, lessons = self.layout, self.solved.lessons
        if not self.answers_alone:
            yield said(layout, "home", "title", week=self.solved.week.title), 0, 0, ""
            contents = said(layout, "home", "contents")
            yield contents, 0, 0, contents
            for part, lesson in enumerate(lessons, 1):
                yield lesson_line(lesson, layout), 0, part, ""
                for stage in lesson.stages:
                    heading = _heading(stage, layout)
                    yield heading, 1, part, heading
        if self.has_answers:
            part = 0 if self.answers_alone else len(lessons) + 1
            yield said(layout, "home", "answers"), 0, part, ""
            for lesson in lessons:
                names = {"day": lesson.lesson.day, "lesson": lesson.lesson.title}
                heading = said(layout, "booklet", "lesson", **names)
                yield lesson_line(lesson, layout), 1, part, heading

    def navigation(self, document: ReadDocument, starts: Sequence[int]) -> Navigation:
        """What must lead where, by where the parts were found."""
        orders = self.orders(starts)
        seeker = _Seeker(document, starts)
        marks = tuple(
            Mark(
                title, level, seeker.target(part, text_words(head) if head else _head(orders[part]))
            )
            for title, level, part, head in self.marks()
        )
        if self.answers_alone:
            return Navigation(marks)
        pages = [start + 1 for start in starts[1:]]
        told = contents_lines(self.solved, self.layout, pages, self.answers)
        lines = tuple(
            Line(text_words(line), Target(page, _head(orders[part])))
            for part, (line, page) in enumerate(zip(told, pages, strict=False), 1)
        )
        return Navigation(marks, lines, self.labels(document, starts))

    def labels(self, document: ReadDocument, starts: Sequence[int]) -> tuple[str, ...]:
        """i, ii for the letter; 1, 2 … for the sheets; A-1, A-2 … for the answers."""
        count = len(document.pages)
        first = starts[1]
        answers = starts[-1] if self.has_answers else count
        letter = [_roman(number) for number in range(1, first + 1)]
        sheets = [str(number) for number in range(1, answers - first + 1)]
        return (*letter, *sheets, *(f"A-{number}" for number in range(1, count - answers + 1)))


@dataclass(slots=True)
class _Seeker:
    """Finds the page of a heading in a part, going on from the last one found there: headings
    may be alike."""

    document: ReadDocument
    starts: Sequence[int]
    part: int = -1
    page: int = 0
    word: int = 0

    def target(self, part: int, heading: tuple[str, ...]) -> Target:
        if part != self.part:
            self.part, self.page, self.word = part, self.starts[part], 0
        ends = [*self.starts[part + 1 : part + 2], len(self.document.pages)]
        for page in range(self.page, ends[0]):
            texts = [word.text for word in self.document.pages[page].words]
            for at in range(self.word if page == self.page else 0, len(texts)):
                if tuple(texts[at : at + len(heading)]) == heading:
                    self.page, self.word = page, at
                    return Target(page + 1, heading)
        return Target(self.page + 1, heading)


def _head(order: Order) -> tuple[str, ...]:
    """The words with which a part begins, its title the last of them."""
    words: list[str] = []
    for each in order.expected.passages:
        words += each.words
        if each.part is Part.TITLE:
            break
    return tuple(words)


def _starts(document: ReadDocument, pack: _Pack) -> Iterator[int]:
    """The index of the page with which each part begins; that of the next part for one that
    cannot be found, so that nothing is left for it."""
    found = list(_found(document, pack))
    for number in range(len(found)):
        yield next((each for each in found[number:] if each is not None), len(document.pages))


def _found(document: ReadDocument, pack: _Pack) -> Iterator[int | None]:
    """The same, None for a part that cannot be found behind the one before it.

    A part is known by the words with which it begins, or else by its foot line.
    """
    last = -1
    for number, order in enumerate(pack.orders([0] * len(pack.names()))):
        head, foot = _head(order), text_words(order.expected.foot_left or "")
        later = document.pages[last + 1 :] if number else document.pages[:1]
        by_head = (page for page in later if _begins(page, head))
        by_foot = (page for page in later if _has_foot(page, foot, order))
        page = next(by_head, None) or next(by_foot, None)
        last = page.number - 1 if page else last
        yield last if page else None


def _begins(page: ReadPage, head: tuple[str, ...]) -> bool:
    return tuple(word.text for word in page.words[: len(head)]) == head


def _has_foot(page: ReadPage, foot: tuple[str, ...], order: Order) -> bool:
    words = foot_of(page, order.layout, order.least_pt)
    return tuple(word.text for word in words[: len(foot)]) == foot


def _parts_amiss(document: ReadDocument, pack: _Pack, starts: Sequence[int]) -> Iterator[Finding]:
    """What is wrong with each part by itself, told by the pages of the file."""
    orders, count = pack.orders(starts), len(document.pages)
    spans = pairwise([*starts, count])
    for name, order, (start, end) in zip(pack.names(), orders, spans, strict=True):
        pages = document.pages[start:end]
        if not pages:
            yield Finding(pack.name, 0, None, f"{name} is missing", "", "", "order")
            continue
        order = replace(order, pages_before=start, pages_in_all=count)
        part = numbered(pack.name, pages)
        if document.structure is not None:
            part = replace(part, structure=document.structure.within(start, len(pages)))
        if document.form is not None:
            part = replace(part, form=document.form.within(start, len(pages)))
        for each in proof_pages(part, order):
            yield replace(each, page=start + max(each.page, 1))


def _heading(stage: SolvedStage, layout: Layout) -> str:
    match stage:
        case SolvedRecap():
            return said(layout, "headings", "recap")
        case SolvedSpot():
            return said(layout, "headings", "spot")
        case SolvedSort():
            return said(layout, "headings", "sort")
        case SolvedPractise():
            return said(layout, "headings", "practise")
        case SolvedExtension():
            return said(layout, "headings", "extension", title=stage.content.title)


def _roman(number: int) -> str:
    """A small number in small roman figures."""
    told = ""
    for value, letters in ((10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i")):
        while number >= value:
            told, number = told + letters, number - value
    return told
