"""Every kind of fault, planted at random places, is found; see `fault_table.py` for longer runs."""

from __future__ import annotations

import os
import random

import pytest

from tests.proofing.faults import FOLDER, Kind, kinds
from tests.proofing.making import BOOKLET, made_week
from tests.proofing.originals import names, original
from tests.proofing.planting import rebuild, redraw

# At five places each; PROOF_SEEDS=20 in the environment asks for twenty.
PLACES = int(os.environ.get("PROOF_SEEDS", "5"))
SHEET = "tuesday"


@pytest.mark.parametrize("kind", kinds(), ids=lambda kind: kind.name)
def test_the_fault_is_found(kind: Kind) -> None:
    for seed in range(PLACES):
        document = kind.quick_document(seed)
        findings = kind.findings(document, seed)
        told = "\n".join(map(str, findings)) or "nothing was found"
        assert kind.is_found(findings), f"{document}, place {seed}: {told}"


def test_every_kind_of_document_has_faults_of_its_own() -> None:
    planted = {document for kind in kinds() for document in kind.documents}
    assert planted == {*names(), FOLDER}
    # The fault register asks for sixty kinds at the least (our own bound).
    assert len(kinds()) >= 60


@pytest.mark.parametrize("name", names())
def test_a_good_document_is_good_and_stays_so_when_it_is_written_anew(name: str) -> None:
    good = original(name)
    assert [str(each) for each in good.proof(good.pdf)] == []
    assert [str(each) for each in good.proof(redraw(good.pdf, lambda pages: None))] == []
    assert [str(each) for each in good.proof(rebuild(good.pdf, lambda writer: None))] == []


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"quay",
        b"%PDF-1.7\n%%EOF\n",
        b"%PDF-1.7\ntrailer <</Root 1 0 R>>\n%%EOF",
        b"\x00" * 999,
    ],
    ids=["empty", "text", "bare", "no root", "zeros"],
)
def test_what_is_no_pdf_is_a_finding(data: bytes) -> None:
    (finding,) = made_week().proof(SHEET, data)
    assert finding.kind == "file"
    assert "cannot be read as a PDF" in finding.what


@pytest.mark.parametrize("share", [0.05, 0.3, 0.6, 0.9, 0.99])
def test_a_file_cut_short_is_found(share: float) -> None:
    made = made_week()
    pdf = made.pdfs[SHEET]
    assert made.proof(SHEET, pdf[: int(len(pdf) * share)])


def test_damaged_bytes_never_end_in_a_traceback() -> None:
    made, rng = made_week(), random.Random(7)
    pdf = made.pdfs[SHEET]
    for _ in range(25):
        spoilt = bytearray(pdf)
        for _ in range(rng.randrange(1, 40)):
            spoilt[rng.randrange(len(spoilt))] = rng.randrange(256)
        for finding in made.proof(SHEET, bytes(spoilt)):
            assert str(finding).startswith("tuesday.pdf")


def test_another_document_is_not_taken_for_this_one() -> None:
    made = made_week()
    for name, other in (("tuesday", "wednesday"), ("tuesday", BOOKLET), (BOOKLET, "tuesday")):
        findings = made.proof(name, made.pdfs[other])
        assert any("title" in str(finding) for finding in findings)
        assert len(findings) < 250
