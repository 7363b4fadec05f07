"""Slips that lead from the right number to the one written: perhaps no misconception at all.

They are asked for only where no misconception explains the answer, and are always called a
slip perhaps. (The list is common practice of markers, no source.)
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from typeset.arithmetic.equations import PLUS, Operation
from typeset.arithmetic.workings import Working
from typeset.quantities.amount import Amount
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, decimal, write_plain

_PLACE_WORDS = {10: "ten", 100: "a hundred", 1000: "a thousand"}


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip: its name, and what it would have been, completing 'Perhaps this pupil …'."""

    name: str
    shows: str


def slips_to(
    written: Fraction, answer: Amount, workings: Iterable[Working], givens: Iterable[Amount]
) -> Iterator[Slip]:
    """The slips that lead from `answer` to `written` (in the answer's unit), likeliest first."""
    right = answer.value
    if written == right or not right:
        return
    ends = list(_last_operations(workings, answer))
    yield from _rounded(written, right)
    yield from _turned_round(written, right)
    yield from _one_fact_away(written, right, ends)
    yield from _place_value(written, right)
    yield from _carried(written, right, ends)
    yield from _copied(written, answer, givens)
    if abs(written - right) == 1 and not any(each.sign == DIVIDE for each in ends):
        yield Slip("off by one", "counted or reckoned one too " + _way(written, right))


def _last_operations(workings: Iterable[Working], answer: Amount) -> Iterator[Operation]:
    """The operation of every working's last equation, where it gives the answer."""
    for working in workings:
        equations = [each.equation for each in working.steps if each.equation is not None]
        if not equations:
            continue
        first, *_middle, last = equations[-1].sides
        if isinstance(first, Operation) and isinstance(last, Amount) and last.same_as(answer):
            yield first


def _rounded(written: Fraction, right: Fraction) -> Iterator[Slip]:
    """To 0 to 3 decimal places, halves up, or the digits after them simply left out."""
    if right.denominator == 1:
        return
    for places in range(4):
        scaled = right * 10**places
        cut = Fraction(floor(scaled), 10**places)
        near = Fraction(floor(scaled + Fraction(1, 2)), 10**places)
        if written in (cut, near):
            yield Slip("rounded", "rounded an answer that was wanted exactly")
            return


def _turned_round(written: Fraction, right: Fraction) -> Iterator[Slip]:
    digits, other = _digits(right), _digits(written)
    if len(digits) != len(other):
        return
    differing = [place for place in range(len(digits)) if digits[place] != other[place]]
    if len(differing) != 2 or differing[1] != differing[0] + 1:
        return
    one, two = differing
    if (digits[one], digits[two]) == (other[two], other[one]):
        shows = f"wrote the {digits[one]} and the {digits[two]} in the wrong order"
        yield Slip("digits turned round", shows)


def _digits(value: Fraction) -> str:
    """The digits down to thousandths, no point between them; none where there are more."""
    scaled = value * 1000
    return str(scaled.numerator) if scaled.denominator == 1 and value > 0 else ""


def _one_fact_away(written: Fraction, right: Fraction, ends: list[Operation]) -> Iterator[Slip]:
    """The neighbour in a table: a factor more or less, or a quotient that is 1 out."""
    for each in ends:
        if not (isinstance(each.left, Amount) and isinstance(each.right, Amount)):
            continue
        factors = (each.left.value, each.right.value) if each.sign == TIMES else ()
        if any(factor > 1 and abs(written - right) == factor for factor in factors):
            lot = decimal(abs(written - right))
            shows = f"took the neighbouring table fact, one lot of {lot} too {_way(written, right)}"
            yield Slip("one table fact away", shows)
            return
        if each.sign == DIVIDE and abs(written - right) == 1 and written > 0:
            fact = f"{decimal(written)} {TIMES} {decimal(each.right.value)}"
            yield Slip("one table fact away", f"took the neighbouring table fact, {fact}")
            return


def _place_value(written: Fraction, right: Fraction) -> Iterator[Slip]:
    for scale, name in _PLACE_WORDS.items():
        if written == right * scale:
            yield Slip("place value", f"made the answer {name} times too large")
        elif written * scale == right:
            yield Slip("place value", f"made the answer {name} times too small")


def _carried(written: Fraction, right: Fraction, ends: list[Operation]) -> Iterator[Slip]:
    if not any(each.sign in (PLUS, MINUS, TIMES, DIVIDE) for each in ends):
        return
    for size, name in _PLACE_WORDS.items():
        if abs(written - right) == size and max(written, right) > size:
            said = f"carried or exchanged {name} wrongly, so that it is {name} too "
            yield Slip("a carried digit", said + _way(written, right))


def _copied(written: Fraction, answer: Amount, givens: Iterable[Amount]) -> Iterator[Slip]:
    for given in givens:
        same = given.unit.dimension is answer.unit.dimension
        if written == given.value or (same and written * answer.unit.per_base == given.base):
            yield Slip("copied from the story", f"copied {write_plain(given)} from the story")
            return


def _way(written: Fraction, right: Fraction) -> str:
    return "many" if written > right else "few"
