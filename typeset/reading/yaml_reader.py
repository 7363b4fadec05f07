"""YAML text to a tree with places, so that the file means what it looks like.

We take the parser's events and no more: no resolver, so every value stays the text that was
typed (`3:1`, `12:30`, `no`, `010`, `2.50`); no constructor, so no tag can make an object.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    NodeEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from typeset.errors import Complaint, Place
from typeset.reading.tree import Entry, Keyed, Listing, Node, Scalar
from typeset.reading.yaml_faults import IN_QUOTATION_MARKS, complaint_of_fault, no_space_after_colon
from typeset.reading.yaml_parsers import events_of, quick_events_of

# Our deepest content has about 10 levels, our longest lessons about 1,500 values.
MOST_LEVELS = 20
MOST_NODES = 20_000
_NULLS = {"", "~", "null", "Null", "NULL"}
_LOST_WORDS = re.compile(r"\s+(#[^\s#]+)")
_GLUED_COLON = re.compile(r"([^:]+):(\S.*)$")


@dataclass(frozen=True, slots=True)
class Parsed:
    """What a file says, as far as it could be read, and what is wrong with its YAML.

    `root` is None where nothing could be read.
    """

    root: Node | None
    complaints: tuple[Complaint, ...]


def parse_yaml(text: str, file: Path) -> Parsed:
    """The tree of a YAML text; `file` is named in its places."""
    quick = quick_events_of(text)
    if quick is not None:
        parsed = parse_events(text, file, quick)
        # What is wrong is told from one parser alone.
        if not parsed.complaints:
            return parsed
    return parse_events(text, file, events_of(text))


def parse_events(text: str, file: Path, events: Iterable[Event]) -> Parsed:
    """The tree of a YAML text whose events a parser gives. May end early, with a complaint."""
    reader = _Reader(text, file, iter(events))
    try:
        root = reader.document()
    except _StoppedError as stop:
        root = None
        reader.complaints.append(stop.complaint)
    except yaml.YAMLError as fault:
        root = None
        reader.add_fault(complaint_of_fault(fault, text, file))
    return Parsed(root, tuple(reader.complaints))


class _StoppedError(Exception):
    """Reading cannot go on after this complaint."""

    def __init__(self, complaint: Complaint) -> None:
        self.complaint = complaint
        super().__init__(complaint.problem)


@dataclass(slots=True)
class _Reader:
    """One pass over the events of a file. Complaints that let the reading go on collect here."""

    text: str
    file: Path
    events: Iterator[Event]
    complaints: list[Complaint] = field(default_factory=list)
    lines: list[str] = field(init=False)
    node_count: int = 0
    # The names after '*' told of already: one complaint a name is enough.
    repeats: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        # The quick parser sees the end of a file in the line after its last.
        self.lines = [*self.text.split("\n"), ""]

    def document(self) -> Node | None:
        """The one document of the file."""
        root: Node | None = None
        for event in self.events:
            if isinstance(event, DocumentStartEvent):
                if root is not None:
                    self._complain(event, "a second document begins here", "delete this line")
                    return root
                root = self._node(next(self.events), 1)
        if root is None:
            raise _StoppedError(Complaint(Place(self.file, 1, 1), "the file is empty"))
        return root

    def add_fault(self, complaint: Complaint) -> None:
        """Add what stopped the parser, but where it is only the rest of a line told of already."""
        if complaint.place.line not in {each.place.line for each in self.complaints}:
            self.complaints.append(complaint)

    def _node(self, event: Event, level: int) -> Node:
        self._check_bounds(event, level)
        self._refuse_names_and_tags(event)
        match event:
            case ScalarEvent():
                return self._scalar(event)
            case SequenceStartEvent():
                return self._listing(event, level)
            case MappingStartEvent():
                return self._keyed(event, level)
            case _:
                return Scalar(self._typed_at(event), self._place(event))

    def _scalar(self, event: ScalarEvent) -> Scalar:
        is_null = not event.style and event.value in _NULLS
        if not event.style:
            self._notice_lost_words(event)
        return Scalar("" if is_null else event.value, self._place_of_text(event))

    def _listing(self, start: SequenceStartEvent, level: int) -> Listing:
        items: list[Node] = []
        while not isinstance(event := next(self.events), SequenceEndEvent):
            items.append(self._node(event, level + 1))
        return Listing(tuple(items), self._place(start))

    def _keyed(self, start: MappingStartEvent, level: int) -> Keyed:
        entries: dict[str, Entry] = {}
        while not isinstance(event := next(self.events), MappingEndEvent):
            key = self._key(event, level)
            value = self._node(next(self.events), level + 1)
            if key is None:
                continue
            self._notice_glued_colon(key, value)
            if key.text in entries:
                self.complaints.append(_repeated(key, entries[key.text]))
            else:
                entries[key.text] = Entry(key.text, value, key.place)
        return Keyed(tuple(entries.values()), self._place(start))

    def _key(self, event: Event, level: int) -> Scalar | None:
        """The key, as it looks: `no` and `5` are keys like others. None where it is no text."""
        node = self._node(event, level + 1)
        if not isinstance(node, Scalar):
            self._complain(event, "a key must be a text, not a list or keys with values", "")
            return None
        text = event.value if isinstance(event, ScalarEvent) else node.text
        if not text:
            self._complain(event, "no key stands before the colon", "write 'key: value'")
            return None
        if text == "<<":
            self._complain(event, "'<<' has no meaning here", "type the keys again")
            return None
        return Scalar(text, node.place)

    def _check_bounds(self, event: Event, level: int) -> None:
        self.node_count += 1
        if level > MOST_LEVELS:
            problem = f"the content goes deeper than {MOST_LEVELS} levels here"
            raise _StoppedError(Complaint(self._place(event), problem, "bring it to fewer levels"))
        if self.node_count > MOST_NODES:
            problem = f"the file holds more than {MOST_NODES:,} values"
            raise _StoppedError(Complaint(self._place(event), problem, "one file holds one lesson"))

    def _refuse_names_and_tags(self, event: Event) -> None:
        """Complain of `&name`, `*name` and `!tag`: a value is typed where it is needed."""
        tag = getattr(event, "tag", None)
        if isinstance(event, AliasEvent):
            if event.anchor in self.repeats:
                return
            self.repeats.add(event.anchor or "")
            problem = f"'{self._typed_at(event)}' would repeat another part of the file"
            self._complain(event, problem, f"type that part again, or {IN_QUOTATION_MARKS}")
        elif isinstance(event, NodeEvent) and (event.anchor is not None or tag is not None):
            problem = f"'{self._typed_at(event)}' before a value has no meaning here"
            self._complain(event, problem, f"delete it, or {IN_QUOTATION_MARKS}")

    def _notice_lost_words(self, event: ScalarEvent) -> None:
        """Complain of `Buoy #3`: YAML would drop '#3' as a remark without a word."""
        end = event.end_mark
        rest = self.lines[end.line][end.column :] if end else ""
        if lost := _LOST_WORDS.match(rest):
            problem = f"'{lost[1]}' and what follows it would be dropped as a remark"
            remedy = f"{IN_QUOTATION_MARKS}, or a space after '#' if it is a remark"
            self._complain(event, problem, remedy)

    def _notice_glued_colon(self, key: Scalar, value: Node) -> None:
        """Complain of `{gulls:5}`: YAML would take 'gulls:5' for a key without a value."""
        glued = _GLUED_COLON.match(key.text)
        if glued and value == Scalar("", value.place):
            told = no_space_after_colon(glued[1], glued[2])
            self.complaints.append(Complaint(key.place, *told))

    def _complain(self, event: Event, problem: str, remedy: str) -> None:
        self.complaints.append(Complaint(self._place(event), problem, remedy))

    def _typed_at(self, event: Event) -> str:
        """The word that stands where the event begins."""
        line, column = _start(event)
        words = self.lines[line][column:].split()
        return words[0].rstrip(",]}") if words else ""

    def _place(self, event: Event) -> Place:
        line, column = _start(event)
        return Place(self.file, line + 1, column + 1)

    def _place_of_text(self, event: ScalarEvent) -> Place:
        """Where the first character of the text stands: past a quotation mark, `>-` or `|`."""
        line, column = _start(event)
        if event.style in {"'", '"'} and event.value:
            return Place(self.file, line + 1, column + 2)
        if event.style in {">", "|"}:
            for number in range(line + 1, len(self.lines)):
                if text := self.lines[number].lstrip(" "):
                    column = len(self.lines[number]) - len(text)
                    return Place(self.file, number + 1, column + 1)
        return self._place(event)


def _repeated(key: Scalar, first: Entry) -> Complaint:
    line = first.place.line
    problem = f"the key '{key.text}' stands twice; it is first in line {line}"
    return Complaint(key.place, problem, "keep one of them")


def _start(event: Event) -> tuple[int, int]:
    """The line and the column where the event begins, counted from 0."""
    mark = event.start_mark
    assert mark is not None  # Both parsers mark every event.
    return mark.line, mark.column
