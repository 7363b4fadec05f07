"""A week's folder to content."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from typeset.errors import ContentError, Place
from typeset.reading.content import (
    Extension,
    Practise,
    Recap,
    Sort,
    Space,
    SpotTheMistake,
    Week,
)
from typeset.reading.stages import problems_of
from typeset.reading.tree import bare
from typeset.reading.week import read_lesson_alone, read_week

WEEK = """\
week: The harbour festival
class: Gull class, Years 5 and 6
note: All invented.
nouns: {sea-chandlery: sea-chandleries}
lessons: [monday, tuesday]
"""
MONDAY = """\
lesson: On the quay
day: monday
sides: 1
aim: I can find one part first.
stages:
  - recap:
      from: last week
      problems:
        - {structure: equal groups, groups: 6 crates, each: 12 floats, story: 'Six? {groups}'}
  - practise:
      - set: A
        problems:
          - structure: ratio
            story: >-
              For every {gulls} gulls

              there are {terns}   terns.
            parts: {gulls: 5, terns: 2}
            answer-in: gulls
            id: gulls-and-terns
            space: bar-model
            lines: 3
            model: yes
            hint: Draw both bars.
          - {structure: ratio, story: More}
"""
TUESDAY = """\
lesson: More terns than gulls
day: Tuesday
sides: 2
aim: I can use a ratio.
stages:
  - recap:
      from: [monday, last week]
      problems: [{structure: Ratio, story: A, parts: {a: 1}}]
  - spot-the-mistake:
      pupil: Tomasz
      mistake: difference taken as one part
      problem: {structure: ratio, story: B}
  - sort:
      problems: [{structure: sharing, story: C}]
  - extension:
      title: Spend it all
      story: Spend {purse}.
      quantities: {purse: £24}
      hints: [Begin with chowder.]
      look-for: [Works in order., "Explains: why."]
      space: lines
      lines: 6
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    folder = tmp_path / "harbour"
    folder.mkdir()
    for name, text in (("week", WEEK), ("monday", MONDAY), ("tuesday", TUESDAY)):
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def test_the_week_itself(folder: Path) -> None:
    week = read_week(folder)
    assert (week.name, week.title) == ("harbour", "The harbour festival")
    assert (week.class_name, week.note) == ("Gull class, Years 5 and 6", "All invented.")
    assert week.layout == "standard"
    assert [lesson.name for lesson in week.lessons] == ["monday", "tuesday"]
    assert [lesson.day for lesson in week.lessons] == ["Monday", "Tuesday"]
    assert [lesson.sides for lesson in week.lessons] == [1, 2]
    assert week.folder == folder


def test_a_problem(folder: Path) -> None:
    monday = read_week(folder).lessons[0]
    practise = monday.stages[1]
    assert isinstance(practise, Practise)
    problem, other = practise.sets[0].problems
    file = folder / "monday.yaml"
    assert problem.id == "gulls-and-terns"
    assert problem.structure == "ratio"
    assert problem.story.template == "For every {gulls} gulls\nthere are {terns} terns."
    assert problem.story.place == Place(file, 15, 15)
    assert problem.place == Place(file, 13, 13)
    assert problem.structure_place == Place(file, 13, 24)
    # Keys that are not common to all problems belong to the structure, hyphens made spaces.
    assert bare(problem.fields) == {"parts": {"gulls": "5", "terns": "2"}, "answer in": "gulls"}
    assert problem.nouns == {"sea-chandlery": "sea-chandleries"}
    assert (problem.space, problem.lines, problem.show_model) == (Space.MODEL, 3, True)
    assert problem.hint is not None
    assert problem.hint.template == "Draw both bars."
    assert (other.space, other.lines, other.show_model, other.hint) == (None, None, False, None)


def test_ids_count_the_problems_of_a_lesson(folder: Path) -> None:
    week = read_week(folder)
    ids = [[p.id for stage in lesson.stages for p in problems_of(stage)] for lesson in week.lessons]
    assert ids == [
        ["monday-1", "gulls-and-terns", "monday-3"],
        ["tuesday-1", "tuesday-2", "tuesday-3"],
    ]


