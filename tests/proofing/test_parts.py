"""A booklet proofed in parts: good ones have no finding; what the proof of the whole finds is
found around the parts or in one of them; and a part that is told as clean by its signature is
the one that was clean.

One fault in eight is proofed in the ordinary run, all of them with PROOF_SEEDS in the environment.
"""

from __future__ import annotations

import os
import pickle
import shutil
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from tests.proofing import faults
from tests.proofing.faults import kind_named, kinds
from tests.proofing.making import WEEK, made_week
from tests.proofing.originals import STALLS, WEEKLY, Original
from tests.proofing.planting import rebuild, redraw, runs_of
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_booklet import bind_booklet, set_booklet_part
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.versions import Versions
from typeset.proofing import Finding, proof_booklet
from typeset.proofing.opened import opened
from typeset.proofing.order import Order
from typeset.proofing.parts import booklet_parts, page_signature, proof_frame, proof_part
from typeset.proofing.read_back import read_document
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

NAME = "booklet.pdf"
SEEDS = int(os.environ.get("PROOF_SEEDS", "0"))
FAULTS = [kind.name for kind in kinds() if WEEKLY in kind.documents]
PROOFED = FAULTS if SEEDS else FAULTS[::8]


@dataclass(frozen=True, slots=True)
class Booklet:
    """A good booklet, the pages of its parts, and what these are proofed against."""

    pdf: bytes
    spans: tuple[tuple[int, int], ...]
    frame: Order
    parts: tuple[Order, ...]

    @property
    def count(self) -> int:
        return sum(count for _, count in self.spans)

    def around(self, pdf: bytes) -> list[Finding]:
        return proof_frame(pdf, self.frame)

    def within(self, pdf: bytes) -> list[Finding]:
        spans = zip(self.parts, self.spans, strict=True)
        return [each for order, span in spans for each in proof_part(pdf, order, *span, self.count)]

    def signatures(self, pdf: bytes) -> list[str]:
        return [page_signature(pdf, *span) for span in self.spans]


def booklet_of(versions: Versions, layout: Layout) -> Booklet:
    parts = [
        set_booklet_part(versions, layout, lesson, index)
        for index, lesson in enumerate(versions.core.lessons)
    ]
    spans, first = [], 0
    for part in parts:
        spans.append((first, len(part.pages)))
        first += len(part.pages)
    pdf = write_pdf(bind_booklet(versions, layout, parts)[0])
    return Booklet(pdf, tuple(spans), *booklet_parts(NAME, versions.core, layout, versions.others))


@cache
def good() -> Booklet:
    """Of two lessons."""
    return booklet_of(Versions(made_week().solved), made_week().layout)


def _stalls() -> Versions:
    week = read_week(STALLS)
    others = tuple(solve_week(week, each) for each in Version if each is not Version.CORE)
    return Versions(solve_week(week), others)


@pytest.mark.parametrize("layout", ["large-print-18", "paper-saving"])
def test_a_good_booklet_has_no_finding(layout: str) -> None:
    made = booklet_of(_stalls(), find_layout(layout, Path("nowhere")))
    assert made.around(made.pdf) == []
    assert made.within(made.pdf) == []


def test_a_good_booklet_of_several_lessons_has_no_finding() -> None:
    assert len(good().spans) > 1
    assert good().around(good().pdf) == []
    assert good().within(good().pdf) == []


@pytest.fixture
def _of_two_lessons(monkeypatch: pytest.MonkeyPatch) -> None:
    """Faults of the booklet are planted in that of two lessons."""
    made = Original(WEEKLY, good().pdf, lambda pdf: [])
    monkeypatch.setattr(faults, "original", lambda name: made)


@pytest.mark.usefixtures("_of_two_lessons")
@pytest.mark.parametrize("seed", range(1, 1 + max(1, SEEDS)))
@pytest.mark.parametrize("name", PROOFED)
def test_what_the_whole_finds_the_parts_find(name: str, seed: int) -> None:
    spoilt = kind_named(name).spoilt(WEEKLY, seed)
    found = [*good().around(spoilt), *good().within(spoilt)]
    assert kind_named(name).is_found(found), "\n".join(map(str, found)) or "nothing was found"


@pytest.mark.usefixtures("_of_two_lessons")
@pytest.mark.parametrize("name", FAULTS)
def test_no_fault_passes_for_a_part_that_was_clean(name: str) -> None:
    """It changes the signature of a part, or is found around the parts, which is never kept."""
    spoilt = kind_named(name).spoilt(WEEKLY, 1)
    told = good().signatures(spoilt)
    assert told not in (_told(), _redrawn()) or good().around(spoilt)


