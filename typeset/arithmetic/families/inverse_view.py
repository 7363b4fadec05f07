"""Inverse proportion as a table: what is done to the one row is undone to the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.pair_rows import common_chunk
from typeset.arithmetic.families.pairs import Pair
from typeset.arithmetic.figures import Jump, Mark, RatioTable
from typeset.arithmetic.phrases import is_sensible
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, words
from typeset.quantities.writing import DIVIDE, NO_BREAK, TIMES, write, write_plain


def opposite_table(pair: Pair, answers: Mapping[str, AnswerValue]) -> RatioTable | None:
    """Columns from the known amount to the wanted one, through their common chunk where
    neither goes into the other; arrows over the table for the first row, and the opposite ones
    under it for the others. None where a part of a thing would stand in the middle."""
    chunk = common_chunk(pair.known.value, pair.wanted.value)
    values = [pair.known.value, pair.wanted.value]
    if chunk not in values:
        values.insert(1, chunk)
    base = [pair.known.like(value) for value in values]
    rows = [tuple(_base_mark(amount, at, len(base)) for at, amount in enumerate(base))]
    for name, amount in pair.others.items():
        between = [amount.like(amount.value * pair.known.value / value) for value in values[1:-1]]
        cut = pair.problem.fields.may_be_cut
        answer = answers[name]
        if not isinstance(answer, Amount) or not all(is_sensible(each, cut) for each in between):
            return None
        asked = Mark((write(answer),), is_given=False)
        middle = (_hidden((write(each),)) for each in between)
        rows.append((Mark((write(amount),)), *middle, asked))
    return RatioTable((pair.base, *pair.others), tuple(rows), tuple(_jumps(values)))


def _base_mark(amount: Amount, at: int, count: int) -> Mark:
    text = (write(amount),)
    return Mark(text) if at in (0, count - 1) else _hidden(text)


def _hidden(text: Rich) -> Mark:
    return Mark(text, is_given=False, hidden=True)


def _jumps(values: list[Fraction]) -> Iterator[Jump]:
    """One arrow over and one under the table for every step. The upper one between two told
    amounts may be shown as a first step."""
    for at, (before, after) in enumerate(pairwise(values)):
        up, down = _sign(after / before), _sign(before / after)
        is_told = len(values) == 2
        yield Jump(at, at + 1, Mark(words(up), is_given=is_told, hidden=True))
        yield Jump(at, at + 1, Mark(words(down), is_given=False, hidden=True), below=True)


def _sign(factor: Fraction) -> str:
    """'× 3' or '÷ 3'; one of the two is always whole."""
    if factor.denominator == 1:
        return f"{TIMES}{NO_BREAK}{write_plain(Amount(factor))}"
    return f"{DIVIDE}{NO_BREAK}{write_plain(Amount(1 / factor))}"
