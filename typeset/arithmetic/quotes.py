"""Texts of a problem that a story may mention by one name: a number sentence, a list of values."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, Words, join
from typeset.quantities.units import Dimension
from typeset.quantities.writing import write


@dataclass(frozen=True, slots=True)
class Quote:
    """`text` stands in the story where its name does, and tells the givens in `tells`.

    `amounts` has the amount of every item of the text that is not running words (None where
    it is no single amount), so that the proof can check what is printed.
    """

    text: Rich
    amounts: tuple[Amount | None, ...]
    tells: frozenset[str]


def list_of(givens: Mapping[str, Amount], last: str = "and") -> Quote:
    """'12, 15 and 9 boats', or every amount with its unit where that reads better."""
    written = _with_one_noun(tuple(givens.values()))
    between = [", "] * (len(written) - 2) + [f" {last} "] * (len(written) > 1)
    items: list[Rich] = []
    for index, amount in enumerate(written):
        items.append((write(amount),))
        if index < len(between):
            items.append((Words(between[index]),))
    return Quote(join(items), written, frozenset(givens))


def _with_one_noun(amounts: Sequence[Amount]) -> tuple[Amount, ...]:
    """Things that are counted take their noun once, after the last number."""
    *first, last = amounts
    alike = all(each.unit.plural == last.unit.plural for each in first)
    if last.unit.dimension is not Dimension.COUNT or not alike or last.value <= 1:
        return tuple(amounts)
    return (*(Amount(each.value, form=each.form) for each in first), last)
