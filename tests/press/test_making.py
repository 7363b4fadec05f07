"""A build that fails leaves the last good files as they were."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from typeset.errors import FitError, OutputError
from typeset.press import bench
from typeset.press.making import Order, make_week
from typeset.proofing import Finding
from typeset.reading.new_week import start_week

LITTLE_WEEK = Path(__file__).parents[1] / "proofing" / "week"


@pytest.fixture
def week(tmp_path: Path) -> Path:
    folder = tmp_path / "week"
    start_week(folder)
    return folder


def snapshot(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in sorted(folder.iterdir())}


def test_making_twice_gives_the_same_bytes(week: Path, tmp_path: Path) -> None:
    make_week(Order(week, tmp_path / "one"))
    make_week(Order(week, tmp_path / "two"))
    assert snapshot(tmp_path / "one") == snapshot(tmp_path / "two")


def test_shared_among_processes_it_gives_the_same_bytes(week: Path, tmp_path: Path) -> None:
    """Made by a process of its own, since nothing is forked beside the test run's threads."""
    make_week(Order(week, tmp_path / "one"))
    command = [sys.executable, "-m", "typeset", "make", str(week), "--to", str(tmp_path / "two")]
    root = Path(bench.__file__).parents[2]
    environment = {**os.environ, "PYTHONPATH": str(root)}
    subprocess.run([*command, "--workers", "2"], env=environment, cwd=tmp_path, check=True)
    assert snapshot(tmp_path / "one") == snapshot(tmp_path / "two")


def test_findings_leave_good_files_alone(
    week: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    to = tmp_path / "printed"
    make_week(Order(week, to))
    before = snapshot(to)
    lesson = week / "monday.yaml"
    lesson.write_text(
        lesson.read_text(encoding="utf-8").replace(
            "known: {difference: 36}", "known: {difference: 39}"
        )
    )
    finding = Finding("monday-task-sheet.pdf", 1, None, "prints '7'", "'8'", "", "number")
    monkeypatch.setattr("typeset.proofing.parts.proof_part", lambda *_: [finding])
    results = make_week(Order(week, to))
    assert [each for result in results for each in result.findings] == [finding]
    assert snapshot(to) == before


def test_a_fault_leaves_good_files_alone(
    week: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    to = tmp_path / "printed"
    make_week(Order(week, to))
    before = snapshot(to)

    def broken(_document: object) -> bytes:
        raise FitError("no room")

    monkeypatch.setattr("typeset.setting.pdf.write_pdf", broken)
    with pytest.raises(FitError):
        make_week(Order(week, to))
    assert snapshot(to) == before


def test_a_folder_that_cannot_be_written_is_a_message(week: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(OutputError, match="cannot write in"):
        make_week(Order(week, tmp_path / "file"))


@pytest.mark.parametrize("wait_s", [0.9, 1.4, 2.0])
def test_an_interrupted_build_leaves_good_files_alone(
    week: Path, tmp_path: Path, wait_s: float
) -> None:
    """Ended from outside at any time: either the old files stand, or all the new ones."""
    to = tmp_path / "printed"
    make_week(Order(week, to))
    old = snapshot(to)
    lesson = week / "monday.yaml"
    text = lesson.read_text(encoding="utf-8")
    lesson.write_text(
        text.replace("known: {difference: 36}", "known: {difference: 39}"), encoding="utf-8"
    )
    fresh = tmp_path / "fresh"
    make_week(Order(week, fresh))
    command = [sys.executable, "-m", "typeset", "make", str(week), "--to", str(to)]
    root = Path(bench.__file__).parents[2]
    run = subprocess.Popen(command, env={**os.environ, "PYTHONPATH": str(root)}, cwd=tmp_path)
    time.sleep(wait_s)
    run.send_signal(signal.SIGTERM)
    run.wait(timeout=30)
    now = snapshot(to)
    new = snapshot(fresh)
    assert set(now) == set(old)
    for name in (name for name in now if name.endswith(".pdf")):
        assert now[name] in (old[name], new[name])


def test_one_number_changed_is_changed_everywhere(week: Path, tmp_path: Path) -> None:
    """In the story, the working and the answer: the whole way from content to print."""
    import pdfplumber

    lesson = week / "monday.yaml"
    text = lesson.read_text(encoding="utf-8")
    make_week(Order(week, tmp_path / "before"))
    lesson.write_text(
        text.replace("known: {difference: 36}", "known: {difference: 51}"), encoding="utf-8"
    )
    make_week(Order(week, tmp_path / "after"))

    def words(folder: str, file: str) -> str:
        with pdfplumber.open(tmp_path / folder / file) as pdf:
            return " ".join(page.extract_text(use_text_flow=True) or "" for page in pdf.pages)

    assert "There are 36 more gulls" in " ".join(words("before", "monday-task-sheet.pdf").split())
    assert "There are 51 more gulls" in " ".join(words("after", "monday-task-sheet.pdf").split())
    booklet = words("after", "answer-booklet.pdf")
    assert "51 ÷ 3 = 17" in booklet and "5 × 17 = 85" in booklet and "85 gulls" in booklet
    assert "36 ÷ 3 = 12" not in booklet


def test_a_record_keeps_what_was_made_before(week: Path, tmp_path: Path) -> None:
    from typeset.press.record import read_record

    to = tmp_path / "printed"
    make_week(Order(week, to, only="task sheet"))
    make_week(Order(week, to, only="answer booklet"))
    assert {each.file for each in read_record(to).made} == {
        "monday-task-sheet.pdf",
        "answer-booklet.pdf",
        "how-to-print.pdf",
    }
    shutil.rmtree(to)
    with pytest.raises(OutputError, match="holds no made"):
        read_record(tmp_path)


@pytest.mark.parametrize(
    ("only", "lesson", "told"),
    [
        ("home pack", "tuesday", "leave out --lesson"),
        ("own problems", None, "write 'own problems:' into a lesson"),
        ("marking strips", "tuesday", "leave out --lesson or ask for something else"),
    ],
)
def test_nothing_to_make_is_said_before_a_folder_is_made(
    only: str, lesson: str | None, told: str, tmp_path: Path
) -> None:
    with pytest.raises(OutputError, match=re.escape(told)):
        make_week(Order(LITTLE_WEEK, tmp_path / "to", lesson, only))
    assert not (tmp_path / "to").exists()
