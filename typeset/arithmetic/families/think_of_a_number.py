"""I think of a number: a chain of operations, of which one end or one number is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated

from pydantic import BeforeValidator, ValidationInfo

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import PLUS
from typeset.arithmetic.families.number_chain import (
    Link,
    check_units,
    named,
    read_link,
    told_operation,
)
from typeset.arithmetic.families.number_chain_ways import (
    Chain,
    equal_parts,
    mistakes_of,
    reason_of,
    ways_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, refuse
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part, SequenceBoxes
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.quotes import Quote
from typeset.arithmetic.sense import nonsense
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, join, plain
from typeset.quantities.units import NUMBER, Dimension
from typeset.quantities.writing import TIMES, say, write, write_plain

START, RESULT, MISSING = "start", "result", "missing number"
OPERATIONS = "operations"
_MOST_LINKS = 6


def _read_links(value: object, info: ValidationInfo) -> object:
    typed = [value] if isinstance(value, str) else value
    if not isinstance(typed, list) or not all(isinstance(each, str) for each in typed):
        raise refuse("'operations' is not a list", "write such as [halve, add 6, divide by 3]")
    nouns = info.context.get("nouns", {}) if isinstance(info.context, dict) else {}
    try:
        return named([read_link(each, nouns) for each in typed[: _MOST_LINKS + 1]])
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None


class ThinkOfANumberFields(FamilyFields):
    """`operations: [halve, add 6, divide by 3]` and `result: 4.5` or `start: 15`; with both
    of these, the number of one operation is a blank: `add _`."""

    operations: Annotated[tuple[Link, ...], BeforeValidator(_read_links)]
    start: AnyAmount | None = None
    result: AnyAmount | None = None


class ThinkOfANumber(Family[ThinkOfANumberFields]):
    """Each number of the chain is the one before with one operation done to it."""

    name = "think of a number"
    fields_model = ThinkOfANumberFields

    def build(self, fields: ThinkOfANumberFields) -> Problem[ThinkOfANumberFields]:
        """The problem; what is asked for is what is not given."""
        finds = (_asked(fields),)
        ends = {START: fields.start, RESULT: fields.result}
        known = {name: amount for name, amount in ends.items() if amount is not None}
        end = next(iter(known.values()))
        for amount in known.values():
            if amount.unit != end.unit or amount.unit.dimension is Dimension.CLOCK:
                raise AmountError("start and result are not in one unit", "give both in one")
        check_units(fields.operations, end)
        numbers = {
            link.name: link.by for link in fields.operations if link.name and link.by is not None
        }
        unit = fields.answer_in or end.unit
        if unit.dimension is not end.unit.dimension and {unit.dimension, end.unit.dimension} - {
            Dimension.NUMBER,
            Dimension.COUNT,
        }:
            raise AmountError(f"the answer is not in {unit.plural}", "leave out 'answer in'")
        if unit.per_base != end.unit.per_base:
            raise AmountError("the answer has another unit", "leave out 'answer in'")
        asked = next((link for link in fields.operations if link.by is None), None)
        units = {finds[0]: NUMBER if asked is not None and not asked.is_additive else unit}
        givens = MappingProxyType({**known, **numbers})
        return Problem(self.name, givens, finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[ThinkOfANumberFields]) -> Mapping[str, AnswerValue]:
        """One equation for every operation, solved together; nothing may be cut on the way."""
        values = _numbers(problem)
        chain = Chain.of(problem)
        for value in values:
            amount = chain.end.like(value)
            fault = nonsense(amount, problem.fields.may_be_cut)
            if fault:
                raise AmountError(
                    f"on the way the number would be {write_plain(amount)}, {fault}",
                    "choose other numbers",
                )
        return self.smooth(problem)

    def smooth(self, problem: Problem[ThinkOfANumberFields]) -> Mapping[str, AnswerValue]:
        """The answer even where something is cut on the way."""
        values = _numbers(problem)
        asked = problem.finds[0]
        if asked != MISSING:
            end = Amount(values[0 if asked == START else -1])
            return Chain.of(problem).answer(end)
        at, link = _place_of(problem.fields.operations)
        before, after = values[at], values[at + 1]
        if link.is_additive:
            found = after - before if link.sign == PLUS else before - after
        else:
            over, under = (after, before) if link.sign == TIMES else (before, after)
            if not under:
                raise AmountError("with 0 in the chain no number can be found", "change the start")
            found = over / under
        if found <= 0:
            raise AmountError(
                "no number above 0 leads from this start to this result",
                "change one of them, or the operation",
            )
        return Chain.of(problem).answer(Amount(found))

    def strategies(self, problem: Problem[ThinkOfANumberFields]) -> Iterator[Working]:
        """Undoing from the end, or trial and improvement; forwards, in steps or one line."""
        yield from ways_of(Chain.of(problem))

    def mistakes(self, problem: Problem[ThinkOfANumberFields]) -> Iterator[MistakenWorking]:
        """Forwards for backwards, the wrong order, one operation not inverted."""
        yield from mistakes_of(Chain.of(problem))

    def reason(self, problem: Problem[ThinkOfANumberFields]) -> Rich | None:
        """Which operation is undone by which."""
        return reason_of(Chain.of(problem))

    def quotes(self, problem: Problem[ThinkOfANumberFields]) -> Mapping[str, Quote]:
        """`{operations}`: 'halve it, add 6, then divide the result by 3'."""
        chain = Chain.of(problem)
        told = [told_operation(link, not at) for at, link in enumerate(chain.links)]
        text = join(told[:-1], ", ")
        text = join([text, told[-1]], ", then ") if text else told[-1]
        numbers = [link.by for link in chain.links if link.name]
        names = frozenset(link.name for link in chain.links if link.by is not None and link.name)
        return {OPERATIONS: Quote(text, tuple(numbers), names)}

    def figure(
        self, problem: Problem[ThinkOfANumberFields], answers: Mapping[str, AnswerValue]
    ) -> SequenceBoxes | BarModel:
        """Equal parts and what is added, where that is all; else the chain in boxes."""
        parts = equal_parts(Chain.of(problem))
        if parts is not None:
            return _bar(problem, answers, *parts)
        return _boxes(problem, answers)


def _asked(fields: ThinkOfANumberFields) -> str:
    links = fields.operations
    if not 1 <= len(links) <= _MOST_LINKS:
        raise AmountError(f"a chain has 1 to {_MOST_LINKS} operations", "split it in two")
    open_links = sum(link.by is None for link in links)
    open_ends = [name for name in (START, RESULT) if getattr(fields, name) is None]
    if open_links + len(open_ends) != 1:
        raise AmountError(
            "one number has to be asked for, no more and no fewer",
            "give 'result' to ask for the start, 'start' to ask for the result, or both and "
            "one blank among the operations: add _",
        )
    return open_ends[0] if open_ends else MISSING


def _place_of(links: tuple[Link, ...]) -> tuple[int, Link]:
    return next((at, link) for at, link in enumerate(links) if link.by is None)


def _numbers(problem: Problem[ThinkOfANumberFields]) -> list[Fraction]:
    """Every number of the chain, from the start to the result."""
    chain = Chain.of(problem)
    rules = []
    for at, link in enumerate(chain.links):
        before, after = f"n{at}", f"n{at + 1}"
        if link.by is None:
            continue
        by = link.by.value
        if link.is_additive:
            change = by if link.sign == PLUS else -by
            rules.append(Linear({after: 1, before: -1}, change))
        elif link.sign == TIMES:
            rules.append(Linear({after: 1, before: -by}))
        else:
            rules.append(Linear({after: by, before: -1}))
    ends = {START: "n0", RESULT: f"n{len(chain.links)}"}
    for name, number in ends.items():
        if name in problem.givens:
            rules.append(Linear({number: 1}, problem.given(name).value))
    found = solve_linear(rules)
    return [found[f"n{at}"] for at in range(len(chain.links) + 1)]


def _bar(
    problem: Problem[ThinkOfANumberFields],
    answers: Mapping[str, AnswerValue],
    count: int,
    more: Amount,
) -> BarModel:
    start = answers[START]
    assert isinstance(start, Amount)
    one = Part(start.value, Mark((write(start),), is_given=False))
    parts = (*([one] * count), Part(more.value, Mark((write(more),))))
    total = Mark((write(problem.given(RESULT)),))
    told = f"A bar of {count} equal parts, each the number, and {write_plain(more)} more."
    return BarModel((Bar("", parts),), (), total, told)


def _boxes(
    problem: Problem[ThinkOfANumberFields], answers: Mapping[str, AnswerValue]
) -> SequenceBoxes:
    chain = Chain.of(problem)
    values = _numbers(problem)
    given = {0: START, len(values) - 1: RESULT}
    terms = tuple(
        Mark((write(chain.end.like(value)),), given.get(at) in problem.givens)
        for at, value in enumerate(values)
    )
    answer = answers[problem.finds[0]]
    steps = tuple(
        Mark(say(f"{link.sign}\u00a0{{by}}", by=answer), is_given=False)
        if link.by is None and isinstance(answer, Amount)
        else Mark(say(f"{link.sign}\u00a0{{by}}", by=link.known))
        for link in chain.links
    )
    told = ", then ".join(plain(told_operation(link, True)) for link in chain.links)
    return SequenceBoxes(terms, steps, f"A number, and what is done to it: {told}.")
