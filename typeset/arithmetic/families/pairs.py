"""Two amounts that go together, and one of them changed: what all pair families share.

The families that read these fields are twins: the same words and numbers stand for another
structure when the one word after `structure:` is another.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Any, TypeVar

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import write_plain

WANTED = "wanted"
_COUNTS = {Dimension.NUMBER, Dimension.COUNT}


class PairFields(FamilyFields):
    """`together: {rope: 3 m, cost: £4.50}`, `wanted: {rope: 7 m}`, `find: cost`."""

    # Amounts that go with one another.
    together: dict[str, PositiveAmount]
    # One of them as it is to be; `{wanted}` in the story.
    wanted: dict[str, PositiveAmount]
    find: str | list[str]


P = TypeVar("P", bound=PairFields)


def build_pair(family: str, fields: P, one_kind: bool = False) -> Problem[P]:
    """The problem of these fields. `one_kind`: all amounts are added, so are of one kind.

    Raises AmountError where names or kinds of amount do not go together.
    """
    base, finds = _check_names(fields)
    wanted = _of_the_kind(fields.wanted[base], fields.together[base], base)
    if wanted.same_as(fields.together[base]):
        raise AmountError(f"'{base}' does not change", "give another amount under 'wanted'")
    for name in (base, *finds):
        _refuse_times_of_day(fields.together[name])
        if one_kind:
            _of_the_kind(fields.together[name], fields.together[base], name)
    units = {name: _answer_unit(fields.together[name], fields.answer_in) for name in finds}
    givens = MappingProxyType({WANTED: wanted, **fields.together})
    return Problem(family, givens, finds, MappingProxyType(units), fields)


def _check_names(fields: PairFields) -> tuple[str, tuple[str, ...]]:
    names = tuple(fields.together)
    if len(names) < 2:
        raise AmountError(
            "one amount alone does not go together with anything",
            "write two such as {rope: 3 m, cost: £4.50}",
        )
    if WANTED in names:
        raise AmountError("'wanted' cannot be the name of an amount", "give it another name")
    if len(fields.wanted) != 1:
        raise AmountError("exactly one amount is changed", "write one such as {rope: 7 m}")
    base, finds = next(iter(fields.wanted)), as_list(fields.find)
    for name in (base, *finds):
        one_of(name, names)
    if base in finds:
        raise AmountError(f"'{base}' is both wanted and asked for", "ask for another amount")
    if len(set(finds)) != len(finds) or not finds:
        raise AmountError("each amount is asked for once", "name what is to be found")
    return base, finds


def _of_the_kind(amount: Amount, other: Amount, name: str) -> Amount:
    """The amount, with the other's noun where it has none of its own."""
    kinds = {amount.unit.dimension, other.unit.dimension}
    if kinds <= _COUNTS:
        return _same_noun(amount, other, name)
    if len(kinds) > 1:
        raise AmountError(
            f"'{name}' is {write_plain(amount)}, which is not of one kind with "
            f"{write_plain(other)}",
            "give both in units of the same kind",
        )
    return amount


def _same_noun(amount: Amount, other: Amount, name: str) -> Amount:
    if not amount.unit.is_noun:
        return Amount(amount.value, other.unit, amount.form, amount.places)
    if other.unit.is_noun and other.unit != amount.unit:
        raise AmountError(
            f"'{name}' counts {amount.unit.plural} once and {other.unit.plural} once",
            "call them by one noun",
        )
    return amount


def _refuse_times_of_day(amount: Amount) -> None:
    if amount.unit.dimension is Dimension.CLOCK:
        raise AmountError(
            f"{write_plain(amount)} is a time of day", "give lengths of time, such as 35 min"
        )


def _answer_unit(amount: Amount, answer_in: Unit | None) -> Unit:
    unit = amount.unit
    if answer_in is None:
        return unit
    same = answer_in.dimension is unit.dimension
    if not same and not {answer_in.dimension, unit.dimension} <= _COUNTS:
        raise AmountError(
            f"the answer is measured like {write_plain(amount)}, not in {answer_in.plural}",
            "leave out 'answer in' or give another unit",
        )
    return answer_in


