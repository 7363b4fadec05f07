"""Which is larger: two or three rates, mixtures or derived amounts, compared by name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue, NameAnswer
from typeset.arithmetic.families.which_is_larger_mistakes import (
    mistakes_with_products,
    mistakes_with_rates,
)
from typeset.arithmetic.families.which_is_larger_products import ways_with_products
from typeset.arithmetic.families.which_is_larger_rates import ways_with_rates
from typeset.arithmetic.families.which_is_larger_view import (
    SIGNS,
    Candidate,
    Compared,
    View,
    compared_in,
    view_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.methods import check_alike
from typeset.arithmetic.names import listed, one_of
from typeset.arithmetic.phrases import the
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension
from typeset.quantities.writing import say, write

# More parts than this nobody draws in a bar.
_MOST_PARTS = 12


class WhichIsLargerFields(FamilyFields):
    """`choices: {small bag: {floats: 6, cost: £9}, large bag: {floats: 8, cost: £11}}`,
    `compare: cost for floats`, `find: smaller`, `called: the better buy`.

    `compare` is a rate (`cost for floats`), a mixture (`blue to white`), a product
    (`crates × crabs`) or a fraction (`share of shells`).
    """

    choices: dict[str, dict[str, PositiveAmount]]
    compare: str
    find: Literal["larger", "smaller", "largest", "smallest"] = "larger"
    # What the one that is found is then called: 'the better buy', 'darker'.
    called: str = ""
    if_equal: str = Field(default="equal", alias="if equal")


class WhichIsLarger(Family[WhichIsLargerFields]):
    """x ÷ y or x × y of every candidate; the largest, the smallest, or none of them."""

    name = "which is larger"
    fields_model = WhichIsLargerFields

    def build(self, fields: WhichIsLargerFields) -> Problem[WhichIsLargerFields]:
        """The problem; a number is called by its candidate and its own name in the story."""
        if len(fields.choices) not in (2, 3):
            raise AmountError(
                f"{len(fields.choices)} are compared", "give two or three under 'choices'"
            )
        names = tuple(next(iter(fields.choices.values())))
        compared = compared_in(fields.compare, names)
        for candidate, amounts in fields.choices.items():
            _check_names(candidate, amounts, names)
        for name in names:
            if compared.word == "of" and name == compared.first:
                # A fraction here and a percentage there are both so much of a whole.
                continue
            check_alike(*(amounts[name] for amounts in fields.choices.values()))
        _check_signs(compared, tuple(fields.choices.values()))
        givens = {
            f"{candidate} {name}": amount
            for candidate, amounts in fields.choices.items()
            for name, amount in amounts.items()
        }
        asked = str(fields.find)
        if len(givens) < len(names) * len(fields.choices):
            raise AmountError(
                "two numbers would have the same name in the story",
                "give the choices and their numbers names that differ",
            )
        units = MappingProxyType({asked: NUMBER})
        return Problem(self.name, MappingProxyType(givens), (asked,), units, fields)

    def relation(self, problem: Problem[WhichIsLargerFields]) -> Mapping[str, AnswerValue]:
        """Of two, a is more than b where a's x times b's y is more than b's x times a's y."""
        view = view_of(problem)
        best = [
            each
            for each in view.candidates
            if all(_beats(view, each, o) for o in view.others(each))
        ]
        if len(best) == len(view.candidates):
            return {problem.finds[0]: NameAnswer(problem.fields.if_equal)}
        if len(best) > 1:
            both = listed([the(each.name) for each in best], "and")
            raise AmountError(
                f"no single one is the {problem.finds[0]}: {both} are equal",
                "change one of their numbers",
            )
        return {problem.finds[0]: NameAnswer(the(best[0].name))}

    def strategies(self, problem: Problem[WhichIsLargerFields]) -> Iterator[Working]:
        """One of the two made the same in all; or every amount worked out; or matched."""
        view = view_of(problem)
        yield from ways_with_rates(view) if view.compared.is_rate else ways_with_products(view)

    def mistakes(self, problem: Problem[WhichIsLargerFields]) -> Iterator[MistakenWorking]:
        """One of the two numbers only, differences for ratios, the rate turned round."""
        view = view_of(problem)
        if view.compared.is_rate:
            yield from mistakes_with_rates(view)
        else:
            yield from mistakes_with_products(view)

    def probed(self, problem: Problem[WhichIsLargerFields]) -> tuple[str, ...]:
        """The numbers of the first candidate: the others hang together in the same way."""
        compared = view_of(problem).compared
        first = next(iter(problem.fields.choices))
        return (f"{first} {compared.first}", f"{first} {compared.second}")

    def smooth(self, problem: Problem[WhichIsLargerFields]) -> Mapping[str, AnswerValue]:
        """What is compared, for the first candidate: a name has no size to watch."""
        view = view_of(problem)
        one = view.candidates[0]
        by = 1 / one.second.base if view.compared.is_rate else one.second.base
        return {problem.finds[0]: Amount(one.first.base * by)}

    def reason(self, problem: Problem[WhichIsLargerFields]) -> Rich | None:
        """Twice of both is the same rate; twice of one is twice the product."""
        return _reason(view_of(problem))

    def figure(
        self, problem: Problem[WhichIsLargerFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A bar a candidate: its equal groups, or the parts of its mixture."""
        return _figure(view_of(problem))


