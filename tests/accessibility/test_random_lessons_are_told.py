"""Random lessons, in every layout and also odd ones, keep PDF/UA-1 whatever is in them; with
fields to type in, too, and these are proofed.

The ordinary run tries a few; `TYPESET_DEEP=1` the 250 that the reference engine was run over
(none broke a rule on 25 November 2026).
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.accessibility import reference_engine
from tests.accessibility.second_checker import failures
from tests.documents.random_lessons import written
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_booklet import compose_answer_booklet
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.errors import FitError, GlyphError
from typeset.proofing import proof_sheet
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pdf import write_pdf

SEEDS = range(250 if os.environ.get("TYPESET_DEEP") else 10)
CHECKED: list[int] = []


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_lesson_is_told(seed: int, tmp_path: Path) -> None:
    version = Version(written(tmp_path, seed))
    week = read_week(tmp_path)
    layout = find_layout(week.layout, tmp_path).model_copy(update={"sides": "as needed"})
    for document in _documents(solve_week(week, version), layout):
        pdf = write_pdf(document)
        assert document.tagged is (layout.copies == 1) or "answers" in document.title
        if document.tagged:
            CHECKED.append(seed)
            assert failures(pdf) == []
            if not reference_engine.missing():
                assert reference_engine.failures(pdf, tmp_path) == []


@pytest.mark.parametrize("seed", SEEDS[::2])
def test_a_random_lesson_can_be_filled_in(seed: int, tmp_path: Path) -> None:
    version = Version(written(tmp_path, seed))
    week = read_week(tmp_path)
    layout = find_layout(week.layout, tmp_path).model_copy(update={"sides": "as needed"})
    solved = solve_week(week, version)
    lesson = solved.lessons[0]
    if layout.copies > 1:
        pytest.skip("copies side by side are cut apart")
    try:
        pdf = write_pdf(compose_task_sheet(solved, lesson, layout, fields=True)[0])
    except (FitError, GlyphError):
        pytest.skip("the lesson is refused")
    assert proof_sheet(pdf, "sheet.pdf", solved, lesson, layout, fields=True) == []
    assert failures(pdf) == []
    if not reference_engine.missing():
        assert reference_engine.failures(pdf, tmp_path) == []


def _documents(solved: SolvedWeek, layout: Layout) -> list[Document]:
    """Sheet and booklet; none where the lesson is refused."""
    try:
        sheet = compose_task_sheet(solved, solved.lessons[0], layout)[0]
        return [sheet, compose_answer_booklet(Versions(solved), layout)[0]]
    except (FitError, GlyphError):
        return []


def test_most_lessons_were_looked_at() -> None:
    """Runs after the lessons."""
    assert len(CHECKED) > len(SEEDS) / 2
