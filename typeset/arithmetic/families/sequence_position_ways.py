"""Ways to find at which place of a sequence a value stands, or whether it stands in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue, NameAnswer
from typeset.arithmetic.equations import Remainder, equation, minus, over, plus, times
from typeset.arithmetic.families.sequence_view import (
    GROWING,
    IN_IT,
    MULTIPLY,
    POSITION,
    Sequence,
)
from typeset.arithmetic.families.sequence_ways import MOST_COUNTED, counted_steps, seen_steps
from typeset.arithmetic.families.shared_numbers import number
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount

YES, NO = NameAnswer("yes"), NameAnswer("no")


def position_ways(view: Sequence) -> Iterator[Working]:
    """Counting on until the value is reached; and undoing the rule."""
    yield from _counted_until(view)
    if view.rule == GROWING:
        yield _steps_added(view)
    elif view.rule == MULTIPLY:
        yield _divided_back(view)
    else:
        yield _undone(view, 1, "How many steps from the first")
        yield _undone(view, view.known, "How many steps from the last one told")


def position_answers(view: Sequence, position: int | None) -> Mapping[str, AnswerValue]:
    """The place as it is asked for; None where the value is no term."""
    answers: dict[str, AnswerValue] = {}
    if IN_IT in view.problem.finds:
        answers[IN_IT] = NO if position is None else YES
    if POSITION in view.problem.finds and position is not None:
        unit = view.problem.units[POSITION]
        answers[POSITION] = Amount(Fraction(position), unit)
    return answers


def _working(view: Sequence, name: str, steps: list[Step], position: int | None) -> Working:
    told = (*view.conversions, *steps)
    return Working(name, told, position_answers(view, position))


def _found(view: Sequence, position: int) -> str:
    """How the end is told where the value is a term."""
    lead = "So yes, it is" if IN_IT in view.problem.finds else "So it is"
    return f"{lead} {view.low_place(position)}."


def _counted_until(view: Sequence) -> Iterator[Working]:
    position, value = view.reach(view.value.value)
    if position - view.known > MOST_COUNTED:
        return
    steps = counted_steps(view, position)[0]
    if value == view.value.value:
        steps.append(step(_found(view, position)))
        yield _working(view, "Counting on until it comes", steps, position)
        return
    before, after = view.low_place(position - 1), view.low_place(position)
    text = f"{{value}} would lie between {before} and {after}, so no."
    steps.append(step(text, value=view.value))
    yield _working(view, "Counting on until it comes", steps, None)


def _undone(view: Sequence, start: int, name: str) -> Working:
    """How far it is from a term that is known, and how many steps that makes."""
    begin, goal, gap = view.terms[start - 1].value, view.value.value, abs(view.step)
    large, small = max(begin, goal), min(begin, goal)
    far = large - small
    apart = equation(minus(view.bare(large), view.bare(small)), view.bare(far))
    text = f"From {{begin}} to {{value}}: {{far}} {view.word()}."
    told = {"begin": view.terms[start - 1], "value": view.value, "far": view.amount(far)}
    steps = [view.opening(), step(text, apart, **told)]
    count = far / gap
    if count.denominator != 1:
        steps.append(_not_whole(view, far, gap))
        return _working(view, name, steps, None)
    steps.append(
        step(
            "In steps of {gap}: {n}.",
            equation(over(view.bare(far), view.bare(gap)), Amount(count)),
            gap=view.amount(gap),
            n=so_many(count, "step"),
        )
    )
    position = start + int(count)
    joined = equation(plus(number(start), Amount(count)), number(position))
    text = f"{{n}} after {view.low_place(start)} comes {view.low_place(position)}."
    steps.append(step(text, joined, n=so_many(count, "step")))
    if IN_IT in view.problem.finds:
        steps.append(step(_found(view, position)))
    return _working(view, name, steps, position)


def _not_whole(view: Sequence, far: Fraction, gap: Fraction) -> Step:
    """The steps do not come out even."""
    result = None
    if far.denominator == gap.denominator == 1:
        quotient, rest = divmod(far.numerator, gap.numerator)
        result = equation(
            over(number(far.numerator), number(gap.numerator)),
            Remainder(number(quotient), number(rest)),
        )
    text = "{far} is no whole number of steps of {gap}, so it does not come in the sequence."
    return step(text, result, far=view.amount(far), gap=view.amount(gap))


def _steps_added(view: Sequence) -> Working:
    """How much the steps have to make together, and how many of them make it."""
    far = view.value.value - view.first
    apart = equation(minus(view.bare(view.value.value), view.bare(view.first)), view.bare(far))
    text = "From {begin} to {value}: {far} more."
    told = {"begin": view.terms[0], "value": view.value, "far": view.amount(far)}
    steps = [*seen_steps(view), step(text, apart, **told)]
    gaps, gap = [view.step], view.step
    while sum(gaps) < far:
        gap += view.growth
        gaps.append(gap)
    made = sum(gaps, Fraction(0))
    joined = equation(plus(*(view.bare(each) for each in gaps)), view.bare(made))
    n = so_many(Fraction(len(gaps)), "step")
    if made != far:
        text = "{n} together make {made}, which is too much, and one fewer is too little, so no."
        steps.append(step(text, joined, n=n, made=view.amount(made)))
        return _working(view, "Adding up the steps", steps, None)
    steps.append(step("{n} together make that.", joined, n=n))
    steps.append(step(_found(view, len(gaps) + 1)))
    return _working(view, "Adding up the steps", steps, len(gaps) + 1)


def _divided_back(view: Sequence) -> Working:
    """The value taken back, one term at a time, to the first."""
    steps = [view.opening()]
    rises = view.factor > 1
    factor = Amount(view.factor if rises else 1 / view.factor)
    value, count = view.value.value, 0
    while value != view.first and not view.passes(view.first, value):
        back = value / view.factor
        if back.denominator > 1 and view.value.is_whole and view.first.denominator == 1:
            steps.append(_does_not_divide(value, factor))
            return _working(view, "Going back to the first", steps, None)
        act = (over if rises else times)(view.bare(value), factor)
        steps.append(
            step("One back: {back}.", equation(act, view.bare(back)), back=view.amount(back))
        )
        value, count = back, count + 1
    if value != view.first:
        text = f"That misses {view.low_place(1)}, which is {{first}}, so no."
        steps.append(step(text, first=view.terms[0]))
        return _working(view, "Going back to the first", steps, None)
    text = f"That is {view.low_place(1)}, {{n}} back. {_found(view, count + 1)}"
    steps.append(step(text, n=so_many(Fraction(count), "step")))
    return _working(view, "Going back to the first", steps, count + 1)


def _does_not_divide(value: Fraction, factor: Amount) -> Step:
    quotient, rest = divmod(value.numerator, factor.value.numerator)
    told = equation(over(Amount(value), factor), Remainder(number(quotient), number(rest)))
    text = "{value} cannot be divided exactly by {factor}, so it does not come in the sequence."
    return step(text, told, value=Amount(value), factor=factor)
