"""Prints what is drawn for a table of problems, so that another process can be compared."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

import yaml

from typeset.arithmetic.building import solve_week
from typeset.reading.week import read_lesson_alone

EXPECTED = Path(__file__).parent / "expected-draws.yaml"


def drawn(lesson: str) -> dict[str, dict[str, str]]:
    """The numbers drawn for a lesson's problems, by their ids."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "monday.yaml"
        file.write_text(lesson, encoding="utf-8")
        solved = solve_week(read_lesson_alone(file))
    return {each.content.id: dict(each.content.drawn) for each in solved.lessons[0].problems()}


if __name__ == "__main__":
    table = yaml.load(EXPECTED.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    sys.stdout.write(repr(sorted(drawn(table["lesson"]).items())))
