"""Complaints in a teacher's words: unknown and missing keys, wrong kinds, unknown words.

Two users: the readers of this step, and every later step that checks keys with a pydantic
model (`complaints_of`). Both speak of keys, texts and lists, never of mappings or types.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from typeset.errors import Complaint, Place
from typeset.reading.tree import Keyed, Listing, Node, Scalar, place_of

A_TEXT = "a text"
A_LIST = "a list"
KEYS = "keys with values"
NOTHING = "nothing"

# What would be right, for each kind that may be wanted.
HOW_TO_WRITE = {
    A_TEXT: "write a text after the colon",
    A_LIST: "write every item on a line of its own after '- '",
    KEYS: "write lines such as 'key: value' there",
}
# pydantic's names for 'not of this kind'.
_WANTED_KIND = {
    "string_type": A_TEXT,
    # What a reader makes from a text.
    "is_instance_of": A_TEXT,
    "list_type": A_LIST,
    "tuple_type": A_LIST,
    "set_type": A_LIST,
    "frozen_set_type": A_LIST,
    "dict_type": KEYS,
    "mapping_type": KEYS,
    "model_type": KEYS,
    "model_attributes_type": KEYS,
    "dataclass_type": KEYS,
    "dataclass_exact_type": KEYS,
}
_WANTED_VALUE = {
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "bool_type": "yes or no",
    "bool_parsing": "yes or no",
    "decimal_parsing": "a number",
    "decimal_type": "a number",
}
# How alike two words must be to be taken for a slip of the pen: one letter in four may differ.
_ALIKE = 0.7
_LONGEST_SHOWN = 60


def quoted(words: Iterable[str], last: str = "and") -> str:
    """The words in quotation marks as an English list: 'a', 'b' and 'c'."""
    marked = [f"'{word}'" for word in words]
    if len(marked) < 2:
        return "".join(marked)
    return f"{', '.join(marked[:-1])} {last} {marked[-1]}"


def shown(text: str) -> str:
    """The text in quotation marks, shortened where it is longer than a message can bear."""
    line = " ".join(text.split())
    return f"'{line}'" if len(line) <= _LONGEST_SHOWN else f"'{line[:_LONGEST_SHOWN].rstrip()}…'"


def likely(word: str, known: Iterable[str]) -> str | None:
    """The known word that an unknown one is most likely a slip for, or None."""
    lowered = {each.lower(): each for each in known}
    if not lowered:
        return None
    # Here, since most content has no such slips.
    from difflib import get_close_matches

    found = get_close_matches(word.lower(), lowered, n=1, cutoff=_ALIKE)
    return lowered[found[0]] if found else None


def nearest(word: str, known: Sequence[str]) -> str:
    """What would be right in place of an unknown word: the nearest known one, or all of them."""
    meant = likely(word, known)
    if meant is not None:
        return _did_you_mean(meant)
    return f"write {quoted(known, 'or')}" if known else ""


def _did_you_mean(word: str) -> str:
    return f"did you mean '{word}'?"


def kind_of(node: Node) -> str:
    """What the author typed here, in a word or two."""
    match node:
        case Scalar(text=text):
            return A_TEXT if text.strip() else NOTHING
        case Listing():
            return A_LIST
        case Keyed():
            return KEYS


def unknown_key(key: str, place: Place, known: Sequence[str]) -> Complaint:
    """The complaint about a key that nobody reads."""
    meant = likely(key, known)
    all_known = f"the keys here are {quoted(known)}" if known else ""
    return Complaint(
        place, f"unknown key {shown(key)}", _did_you_mean(meant) if meant else all_known
    )


def missing_key(key: str, place: Place, owner: str = "") -> Complaint:
    """The complaint about a key that must be there, at the place of what lacks it."""
    where = f" in {owner}" if owner else ""
    return Complaint(place, f"the key '{key}' is missing{where}", f"add '{key}: …'")


def wrong_kind(node: Node, wanted: str, name: str) -> Complaint:
    """The complaint about a list where a text is wanted, and the like."""
    return _wrong_kind(kind_of(node), node.place, name, (wanted,))


def _wrong_kind(typed: str, place: Place, name: str, wanted: Sequence[str]) -> Complaint:
    remedy = HOW_TO_WRITE[wanted[0]] if len(wanted) == 1 else ""
    if "item " in name and A_TEXT in wanted:
        remedy = "write a text after '- '"
    if typed == NOTHING:
        return Complaint(place, f"{name} is empty", remedy)
    if typed == KEYS and A_TEXT in wanted:
        # YAML takes '{each} of them' and 'Kofi: I agree' for keys.
        remedy = "put the whole text in quotation marks" if len(wanted) == 1 else ""
    return Complaint(place, f"{name} must be {' or '.join(wanted)}, not {typed}", remedy)


def unknown_word(word: str, place: Place, name: str, known: Sequence[str]) -> Complaint:
    """The complaint about a word that is none of the known ones."""
    return Complaint(place, f"{name} cannot be {shown(word)}", nearest(word, known))


def complaints_of(
    error: ValidationError, node: Keyed, known_keys: Sequence[str]
) -> list[Complaint]:
    """The errors of a model that read `bare(node)`, as complaints with places.

    `known_keys` are the keys that the model itself takes. Errors that differ only in the
    branch of a union they come from are told once; where one branch got further into the
    value than 'wrong kind', only what it says is told. A key that is missing because it is
    misspelt is told once, as misspelt.
    """
    findings = [_Finding.of(details, node) for details in error.errors(include_url=False)]
    misspelt = {likely(each.last, known_keys) for each in findings if each.is_unknown_key}
    told = [
        each
        for each in findings
        if not (each.is_about_kind and _is_overruled(each, findings))
        and not (each.is_missing_key and each.last in misspelt)
    ]
    return list(dict.fromkeys(_complaint(each, node, known_keys, findings) for each in told))


@dataclass(frozen=True, slots=True)
class _Finding:
    """One error of pydantic with its path made to fit what the author typed."""

    type: str
    path: tuple[str | int, ...]
    value: Any
    context: dict[str, Any]
    message: str
    # The last part of pydantic's own path: the name of a key that is missing.
    last: str
    is_in_branch: bool

    @classmethod
    def of(cls, details: ErrorDetails, node: Node) -> _Finding:
        """The error with the parts of its path that name no key or item left out."""
        location = details["loc"]
        path = _path_in(node, location)
        is_missing = details["type"] == "missing"
        return cls(
            details["type"],
            path,
            details["input"],
            details.get("ctx", {}),
            details["msg"],
            str(location[-1]) if location else "",
            len(path) < len(location) - is_missing,
        )

    @property
    def is_about_kind(self) -> bool:
        return self.type in _WANTED_KIND

    @property
    def is_unknown_key(self) -> bool:
        """True for a key beside the model's own."""
        return self.type == "extra_forbidden" and len(self.path) == 1

    @property
    def is_missing_key(self) -> bool:
        """True for a key that lacks among the model's own."""
        return self.type == "missing" and not self.path


