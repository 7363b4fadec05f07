"""Finds passages that are printed where they do not belong: doubled or moved questions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.proofing.expected import Passage
from typeset.proofing.page_marks import Word

# A run of so many words of a passage is that passage and no accident.
_LEAST_RUN = 4


@dataclass(frozen=True, slots=True)
class Copy:
    """Words `first` to before `end` of the extra ones are a copy of what is called `about`."""

    about: str
    first: int
    end: int


def find_copies(passages: Sequence[Passage], extra: Sequence[Word]) -> Iterator[Copy]:
    """The copies among words that nothing accounts for, from left to right."""
    texts = [word.text for word in extra]
    starts = _starts(passages)
    at = 0
    while at <= len(texts) - _LEAST_RUN:
        known = starts.get(tuple(texts[at : at + _LEAST_RUN]))
        if known is None:
            at += 1
            continue
        about, words = known
        end = at + _common(words, texts[at:])
        yield Copy(about, at, end)
        at = end


def _starts(passages: Sequence[Passage]) -> dict[tuple[str, ...], tuple[str, list[str]]]:
    """The first words of each question and passage, with all words that belong with them."""
    starts: dict[tuple[str, ...], tuple[str, list[str]]] = {}
    for index, each in enumerate(passages):
        rest = _together(passages, index)
        if len(rest) >= _LEAST_RUN:
            starts.setdefault(tuple(rest[:_LEAST_RUN]), (each.about, rest))
    return starts


def _together(passages: Sequence[Passage], index: int) -> list[str]:
    """The words from this passage on that are about the same thing."""
    words: list[str] = []
    for each in passages[index:]:
        if each.about != passages[index].about:
            break
        words.extend(each.words)
    return words


def _common(words: Sequence[str], texts: Sequence[str]) -> int:
    count = 0
    for one, other in zip(words, texts, strict=False):
        if one != other:
            break
        count += 1
    return count
