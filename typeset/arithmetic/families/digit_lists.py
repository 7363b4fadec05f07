"""Lists of numbers by one condition, made of rows of digits, as a pupil would make them."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import permutations, product
from math import isqrt

from typeset.arithmetic.families.digit_rules import Rule

Digits = tuple[int, ...]
_ODD, _EVEN = (1, 3, 5, 7, 9), (0, 2, 4, 6, 8)


def value(row: Digits) -> int:
    """The number that the digits write."""
    return int("".join(str(digit) for digit in row))


def every_row(length: int) -> list[Digits]:
    """All rows of so many digits that do not begin with 0, in order."""
    return list(product(range(1, 10), *[range(10)] * (length - 1)))


def rows_by(rule: Rule, length: int) -> list[Digits]:
    """All rows that meet one condition, in order."""
    if rule.kind == "using":
        return sorted({row for row in permutations(rule.digits) if row[0]})
    if rule.kind == "square":
        squares = (root * root for root in range(100))
        return [row for square in squares if len(row := _row(square)) == length]
    if rule.kind == "multiple of":
        multiples = range(rule.n, 10**length, rule.n)
        return [row for multiple in multiples if len(row := _row(multiple)) == length]
    return [row for row in every_row(length) if fits(rule, row)]


@cache
def _primes(limit: int) -> frozenset[int]:
    """The primes below the limit, by Eratosthenes' sieve."""
    left = set(range(2, limit))
    for factor in range(2, isqrt(limit) + 1):
        left.difference_update(range(factor * factor, limit, factor))
    return frozenset(left)


def _row(number: int) -> Digits:
    return tuple(int(digit) for digit in str(number))


def fits(rule: Rule, row: Digits) -> bool:
    """True where the row of digits meets the condition."""
    here, there = row[-1 - rule.place], row[-1 - rule.other]
    number = value(row)
    match rule.kind:
        case "digit sum":
            return sum(row) == rule.n
        case "digit difference":
            ordered = sorted(row)
            return ordered[0] + rule.n == ordered[-1]
        case "digit product":
            return _multiplied(row) == rule.n
        case "turned round":
            return row[-1] != 0 and value(row[::-1]) == number + rule.n
        case "more than":
            return row > _padded(rule.n, len(row))
        case "less than":
            return row < _padded(rule.n, len(row))
        case "multiple of":
            return number in range(0, 10 ** len(row), rule.n)
        case "odd":
            return row[-1] in _ODD
        case "even":
            return row[-1] in _EVEN
        case "square":
            return row in rows_by(rule, len(row))
        case "prime":
            return number in _primes(10 ** len(row))
        case "all different":
            return all(row.count(digit) == 1 for digit in row)
        case "using":
            return sorted(row) == sorted(rule.digits)
        case "place odd":
            return here in _ODD
        case "place even":
            return here in _EVEN
        case "place is":
            return here == rule.n
        case "place times":
            return rule.under * here == rule.n * there
        case _:
            return here == there + rule.n


def _padded(number: int, length: int) -> Digits:
    """The digits of a limit with noughts before them; one that is too long stands above all."""
    row = _row(number)
    return (10,) if len(row) > length else (0,) * (length - len(row)) + row


def _multiplied(row: Digits) -> int:
    result = 1
    for digit in row:
        result *= digit
    return result


def kept(rules: Sequence[Rule], rows: Sequence[Digits]) -> list[Digits]:
    """The rows that meet all these conditions."""
    return [row for row in rows if all(fits(rule, row) for rule in rules)]
