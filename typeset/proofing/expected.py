"""What must be on the pages: passages of words in order, each with where it comes from.

The expectation is derived from the solved lessons and the layout's wording alone, so that a
fault in the making of a document cannot hide in its proof.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.figures import Figure, Show
from typeset.documents.layout import Layout
from typeset.documents.wording import phrase
from typeset.errors import Place
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE
from typeset.proofing.symbols_read import as_read
from typeset.quantities.amount import Amount
from typeset.quantities.inline import BLANK_TEXT, BOX_TEXT, Rich, Words, plain
from typeset.reading.content import Lesson

_WORD = re.compile(r"\S+")


class Part(Enum):
    """What a passage is to its reader."""

    TITLE = "the title"
    HEADING = "the heading"
    TEXT = "the text"
    NUMBER = "the number"
    STORY = "the story"
    WORKING = "the working"
    ANSWER = "the answer"
    # A line to answer on, with its label and unit.
    ROOM = "the answer line"
    FIGURE = "the model"
    FOOT = "the foot line"


class Drawn(Enum):
    """What is drawn about a passage."""

    RULE = "a heavy rule over it"
    FRAME = "a frame around it and its neighbours"


@dataclass(frozen=True, slots=True)
class Value:
    """A value that is printed inside a passage: in its words `first` to `last`, without the
    `lead` characters before and the `trail` characters after it."""

    answer: AnswerValue
    first: int
    last: int
    lead: int = 0
    trail: int = 0


@dataclass(frozen=True, slots=True)
class Passage:
    """A run of words that belongs together. `about` is what a finding calls it ('question 7').

    `keeps` names what it must share a page with (a question is never split); what `may_part`
    may stand on the next page where all of it together is higher than one. A figure has no
    words of its own, since its labels may stand in any order.
    """

    about: str
    part: Part
    words: tuple[str, ...]
    source: str = ""
    keeps: str = ""
    may_part: bool = False
    figure: Figure | None = None
    show: Show = Show.COMPLETE
    values: tuple[Value, ...] = ()
    drawn: Drawn | None = None


@dataclass(frozen=True, slots=True)
class Expected:
    """All that a document must say; `foot_left` stands at the foot of every page.

    Pages without a foot line have None.
    """

    passages: tuple[Passage, ...]
    foot_left: str | None
    # What may not stand on it: the answers, by the question they belong to.
    secrets: tuple[tuple[str, str], ...] = ()
    # What the first page's foot says, where that is something else.
    first_foot: str | None = None


def said(layout: Layout, group: str, key: str, **names: str) -> str:
    """A text of the layout's wording."""
    return phrase(layout.wording, group, key, **names)


def called(lesson: Lesson) -> str:
    """What findings call a lesson: its day; with the name of its file where that is another, so
    that two lessons of one day are told apart."""
    if lesson.name.lower() == lesson.day.lower():
        return lesson.day
    return f"{lesson.day} ({lesson.name})"


def source_of(place: Place) -> str:
    """'content/harbour-festival/monday.yaml:41'."""
    return f"{place.file.as_posix()}:{place.line}"


def text_words(text: str) -> tuple[str, ...]:
    """The words of a plain text as they are read back."""
    return tuple(as_read(text).split())


def rich_words(rich: Rich) -> tuple[str, ...]:
    """The words of a text as set; boxes and rules to write on stand among them."""
    return text_words(_as_read(rich))


def value_in(rich: Rich, item: int, answer: AnswerValue) -> Value | None:
    """Where item number `item` of the text is printed, as words of `rich_words(rich)`."""
    before, own, text = _as_read(rich[:item]), _as_read((rich[item],)), _as_read(rich)
    if not own.strip():
        return None
    start, end = len(before), len(before) + len(own)
    spans = [match.span() for match in _WORD.finditer(text)]
    inside = [i for i, (left, right) in enumerate(spans) if left < end and right > start]
    first, last = inside[0], inside[-1]
    return Value(answer, first, last, start - spans[first][0], spans[last][1] - end)


def _as_read(rich: Rich) -> str:
    """The plain text with boxes and rules as words of their own, as they are read back."""
    return as_read(plain(rich).replace(BOX_TEXT, OPEN_BOX)).replace(BLANK_TEXT, f" {WRITING_RULE} ")


def passage(
    about: str, part: Part, text: str | Rich, place: Place | None = None, keeps: str = ""
) -> Passage:
    """A passage of a plain or set text."""
    found = text_words(text) if isinstance(text, str) else rich_words(text)
    return Passage(about, part, found, source_of(place) if place else "", keeps)


def with_values(given: Passage, rich: Rich, amounts: Sequence[Amount | None]) -> Passage:
    """The passage with the amounts that its unbreakable items print, in order."""
    solids = [index for index, item in enumerate(rich) if not isinstance(item, Words)]
    if len(solids) != len(amounts):
        return given
    found = (
        value_in(rich, index, amount)
        for index, amount in zip(solids, amounts, strict=True)
        if amount is not None
    )
    return replace(given, values=tuple(each for each in found if each is not None))
