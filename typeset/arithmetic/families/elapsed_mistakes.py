"""The wrong ways to reckon with hours and minutes."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue, NameAnswer, answer_text
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.elapsed_times import DAY, HOUR, clock, lasting
from typeset.arithmetic.families.elapsed_view import END, START, Elapsed
from typeset.arithmetic.phrases import the
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import UNITS
from typeset.quantities.writing import NO_BREAK, write_plain

_HUNDRED = 100
_NOON = 12 * HOUR
# In a longer list nobody would count.
_MOST_COUNTED = 12


def mistakes_of(view: Elapsed) -> Iterator[MistakenWorking]:
    """Every mistake that these times invite; over several days only those of the whole."""
    within_a_day = (view.known if view.asked in (START, END) else view.between) < DAY
    if view.asked == END:
        yield from _end(view, view.known) if within_a_day else ()
    elif view.asked == START:
        yield from _start(view, view.known) if within_a_day else ()
    elif not view.lengths:
        yield from _length(view) if within_a_day else ()
    yield from _one_left_out(view)


def _end(view: Elapsed, lasts: Fraction) -> Iterator[MistakenWorking]:
    start, end = view.start, view.start + lasts
    yield from _as_hundreds(view, start, lasts, 1)
    hours = start // HOUR + lasts // HOUR
    over = start % HOUR + lasts % HOUR
    if over >= HOUR and hours < 24:
        steps = (
            _sum_step("Hours", start // HOUR, lasts // HOUR, Fraction(hours)),
            step("Minutes: {minutes}, which is {past} past the hour. So {at}.",
                 equation(plus(_bare(start % HOUR), _bare(lasts % HOUR)), _bare(over)),
                 minutes=_bare(over), past=_bare(over - HOUR),
                 at=view.at(hours * HOUR + over - HOUR)),
        )  # fmt: skip
        yield _wrong(view, "hour boundary not carried", steps, hours * HOUR + over - HOUR)
    yield from _counted_from_the_start(view, start, lasts)
    if start < _NOON and _NOON + HOUR <= end < DAY:
        out = {view.asked: _half_day(end - _NOON)}
        yield MistakenWorking("12 hours out", _after_noon(view, start, lasts), out)
    if start >= lasts:
        taken = equation(minus(view.at(start), lasting(lasts)), view.at(start - lasts))
        only = step("Take off {length}: {at}.", taken, length=lasting(lasts),
                    at=view.at(start - lasts))  # fmt: skip
        yield _wrong(view, "subtracting instead of adding", (only,), start - lasts)


def _start(view: Elapsed, lasts: Fraction) -> Iterator[MistakenWorking]:
    end, start = view.end, view.end - lasts
    yield from _as_hundreds(view, end, lasts, -1)
    hours, minutes = end // HOUR - lasts // HOUR, end % HOUR - lasts % HOUR
    if minutes < 0 <= hours:
        steps = (
            _sum_step("Hours", end // HOUR, -(lasts // HOUR), Fraction(hours)),
            step("Minutes: {by} back from {at} past is {to} past. So {answer}.",
                 by=lasting(lasts % HOUR), at=_bare(end % HOUR), to=_bare(minutes + HOUR),
                 answer=view.at(hours * HOUR + minutes + HOUR)),
        )  # fmt: skip
        yield _wrong(view, "hour boundary not carried", steps, hours * HOUR + minutes + HOUR)
    if start >= _NOON + HOUR:
        half, at = _half_day(end - _NOON), _half_day(start - _NOON)
        told = step("Read {end} as {half}.", end=view.at(end), half=half)
        back = equation(minus(half, lasting(lasts)), at)
        steps = (told, step("Go back {by}: {at}.", back, by=lasting(lasts), at=at))
        yield MistakenWorking("12 hours out", steps, {view.asked: at})
    if end + lasts < DAY:
        added = equation(plus(view.at(end), lasting(lasts)), view.at(end + lasts))
        only = step("Add {length}: {at}.", added, length=lasting(lasts), at=view.at(end + lasts))
        yield _wrong(view, "adding instead of subtracting", (only,), end + lasts)


def _length(view: Elapsed) -> Iterator[MistakenWorking]:
    start, end = view.start, view.end
    if view.days:
        yield from _larger_minus_smaller(view)
    else:
        yield from _as_hundreds(view, end, start, -1)
        yield from _hour_too_many(view)
        yield from _both_ends(view)
        if start < _NOON < end and end - _NOON < start:
            yield _afternoon_as_morning(view)
    yield from _start_minutes_added(view)


def _as_hundreds(
    view: Elapsed, one: Fraction, other: Fraction, sign: int
) -> Iterator[MistakenWorking]:
    """9:40 + 35 min as 9.40 + 0.35 = 9.75."""
    left, right = _in_hundreds(one), _in_hundreds(other)
    made = left + sign * right
    hours, minutes = divmod(made, _HUNDRED)
    if made <= 0 or hours >= 24:
        return
    answer = _hours_and_minutes(view, hours, minutes)
    pointed = [Amount(Fraction(each, _HUNDRED), form=Form.DECIMAL, places=2)
               for each in (left, right, made)]  # fmt: skip
    worked = plus(pointed[0], pointed[1]) if sign > 0 else minus(pointed[0], pointed[1])
    verb = "Add" if sign > 0 else "Subtract"
    only = step(
        f"{verb} as with pounds and pence: {{made}}, so {{answer}}.",
        equation(worked, pointed[2]),
        made=pointed[2],
        answer=answer_text(answer),
    )
    yield MistakenWorking("100 minutes in an hour", (only,), {view.asked: answer})


def _in_hundreds(minutes: Fraction) -> int:
    return int(minutes // HOUR) * _HUNDRED + int(minutes % HOUR)


def _hours_and_minutes(view: Elapsed, hours: int, minutes: int) -> AnswerValue:
    """What the pupil writes, also where it is no time: 9:75, 4 h 75 min."""
    if view.asked in (START, END):
        if minutes < HOUR:
            return view.at(Fraction(hours * HOUR + minutes))
        return NameAnswer(f"{hours:0{view.digits}d}:{minutes}")
    if minutes < HOUR:
        return view.length(Fraction(hours * HOUR + minutes))
    told = [f"{count}{NO_BREAK}{unit}" for count, unit in ((hours, "h"), (minutes, "min")) if count]
    return NameAnswer(NO_BREAK.join(told))


def _counted_from_the_start(
    view: Elapsed, start: Fraction, lasts: Fraction
) -> Iterator[MistakenWorking]:
    """Three hours from 9:40 as 9:40, 10:40, 11:40."""
    hours, rest = divmod(lasts, HOUR)
    reached = start + (hours - 1) * HOUR
    if not 2 <= hours <= _MOST_COUNTED or reached + rest >= DAY:
        return
    counts = ", ".join(write_plain(view.at(start + at * HOUR)) for at in range(int(hours)))
    steps = [step(f"Count {{hours}}: {counts}.", hours=lasting(hours * HOUR))]
    if rest:
        told = equation(plus(view.at(reached), lasting(rest)), view.at(reached + rest))
        steps.append(step("Then the minutes: {at}.", told, at=view.at(reached + rest)))
    yield _wrong(view, "counting both ends", tuple(steps), reached + rest)


def _both_ends(view: Elapsed) -> Iterator[MistakenWorking]:
    """From 9:40 to 12:40 as 9:40, 10:40, 11:40, 12:40: four hours."""
    hours, rest = divmod(view.between, HOUR)
    if not 2 <= hours <= _MOST_COUNTED:
        return
    counts = ", ".join(write_plain(view.at(view.start + at * HOUR)) for at in range(int(hours) + 1))
    counted = Amount(Fraction(hours + 1), UNITS["h"])
    steps = [step(f"Count {counts}: {{counted}}.", counted=counted)]
    total = lasting((hours + 1) * HOUR + rest)
    if rest:
        told = equation(plus(counted, lasting(rest)), total)
        steps.append(step("And the minutes that are left: {total}.", told, total=total))
    yield _wrong(view, "counting both ends", tuple(steps), (hours + 1) * HOUR + rest)


def _hour_too_many(view: Elapsed) -> Iterator[MistakenWorking]:
    """From 9:40 to 14:15: hours 14 − 9, and 35 minutes from 40 on to 15."""
    start, end = view.start, view.end
    if end % HOUR >= start % HOUR:
        return
    hours, minutes = end // HOUR - start // HOUR, (end - start) % HOUR
    steps = (
        _sum_step("Hours", end // HOUR, -(start // HOUR), Fraction(hours)),
        step("Minutes: from {one} past to {other} past is {by}.", one=_bare(start % HOUR),
             other=_bare(end % HOUR), by=lasting(minutes)),
        step("Together: {total}.", total=lasting(hours * HOUR + minutes)),
    )  # fmt: skip
    yield _wrong(view, "hour boundary not carried", steps, hours * HOUR + minutes)


def _start_minutes_added(view: Elapsed) -> Iterator[MistakenWorking]:
    """From 9:40 to 10:00 as 40 min."""
    past = view.start % HOUR
    full = view.start - past + HOUR
    later = view.days * DAY + view.end
    hours, rest = divmod(later - full, HOUR)
    if not past or hours < 0:
        return
    pieces = [lasting(each) for each in (past, hours * HOUR, rest) if each]
    total = lasting(past + hours * HOUR + rest)
    steps = [step("From {start} to {full}: {past}.", start=view.at(view.start),
                  full=view.at(full), past=lasting(past))]  # fmt: skip
    if pieces[1:]:
        told = equation(plus(*pieces), total)
        steps.append(step("Then on to {end}, together: {total}.", told, end=view.at(view.end),
                          total=total))  # fmt: skip
    yield _wrong(view, "minutes of the start added", tuple(steps), past + hours * HOUR + rest)


def _larger_minus_smaller(view: Elapsed) -> Iterator[MistakenWorking]:
    """From 22:45 to 1:10 as 22:45 − 1:10."""
    if view.end >= view.start:
        return
    length = view.start - view.end
    gone = equation(minus(view.at(view.start), view.at(view.end)), lasting(length))
    only = step("Take the smaller time from the larger: {length}.", gone, length=lasting(length))
    yield _wrong(view, "midnight overlooked", (only,), length)


def _afternoon_as_morning(view: Elapsed) -> MistakenWorking:
    """14:15 read as 2:15, and taken from the start."""
    half = _half_day(view.end - _NOON)
    length = lasting(view.start - half.value)
    gone = equation(minus(view.at(view.start), half), length)
    text = "Take the smaller time from the larger: {length}."
    steps = (
        step("Read {end} as {half}.", end=view.at(view.end), half=half),
        step(text, gone, length=length),
    )
    return _wrong(view, "12 hours out", steps, view.start - half.value)


def _half_day(minutes: Fraction) -> Amount:
    """A time as on a clock of 12 hours: 3:20, never 03:20."""
    return clock(minutes, 1)


def _after_noon(view: Elapsed, start: Fraction, lasts: Fraction) -> tuple[Step, ...]:
    noon = view.at(Fraction(_NOON))
    to_noon = lasting(_NOON - start)
    rest = start + lasts - _NOON
    return (
        step("From {start} to {noon} is {by}.", equation(minus(noon, view.at(start)), to_noon),
             start=view.at(start), noon=noon, by=to_noon),
        step("The other {rest} after that: {end}.",
             equation(minus(lasting(lasts), to_noon), lasting(rest)), rest=lasting(rest),
             end=_half_day(rest)),
    )  # fmt: skip


def _one_left_out(view: Elapsed) -> Iterator[MistakenWorking]:
    """One of the named lengths of time forgotten."""
    if not view.is_chain or (view.asked in (START, END) and len(view.lengths) < 2):
        return
    *others, (_last, amount) = view.lengths.items()
    known = view.known - amount.base / 60
    by, named = lasting(known), f"{the(others[0][0])}" if len(others) == 1 else "the others"
    if view.asked == END:
        at = (view.start + known) % DAY
        only = step(f"Add {named}, {{by}}: {{at}}.", by=by, at=view.at(at))
        yield _wrong(view, "quantity left out", (only,), at)
    elif view.asked == START:
        at = (view.end - known) % DAY
        only = step(f"Take off {named}, {{by}}: {{at}}.", by=by, at=view.at(at))
        yield _wrong(view, "quantity left out", (only,), at)
    else:
        whole, left = lasting(view.between), lasting(view.between - known)
        told = step("From {start} to {end} is {whole}.", start=view.at(view.start),
                    end=view.at(view.end), whole=whole)  # fmt: skip
        more = (step(f"Take off {named}: {{left}}.", equation(minus(whole, by), left),
                     left=left),) if known else ()  # fmt: skip
        yield _wrong(view, "quantity left out", (told, *more), view.between - known)


def _sum_step(head: str, one: Fraction | int, other: Fraction | int, made: Fraction) -> Step:
    left, right = _bare(one), _bare(max(other, -other))
    worked = plus(left, right) if other >= 0 else minus(left, right)
    return step(f"{head}: {{made}}.", equation(worked, _bare(made)), made=_bare(made))


def _bare(value: Fraction | int) -> Amount:
    return Amount(Fraction(value))


def _wrong(
    view: Elapsed, name: str, steps: tuple[Step, ...] | list[Step], minutes: Fraction
) -> MistakenWorking:
    is_clock = view.asked in (START, END)
    answer = view.at(minutes) if is_clock else view.length(minutes)
    return MistakenWorking(name, tuple(steps), {view.asked: answer})
