"""Random lessons either become pages that keep every law, or are refused with clear advice.

The ordinary run tries 120 (under 40 s). More on request, with the counts told at the end:

    TYPESET_LESSONS=5000 python -m pytest tests/documents/test_random_lessons.py \\
        --log-cli-level=INFO

`TYPESET_LESSONS=1000..1999` takes only the seeds of that range, so that a long run can be cut
into pieces.
"""

from __future__ import annotations

import logging
import os
import random
import re
from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from tests.documents.page_boxes import Sheet
from tests.documents.page_laws import broken_laws
from tests.documents.random_lessons import ORDINARY, unused_figure, written
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.figures import Figure
from typeset.arithmetic.lessons import SolvedLesson, SolvedPractise, SolvedSet, SolvedWeek
from typeset.arithmetic.variation.wishes import Version
from typeset.documents.answer_booklet import compose_answer_booklet
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.errors import ContentError, FitError, GlyphError
from typeset.proofing import proof_booklet, proof_sheet
from typeset.reading.week import read_week
from typeset.setting.frames import Document
from typeset.setting.pages import PageLayout
from typeset.setting.pdf import write_pdf

_ORDINARY_RUN = 120
_ASKED = os.environ.get("TYPESET_LESSONS", str(_ORDINARY_RUN))
_FIRST, _, _LAST = _ASKED.rpartition("..")
SEEDS = range(int(_FIRST), int(_LAST) + 1) if _FIRST else range(int(_LAST))
# One lesson in so many is made anew from its files, and is written as PDF and proofed.
_AGAIN, _PROOFED = 8, 12
# So many lessons bring out every kind of figure.
_LONG_RUN = 1000
# More lessons than this refused in our own layouts would be a fault of the setting.
_MOST_REFUSED = 0.15
# What every refusal says, by its cause; one that says nothing of the kind is a fault.
_NEEDS = re.compile(r"this needs (\d+) sides? and not \d+, .*would help most: \(1\) ask for \d+")
_TOO_FEW = re.compile(
    r"cannot be filled: there (?:is|are) only (\d+) parts?.*; ask for fewer sides"
)
_MISSING = re.compile(r"\.yaml:\d+:\d+: the \w+ font has no '.*'; write it in another way")
_REFUSALS = {
    "more sides needed": _NEEDS,
    "too little for the sides": _TOO_FEW,
    "a part higher than a page": re.compile(r"must stand on one page, .* mm high: .*; shorten"),
    "a word too wide": re.compile(r"may not be broken, but .*; shorten it, or choose a layout"),
    "an answer line too wide": re.compile(r"the answer line '.*' needs .*; shorten the unit, or"),
    "a tick box too wide": re.compile(r"tick box"),
    "an equation too wide": re.compile(
        r"the equation '.*' has a side too wide .*; give it a wider"
    ),
    "a figure too wide": re.compile(r"the model of question \d+: .*would help"),
}
_LOG = logging.getLogger(__name__)
TALLY: Counter[str] = Counter()


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_lesson_keeps_every_law_or_is_refused_clearly(seed: int, tmp_path: Path) -> None:
    try:
        solved, layout = _solved(tmp_path, seed)
    except ContentError as error:
        assert error.complaints and all(each.remedy or each.problem for each in error.complaints)
        TALLY["refused content"] += 1
        pytest.skip(str(error))
    try:
        made, lesson = _made(solved, layout)
    except GlyphError as error:
        assert _MISSING.search(str(error)), str(error)
        TALLY["characters that the typeface lacks"] += 1
        return
    except FitError as error:
        _tell_refusal(layout, error)
        return
    _tell_pages(layout, made[1], lesson)
    _check(solved, lesson, layout, made)
    if seed % _AGAIN == 0:
        again, same_layout = _solved(tmp_path, seed, is_written=True)
        assert _made(again, same_layout)[0] == made
    if seed % _PROOFED == 0:
        TALLY["PDFs proofed"] += 1
        findings = proof_sheet(write_pdf(made[0]), "s.pdf", solved, lesson, layout)
        assert [str(finding) for finding in findings] == []
    if seed % _PROOFED == 1:
        _check_booklet(solved, layout)


def test_few_lessons_are_refused_in_our_own_layouts() -> None:
    """Runs after the lessons; what was counted is logged."""
    for what in sorted(TALLY):
        _LOG.info("%6d  %s", TALLY[what], what)
    sheets, refused = TALLY["ordinary: sheets"], TALLY["ordinary: refused"]
    assert refused <= _MOST_REFUSED * (sheets + refused) + 1
    if len(SEEDS) >= _LONG_RUN:
        drawn = {what.removeprefix("figures: ") for what in TALLY if what.startswith("figures: ")}
        assert drawn == {kind.__name__ for kind in get_args(Figure)}


