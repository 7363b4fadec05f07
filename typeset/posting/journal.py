"""What became of each message, written down before and after it is handed over.

The journal holds no address: a family is known by a digest under a key that lies beside it,
so that whoever sees the journal alone cannot try addresses out. Every line is on the disk
before the next thing happens; a line that was broken off is none.
"""

from __future__ import annotations

import hashlib
import hmac
import json
import os
import secrets
import shutil
import sys
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from types import TracebackType
from typing import BinaryIO

from typeset.errors import OutputError
from typeset.posting.addresses import Address

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

FOLDER = "journal"
_KEY_FILE, _JOURNAL_FILE = "key", "journal.jsonl"
_KEY_BYTES = 32


class State(Enum):
    """How far a message has come."""

    # Its last line is about to be sent, or was; the server's answer is not known.
    HANDED = "handed over"
    SENT = "sent"
    REFUSED = "refused"
    # Not taken now, or not tried yet; to be tried again.
    LATER = "later"


@dataclass(frozen=True, slots=True)
class Entry:
    """The last that is known of a family's message, with the server's words."""

    state: State
    words: str = ""


class Journal:
    """The journal of a folder, for one run at a time. A context manager.

    Raises OutputError where it cannot be read or written, or where another run has it.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder / FOLDER
        try:
            self._folder.mkdir(parents=True, exist_ok=True, mode=0o700)
            self._file = _opened(self._folder / _JOURNAL_FILE)
        except OSError as error:
            raise OutputError(f"cannot write in {self._folder}: {error.strerror}") from error
        try:
            self._lock()
            self._entries = self._read()
            self._key = self._own_key()
        except OutputError:
            self._file.close()
            raise

    def __enter__(self) -> Journal:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._file.close()

    def digest(self, address: Address) -> str:
        """What the family is called here."""
        return hmac.new(self._key, address.key.encode(), hashlib.sha256).hexdigest()

    def message_id(self, address: Address, sent_by: Address) -> str:
        """The same at every try, so that a server that got a message twice can tell."""
        digest = hmac.new(self._key, b"message " + address.key.encode(), hashlib.sha256)
        return f"<{digest.hexdigest()[:32]}@{sent_by.domain}>"

    def entry(self, digest: str) -> Entry:
        """The last that is known; LATER for a family that is not in the journal."""
        return self._entries.get(digest, Entry(State.LATER))

    def record(self, digest: str, entry: Entry) -> None:
        """Writes it down; it is on the disk when this returns. Raises OutputError."""
        line = {"family": digest, "state": entry.state.value, "words": entry.words}
        try:
            self._file.write(json.dumps(line).encode() + b"\n")
            self._file.flush()
            os.fsync(self._file.fileno())
        except OSError as error:
            raise OutputError(f"cannot write in {self._folder}: {error.strerror}") from error
        self._entries[digest] = entry

    def _lock(self) -> None:
        """Two runs at once would send everything twice."""
        try:
            if sys.platform == "win32":
                self._file.seek(0)
                msvcrt.locking(self._file.fileno(), msvcrt.LK_NBLCK, 1)
            else:
                fcntl.flock(self._file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError as error:
            raise OutputError(f"another run is posting from {self._folder}; let it end") from error

    def _read(self) -> dict[str, Entry]:
        self._file.seek(0)
        data = self._file.read()
        whole = data[: data.rfind(b"\n") + 1]
        self._file.truncate(len(whole))
        self._file.seek(len(whole))
        entries: dict[str, Entry] = {}
        try:
            for text in whole.splitlines():
                line = json.loads(text)
                entries[str(line["family"])] = Entry(State(line["state"]), str(line["words"]))
        except (ValueError, KeyError, TypeError) as error:
            what = f"the journal in {self._folder} cannot be read; --forget removes it"
            raise OutputError(what) from error
        return entries

    def _own_key(self) -> bytes:
        """The key beside the journal; a new one where nothing is written down yet."""
        file = self._folder / _KEY_FILE
        try:
            key = file.read_bytes() if file.is_file() else b""
            if len(key) == _KEY_BYTES:
                return key
            if self._entries:
                what = f"the key in {self._folder} is gone, so nobody can tell who has a message"
                raise OutputError(f"{what}; --forget begins anew")
            return _new_key(file)
        except OSError as error:
            raise OutputError(f"cannot use {file}: {error.strerror}") from error


def forget(folder: Path) -> bool:
    """Removes the journal and its key; False where there was none. Raises OutputError."""
    there = (folder / FOLDER).is_dir()
    if there:
        try:
            shutil.rmtree(folder / FOLDER)
        except OSError as error:
            raise OutputError(f"cannot remove {folder / FOLDER}: {error.strerror}") from error
    return there


def _opened(file: Path) -> BinaryIO:
    """The file to read and write, made for its owner alone where it is new."""
    return os.fdopen(os.open(file, os.O_RDWR | os.O_CREAT, 0o600), "r+b")


def _new_key(file: Path) -> bytes:
    """A key, in its place only when it is whole."""
    key = secrets.token_bytes(_KEY_BYTES)
    new = file.with_suffix(".new")
    with os.fdopen(os.open(new, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as stream:
        stream.write(key)
        stream.flush()
        os.fsync(stream.fileno())
    new.replace(file)
    return key
