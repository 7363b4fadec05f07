"""Two lessons on one day are told apart, and neither is taken for the other."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from typeset.press.making import Order, make_week

WEEK = Path(__file__).parent / "week"


@pytest.fixture(scope="module")
def week(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Both lessons on Tuesday."""
    folder = Path(shutil.copytree(WEEK, tmp_path_factory.mktemp("two lessons") / "week"))
    lesson = folder / "wednesday.yaml"
    text = lesson.read_text(encoding="utf-8")
    assert "day: Wednesday" in text
    lesson.write_text(text.replace("day: Wednesday", "day: Tuesday"), encoding="utf-8")
    return folder


@pytest.mark.parametrize("kind", ["answer booklet", "marking strips", "home pack"])
def test_no_false_alarm(week: Path, tmp_path: Path, kind: str) -> None:
    results = make_week(Order(week, tmp_path, only=kind))
    assert not [finding for result in results for finding in result.findings]
