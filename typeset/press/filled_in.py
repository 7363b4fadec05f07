"""What was typed into a sheet: the fields of a filled copy, by lesson and question.

The copy comes back from any program on any device, so nothing is expected of it but the
names of our fields; all else may have been rewritten.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ByteStringObject, StreamObject

from typeset.errors import OutputError

_PATH = re.compile(
    r"(?P<lesson>[^.]+)(?:\.q(?P<number>\d+))?\."
    r"(?P<part>name|date|start|working|writing|because|answer(?:-\d+)?"
    r"|multiply|add|both|neither)"
)
_TICKS = ("multiply", "add", "both", "neither")
# Shown in place of a new line, in a table and in a spreadsheet.
_NEW_LINE = " / "


@dataclass(frozen=True, slots=True)
class Entry:
    """A room of a sheet with what was typed there, empty where nothing was.

    `question` is 0 for name and date. `part` is the field's name ('answer', 'working'; 'sorted'
    for the boxes that were ticked), `told` what the field is for.
    """

    lesson: str
    question: int
    part: str
    told: str
    typed: str


def read_filled(file: Path) -> tuple[Entry, ...]:
    """The entries of a filled copy, in the order of its fields.

    Raises OutputError for what is no PDF, has no fields, or none of ours.
    """
    try:
        data = file.read_bytes()
    except OSError as error:
        raise OutputError(f"{file} cannot be read: {error.strerror}") from error
    if b"%PDF-" not in data[:1024]:
        raise OutputError(f"{file} is no PDF")
    try:
        fields = list(_fields(PdfReader(BytesIO(data))))
    except Exception as error:
        # A damaged or foreign file can make the reader fail in any way.
        raise OutputError(f"{file} cannot be read as a PDF ({type(error).__name__})") from error
    if not fields:
        raise OutputError(
            f"{file} has no fields: it was made without --fields, or its fields were lost when it "
            "was printed into a file; ask for the copy that was saved"
        )
    found = tuple(_entries(fields))
    if not found:
        raise OutputError(f"the fields of {file} are none that 'typeset make --fields' makes")
    return found


@dataclass(frozen=True, slots=True)
class _Field:
    path: str
    told: str
    value: str
    ticked: bool


def _fields(pdf: PdfReader) -> Iterator[_Field]:
    """The fields that hold values, with their full names."""
    for path, entry in (pdf.get_fields() or {}).items():
        if entry.get("/FT") in ("/Tx", "/Btn"):
            value = _text(entry.get("/V"))
            told = _text(entry.get("/TU"))
            ticked = entry.get("/FT") == "/Btn" and value not in ("", "/Off")
            yield _Field(path, told, value, ticked)


def _text(value: Any) -> str:
    """A text of a file without what could steer a terminal; it may be kept as a stream."""
    held = value.get_object() if hasattr(value, "get_object") else value
    if held is None:
        return ""
    if isinstance(held, StreamObject):
        held = held.get_data()
    if isinstance(held, (bytes, ByteStringObject)):
        held = bytes(held).decode("latin-1")
    lines = (line.strip() for line in re.split(r"[\r\n]+", str(held)))
    joined = _NEW_LINE.join(line for line in lines if line)
    return "".join(each if each.isprintable() else " " for each in joined).strip()


def _entries(fields: list[_Field]) -> Iterator[Entry]:
    """One for each room; the boxes of a question are one together."""
    told_ticks: set[tuple[str, int]] = set()
    for each in fields:
        match = _PATH.fullmatch(each.path)
        if match is None:
            continue
        lesson, number = match["lesson"], int(match["number"] or 0)
        if match["part"] not in _TICKS:
            yield Entry(lesson, number, match["part"], _told(each), each.value)
        elif (lesson, number) not in told_ticks:
            told_ticks.add((lesson, number))
            yield Entry(lesson, number, "sorted", "sorted", _ticked(fields, lesson, number))


def _ticked(fields: list[_Field], lesson: str, number: int) -> str:
    """The words after the boxes that were ticked."""
    begin = f"{lesson}.q{number}."
    return _NEW_LINE.join(
        _told(each)
        for each in fields
        if each.ticked and each.path.startswith(begin) and each.path != begin
    )


def _told(field: _Field) -> str:
    """What the field is for, without its question: 'answer in gulls'."""
    told = re.sub(r"^(?:[^,]+, )?[Qq]uestion \d+, ", "", field.told)
    return told or field.path.rpartition(".")[2]
