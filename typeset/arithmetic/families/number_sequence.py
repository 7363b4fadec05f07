"""Number sequences: equal steps, growing steps, repeated multiplying; terms and their places."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.sequence_checks import check_asked, check_rule, check_terms
from typeset.arithmetic.families.sequence_figure import boxes_of
from typeset.arithmetic.families.sequence_mistakes import position_mistakes, term_mistakes
from typeset.arithmetic.families.sequence_position_ways import position_answers, position_ways
from typeset.arithmetic.families.sequence_view import (
    GROWING,
    IN_IT,
    MULTIPLY,
    ORDINALS,
    POSITION,
    SAME,
    TERM,
    VALUE,
    Sequence,
    sequence_of,
)
from typeset.arithmetic.families.sequence_ways import term_answers, term_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import AnyAmount, FamilyFields, UnitField, WholeAmount
from typeset.arithmetic.figures import SequenceBoxes
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.names import as_list
from typeset.arithmetic.phrases import as_much
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER
from typeset.quantities.writing import say, write_plain


class NumberSequenceFields(FamilyFields):
    """`terms: [5 floats, 8 floats, 11 floats]`, `position: 10`, `find: term`; or `find: fourth`,
    `find: [fourth, fifth]`; or `value: 50 floats` and `find: position` or `in the sequence`.

    `rule:` is `same step` (as it is where nothing is said), `growing step` or `multiply`.
    `terms called: rows` gives the terms a name. In the story: `{first}`, `{second}`, ….
    """

    terms: list[AnyAmount]
    rule: Literal["same step", "growing step", "multiply"] = "same step"
    position: WholeAmount | None = None
    value: AnyAmount | None = None
    find: str | list[str]
    terms_called: UnitField | None = Field(default=None, alias="terms called")


class NumberSequence(Family[NumberSequenceFields]):
    """Each term comes from the one before by one rule."""

    name = "number sequence"
    fields_model = NumberSequenceFields

    def build(self, fields: NumberSequenceFields) -> Problem[NumberSequenceFields]:
        """The problem; the terms have to follow the rule."""
        check_terms(fields.terms, fields.rule)
        givens = dict(zip(ORDINALS, fields.terms, strict=False))
        if fields.position is not None:
            givens[POSITION] = fields.position
        if fields.value is not None:
            in_unit(fields.value, fields.terms[0].unit)
            givens[VALUE] = fields.value
        finds = as_list(fields.find)
        check_asked(finds, givens, fields.rule)
        unit = fields.answer_in or fields.terms[0].unit
        in_unit(fields.terms[0], unit)
        units = {asked: NUMBER if asked in (POSITION, IN_IT) else unit for asked in finds}
        problem = Problem(
            self.name, MappingProxyType(givens), finds, MappingProxyType(units), fields
        )
        check_rule(sequence_of(problem))
        return problem

    def relation(self, problem: Problem[NumberSequenceFields]) -> Mapping[str, AnswerValue]:
        """The sequence walked term by term, as far as it is asked for."""
        view = sequence_of(problem)
        if VALUE not in problem.givens:
            return term_answers(view, {at: view.at(at) for _name, at in view.asked()})
        position, value = view.reach(view.value.value)
        is_term = value == view.value.value
        if POSITION in problem.finds and not is_term:
            near = f"{view.low_place(position)} is {write_plain(view.amount(value))}"
            raise AmountError(
                f"{write_plain(problem.given(VALUE))} is no term of this sequence ({near})",
                "choose another value, or write find: in the sequence",
            )
        return position_answers(view, position if is_term else None)

    def strategies(self, problem: Problem[NumberSequenceFields]) -> Iterator[Working]:
        """Counting on; all steps at once; for a place, the rule undone."""
        view = sequence_of(problem)
        yield from position_ways(view) if VALUE in problem.givens else term_ways(view)

    def mistakes(self, problem: Problem[NumberSequenceFields]) -> Iterator[MistakenWorking]:
        """A step too many, the start forgotten, scaling, the same step kept."""
        view = sequence_of(problem)
        yield from position_mistakes(view) if VALUE in problem.givens else term_mistakes(view)

    def probed(self, problem: Problem[NumberSequenceFields]) -> tuple[str, ...]:
        """The place or value asked about; for the next terms the last one told."""
        if VALUE in problem.givens:
            return (VALUE,)
        if TERM in problem.finds and problem.fields.rule != MULTIPLY:
            return (POSITION,)
        return (ORDINALS[len(problem.fields.terms) - 1],)

    def smooth(self, problem: Problem[NumberSequenceFields]) -> Mapping[str, AnswerValue]:
        """The answers with the steps as the story has them, for any place and any value.

        A value asks for a place; places jump from term to term, so with equal steps a part of
        a step counts as a part of a place, and with other rules what the steps have to make
        together is watched instead of how many they are.
        """
        told = problem.with_given(self.probed(problem)[0], self._told(problem))
        view, asked = sequence_of(told), problem.finds[0]
        if VALUE in problem.givens:
            value = in_unit(problem.given(VALUE), view.terms[0].unit).value
            return {asked: Amount(_smooth_place(view, value))}
        if TERM in problem.finds and view.rule != MULTIPLY:
            position = int(problem.given(POSITION).value)
            return {asked: view.amount(view.at(position))}
        name = self.probed(problem)[0]
        now, before = problem.given(name), self._told(problem)
        result = view.amount(view.at(view.asked()[0][1]))
        if view.rule == MULTIPLY:
            return {asked: result.like(result.value * now.base / before.base)}
        grown = (now.base - before.base) / result.unit.per_base
        return {asked: result.like(result.value + grown)}

    def reason(self, problem: Problem[NumberSequenceFields]) -> Rich:
        """What the steps do, and whether they have to be multiplied."""
        return _reason(sequence_of(problem))

    def figure(
        self, problem: Problem[NumberSequenceFields], answers: Mapping[str, AnswerValue]
    ) -> SequenceBoxes | None:
        """The terms in boxes."""
        return boxes_of(sequence_of(problem))

    def _told(self, problem: Problem[NumberSequenceFields]) -> Amount:
        """The probed number as the author typed it."""
        fields, name = problem.fields, self.probed(problem)[0]
        typed = {POSITION: fields.position, VALUE: fields.value}.get(name)
        return typed if typed is not None else fields.terms[-1]


def _smooth_place(view: Sequence, value: Fraction) -> Fraction:
    if view.rule == SAME:
        return (value - view.first) / view.step + 1
    return value - view.first if view.rule == GROWING else value / view.first


def _reason(view: Sequence) -> Rich:
    one, gap = view.called.singular, view.amount(abs(view.step))
    many = VALUE in view.problem.givens or TERM in view.problem.finds
    if view.rule == MULTIPLY:
        rises = view.factor > 1
        factor = Amount(view.factor if rises else 1 / view.factor)
        if rises:
            much = as_much(factor.value, view.terms[0].unit)
            return say(f"Each {one} has {{much}} as the one before, again and again.", much=much)
        text = f"Each {one} is the one before it divided by {{factor}}, again and again."
        return say(text, factor=factor)
    if view.rule == GROWING:
        text = (
            f"The steps are not equal, they grow by {{growth}} each time, so they cannot simply "
            f"be multiplied: they are added up from {one} to {one}."
        )
        if TERM in view.problem.finds:
            text = (
                "The steps are not equal, they grow by {growth} each time: they have to be added "
                "up, and multiplying shortens it."
            )
        return say(text, growth=view.bare(view.growth))
    if not many:
        act = "adding" if view.step > 0 else "taking off"
        text = f"Each {one} has {{gap}} {view.word()} than the one before, so go on {act} {{gap}}."
        return say(text, gap=gap)
    if view.first == view.step:
        return say(f"Every {one} is its number times {{gap}}, right from the first.", gap=gap)
    if VALUE in view.problem.givens:
        text = (
            "What lies between {first} and {value} is divided into equal steps of {gap}, and "
            f"{one} 1 has to be counted too."
        )
        return say(text, first=view.terms[0], value=view.value, gap=gap)
    text = (
        f"Equal steps of {{gap}} can be multiplied, but {one} 1 has {{first}} already, and that "
        "counts only once."
    )
    return say(text, gap=gap, first=view.terms[0])
