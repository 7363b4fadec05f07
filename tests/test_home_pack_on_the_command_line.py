"""`make --answers`: which files come, and that they are proofed later as what they are."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from typeset.command import DONE, WRONG, main

WEEK = Path(__file__).parent / "proofing" / "pack_week"
FILES = {
    "end": {"home-pack.pdf"},
    "separate": {"home-pack-sheets.pdf", "home-pack-answers.pdf"},
    "none": {"home-pack-without-answers.pdf"},
}


def make(to: Path, *more: str) -> int:
    return main(["make", str(WEEK), "--only", "home-pack", "--to", str(to), *more])


def packs(folder: Path) -> set[str]:
    return {file.name for file in folder.glob("home-pack*.pdf")}


@pytest.mark.parametrize("answers", FILES)
def test_the_files_and_their_proof(answers: str, tmp_path: Path) -> None:
    assert make(tmp_path, "--answers", answers) == DONE
    assert packs(tmp_path) == FILES[answers]
    assert main(["proof", str(tmp_path)]) == DONE


def test_answers_are_at_the_end_unless_asked_otherwise(tmp_path: Path) -> None:
    assert make(tmp_path) == DONE
    assert packs(tmp_path) == FILES["end"]


def test_a_pack_with_answers_under_the_name_of_one_without_is_found(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert make(tmp_path) == DONE
    assert make(tmp_path, "--answers", "none") == DONE
    shutil.copy(tmp_path / "home-pack.pdf", tmp_path / "home-pack-without-answers.pdf")
    assert main(["proof", str(tmp_path)]) == WRONG
    assert "home-pack-without-answers.pdf" in capsys.readouterr().err


def test_misuse(tmp_path: Path) -> None:
    with pytest.raises(SystemExit) as ended:
        make(tmp_path, "--answers", "maybe")
    assert ended.value.code == 2
