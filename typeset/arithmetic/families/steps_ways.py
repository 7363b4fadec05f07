"""The right ways through a chain of steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import floor

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.checks import told_after
from typeset.arithmetic.families.steps_plan import Chain
from typeset.arithmetic.formulas.checking import amount_of, backwards, multiples_beside
from typeset.arithmetic.formulas.explaining import Explainer
from typeset.arithmetic.formulas.other_calls import other_lines
from typeset.arithmetic.formulas.plan import Definition
from typeset.arithmetic.formulas.rearranging import rearranged
from typeset.arithmetic.formulas.tree import As, Call, Formula
from typeset.arithmetic.formulas.units import COUNTS
from typeset.arithmetic.phrases import is_sensible, the
from typeset.arithmetic.workings import Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

_BY_STEPS = "Step by step"
_BACKWARDS = "Checking backwards"
_MULTIPLES = "Trying multiples"


def chain_ways(chain: Chain, may_be_cut: bool) -> Iterator[Working]:
    """The author's steps first; then what fits of the others."""
    teller = chain.told()
    answers: dict[str, AnswerValue] = {name: teller.amounts[name] for name in chain.finds}
    yield Working(_BY_STEPS, tuple(teller.steps), answers)
    if len(chain.finds) > 1:
        return
    whole = chain.wholes()[chain.finds[0]]
    yield from _by_other_laws(chain, _without_unit(whole), may_be_cut)
    yield from _checked(chain, whole, teller.amounts)


def _without_unit(formula: Formula) -> Formula:
    return formula.inner if isinstance(formula, As) else formula


def _by_other_laws(chain: Chain, whole: Formula, may_be_cut: bool) -> Iterator[Working]:
    """The same formula by another law, where nothing is cut or negative on the way."""
    asked = chain.finds[0]
    for strategy, formula in rearranged(whole):
        teller = chain.explainer()
        try:
            teller.define(Definition(asked, formula), "Find")
        except AmountError:
            continue
        made = teller.amounts[asked]
        if not _is_lawful(chain, teller, made):
            continue
        if all(is_sensible(amount, may_be_cut) for amount in teller.made):
            yield Working(strategy, tuple(teller.steps), {asked: made})


def _is_lawful(chain: Chain, teller: Explainer, made: Amount) -> bool:
    """The laws are laws of numbers: where an amount counts as a bare number, no other unit of
    its kind may stand in the story, and the result must still be of the kind asked for."""
    asked = chain.told().amounts[chain.finds[0]]
    kinds = {asked.unit.dimension, made.unit.dimension}
    if len(kinds) > 1 and not kinds <= COUNTS:
        return False
    return not (teller.bared and chain.mixes_units)


def _checked(chain: Chain, whole: Formula, amounts: Mapping[str, Amount]) -> Iterator[Working]:
    asked = chain.finds[0]
    answer = amounts[asked]
    inner = _without_unit(whole)
    if isinstance(inner, Call):
        yield from _by_multiples(chain, inner, answer)
        yield from _other_call(chain, inner, answer)
        return
    try:
        steps = backwards(inner, chain.givens, answer)
    except AmountError:
        return
    if steps:
        check = Working(_BACKWARDS, tuple(steps), {asked: answer})
        yield told_after(check, Working(_BY_STEPS, tuple(chain.told().steps), {asked: answer}))


def _by_multiples(chain: Chain, call: Call, answer: Amount) -> Iterator[Working]:
    """A rounded quotient between the multiple that fits and the next."""
    asked = chain.finds[0]
    if call.function not in ("round up", "round down", "quotient", "remainder"):
        return
    try:
        dividend, divisor = (amount_of(each, chain.givens) for each in call.arguments)
        whole = floor(amount_of(Call("quotient", call.arguments), chain.givens).value)
        steps = [*_up_to_the_last(chain), *multiples_beside(dividend, divisor, whole)]
    except AmountError:
        return
    steps.append(_verdict(call.function, asked, answer))
    yield Working(_MULTIPLES, tuple(steps), {asked: answer})


def _up_to_the_last(chain: Chain) -> list[Step]:
    """The steps that make what is divided in the last one."""
    teller = chain.explainer()
    for index, definition in enumerate(chain.plan[:-1]):
        teller.define(definition, "Then find" if index else "First find")
    return teller.steps


def _other_call(chain: Chain, call: Call, answer: Amount) -> Iterator[Working]:
    """A shared factor, a mean or a difference in the other way of the trade."""
    arguments = [amount_of(each, chain.givens) for each in call.arguments]
    named = other_lines(call.function, arguments, the(chain.finds[0]))
    if named is not None:
        strategy, steps, made = named
        yield Working(strategy, steps, {chain.finds[0]: answer.like(made)})


def _verdict(function: str, asked: str, answer: Amount) -> Step:
    if function == "round up":
        text = f"To have enough, {the(asked)} must be {{answer}}."
    elif function == "remainder":
        text = f"Count on from the multiple that fits: {the(asked)} is {{answer}}."
    else:
        text = f"Only what is full counts, so {the(asked)} must be {{answer}}."
    return step(text, answer=answer)
