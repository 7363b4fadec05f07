"""Elapsed time: when something starts, how long it lasts, when it ends; also past midnight."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.elapsed_mistakes import mistakes_of
from typeset.arithmetic.families.elapsed_times import DAY, MINUTES, clock
from typeset.arithmetic.families.elapsed_view import DURATION, END, START, Elapsed
from typeset.arithmetic.families.elapsed_ways import line_of, ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, PositiveAmount, WholeAmount, YesNo
from typeset.arithmetic.figures import NumberLine
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import CLOCK, Dimension
from typeset.quantities.writing import say, write_plain

# So many minutes are added to every answer that is probed, so that a start at 0:00 (which does
# not change when it is doubled) is not taken for a ratio.
_FAR = 100 * DAY
_LATER = 10


class ElapsedTimeFields(FamilyFields):
    """Two of `start: '21:40'`, `duration: 2 h 35 min`, `end: '0:15'`.

    Several lengths of time have names: `durations: {crossing: 45 min, waiting: 20 min}`; with
    start and end given, `find` names the one that is missing. `next day: yes` says that the
    end is after midnight, `days later: 2` that it is on a later day still.
    """

    start: AnyAmount | None = None
    end: AnyAmount | None = None
    duration: PositiveAmount | None = None
    durations: dict[str, PositiveAmount] = Field(default_factory=dict)
    next_day: YesNo | None = Field(default=None, alias="next day")
    days_later: WholeAmount | None = Field(default=None, alias="days later")
    find: str | None = None


class ElapsedTime(Family[ElapsedTimeFields]):
    """end = start + durations, on a clock that begins again at midnight."""

    name = "elapsed time"
    fields_model = ElapsedTimeFields

    def build(self, fields: ElapsedTimeFields) -> Problem[ElapsedTimeFields]:
        """The problem; what is not given is asked for."""
        lengths = _lengths(fields)
        named = {START: fields.start, **lengths, END: fields.end}
        givens = {name: amount for name, amount in named.items() if amount is not None}
        asked = _asked(fields, lengths)
        for name, amount in givens.items():
            _check_kind(name, amount, is_clock=name in (START, END))
        _check_days(fields)
        unit = CLOCK if asked in (START, END) else MINUTES
        if fields.answer_in is not None:
            if fields.answer_in.dimension is not unit.dimension:
                what = "a time of day" if unit is CLOCK else "a length of time"
                raise AmountError(f"the answer is {what}", "leave out 'answer in'")
            unit = fields.answer_in
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[ElapsedTimeFields]) -> Mapping[str, AnswerValue]:
        """end + days × 1,440 = start + durations, in minutes; the answer on a clock again."""
        asked = problem.finds[0]
        reached = _reached(problem, _stated_days(problem))
        view = Elapsed(problem)
        if asked in (START, END):
            days = reached // DAY if asked == END else -(reached // DAY)
            _check_against(problem, Fraction(days))
            return {asked: clock(reached % DAY, view.digits)}
        if reached <= 0:
            raise _too_early(problem)
        return {asked: view.length(reached)}

    def strategies(self, problem: Problem[ElapsedTimeFields]) -> Iterator[Working]:
        """By full hours; hours first; too far and back; in minutes after midnight."""
        yield from ways_of(Elapsed(problem))

    def mistakes(self, problem: Problem[ElapsedTimeFields]) -> Iterator[MistakenWorking]:
        """Hours taken for hundreds, an hour not carried, midnight overlooked, and others."""
        yield from mistakes_of(Elapsed(problem))

    def smooth(self, problem: Problem[ElapsedTimeFields]) -> Mapping[str, AnswerValue]:
        """The answer on a clock that never begins again, so that the kind shows."""
        asked = problem.finds[0]
        reached = _reached(problem, _stated_days(problem))
        return {asked: Amount(reached + _FAR, CLOCK if asked in (START, END) else MINUTES)}

    def reason(self, problem: Problem[ElapsedTimeFields]) -> Rich:
        """What ten minutes more would do."""
        return _reason(problem, self.relation(problem)[problem.finds[0]])

    def figure(
        self, problem: Problem[ElapsedTimeFields], answers: Mapping[str, AnswerValue]
    ) -> NumberLine | None:
        """A line of clock times with the jumps between them; none over several days."""
        return line_of(Elapsed(problem), answers[problem.finds[0]])


def _lengths(fields: ElapsedTimeFields) -> dict[str, Amount]:
    if fields.duration is not None and fields.durations:
        raise AmountError("'duration' and 'durations' are both there", "give all in 'durations'")
    for name in fields.durations:
        if name in (START, END, DURATION):
            raise AmountError(f"a length of time cannot be called '{name}'", "call it otherwise")
    return {DURATION: fields.duration} if fields.duration is not None else dict(fields.durations)


def _asked(fields: ElapsedTimeFields, lengths: Mapping[str, Amount]) -> str:
    """What is not given. Raises AmountError where that is too much, or nothing."""
    known = (fields.start is not None, fields.end is not None, bool(lengths))
    missing = {
        (True, False, True): END,
        (False, True, True): START,
        (True, True, False): DURATION,
    }.get(known)
    if missing is not None:
        asked = fields.find or missing
        if asked != missing and not (missing == DURATION and asked not in (START, END)):
            one_of(asked, (missing,))
        return asked
    if known == (True, True, True) and fields.durations:
        if fields.find is None or fields.find in (START, END, DURATION, *fields.durations):
            raise AmountError(
                "start, end and every length of time here are known",
                "name another one that is missing, such as find: waiting",
            )
        return fields.find
    raise AmountError("two of start, duration and end are known", "give exactly two of them")


def _check_kind(name: str, amount: Amount, is_clock: bool) -> None:
    if is_clock and amount.unit.dimension is not Dimension.CLOCK:
        raise AmountError(f"'{name}' is a time of day", "write it such as 9:05 or 21:40")
    if is_clock:
        return
    if amount.unit.dimension is not Dimension.TIME:
        raise AmountError(f"'{name}' is a length of time", "write it such as 2 h 35 min or 3 days")
    if (amount.base / 60).denominator != 1:
        raise AmountError(f"'{name}' is not a whole number of minutes", "leave out the seconds")


def _check_days(fields: ElapsedTimeFields) -> None:
    if fields.next_day is not None and fields.days_later is not None:
        raise AmountError("'next day' and 'days later' are both there", "keep one of them")


def _stated_days(problem: Problem[ElapsedTimeFields]) -> Fraction:
    """On which later day the end is, as the author says; the same day where nothing is said."""
    fields = problem.fields
    return fields.days_later.value if fields.days_later is not None else Fraction(
        bool(fields.next_day)
    )  # fmt: skip


def _reached(problem: Problem[ElapsedTimeFields], days: Fraction) -> Fraction:
    """The unknown in minutes; a start or end counted on from midnight past 24:00 or below 0."""
    asked = problem.finds[0]
    lengths = {name: -1 for name in (*problem.givens, asked) if name not in (START, END)}
    equations = [Linear({END: 1, START: -1, **lengths})]
    for name, amount in problem.givens.items():
        known_end = name == END and asked != START
        equations.append(Linear({name: 1}, amount.base / 60 + (days * DAY if known_end else 0)))
    return solve_linear(equations)[asked]


def _check_against(problem: Problem[ElapsedTimeFields], days: Fraction) -> None:
    """Raises AmountError where the author says another day than the numbers give."""
    fields = problem.fields
    if fields.next_day is None and fields.days_later is None:
        return
    if _stated_days(problem) != days:
        said = "the same day" if not days else "the next day" if days == 1 else f"{days} days later"
        raise AmountError(f"the end comes out on {said}" if days < 2 else
                          f"the end comes out {said}",
                          "change 'next day' or 'days later', or leave it out")  # fmt: skip


def _too_early(problem: Problem[ElapsedTimeFields]) -> AmountError:
    start, end = (write_plain(problem.given(name)) for name in (START, END))
    if len(problem.givens) > 2:
        return AmountError(
            f"the lengths of time fill everything from {start} to {end}",
            "shorten them, or write 'next day: yes' where the end is on the next day",
        )
    return AmountError(
        f"the end, {end}, is not after the start, {start}",
        "write 'next day: yes' where it is on the next day",
    )


def _reason(problem: Problem[ElapsedTimeFields], answer: AnswerValue) -> Rich:
    assert isinstance(answer, Amount)
    asked, view = problem.finds[0], Elapsed(problem)
    changed = START if asked == END else END
    old = problem.given(changed)
    new = clock((old.value + _LATER) % DAY, old.places)
    by = Amount(Fraction(_LATER), MINUTES)
    told: dict[str, Amount | Rich | str] = {"old": old, "new": new, "by": by, "before": answer}
    if asked in (START, END):
        after = clock((answer.value + _LATER) % DAY, view.digits)
        text = (
            f"With a{'n' if changed == END else ''} {changed} {{by}} later, {{new}} instead of "
            f"{{old}}, the {asked} would be {{by}} later too, {{after}} instead of {{before}}."
        )
        return say(text, **told, after=after)
    after = view.length(answer.base / 60 + _LATER)
    text = (
        "With an end {by} later, {new} instead of {old}, it would be {by} longer, "
        "{after} instead of {before}."
    )
    return say(text, **told, after=after)
