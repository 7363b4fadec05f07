"""Unit conversion: an amount in another unit, alone or before or after one operation."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.conversion_mistakes import mistakes_of
from typeset.arithmetic.families.conversion_view import (
    AMOUNT,
    ANSWER,
    LESS,
    MORE,
    SHARED,
    TIMES,
    Change,
    decimal_of,
)
from typeset.arithmetic.families.conversion_ways import ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount, YesNo
from typeset.arithmetic.figures import Jump, Mark, RatioTable
from typeset.arithmetic.methods import check_alike, in_unit, is_counted
from typeset.arithmetic.names import listed
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, UNITS, Unit
from typeset.quantities.writing import decimal, say, write, write_plain

# Measures finer than thousandths are not met in these years (national curriculum, Year 6).
_FINEST = 1000
# Answers are probed as bare numbers of no round size, so that a conversion to the base unit is
# still seen to multiply.
_ODD = Fraction(1009, 1013)
_LARGER = {
    "min": "h", "minute": "h", "s": "min", "second": "min", "cm": "m", "g": "kg", "ml": "litre",
    "m": "km", "mm": "cm", "day": "week", "h": "day", "hour": "day", "inch": "foot",
    "ounce": "pound", "pound": "stone",
}  # fmt: skip


class UnitConversionFields(FamilyFields):
    """`amount: 2.35 kg`, `answer in: g`; with one of `times: 5 boxes`, `shared among: 4 bowls`,
    `more: 400 g`, `less: 400 g` where something is reckoned too.

    `together: {miles: 5 miles, kilometres: 8 km}` gives the fact to convert by; `mixed units:
    yes` asks for an answer in two units (155 min is 2 h 35 min).
    """

    amount: PositiveAmount
    times: WholeAmount | None = None
    shared_among: WholeAmount | None = Field(default=None, alias="shared among")
    more: PositiveAmount | None = None
    less: PositiveAmount | None = None
    together: dict[str, PositiveAmount] = Field(default_factory=dict)
    mixed_units: YesNo = Field(default=False, alias="mixed units")

    @property
    def parts(self) -> tuple[Unit, ...]:
        """The two units of a mixed answer, the larger first."""
        return _two_units(self.unit)

    @property
    def unit(self) -> Unit:
        """The unit that the answer is reckoned in."""
        return self.answer_in if self.answer_in is not None else self.amount.unit


class UnitConversion(Family[UnitConversionFields]):
    """answer = (amount, with its operation) × the number that changes the unit."""

    name = "unit conversion"
    fields_model = UnitConversionFields

    def build(self, fields: UnitConversionFields) -> Problem[UnitConversionFields]:
        """The problem; the unit wanted is 'answer in'."""
        operations = {TIMES: fields.times, SHARED: fields.shared_among, MORE: fields.more,
                      LESS: fields.less}  # fmt: skip
        used = {name: each for name, each in operations.items() if each is not None}
        if len(used) > 1:
            raise AmountError(
                f"{listed(tuple(used), 'and')} are two operations",
                "keep one here, or write the problem with 'steps'",
            )
        _check_units(fields, used)
        givens = {AMOUNT: fields.amount, **used, **fields.together}
        units = MappingProxyType({ANSWER: fields.unit})
        return Problem(self.name, MappingProxyType(givens), (ANSWER,), units, fields)

    def relation(self, problem: Problem[UnitConversionFields]) -> Mapping[str, AnswerValue]:
        """The sizes of the units in the base unit, or the author's fact, and one operation."""
        view = Change(problem)
        value = _value(problem)
        if value <= 0:
            raise AmountError("nothing would be left", "take less off")
        is_fine = decimal(value) is not None and (value * _FINEST).denominator == 1
        if not is_fine and problem.fields.round_to is None:
            raise AmountError(
                f"the answer would be {write_plain(Amount(value, view.target))}",
                "choose other numbers, or state a rounding such as 'round to: 1 decimal place'",
            )
        answer = view.answered(decimal_of(value, view.target))
        if view.is_mixed and answer.base < answer.parts[0].per_base:
            one = answer.parts[0].singular
            raise AmountError(
                f"the answer would be {write_plain(answer)}, less than 1 {one}",
                "leave out 'mixed units', or choose a larger amount",
            )
        return {ANSWER: answer}

    def strategies(self, problem: Problem[UnitConversionFields]) -> Iterator[Working]:
        """At once, in steps of ten, in parts, through another unit or through one."""
        yield from ways_of(Change(problem))

    def mistakes(self, problem: Problem[UnitConversionFields]) -> Iterator[MistakenWorking]:
        """Not converted, by the wrong number, turned round, side by side."""
        yield from mistakes_of(Change(problem))

    def smooth(self, problem: Problem[UnitConversionFields]) -> Mapping[str, AnswerValue]:
        """The number of the answer alone, so that the kind shows."""
        return {ANSWER: Amount(_value(problem) * _ODD, NUMBER)}

    def reason(self, problem: Problem[UnitConversionFields]) -> Rich:
        """What changes the unit, and what else is done."""
        return _reason(Change(problem))

    def figure(
        self, problem: Problem[UnitConversionFields], answers: Mapping[str, AnswerValue]
    ) -> RatioTable | None:
        """A ratio table of the fact and the amount, where nothing else is reckoned."""
        return _figure(Change(problem), answers[ANSWER])


