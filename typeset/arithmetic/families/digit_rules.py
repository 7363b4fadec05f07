"""Conditions on the digits of a number: as typed, as told, and as arithmetic.

`holds` tests a number by dividing it up; the workings test rows of digits instead
(digit_lists.py), so that neither reckons as the other does.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import isqrt

from typeset.arithmetic.names import listed
from typeset.errors import AmountError

PLACES = ("ones", "tens", "hundreds", "thousands")
SHAPES = ("odd", "even", "square", "prime")
_PLACE = rf"(?:the )?(?P<other>{'|'.join(PLACES)})(?: digit)?"
_TIMES = re.compile(rf"(?P<n>twice|double|half|\d+ times) {_PLACE}")
_MORE = re.compile(rf"(?P<n>\d) (?P<way>more|less) than {_PLACE}")
_TURNED = re.compile(r"(?P<n>\d{1,4}) (?P<way>more|less)")
_WORDS = {"twice": (2, 1), "double": (2, 1), "half": (1, 2)}
_PLACE_HOW = "write such as 7, odd, twice ones, 3 times ones or 2 more than ones"


@dataclass(frozen=True, slots=True)
class Rule:
    """One condition. `key` is as typed; `n` its number, `under` what it is divided by ('half').

    `place` and `other` count the digits from the ones; `is_told` where the story has to say `n`.
    """

    key: str
    kind: str
    n: int = 0
    under: int = 1
    place: int = 0
    other: int = 0
    digits: tuple[int, ...] = ()
    is_told: bool = True


def place_rule(place: str, text: str) -> Rule:
    """'tens: 3 times ones' and its like. Raises AmountError with what would be right."""
    at, tidy = PLACES.index(place), " ".join(text.split())
    if tidy in ("odd", "even"):
        return Rule(place, f"place {tidy}", place=at, is_told=False)
    if tidy.isdecimal() and len(tidy) == 1:
        return Rule(place, "place is", int(tidy), place=at)
    if times := _TIMES.fullmatch(tidy):
        word = times["n"]
        over, under = _WORDS.get(word) or (int(word.split()[0]), 1)
        other = _other(place, times["other"])
        return Rule(place, "place times", over, under, at, other, is_told=word not in _WORDS)
    if more := _MORE.fullmatch(tidy):
        other = _other(place, more["other"])
        sign = 1 if more["way"] == "more" else -1
        return Rule(place, "place more", sign * int(more["n"]), place=at, other=other)
    raise AmountError(f"'{tidy}' says nothing of the {place} digit", _PLACE_HOW)


def _other(place: str, other: str) -> int:
    if other == place:
        raise AmountError(f"the {place} digit is compared with itself", _PLACE_HOW)
    return PLACES.index(other)


def turned_rule(text: str) -> Rule:
    """'turned round: 27 more'."""
    found = _TURNED.fullmatch(" ".join(text.split()))
    if found is None or not int(found["n"]):
        raise AmountError(f"'{text}' says nothing of the number turned round", "write 27 more")
    sign = 1 if found["way"] == "more" else -1
    return Rule("turned round", "turned round", sign * int(found["n"]))


def phrase(rule: Rule) -> str:
    """The condition in words, as a sentence begins or goes on with it."""
    n = abs(rule.n)
    way = "more" if rule.n > 0 else "less"
    place, other = f"the {PLACES[rule.place]} digit", f"the {PLACES[rule.other]} digit"
    factor = "half" if rule.under == 2 else {2: "twice"}.get(n, f"{n} times")
    return {
        "digit sum": f"the digits add up to {n}",
        "digit difference": f"the digits differ by {n}",
        "digit product": f"the digits multiplied make {n}",
        "turned round": f"turned round it is {n:,} {way}",
        "more than": f"it is more than {n:,}",
        "less than": f"it is less than {n:,}",
        "multiple of": f"it is a multiple of {n}",
        "odd": "it is odd",
        "even": "it is even",
        "square": "it is a square number",
        "prime": "it is a prime number",
        "all different": "no digit stands twice",
        "using": f"it is made of {listed([str(each) for each in rule.digits], 'and')}",
        "place odd": f"{place} is odd",
        "place even": f"{place} is even",
        "place is": f"{place} is {n}",
        "place times": f"{place} is {factor} {other}",
        "place more": f"{place} is {n} {way} than {other}",
    }[rule.kind]


def short_name(rule: Rule) -> str:
    """What a list by this condition is called."""
    if rule.kind.startswith("place"):
        return f"the {PLACES[rule.place]} digit"
    return {
        "digit sum": "the sum of the digits",
        "digit difference": "the difference of the digits",
        "digit product": "the product of the digits",
        "turned round": "the number turned round",
        "more than": "the lower limit",
        "less than": "the upper limit",
        "multiple of": f"the multiples of {rule.n}",
        "odd": "the odd numbers",
        "even": "the even numbers",
        "square": "the square numbers",
        "prime": "the prime numbers",
        "all different": "its different digits",
        "using": "the digits that there are",
    }[rule.kind]


def holds(rule: Rule, number: int) -> bool:
    """True where the number meets the condition, by arithmetic alone."""
    return _TESTS[rule.kind](rule, number)


def numbers_meeting(rules: Iterable[Rule], length: int) -> list[int]:
    """Every number of so many digits that meets all the conditions, smallest first."""
    low, high = 10 ** (length - 1), 10**length
    # One bit a number; of no conditions, all of them.
    met = (1 << (high - low)) - 1
    for rule in rules:
        met &= _met(rule, length)
    found = []
    while met:
        last = met & -met
        found.append(low + last.bit_length() - 1)
        met ^= last
    return found


# While other numbers are looked for, most conditions stay as they are.
@lru_cache(maxsize=256)
def _met(rule: Rule, length: int) -> int:
    """The numbers of so many digits that meet the condition, one bit each from the smallest."""
    low, high = 10 ** (length - 1), 10**length
    bits = "".join("1" if holds(rule, each) else "0" for each in range(low, high))
    return int(bits[::-1], 2)


def _digit(number: int, place: int) -> int:
    return number // int(10**place) % 10


# As many as the numbers of four digits, which are tried again with every other condition.
@lru_cache(maxsize=10_000)
def _digits(number: int) -> tuple[int, ...]:
    """The digits from the ones up."""
    found = []
    while number:
        number, digit = divmod(number, 10)
        found.append(digit)
    return tuple(found)


def _product(number: int) -> int:
    result = 1
    for digit in _digits(number):
        result *= digit
    return result


def _turned(number: int) -> int:
    result = 0
    for digit in _digits(number):
        result = 10 * result + digit
    return result


def _is_prime(number: int) -> bool:
    return number > 1 and all(number % each for each in range(2, isqrt(number) + 1))


_TESTS: dict[str, Callable[[Rule, int], bool]] = {
    "digit sum": lambda rule, n: sum(_digits(n)) == rule.n,
    "digit difference": lambda rule, n: max(_digits(n)) - min(_digits(n)) == rule.n,
    "digit product": lambda rule, n: _product(n) == rule.n,
    # A number that would begin with 0 cannot be turned round.
    "turned round": lambda rule, n: n % 10 != 0 and _turned(n) - n == rule.n,
    "more than": lambda rule, n: n > rule.n,
    "less than": lambda rule, n: n < rule.n,
    "multiple of": lambda rule, n: n % rule.n == 0,
    "odd": lambda rule, n: n % 2 == 1,
    "even": lambda rule, n: n % 2 == 0,
    "square": lambda rule, n: isqrt(n) ** 2 == n,
    "prime": lambda rule, n: _is_prime(n),
    "all different": lambda rule, n: len(set(_digits(n))) == len(_digits(n)),
    "using": lambda rule, n: sorted(_digits(n)) == sorted(rule.digits),
    "place odd": lambda rule, n: _digit(n, rule.place) % 2 == 1,
    "place even": lambda rule, n: _digit(n, rule.place) % 2 == 0,
    "place is": lambda rule, n: _digit(n, rule.place) == rule.n,
    "place times": lambda rule, n: (
        rule.under * _digit(n, rule.place) == rule.n * _digit(n, rule.other)
    ),
    "place more": lambda rule, n: _digit(n, rule.place) - _digit(n, rule.other) == rule.n,
}
