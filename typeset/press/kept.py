"""What earlier builds set and proofed, kept for the next one."""

from __future__ import annotations

import json
import os
import sys
from dataclasses import asdict, dataclass
from hashlib import sha256
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Proofed:
    """A whole file that was proofed without findings; `digest` is that of its bytes."""

    digest: str
    sides: int
    type_size_pt: float
    notes: tuple[str, ...]


def usual_folder() -> Path:
    """Where this user's programs keep what they can do without: by the XDG base directory
    specification, or what stands for it on Windows and macOS."""
    home = Path.home()
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    elif sys.platform == "darwin":
        base = home / "Library" / "Caches"
    else:
        base = Path(os.environ.get("XDG_CACHE_HOME") or home / ".cache")
    return base / "typeset-maths-lessons"


# About a hundred weeks.
MOST_BYTES = 64_000_000


class Kept:
    """What earlier builds set and proofed, so that it need not be done again.

    A folder that can be emptied at any time, holds no names of pupils, and never grows beyond
    `most_bytes`: what has not been used for longest goes first. Without a folder nothing is kept;
    where it is not to be read, nothing is found in it.
    """

    def __init__(
        self, folder: Path | None, is_read: bool = True, most_bytes: int = MOST_BYTES
    ) -> None:
        self._folder = folder
        self._is_read = is_read
        self._most_bytes = most_bytes

    def sides(self, key: str) -> bytes | None:
        """The sides of the part with this key, if they are kept."""
        return self._read(self._file(key, "sides"))

    def keep_sides(self, key: str, data: bytes) -> None:
        """Keeps them."""
        self._write(self._file(key, "sides"), data)

    def is_clean(self, key: str, signature: str) -> bool:
        """True where a part with this key was proofed without findings, on sides that look,
        read and behave as this signature says."""
        return self._read(self._file(key, signature[:32])) == signature.encode("ascii")

    def keep_clean(self, key: str, signature: str) -> None:
        """Keeps that it was."""
        self._write(self._file(key, signature[:32]), signature.encode("ascii"))

    def file_as_proofed(self, key: str, file: Path) -> Proofed | None:
        """What is known of the file made of what this key says, where `file` is that one still,
        byte for byte."""
        told = self._read(self._file(key, "file"))
        if told is None:
            return None
        try:
            entry = json.loads(told)
            known = Proofed(**{**entry, "notes": tuple(entry["notes"])})
            return known if digest_of_file(file) == known.digest else None
        except (OSError, ValueError, TypeError, KeyError):
            # Gone, damaged, or of another program: the file is then made anew.
            return None

    def keep_file(self, key: str, proofed: Proofed) -> None:
        """Keeps what is known of it."""
        self._write(self._file(key, "file"), json.dumps(asdict(proofed)).encode())

    def tidy(self) -> None:
        """Takes away what has not been used for longest, where too much is kept."""
        if self._folder is None or not self._folder.is_dir():
            return
        seen = []
        for file in self._folder.iterdir():
            try:
                stat = file.stat()
            except OSError:
                continue
            seen.append((stat.st_mtime, stat.st_size, file))
        total = 0
        for _used, size, file in sorted(seen, reverse=True):
            total += size
            if total > self._most_bytes:
                file.unlink(missing_ok=True)

    def _file(self, key: str, suffix: str) -> Path | None:
        return None if self._folder is None else self._folder / f"{key}.{suffix}"

    def _read(self, file: Path | None) -> bytes | None:
        """The bytes of the file, which is used now; None where there is nothing to read."""
        if file is None or not self._is_read:
            return None
        try:
            data = file.read_bytes()
            file.touch()
        except OSError:
            return None
        return data

    def _write(self, file: Path | None, data: bytes) -> None:
        """Whole or not at all, also where two builds write at once; where it cannot be written,
        nothing is kept."""
        if file is None:
            return
        try:
            file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            new = file.with_name(f"{file.name}.{os.getpid()}")
            new.write_bytes(data)
            new.replace(file)
        except OSError:
            return


def digest_of_file(file: Path) -> str:
    """A digest of its bytes. Raises OSError."""
    return sha256(file.read_bytes()).hexdigest()
