"""The right ways from a fraction and one amount to the others."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.checks import told_after
from typeset.arithmetic.equations import (
    Expression,
    equation,
    minus,
    over,
    part_of,
    plus,
    times,
)
from typeset.arithmetic.families.fraction_view import PART, REST, WHOLE, Cut
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount, Form, number
from typeset.quantities.units import PERCENT

# A percentage with more equal parts than this is not thought of as a fraction.
_MOST_PIECES = 20
# Stepping stones of percentages with what the whole is divided by.
_STONES = {50: 2, 25: 4, 10: 10, 5: 20, 1: 100}
_MOST_STONES = 3


def cut_ways(cut: Cut) -> Iterator[Working]:
    """Equal parts; multiplying first; tenths and hundredths; the rest by the part; a check."""
    found = list(_by_parts(cut))
    if cut.is_percent:
        found += _by_unit_percent(cut, 10)
        found += _by_unit_percent(cut, 1)
        found += _by_stones(cut)
    found += _multiplied_first(cut)
    found += _part_first(cut)
    if not found:
        found.append(_parts_working(cut))
    yield from found
    yield told_after(_checked(cut), found[0])


def _label(name: str) -> str:
    return f"The {name}"


def _by_parts(cut: Cut) -> Iterator[Working]:
    if cut.is_percent and cut.pieces > _MOST_PIECES:
        return
    if cut.is_sensible(cut.like(cut.amount.value / cut.parts(cut.known))):
        yield _parts_working(cut)


def _parts_working(cut: Cut) -> Working:
    """The known amount shared among its parts, and so many of these."""
    one = cut.like(cut.amount.value / cut.parts(cut.known))
    steps = [*_counted(cut), *_one_part(cut, one)]
    for name in cut.problem.finds:
        steps += _from_one(cut, name, one)
    return cut.working("One part first", steps, {n: cut.value(n) for n in cut.problem.finds})


def _counted(cut: Cut) -> list[Step]:
    """How many parts there are, and of what."""
    steps = []
    if cut.is_percent:
        share = Amount(cut.fraction, form=Form.FRACTION)
        text = "{percent} is {share}."
        percent = cut.written_share(PART)
        steps.append(step(text, equation(percent, share), percent=percent, share=share))
    text = "The whole is {pieces}, and the part is {taken} of them."
    steps.append(
        step(
            text,
            pieces=so_many(Fraction(cut.pieces), "equal part"),
            taken=Amount(cut.parts(PART)),
        )
    )
    if REST in (cut.known, *cut.problem.finds):
        steps.append(
            step(
                "So the rest is {rest}.",
                equation(minus(number(cut.pieces), Amount(cut.parts(PART))), _rest_parts(cut)),
                rest=so_many(cut.parts(REST), "part"),
            )
        )
    return steps


def _rest_parts(cut: Cut) -> Amount:
    return Amount(cut.parts(REST))


def _one_part(cut: Cut, one: Amount) -> list[Step]:
    count = cut.parts(cut.known)
    if count == 1:
        return [step(f"{_label(cut.known)} is one part: {{one}}.", one=one)]
    return [
        step(
            f"{_label(cut.known)} is {{amount}}: share it among {{count}} to find one part.",
            equation(over(cut.amount, Amount(count)), one),
            amount=cut.amount,
            count=so_many(count, "part"),
        )
    ]


def _from_one(cut: Cut, name: str, one: Amount) -> list[Step]:
    count = cut.parts(name)
    if count == 1:
        return [step(f"{_label(name)} is one part: {{one}}.", one=one)]
    result = equation(times(one, Amount(count)), cut.value(name))
    return [step(f"{_label(name)}: {{count}}.", result, count=so_many(count, "part"))]


def _by_unit_percent(cut: Cut, unit: int) -> Iterator[Working]:
    """Through 10 % or 1 %, where all percentages are whole numbers of it."""
    names = (cut.known, *cut.problem.finds)
    counts = {name: cut.share(name) * 100 / unit for name in names}
    if any(count.denominator != 1 for count in counts.values()) or counts[cut.known] == 1:
        return
    one = cut.like(cut.amount.value / counts[cut.known])
    if not cut.is_sensible(one):
        return
    percent = Amount(Fraction(unit), PERCENT)
    steps = _rest_share(cut)
    steps.append(
        step(
            f"{_label(cut.known)} is {{share}}, so divide by {{count}} to find {{percent}}.",
            equation(over(cut.amount, Amount(counts[cut.known])), one),
            share=cut.written_share(cut.known),
            count=Amount(counts[cut.known]),
            percent=percent,
        )
    )
    for name in cut.problem.finds:
        if counts[name] == 1:
            steps.append(step(f"{_label(name)} is just that."))
            continue
        steps.append(
            step(
                f"{_label(name)} is {{share}}: {{count}} times that.",
                equation(times(one, Amount(counts[name])), cut.value(name)),
                share=cut.written_share(name),
                count=Amount(counts[name]),
            )
        )
    yield cut.working(f"Through {unit}%", steps, {n: cut.value(n) for n in cut.problem.finds})


def _rest_share(cut: Cut) -> list[Step]:
    if REST not in (cut.known, *cut.problem.finds):
        return []
    hundred = Amount(Fraction(100), PERCENT)
    share, rest = cut.written_share(PART), cut.written_share(REST)
    result = equation(minus(hundred, share), rest)
    return [step("The rest is what is missing to {hundred}.", result, hundred=hundred)]


def _by_stones(cut: Cut) -> Iterator[Working]:
    """The percentage of a whole put together from half, quarter, tenth, and half of that."""
    if cut.known != WHOLE or cut.problem.finds != (PART,):
        return
    stones = _stones(cut.share(PART) * 100)
    if not 2 <= len(stones) <= _MOST_STONES:
        return
    steps: list[Step] = []
    pieces: list[Amount] = []
    for stone, count in stones:
        one = cut.like(cut.amount.value / _STONES[stone])
        steps.append(
            step(
                "{percent}: divide by {by}.",
                equation(over(cut.amount, number(_STONES[stone])), one),
                percent=Amount(Fraction(stone), PERCENT),
                by=number(_STONES[stone]),
            )
        )
        pieces.append(cut.like(one.value * count))
        if count > 1:
            result = equation(times(one, number(count)), pieces[-1])
            percent = Amount(Fraction(stone * count), PERCENT)
            steps.append(
                step("{percent}: {n} times that.", result, percent=percent, n=number(count))
            )
    if not cut.is_sensible(*pieces):
        return
    terms: tuple[Expression, ...] = tuple(pieces)
    result = equation(plus(*terms), cut.value(PART))
    steps.append(step("Together: {share}.", result, share=cut.written_share(PART)))
    yield cut.working("Putting the percentage together", steps, {PART: cut.value(PART)})


def _stones(percentage: Fraction) -> list[tuple[int, int]]:
    """The fewest stones, largest first; empty where the percentage is not whole."""
    if percentage.denominator != 1:
        return []
    left, stones = percentage.numerator, []
    for stone in _STONES:
        count, left = divmod(left, stone)
        if count:
            stones.append((stone, count))
    return stones


def _multiplied_first(cut: Cut) -> Iterator[Working]:
    """The same two operations the other way round; it keeps things whole for longer."""
    if len(cut.problem.finds) > 1 or cut.is_percent:
        return
    (name,) = cut.problem.finds
    up, down = cut.parts(name), cut.parts(cut.known)
    if 1 in (up, down):
        return
    product = cut.like(cut.amount.value * up)
    steps = [
        *_counted(cut),
        step(
            f"Take {{amount}} {{up}} times, because the {name} is {{parts}}.",
            equation(times(cut.amount, Amount(up)), product),
            amount=cut.amount,
            up=Amount(up),
            parts=so_many(up, "part"),
        ),
        step(
            f"Divide by {{down}}, because the {cut.known} is {{parts}}.",
            equation(over(product, Amount(down)), cut.value(name)),
            down=Amount(down),
            parts=so_many(down, "part"),
        ),
    ]
    yield cut.working("Multiplying first", steps, {name: cut.value(name)})


def _part_first(cut: Cut) -> Iterator[Working]:
    """The rest by taking the part off the whole."""
    if cut.known != WHOLE or cut.problem.finds != (REST,):
        return
    part, rest = cut.value(PART), cut.value(REST)
    if not cut.is_sensible(part):
        return
    share = cut.written_share(PART)
    steps = [
        step(
            "First the part: {share} of {whole}.",
            equation(part_of(share, cut.amount), part),
            share=share,
            whole=cut.amount,
        ),
        step("The rest: take that off the whole.", equation(minus(cut.amount, part), rest)),
    ]
    yield cut.working("The part first", steps, {REST: rest})


def _checked(cut: Cut) -> Working:
    """Back to what is known: from the part to the whole, or from the whole to the part."""
    finds = cut.problem.finds
    steps = _back_to_whole(cut, finds[0]) if WHOLE not in finds else _forth_from_whole(cut)
    return cut.working("Checking", steps, {name: cut.value(name) for name in finds})


def _forth_from_whole(cut: Cut) -> list[Step]:
    """The fraction taken of the whole that was found."""
    whole, known = cut.value(WHOLE), cut.amount
    share = cut.written_share(cut.known)
    text = f"Check: the {cut.known} must be {{share}} of {{whole}}."
    return [step(text, equation(part_of(share, whole), known), share=share, whole=whole)]


def _back_to_whole(cut: Cut, name: str) -> list[Step]:
    """All the parts again from those that were found, then what was known."""
    found, whole = cut.value(name), cut.value(WHOLE)
    count = cut.parts(name)
    one = cut.like(found.value / count)
    steps = []
    if count != 1:
        result = equation(over(found, Amount(count)), one)
        text = f"Check: the {name} is {{count}}, so one part is {{one}}."
        steps.append(step(text, result, count=so_many(count, "part"), one=one))
    pieces = so_many(Fraction(cut.pieces), "part")
    result = equation(times(one, number(cut.pieces)), whole)
    steps.append(step("The whole is {pieces}: {whole}.", result, pieces=pieces, whole=whole))
    if cut.known != WHOLE:
        result = equation(minus(whole, found), cut.amount)
        steps.append(step(f"That leaves the {cut.known}, as it should.", result))
    return steps
