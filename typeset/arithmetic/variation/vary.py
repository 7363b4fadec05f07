"""Other numbers for a problem: its own ranges drawn, or new, easier or harder ones found."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import islice
from typing import TypeAlias

from typeset.arithmetic.remembering import once_for_each_of_a_week
from typeset.arithmetic.variation.around import values_around
from typeset.arithmetic.variation.conditions import (
    NOWHERE,
    Condition,
    Cost,
    Elsewhere,
    can_be_shown,
    counts_for,
    read_conditions,
)
from typeset.arithmetic.variation.dice import Dice
from typeset.arithmetic.variation.found import kept_for_solving
from typeset.arithmetic.variation.likeness import likeness, not_the_numbers_of, other_answers
from typeset.arithmetic.variation.nothing_fits import nothing_fits
from typeset.arithmetic.variation.numbers_typed import (
    Choice,
    Path,
    choices_in,
    numbers_in,
    with_numbers,
)
from typeset.arithmetic.variation.overriding import overridden
from typeset.arithmetic.variation.search import Limits, NumbersAt, Trials, fitting, sets_of
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.wishes import (
    EASIER_AT_MOST,
    HARDER_AT_LEAST,
    NEW_BETWEEN,
    Wish,
)
from typeset.errors import Complaint, ContentError
from typeset.quantities.amount import Amount
from typeset.reading.content import ProblemContent

# Numbers that are part of the story's sense, not of its size.
_KEPT = {"facts", "meetings", "places", "days later", "how many", "multiples"}
# Beyond these an easier or harder version would be another task.
_EASIER_AT_LEAST = EASIER_AT_MOST / 3
_HARDER_AT_MOST = 2 * HARDER_AT_LEAST
# What the search for automatic numbers may cost in each of its rounds.
_ROUND_TRIES, _ROUND_WORKED, _ROUND_SOLVED = 500, 80, 30
# Numbers of a list are moved together no farther than this.
_FARTHEST = 10
# So many sets tell whether a problem is wrong whatever its numbers are.
_ENOUGH_TO_KNOW = 20


@dataclass(frozen=True, slots=True)
class Setting:
    """What a draw must heed besides the problem: earlier lessons, the mistake to be shown, and
    the numbers (of `apart_from`) that it must not have again."""

    elsewhere: Elsewhere = NOWHERE
    mistake: str = ""
    apart_from: ProblemContent | None = None


def vary(
    content: ProblemContent, wish: Wish, seed: str | int, setting: Setting | None = None
) -> ProblemContent:
    """The problem with fixed numbers typed in its fields, every place in the file kept.

    The same seed gives the same numbers everywhere. For EASIER and HARDER the author's own
    `support` and `stretch` come first; where there are none, numbers are found. A problem that
    cannot be made easier or harder at all stays as it is.
    Raises ContentError with complaints where nothing fits, or a range or condition is wrong.
    """
    setting = setting or Setting()
    dice = Dice(seed, wish.value)
    if wish is Wish.AS_TYPED:
        return _drawn(content, dice, setting)
    if wish is Wish.NEW:
        return _renewed(content, dice, setting)
    core = _drawn(content, Dice(seed, Wish.AS_TYPED.value), setting)
    own = core.support if wish is Wish.EASIER else core.stretch
    if own is None:
        return _found(core, wish, dice, setting) or core
    complaints: list[Complaint] = []
    other = overridden(core, own, wish, complaints)
    choices_in(replace(core, fields=own.fields), complaints)
    if complaints:
        raise ContentError(complaints)
    drawn = _drawn(other, dice, setting)
    if reason := Trial(drawn).why_no_sense():
        raise ContentError([Complaint(own.place, reason, "choose other numbers")])
    return replace(drawn, place=core.place)


def varies(content: ProblemContent) -> bool:
    """True where the problem has ranges to draw from or conditions to check."""
    return bool(content.such_that or choices_in(content, []))


def _renewed(content: ProblemContent, dice: Dice, setting: Setting) -> ProblemContent:
    """New numbers: from the problem's own ranges where it has some, else from around it."""
    if choices_in(content, []):
        return _drawn_apart(content, dice, setting)
    found = _found(content, Wish.NEW, dice, replace(setting, apart_from=None))
    if found is None:
        problem = f"no new numbers were found for '{content.id}'"
        remedy = "give its numbers as ranges, such as 12..48 step 6"
        raise ContentError([Complaint(content.place, problem, remedy)])
    return found


