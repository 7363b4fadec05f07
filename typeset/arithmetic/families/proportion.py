"""Proportion: amounts that grow in step, as in a recipe, a price by length, or a scale."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from math import ceil, floor

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.checks import told_after
from typeset.arithmetic.equations import equation, over, part_of, times
from typeset.arithmetic.families.pair_rows import Row, RowWriter, common_chunk, in_step
from typeset.arithmetic.families.pairs import (
    WANTED,
    Pair,
    PairFields,
    build_pair,
    pair_of,
    plain_name,
    working_of,
)
from typeset.arithmetic.families.proportion_mistakes import proportion_mistakes
from typeset.arithmetic.family import Family
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.phrases import bare, is_sensible, the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.writing import write

# More rows than this nobody writes out, and more parts nobody draws.
_MOST_ROWS = 6
_MOST_PARTS = 12
# A near multiple saves work only where few whole amounts and one simple piece make it up.
_MOST_MULTIPLES = 12
_MOST_PIECES = 10
# The relation across is simple where its parts are halves or quarters at most.
_SIMPLE_UNDER = 4


class Proportion(Family[PairFields]):
    """The amounts that go together are always in the same ratio."""

    name = "proportion"
    fields_model = PairFields

    def build(self, fields: PairFields) -> Problem[PairFields]:
        """The problem; several amounts may be asked for, as in a recipe."""
        return build_pair(self.name, fields)

    def relation(self, problem: Problem[PairFields]) -> Mapping[str, AnswerValue]:
        """other = rate × known, and other as wanted = rate × wanted, in base units."""
        base = next(iter(problem.fields.wanted))
        known, wanted = problem.given(base).base, problem.given(WANTED).base
        answers: dict[str, AnswerValue] = {}
        for name in problem.finds:
            rate = Linear({"rate": known}, problem.given(name).base)
            found = solve_linear([rate, Linear({"other": 1, "rate": -wanted})])["other"]
            unit = problem.units[name]
            answers[name] = Amount(unit.of_base(found), unit, _form(problem.given(name)))
        return answers

    def strategies(self, problem: Problem[PairFields]) -> Iterator[Working]:
        """Every way that these amounts allow without cutting what cannot be cut."""
        pair = pair_of(problem)
        found = [each for way in _WAYS for each in way(pair)] or [_in_step_anyhow(pair)]
        if len(found) == 1:
            found += _second_way(pair)
        yield from found
        if len({each.strategy for each in found}) == 1:
            yield told_after(_checked(pair), found[0])

    def mistakes(self, problem: Problem[PairFields]) -> Iterator[MistakenWorking]:
        """Adding, building up wrongly, doubling what is not double, and the like."""
        yield from proportion_mistakes(pair_of(problem))

    def probed(self, problem: Problem[PairFields]) -> tuple[str, ...]:
        """What is wanted tells most; then the amounts that go together."""
        return (WANTED, *problem.fields.wanted, problem.finds[0])

    def figure(
        self, problem: Problem[PairFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """Two bars of equal parts, each part the common chunk."""
        return _bar_model(pair_of(problem), answers)


def _form(amount: Amount) -> Form:
    """An answer is written as the story writes its like: halves as fractions, hours in minutes."""
    kept = (Form.FRACTION, Form.DECIMAL, Form.COMPOUND)
    return amount.form if amount.form in kept else Form.AUTO


def _in_step_anyhow(pair: Pair) -> Working:
    """By the common chunk even where a part of a thing is cut on the way."""
    writer = RowWriter(pair)
    return writer.working("Through a common chunk", in_step(writer))


def _checked(pair: Pair) -> Working:
    """From the amounts that were found back to those of the story."""
    found = {n: a.like(a.value * pair.factor) for n, a in pair.others.items()}
    back = RowWriter(Pair(pair.problem, pair.base, pair.wanted, pair.known, found))
    in_step(back)
    begin = step("Start from {wanted} and go back.", wanted=pair.wanted)
    end = step("Those are the amounts of the story, so the answer is right.")
    return working_of(pair, "Checking backwards", [begin, *back.steps, end], found)


def _sensible(writer: RowWriter, strategy: str, row: Row) -> Iterator[Working]:
    if writer.all_sensible:
        yield writer.working(strategy, row)


def _scaling(pair: Pair) -> Iterator[Working]:
    """Where one amount is a whole number of times the other."""
    writer = RowWriter(pair)
    if pair.factor.denominator == 1:
        yield from _sensible(writer, "Scaling up", in_step(writer))
    elif pair.factor.numerator == 1:
        yield from _sensible(writer, "Scaling down", in_step(writer))


def _through_chunk(pair: Pair) -> Iterator[Working]:
    """Down to an amount that fits into both, then up. A smaller chunk may be handier."""
    largest = common_chunk(pair.known.value, pair.wanted.value)
    if largest in (pair.known.value, pair.wanted.value):
        return
    for pieces in range(1, _MOST_ROWS + 1):
        chunk = largest / pieces
        if chunk == 1 or (largest.denominator == 1 and chunk.denominator != 1):
            continue
        writer = RowWriter(pair)
        row = writer.divide(writer.start(), pair.known.value / chunk)
        row = writer.multiply(row, pair.wanted.value / chunk)
        yield from _sensible(writer, "Through a common chunk", row)


def _through_one(pair: Pair) -> Iterator[Working]:
    if 1 in (pair.known.value, pair.wanted.value) or not pair.known.is_whole:
        return
    writer = RowWriter(pair)
    row = writer.divide(writer.start(), pair.known.value)
    yield from _sensible(writer, "Through one", writer.multiply(row, pair.wanted.value))


def _near_multiples(pair: Pair) -> Iterator[Working]:
    """A whole number of times a little too much, and that taken off; or too little, and added."""
    if 1 in (pair.factor.denominator, pair.factor.numerator) or pair.factor > _MOST_MULTIPLES:
        return
    if pair.factor < 1:
        yield from _near_multiple(pair, 1, "Taking off a part")
        return
    yield from _near_multiple(pair, ceil(pair.factor), "A little too much, then take off")
    whole_times = floor(pair.factor)
    named = "Adding on a part" if whole_times == 1 else "A little too little, then add on"
    yield from _near_multiple(pair, whole_times, named)


def _second_way(pair: Pair) -> Iterator[Working]:
    """A part added on or taken off, where it is longer than the one way that there is."""
    if pair.factor.denominator == 1:
        return
    if pair.factor < 1:
        yield from _near_multiple(pair, 1, "Taking off a part", only_short=False)
    elif pair.factor < 2:
        yield from _near_multiple(pair, 1, "Adding on a part", only_short=False)
    else:
        named = "A little too little, then add on"
        yield from _near_multiple(pair, floor(pair.factor), named, only_short=False)


def _near_multiple(
    pair: Pair, whole_times: int, strategy: str, only_short: bool = True
) -> Iterator[Working]:
    rest = pair.wanted.value - whole_times * pair.known.value
    piece = common_chunk(pair.known.value, abs(rest))
    pieces_in_rest = abs(rest) / piece
    # Several pieces are worth their steps only where nothing else is to be done.
    is_long = pieces_in_rest > 1 and (whole_times > 1 or 4 * abs(rest) > pair.known.value)
    if only_short and (is_long or pair.known.value / piece > _MOST_PIECES * pieces_in_rest):
        return
    writer = RowWriter(pair)
    near = writer.start()
    if whole_times > 1:
        near = writer.multiply(near, whole_times)
    small = writer.divide(writer.start(), pair.known.value / piece)
    if pieces_in_rest > 1:
        small = writer.multiply(small, pieces_in_rest)
    row = writer.take_off(near, small) if rest < 0 else writer.add(near, small)
    yield from _sensible(writer, strategy, row)


def _doubling_and_halving(pair: Pair) -> Iterator[Working]:
    """Double and double again, halve and halve again, or ten times and half of that."""
    writer, up, down = RowWriter(pair), pair.factor.numerator, pair.factor.denominator
    row = writer.start()
    if (up, down) == (5, 1):
        row = writer.divide(writer.multiply(row, 10), 2)
    elif down == 1 and up > 2 and _is_power_of_two(up):
        for _ in range(up.bit_length() - 1):
            row = writer.multiply(row, 2)
    elif up == 1 and down > 2 and _is_power_of_two(down):
        for _ in range(down.bit_length() - 1):
            row = writer.divide(row, 2)
    else:
        return
    yield from _sensible(writer, "Doubling and halving", row)


def _is_power_of_two(count: int) -> bool:
    return count & (count - 1) == 0


def _row_by_row(pair: Pair) -> Iterator[Working]:
    """Row after row, adding what the story gives each time."""
    if pair.factor.denominator != 1 or not 2 < pair.factor <= _MOST_ROWS:
        return
    writer = RowWriter(pair)
    row = writer.start()
    for _ in range(int(pair.factor) - 1):
        row = writer.add(row, writer.start())
    yield from _sensible(writer, "Building up row by row", row)


def _as_fraction(pair: Pair) -> Iterator[Working]:
    """Where less is wanted: what fraction it is, and that fraction of the rest."""
    if pair.factor >= 1 or pair.factor.denominator > _MOST_PARTS:
        return
    share = Amount(pair.factor, form=Form.FRACTION)
    text = f"{title(pair.base)}: {{wanted}} is {{share}} of {{known}}."
    first = equation(part_of(share, pair.known), pair.wanted)
    steps = [step(text, first, wanted=pair.wanted, share=share, known=pair.known)]
    reached = {name: a.like(a.value * share.value) for name, a in pair.others.items()}
    for name, amount in pair.others.items():
        result = equation(part_of(share, amount), reached[name])
        steps.append(step(f"{title(name)}: take {{share}} of it too.", result, share=share))
    if all(is_sensible(each, pair.problem.fields.may_be_cut) for each in reached.values()):
        yield working_of(pair, "As a fraction", steps, reached)


def _across(pair: Pair) -> Iterator[Working]:
    """From the one amount to the other, where that is a simple number of times."""
    steps: list[Step] = []
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        ratio = amount.value / pair.known.value
        divides = ratio.numerator == 1 and ratio.denominator > 1
        if not divides and ratio.denominator > _SIMPLE_UNDER and pair.known.value != 1:
            return
        reached[name] = amount.like(pair.wanted.value * ratio)
        steps += _across_steps(pair, name, ratio, reached[name], divides)
    if all(is_sensible(each, pair.problem.fields.may_be_cut) for each in reached.values()):
        yield working_of(pair, "Across from one amount to the other", steps, reached)


def _across_steps(
    pair: Pair, name: str, ratio: Fraction, result: Amount, divides: bool
) -> list[Step]:
    factor = bare(pair.others[name].like(1 / ratio if divides else ratio))
    sign = over if divides else times
    text = (
        f"Look across from {pair.base} to {name}: divide by {{factor}}."
        if divides
        else f"Look across from {pair.base} to {name}: multiply by {{factor}}."
    )
    first = equation(sign(bare(pair.known), factor), bare(pair.others[name]))
    then = equation(sign(bare(pair.wanted), factor), bare(result))
    return [
        step(text, first, factor=factor),
        step(
            f"Do the same with {{wanted}} to find {the(name)}: {{result}}.",
            then,
            wanted=pair.wanted,
            result=result,
        ),
    ]


_WAYS: tuple[Callable[[Pair], Iterator[Working]], ...] = (
    _scaling,
    _through_chunk,
    _through_one,
    _near_multiples,
    _doubling_and_halving,
    _row_by_row,
    _as_fraction,
    _across,
)


def _bar_model(pair: Pair, answers: Mapping[str, AnswerValue]) -> BarModel | None:
    """Each part is the common chunk with what goes with it."""
    chunk = common_chunk(pair.known.value, pair.wanted.value)
    counts = [amount.value / chunk for amount in (pair.known, pair.wanted)]
    name = pair.problem.finds[0]
    answer = answers[name]
    if len(pair.others) > 1 or max(counts) > _MOST_PARTS or not isinstance(answer, Amount):
        return None
    each = pair.others[name].like(pair.others[name].value / counts[0])
    if not is_sensible(each, pair.problem.fields.may_be_cut):
        return None
    part = Part(Fraction(1), Mark((write(each),), is_given=False))
    known, wanted = (int(count) for count in counts)
    bars = (
        Bar(plain_name(pair.known, pair.base), (part,) * known),
        Bar(plain_name(pair.wanted, pair.base), (part,) * wanted),
    )
    braces = (
        Brace(0, Mark((write(pair.others[name]),)), 0, known - 1),
        Brace(1, Mark((write(answer),), is_given=False), 0, wanted - 1, below=True),
    )
    return BarModel(bars, braces, reads_as=_reads_as(pair, name, known, wanted))


def _reads_as(pair: Pair, name: str, known: int, wanted: int) -> str:
    return (
        f"Two bars of equal parts: {plain_name(pair.known, pair.base)} in {known}, "
        f"{plain_name(pair.wanted, pair.base)} in {wanted}. The first bar stands for "
        f"{the(name)} of {plain_name(pair.others[name], name)}."
    )
