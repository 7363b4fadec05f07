"""What is made for reading keeps PDF/UA-1, by two checkers that know nothing of this program;
what is made to be cut or folded claims nothing. Known-bad files show that both still bite."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pypdfium2  # type: ignore[import-untyped]  # has no types
import pytest
from pypdf import PdfReader

from tests.accessibility import reference_engine
from tests.accessibility.second_checker import failures
from tests.proofing.faults import kind_named
from tests.proofing.making import WEEK
from tests.proofing.making import made_week as little_week
from tests.proofing.originals import TUESDAY
from typeset.arithmetic.building import solve_week
from typeset.documents.answer_booklet import compose_answer_booklet
from typeset.documents.layout_files import find_layout
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.press.plan import plan_jobs
from typeset.reading.content import ANSWER_BOOKLET, HOME_PACK, SORTING_KEY, TASK_SHEET
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

# Read from the first page to the last; everything else is cut or folded first.
FOR_READING = (TASK_SHEET, ANSWER_BOOKLET, SORTING_KEY, HOME_PACK)
NAMED = tuple(kind.replace(" ", "-") for kind in FOR_READING)
SAMPLES = Path(__file__).parents[2] / "samples"
WEEKS = SAMPLES.parent / "content"
needs_engine = pytest.mark.skipif(
    bool(reference_engine.missing()), reason=f"no reference engine: {reference_engine.missing()}"
)


def is_tagged(pdf: bytes) -> bool:
    root = PdfReader(BytesIO(pdf)).trailer["/Root"].get_object()
    claims = {"/StructTreeRoot", "/MarkInfo", "/Metadata"} & set(root)  # type: ignore[call-overload]  # pypdf types no deeper
    assert len(claims) in (0, 3), "half a claim is none"
    return bool(claims)


def documents_of(folder: Path) -> Iterator[tuple[str, str, bytes]]:
    """Name, kind and bytes of everything that a week can make, in its own layout."""
    week = read_week(folder)
    versions, layout = Versions(solve_week(week)), find_layout(week.layout, folder)
    for job in plan_jobs(versions, [layout]):
        yield job.file, job.kind, write_pdf(job.compose()[0])


@pytest.fixture(scope="module")
def little_documents() -> list[tuple[str, str, bytes]]:
    return list(documents_of(WEEK))


Documents = list[tuple[str, str, bytes]]


def test_what_is_read_is_tagged_and_what_is_cut_claims_nothing(little_documents: Documents) -> None:
    assert {kind for _, kind, _ in little_documents} > set(FOR_READING)
    for name, kind, pdf in little_documents:
        assert is_tagged(pdf) is (kind in FOR_READING), name


def test_copies_side_by_side_claim_nothing() -> None:
    made = little_week()
    layout = find_layout("paper-saving", WEEK)
    assert layout.copies == 2
    document, _ = compose_task_sheet(made.solved, made.lesson("tuesday"), layout)
    assert not is_tagged(write_pdf(document))


def test_the_same_document_gives_the_same_bytes() -> None:
    made = little_week()
    document, _ = compose_answer_booklet(Versions(made.solved), made.layout)
    assert document.tagged
    assert write_pdf(document) == write_pdf(document) == made.pdfs["booklet"]


def test_tags_change_nothing_that_is_seen() -> None:
    """Drawn by PDFium, a page with its structure is the page without, dot for dot."""
    made = little_week()
    document, _ = compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)
    plain = write_pdf(replace(document, tagged=False))
    assert not is_tagged(plain)
    assert drawn(made.pdfs["tuesday"]) == drawn(plain)


def drawn(pdf: bytes) -> list[bytes]:
    return [bytes(page.render(scale=1.0).buffer) for page in pypdfium2.PdfDocument(pdf)]


def test_the_second_checker_finds_nothing(little_documents: Documents) -> None:
    found = {name: failures(pdf) for name, kind, pdf in little_documents if kind in FOR_READING}
    assert found == {name: [] for name in found}


@needs_engine
def test_the_reference_engine_finds_nothing(little_documents: Documents, tmp_path: Path) -> None:
    read = [(name, pdf) for name, kind, pdf in little_documents if kind in FOR_READING]
    found = {name: reference_engine.failures(pdf, tmp_path) for name, pdf in read}
    assert found == {name: [] for name in found}


def test_both_find_nothing_in_the_samples(tmp_path: Path) -> None:
    """They are what the demonstration week makes (tests/test_samples.py); every other kind of
    document of that week on demand, below."""
    files = [file for file in sorted(SAMPLES.glob("*.pdf")) if any(k in file.name for k in NAMED)]
    assert len(files) > 5
    for file in files:
        pdf = file.read_bytes()
        assert is_tagged(pdf), f"{file.name}: make the samples anew"
        assert failures(pdf) == [], file.name
        if not reference_engine.missing():
            assert reference_engine.failures(pdf, tmp_path) == [], file.name


@pytest.mark.deep
@pytest.mark.skipif(not os.environ.get("TYPESET_DEEP"), reason="long: TYPESET_DEEP=1 asks for it")
@pytest.mark.parametrize("folder", sorted(WEEKS.iterdir()), ids=lambda each: each.name)
def test_both_find_nothing_in_anything_that_a_week_can_make(folder: Path, tmp_path: Path) -> None:
    for name, kind, pdf in documents_of(folder):
        assert is_tagged(pdf) is (kind in FOR_READING), name
        if kind in FOR_READING:
            assert failures(pdf) == [], name
            if not reference_engine.missing():
                assert reference_engine.failures(pdf, tmp_path) == [], name


# For faults of tests/proofing: what the second checker says, and the rule that the reference
# engine names (clause and number in ISO 14289-1; empty where it has no rule for it).
BAD = {
    "no alternative text": ("13-004", "7.3-1"),
    "a level skipped": ("14-003", "7.4.2-1"),
    "an element of no kind": ("02-001", "7.1-5"),
    "something outside the structure": ("painted outside every section", "7.1-3"),
    "a page left out": ("01-005 the page has no key", "7.1-3"),
    "no structure": ("01-005 there is no structure tree", "7.1-11"),
    "not marked": ("06-001", "6.2-1"),
    "suspect marks": ("06-002", ""),
    "a title that is not shown": ("07-001", "7.1-10"),
    "another claim": ("05-001", "5-2"),
    "another title in the second description": ("06-004", ""),
    "tabs in another order": ("28-008", ""),
    "another order": ("09-001", ""),
    "a paragraph left out": ("is not in the tree", ""),
    "a wrong way back": ("the way back from page 1", ""),
    "a section that is not drawn": ("a section that is not drawn", ""),
    "a section under another name": ("is drawn as H1", ""),
    "a layer within the drawing": ("a section within a section", ""),
}


@pytest.mark.parametrize("fault", BAD)
def test_the_second_checker_bites(fault: str) -> None:
    found = failures(kind_named(fault).spoilt(TUESDAY, 0))
    assert any(BAD[fault][0] in each for each in found), found


@needs_engine
@pytest.mark.parametrize("fault", [fault for fault, (_, rule) in BAD.items() if rule])
def test_the_reference_engine_bites(fault: str, tmp_path: Path) -> None:
    found = reference_engine.failures(kind_named(fault).spoilt(TUESDAY, 0), tmp_path)
    assert BAD[fault][1] in [each.rule for each in found]
