"""Highest common factor: the most identical sets, or the largest equal pieces, nothing left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import prod
from types import MappingProxyType

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.hcf_mistakes import hcf_mistakes
from typeset.arithmetic.families.hcf_view import (
    EACH,
    PIECES,
    SETS,
    TILES,
    Hcf,
    group_of,
    hcf_of,
)
from typeset.arithmetic.families.hcf_ways import hcf_ways
from typeset.arithmetic.families.shared_numbers import (
    NamedNumbers,
    as_in_story,
    check_names,
    check_same_kind,
    check_whole,
    in_one_unit,
    scale_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import PositiveAmount, UnitField
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.methods import in_unit, is_counted, without_noun
from typeset.arithmetic.names import as_list, listed, one_of
from typeset.arithmetic.phrases import bare
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import say, write, write_plain

# More equal parts than these make a bar that nobody can count.
_MOST_PARTS = 12
_FINDS = {
    "identical sets": (SETS,),
    "equal pieces": (EACH, PIECES),
    "square tiles": (EACH, TILES),
}


class HighestCommonFactorFields(NamedNumbers):
    """`identical sets: {red: 48 red floats, blue: 36 blue floats}`, `find: [sets, red, blue]`;
    or `equal pieces: {blue rope: 84 cm, red rope: 60 cm}`, `find: [each, pieces]`;
    or `square tiles: {length: 84 cm, width: 60 cm}`, `find: [each, tiles]`.

    A name after `find` asks how many of it are in each set, or how many pieces it gives.
    `groups called` names the sets or pieces.
    """

    identical_sets: dict[str, PositiveAmount] | None = Field(default=None, alias="identical sets")
    equal_pieces: dict[str, PositiveAmount] | None = Field(default=None, alias="equal pieces")
    square_tiles: dict[str, PositiveAmount] | None = Field(default=None, alias="square tiles")
    find: str | list[str]
    groups_called: UnitField | None = Field(default=None, alias="groups called")

    def amounts(self) -> Mapping[str, Amount]:
        """The amounts by name, whichever key they stand under."""
        return self.identical_sets or self.equal_pieces or self.square_tiles or {}

    def key(self) -> str:
        """The key that the amounts stand under. Raises AmountError unless it is one."""
        under = {
            "identical sets": self.identical_sets,
            "equal pieces": self.equal_pieces,
            "square tiles": self.square_tiles,
        }
        used = [key for key, amounts in under.items() if amounts is not None]
        if len(used) != 1:
            raise AmountError(
                "the numbers belong to one key, 'identical sets', 'equal pieces' or 'square tiles'",
                "write such as identical sets: {red: 48 floats, blue: 36 floats}",
            )
        return used[0]


class HighestCommonFactor(Family[HighestCommonFactorFields]):
    """The greatest number that divides all the amounts with nothing left over."""

    name = "highest common factor"
    fields_model = HighestCommonFactorFields

    def build(self, fields: HighestCommonFactorFields) -> Problem[HighestCommonFactorFields]:
        """The problem; the amounts are whole, and not all the same."""
        key, amounts, finds = fields.key(), fields.amounts(), as_list(fields.find)
        check_names(amounts, (SETS, EACH, PIECES, TILES), key)
        if fields.identical_sets is None:
            check_same_kind(amounts)
        if fields.square_tiles is not None and len(amounts) != 2:
            raise AmountError("a rectangle has two sides", "give its length and its width")
        check_whole(amounts)
        for asked in finds:
            one_of(asked, (*_FINDS[key], *amounts))
        units = MappingProxyType({asked: _unit(asked, fields) for asked in finds})
        return Problem(self.name, MappingProxyType(dict(amounts)), finds, units, fields)

    def relation(self, problem: Problem[HighestCommonFactorFields]) -> Mapping[str, AnswerValue]:
        """Every number from 1 to the smallest amount tried; the last that divides them all."""
        view = hcf_of(problem)
        factor = view.greatest()
        if factor == 1:
            told = listed([write_plain(amount) for amount in view.amounts.values()], "and")
            raise AmountError(
                f"{told} have no common factor but 1", "choose numbers that share a factor"
            )
        return view.answers(factor)

    def strategies(self, problem: Problem[HighestCommonFactorFields]) -> Iterator[Working]:
        """Listing factors, trying those of the smallest, dividing out, taking away, primes."""
        yield from hcf_ways(hcf_of(problem))

    def mistakes(self, problem: Problem[HighestCommonFactorFields]) -> Iterator[MistakenWorking]:
        """Stopping at a smaller factor, a multiple, the smaller number, the wrong question."""
        yield from hcf_mistakes(hcf_of(problem))

    def smooth(self, problem: Problem[HighestCommonFactorFields]) -> Mapping[str, AnswerValue]:
        """The answers with each set (or each number of pieces) as it is in the story.

        Whether two numbers share a factor jumps about from number to number; what is asked
        of the pupil is a division all the same: twice as much makes twice as many such sets.
        """
        told = as_in_story(problem)
        view, answers = hcf_of(told), dict(self.relation(told))
        for asked, answer in answers.items():
            assert isinstance(answer, Amount)
            if asked == PIECES:
                counts = view.quotients(view.greatest())
                value = sum(
                    (n * scale_of(problem, name) for name, n in counts.items()), Fraction(0)
                )
            else:
                names = view.names if asked in (SETS, EACH, TILES) else (asked,)
                value = prod((scale_of(problem, name) for name in names), start=answer.value)
            answers[asked] = answer.like(value)
        # The pieces of all are added up, whatever else is asked for first.
        return answers | {problem.finds[0]: answers.get(PIECES, answers[problem.finds[0]])}

    def reason(self, problem: Problem[HighestCommonFactorFields]) -> Rich:
        """Nothing left over of any of them: the number divides them all."""
        return _reason(hcf_of(problem))

    def figure(
        self, problem: Problem[HighestCommonFactorFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A bar for each amount with one share marked off."""
        return _bars(hcf_of(problem))


