"""Faults planted into the structure of a good file, and files that are no good at all."""

from __future__ import annotations

import random

import pytest

from tests.proofing.faults_in_the_file import FAULTS
from tests.proofing.making import BOOKLET, made_week
from tests.proofing.planting import rebuild

SHEET = "tuesday"


@pytest.mark.parametrize("name", FAULTS)
def test_the_fault_is_found(name: str) -> None:
    plant, told = FAULTS[name]
    findings = made_week().proof(SHEET, plant(made_week().pdfs[SHEET]))
    text = "\n".join(map(str, findings))
    assert told in text, text or "nothing was found"


def test_rebuilding_alone_is_no_fault() -> None:
    made = made_week()
    assert made.proof(SHEET, rebuild(made.pdfs[SHEET], lambda writer: None)) == []


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
