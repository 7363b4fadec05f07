"""What a file says before anyone asks what it means: texts, lists and mappings with places."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias

from typeset.errors import Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """A text exactly as typed: never turned into a number, truth value or date."""

    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class Listing:
    """A list."""

    items: tuple[Node, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Entry:
    """One `key: value` of a mapping."""

    key: str
    value: Node
    place: Place


@dataclass(frozen=True, slots=True)
class Keyed:
    """A mapping in the order typed; no key stands twice."""

    entries: tuple[Entry, ...]
    place: Place

    def get(self, key: str) -> Node | None:
        """The value of the key, or None."""
        return next((entry.value for entry in self.entries if entry.key == key), None)

    def only(self, keys: Sequence[str]) -> Keyed:
        """The entries with these keys alone."""
        return Keyed(tuple(each for each in self.entries if each.key in keys), self.place)

    def without(self, keys: Sequence[str]) -> Keyed:
        """The entries with other keys."""
        return Keyed(tuple(each for each in self.entries if each.key not in keys), self.place)

    def __iter__(self) -> Iterator[Entry]:
        return iter(self.entries)


Node: TypeAlias = Scalar | Listing | Keyed


def bare(node: Node) -> Any:
    """The node as plain strings, lists and dicts, for a model to validate."""
    match node:
        case Scalar(text=text):
            return text
        case Listing(items=items):
            return [bare(item) for item in items]
        case Keyed(entries=entries):
            return {entry.key: bare(entry.value) for entry in entries}


def place_of(node: Node, path: Sequence[str | int], at_key: bool = False) -> Place:
    """Where the value at `path` stands; the nearest place above it where the path ends early.

    `at_key` gives the place of the last key instead of its value.
    """
    place = node.place
    for depth, part in enumerate(path):
        entry = _child(node, part)
        if entry is None:
            return place
        is_last = depth == len(path) - 1
        node = entry.value
        place = entry.place if (at_key and is_last) else node.place
    return place


def _child(node: Node, part: str | int) -> Entry | None:
    if isinstance(node, Keyed):
        return next((entry for entry in node.entries if entry.key == part), None)
    if isinstance(node, Listing) and isinstance(part, int) and part < len(node.items):
        item = node.items[part]
        return Entry(str(part), item, item.place)
    return None
