"""Fraction of a quantity: forwards to the part, backwards to the whole, or the fraction itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.fraction_asked import asked_mistakes, asked_ways
from typeset.arithmetic.families.fraction_mistakes import cut_mistakes
from typeset.arithmetic.families.fraction_view import (
    AMOUNTS,
    FRACTION,
    PART,
    REST,
    WHOLE,
    Cut,
    cut_of,
)
from typeset.arithmetic.families.fraction_ways import cut_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import NUMBER, PERCENT, Dimension, Unit
from typeset.quantities.writing import write, write_plain

_COUNTS = {Dimension.NUMBER, Dimension.COUNT}
# More equal parts than this nobody draws; a percentage is then two unequal parts.
_MOST_PARTS = 12


class FractionFields(FamilyFields):
    """`fraction: 3/5` or `15%`, one of whole, part and rest; or two of these and no fraction."""

    fraction: PositiveAmount | None = None
    whole: PositiveAmount | None = None
    part: PositiveAmount | None = None
    rest: PositiveAmount | None = None
    find: str | list[str]


class FractionOfQuantity(Family[FractionFields]):
    """part = fraction of whole, and part + rest = whole."""

    name = "fraction of a quantity"
    fields_model = FractionFields

    def build(self, fields: FractionFields) -> Problem[FractionFields]:
        """The problem; two things are given, and others asked for."""
        givens = _givens(fields)
        finds = as_list(fields.find)
        for name in finds:
            one_of(name, (FRACTION, *AMOUNTS))
            if name in givens:
                raise AmountError(f"'{name}' is both given and asked for", "leave one out")
        if FRACTION in finds and len(finds) > 1:
            raise AmountError("the fraction is asked for alone", "ask for one thing")
        units = {name: _unit(name, givens, fields.answer_in) for name in finds}
        return Problem(self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[FractionFields]) -> Mapping[str, AnswerValue]:
        """part + rest = whole; part = fraction × whole, in base units."""
        base = {name: amount.base for name, amount in problem.givens.items()}
        rules = [Linear({PART: 1, REST: 1, WHOLE: -1})]
        rules += [Linear({name: 1}, base[name]) for name in AMOUNTS if name in base]
        if FRACTION in base:
            rules.append(Linear({PART: 1, WHOLE: -base[FRACTION]}))
        found = solve_linear(rules)
        if FRACTION in problem.finds:
            rule = Linear({FRACTION: found[WHOLE]}, found[PART])
            value = solve_linear([rule])[FRACTION]
            return {FRACTION: _fraction(value, problem.units[FRACTION])}
        units = problem.units
        return {
            name: problem.answer(name, units[name].of_base(found[name])) for name in problem.finds
        }

    def strategies(self, problem: Problem[FractionFields]) -> Iterator[Working]:
        """Equal parts, tenths and hundredths, and a check; or the comparison of two amounts."""
        if FRACTION in problem.finds:
            yield from asked_ways(problem)
        else:
            yield from cut_ways(cut_of(problem))

    def mistakes(self, problem: Problem[FractionFields]) -> Iterator[MistakenWorking]:
        """The fraction of the wrong whole, turned round, taken as an amount, or half done."""
        if FRACTION in problem.finds:
            yield from asked_mistakes(problem)
        else:
            yield from cut_mistakes(cut_of(problem))

    def probed(self, problem: Problem[FractionFields]) -> tuple[str, ...]:
        """The fraction is the rule of the story; the amounts are what could be others."""
        return tuple(name for name in problem.givens if name != FRACTION)

    def figure(
        self, problem: Problem[FractionFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """One bar: equal parts where they are few, else the part and the rest."""
        if FRACTION in problem.finds:
            return None
        return _bar_model(cut_of(problem))


def _givens(fields: FractionFields) -> dict[str, Amount]:
    typed = {
        FRACTION: fields.fraction,
        WHOLE: fields.whole,
        PART: fields.part,
        REST: fields.rest,
    }
    givens = {name: amount for name, amount in typed.items() if amount is not None}
    if len(givens) != 2:
        raise AmountError(
            f"{len(givens)} of fraction, whole, part and rest are given", "give exactly two of them"
        )
    if FRACTION in givens:
        _check_fraction(givens[FRACTION])
    amounts = [givens[name] for name in AMOUNTS if name in givens]
    kinds = {amount.unit.dimension for amount in amounts}
    if Dimension.CLOCK in kinds:
        raise AmountError("a time of day has no fraction", "give a length of time")
    if len(kinds) > 1 and not kinds <= _COUNTS:
        raise AmountError("the two amounts are not of one kind", "give both in like units")
    if WHOLE in givens and len(amounts) == 2 and amounts[1].base >= amounts[0].base:
        raise AmountError(
            f"{write_plain(amounts[1])} is not less than the whole, {write_plain(amounts[0])}",
            "change one of them",
        )
    return givens


def _check_fraction(fraction: Amount) -> None:
    if fraction.unit.dimension not in (Dimension.NUMBER, Dimension.PERCENT):
        raise AmountError(f"{write_plain(fraction)} is not a fraction", "write such as 3/5 or 15%")
    if not 0 < fraction.base < 1:
        raise AmountError(
            f"{write_plain(fraction)} is not a part of a whole", "write a fraction less than 1"
        )


def _unit(name: str, givens: Mapping[str, Amount], answer_in: Unit | None) -> Unit:
    known = next(givens[each].unit for each in AMOUNTS if each in givens)
    if name == FRACTION:
        if answer_in not in (None, PERCENT):
            raise AmountError("a fraction is a number or a percentage", "write 'answer in: %'")
        return answer_in or NUMBER
    if answer_in is None:
        return known
    kinds = {known.dimension, answer_in.dimension}
    if len(kinds) > 1 and not kinds <= _COUNTS:
        raise AmountError(f"the {name} is not measured in {answer_in.plural}", "change 'answer in'")
    return answer_in


def _fraction(value: Fraction, unit: Unit) -> Amount:
    if unit == PERCENT:
        return Amount(value * 100, PERCENT)
    return Amount(value, NUMBER, Form.FRACTION)


def _bar_model(cut: Cut) -> BarModel:
    if cut.pieces <= _MOST_PARTS:
        return _equal_parts(cut)
    shown = tuple(
        Part(cut.share(name), _mark(cut, name), shaded=name == PART) for name in (PART, REST)
    )
    whole = Brace(0, _mark(cut, WHOLE), 0, 1)
    reads_as = f"One bar in two parts, {write_plain(cut.written_share(PART))} and the rest."
    return BarModel((Bar("", shown),), (whole,), reads_as=reads_as)


def _equal_parts(cut: Cut) -> BarModel:
    """The part shaded; braces for what is given and what is asked."""
    one = Mark((write(cut.like(cut.value(WHOLE).value / cut.pieces)),), is_given=False)
    taken = int(cut.parts(PART))
    shown = tuple(Part(Fraction(1), one, shaded=index < taken) for index in range(cut.pieces))
    spans = {WHOLE: (0, cut.pieces - 1), PART: (0, taken - 1), REST: (taken, cut.pieces - 1)}
    braces = tuple(
        Brace(0, _mark(cut, name), *spans[name], below=name != WHOLE)
        for name in AMOUNTS
        if name == cut.known or name in cut.problem.finds
    )
    reads_as = f"One bar in {cut.pieces} equal parts, {taken} of them shaded."
    return BarModel((Bar("", shown),), braces, reads_as=reads_as)


def _mark(cut: Cut, name: str) -> Mark:
    return Mark((write(cut.value(name)),), is_given=name == cut.known)