def _solved(folder: Path, seed: int, is_written: bool = False) -> tuple[SolvedWeek, Layout]:
    """The lesson of this seed, read and solved, and its layout."""
    version_file = folder / "version"
    if not is_written:
        version_file.write_text(written(folder, seed), encoding="utf-8")
    week = read_week(folder)
    solved = solve_week(week, Version(version_file.read_text(encoding="utf-8")))
    lessons = tuple(_with_other_figures(lesson, seed) for lesson in solved.lessons)
    return replace(solved, lessons=lessons), find_layout(week.layout, folder)


def _with_other_figures(lesson: SolvedLesson, seed: int) -> SolvedLesson:
    """Some models of practised problems exchanged for figures that no family has as yet."""
    rng = random.Random(-seed)
    stages = [
        replace(stage, sets=tuple(_other_figures(each, rng) for each in stage.sets))
        if isinstance(stage, SolvedPractise)
        else stage
        for stage in lesson.stages
    ]
    return replace(lesson, stages=tuple(stages))


def _other_figures(each: SolvedSet, rng: random.Random) -> SolvedSet:
    problems = []
    for problem in each.problems:
        figure = unused_figure(rng) if rng.random() < 0.2 else problem.solution.figure
        problems.append(replace(problem, solution=replace(problem.solution, figure=figure)))
    return replace(each, problems=tuple(problems))


def _made(solved: SolvedWeek, layout: Layout) -> tuple[tuple[Document, PageLayout], SolvedLesson]:
    """The sheet on the sides asked for; else, if that is what the error advises, on others.

    The advice must be true: what it says will fit fits.
    """
    (lesson,) = solved.lessons
    try:
        return compose_task_sheet(solved, lesson, layout), lesson
    except FitError as error:
        advised = _advised(error, lesson)
        if advised is None:
            raise
    TALLY["sides changed as advised"] += 1
    try:
        return compose_task_sheet(solved, advised, layout), advised
    except FitError as error:
        raise AssertionError("what was advised does not help") from error


def _advised(error: FitError, lesson: SolvedLesson) -> SolvedLesson | None:
    found = _NEEDS.search(str(error)) or _TOO_FEW.search(str(error))
    if found is None:
        return None
    return replace(lesson, lesson=replace(lesson.lesson, sides=int(found[1])))


def _check(
    solved: SolvedWeek,
    lesson: SolvedLesson,
    layout: Layout,
    made: tuple[Document, PageLayout],
) -> None:
    document, pages = made
    as_asked = layout.sides == "as asked" and solved.version is Version.CORE
    sides = lesson.lesson.sides if as_asked else None
    assert broken_laws(Sheet(pages, layout, lesson, sides)) == []
    assert len(document.pages) == len(pages.pages)


def _cause(error: FitError) -> str:
    causes = [cause for cause, told in _REFUSALS.items() if told.search(str(error))]
    assert causes, f"no advice: {error}"
    return causes[0]


def _check_booklet(solved: SolvedWeek, layout: Layout) -> None:
    """The answers to the lesson, with every model complete, keep to their pages, too."""
    try:
        document, _ = compose_answer_booklet(Versions(solved), layout)
    except FitError as error:
        TALLY[f"booklets refused: {str(error)[:150]}"] += 1
        return
    TALLY["booklets proofed"] += 1
    findings = proof_booklet(write_pdf(document), "b.pdf", solved, layout)
    assert [str(finding) for finding in findings] == []


def _group(layout: Layout) -> str:
    return "ordinary" if layout.name in ORDINARY else layout.name


def _tell_pages(layout: Layout, pages: PageLayout, lesson: SolvedLesson) -> None:
    group = _group(layout)
    for problem in lesson.problems():
        if problem.content.show_model and problem.solution.figure is not None:
            TALLY[f"figures: {type(problem.solution.figure).__name__}"] += 1
    TALLY[f"{group}: sheets"] += 1
    TALLY[f"{group}: pages"] += len(pages.pages)
    TALLY[f"{group}: sheets with a side that is not full"] += bool(pages.notes)


def _tell_refusal(layout: Layout, error: FitError) -> None:
    group, cause = _group(layout), _cause(error)
    TALLY[f"{group}: refused"] += 1
    TALLY[f"{group}: refused for {cause}"] += 1
    if group == "ordinary":
        _LOG.info("refused: %s", str(error)[:400])
