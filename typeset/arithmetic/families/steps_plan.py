"""A chain of steps with its numbers, ready to be told in one way or another."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import PLUS
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.formulas.explaining import Explainer
from typeset.arithmetic.formulas.plan import Definition
from typeset.arithmetic.formulas.tree import Apply, As, Formula, Name
from typeset.arithmetic.formulas.units import COUNTS
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import MINUS, write


# Without slots, which would leave no room for what is told once and asked for again.
@dataclass(frozen=True)
class Chain:
    """The definitions in order, the numbers of the story, the author's units, the question.

    `wholes` has every step as a formula over the story's numbers alone.
    """

    plan: tuple[Definition, ...]
    givens: Mapping[str, Amount]
    units: Mapping[str, Unit]
    finds: tuple[str, ...]
    wholes: Mapping[str, Formula]

    @cached_property
    def as_typed(self) -> Explainer:
        """The author's own steps told in order, to be read and not told on.

        Raises AmountError where amounts do not go together.
        """
        return self.told(self.plan)

    @cached_property
    def nouns(self) -> tuple[Unit, ...]:
        """What the story counts."""
        return tuple(amount.unit for amount in self.givens.values() if amount.unit.is_noun)

    @cached_property
    def mixes_units(self) -> bool:
        """True where one kind of measure stands in the story in more than one unit."""
        units = {amount.unit for amount in self.givens.values()} | set(self.units.values())
        measures = [unit.dimension for unit in units if unit.dimension not in COUNTS]
        return len(set(measures)) < len(measures)

    def explainer(self, givens: Mapping[str, Amount] | None = None) -> Explainer:
        """A teller with the numbers of the story, or with others."""
        return Explainer(dict(self.givens if givens is None else givens), self.units, self.nouns)

    def told(self, plan: Sequence[Definition]) -> Explainer:
        """The plan told in order. Raises AmountError where amounts do not go together."""
        teller = self.explainer()
        teller.tell_all(plan)
        return teller

    def with_unit(self, name: str, formula: Formula) -> Formula:
        """The formula in the unit that the author has given to what it makes."""
        unit = self.units.get(name)
        return formula if unit is None else As(formula, unit, name)

    def bar_model(self, answers: Mapping[str, AnswerValue]) -> BarModel | None:
        """One bar in parts: a sum with its total, or a whole with what is left of it."""
        last = self.plan[-1]
        if self.finds != (last.name,):
            return None
        amounts = self.as_typed.amounts
        answer = answers[last.name]
        parts = _terms(last.formula, amounts)
        if not parts or not isinstance(answer, Amount):
            return None
        if isinstance(last.formula, Apply) and last.formula.sign == MINUS:
            (whole_name, whole), *taken = parts
            return _bar([*taken, (last.name, answer)], (whole_name, whole), self.givens)
        return _bar(parts, (last.name, answer), self.givens)


def _terms(formula: Formula, amounts: Mapping[str, Amount]) -> list[tuple[str, Amount]]:
    """The names of a chain of one sign, + or −, with their amounts; empty for any other."""
    names: list[str] = []
    sign = formula.sign if isinstance(formula, Apply) else ""
    while isinstance(formula, Apply) and formula.sign == sign and isinstance(formula.right, Name):
        names.append(formula.right.name)
        formula = formula.left
    if not isinstance(formula, Name) or sign not in (PLUS, MINUS):
        return []
    return [(name, amounts[name]) for name in (formula.name, *reversed(names))]


def _bar(
    parts: list[tuple[str, Amount]], whole: tuple[str, Amount], givens: Mapping[str, Amount]
) -> BarModel | None:
    times_of_day = any(amount.unit.dimension is Dimension.CLOCK for _, amount in (*parts, whole))
    if times_of_day or any(amount.base <= 0 for _, amount in parts):
        return None
    shown = tuple(
        Part(amount.base, _mark(name, amount, givens), shaded=index % 2 == 1)
        for index, (name, amount) in enumerate(parts)
    )
    total = Brace(0, _mark(*whole, givens), 0, len(parts) - 1)
    return BarModel((Bar(whole[0], shown),), (total,))


def _mark(name: str, amount: Amount, givens: Mapping[str, Amount]) -> Mark:
    return Mark((write(amount),), is_given=name in givens)
