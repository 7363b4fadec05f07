"""Ways to divide, told as sharing (how much each?) or as grouping (how many groups?)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from math import gcd

from typeset.arithmetic.dividing_again import by_factors
from typeset.arithmetic.division import Division, closing
from typeset.arithmetic.equations import Remainder, equation, minus, over, plus, times
from typeset.arithmetic.methods import (
    TABLES_TO,
    Method,
    in_tables,
    is_counted,
    place_parts,
    without_noughts,
    without_noun,
)
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, join
from typeset.quantities.units import Unit, noun
from typeset.quantities.writing import say

# More steps than these nobody counts up, and more chunks nobody takes off.
_MOST_COUNTED = 10
_MOST_CHUNKS = 5
_CHUNKS = (1000, 500, 200, 100, 50, 20, 10, 5, 2, 1)
_HALVINGS = {2: 1, 4: 2, 8: 3}
_TIMES_WORDS = {1: "once", 2: "twice", 3: "three times"}
_PLACES = tuple(noun(name, f"{name}s") for name in ("one", "ten", "hundred", "thousand"))


def ways_to_divide(division: Division) -> Iterator[Method]:
    """Every method that suits these numbers; at least one."""
    ways = [
        *_table_fact_backwards(division),
        *_fact_with_noughts(division),
        *_both_smaller(division),
        *_counting_up(division),
        *_chunking(division),
        *_partitioning(division),
        *_halving(division),
        *_tenth_doubled(division),
        *_short_division(division),
    ]
    yield from ways
    if len(ways) < 2:
        yield from by_factors(division)
    if not ways:
        yield _method(division, "Dividing", (closing(division),))


def _method(division: Division, name: str, steps: tuple[Step, ...]) -> Method:
    return Method(name, steps, division.said(division.quotient), division.rest)


def _left_over(division: Division) -> Iterator[Step]:
    """The step from the nearest multiple to what is left."""
    if division.rest:
        used = division.part(division.quotient * division.by)
        rest = division.part(division.rest)
        yield step("That leaves {rest}.", equation(minus(division.total, used), rest), rest=rest)


def _table_fact_backwards(division: Division) -> Iterator[Method]:
    """The multiple that fits, known from the tables or tried."""
    quotient = division.quotient
    if quotient.denominator != 1 or not 0 < quotient <= TABLES_TO:
        return
    is_known = in_tables(division.by)
    if not is_known and (quotient == 1 or not division.grouping):
        return
    text = "{q} of {by} make {worth}." if division.grouping else "{n} with {q} each make {worth}."
    if quotient == 1:
        text = "One group is {worth}." if division.grouping else "One each uses {worth}."
    if division.rest and not is_known:
        text += " One more would make {beyond}, which is too much."
    fact = step(
        text,
        division.fact(quotient),
        q=division.said(quotient),
        by=division.divisor,
        n=Amount(division.by, division.group),
        worth=division.part(quotient * division.by),
        beyond=division.part((quotient + 1) * division.by),
    )
    steps = (fact, *_left_over(division), closing(division))
    name = "A table fact backwards" if is_known else "Trying multiples"
    yield _method(division, name, steps)


def _fact_with_noughts(division: Division) -> Iterator[Method]:
    """240 ÷ 6 from 24 ÷ 6."""
    quotient, by = division.quotient, division.by
    if division.rest or not (in_tables(quotient) and in_tables(by)) or quotient <= TABLES_TO:
        return
    core = Fraction(without_noughts(quotient))
    fact = step(
        "Know the fact from the tables.",
        equation(times(Amount(core), Amount(by)), Amount(core * by)),
    )
    scaled = step(
        "{k} times as much: {total}.",
        division.fact(quotient),
        k=Amount(quotient / core),
        total=division.total,
    )
    steps = (fact, scaled, closing(division))
    yield _method(division, "A table fact and place value", steps)


def _both_smaller(division: Division) -> Iterator[Method]:
    """1,500 ÷ 50 is 150 ÷ 5, and 12 ÷ 1.5 is 24 ÷ 3: a quotient keeps its value."""
    if division.rest or not division.grouping:
        return
    scale, told = _scale_of(division.total.value, division.by)
    if scale == 1:
        return
    total, by = (_plain(division, value) for value in (division.total.value, division.by))
    small = over(Amount(total.value * scale), Amount(by.value * scale))
    only = step(
        f"Make both numbers {told}: the quotient stays the same.",
        equation(over(total, by), small, Amount(division.quotient)),
    )
    name = "Making both numbers smaller" if scale < 1 else "Making both numbers whole"
    yield _method(division, name, (only, closing(division)))


def _scale_of(total: Fraction, by: Fraction) -> tuple[Fraction, str]:
    """What both numbers are multiplied by to become easier, and how that is told."""
    if total.denominator == by.denominator == 1:
        scale = 1
        while not (total % (10 * scale) or by % (10 * scale)):
            scale *= 10
        if scale == 1:
            common = gcd(int(total), int(by))
            scale = 2 if common % 2 == 0 else common
        if by == scale:
            return Fraction(1), ""
        return Fraction(1, scale), "half as large" if scale == 2 else f"{scale} times smaller"
    for factor in (2, 10, 100):
        if (total * factor).denominator == (by * factor).denominator == 1:
            return Fraction(factor), "twice as large" if factor == 2 else f"{factor} times as large"
    return Fraction(1), ""


def _plain(division: Division, value: Fraction) -> Amount:
    """The number alone, as its unit would write it."""
    return Amount(value, form=Form.AUTO if is_counted(division.total) else Form.DECIMAL)


def _counting_up(division: Division) -> Iterator[Method]:
    """In steps of one group, or dealing out in rounds."""
    quotient = division.quotient
    if quotient.denominator != 1 or not 2 <= quotient <= _MOST_COUNTED:
        return
    if not division.grouping and not is_counted(division.total):
        return
    counts = join([_number(division, k * division.by) for k in range(1, int(quotient) + 1)], ", ")
    if division.grouping:
        text = "Count up in steps of {by}: {counts}. That is {q}."
    else:
        text = "Deal out one to each: a round uses {by}. Count the rounds: {counts}."
    told = step(
        text,
        division.fact(quotient),
        by=division.divisor,
        counts=counts,
        q=division.said(quotient),
    )
    steps = (told, *_left_over(division), closing(division))
    name = "Counting up" if division.grouping else "Dealing out in rounds"
    yield _method(division, name, steps)


def _number(division: Division, value: Fraction) -> Rich:
    return say("{n}", n=without_noun(division.part(value)))


def _chunking(division: Division) -> Iterator[Method]:
    chunks = _chunks_of(division.quotient)
    if not 1 < len(chunks) <= _MOST_CHUNKS:
        return
    left, steps = division.total.value, []
    for chunk in chunks:
        used = chunk * division.by
        text = (
            "Take off {worth} for {q}: {left} left."
            if division.grouping
            else "Give {q} to each, {worth} in all: {left} left."
        )
        result = division.part(left - used)
        steps.append(
            step(
                text,
                equation(minus(division.part(left), division.part(used)), result),
                worth=division.part(used),
                q=division.said(chunk),
                left=result if result.value else "nothing",
            )
        )
        left -= used
    steps.append(_joined(division, chunks))
    yield _method(division, "Chunking", (*steps, closing(division)))


def _chunks_of(quotient: Fraction) -> list[Fraction]:
    """A quotient beyond the tables in easy pieces: 28 as 20, 5, 2, 1."""
    if quotient.denominator != 1 or not TABLES_TO - 2 < quotient < 2 * _CHUNKS[0]:
        return []
    rest, chunks = quotient, []
    for chunk in _CHUNKS:
        while rest >= chunk:
            chunks.append(Fraction(chunk))
            rest -= chunk
    return chunks


def _joined(division: Division, quotients: list[Fraction]) -> Step:
    amounts = [without_noun(division.said(each)) for each in quotients]
    total = without_noun(division.said(division.quotient))
    saying = division.saying(division.quotient)
    return step("Together: {saying}.", equation(plus(*amounts), total), saying=saying)


def _partitioning(division: Division) -> Iterator[Method]:
    """The total split into multiples that divide at sight, one for each digit of the quotient."""
    quotients = place_parts(division.quotient)
    if len(quotients) < 2:
        return
    parts = [each * division.by for each in quotients]
    pieces = [division.part(part) for part in parts]
    if division.rest:
        pieces.append(division.part(division.rest))
    split = step(
        "Split {total} into parts that divide easily.",
        equation(division.total, plus(*pieces)),
        total=division.total,
    )
    each_part = (
        step(
            "{part}: {saying}.",
            division.dividing(part),
            part=division.part(part),
            saying=division.saying(part / division.by),
        )
        for part in parts
    )
    steps = (split, *each_part, _joined(division, list(quotients)), closing(division))
    yield _method(division, "Partitioning the total", steps)


def _halving(division: Division) -> Iterator[Method]:
    if division.rest or division.by not in _HALVINGS:
        return
    count = _HALVINGS[int(division.by)]
    halves = [division.total.value / 2**power for power in range(count + 1)]
    if is_counted(division.total) and any(half.denominator != 1 for half in halves):
        return
    steps: list[Step] = []
    for before, after in pairwise(halves):
        # A number of groups is no amount of floats, so grouping halves bare numbers.
        old, new = (
            (Amount(before), Amount(after))
            if division.grouping
            else (division.part(before), division.part(after))
        )
        again = " again" if steps else ""
        steps.append(
            step(
                f"Halve {{old}}{again}: {{new}}.",
                equation(over(old, Amount(Fraction(2))), new),
                old=old,
                new=new,
            )
        )
    opening = step(f"Dividing by {division.by} is halving {_TIMES_WORDS[count]}.")
    yield _method(division, "Halving", (opening, *steps, closing(division)))


def _tenth_doubled(division: Division) -> Iterator[Method]:
    if division.by != 5 or division.total.value % 10 or division.total.value <= 10:
        return
    total = Amount(division.total.value)
    tenth = Amount(total.value / 10)
    steps = (
        step(
            "Dividing by 10 is easy: {tenth}.",
            equation(over(total, Amount(Fraction(10))), tenth),
            tenth=tenth,
        ),
        step(
            "Dividing by 5 gives twice as many: {double}.",
            equation(times(Amount(Fraction(2)), tenth), Amount(2 * tenth.value)),
            double=Amount(2 * tenth.value),
        ),
    )
    yield _method(division, "A tenth, doubled", (*steps, closing(division)))


def _short_division(division: Division) -> Iterator[Method]:
    """The written method, digit by digit from the left."""
    value, by, quotient = division.total.value, division.by, division.quotient
    whole = value.denominator == 1 and by.denominator == 1 and quotient.denominator == 1
    if not (whole and 2 <= by <= TABLES_TO < quotient and value < 10 ** len(_PLACES)):
        return
    steps: list[Step] = []
    carried = 0
    digits = str(value)
    for at, digit in enumerate(digits):
        current = 10 * carried + int(digit)
        if current < by and not steps:
            carried = current
            continue
        steps.append(_digit_step(current, int(by), _PLACES[len(digits) - at - 1]))
        carried = current % int(by)
    yield _method(division, "Short division", (*steps, closing(division)))


def _digit_step(current: int, by: int, place: Unit) -> Step:
    """'43 tens ÷ 5: 8 tens, and 3 tens to carry on.'"""
    quotient, rest = divmod(current, by)
    whole = over(Amount(Fraction(current)), Amount(Fraction(by)))
    result = Amount(Fraction(quotient))
    told = {"n": Amount(Fraction(current), place), "q": Amount(Fraction(quotient), place)}
    if not rest:
        return step(f"{{n}} divided by {by}: {{q}}.", equation(whole, result), **told)
    left = Amount(Fraction(rest), place)
    more = "left over" if place is _PLACES[0] else "to carry on"
    return step(
        f"{{n}} divided by {by}: {{q}}, and {{left}} {more}.",
        equation(whole, Remainder(result, Amount(Fraction(rest)))),
        left=left,
        **told,
    )
