"""Ways to add, in the head and in columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import zip_longest

from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.methods import Method, just_above, place_parts
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.writing import whole

PLACES = ("Ones", "Tens", "Hundreds", "Thousands", "Ten thousands", "Hundred thousands")
# Further than this nobody counts on or back one by one.
MOST_COUNTED = 6
# Sums up to here are known by heart (number bonds of Years 1 and 2).
_KNOWN_TO = 20


def ways_to_add(terms: Sequence[Amount]) -> Iterator[Method]:
    """Every method that suits these numbers (all in one unit, none below 0); at least one."""
    if len(terms) == 2:
        first, second = terms
        ways = [
            *_counting_on(first, second),
            *_in_parts(first, second),
            *_next_ten(first, second),
            *_rounded(first, second),
            *_by_places(terms),
            *_in_columns(terms),
        ]
    else:
        ways = [
            *_one_after_another(terms),
            *_round_pair(terms),
            *_by_places(terms),
            *_in_columns(terms),
        ]
    yield from ways
    is_whole = all(term.value.denominator == 1 for term in terms)
    if len(ways) < 2 or (is_whole and total_of(terms).value <= _KNOWN_TO):
        yield _at_once(terms)


def total_of(terms: Sequence[Amount]) -> Amount:
    """The sum, in the unit of the first."""
    return terms[0].like(sum((term.value for term in terms), Fraction(0)))


def ends_of_places(value: Fraction) -> Fraction:
    """How far it is up to the next ten, or to the next whole number for parts."""
    return -value % 10 if value.denominator == 1 else -value % 1


def _at_once(terms: Sequence[Amount]) -> Method:
    total = total_of(terms)
    only = step("Add: {total}.", equation(plus(*terms), total), total=total)
    return Method("Adding", (only,), total)


def _counting_on(first: Amount, second: Amount) -> Iterator[Method]:
    small, large = sorted((first, second), key=lambda each: each.value)
    if small.value not in range(1, MOST_COUNTED + 1) or large.value.denominator != 1:
        return
    counts = ", ".join(whole(int(large.value) + at) for at in range(1, int(small.value) + 1))
    total = total_of((large, small))
    only = step(
        f"Start with the larger, {{large}}, and count on: {counts}.",
        equation(plus(large, small), total),
        large=large,
    )
    yield Method("Counting on from the larger", (only,), total)


def _in_parts(first: Amount, second: Amount) -> Iterator[Method]:
    parts = [second.like(part) for part in place_parts(second.value)]
    if len(parts) < 2 or first.value <= 10:
        return
    steps: list[Step] = []
    reached = first
    for part in parts:
        now = first.like(reached.value + part.value)
        told = equation(plus(reached, part), now)
        text = "Then add {part}: {now}." if steps else "Add {part} first: {now}."
        steps.append(step(text, told, part=part, now=now))
        reached = now
    yield Method("Adding in parts", tuple(steps), reached)


def _next_ten(first: Amount, second: Amount) -> Iterator[Method]:
    gap = first.like(ends_of_places(first.value))
    rest = second.like(second.value - gap.value)
    if not gap.value or rest.value <= 0 or second.value.denominator != first.value.denominator:
        return
    full = first.like(first.value + gap.value)
    total = total_of((first, second))
    steps = (
        step(
            "{gap} of the {second} make {full}.",
            equation(plus(first, gap), full),
            gap=gap,
            second=second,
            full=full,
        ),
        step("The other {rest}: {total}.", equation(plus(full, rest), total), rest=rest,
             total=total),
    )  # fmt: skip
    yield Method("Making the next round number", steps, total)


def _rounded(first: Amount, second: Amount) -> Iterator[Method]:
    above = just_above(second.value)
    if above is None or first.value <= 10:
        return
    more, gap = second.like(above), second.like(above - second.value)
    much, total = first.like(first.value + above), total_of((first, second))
    steps = (
        step("Add {more} instead of {second}: {much}.", equation(plus(first, more), much),
             more=more, second=second, much=much),
        step("That is {gap} too much: {total}.", equation(minus(much, gap), total),
             gap=gap, total=total),
    )  # fmt: skip
    yield Method("Rounding and adjusting", steps, total)


def _by_places(terms: Sequence[Amount]) -> Iterator[Method]:
    """Hundreds with hundreds, tens with tens, ones with ones."""
    if any(term.value.denominator != 1 or term.value < 11 for term in terms):
        return
    columns = _columns(terms)
    if len(columns) > len(PLACES):
        return
    steps: list[Step] = []
    sums: list[Amount] = []
    for place in reversed(range(len(columns))):
        values = [terms[0].like(digit * 10**place) for digit in columns[place] if digit]
        if not values:
            continue
        sums.append(total_of(values))
        worked = equation(plus(*values), sums[-1]) if values[1:] else None
        steps.append(step(f"{PLACES[place]}: {{sum}}.", worked, sum=sums[-1]))
    total = total_of(terms)
    if sums[1:]:
        steps.append(step("Together: {total}.", equation(plus(*sums), total), total=total))
    yield Method("Tens with tens, ones with ones", tuple(steps), total)


def _columns(terms: Sequence[Amount]) -> list[tuple[int, ...]]:
    """The digits of whole numbers, column by column from the ones."""
    digits = [[int(digit) for digit in reversed(str(term.value))] for term in terms]
    return list(zip_longest(*digits, fillvalue=0))


def _in_columns(terms: Sequence[Amount]) -> Iterator[Method]:
    if any(term.value.denominator != 1 for term in terms) or total_of(terms).value <= _KNOWN_TO:
        return
    columns = _columns(terms)
    if len(columns) > len(PLACES):
        return
    steps: list[Step] = []
    carried = 0
    for place, digits in enumerate(columns):
        values = [Amount(Fraction(digit)) for digit in (*digits, *([carried] if carried else []))]
        result = sum(digits) + carried
        carried = result // 10
        is_last = place == len(columns) - 1
        ending = f" Write {result % 10} and carry {carried}." if carried and not is_last else ""
        worked = equation(plus(*values), Amount(Fraction(result)))
        steps.append(step(f"{PLACES[place]}: {result}.{ending}", worked))
    total = total_of(terms)
    steps.append(step("Read the digits: {total}.", equation(plus(*terms), total), total=total))
    yield Method("Column addition", tuple(steps), total)


def _one_after_another(terms: Sequence[Amount]) -> Iterator[Method]:
    steps: list[Step] = []
    reached = terms[0]
    for term in terms[1:]:
        now = reached.like(reached.value + term.value)
        told = "Then add {term}: {now}." if steps else "{first} and {term}: {now}."
        steps.append(
            step(told, equation(plus(reached, term), now), first=reached, term=term, now=now)
        )
        reached = now
    yield Method("One after another", tuple(steps), reached)


def _round_pair(terms: Sequence[Amount]) -> Iterator[Method]:
    """Two that make a round number first, wherever they stand."""
    pairs = [(i, j) for j in range(len(terms)) for i in range(j) if (i, j) != (0, 1)]
    fits = [
        (i, j) for i, j in pairs
        if not ends_of_places(terms[i].value + terms[j].value) and terms[i].value % 10
    ]  # fmt: skip
    if not fits:
        return
    i, j = fits[0]
    pair = total_of((terms[i], terms[j]))
    rest = [term for at, term in enumerate(terms) if at not in (i, j)]
    total = total_of(terms)
    steps = (
        step("{first} and {second} make a round number: {pair}.",
             equation(plus(terms[i], terms[j]), pair),
             first=terms[i], second=terms[j], pair=pair),
        step("Then the rest: {total}.", equation(plus(pair, *rest), total), total=total),
    )  # fmt: skip
    yield Method("A round pair first", steps, total)
