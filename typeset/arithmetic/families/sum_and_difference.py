"""Sum and difference: two amounts, known together and by how much one is more."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, over, plus
from typeset.arithmetic.families.two_unknowns import (
    DIFFERENCE,
    SUM,
    Two,
    TwoUnknownsFields,
    bars_of,
    build_two,
    related,
    two_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import PositiveAmount
from typeset.arithmetic.figures import BarModel
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount, number
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say

_TWO = number(2)


class SumAndDifferenceFields(TwoUnknownsFields):
    """`sum: 36 shells`, `difference: 8 shells`."""

    sum: PositiveAmount
    difference: PositiveAmount


class SumAndDifference(Family[SumAndDifferenceFields]):
    """Without the difference the two are equal, and so are their halves."""

    name = "sum and difference"
    fields_model = SumAndDifferenceFields

    def build(self, fields: SumAndDifferenceFields) -> Problem[SumAndDifferenceFields]:
        """The problem; the difference is less than the sum."""
        given = {SUM: fields.sum, DIFFERENCE: fields.difference}
        return build_two(self.name, fields, given)

    def relation(self, problem: Problem[SumAndDifferenceFields]) -> Mapping[str, AnswerValue]:
        """larger + smaller = sum; larger − smaller = difference."""
        return related(problem)

    def strategies(self, problem: Problem[SumAndDifferenceFields]) -> Iterator[Working]:
        """Take the difference off; add it; or share equally and move half of it."""
        view = _View.of(two_of(problem))
        yield _taken_off(view)
        yield _added(view)
        if view.two.is_sensible(view.half, view.half_difference):
            yield _shared_then_moved(view)

    def mistakes(self, problem: Problem[SumAndDifferenceFields]) -> Iterator[MistakenWorking]:
        """Halves first and puts the difference on one; ignores it; takes it for a part."""
        view = _View.of(two_of(problem))
        yield _difference_on_one_half(view)
        yield _only_halved(view)
        yield _difference_as_part(view)

    def reason(self, problem: Problem[SumAndDifferenceFields]) -> Rich | None:
        """The difference is added or taken off, then the rest is halved."""
        return say(
            "First the difference, {difference}, is taken off {sum} or added to it. Then two "
            "equal parts are left, so you divide by 2.",
            difference=problem.given(DIFFERENCE),
            sum=problem.given(SUM),
        )

    def figure(
        self, problem: Problem[SumAndDifferenceFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """Two bars, one longer by the difference."""
        view = _View.of(two_of(problem))
        return bars_of(view.two, view.larger, view.smaller)


class _View:
    """The amounts that the workings name, by halving."""

    def __init__(self, two: Two, total: Amount, difference: Amount) -> None:
        self.two, self.total, self.difference = two, total, difference
        self.half = total.like(total.value / 2)
        self.half_difference = total.like(difference.value / 2)
        self.smaller = total.like((total.value - difference.value) / 2)
        self.larger = total.like((total.value + difference.value) / 2)

    @classmethod
    def of(cls, two: Two) -> _View:
        """The view of a problem that has both sum and difference."""
        assert two.sum is not None
        assert two.difference is not None
        return cls(two, two.sum, two.difference)


def _half_of(name: str, equal: Amount, half: Amount) -> Step:
    return step(f"{title(name)}: half of that.", equation(over(equal, _TWO), half))


def _taken_off(view: _View) -> Working:
    two, equal = view.two, view.total.like(view.total.value - view.difference.value)
    steps = [
        step(
            f"Take the extra {{difference}} off {the(two.larger_name)}, and both are equal.",
            equation(minus(view.total, view.difference), equal),
            difference=view.difference,
        ),
        step(
            f"{title(two.smaller_name)}: half of that.", equation(over(equal, _TWO), view.smaller)
        ),
    ]
    if two.needs_larger():
        text = f"{title(two.larger_name)}: put the difference back on."
        steps.append(step(text, equation(plus(view.smaller, view.difference), view.larger)))
    return two.working("Taking off the difference", steps, view.larger, view.smaller)


def _added(view: _View) -> Working:
    two, equal = view.two, view.total.like(view.total.value + view.difference.value)
    steps = [
        step(
            f"Give {the(two.smaller_name)} the missing {{difference}}, and both are equal.",
            equation(plus(view.total, view.difference), equal),
            difference=view.difference,
        ),
        _half_of(two.larger_name, equal, view.larger),
    ]
    if two.problem.finds != (two.larger_name,):
        text = f"{title(two.smaller_name)}: take the difference away again."
        steps.append(step(text, equation(minus(view.larger, view.difference), view.smaller)))
    return two.working("Adding the difference", steps, view.larger, view.smaller)


def _shared_then_moved(view: _View) -> Working:
    two = view.two
    steps = [
        step("Share equally first.", equation(over(view.total, _TWO), view.half)),
        step(
            "Half of the difference moves from the one to the other.",
            equation(over(view.difference, _TWO), view.half_difference),
        ),
    ]
    if two.needs_larger():
        result = equation(plus(view.half, view.half_difference), view.larger)
        steps.append(step(f"{title(two.larger_name)}: that much more.", result))
    if two.problem.finds != (two.larger_name,):
        result = equation(minus(view.half, view.half_difference), view.smaller)
        steps.append(step(f"{title(two.smaller_name)}: that much less.", result))
    return two.working("Sharing equally, then moving half", steps, view.larger, view.smaller)


def _halved(view: _View) -> list[Step]:
    return [step("Share equally: half of it each.", equation(over(view.total, _TWO), view.half))]


def _difference_on_one_half(view: _View) -> MistakenWorking:
    two = view.two
    larger = view.half.like(view.half.value + view.difference.value)
    smaller = view.half.like(view.half.value - view.difference.value)
    steps = _halved(view)
    if two.needs_larger():
        result = equation(plus(view.half, view.difference), larger)
        steps.append(step(f"{title(two.larger_name)}: the difference more.", result))
    if two.problem.finds != (two.larger_name,):
        result = equation(minus(view.half, view.difference), smaller)
        steps.append(step(f"{title(two.smaller_name)}: the difference less.", result))
    return two.mistake("whole difference on one half", steps, larger, smaller)


def _only_halved(view: _View) -> MistakenWorking:
    return view.two.mistake("difference ignored", _halved(view), view.half, view.half)


def _difference_as_part(view: _View) -> MistakenWorking:
    two, rest = view.two, view.total.like(view.total.value - view.difference.value)
    name = title(two.smaller_name)
    steps = [step(f"{name}: {{difference}}.", difference=view.difference)]
    if two.needs_larger():
        text = f"{title(two.larger_name)}: the rest."
        steps.append(step(text, equation(minus(view.total, view.difference), rest)))
    return two.mistake("difference taken as one part", steps, rest, view.difference)
