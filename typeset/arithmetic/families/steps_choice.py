"""A chain of steps that ends in a choice: which of its amounts is the larger or the smaller?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from typeset.arithmetic.answers import AnswerValue, NameAnswer
from typeset.arithmetic.equations import EQUAL, MORE, Equation, equation, minus
from typeset.arithmetic.formulas.plan import Definition
from typeset.arithmetic.formulas.tokens import CHOICES
from typeset.arithmetic.formulas.tree import Call, Name, parts_of
from typeset.arithmetic.formulas.units import COUNTS, common_unit
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount

EQUAL_ANSWER = "equal"


def answer_named(candidate: str) -> NameAnswer:
    """A candidate as an answer, with its article: 'the quay shop', but 'Nell'."""
    return NameAnswer(the(candidate))


@dataclass(frozen=True, slots=True)
class Choice:
    """`name = which is larger(candidates)`."""

    name: str
    takes_larger: bool
    candidates: tuple[str, ...]

    def of(self, amounts: Mapping[str, Amount]) -> NameAnswer:
        """The candidate that is chosen among these amounts, or 'equal'."""
        ranked = self._ranked(amounts)
        if amounts[ranked[0]].base == amounts[ranked[1]].base:
            return NameAnswer(EQUAL_ANSWER)
        return answer_named(ranked[0])

    def _ranked(self, amounts: Mapping[str, Amount]) -> list[str]:
        sign = -1 if self.takes_larger else 1
        return sorted(self.candidates, key=lambda name: sign * amounts[name].base)

    def compared(self, amounts: Mapping[str, Amount]) -> tuple[Step, ...]:
        """The lines that compare the amounts and name the one that is chosen."""
        falling = sorted(self.candidates, key=lambda name: -amounts[name].base)
        alike = _alike([amounts[name] for name in falling])
        signs = tuple(EQUAL if one.base == other.base else MORE for one, other in pairwise(alike))
        names = ", then ".join(
            f"{the(name)} with {{a{index}}}" for index, name in enumerate(falling)
        )
        told = {f"a{index}": amounts[name] for index, name in enumerate(falling)}
        text = f"Compare, from the largest down: {names}."
        first = step(text, Equation(alike, signs), **told)
        return first, self._verdict(self.of(amounts))

    def by_difference(self, amounts: Mapping[str, Amount]) -> tuple[Step, ...]:
        """The same for two amounts by what is between them."""
        large, small = sorted(self.candidates, key=lambda name: -amounts[name].base)
        one, other = _alike([amounts[large], amounts[small]])
        gap = one.like(one.value - other.value)
        first = step(
            f"{title(large)}: {{gap}} beyond {the(small)}.",
            equation(minus(one, other), gap),
            gap=gap,
        )
        return first, self._verdict(self.of(amounts))

    def _verdict(self, chosen: NameAnswer) -> Step:
        if chosen.name == EQUAL_ANSWER:
            return step("So they are equal.")
        return step(f"So the answer is {chosen.name}.")

    def turned(self) -> Choice:
        """The choice by a pupil who looks at the wrong end."""
        return Choice(self.name, not self.takes_larger, self.candidates)


def _alike(amounts: Sequence[Amount]) -> tuple[Amount, ...]:
    """Measures in one unit, so that they can be compared at a glance."""
    unit = common_unit([each.unit for each in amounts])
    return tuple(each if each.unit.dimension in COUNTS else each.to(unit) for each in amounts)


def split_choice(
    plan: Sequence[Definition], finds: Sequence[str]
) -> tuple[tuple[Definition, ...], Choice | None]:
    """The steps that make amounts, and the choice between them where the last step is one.

    Raises AmountError for a choice that is not the last step, or not between names.
    """
    chosen = [
        each
        for each in plan
        if any(isinstance(p, Call) and p.function in CHOICES for p in parts_of(each.formula))
    ]
    if not chosen:
        return tuple(plan), None
    last, formula = chosen[0], chosen[0].formula
    if len(chosen) > 1 or last is not plan[-1] or tuple(finds) != (last.name,):
        raise AmountError(
            f"'{last.name}' is a name and no amount, so nothing can be made from it",
            "let the choice be the last step, and find it",
        )
    if not isinstance(formula, Call) or not all(isinstance(a, Name) for a in formula.arguments):
        raise AmountError(
            f"'{last.name}' chooses between names", "make what is compared in steps of its own"
        )
    names = tuple(each.name for each in formula.arguments if isinstance(each, Name))
    if len(set(names)) < len(names):
        raise AmountError(f"'{last.name}' compares one with itself", "compare two different names")
    return tuple(plan[:-1]), Choice(last.name, CHOICES[formula.function], names)


def chosen_ways(
    choice: Choice, workings: Iterable[Working], known: Mapping[str, Amount]
) -> Iterator[Working]:
    """Each way to the amounts, with the comparison at its end."""
    told = list(workings) or [Working("Step by step", (), {})]
    for index, working in enumerate(told):
        amounts = {**known, **_amounts(working.answers)}
        answer = {choice.name: choice.of(amounts)}
        steps = (*working.steps, *choice.compared(amounts))
        yield Working(working.strategy, steps, answer)
        if not index and len(choice.candidates) == 2 and answer[choice.name].name != EQUAL_ANSWER:
            steps = (*working.steps, *choice.by_difference(amounts))
            yield Working("By the difference", steps, answer)


def chosen_mistakes(
    choice: Choice,
    mistakes: Iterable[MistakenWorking],
    right: Working,
    known: Mapping[str, Amount],
) -> Iterator[MistakenWorking]:
    """Wrong amounts rightly compared; and right amounts, but the wrong one of them."""
    for each in mistakes:
        amounts = {**known, **_amounts(each.answers)}
        if set(choice.candidates) <= set(amounts):
            steps = (*each.steps, *choice.compared(amounts))
            yield MistakenWorking(
                each.misconception, steps, {choice.name: choice.of(amounts)}, each.slip
            )
    amounts = {**known, **_amounts(right.answers)}
    turned = choice.turned()
    steps = (*right.steps, *turned.compared(amounts))
    yield MistakenWorking("greatest and least exchanged", steps, {choice.name: turned.of(amounts)})


def _amounts(answers: Mapping[str, AnswerValue]) -> dict[str, Amount]:
    return {name: each for name, each in answers.items() if isinstance(each, Amount)}


def probe_of(values: Sequence[Fraction], multiplies: bool) -> Amount:
    """One number in which every amount is felt, so that it can be watched for the kind: how
    many times the one is the other where something is multiplied, else their difference.

    Raises ZeroDivisionError where the second is 0.
    """
    first, second = values[0], values[1]
    return Amount(first / second if multiplies else first - second)
