"""What the YAML parser stumbles over, in the words of somebody who types lessons."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import yaml

from typeset.errors import Complaint, Place

IN_QUOTATION_MARKS = "put the whole text in quotation marks"
_ON_LINES_BELOW = "put the text on the lines below 'key: >-', further in"
_BAD_BEGINNINGS = (
    "that cannot start any token",
    "expected the node content",
    "mapping keys are not allowed",
)
_GLUED_COLON = re.compile(r"([\w -]{1,30}):(\S+)")
_KEPT_MARK = re.compile(r"(?:scanning|parsing) an? (anchor|alias|tag|directive|block scalar)")
_NEVER_CLOSED = (
    "end of stream",
    "<stream end>",
    "could not find expected ':'",
    "document separator",
)
_OPENING = {"}": "{", "]": "["}


@dataclass(frozen=True, slots=True)
class _Stumble:
    """A fault of the parser and the line in which it was noticed."""

    problem: str
    context: str
    line: str
    # Of the fault, counted from 0.
    column: int

    @property
    def before(self) -> str:
        return self.line[: self.column].strip()

    @property
    def character(self) -> str:
        return self.line[self.column : self.column + 1]

    @property
    def lacks_key(self) -> bool:
        """True where the line begins with a colon."""
        return self.character == ":" and not self.before


def complaint_of_fault(fault: yaml.YAMLError, text: str, file: Path) -> Complaint:
    """The parser's fault as a complaint with its place."""
    if not isinstance(fault, yaml.MarkedYAMLError) or fault.problem_mark is None:
        return Complaint(Place(file, 1, 1), "this is not YAML", str(fault))
    mark = fault.problem_mark
    context = fault.context or ""
    if _is_told_at_its_beginning(fault) and fault.context_mark is not None:
        mark = fault.context_mark
    lines = [*text.split("\n"), ""]
    line = lines[min(mark.line, len(lines) - 1)]
    stumble = _Stumble(fault.problem or "", context, line, mark.column)
    problem, remedy = _words(stumble)
    return Complaint(Place(file, mark.line + 1, mark.column + 1), problem, remedy)


def _is_told_at_its_beginning(fault: yaml.MarkedYAMLError) -> bool:
    """True for a mark that YAML keeps for itself, and for what is opened and never closed:
    where the parser gave up is no help to anyone."""
    problem, context = fault.problem or "", fault.context or ""
    beginning, end = fault.context_mark, fault.problem_mark
    is_past_its_line = beginning is not None and end is not None and end.line > beginning.line
    return (
        ("flow" in context and is_past_its_line)
        or _KEPT_MARK.search(context) is not None
        or any(each in problem for each in _NEVER_CLOSED)
    )


def _words(stumble: _Stumble) -> tuple[str, str]:
    """The problem and the remedy."""
    problem, context = stumble.problem, stumble.context
    if any(each in problem for each in _BAD_BEGINNINGS) or stumble.lacks_key:
        return _bad_beginning(stumble)
    if "could not find expected ':'" in problem:
        return _no_key(stumble)
    if "mapping values are not allowed" in problem:
        return _second_colon(stumble)
    if "sequence entries are not allowed" in problem:
        return "a list cannot begin on the line of its key", "begin it on the next line"
    if "quoted scalar" in context:
        return _quotation(stumble)
    if "block end" in problem or "document start" in problem:
        return _text_goes_on(stumble)
    if "flow sequence" in context or "flow mapping" in context:
        return _brackets(stumble)
    return _mark_at_beginning(stumble)


def _bad_beginning(stumble: _Stumble) -> tuple[str, str]:
    if stumble.character == "\t":
        return "a tab stands here", "use spaces"
    if stumble.character == ":":
        return "no key stands before the colon", "write 'key: value'"
    return f"a text cannot begin with '{stumble.character}'", IN_QUOTATION_MARKS


def _no_key(stumble: _Stumble) -> tuple[str, str]:
    if glued := _GLUED_COLON.match(stumble.line[stumble.column :]):
        return no_space_after_colon(glued[1], glued[2])
    return "this line is neither 'key: value' nor an item after '- '", "add what is missing"


def no_space_after_colon(key: str, value: str) -> tuple[str, str]:
    """The problem and the remedy of 'sides:2'."""
    return f"'{key}:{value}' has no space after its colon", f"write '{key}: {value}'"


def _second_colon(stumble: _Stumble) -> tuple[str, str]:
    if re.search(r":\s|:$", stumble.before):
        return "a second colon stands in this line", _ON_LINES_BELOW
    return (
        "the line above is no 'key: value', or this line is too far in",
        "put a space after the colon above, or line the keys up",
    )


def _quotation(stumble: _Stumble) -> tuple[str, str]:
    if "escape character" in stumble.problem:
        return (
            f"'\\{stumble.character}' has no meaning between double quotation marks",
            "use single quotation marks",
        )
    return "the quotation mark here is never closed", "close it, or " + _ON_LINES_BELOW


def _text_goes_on(stumble: _Stumble) -> tuple[str, str]:
    """The value seems finished and yet the line goes on; or a line is out of line."""
    last = stumble.before[-1:]
    if last in _OPENING:
        return f"a text cannot begin with '{_OPENING[last]}'", _ON_LINES_BELOW
    if last in {"'", '"'}:
        return f"the text goes on after its closing quotation mark {last}", _ON_LINES_BELOW
    if "'-'" in stumble.problem or stumble.line.lstrip().startswith("- "):
        return "this item is not in line with the others", "line up the '- ' of the list"
    return "this line is not in line with its neighbours", "line it up with the keys beside it"


def _brackets(stumble: _Stumble) -> tuple[str, str]:
    kind = "[" if "sequence" in stumble.context else "{"
    closing = "]" if kind == "[" else "}"
    if stumble.character == kind:
        problem = f"the bracket '{kind}' here is not closed, or a comma is missing after it"
        return problem, f"add '{closing}'; a text that begins with '{kind}' needs quotation marks"
    return (
        f"a comma or '{closing}' is wanted here, inside the brackets '{kind} {closing}'",
        f"a text that begins with '{kind}' needs quotation marks",
    )


def _mark_at_beginning(stumble: _Stumble) -> tuple[str, str]:
    """A text that begins with a character that YAML keeps for itself: & * ! % > |."""
    if "block scalar" in stumble.context:
        return f"a text follows '{stumble.character}' in its line", _ON_LINES_BELOW
    if _KEPT_MARK.search(stumble.context) or "tag" in stumble.problem:
        return f"a text cannot begin with '{stumble.character}'", IN_QUOTATION_MARKS
    return f"this cannot be read as YAML ({stumble.problem})", _ON_LINES_BELOW
