"""Drafts: a numbered file a family, for a mail program to open and send."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterable
from email.message import EmailMessage
from pathlib import Path

from typeset.errors import OutputError
from typeset.posting.message import as_draft

FOLDER = "drafts"


def write_drafts(folder: Path, messages: Iterable[EmailMessage]) -> int:
    """Writes all drafts, or none; gives their count. Those of an earlier run are gone.

    The files are numbered, since a name would tell a passer-by who is in the class, and for
    their owner alone. Raises OutputError.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        # For its owner alone (mode 0700).
        staging = Path(tempfile.mkdtemp(prefix=".drafts-", dir=folder))
    except OSError as error:
        raise OutputError(f"cannot write in {folder}: {error.strerror}") from error
    try:
        count = 0
        for count, message in enumerate(messages, 1):
            _write(staging / f"{count:04}.eml", as_draft(message).as_bytes())
        forget(folder)
        staging.replace(folder / FOLDER)
    except OSError as error:
        raise OutputError(f"cannot write in {folder}: {error.strerror}") from error
    finally:
        shutil.rmtree(staging, ignore_errors=True)
    return count


def _write(file: Path, data: bytes) -> None:
    with os.fdopen(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as stream:
        stream.write(data)


def forget(folder: Path) -> bool:
    """Removes the drafts; False where there were none. Raises OutputError."""
    there = (folder / FOLDER).is_dir()
    if there:
        try:
            shutil.rmtree(folder / FOLDER)
        except OSError as error:
            raise OutputError(f"cannot remove {folder / FOLDER}: {error.strerror}") from error
    return there