def _two_units(unit: Unit) -> tuple[Unit, ...]:
    """The unit with the next larger one, in which 155 min are 2 h 35 min."""
    name = _LARGER.get(unit.singular)
    if name is None:
        raise AmountError(
            f"no larger unit is usual beside {unit.plural}", "leave out 'mixed units'"
        )
    return (UNITS[name], unit)


def _check_units(fields: UnitConversionFields, used: Mapping[str, Amount]) -> None:
    """Raises AmountError where there is nothing to convert, or it cannot be converted."""
    if is_counted(fields.amount):
        raise AmountError(
            f"{write_plain(fields.amount)} has no unit that can be changed",
            "give a measure, such as 2.35 kg",
        )
    if fields.answer_in is None and not fields.mixed_units:
        raise AmountError("the unit of the answer is not given", "write it, such as answer in: g")
    for name in (TIMES, SHARED):
        if name in used and not is_counted(used[name]):
            raise AmountError(f"'{name}' is a number of things", "write it such as 5 boxes")
    if fields.together:
        _check_fact(fields)
    elif fields.unit.dimension is not fields.amount.unit.dimension:
        in_unit(fields.amount, fields.unit)
    for name in (MORE, LESS):
        if name in used:
            check_alike(fields.amount, used[name])
    if fields.mixed_units:
        _two_units(fields.unit)
    units = {fields.amount.unit, fields.unit, *(used[name].unit for name in (MORE, LESS)
                                                if name in used)}  # fmt: skip
    if len(units) == 1 and fields.amount.form is not Form.COMPOUND and not fields.mixed_units:
        raise AmountError(
            "all is in one unit, so nothing has to be converted", "change 'answer in'"
        )


def _check_fact(fields: UnitConversionFields) -> None:
    units = [each.unit for each in fields.together.values()]
    if len(units) != 2 or {fields.amount.unit, fields.unit} != set(units):
        raise AmountError(
            "'together' does not lead from the unit of the amount to the unit of the answer",
            "give both in it, such as together: {miles: 5 miles, kilometres: 8 km}",
        )
    if fields.mixed_units or fields.more is not None or fields.less is not None:
        raise AmountError(
            "'together' goes with 'times' or 'shared among' alone", "use 'steps' for more"
        )


def _value(problem: Problem[UnitConversionFields]) -> Fraction:
    """The number of the answer in the unit wanted."""
    view = Change(problem)
    base = {name: amount.base for name, amount in problem.givens.items()}
    whole = base[AMOUNT]
    whole = whole * base.get(TIMES, 1) / base.get(SHARED, Fraction(1))
    whole += base.get(MORE, Fraction(0)) - base.get(LESS, Fraction(0))
    if view.together is None:
        return whole / view.target.per_base
    one, other = view.together
    return whole / one.base * other.base / view.target.per_base


def _reason(view: Change) -> Rich:
    amount, operation = view.amount, view.operation
    if operation in (MORE, LESS):
        done = "put on" if operation == MORE else "taken off"
        return say(
            f"Changing a unit multiplies or divides, and {{other}} is {done} besides.",
            other=view.operand,
        )
    value = _value(view.problem)
    return say(
        "With {new} instead of {old} the answer would be twice as much, {twice} instead of "
        "{before}.",
        new=replace(amount, value=2 * amount.value, places=0),
        old=amount,
        twice=view.answered(decimal_of(2 * value, view.target)),
        before=view.answered(decimal_of(value, view.target)),
    )


def _figure(view: Change, answer: AnswerValue) -> RatioTable | None:
    assert isinstance(answer, Amount)
    if view.operation or view.is_mixed or view.amount.form is Form.COMPOUND:
        return None
    fact = view.fact(view.amount.unit)
    if view.amount.value == fact.one.value:
        return None
    names = (fact.one.unit.plural, fact.other.unit.plural)
    given = view.together is not None
    cells = (
        (Mark((write(fact.one),)), Mark((write(view.amount),))),
        (Mark((write(fact.other),), given), Mark((write(answer),), False)),
    )
    scale = view.amount.value / fact.one.value
    jumps: tuple[Jump, ...] = ()
    if scale.denominator == 1 and scale > 1:
        jumps = (Jump(0, 1, Mark(say("× {n}", n=Amount(scale)), False, hidden=True)),)
    return RatioTable(names, cells, jumps)
