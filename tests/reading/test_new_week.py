"""A started week reads, shows every stage, and solves."""

from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.errors import OutputError
from typeset.reading.content import Extension, Practise, Recap, Sort, SpotTheMistake
from typeset.reading.new_week import start_week
from typeset.reading.week import read_week


def test_a_new_week_shows_every_stage(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "week"
    paths = start_week(folder)
    assert paths == [folder / "week.yaml", folder / "monday.yaml"]
    week = read_week(folder)
    kinds = [type(stage) for lesson in week.lessons for stage in lesson.stages]
    assert kinds == [Recap, SpotTheMistake, Sort, Practise, Extension]


def test_a_new_week_solves(tmp_path: Path) -> None:
    start_week(tmp_path)
    solved = solve_week(read_week(tmp_path))
    assert len(solved.lessons) == 1


@pytest.mark.parametrize("name", ["week.yaml", "monday.yaml"])
def test_nothing_is_overwritten(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_text("mine", encoding="utf-8")
    with pytest.raises(OutputError, match="is there already"):
        start_week(tmp_path)
    assert [file.name for file in tmp_path.iterdir()] == [name]
    assert (tmp_path / name).read_text(encoding="utf-8") == "mine"


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(OutputError, match="cannot be written"):
        start_week(tmp_path / "file" / "week")
