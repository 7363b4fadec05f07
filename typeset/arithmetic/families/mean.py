"""The mean: of values that are given, the value that is missing, or the total behind it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Annotated, Any

from pydantic import BeforeValidator, ValidationInfo

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.mean_mistakes import mistakes_of
from typeset.arithmetic.families.mean_ways import COUNT, MEAN, MISSING, TOTAL, Values, ways_of
from typeset.arithmetic.families.number_chain import UNKNOWN_MARK
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, PositiveAmount, WholeAmount, refuse
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.names import so_many
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.quotes import Quote, list_of
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import say, write, write_plain

VALUES = "values"
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth",
             "ninth", "tenth", "eleventh", "twelfth")  # fmt: skip
_MOST_BARS = 7
# Of a value that is missing only the name is known.
Given = dict[str, Amount | None]


def _read_values(value: Any, info: ValidationInfo) -> Any:
    """A list goes by 'first value', 'second value' …; a blank (_ or ?) is the missing one."""
    if isinstance(value, list):
        names = (f"{ordinal} value" for ordinal in _ORDINALS)
        if len(value) > len(_ORDINALS):
            raise refuse(f"there are more than {len(_ORDINALS)} values", "give fewer")
        value = dict(zip(names, value, strict=False))
    if not isinstance(value, dict):
        raise refuse("'values' is no list", "write such as [4 kg, 6 kg, 5 kg]")
    nouns = info.context.get("nouns", {}) if isinstance(info.context, dict) else {}
    read: Given = {}
    for name, typed in value.items():
        if isinstance(typed, str) and UNKNOWN_MARK.fullmatch(typed.strip()):
            read[name] = None
            continue
        try:
            read[name] = parse_amount(typed, nouns) if isinstance(typed, str) else typed
        except AmountError as error:
            raise refuse(error.problem, error.remedy) from None
    return read


class MeanFields(FamilyFields):
    """`values: [4 kg, 6 kg, 5 kg]`, or by name; with `mean: 5 kg` one of them is a blank (_).
    Without values, `mean` and `count` ask for the total."""

    values: Annotated[dict[str, AnyAmount | None], BeforeValidator(_read_values)] | None = None
    mean: PositiveAmount | None = None
    count: WholeAmount | None = None


class Mean(Family[MeanFields]):
    """count × mean = total, the sum of the values."""

    name = "mean"
    fields_model = MeanFields

    def build(self, fields: MeanFields) -> Problem[MeanFields]:
        """The problem; what is asked for is what is not given."""
        if fields.values is None:
            return _total_asked(fields, self.name)
        known = {name: each for name, each in fields.values.items() if each is not None}
        missing = [name for name, each in fields.values.items() if each is None]
        _check(fields, known, missing)
        unit = _unit(fields, next(iter(known.values())))
        givens = dict(known)
        asked = MEAN
        if fields.mean is not None:
            asked = missing[0] if missing[0] not in _NUMBERED else MISSING
            givens[MEAN] = fields.mean
        else:
            # The mean of whole boats may be a part of one: 4.5 boats a day.
            fields = fields.model_copy(update={"may_be_cut": True})
        units = MappingProxyType({asked: unit})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[MeanFields]) -> Mapping[str, AnswerValue]:
        """The equation count × mean = sum of the values, solved for what is asked."""
        values = Values.of(problem)
        rules = [Linear({TOTAL: 1, MEAN: -values.count})]
        names = values.names
        if names:
            rules.append(Linear({TOTAL: 1, **{f"value {name}": -1 for name in names}}))
        for name, amount in problem.givens.items():
            if name == MEAN:
                rules.append(Linear({MEAN: 1}, amount.value))
            elif name in names:
                rules.append(Linear({f"value {name}": 1}, amount.value))
        found = solve_linear(rules)
        asked = problem.finds[0]
        key = asked if asked in (MEAN, TOTAL) else f"value {values.missing}"
        return values.answer(found[key])

    def strategies(self, problem: Problem[MeanFields]) -> Iterator[Working]:
        """The total shared equally; levelling out; for a missing value, total less total."""
        yield from ways_of(Values.of(problem))

    def mistakes(self, problem: Problem[MeanFields]) -> Iterator[MistakenWorking]:
        """Not divided, divided by the wrong number, the middle value, the mean for a value."""
        yield from mistakes_of(Values.of(problem))

    def probed(self, problem: Problem[MeanFields]) -> tuple[str, ...]:
        """Values and mean; how many there are is the frame of the story."""
        return tuple(name for name in problem.givens if name != COUNT)

    def reason(self, problem: Problem[MeanFields]) -> Rich:
        """What is added and what is shared."""
        values = Values.of(problem)
        count = so_many(values.count, "equal part")
        if problem.finds[0] == TOTAL:
            return say("The total is the same as that of {count} of {mean}.", count=count,
                       mean=problem.given(MEAN))  # fmt: skip
        if problem.finds[0] == MEAN:
            return say(
                "The values are added up, and the total is shared into {count}.", count=count
            )
        return say(
            "The total has to make {count} of {mean}, and what is there already is taken off.",
            count=count,
            mean=problem.given(MEAN),
        )

    def quotes(self, problem: Problem[MeanFields]) -> Mapping[str, Quote]:
        """`{values}`: all that are given, in one list."""
        names = Values.of(problem).names
        known = {name: problem.givens[name] for name in names if name in problem.givens}
        return {VALUES: list_of(known)} if known else {}

    def figure(
        self, problem: Problem[MeanFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A bar for each value and one as long as the mean, which levels them all."""
        return _bars(Values.of(problem), answers)


