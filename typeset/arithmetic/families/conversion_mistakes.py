"""The wrong ways to change a unit."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.conversion_view import (
    ANSWER,
    LESS,
    MORE,
    SHARED,
    TIMES,
    Change,
    Fact,
    decimal_of,
    plain_number,
)
from typeset.arithmetic.methods import in_unit, without_noun
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import decimal

# What is often taken for how many small units make a large one.
_TAKEN = {
    10: 100, 100: 1000, 1000: 100, 60: 100, 3600: 100, 7: 5, 24: 12, 12: 10, 14: 10, 16: 10,
    3: 10, 8: 10, 20: 10,
}  # fmt: skip
_HUNDRED = 100
_FINEST = 1000


def mistakes_of(view: Change) -> Iterator[MistakenWorking]:
    """Every mistake that these numbers invite; unusable ones are sifted out later."""
    if view.operation in (MORE, LESS):
        yield from _written_numbers(view)
    elif view.operation:
        yield from _not_converted(view)
        yield from _wrong_operation(view)
    if view.amount.form is Form.COMPOUND and not view.operation:
        yield from _side_by_side(view)
    if view.operation in (MORE, LESS) or view.is_mixed or view.amount.form is Form.COMPOUND:
        yield from _hundred_minutes(view)
        return
    fact = view.fact(view.amount.unit)
    if view.amount.unit == view.target:
        return
    yield from _turned_round(view, fact)
    yield from _one_unit_short(view)
    if view.together is None:
        yield from _wrong_number(view, fact)
    elif not view.operation:
        yield from _additive(view, fact)


def _usable(value: Fraction) -> bool:
    return value > 0 and decimal(value) is not None and (value * _FINEST).denominator == 1


def _done(view: Change, value: Fraction) -> tuple[Fraction, Step | None]:
    """The operation besides the conversion, done with this number of the unit wanted."""
    if not view.operation:
        return value, None
    count, amount = without_noun(view.operand), decimal_of(value, view.target)
    if view.operation == TIMES:
        made = decimal_of(value * count.value, view.target)
        worked = equation(times(count, amount), made)
        text = "{count} of {amount}: {made}."
    else:
        made = decimal_of(value / count.value, view.target)
        if not _usable(made.value):
            return made.value, None
        worked = equation(over(amount, count), made)
        text = "{amount} shared among {count}: {made} each."
    return made.value, step(text, worked, count=view.operand, amount=amount, made=made)


def _wrong(
    view: Change, name: str, first: Step, value: Fraction, slip: bool = False
) -> Iterator[MistakenWorking]:
    """The wrong conversion, then the operation; only where a pupil could write the numbers."""
    made, last = _done(view, value)
    if not _usable(made) or not _usable(value):
        return
    steps = (first, last) if last is not None else (first,)
    yield MistakenWorking(name, steps, {ANSWER: decimal_of(made, view.target)}, slip=slip)


def _turned_round(view: Change, fact: Fact) -> Iterator[MistakenWorking]:
    """Divided where it has to be multiplied, or the other way round."""
    value = view.amount.value / fact.factor
    if not _usable(value):
        return
    number, made = plain_number(view.amount.value), plain_number(value)
    answer = decimal_of(value, view.target)
    if view.together is not None:
        each = plain_number(1 / fact.factor)
        if decimal(each.value) is None:
            return
        worked = equation(times(number, each), made)
        text = "Divide {one} by {other}, which is {each}, and multiply: {answer}."
        bare = (plain_number(fact.one.value), plain_number(fact.other.value))
        first = step(text, worked, one=bare[0], other=bare[1], each=each, answer=answer)
    elif fact.factor > 1:
        by = Amount(fact.factor)
        first = step("{one} is {other}, so divide by {by}: {answer}.",
                     equation(over(number, by), made), one=fact.one, other=fact.other, by=by,
                     answer=answer)  # fmt: skip
    else:
        by = Amount(fact.one.value)
        first = step("{one} make {other}, so multiply by {by}: {answer}.",
                     equation(times(number, by), made), one=fact.one, other=fact.other, by=by,
                     answer=answer)  # fmt: skip
    yield from _wrong(view, "conversion turned round", first, value)


def _one_unit_short(view: Change) -> Iterator[MistakenWorking]:
    """3 h as 180 s: stopped at the minutes."""
    between = view.between(view.amount.unit)
    if len(between) != 1:
        return
    value = view.amount.base / between[0].per_base
    if not _usable(value):
        return
    reached = decimal_of(value, between[0])
    first = step("{amount} is {reached}, so {answer}.", amount=view.amount, reached=reached,
                 answer=decimal_of(value, view.target))  # fmt: skip
    yield from _wrong(view, "step left out", first, value)


def _wrong_number(view: Change, fact: Fact) -> Iterator[MistakenWorking]:
    """A hundred for a thousand, a hundred for sixty."""
    right = fact.factor if fact.factor > 1 else fact.one.value
    is_time = fact.one.unit.dimension is Dimension.TIME
    taken = _TAKEN.get(int(right)) if right.denominator == 1 else None
    if taken is None:
        return
    number, by = plain_number(view.amount.value), Amount(Fraction(taken))
    if fact.factor > 1:
        value = view.amount.value * taken
        worked = equation(times(number, by), plain_number(value))
        text = "There are {by} {small} in {large}, so multiply: {answer}."
        small, large = fact.other.unit, fact.one.unit
    else:
        value = view.amount.value / taken
        worked = equation(over(number, by), plain_number(value))
        text = "There are {by} {small} in {large}, so divide: {answer}."
        small, large = fact.one.unit, fact.other.unit
    if not _usable(value):
        return
    first = step(text, worked, by=by, small=small.plural, large=Amount(Fraction(1), large),
                 answer=decimal_of(value, view.target))  # fmt: skip
    is_hour = is_time and right == 60
    name = "100 minutes in an hour" if is_hour else "unit converted by the wrong number"
    yield from _wrong(view, name, first, value)


def _additive(view: Change, fact: Fact) -> Iterator[MistakenWorking]:
    """5 miles are 8 km, 3 more; so 20 miles are 23 km."""
    gap = fact.other.value - fact.one.value
    value = view.amount.value + gap
    if gap == 0 or not _usable(value):
        return
    by = plain_number(max(gap, -gap))
    number = plain_number(view.amount.value)
    worked = plus(number, by) if gap > 0 else minus(number, by)
    word = "more" if gap > 0 else "less"
    only = step(f"{{one}} and {{other}}: {{by}} {word}. So {{answer}}.",
                equation(worked, plain_number(value)), one=fact.one, other=fact.other, by=by,
                answer=decimal_of(value, view.target))  # fmt: skip
    yield from _wrong(view, "additive strategy", only, value)


def _written_numbers(view: Change) -> Iterator[MistakenWorking]:
    """The written numbers added or subtracted although their units differ."""
    one, other = view.amount, view.operand
    if one.unit == other.unit or Form.COMPOUND in (one.form, other.form):
        yield from _answer_left_in(view, one.unit)
        return
    value = one.value + other.value if view.operation == MORE else one.value - other.value
    if not _usable(value):
        value = max(one.value, other.value) - min(one.value, other.value)
        pair = sorted((one.value, other.value), reverse=True)
    else:
        pair = [one.value, other.value]
    first, second = (plain_number(each) for each in pair)
    worked = plus(first, second) if view.operation == MORE else minus(first, second)
    answer = decimal_of(value, view.target)
    verb = "Add" if view.operation == MORE else "Subtract"
    only = step(f"{verb} the numbers: {{answer}}.", equation(worked, plain_number(value)),
                answer=answer)  # fmt: skip
    if _usable(value):
        yield MistakenWorking("unit not converted", (only,), {ANSWER: answer})


def _answer_left_in(view: Change, unit: Unit) -> Iterator[MistakenWorking]:
    """Reckoned rightly, with another unit written behind the number."""
    both = [in_unit(each, unit) for each in (view.amount, view.operand)]
    value = both[0].value + (both[1].value if view.operation == MORE else -both[1].value)
    if unit == view.target or not _usable(value):
        return
    bare = [plain_number(each.value) for each in both]
    worked = plus(*bare) if view.operation == MORE else minus(bare[0], bare[1])
    answer = decimal_of(value, view.target)
    only = step("{number}, so {answer}.", equation(worked, plain_number(value)),
                number=plain_number(value), answer=answer)  # fmt: skip
    yield MistakenWorking("unit not converted", (only,), {ANSWER: answer})


def _not_converted(view: Change) -> Iterator[MistakenWorking]:
    """The operation done, and the other unit simply written behind the number."""
    count, value = without_noun(view.operand), view.amount.value
    number = plain_number(value)
    if view.operation == TIMES:
        made, worked = value * count.value, times(count, number)
    else:
        made, worked = value / count.value, over(number, count)
    if not _usable(made):
        return
    answer = decimal_of(made, view.target)
    only = step("{made}, so {answer}.", equation(worked, plain_number(made)),
                made=plain_number(made), answer=answer)  # fmt: skip
    yield MistakenWorking("unit not converted", (only,), {ANSWER: answer})


def _wrong_operation(view: Change) -> Iterator[MistakenWorking]:
    """Multiplied where it is shared, or shared where it is multiplied."""
    fact, count = view.fact(view.amount.unit), without_noun(view.operand)
    converted = fact.converted(view.amount)
    if view.operation == SHARED:
        value, worked = converted.value * count.value, times(count, converted)
        name, text = "multiplying instead of dividing", "Multiply by {count}: {answer}."
    else:
        value, worked = converted.value / count.value, over(converted, count)
        name, text = "dividing instead of multiplying", "Divide by {count}: {answer}."
    if not _usable(value) or not _usable(converted.value):
        return
    answer = decimal_of(value, view.target)
    steps = (
        step("{old} is {new}.", None, old=view.amount, new=converted),
        step(text, equation(worked, answer), count=count, answer=answer),
    )
    yield MistakenWorking(name, steps, {ANSWER: answer})


def _side_by_side(view: Change) -> Iterator[MistakenWorking]:
    """2 kg 50 g as 250 g."""
    if view.is_mixed or len(view.amount.parts) != 2 or view.target != view.amount.parts[-1]:
        return
    large, small = view.amount.parts
    whole, rest = divmod(view.amount.base, large.per_base)
    count = rest / small.per_base
    if not whole or not count or count.denominator != 1:
        return
    answer = Amount(Fraction(int(f"{whole}{count}")), view.target)
    first, second = Amount(Fraction(whole), large), Amount(count, small)
    only = step("{first} and {second}: {answer}.", first=first, second=second, answer=answer)
    yield MistakenWorking("units put side by side", (only,), {ANSWER: answer})


def _hundred_minutes(view: Change) -> Iterator[MistakenWorking]:
    """2 h 35 min as 235 min; 155 min as 1 h 55 min."""
    if view.operation or view.target.dimension is not Dimension.TIME:
        return
    if view.is_mixed and view.target.singular in ("min", "minute"):
        hours, minutes = divmod(view.amount.base / 60, _HUNDRED)
        if not hours or minutes >= 60 or minutes.denominator != 1:
            return
        answer = view.answered(Amount(Fraction(hours * 60 + minutes), view.target))
        only = step("{by} make an hour, so {answer}.", by=Amount(Fraction(_HUNDRED), view.target),
                    answer=answer)  # fmt: skip
        yield MistakenWorking("100 minutes in an hour", (only,), {ANSWER: answer})
    elif view.amount.form is Form.COMPOUND and view.target.singular in ("min", "minute"):
        hours, minutes = divmod(Fraction(view.amount.base / 60), 60)
        answer = Amount(hours * _HUNDRED + minutes, view.target)
        first = Amount(Fraction(hours), view.amount.parts[0])
        many = Amount(Fraction(hours * _HUNDRED), view.target)
        steps = [step("{hours} is {many}.", hours=first, many=many)]
        if minutes:
            told = equation(plus(many, Amount(minutes, view.target)), answer)
            steps.append(step("Together: {answer}.", told, answer=answer))
        yield MistakenWorking("100 minutes in an hour", tuple(steps), {ANSWER: answer})
