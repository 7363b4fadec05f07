"""Mistakes with a comparison by 'times as many'."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.times_view import DIFFERENCE, LARGER, SMALLER, TIMES, TOTAL, View
from typeset.arithmetic.methods import in_unit, is_counted, without_noun
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount
from typeset.quantities.writing import decimal


def times_mistakes(view: View) -> Iterator[MistakenWorking]:
    """'Times' read as 'more', the comparison turned round, the last step left out."""
    yield from _read_as_more(view)
    yield from _reversed(view)
    yield from _left_out(view)


def _mistake(
    view: View, name: str, sentence: str, result: tuple[Equation, Amount]
) -> MistakenWorking:
    asked = view.problem.finds[0]
    written, value = result
    answer = value if asked == TIMES else in_unit(value, view.problem.units[asked])
    return MistakenWorking(name, (step(sentence, written, answer=value),), {asked: answer})


def _read_as_more(view: View) -> Iterator[MistakenWorking]:
    name, givens = "times as many taken as more than", view.problem.givens
    asked = view.problem.finds[0]
    if asked == LARGER:
        value = view.part(view.amount(SMALLER).value + givens[TIMES].value)
        sum_ = plus(without_noun(view.amount(SMALLER)), view.part(givens[TIMES].value))
    elif asked == SMALLER:
        value = view.part(view.amount(LARGER).value - givens[TIMES].value)
        sum_ = minus(without_noun(view.amount(LARGER)), view.part(givens[TIMES].value))
    elif asked == TIMES:
        value = Amount(view.amount(LARGER).value - view.amount(SMALLER).value)
        sum_ = minus(Amount(view.amount(LARGER).value), Amount(view.amount(SMALLER).value))
    else:
        return
    words = {
        LARGER: "That many more: {answer}.",
        SMALLER: "That many fewer: {answer}.",
        TIMES: "How many more is it? {answer}.",
    }
    yield _mistake(view, name, words[asked], (equation(sum_, value), value))


def _reversed(view: View) -> Iterator[MistakenWorking]:
    asked, count = view.problem.finds[0], view.problem.givens.get(TIMES)
    if count is None or asked not in (LARGER, SMALLER):
        return
    factor = Amount(count.value)
    if asked == LARGER:
        known = view.amount(SMALLER)
        value = view.part(known.value / count.value)
        if not is_counted(known) and decimal(value.value) is None:
            return
        yield _mistake(
            view, "reversal", "Share it into that many parts: {answer}.",
            (equation(over(known, factor), value), value),
        )  # fmt: skip
        return
    known = view.amount(LARGER)
    value = view.part(known.value * count.value)
    yield _mistake(
        view, "reversal", "It says 'times', so multiply: {answer}.",
        (equation(times(factor, known), value), value),
    )  # fmt: skip


def _left_out(view: View) -> Iterator[MistakenWorking]:
    asked, givens = view.problem.finds[0], view.problem.givens
    if asked not in (DIFFERENCE, TOTAL) or TIMES not in givens:
        return
    factor = Amount(givens[TIMES].value)
    if LARGER in givens:
        known, value = view.amount(LARGER), view.amount(SMALLER)
        worked = equation(over(known, factor), value)
    else:
        known, value = view.amount(SMALLER), view.amount(LARGER)
        worked = equation(times(factor, known), value)
    yield _mistake(view, "step left out", "That makes {answer}.", (worked, value))
