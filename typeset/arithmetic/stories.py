"""Stories with `{names}`: every number printed in one is the number that is solved."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from typeset.arithmetic.names import listed, near_name
from typeset.arithmetic.quotes import Quote
from typeset.errors import Complaint
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Inline, Rich, Words
from typeset.quantities.writing import write
from typeset.reading.content import Story

_NAME = re.compile(r"\{([^{}]*)\}")
_DIGIT = re.compile(r"\d[\d.,:/]*")
_OPENING_SINGLE = re.compile(r"(^|[\s(\[\u201c])'")
_OPENING_DOUBLE = re.compile(r'(^|[\s(\[\u2018])"')


@dataclass(frozen=True, slots=True)
class Told:
    """A story as it will be set, and the names of the quantities it mentions."""

    text: Rich
    mentioned: frozenset[str]


def tell(story: Story, amounts: Mapping[str, Amount | Rich], complaints: list[Complaint]) -> Told:
    """The story with its amounts put in. What is wrong with it is added to `complaints`."""
    complaints.extend(_faults(story, tuple(amounts)))
    items: list[Inline] = []
    mentioned: set[str] = set()
    for literal, name in _split(story.template):
        if literal:
            items.append(Words(typographic(literal)))
        if name is not None and name in amounts:
            mentioned.add(name)
            amount = amounts[name]
            items.extend((write(amount),) if isinstance(amount, Amount) else amount)
    return Told(tuple(items), frozenset(mentioned))


def typographic(text: str) -> str:
    """Straight quotation marks and apostrophes as curly ones, spaces made single."""
    text = _OPENING_DOUBLE.sub("\\1\u201c", text).replace('"', "\u201d")
    text = _OPENING_SINGLE.sub("\\1\u2018", text).replace("'", "\u2019")
    return re.sub(r"\s+", " ", text.replace(" - ", " \u2013 "))


def unmentioned(
    story: Story, told: Told, names: Iterable[str], quotes: Mapping[str, Quote]
) -> Iterator[Complaint]:
    """A complaint for every quantity that the story never mentions, alone or in a quote."""
    quoted = {name for quote in told.mentioned & set(quotes) for name in quotes[quote].tells}
    missing = [name for name in names if name not in told.mentioned | quoted]
    # Of a number sentence only the whole can be mentioned, so it is the one to ask for.
    asked = (next((q for q in quotes if name in quotes[q].tells), name) for name in missing)
    for name in dict.fromkeys(asked):
        yield Complaint(
            story.place,
            f"the story never mentions '{name}'",
            f"write {{{name}}} where its number belongs, or move it to 'facts'"
            if name not in quotes
            else f"write {{{name}}} where it belongs",
        )


def _split(template: str) -> Iterator[tuple[str, str | None]]:
    """The text before each name, with the name; at the end the rest with None."""
    at = 0
    for match in _NAME.finditer(template):
        yield template[at : match.start()], " ".join(match[1].split())
        at = match.end()
    yield template[at:], None


def _faults(story: Story, names: tuple[str, ...]) -> Iterator[Complaint]:
    for literal, name in _split(story.template):
        if "{" in literal or "}" in literal:
            yield Complaint(story.place, "a brace is not closed", "write names as {name}")
        for digits in _DIGIT.findall(literal):
            yield Complaint(
                story.place,
                f"the number {digits.rstrip('.,:/')} is typed straight into the text",
                "give it a name among the quantities and write {name}, so that it can be checked",
            )
        if name is not None and name not in names:
            yield Complaint(story.place, f"unknown name '{{{name}}}'", _nearest(name, names))


def _nearest(name: str, names: tuple[str, ...]) -> str:
    near = near_name(name, names)
    if near:
        return f"did you mean {{{near}}}?"
    return f"write {listed([f'{{{each}}}' for each in names])}" if names else "name it first"
