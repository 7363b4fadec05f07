"""Digits of a number: the one number that meets several conditions, or the greatest of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.digit_rules import (
    PLACES,
    SHAPES,
    Rule,
    numbers_meeting,
    place_rule,
    turned_rule,
)
from typeset.arithmetic.families.digits_ways import Search, mistakes_of, reason_of, ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, WholeAmount, YesNo
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import as_list, listed, near_name
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.quotes import Quote, list_of
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, number
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension
from typeset.quantities.writing import whole, write

FOUND = "number"
_MOST_DIGITS = 4
# So many of the numbers that fit are named in a complaint.
_MOST_NAMED = 4
_NUMBERS = ("digit sum", "digit difference", "digit product", "more than", "less than",
            "multiple of")  # fmt: skip
_ORDINALS = ("first", "second", "third", "fourth")


def _digits_read(value: object) -> object:
    return [str(each) for each in value] if isinstance(value, list) else value


class DigitsOfANumberFields(FamilyFields):
    """`digits: 2` with conditions: `digit sum: 11`, `digit difference`, `digit product`,
    `turned round: 27 more`, `more than: 40`, `less than: 90`, `multiple of: 7`, `is: odd` (even,
    square, prime), `all different: yes`, `tens: 3 times ones`; or `using: [3, 0, 8, 5]`.
    `find: greatest` or `least` where several fit."""

    digits: WholeAmount | None = None
    digit_sum: WholeAmount | None = Field(default=None, alias="digit sum")
    digit_difference: WholeAmount | None = Field(default=None, alias="digit difference")
    digit_product: WholeAmount | None = Field(default=None, alias="digit product")
    turned_round: str | None = Field(default=None, alias="turned round")
    more_than: WholeAmount | None = Field(default=None, alias="more than")
    less_than: WholeAmount | None = Field(default=None, alias="less than")
    multiple_of: WholeAmount | None = Field(default=None, alias="multiple of")
    shape: str | list[str] = Field(default_factory=list, alias="is")
    all_different: YesNo = Field(default=False, alias="all different")
    ones: str | None = None
    tens: str | None = None
    hundreds: str | None = None
    thousands: str | None = None
    using: Annotated[list[str], BeforeValidator(_digits_read)] | None = None
    find: Literal["number", "greatest", "least"] = "number"


class DigitsOfANumber(Family[DigitsOfANumberFields]):
    """A number is searched for among all that have so many digits."""

    name = "digits of a number"
    fields_model = DigitsOfANumberFields

    def build(self, fields: DigitsOfANumberFields) -> Problem[DigitsOfANumberFields]:
        """The problem; the numbers of its conditions are named by their keys."""
        rules, length = rules_of(fields), _length(fields)
        if fields.find == FOUND and len(rules) < 2:
            raise AmountError("one condition is no search", "give at least 2 conditions")
        if not rules:
            raise AmountError("there is no condition", "give one such as 'digit sum: 11'")
        for rule in rules:
            if rule.kind.startswith("place") and max(rule.place, rule.other) >= length:
                place = PLACES[max(rule.place, rule.other)]
                raise AmountError(
                    f"a number of {length} digits has no {place} digit", "change 'digits'"
                )
        if length > 2 and fields.digit_difference is not None:
            raise AmountError(
                "only two digits have a difference", "compare two by name: tens: 2 more than ones"
            )
        givens = {rule.key: number(abs(rule.n)) for rule in rules if rule.is_told}
        for rule in rules:
            for ordinal, digit in zip(_ORDINALS, rule.digits, strict=False):
                givens[f"{ordinal} digit"] = number(digit)
        unit = fields.answer_in or NUMBER
        if unit.dimension not in (Dimension.NUMBER, Dimension.COUNT):
            raise AmountError("a number of digits has no unit", "leave out 'answer in'")
        units = MappingProxyType({FOUND: unit})
        return Problem(self.name, MappingProxyType(givens), (FOUND,), units, fields)

    def relation(self, problem: Problem[DigitsOfANumberFields]) -> Mapping[str, AnswerValue]:
        """Every number of so many digits is tried; exactly one must fit, or one is the greatest."""
        fields = problem.fields
        rules, length = rules_of(fields), _length(fields)
        fitting = numbers_meeting(rules, length)
        return {FOUND: problem.answer(FOUND, _chosen(fitting, fields.find))}

    def strategies(self, problem: Problem[DigitsOfANumberFields]) -> Iterator[Working]:
        """A list by one condition, struck out by the others; by another; digit by digit."""
        yield from ways_of(_search(problem))

    def mistakes(self, problem: Problem[DigitsOfANumberFields]) -> Iterator[MistakenWorking]:
        """Only one condition; the digits turned round; multiplied for added; the wrong end."""
        yield from mistakes_of(_search(problem))

    def probed(self, problem: Problem[DigitsOfANumberFields]) -> tuple[str, ...]:
        """None: another number in a condition leaves no answer, or several."""
        return ()

    def is_search(self, problem: Problem[DigitsOfANumberFields]) -> bool:
        """Always."""
        return True

    def reason(self, problem: Problem[DigitsOfANumberFields]) -> Rich:
        """How many meet the first condition, to be struck out by the others."""
        return reason_of(_search(problem))

    def quotes(self, problem: Problem[DigitsOfANumberFields]) -> Mapping[str, Quote]:
        """`{digits}` for how many there are, `{using}` for those that are given."""
        length = number(_length(problem.fields))
        quotes = {"digits": Quote((write(length),), (length,), frozenset())}
        cards = {
            name: problem.givens[name]
            for name in (f"{ordinal} digit" for ordinal in _ORDINALS)
            if name in problem.givens
        }
        if cards:
            quotes["using"] = list_of(cards)
        return quotes


def rules_of(fields: DigitsOfANumberFields) -> tuple[Rule, ...]:
    """The conditions in the order of the keys. Raises AmountError for one that is none."""
    rules = []
    for key in _NUMBERS:
        amount: Amount | None = getattr(fields, key.replace(" ", "_"))
        if amount is not None:
            rules.append(Rule(key, key, _plain(key, amount)))
    if fields.turned_round is not None:
        rules.append(turned_rule(fields.turned_round))
    for shape in as_list(fields.shape):
        if shape not in SHAPES:
            near = near_name(shape, SHAPES)
            remedy = f"did you mean '{near}'?" if near else f"write {listed(SHAPES)}"
            raise AmountError(f"'{shape}' is no sort of number here", remedy)
        rules.append(Rule("is", shape, is_told=False))
    if fields.all_different:
        rules.append(Rule("all different", "all different", is_told=False))
    for place in reversed(PLACES):
        text = getattr(fields, place)
        if text is not None:
            rules.append(place_rule(place, text))
    if fields.using is not None:
        rules.insert(0, _using(fields.using))
    return tuple(rules)


def _plain(key: str, amount: Amount) -> int:
    if not is_counted(amount) or amount.unit.plural:
        raise AmountError(f"'{key}' is no plain number", "leave out its unit")
    if key == "multiple of" and amount.value < 2:
        raise AmountError("every number is a multiple of 1", "write 2 or more")
    return int(amount.value)


def _using(typed: list[str]) -> Rule:
    if not all(each.isdecimal() and len(each) == 1 for each in typed):
        raise AmountError("'using' is no list of digits", "write such as [3, 0, 8, 5]")
    if not 2 <= len(typed) <= _MOST_DIGITS or not any(each != "0" for each in typed):
        raise AmountError(f"with 2 to {_MOST_DIGITS} digits a number is made", "change 'using'")
    return Rule("using", "using", digits=tuple(int(each) for each in typed), is_told=False)


def _length(fields: DigitsOfANumberFields) -> int:
    """How many digits the number has."""
    if fields.using is not None:
        if fields.digits is not None and fields.digits.value != len(fields.using):
            raise AmountError(
                f"'digits' is not the {len(fields.using)} of 'using'", "leave out 'digits'"
            )
        return len(fields.using)
    if fields.digits is None:
        raise AmountError("it is not said how many digits there are", "write digits: 2")
    if not 2 <= fields.digits.value <= _MOST_DIGITS:
        raise AmountError(f"numbers of 2 to {_MOST_DIGITS} digits are searched", "change 'digits'")
    return int(fields.digits.value)


def _chosen(fitting: list[int], find: str) -> Fraction:
    """The one that is asked for. Raises AmountError where it cannot be told."""
    if not fitting:
        raise AmountError("no number meets all the conditions", "change one of them")
    if find == FOUND:
        if len(fitting) > 1:
            named = ", ".join(whole(each) for each in fitting[:_MOST_NAMED])
            more = " …" if len(fitting) > _MOST_NAMED else ""
            raise AmountError(
                f"{len(fitting)} numbers meet all the conditions: {named}{more}",
                "add a condition, or ask for the greatest or least",
            )
        return Fraction(fitting[0])
    if len(fitting) == 1:
        raise AmountError(
            f"only {whole(fitting[0])} meets the conditions, so it is no {find}",
            "leave out 'find'",
        )
    return Fraction(max(fitting) if find == "greatest" else min(fitting))


def _search(problem: Problem[DigitsOfANumberFields]) -> Search:
    return Search(problem, rules_of(problem.fields), _length(problem.fields), problem.fields.find)
