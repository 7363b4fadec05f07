"""Times as many: one amount is so many times the other; also their difference and total."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import Equation, equation, minus, over, plus, times
from typeset.arithmetic.families.times_mistakes import times_mistakes
from typeset.arithmetic.families.times_view import (
    DIFFERENCE,
    LARGER,
    SMALLER,
    TIMES,
    TOTAL,
    TimesAsManyFields,
    View,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import (
    Method,
    check_alike,
    conversion,
    in_unit,
    is_counted,
)
from typeset.arithmetic.multiplying import LOT, Lots, ways_to_multiply
from typeset.arithmetic.names import as_list
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, noun
from typeset.quantities.writing import write

_PART = noun("part", "parts")
_MOST_PARTS = 12


class TimesAsMany(Family[TimesAsManyFields]):
    """larger = times × smaller."""

    name = "times as many"
    fields_model = TimesAsManyFields

    def build(self, fields: TimesAsManyFields) -> Problem[TimesAsManyFields]:
        """The problem; what is not given is asked for unless `find` says otherwise."""
        all_three = {SMALLER: fields.smaller, TIMES: fields.times, LARGER: fields.larger}
        givens = {name: amount for name, amount in all_three.items() if amount is not None}
        if len(givens) != 2:
            raise AmountError(
                "two of smaller, times and larger are known", "give exactly two of them"
            )
        _check(givens)
        missing = next(name for name in all_three if name not in givens)
        finds = as_list(fields.find) if fields.find else (missing,)
        for name in finds:
            if name in givens:
                raise AmountError(f"'{name}' is both given and asked for", f"find {missing}")
        amounts = [amount for name, amount in givens.items() if name != TIMES]
        unit = fields.answer_in or amounts[0].unit
        in_unit(amounts[0], unit)
        units = {name: NUMBER if name == TIMES else unit for name in finds}
        return Problem(self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields)

    def relation(self, problem: Problem[TimesAsManyFields]) -> Mapping[str, AnswerValue]:
        """larger = times × smaller; difference = larger − smaller; total = larger + smaller."""
        base = {name: amount.base for name, amount in problem.givens.items()}
        equations = [Linear({name: 1}, value) for name, value in base.items() if name != TIMES]
        if TIMES in base:
            equations.append(Linear({LARGER: 1, SMALLER: -base[TIMES]}))
        else:
            equations.append(Linear({TIMES: base[SMALLER]}, base[LARGER]))
        equations.append(Linear({DIFFERENCE: 1, LARGER: -1, SMALLER: 1}))
        equations.append(Linear({TOTAL: 1, LARGER: -1, SMALLER: -1}))
        values = solve_linear(equations)
        return {
            name: problem.answer(name, values[name] / problem.units[name].per_base)
            for name in problem.finds
        }

    def strategies(self, problem: Problem[TimesAsManyFields]) -> Iterator[Working]:
        """Multiply, share or group; a difference or a total in parts or from both amounts."""
        view = View(problem)
        for method in _first_missing(view):
            yield _finished(view, method.after(*view.opening()))
        if problem.finds in ((DIFFERENCE,), (TOTAL,)) and TIMES in problem.givens:
            yield _in_parts(view)

    def mistakes(self, problem: Problem[TimesAsManyFields]) -> Iterator[MistakenWorking]:
        """'Times' read as 'more', the comparison turned round, the last step left out."""
        view = View(problem)
        if len(problem.finds) > 1:
            return
        yield from times_mistakes(view)

    def figure(
        self, problem: Problem[TimesAsManyFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A short bar, and a long one that it fits into so many times."""
        return _bar_model(View(problem), answers)


def _check(givens: Mapping[str, Amount]) -> None:
    if TIMES in givens:
        if not is_counted(givens[TIMES]):
            raise AmountError("'times' is a plain number", "write such as times: 4")
        if givens[TIMES].value <= 1:
            raise AmountError(
                "'times' is not more than 1, so the larger would not be larger",
                "write a number from 2 up, or exchange smaller and larger",
            )
        return
    check_alike(givens[SMALLER], givens[LARGER])
    if givens[LARGER].base <= givens[SMALLER].base:
        raise AmountError("the larger amount is not larger", "exchange smaller and larger")


def _first_missing(view: View) -> Iterator[Method]:
    """Ways to find the one of the three that is not given."""
    larger, smaller = title(view.named("larger")), title(view.named("smaller"))
    givens = view.problem.givens
    if LARGER not in givens:
        told = step(
            f"{larger}: {{times}} times {{size}}.", times=givens[TIMES], size=view.amount(SMALLER)
        )
        ways = ways_to_multiply(Lots(givens[TIMES].value, view.amount(SMALLER)))
    elif SMALLER not in givens:
        told = step(
            f"{larger}: {{times}} equal parts. {smaller}: one of them.", times=givens[TIMES]
        )
        ways = _sharing(view)
    elif TIMES not in view.problem.finds:
        # The difference and the total of two known amounts need no 'times'.
        yield Method("Both amounts", (), view.amount(LARGER))
        return
    else:
        told = step(
            "How many times does {size} fit into {whole}?",
            size=view.amount(SMALLER),
            whole=view.amount(LARGER),
        )
        ways = ways_to_divide(
            Division(view.amount(LARGER), view.amount(SMALLER).value, LOT, True, True)
        )
    for way in ways:
        yield way.after(told)


