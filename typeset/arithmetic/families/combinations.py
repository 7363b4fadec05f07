"""Combinations: one of each kind is chosen; how many different choices are there?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import prod
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, plus, times
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, WholeAmount
from typeset.arithmetic.figures import BranchingTree, Choice, Mark, TwoWayTable
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.nouns import counted
from typeset.quantities.units import NUMBER, Unit, noun
from typeset.quantities.writing import say, write

WAYS = "ways"
_WAY = noun("way", "ways")
# More than these are neither listed by a pupil nor enumerated by us.
_MOST_WAYS = 20_000
_MOST_TERMS = 6


class CombinationsFields(FamilyFields):
    """`choices: {hulls: 3, sails: 4}`, `answer in: boats`."""

    choices: dict[str, WholeAmount]


class Combinations(Family[CombinationsFields]):
    """The ordered choices of one of each kind (Cartesian product)."""

    name = "combinations"
    fields_model = CombinationsFields

    def build(self, fields: CombinationsFields) -> Problem[CombinationsFields]:
        """The problem; what is counted is called as 'answer in' says."""
        if len(fields.choices) < 2:
            raise AmountError(
                "there is only one kind to choose", "write such as choices: {hulls: 3, sails: 4}"
            )
        for name, count in fields.choices.items():
            if not is_counted(count):
                raise AmountError(f"'{name}' is not a number of things", "count them")
            if count.value < 2:
                raise AmountError(f"with one of '{name}' there is no choice", "give at least 2")
        if prod(count.value for count in fields.choices.values()) > _MOST_WAYS:
            raise AmountError(
                f"there are more than {_MOST_WAYS:,} ways, more than anybody can list",
                "choose smaller numbers",
            )
        givens = MappingProxyType(dict(fields.choices))
        units = MappingProxyType({WAYS: fields.answer_in or NUMBER})
        return Problem(self.name, givens, (WAYS,), units, fields)

    def relation(self, problem: Problem[CombinationsFields]) -> Mapping[str, AnswerValue]:
        """Every choice is made once and counted."""
        kinds = (range(int(amount.value)) for amount in problem.givens.values())
        return {WAYS: problem.answer(WAYS, sum(1 for _ in product(*kinds)))}

    def strategies(self, problem: Problem[CombinationsFields]) -> Iterator[Working]:
        """Multiplying kind after kind, listing in order, a table or the easiest pair first."""
        view = _View(problem)
        yield _kind_after_kind(view)
        yield _listed(view)
        if len(view.names) == 2:
            yield _in_a_table(view)
        else:
            yield from _round_pair_first(view)

    def mistakes(self, problem: Problem[CombinationsFields]) -> Iterator[MistakenWorking]:
        """Adding; matching one to one; rows of the list cut short; a kind left out."""
        view = _View(problem)
        yield _added(view)
        yield _matched_once(view)
        yield from _rows_cut_short(view)
        yield from _kind_left_out(view)

    def smooth(self, problem: Problem[CombinationsFields]) -> Mapping[str, AnswerValue]:
        """The product, since probing goes beyond what can be listed."""
        count = prod(amount.value for amount in problem.givens.values())
        return {WAYS: problem.answer(WAYS, count)}

    def counts_choices(self, problem: Problem[CombinationsFields]) -> bool:
        """Always."""
        return True

    def reason(self, problem: Problem[CombinationsFields]) -> Rich:
        """One more of the first kind brings one way for every choice of the rest."""
        view = _View(problem)
        count, before = view.counts[0], view.ways(prod(view.counts))
        more = prod(view.counts[1:])
        return say(
            "With {new} instead of {old} there would be {more} more, one for every choice of "
            "the rest: {after} instead of {before}.",
            new=view.of(count + 1, 0),
            old=view.of(count, 0),
            more=view.ways(more),
            before=before,
            after=view.ways(before.value + more),
        )

    def figure(
        self, problem: Problem[CombinationsFields], answers: Mapping[str, AnswerValue]
    ) -> BranchingTree | TwoWayTable:
        """A table for two kinds, a tree for more."""
        return _figure(_View(problem), answers)


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with the words that the workings need."""

    problem: Problem[CombinationsFields]

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(self.problem.givens)

    @property
    def counts(self) -> tuple[Fraction, ...]:
        return tuple(amount.value for amount in self.problem.givens.values())

    def kind(self, at: int) -> Unit:
        """What one of this kind is called: the amount's own noun, or the name of the choice."""
        name = self.names[at]
        unit = self.problem.given(name).unit
        return unit if unit.singular else counted(name, False)

    def of(self, count: Fraction, at: int) -> Amount:
        """'3 hulls'."""
        return Amount(count, self.kind(at))

    def ways(self, count: Fraction | int) -> Amount:
        """'12 boats', or '12 ways'."""
        unit = self.problem.units[WAYS]
        return Amount(Fraction(count), unit if unit.singular else _WAY)

    def answer(self, count: Fraction | int) -> dict[str, AnswerValue]:
        return {WAYS: self.problem.answer(WAYS, count)}


def _kind_after_kind(view: _View) -> Working:
    count = view.counts[0]
    steps: list[Step] = []
    for at in range(1, len(view.counts)):
        more = view.counts[at]
        is_last = at == len(view.counts) - 1
        text = "{n}, and for each of them {m}: {result}."
        steps.append(
            step(
                text,
                equation(times(Amount(count), Amount(more)), Amount(count * more)),
                n=view.of(count, 0) if at == 1 else Amount(count, _WAY),
                m=view.of(more, at),
                result=view.ways(count * more) if is_last else Amount(count * more, _WAY),
            )
        )
        count *= more
    return Working("Multiplying the choices", tuple(steps), view.answer(count))


