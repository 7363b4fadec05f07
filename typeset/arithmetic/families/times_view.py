"""Times as many: its fields, and the problem with the words that its workings need."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from pydantic import Field

from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.methods import conversion, finest_unit, in_unit
from typeset.arithmetic.phrases import the
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit

SMALLER, TIMES, LARGER = "smaller", "times", "larger"
DIFFERENCE, TOTAL = "difference", "total"
_Found = Literal["smaller", "times", "larger", "difference", "total"]
_Named = Literal["smaller", "larger"]


class TimesAsManyFields(FamilyFields):
    """Two of `smaller: 6 m`, `times: 4`, `larger: 24 m`; `find` may be a difference or total.

    `names: {smaller: Asha's rope, larger: Femi's rope}` makes the workings speak of them.
    """

    smaller: PositiveAmount | None = None
    times: PositiveAmount | None = None
    larger: PositiveAmount | None = None
    find: _Found | list[_Found] | None = None
    names: dict[_Named, str] = Field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class View:
    """The problem with what the workings need."""

    problem: Problem[TimesAsManyFields]

    @property
    def unit(self) -> Unit:
        """The unit that is worked in: the answer's, or the finer one of two given amounts."""
        amounts = [each for name, each in self.problem.givens.items() if name != TIMES]
        answer = next((u for name, u in self.problem.units.items() if name != TIMES), None)
        return finest_unit(*amounts) if answer is None or len(amounts) > 1 else answer

    def named(self, side: Literal["smaller", "larger"]) -> str:
        """The author's name for a side, or 'the smaller'."""
        return the(self.problem.fields.names.get(side, side))

    def amount(self, name: str) -> Amount:
        """A given or reckoned amount in the working unit."""
        givens = self.problem.givens
        if name in givens:
            return givens[name] if name == TIMES else in_unit(givens[name], self.unit)
        if name == TIMES:
            return Amount(givens[LARGER].base / givens[SMALLER].base)
        if name == LARGER:
            return self.part(self.amount(SMALLER).value * givens[TIMES].value)
        return self.part(self.amount(LARGER).value / givens[TIMES].value)

    def part(self, value: Fraction) -> Amount:
        """An amount in the working unit."""
        return Amount(value, self.unit)

    def opening(self) -> Iterator[Step]:
        """Both amounts in one unit, where they are not."""
        for name in (SMALLER, LARGER):
            if name in self.problem.givens:
                yield from conversion(self.problem.given(name), self.unit)[1]
