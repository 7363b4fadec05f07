"""Ways to a missing angle, and the mistakes on the way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.demand import demand_of
from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.angles_view import (
    CROSSING,
    FACTS,
    NEXT,
    TOTALS,
    WRONG_TOTALS,
    AnglesView,
    degrees,
)
from typeset.arithmetic.phrases import title
from typeset.arithmetic.subtracting import ways_to_subtract
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount

_STRAIGHT = degrees(TOTALS["straight line"])
# So many ways to subtract are offered where nothing else is to be done.
_MOST_WAYS = 2


def ways_to_angles(view: AnglesView) -> Iterator[Working]:
    """The known angles together first, one after another, or made up to the total."""
    if view.problem.fields.make == CROSSING:
        yield from _where_lines_cross(view)
        return
    if len(view.known) == 1:
        yield from _one_known(view)
    else:
        yield _sum_first(view)
        yield _one_after_another(view)
    yield _made_up(view)


def _finished(view: AnglesView, name: str, steps: Sequence[Step], rest: Amount) -> Working:
    opening = step(FACTS[view.problem.fields.make], total=view.total)
    answers, more = _from_rest(view, rest)
    return Working(name, (opening, *steps, *more), answers)


def _from_rest(view: AnglesView, rest: Amount) -> tuple[dict[str, AnswerValue], list[Step]]:
    """The unknown angles from what is left: shared equally, a multiple taken so many times."""
    shares = Amount(view.shares)
    one = degrees(rest.value / view.shares)
    steps: list[Step] = []
    if view.shares != 1:
        text = "Share that into {n} equal parts: {one}."
        if view.shares == 2:
            text = "Halve that: {one}."
        steps.append(step(text, equation(over(rest, shares), one), n=shares, one=one))
    answers: dict[str, AnswerValue] = {}
    for name in view.problem.finds:
        found = degrees(one.value * view.times(name))
        answers[name] = found
        if view.times(name) != 1:
            by = Amount(view.times(name))
            told = equation(times(by, one), found)
            steps.append(step(f"{_head(name)}: {{by}} times {{one}} is {{found}}.", told, by=by,
                              one=one, found=found))  # fmt: skip
        elif len(view.problem.finds) > 1:
            steps.append(step(f"{_head(name)}: {{found}}.", found=found))
    return answers, steps


def _head(name: str) -> str:
    """'Base angle', but 'Angle c' for a letter, which keeps its case."""
    return f"Angle {name}" if len(name) == 1 else title(name)


def _sum_first(view: AnglesView) -> Working:
    known = degrees(sum((each.value for each in view.known), Fraction(0)))
    rest = degrees(view.total.value - known.value)
    steps = (
        step("The known angles together: {known}.", equation(plus(*view.known), known),
             known=known),
        step("That leaves {rest}.", equation(minus(view.total, known), rest), rest=rest),
    )  # fmt: skip
    return _finished(view, "The known angles together first", steps, rest)


def _one_after_another(view: AnglesView) -> Working:
    steps, left = [], view.total
    for each in view.known:
        rest = degrees(left.value - each.value)
        told = equation(minus(left, each), rest)
        steps.append(step("Take off {each}: {rest} left.", told, each=each, rest=rest))
        left = rest
    return _finished(view, "Taking off one after another", steps, left)


def _one_known(view: AnglesView) -> Iterator[Working]:
    (known,) = view.known
    ways = sorted(
        ways_to_subtract(view.total, known),
        key=lambda way: demand_of(Working(way.name, way.steps, {})),
    )
    for way in ways[:_MOST_WAYS]:
        yield _finished(view, way.name, way.steps, way.result)


def _made_up(view: AnglesView) -> Working:
    known = degrees(sum((each.value for each in view.known), Fraction(0)))
    steps = []
    if len(view.known) > 1:
        told = equation(plus(*view.known), known)
        steps.append(step("The known angles together: {known}.", told, known=known))
    rest = degrees(view.total.value - known.value)
    steps.append(
        step("From {known} up to {total} is {rest} more.", equation(plus(known, rest), view.total),
             known=known, total=view.total, rest=rest)
    )  # fmt: skip
    return _finished(view, "Making up to the total", steps, rest)


def _where_lines_cross(view: AnglesView) -> Iterator[Working]:
    (known,) = view.known
    beside = degrees(_STRAIGHT.value - known.value)
    line = "The angle next to it makes a straight line with it, {total}: so {beside}."
    next_one = step(line, equation(minus(_STRAIGHT, known), beside), total=_STRAIGHT, beside=beside)
    opposite = step("Opposite angles are equal: {known}.", known=known)
    back = step(
        "The opposite angle makes a straight line with that one: {known}.",
        equation(minus(_STRAIGHT, beside), known), known=known,
    )  # fmt: skip
    facts = {NEXT: next_one}
    answers: dict[str, AnswerValue] = {
        name: beside if name == NEXT else known for name in view.problem.finds
    }
    direct = tuple(facts.get(name, opposite) for name in view.problem.finds)
    yield Working("By the facts about crossing lines", direct, answers)
    if view.problem.finds == (NEXT,):
        double, rest = degrees(2 * known.value), degrees(2 * beside.value)
        full = degrees(TOTALS["full turn"])
        steps = (
            step("The angle opposite is {known} too: both make {double}.",
                 equation(times(Amount(Fraction(2)), known), double), known=known, double=double),
            step("Of the full turn that leaves {rest} for the other two, which are equal.",
                 equation(minus(full, double), rest), rest=rest),
            step("Halve that: {beside}.", equation(over(rest, Amount(Fraction(2))), beside),
                 beside=beside),
        )  # fmt: skip
        yield Working("Round the point", steps, answers)
    else:
        yield Working("By two straight lines", (next_one, back), answers)


def angle_mistakes(view: AnglesView) -> Iterator[MistakenWorking]:
    """The wrong total, an angle left out, angles subtracted from one another, stopping early."""
    if view.problem.fields.make == CROSSING:
        yield from _crossing_mistakes(view)
        return
    yield from _wrong_total(view)
    if len(view.known) > 1:
        yield _left_out(view)
    if len(view.known) == 2:
        yield from _subtracted(view)
    yield from _stopped(view)


def _mistake(name: str, view: AnglesView, steps: Sequence[Step], rest: Amount) -> MistakenWorking:
    answers, more = _from_rest(view, rest)
    return MistakenWorking(name, (*steps, *more), answers)


def _wrong_total(view: AnglesView) -> Iterator[MistakenWorking]:
    make = view.problem.fields.make
    total = degrees(WRONG_TOTALS[make])
    known = degrees(view.known_total)
    rest = degrees(total.value - known.value)
    if rest.value <= 0:
        return
    steps = [step(FACTS[make], total=total)]
    if len(view.known) > 1:
        steps.append(step("Those that we know make {known}.", equation(plus(*view.known), known),
                          known=known))  # fmt: skip
    steps.append(step("That leaves {rest}.", equation(minus(total, known), rest), rest=rest))
    yield _mistake("wrong total of the angles", view, steps, rest)


def _left_out(view: AnglesView) -> MistakenWorking:
    first = view.known[0]
    rest = degrees(view.total.value - first.value)
    told = equation(minus(view.total, first), rest)
    steps = [step("{total} without {first} is {rest}.", told, total=view.total, first=first,
                  rest=rest)]  # fmt: skip
    return _mistake("one angle left out", view, steps, rest)


def _subtracted(view: AnglesView) -> Iterator[MistakenWorking]:
    large, small = sorted(view.known, key=lambda each: -each.value)
    rest = degrees(large.value - small.value)
    if rest.value:
        told = equation(minus(large, small), rest)
        steps = [step("Subtract the angles: {rest}.", told, rest=rest)]
        yield _mistake("angles subtracted from one another", view, steps, rest)


def _stopped(view: AnglesView) -> Iterator[MistakenWorking]:
    """Stops at the rest without sharing it, or at the sum of the known angles."""
    known = degrees(view.known_total)
    rest = degrees(view.total.value - known.value)
    if view.shares != 1:
        steps = [step("That leaves {rest}.", equation(minus(view.total, known), rest), rest=rest)]
        reached: dict[str, AnswerValue] = dict.fromkeys(view.problem.finds, rest)
    elif len(view.known) > 1:
        steps = [step("Together: {known}.", equation(plus(*view.known), known), known=known)]
        reached = dict.fromkeys(view.problem.finds, known)
    else:
        return
    yield MistakenWorking("step left out", tuple(steps), reached)


def _crossing_mistakes(view: AnglesView) -> Iterator[MistakenWorking]:
    (known,) = view.known
    if len(view.problem.finds) > 1:
        return
    (asked,) = view.problem.finds
    beside = degrees(_STRAIGHT.value - known.value)
    if asked == NEXT:
        only = step("Angles at a crossing are equal: {known}.", known=known)
        yield MistakenWorking("opposite and next angle exchanged", (only,), {asked: known})
        full = degrees(TOTALS["full turn"])
        rest = degrees(full.value - known.value)
        only = step("{full} without {known} is {rest}.", equation(minus(full, known), rest),
                    full=full, known=known, rest=rest)  # fmt: skip
        yield MistakenWorking("wrong total of the angles", (only,), {asked: rest})
        return
    only = step("Both together make {total}, so {beside}.",
                equation(minus(_STRAIGHT, known), beside), total=_STRAIGHT,
                beside=beside)  # fmt: skip
    yield MistakenWorking("opposite and next angle exchanged", (only,), {asked: beside})
