"""The right ways through a chain of steps."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import islice
from math import floor

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.checks import told_after
from typeset.arithmetic.equations import OF
from typeset.arithmetic.families.steps_plan import Chain
from typeset.arithmetic.formulas.checking import amount_of, backwards, multiples_beside
from typeset.arithmetic.formulas.explaining import Explainer, opening_of
from typeset.arithmetic.formulas.other_calls import fraction_lines, other_lines
from typeset.arithmetic.formulas.plan import Definition, needed
from typeset.arithmetic.formulas.rearranging import rearranged
from typeset.arithmetic.formulas.tree import Apply, As, Call, Formula, Name, rebuilt
from typeset.arithmetic.formulas.units import COUNTS
from typeset.arithmetic.phrases import found, is_sensible
from typeset.arithmetic.workings import Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

_BY_STEPS = "Step by step"
_BACKWARDS = "Checking backwards"
_MULTIPLES = "Trying multiples"
# A long chain can be arranged in thousands of ways; nobody reads more than a few.
_MOST_ARRANGEMENTS = 60


def chain_ways(chain: Chain, may_be_cut: bool) -> Iterator[Working]:
    """The author's steps first; then what fits of the others."""
    teller = chain.as_typed
    yield Working(_BY_STEPS, tuple(teller.steps), _answers(chain, teller))
    yield from _by_other_laws(chain, may_be_cut)
    yield from _by_other_calls(chain)
    if len(chain.finds) == 1:
        yield from _checked(chain, teller.amounts)


def _answers(chain: Chain, teller: Explainer) -> dict[str, AnswerValue]:
    return {name: teller.amounts[name] for name in chain.finds}


def _by_other_laws(chain: Chain, may_be_cut: bool) -> Iterator[Working]:
    """A step by another law, where nothing is cut or negative on the way."""
    for strategy, plan in islice(_rearranged_plans(chain), _MOST_ARRANGEMENTS):
        try:
            teller = chain.told(plan)
        except AmountError:
            continue
        if not _is_lawful(chain, teller):
            continue
        if all(is_sensible(amount, may_be_cut) for amount in teller.made):
            yield Working(strategy, tuple(teller.steps), _answers(chain, teller))


def _rearranged_plans(chain: Chain) -> Iterator[tuple[str, list[Definition]]]:
    """The chain with one step made in another way; what the author named keeps its name
    where it is still made on the way."""
    wholes = {name: _uncalled(formula) for name, formula in chain.wholes.items()}
    for index, each in enumerate(chain.plan):
        before, after = chain.plan[:index], chain.plan[index + 1 :]
        for strategy, formula in rearranged(_without_unit(wholes[each.name])):
            changed = Definition(each.name, _folded(formula, before, chain))
            later = [replace(step_, say="") for step_ in after]
            yield strategy, needed([*before, changed, *later], chain.finds)


def _folded(formula: Formula, before: Sequence[Definition], chain: Chain) -> Formula:
    """The formula with the names of earlier steps for what they make."""
    for each in before:
        made = _uncalled(chain.with_unit(each.name, each.formula))
        formula = rebuilt(formula, _named_where(made, Name(each.name)))
    return formula


def _named_where(made: Formula, name: Name) -> Callable[[Formula], Formula]:
    return lambda part: name if part == made else part


def _uncalled(formula: Formula) -> Formula:
    """The formula without the nouns that an author has put to counts: to number laws,
    kites are as good as a number."""
    return rebuilt(
        formula,
        lambda part: part.inner if isinstance(part, As) and part.unit.dimension in COUNTS else part,
    )


def _without_unit(formula: Formula) -> Formula:
    return formula.inner if isinstance(formula, As) else formula


def _is_lawful(chain: Chain, teller: Explainer) -> bool:
    """The laws are laws of numbers: where an amount counts as a bare number, no other unit of
    its kind may stand in the story, and the result must still be of the kind asked for."""
    right = chain.as_typed.amounts
    for name in chain.finds:
        kinds = {right[name].unit.dimension, teller.amounts[name].unit.dimension}
        if len(kinds) > 1 and not kinds <= COUNTS:
            return False
    return not (teller.bared and chain.mixes_units)


def _by_other_calls(chain: Chain) -> Iterator[Working]:
    """A shared factor, a mean or a rounded division in the other way of the trade, between
    the author's own steps."""
    for index, each in enumerate(chain.plan):
        if not isinstance(each.formula, Call) and not _takes_part(each.formula):
            continue
        teller = chain.explainer()
        strategy = ""
        for at, definition in enumerate(chain.plan):
            if at == index:
                strategy = _tell_otherwise(teller, definition.name, each.formula)
                if not strategy:
                    break
            else:
                teller.define(definition, opening_of(at, len(chain.plan)))
        if strategy:
            yield Working(strategy, tuple(teller.steps), _answers(chain, teller))


def _takes_part(formula: Formula) -> bool:
    """True for a fraction or percentage of something."""
    return isinstance(formula, Apply) and formula.sign == OF


def _tell_otherwise(teller: Explainer, name: str, formula: Formula) -> str:
    """Tells a function, or a fraction of something, in its other way; the strategy's name,
    empty where it has none."""
    if isinstance(formula, Call):
        return _call_otherwise(teller, name, formula)
    assert isinstance(formula, Apply)
    part, whole = teller.sides(formula)
    named = fraction_lines(part, whole, found(name))
    if named is None:
        return ""
    strategy, told, value = named
    teller.call(name, told, whole.like(value))
    return strategy


def _call_otherwise(teller: Explainer, name: str, call: Call) -> str:
    """Tells the function in its other way; the strategy's name, empty where it has none."""
    made = amount_of(call, teller.amounts)
    arguments = teller.arguments(call)
    if call.function in ("round up", "round down", "quotient", "remainder"):
        whole = floor(amount_of(Call("quotient", call.arguments), teller.amounts).value)
        try:
            steps = [*multiples_beside(arguments[0], arguments[1], whole)]
        except AmountError:
            return ""
        teller.call(name, [*steps, _verdict(call.function, teller.as_called(made, name))], made)
        return _MULTIPLES
    named = other_lines(call.function, arguments, found(name))
    if named is None:
        return ""
    strategy, told, value = named
    teller.call(name, told, made.like(value))
    return strategy


def _verdict(function: str, answer: Amount) -> Step:
    if function == "round up":
        return step("To have enough, it takes {answer}.", answer=answer)
    if function == "remainder":
        return step("What is beyond the multiple that fits is left over: {answer}.", answer=answer)
    return step("Only full ones count: {answer}.", answer=answer)


def _checked(chain: Chain, amounts: Mapping[str, Amount]) -> Iterator[Working]:
    """From the answer back to the story."""
    asked = chain.finds[0]
    answer = amounts[asked]
    inner = _without_unit(chain.wholes[asked])
    if isinstance(inner, Call):
        return
    try:
        steps = backwards(inner, chain.givens, answer)
    except AmountError:
        return
    if steps:
        check = Working(_BACKWARDS, tuple(steps), {asked: answer})
        yield told_after(check, Working(_BY_STEPS, tuple(chain.as_typed.steps), {asked: answer}))
