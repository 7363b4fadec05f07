"""Names of quantities: asked for in a list, and told in a sentence."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import noun
from typeset.reading.complaints import likely


def as_list(names: str | Sequence[str]) -> tuple[str, ...]:
    """One name or several, as several."""
    return (names,) if isinstance(names, str) else tuple(names)


def listed(names: Sequence[str], last: str = "or") -> str:
    """'a, b or c'."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {last} {names[-1]}"


def near_name(name: str, known: Collection[str]) -> str | None:
    """The known name that an unknown one is most like, or None where none is like it.

    The same likeness as in the reader's complaints, so that a slip is met alike everywhere.
    """
    return likely(name, known)


def one_of(name: str, known: Sequence[str]) -> None:
    """Raises AmountError with the nearest known name where this one is unknown."""
    if name in known:
        return
    near = near_name(name, known)
    remedy = f"did you mean '{near}'?" if near else f"write {listed(known)}"
    raise AmountError(f"unknown name '{name}'", remedy)


def so_many(count: Fraction, singular: str, many: str = "") -> Amount:
    """'1 part', '3 parts': a count of a word of ours, not of the author's."""
    return Amount(count, noun(singular, many or f"{singular}s"))
