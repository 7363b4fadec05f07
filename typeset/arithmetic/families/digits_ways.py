"""Ways to search for a number by its digits, right ones and wrong ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Equation, equation, minus, plus, times
from typeset.arithmetic.families.digit_lists import Digits, every_row, fits, kept, rows_by, value
from typeset.arithmetic.families.digit_rules import PLACES, Rule, phrase, short_name
from typeset.arithmetic.names import listed
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, number
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say, whole

GREATEST, LEAST = "greatest", "least"
# A longer list no pupil writes out, and more ways to begin no teacher reads.
_LONGEST = 30
_MOST_WAYS = 3
# What a pupil writes on one line; a longer list is parted by the first digit.
_ONE_LINE = 12


@dataclass(frozen=True, slots=True)
class Search:
    """The problem with its conditions; `find` is number, greatest or least."""

    problem: Problem[Any]
    rules: tuple[Rule, ...]
    length: int
    find: str

    def answer(self, row: Digits) -> dict[str, AnswerValue]:
        """The number that the digits write."""
        return self.of(value(row))

    def of(self, found: int) -> dict[str, AnswerValue]:
        """A number as the answer."""
        asked = self.problem.finds[0]
        return {asked: self.problem.answer(asked, found)}

    def best(self, rows: Sequence[Digits]) -> Digits:
        """The row that is asked for among those that fit."""
        return max(rows) if self.find == GREATEST else min(rows)

    def without(self, *rules: Rule) -> tuple[Rule, ...]:
        """The other conditions."""
        return tuple(rule for rule in self.rules if rule not in rules)


def ways_of(search: Search) -> Iterator[Working]:
    """Lists by the conditions that leave few numbers; digit by digit for the greatest or least.

    Raises AmountError where no list is short enough to write out.
    """
    starts = list(_starts(search))
    ways = [_listed(search, start) for start in starts[:_MOST_WAYS]]
    if search.find in (GREATEST, LEAST):
        ways.append(_digit_by_digit(search))
    if not starts:
        raise AmountError(
            f"no condition leaves {_LONGEST} numbers or fewer to list",
            "add a condition that leaves fewer, such as 'digit sum'",
        )
    if len(ways) < 2:
        ways.append(_by_the_first_digit(search))
    yield from ways


def _starts(search: Search) -> Iterator[tuple[Rule, ...]]:
    """The conditions, alone or two together, that leave a list of a length to write out."""
    sizes = {rule: len(rows_by(rule, search.length)) for rule in search.rules}
    short = sorted(
        (rule for rule in search.rules if sizes[rule] <= _LONGEST), key=sizes.__getitem__
    )
    yield from ((rule,) for rule in short)
    long = [rule for rule in search.rules if rule not in short]
    for pair in combinations(long, 2):
        if len(kept(pair, every_row(search.length))) <= _LONGEST:
            yield pair


def _written(rows: Sequence[Digits]) -> str:
    numbers = [whole(value(row)) for row in rows]
    # Between numbers that have commas themselves stand semicolons.
    return "; ".join(numbers) if any("," in each for each in numbers) else listed(numbers, "and")


def _listed(search: Search, start: tuple[Rule, ...]) -> Working:
    """All numbers by the first condition, struck out by the others one after the other."""
    first, *rest = start
    rows = kept(rest, rows_by(first, search.length))
    begin = " and ".join(phrase(rule) for rule in start)
    steps = [step(f"{title(begin)}: {_written(rows)}.")]
    if len(rows) > _ONE_LINE:
        steps = [step(f"{title(begin)}. List them in order."), *_by_first_digit(rows)]
    for rule in search.without(*start):
        rows, told = _struck_out(rule, rows)
        steps.append(told)
    found = search.best(rows)
    if len(rows) > 1:
        steps.append(step(f"The {search.find} of these is {whole(value(found))}."))
    steps += _checks(search, found)
    name = f"Listing by {' and '.join(short_name(rule) for rule in start)}"
    return Working(name, tuple(steps), search.answer(found))


def _by_first_digit(rows: Sequence[Digits]) -> Iterator[Step]:
    """A long list, one line for each first digit."""
    for digit in range(1, 10):
        begun = [row for row in rows if row[0] == digit]
        if begun:
            yield step(f"Beginning with {digit}: {_written(begun)}.")


def _struck_out(rule: Rule, rows: list[Digits]) -> tuple[list[Digits], Step]:
    left = kept((rule,), rows)
    if len(left) == len(rows):
        ends = "it fits" if len(rows) == 1 else "they all fit"
    elif len(left) == 1:
        ends = f"only {_written(left)} is left"
    else:
        return left, step(f"{title(phrase(rule))}. What is left: {_written(left)}.")
    return left, step(f"{title(phrase(rule))}: {ends}.")


def _checks(search: Search, found: Digits) -> Iterator[Step]:
    """The conditions that are sums, worked out on the number that was found."""
    for rule in search.rules:
        worked = _worked(rule, found)
        if worked is not None:
            yield step(f"Check {whole(value(found))}: {phrase(rule)}.", worked)


def _worked(rule: Rule, row: Digits) -> Equation | None:
    digits = [number(digit) for digit in row]
    this = number(value(row))
    match rule.kind:
        case "digit sum":
            return equation(plus(*digits), number(rule.n))
        case "digit product":
            return equation(times(*digits), number(rule.n))
        case "digit difference":
            return equation(minus(number(max(row)), number(min(row))), number(rule.n))
        case "turned round":
            pair = sorted((this, number(value(row[::-1]))), key=lambda each: -each.value)
            return equation(minus(*pair), number(abs(rule.n)))
        case "multiple of":
            return equation(times(number(rule.n), Amount(this.value / rule.n)), this)
        case _:
            return None


def _digit_by_digit(search: Search) -> Working:
    """The best digit that can stand in each place, from the left."""
    rows = kept(search.rules, every_row(search.length))
    size = "greatest" if search.find == GREATEST else "least"
    steps: list[Step] = []
    prefix: Digits = ()
    for at in range(search.length):
        digits = {row[at] for row in rows if row[:at] == prefix}
        digit = max(digits) if search.find == GREATEST else min(digits)
        place = title(PLACES[search.length - 1 - at])
        how = f"{digit} is the {size} digit with which the rest still fits"
        if len(digits) == 1:
            how = f"only {digit} fits"
        steps.append(step(f"{place}: {how}."))
        prefix = (*prefix, digit)
    steps.append(step(f"That makes {whole(value(prefix))}."))
    steps += _checks(search, prefix)
    return Working("Digit by digit from the left", tuple(steps), search.answer(prefix))


def _by_the_first_digit(search: Search) -> Working:
    """What each first digit allows by one condition after the other."""
    rows = kept(search.rules, every_row(search.length))
    found = search.best(rows)
    steps = []
    for digit in range(1, 10):
        begun = [row for row in every_row(search.length) if row[0] == digit]
        for rule in search.rules:
            left = kept((rule,), begun)
            if not left:
                steps.append(step(f"It cannot begin with {digit}, if {phrase(rule)}."))
                break
            begun = left
        else:
            steps.append(step(f"Beginning with {digit}: {_written(begun)}."))
    return Working("By the first digit", tuple(steps), search.answer(found))


def mistakes_of(search: Search) -> Iterator[MistakenWorking]:
    """The wrong ways that the conditions invite."""
    if search.find in (GREATEST, LEAST):
        yield from _at_the_wrong_end(search)
        yield from _condition_forgotten(search)
        return
    yield from _only_one_used(search)
    yield from _turned_round(search)
    yield from _multiplied(search)


def _only_one_used(search: Search) -> Iterator[MistakenWorking]:
    """The first number of a list, whatever the other conditions say."""
    for start in _starts(search):
        rows = kept(start[1:], rows_by(start[0], search.length))
        wrong = [row for row in rows if not all(fits(rule, row) for rule in search.rules)]
        if wrong:
            written = whole(value(wrong[0]))
            tests = [
                step(f"Try {written}: {phrase(rule)}.", _worked(rule, wrong[0])) for rule in start
            ]
            steps = (*tests, step(f"So it is {written}."))
            yield MistakenWorking("only one condition used", steps, search.answer(wrong[0]))


def _turned_round(search: Search) -> Iterator[MistakenWorking]:
    found = search.best(kept(search.rules, every_row(search.length)))
    if found[-1] and found != found[::-1]:
        digits = listed([str(digit) for digit in sorted(found)], "and")
        told = step(f"The digits are {digits}: {whole(value(found[::-1]))}.")
        yield MistakenWorking("digits turned round", (told,), search.answer(found[::-1]))


def _multiplied(search: Search) -> Iterator[MistakenWorking]:
    """The product of the digits taken where the sum is meant."""
    for rule in search.rules:
        if rule.kind != "digit sum":
            continue
        meant = Rule("digit product", "digit product", rule.n)
        rows = kept((meant, *search.without(rule)), every_row(search.length))
        rows = rows or rows_by(meant, search.length)
        if rows:
            worked = _worked(meant, rows[0])
            told = step(f"The digits make {rule.n}: {whole(value(rows[0]))}.", worked)
            name = "digits multiplied instead of added"
            yield MistakenWorking(name, (told,), search.answer(rows[0]))


def _at_the_wrong_end(search: Search) -> Iterator[MistakenWorking]:
    rows = kept(search.rules, every_row(search.length))
    other = min(rows) if search.find == GREATEST else max(rows)
    size = "smallest" if search.find == GREATEST else "largest"
    told = step(f"Begin with the {size} digit that fits: {whole(value(other))}.")
    yield MistakenWorking("greatest and least exchanged", (told,), search.answer(other))
    for rule in search.rules:
        if rule.kind == "using" and 0 in rule.digits and search.find == LEAST:
            row = tuple(sorted(rule.digits))
            written = "".join(str(digit) for digit in row)
            told = step(f"Put the smallest digits first: {written}.")
            yield MistakenWorking("nought put first", (told,), search.of(value(row)))


def _condition_forgotten(search: Search) -> Iterator[MistakenWorking]:
    """The greatest or least without a look at one of the conditions."""
    for rule in reversed(search.rules):
        others = search.without(rule)
        if not others or rule.kind == "using":
            continue
        best = search.best(kept(others, every_row(search.length)))
        if not fits(rule, best):
            begin = " and ".join(phrase(each) for each in others)
            told = step(f"{title(begin)}: the {search.find} is {whole(value(best))}.")
            yield MistakenWorking("only one condition used", (told,), search.answer(best))


def reason_of(search: Search) -> Rich:
    """How many meet one condition, and that the others strike out."""
    sizes = {rule: len(rows_by(rule, search.length)) for rule in search.rules}
    rule = min(sizes, key=sizes.__getitem__)
    how = "the other conditions strike out all but one"
    if search.find in (GREATEST, LEAST):
        how = f"the {search.find} is wanted of those that meet all"
        if len(sizes) == 1:
            how = f"the {search.find} of them is wanted"
    verb = "meets" if sizes[rule] == 1 else "meet"
    return say(
        f"{{count}} of the {search.length}-digit numbers {verb} \u2018{phrase(rule)}\u2019, "
        f"and {how}.",
        count=number(sizes[rule]),
    )
