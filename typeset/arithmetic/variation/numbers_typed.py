"""The numbers in the tree of a problem's fields: where they stand, and others in their place."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TypeAlias

from typeset.arithmetic.variation.choices import offers_choice, read_choice, typed
from typeset.errors import AmountError, Complaint, Place
from typeset.quantities.amount import Amount
from typeset.quantities.parsing import parse_amount
from typeset.reading.content import ProblemContent
from typeset.reading.tree import Entry, Keyed, Listing, Node, Scalar

Path: TypeAlias = tuple[str | int, ...]

# Keys whose texts are sentences or formulas, never one number.
_NEVER_NUMBERS = {
    *("steps", "because", "find", "names", "round to", "called", "if equal", "answer in"),
    *("sentence", "rule", "posts at", "groups called", "gaps called", "terms called"),
}


@dataclass(frozen=True, slots=True)
class Choice:
    """A number of a problem that may be any of `values`."""

    path: Path
    place: Place
    values: tuple[Amount, ...]

    @property
    def name(self) -> str:
        """What the author calls it: the nearest key."""
        return next((part for part in reversed(self.path) if isinstance(part, str)), "")


@dataclass(frozen=True, slots=True)
class TypedNumber:
    """A number of a problem as it stands in the file."""

    path: Path
    place: Place
    amount: Amount


def choices_in(content: ProblemContent, complaints: list[Complaint]) -> tuple[Choice, ...]:
    """The numbers that are ranges or lists; what is wrong with one is added to `complaints`."""
    found: list[Choice] = []
    for path, scalar in _scalars(content.fields):
        if path[0] not in _NEVER_NUMBERS and offers_choice(scalar.text):
            try:
                values = read_choice(scalar.text, content.nouns)
            except AmountError as error:
                complaints.append(Complaint(scalar.place, error.problem, error.remedy))
            else:
                found.append(Choice(path, scalar.place, values))
    return tuple(found)


def no_choices(fields: Keyed) -> list[Complaint]:
    """A complaint for every range or list where numbers cannot vary: in an open task, whose
    hints and examples of answers are the author's own."""
    problem, remedy = "the numbers of an open task do not vary", "write one number"
    return [
        Complaint(scalar.place, problem, remedy)
        for path, scalar in _scalars(fields)
        if path[0] not in _NEVER_NUMBERS and offers_choice(scalar.text)
    ]


def numbers_in(content: ProblemContent) -> tuple[TypedNumber, ...]:
    """The numbers that are fixed."""
    found = []
    for path, scalar in _scalars(content.fields):
        if path[0] in _NEVER_NUMBERS:
            continue
        try:
            amount = parse_amount(scalar.text, content.nouns)
        except AmountError:
            continue
        found.append(TypedNumber(path, scalar.place, amount))
    return tuple(found)


def with_numbers(content: ProblemContent, numbers: Mapping[Path, Amount]) -> ProblemContent:
    """The problem with other numbers typed at these paths; every place in the file is kept."""
    return with_texts(content, {path: typed(each) for path, each in numbers.items()})


def with_texts(content: ProblemContent, texts: Mapping[Path, str]) -> ProblemContent:
    """As `with_numbers`, where the numbers are texts already."""
    leading_there = {path[:length] for path in texts for length in range(len(path) + 1)}
    fields = _put(content.fields, (), texts, leading_there)
    assert isinstance(fields, Keyed)
    drawn = dict(content.drawn) | {name_at(path): text for path, text in texts.items()}
    return replace(content, fields=fields, drawn=tuple(drawn.items()))


def name_at(path: Path) -> str:
    """What the author calls the number there: the keys that lead to it."""
    shown = path[1:] if path[0] == "quantities" else path
    return " ".join(part if isinstance(part, str) else str(part + 1) for part in shown)


def _scalars(node: Node, path: Path = ()) -> Iterator[tuple[Path, Scalar]]:
    match node:
        case Scalar():
            yield path, node
        case Listing(items=items):
            for index, item in enumerate(items):
                yield from _scalars(item, (*path, index))
        case Keyed(entries=entries):
            for entry in entries:
                yield from _scalars(entry.value, (*path, entry.key))


def _put(node: Node, path: Path, texts: Mapping[Path, str], leading: Collection[Path]) -> Node:
    """The node with the texts put in; `leading` are the paths on the way to one of them."""
    if path not in leading:
        return node
    match node:
        case Scalar(place=place):
            return Scalar(texts[path], place) if path in texts else node
        case Listing(items=items, place=place):
            put = [_put(item, (*path, at), texts, leading) for at, item in enumerate(items)]
            return Listing(tuple(put), place)
        case Keyed(entries=entries, place=place):
            changed = [
                Entry(each.key, _put(each.value, (*path, each.key), texts, leading), each.place)
                for each in entries
            ]
            return Keyed(tuple(changed), place)
