"""Arrangements: in how many orders can things stand in a row?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations
from math import perm
from string import ascii_uppercase
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, plus, times
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, WholeAmount
from typeset.arithmetic.figures import BranchingTree, Choice, Mark
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Unit, noun
from typeset.quantities.writing import say, write

ORDERS = "orders"
_ORDER = noun("order", "orders")
_THING = noun("thing", "things")
_PLACE = noun("place", "places")
_PLACES = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth")
# 8! = 40,320 are enumerated in a moment; more nobody asks a pupil to list.
_MOST_THINGS = 8
_MOST_ORDERS = 50_000
# A tree of more places is wider than a page, and one of more things longer.
_MOST_LEVELS = 5
_MOST_BRANCHES = 12


class ArrangementsFields(FamilyFields):
    """`things: 4 boats`; `places: 2` where only some of them are placed."""

    things: WholeAmount
    places: WholeAmount | None = None


class Arrangements(Family[ArrangementsFields]):
    """The orders of n things (n!), or of some of them (ordered choice without repeats)."""

    name = "arrangements"
    fields_model = ArrangementsFields

    def build(self, fields: ArrangementsFields) -> Problem[ArrangementsFields]:
        """The problem; what is counted is called as 'answer in' says."""
        givens = {"things": fields.things}
        if fields.places is not None:
            givens["places"] = fields.places
        if not all(is_counted(amount) for amount in givens.values()):
            raise AmountError("only things that are counted can be arranged", "write 4 boats")
        places = fields.places or fields.things
        if fields.things.value < 3 or places.value < 2:
            raise AmountError(
                "there is too little to arrange", "take at least 3 things and 2 places"
            )
        if places.value > fields.things.value:
            raise AmountError("there are more places than things", "give fewer places")
        if places.value > _MOST_THINGS or _orders(fields.things, places) > _MOST_ORDERS:
            raise AmountError(
                f"there are more than {_MOST_ORDERS:,} orders, more than anybody can list",
                "choose smaller numbers",
            )
        units = MappingProxyType({ORDERS: fields.answer_in or NUMBER})
        return Problem(self.name, MappingProxyType(givens), (ORDERS,), units, fields)

    def relation(self, problem: Problem[ArrangementsFields]) -> Mapping[str, AnswerValue]:
        """Every order is made once and counted."""
        view = _View(problem)
        orders = permutations(range(view.things), view.places)
        return {ORDERS: problem.answer(ORDERS, sum(1 for _ in orders))}

    def strategies(self, problem: Problem[ArrangementsFields]) -> Iterator[Working]:
        """Place by place, listing by what comes first, or one more thing at a time."""
        view = _View(problem)
        yield _place_by_place(view)
        yield _by_the_first(view)
        if view.places == view.things:
            yield _one_more_at_a_time(view)

    def mistakes(self, problem: Problem[ArrangementsFields]) -> Iterator[MistakenWorking]:
        """Adding, using a thing again, stopping early, moving only the first."""
        yield from _mistakes(_View(problem))

    def smooth(self, problem: Problem[ArrangementsFields]) -> Mapping[str, AnswerValue]:
        """By formula, since probing goes beyond what can be listed."""
        things = problem.given("things")
        return {
            ORDERS: problem.answer(ORDERS, _orders(things, problem.givens.get("places", things)))
        }

    def counts_choices(self, problem: Problem[ArrangementsFields]) -> bool:
        """Always."""
        return True

    def figure(
        self, problem: Problem[ArrangementsFields], answers: Mapping[str, AnswerValue]
    ) -> BranchingTree | None:
        """A tree: what may come first, and after each of those what may come second, and so on."""
        view = _View(problem)
        answer = answers[ORDERS]
        if view.places > _MOST_LEVELS or view.things > _MOST_BRANCHES:
            return None
        assert isinstance(answer, Amount)
        letters = tuple(ascii_uppercase[: view.things])
        choices = tuple(Choice(place.lower(), letters) for place in _PLACES[: view.places])
        total = Mark((write(answer),), is_given=False)
        return BranchingTree(choices, total, without_repeats=True)

    def reason(self, problem: Problem[ArrangementsFields]) -> Rich:
        """Every choice for a place goes with every choice for the next."""
        view = _View(problem)
        return say(
            "Each of the {n} can come first, and with each of them any of the other {m} can "
            "come next: {pairs} ways to fill the first two places.",
            n=view.of(view.things),
            m=Amount(Fraction(view.things - 1)),
            pairs=Amount(Fraction(view.things * (view.things - 1))),
        )


def _orders(things: Amount, places: Amount) -> int:
    return perm(int(things.value), int(places.value))


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with the words that the workings need."""

    problem: Problem[ArrangementsFields]

    @property
    def things(self) -> int:
        return int(self.problem.given("things").value)

    @property
    def places(self) -> int:
        places = self.problem.givens.get("places")
        return int(places.value) if places is not None else self.things

    @property
    def kind(self) -> Unit:
        unit = self.problem.given("things").unit
        return unit if unit.singular else _THING

    def of(self, count: int) -> Amount:
        """'4 boats'."""
        return Amount(Fraction(count), self.kind)

    def orders(self, count: int) -> Amount:
        """'24 orders', by the answer's own noun where it has one."""
        unit = self.problem.units[ORDERS]
        return Amount(Fraction(count), unit if unit.singular else _ORDER)

    def answer(self, count: int) -> dict[str, AnswerValue]:
        return {ORDERS: self.problem.answer(ORDERS, count)}


