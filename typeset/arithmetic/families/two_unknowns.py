"""Two unknown amounts, a larger and a smaller one, with two of sum, difference and multiple."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Any, TypeVar

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.fields import FamilyFields
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.phrases import is_sensible, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.nouns import counted, plural, singular
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import write, write_plain

SUM, DIFFERENCE, TIMES = "sum", "difference", "times"
_COUNTS = {Dimension.NUMBER, Dimension.COUNT}
# More equal parts than this nobody draws.
_MOST_PARTS = 12


class TwoUnknownsFields(FamilyFields):
    """`larger: Asha`, `smaller: Kofi`, and what to find: one of them or both, in a list;
    also the sum or difference where the story does not give it."""

    larger: str
    smaller: str
    find: str | list[str]


T = TypeVar("T", bound=TwoUnknownsFields)


def build_two(family: str, fields: T, given: Mapping[str, Amount]) -> Problem[T]:
    """The problem with these of sum, difference and times.

    Raises AmountError where names or numbers do not go together.
    """
    _check_names(fields)
    if TIMES in given and given[TIMES].value < 2:
        raise AmountError("'times' is less than 2", "write 2 or more")
    measured = [given[name] for name in (SUM, DIFFERENCE) if name in given]
    if {amount.unit.dimension for amount in measured} & {Dimension.CLOCK}:
        raise AmountError("a time of day is no amount", "give lengths of time")
    kinds = {amount.unit.dimension for amount in measured}
    if len(kinds) > 1 and not kinds <= _COUNTS:
        raise AmountError("sum and difference are not of one kind", "give both in like units")
    finds = as_list(fields.find)
    known = (fields.larger, fields.smaller, SUM, DIFFERENCE)
    for name in finds:
        one_of(name, known)
        if name in given:
            raise AmountError(f"'{name}' is both given and asked for", "ask for another")
    if len(measured) == 2:
        _check_size(*measured)
    units = {name: _unit(name, measured, fields) for name in finds}
    return Problem(family, MappingProxyType(dict(given)), finds, MappingProxyType(units), fields)


def _check_names(fields: TwoUnknownsFields) -> None:
    if fields.larger == fields.smaller:
        raise AmountError(f"both are called '{fields.larger}'", "give them two names")
    for name in (fields.larger, fields.smaller):
        if not name.strip() or name in (SUM, DIFFERENCE, TIMES):
            raise AmountError(f"'{name}' cannot be a name here", "name a person or thing")


def _check_size(total: Amount, difference: Amount) -> None:
    if difference.base >= total.base:
        raise AmountError(
            f"the difference, {write_plain(difference)}, is not less than the sum, "
            f"{write_plain(total)}",
            "change one of them",
        )


def _unit(name: str, measured: list[Amount], fields: TwoUnknownsFields) -> Unit:
    """Measures keep their unit; 'gulls' are counted in gulls, but Asha's shells in shells."""
    unit = next((each.unit for each in measured if each.unit.is_noun), measured[0].unit)
    if fields.answer_in is not None:
        same = fields.answer_in.dimension is unit.dimension
        if not same and not {fields.answer_in.dimension, unit.dimension} <= _COUNTS:
            raise AmountError(
                f"the amounts are not measured in {fields.answer_in.plural}", "change 'answer in'"
            )
        return fields.answer_in
    is_plural = name[:1].islower() and singular(name) != name and plural(singular(name)) == name
    if unit.dimension in _COUNTS and is_plural and name not in (SUM, DIFFERENCE):
        return counted(name, False)
    return unit


def related(problem: Problem[Any]) -> Mapping[str, AnswerValue]:
    """sum = larger + smaller, difference = larger − smaller, larger = times × smaller."""
    fields = problem.fields
    rules = [
        Linear({SUM: 1, "larger": -1, "smaller": -1}),
        Linear({DIFFERENCE: 1, "larger": -1, "smaller": 1}),
    ]
    for name, amount in problem.givens.items():
        if name == TIMES:
            rules.append(Linear({"larger": 1, "smaller": -amount.value}))
        elif name in (SUM, DIFFERENCE):
            rules.append(Linear({name: 1}, amount.base))
    found = solve_linear(rules)
    found |= {fields.larger: found["larger"], fields.smaller: found["smaller"]}
    return {
        name: problem.answer(name, found[name] / problem.units[name].per_base)
        for name in problem.finds
    }


