"""The author's own support and stretch numbers, put in the place of the problem's."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from typeset.arithmetic.variation.conditions import counts_for
from typeset.arithmetic.variation.wishes import Wish
from typeset.errors import Complaint
from typeset.reading.complaints import likely, quoted
from typeset.reading.content import OtherNumbers, ProblemContent
from typeset.reading.tree import Entry, Keyed, Node


def overridden(
    content: ProblemContent, other: OtherNumbers, wish: Wish, complaints: list[Complaint]
) -> ProblemContent:
    """The problem with the version's values instead of its own.

    A key of the problem is meant first, then a name inside one ('gulls' of `parts`). Conditions
    of the version stand instead of the problem's; where it has none, the problem's count, so
    far as they speak of this version.
    """
    fields = content.fields
    for entry in other.fields:
        fields = _placed(fields, entry, complaints)
    kept = tuple(each for each in content.such_that if counts_for(each.text, wish))
    return replace(
        content,
        fields=fields,
        such_that=other.such_that or kept,
        story=other.story or content.story,
        hint=other.hint or content.hint,
        place=other.place,
    )


def _placed(fields: Keyed, entry: Entry, complaints: list[Complaint]) -> Keyed:
    if fields.get(entry.key) is not None:
        return _with(fields, entry)
    owners = [each.key for each in fields if _holds(each.value, entry.key)]
    if len(owners) == 1:
        inner = Keyed((entry,), entry.place)
        return _with(fields, Entry(owners[0], inner, entry.place))
    if len(owners) > 1:
        problem = f"'{entry.key}' stands in {quoted(owners)}"
        remedy = f"write '{owners[0]}: {{{entry.key}: …}}' or the like"
        complaints.append(Complaint(entry.place, problem, remedy))
        return fields
    meant = likely(entry.key, list(_names(fields)))
    if meant is not None:
        problem = f"the problem has no '{entry.key}'"
        complaints.append(Complaint(entry.place, problem, f"did you mean '{meant}'?"))
        return fields
    # A key that this version alone has; the structure says whether it knows it.
    return replace(fields, entries=(*fields.entries, entry))


def _with(fields: Keyed, entry: Entry) -> Keyed:
    """The mapping with one value replaced; of a mapping only the keys that are given."""
    return replace(
        fields,
        entries=tuple(
            replace(each, value=_merged(each.value, entry.value)) if each.key == entry.key else each
            for each in fields
        ),
    )


def _merged(own: Node, other: Node) -> Node:
    if not (isinstance(own, Keyed) and isinstance(other, Keyed)):
        return other
    merged = own
    for entry in other:
        if own.get(entry.key) is None:
            merged = replace(merged, entries=(*merged.entries, entry))
        else:
            merged = _with(merged, entry)
    return merged


def _holds(node: Node, key: str) -> bool:
    return isinstance(node, Keyed) and node.get(key) is not None


def _names(fields: Keyed) -> Iterator[str]:
    for entry in fields:
        yield entry.key
        if isinstance(entry.value, Keyed):
            yield from (each.key for each in entry.value)
