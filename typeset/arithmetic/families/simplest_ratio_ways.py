"""Ways to bring a ratio to its simplest form."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm
from typing import Any

from typeset.arithmetic.answers import RatioAnswer
from typeset.arithmetic.equations import Equation, Parts, equation
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import so_many
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, join
from typeset.quantities.nouns import counted
from typeset.quantities.writing import say

WHOLE = "whole"
_PRIMES = (2, 3, 5, 7, 11, 13, 17, 19, 23)
# Through one, nobody uses parts finer than these.
_FINEST = 12


@dataclass(frozen=True, slots=True)
class RatioView:
    """The sides in the order asked for, in one unit; `known` has every amount by its name.

    `opening` are the steps that got there; `unlike` is true where units had to be made alike.
    """

    problem: Problem[Any]
    sides: tuple[str, ...]
    amounts: tuple[Amount, ...]
    known: Mapping[str, Amount]
    opening: tuple[Step, ...]
    unlike: bool

    @property
    def numbers(self) -> tuple[Fraction, ...]:
        """The sides as bare numbers."""
        return tuple(each.value for each in self.amounts)

    @property
    def finds_a_side(self) -> bool:
        """True where a side is not told, but found from the others."""
        return any(side not in self.problem.givens for side in self.sides)

    def listed(self, amounts: Sequence[Amount]) -> Rich:
        """'24 and 36', '1 m and 4 m'."""
        said = [say("{amount}", amount=each) for each in amounts]
        return join([join(said[:-1], ", "), said[-1]], " and ")


@dataclass(frozen=True, slots=True)
class RatioWay:
    """A way, its steps and the ratio that it reaches."""

    name: str
    steps: tuple[Step, ...]
    answer: RatioAnswer


def ratio_of(values: Sequence[Fraction | int]) -> Parts:
    """`12 : 18`; decimals as decimals where they end."""
    return Parts(tuple(_written(Fraction(value)) for value in values))


def spoken_ratio(values: Sequence[Fraction | int]) -> Rich:
    """The ratio inside a sentence."""
    return (Equation((ratio_of(values),), ()).written().sides[0],)


def _written(value: Fraction) -> Amount:
    """A decimal down to hundredths, else a fraction."""
    ends = (value * 100).denominator == 1
    return Amount(value, form=Form.DECIMAL if ends else Form.FRACTION)


def ways_to_simplify(view: RatioView) -> Iterator[RatioWay]:
    """By the highest common factor, by small factors, as a fraction, through one."""
    opening, numbers = _made_whole(view)
    ways = [_at_once(numbers, opening), *_step_by_step(numbers, opening)]
    if len(numbers) == 2 and numbers[0] != numbers[1]:
        ways.append(_as_a_fraction(view, numbers, opening))
    yield from ways
    smallest = min(numbers)
    is_easy = all(Fraction(each, smallest).denominator <= _FINEST for each in numbers)
    if len(ways) < 2 or (is_easy and smallest not in (1, gcd(*numbers))):
        yield _through_one(numbers, opening)


def _made_whole(view: RatioView) -> tuple[tuple[Step, ...], tuple[int, ...]]:
    """The ratio written down; decimals and fractions multiplied until they are whole."""
    sides = " to ".join("the whole" if side == WHOLE else side for side in view.sides)
    written = step(f"The ratio of {sides} is {{ratio}}.", ratio=spoken_ratio(view.numbers))
    scale = lcm(*(each.denominator for each in view.numbers))
    numbers = tuple(int(each * scale) for each in view.numbers)
    if scale == 1:
        return (written,), numbers
    told = step(
        "Multiply each by {scale}, so that all are whole numbers.",
        equation(ratio_of(view.numbers), ratio_of(numbers)),
        scale=Amount(Fraction(scale)),
    )
    return (written, told), numbers


def _way(name: str, steps: Sequence[Step], numbers: Sequence[int | Fraction]) -> RatioWay:
    return RatioWay(name, tuple(steps), RatioAnswer(tuple(Fraction(each) for each in numbers)))


def _at_once(numbers: tuple[int, ...], opening: tuple[Step, ...]) -> RatioWay:
    factor = gcd(*numbers)
    name = "By the highest common factor"
    many = "both" if len(numbers) == 2 else "all of them"
    if factor == 1:
        only = step("No number but 1 goes into {many}, so this is the simplest form.", many=many)
        return _way(name, (*opening, only), numbers)
    reached = tuple(each // factor for each in numbers)
    steps = (
        step("The largest number that goes into {many} is {factor}.",
             factor=Amount(Fraction(factor)), many=many),
        step("Divide each by {factor}.", equation(ratio_of(numbers), ratio_of(reached)),
             factor=Amount(Fraction(factor))),
    )  # fmt: skip
    return _way(name, (*opening, *steps), reached)


def _step_by_step(numbers: tuple[int, ...], opening: tuple[Step, ...]) -> Iterator[RatioWay]:
    """A small factor after another, where the highest common factor has several."""
    steps, now = [], numbers
    while (factor := gcd(*now)) > 1:
        prime = next((each for each in _PRIMES if factor % each == 0), factor)
        new = tuple(each // prime for each in now)
        text = "Halve each." if prime == 2 else "Divide each by {prime}."
        steps.append(
            step(text, equation(ratio_of(now), ratio_of(new)), prime=Amount(Fraction(prime)))
        )
        now = new
    if len(steps) > 1:
        yield _way("Step by step", (*opening, *steps), now)


def _as_a_fraction(
    view: RatioView, numbers: tuple[int, ...], opening: tuple[Step, ...]
) -> RatioWay:
    """The smaller side as a fraction of the larger one, in its lowest terms."""
    low, high = sorted(numbers)
    at = numbers.index(low), numbers.index(high)
    share = Fraction(low, high)
    long, short = (Amount(share, form=Form.FRACTION, places=under) for under in (high, 0))
    if share.denominator == high:
        told = step(_as_many(view, at, ", and that is in lowest terms."), long=long)
    else:
        text = _as_many(view, at, ". In lowest terms that is {short}.")
        told = step(text, equation(long, short), long=long, short=short)
    parts = {low: share.numerator, high: share.denominator}
    reached = [parts[each] for each in numbers]
    every = _for_every(view, at, (parts[low], parts[high]))
    closing = step("That is the ratio in the order asked for.",
                   equation(ratio_of(numbers), ratio_of(reached)))  # fmt: skip
    return _way("As a fraction", (*opening, told, every, closing), reached)


def _as_many(view: RatioView, at: tuple[int, int], ending: str) -> str:
    small, large = (view.sides[index] for index in at)
    if WHOLE in view.sides:
        return f"{title(the(small))}: {{long}} of {the(large)}{ending}"
    if is_counted(view.amounts[at[0]]):
        return f"There are {{long}} as many {small} as {large}{ending}"
    return f"There is {{long}} as much {small} as {large}{ending}"


def _for_every(view: RatioView, at: tuple[int, int], parts: tuple[int, int]) -> Step:
    """'So 2 gulls for every 3 terns.'"""
    small, large = (view.sides[index] for index in at)
    a, b = (Amount(Fraction(each)) for each in parts)
    if WHOLE in view.sides:
        return step(f"So {{a}} of every {{b}}: {small}.", a=a, b=b)
    if is_counted(view.amounts[at[0]]):
        a, b = (
            Amount(each.value, counted(name, False))
            for each, name in zip((a, b), (small, large), strict=True)
        )
        return step("So {a} for every {b}.", a=a, b=b)
    a, b = (so_many(each.value, "part") for each in (a, b))
    return step(f"So {{a}} of {small} for every {{b}} of {large}.", a=a, b=b)


def _through_one(numbers: tuple[int, ...], opening: tuple[Step, ...]) -> RatioWay:
    """Everything for one of the smallest side, and then as often as makes all whole."""
    smallest = min(numbers)
    ones = [Fraction(each, smallest) for each in numbers]
    scale = lcm(*(each.denominator for each in ones))
    reached = [each * scale for each in ones]
    steps = [
        step("Divide each by the smallest, {smallest}.",
             equation(ratio_of(numbers), ratio_of(ones)), smallest=Amount(Fraction(smallest)))
    ]  # fmt: skip
    if scale > 1:
        steps.append(
            step("Multiply each by {scale}, so that all are whole again.",
                 equation(ratio_of(ones), ratio_of(reached)), scale=Amount(Fraction(scale)))
        )  # fmt: skip
    return _way("Through one", (*opening, *steps), reached)
