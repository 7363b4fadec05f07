"""Sharing with exchange: whole units first, and the rest exchanged for smaller units."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.exchange_mistakes import mistakes_of
from typeset.arithmetic.families.exchange_view import EACH, Exchange, smaller_unit
from typeset.arithmetic.families.exchange_ways import ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, UnitField, WholeAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.methods import is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say, write, write_plain

_MOST_PARTS = 12


class SharingWithExchangeFields(FamilyFields):
    """`total: 7 m`, `groups: 4 kites`; the answer is 1 m 75 cm.

    `exchange into: cm` names the smaller unit where another than the usual one is wanted.
    """

    total: PositiveAmount
    groups: WholeAmount
    exchange_into: UnitField | None = Field(default=None, alias="exchange into")


class SharingWithExchange(Family[SharingWithExchangeFields]):
    """total = shares × each, with each a whole number of the smaller unit."""

    name = "sharing with exchange"
    fields_model = SharingWithExchangeFields

    def build(self, fields: SharingWithExchangeFields) -> Problem[SharingWithExchangeFields]:
        """The problem; a share is told in the unit of the total and the smaller one."""
        if fields.groups.value == 1:
            raise AmountError("one alone does not share", "share among at least 2")
        if not is_counted(fields.groups):
            raise AmountError("'groups' is a number of shares", "write it such as 4 friends")
        if fields.answer_in is not None:
            raise AmountError(
                "the answer is in two units here",
                "leave out 'answer in'; 'exchange into' names the smaller unit",
            )
        if is_counted(fields.total):
            raise AmountError(
                f"{write_plain(fields.total)} cannot be exchanged for smaller units",
                "give a measure or money, or use 'sharing'",
            )
        unit = smaller_unit(fields.total, fields.exchange_into)
        givens = MappingProxyType({"total": fields.total, "groups": fields.groups})
        units = MappingProxyType({EACH: unit})
        return Problem(self.name, givens, (EACH,), units, fields)

    def relation(self, problem: Problem[SharingWithExchangeFields]) -> Mapping[str, AnswerValue]:
        """total = shares × each, in base units; each is whole in the smaller unit."""
        view = Exchange(problem)
        each = problem.given("total").base / problem.given("groups").value
        _check(view, each)
        return {EACH: view.share_of(each)}

    def strategies(self, problem: Problem[SharingWithExchangeFields]) -> Iterator[Working]:
        """Whole ones first, then the rest exchanged; or all exchanged at once."""
        yield from ways_of(Exchange(problem))

    def mistakes(self, problem: Problem[SharingWithExchangeFields]) -> Iterator[MistakenWorking]:
        """The rest dropped, taken for the smaller unit, or exchanged by the wrong number."""
        yield from mistakes_of(Exchange(problem))

    def smooth(self, problem: Problem[SharingWithExchangeFields]) -> Mapping[str, AnswerValue]:
        """A share also where it is not whole, so that the kind shows."""
        view = Exchange(problem)
        return {EACH: view.share_of(problem.given("total").base / problem.given("groups").value)}

    def reason(self, problem: Problem[SharingWithExchangeFields]) -> Rich:
        """Twice as much to share is twice as much for each."""
        view, total = Exchange(problem), problem.given("total")
        each = total.base / problem.given("groups").value
        return say(
            "With {new} instead of {old} each would get twice as much, {after} instead of "
            "{before}.",
            new=replace(total, value=2 * total.value),
            old=total,
            after=view.share_of(2 * each),
            before=view.share_of(each),
        )

    def figure(
        self, problem: Problem[SharingWithExchangeFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """The total as one bar in equal parts."""
        shares, each = problem.given("groups"), answers[EACH]
        if shares.value > _MOST_PARTS or not isinstance(each, Amount):
            return None
        parts = (Part(Fraction(1), Mark((write(each),), False)),) * int(shares.value)
        total = Mark((write(problem.given("total")),))
        return BarModel((Bar(shares.unit.plural, parts),), (), total)


def _check(view: Exchange, each: Fraction) -> None:
    """Raises AmountError where there is nothing to exchange, or too much."""
    total, shares = (write_plain(view.problem.given(name)) for name in ("total", "groups"))
    large = view.large
    if (each / large.per_base).denominator == 1:
        raise AmountError(
            f"{total} among {shares} leaves nothing to exchange",
            "use 'sharing', or choose other numbers",
        )
    if (each / view.small_size).denominator != 1:
        name = "pence" if view.is_money else view.small.plural
        raise AmountError(
            f"{total} among {shares} is not a whole number of {name} each",
            "choose other numbers"
            if view.is_money
            else "choose other numbers, or name a smaller unit with 'exchange into'",
        )
    if view.is_money and view.problem.fields.exchange_into is not None:
        raise AmountError("pounds are exchanged for pence", "leave out 'exchange into'")
