"""The record beside the made files: what they were made from, for proofing them later."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from typeset.arithmetic.lessons import SolvedWeek
from typeset.errors import OutputError

RECORD = "made.json"


@dataclass(frozen=True, slots=True)
class Made:
    """A made file. `lesson` is empty where the file is for the week."""

    file: str
    kind: str
    lesson: str
    version: str
    layout: str
    sides: int


@dataclass(frozen=True, slots=True)
class Record:
    """What the files of a folder were made from. `week` is the content's folder."""

    week: Path
    fingerprint: str
    made: tuple[Made, ...]


def with_earlier(to: Path, solved: SolvedWeek, made: Sequence[Made]) -> tuple[Made, ...]:
    """These files, and those that stand in `to` and were made earlier from the very same week."""
    told = {each.file: each for each in _earlier(to, solved.week.fingerprint)}
    told |= {each.file: each for each in made}
    return tuple(told[file] for file in sorted(told))


def write_record(folder: Path, to: Path, solved: SolvedWeek, made: Sequence[Made]) -> None:
    """Writes the record of files that will stand in `to`."""
    record = {
        # Relative, so that content and files may move together.
        "week": Path(os.path.relpath(solved.week.folder.resolve(), to.resolve())).as_posix(),
        "fingerprint": solved.week.fingerprint,
        "made": [asdict(each) for each in sorted(made, key=lambda each: each.file)],
    }
    text = json.dumps(record, indent=2, ensure_ascii=False) + "\n"
    (folder / RECORD).write_text(text, encoding="utf-8")


def read_record(folder: Path) -> Record:
    """The record in the folder. Raises OutputError where there is none or it cannot be read."""
    file = folder / RECORD
    try:
        data: dict[str, Any] = json.loads(file.read_text(encoding="utf-8"))
        made = tuple(Made(**each) for each in data["made"])
        # As seen from where the command runs, so that messages name files as a teacher would.
        week = Path(os.path.relpath((folder / data["week"]).resolve()))
        return Record(week, str(data["fingerprint"]), made)
    except FileNotFoundError:
        raise OutputError(
            f"{folder} holds no {RECORD}, so it is not known what its files were made from; "
            "make them again with 'typeset make', or say --week FOLDER"
        ) from None
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise OutputError(f"{file} cannot be read: {error}") from error


def _earlier(to: Path, fingerprint: str) -> tuple[Made, ...]:
    """Files made earlier from the very same content."""
    try:
        record = read_record(to)
    except OutputError:
        return ()
    still_there = tuple(each for each in record.made if (to / each.file).is_file())
    return still_there if record.fingerprint == fingerprint else ()