def _drawn_apart(content: ProblemContent, dice: Dice, setting: Setting) -> ProblemContent:
    """A set without any value of the one to keep apart from; where that cannot be, another set."""
    if setting.apart_from is not None:
        old = {each.path: each.amount for each in numbers_in(setting.apart_from)}
        fresh = [_without(each, old.get(each.path)) for each in choices_in(content, [])]
        conditions = _conditions(content, setting, [])
        found = next(fitting(Trials(content), sets_of(fresh, dice), conditions, Limits()), None)
        if found is not None:
            return kept_for_solving(found)
    return _drawn(content, dice, setting)


def _without(choice: Choice, value: Amount | None) -> Choice:
    others = tuple(each for each in choice.values if each != value)
    return replace(choice, values=others or choice.values)


def _drawn(content: ProblemContent, dice: Dice, setting: Setting) -> ProblemContent:
    """One of the sets that the problem's ranges and conditions allow."""
    complaints: list[Complaint] = []
    choices = choices_in(content, complaints)
    conditions = _conditions(content, setting, complaints)
    if complaints:
        raise ContentError(complaints)
    if not choices and not content.such_that:
        return content
    found = next(fitting(Trials(content), sets_of(choices, dice), conditions, Limits()), None)
    if found is not None:
        return kept_for_solving(found)
    return _unfit(content, choices, conditions, dice)


def _unfit(
    content: ProblemContent, choices: Sequence[Choice], conditions: Sequence[Condition], dice: Dice
) -> ProblemContent:
    """Raises ContentError; but where the problem would be wrong with any numbers, the first
    set, so that what is wrong is complained of where it stands."""
    sets = islice(sets_of(choices, dice), _ENOUGH_TO_KNOW)
    trials = [Trial(with_numbers(content, numbers)) for numbers in sets]
    reasons = {each.why_not_built() for each in trials}
    if len(reasons) == 1 and "" not in reasons:
        return trials[0].content
    if not choices and trials[0].why_no_sense():
        return content
    raise ContentError([nothing_fits(content, choices, conditions)])


def _conditions(
    content: ProblemContent, setting: Setting, complaints: list[Complaint]
) -> list[Condition]:
    conditions = [*read_conditions(content.such_that, setting.elsewhere, complaints)]
    if setting.mistake:
        conditions.append(can_be_shown(setting.mistake))
    if setting.apart_from is not None:
        conditions.append(not_the_numbers_of(Trial(setting.apart_from)))
    return conditions


def _found(core: ProblemContent, wish: Wish, dice: Dice, setting: Setting) -> ProblemContent | None:
    """Numbers found around fixed ones; None where there are none that do."""
    complaints: list[Complaint] = []
    own = _conditions(core, setting, complaints)
    start = _start(core, wish) if not complaints else None
    if start is None:
        return None
    conditions = [*start.alike, *(each for each in own if counts_for(each.words, wish))]
    demand = _Demand(start.source.demand, wish)
    search = _Search(Trials(core), start, conditions, wish, dice)
    wanted = Condition("the demand wanted", Cost.WORKING, demand.is_wanted)
    found = next(search.fitting(wanted), None)
    if found is None and demand.has_moved:
        moved = Condition("some of the demand wanted", Cost.WORKING, demand.is_on_the_way)
        some = list(islice(search.fitting(moved), _ENOUGH_TO_KNOW))
        found = min(some, key=demand.distance, default=None)
    return kept_for_solving(found) if found is not None else None


@dataclass(frozen=True, slots=True)
class _Start:
    """What every search around the same numbers starts from: they themselves, others near each,
    what the others have to be like, and that the answer is another."""

    source: Trial
    choices: tuple[Choice, ...]
    alike: tuple[Condition, ...]
    other_answers: tuple[Condition, ...]


@once_for_each_of_a_week
def _start(core: ProblemContent, wish: Wish) -> _Start | None:
    """None where no number can be another, or the problem makes no sense as it is."""
    source = Trial(core)
    choices = _choices_around(core, wish)
    if not choices or source.why_no_sense():
        return None
    alike = (*likeness(source, wish), not_the_numbers_of(source))
    return _Start(source, choices, alike, tuple(other_answers(source)))


