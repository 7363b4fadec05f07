"""A whole week with its numbers drawn: ranges, look-backs, support and stretch versions."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import cache

from typeset.arithmetic.variation.conditions import Elsewhere, NumberSet, number_set
from typeset.arithmetic.variation.dice import Dice
from typeset.arithmetic.variation.recaps import again_in_order, may_come_again
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.vary import Setting, vary
from typeset.arithmetic.variation.wishes import WISH_OF, Version, Wish
from typeset.errors import AmountError, Complaint, ContentError
from typeset.reading.complaints import quoted
from typeset.reading.content import (
    LAST_WEEK,
    Extension,
    Lesson,
    Practise,
    ProblemContent,
    Recap,
    Sort,
    SpotTheMistake,
    Stage,
    Week,
)
from typeset.reading.stages import problems_of


@dataclass(frozen=True, slots=True)
class Varied:
    """Lessons whose numbers are all fixed.

    `unfit` are the ids of problems for which no numbers were found; each has a complaint, and
    nothing else need be said of it.
    """

    lessons: tuple[Lesson, ...]
    complaints: tuple[Complaint, ...]
    unfit: frozenset[str]


def vary_week(week: Week, version: Version = Version.CORE, only: str | None = None) -> Varied:
    """The week in this version: the same questions in the same order, with its numbers.

    With the name of a lesson `only` that one is in this version, and the others are as they are
    looked back at: the core.
    """
    drawing = _Drawing(week.seed)
    for lesson in week.background:
        drawing.lesson(lesson, Version.CORE)
    return drawing.lessons(week.lessons, version, only)


def vary_lesson(lesson: Lesson, seed: int = 1, version: Version = Version.CORE) -> Varied:
    """One lesson by itself, which cannot look at others."""
    return _Drawing(seed).lessons((lesson,), version)


@dataclass(slots=True)
class _Drawing:
    """Draws lesson after lesson; later ones look back at those `as_typed` and at their `cores`."""

    seed: int
    as_typed: dict[str, Lesson] = field(default_factory=dict)
    cores: dict[str, Lesson] = field(default_factory=dict)
    complaints: list[Complaint] = field(default_factory=list)
    unfit: set[str] = field(default_factory=set)

    def lessons(
        self, lessons: Sequence[Lesson], version: Version, only: str | None = None
    ) -> Varied:
        """The lessons in this version, in their order; or one of them only, beside cores."""
        drawn = tuple(
            self.lesson(each, version if only in (None, each.name) else Version.CORE)
            for each in lessons
        )
        return Varied(drawn, tuple(self.complaints), frozenset(self.unfit))

    def lesson(self, lesson: Lesson, version: Version) -> Lesson:
        """The lesson in this version; its core is kept for those that look back at it."""
        hand = _Hand(self, lesson.name)
        core = replace(lesson, stages=tuple(hand.core(stage) for stage in lesson.stages))
        self.as_typed[lesson.name], self.cores[lesson.name] = lesson, core
        if version is Version.CORE:
            return core
        again = _Hand(self, lesson.name)
        stages = tuple(again.in_version(stage, version) for stage in core.stages)
        return replace(core, stages=stages)

    def elsewhere(self) -> Elsewhere:
        """The number sets of the lessons drawn so far."""
        return Elsewhere({name: used_in(lesson) for name, lesson in self.cores.items()})


@dataclass(slots=True)
class _Hand:
    """Draws the problems of one lesson, each from a seed of its own."""

    drawing: _Drawing
    lesson: str
    seen: Counter[str] = field(default_factory=Counter)

    def core(self, stage: Stage) -> Stage:
        """The stage with its ranges drawn, and with the problems that come again."""
        if isinstance(stage, Recap):
            typed = tuple(self.drawn(each, Wish.AS_TYPED) for each in stage.problems)
            return replace(stage, problems=(*typed, *self.again(stage)), count=0)
        return self.each(stage, Wish.AS_TYPED)

    def in_version(self, stage: Stage, version: Version) -> Stage:
        """The stage with easier or harder numbers."""
        return self.each(stage, WISH_OF[version])

    def each(self, stage: Stage, wish: Wish) -> Stage:
        """The stage with each of its problems drawn."""
        match stage:
            case Recap() | Sort():
                return replace(stage, problems=tuple(self.drawn(p, wish) for p in stage.problems))
            case SpotTheMistake():
                return replace(stage, problem=self.drawn(stage.problem, wish, stage.mistake))
            case Practise():
                sets = (
                    replace(each, problems=tuple(self.drawn(p, wish) for p in each.problems))
                    for each in stage.sets
                )
                return replace(stage, sets=tuple(sets))
            case Extension():
                return stage

    def drawn(self, content: ProblemContent, wish: Wish, mistake: str = "") -> ProblemContent:
        """The problem drawn; as it stands, and noted as unfit, where nothing fits."""
        seed = self.seed_of(content)
        if content.id in self.drawing.unfit:
            return content
        setting = Setting(self.drawing.elsewhere(), mistake)
        try:
            drawn = vary(content, wish, seed, setting)
            if wish is Wish.AS_TYPED:
                _check_versions(drawn, seed, setting)
            return drawn
        except ContentError as error:
            self.drawing.complaints += error.complaints
            self.drawing.unfit.add(content.id)
            return content

    def seed_of(self, content: ProblemContent) -> str:
        """What tells this problem from all others, and stays when others come and go: its id
        if the author gave one, else its structure and story, counted where they repeat."""
        own = content.id if content.has_own_id else _words(content)
        self.seen[own] += 1
        return "\n".join([str(self.drawing.seed), self.lesson, own, str(self.seen[own])])

    def again(self, recap: Recap) -> tuple[ProblemContent, ...]:
        """Problems of the lessons looked back at, with new numbers, in the order of their page."""
        if not recap.count:
            return ()
        seed = "\n".join([str(self.drawing.seed), self.lesson, *recap.looks_back_at])
        names = [name for name in recap.looks_back_at if name in self.drawing.cores]
        lessons = [self.drawing.as_typed[name] for name in names]
        drawn = [each for name in names for each in may_come_again(self.drawing.cores[name])]
        found: dict[int, ProblemContent] = {}
        for at, source in again_in_order(lessons, Dice(seed, "recap")):
            new = self.renewed(source, drawn[at]) if len(found) < recap.count else None
            if new is not None:
                found[at] = new
        if len(found) < recap.count and not self.drawing.complaints:
            self.drawing.complaints.append(_too_few(recap, len(found)))
        ordered = (found[at] for at in sorted(found))
        return tuple(
            replace(each, id=f"{self.lesson}-recap-{number}", has_own_id=True)
            for number, each in enumerate(ordered, 1)
        )

    def renewed(self, source: ProblemContent, drawn: ProblemContent) -> ProblemContent | None:
        """The problem with other numbers than those drawn for its own day; None where there
        are none, or it is wrong itself."""
        own = source.id if source.has_own_id else _words(source)
        seed = "\n".join([str(self.drawing.seed), self.lesson, "again", own])
        setting = Setting(self.drawing.elsewhere(), apart_from=drawn)
        try:
            new = vary(source, Wish.NEW, seed, setting)
        except (ContentError, AmountError):
            return None
        # Support and stretch numbers were those of the other day.
        return replace(new, support=None, stretch=None)


def _check_versions(core: ProblemContent, seed: str, setting: Setting) -> None:
    """Raises ContentError where the author's own support or stretch numbers do not fit, so
    that it is known before anybody makes that version."""
    complaints: list[Complaint] = []
    for own, wish in ((core.support, Wish.EASIER), (core.stretch, Wish.HARDER)):
        if own is not None:
            try:
                vary(core, wish, seed, setting)
            except ContentError as error:
                complaints += error.complaints
    if complaints:
        raise ContentError(complaints)


def _words(content: ProblemContent) -> str:
    return f"{content.structure}\n{content.story.template}"


def used_in(lesson: Lesson) -> Callable[[str], frozenset[NumberSet]]:
    """The number sets of the lesson's problems of a structure; found out when asked for."""

    @cache
    def used(structure: str) -> frozenset[NumberSet]:
        problems = [p for stage in lesson.stages for p in problems_of(stage)]
        trials = [Trial(each) for each in problems if each.structure == structure]
        return frozenset(number_set(each) for each in trials if not each.why_not_built())

    return used


def _too_few(recap: Recap, found: int) -> Complaint:
    names = [name for name in recap.looks_back_at if name != LAST_WEEK]
    can = {0: "no problem", 1: "only 1 problem"}.get(found, f"only {found} problems")
    problem = f"{can} of {quoted(names)} can come again with new numbers, not {recap.count}"
    remedy = "ask for fewer, write some under 'problems:', or give some there as ranges"
    return Complaint(recap.place, problem, remedy)
