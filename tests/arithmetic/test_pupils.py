"""Different numbers a pupil: drawn by place in the list, the same every time, of one kind."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_for_pupil, solve_week
from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.arithmetic.variation.pupils import Class
from typeset.arithmetic.variation.wishes import Version
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain
from typeset.reading.week import read_week

WEEK_FILE = (
    "week: Ropes\nclass: Terns\nlayout: standard\nseed: {seed}\nlessons: [monday, tuesday]\n"
)
MONDAY = """\
lesson: Floats
day: Monday
sides: 1
aim: I can multiply.
stages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3..9 crates
            each: 12..48 step 6 floats
            such that: [the answer is at most 300]
            story: Leila packs {groups} with {each} each. How many floats is that?
          - structure: sharing
            total: 84 mackerel
            groups: 7 buckets
            story: Kofi shares {total} out into {groups}. How many are in each?
            support: {total: 21 mackerel}
"""
TUESDAY = """\
lesson: Kites
day: Tuesday
sides: 1
aim: I can look back.
stages:
  - recap: {from: monday, count: 1}
  - spot the mistake:
      pupil: Nell
      mistake: difference taken as one part
      problem:
        structure: ratio
        parts: {gulls: 5, terns: 2}
        known: {difference: 36}
        find: gulls
        story: >-
          For every {gulls} gulls there are {terns} terns. There are {difference} more gulls
          than terns. How many gulls are there?
"""


@cache
def week(folder: Path, seed: int = 1) -> dict[Version, SolvedWeek]:
    folder.mkdir(exist_ok=True)
    (folder / "week.yaml").write_text(WEEK_FILE.format(seed=seed), encoding="utf-8")
    (folder / "monday.yaml").write_text(MONDAY, encoding="utf-8")
    (folder / "tuesday.yaml").write_text(TUESDAY, encoding="utf-8")
    read = read_week(folder)
    return {version: solve_week(read, version) for version in Version}


def of_pupil(
    folder: Path, lesson: str, number: int, version: Version = Version.CORE, seed: int = 1
) -> SolvedLesson:
    solved = week(folder, seed)
    given = Class(
        seed,
        read_week(folder).lessons,
        solved[Version.CORE].week.lessons,
        solved[version].week.lessons,
        version,
    )
    titles = {each.lesson.name: each.lesson.title for each in solved[version].lessons}
    return solve_for_pupil(given, titles, lesson, number)


def stories(lesson: SolvedLesson) -> list[str]:
    return [plain(each.story) for each in lesson.problems()]


@pytest.mark.parametrize("lesson", ["monday", "tuesday"])
def test_the_same_place_has_the_same_numbers_and_others_have_others(
    lesson: str, tmp_path: Path
) -> None:
    folder = tmp_path / "week"
    told = [stories(of_pupil(folder, lesson, number)) for number in range(1, 9)]
    assert told[2] == stories(of_pupil(folder, lesson, 3))
    assert len({tuple(each) for each in told}) >= 6
    assert stories(of_pupil(folder, lesson, 3)) != stories(
        of_pupil(tmp_path / "b", lesson, 3, seed=2)
    )


def test_questions_stay_the_same_but_for_their_numbers(tmp_path: Path) -> None:
    folder = tmp_path / "week"
    for version in Version:
        own = week(folder)[version].lessons[1]
        for number in range(1, 5):
            pupil = of_pupil(folder, "tuesday", number, version)
            for one, other in zip(own.problems(), pupil.problems(), strict=True):
                assert one.number == other.number
                assert one.content.id == other.content.id
                assert one.content.story == other.content.story


def test_ranges_and_conditions_of_the_author_hold_for_every_pupil(tmp_path: Path) -> None:
    for number in range(1, 13):
        first = of_pupil(tmp_path / "week", "monday", number).problems()[0]
        givens = first.solution.problem.givens
        assert 3 <= givens["groups"].value <= 9
        assert givens["each"].value in range(12, 49, 6)
        (answer,) = first.solution.answers.values()
        assert isinstance(answer, Amount)
        assert answer.value == givens["groups"].value * givens["each"].value <= 300


def test_fixed_numbers_become_others_of_the_same_size(tmp_path: Path) -> None:
    for number in range(1, 7):
        second = of_pupil(tmp_path / "week", "monday", number).problems()[1]
        total = second.solution.problem.givens["total"].value
        groups = second.solution.problem.givens["groups"].value
        assert not (total == 84 and groups == 7)
        assert total % groups == 0 and 42 <= total <= 168


def test_support_is_easier_for_every_pupil(tmp_path: Path) -> None:
    """What the author typed for the version comes first: 21 mackerel or so, and never 84."""
    for number in range(1, 5):
        second = of_pupil(tmp_path / "week", "monday", number, Version.SUPPORT).problems()[1]
        assert second.solution.problem.givens["total"].value <= 42


def test_the_mistake_can_be_shown_with_every_pupils_numbers(tmp_path: Path) -> None:
    from typeset.arithmetic.lessons import SolvedSpot

    for number in range(1, 7):
        (spot,) = [
            stage
            for stage in of_pupil(tmp_path / "week", "tuesday", number).stages
            if isinstance(stage, SolvedSpot)
        ]
        assert spot.mistake.misconception == "difference taken as one part"
