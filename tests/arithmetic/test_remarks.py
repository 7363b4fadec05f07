"""Remarks on a week: by year group, and on sets that do not grow harder; never an error."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.remarks import remarks_on
from typeset.reading.week import read_lesson_alone

LESSON = """\
lesson: On the quay
day: Monday
sides: 1
{year}aim: I can multiply.
stages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: {first}
            each: 7 floats
            story: '{{groups}} {{each}}?'
      - set: B
        problems:
          - structure: equal groups
            groups: {second}
            each: 7 floats
            story: '{{groups}} {{each}}?'
"""


def remarks(tmp_path: Path, year: str, first: str, second: str) -> list[str]:
    file = tmp_path / "monday.yaml"
    typed = LESSON.format(year=year, first=f"{first} crates", second=f"{second} crates")
    file.write_text(typed, encoding="utf-8")
    found = remarks_on(solve_week(read_lesson_alone(file)))
    return [str(each).removeprefix(f"{tmp_path}/") for each in found]


def test_no_year_no_remark(tmp_path: Path) -> None:
    assert remarks(tmp_path, "", "6", "16") == []


def test_beyond_the_year_with_file_and_line_and_what_the_curriculum_says(tmp_path: Path) -> None:
    assert remarks(tmp_path, "year: 3\n", "6", "17") == [
        "monday.yaml:10:13: remark: question 1, for Year 3: 6 × 7 needs a table of Year 4 "
        "(national curriculum, 2013)",
        "monday.yaml:16:13: remark: question 2, for Year 3: 7 × 7 needs a table of Year 4 "
        "(national curriculum, 2013)",
    ]


def test_what_questions_share_is_said_once(tmp_path: Path) -> None:
    (only,) = remarks(tmp_path, "year: 3\n", "6", "6")
    assert "questions 1 and 2, for Year 3" in only


@pytest.mark.parametrize(("first", "second", "said"), [("17", "6", True), ("6", "17", False)])
def test_a_set_easier_than_the_one_before(
    first: str, second: str, said: bool, tmp_path: Path
) -> None:
    found = remarks(tmp_path, "", first, second)
    told = "monday.yaml:13:9: remark: set B is easier than set A, which comes before it"
    assert found == ([told] if said else [])
