"""Problems as typed in a lesson file, read by the program's own reader."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from tempfile import mkdtemp
from textwrap import dedent, indent

import pytest

from typeset.reading.content import Practise, ProblemContent
from typeset.reading.week import read_lesson_alone, read_week

LESSON = """\
lesson: On the quay
day: Monday
sides: 2
aim: I can choose numbers.
stages:
  - practise:
      - set: A
        problems:
"""
WEEK = "week: The harbour festival\nclass: Gull class\nlessons: [{names}]\nseed: {seed}\n"

Typed = Callable[[str], ProblemContent]


def as_item(problem: str) -> str:
    """The lines of a problem as an item of a list of problems."""
    lines = indent(dedent(problem).strip("\n"), " " * 12)
    return f"          - {lines.lstrip()}\n"


def lesson_of(*problems: str, before: str = "") -> str:
    """A lesson file that practises these problems; `before` is put before its first stage."""
    top = LESSON.replace("stages:\n", f"stages:\n{before}")
    return top + "".join(as_item(problem) for problem in problems)


@pytest.fixture
def typed(tmp_path: Path) -> Typed:
    """`typed(yaml)`: the content of one problem."""

    def _typed(problem: str) -> ProblemContent:
        file = tmp_path / "monday.yaml"
        file.write_text(lesson_of(problem), encoding="utf-8")
        stage = read_lesson_alone(file).lessons[0].stages[0]
        assert isinstance(stage, Practise)
        return stage.sets[0].problems[0]

    return _typed


@pytest.fixture
def week_of(tmp_path: Path) -> Callable[..., object]:
    """`week_of(seed, monday=text, tuesday=text)`: a week of these lesson files, in this order."""

    def _week(seed: int = 1, **lessons: str) -> object:
        folder = Path(mkdtemp(dir=tmp_path))
        plan = WEEK.format(names=", ".join(lessons), seed=seed)
        (folder / "week.yaml").write_text(plan, encoding="utf-8")
        for name, text in lessons.items():
            (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
        return read_week(folder)

    return _week
