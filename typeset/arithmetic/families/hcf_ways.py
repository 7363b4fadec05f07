"""Ways to the highest common factor. Each finds it by itself, so that each checks the others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain
from math import isqrt

from typeset.arithmetic.equations import Equation, Remainder, equation, minus, over, times
from typeset.arithmetic.families.hcf_view import Hcf
from typeset.arithmetic.families.shared_numbers import all_of, and_list, comma_list, number
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.writing import whole

# Longer lists of factors nobody writes out.
_MOST_FACTORS = 16
_MOST_TRIES = 6
_MOST_DIFFERENCES = 6
# What pupils divide out, easy ones first; after these any prime.
_EASY: tuple[int, ...] = (10, 5, 4, 3, 2, 7)


def hcf_ways(view: Hcf) -> Iterator[Working]:
    """Every way that suits these numbers; dividing out and prime factors always do."""
    counts = view.counts
    if max(len(factors_of(count)) for count in counts) <= _MOST_FACTORS:
        yield _listed(view)
    yield from _tried(view)
    yield _divided_out(view)
    if len(counts) == 2:
        yield from _taken_away(view)
    yield _primes(view)


def factors_of(count: int) -> tuple[int, ...]:
    """All factors in rising order."""
    small = [each for each in range(1, isqrt(count) + 1) if count % each == 0]
    return tuple(sorted({*small, *(count // each for each in small)}))


def _working(view: Hcf, name: str, steps: Sequence[Step], factor: int) -> Working:
    told = (*view.conversions, *steps, *view.closing(factor))
    return Working(name, told, view.answers(factor))


def _listed(view: Hcf) -> Working:
    lists = [factors_of(count) for count in view.counts]
    steps = [
        step(f"Factors of {whole(count)}: {comma_list(factors)}.")
        for count, factors in zip(view.counts, lists, strict=True)
    ]
    shared = [each for each in lists[0] if all(each in factors for factors in lists)]
    text = f"In {'both' if len(lists) == 2 else 'all the'} lists: {and_list(shared)}."
    steps.append(step(f"{text} The greatest is {whole(shared[-1])}."))
    return _working(view, "Listing all the factors", steps, shared[-1])


def _tried(view: Hcf) -> Iterator[Working]:
    """The factors of the smallest amount, from the largest down, tried on the others."""
    smallest = min(view.counts)
    others = sorted({count for count in view.counts if count != smallest})
    steps: list[Step] = []
    for tries, factor in enumerate(reversed(factors_of(smallest)), 1):
        if tries > _MOST_TRIES:
            return
        lead = f"Begin with the smallest number, {whole(smallest)} itself. " if tries == 1 else (
            f"The next factor of {whole(smallest)} is {whole(factor)}. "
        )  # fmt: skip
        failing = next((other for other in others if other % factor), None)
        if failing is not None:
            text = f"{lead}It does not go exactly into {whole(failing)}."
            steps.append(step(text, _with_rest(failing, factor)))
            continue
        for at, other in enumerate(others):
            text = (
                "It goes exactly into {other} too."
                if at
                else f"{lead}It goes exactly into {{other}}."
            )
            steps.append(step(text, _exactly(other, factor), other=number(other)))
        yield _working(view, "Trying the factors of the smallest", steps, factor)
        return


def _exactly(count: int, factor: int) -> Equation:
    return equation(over(number(count), number(factor)), number(count // factor))


def _with_rest(count: int, factor: int) -> Equation:
    quotient, rest = divmod(count, factor)
    return equation(over(number(count), number(factor)), Remainder(number(quotient), number(rest)))


def _divided_out(view: Hcf) -> Working:
    """What goes into all of them is divided out, again and again, until nothing more does."""
    left, steps, taken = list(view.counts), list[Step](), list[int]()
    every = all_of(len(left))
    while (factor := _easy_factor(left)) is not None:
        new = [count // factor for count in left]
        texts = [
            f"{whole(factor)} goes into {and_list(left)}: divide {every} by it.",
            *("Then the next one." for _ in left[2:]),
            f"Now {and_list(new)} are left.",
        ]
        for text, count in zip(texts, left, strict=True):
            steps.append(step(text, _exactly(count, factor)))
        taken.append(factor)
        left = new
    product = 1
    for factor in taken:
        product *= factor
    ending = f"Only 1 goes into {and_list(left)}."
    if taken[1:]:
        joined = equation(times(*(number(each) for each in taken)), number(product))
        steps.append(step(f"{ending} Multiply what you divided by: {whole(product)}.", joined))
    else:
        steps.append(step(f"{ending} So {whole(product)} was the greatest."))
    told = (*view.conversions, *steps, *view.shown(product))
    return Working("Dividing out step by step", told, view.answers(product))


def _easy_factor(counts: Sequence[int]) -> int | None:
    """The easiest number above 1 that divides all of them; None where there is none."""
    smallest: int = min(counts)
    for factor in chain(_EASY, range(11, smallest + 1)):
        if factor <= smallest and not any(count % factor for count in counts):
            return factor
    return None


def _taken_away(view: Hcf) -> Iterator[Working]:
    """Euclid: what goes into two numbers goes into their difference too."""
    large, small = sorted(view.counts, reverse=True)
    steps = [step("What goes into both numbers also goes into their difference.")]
    while large != small:
        rest = large - small
        text = f"Take {whole(small)} from {whole(large)}: {whole(rest)}."
        steps.append(step(text, equation(minus(number(large), number(small)), number(rest))))
        large, small = max(small, rest), min(small, rest)
        if len(steps) > _MOST_DIFFERENCES:
            return
    pair = and_list(view.counts)
    text = f"Now both are {whole(small)}, the greatest number that goes into {pair}."
    steps.append(step(text))
    yield _working(view, "Taking away again and again", steps, small)


def _primes(view: Hcf) -> Working:
    lists = [primes_of(count) for count in view.counts]
    steps: list[Step] = []
    for count, primes in zip(view.counts, lists, strict=True):
        steps += _split(count, primes)
    shared: list[int] = []
    rest = [list(primes) for primes in lists[1:]]
    for prime in lists[0]:
        if all(prime in others for others in rest):
            shared.append(prime)
            for others in rest:
                others.remove(prime)
    factor = 1
    for prime in shared:
        factor *= prime
    told = f"In {all_of(len(lists))}: {and_list(shared)}."
    if shared[1:]:
        joined = equation(times(*(number(each) for each in shared)), number(factor))
        steps.append(step(f"{told} Multiply them: {whole(factor)}.", joined))
    else:
        steps.append(step(told))
    return _working(view, "Prime factors", steps, factor)


def primes_of(count: int) -> tuple[int, ...]:
    """The prime factors in rising order, each as often as it divides."""
    primes, rest, prime = list[int](), count, 2
    while prime * prime <= rest:
        while rest % prime == 0:
            primes.append(prime)
            rest //= prime
        prime += 1
    return (*primes, *((rest,) if rest > 1 else ()))


def _split(count: int, primes: Sequence[int]) -> Iterator[Step]:
    """The number in two factors, and these in theirs, as a factor tree has it."""
    if not primes[1:]:
        yield step(f"{whole(count)} is a prime number itself.")
        return
    if primes[2:]:
        small = max(each for each in factors_of(count) if each * each <= count)
        pair = times(number(small), number(count // small))
        yield step(f"Split {whole(count)} into two factors.", equation(number(count), pair))
    text = "Split these until all are primes." if primes[2:] else f"{whole(count)} in primes."
    yield step(text, _product(count, primes))


def _product(count: int, primes: Sequence[int]) -> Equation:
    return equation(number(count), times(*(number(each) for each in primes)))
