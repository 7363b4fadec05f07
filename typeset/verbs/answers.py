"""Lists what was typed into filled copies.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
import csv
import io
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, say

if TYPE_CHECKING:
    from typeset.press.filled_in import Entry

_HEAD = ("file", "lesson", "question", "part", "for", "typed")
# A spreadsheet would take such a text for a formula.
_FORMULA = re.compile(r"^(?:[=+@]|-(?![\d.]+$))")


def add_answers(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "answers",
        _answers,
        "list what was typed into a home pack or a sheet made with --fields, by question",
        "typeset answers kofi/tuesday-task-sheet-to-fill-in.pdf --csv",
    )
    parser.add_argument("file", type=Path, nargs="+", metavar="FILLED.pdf", help="filled copies")
    parser.add_argument("--csv", action="store_true", help="as CSV, every room on a row")


def _answers(options: argparse.Namespace) -> int:
    from typeset.press.filled_in import read_filled

    copies = [(file, read_filled(file)) for file in options.file]
    if options.csv:
        say(_table(copies).rstrip("\n"))
        return DONE
    for file, entries in copies:
        for line in _lines(file, entries):
            say(line)
    return DONE


def _table(copies: Sequence[tuple[Path, Sequence[Entry]]]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_HEAD)
    for file, entries in copies:
        for each in entries:
            number = str(each.question or "")
            row = (file.name, each.lesson, number, each.part, each.told, each.typed)
            writer.writerow([f"'{cell}" if _FORMULA.match(cell) else cell for cell in row])
    return out.getvalue()


def _lines(file: Path, entries: Sequence[Entry]) -> Iterator[str]:
    """What was typed, lesson by lesson, and which rooms were left empty."""
    typed = [each for each in entries if each.typed]
    yield f"{file}: {len(typed)} of {len(entries)} rooms filled in"
    wide = max((len(_about(each)) for each in typed), default=0)
    lesson = ""
    for each in typed:
        if each.lesson != lesson:
            lesson = each.lesson
            yield f"  {lesson}"
        yield f"    {_about(each):<{wide}}  {each.typed}"
    empty = [_about(each) for each in entries if not each.typed]
    if empty and typed:
        yield f"  left empty: {'; '.join(empty)}"


def _about(entry: Entry) -> str:
    """'question 4, answer in gulls'."""
    return f"question {entry.question}, {entry.told}" if entry.question else entry.told.lower()