_NUMBERED = {f"{ordinal} value" for ordinal in _ORDINALS}


def _total_asked(fields: MeanFields, family: str) -> Problem[MeanFields]:
    if fields.mean is None or fields.count is None:
        raise AmountError(
            "there are no values to take the mean of",
            "give 'values', or 'mean' and 'count' to ask for the total",
        )
    if not is_counted(fields.count) or fields.count.value < 2:
        raise AmountError("'count' is not a number of 2 or more values", "write such as 5 crates")
    givens = MappingProxyType({MEAN: fields.mean, COUNT: fields.count})
    units = MappingProxyType({TOTAL: _unit(fields, fields.mean)})
    return Problem(family, givens, (TOTAL,), units, fields)


def _check(fields: MeanFields, known: Mapping[str, Amount], missing: list[str]) -> None:
    """Raises AmountError where values and mean do not go together."""
    if fields.count is not None:
        raise AmountError("how many values there are is counted", "leave out 'count'")
    if (fields.mean is None) != (not missing) or len(missing) > 1:
        raise AmountError(
            "one number has to be asked for",
            "give all values to ask for the mean, or 'mean' and one blank (_) among the values",
        )
    if not known or len(known) + len(missing) < 2:
        raise AmountError("there are too few values for a mean", "give at least 2")
    first = next(iter(known.values()))
    for name, amount in known.items():
        if name in (MEAN, TOTAL, COUNT, VALUES, MISSING) or not name.strip():
            raise AmountError(f"'{name}' cannot be the name of a value", "name it otherwise")
        if amount.value < 0:
            raise AmountError(f"{write_plain(amount)} is below 0", "give values from 0 up")
    for amount in (*known.values(), *([fields.mean] if fields.mean is not None else ())):
        same = amount.unit == first.unit or (is_counted(amount) and is_counted(first))
        if not same or amount.unit.dimension is Dimension.CLOCK:
            raise AmountError(
                f"{write_plain(amount)} is not in the unit of {write_plain(first)}",
                "give all values and the mean in one unit",
            )
    if len({amount.value for amount in known.values()}) < 2 and fields.mean is None:
        raise AmountError("all values are equal, so there is nothing to level", "change one")


def _unit(fields: MeanFields, like: Amount) -> Unit:
    unit = fields.answer_in or like.unit
    if unit == like.unit or (is_counted(like) and unit.dimension is Dimension.COUNT):
        return unit
    raise AmountError("'answer in' is another unit than that of the values", "leave it out")


def _bars(values: Values, answers: Mapping[str, AnswerValue]) -> BarModel | None:
    if not values.names or len(values.names) > _MOST_BARS:
        return None
    asked = values.problem.finds[0]
    answer = answers[asked]
    assert isinstance(answer, Amount)
    mean = answer if asked == MEAN else values.mean
    amounts = {name: values.problem.givens.get(name, answer) for name in values.names}
    if any(amount.value <= 0 for amount in amounts.values()) or mean.value <= 0:
        return None
    bars = [
        Bar(
            "" if name in _NUMBERED else name,
            (Part(each.value, Mark((write(each),), name in values.problem.givens)),),
        )
        for name, each in amounts.items()
    ]
    level = Part(mean.value, Mark((write(mean),), MEAN in values.problem.givens), shaded=True)
    told = f"{len(bars)} bars, one for each value, and one as long as their mean."
    return BarModel((*bars, Bar(MEAN, (level,))), (), None, told)
