"""What all written and mental methods share: their shape, and numbers taken apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation
from typeset.arithmetic.workings import Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit

# The multiplication tables of England's curriculum reach 12 × 12 by the end of Year 4.
TABLES_TO = 12
# A number this much below a round one is worth rounding up: 19 and 18, £2.90 and £2.99.
_NEAR = (1, 2)
_NEAR_PART = Fraction(1, 10)


@dataclass(frozen=True, slots=True)
class Method:
    """A way to work one operation out: its name as printed, its steps, and what comes of it.

    `rest` is what a division leaves over.
    """

    name: str
    steps: tuple[Step, ...]
    result: Amount
    rest: Fraction = Fraction(0)

    def working(self, answers: Mapping[str, AnswerValue], *more: Step) -> Working:
        """The method as a whole working, with further steps at its end."""
        return Working(self.name, (*self.steps, *more), answers)

    def after(self, *opening: Step) -> Method:
        """The method with steps before it."""
        return Method(self.name, (*opening, *self.steps), self.result, self.rest)


def without_noun(amount: Amount) -> Amount:
    """The amount without the noun that is counted; measures and money keep their unit."""
    if amount.unit.dimension is Dimension.COUNT:
        return Amount(amount.value, form=amount.form)
    return amount


def is_counted(amount: Amount) -> bool:
    """True for plain numbers and things that are counted."""
    return amount.unit.dimension in (Dimension.COUNT, Dimension.NUMBER)


def check_alike(*amounts: Amount) -> None:
    """Raises AmountError where the amounts cannot be added to one another."""
    first = amounts[0]
    for other in amounts[1:]:
        if is_counted(first) and is_counted(other):
            continue
        if first.unit.dimension is not other.unit.dimension:
            raise AmountError(
                f"{_kind(first)} and {_kind(other)} cannot be put together",
                "give both in units of the same kind",
            )


def _kind(amount: Amount) -> str:
    if is_counted(amount):
        return f"a number of {amount.unit.plural}" if amount.unit.plural else "a plain number"
    return f"an amount in {amount.unit.plural}"


def in_unit(amount: Amount, unit: Unit) -> Amount:
    """The same amount in `unit`; counted things are called by the new noun."""
    if is_counted(amount) and unit.dimension in (Dimension.COUNT, Dimension.NUMBER):
        return Amount(amount.value, unit, amount.form)
    if unit.dimension is not amount.unit.dimension:
        raise AmountError(
            f"{_kind(amount)} cannot be given in {unit.plural or 'plain numbers'}",
            "change the unit of the answer",
        )
    return amount.to(unit)


def conversion(amount: Amount, unit: Unit) -> tuple[Amount, tuple[Step, ...]]:
    """The amount in `unit`, and the step that writes it so (none where it is so already)."""
    converted = in_unit(amount, unit)
    if is_counted(amount) or (unit == amount.unit and amount.form is not Form.COMPOUND):
        return converted, ()
    return converted, (
        step("Write {old} as {new}.", equation(amount, converted), old=amount, new=converted),
    )


def finest_unit(*amounts: Amount) -> Unit:
    """The smallest of the amounts' units, in which none of them needs more decimals."""
    return min(amounts, key=lambda amount: amount.unit.per_base).unit


def place_parts(value: Fraction) -> tuple[Fraction, ...]:
    """The number by place value: 342 gives 300, 40, 2; what is less than one stays together,
    or gives tenths and hundredths where there is nothing else (64p: 60p and 4p)."""
    count = value.numerator // value.denominator
    if not count and (value * 100).denominator == 1:
        tenths = Fraction((value * 10).numerator // (value * 10).denominator, 10)
        return tuple(part for part in (tenths, value - tenths) if part)
    digits = str(count)
    parts = [Fraction(int(digit) * 10 ** (len(digits) - at - 1)) for at, digit in enumerate(digits)]
    return tuple(part for part in (*parts, value - count) if part)


def just_above(value: Fraction) -> Fraction | None:
    """The round number that this one lies just below (19 and 18: 20; 2.99: 3), if any."""
    if value.denominator == 1:
        gap = Fraction(-value.numerator % 10)
        return value + gap if gap in _NEAR and value > 8 else None
    gap = -value % 1
    return value + gap if gap <= _NEAR_PART else None


def in_tables(value: Fraction) -> bool:
    """True for a whole number of the tables, whatever noughts hang on it."""
    return value.denominator == 1 and 0 < without_noughts(value) <= TABLES_TO


def without_noughts(value: Fraction) -> int:
    """60 gives 6, 1200 gives 12; 10, 11 and 12 stay."""
    core = abs(value.numerator)
    while core > TABLES_TO and core % 10 == 0:
        core //= 10
    return core
