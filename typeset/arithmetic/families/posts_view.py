"""A row of posts with what its workings need: how many posts there are beside the gaps."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.methods import conversion, finest_unit, in_unit, is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, Unit, noun

LENGTH, GAP, POSTS, GAPS, WANTED = "length", "gap", "posts", "gaps", "wanted"
BOTH, ONE_END, NEITHER, LOOP = "both ends", "one end", "neither end", "round a loop"
# How many more posts than gaps there are.
MORE = {BOTH: 1, ONE_END: 0, NEITHER: -1, LOOP: 0}
_POST, _GAP = noun("post", "posts"), noun("gap", "gaps")


@dataclass(frozen=True, slots=True)
class Row:
    """The problem's row of posts."""

    problem: Problem[Any]

    @property
    def asked(self) -> str:
        """What is asked for."""
        return self.problem.finds[0]

    @property
    def where(self) -> str:
        """Where the first and the last post stand."""
        return str(self.problem.fields.posts_at)

    @property
    def more(self) -> int:
        """How many more posts than gaps there are."""
        return MORE[self.where]

    @property
    def post(self) -> Unit:
        """What a post is called."""
        called: Unit | None = self.problem.fields.posts_called
        if called is not None:
            return called
        posts = self.problem.givens.get(POSTS)
        named = posts.unit if posts is not None else self.problem.units.get(POSTS, NUMBER)
        return named if named.singular else _POST

    @property
    def gap_noun(self) -> Unit:
        """What a gap is called."""
        called = self.problem.fields.gaps_called
        return called if called is not None else _GAP

    @property
    def unit(self) -> Unit:
        """The unit that lengths are worked in."""
        amounts = [each for name, each in self.problem.givens.items() if name in (LENGTH, GAP)]
        if is_counted(amounts[0]):
            return next((each.unit for each in amounts if each.unit.plural), NUMBER)
        return finest_unit(*amounts)

    def so_many(self, posts: Fraction | int) -> Amount:
        """'13 posts', by the author's noun."""
        return Amount(Fraction(posts), self.post)

    def so_many_gaps(self, gaps: Fraction | int) -> Amount:
        """'12 gaps', by the author's noun."""
        return Amount(Fraction(gaps), self.gap_noun)

    def measured(self, name: str) -> tuple[Amount, tuple[Step, ...]]:
        """A given length in the working's unit, with the step that writes it so."""
        return conversion(self.problem.given(name), self.unit)

    def bare(self, name: str) -> Amount:
        """A given length in the working's unit."""
        return in_unit(self.problem.given(name), self.unit)

    def finished(self, amount: Amount) -> tuple[Amount, tuple[Step, ...]]:
        """A length in the unit of the answer."""
        return conversion(amount, self.problem.units[self.asked])

    def why(self) -> str:
        """Why there are so many more posts than gaps, for the beginning of a sentence."""
        one, gap = self.post.singular, self.gap_noun
        return {
            BOTH: f"There is a {one} at each end, so there is one more {one} than {gap.plural}",
            ONE_END: f"Only one end has a {one}, so every {gap.singular} has a {one} of its own",
            NEITHER: f"Neither end has a {one}, so there is one {one} fewer than {gap.plural}",
            LOOP: f"Round a loop the last {gap.singular} ends at the first {one}, so there are as "
            f"many {self.post.plural} as {gap.plural}",
        }[self.where]
