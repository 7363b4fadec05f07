"""The keys of one part of a file, read one by one, with every complaint collected.

A value that is missing or wrong is complained of and stands in as an empty one, so that the
rest of the file is read too; nobody sees it, because content with complaints is never given out.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from typeset.errors import Complaint, Place
from typeset.reading.complaints import (
    A_LIST,
    A_TEXT,
    HOW_TO_WRITE,
    KEYS,
    likely,
    missing_key,
    shown,
    unknown_key,
    unknown_word,
    wrong_kind,
)
from typeset.reading.content import Story
from typeset.reading.tree import Entry, Keyed, Listing, Node, Scalar

_YES_NO = {"yes": True, "no": False}
_WHOLE_NUMBER = re.compile(r"\d{1,9}", re.ASCII)


def plain_key(key: str) -> str:
    """The key with spaces for hyphens: 'look-for' and 'look for' are one key."""
    return " ".join(key.replace("-", " ").split())


@dataclass(frozen=True, slots=True)
class Keys:
    """A part of a file being read; `name` is what complaints call it ('the recap')."""

    node: Keyed
    name: str
    complaints: list[Complaint]

    def expect(self, required: Sequence[str], optional: Sequence[str] = ()) -> None:
        """Complain of every key that is not known and of every required one that is missing."""
        known = (*required, *optional)
        unknown = [entry for entry in self.node if entry.key not in known]
        self.complaints.extend(unknown_key(each.key, each.place, known) for each in unknown)
        self._require(required, {likely(entry.key, known) or "" for entry in unknown})

    def expect_among_others(self, required: Sequence[str]) -> tuple[str, ...]:
        """Complain of required keys that are missing where other readers know other keys.

        Gives the keys that are slips for a missing one; they are complained of.
        """
        missing = [key for key in required if self.node.get(key) is None]
        slips = [entry for entry in self.node if likely(entry.key, missing)]
        self.complaints.extend(unknown_key(each.key, each.place, missing) for each in slips)
        self._require(required, {likely(entry.key, missing) or "" for entry in slips})
        return tuple(entry.key for entry in slips)

    def _require(self, required: Sequence[str], misspelt: set[str]) -> None:
        """Complain of every key that is missing, but for those that stand there misspelt."""
        for key in required:
            if self.node.get(key) is None and key not in misspelt:
                self.complaints.append(missing_key(key, self.node.place, self.name))

    def place(self, key: str) -> Place:
        """Where the value of the key stands; the part's own place where there is none."""
        value = self.node.get(key)
        return value.place if value else self.node.place

    def text(self, key: str) -> str:
        """The text of the key on one line."""
        value = self.node.get(key)
        return " ".join(self._text_of(value, f"'{key}'").split()) if value else ""

    def texts(self, key: str) -> tuple[Scalar, ...]:
        """One text or a list of texts, with their places."""
        value = self.node.get(key)
        nodes = (value,) if isinstance(value, Scalar) else self.items(key)
        found = [(node, self._text_of(node, f"an item of '{key}'")) for node in nodes]
        return tuple(Scalar(" ".join(text.split()), node.place) for node, text in found if text)

    def story(self, key: str) -> Story:
        """The text of the key with its paragraphs kept."""
        value = self.node.get(key)
        if value is None:
            return Story("", self.node.place)
        return self._story_of(value, f"'{key}'")

    def stories(self, key: str) -> tuple[Story, ...]:
        """A list of texts."""
        return tuple(self._story_of(item, f"an item of '{key}'") for item in self.items(key))

    def items(self, key: str) -> tuple[Node, ...]:
        """The items of a list; a list without any is complained of."""
        value = self.node.get(key)
        return items_of(value, f"'{key}'", self.complaints) if value else ()

    def word(self, key: str, words: Sequence[str]) -> str | None:
        """One of the words, whether its letters are small or capital; None where there is none."""
        text = self.text(key)
        if not text:
            return None
        found = next((word for word in words if word.lower() == plain_key(text).lower()), None)
        if found is None:
            self.complaints.append(unknown_word(text, self.place(key), f"'{key}'", words))
        return found

    def yes(self, key: str) -> bool:
        """True for 'yes'."""
        return _YES_NO.get(self.word(key, tuple(_YES_NO)) or "no", False)

    def whole_number(self, key: str, least: int, most: int) -> int | None:
        """A whole number between the two bounds; None where there is none."""
        text = self.text(key)
        if not text:
            return None
        if _WHOLE_NUMBER.fullmatch(text) and least <= int(text) <= most:
            return int(text)
        problem = f"'{key}' must be a whole number from {least} to {most}, not {shown(text)}"
        self.complaints.append(Complaint(self.place(key), problem))
        return None

    def _text_of(self, node: Node, name: str) -> str:
        if isinstance(node, Scalar) and node.text.strip():
            return node.text
        self.complaints.append(wrong_kind(node, A_TEXT, name))
        return ""

    def _story_of(self, node: Node, name: str) -> Story:
        lines = [" ".join(line.split()) for line in self._text_of(node, name).split("\n")]
        return Story("\n".join(line for line in lines if line), node.place)


def items_of(node: Node, name: str, complaints: list[Complaint]) -> tuple[Node, ...]:
    """The items of a list; complains of another kind and of a list without any."""
    if not isinstance(node, Listing):
        complaints.append(wrong_kind(node, A_LIST, name))
        return ()
    if not node.items:
        complaints.append(Complaint(node.place, f"the list {name} is empty", HOW_TO_WRITE[A_LIST]))
    return node.items


def opened(
    node: Node, name: str, complaints: list[Complaint], remedy: str | None = None
) -> Keys | None:
    """The keys of the node with hyphens made spaces; None, with a complaint, for another kind."""
    if not isinstance(node, Keyed):
        complaint = wrong_kind(node, KEYS, name)
        complaints.append(replace(complaint, remedy=remedy) if remedy else complaint)
        return None
    entries: dict[str, Entry] = {}
    for entry in node:
        key = plain_key(entry.key)
        if key in entries:
            problem = f"the key '{key}' stands twice; it is first in line {entries[key].place.line}"
            complaints.append(Complaint(entry.place, problem, "keep one of them"))
        else:
            entries[key] = entry if key == entry.key else replace(entry, key=key)
    return Keys(Keyed(tuple(entries.values()), node.place), name, complaints)
