"""The second way of the trade for a shared factor or multiple, a mean, a difference, or a
fraction or percentage of something."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import lcm

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.formulas.units import COUNTS, common_unit
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, join
from typeset.quantities.units import Dimension
from typeset.quantities.writing import write

_Told = tuple[str, tuple[Step, ...], Fraction]
# More multiples than this nobody tries one by one.
_MOST_TRIES = 8


def other_lines(function: str, arguments: Sequence[Amount], asked: str) -> _Told | None:
    """The strategy, its lines and the value in the common unit; None where there is no other.

    `asked` is what is found, with its article.
    """
    unit = common_unit([each.unit for each in arguments])
    alike = [each if each.unit.dimension in COUNTS else each.to(unit) for each in arguments]
    changed = tuple(
        step("Use one unit: {old} is {new}.", equation(old, new), old=old, new=new)
        for old, new in zip(arguments, alike, strict=True)
        if old.unit != new.unit
    )
    told = _WAYS[function](alike, asked) if function in _WAYS else None
    return None if told is None else (told[0], (*changed, *told[1]), told[2])


def _dividing_out(amounts: Sequence[Amount], asked: str) -> _Told | None:
    """Both divided by what they share, until nothing is left but 1."""
    counts = [amount.value.numerator for amount in amounts]
    steps: list[Step] = []
    divisors: list[int] = []
    while shared := _smallest_shared(counts):
        divisors.append(shared)
        rest = [count // shared for count in counts]
        every = "both" if len(counts) == 2 else "all"
        text = f"{{counts}} {every} divide by {{shared}}, and that leaves {{rest}}."
        told = {"counts": _numbers(counts), "rest": _numbers(rest)}
        steps.append(step(text, shared=Amount(Fraction(shared)), **told))
        counts = rest
    if not divisors:
        return None
    if len(divisors) == 1:
        made = Amount(Fraction(divisors[0]))
        steps.append(step(f"Nothing more divides them all, so {asked} is {{made}}.", made=made))
        return "Dividing out", tuple(steps), made.value
    factors = [Amount(Fraction(each)) for each in divisors]
    made = Amount(Fraction(1))
    for each in factors:
        made = Amount(made.value * each.value)
    text = f"Nothing more divides them all, so multiply what was taken out to find {asked}."
    steps.append(step(text, equation(times(*factors), made)))
    return "Dividing out", tuple(steps), made.value


def _smallest_shared(counts: Sequence[int]) -> int:
    """The smallest prime that divides all; 0 where none does."""
    divisors = range(2, min(counts) + 1)
    return next((each for each in divisors if not any(count % each for count in counts)), 0)


def _numbers(counts: Sequence[int]) -> Rich:
    shown: list[Rich] = [(write(Amount(Fraction(count))),) for count in counts]
    return join([join(shown[:-1], ", "), shown[-1]], " and ")


def _multiples_of_largest(amounts: Sequence[Amount], asked: str) -> _Told | None:
    """Only the multiples of the largest number are tried."""
    counts = sorted(amount.value.numerator for amount in amounts)
    largest, others = counts[-1], counts[:-1]
    shared = lcm(*counts)
    if shared // largest > _MOST_TRIES:
        return None
    steps = []
    for multiple in range(largest, shared + 1, largest):
        fails = [other for other in others if multiple % other]
        verdict = "{other} does not go into it." if fails else f"that is {asked}."
        steps.append(
            step(
                f"Try {{multiple}}: {verdict}",
                equation(
                    times(Amount(Fraction(multiple // largest)), Amount(Fraction(largest))),
                    Amount(Fraction(multiple)),
                ),
                multiple=Amount(Fraction(multiple)),
                other=Amount(Fraction(fails[0] if fails else 1)),
            )
        )
    return "Trying multiples of the largest", tuple(steps), Fraction(shared)


def _levelling(amounts: Sequence[Amount], asked: str) -> _Told | None:
    """What all have in common stays; only what is above it is shared out."""
    least = min(amounts, key=lambda each: each.value)
    extras = [each.like(each.value - least.value) for each in amounts if each.value > least.value]
    if not extras:
        return None
    total = least.like(sum((each.value for each in extras), Fraction(0)))
    count = Amount(Fraction(len(amounts)))
    share = least.like(total.value / count.value)
    made = least.like(least.value + share.value)
    steps = [
        step(
            "All have at least {least}. Add up what is above that.",
            equation(plus(*extras), total) if len(extras) > 1 else None,
            least=least,
        ),
        step("Share that among {count}.", equation(over(total, count), share), count=count),
        step(f"Put it on top to find {asked}.", equation(plus(least, share), made)),
    ]
    return "Levelling", tuple(steps), made.value


def _counting_up(amounts: Sequence[Amount], asked: str) -> _Told | None:
    """From the smaller up to the larger, by the next round number."""
    smaller, larger = sorted(amounts, key=lambda each: each.value)
    bridge = (smaller.value // 10 + 1) * 10
    if not smaller.value < bridge < larger.value:
        return None
    middle = smaller.like(bridge)
    first = smaller.like(bridge - smaller.value)
    second = larger.like(larger.value - bridge)
    made = larger.like(first.value + second.value)
    steps = (
        step("From {a} up to {b}.", equation(minus(middle, smaller), first), a=smaller, b=middle),
        step("From {a} up to {b}.", equation(minus(larger, middle), second), a=middle, b=larger),
        step(f"Both jumps together are {asked}.", equation(plus(first, second), made)),
    )
    return "Counting up", steps, made.value


# Parts up to twelfths are met as such; finer percentages go through 10% or 1%.
_MOST_EQUAL_PARTS = 12


def fraction_lines(part: Amount, whole: Amount, asked: str) -> _Told | None:
    """A fraction or percentage by equal parts: first one of them, then so many.

    None where one part is the whole itself, or cannot be (a part of a shell or of a penny).
    """
    is_percentage = part.unit.dimension is Dimension.PERCENT
    share = part.base if is_percentage else part.value
    under = share.denominator
    steps: list[Step] = []
    if is_percentage and under > _MOST_EQUAL_PARTS:
        under = 10 if not part.value % 10 else 100
        opening = "For {percent}, divide by {under}."
        percent = Amount(Fraction(100, under), part.unit)
    else:
        if is_percentage:
            same = Amount(share, form=Form.FRACTION)
            steps.append(step("{part} is {same}.", equation(part, same), part=part, same=same))
        opening = "Share it in {under} equal parts, to find one of them."
        percent = part
    if under == 1 or share <= 0:
        return None
    one, times_over = whole.like(whole.value / under), share * under
    if not is_sensible(one, may_be_cut=False):
        return None
    by = Amount(Fraction(under))
    steps.append(step(opening, equation(over(whole, by), one), under=by, percent=percent))
    made = whole.like(whole.value * share)
    if times_over != 1:
        n = Amount(times_over)
        text = f"Take that {{n}} times to find {asked}."
        steps.append(step(text, equation(times(n, one), made), n=n))
    return "Through one part", tuple(steps), made.value


_WAYS: dict[str, Callable[[Sequence[Amount], str], _Told | None]] = {
    "hcf": _dividing_out,
    "lcm": _multiples_of_largest,
    "mean": _levelling,
    "difference": _counting_up,
}