def _unit(asked: str, fields: HighestCommonFactorFields) -> Unit:
    """Sets and pieces go by the name of a group, what is in one by its own unit."""
    amounts = in_one_unit(fields.amounts())[0]
    counts_groups = asked in (SETS, PIECES, TILES) or (
        asked in amounts and fields.identical_sets is None
    )
    measured = None if counts_groups else amounts.get(asked)
    if asked == EACH:
        units = {amount.unit for amount in amounts.values()}
        measured = Amount(Fraction(1), units.pop() if len(units) == 1 else NUMBER)
    if fields.answer_in is not None and (asked in (SETS, EACH) or len(as_list(fields.find)) == 1):
        if measured is not None:
            in_unit(measured, fields.answer_in)
        elif not is_counted(Amount(Fraction(1), fields.answer_in)):
            raise AmountError(
                f"sets and pieces are not measured in {fields.answer_in.plural}",
                "name them with 'answer in', such as bundles",
            )
        return fields.answer_in
    return group_of(fields) if measured is None else measured.unit


def _reason(view: Hcf) -> Rich:
    """'... their number has to go into 48 and into 36; 12 is the greatest that does.'"""
    factor = view.greatest()
    goes = listed(
        [f"into {write_plain(without_noun(each))}" for each in view.amounts.values()], "and"
    )
    groups = view.group.plural
    if view.is_sets:
        text = (
            f"The {groups} are all alike and use everything up, so their number has to go exactly "
            f"{goes}. The greatest number that does is {{factor}}."
        )
        return say(text, factor=Amount(Fraction(factor)))
    size = view.size(factor)
    if view.is_tiles:
        text = (
            f"The {groups} are squares and cover everything, so the side of one has to go exactly "
            f"{goes}. The greatest that does is {{factor}}."
        )
        return say(text, factor=without_noun(size))
    what = {Dimension.LENGTH: "the length of one"}.get(size.unit.dimension, "what is in one")
    text = (
        f"The {groups} are all alike and nothing is left over, so {what} has to go exactly "
        f"{goes}. The greatest that does is {{factor}}."
    )
    if PIECES in view.problem.finds:
        text += f" The {groups} are then added up."
    return say(text, factor=without_noun(size))


def _bars(view: Hcf) -> BarModel | None:
    amounts = list(view.amounts.values())
    if len({amount.unit.dimension for amount in amounts}) > 1:
        return None
    factor = view.greatest()
    quotients = view.quotients(factor)
    parts = {name: factor if view.is_sets else quotients[name] for name in view.names}
    if max(parts.values()) > _MOST_PARTS:
        return None
    bars, braces = [], []
    for at, name in enumerate(view.names):
        amount = view.amounts[name]
        one = amount.like(amount.value / parts[name])
        share = Part(one.value, Mark((write(bare(one)),), is_given=False))
        rest = Part(amount.value - one.value, dashed=True)
        bars.append(Bar(name, (share, rest) if rest.size else (share,)))
        braces.append(
            Brace(at, Mark((write(view.problem.given(name)),)), 0, len(bars[-1].parts) - 1)
        )
    told = listed([f"{name} {write_plain(view.problem.given(name))}" for name in view.names], "and")
    share_of = f"one {view.group.singular}"
    return BarModel(
        tuple(bars),
        tuple(braces),
        None,
        f"A bar for each: {told}. In each, {share_of} is marked off.",
    )