def _check_names(candidate: str, amounts: Mapping[str, Amount], names: tuple[str, ...]) -> None:
    for name in amounts:
        one_of(name, names)
    missing = [name for name in names if name not in amounts]
    if missing:
        raise AmountError(
            f"'{candidate}' has no '{missing[0]}'", "give the same two numbers for every choice"
        )


def _check_signs(compared: Compared, choices: tuple[Mapping[str, Amount], ...]) -> None:
    """Raises AmountError where an amount cannot stand where `compare` puts it."""
    if compared.is_rate:
        for amounts in choices:
            if compared.word == "to":
                check_alike(amounts[compared.first], amounts[compared.second])
        return
    for amounts in choices:
        first = amounts[compared.first].unit.dimension
        if first not in (Dimension.COUNT, Dimension.NUMBER, Dimension.PERCENT):
            raise AmountError(
                f"'{compared.first}' is a measure, so nothing can be taken so many times",
                f"write compare: {compared.second} {SIGNS[compared.word]} {compared.first}",
            )


def _beats(view: View, one: Candidate, other: Candidate) -> bool:
    """True where `one` is at least as good an answer, without any division."""
    if view.compared.is_rate:
        mine, theirs = one.first.base * other.second.base, other.first.base * one.second.base
    else:
        mine, theirs = one.first.base * one.second.base, other.first.base * other.second.base
    return mine >= theirs if view.wants_most else mine <= theirs


def _reason(view: View) -> Rich:
    one, compared = view.candidates[0], view.compared
    told = [view.problem.given(f"{one.name} {n}") for n in (compared.first, compared.second)]
    doubled = [each.like(2 * each.value) for each in told]
    if compared.is_rate:
        return say(
            f"{{new}} would be the same {'mixture' if compared.word == 'to' else 'rate'} as "
            "{old}: twice as much of both changes nothing.",
            old=view.pair(*told),
            new=view.pair(*doubled),
        )
    made = Amount(one.first.base * one.second.value, one.second.unit)
    twice = Amount(2 * made.value, made.unit)
    if compared.word == "of":
        return say(
            "With {new} instead of {old} the part would double too, from {made} to {twice}.",
            new=view.second(doubled[1]), old=view.second(told[1]),
            made=view.second(made), twice=view.second(twice),
        )  # fmt: skip
    return say(
        "With {new} instead of {old} there would be twice as much, {twice} instead of {made}.",
        new=view.first(doubled[0]), old=view.first(told[0]),
        made=view.second(made), twice=view.second(twice),
    )  # fmt: skip


def _figure(view: View) -> BarModel | None:
    if view.compared.word == "to":
        return _mixtures(view)
    counts = [each.first.value for each in view.candidates]
    if view.compared.word != "×" or max(counts) > _MOST_PARTS:
        return None
    if any(count.denominator != 1 for count in counts):
        return None
    bars, braces = [], []
    for index, each in enumerate(view.candidates):
        part = Part(each.second.base, Mark((write(each.second),)))
        bars.append(Bar(each.name, (part,) * int(each.first.value)))
        made = view.second(each.second.like(each.first.value * each.second.value))
        braces.append(
            Brace(index, Mark(made, False, True), 0, int(each.first.value) - 1, below=index > 0)
        )
    return BarModel(tuple(bars), tuple(braces))


def _mixtures(view: View) -> BarModel | None:
    """As many equal parts as the story tells, those of the first kind shaded."""
    numbers = [(each.first.value, each.second.value) for each in view.candidates]
    if any(n.denominator != 1 for pair in numbers for n in pair):
        return None
    if max(x + y for x, y in numbers) > _MOST_PARTS:
        return None
    shaded, plain = Part(Fraction(1), shaded=True), Part(Fraction(1))
    bars, braces = [], []
    for index, (each, (x, y)) in enumerate(zip(view.candidates, numbers, strict=True)):
        bars.append(Bar(each.name, (shaded,) * int(x) + (plain,) * int(y)))
        told = (Mark(view.first(each.first)), Mark(view.second(each.second)))
        braces.append(Brace(index, told[0], 0, int(x) - 1, below=index > 0))
        braces.append(Brace(index, told[1], int(x), int(x + y) - 1, below=index > 0))
    return BarModel(tuple(bars), tuple(braces))
