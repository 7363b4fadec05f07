"""Ways to multiply: so many lots of the same amount, as pupils work it out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.methods import (
    TABLES_TO,
    Method,
    in_tables,
    just_above,
    place_parts,
    without_noughts,
    without_noun,
)
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit, noun
from typeset.quantities.writing import write_plain

LOT = noun("lot", "lots")
# More terms than these nobody adds one by one.
_MOST_TERMS = 6
_PLACES = ("Ones", "Tens", "Hundreds", "Thousands")
_DOUBLINGS = {2: 1, 4: 2, 8: 3}


@dataclass(frozen=True, slots=True)
class Lots:
    """`count` lots of `size`; `lot` is what each of them is called ('crate')."""

    count: Fraction
    size: Amount
    lot: Unit = LOT

    def so_many(self, count: Fraction) -> Amount:
        """'6 crates'."""
        return Amount(count, self.lot)

    def worth(self, count: Fraction) -> Amount:
        """What this many lots come to."""
        return self.size.like(count * self.size.value)

    def times(self, count: Fraction) -> Amount:
        """The count as a bare factor; 2.5 of 2.5 kg stays a decimal."""
        is_measure = self.lot.dimension is not Dimension.COUNT
        return Amount(count, form=Form.DECIMAL if is_measure else Form.AUTO)

    @property
    def total(self) -> Amount:
        """What all lots come to."""
        return self.worth(self.count)

    def product(self, count: Fraction) -> Equation:
        """`count × size = worth`."""
        return equation(times(self.times(count), self.size), self.worth(count))


def ways_to_multiply(lots: Lots) -> Iterator[Method]:
    """Every method that suits these numbers; at least one."""
    ways = [
        *_by_tables(lots),
        *_in_tenths(lots),
        *_repeated_addition(lots),
        *_doubling(lots),
        *_half_of_ten(lots),
        *_five_and_the_rest(lots),
        *_partitioned_count(lots),
        *_partitioned_size(lots),
        *_near_count(lots),
        *_near_size(lots),
        *_halved_and_doubled(lots),
        *_short_multiplication(lots),
    ]
    yield from ways
    if len(ways) < 2:
        yield _plainly(lots)


def _plainly(lots: Lots) -> Method:
    text = "That is {n} of {size}, so multiply: {total}."
    if lots.size.unit.dimension is Dimension.MONEY:
        text = "That is {n} at {size} each, so multiply: {total}."
    if lots.lot.dimension is not Dimension.COUNT:
        text = "That is {size} for each {lot}, {n} times over, so multiply: {total}."
    told = {"n": lots.so_many(lots.count), "size": lots.size, "total": lots.total}
    if "{lot}" in text:
        told["n"] = lots.times(lots.count)
    only = step(text, lots.product(lots.count), lot=lots.lot.singular, **told)
    return Method("Multiplying", (only,), lots.total)


def _shown(lots: Lots) -> Fraction:
    """The size as the pupil sees it: pence below a pound."""
    value = lots.size.value
    is_pence = lots.size.unit.dimension is Dimension.MONEY and value < 1
    return 100 * value if is_pence else value


def _by_tables(lots: Lots) -> Iterator[Method]:
    """A fact known by heart, and place value for the noughts."""
    shown = _shown(lots)
    if not (in_tables(lots.count) and in_tables(shown)):
        return
    cores = [Fraction(without_noughts(each)) for each in (lots.count, shown)]
    plainly = _plainly(lots)
    if cores == [lots.count, shown]:
        yield plainly
        return
    larger = lots.count * shown / (cores[0] * cores[1])
    fact = step(
        "Know the fact from the tables.",
        equation(times(Amount(cores[0]), Amount(cores[1])), Amount(cores[0] * cores[1])),
    )
    scaled = step(
        "The noughts make it {k} times as much: {total}.",
        lots.product(lots.count),
        k=Amount(larger),
        total=lots.total,
    )
    yield Method("A table fact and place value", (fact, scaled), lots.total)


def _in_tenths(lots: Lots) -> Iterator[Method]:
    """0.7 m as 7 tenths of a metre."""
    value = lots.size.value
    for name, size in (("tenths", 10), ("hundredths", 100)):
        parts = value * size
        is_money = lots.size.unit.dimension is Dimension.MONEY
        if value >= 1 or is_money or parts.denominator != 1 or not in_tables(lots.count):
            continue
        total = lots.count * parts
        steps = (
            step(f"{{size}}: that is {parts} {name}.", size=lots.size),
            step(
                f"{{n}} times {parts} {name}: {{total}} {name}.",
                equation(times(lots.times(lots.count), Amount(parts)), Amount(total)),
                n=lots.times(lots.count),
                total=Amount(total),
            ),
            step("So {total}.", lots.product(lots.count), total=lots.total),
        )
        yield Method(f"In {name}", steps, lots.total)
        return


def _repeated_addition(lots: Lots) -> Iterator[Method]:
    if lots.count.denominator == 1 and 2 < lots.count <= _MOST_TERMS:
        terms = [lots.size] * int(lots.count)
        only = step(
            f"Add {{size}} for each {lots.lot.singular}: {{total}} in all.",
            equation(plus(*terms), lots.total),
            size=lots.size,
            total=lots.total,
        )
        yield Method("Repeated addition", (only,), lots.total)


def _doubling(lots: Lots) -> Iterator[Method]:
    if lots.count.denominator != 1 or int(lots.count) not in _DOUBLINGS:
        return
    steps = []
    for power in range(1, _DOUBLINGS[int(lots.count)] + 1):
        count = Fraction(2**power)
        steps.append(
            step(
                f"{{n}}: double {{half}}{' again' if power > 1 else ''}, so {{new}}.",
                equation(times(Amount(Fraction(2)), lots.worth(count / 2)), lots.worth(count)),
                n=lots.so_many(count),
                half=lots.worth(count / 2),
                new=lots.worth(count),
            )
        )
    yield Method("Doubling", tuple(steps), lots.total)


def _half_of_ten(lots: Lots) -> Iterator[Method]:
    if lots.count != 5:
        return
    ten = lots.worth(Fraction(10))
    steps = (
        step(
            "{n} would be {ten}.",
            lots.product(Fraction(10)),
            n=lots.so_many(Fraction(10)),
            ten=ten,
        ),
        step(
            "{n}: half of that, so {total}.",
            equation(over(ten, Amount(Fraction(2))), lots.total),
            n=lots.so_many(lots.count),
            total=lots.total,
        ),
    )
    yield Method("Half of ten times", steps, lots.total)


def _five_and_the_rest(lots: Lots) -> Iterator[Method]:
    """A fact of the tables built on an easier one."""
    if lots.count in (6, 7, 8, 9) and in_tables(_shown(lots)):
        yield _in_parts(lots, "Building on five times", (Fraction(5), lots.count - 5))


def _partitioned_count(lots: Lots) -> Iterator[Method]:
    parts = place_parts(lots.count)
    if len(parts) > 1:
        yield _in_parts(lots, "Partitioning the number of groups", parts)


def _in_parts(lots: Lots, name: str, parts: tuple[Fraction, ...]) -> Method:
    split = step(
        f"Split {{n}} into {_spoken_list([lots.so_many(part) for part in parts])}.",
        equation(lots.times(lots.count), plus(*(lots.times(part) for part in parts))),
        n=lots.so_many(lots.count),
    )
    each = [
        step("{n}: {worth}.", lots.product(part), n=lots.so_many(part), worth=lots.worth(part))
        for part in parts
    ]
    joined = step(
        "Together: {total}.",
        equation(plus(*(lots.worth(part) for part in parts)), lots.total),
        total=lots.total,
    )
    return Method(name, (split, *each, joined), lots.total)


def _spoken_list(amounts: list[Amount]) -> str:
    told = [write_plain(amount).replace(" ", "\u00a0") for amount in amounts]
    return f"{', '.join(told[:-1])} and {told[-1]}"


def _partitioned_size(lots: Lots) -> Iterator[Method]:
    parts = [lots.size.like(part) for part in place_parts(lots.size.value)]
    if len(parts) < 2:
        return
    products = [lots.size.like(lots.count * part.value) for part in parts]
    split = step(
        f"Split {{size}} into {_spoken_list(parts)}.",
        equation(lots.size, plus(*parts)),
        size=lots.size,
    )
    each = [
        step(
            "{n} of {part}: {worth}.",
            equation(times(lots.times(lots.count), part), product),
            n=Amount(lots.count, LOT),
            part=part,
            worth=product,
        )
        for part, product in zip(parts, products, strict=True)
    ]
    joined = step("Together: {total}.", equation(plus(*products), lots.total), total=lots.total)
    yield Method("Partitioning the amount in each", (split, *each, joined), lots.total)


def _near_count(lots: Lots) -> Iterator[Method]:
    above = just_above(lots.count)
    if above is None or lots.count.denominator != 1:
        return
    gap = above - lots.count
    steps = (
        step(
            "{n} would be {worth}.",
            lots.product(above),
            n=lots.so_many(above),
            worth=lots.worth(above),
        ),
        step(
            "That is {gap} too many, so take off {extra}: {total}.",
            equation(minus(lots.worth(above), lots.worth(gap)), lots.total),
            gap=lots.so_many(gap),
            extra=lots.worth(gap),
            total=lots.total,
        ),
    )
    yield Method("A near multiple, adjusted", steps, lots.total)


def _near_size(lots: Lots) -> Iterator[Method]:
    above = just_above(lots.size.value)
    if above is None:
        return
    round_size, gap = lots.size.like(above), lots.size.like(above - lots.size.value)
    too_much = lots.size.like(lots.count * above)
    extra = lots.size.like(lots.count * gap.value)
    steps = (
        step(
            "Round {size} up to {round}. {n} of {round} would be {much}.",
            equation(times(lots.times(lots.count), round_size), too_much),
            size=lots.size, round=round_size, n=Amount(lots.count, LOT), much=too_much,
        ),
        step(
            "That is {gap} too much for each, {extra} in all.",
            equation(times(lots.times(lots.count), gap), extra),
            gap=gap, extra=extra,
        ),
        step(
            "Take it off: {total}.", equation(minus(too_much, extra), lots.total),
            total=lots.total,
        ),
    )  # fmt: skip
    yield Method("Rounding up and adjusting", steps, lots.total)


def _halved_and_doubled(lots: Lots) -> Iterator[Method]:
    """15 lots of 18 are 30 lots of 9; 14 lots of 6 are 7 lots of 12."""
    count, size = lots.count, without_noun(lots.size).value
    if lots.size.unit.dimension is Dimension.MONEY or count <= TABLES_TO:
        return
    if count % 10 == 5 and size % 2 == 0 and size > 2:
        new_count, new_size, told = 2 * count, size / 2, "Twice as many groups, half as much in"
    elif count % 2 == 0 and in_tables(count / 2) and in_tables(2 * size):
        new_count, new_size, told = count / 2, 2 * size, "Half as many groups, twice as much in"
    else:
        return
    new = times(Amount(new_count), lots.size.like(new_size))
    steps = (
        step(
            f"{told} each: the total stays the same.",
            equation(times(Amount(count), lots.size), new),
        ),
        step(
            "{n} of {new}: {total}.",
            equation(new, lots.total),
            n=Amount(new_count, LOT),
            new=lots.size.like(new_size),
            total=lots.total,
        ),
    )
    yield Method("Doubling one number and halving the other", steps, lots.total)


def _short_multiplication(lots: Lots) -> Iterator[Method]:
    """The written method, digit by digit from the ones, with its carrying."""
    one_digit, long = sorted((lots.count, without_noun(lots.size).value))
    is_whole = one_digit.denominator == 1 and long.denominator == 1
    if not (is_whole and 1 < one_digit <= 9 and TABLES_TO < long < 10 ** len(_PLACES)):
        return
    steps: list[Step] = []
    carried = 0
    for place, digit in zip(_PLACES, reversed(str(long)), strict=False):
        product = int(one_digit) * int(digit) + carried
        sum_ = times(Amount(one_digit), Amount(Fraction(int(digit))))
        if carried:
            sum_ = plus(sum_, Amount(Fraction(carried)))
        carried = product // 10
        is_last = len(steps) == len(str(long)) - 1
        ending = f" Write {product % 10} and carry {carried}." if carried and not is_last else ""
        steps.append(
            step(f"{place}: {product}.{ending}", equation(sum_, Amount(Fraction(product))))
        )
    steps.append(step("So {total}.", lots.product(lots.count), total=lots.total))
    yield Method("Short multiplication", tuple(steps), lots.total)