@dataclass(frozen=True, slots=True)
class Pair:
    """The problem in one unit for what changes: `known` goes with `others`; `wanted` is new."""

    problem: Problem[Any]
    base: str
    known: Amount
    wanted: Amount
    others: Mapping[str, Amount]
    conversions: tuple[Step, ...] = ()

    @property
    def factor(self) -> Fraction:
        """How many times the known amount the wanted one is."""
        return self.wanted.value / self.known.value

    @property
    def change(self) -> Fraction:
        """By how much the wanted amount is more than the known one; negative for less."""
        return self.wanted.value - self.known.value


def pair_of(problem: Problem[P], one_kind: bool = False) -> Pair:
    """The pair as it is reckoned: amounts that meet in a sum or quotient in one unit."""
    base = next(iter(problem.fields.wanted))
    amounts = {base: problem.given(base), WANTED: problem.given(WANTED)}
    others = {name: problem.given(name) for name in problem.finds}
    met = {**amounts, **others} if one_kind else amounts
    unit = _smallest_unit(met.values())
    changed = {name: _in_unit(amount, unit) for name, amount in met.items()}
    steps = tuple(
        step(
            "Use one unit: {old} is {new}.",
            equation(amount, changed[name]),
            old=amount,
            new=changed[name],
        )
        for name, amount in met.items()
        if changed[name].unit != amount.unit and amount.unit.dimension not in _COUNTS
    )
    new_others = {name: changed.get(name, amount) for name, amount in others.items()}
    return Pair(problem, base, changed[base], changed[WANTED], new_others, steps)


def _smallest_unit(amounts: Iterable[Amount]) -> Unit:
    """The smallest unit among measures, so that numbers stay whole."""
    return min((amount.unit for amount in amounts), key=lambda unit: unit.per_base)


def _in_unit(amount: Amount, unit: Unit) -> Amount:
    if amount.unit.dimension in _COUNTS or amount.unit == unit:
        return amount
    return amount.to(unit)


def answer_of(pair: Pair, name: str, reached: Amount) -> Amount:
    """What was reached, in the unit that is asked for and written as the story writes it."""
    unit = pair.problem.units[name]
    form = pair.problem.given(name).form
    kept = form if form in (Form.FRACTION, Form.DECIMAL, Form.COMPOUND) else Form.AUTO
    return Amount(reached.base / unit.per_base, unit, kept)


def _closing(pair: Pair, name: str, reached: Amount) -> Iterable[Step]:
    """The change to the unit asked for, where it is another one."""
    answer = answer_of(pair, name, reached)
    if answer.unit == reached.unit or reached.unit.dimension in _COUNTS:
        return ()
    return (
        step(
            f"{title(name)}: {{old}} is {{new}}.",
            equation(reached, answer),
            old=reached,
            new=answer,
        ),
    )


def working_of(
    pair: Pair, strategy: str, steps: Iterable[Step], reached: Mapping[str, Amount]
) -> Working:
    """A right working: units first, the steps, and the unit asked for last."""
    closing = [each for name in reached for each in _closing(pair, name, reached[name])]
    return Working(strategy, (*pair.conversions, *steps, *closing), _answers(pair, reached))


def mistaken(
    pair: Pair, misconception: str, steps: Iterable[Step], reached: Mapping[str, Amount]
) -> MistakenWorking:
    """A wrong working in the same manner."""
    closing = [each for name in reached for each in _closing(pair, name, reached[name])]
    shown = (*pair.conversions, *steps, *closing)
    return MistakenWorking(misconception, shown, _answers(pair, reached))


def _answers(pair: Pair, reached: Mapping[str, Amount]) -> dict[str, AnswerValue]:
    return {name: answer_of(pair, name, amount) for name, amount in reached.items()}


def plain_name(amount: Amount, name: str) -> str:
    """What a bar is called: its amount, with the name where it has no unit."""
    if amount.unit == NUMBER:
        return f"{name}: {write_plain(amount)}"
    return write_plain(amount)
