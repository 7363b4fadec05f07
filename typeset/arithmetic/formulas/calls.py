"""The lines in which a function of the trade is worked out: a division with its remainder,
a shared factor or multiple, a mean, a comparison."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor, gcd, lcm

from typeset.arithmetic.equations import (
    MORE,
    Equation,
    Expression,
    Remainder,
    equation,
    minus,
    over,
    plus,
)
from typeset.arithmetic.formulas.units import COUNTS, common_unit, entered, meeting
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, Solid, Words
from typeset.quantities.writing import DIVIDE, write

# A longer list of factors or multiples is cut short in the middle.
_LONGEST_LIST = 12


@dataclass(frozen=True, slots=True)
class CallLines:
    """The lines and what they make."""

    steps: tuple[Step, ...]
    made: Amount


def lines_of_call(function: str, arguments: Sequence[Amount], opening: str) -> CallLines:
    """The lines of this function. `opening` begins the first: 'First find the boxes'.

    Raises AmountError where the function cannot take these amounts.
    """
    if function in ("quotient", "round up", "round down", "remainder"):
        return _division(function, arguments[0], arguments[1], opening)
    unit = common_unit([each.unit for each in arguments])
    alike = [each if each.unit.dimension in COUNTS else each.to(unit) for each in arguments]
    changed = [
        step("Use one unit: {old} is {new}.", equation(old, new), old=old, new=new)
        for old, new in zip(arguments, alike, strict=True)
        if old.unit != new.unit
    ]
    told = _LINES[function](alike, opening)
    made = Amount(told.made.value, unit)
    return CallLines((*changed, *told.steps), made)


def _begin(opening: str, text: str) -> str:
    return f"{opening}: {text}" if opening else text[:1].upper() + text[1:]


def _division(function: str, dividend: Amount, divisor: Amount, opening: str) -> CallLines:
    met = meeting(DIVIDE, dividend.unit, divisor.unit)
    one = entered(dividend, met.left, met.left_bare)
    other = entered(divisor, met.right, met.right_bare)
    steps = [
        step("Use one unit: {old} is {new}.", equation(old, new), old=old, new=new)
        for old, new, unit in ((dividend, one, met.left), (divisor, other, met.right))
        if unit is not None
    ]
    if not other.value:
        raise AmountError("something is divided by 0", "choose other numbers")
    if other.value < 0 or one.value < 0:
        raise AmountError(
            "less than nothing cannot be put into groups", "choose numbers that stay above 0"
        )
    quotient = Amount(Fraction(floor(one.value / other.value)), met.result)
    rest = one.like(one.value - quotient.value * other.value)
    text = _begin(opening, "divide {one} by {other}.")
    result = _with_remainder(one, other, quotient, rest)
    steps.append(step(text, result, one=_spoken(one), other=_spoken(other)))
    if function == "remainder":
        steps.append(step("What is left over: {rest}.", rest=rest))
        return CallLines(tuple(steps), rest)
    if not rest.value:
        return CallLines(tuple(steps), quotient)
    return _rounded(function, quotient, rest, steps)


def _spoken(amount: Amount) -> Amount:
    """Counts are divided as bare numbers: people and seats do not mix."""
    return Amount(amount.value) if amount.unit.is_noun else amount


def _with_remainder(one: Amount, other: Amount, quotient: Amount, rest: Amount) -> Equation:
    """Sharing a measure is written in bare numbers, since its quotient is a measure too."""
    if not rest.value:
        return equation(over(one, other), quotient)
    if quotient.unit.dimension in COUNTS:
        return equation(over(one, other), Remainder(quotient, rest))
    numbers = [Amount(each.value) for each in (one, other, quotient, rest)]
    return equation(over(numbers[0], numbers[1]), Remainder(numbers[2], numbers[3]))


def _rounded(function: str, quotient: Amount, rest: Amount, steps: list[Step]) -> CallLines:
    if function == "round up":
        more = quotient.like(quotient.value + 1)
        text = "With {rest} left over, one more is needed."
        result = equation(plus(quotient, quotient.like(1)), more)
        return CallLines((*steps, step(text, result, rest=rest)), more)
    text = "With {rest} left over there is not enough for another one, so it is {quotient}."
    return CallLines((*steps, step(text, rest=rest, quotient=quotient)), quotient)


def _counts(amounts: Sequence[Amount], function: str) -> list[int]:
    for amount in amounts:
        if not amount.is_whole or amount.value <= 0:
            raise AmountError(f"{function} needs whole numbers from 1 up", "choose other numbers")
    return [amount.value.numerator for amount in amounts]


def _numbers(numbers: Sequence[int]) -> Rich:
    """'1, 2, 3', and in the middle of a long list '…'."""
    shown: list[int | None] = list(numbers)
    if len(numbers) > _LONGEST_LIST:
        shown = [*numbers[: _LONGEST_LIST - 2], None, numbers[-1]]
    items: list[Words | Solid] = []
    for index, each in enumerate(shown):
        if index:
            items.append(Words(", "))
        items.append(Words("…") if each is None else write(Amount(Fraction(each))))
    return tuple(items)


def _hcf(amounts: Sequence[Amount], opening: str) -> CallLines:
    counts = _counts(amounts, "hcf")
    shared = Amount(Fraction(gcd(*counts)))
    steps = []
    for index, count in enumerate(counts):
        factors = [each for each in range(1, count + 1) if count % each == 0]
        text = "list the factors of {count}: {factors}."
        text = _begin(opening if not index else "", text)
        steps.append(step(text, count=Amount(Fraction(count)), factors=_numbers(factors)))
    steps.append(step("The largest that is in every list is {shared}.", shared=shared))
    return CallLines(tuple(steps), shared)


def _lcm(amounts: Sequence[Amount], opening: str) -> CallLines:
    counts = _counts(amounts, "lcm")
    shared = lcm(*counts)
    steps = []
    for index, count in enumerate(counts):
        text = "list the multiples of {count}: {multiples}."
        text = _begin(opening if not index else "", text)
        multiples = _numbers(list(range(count, shared + 1, count)))
        steps.append(step(text, count=Amount(Fraction(count)), multiples=multiples))
    made = Amount(Fraction(shared))
    steps.append(step("The first that is in every list is {made}.", made=made))
    return CallLines(tuple(steps), made)


def _mean(amounts: Sequence[Amount], opening: str) -> CallLines:
    total = amounts[0].like(sum((each.value for each in amounts), Fraction(0)))
    count = Amount(Fraction(len(amounts)))
    made = total.like(total.value / count.value)
    terms: tuple[Expression, ...] = tuple(amounts)
    steps = (
        step(_begin(opening, "add them all."), equation(plus(*terms), total)),
        step(
            "Share the total equally among {count}.",
            equation(over(total, count), made),
            count=count,
        ),
    )
    return CallLines(steps, made)


def _compared(amounts: Sequence[Amount]) -> tuple[Amount, Amount]:
    """The larger and the smaller of two."""
    smaller, larger = sorted(amounts, key=lambda each: each.base)
    return larger, smaller


def _comparison(amounts: Sequence[Amount], opening: str) -> Step:
    larger, smaller = _compared(amounts)
    if larger.base == smaller.base:
        return step(_begin(opening, "both are the same."), equation(larger, smaller))
    text = _begin(opening, "{larger} is more than {smaller}.")
    return step(text, Equation((larger, smaller), (MORE,)), larger=larger, smaller=smaller)


def _larger(amounts: Sequence[Amount], opening: str) -> CallLines:
    return CallLines((_comparison(amounts, opening),), _compared(amounts)[0])


def _smaller(amounts: Sequence[Amount], opening: str) -> CallLines:
    return CallLines((_comparison(amounts, opening),), _compared(amounts)[1])


def _difference(amounts: Sequence[Amount], opening: str) -> CallLines:
    larger, smaller = _compared(amounts)
    made = larger.like(larger.value - smaller.value)
    text = _begin(opening, "take the smaller from the larger.")
    return CallLines((step(text, equation(minus(larger, smaller), made)),), made)


_LINES = {
    "hcf": _hcf,
    "lcm": _lcm,
    "mean": _mean,
    "larger of": _larger,
    "smaller of": _smaller,
    "difference": _difference,
}
