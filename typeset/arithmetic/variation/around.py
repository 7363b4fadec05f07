"""Values near a fixed number: of its size and roundness, or friendlier, or less friendly.

A number keeps what it looks like: 340 stays a round ten, £4.50 ends on 50p, a banknote becomes
another banknote, 2 1/2 keeps its half, and a number of the tables stays in the tables. What is
'like' here is our own judgement (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from typeset.arithmetic.variation.wishes import Wish
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension

_TABLES_TO = 12
# The Bank of England's notes, in pounds (bankofengland.co.uk, from memory).
_NOTES = (5, 10, 20, 50)
# Steps of money in pence, of clock times in minutes, of lengths of time in their own unit.
_MONEY_STEPS = tuple(Fraction(pence, 100) for pence in (1000, 500, 100, 50, 25, 10, 5, 1))
_CLOCK_STEPS = (60, 30, 15, 5, 1)
_TIME_STEPS = (30, 15, 10, 5, 1)
_PERCENT_STEPS = (25, 10, 5, 1)
_FRACTION_STEPS = tuple(Fraction(1, under) for under in (1, 2, 4, 10, 20, 100, 1000))
_MOST_VALUES = 60
# A day has 24 hours; times of day stay within three hours of the one that stands there.
_DAY = 24 * 60
_THREE_HOURS = 180


def values_around(amount: Amount, wish: Wish) -> tuple[Amount, ...]:
    """Other values for a number, without its own; empty where it had better stay.

    For EASIER none is larger than the number itself, for HARDER none smaller.
    """
    value = amount.value
    found = _candidates(amount, wish)
    # A later time of day is no larger a number.
    is_size = amount.unit.dimension is not Dimension.CLOCK
    fitting = (
        each
        for each in found
        if each > 0 and each != value and (not is_size or _keeps(each, value, wish))
    )
    return tuple(_like(amount, each) for each in _thinned(sorted(set(fitting))))


def _keeps(other: Fraction, value: Fraction, wish: Wish) -> bool:
    if wish is Wish.EASIER:
        return other < value
    return wish is not Wish.HARDER or other > value


def _like(amount: Amount, value: Fraction) -> Amount:
    places = amount.places if amount.unit.dimension is Dimension.CLOCK else 0
    return Amount(value, amount.unit, amount.form, places, amount.parts)


def _thinned(values: list[Fraction]) -> list[Fraction]:
    """At most so many of the values, evenly over their row."""
    if len(values) <= _MOST_VALUES:
        return values
    return [values[at * len(values) // _MOST_VALUES] for at in range(_MOST_VALUES)]


def _candidates(amount: Amount, wish: Wish) -> Iterable[Fraction]:
    value = amount.value
    if value <= 0:
        return ()
    match amount.unit.dimension:
        case Dimension.CLOCK:
            return _clock_times(value, wish)
        case Dimension.MONEY:
            return _money(value, wish)
        case Dimension.PERCENT:
            return (each for each in _percentages(value, wish) if each < 100)
    if amount.form is Form.FRACTION or (value < 1 and amount.form is not Form.DECIMAL):
        return _fractions(value, wish)
    if amount.form is Form.COMPOUND:
        return _row(value, Fraction(_dividing(value, _TIME_STEPS)), wish)
    if value.denominator != 1 or amount.form is Form.DECIMAL:
        return _decimals(value, wish)
    return _whole(value, wish)


def _whole(value: Fraction, wish: Wish) -> Iterable[Fraction]:
    if value == 1:
        return ()
    if value <= _TABLES_TO and wish is not Wish.HARDER:
        high = min(Fraction(_TABLES_TO), 2 * value)
        return _between(max(Fraction(2), value / 2), high, Fraction(1))
    round_to = _roundness(value)
    if wish is Wish.EASIER:
        return [*_friendly(value), *_row(value, round_to, wish)]
    # A harder number may be less round.
    step = max(Fraction(1), round_to / 10) if wish is Wish.HARDER else round_to
    return _row(value, step, wish)


def _roundness(value: Fraction) -> Fraction:
    """The largest of 1, 10, 100, … that divides it, but 5 or 50 where it ends on that."""
    step = 1
    while value % (10 * step) == 0:
        step *= 10
    if value % (5 * step) == 0 and value >= 20 * step:
        step *= 5
    if value < 4 * step and step >= 10:
        # 20 and 300 have too few round neighbours of their size.
        step //= 2
    return Fraction(step)


def _friendly(value: Fraction) -> Iterator[Fraction]:
    """Numbers up to this one that are easy to reckon with, and not of quite another size."""
    size = 5 * 10 ** max(0, len(str(value.numerator)) - 2)
    for step, most in ((1, _TABLES_TO), (5, 60), (10, 200), (50, 1000), (size, 10**9)):
        yield from _between(max(value / 5, Fraction(step)), min(value, Fraction(most)), step)


def _row(value: Fraction, step: Fraction, wish: Wish) -> Iterable[Fraction]:
    """Values in steps, from well below to well above as the wish has it."""
    if wish is Wish.EASIER:
        return _between(value / 3, value, step)
    if wish is Wish.HARDER:
        return _between(value, 3 * value, step)
    low = min(value * Fraction(3, 5), value - 2 * step)
    high = max(value * Fraction(8, 5), value + 2 * step)
    return _between(max(low, step), high, step)


def _between(low: Fraction, high: Fraction, step: Fraction | int) -> Iterator[Fraction]:
    """The multiples of the step from low to high."""
    at = -(-low // step)
    if (high - low) / step > 100 * _MOST_VALUES:
        step = step * ((high - low) // step // (100 * _MOST_VALUES) + 1)
        at = -(-low // step)
    while at * step <= high:
        yield Fraction(at * step)
        at += 1


def _money(value: Fraction, wish: Wish) -> Iterable[Fraction]:
    if value in _NOTES:
        at = _NOTES.index(int(value))
        return map(Fraction, _NOTES[max(0, at - 1) : at + 2])
    step = next((each for each in _MONEY_STEPS if value % each == 0), Fraction(1, 100))
    if step >= value and step > Fraction(1, 100):
        step /= 5 if step > Fraction(1, 4) else 1
    if wish is Wish.EASIER and value > 2:
        return [*_between(value / 3, value, Fraction(1)), *_row(value, step, wish)]
    if wish is Wish.HARDER:
        step = max(Fraction(1, 20), step / 5) if value > 1 else max(Fraction(1, 100), step / 5)
    return _row(value, step, wish)


def _decimals(value: Fraction, wish: Wish) -> Iterable[Fraction]:
    step = next((each for each in _FRACTION_STEPS if value % each == 0), value)
    if step >= value:
        step = value / 4
    if wish is Wish.EASIER:
        return [*_between(value / 4, value, Fraction(1)), *_row(value, step, wish)]
    return _row(value, step, wish)


def _fractions(value: Fraction, wish: Wish) -> Iterator[Fraction]:
    """Other proper fractions with lower numbers near by; a mixed number keeps its part."""
    count, part = divmod(value, 1)
    if count:
        yield from (each + part for each in _between(Fraction(1), Fraction(2 * count), 1))
        return
    under = part.denominator
    lowest, highest = {
        Wish.EASIER: (2, under),
        Wish.HARDER: (under, max(_TABLES_TO, under)),
    }.get(wish, (max(2, under - 1), under + 1))
    for other in range(lowest, highest + 1):
        for over in range(1, other):
            each = Fraction(over, other)
            # A unit fraction comes as another one, unless it is to be harder or easier.
            is_like = wish is not Wish.NEW or (over == 1) == (part.numerator == 1)
            if each.denominator == other and is_like:
                yield each


def _percentages(value: Fraction, wish: Wish) -> Iterable[Fraction]:
    """Percentages as round as this one; harder ones may end on 5 where it ends on 0."""
    step = _dividing(value, _PERCENT_STEPS)
    if wish is Wish.HARDER:
        step = {25: 5, 10: 5, 5: 1}.get(step, 1)
    return _between(Fraction(step), Fraction(100), step)


def _clock_times(value: Fraction, wish: Wish) -> Iterator[Fraction]:
    """Times as round as this one; easier ones rounder, harder ones less round."""
    at = _CLOCK_STEPS.index(_dividing(value, _CLOCK_STEPS))
    at += {Wish.EASIER: -1, Wish.HARDER: 1}.get(wish, 0)
    step = _CLOCK_STEPS[min(max(at, 0), len(_CLOCK_STEPS) - 1)]
    noon = Fraction(_DAY // 2)
    half = (Fraction(0), noon) if value < noon else (noon, Fraction(_DAY))
    low, high = max(half[0], value - _THREE_HOURS), min(half[1] - step, value + _THREE_HOURS)
    return _between(low, high, step)


def _dividing(value: Fraction, steps: tuple[int, ...]) -> int:
    return next((each for each in steps if value % each == 0), 1)
