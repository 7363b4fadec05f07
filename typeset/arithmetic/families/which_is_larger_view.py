"""What is compared, and how its amounts are spoken of, for 'which is larger'."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from typeset.arithmetic.answers import AnswerValue, NameAnswer
from typeset.arithmetic.equations import EQUAL, MORE, Equation, equation
from typeset.arithmetic.methods import conversion, finest_unit, is_counted
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.nouns import counted, looks_plural
from typeset.quantities.units import Dimension
from typeset.quantities.writing import say

# The word between two names in `compare`, and how it is kept.
SIGNS = {
    "÷": "for", "for": "for", "in": "in", "per": "for",
    ":": "to", "to": "to",
    "×": "×", "x": "×", "*": "×",
    "of": "of",
}  # fmt: skip
_RATES = ("for", "in", "to")


@dataclass(frozen=True, slots=True)
class Compared:
    """`first word second`: a rate (for, in), a mixture (to), a product (×), a fraction (of)."""

    first: str
    word: str
    second: str

    @property
    def is_rate(self) -> bool:
        """True where the two are divided, not multiplied."""
        return self.word in _RATES


@dataclass(frozen=True, slots=True)
class Candidate:
    """One of those compared, with its two amounts in the units that are worked in."""

    name: str
    first: Amount
    second: Amount


def compared_in(text: str, names: Sequence[str]) -> Compared:
    """What 'cost for floats' compares.

    Raises AmountError for anything but two of the names with a known word between them.
    """
    tidy = " ".join(text.split())
    for word, kept in SIGNS.items():
        for gap in (" ", ""):
            first, found, second = tidy.partition(f"{gap}{word}{gap}")
            is_sign = not word.isalpha()
            if found and (gap or is_sign) and {first, second} <= set(names) and first != second:
                return Compared(first, kept, second)
    example = f"{names[-1]} for {names[0]}" if len(names) > 1 else "cost for floats"
    raise AmountError(
        f"'{tidy}' does not say what is compared",
        f"write two names of the choices with for, in, to, × or of between, such as '{example}'",
    )


@dataclass(frozen=True, slots=True)
class View:
    """The problem with the words that its workings need."""

    problem: Problem[Any]
    compared: Compared
    candidates: tuple[Candidate, ...]
    conversions: tuple[Step, ...]

    @property
    def wants_most(self) -> bool:
        """True where the larger is asked for, not the smaller."""
        return str(self.problem.finds[0]).startswith("large")

    def others(self, one: Candidate) -> list[Candidate]:
        """All the others."""
        return [each for each in self.candidates if each is not one]

    def first(self, amount: Amount) -> Rich:
        """An amount of the first name: '6 floats', '£9', '2 of blue', '3 litres of blue'."""
        return self._spoken(amount, self.compared.first)

    def second(self, amount: Amount) -> Rich:
        """An amount of the second name."""
        return self._spoken(amount, self.compared.second)

    def pair(self, first: Amount, second: Amount) -> Rich:
        """'£9 for 6 floats', '2 of blue to 3 of white'."""
        told = {"x": self.first(first), "y": self.second(second)}
        return say(f"{{x}} {self.compared.word} {{y}}", **told)

    def _spoken(self, amount: Amount, name: str) -> Rich:
        if self.compared.word == "to":
            return say(f"{{amount}} of {name}", amount=amount)
        is_share = self.compared.word == "of" and name == self.compared.first
        if amount.unit.dimension is Dimension.NUMBER and not is_share:
            return say("{amount}", amount=named(amount, name))
        return say("{amount}", amount=amount)

    @property
    def tells_things(self) -> bool:
        """True where counts are told as things ('6 floats'), not as so much of something."""
        return self.compared.word != "to"

    def quantity(self, name: str) -> str:
        """'number of floats', 'amount of blue', 'cost'."""
        if not self.tells_things:
            return f"amount of {name}"
        one = self.candidates[0]
        amount = one.first if name == self.compared.first else one.second
        return f"number of {name}" if is_counted(amount) else name

    def verdict(self, values: Sequence[Amount], upside_down: bool = False) -> AnswerValue:
        """The name of the best by these values; `upside_down` where least stands for most."""
        sizes = [each.base for each in values]
        if len(set(sizes)) == 1:
            return NameAnswer(self.problem.fields.if_equal)
        best = max(sizes) if self.wants_most != upside_down else min(sizes)
        return NameAnswer(the(self.candidates[sizes.index(best)].name))

    def conclusion(self, answer: AnswerValue) -> Step:
        """'So the large bag is the better buy.'"""
        assert isinstance(answer, NameAnswer)
        fields = self.problem.fields
        if answer.name == fields.if_equal:
            return step(f"So {'they are equal' if answer.name == 'equal' else answer.name}.")
        if not fields.called:
            return step(f"So the answer is {answer.name}.")
        return step(f"So {answer.name} {'are' if looks_plural(answer.name) else 'is'} "
                    f"{fields.called}.")  # fmt: skip

    def working(
        self, strategy: str, steps: Sequence[Step], values: Sequence[Amount], upside: bool = False
    ) -> Working:
        """The steps, and the verdict by the values that they reach."""
        answer = self.verdict(values, upside)
        told = (*self.conversions, *steps, self.conclusion(answer))
        return Working(strategy, told, {self.problem.finds[0]: answer})

    def mistake(
        self, name: str, steps: Sequence[Step], values: Sequence[Amount], upside: bool = False
    ) -> MistakenWorking:
        """The same for a wrong way."""
        answer = self.verdict(values, upside)
        told = (*steps, self.conclusion(answer))
        return MistakenWorking(name, told, {self.problem.finds[0]: answer})


def named(amount: Amount, name: str) -> Amount:
    """A plain number with its name as its noun: '6 floats'."""
    return Amount(amount.value, counted(name, False), amount.form, amount.places)


def view_of(problem: Problem[Any]) -> View:
    """The candidates in one unit for each of the two names, with the steps that get there."""
    choices: Mapping[str, Mapping[str, Amount]] = problem.fields.choices
    names = tuple(next(iter(choices.values())))
    compared = compared_in(problem.fields.compare, names)
    steps: list[Step] = []
    columns = []
    for name in (compared.first, compared.second):
        amounts = [problem.given(f"{candidate} {name}") for candidate in choices]
        columns.append(list(_alike(amounts, steps)))
    if compared.word == "to":
        flat = list(_alike([*columns[0], *columns[1]], steps))
        columns = [flat[: len(choices)], flat[len(choices) :]]
    candidates = tuple(
        Candidate(candidate, first, second)
        for candidate, first, second in zip(choices, *columns, strict=True)
    )
    return View(problem, compared, candidates, tuple(steps))


def _alike(amounts: Sequence[Amount], steps: list[Step]) -> Iterator[Amount]:
    """The amounts in the finest of their units; the steps that write them so are added."""
    unit = finest_unit(*amounts)
    if unit.dimension is Dimension.PERCENT or Dimension.PERCENT in {
        a.unit.dimension for a in amounts
    }:
        yield from amounts
        return
    for amount in amounts:
        if is_counted(amount):
            yield amount
            continue
        converted, more = conversion(amount, unit)
        if amount.form is Form.COMPOUND and unit == amount.unit:
            # Written in two units, reckoned in the smaller one.
            converted = amount.like(amount.value)
            told = {"old": amount, "new": converted}
            more = (step("Write {old} as {new}.", equation(amount, converted), **told),)
        steps.extend(more)
        yield converted


def comparing(values: Sequence[Amount], spoken: Sequence[Rich], things: bool = False) -> Step:
    """'£36 is more than £33.', with the amounts in falling order; `things` are told in the
    plural ('72 floats are more than 66 floats')."""
    order = sorted(range(len(values)), key=lambda index: -values[index].base)
    ranked = [values[index] for index in order]
    signs = tuple(EQUAL if a.base == b.base else MORE for a, b in pairwise(ranked))
    told = Equation(tuple(ranked), signs)
    most, least = spoken[order[0]], spoken[order[-1]]
    verb = "are" if things and is_counted(ranked[0]) and ranked[0].value > 1 else "is"
    if set(signs) == {EQUAL}:
        return step("That is the same each time.", told)
    if len(values) > 2:
        return step("Put them in order, the largest first.", told)
    return step(f"{{most}} {verb} more than {{least}}.", told, most=most, least=least)


def head(candidate: Candidate) -> str:
    """The candidate's name at the head of a line."""
    return title(the(candidate.name))
