"""Words that suggest a task needs care: cooking, cutting out, food, water and going outside.

A word proves nothing, so this only finds what an author may want to look at. In a problem to
work out on paper a pot of chowder is harmless; an open task invites to try things out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, problems_of
from typeset.errors import Place

# What pupils are told to do or to handle, in any question (our own choice, no source).
_DOING: Mapping[str, str] = {
    "kitchen": r"bak(?:e|ing) (?:a|some|your)|(?:sharp )?knife|oven|hob|boil(?:ing)? water",
    "scissors": r"scissors|cut(?:ting)? (?:it |them )?out|cut(?:ting)? up",
    "allergies": r"taste (?:it|them|some)|nuts|shellfish",
    "outdoors": r"go outside|outdoors|pier edge|edge of the (?:pier|quay|water)",
}
# What an open task may be about (the same).
_ABOUT: Mapping[str, str] = {
    "kitchen": r"cook(?:s|ed|ing)?|chowder|recipes?|kitchen|bak(?:e|es|ing)|boil(?:s|ing)?",
    "scissors": r"cut(?:s|ting)? paper|fold and cut",
    "allergies": r"cook(?:s|ed|ing)?|chowder|recipes?|eat(?:s|ing)?|tast(?:e|es|ing)|mussels",
    "outdoors": r"tides?|beach|shore|rock pools?|outside|playground|in the harbour",
}


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A question that speaks of something that may need care, which its lesson does not name."""

    number: int
    word: str
    cautions: tuple[str, ...]
    place: Place


def suggestions(solved: SolvedLesson) -> Iterator[Suggestion]:
    """One for every word of a question, with all cautions that it suggests."""
    declared = {each.text for each in solved.lesson.cautions}
    for stage in solved.stages:
        if isinstance(stage, SolvedExtension):
            own = declared | {each.text for each in stage.content.cautions}
            text = stage.content.story.template
            found = _found(text, (_DOING, _ABOUT), own)
            yield from _told(stage.number, found, stage.content.place)
        for problem in problems_of(stage):
            found = _found(problem.content.story.template, (_DOING,), declared)
            yield from _told(problem.number, found, problem.content.place)


def _found(
    text: str, lists: tuple[Mapping[str, str], ...], declared: set[str]
) -> dict[str, list[str]]:
    """The words of the text that suggest something undeclared, with what they suggest."""
    found: dict[str, list[str]] = {}
    for words in lists:
        for caution, pattern in words.items():
            match = re.search(rf"\b(?:{pattern})\b", text, re.IGNORECASE)
            if match and caution not in {*declared, *(c for each in found.values() for c in each)}:
                found.setdefault(match[0].lower(), []).append(caution)
    return found


def _told(number: int, found: Mapping[str, list[str]], place: Place) -> Iterator[Suggestion]:
    for word, cautions in found.items():
        yield Suggestion(number, word, tuple(cautions), place)
