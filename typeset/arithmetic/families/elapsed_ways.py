"""The ways along a clock, each walked afresh, and the number line that shows one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.elapsed_minutes import in_minutes
from typeset.arithmetic.families.elapsed_times import (
    DAY,
    HOUR,
    Leg,
    backwards,
    lasting,
    onwards,
    pieces_by_full_hours,
    pieces_hours_first,
    told_legs,
)
from typeset.arithmetic.families.elapsed_view import END, START, Elapsed
from typeset.arithmetic.figures import Jump, Mark, NumberLine, Tick
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import UNITS
from typeset.quantities.writing import write

# Up to so many minutes past the mark it is worth going too far and coming back.
_MOST_BACK = 20


@dataclass(frozen=True, slots=True)
class Walk:
    """A way along the clock: its name, the steps told, and where it gets to (or how long it
    took, where both ends are known), in minutes."""

    name: str
    steps: tuple[Step, ...]
    reached: Fraction
    past_midnight: bool = False


def ways_of(view: Elapsed) -> Iterator[Working]:
    """Every way that suits these times; at least two."""
    opening, minutes, days = _opening(view)
    if view.asked in (START, END):
        if view.is_chain and len(view.lengths) > 1:
            yield _arriving(view, _one_after_another(view), ())
        for walk in _walks(view, minutes):
            yield _arriving(view, walk, opening)
        steps, reached = in_minutes(view)
        yield Working("In minutes after midnight", steps, {view.asked: view.at(reached)})
        return
    for walk in _walks(view, minutes):
        yield _lasting(view, walk, opening, days)
    steps, reached = in_minutes(view)
    yield _without_the_known(view, "In minutes after midnight", steps, reached)


def _opening(view: Elapsed) -> tuple[tuple[Step, ...], Fraction, Fraction]:
    """The lengths put together and full days taken out; the minutes left, and the days."""
    steps: list[Step] = []
    if view.asked in (START, END):
        minutes = view.known
        if len(view.lengths) > 1:
            total = lasting(minutes)
            worked = equation(plus(*view.lengths.values()), total)
            steps.append(step("All together that is {total}.", worked, total=total))
    else:
        minutes = view.between
    days, rest = divmod(minutes, DAY)
    if not days:
        return tuple(steps), minutes, Fraction(0)
    full = Amount(Fraction(days), UNITS["day"])
    if view.asked in (START, END):
        same = view.at(view.start if view.asked == END else view.end)
        way = "later" if view.asked == END else "before"
        told = step(f"{{full}} {way} it is the same time of day, {{same}}.", full=full, same=same)
        left = equation(minus(lasting(minutes), full), lasting(rest)) if rest else None
        more = (step("That leaves {rest}.", left, rest=lasting(rest)),) if rest else ()
        return (*steps, told, *more), rest, Fraction(days)
    told = step("From {start} to {start} again, {full} later: {full}.",
                start=view.at(view.start), full=full)  # fmt: skip
    return (*steps, told), rest, Fraction(days)


def _walks(view: Elapsed, minutes: Fraction) -> Iterator[Walk]:
    """The walks over less than a day."""
    if not minutes:
        at = view.end if view.asked == START else view.start
        reached = at if view.asked in (START, END) else Fraction(0)
        yield Walk("Full days", (), reached)
        return
    first = view.end % HOUR if view.asked == START else -view.start % HOUR
    crosses = 0 < first < minutes
    if crosses:
        yield _walk(view, "By full hours", pieces_by_full_hours(first, minutes))
    if not crosses or minutes >= HOUR:
        back = view.asked == START
        at = view.end - minutes + minutes % HOUR if back else view.start + minutes - minutes % HOUR
        to_hour = at % HOUR if back else -at % HOUR
        yield _walk(view, "Hours first, then minutes", pieces_hours_first(to_hour, minutes))
    too_far = -minutes % HOUR
    if 0 < too_far <= _MOST_BACK:
        yield from _too_far_and_back(view, minutes, too_far)


def _legs(view: Elapsed, pieces: Sequence[tuple[Fraction, str]]) -> list[Leg]:
    if view.asked == START:
        return backwards(view.end, pieces)
    return onwards(view.start, pieces)


def _is_measured(view: Elapsed) -> bool:
    return view.asked not in (START, END)


def _walk(view: Elapsed, name: str, pieces: Sequence[tuple[Fraction, str]]) -> Walk:
    legs = _legs(view, pieces)
    steps = list(told_legs(legs, view.digits, _is_measured(view)))
    if _is_measured(view):
        lengths = [lasting(leg.minutes) for leg in legs]
        total = sum((leg.minutes for leg in legs), Fraction(0))
        if lengths[1:]:
            worked = equation(plus(*lengths), lasting(total))
            steps.append(step("Together: {total}.", worked, total=lasting(total)))
        return Walk(name, tuple(steps), total)
    if pieces[1:]:
        whole, gone = lasting(sum(piece for piece, _lead in pieces)), lasting(pieces[0][0])
        rest = lasting(sum(piece for piece, _lead in pieces[1:]))
        broken = sum(1 for leg in legs if leg.lead == pieces[0][1] or not leg.lead)
        at = next(i for i, leg in enumerate(legs) if leg.lead == pieces[1][1]) if broken else 1
        steps.insert(
            at,
            step("Still to go: {rest} of the {whole}.", equation(minus(whole, gone), rest),
                 rest=rest, whole=whole),
        )  # fmt: skip
    return Walk(name, tuple(steps), legs[-1].after, _passes(legs))


def _passes(legs: Sequence[Leg]) -> bool:
    """True where the walk goes past midnight or ends on it (which is the new day's 0:00)."""
    if legs[0].back:
        return any(leg.before == DAY for leg in legs)
    return any(leg.after == DAY for leg in legs)


def _too_far_and_back(view: Elapsed, minutes: Fraction, too_far: Fraction) -> Iterator[Walk]:
    """On (or back) by one more full hour than are full, and then back (or on) by the rest."""
    hours = minutes + too_far
    back = view.asked == START
    legs = _legs(view, [(hours, "Go back by full hours" if back else "Go on by full hours")])
    over, by, digits = legs[-1].after, lasting(too_far), view.digits
    target = over + too_far if back else over - too_far
    if not 0 <= target <= DAY:
        return
    steps = list(told_legs(legs, digits, _is_measured(view)))
    if _is_measured(view):
        steps.append(
            step("That is {by} too far, for the end is {end}: {total}.",
                 equation(minus(lasting(hours), by), lasting(minutes)),
                 by=by, end=view.at(view.end), total=lasting(minutes))
        )  # fmt: skip
        yield Walk("Too far and back", tuple(steps), hours - too_far)
        return
    worked = plus(view.at(over), by) if back else minus(view.at(over), by)
    there = "on again" if back else "back again"
    text = f"That is {{by}} too far, so come {there}: {{target}}."
    steps.append(step(text, equation(worked, view.at(target)), by=by, target=view.at(target)))
    passed = back and target < over and target == DAY
    yield Walk("Too far and back", tuple(steps), target, _day_passed(view, target) or passed)


def _day_passed(view: Elapsed, target: Fraction) -> bool:
    if view.asked == START:
        return target > view.end
    return target < view.start or target == DAY


def _one_after_another(view: Elapsed) -> Walk:
    """Each named length by itself, from the start on or from the end back."""
    named = list(view.lengths.items())
    ordered = list(reversed(named)) if view.asked == START else named
    legs = _legs(view, [(each.base / 60, title(the(name))) for name, each in ordered])
    return Walk("One after another", tuple(told_legs(legs, view.digits)), legs[-1].after,
                _passes(legs))  # fmt: skip


def _arriving(view: Elapsed, walk: Walk, opening: Sequence[Step]) -> Working:
    """The walk to a time of day, and the day where it is another."""
    answer = view.at(walk.reached % DAY)
    steps = [*opening, *walk.steps]
    days = view.known // DAY + (1 if walk.past_midnight else 0)
    if view.asked == END and walk.reached == DAY:
        steps.append(step("24:00 is {answer} of the next day.", answer=answer))
    elif days == 1:
        which = "the next day" if view.asked == END else "the day before"
        verb = "ends" if view.asked == END else "starts"
        steps.append(step(f"So it {verb} at {{answer}} {which}.", answer=answer))
    elif days:
        which = "later" if view.asked == END else "before"
        verb = "ends" if view.asked == END else "starts"
        so_many = Amount(Fraction(days), UNITS["day"])
        steps.append(step(f"So it {verb} at {{answer}}, {{days}} {which}.", answer=answer,
                          days=so_many))  # fmt: skip
    elif view.is_chain and len(view.lengths) > 1:
        verb = "ends" if view.asked == END else "starts"
        steps.append(step(f"So it {verb} at {{answer}}.", answer=answer))
    return Working(walk.name, tuple(steps), {view.asked: answer})


def _lasting(view: Elapsed, walk: Walk, opening: Sequence[Step], days: Fraction) -> Working:
    total, steps = walk.reached, [*opening, *walk.steps]
    if days and walk.reached:
        full = Amount(days, UNITS["day"])
        total = walk.reached + days * DAY
        worked = equation(plus(full, lasting(walk.reached)), lasting(total))
        steps.append(step("With the full days: {total}.", worked, total=lasting(total)))
    elif days:
        total = days * DAY
    return _without_the_known(view, walk.name, steps, total)


def _without_the_known(view: Elapsed, name: str, steps: Sequence[Step], total: Fraction) -> Working:
    """The known lengths taken off what lies between start and end, and the unit asked for."""
    more: list[Step] = []
    left = total
    for known, amount in view.lengths.items():
        now = left - amount.base / 60
        worked = equation(minus(lasting(left), amount), lasting(now))
        more.append(step(f"Take off {the(known)}, {{amount}}: {{now}}.", worked, amount=amount,
                         now=lasting(now)))  # fmt: skip
        left = now
    answer = view.length(left)
    if view.problem.fields.answer_in is not None and _looks_other(answer, left):
        more.append(step("Write {old} as {new}.", equation(lasting(left), answer),
                         old=lasting(left), new=answer))  # fmt: skip
    return Working(name, (*steps, *more), {view.asked: answer})


def _looks_other(answer: Amount, minutes: Fraction) -> bool:
    return write(answer) != write(lasting(minutes))


def line_of(view: Elapsed, answer: AnswerValue) -> NumberLine | None:
    """The line from start to end with the full hours or the named stops between them."""
    assert isinstance(answer, Amount)
    measured = _is_measured(view)
    minutes = view.between if measured else view.known
    if minutes >= DAY:
        return None
    start = answer.value if view.asked == START else view.start
    end = start + minutes
    named = view.is_chain and not measured
    if named:
        stops = [start]
        for each in view.lengths.values():
            stops.append(stops[-1] + each.base / 60)
    else:
        between = (start + -start % HOUR, end - end % HOUR)
        stops = [start, *sorted({at for at in between if start < at < end}), end]
    ticks = tuple(Tick(at, _stop_mark(view, at, (start, end))) for at in stops)
    jumps = [
        Jump(at, at + 1, Mark((write(lasting(after - before)),), named, hidden=not named))
        for at, (before, after) in enumerate(pairwise(stops))
    ]
    whole = lasting(minutes)
    told = not measured and not named
    if len(stops) > 2:
        is_whole_answer = measured and not view.lengths
        mark = Mark((write(whole),), told, hidden=not told and not is_whole_answer)
        jumps.append(Jump(0, len(stops) - 1, mark, below=True))
    else:
        jumps = [Jump(0, 1, Mark((write(whole),), told))]
    return NumberLine(ticks, tuple(jumps))


def _stop_mark(view: Elapsed, at: Fraction, ends: tuple[Fraction, Fraction]) -> Mark:
    text = (write(view.at(at % DAY)),)
    if at not in ends:
        return Mark(text, False, hidden=True)
    is_asked = view.asked == (START if at == ends[0] else END)
    return Mark(text, not is_asked)
