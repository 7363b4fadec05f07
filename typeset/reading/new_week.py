"""A new week to begin with: a commented week.yaml and a lesson that shows every stage."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from typeset.errors import OutputError

STARTER_FILES = ("week.yaml", "monday.yaml")


def start_week(folder: Path) -> list[Path]:
    """Write the starter's files into the folder, made where it is missing; gives their paths.

    Raises OutputError where one of the files is there already, or cannot be written.
    """
    paths = [folder / name for name in STARTER_FILES]
    for path in paths:
        if path.exists():
            raise OutputError(f"{path} is there already; name a new folder")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for path in paths:
            with path.open("x", encoding="utf-8", newline="\n") as stream:
                stream.write(starter_text(path.name))
    except OSError as error:
        raise OutputError(f"{folder} cannot be written: {error.strerror}") from error
    return paths


def starter_text(name: str) -> str:
    """The text of a file of the starter."""
    return files("typeset.reading").joinpath("starter", name).read_text(encoding="utf-8")