def _path_in(node: Node, location: Sequence[str | int]) -> tuple[str | int, ...]:
    path: list[str | int] = []
    for part in location:
        child = _child_of(node, part)
        if child is not None:
            path.append(part)
            node = child
    return tuple(path)


def _child_of(node: Node, part: str | int) -> Node | None:
    match node:
        case Keyed():
            return node.get(str(part))
        case Listing(items=items) if isinstance(part, int) and part < len(items):
            return items[part]
    return None


def _is_overruled(finding: _Finding, others: Sequence[_Finding]) -> bool:
    """True where another branch of the same union says something about the value itself."""
    return finding.is_in_branch and any(
        other.is_in_branch
        and not other.is_about_kind
        and other.path[: len(finding.path)] == finding.path
        for other in others
    )


def _complaint(
    finding: _Finding, node: Keyed, known_keys: Sequence[str], others: Sequence[_Finding]
) -> Complaint:
    place = place_of(node, finding.path)
    name = _name_of(finding.path)
    if finding.type == "missing":
        return missing_key(finding.last, place, _name_of(finding.path, whole=""))
    if finding.type == "extra_forbidden":
        known = known_keys if finding.is_unknown_key else ()
        return unknown_key(finding.last, place_of(node, finding.path, at_key=True), known)
    if finding.is_about_kind:
        wanted = [
            _WANTED_KIND[o.type] for o in others if o.is_about_kind and o.path == finding.path
        ]
        return _wrong_kind(_kind_of_value(finding.value), place, name, list(dict.fromkeys(wanted)))
    if finding.type in {"literal_error", "enum"} and not _is_empty(finding.value):
        return unknown_word(str(finding.value), place, name, _expected_words(finding))
    return Complaint(place, *_said(finding, name))


def _expected_words(finding: _Finding) -> list[str]:
    """The words of pydantic's "'each' or 'left over'"."""
    return re.findall(r"'([^']*)'", str(finding.context.get("expected", "")))


def _is_empty(value: Any) -> bool:
    return isinstance(value, str) and not value.strip()


def _kind_of_value(value: Any) -> str:
    if isinstance(value, list):
        return A_LIST
    if isinstance(value, dict):
        return KEYS
    return NOTHING if _is_empty(value) else A_TEXT


def _said(finding: _Finding, name: str) -> tuple[str, str]:
    """The problem and the remedy of an error about a value."""
    if _is_empty(finding.value):
        return f"{name} is empty", str(finding.context.get("remedy", HOW_TO_WRITE[A_TEXT]))
    if "problem" in finding.context:
        return str(finding.context["problem"]), str(finding.context.get("remedy", ""))
    cause = finding.context.get("error")
    if cause is not None:
        return str(getattr(cause, "problem", cause)), str(getattr(cause, "remedy", ""))
    if finding.type in _WANTED_VALUE:
        return f"{name} must be {_WANTED_VALUE[finding.type]}, not {shown(str(finding.value))}", ""
    return _said_of_bounds(finding, name)


def _said_of_bounds(finding: _Finding, name: str) -> tuple[str, str]:
    context = finding.context
    match finding.type:
        case "too_short" if context.get("actual_length") == 0:
            return f"{name} is empty", ""
        case "too_short":
            return f"{name} has {context['actual_length']}; at least {context['min_length']}", ""
        case "too_long":
            return f"{name} has more than {context['max_length']}", ""
        case "string_too_short":
            return f"{name} is empty", "write a text after the colon"
        case "greater_than":
            return f"{name} must be more than {context['gt']}", ""
        case "greater_than_equal":
            return f"{name} must be at least {context['ge']}", ""
        case "less_than":
            return f"{name} must be less than {context['lt']}", ""
        case "less_than_equal":
            return f"{name} must be at most {context['le']}", ""
    return f"{name}: {finding.message}", ""


def _name_of(path: Sequence[str | int], whole: str = "this") -> str:
    """What the author would call the value at the path: 'find', or item 2 of 'steps'."""
    if not path:
        return whole
    last = path[-1]
    if isinstance(last, int):
        return f"item {last + 1} of {_name_of(path[:-1])}"
    return f"'{last}'"
