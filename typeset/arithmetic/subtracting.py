"""Ways to subtract: taking away, counting up, shifting both, in columns, through zero."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from typeset.arithmetic.adding import MOST_COUNTED, PLACES, ends_of_places
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.methods import Method, just_above, place_parts
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.writing import whole

_KNOWN_TO = 20
# Both numbers are shifted by at most so much to make the smaller one round.
_MOST_SHIFT = 4
_ONE_OF = ("one", "ten", "hundred", "thousand", "ten thousand", "hundred thousand")


def ways_to_subtract(large: Amount, small: Amount) -> Iterator[Method]:
    """Every method that suits `large − small` (one unit, 0 ≤ small ≤ large); at least one."""
    ways = [
        *_counting_back(large, small),
        *_counting_up(large, small),
        *_in_parts(large, small),
        *_rounded(large, small),
        *_same_difference(large, small),
        *_in_columns(large, small),
    ]
    yield from ways
    is_whole = large.value.denominator == small.value.denominator == 1
    if len(ways) < 2 or (is_whole and large.value <= _KNOWN_TO):
        yield at_once(large, small)


def at_once(large: Amount, small: Amount) -> Method:
    """The bare subtraction."""
    rest = large.like(large.value - small.value)
    only = step("Subtract: {rest}.", equation(minus(large, small), rest), rest=rest)
    return Method("Subtracting", (only,), rest)


def _counting_back(large: Amount, small: Amount) -> Iterator[Method]:
    if small.value not in range(1, MOST_COUNTED + 1) or large.value.denominator != 1:
        return
    counts = ", ".join(whole(int(large.value) - at) for at in range(1, int(small.value) + 1))
    rest = large.like(large.value - small.value)
    only = step(
        f"Start with {{large}} and count back: {counts}.",
        equation(minus(large, small), rest),
        large=large,
    )
    yield Method("Counting back", (only,), rest)


def _counting_up(large: Amount, small: Amount) -> Iterator[Method]:
    stops = [small.value]
    for unit in (1, 10, 100, 1000):
        gap = -stops[-1] % unit
        if gap and stops[-1] + gap < large.value:
            stops.append(stops[-1] + gap)
    stops.append(large.value)
    hops = [large.like(after - before) for before, after in pairwise(stops)]
    if any(hop.value <= 0 for hop in hops):
        return
    steps = [
        step(
            "From {before} up to {after}: {hop}.",
            equation(minus(large.like(after), large.like(before)), hop),
            before=large.like(before),
            after=large.like(after),
            hop=hop,
        )
        for (before, after), hop in zip(pairwise(stops), hops, strict=True)
    ]
    rest = large.like(large.value - small.value)
    if hops[1:]:
        steps.append(step("Together: {rest}.", equation(plus(*hops), rest), rest=rest))
    yield Method("Counting up", tuple(steps), rest)


def _in_parts(large: Amount, small: Amount) -> Iterator[Method]:
    parts = [small.like(part) for part in place_parts(small.value)]
    if len(parts) < 2:
        return
    steps: list[Step] = []
    reached = large
    for part in parts:
        now = large.like(reached.value - part.value)
        text = "Then take off {part}: {now}." if steps else "Take off {part} first: {now}."
        steps.append(step(text, equation(minus(reached, part), now), part=part, now=now))
        reached = now
    yield Method("Taking away in parts", tuple(steps), reached)


def _rounded(large: Amount, small: Amount) -> Iterator[Method]:
    above = just_above(small.value)
    if above is None or above > large.value:
        return
    more, gap = small.like(above), small.like(above - small.value)
    low, rest = large.like(large.value - above), large.like(large.value - small.value)
    steps = (
        step("Take off {more} instead of {small}: {low}.", equation(minus(large, more), low),
             more=more, small=small, low=low),
        step("That is {gap} too much, so put it back: {rest}.", equation(plus(low, gap), rest),
             gap=gap, rest=rest),
    )  # fmt: skip
    yield Method("Rounding and adjusting", steps, rest)


def _same_difference(large: Amount, small: Amount) -> Iterator[Method]:
    gap = ends_of_places(small.value)
    is_whole = small.value.denominator == large.value.denominator == 1
    if not is_whole or not 0 < gap <= _MOST_SHIFT or small.value < 11:
        return
    higher, round_ = large.like(large.value + gap), small.like(small.value + gap)
    rest = large.like(large.value - small.value)
    only = step(
        "Put {gap} on both, and the difference stays the same: {rest}.",
        equation(minus(large, small), minus(higher, round_), rest),
        gap=small.like(gap),
        rest=rest,
    )
    yield Method("The same difference", (only,), rest)


def _in_columns(large: Amount, small: Amount) -> Iterator[Method]:
    """The written method, with exchanging."""
    if large.value.denominator != 1 or small.value.denominator != 1:
        return
    top, bottom = str(large.value), str(small.value).rjust(len(str(large.value)), "0")
    if large.value <= _KNOWN_TO or len(top) > len(PLACES):
        return
    steps: list[Step] = []
    exchanged = 0
    for place, (high, low) in enumerate(zip(reversed(top), reversed(bottom), strict=True)):
        there = int(high) - exchanged
        exchanged = int(there < int(low))
        there += 10 * exchanged
        result = there - int(low)
        told = f"{PLACES[place]}: {result}."
        if exchanged:
            told = f"{PLACES[place]}: exchange one {_ONE_OF[place + 1]}, and {result} stay."
            if result == 1:
                told = told.replace("stay.", "stays.")
        worked = equation(
            minus(Amount(Fraction(there)), Amount(Fraction(int(low)))), Amount(Fraction(result))
        )
        steps.append(step(told, worked))
    rest = large.like(large.value - small.value)
    steps.append(step("Read the digits: {rest}.", equation(minus(large, small), rest), rest=rest))
    yield Method("Column subtraction", tuple(steps), rest)


def through_zero(start: Amount, change: Amount) -> Iterator[Method]:
    """`start + change` where one of them or the end lies below 0 (`change` of either sign)."""
    end = start.like(start.value + change.value)
    size = start.like(abs(change.value))
    sum_ = plus(start, size) if change.value > 0 else minus(start, size)
    way = "up" if change.value > 0 else "down"
    if start.value * end.value < 0:
        first = start.like(abs(start.value))
        rest = start.like(abs(end.value))
        steps = (
            step(f"From {{start}} {way} to {{zero}}: {{first}}.", start=start,
                 zero=start.like(0), first=first),
            step(f"The other {{rest}} go {way} to {{end}}.", equation(minus(size, first), rest),
                 rest=rest, end=end),
        )  # fmt: skip
        yield Method("Through zero", steps, end)
    only = step(
        f"On the number line, {{size}} {way} from {{start}}: {{end}}.",
        equation(sum_, end),
        size=size,
        start=start,
        end=end,
    )
    yield Method("On the number line", (only,), end)


def across_zero(large: Amount, small: Amount) -> Iterator[Method]:
    """The difference where one or both lie below 0."""
    rest = large.like(large.value - small.value)
    if small.value < 0 < large.value:
        below = small.like(-small.value)
        steps = (
            step("From {small} up to {zero}: {below}.", small=small, zero=small.like(0),
                 below=below),
            step("From {zero} up to {large}: {large}. Together: {rest}.",
                 equation(plus(below, large), rest), zero=small.like(0), large=large, rest=rest),
        )  # fmt: skip
        yield Method("Through zero", steps, rest)
        return
    high, low = small.like(abs(small.value)), large.like(abs(large.value))
    only = step(
        "On the number line, from {small} up to {large}: {rest}.",
        equation(minus(high, low), rest),
        small=small,
        large=large,
        rest=rest,
    )
    yield Method("On the number line", (only,), rest)
