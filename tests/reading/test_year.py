"""The year group: of a week, of a lesson of its own, or of neither."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.reading.week import read_lesson_alone, read_week

WEEK = "week: The quay\nclass: Gull class\n{year}lessons: [monday]\n"
MONDAY = """\
lesson: On the quay
day: Monday
sides: 1
{year}aim: I can share.
stages:
  - practise:
      - set: A
        problems:
          - {{structure: equal groups, groups: 6 crates, each: 12 floats, story: '{{groups}}'}}
"""


@pytest.mark.parametrize(
    ("of_week", "of_lesson", "read"),
    [("", "", (None, None)), ("year: 4\n", "", (4, None)), ("year: 4\n", "year: 6\n", (4, 6))],
)
def test_the_year_is_read(
    of_week: str, of_lesson: str, read: tuple[int | None, int | None], tmp_path: Path
) -> None:
    (tmp_path / "week.yaml").write_text(WEEK.format(year=of_week), encoding="utf-8")
    (tmp_path / "monday.yaml").write_text(MONDAY.format(year=of_lesson), encoding="utf-8")
    week = read_week(tmp_path)
    assert (week.year, week.lessons[0].year) == read
    alone = read_lesson_alone(tmp_path / "monday.yaml")
    assert (alone.year, alone.lessons[0].year) == read
