"""One lesson file."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from typeset.errors import Complaint, ContentError, Place
from typeset.reading.content import Lesson
from typeset.reading.keys import opened
from typeset.reading.own_problems import read_own_problems
from typeset.reading.plan import YEARS
from typeset.reading.problems import Desk
from typeset.reading.stages import read_cautions, read_stage
from typeset.reading.text_file import decoded, read_bytes
from typeset.reading.tree import Node
from typeset.reading.yaml_reader import parse_yaml

LESSON_KEYS = ("lesson", "day", "sides", "aim", "stages")
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
# Four sheets of paper, printed on both sides.
MOST_SIDES = 8


@dataclass(frozen=True, slots=True)
class SourceFile:
    """A file as found: its bytes, for the fingerprint, and its tree, None if there is none."""

    file: Path
    data: bytes
    root: Node | None


def open_source(file: Path, complaints: list[Complaint]) -> SourceFile:
    """The file's bytes and tree; what is wrong with its text or YAML is added to complaints.

    Raises OutputError where the file cannot be read at all.
    """
    data = b""
    try:
        data = read_bytes(file)
        parsed = parse_yaml(decoded(data, file), file)
    except ContentError as error:
        complaints += error.complaints
        return SourceFile(file, data, None)
    complaints += parsed.complaints
    return SourceFile(file, data, parsed.root)


def read_lesson(source: SourceFile, desk: Desk) -> Lesson | None:
    """The lesson of the file; what is wrong with it is added to the desk's complaints."""
    if source.root is None:
        return None
    keys = opened(source.root, "a lesson file", desk.complaints, "begin it with 'lesson: …'")
    if keys is None:
        return None
    keys.expect(LESSON_KEYS, ("year", "own problems", "cautions"))
    stages = [read_stage(item, desk) for item in keys.items("stages")]
    own = keys.node.get("own problems")
    return Lesson(
        name=desk.lesson,
        title=keys.text("lesson"),
        day=keys.word("day", DAYS) or "",
        aim=keys.text("aim"),
        sides=keys.whole_number("sides", 1, MOST_SIDES) or 1,
        stages=tuple(stage for stage in stages if stage is not None),
        place=Place(source.file, 1, 1),
        year=keys.whole_number("year", *YEARS),
        own_problems=read_own_problems(own, desk) if own else None,
        cautions=read_cautions(keys),
    )
