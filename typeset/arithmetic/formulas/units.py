"""What unit a sum, product or quotient has, and how its two sides enter it.

A side may have to be changed to another unit first (kg with g), or count as a bare number:
12 kg at £7.50 is 12 times £7.50, and 50 g a day for 30 days is 50 g times 30.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from typeset.arithmetic.equations import PLUS
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, UNITS, Dimension, Unit, square_of
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

COUNTS = {Dimension.NUMBER, Dimension.COUNT}
_SUMS = {PLUS: ("add", "to"), MINUS: ("subtract", "from")}


@dataclass(frozen=True, slots=True)
class Meeting:
    """How two amounts meet. None for a side leaves it in its own unit."""

    result: Unit
    left: Unit | None = None
    right: Unit | None = None
    left_bare: bool = False
    right_bare: bool = False


def meeting(sign: str, left: Unit, right: Unit) -> Meeting:
    """How amounts of these units meet under the sign.

    Raises AmountError where they cannot.
    """
    if Dimension.CLOCK in (left.dimension, right.dimension):
        return _with_clock(sign, left, right)
    if sign in _SUMS:
        return _sum(sign, left, right)
    if sign == TIMES:
        return _product(left, right)
    if sign == DIVIDE:
        return _quotient(left, right)
    return _fraction(left, right)


def common_unit(units: list[Unit]) -> Unit:
    """The unit in which amounts of one kind are compared: the smallest, or the one noun.

    Raises AmountError where they are of different kinds.
    """
    common = units[0]
    for unit in units[1:]:
        met = _sum(PLUS, common, unit)
        common = met.left or met.result
    return common


def _same_kind(left: Unit, right: Unit) -> bool:
    return left.dimension is right.dimension or {left.dimension, right.dimension} <= COUNTS


def _counted(left: Unit, right: Unit) -> Unit:
    """The noun that both share, or that one alone has."""
    if left in (NUMBER, right):
        return right
    return left if right == NUMBER else NUMBER


def _sum(sign: str, left: Unit, right: Unit) -> Meeting:
    if not _same_kind(left, right):
        verb, word = _SUMS[sign]
        first, second = (left, right) if sign == PLUS else (right, left)
        raise AmountError(
            f"cannot {verb} {described(first)} {word} {described(second)}",
            "the two sides of + and − are of one kind",
        )
    if left.dimension in COUNTS:
        return Meeting(_counted(left, right))
    smaller = min(left, right, key=lambda unit: unit.per_base)
    return Meeting(smaller, *_changed(left, right, smaller))


def _changed(left: Unit, right: Unit, unit: Unit) -> tuple[Unit | None, Unit | None]:
    """The unit for each side that has another one."""
    return (None if left == unit else unit, None if right == unit else unit)


def _product(left: Unit, right: Unit) -> Meeting:
    kinds = (left.dimension, right.dimension)
    if set(kinds) <= COUNTS:
        # Four crates of six kites: which of them the product counts, only its name can tell.
        return Meeting(NUMBER)
    if kinds[0] in COUNTS:
        return Meeting(right)
    if kinds[1] in COUNTS:
        return Meeting(left)
    if kinds == (Dimension.LENGTH, Dimension.LENGTH):
        smaller = min(left, right, key=lambda unit: unit.per_base)
        area = square_of(smaller)
        if area is not None:
            return Meeting(area, *_changed(left, right, smaller))
    # A price for each kilogram, or a rate for each hour: the other side only counts.
    for rate in (Dimension.MONEY, Dimension.TIME):
        if (kinds[0] is rate) != (kinds[1] is rate) and Dimension.PERCENT not in kinds:
            counts_left = (kinds[1] is rate) == (rate is Dimension.MONEY)
            if counts_left:
                return Meeting(right, left_bare=True)
            return Meeting(left, right_bare=True)
    raise AmountError(
        f"cannot multiply {described(left)} by {described(right)}",
        "one side of × is a number; for a fraction or percentage use 'of'",
    )


def _quotient(left: Unit, right: Unit) -> Meeting:
    kinds = {left.dimension, right.dimension}
    if kinds <= COUNTS:
        return Meeting(NUMBER)
    if right.dimension in COUNTS:
        return Meeting(left)
    if left.dimension is right.dimension:
        smaller = min(left, right, key=lambda unit: unit.per_base)
        return Meeting(NUMBER, *_changed(left, right, smaller))
    if left.dimension is Dimension.AREA and right.dimension is Dimension.LENGTH:
        side = UNITS[left.singular.rstrip("²")]
        return Meeting(side, None, None if right == side else side)
    if left.dimension is Dimension.NUMBER:
        raise AmountError(
            f"cannot divide a number by {described(right)}", "divide an amount with a unit"
        )
    return Meeting(left, right_bare=True)


def _fraction(left: Unit, right: Unit) -> Meeting:
    if left.dimension not in (Dimension.NUMBER, Dimension.PERCENT):
        raise AmountError(
            f"'of' cannot follow {described(left)}",
            "put a fraction such as 3/4 or a percentage before 'of'",
        )
    return Meeting(right)


def _with_clock(sign: str, left: Unit, right: Unit) -> Meeting:
    """A time of day and a length of time, or the length between two times of day."""
    kinds = (left.dimension, right.dimension)
    if sign == MINUS and kinds == (Dimension.CLOCK, Dimension.CLOCK):
        return Meeting(UNITS["min"])
    if kinds == (Dimension.CLOCK, Dimension.TIME) and sign in _SUMS:
        return Meeting(left)
    if kinds == (Dimension.TIME, Dimension.CLOCK) and sign == PLUS:
        return Meeting(right)
    raise AmountError(
        f"cannot take {described(left)} {sign} {described(right)}",
        "add a length of time to a time of day, or subtract one time of day from another",
    )


def described(unit: Unit) -> str:
    """'kg', 'money', 'crates', 'a number'."""
    if unit.dimension is Dimension.MONEY:
        return "money"
    if unit.dimension is Dimension.CLOCK:
        return "a time of day"
    return unit.plural or "a number"


def entered(amount: Amount, unit: Unit | None, is_bare: bool) -> Amount:
    """The amount as it enters an operation."""
    if is_bare:
        return Amount(amount.value)
    return amount.to(unit) if unit is not None else amount


def in_unit(amount: Amount, unit: Unit, name: str) -> Amount:
    """The amount in the unit that the author or the question asks for.

    A bare count may be called anything. Raises AmountError for another kind of measure.
    """
    mine, theirs = amount.unit.dimension, unit.dimension
    if mine is theirs and mine not in COUNTS:
        return amount if amount.unit == unit else amount.to(unit)
    if mine is Dimension.NUMBER and theirs is Dimension.PERCENT:
        return Amount(amount.value * 100, unit)
    if mine in COUNTS and (theirs in COUNTS or mine is Dimension.NUMBER):
        return Amount(amount.value, unit, amount.form)
    raise AmountError(
        f"'{name}' is {described(amount.unit)}, not {described(unit)}", "change its unit or step"
    )


def named(amount: Amount, name: str, nouns: Collection[Unit]) -> Amount:
    """A bare count called by the story's noun where its name says so: 'kites', 'kites in all'."""
    if amount.unit != NUMBER:
        return amount
    words = name.split()
    for noun in nouns:
        begins = name == noun.plural or name.startswith(f"{noun.plural} ")
        if begins or (len(words) == 2 and words[1] == noun.plural):
            return Amount(amount.value, noun, amount.form)
    return amount
