"""Other numbers for each pupil of a class: the same questions, so that a class can talk about
them, and nobody can copy an answer.

Numbers are drawn from the week's seed and the pupil's place in the class list. The name has no
say: a name put right, or changed for another, leaves every number as it was.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from typeset.arithmetic.variation.conditions import Elsewhere
from typeset.arithmetic.variation.numbers_typed import choices_in
from typeset.arithmetic.variation.vary import Setting, varies, vary
from typeset.arithmetic.variation.weeks import used_in
from typeset.arithmetic.variation.wishes import WISH_OF, Version, Wish
from typeset.errors import ContentError
from typeset.reading.content import (
    Extension,
    Lesson,
    Practise,
    ProblemContent,
    Recap,
    Sort,
    SpotTheMistake,
    Stage,
)
from typeset.reading.stages import problems_of


@dataclass(frozen=True, slots=True)
class Class:
    """What the numbers of a pupil start from: lessons as typed, and as drawn for the class in
    the core and in the pupil's version, all in the same order."""

    seed: int
    typed: Sequence[Lesson]
    core: Sequence[Lesson]
    own: Sequence[Lesson]
    version: Version


def vary_for_pupil(given: Class, lesson: str, number: int) -> Lesson:
    """The lesson with the numbers of the pupil at this place of the list, counted from 1.

    A problem with ranges draws from them again, one with fixed numbers gets others of the same
    size and roundness. A problem for which there are none keeps the numbers of the class, and
    so does the open task.
    """
    own = next(each for each in given.own if each.name == lesson)
    before = given.core[: [each.name for each in given.core].index(lesson)]
    hand = _Hand(
        "\n".join([str(given.seed), lesson, "pupil", str(number)]),
        given.version,
        _by_id(given.core) | _by_id(given.typed),
        Elsewhere({each.name: used_in(each) for each in before}),
    )
    return replace(own, stages=tuple(hand.stage(stage) for stage in own.stages))


def _by_id(lessons: Sequence[Lesson]) -> dict[str, ProblemContent]:
    return {p.id: p for each in lessons for stage in each.stages for p in problems_of(stage)}


@dataclass(slots=True)
class _Hand:
    """Draws the problems of one pupil's lesson. `typed` are problems by id, with their ranges."""

    seed: str
    version: Version
    typed: Mapping[str, ProblemContent]
    elsewhere: Elsewhere
    seen: Counter[str] = field(default_factory=Counter)

    def stage(self, stage: Stage) -> Stage:
        """The stage with each of its problems drawn."""
        match stage:
            case Recap() | Sort():
                return replace(stage, problems=self.all(stage.problems))
            case SpotTheMistake():
                return replace(stage, problem=self.drawn(stage.problem, stage.mistake))
            case Practise():
                sets = (replace(each, problems=self.all(each.problems)) for each in stage.sets)
                return replace(stage, sets=tuple(sets))
            case Extension():
                return stage

    def all(self, problems: Sequence[ProblemContent]) -> tuple[ProblemContent, ...]:
        """Each of them drawn."""
        return tuple(self.drawn(each) for each in problems)

    def drawn(self, of_class: ProblemContent, mistake: str = "") -> ProblemContent:
        """The pupil's own; that of the class where there are no other numbers."""
        setting, seed = Setting(self.elsewhere, mistake), self.seed_of(of_class)
        typed = self.typed[of_class.id]
        try:
            if self.draws_again(typed):
                return vary(typed, WISH_OF[self.version], seed, setting)
            return vary(of_class, Wish.NEW, seed, setting)
        except ContentError:
            return of_class

    def draws_again(self, typed: ProblemContent) -> bool:
        """True where the same draw from another seed gives other numbers: from ranges, or where
        easier or harder ones are looked for."""
        if self.version is Version.CORE:
            return varies(typed)
        own = typed.support if self.version is Version.SUPPORT else typed.stretch
        return own is None or bool(choices_in(replace(typed, fields=own.fields), []))

    def seed_of(self, content: ProblemContent) -> str:
        """As in the week: what tells this problem from others, and stays when they change."""
        words = f"{content.structure}\n{content.story.template}"
        own = content.id if content.has_own_id else words
        self.seen[own] += 1
        return "\n".join([self.seed, own, str(self.seen[own])])
