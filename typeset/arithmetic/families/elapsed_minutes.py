"""Elapsed time reckoned in minutes after midnight."""

from __future__ import annotations

from fractions import Fraction

from typeset.arithmetic.equations import Remainder, equation, minus, over, plus, times
from typeset.arithmetic.families.elapsed_times import DAY, HOUR, MINUTES, lasting
from typeset.arithmetic.families.elapsed_view import END, START, Elapsed
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import UNITS
from typeset.quantities.writing import write

_HOUR = Amount(Fraction(HOUR))


def in_minutes(view: Elapsed) -> tuple[tuple[Step, ...], Fraction]:
    """The steps; the minutes after midnight that they reach, or the minutes between."""
    steps: list[Step] = []
    if view.asked not in (START, END):
        return _between(view)
    given = view.start if view.asked == END else view.end
    steps.extend(_since_midnight(view, given))
    length = _minutes(Fraction(0))
    for amount in view.lengths.values():
        each = amount.to(MINUTES)
        if write(each) != write(amount):
            steps.append(
                step("Write {old} as {new}.", equation(amount, each), old=amount, new=each)
            )
    parts = [amount.to(MINUTES) for amount in view.lengths.values()]
    length = _minutes(view.known)
    if parts[1:]:
        told = equation(plus(*parts), length)
        steps.append(step("All together: {length}.", told, length=length))
    known, reached = _minutes(given), _minutes(given)
    if view.asked == END:
        reached = _minutes(given + view.known)
        steps.append(step("Add: {reached}.", equation(plus(known, length), reached),
                          reached=reached))  # fmt: skip
        reached = _full_days_off(steps, reached)
    else:
        known = _days_on(steps, known, length)
        reached = _minutes(known.value - view.known)
        steps.append(step("Subtract: {reached}.", equation(minus(known, length), reached),
                          reached=reached))  # fmt: skip
    if reached.value or view.asked == START:
        steps.append(_on_the_clock(view, reached.value))
    return tuple(steps), reached.value


def _between(view: Elapsed) -> tuple[tuple[Step, ...], Fraction]:
    steps = [*_since_midnight(view, view.start), *_since_midnight(view, view.end)]
    start, end = _minutes(view.start), _minutes(view.end)
    if view.days:
        later = _minutes(end.value + view.days * DAY)
        days = Amount(view.days, UNITS["day"])
        text = "The end is {days} later, so it comes {more} later: {later}."
        if view.days == 1:
            text = "The end is on the next day, so it comes {more} later: {later}."
        more = _minutes(view.days * DAY)
        steps.append(step(text, equation(plus(end, more), later), days=days, more=more,
                          later=later))  # fmt: skip
        end = later
    total = _minutes(end.value - start.value)
    steps.append(step("Subtract: {total}.", equation(minus(end, start), total), total=total))
    if total.value >= HOUR:
        told = lasting(total.value)
        steps.append(step("That is {told}.", equation(total, told), told=told))
    return tuple(steps), total.value


def _since_midnight(view: Elapsed, minutes: Fraction) -> list[Step]:
    """'21:40 is 1,300 min after midnight.', with its sum where there is an hour."""
    hours, rest = divmod(minutes, HOUR)
    worked = None
    if hours:
        product = times(Amount(Fraction(hours)), _HOUR)
        worked = equation(plus(product, Amount(rest)) if rest else product, Amount(minutes))
    return [
        step("{at} is {minutes} after midnight.", worked, at=view.at(minutes),
             minutes=_minutes(minutes))
    ]  # fmt: skip


def _full_days_off(steps: list[Step], reached: Amount) -> Amount:
    days = reached.value // DAY
    if not days:
        return reached
    if reached.value == DAY:
        steps.append(step("A day has {full}, so that is midnight, when the next day begins.",
                          full=reached))  # fmt: skip
        return _minutes(0)
    full, left = _minutes(days * DAY), _minutes(reached.value % DAY)
    told = "A day has {full}. What is over falls on the next day: {left}."
    if days > 1:
        told = "{days} have {full}. What is over falls on the day after: {left}."
    steps.append(step(told, equation(minus(reached, full), left), full=full, left=left,
                      days=Amount(Fraction(days), UNITS["day"])))  # fmt: skip
    return left


def _days_on(steps: list[Step], known: Amount, length: Amount) -> Amount:
    """The end counted from an earlier midnight, where the length reaches back past its own."""
    days = -((known.value - length.value) // DAY)
    if days <= 0:
        return known
    full = _minutes(days * DAY)
    more = _minutes(known.value + full.value)
    told = (
        "That goes back past midnight, so count from the midnight before, {full} earlier: {more}."
    )
    if days > 1:
        told = "That goes back {days}, so count from {full} earlier: {more}."
    steps.append(step(told, equation(plus(known, full), more), full=full, more=more,
                      days=Amount(Fraction(days), UNITS["day"])))  # fmt: skip
    return more


def _on_the_clock(view: Elapsed, minutes: Fraction) -> Step:
    hours, rest = divmod(minutes, HOUR)
    worked = None
    if hours:
        division = over(Amount(minutes), _HOUR)
        result = (
            Remainder(Amount(Fraction(hours)), Amount(rest)) if rest else Amount(Fraction(hours))
        )
        worked = equation(division, result)
    return step("{minutes} after midnight is {at}.", worked, minutes=_minutes(minutes),
                at=view.at(minutes))  # fmt: skip


def _minutes(value: Fraction | int) -> Amount:
    return Amount(Fraction(value), MINUTES)
