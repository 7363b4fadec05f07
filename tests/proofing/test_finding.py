"""Findings as a teacher reads them."""

from __future__ import annotations

import pytest

from typeset.proofing.finding import Finding

LINE = "content/monday.yaml:41"


@pytest.mark.parametrize(
    ("finding", "text"),
    [
        (
            Finding("monday-sheet.pdf", 2, (41.2, 119.6), "question 7 prints '63'", "'36'", LINE,
                    "number"),
            "monday-sheet.pdf, page 2, 41 mm from the left and 120 mm down: question 7 prints '63' "
            "where '36' should be (content/monday.yaml:41)",
        ),
        (
            Finding("monday-sheet.pdf", 0, None, "the document has 3 sides", "2", "", "page"),
            "monday-sheet.pdf: the document has 3 sides where 2 should be",
        ),
        (
            Finding("quay.pdf", 0, None, "is missing", "make it again", "", "file"),
            "quay.pdf: is missing; make it again",
        ),
        (
            Finding("quay.pdf", 1, None, "question 2 is missing", "", LINE, "order"),
            "quay.pdf, page 1: question 2 is missing (content/monday.yaml:41)",
        ),
    ],
)  # fmt: skip
def test_a_finding_is_one_line(finding: Finding, text: str) -> None:
    assert str(finding) == text
