"""What is kept is found again only where it is still right, and never grows without end."""

from __future__ import annotations

import os
import pickle
from pathlib import Path

import pytest

from typeset.drawing.shapes import Rect, TextRun
from typeset.press.kept import Kept, Proofed, digest_of_file
from typeset.press.shelf import put_down, taken_up
from typeset.setting.frames import Page, Placed, Role
from typeset.setting.pages import PageLayout


def _sides() -> PageLayout:
    shapes = (TextRun(10.0, 20.0, "5 gulls", 12.0), Rect(1.0, 2.0, 3.0, 4.0, fill=(0.9, 0.9, 0.9)))
    placed = Placed(Role.QUESTION, 10.0, 8.0, 60.0, 16.0, shapes, source="monday-1")
    return PageLayout(
        (Page(595.0, 842.0, (placed,)),), 10.0, (0.9,), (1.0,), ("side 1 is 90 % full",)
    )


def test_sides_come_back_as_they_were_put_down() -> None:
    assert taken_up(put_down(_sides())) == _sides()


class _Evil:
    def __reduce__(self) -> tuple[object, tuple[str, ...]]:
        return os.mkdir, ("made-by-a-pickle",)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"no pickle at all",
        put_down(_sides())[:-20],
        pickle.dumps("a text"),
        pickle.dumps(Path("elsewhere")),
        pickle.dumps(_Evil()),
    ],
)
def test_anything_else_is_nothing(
    data: bytes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert taken_up(data) is None
    assert not list(tmp_path.iterdir())


def test_what_is_kept_is_found_by_its_key(tmp_path: Path) -> None:
    kept = Kept(tmp_path / "kept")
    kept.keep_sides("a", b"sides")
    kept.keep_clean("a", "f" * 64)
    assert kept.sides("a") == b"sides"
    assert kept.sides("b") is None
    assert kept.is_clean("a", "f" * 64)
    assert not kept.is_clean("a", "e" * 64)
    # Alike at the beginning, which is all that the name of the file says.
    assert not kept.is_clean("a", "f" * 32 + "e" * 32)
    assert not kept.is_clean("b", "f" * 64)


def test_a_file_counts_only_as_it_was_proofed(tmp_path: Path) -> None:
    kept, file = Kept(tmp_path / "kept"), tmp_path / "monday-task-sheet.pdf"
    file.write_bytes(b"%PDF good")
    proofed = Proofed(digest_of_file(file), 4, 14.0, ("a note",))
    kept.keep_file("a", proofed)
    assert kept.file_as_proofed("a", file) == proofed
    file.write_bytes(b"%PDF goof")
    assert kept.file_as_proofed("a", file) is None
    file.unlink()
    assert kept.file_as_proofed("a", file) is None


def test_a_damaged_record_is_none(tmp_path: Path) -> None:
    kept, file = Kept(tmp_path / "kept"), tmp_path / "sheet.pdf"
    file.write_bytes(b"%PDF")
    kept.keep_file("a", Proofed(digest_of_file(file), 4, 14.0, ()))
    for text in ("{", "[]", '{"digest": 1}', '{"digest": "x", "notes": 5}'):
        (tmp_path / "kept" / "a.file").write_text(text, encoding="utf-8")
        assert kept.file_as_proofed("a", file) is None


def test_where_all_is_to_be_made_anew_nothing_is_found_but_all_is_kept(tmp_path: Path) -> None:
    fresh = Kept(tmp_path, is_read=False)
    fresh.keep_sides("a", b"new")
    assert fresh.sides("a") is None
    assert Kept(tmp_path).sides("a") == b"new"


def test_without_a_folder_nothing_is_kept(tmp_path: Path) -> None:
    kept = Kept(None)
    kept.keep_sides("a", b"sides")
    kept.tidy()
    assert kept.sides("a") is None


def test_a_folder_that_cannot_be_written_is_no_matter(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    kept = Kept(tmp_path / "file" / "kept")
    kept.keep_sides("a", b"sides")
    kept.tidy()
    assert kept.sides("a") is None


def test_what_was_not_used_for_longest_goes_first(tmp_path: Path) -> None:
    kept = Kept(tmp_path, most_bytes=250)
    for at, key in enumerate("abcd"):
        kept.keep_sides(key, b"x" * 100)
        os.utime(tmp_path / f"{key}.sides", (at, at))
    # Used now, and so kept, though it is the oldest.
    assert kept.sides("a") is not None
    kept.tidy()
    assert sorted(file.name for file in tmp_path.iterdir()) == ["a.sides", "d.sides"]
