"""Ways to the lowest common multiple. Each finds it by itself, so that each checks the others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import gcd

from typeset.arithmetic.equations import Remainder, equation, over, plus, times
from typeset.arithmetic.families.lcm_view import NEXT, Lcm
from typeset.arithmetic.families.shared_numbers import and_list, comma_list, number
from typeset.arithmetic.phrases import title
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.writing import whole, write_plain

# Longer lists nobody writes.
_MOST_LISTED = 12
_MOST_TRIES = 8


def lcm_ways(view: Lcm) -> Iterator[Working]:
    """Every way that suits these numbers; through shared factors always does."""
    if view.start is not None and NEXT in view.problem.finds:
        yield from _timetables(view)
    yield from _listed(view)
    yield from _tried(view)
    yield _through_factors(view)


def _working(view: Lcm, name: str, steps: Sequence[Step], multiple: int) -> Working:
    told = (*view.conversions, *steps, *view.closing(multiple))
    return Working(name, told, view.answers(multiple))


def _lists(view: Lcm) -> list[list[int]] | None:
    """The multiples of each, every list grown where it is behind until all end alike;
    None where that would take too long."""
    lists = [[count] for count in view.counts]
    while len({each[-1] for each in lists}) > 1:
        behind = min(lists, key=lambda each: each[-1])
        behind.append(behind[-1] + behind[0])
        if len(behind) > _MOST_LISTED:
            return None
    return lists


def _listed(view: Lcm) -> Iterator[Working]:
    lists = _lists(view)
    if lists is None:
        return
    steps = [
        step(
            f"Multiples of {whole(each[0])}: {comma_list(each)}.",
            equation(times(number(len(each)), number(each[0])), number(each[-1])),
        )
        for each in lists
    ]
    every = "both lists" if len(lists) == 2 else "all the lists"
    steps.append(step(f"{whole(lists[0][-1])} is the first number in {every}."))
    yield _working(view, "Listing the multiples", steps, lists[0][-1])


def _timetables(view: Lcm) -> Iterator[Working]:
    """The times of day of each, written out as on a timetable."""
    lists = _lists(view)
    if lists is None or view.start is None:
        return
    steps = []
    for name, each in zip(view.names, lists, strict=True):
        row = ", ".join(write_plain(view.clock(at)) for at in (0, *each))
        gone = times(number(len(each)), view.amounts[name])
        sum_ = equation(plus(view.start, gone), view.clock(each[-1]))
        steps.append(step(f"{title(name)}: {row}.", sum_))
    last = lists[0][-1]
    every = "both rows" if len(lists) == 2 else "all the rows"
    text = f"After {{start}}, {{time}} is the first time in {every}."
    steps.append(step(text, start=view.start, time=view.clock(last)))
    asked = [name for name in view.names if name in view.problem.finds]
    closing = [view.turns(name, last) for name in asked]
    told = (*view.conversions, *steps, *closing)
    yield Working("Writing out the timetables", told, view.answers(last))


def _tried(view: Lcm) -> Iterator[Working]:
    """The multiples of the largest, one after another, tried with the others."""
    largest = max(view.counts)
    others = sorted({count for count in view.counts if count != largest}, reverse=True)
    steps: list[Step] = []
    for tries in range(1, _MOST_TRIES + 1):
        multiple = tries * largest
        lead = f"The next multiple of {whole(largest)} is {whole(multiple)}. "
        if tries == 1:
            lead = f"Begin with the largest number, {whole(largest)} itself. "
        failing = next((other for other in others if multiple % other), None)
        if failing is not None:
            steps.append(
                _tested(f"{lead}It is no multiple of {whole(failing)}.", multiple, failing)
            )
            continue
        for at, other in enumerate(others):
            text = "It is one of {other} too." if at else f"{lead}It is a multiple of {{other}}."
            text = text.replace("{other}", whole(other))
            steps.append(_tested(text, multiple, other))
        yield _working(view, "Trying the multiples of the largest", steps, multiple)
        return


def _tested(text: str, multiple: int, other: int) -> Step:
    quotient, rest = divmod(multiple, other)
    result = Remainder(number(quotient), number(rest)) if rest else number(quotient)
    return step(text, equation(over(number(multiple), number(other)), result))


def _through_factors(view: Lcm) -> Working:
    """What two share is counted once: 12 × 18 without one of the two sixes; then the next."""
    steps: list[Step] = []
    reached = view.counts[0]
    for count in view.counts[1:]:
        steps += _joined(reached, count)
        reached = reached // gcd(reached, count) * count
    return _working(view, "Through the highest common factor", steps, reached)


def _joined(one: int, other: int) -> Iterator[Step]:
    shared = gcd(one, other)
    product = one // shared * other
    pair = and_list((one, other))
    if shared in (one, other):
        large, small = max(one, other), min(one, other)
        text = f"{whole(large)} is a multiple of {whole(small)} itself."
        yield step(text, equation(over(number(large), number(small)), number(large // small)))
        return
    if shared == 1:
        text = f"Only 1 goes into both {pair}, so no multiple is shared before their product."
        yield step(text, equation(times(number(one), number(other)), number(product)))
        return
    part = one // shared
    yield step(
        f"The greatest number that goes into {pair} is {whole(shared)}.",
        equation(over(number(other), number(shared)), number(other // shared)),
    )
    yield step(
        f"Divide {whole(one)} by it.", equation(over(number(one), number(shared)), number(part))
    )
    yield step(
        f"Multiply that by {whole(other)}.",
        equation(times(number(part), number(other)), number(product)),
    )
