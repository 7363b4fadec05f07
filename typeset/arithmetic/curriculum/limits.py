"""What in a solved problem lies beyond a year group's curriculum, in a teacher's words.

Sums are those of the easiest working, since that is what a pupil must be able to do, and
the one that joins the story's two numbers, in whatever way the working splits it up.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import permutations
from math import ceil, floor

from typeset.arithmetic.answers import AnswerValue, RatioAnswer, WithRemainder
from typeset.arithmetic.curriculum.years import (
    FIRST_TAUGHT,
    MEASURED,
    NOT_NAMED,
    PERCENTAGES_BY_FRACTION,
    PERCENTAGES_CALCULATED_IN,
    YEARS,
    Year,
)
from typeset.arithmetic.demand import sums_of, written_value
from typeset.arithmetic.equations import PLUS, Expression, Operation, equation
from typeset.arithmetic.solving import Solution
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, write_plain

_WORDS = {1: "one", 2: "two", 3: "three", 4: "four", 7: "seven", 8: "eight"}
_LAST_TABLE = 12
_POINT = re.compile(r"\.(\d+)")


def beyond_year(solution: Solution, year: int) -> tuple[str, ...]:
    """What the curriculum of `year` (3 to 6) does not reach, each said once; empty for nothing."""
    limits = YEARS[year]
    told = [*_structure(solution, limits)]
    for check in (_size, _negative, _money, _decimal, _unit, _percentage):
        # One amount of each sort is enough to say.
        words = (check(amount, limits) for amount in _amounts(solution))
        told += [each for each in words if each][:1]
    told += _first_of_each_kind(solution, limits)
    return tuple(dict.fromkeys(told))


def _structure(solution: Solution, limits: Year) -> Iterator[str]:
    first, words = FIRST_TAUGHT.get(solution.problem.family, (0, ""))
    if any(isinstance(value, RatioAnswer) for value in solution.answers.values()):
        first, words = FIRST_TAUGHT["ratio"]
    if first > limits.year:
        yield words


def _amounts(solution: Solution) -> Iterator[Amount]:
    yield from solution.problem.givens.values()
    for value in solution.answers.values():
        yield from _amounts_in(value)


def _amounts_in(value: AnswerValue) -> Iterator[Amount]:
    match value:
        case Amount():
            yield value
        case WithRemainder(groups=groups, rest=rest):
            yield from (groups, rest)
        case _:
            return


def _size(amount: Amount, limits: Year) -> str:
    if _is_of_times(amount) or abs(amount.value) <= limits.numbers_to:
        return ""
    most = f"{limits.numbers_to:,}, which is as far as Year {limits.year} counts"
    return f"{write_plain(amount)} is beyond {most}"


def _is_of_times(amount: Amount) -> bool:
    """A time of day, or '2 h 35 min': its value is in minutes, which nobody reads."""
    return amount.unit.dimension is Dimension.CLOCK or amount.form is Form.COMPOUND


def _negative(amount: Amount, limits: Year) -> str:
    if amount.value >= 0 or limits.negative_numbers:
        return ""
    return f"{write_plain(amount)} is negative; negative numbers are Year 4"


def _money(amount: Amount, limits: Year) -> str:
    is_money = amount.unit.dimension is Dimension.MONEY
    if not is_money or limits.money_with_point or "." not in write_plain(amount):
        return ""
    return f"{write_plain(amount)} has pounds and pence in one number, which is Year 4"


def _decimal(amount: Amount, limits: Year) -> str:
    point = _POINT.search(write_plain(amount))
    if point is None or amount.unit.dimension is Dimension.MONEY:
        return ""
    places = len(point[1])
    if places <= limits.decimal_places:
        return ""
    first = min((each.year for each in YEARS.values() if each.decimal_places >= places), default=0)
    when = f"are Year {first}" if first else "are not in the curriculum to Year 6"
    so_many = f"decimals with {_WORDS.get(places, places)} places"
    many = so_many if limits.decimal_places else "decimals"
    return f"{write_plain(amount)} is a decimal; {many} {when}"


def _unit(amount: Amount, limits: Year) -> str:
    unit = amount.unit
    if unit.dimension not in MEASURED or unit.singular in limits.units:
        return ""
    if unit.singular in NOT_NAMED:
        return f"the curriculum does not name {unit.plural} as a unit"
    first = min(year for year, each in YEARS.items() if unit.singular in each.units)
    return f"the unit {unit.plural} is Year {first}"


def _percentage(amount: Amount, limits: Year) -> str:
    if amount.unit.dimension is not Dimension.PERCENT or amount.unit.singular not in limits.units:
        return ""
    known = any((amount.base * under).denominator == 1 for under in PERCENTAGES_BY_FRACTION)
    if known or limits.year >= PERCENTAGES_CALCULATED_IN:
        return ""
    return (
        f"{write_plain(amount)} is no fraction that Year {limits.year} knows as a percentage; "
        f"calculating percentages is Year {PERCENTAGES_CALCULATED_IN}"
    )


def _sums(solution: Solution) -> Iterator[Operation]:
    yield from _of_the_story(solution)
    yield from (each for each, _has_rest in sums_of(solution.workings[0]))


def _of_the_story(solution: Solution) -> Iterator[Operation]:
    """17 × 23 although it is worked out as 17 × 20 and 17 × 3."""
    givens = tuple(solution.problem.givens.values())
    answers = [each.value for value in solution.answers.values() for each in _amounts_in(value)]
    if len(givens) != 2:
        return
    for one, other in permutations(givens):
        if one.value * other.value in answers:
            yield Operation(TIMES, one, other)
            return
        if other.value and {floor(one.value / other.value), ceil(one.value / other.value)} & {
            *answers
        }:
            yield Operation(DIVIDE, one, other)


def _first_of_each_kind(solution: Solution, limits: Year) -> Iterator[str]:
    """One sum that is too long for the year is enough to say; so for each sign."""
    told: set[str] = set()
    for each in _sums(solution):
        words = _written(each, limits)
        if words and each.sign not in told:
            told.add(each.sign)
            yield words


def _written(each: Operation, limits: Year) -> str:
    """Why this sum is beyond the year; empty where it is not."""
    left, right = _value(each.left), _value(each.right)
    if left is None or right is None:
        return ""
    text = equation(each).text()
    if each.sign in (PLUS, MINUS):
        return _sum(text, max(left, right), limits)
    if each.sign == TIMES:
        return _product(text, left, right, limits)
    return _division(text, left, right, limits) if each.sign == DIVIDE and right else ""


def _value(side: Expression) -> int | None:
    """The whole number as it is written, in its own unit; None for anything else."""
    if isinstance(side, Amount) and _is_of_times(side):
        return None
    value = written_value(side)
    return abs(value.numerator) if value.denominator == 1 else None


def _sum(text: str, largest: int, limits: Year) -> str:
    if len(str(largest)) <= limits.sum_digits:
        return ""
    most = _WORDS.get(limits.sum_digits, str(limits.sum_digits))
    return f"{text} has more than the {most} digits that Year {limits.year} adds and subtracts"


def _product(text: str, left: int, right: int, limits: Year) -> str:
    short, long = sorted((_digits(left, limits), _digits(right, limits)))
    if short == 0:
        return ""
    if max(_core(left), _core(right)) <= _LAST_TABLE:
        return "" if _by_table(left, right, limits) else f"{text} needs a table of Year 4"
    most_long, most_short = limits.product_digits
    if long <= most_long and short <= most_short:
        return ""
    return _too_long(text, "multiplies", limits.product_digits, limits.year)


def _division(text: str, left: int, right: int, limits: Year) -> str:
    if _digits(right, limits) == 0 or left < right:
        return ""
    quotient = left // right
    if max(quotient, _core(quotient), _core(right)) <= _LAST_TABLE and quotient:
        return "" if _by_table(quotient, right, limits) else f"{text} needs a table of Year 4"
    most_long, most_short = limits.division_digits
    if _digits(left, limits) <= most_long and _digits(right, limits) <= most_short:
        return ""
    return _too_long(text, "divides", limits.division_digits, limits.year)


def _too_long(text: str, verb: str, most: tuple[int, int], year: int) -> str:
    digits = [f"{_WORDS[count]} {'digit' if count == 1 else 'digits'}" for count in most]
    return f"{text} is beyond Year {year}, which {verb} up to {digits[0]} by {digits[1]}"


def _by_table(left: int, right: int, limits: Year) -> bool:
    """A fact of a table the year knows, whatever noughts hang on its numbers."""
    known = limits.tables | {0, 1}
    return _core(left) in known or _core(right) in known


def _core(value: int) -> int:
    """The number without the noughts at its end."""
    while value >= 10 and value % 10 == 0:
        value //= 10
    return value


def _digits(value: int, limits: Year) -> int:
    """Digits that a written method works on: none for 1, 10, 100 …, one for a known table's."""
    core = _core(value)
    if core <= 1:
        return 0
    return 1 if core in limits.tables else len(str(core))