def _listed(view: _View) -> Working:
    """All choices with the first of one kind; the same again for the others of that kind."""
    first, *rest = view.counts
    row = prod(rest, start=Fraction(1))
    more = equation(times(*(Amount(each) for each in rest)), Amount(row)) if rest[1:] else None
    steps = [
        step(f"List all with the first {view.kind(0).singular}: {{row}}.", more, row=view.ways(row))
    ]
    if first <= _MOST_TERMS:
        joined = equation(plus(*[Amount(row)] * int(first)), Amount(first * row))
    else:
        joined = equation(times(Amount(first), Amount(row)), Amount(first * row))
    steps.append(
        step(
            "The same number with each of the {n}: {total}.",
            joined,
            n=view.of(first, 0),
            total=view.ways(first * row),
        )
    )
    return Working("Listing in order", tuple(steps), view.answer(first * row))


def _in_a_table(view: _View) -> Working:
    rows, columns = view.counts
    total = rows * columns
    only = step(
        "Make a table with a row for each of the {rows} and a column for each of the "
        "{columns}. Every box is a choice: {total}.",
        equation(times(Amount(rows), Amount(columns)), Amount(total)),
        rows=view.of(rows, 0),
        columns=view.of(columns, 1),
        total=view.ways(total),
    )
    return Working("A table of all pairs", (only,), view.answer(total))


def _round_pair_first(view: _View) -> Iterator[Working]:
    """Two kinds whose product is a round number, before the others."""
    counts = view.counts
    pairs = [(i, j) for j in range(len(counts)) for i in range(j) if (i, j) != (0, 1)]
    rounds = [(i, j) for i, j in pairs if counts[i] * counts[j] % 10 == 0]
    i, j = (rounds or pairs)[0]
    pair = counts[i] * counts[j]
    rest = [count for at, count in enumerate(counts) if at not in (i, j)]
    total = pair * prod(rest)
    steps = (
        step(
            "The order of multiplying does not matter. {n} and {m} first: {pair}.",
            equation(times(Amount(counts[i]), Amount(counts[j])), Amount(pair)),
            n=view.of(counts[i], i),
            m=view.of(counts[j], j),
            pair=Amount(pair, _WAY),
        ),
        step(
            "Then the rest: {total}.",
            equation(times(Amount(pair), *(Amount(each) for each in rest)), Amount(total)),
            total=view.ways(total),
        ),
    )
    yield Working("Another pair first", steps, view.answer(total))


def _added(view: _View) -> MistakenWorking:
    total = sum(view.counts, Fraction(0))
    only = step(
        "Put all the choices together: {total}.",
        equation(plus(*(Amount(count) for count in view.counts)), Amount(total)),
        total=view.ways(total),
    )
    return MistakenWorking("adding the choices instead of multiplying", (only,), view.answer(total))


def _matched_once(view: _View) -> MistakenWorking:
    fewest = min(view.counts)
    at = view.counts.index(fewest)
    only = step(
        f"Take one of each kind every time. After {{n}} the {view.kind(at).plural} are used "
        "up: {total}.",
        n=Amount(fewest, noun("time", "times")),
        total=view.ways(fewest),
    )
    return MistakenWorking("counting each choice once", (only,), view.answer(fewest))


def _rows_cut_short(view: _View) -> Iterator[MistakenWorking]:
    """4 + 3 + 2: every new row of the list loses a partner, as it would for handshakes."""
    rows, *rest = view.counts
    if rest[1:] or not rest[0] > 2 or rest[0] < rows > _MOST_TERMS or rows > rest[0]:
        return
    terms = [Amount(rest[0] - at) for at in range(int(rows))]
    total = sum((term.value for term in terms), Fraction(0))
    first, partner = view.kind(0).singular, view.kind(1).singular
    only = step(
        f"The first {first} goes with {{n}}, and each new {first} with one {partner} fewer: "
        "{total}.",
        equation(plus(*terms), Amount(total)),
        n=view.of(rest[0], 1),
        total=view.ways(total),
    )
    yield MistakenWorking("rows of the list cut short", (only,), view.answer(total))


def _kind_left_out(view: _View) -> Iterator[MistakenWorking]:
    if len(view.counts) < 3:
        return
    total = view.counts[0] * view.counts[1]
    only = step(
        "{n}, and for each of them {m}: {total}.",
        equation(times(Amount(view.counts[0]), Amount(view.counts[1])), Amount(total)),
        n=view.of(view.counts[0], 0),
        m=view.of(view.counts[1], 1),
        total=view.ways(total),
    )
    yield MistakenWorking("step left out", (only,), view.answer(total))


def _figure(view: _View, answers: Mapping[str, AnswerValue]) -> BranchingTree | TwoWayTable:
    choices = []
    for at, count in enumerate(view.counts):
        name = view.kind(at).singular
        options = tuple(f"{name} {number}" for number in range(1, int(count) + 1))
        choices.append(Choice(name, options))
    answer = answers[WAYS]
    assert isinstance(answer, Amount)
    total = Mark((write(answer),), is_given=False)
    if len(choices) > 2:
        return BranchingTree(tuple(choices), total)
    down, across = choices
    return TwoWayTable(down, across, _numbered(len(down.options), len(across.options)), total)


def _numbered(rows: int, columns: int) -> tuple[tuple[Mark, ...], ...]:
    """Every way has its number, row after row, so that the last cell holds how many there are.

    The first row is the first step; the others are the pupil's.
    """
    return tuple(
        tuple(
            Mark((write(Amount(Fraction(row * columns + column + 1))),), row == 0, hidden=True)
            for column in range(columns)
        )
        for row in range(rows)
    )
