"""Wrong ways with the lowest common multiple."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import gcd, prod

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.lcm_view import EACH, NEXT, TOGETHER, Lcm
from typeset.arithmetic.families.shared_numbers import all_of, and_list, number
from typeset.arithmetic.methods import in_unit, without_noun
from typeset.arithmetic.phrases import title
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension
from typeset.quantities.writing import whole


def lcm_mistakes(view: Lcm) -> Iterator[MistakenWorking]:
    """Every wrong way that these numbers let a pupil take."""
    counts = view.counts
    terms = [number(count) for count in counts]
    product, total, shared = prod(counts), sum(counts), gcd(*counts)
    yield from _ending_at(
        view,
        "product taken as the lowest common multiple",
        product,
        (step("Multiply the numbers.", equation(times(*terms), number(product))),),
    )
    yield from _ending_at(
        view,
        "sum taken as the multiple",
        total,
        (step("Add the numbers.", equation(plus(*terms), number(total))),),
    )
    if shared > 1:
        text = f"The greatest number that goes into {and_list(counts)} is {whole(shared)}."
        first = [
            step(
                text if not at else "It goes into {n} too.",
                _exactly(count, shared),
                n=number(count),
            )
            for at, count in enumerate(counts)
        ]
        yield from _ending_at(view, "factor and multiple exchanged", shared, first)
    large, small = max(counts), min(counts)
    yield from _ending_at(view, "largest number taken as the multiple", large, (_largest(view),))
    if len(counts) == 2:
        text = f"Take {whole(small)} from {whole(large)}."
        told = equation(minus(number(large), number(small)), number(large - small))
        gap = (step(text, told),)
        yield from _ending_at(view, "difference taken as the multiple", large - small, gap)
        yield from _turned_round(view)
    yield from _multiple_for_turns(view)
    yield from _nothing_left(view)


def _largest(view: Lcm) -> Step:
    large = max(view.counts)
    if view.is_packs:
        word = "larger" if len(view.counts) == 2 else "largest"
        return step(f"Take as many as the {word} {view.group.singular} holds, {whole(large)}.")
    lead = "After" if view.size(1).unit.dimension is Dimension.TIME else "At"
    return step(f"{lead} {{it}} {all_of(len(view.counts))} have come round.", it=view.size(large))


def _exactly(count: int, factor: int) -> Equation:
    return equation(over(number(count), number(factor)), number(count // factor))


def _ending_at(
    view: Lcm, name: str, multiple: int, first: Sequence[Step]
) -> Iterator[MistakenWorking]:
    """The wrong multiple taken on to everything asked that it can answer."""
    problem = view.problem
    asked_names = [name for name in view.names if name in problem.finds]
    if len(asked_names) == len(problem.finds) and any(
        multiple % int(view.amounts[name].value) for name in asked_names
    ):
        return
    answers: dict[str, AnswerValue] = {}
    steps = [*view.conversions, *first]
    for asked in problem.finds:
        if asked in (TOGETHER, EACH):
            answers[asked] = view.answer(asked, multiple)
            steps += view.leaving(multiple)
            steps.append(step("So the answer is {it}.", it=view.with_left(multiple)))
        elif asked == NEXT:
            try:
                answers[asked] = view.clock(multiple)
            except AmountError:
                # Past midnight: no pupil would write it so.
                return
            steps += view.on_the_clock(multiple)
        elif multiple % int(view.amounts[asked].value) == 0:
            answers[asked] = view.answer(asked, multiple)
            steps.append(view.turns(asked, multiple))
    if answers:
        yield MistakenWorking(name, tuple(steps), answers)


def _turned_round(view: Lcm) -> Iterator[MistakenWorking]:
    """The numbers of packs given to the wrong sides."""
    lowest, names = view.lowest(), view.names
    asked = [name for name in names if name in view.problem.finds]
    if not asked or {NEXT, TOGETHER} & set(view.problem.finds):
        return
    steps = [*view.conversions, *list(view.closing(lowest))[:1]]
    answers: dict[str, AnswerValue] = {}
    for name in asked:
        other = names[1 - names.index(name)]
        count = Fraction(lowest, int(view.amounts[other].value))
        answers[name] = Amount(count, view.problem.units[name])
        result = equation(
            over(number(lowest), number(int(view.amounts[other].value))), Amount(count)
        )
        steps.append(step(f"{title(name)}: {{n}}.", result, n=Amount(count, view.group)))
    yield MistakenWorking("ratio turned round", tuple(steps), answers)


def _multiple_for_turns(view: Lcm) -> Iterator[MistakenWorking]:
    """Stops at the multiple where the number of packs or turns is asked for."""
    asked = [name for name in view.names if name in view.problem.finds]
    if not asked or {NEXT, TOGETHER, EACH} & set(view.problem.finds):
        return
    lowest = view.lowest()
    first = list(view.closing(lowest))[:1]
    wrong = Amount(Fraction(lowest), view.problem.units[asked[0]])
    ending = step("So the answer is {n}.", n=wrong)
    yield MistakenWorking("step left out", (*view.conversions, *first, ending), {asked[0]: wrong})


def _nothing_left(view: Lcm) -> Iterator[MistakenWorking]:
    """What is left over forgotten, or added once for every kind of pack."""
    if view.left is None:
        return
    lowest, unit = view.lowest(), view.problem.units[EACH]
    text = f"{whole(lowest)} is the first number in every times table: {{it}}."
    full = step(text, it=view.size(lowest))
    answers = {EACH: in_unit(view.size(lowest), unit)}
    yield MistakenWorking("remainder ignored", (*view.conversions, full), answers)
    left = without_noun(view.left)
    total = view.size(lowest + len(view.counts) * left.value)
    joined = plus(without_noun(view.size(lowest)), *[left] * len(view.counts))
    more = step(
        "Add {left} for every kind of pack: {total}.",
        equation(joined, without_noun(total)),
        left=view.left,
        total=total,
    )
    answers = {EACH: in_unit(total, unit)}
    yield MistakenWorking(
        "remainder added for every kind", (*view.conversions, full, more), answers
    )