def test_stages(folder: Path) -> None:
    recap, spot, sort, extension = read_week(folder).lessons[1].stages
    assert isinstance(recap, Recap)
    assert recap.looks_back_at == ("monday", "last week")
    assert isinstance(spot, SpotTheMistake)
    assert (spot.pupil, spot.mistake) == ("Tomasz", "difference taken as one part")
    assert spot.mistake_place == Place(folder / "tuesday.yaml", 11, 16)
    assert isinstance(sort, Sort)
    assert isinstance(extension, Extension)
    assert extension.id == "tuesday-extension"
    assert extension.story.template == "Spend {purse}."
    assert bare(extension.fields) == {"quantities": {"purse": "£24"}}
    assert [text.template for text in extension.look_for] == ["Works in order.", "Explains: why."]
    assert (extension.space, extension.lines) == (Space.LINES, 6)


def _fingerprint_after(folder: Path, change: Callable[[Path], object]) -> str:
    change(folder)
    return read_week(folder).fingerprint


def test_the_fingerprint_follows_every_byte(folder: Path) -> None:
    first = read_week(folder).fingerprint
    assert read_week(folder).fingerprint == first
    assert len(first) == 64

    def add_space(folder: Path) -> None:
        file = folder / "tuesday.yaml"
        file.write_text(file.read_text(encoding="utf-8") + " ", encoding="utf-8")

    second = _fingerprint_after(folder, add_space)
    assert second != first

    def change_a_number(folder: Path) -> None:
        file = folder / "tuesday.yaml"
        text = file.read_text(encoding="utf-8").replace("£24", "£25")
        file.write_text(text, encoding="utf-8")

    third = _fingerprint_after(folder, change_a_number)
    assert third not in {first, second}

    def rename(folder: Path) -> None:
        (folder / "monday.yaml").rename(folder / "mo.yaml")
        for file in folder.glob("*.yaml"):
            text = file.read_text(encoding="utf-8").replace("[monday", "[mo")
            file.write_text(text, encoding="utf-8")

    assert _fingerprint_after(folder, rename) not in {first, second, third}


class TestOneLessonAlone:
    def test_with_its_week(self, folder: Path) -> None:
        week = read_lesson_alone(folder / "tuesday.yaml")
        assert week.title == "The harbour festival"
        assert [lesson.name for lesson in week.lessons] == ["tuesday"]
        # The titles of other lessons, which belong to the fingerprint, are not known here.
        alone, in_week = week.lessons[0], read_week(folder).lessons[1]
        assert replace(alone, fingerprint="") == replace(in_week, fingerprint="")

    def test_without_a_week(self, folder: Path) -> None:
        (folder / "week.yaml").unlink()
        week = read_lesson_alone(folder / "tuesday.yaml")
        assert (week.title, week.layout) == ("", "standard")
        assert len(week.lessons[0].stages) == 4

    def test_faults_of_other_lessons_do_not_matter(self, folder: Path) -> None:
        (folder / "monday.yaml").write_text("{", encoding="utf-8")
        assert read_lesson_alone(folder / "tuesday.yaml").lessons[0].name == "tuesday"

    def test_order_in_the_week_matters(self, folder: Path) -> None:
        text = WEEK.replace("[monday, tuesday]", "[tuesday, monday]")
        (folder / "week.yaml").write_text(text, encoding="utf-8")
        with pytest.raises(ContentError, match="'monday' is no earlier lesson"):
            read_lesson_alone(folder / "tuesday.yaml")


def test_no_folder_and_no_week(tmp_path: Path) -> None:
    with pytest.raises(ContentError, match="there is no such folder"):
        read_week(tmp_path / "none")
    with pytest.raises(ContentError, match=r"holds no week\.yaml"):
        read_week(tmp_path)
    file = tmp_path / "week.yaml"
    file.write_text(WEEK, encoding="utf-8")
    with pytest.raises(ContentError, match="not the folder of a week"):
        read_week(file)


@pytest.mark.parametrize("sides", [1, 8])
def test_the_fewest_and_the_most_sides(folder: Path, sides: int) -> None:
    text = TUESDAY.replace("sides: 2", f"sides: {sides}")
    (folder / "tuesday.yaml").write_text(text, encoding="utf-8")
    assert read_week(folder).lessons[1].sides == sides


def test_content_cannot_be_changed(folder: Path) -> None:
    week: Week = read_week(folder)
    with pytest.raises(AttributeError):
        week.title = "Other"  # type: ignore[misc] # It must fail.


def test_a_lesson_file_that_is_a_folder_is_missing(folder: Path) -> None:
    (folder / "tuesday.yaml").unlink()
    (folder / "tuesday.yaml").mkdir()
    with pytest.raises(ContentError, match=r"holds no file 'tuesday\.yaml'"):
        read_week(folder)
