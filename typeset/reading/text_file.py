"""Bytes in, text out: UTF-8, a bounded size, and no character that hides from its reader."""

from __future__ import annotations

import re
import unicodedata
from pathlib import Path

from typeset.errors import Complaint, ContentError, OutputError, Place

# A lesson is about 10 kB; a hundred times that is no lesson.
MOST_BYTES = 1_000_000
_SAVE_AS_UTF8 = "save the file again with the encoding UTF-8"
# Control characters but tab and line ends; the line ends that editors do not show as such
# (U+0085, U+2028, U+2029), the byte-order mark inside a text, and what is no character at all.
_UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]"
)


def read_bytes(file: Path) -> bytes:
    """The bytes of the file.

    Raises OutputError where it cannot be read, ContentError where it is too large.
    """
    try:
        with file.open("rb") as stream:
            data = stream.read(MOST_BYTES + 1)
    except OSError as error:
        raise OutputError(f"{file} cannot be read: {error.strerror}") from error
    if len(data) > MOST_BYTES:
        size = f"the file is larger than {MOST_BYTES:,} bytes"
        raise ContentError([Complaint(Place(file, 1, 1), size, "one file holds one lesson")])
    return data


def decoded(data: bytes, file: Path) -> str:
    """The text of the bytes, without a byte-order mark and with plain line ends.

    Raises ContentError where they are not UTF-8 or hold characters that cannot be seen.
    """
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig", errors="ignore")
        problem = f"the byte {data[error.start]:#04x} is not UTF-8 text"
        raise ContentError(
            [Complaint(place_at(before, len(before), file), problem, _SAVE_AS_UTF8)]
        ) from error
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    unseen = [_unseen(found, text, file) for found in _UNSEEN.finditer(text)]
    if unseen:
        raise ContentError(unseen[:20])
    return text


def place_at(text: str, index: int, file: Path) -> Place:
    """The place of the character at the index."""
    before = text[:index]
    return Place(file, before.count("\n") + 1, index - (before.rfind("\n") + 1) + 1)


def _unseen(found: re.Match[str], text: str, file: Path) -> Complaint:
    character = found.group()
    name = unicodedata.name(character, "a control character").lower()
    problem = f"a character that cannot be seen (U+{ord(character):04X}, {name}) stands here"
    return Complaint(place_at(text, found.start(), file), problem, "delete it")