@dataclass(frozen=True, slots=True)
class Two:
    """The problem in one unit. Amounts here carry no noun: they are of two things at once."""

    problem: Problem[Any]
    # What is given of the two, in one unit.
    sum: Amount | None
    difference: Amount | None
    conversions: tuple[Step, ...]

    @property
    def larger_name(self) -> str:
        """The name of the larger."""
        return str(self.problem.fields.larger)

    @property
    def smaller_name(self) -> str:
        """The name of the smaller."""
        return str(self.problem.fields.smaller)

    @property
    def times(self) -> Fraction:
        """How many times the smaller the larger is."""
        return self.problem.given(TIMES).value

    def asks(self, *names: str) -> bool:
        """True where any of these is asked for."""
        return any(name in self.problem.finds for name in names)

    def needs_larger(self) -> bool:
        """True where the larger has to be worked out."""
        return self.asks(self.larger_name, SUM, DIFFERENCE)

    def working(self, strategy: str, steps: list[Step], larger: Amount, smaller: Amount) -> Working:
        """A right working that has reached both, as far as they are asked for."""
        told = (*self.conversions, *steps, *self._closing(larger, smaller))
        return Working(strategy, told, self._answers(larger, smaller))

    def mistake(
        self, name: str, steps: list[Step], larger: Amount, smaller: Amount
    ) -> MistakenWorking:
        """A wrong working in the same manner."""
        told = (*self.conversions, *steps, *self._closing(larger, smaller))
        return MistakenWorking(name, told, self._answers(larger, smaller))

    def is_sensible(self, *amounts: Amount) -> bool:
        """True where none of these is a cut thing or a part of a penny."""
        unit = self.problem.units[self.problem.finds[0]]
        cut = self.problem.fields.may_be_cut
        counts = unit.dimension in _COUNTS
        return all(is_sensible(Amount(a.value, unit) if counts else a, cut) for a in amounts)

    def _values(self, larger: Amount, smaller: Amount) -> dict[str, Amount]:
        return {
            self.larger_name: larger,
            self.smaller_name: smaller,
            SUM: larger.like(larger.value + smaller.value),
            DIFFERENCE: larger.like(larger.value - smaller.value),
        }

    def _answers(self, larger: Amount, smaller: Amount) -> dict[str, AnswerValue]:
        values = self._values(larger, smaller)
        return {
            name: self.problem.answer(name, values[name].base / self.problem.units[name].per_base)
            for name in self.problem.finds
        }

    def _closing(self, larger: Amount, smaller: Amount) -> list[Step]:
        """Sum or difference where it is asked for, and the unit of the question."""
        values = self._values(larger, smaller)
        steps = []
        if self.asks(SUM):
            steps.append(step("Both together.", equation(plus(larger, smaller), values[SUM])))
        if self.asks(DIFFERENCE):
            result = equation(minus(larger, smaller), values[DIFFERENCE])
            steps.append(step("Now the difference.", result))
        for name in self.problem.finds:
            unit = self.problem.units[name]
            if unit.dimension not in _COUNTS and unit.per_base != values[name].unit.per_base:
                answer = values[name].to(unit)
                text = f"{title(name)}: {{old}} is {{new}}."
                result = equation(values[name], answer)
                steps.append(step(text, result, old=values[name], new=answer))
        return steps


def two_of(problem: Problem[Any]) -> Two:
    """The givens in the smaller of their units."""
    given = {name: problem.givens[name] for name in (SUM, DIFFERENCE) if name in problem.givens}
    unit = min((amount.unit for amount in given.values()), key=lambda each: each.per_base)
    changed: dict[str, Amount] = {}
    steps = []
    for name, amount in given.items():
        if amount.unit.dimension in _COUNTS:
            changed[name] = Amount(amount.value)
            continue
        changed[name] = amount if amount.unit == unit else amount.to(unit)
        if amount.unit != unit:
            text = "Use one unit: {old} is {new}."
            result = equation(amount, changed[name])
            steps.append(step(text, result, old=amount, new=changed[name]))
    return Two(problem, changed.get(SUM), changed.get(DIFFERENCE), tuple(steps))


def bars_of(two: Two, larger: Amount, smaller: Amount) -> BarModel:
    """Two bars: with a multiple in equal parts, else the shorter one and what is beyond it."""
    given = two.problem.givens
    one = Part(smaller.value, _unknown(smaller))
    if TIMES in given and two.times <= _MOST_PARTS:
        longer = (one,) * int(two.times)
    else:
        beyond = larger.value - smaller.value
        longer = (one, Part(beyond, _mark(given.get(DIFFERENCE)), dashed=True))
    braces = [Brace(0, _unknown(larger), 0, len(longer) - 1)]
    if DIFFERENCE in given and len(longer) > 2:
        braces.append(Brace(0, Mark((write(given[DIFFERENCE]),)), gap_to=1))
    total = Mark((write(given[SUM]),)) if SUM in given else None
    told = ", ".join(f"{name} {write_plain(amount)}" for name, amount in given.items())
    reads_as = f"Two bars, {two.larger_name} above {two.smaller_name}: {told}."
    bars = (Bar(two.larger_name, longer), Bar(two.smaller_name, (one,)))
    return BarModel(bars, tuple(braces), total, reads_as)


def _unknown(amount: Amount) -> Mark:
    return Mark((write(amount),), is_given=False)


def _mark(amount: Amount | None) -> Mark | None:
    return None if amount is None else Mark((write(amount),))
