"""Versions of a week: the same questions, other numbers, and their answers beside each other."""

from __future__ import annotations

from functools import cache
from io import BytesIO
from pathlib import Path

import pdfplumber
import pytest

from tests.proofing.making import WEEK
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_booklet import compose_answer_booklet
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.marking_strips import compose_marking_strips
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.proofing import proof_booklet, proof_sheet, proof_strips
from typeset.quantities.inline import plain
from typeset.reading.content import Space
from typeset.reading.week import read_lesson_alone, read_week
from typeset.setting.pdf import write_pdf

OTHERS = (Version.SUPPORT, Version.STRETCH)


@cache
def layout() -> Layout:
    return find_layout("standard", Path("nowhere"))


@cache
def solved(version: Version) -> SolvedWeek:
    return solve_week(read_week(WEEK), version)


@cache
def versions() -> Versions:
    return Versions(solved(Version.CORE), tuple(solved(version) for version in OTHERS))


@cache
def sheet(version: Version, lesson: str) -> bytes:
    week = solved(version)
    own = next(each for each in week.lessons if each.lesson.name == lesson)
    return write_pdf(compose_task_sheet(week, own, layout())[0])


def about_sheet(pdf: bytes, version: Version, lesson: str) -> list[str]:
    week = solved(version)
    own = next(each for each in week.lessons if each.lesson.name == lesson)
    return [str(each) for each in proof_sheet(pdf, "s.pdf", week, own, layout())]


def text_of(pdf: bytes) -> str:
    with pdfplumber.open(BytesIO(pdf)) as read:
        return "\n".join(page.extract_text(use_text_flow=True) for page in read.pages)


@pytest.mark.parametrize("lesson", ["tuesday", "wednesday"])
@pytest.mark.parametrize("version", Version, ids=lambda version: version.value)
def test_every_version_s_sheet_has_no_finding(version: Version, lesson: str) -> None:
    assert about_sheet(sheet(version, lesson), version, lesson) == []


@pytest.mark.parametrize("version", OTHERS, ids=lambda version: version.value)
def test_a_version_keeps_questions_numbers_and_contexts(version: Version) -> None:
    for core, own in zip(solved(Version.CORE).lessons, solved(version).lessons, strict=True):
        assert [p.number for p in core.problems()] == [p.number for p in own.problems()]
        assert [p.content.id for p in core.problems()] == [p.content.id for p in own.problems()]
        assert [p.content.story.template for p in core.problems()] == [
            p.content.story.template for p in own.problems()
        ]


def test_support_asks_for_less_and_stretch_for_more() -> None:
    total = {
        version: sum(p.solution.demand for day in solved(version).lessons for p in day.problems())
        for version in Version
    }
    assert total[Version.SUPPORT] < total[Version.CORE] < total[Version.STRETCH]


def test_support_begins_models() -> None:
    helped = [
        problem.content
        for lesson in solved(Version.SUPPORT).lessons
        for problem in lesson.problems()
        if problem.content.show_model
    ]
    assert helped and all(each.space is Space.MODEL for each in helped)


def test_support_begins_sentences_where_there_is_no_model(demonstration_week: Path) -> None:
    week = solve_week(read_lesson_alone(demonstration_week / "friday.yaml"), Version.SUPPORT)
    (lesson,) = week.lessons
    begun = [p for p in lesson.problems() if p.content.starter is not None]
    pdf = write_pdf(compose_task_sheet(week, lesson, layout())[0])
    assert begun and text_of(pdf).count("First I") == len(begun)
    assert [str(each) for each in proof_sheet(pdf, "s.pdf", week, lesson, layout())] == []


def test_sheets_are_told_apart_by_a_small_name_that_is_no_rank() -> None:
    assert "tern" in text_of(sheet(Version.SUPPORT, "tuesday")).splitlines()[-1]
    assert "puffin" in text_of(sheet(Version.STRETCH, "tuesday")).splitlines()[-1]
    # A week with one version alone has nothing to tell apart.
    assert "gull" not in text_of(sheet(Version.CORE, "tuesday")).splitlines()[-1]


@pytest.mark.parametrize("version", OTHERS, ids=lambda version: version.value)
def test_one_version_is_not_taken_for_another(version: Version) -> None:
    assert about_sheet(sheet(version, "tuesday"), Version.CORE, "tuesday")


def booklet() -> bytes:
    return write_pdf(compose_answer_booklet(versions(), layout())[0])


def about_booklet(pdf: bytes) -> list[str]:
    core, others = versions().core, versions().others
    return [str(each) for each in proof_booklet(pdf, "b.pdf", core, layout(), others)]


def test_the_booklet_tells_every_version_s_answer() -> None:
    pdf = booklet()
    assert about_booklet(pdf) == []
    told = " ".join(text_of(pdf).split())
    for version in OTHERS:
        # The answers of a fresh solve of that version.
        for lesson in solve_week(read_week(WEEK), version).lessons:
            for problem in lesson.problems():
                for value in problem.solution.answers.values():
                    answer = plain(answer_text(value)).replace("\u00a0", " ")
                    # A stacked fraction is read back in lines of its own.
                    assert "/" in answer or answer in told


def test_a_version_s_answer_changed_in_the_booklet_is_found() -> None:
    def plant(pages: list[Lines]) -> None:
        for page in pages:
            run = next((run for run in runs_of(page) if run.text.startswith("tern")), None)
            if run is not None:
                page[run.index] = run.line(text=run.text.replace("tern", "puffin"))
                return
        raise AssertionError("no version's answer")

    assert about_booklet(redraw(booklet(), plant))


def test_a_booklet_without_the_other_versions_is_found_wanting() -> None:
    alone = write_pdf(compose_answer_booklet(Versions(versions().core), layout())[0])
    assert any("lacks 'tern" in each for each in about_booklet(alone))


def test_strips_name_every_version_where_the_answers_differ() -> None:
    pdf = write_pdf(compose_marking_strips(versions(), layout())[0])
    core, others = versions().core, versions().others
    assert proof_strips(pdf, "s.pdf", core, layout(), others) == []
    assert proof_strips(pdf, "s.pdf", core, layout())
    assert "tern " in text_of(pdf) and "; gull " in text_of(pdf)