def _number(value: int) -> Amount:
    return Amount(Fraction(value))


def _place_by_place(view: _View) -> Working:
    count = view.things
    steps: list[Step] = [step("First place: any of the {n}.", n=view.of(count))]
    for place in range(1, view.places):
        left = view.things - place
        steps.append(
            step(
                f"{_PLACES[place]} place: {{left}} left for each of these, so {{orders}}.",
                equation(times(_number(count), _number(left)), _number(count * left)),
                left=_number(left),
                orders=view.orders(count * left),
            )
        )
        count *= left
    return Working("Place by place", tuple(steps), view.answer(count))


def _by_the_first(view: _View) -> Working:
    """All orders that begin with one thing; the same number for every other."""
    others = perm(view.things - 1, view.places - 1)
    factors = [_number(view.things - at) for at in range(1, view.places)]
    worked = equation(times(*factors), _number(others)) if factors[1:] else None
    total = view.things * others
    steps = (
        step(
            f"List the orders that begin with one {view.kind.singular}: {{others}}.",
            worked,
            others=view.orders(others),
        ),
        step(
            "As many begin with each of the {n}: {total}.",
            equation(times(_number(view.things), _number(others)), _number(total)),
            n=view.of(view.things),
            total=view.orders(total),
        ),
    )
    return Working("Listing by what comes first", steps, view.answer(total))


def _one_more_at_a_time(view: _View) -> Working:
    count = 2
    steps = [step("{n}: {orders}.", n=view.of(2), orders=view.orders(2))]
    for things in range(3, view.things + 1):
        steps.append(
            step(
                f"{{n}}: the new {view.kind.singular} fits into {{places}} of every order, "
                "so {orders}.",
                equation(times(_number(things), _number(count)), _number(things * count)),
                n=view.of(things),
                places=Amount(Fraction(things), _PLACE),
                orders=view.orders(things * count),
            )
        )
        count *= things
    return Working("One more at a time", tuple(steps), view.answer(count))


def _mistakes(view: _View) -> Iterator[MistakenWorking]:
    things, places = view.things, view.places
    left = [things - at for at in range(places)]
    worked = equation(plus(*(_number(each) for each in left)), _number(sum(left)))
    text = "Add what there is for each place: {total}."
    only = step(text, worked, total=view.orders(sum(left)))
    yield MistakenWorking(
        "adding the choices instead of multiplying", (only,), view.answer(sum(left))
    )
    again = things**places
    worked = equation(times(*[_number(things)] * places), _number(again))
    text = "There are {n} for every place: {total}."
    only = step(text, worked, n=view.of(things), total=view.orders(again))
    yield MistakenWorking("used more than once", (only,), view.answer(again))
    if places > 2:
        pairs = things * (things - 1)
        worked = equation(times(_number(things), _number(things - 1)), _number(pairs))
        text = "{n}, and for each of them {m} others: {total}."
        only = step(text, worked, n=view.of(things), m=_number(things - 1),
                    total=view.orders(pairs))  # fmt: skip
        yield MistakenWorking("step left out", (only,), view.answer(pairs))
    text = "Each of the {n} comes first once: {total}."
    only = step(text, n=view.of(things), total=view.orders(things))
    yield MistakenWorking("counting each choice once", (only,), view.answer(things))
