"""Handshakes: everybody with everybody else once; also the games of a league."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from string import ascii_uppercase
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, over, plus, times
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, WholeAmount
from typeset.arithmetic.figures import JoinedPoints, Mark
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Unit, noun
from typeset.quantities.writing import say, write

PAIRS = "pairs"
_PAIR = noun("pair", "pairs")
_THING = noun("thing", "things")
_MOST_THINGS = 200
_MOST_TERMS = 12
# More points joined to each other than these are a grey patch.
_MOST_POINTS = 10


class HandshakesFields(FamilyFields):
    """`things: 6 teams`; `meetings: 2` where every pair meets more than once."""

    things: WholeAmount
    meetings: WholeAmount | None = None


class Handshakes(Family[HandshakesFields]):
    """The pairs of n things: n(n − 1) ÷ 2, for each of the meetings."""

    name = "handshakes"
    fields_model = HandshakesFields

    def build(self, fields: HandshakesFields) -> Problem[HandshakesFields]:
        """The problem; what is counted is called as 'answer in' says."""
        givens = {"things": fields.things}
        if fields.meetings is not None:
            givens["meetings"] = fields.meetings
        if not all(is_counted(amount) for amount in givens.values()):
            raise AmountError("only things that are counted can be paired", "write 6 teams")
        if not 3 <= fields.things.value <= _MOST_THINGS:
            raise AmountError(
                f"pairs are counted among 3 to {_MOST_THINGS} things", "choose another number"
            )
        if fields.meetings is not None and fields.meetings.value < 2:
            raise AmountError("every pair meets once anyway", "leave out 'meetings'")
        units = MappingProxyType({PAIRS: fields.answer_in or NUMBER})
        return Problem(self.name, MappingProxyType(givens), (PAIRS,), units, fields)

    def relation(self, problem: Problem[HandshakesFields]) -> Mapping[str, AnswerValue]:
        """Every pair is made once and counted."""
        view = _View(problem)
        pairs = sum(1 for _ in combinations(range(view.things), 2))
        return {PAIRS: problem.answer(PAIRS, pairs * view.meetings)}

    def strategies(self, problem: Problem[HandshakesFields]) -> Iterator[Working]:
        """Adding up in order, halving each with each, or the sum paired from its ends."""
        view = _View(problem)
        if view.things <= _MOST_TERMS:
            yield _in_order(view)
        yield _halved(view)
        if view.things > 4:
            yield _paired_ends(view)

    def mistakes(self, problem: Problem[HandshakesFields]) -> Iterator[MistakenWorking]:
        """Every pair twice, each with itself, only the first one's, one to one."""
        yield from _mistakes(_View(problem))

    def counts_choices(self, problem: Problem[HandshakesFields]) -> bool:
        """Always."""
        return True

    def figure(
        self, problem: Problem[HandshakesFields], answers: Mapping[str, AnswerValue]
    ) -> JoinedPoints | None:
        """Points on a circle, a line for every pair, where the lines can be told apart."""
        view = _View(problem)
        if view.things > _MOST_POINTS:
            return None
        pairs = view.pairs(view.things * (view.things - 1) // 2)
        letters = tuple(ascii_uppercase[: view.things])
        return JoinedPoints(letters, Mark((write(pairs),), is_given=False))

    def reason(self, problem: Problem[HandshakesFields]) -> Rich:
        """One more pairs with every one that is there."""
        view = _View(problem)
        count = view.things * (view.things - 1) // 2
        return say(
            f"One {view.kind.singular} more would pair with each of the {{n}}: {{new}} pairs "
            "instead of {old}.",
            n=view.of(view.things),
            new=_number(count + view.things),
            old=_number(count),
        )


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with the words that the workings need."""

    problem: Problem[HandshakesFields]

    @property
    def things(self) -> int:
        return int(self.problem.given("things").value)

    @property
    def meetings(self) -> int:
        meetings = self.problem.givens.get("meetings")
        return int(meetings.value) if meetings is not None else 1

    @property
    def kind(self) -> Unit:
        unit = self.problem.given("things").unit
        return unit if unit.singular else _THING

    def of(self, count: int) -> Amount:
        """'6 teams'."""
        return Amount(Fraction(count), self.kind)

    def pairs(self, count: int) -> Amount:
        """'15 games' where every pair meets once, else '15 pairs'."""
        unit = self.problem.units[PAIRS]
        once = self.meetings == 1 and unit.singular
        return Amount(Fraction(count), unit if once else _PAIR)

    def working(self, name: str, steps: tuple[Step, ...], pairs: int) -> Working:
        """The working with the meetings of every pair at its end."""
        return Working(name, (*steps, *self.closing(pairs)), self.answer(pairs * self.meetings))

    def closing(self, pairs: int) -> Iterator[Step]:
        if self.meetings > 1:
            total = pairs * self.meetings
            yield step(
                "Every pair meets {k}: {total}.",
                equation(times(_number(self.meetings), _number(pairs)), _number(total)),
                k=Amount(Fraction(self.meetings), noun("time", "times")),
                total=self.problem.answer(PAIRS, total),
            )

    def answer(self, count: int) -> dict[str, AnswerValue]:
        return {PAIRS: self.problem.answer(PAIRS, count)}


def _number(value: int) -> Amount:
    return Amount(Fraction(value))


def _falling(start: int) -> Expression:
    return plus(*(_number(term) for term in range(start, 0, -1)))


def _in_order(view: _View) -> Working:
    pairs = sum(range(view.things))
    only = step(
        "The first pairs with {n} others. Each one after has one new partner fewer: {pairs}.",
        equation(_falling(view.things - 1), _number(pairs)),
        n=_number(view.things - 1),
        pairs=view.pairs(pairs),
    )
    return view.working("Counting in order", (only,), pairs)


def _halved(view: _View) -> Working:
    ends = view.things * (view.things - 1)
    steps = (
        step(
            "Each of the {n} pairs with {m} others.",
            equation(times(_number(view.things), _number(view.things - 1)), _number(ends)),
            n=view.of(view.things),
            m=_number(view.things - 1),
        ),
        step(
            "That counts every pair twice, once from each side, so halve: {pairs}.",
            equation(over(_number(ends), _number(2)), _number(ends // 2)),
            pairs=view.pairs(ends // 2),
        ),
    )
    return view.working("Each with each, then halved", steps, ends // 2)


def _paired_ends(view: _View) -> Working:
    """1 + 2 + … + (n − 1), smallest with largest."""
    last = view.things - 1
    size = last + 1 if last % 2 == 0 else last
    groups = last // 2 if last % 2 == 0 else (last + 1) // 2
    how = (
        f"1 and {last}, 2 and {last - 1} and so on" if last % 2 == 0
        else f"{last} alone, 1 and {last - 1} and so on"
    )  # fmt: skip
    product = times(_number(groups), _number(size))
    sides = [product, _number(groups * size)]
    if view.things <= _MOST_TERMS:
        sides.insert(0, _falling(last))
    steps = (
        step(
            f"The numbers from 1 to {last} are to be added. Take them together: {how}, "
            f"each time {size}."
        ),
        step(
            "That is {k} times {size}: {pairs}.",
            equation(*sides),
            k=_number(groups),
            size=_number(size),
            pairs=view.pairs(groups * size),
        ),
    )
    return view.working("Adding from both ends", steps, groups * size)


def _mistakes(view: _View) -> Iterator[MistakenWorking]:
    things, meetings = view.things, view.meetings

    def mistake(name: str, first: Step, pairs: int) -> MistakenWorking:
        return MistakenWorking(name, (first, *view.closing(pairs)), view.answer(pairs * meetings))

    twice = things * (things - 1)
    text = "Each of the {n} pairs with {m} others: {pairs}."
    worked = equation(times(_number(things), _number(things - 1)), _number(twice))
    first = step(text, worked, n=view.of(things), m=_number(things - 1), pairs=view.pairs(twice))
    yield mistake("each pair counted twice", first, twice)
    if things <= _MOST_TERMS:
        more = things * (things + 1) // 2
        text = "The first has {n}, and each one after has one fewer: {pairs}."
        worked = equation(_falling(things), _number(more))
        first = step(text, worked, n=_number(things), pairs=view.pairs(more))
        yield mistake("paired with itself", first, more)
    if things % 2 == 0:
        text = "Put the {n} in twos: {pairs}."
        worked = equation(over(_number(things), _number(2)), _number(things // 2))
        first = step(text, worked, n=view.of(things), pairs=view.pairs(things // 2))
        yield mistake("counting each choice once", first, things // 2)
    pairs = twice // 2
    if meetings > 1:
        text = "The first pairs with {n} others, the next with one fewer, and so on: {pairs}."
        first = step(text, n=_number(things - 1), pairs=view.pairs(pairs))
        yield MistakenWorking("step left out", (first,), view.answer(pairs))
