"""An elapsed-time problem with what its workings need."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.families.elapsed_times import DAY, clock, lasting
from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount

START, END, DURATION = "start", "end", "duration"


@dataclass(frozen=True, slots=True)
class Elapsed:
    """The problem read in minutes."""

    problem: Problem[Any]

    @property
    def asked(self) -> str:
        """What is asked for."""
        return self.problem.finds[0]

    @property
    def digits(self) -> int:
        """How many digits an hour has at least: as the author types an early one; two (00:15)
        beside late ones only."""
        times = (self.problem.givens.get(START), self.problem.givens.get(END))
        return min(time.places for time in times if time is not None)

    @property
    def lengths(self) -> dict[str, Amount]:
        """The known lengths of time by name, as the author types them."""
        return {
            name: each for name, each in self.problem.givens.items() if name not in (START, END)
        }

    @property
    def known(self) -> Fraction:
        """All known lengths of time together."""
        return sum((each.base / 60 for each in self.lengths.values()), Fraction(0))

    @property
    def start(self) -> Fraction:
        """The known start, in minutes after midnight."""
        return self.problem.given(START).value

    @property
    def end(self) -> Fraction:
        """The known end, in minutes after midnight of its own day."""
        return self.problem.given(END).value

    @property
    def days(self) -> Fraction:
        """On which later day the known end is, as the author says."""
        fields = self.problem.fields
        if fields.days_later is not None:
            return Fraction(fields.days_later.value)
        return Fraction(1 if fields.next_day else 0)

    @property
    def between(self) -> Fraction:
        """The minutes from the known start to the known end."""
        return self.days * DAY + self.end - self.start

    @property
    def is_chain(self) -> bool:
        """True where lengths of time have names of their own."""
        return bool(self.problem.fields.durations)

    def at(self, minutes: Fraction) -> Amount:
        """A time of day as this problem writes them."""
        return clock(minutes, self.digits)

    def length(self, minutes: Fraction) -> Amount:
        """A length of time as the answer is to be written."""
        fields = self.problem.fields
        told = lasting(minutes)
        return told.to(fields.answer_in) if fields.answer_in is not None else told
