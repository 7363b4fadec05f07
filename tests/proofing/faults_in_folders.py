"""Faults in a folder of made files: a stranger, a file missing, content changed since."""

from __future__ import annotations

import random
import re
import shutil
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path

from tests.proofing.faults import Theme
from tests.proofing.originals import COSTS, KEY, PACK, WEDNESDAY, original
from typeset.press.checking import proof_made
from typeset.press.making import Order, make_week
from typeset.proofing import Finding
from typeset.reading.content import TASK_SHEET

FOLDERS = Theme("Folders of files")


@cache
def _folder() -> Path:
    """The content of a small week, and its made files beside it."""
    folder = Path(tempfile.mkdtemp(prefix="quay-"))
    shutil.copytree(PACK, folder / "week")
    make_week(Order(folder / "week", folder / "made", only=TASK_SHEET))
    return folder


def _findings(change: Callable[[Path], None]) -> list[Finding]:
    """What is found in a copy of the folder that was changed."""
    with tempfile.TemporaryDirectory() as place:
        copy = shutil.copytree(_folder(), Path(place) / "copy")
        change(copy)
        return proof_made(copy / "made")[1]


def _files(folder: Path) -> list[Path]:
    return sorted((folder / "made").glob("*.pdf"))


@FOLDERS.found(_findings, "is missing")
def a_file_missing_from_the_folder(folder: Path, rng: random.Random) -> None:
    rng.choice(_files(folder)).unlink()


@FOLDERS.found(_findings, "belong")
def a_file_of_another_week_in_the_folder(folder: Path, rng: random.Random) -> None:
    other = rng.choice([COSTS, KEY, WEDNESDAY])
    (folder / "made" / f"thursday-{rng.randrange(9)}.pdf").write_bytes(original(other).pdf)


@FOLDERS.found(_findings, "title is")
def a_file_of_another_week_under_a_name_of_this_one(folder: Path, rng: random.Random) -> None:
    other = rng.choice([COSTS, KEY, WEDNESDAY])
    rng.choice(_files(folder)).write_bytes(original(other).pdf)


@FOLDERS.found(_findings, "title is")
def two_files_under_each_others_names(folder: Path, rng: random.Random) -> None:
    one, other = rng.sample(_files(folder), 2)
    first, second = one.read_bytes(), other.read_bytes()
    one.write_bytes(second)
    other.write_bytes(first)


@FOLDERS.found(_findings, "content has been changed")
def content_changed_since(folder: Path, rng: random.Random) -> None:
    file = folder / "week" / rng.choice(["monday.yaml", "friday.yaml"])
    text = file.read_text(encoding="utf-8")
    match = rng.choice(list(re.finditer(r"(?<=: )\d+(?= (boxes|kites|m|pieces))", text)))
    number = str(int(match[0]) + rng.choice([1, 2, 3]))
    file.write_text(text[: match.start()] + number + text[match.end() :], encoding="utf-8")


@FOLDERS.found(_findings, "cannot be read as a PDF")
def a_file_cut_short(folder: Path, rng: random.Random) -> None:
    file = rng.choice(_files(folder))
    data = file.read_bytes()
    file.write_bytes(data[: int(len(data) * rng.uniform(0.05, 0.6))])
