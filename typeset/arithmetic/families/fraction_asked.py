"""What fraction is it? The part compared with its whole."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.families.fraction_view import FRACTION, PART, REST, WHOLE
from typeset.arithmetic.families.pair_rows import common_chunk
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import PERCENT, Dimension
from typeset.quantities.writing import decimal

_COUNTS = {Dimension.NUMBER, Dimension.COUNT}


def asked_ways(problem: Problem[Any]) -> Iterator[Working]:
    """By the largest piece that fits into both; and by dividing."""
    part, whole, steps = _part_and_whole(problem)
    yield _by_chunk(problem, part, whole, steps)
    answer = _answer(problem, part.value / whole.value)
    text = "Divide the part by the whole."
    divided = step(text, equation(over(part, whole), answer))
    yield Working("Dividing", (*steps, divided), {FRACTION: answer})
    if problem.units[FRACTION] == PERCENT and decimal(100 / whole.value) is not None:
        yield _by_one_percent(problem, part, whole, steps)


def asked_mistakes(problem: Problem[Any]) -> Iterator[MistakenWorking]:
    """The part compared with the rest; the rest given; turned round."""
    part, whole, steps = _part_and_whole(problem)
    rest = part.like(whole.value - part.value)
    found = steps if REST in problem.givens else [*steps, _rest_step(part, whole, rest)]
    for name, upper, lower, text, before in (
        ("part compared with the rest", part, rest, "{upper} beside {lower}.", found),
        ("part and rest exchanged", rest, whole, "{upper} out of {lower}.", found),
        ("numerator and denominator exchanged", whole, part, "{upper} over {lower}.", steps),
    ):
        wrong = _answer(problem, upper.value / lower.value)
        told = step(text, equation(over(upper, lower), wrong), upper=upper, lower=lower)
        yield MistakenWorking(name, (*before, told), {FRACTION: wrong})


def _answer(problem: Problem[Any], value: Fraction) -> Amount:
    if problem.units[FRACTION] == PERCENT:
        return Amount(value * 100, PERCENT)
    return Amount(value, form=Form.FRACTION)


def _rest_step(part: Amount, whole: Amount, rest: Amount) -> Step:
    return step("The rest.", equation(minus(whole, part), rest))


def _part_and_whole(problem: Problem[Any]) -> tuple[Amount, Amount, list[Step]]:
    """Both in one unit; the one that is not given comes from the other two."""
    given = {name: problem.givens[name] for name in (WHOLE, PART, REST) if name in problem.givens}
    unit = min((each.unit for each in given.values()), key=lambda each: each.per_base)
    steps: list[Step] = []
    same: dict[str, Amount] = {}
    for name, amount in given.items():
        in_one = amount.unit == unit or amount.unit.dimension in _COUNTS
        same[name] = amount if in_one else amount.to(unit)
        if not in_one:
            text = "Use one unit: {old} is {new}."
            result = equation(amount, same[name])
            steps.append(step(text, result, old=amount, new=same[name]))
    if WHOLE not in same:
        made = same[PART].like(same[PART].value + same[REST].value)
        result = equation(plus(same[PART], same[REST]), made)
        steps.append(step("Part and rest together are the whole.", result))
        same[WHOLE] = made
    if PART not in same:
        made = same[WHOLE].like(same[WHOLE].value - same[REST].value)
        result = equation(minus(same[WHOLE], same[REST]), made)
        steps.append(step("Without the rest that leaves the part.", result))
        same[PART] = made
    return same[PART], same[WHOLE], steps


def _by_chunk(problem: Problem[Any], part: Amount, whole: Amount, steps: list[Step]) -> Working:
    """Both counted in the largest piece that fits into both."""
    piece = part.like(common_chunk(part.value, whole.value))
    upper, lower = (Amount(each.value / piece.value) for each in (part, whole))
    share = Amount(upper.value / lower.value, form=Form.FRACTION)
    told = [
        step(
            "The part: {n} pieces of {piece}.",
            equation(_counted(part, piece), upper),
            n=upper,
            piece=piece,
        )
        if upper.value != 1
        else step("The part is one piece of {piece}.", piece=piece),
        step("The whole: {n} such pieces.", equation(_counted(whole, piece), lower), n=lower),
        step("So the part is {share} of the whole.", share=share),
    ]
    answer = _answer(problem, share.value)
    if answer.unit == PERCENT:
        told.append(step("In hundredths: {answer}.", equation(share, answer), answer=answer))
    return Working("Counting equal pieces", (*steps, *told), {FRACTION: answer})


def _counted(amount: Amount, piece: Amount) -> Expression:
    return over(amount, piece)


def _by_one_percent(
    problem: Problem[Any], part: Amount, whole: Amount, steps: list[Step]
) -> Working:
    """The whole is 100 %, so one of its unit is so many per cent."""
    hundred = Amount(Fraction(100), PERCENT)
    each = Amount(Fraction(100) / whole.value, PERCENT)
    answer = _answer(problem, part.value / whole.value)
    told = [
        step(
            "The whole, {whole}, is {hundred}. So {one} is {each}.",
            equation(over(hundred, Amount(whole.value)), each),
            whole=whole,
            hundred=hundred,
            one=whole.like(1),
            each=each,
        ),
        step(
            "The part, {part}: so many times that.",
            equation(times(Amount(part.value), each), answer),
            part=part,
        ),
    ]
    return Working("From 100%", (*steps, *told), {FRACTION: answer})
