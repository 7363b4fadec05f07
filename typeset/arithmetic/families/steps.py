"""Steps: any chain of operations over named quantities, told step by step."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from typeset.arithmetic.answers import AnswerValue, NameAnswer
from typeset.arithmetic.families.steps_choice import (
    EQUAL_ANSWER,
    Choice,
    answer_named,
    chosen_mistakes,
    chosen_ways,
    probe_of,
    split_choice,
)
from typeset.arithmetic.families.steps_mistakes import chain_mistakes
from typeset.arithmetic.families.steps_plan import Chain
from typeset.arithmetic.families.steps_reason import MULTIPLYING, chain_reason
from typeset.arithmetic.families.steps_ways import chain_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, UnitField, refuse
from typeset.arithmetic.figures import BarModel
from typeset.arithmetic.formulas.plan import (
    Definition,
    TypedStep,
    check_used,
    plan_of,
    split_step,
    whole_formulas,
)
from typeset.arithmetic.formulas.tokens import unknown_name
from typeset.arithmetic.formulas.tree import Formula, Name, names_in
from typeset.arithmetic.formulas.units import common_unit, in_unit
from typeset.arithmetic.formulas.whole import Whole, value_of_whole
from typeset.arithmetic.kinds import decide, probe_all
from typeset.arithmetic.names import as_list
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.remembering import once_for_each
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import say


class StepFields(BaseModel):
    """`cost = tickets × price`, or `{find: cost, by: tickets × price, say: The tickets cost}`."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    find: str
    by: str
    # The author's own sentence, with amounts in braces.
    say: str = ""


