"""What can be said of an answer, best first."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Verdict(Enum):
    """How what was written stands to the answer. The order is from best to worst."""

    RIGHT = "right"
    NOT_SIMPLEST = "right, not in simplest form"
    OTHER_FORM = "right number, not in the form asked for"
    UNIT_MISSING = "right number, unit missing"
    NOT_AS_MONEY = "right number, not written as money"
    UNIT_WRONG = "right number, wrong unit"
    PART_RIGHT = "right in part"
    WRONG = "wrong"
    UNREADABLE = "cannot be read as an answer to this question"

    @property
    def rank(self) -> int:
        """0 for the best."""
        return list(Verdict).index(self)

    @property
    def has_the_number(self) -> bool:
        """True where the number (or name) itself is right."""
        return self.rank <= Verdict.UNIT_WRONG.rank


@dataclass(frozen=True, slots=True)
class Mark:
    """A verdict, with what a marker would add to it."""

    verdict: Verdict
    note: str = ""


def best(marks: list[Mark | None]) -> Mark | None:
    """The best of the marks that there are; the first of equal ones."""
    there = [each for each in marks if each is not None]
    return min(there, key=lambda each: each.verdict.rank, default=None)
