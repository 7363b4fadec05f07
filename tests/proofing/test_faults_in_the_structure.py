"""Nothing that a screen reader is told is taken unread."""

from __future__ import annotations

from typing import Any

from pypdf import PdfWriter

from tests.proofing.faults_in_the_structure import elements, say
from tests.proofing.making import BOOKLET, made_week
from tests.proofing.planting import rebuild


def test_every_text_for_ears_of_the_booklet_is_looked_at() -> None:
    """Each of them is spoilt in turn: none is taken unread."""
    made = made_week()
    pdf = made.pdfs[BOOKLET]
    count = len(_texts(pdf))
    assert count > 50
    for index in range(0, count, max(1, count // 12)):

        def spoil(writer: PdfWriter, index: int = index) -> None:
            element, key = _told(writer)[index]
            say(element, key, f"{element[key]} 7")

        findings = made.proof(BOOKLET, rebuild(pdf, spoil))
        assert [each for each in findings if each.kind == "structure"], index


def _texts(pdf: bytes) -> list[str]:
    found: list[str] = []
    rebuild(pdf, lambda writer: found.extend(str(e[k]) for e, k in _told(writer)))
    return found


def _told(writer: PdfWriter) -> list[tuple[Any, str]]:
    every = [each for tag in ("/Figure", "/Formula", "/Span") for each in elements(writer, tag)]
    return [(each, key) for each in every for key in ("/Alt", "/ActualText") if key in each]
