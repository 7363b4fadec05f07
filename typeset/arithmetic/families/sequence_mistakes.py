"""Wrong ways with number sequences."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.sequence_position_ways import NO, YES, position_answers
from typeset.arithmetic.families.sequence_view import GROWING, IN_IT, MULTIPLY, SAME, Sequence
from typeset.arithmetic.families.sequence_ways import term_answers
from typeset.arithmetic.families.shared_numbers import number
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount

# A wrong value at a place, and the lines that lead to it.
Wrong = Callable[[Sequence, int], tuple[Fraction, list[Step]] | None]


def term_mistakes(view: Sequence) -> Iterator[MistakenWorking]:
    """Wrong ways to a term."""
    ways: dict[str, Wrong] = {}
    if view.last > view.first:
        ways["over-use of proportionality"] = _scaled
    if view.asked()[-1][1] - view.known > 1:
        ways["as many steps as terms"] = _one_too_many
    if view.rule == SAME:
        ways["starting number forgotten"] = _no_start
    else:
        ways["same step kept"] = _same_step
    if view.rule == GROWING:
        ways["step given as the term"] = _step_as_term
    if view.rule == MULTIPLY:
        ways["factor counted instead of repeated"] = _factor_counted
    for name, way in ways.items():
        reached = {position: way(view, position) for _name, position in view.asked()}
        values = {at: found[0] for at, found in reached.items() if found is not None}
        if len(values) < len(reached):
            continue
        steps = [line for found in reached.values() if found is not None for line in found[1]]
        yield MistakenWorking(name, (*view.conversions, *steps), term_answers(view, values))


def _ending(view: Sequence, position: int, value: Fraction, result: Equation | None) -> Step:
    return step(f"{view.place(position)}: {{value}}.", result, value=view.amount(value))


def _scaled(view: Sequence, position: int) -> tuple[Fraction, list[Step]]:
    """Row 10 as twice row 5: from the furthest term told that divides the place."""
    from_ = max(at for at in range(1, view.known + 1) if position % at == 0)
    scale, term = position // from_, view.terms[from_ - 1]
    value = scale * term.value
    told = equation(times(number(scale), view.bare(term.value)), view.bare(value))
    text = f"{view.place(position)} is {{n}} as far as {view.low_place(from_)}."
    if scale == 2:
        text = text.replace("{n}", "twice")
    lead = step(text, n=so_many(Fraction(scale), "time"))
    return value, [lead, _ending(view, position, value, told)]


def _one_too_many(view: Sequence, position: int) -> tuple[Fraction, list[Step]]:
    """As many steps as the place says, the first term not counted as one."""
    value = view.at(position + 1)
    lead = step(
        f"For {view.low_place(position)} take {{n}}.", n=so_many(Fraction(position), "step")
    )
    told = None
    if view.rule == SAME:
        lots = times(number(position), view.bare(abs(view.step)))
        join = plus if view.step > 0 else minus
        told = equation(join(view.bare(view.first), lots), view.bare(value))
    return value, [lead, _ending(view, position, value, told)]


def _no_start(view: Sequence, position: int) -> tuple[Fraction, list[Step]] | None:
    if view.step < 0:
        return None
    value = position * view.step
    told = equation(times(number(position), view.bare(view.step)), view.bare(value))
    lead = step("Every step is {gap}, so multiply.", gap=view.amount(view.step))
    return value, [lead, _ending(view, position, value, told)]


def _same_step(view: Sequence, position: int) -> tuple[Fraction, list[Step]] | None:
    """Goes on with the last step that was seen."""
    count, gap = position - view.known, view.last_step
    if gap < 0:
        return None
    value = view.last + count * gap
    lots = view.bare(gap) if count == 1 else times(number(count), view.bare(gap))
    told = equation(plus(view.bare(view.last), lots), view.bare(value))
    lead = step("The last step was {gap}, so go on with it.", gap=view.bare(gap))
    return value, [lead, _ending(view, position, value, told)]


def _step_as_term(view: Sequence, position: int) -> tuple[Fraction, list[Step]]:
    value = view.at(position) - view.at(position - 1)
    lead = step(f"The step to {view.low_place(position)} is {{gap}}.", gap=view.bare(value))
    return value, [lead, _ending(view, position, value, None)]


def _factor_counted(view: Sequence, position: int) -> tuple[Fraction, list[Step]] | None:
    """Five doublings taken as ten times as much."""
    count = position - 1
    if view.factor < 1:
        return None
    value = view.first * count * view.factor
    lots = times(number(count), Amount(view.factor), view.bare(view.first))
    lead = step("{n}, each times {f}.", n=so_many(Fraction(count), "step"), f=Amount(view.factor))
    return value, [lead, _ending(view, position, value, equation(lots, view.bare(value)))]


def position_mistakes(view: Sequence) -> Iterator[MistakenWorking]:
    """Wrong ways to the place of a value."""
    goal = view.value
    if IN_IT in view.problem.finds:
        yield from _tested_by_step(view)
        return
    place = view.reach(goal.value)[0]
    lead = step(
        f"From {view.low_place(1)} it takes {{n}} to {{goal}}.",
        n=so_many(Fraction(place - 1), "step"),
        goal=goal,
    )
    yield _at(view, "steps counted instead of terms", place - 1, [lead])
    if view.rule == SAME and view.step > 0:
        count = goal.value / view.step
        told = equation(over(view.bare(goal.value), view.bare(view.step)), Amount(count))
        text = "Divide {goal} by {gap}."
        lines = [step(text, told, goal=goal, gap=view.bare(view.step))]
        if count.denominator == 1:
            yield _at(view, "starting number forgotten", int(count), lines)
    scale = goal.value / view.last if view.step > 0 and view.last > 0 else Fraction(1, 2)
    if scale.denominator == 1:
        told = equation(times(Amount(scale), view.bare(view.last)), view.bare(goal.value))
        text = "{goal} is {n} times {last}."
        lines = [step(text, told, goal=goal, n=Amount(scale), last=view.terms[-1])]
        yield _at(view, "over-use of proportionality", int(scale) * view.known, lines)
    more = (goal.value - view.last) / view.last_step
    if view.rule != SAME and more.denominator == 1 and view.last_step > 0:
        far = goal.value - view.last
        told = equation(over(view.bare(far), view.bare(view.last_step)), Amount(more))
        text = "The last step was {gap}. From {last} to {goal} there are {n} of these."
        gap, n = view.bare(view.last_step), Amount(more)
        lines = [step(text, told, gap=gap, last=view.terms[-1], goal=goal, n=n)]
        yield _at(view, "same step kept", view.known + int(more), lines)


def _at(view: Sequence, name: str, position: int, lines: list[Step]) -> MistakenWorking:
    ending = step(f"So it is {view.low_place(position)}.")
    answers = position_answers(view, position)
    return MistakenWorking(name, (*view.conversions, *lines, ending), answers)


def _tested_by_step(view: Sequence) -> Iterator[MistakenWorking]:
    """Asks whether the value itself is a multiple of the step, whatever it began with."""
    goal = view.value
    if view.rule != SAME:
        if view.rule == MULTIPLY:
            fits = (goal.value / view.factor).denominator == 1
            text = f"{{goal}} can {'' if fits else 'not '}be made by multiplying by {{by}}."
            by = Amount(view.factor)
        else:
            fits = ((goal.value - view.last) / view.last_step).denominator == 1
            text = f"{{goal}} can {'' if fits else 'not '}be reached in steps of {{by}}."
            by = view.bare(view.last_step)
        name = "starting number forgotten" if view.rule == MULTIPLY else "same step kept"
    else:
        fits = (goal.value / view.step).denominator == 1
        text = f"{{goal}} is {'a' if fits else 'no'} multiple of {{by}}."
        by, name = view.bare(abs(view.step)), "starting number forgotten"
    ending = step(f"So {'yes' if fits else 'no'}.")
    lines = (*view.conversions, step(text, goal=goal, by=by), ending)
    yield MistakenWorking(name, lines, {IN_IT: YES if fits else NO})