def _read_step(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    try:
        typed = split_step(value)
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None
    return {"find": typed.name, "by": typed.by}


class StepsFields(FamilyFields):
    """`quantities`, the `steps` that are made from them, and which of these to `find`."""

    quantities: dict[str, AnyAmount]
    steps: list[Annotated[StepFields, BeforeValidator(_read_step)]] = Field(min_length=1)
    find: str | list[str]
    # The unit of a step where its parts do not tell it: {boxes: boxes, change: £}.
    units: dict[str, UnitField] = Field(default_factory=dict)
    # Quantities of the story that do not matter.
    not_needed: list[str] = Field(default_factory=list, alias="not needed")


class Steps(Family[StepsFields]):
    """The relation is the whole formula at once; the strategy is the author's steps."""

    name = "steps"
    fields_model = StepsFields

    def build(self, fields: StepsFields) -> Problem[StepsFields]:
        """The problem, its steps read and its units worked out."""
        both = set(fields.quantities) & set(fields.facts)
        if both:
            name = min(both)
            raise AmountError(f"'{name}' is both a quantity and a fact", "keep one of them")
        givens = MappingProxyType({**fields.quantities, **fields.facts})
        chain, choice = _chain(fields, givens)
        finds = as_list(fields.find)
        plan = plan_of(_typed(fields), tuple(givens))
        check_used(plan, givens, self.needless(fields, chain), finds)
        teller = chain.as_typed
        _check_rates(teller.bared)
        amounts = teller.amounts
        if choice is not None:
            common_unit([amounts[name].unit for name in choice.candidates])
            return Problem(self.name, givens, finds, MappingProxyType({finds[0]: NUMBER}), fields)
        units = {name: amounts[name].unit for name in chain.finds}
        return Problem(self.name, givens, chain.finds, MappingProxyType(units), fields)

    def needless(self, fields: StepsFields, chain: Chain) -> Collection[str]:
        """The quantities that need not be used: those that the author declares."""
        return fields.not_needed

    def relation(self, problem: Problem[StepsFields]) -> Mapping[str, AnswerValue]:
        """Every result as one formula over the quantities, worked out at once."""
        chain, choice = _chain_of(problem)
        if choice is not None:
            return {choice.name: _chosen(choice, problem, chain)}
        return {
            name: _answer(value_of_whole(formula, problem.givens), problem.units[name], name)
            for name, formula in chain.wholes.items()
            if name in problem.finds
        }

    def smooth(self, problem: Problem[StepsFields]) -> Mapping[str, AnswerValue]:
        """The same without rounding; of a choice, one number that feels every amount."""
        chain, choice = _chain_of(problem)
        if choice is not None:
            bases = [_whole(name, problem, chain, smooth=True).base for name in choice.candidates]
            multiplies = any(line.sign in MULTIPLYING for line in chain.as_typed.lines)
            return {choice.name: probe_of(bases, multiplies)}
        values = {
            name: value_of_whole(formula, problem.givens, smooth=True)
            for name, formula in chain.wholes.items()
            if name in problem.finds
        }
        return {name: Amount(v.unit.of_base(v.base), v.unit) for name, v in values.items()}

    def strategies(self, problem: Problem[StepsFields]) -> Iterator[Working]:
        """Step by step; by another law of arithmetic; and checked from the answer."""
        chain, choice = _chain_of(problem)
        ways = chain_ways(chain, problem.fields.may_be_cut) if chain.finds else iter(())
        if choice is not None:
            ways = chosen_ways(choice, ways, chain.as_typed.amounts)
        yield from ways

    def mistakes(self, problem: Problem[StepsFields]) -> Iterator[MistakenWorking]:
        """A step left out, taken for its opposite, in reading order, or without a quantity."""
        chain, choice = _chain_of(problem)
        if choice is None:
            yield from chain_mistakes(chain, problem.units)
            return
        amounts = chain.as_typed.amounts
        right = Working("", tuple(chain.as_typed.steps), {n: amounts[n] for n in chain.finds})
        units = {name: amounts[name].unit for name in chain.finds}
        wrong = chain_mistakes(chain, units) if chain.finds else iter(())
        known = {name: amounts[name] for name in problem.givens}
        yield from chosen_mistakes(choice, wrong, right, known)

    def reason(self, problem: Problem[StepsFields]) -> Rich | None:
        """The operations with their numbers, where they bear out what the probes say."""
        chain, choice = _chain_of(problem)
        lines = chain.as_typed.lines
        told = chain_reason(lines, decide(probe_all(self, problem)))
        if told is None and choice is not None:
            return say("What is between the amounts tells which is larger.")
        return told

    def figure(
        self, problem: Problem[StepsFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A bar of parts where the last step adds or takes away."""
        chain, choice = _chain_of(problem)
        return chain.bar_model(answers) if choice is None else None


def _check_rates(bared: Collection[Unit]) -> None:
    """A price for each kilogram must not be taken for grams as well."""
    by_kind: dict[Dimension, Unit] = {}
    for unit in sorted(bared, key=lambda each: each.per_base):
        other = by_kind.setdefault(unit.dimension, unit)
        if other != unit:
            raise AmountError(
                f"a price or rate is taken for {unit.plural} and for {other.plural}",
                "give what is multiplied by it in one unit",
            )


@once_for_each
def _chain_of(problem: Problem[StepsFields]) -> tuple[Chain, Choice | None]:
    return _chain(problem.fields, problem.givens)


def _typed(fields: StepsFields) -> tuple[TypedStep, ...]:
    return tuple(TypedStep(each.find, each.by, each.say) for each in fields.steps)


def _chain(fields: StepsFields, givens: Mapping[str, Amount]) -> tuple[Chain, Choice | None]:
    """The steps that make amounts, and the choice between these if the last step is one."""
    reading = _read(
        _typed(fields),
        tuple(givens),
        as_list(fields.find),
        tuple(fields.units.items()),
        fields.answer_in,
    )
    chain = Chain(reading.plan, givens, reading.units, reading.finds, reading.wholes)
    return chain, reading.choice


@dataclass(frozen=True, slots=True)
class _Reading:
    """Steps as read: all of a chain but its numbers."""

    plan: tuple[Definition, ...]
    choice: Choice | None
    units: Mapping[str, Unit]
    finds: tuple[str, ...]
    wholes: Mapping[str, Formula]


# A problem is built, solved, and asked again with other numbers for its kind.
@lru_cache(maxsize=256)
def _read(
    typed: tuple[TypedStep, ...],
    known: tuple[str, ...],
    finds: tuple[str, ...],
    typed_units: tuple[tuple[str, Unit], ...],
    answer_in: Unit | None,
) -> _Reading:
    plan, choice = split_choice(plan_of(typed, known), finds)
    made = [each.name for each in plan]
    units = dict(typed_units)
    for name in units:
        if name not in made:
            raise unknown_name(name, made)
    if choice is not None:
        finds = tuple(name for name in choice.candidates if name in made)
    elif answer_in is not None:
        units |= dict.fromkeys(finds, answer_in)
    wholes = MappingProxyType(whole_formulas(plan, units))
    return _Reading(plan, choice, MappingProxyType(units), finds, wholes)


def _whole(name: str, problem: Problem[StepsFields], chain: Chain, smooth: bool = False) -> Whole:
    formula = chain.wholes.get(name, Name(name))
    return value_of_whole(formula, problem.givens, smooth)


def _chosen(choice: Choice, problem: Problem[StepsFields], chain: Chain) -> NameAnswer:
    """The choice between the values of whole formulas."""
    bases = {name: _whole(name, problem, chain).base for name in choice.candidates}
    best = (max if choice.takes_larger else min)(bases.values())
    named = [name for name, base in bases.items() if base == best]
    return answer_named(named[0]) if len(named) == 1 else NameAnswer(EQUAL_ANSWER)


def _answer(value: Whole, unit: Unit, name: str) -> Amount:
    """The value in the unit that is asked for.

    Raises AmountError for a time of day after midnight.
    """
    answer = in_unit(Amount(value.unit.of_base(value.base), value.unit), unit, name)
    if unit.dimension is Dimension.CLOCK and not 0 <= answer.value < 24 * 60:
        raise AmountError(f"'{name}' is past midnight", "choose other times")
    return answer


class OpenSteps(Steps):
    """The steps behind an open task, which may tell more than its examples reckon with."""

    def needless(self, fields: StepsFields, chain: Chain) -> Collection[str]:
        """Every quantity that no step uses, and what the author declares."""
        used = {name for each in chain.plan for name in names_in(each.formula)}
        spare = [name for name in chain.givens if name not in used]
        return [*spare, *(name for name in fields.not_needed if name not in spare)]
