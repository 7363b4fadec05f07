"""Ways to the terms of a sequence that are asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.families.sequence_view import GROWING, MULTIPLY, Sequence
from typeset.arithmetic.families.shared_numbers import number
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.names import so_many
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount

# These next terms need no rule.
_NEXT_FEW = 2
# Further than this nobody counts on one by one.
MOST_COUNTED = 10
_MOST_ADDED = 12
# So few steps nobody adds in pairs.
_FEW_STEPS = 6

# So many steps of the sequence added up: the lines, and what they come to.
_Adding = Callable[[Sequence, int], tuple[list[Step], Fraction]]


def term_ways(view: Sequence) -> Iterator[Working]:
    """Every way that suits the rule and how far the terms asked for lie."""
    if view.asked()[-1][1] - view.known <= MOST_COUNTED:
        yield _counted_on(view)
    if view.rule == GROWING:
        yield from _growing(view)
    elif view.rule == MULTIPLY:
        yield _all_factors(view)
    else:
        yield from _steady(view)


def term_answers(view: Sequence, values: Mapping[int, Fraction]) -> dict[str, AnswerValue]:
    """The values at their places, in the units asked for."""
    return {
        name: in_unit(view.amount(values[position]), view.problem.units[name])
        for name, position in view.asked()
    }


def _working(
    view: Sequence, name: str, steps: list[Step], values: Mapping[int, Fraction]
) -> Working:
    told = [*view.conversions, *steps]
    for asked, position in view.asked():
        value, unit = view.amount(values[position]), view.problem.units[asked]
        if not value.unit.is_noun and unit.plural and unit != value.unit:
            new = value.to(unit)
            told.append(step("Write {old} as {new}.", equation(value, new), old=value, new=new))
    return Working(name, tuple(told), term_answers(view, values))


def next_term(view: Sequence, value: Fraction, gap: Fraction) -> tuple[Fraction, Expression]:
    """The term after this one, and the sum that makes it."""
    if view.rule == MULTIPLY:
        if view.factor > 1:
            return value * view.factor, times(view.bare(value), Amount(view.factor))
        return value * view.factor, over(view.bare(value), Amount(1 / view.factor))
    if gap < 0:
        return value + gap, minus(view.bare(value), view.bare(-gap))
    return value + gap, plus(view.bare(value), view.bare(gap))


def counted_steps(view: Sequence, to: int) -> tuple[list[Step], dict[int, Fraction]]:
    """The terms after those told, one by one up to the place `to`."""
    steps = [view.opening()]
    if view.rule == GROWING:
        steps = list(seen_steps(view))
    values = {at: term.value for at, term in enumerate(view.terms, 1)}
    gap = view.last_step
    for position in range(view.known + 1, to + 1):
        if view.rule == GROWING:
            gap += view.growth
        values[position], sum_ = next_term(view, values[position - 1], gap)
        text = f"{view.place(position)}: {{new}}."
        new = view.amount(values[position])
        steps.append(step(text, equation(sum_, view.bare(values[position])), new=new))
    return steps, values


def seen_steps(view: Sequence) -> Iterator[Step]:
    """'The steps are 2, 3 and 4. Each is 1 more than the one before.'"""
    gaps = [
        later.value - term.value for term, later in zip(view.terms, view.terms[1:], strict=False)
    ]
    told = {f"s{at}": view.bare(gap) for at, gap in enumerate(gaps)}
    names = [f"{{{name}}}" for name in told]
    listed = f"{', '.join(names[:-1])} and {names[-1]}"
    text = f"The steps are {listed}: each is {{growth}} more than the one before."
    grown = equation(minus(view.bare(gaps[1]), view.bare(gaps[0])), view.bare(view.growth))
    yield step(text, grown, growth=view.bare(view.growth), **told)


def _counted_on(view: Sequence) -> Working:
    steps, values = counted_steps(view, view.asked()[-1][1])
    name = "Multiplying step by step" if view.rule == MULTIPLY else "Counting on step by step"
    if view.rule != MULTIPLY and view.step < 0:
        name = "Counting back step by step"
    return _working(view, name, steps, values)


def _steady(view: Sequence) -> Iterator[Working]:
    yield _from(view, 1, "All the steps at once")
    if view.asked()[0][1] - view.known > 1:
        yield _from(view, view.known, "From the last one told")
    if view.first == view.step:
        yield _place_times_step(view)
    elif view.first > view.step and view.asked()[-1][1] - view.known > _NEXT_FEW:
        yield _from(view, 0, "One step before the first")


def _place_times_step(view: Sequence) -> Working:
    """5, 10, 15: a times table, where the first term is a step itself."""
    steps, values = [view.opening()], {}
    for _name, position in view.asked():
        values[position] = position * view.step
        told = equation(times(number(position), view.bare(view.step)), view.bare(values[position]))
        text = f"{view.place(1)} is one step from nothing, so {view.low_place(position)} is {{n}}."
        n = so_many(Fraction(position), "step")
        steps.append(
            step(f"{text[:-1]}: {{value}}.", told, n=n, value=view.amount(values[position]))
        )
    return _working(view, "The place times the step", steps, values)


def _from(view: Sequence, start: int, name: str) -> Working:
    """Equal steps from a place that is known; 0 is one step before the first."""
    begin = view.first - view.step if not start else view.terms[start - 1].value
    gap = view.amount(abs(view.step))
    steps = [view.opening()]
    if not start:
        back = (minus if view.step > 0 else plus)(view.bare(view.first), view.bare(gap.value))
        text = f"One step before {view.low_place(1)} it would be {{begin}}."
        steps.append(step(text, equation(back, view.bare(begin)), begin=view.amount(begin)))
    values = {}
    for _name, position in view.asked():
        count = position - start
        far = view.amount(count * gap.value)
        so = so_many(Fraction(count), "step")
        told = equation(minus(number(position), number(start)), number(count)) if start else None
        there = view.low_place(start) if start else "there"
        steps.append(step(f"From {there} to {view.low_place(position)}: {{n}}.", told, n=so))
        lots = equation(times(number(count), view.bare(gap.value)), view.bare(far.value))
        steps.append(step("{n} of {gap}: {far}.", lots, n=so, gap=gap, far=far))
        values[position] = begin + count * view.step
        join = plus if view.step > 0 else minus
        sum_ = equation(join(view.bare(begin), view.bare(far.value)), view.bare(values[position]))
        ending = f"{view.place(position)}: {{value}}."
        steps.append(step(ending, sum_, value=view.amount(values[position])))
    return _working(view, name, steps, values)


def _growing(view: Sequence) -> Iterator[Working]:
    """All steps added one by one, in pairs, or as equal ones and what they grow by."""
    positions = [position for _name, position in view.asked()]
    if positions[-1] - 1 <= _MOST_ADDED:
        yield _all_steps(view, "Adding up all the steps", _added)
    if positions[0] > _FEW_STEPS:
        yield _all_steps(view, "The steps in pairs", _in_pairs)
    if positions[-1] - 1 > _MOST_ADDED:
        yield _all_steps(view, "Equal steps and what they grow by", _equal_and_grown)


def _all_steps(view: Sequence, name: str, add: _Adding) -> Working:
    steps, values = list(seen_steps(view)), {}
    for _name, position in view.asked():
        told, total = add(view, position - 1)
        text = f"{view.place(position)} comes {{n}} after {view.low_place(1)}."
        steps.append(step(text, n=so_many(Fraction(position - 1), "step")))
        steps += told
        values[position] = view.first + total
        joined = equation(
            plus(view.bare(view.first), view.bare(total)), view.bare(values[position])
        )
        ending = f"{view.place(position)}: {{value}}."
        steps.append(step(ending, joined, value=view.amount(values[position])))
    return _working(view, name, steps, values)


def _added(view: Sequence, count: int) -> tuple[list[Step], Fraction]:
    gaps = [view.step + at * view.growth for at in range(count)]
    total = sum(gaps, Fraction(0))
    joined = equation(plus(*(view.bare(gap) for gap in gaps)), view.bare(total))
    return [step("Add up the steps: {total}.", joined, total=view.amount(total))], total


def _in_pairs(view: Sequence, count: int) -> tuple[list[Step], Fraction]:
    """First and last step together, as often as there are pairs."""
    last = view.step + (count - 1) * view.growth
    grown = plus(view.bare(view.step), times(number(count - 1), view.bare(view.growth)))
    pair = view.step + last
    total = count * pair / 2
    halved = over(times(number(count), view.bare(pair)), number(2))
    return [
        step("The last of these steps: {last}.", equation(grown, view.bare(last)),
             last=view.bare(last)),
        step("The first and last step make {pair}, and so do the second and the last but one.",
             equation(plus(view.bare(view.step), view.bare(last)), view.bare(pair)),
             pair=view.bare(pair)),
        step("There are half as many pairs as steps: {total}.", equation(halved, view.bare(total)),
             total=view.amount(total)),
    ], total  # fmt: skip


def _equal_and_grown(view: Sequence, count: int) -> tuple[list[Step], Fraction]:
    """Every step is at least the first one; what is beyond it grows from nothing."""
    equal = count * view.step
    lots = count * (count - 1) // 2
    grown = lots * view.growth
    total = equal + grown
    return [
        step("If all steps were like the first: {equal}.",
             equation(times(number(count), view.bare(view.step)), view.bare(equal)),
             equal=view.amount(equal)),
        step(f"Beyond that they have 0, 1, 2, … up to {count - 1} times {{growth}}: {{n}} times.",
             equation(over(times(number(count), number(count - 1)), number(2)), number(lots)),
             growth=view.bare(view.growth), n=number(lots)),
        step("That makes {grown} more.",
             equation(times(number(lots), view.bare(view.growth)), view.bare(grown)),
             grown=view.bare(grown)),
        step("All the steps together: {total}.",
             equation(plus(view.bare(equal), view.bare(grown)), view.bare(total)),
             total=view.amount(total)),
    ], total  # fmt: skip


def _all_factors(view: Sequence) -> Working:
    """What all the multiplying comes to, and then once."""
    steps, values = [view.opening()], {}
    rises = view.factor > 1
    each = Amount(view.factor if rises else 1 / view.factor)
    for _name, position in view.asked():
        count = position - 1
        power = each.value**count
        word = "times" if rises else "divided by"
        text = f"{view.place(position)} comes {{n}} after {view.low_place(1)}: {word} {{power}}."
        told = equation(times(*[each] * count), Amount(power))
        so = so_many(Fraction(count), "step")
        steps.append(step(text, told, n=so, power=Amount(power)))
        values[position] = view.first * (power if rises else 1 / power)
        act = (times if rises else over)(view.bare(view.first), Amount(power))
        told = equation(act, view.bare(values[position]))
        ending = f"{view.place(position)}: {{value}}."
        steps.append(step(ending, told, value=view.amount(values[position])))
    return _working(view, "All the multiplying at once", steps, values)
