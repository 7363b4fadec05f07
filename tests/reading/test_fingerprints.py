"""Which lessons an edit is about: those whose pages could come out differently."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from typeset.reading.week import read_week

WEEK = """
week: The harbour festival
class: Kittiwakes
layout: standard
lessons: [monday, tuesday, wednesday]
"""
LESSON = """
lesson: {title}
day: {day}
sides: 2
aim: I can multiply.
stages:
{recap}  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: {{value: 6, each: net}}
            per group: {{value: {number}, of: float}}
            story: >-
              There are {{groups}} nets, each with {{per group}}. How many floats is that?
"""
RECAP = """  - recap:
      from: {name}
      {how}
"""
TYPED = """problems:
        - structure: equal groups
          groups: {value: 5, each: net}
          per group: {value: 7, of: float}
          story: There are {groups} nets, each with {per group}. How many floats is that?
"""


def _week(folder: Path, tuesday: str, wednesday: str) -> Path:
    files = {
        "week": WEEK,
        "monday": LESSON.format(title="Nets", day="Monday", recap="", number=8),
        "tuesday": LESSON.format(title="Ropes", day="Tuesday", recap=tuesday, number=9),
        "wednesday": LESSON.format(title="Kites", day="Wednesday", recap=wednesday, number=4),
    }
    for name, text in files.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def _edited(folder: Path, name: str, edit: Callable[[str], str]) -> set[str]:
    """The lessons whose fingerprints follow an edit to this file."""
    before = {each.name: each.fingerprint for each in read_week(folder).lessons}
    file = folder / f"{name}.yaml"
    text = file.read_text(encoding="utf-8")
    changed = edit(text)
    assert changed != text
    file.write_text(changed, encoding="utf-8")
    after = {each.name: each.fingerprint for each in read_week(folder).lessons}
    return {each for each in after if after[each] != before[each]}


def _renumbered(text: str) -> str:
    return text.replace("value: 8", "value: 3").replace("value: 9", "value: 3")


def _renamed(text: str) -> str:
    return text.replace("lesson: Nets", "lesson: Baskets")


@pytest.fixture
def look_back(tmp_path: Path) -> Path:
    """Tuesday looks back at Monday with numbers typed, Wednesday with numbers drawn."""
    typed = RECAP.format(name="monday", how=TYPED)
    drawn = RECAP.format(name="tuesday", how="count: 1")
    return _week(tmp_path, typed, drawn)


def test_an_edit_is_about_its_own_lesson(tmp_path: Path) -> None:
    assert _edited(_week(tmp_path, "", ""), "monday", _renumbered) == {"monday"}


def test_what_belongs_to_the_week_is_about_all(tmp_path: Path) -> None:
    folder = _week(tmp_path, "", "")
    edited = _edited(folder, "week", lambda text: text.replace("Kittiwakes", "Terns"))
    assert edited == {"monday", "tuesday", "wednesday"}


def test_drawn_numbers_follow_every_lesson_before(look_back: Path) -> None:
    assert _edited(look_back, "monday", _renumbered) == {"monday", "wednesday"}
    assert _edited(look_back, "tuesday", _renumbered) == {"tuesday", "wednesday"}


def test_a_title_that_is_looked_back_at(look_back: Path) -> None:
    assert _edited(look_back, "monday", _renamed) == {"monday", "tuesday", "wednesday"}


def test_the_same_files_elsewhere(
    look_back: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    other = shutil.copytree(look_back, tmp_path_factory.mktemp("other") / "week")
    before = [each.fingerprint for each in read_week(look_back).lessons]
    assert [each.fingerprint for each in read_week(other).lessons] == before
