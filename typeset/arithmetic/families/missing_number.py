"""Missing numbers: a number sentence with one box."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Annotated, Any

from pydantic import BeforeValidator

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import PLUS, Expression, Operation, Unknown
from typeset.arithmetic.families.missing_number_mistakes import mistakes_of
from typeset.arithmetic.families.missing_number_ways import Box, reason_of, ways_of
from typeset.arithmetic.families.number_sentence import Sentence, box_value, read_sentence
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, refuse
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.quotes import Quote
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER
from typeset.quantities.writing import MINUS, write, write_plain

MISSING = "missing number"
SENTENCE = "sentence"
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def _read(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    try:
        return read_sentence(value)
    except AmountError as error:
        raise refuse(error.problem, error.remedy) from None


class MissingNumberFields(FamilyFields):
    """`sentence: 7 × _ + 5 = 47`; the box is typed as _ (or ?)."""

    sentence: Annotated[Sentence, BeforeValidator(_read)]


class MissingNumber(Family[MissingNumberFields]):
    """Both sides of the equals sign come to the same."""

    name = "missing number"
    fields_model = MissingNumberFields

    def build(self, fields: MissingNumberFields) -> Problem[MissingNumberFields]:
        """The problem; its numbers are named by their order, and told by the whole sentence."""
        numbers = fields.sentence.numbers
        names = (f"{ordinal} number" for ordinal in _ORDINALS)
        givens = MappingProxyType(dict(zip(names, numbers, strict=False)))
        units = MappingProxyType({MISSING: NUMBER})
        return Problem(self.name, givens, (MISSING,), units, fields)

    def relation(self, problem: Problem[MissingNumberFields]) -> Mapping[str, AnswerValue]:
        """The one number for which both sides are equal; none below 0."""
        answers = self.smooth(problem)
        found = answers[MISSING]
        if isinstance(found, Amount) and found.value < 0:
            raise AmountError(
                f"the number in the box would be {write_plain(found)}", "choose other numbers"
            )
        return answers

    def smooth(self, problem: Problem[MissingNumberFields]) -> Mapping[str, AnswerValue]:
        """The number whatever it is."""
        box = Box.of(problem)
        return box.answer(box_value(box.sentence))

    def strategies(self, problem: Problem[MissingNumberFields]) -> Iterator[Working]:
        """Inverse operations, both sides compared, a known fact, trial and improvement."""
        yield from ways_of(Box.of(problem))

    def mistakes(self, problem: Problem[MissingNumberFields]) -> Iterator[MistakenWorking]:
        """'=' read as a command; an operation repeated; − and ÷ turned round."""
        yield from mistakes_of(Box.of(problem))

    def reason(self, problem: Problem[MissingNumberFields]) -> Rich | None:
        """What is undone by what."""
        return reason_of(Box.of(problem))

    def quotes(self, problem: Problem[MissingNumberFields]) -> Mapping[str, Quote]:
        """`{sentence}`: the number sentence with its box."""
        written = (Box.of(problem).sentence.equation().written(),)
        return {SENTENCE: Quote(written, (None,), frozenset(problem.givens))}

    def figure(
        self, problem: Problem[MissingNumberFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """One bar for a sum or difference, two of equal length for two sums."""
        return _bars(Box.of(problem).sentence, answers[MISSING])


def _bars(sentence: Sentence, answer: AnswerValue) -> BarModel | None:
    side, known = sentence.box_side, sentence.known_side
    if not isinstance(side, Operation) or not isinstance(answer, Amount) or not answer.value:
        return None
    two = (side.left, side.right)
    if any(isinstance(each, Operation) for each in two):
        return None
    if isinstance(known, Amount) and side.sign == PLUS:
        return _one_bar(two, known, answer)
    if isinstance(known, Amount) and side.sign == MINUS:
        # What is taken away and what is left make up what there was.
        return _one_bar((side.right, known), side.left, answer)
    if not isinstance(known, Operation) or {side.sign, known.sign} != {PLUS}:
        return None
    other = (known.left, known.right)
    if any(isinstance(each, Operation) for each in other):
        return None
    sides = (two, other) if side is sentence.left else (other, two)
    bars = tuple(
        Bar(name, tuple(_part(each, answer) for each in parts))
        for name, parts in zip(("left side", "right side"), sides, strict=True)
    )
    return BarModel(bars, (), None, "Two bars of equal length, one for each side.")


def _one_bar(parts: tuple[Expression, ...], whole: Expression, answer: Amount) -> BarModel:
    total = Mark((write(answer),), False)
    if isinstance(whole, Amount):
        total = Mark((write(whole),))
    bar = Bar("", tuple(_part(each, answer) for each in parts))
    return BarModel((bar,), (), total, "A bar in two parts.")


def _part(expression: Expression, answer: Amount) -> Part:
    if isinstance(expression, Unknown):
        return Part(answer.value, Mark((write(answer),), is_given=False), dashed=True)
    assert isinstance(expression, Amount)
    return Part(expression.value, Mark((write(expression),)))
