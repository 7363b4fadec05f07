"""Lowest common multiple: when they come together again; packs that match in number."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import prod
from types import MappingProxyType

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.lcm_mistakes import lcm_mistakes
from typeset.arithmetic.families.lcm_view import (
    EACH,
    LEFT,
    NEXT,
    START,
    TOGETHER,
    Lcm,
    lcm_of,
    turn_of,
)
from typeset.arithmetic.families.lcm_ways import lcm_ways
from typeset.arithmetic.families.shared_numbers import (
    NamedNumbers,
    all_of,
    as_in_story,
    check_names,
    check_same_kind,
    check_whole,
    in_one_unit,
    scale_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, PositiveAmount, UnitField, WholeAmount
from typeset.arithmetic.figures import Jump, Mark, NumberLine, Tick
from typeset.arithmetic.methods import in_unit, is_counted, without_noun
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, join
from typeset.quantities.units import CLOCK, NUMBER, Dimension, Unit
from typeset.quantities.writing import say, write, write_plain

# More jumps than these nobody draws on a line.
_MOST_JUMPS = 8


class LowestCommonMultipleFields(NamedNumbers):
    """`every: {north ferry: 12 min, south ferry: 18 min}`, `start: 08:00`, `find: next`;
    or `packs: {hooks: 8 hooks, floats: 6 floats}`, `find: [hooks, floats, each]`.

    `find: together` asks after how much they come together, `next` at what time of day (it
    needs `start`), `each` how many there are of each thing. A name asks for its number of
    packs or turns; `groups called` says what these are. `left over: 1 shell` beside `packs` is
    what remains in packs of every kind.
    """

    every: dict[str, PositiveAmount] | None = None
    packs: dict[str, PositiveAmount] | None = None
    start: AnyAmount | None = None
    left_over: WholeAmount | None = Field(default=None, alias="left over")
    find: str | list[str]
    groups_called: UnitField | None = Field(default=None, alias="groups called")

    def amounts(self) -> Mapping[str, Amount]:
        """The amounts by name, whichever key they stand under."""
        return self.every or self.packs or {}


class LowestCommonMultiple(Family[LowestCommonMultipleFields]):
    """The least number that is a multiple of all the amounts."""

    name = "lowest common multiple"
    fields_model = LowestCommonMultipleFields

    def build(self, fields: LowestCommonMultipleFields) -> Problem[LowestCommonMultipleFields]:
        """The problem; the amounts are whole, and not all the same."""
        if (fields.every is None) == (fields.packs is None):
            raise AmountError(
                "the numbers belong to one key, 'every' or 'packs'",
                "write such as every: {north ferry: 12 min, south ferry: 18 min}",
            )
        amounts, givens = fields.amounts(), dict(fields.amounts())
        check_names(
            amounts,
            (TOGETHER, NEXT, EACH, START, LEFT),
            "every" if fields.packs is None else "packs",
        )
        check_same_kind(amounts)
        check_whole(amounts)
        if fields.start is not None:
            _check_start(fields)
            givens[START] = fields.start
        finds = as_list(fields.find)
        if fields.left_over is not None:
            _check_left(fields)
            givens[LEFT] = fields.left_over
        for asked in finds:
            _check_asked(asked, fields)
        units = MappingProxyType({asked: _unit(asked, fields) for asked in finds})
        return Problem(self.name, MappingProxyType(givens), finds, units, fields)

    def relation(self, problem: Problem[LowestCommonMultipleFields]) -> Mapping[str, AnswerValue]:
        """The multiples of the largest, one after another; the first that all share."""
        view = lcm_of(problem)
        return view.answers(view.lowest())

    def strategies(self, problem: Problem[LowestCommonMultipleFields]) -> Iterator[Working]:
        """Listing multiples or times, trying those of the largest, through the shared factor."""
        yield from lcm_ways(lcm_of(problem))

    def mistakes(self, problem: Problem[LowestCommonMultipleFields]) -> Iterator[MistakenWorking]:
        """The product, the sum, the difference, a factor, the largest, the sides exchanged."""
        yield from lcm_mistakes(lcm_of(problem))

    def smooth(self, problem: Problem[LowestCommonMultipleFields]) -> Mapping[str, AnswerValue]:
        """The answers with as many turns or packs as in the story.

        The lowest common multiple itself jumps about from number to number; what is asked of
        the pupil is to multiply all the same: twice as long a turn, as often, is twice as long.
        """
        told = as_in_story(problem)
        view, answers = lcm_of(told), dict(self.relation(told))
        grown = prod((scale_of(problem, name) for name in view.names), start=Fraction(1))
        for asked, answer in answers.items():
            assert isinstance(answer, Amount)
            if asked == NEXT:
                gone = view.size(view.lowest() * grown).base / CLOCK.per_base
                answers[asked] = answer.like(problem.given(START).value + gone)
            elif asked in (TOGETHER, EACH):
                left = problem.givens[LEFT].value if view.left is not None else 0
                full = answer.value - (view.left.value if view.left is not None else 0)
                answers[asked] = answer.like(full * grown + left)
            else:
                answers[asked] = answer.like(answer.value / scale_of(problem, asked))
        return answers

    def reason(self, problem: Problem[LowestCommonMultipleFields]) -> Rich:
        """A whole number of times each of them, and the same for all."""
        return _reason(lcm_of(problem))

    def figure(
        self, problem: Problem[LowestCommonMultipleFields], answers: Mapping[str, AnswerValue]
    ) -> NumberLine | None:
        """A number line with the jumps of two, one over it and one under it."""
        return _number_line(lcm_of(problem))


def _check_start(fields: LowestCommonMultipleFields) -> None:
    assert fields.start is not None
    if fields.start.unit.dimension is not Dimension.CLOCK:
        raise AmountError(
            f"'start' is {write_plain(fields.start)}, not a time of day", "write such as 08:00"
        )
    first = next(iter(fields.amounts().values()))
    if fields.every is None or first.unit.dimension is not Dimension.TIME:
        raise AmountError(
            "'start' is a time of day, so what comes round is a length of time",
            "write such as every: {north ferry: 12 min, south ferry: 18 min}, or leave out 'start'",
        )


def _check_left(fields: LowestCommonMultipleFields) -> None:
    assert fields.left_over is not None
    smallest = min(fields.amounts().values(), key=lambda amount: amount.base)
    if fields.packs is None or EACH not in as_list(fields.find):
        raise AmountError(
            "'left over' belongs to packs, and to how many things there are",
            "write packs: and find: each, or leave out 'left over'",
        )
    check_same_kind({**fields.amounts(), LEFT: fields.left_over})
    if fields.left_over.base >= smallest.base:
        raise AmountError(
            f"{write_plain(fields.left_over)} left over would fill another pack of "
            f"{write_plain(smallest)}",
            "choose a smaller number",
        )


def _check_asked(asked: str, fields: LowestCommonMultipleFields) -> None:
    if asked == NEXT and fields.every is not None and fields.start is None:
        raise AmountError(
            "'next' asks for a time of day, but nobody says when they begin",
            "give 'start', such as start: 08:00, or write find: together",
        )
    known = [EACH] if fields.every is None else [TOGETHER, *([NEXT] if fields.start else [])]
    one_of(asked, (*known, *fields.amounts()))


def _unit(asked: str, fields: LowestCommonMultipleFields) -> Unit:
    """Multiples keep the unit of the amounts where they have one; turns have their own name."""
    if asked == NEXT:
        return CLOCK
    amounts = in_one_unit(fields.amounts())[0]
    if asked not in (TOGETHER, EACH):
        is_only = len(as_list(fields.find)) == 1 and fields.groups_called is None
        if is_only and fields.answer_in is not None:
            if not is_counted(Amount(Fraction(1), fields.answer_in)):
                raise AmountError(
                    f"packs and turns are not measured in {fields.answer_in.plural}",
                    "name them with 'answer in', such as crossings",
                )
            return fields.answer_in
        return turn_of(fields)
    units = {amount.unit for amount in amounts.values()}
    unit = units.pop() if len(units) == 1 else NUMBER
    if fields.answer_in is not None:
        in_unit(Amount(Fraction(1), unit), fields.answer_in)
        return fields.answer_in
    return unit


def _reason(view: Lcm) -> Rich:
    """'36 min is 3 times 12 min and 2 times 18 min, and nothing less will do.'"""
    lowest, every = view.lowest(), all_of(len(view.counts))
    parts = [
        say("{n} times {amount}", n=Amount(lowest / each.value), amount=without_noun(each))
        for each in view.amounts.values()
    ]
    opening = f"They come together at a multiple of {every}"
    if view.left is not None:
        opening = f"Without what is left over it is a multiple of {every}"
    elif view.is_packs:
        opening = (
            f"Only full {view.group.plural}, and the same number of each, so a multiple of {every}"
        )
    listed_parts = join([join(parts[:-1], ", "), parts[-1]], " and ")
    size = without_noun(view.size(lowest))
    told = [
        say(f"{opening}: {{size}} is ", size=size),
        listed_parts,
        say(", and nothing less will do."),
    ]
    if NEXT in view.problem.finds and view.start is not None:
        told.append(say(" That is then added to {start}.", start=view.start))
    if view.left is not None:
        told.append(say(" Then add {left}.", left=view.left))
    return join(told)


def _number_line(view: Lcm) -> NumberLine | None:
    lowest = view.lowest()
    if len(view.counts) != 2 or view.left is not None or lowest // min(view.counts) > _MOST_JUMPS:
        return None
    places = sorted({at for count in view.counts for at in range(0, lowest + 1, count)})
    ticks = tuple(
        Tick(Fraction(at), Mark((write(_place(view, at)),), at == 0, at not in (0, lowest)))
        for at in places
    )
    # The jumps as the story has them, in its own units.
    told = [view.problem.given(name) for name in view.names]
    jumps = []
    for amount, count, below in zip(told, view.counts, (False, True), strict=True):
        text = (write(without_noun(amount)),)
        for at in range(0, lowest, count):
            ends = places.index(at), places.index(at + count)
            jumps.append(Jump(*ends, Mark(text, at == 0, at != 0), below))
    over, under = (
        f"jumps of {write_plain(amount)}{'' if amount.unit.is_noun else f' ({name})'}"
        for name, amount in view.amounts.items()
    )
    ending = write_plain(_place(view, lowest))
    return NumberLine(
        ticks, tuple(jumps), "", f"A number line: {over} over it, {under} under it; both land "
        f"on {ending}."
    )  # fmt: skip


def _place(view: Lcm, at: int) -> Amount:
    """A place on the line: a time of day where the story has one."""
    if NEXT in view.problem.finds:
        return view.clock(at)
    return without_noun(view.size(at))
