"""Ratio: so many of this for so many of that, with a part, the whole or the difference known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, over, part_of, times
from typeset.arithmetic.families.ratio_mistakes import mistakes_with_ratios
from typeset.arithmetic.families.ratio_view import (
    DIFFERENCE,
    WHOLE,
    RatioView,
    answers_of,
    counting_parts,
    given_name,
    side_title,
    sides_from_one,
    told_side,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.names import as_list, listed, one_of, so_many
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import words
from typeset.quantities.nouns import counted
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import write

# More rows than this nobody writes out to build a ratio up.
_MOST_ROWS = 6


class RatioFields(FamilyFields):
    """`parts: {gulls: 5, terns: 2}`, `known: {difference: 36}`, `find: gulls`."""

    parts: dict[str, WholeAmount]
    known: dict[str, PositiveAmount]
    find: str | list[str]


class Ratio(Family[RatioFields]):
    """One part repeats: each side is its number of parts times the size of one part."""

    name = "ratio"
    fields_model = RatioFields

    def build(self, fields: RatioFields) -> Problem[RatioFields]:
        """The problem; names in `known` and `find` are sides, 'whole' or 'difference'."""
        known, finds = _check_names(fields)
        amount = fields.known[known]
        givens = MappingProxyType({**fields.parts, given_name(known): amount})
        units = MappingProxyType({asked: _unit(asked, known, amount, fields) for asked in finds})
        return Problem(self.name, givens, finds, units, fields)

    def relation(self, problem: Problem[RatioFields]) -> Mapping[str, AnswerValue]:
        """side = parts × one part; whole = sum of the sides; difference = longer − shorter."""
        parts = {name: problem.given(name).value for name in problem.fields.parts}
        known = next(iter(problem.fields.known))
        equations = [Linear({name: 1, "one": -count}) for name, count in parts.items()]
        equations.append(Linear({WHOLE: 1, **dict.fromkeys(parts, -1)}))
        if len(parts) == 2:
            fewer, more = sorted(parts, key=lambda name: parts[name])
            equations.append(Linear({DIFFERENCE: 1, more: -1, fewer: 1}))
        equations.append(Linear({known: 1}, problem.given(given_name(known)).value))
        values = solve_linear(equations)
        return {asked: problem.answer(asked, values[asked]) for asked in problem.finds}

    def strategies(self, problem: Problem[RatioFields]) -> Iterator[Working]:
        """One part first; the whole row scaled; a fraction of what is known; row by row."""
        view = RatioView(problem)
        yield _one_part_first(view)
        yield _scaled_row(view)
        yield from _fraction_of_known(view)
        if view.one.denominator == 1 and 1 < view.one <= _MOST_ROWS:
            yield _built_up(view)

    def mistakes(self, problem: Problem[RatioFields]) -> Iterator[MistakenWorking]:
        """The known amount taken for something else, the sides turned round, or adding."""
        yield from mistakes_with_ratios(RatioView(problem))

    def probed(self, problem: Problem[RatioFields]) -> tuple[str, ...]:
        """The ratio is the rule of the story; the known amount is what could be another."""
        return (given_name(next(iter(problem.fields.known))),)

    def figure(self, problem: Problem[RatioFields], answers: Mapping[str, AnswerValue]) -> BarModel:
        """A bar a side, in equal parts."""
        return _bar_model(RatioView(problem), answers)


def _check_names(fields: RatioFields) -> tuple[str, tuple[str, ...]]:
    sides = (*fields.parts, WHOLE, DIFFERENCE)
    if len(fields.parts) < 2:
        raise AmountError("a ratio has at least two parts", "write such as {gulls: 5, terns: 2}")
    if len(fields.known) != 1:
        raise AmountError("exactly one amount is known", f"give one of {listed(sides)}")
    known, finds = next(iter(fields.known)), as_list(fields.find)
    for name in (known, *finds):
        one_of(name, sides)
    if known in finds:
        raise AmountError(f"'{known}' is both known and asked for", "ask for another side")
    if DIFFERENCE in (known, *finds):
        counts = {amount.value for amount in fields.parts.values()}
        if len(fields.parts) != 2 or len(counts) != 2:
            raise AmountError(
                "a difference needs two unequal sides", "change parts, or give the whole"
            )
    return known, finds


def _unit(asked: str, known: str, amount: Amount, fields: RatioFields) -> Unit:
    """A measure stays a measure; counted sides are called by their own names."""
    if fields.answer_in is not None:
        return fields.answer_in
    if amount.unit.dimension not in (Dimension.COUNT, Dimension.NUMBER):
        return amount.unit
    if asked in fields.parts:
        return counted(asked, False)
    return amount.unit if known in (WHOLE, DIFFERENCE) else NUMBER


def _one_part_first(view: RatioView) -> Working:
    """What is known, shared among its parts; nothing to share where it is one part."""
    count = view.parts_of(view.known)
    share = step(
        "Share it among them to find one part.",
        equation(over(view.part(view.amount.value), Amount(count)), view.part(view.one)),
    )
    first = (counting_parts(view),) if count == 1 else (counting_parts(view), share)
    steps = (*first, *sides_from_one(view, view.one))
    return Working("One part first", steps, answers_of(view, view.one))


def _scaled_row(view: RatioView) -> Working:
    """The ratio taken as a row of small numbers, and the whole row scaled."""
    count = view.parts_of(view.known)
    factor = Amount(view.one)
    steps = [
        counting_parts(view),
        step(
            "How many times as much is that? {factor} times.",
            equation(over(view.amount, view.part(count)), factor),
            factor=factor,
        ),
    ]
    for asked in view.problem.finds:
        scaled = view.problem.answer(asked, view.parts_of(asked) * view.one)
        steps.append(
            step(
                f"{side_title(asked)}: scale {{n}} by {{factor}}, so {{scaled}}.",
                equation(times(view.part(view.parts_of(asked)), factor), view.part(scaled.value)),
                n=view.part(view.parts_of(asked)),
                factor=factor,
                scaled=scaled,
            )
        )
    return Working("Scaling the whole row", tuple(steps), answers_of(view, view.one))


def _fraction_of_known(view: RatioView) -> Iterator[Working]:
    """Where every side asked for is a proper fraction of what is known."""
    count = view.parts_of(view.known)
    if any(view.parts_of(asked) >= count for asked in view.problem.finds):
        return
    answers: dict[str, AnswerValue] = {}
    steps = [counting_parts(view)]
    for asked in view.problem.finds:
        share = Amount(view.parts_of(asked) / count, form=Form.FRACTION)
        result = view.problem.answer(asked, share.value * view.amount.value)
        answers[asked] = result
        steps.append(
            step(
                f"{side_title(asked)}: {{n}} of {{m}}, so {{share}} of {{amount}}.",
                equation(part_of(share, view.part(view.amount.value)), view.part(result.value)),
                n=Amount(view.parts_of(asked)),
                m=so_many(count, "part"),
                share=share,
                amount=view.amount,
            )
        )
    yield Working("A fraction of what is known", tuple(steps), answers)


def _built_up(view: RatioView) -> Working:
    """Row after row of the ratio, until the known amount is reached."""
    rows = int(view.one)
    wanted = (view.known, *view.problem.finds)
    steps = []
    for row in range(1, rows + 1):
        told = [f"{told_side(side)} {view.parts_of(side) * row}" for side in wanted]
        first = view.parts_of(wanted[1])
        made = equation(times(Amount(Fraction(row)), view.part(first)), view.part(first * row))
        steps.append(step(f"{row} {'time' if row == 1 else 'times'}: {', '.join(told)}.", made))
    return Working("Building up row by row", tuple(steps), answers_of(view, Fraction(rows)))


def _bar_model(view: RatioView, answers: Mapping[str, AnswerValue]) -> BarModel:
    each = Mark((write(view.part(view.one)),), is_given=False, hidden=True)
    bars = tuple(
        Bar(
            side,
            tuple(
                Part(Fraction(1), each, shaded=index % 2 == 1)
                for _ in range(int(view.parts_of(side)))
            ),
        )
        for index, side in enumerate(view.sides)
    )
    braces: list[Brace] = []
    total: Mark | None = None
    for side in (view.known, *view.problem.finds):
        mark = _mark(view, side, answers)
        if side == WHOLE:
            total = mark
        elif side == DIFFERENCE:
            shorter, longer = sorted((0, 1), key=lambda i: len(bars[i].parts))
            braces.append(Brace(longer, mark, gap_to=shorter))
        else:
            bar = view.sides.index(side)
            braces.append(Brace(bar, mark, 0, len(bars[bar].parts) - 1, below=bar > 0))
    return BarModel(bars, tuple(braces), total)


def _mark(view: RatioView, side: str, answers: Mapping[str, AnswerValue]) -> Mark:
    if side == view.known:
        return Mark((write(view.amount),))
    answer = answers[side]
    assert isinstance(answer, Amount)
    return Mark((write(answer),) if answer.unit.plural else words(str(answer.value)), False)
