"""The wrong ratios that amounts invite."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import gcd, lcm

from typeset.arithmetic.answers import RatioAnswer
from typeset.arithmetic.equations import Expression, equation, minus, plus
from typeset.arithmetic.families.simplest_ratio_ways import WHOLE, RatioView, ratio_of, spoken_ratio
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount

_RATIO = "ratio"


def ratio_mistakes(view: RatioView) -> Iterator[MistakenWorking]:
    """Turned round, stopped early, part : whole, units unlike, the same taken from each."""
    whole = _whole_numbers(view.numbers)
    yield _ends("ratio turned round", list(reversed(whole)), [])
    yield from _not_simplest(whole)
    yield from _with_the_whole(view)
    if view.unlike:
        yield from _as_written(view)
    yield from _taken_off(whole)


def _whole_numbers(numbers: Sequence[Fraction]) -> list[int]:
    scale = lcm(*(each.denominator for each in numbers))
    return [int(each * scale) for each in numbers]


def _made(name: str, steps: Sequence[Step], numbers: Sequence[int]) -> MistakenWorking:
    answer = RatioAnswer(tuple(Fraction(each) for each in numbers))
    return MistakenWorking(name, tuple(steps), {_RATIO: answer})


def _ends(name: str, numbers: Sequence[int], opening: Sequence[Step]) -> MistakenWorking:
    """The ratio of these numbers, brought to its simplest form."""
    factor = gcd(*numbers)
    reached = [each // factor for each in numbers]
    steps = [*opening, step("The ratio is {ratio}.", ratio=spoken_ratio(numbers))]
    if factor > 1:
        told = equation(ratio_of(numbers), ratio_of(reached))
        by = Amount(Fraction(factor))
        steps.append(step("Divide each by {by}.", told, by=by))
    return _made(name, steps, reached)


def _not_simplest(whole: Sequence[int]) -> Iterator[MistakenWorking]:
    """Divides by the first small factor and stops there, or not at all."""
    name, factor = "ratio not in simplest form", gcd(*whole)
    if factor == 1:
        return
    small = next((each for each in range(2, factor) if factor % each == 0), 1)
    if small == 1:
        only = step("The ratio is {ratio}.", ratio=spoken_ratio(whole))
        yield _made(name, (only,), whole)
        return
    reached = [each // small for each in whole]
    told = equation(ratio_of(whole), ratio_of(reached))
    yield _made(name, (step("Divide each by {by}.", told, by=Amount(Fraction(small))),), reached)


def _with_the_whole(view: RatioView) -> Iterator[MistakenWorking]:
    """The first side against everything: told where the whole is told, else added up."""
    if len(view.sides) != 2 or WHOLE in view.sides:
        return
    first = view.known[view.sides[0]]
    total = view.known.get(WHOLE)
    opening = []
    if total is None:
        parts = [view.known[name] for name in view.problem.fields.parts]
        total = first.like(sum(part.value for part in parts))
        sum_: Expression = plus(*parts)
        opening = [step("All together: {total}.", equation(sum_, total), total=total)]
    numbers = _whole_numbers([first.value, total.value])
    yield _ends("part compared with the whole", numbers, opening)


def _as_written(view: RatioView) -> Iterator[MistakenWorking]:
    """The numbers as they stand, although their units differ."""
    givens = view.problem.givens
    if not view.finds_a_side:
        written = [givens[side].value for side in view.sides]
        yield _ends("unit not converted", _whole_numbers(written), [])


def _taken_off(whole: Sequence[int]) -> Iterator[MistakenWorking]:
    """Makes the numbers small by taking away, ten where there is more than ten of each."""
    smallest = min(whole)
    less = 10 if smallest > 10 else smallest - 1
    if less < 1:
        return
    off = Amount(Fraction(less))
    steps = [
        step("Take {off} from each.", equation(minus(Amount(Fraction(each)), off),
             Amount(Fraction(each - less))), off=off)
        if not index
        else step("The other one too." if len(whole) == 2 else "And the next one too.",
                  equation(minus(Amount(Fraction(each)), off), Amount(Fraction(each - less))))
        for index, each in enumerate(whole)
    ]  # fmt: skip
    reached = [each - less for each in whole]
    steps.append(step("The ratio is {ratio}.", ratio=spoken_ratio(reached)))
    yield _made("same amount taken from both", steps, reached)
