"""A cutting with what its workings need: how many cuts there are beside the pieces."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.methods import finest_unit, in_unit
from typeset.arithmetic.problem import Problem
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit, noun

LENGTH, PIECE, PIECES, CUTS = "length", "piece", "pieces", "cuts"
EACH_CUT, TIME, WANTED = "each cut", "time", "wanted"
CUT = noun("cut", "cuts")


@dataclass(frozen=True, slots=True)
class Cutting:
    """The problem's cutting."""

    problem: Problem[Any]

    @property
    def asked(self) -> str:
        """What is asked for."""
        return self.problem.finds[0]

    @property
    def fewer(self) -> int:
        """How many fewer cuts than pieces: one, or none for a ring."""
        return 0 if self.problem.fields.ring else 1

    @property
    def piece_noun(self) -> Unit:
        """What a piece is called."""
        named = [self.problem.givens[each].unit for each in (PIECES, WANTED)
                 if each in self.problem.givens]  # fmt: skip
        if self.asked == PIECES:
            named.append(self.problem.units[PIECES])
        return next((unit for unit in named if unit.singular), noun("piece", "pieces"))

    def pieces_of(self, count: Fraction | int) -> Amount:
        """'12 pieces', by the author's noun."""
        return Amount(Fraction(count), self.piece_noun)

    def cuts_of(self, count: Fraction | int) -> Amount:
        """'11 cuts'."""
        return Amount(Fraction(count), CUT)

    def like(self, name: str, *others: str) -> Amount:
        """A given amount in the finest unit of itself and its fellows that are given."""
        givens = self.problem.givens
        fellows = [givens[each] for each in (name, *others) if each in givens]
        if fellows[0].unit.is_noun or not fellows[0].unit.plural:
            return fellows[0]
        return in_unit(givens[name], finest_unit(*fellows))

    def why(self) -> str:
        """Why there are so many cuts, for the beginning of a sentence."""
        many = self.piece_noun.plural
        if not self.fewer:
            return f"The first cut only opens the ring, so there are as many cuts as {many}"
        return f"The last cut makes two {many}, so there is one cut fewer than {many}"
