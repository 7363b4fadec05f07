"""Sum and multiple, difference and multiple: equal parts of which the sum or difference is made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, minus, over, part_of, plus, times
from typeset.arithmetic.families.two_unknowns import (
    DIFFERENCE,
    SUM,
    TIMES,
    Two,
    TwoUnknownsFields,
    bars_of,
    build_two,
    related,
    two_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import PositiveAmount, WholeAmount
from typeset.arithmetic.figures import BarModel
from typeset.arithmetic.names import so_many
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, Form, number

_ONE = number(1)


class SumAndMultipleFields(TwoUnknownsFields):
    """`sum: 36 shells`, `times: 3`."""

    sum: PositiveAmount
    times: WholeAmount


class DifferenceAndMultipleFields(TwoUnknownsFields):
    """`difference: 8 shells`, `times: 3`."""

    difference: PositiveAmount
    times: WholeAmount


class SumAndMultiple(Family[SumAndMultipleFields]):
    """The sum is one part more than the multiple."""

    name = "sum and multiple"
    fields_model = SumAndMultipleFields

    def build(self, fields: SumAndMultipleFields) -> Problem[SumAndMultipleFields]:
        """The problem; the larger is at least twice the smaller."""
        return build_two(self.name, fields, {SUM: fields.sum, TIMES: fields.times})

    def relation(self, problem: Problem[SumAndMultipleFields]) -> Mapping[str, AnswerValue]:
        """larger + smaller = sum; larger = times × smaller."""
        return related(problem)

    def strategies(self, problem: Problem[SumAndMultipleFields]) -> Iterator[Working]:
        """One part first; or each as a fraction of the sum."""
        view = _Parts.of(two_of(problem))
        yield _one_part_first(view)
        yield _as_fractions(view)

    def mistakes(self, problem: Problem[SumAndMultipleFields]) -> Iterator[MistakenWorking]:
        """One part too few; 'times' read as 'more'; the parts on the wrong side."""
        view = _Parts.of(two_of(problem))
        yield _wrong_parts(view, "one part left out", view.count - 1)
        yield from _more_for_times(view)
        yield _turned_round(view)

    def probed(self, problem: Problem[SumAndMultipleFields]) -> tuple[str, ...]:
        """The multiple is the rule of the story; the sum is what could be another."""
        return (SUM,)

    def figure(
        self, problem: Problem[SumAndMultipleFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """Equal parts, with the sum beside both bars."""
        view = _Parts.of(two_of(problem))
        return bars_of(view.two, view.larger, view.smaller)


class DifferenceAndMultiple(Family[DifferenceAndMultipleFields]):
    """The difference is one part fewer than the multiple."""

    name = "difference and multiple"
    fields_model = DifferenceAndMultipleFields

    def build(self, fields: DifferenceAndMultipleFields) -> Problem[DifferenceAndMultipleFields]:
        """The problem; the larger is at least twice the smaller."""
        given = {DIFFERENCE: fields.difference, TIMES: fields.times}
        return build_two(self.name, fields, given)

    def relation(self, problem: Problem[DifferenceAndMultipleFields]) -> Mapping[str, AnswerValue]:
        """larger − smaller = difference; larger = times × smaller."""
        return related(problem)

    def strategies(self, problem: Problem[DifferenceAndMultipleFields]) -> Iterator[Working]:
        """One part first; or from the smallest such pair, scaled."""
        view = _Parts.of(two_of(problem))
        yield _one_part_first(view)
        yield _scaled_from_one(view)

    def mistakes(self, problem: Problem[DifferenceAndMultipleFields]) -> Iterator[MistakenWorking]:
        """The difference taken for one part, for all the parts, or for the larger."""
        view = _Parts.of(two_of(problem))
        yield _wrong_parts(view, "difference taken as one part", Fraction(1))
        yield _wrong_parts(view, "difference taken as the whole", view.two.times + 1)
        yield _difference_as_larger(view)

    def probed(self, problem: Problem[DifferenceAndMultipleFields]) -> tuple[str, ...]:
        """The multiple is the rule of the story; the difference is what could be another."""
        return (DIFFERENCE,)

    def figure(
        self, problem: Problem[DifferenceAndMultipleFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """Equal parts, with the difference at the end of the longer bar."""
        view = _Parts.of(two_of(problem))
        return bars_of(view.two, view.larger, view.smaller)


class _Parts:
    """What is known as so many equal parts, each as large as the smaller."""

    def __init__(self, two: Two, known: Amount, is_sum: bool) -> None:
        self.two, self.known, self.is_sum = two, known, is_sum
        self.count = two.times + 1 if is_sum else two.times - 1
        self.smaller = known.like(known.value / self.count)
        self.larger = known.like(self.smaller.value * two.times)

    @classmethod
    def of(cls, two: Two) -> _Parts:
        """The view of a problem that has a multiple and one of sum and difference."""
        known = two.sum or two.difference
        assert known is not None
        return cls(two, known, two.sum is not None)

    def counting(self) -> Step:
        """How many parts make what is known."""
        parts: Expression
        if self.is_sum:
            parts = plus(Amount(self.two.times), _ONE)
            text = "Together"
        else:
            parts = minus(Amount(self.two.times), _ONE)
            text = "Difference"
        return step(
            f"{title(self.two.smaller_name)}: 1 part. {title(self.two.larger_name)}: {{times}}. "
            f"{text}: {{count}}.",
            equation(parts, Amount(self.count)),
            times=so_many(self.two.times, "part"),
            count=so_many(self.count, "part"),
        )


def _larger_from(view: _Parts, smaller: Amount, larger: Amount) -> list[Step]:
    """The larger as so many parts, where it is needed."""
    if not view.two.needs_larger():
        return []
    parts = so_many(view.two.times, "part")
    text = f"{title(view.two.larger_name)}: {{parts}}."
    return [step(text, equation(times(Amount(view.two.times), smaller), larger), parts=parts)]


def _one_part_first(view: _Parts) -> Working:
    text = f"{title(view.two.smaller_name)}: share {{known}} among {{count}}."
    share = step(
        text,
        equation(over(view.known, Amount(view.count)), view.smaller),
        known=view.known,
        count=so_many(view.count, "part"),
    )
    steps = [view.counting(), share, *_larger_from(view, view.smaller, view.larger)]
    return view.two.working("One part first", steps, view.larger, view.smaller)


def _as_fractions(view: _Parts) -> Working:
    two = view.two
    steps = [view.counting()]
    wanted = {
        two.smaller_name: (Fraction(1), view.smaller),
        two.larger_name: (two.times, view.larger),
    }
    for name, (parts, amount) in wanted.items():
        if not two.asks(name, SUM, DIFFERENCE):
            continue
        share = Amount(parts / view.count, form=Form.FRACTION)
        steps.append(
            step(
                f"{title(name)}: {{share}} of {{known}}.",
                equation(part_of(share, view.known), amount),
                share=share,
                known=view.known,
            )
        )
    return two.working("As a fraction of the sum", steps, view.larger, view.smaller)


def _scaled_from_one(view: _Parts) -> Working:
    two = view.two
    one, many, gap = (view.known.like(each) for each in (1, two.times, view.count))
    factor = Amount(view.smaller.value)
    steps = [
        step(
            f"Try {{one}} for {the(two.smaller_name)}: that makes {{many}} for "
            f"{the(two.larger_name)}, and a difference of {{gap}}.",
            equation(minus(many, one), gap),
            one=one,
            many=many,
            gap=gap,
        ),
        step(
            "The difference is to be {known}, so scale everything by {factor}.",
            equation(over(view.known, gap), factor),
            known=view.known,
            factor=factor,
        ),
    ]
    if two.asks(two.smaller_name, SUM):
        result = equation(times(one, factor), view.smaller)
        steps.append(step(f"{title(two.smaller_name)}: scale {{one}}.", result, one=one))
    if two.needs_larger():
        result = equation(times(many, factor), view.larger)
        steps.append(step(f"{title(two.larger_name)}: scale {{many}}.", result, many=many))
    return two.working("Trying one and scaling", steps, view.larger, view.smaller)


def _wrong_parts(view: _Parts, name: str, count: Fraction) -> MistakenWorking:
    """What is known shared among the wrong number of parts."""
    smaller = view.known.like(view.known.value / count)
    larger = view.known.like(smaller.value * view.two.times)
    text = f"{title(view.two.smaller_name)}: {{known}} shared among {{count}}."
    if count == 1:
        first = step(f"{title(view.two.smaller_name)}: {{known}}.", known=view.known)
    else:
        first = step(
            text,
            equation(over(view.known, Amount(count)), smaller),
            known=view.known,
            count=so_many(count, "part"),
        )
    steps = [first, *_larger_from(view, smaller, larger)]
    return view.two.mistake(name, steps, larger, smaller)


def _difference_as_larger(view: _Parts) -> MistakenWorking:
    """The difference taken for the longer bar."""
    two, smaller = view.two, view.known.like(view.known.value / view.two.times)
    steps = [step(f"{title(two.larger_name)}: {{known}}.", known=view.known)]
    if two.problem.finds != (two.larger_name,):
        parts = so_many(two.times, "part")
        result = equation(over(view.known, Amount(two.times)), smaller)
        steps.append(step(f"{title(two.smaller_name)}: one of {{parts}}.", result, parts=parts))
    return two.mistake("difference taken as the larger", steps, view.known, smaller)


def _more_for_times(view: _Parts) -> Iterator[MistakenWorking]:
    """'3 times as many' read as '3 more'."""
    more = view.known.like(view.two.times)
    rest = view.known.like(view.known.value - more.value)
    smaller = view.known.like(rest.value / 2)
    larger = view.known.like(smaller.value + more.value)
    steps = [
        step("Take off the {more} more.", equation(minus(view.known, more), rest), more=more),
        step(
            f"{title(view.two.smaller_name)}: half of that.",
            equation(over(rest, number(2)), smaller),
        ),
    ]
    if view.two.needs_larger():
        text = f"{title(view.two.larger_name)}: {{more}} more."
        steps.append(step(text, equation(plus(smaller, more), larger), more=more))
    yield view.two.mistake("times as many taken as more than", steps, larger, smaller)


def _turned_round(view: _Parts) -> MistakenWorking:
    """The single part given to the larger, the many to the smaller."""
    two = view.two
    text = f"{title(two.larger_name)}: one part of {{count}}."
    steps = [
        step(
            text,
            equation(over(view.known, Amount(view.count)), view.smaller),
            count=Amount(view.count),
        )
    ]
    if two.asks(two.smaller_name):
        result = equation(times(Amount(two.times), view.smaller), view.larger)
        parts = so_many(two.times, "part")
        steps.append(step(f"{title(two.smaller_name)}: {{parts}}.", result, parts=parts))
    return two.mistake("ratio turned round", steps, view.smaller, view.larger)