def test_a_changed_page_changes_the_signature_of_its_part_alone() -> None:
    for index in range(good().count):

        def spoil(pages: list[list[str]], index: int = index) -> None:
            run = runs_of(pages[index])[3]
            pages[index][run.index] = run.line(x=run.x + 0.01)

        told = good().signatures(redraw(good().pdf, spoil))
        differ = [one != other for one, other in zip(told, _redrawn(), strict=True)]
        assert differ == [first <= index < first + count for first, count in good().spans]


@cache
def _told() -> list[str]:
    return good().signatures(good().pdf)


@cache
def _redrawn() -> list[str]:
    """Of the same pages, as the tools that plant faults write them."""
    return good().signatures(redraw(good().pdf, lambda pages: None))


def test_the_numbers_of_objects_are_no_part_of_a_signature() -> None:
    """pypdf numbers all objects anew and packs them otherwise."""
    other = rebuild(good().pdf, lambda writer: None)
    assert opened(other).structure.numbers != opened(good().pdf).structure.numbers
    assert good().signatures(other) == _told()


def test_another_lesson_changed_leaves_a_signature_as_it_is(tmp_path: Path) -> None:
    shutil.copytree(WEEK, tmp_path / "week")
    file = tmp_path / "week" / "tuesday.yaml"
    text = file.read_text(encoding="utf-8")
    assert "{difference: 36}" in text
    file.write_text(text.replace("{difference: 36}", "{difference: 39}"), encoding="utf-8")
    changed = booklet_of(Versions(_solved(tmp_path / "week")), made_week().layout)
    assert changed.spans == good().spans
    assert changed.signatures(changed.pdf)[0] != _told()[0]
    assert changed.signatures(changed.pdf)[1:] == _told()[1:]


def _solved(folder: Path) -> SolvedWeek:
    return solve_week(read_week(folder))


def test_what_is_told_on_pages_is_found_without_a_search() -> None:
    file = opened(good().pdf)
    for span in (*(range(first, first + count) for first, count in good().spans), range(1, 3)):
        assert repr(file.told_on(span)) == repr(file.structure.on(span))
    assert file.told_on(range(good().count, good().count + 2)).elements == []


def test_wrong_spans_are_findings() -> None:
    made, count = good(), good().count
    (first, long), (second, _) = made.spans[:2]
    for order, span in (
        # A page too few, a page too many, a page further on, another part's pages.
        (made.parts[0], (first, long - 1, count)),
        (made.parts[0], (first, long + 1, count)),
        (made.parts[0], (first + 1, long, count)),
        (made.parts[1], (first, long, count)),
        # No pages, pages beyond the last, and another number of them.
        (made.parts[1], (second, 0, count)),
        (made.parts[1], (second, count, count)),
        (made.parts[1], (*made.spans[1], count + 1)),
    ):
        assert proof_part(made.pdf, order, *span), span


def test_findings_are_told_by_the_pages_of_the_file() -> None:
    last = good().count - 1

    def spoil(pages: list[list[str]]) -> None:
        run = runs_of(pages[last])[2]
        pages[last][run.index] = run.line(x=-20.0)

    pdf = redraw(good().pdf, spoil)
    whole = proof_booklet(pdf, NAME, made_week().solved, made_week().layout)
    assert {each.page for each in good().within(pdf)} == {each.page for each in whole} == {last + 1}


def test_a_file_that_cannot_be_read_is_a_finding_everywhere() -> None:
    for data in (b"", b"%PDF-1.7\n%%EOF\n", good().pdf[:9000]):
        assert good().around(data)
        assert len(good().within(data)) == len(good().parts)
        assert len(set(good().signatures(data)) | set(_told())) > len(good().parts)


def test_all_that_goes_to_another_process_can_go() -> None:
    made = good()
    assert pickle.loads(pickle.dumps((made.frame, made.parts))) == (made.frame, made.parts)
    found = proof_part(made.pdf, made.parts[0], *made.spans[1], made.count)
    assert pickle.loads(pickle.dumps(found)) == found


def test_some_of_the_pages_are_read_as_they_are_in_the_whole() -> None:
    whole = read_document(good().pdf, NAME)
    for span in (range(2), range(1, 4), range(good().count - 1, good().count)):
        assert read_document(good().pdf, NAME, span).pages == whole.pages[span.start : span.stop]
