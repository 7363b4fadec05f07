"""A character that the typeface lacks is told with the file, the line and the word."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.proofing.making import WEEK
from typeset.arithmetic.building import solve_week
from typeset.documents.characters import check_characters
from typeset.documents.layout_files import find_layout
from typeset.documents.task_sheet import compose_task_sheet
from typeset.errors import GlyphError
from typeset.reading.week import read_week


def test_every_text_that_cannot_be_drawn_is_told_in_one_run(tmp_path: Path) -> None:
    for file in WEEK.iterdir():
        text = file.read_text(encoding="utf-8")
        if file.stem == "tuesday":
            text = text.replace("gulls on the quay", "gulls on ☃ the quay", 1)
            text = text.replace("Two kinds of kite", "Two 船 of kite", 1)
        (tmp_path / file.name).write_text(text, encoding="utf-8")
    solved = solve_week(read_week(tmp_path))
    lesson = next(each for each in solved.lessons if each.lesson.name == "tuesday")
    with pytest.raises(GlyphError) as caught:
        compose_task_sheet(solved, lesson, find_layout("standard", tmp_path))
    told = str(caught.value).splitlines()
    assert len(told) == 2
    assert any(f"{tmp_path / 'tuesday.yaml'}:" in line and "'☃'" in line for line in told)
    assert all("write it in another way" in line for line in told)


def test_the_week_can_be_drawn() -> None:
    for lesson in solve_week(read_week(WEEK)).lessons:
        check_characters(lesson)
