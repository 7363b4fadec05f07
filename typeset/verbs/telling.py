"""What every verb says in the same way: results to one stream, complaints to the other."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typeset.errors import ContentError, Remark

# Exit codes: all is done; there are findings, or the content is wrong.
DONE, WRONG = 0, 1


def say(text: str) -> None:
    """A line of the result."""
    sys.stdout.write(f"{text}\n")


def say_error(text: str) -> None:
    """A line beside the result."""
    sys.stderr.write(f"{text}\n")


def say_remarks(remarks: Sequence[Remark]) -> None:
    """Remarks are warnings: they go where complaints go, and change no exit code."""
    for remark in remarks:
        say_error(str(remark))


def failed(*lines: str) -> int:
    """The lines told as complaints; the exit code for them."""
    for line in lines:
        say_error(line)
    return WRONG


def found(count: int) -> str:
    """'1 finding', '3 findings'."""
    return f"{count} {'finding' if count == 1 else 'findings'}"


def complaint_count(error: ContentError) -> str:
    """'1 complaint', '3 complaints'."""
    count = len(error.complaints)
    return f"{count} {'complaint' if count == 1 else 'complaints'}"


def listed(words: Sequence[str]) -> str:
    """'support, core or stretch'."""
    return f"{', '.join(words[:-1])} or {words[-1]}"