@dataclass(slots=True)
class _Demand:
    """How demanding the other numbers may be; notes whether any go the way wished for."""

    before: Fraction
    wish: Wish
    has_moved: bool = False

    def is_wanted(self, trial: Trial) -> bool:
        """True where the demand lies where the wish has it."""
        low, high = {
            Wish.EASIER: (_EASIER_AT_LEAST, EASIER_AT_MOST),
            Wish.HARDER: (HARDER_AT_LEAST, _HARDER_AT_MOST),
        }.get(self.wish, NEW_BETWEEN)
        if self.has_moved or self.wish is Wish.NEW:
            too_easy = low * self.before
        else:
            # Whether it moves at all has to be known as well.
            too_easy = self.before if self.wish is Wish.HARDER else Fraction(0)
        # One way that is too easy settles it, before the other ways are written out.
        if trial.has_way_below(too_easy):
            return False
        self.has_moved = self.has_moved or self.is_on_the_way(trial)
        return low * self.before <= trial.demand <= high * self.before

    def is_on_the_way(self, trial: Trial) -> bool:
        """True where it goes the right way at all."""
        if self.wish is Wish.EASIER:
            return trial.demand < self.before
        if self.wish is not Wish.HARDER or trial.has_way_below(self.before):
            return False
        return trial.demand > self.before

    def distance(self, trial: Trial) -> Fraction:
        """How far it is from what is wished for; on the other side of it farther than on this."""
        wanted = EASIER_AT_MOST if self.wish is Wish.EASIER else HARDER_AT_LEAST
        return abs(trial.demand - wanted * self.before)


@dataclass(slots=True)
class _Search:
    """A search around fixed numbers, round after round."""

    trials: Trials
    start: _Start
    conditions: list[Condition]
    wish: Wish
    dice: Dice

    def fitting(self, demand: Condition) -> Iterator[Trial]:
        """The sets that fit, those of better rounds first."""
        for sets, more in _rounds(self.start, self.wish, self.dice):
            limits = Limits(_ROUND_TRIES, _ROUND_WORKED, _ROUND_SOLVED)
            yield from fitting(self.trials, sets, [*self.conditions, *more, demand], limits)


def _choices_around(core: ProblemContent, wish: Wish) -> tuple[Choice, ...]:
    """The numbers that may become others, each with the values near it."""
    kept = _KEPT | ({"parts"} if core.structure == "ratio" and wish is Wish.NEW else set())
    around = (
        Choice(each.path, each.place, values_around(each.amount, wish))
        for each in numbers_in(core)
        if not kept & set(each.path)
    )
    return tuple(each for each in around if each.values)


_Round: TypeAlias = tuple[Iterable[NumbersAt], tuple[Condition, ...]]


def _rounds(start: _Start, wish: Wish, dice: Dice) -> Iterator[_Round]:
    """Ways to look for numbers, the best first: every number another one and the answer too;
    then only some of the numbers; then all of a list moved alike."""
    choices = start.choices
    yield sets_of(choices, dice), start.other_answers
    typed_now = {each.path: each.amount for each in numbers_in(start.source.content)}
    kept_or_not = [
        replace(each, values=(typed_now[each.path],) * len(each.values) + each.values)
        for each in choices
    ]
    yield _picked(kept_or_not, dice), ()
    yield _moved(choices, typed_now, wish), ()


def _picked(choices: Sequence[Choice], dice: Dice) -> Iterator[NumbersAt]:
    for _ in range(_ROUND_TRIES):
        yield {each.path: dice.pick(each.values) for each in choices}


def _moved(choices: Sequence[Choice], now: dict[Path, Amount], wish: Wish) -> Iterator[NumbersAt]:
    """Every number so much larger or smaller, or so many times as large."""
    signs = {Wish.EASIER: (-1,), Wish.HARDER: (1,)}.get(wish, (1, -1))
    for by in range(1, _FARTHEST):
        for sign in signs:
            if all(now[each.path].value + sign * by > 0 for each in choices):
                yield {each.path: _plus(now[each.path], sign * by) for each in choices}
        if wish is not Wish.EASIER:
            yield {each.path: _times(now[each.path], by + 1) for each in choices}


def _plus(amount: Amount, by: int) -> Amount:
    return replace(amount, value=amount.value + by)


def _times(amount: Amount, by: int) -> Amount:
    return replace(amount, value=amount.value * by)