def _sharing(view: View) -> Iterator[Method]:
    count, whole = view.problem.given(TIMES).value, view.amount(LARGER)
    if count.denominator == 1:
        yield from ways_to_divide(Division(whole, count, _PART, False, exact=True))
        return
    # 2 1/2 times: 5 halves in the larger, 2 halves in the smaller.
    piece = view.part(whole.value / count.numerator)
    result = view.part(piece.value * count.denominator)
    steps = (
        step(
            "Cut the smaller into {n} pieces: the larger takes {m} of them, {piece} each.",
            equation(over(whole, Amount(Fraction(count.numerator))), piece),
            n=Amount(Fraction(count.denominator)),
            m=Amount(Fraction(count.numerator)),
            piece=piece,
        ),
        step(
            "{n} of them: {result}.",
            equation(times(Amount(Fraction(count.denominator)), piece), result),
            n=Amount(Fraction(count.denominator)),
            result=result,
        ),
    )
    yield Method("Cutting into smaller pieces", steps, result)


def _finished(view: View, method: Method) -> Working:
    """The working carried on to the difference or total, and turned into the answer's unit."""
    steps: list[Step] = []
    answers: dict[str, AnswerValue] = {}
    larger, smaller = view.amount(LARGER), view.amount(SMALLER)
    for name in view.problem.finds:
        if name == TIMES:
            result = Amount(method.result.value)
            larger_name, smaller_name = title(view.named("larger")), view.named("smaller")
            steps.append(step(f"{larger_name}: {{n}} times {smaller_name}.", n=result))
        elif name not in (DIFFERENCE, TOTAL):
            result = method.result
        else:
            both = minus(larger, smaller) if name == DIFFERENCE else plus(larger, smaller)
            sign = -1 if name == DIFFERENCE else 1
            result = view.part(larger.value + sign * smaller.value)
            steps.append(_last_step(name, equation(both, result), result))
        if name != TIMES:
            result, closing = conversion(result, view.problem.units[name])
            steps.extend(closing)
        answers[name] = result
    asked = view.problem.finds[0]
    more = method.steps and asked in (DIFFERENCE, TOTAL)
    name = f"{method.name}, then the {asked}" if more else method.name
    return Working(name, (*method.steps, *steps), answers)


def _last_step(name: str, result: Equation, amount: Amount) -> Step:
    lead = "The difference" if name == DIFFERENCE else "Together"
    return step(f"{lead}: {{amount}}.", result, amount=amount)


def _in_parts(view: View) -> Working:
    """The larger has (times − 1) parts more; together they have (times + 1)."""
    asked, count = view.problem.finds[0], view.problem.given(TIMES)
    one, smaller = Amount(Fraction(1)), view.amount(SMALLER)
    bare = Amount(count.value)
    more = minus(bare, one) if asked == DIFFERENCE else plus(bare, one)
    parts = Amount(count.value + (-1 if asked == DIFFERENCE else 1))
    text = "The larger has {n} more." if asked == DIFFERENCE else "Together they have {n}."
    steps = [
        *view.opening(),
        step(text, equation(more, parts), n=Amount(parts.value, _PART)),
    ]
    if SMALLER not in view.problem.givens:
        steps.append(
            step(
                "One part: {one}.",
                equation(over(view.amount(LARGER), bare), smaller),
                one=smaller,
            )
        )
    result = view.part(parts.value * smaller.value)
    steps.append(
        step(
            "{n} of {size}: {result}.",
            equation(times(parts, smaller), result),
            n=Amount(parts.value, _PART),
            size=smaller,
            result=result,
        )
    )
    answer, closing = conversion(result, view.problem.units[asked])
    return Working("Counting parts", (*steps, *closing), {asked: answer})


def _bar_model(view: View, answers: Mapping[str, AnswerValue]) -> BarModel | None:
    count, smaller, larger = view.amount(TIMES).value, view.amount(SMALLER), view.amount(LARGER)
    if count > _MOST_PARTS:
        return None
    asks_times = TIMES in view.problem.finds
    if asks_times:
        # Cut parts would tell how many there are.
        parts: tuple[Part, ...] = (Part(larger.value),)
    else:
        parts = (Part(smaller.value),) * int(count)
        if count % 1:
            parts = (*parts, Part(smaller.value * (count % 1)))
    short = Part(smaller.value, _side_mark(view, SMALLER), shaded=True)
    bars = (
        Bar(_label(view, "smaller"), (short,)),
        Bar(_label(view, "larger"), parts),
    )
    braces = [Brace(1, _side_mark(view, LARGER), 0, len(parts) - 1, below=True)]
    total: Mark | None = None
    for name in view.problem.finds:
        answer = answers[name]
        assert isinstance(answer, Amount)
        mark = Mark((write(answer),), is_given=False)
        if name == DIFFERENCE:
            braces.append(Brace(1, mark, gap_to=0))
        elif name == TOTAL:
            total = mark
    return BarModel(bars, tuple(braces), total)


def _label(view: View, side: Literal["smaller", "larger"]) -> str:
    return view.problem.fields.names.get(side, side)


def _side_mark(view: View, name: str) -> Mark:
    given = view.problem.givens.get(name)
    if given is not None:
        return Mark((write(given),))
    hidden = name not in view.problem.finds
    return Mark((write(view.amount(name)),), is_given=False, hidden=hidden)
