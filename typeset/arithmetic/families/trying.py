"""Trial and improvement: sensible tries, told one by one until one of them fits."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain

from typeset.arithmetic.equations import Expression, equation, value_of
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount

# Whole numbers are tried first, then tenths; further than this nobody goes on trying.
_MOST_WHOLE = 1000
_MOST_TENTHS = 1000
# What a try gives may have so many parts of one, or it is no help to compare.
_TIDY = (1, 2, 4, 5, 10)
_ROUND = (100, 50, 10, 5, 2, 1)


@dataclass(frozen=True, slots=True)
class Trying:
    """`expression` says what a try gives, `target` what it is to give; `start` is like a try."""

    expression: Callable[[Amount], Expression]
    target: Amount
    start: Amount

    def reached(self, value: Fraction) -> Fraction | None:
        """What this try gives, in the target's unit; None where it gives nothing."""
        try:
            found = value_of(self.expression(self.start.like(value)))
        except ZeroDivisionError:
            return None
        return found / self.target.unit.per_base

    def found(self) -> Fraction | None:
        """The first number that fits, in the order in which anybody would try."""
        candidates = chain(
            (Fraction(value) for value in range(1, _MOST_WHOLE + 1)),
            (Fraction(tenths, 10) for tenths in range(1, _MOST_TENTHS)),
        )
        return next((each for each in candidates if self.reached(each) == self.target.value), None)


def try_and_improve(trying: Trying) -> tuple[Amount, tuple[Step, ...]] | None:
    """The number that fits, and the tries that lead to it; None where trying is no way."""
    answer = trying.found()
    if answer is None:
        return None
    sides = [_side(trying, answer, way) for way in (-1, 1)]
    # The roundest number comes to mind first; the next try lies beyond the answer, and nearer.
    sides = [side for side in sides if side]
    sides.sort(key=lambda side: min(_roundness(each, answer) for each in side))
    if not sides:
        return None
    wrong = [_roundest(sides[0], answer)]
    for side in sides[1:]:
        near = [each for each in side if abs(each - answer) <= abs(wrong[0] - answer)]
        wrong.append(_roundest(near or side[:1], answer))
    steps = [_wrong_try(trying, each, index) for index, each in enumerate(wrong)]
    steps.append(_right_try(trying, answer, between=len(wrong) == 2))
    return trying.start.like(answer), tuple(steps)


def _roundest(tries: list[Fraction], answer: Fraction) -> Fraction:
    """The roundest of the tries, and of these the nearest."""
    return min(tries, key=lambda each: (_roundness(each, answer), abs(each - answer)))


def _side(trying: Trying, answer: Fraction, way: int) -> list[Fraction]:
    """The sensible tries below or above the answer."""
    reach = max(answer, Fraction(2))
    tries = [each for each in _around(answer, way) if abs(each - answer) <= reach]
    return [each for each in tries if _is_tidy(trying.reached(each), trying.target)]


def _around(answer: Fraction, way: int) -> Iterator[Fraction]:
    start = answer.numerator // answer.denominator
    first = start if answer.denominator > 1 and way < 0 else start + way
    for at in range(61):
        if first + way * at > 0:
            yield Fraction(first + way * at)


def _is_tidy(value: Fraction | None, target: Amount) -> bool:
    """True for what helps to compare: no half shells, no thirds."""
    parts = (1,) if target.unit.is_noun else _TIDY
    return value is not None and value >= 0 and value.denominator in parts


def _roundness(value: Fraction, answer: Fraction) -> int:
    """0 for the roundest, among sizes that lie close enough around the answer."""
    sizes = [size for size in _ROUND if 2 * size <= answer]
    return next((at for at, size in enumerate(sizes) if value % size == 0), len(sizes))


def _wrong_try(trying: Trying, value: Fraction, index: int) -> Step:
    reached = trying.reached(value)
    assert reached is not None
    verdict = "too much" if reached > trying.target.value else "too little"
    amount, result = trying.start.like(value), trying.target.like(reached)
    return step(
        f"{'Then try' if index else 'Try'} {{value}}: that gives {{result}}, which is {verdict}.",
        equation(trying.expression(amount), result),
        value=amount,
        result=result,
    )


def _right_try(trying: Trying, answer: Fraction, between: bool) -> Step:
    amount = trying.start.like(answer)
    where = ", which lies between" if between else ""
    return step(
        f"Now try {{value}}{where}: that gives {{result}}, and it fits.",
        equation(trying.expression(amount), trying.target),
        value=amount,
        result=trying.target,
    )
