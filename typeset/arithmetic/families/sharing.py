"""Sharing: a total shared equally among so many; how much does each get?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from typeset.arithmetic.answers import AnswerValue, WithRemainder
from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.division_mistakes import (
    misread,
    nought_left_out,
    wrong_operations,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, WholeAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.methods import Method, conversion, in_unit, is_counted
from typeset.arithmetic.names import as_list
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit, noun
from typeset.quantities.writing import decimal, say, write, write_plain

EACH = "each"
LEFT_OVER = "left over"
_Found = Literal["each", "left over"]
_SHARE = noun("share", "shares")
_MOST_PARTS = 12
# Measures finer than thousandths are not met in these years (national curriculum, Year 6).
_MOST_PLACES = 3
_PART_FORMS = {"as a fraction": Form.FRACTION, "as a decimal": Form.DECIMAL}


class SharingFields(FamilyFields):
    """`total: 84 mackerel`, `groups: 7 buckets`; `remainder` says what becomes of a rest."""

    total: PositiveAmount
    groups: WholeAmount
    find: _Found | list[_Found] = "each"
    remainder: Literal["none", "left over", "both", "as a fraction", "as a decimal"] = "none"


class Sharing(Family[SharingFields]):
    """total = number of shares × one share, with a rest where shares stay whole."""

    name = "sharing"
    fields_model = SharingFields

    def build(self, fields: SharingFields) -> Problem[SharingFields]:
        """The problem; a share is measured like the total unless 'answer in' says otherwise."""
        if fields.groups.value == 1:
            raise AmountError("one alone does not share", "share among at least 2")
        unit = fields.answer_in or fields.total.unit
        in_unit(fields.total, unit)
        finds = as_list(fields.find)
        if fields.remainder in _PART_FORMS:
            if LEFT_OVER in finds:
                raise AmountError(
                    f"nothing is left over when the rest is shared {fields.remainder}",
                    "leave out 'remainder', or find each",
                )
            fields = fields.model_copy(update={"may_be_cut": True})
        givens = MappingProxyType({"total": fields.total, "groups": fields.groups})
        return Problem(
            self.name, givens, finds, MappingProxyType(dict.fromkeys(finds, unit)), fields
        )

    def relation(self, problem: Problem[SharingFields]) -> Mapping[str, AnswerValue]:
        """total = shares × each + rest, with 0 ≤ rest < shares where shares stay whole."""
        view = _View(problem)
        total = view.total_base / view.unit.per_base
        shares = problem.given("groups").value
        if view.is_exact:
            view.check_part(total / shares)
            return {EACH: view.share(total / shares)}
        each, rest = total // shares, total % shares
        view.check_rest(Fraction(each), rest)
        return view.answers(Fraction(each), rest)

    def strategies(self, problem: Problem[SharingFields]) -> Iterator[Working]:
        """Every way to divide; things that are cut are shared whole first, or all cut."""
        view = _View(problem)
        total, opening = conversion(problem.given("total"), view.unit)
        if view.cuts_things:
            methods = iter((_whole_ones_first(view), _all_cut(view)))
        else:
            methods = ways_to_divide(view.division(total))
        for method in methods:
            told = method.after(*opening)
            yield told.working(view.answers(told.result.value, told.rest))

    def mistakes(self, problem: Problem[SharingFields]) -> Iterator[MistakenWorking]:
        """The wrong operation, the rest read wrongly, a nought forgotten."""
        view = _View(problem)
        division = view.division(in_unit(problem.given("total"), view.unit))
        yield from wrong_operations(problem, division)
        yield from nought_left_out(problem, division)
        if view.is_exact:
            yield from _part_misread(view)
        else:
            yield from _rest_misread(view, division)

    def smooth(self, problem: Problem[SharingFields]) -> Mapping[str, AnswerValue]:
        """A share as if everything could be cut, so that the kind shows."""
        view = _View(problem)
        exact = view.total_base / problem.given("groups").value / view.unit.per_base
        return dict.fromkeys(problem.finds, Amount(exact, view.unit))

    def reason(self, problem: Problem[SharingFields]) -> Rich | None:
        """Where something is left over, the answer itself does not quite double."""
        view = _View(problem)
        if view.is_exact or not view.division(view.total).rest:
            return None
        total = problem.given("total")
        return say(
            "Apart from what is left over, each would get twice as much with {new} "
            "instead of {old}.",
            new=total.like(2 * total.value),
            old=total,
        )

    def figure(
        self, problem: Problem[SharingFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """The total as one bar in equal parts, and what is left over as a dashed end."""
        view = _View(problem)
        shares = problem.given("groups")
        if shares.value > _MOST_PARTS:
            return None
        division = view.division(in_unit(problem.given("total"), view.unit))
        each = Part(division.quotient, Mark((write(view.share(division.quotient)),), False))
        parts = (each,) * int(shares.value)
        if division.rest:
            rest = division.part(division.rest)
            parts = (*parts, Part(rest.value, Mark((write(rest),), False), dashed=True))
        return BarModel(
            (Bar(view.group.plural, parts),), (), Mark((write(problem.given("total")),))
        )


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with what the workings need."""

    problem: Problem[SharingFields]

    @property
    def unit(self) -> Unit:
        return self.problem.units[self.problem.finds[0]]

    @property
    def total_base(self) -> Fraction:
        return self.problem.given("total").base

    @property
    def total(self) -> Amount:
        return Amount(self.total_base / self.unit.per_base, self.unit)

    @property
    def group(self) -> Unit:
        unit = self.problem.given("groups").unit
        return unit if unit.singular else _SHARE

    @property
    def form(self) -> Form:
        return _PART_FORMS.get(self.problem.fields.remainder, Form.AUTO)

    @property
    def is_exact(self) -> bool:
        """True where a share may be a part of one, so that nothing is left over."""
        fields = self.problem.fields
        if LEFT_OVER in self.problem.finds or fields.remainder in (LEFT_OVER, "both"):
            return False
        return fields.may_be_cut or not is_counted(self.problem.given("total"))

    @property
    def cuts_things(self) -> bool:
        """True where counted things are cut to share the last of them."""
        is_part = (self.total_base / self.problem.given("groups").value).denominator != 1
        return self.is_exact and is_part and is_counted(self.problem.given("total"))

    def division(self, total: Amount) -> Division:
        shares = self.problem.given("groups").value
        return Division(total.written_as(self.form), shares, self.group, False, self.is_exact)

    def share(self, value: Fraction) -> Amount:
        return Amount(value, self.unit, self.form)

    def answers(self, each: Fraction, rest: Fraction) -> dict[str, AnswerValue]:
        """The two numbers of a division as the problem asks for them."""
        left = Amount(rest, self.unit)
        share: AnswerValue = self.share(each)
        if self.problem.fields.remainder == "both":
            share = WithRemainder(self.share(each), left)
        return {name: share if name == EACH else left for name in self.problem.finds}

    def check_part(self, each: Fraction) -> None:
        """Raises AmountError where a share cannot be written as the author wants it."""
        remainder = self.problem.fields.remainder
        if remainder in _PART_FORMS and each.denominator == 1:
            raise AmountError(
                "it shares exactly, so there is no rest to share", "leave out 'remainder'"
            )
        is_fine = self.unit.dimension is Dimension.MONEY or _ends(each)
        fields = self.problem.fields
        if self.form is Form.FRACTION or (fields.may_be_cut and self.form is Form.AUTO):
            return
        if fields.round_to is not None:
            return
        if not is_fine:
            raise AmountError(
                f"{write_plain(self.total)} does not share exactly "
                f"among {write_plain(self.shares)}",
                "write 'remainder: as a fraction', state a rounding such as "
                "'round to: 2 decimal places', or choose other numbers",
            )

    @property
    def shares(self) -> Amount:
        return self.problem.given("groups")

    def check_rest(self, each: Fraction, rest: Fraction) -> None:
        """Raises AmountError where the author's reading does not fit the numbers."""
        reads = self.problem.fields.remainder != "none" or LEFT_OVER in self.problem.finds
        if not each:
            raise AmountError(
                f"{write_plain(self.total)} among {write_plain(self.shares)} is less than one each",
                "choose a larger total, or write 'remainder: as a fraction'",
            )
        if reads and self.unit.dimension is Dimension.MONEY:
            raise AmountError(
                "money is shared down to the last penny",
                "leave out 'remainder', or write 'round to: the nearest penny' instead",
            )
        if reads and not rest:
            raise AmountError(
                "it shares exactly, so nothing is left over",
                "leave out 'remainder', or choose other numbers",
            )
        if rest and not reads:
            raise AmountError(
                f"{write_plain(self.total)} among {write_plain(self.shares)} leaves "
                f"{write_plain(Amount(rest, self.unit))} over",
                "say what becomes of it: 'remainder: left over', 'both' or 'as a fraction'",
            )


def _ends(value: Fraction) -> bool:
    return decimal(value) is not None and (value * 10**_MOST_PLACES).denominator == 1


def _whole_ones_first(view: _View) -> Method:
    """Whole things as far as they go, the last ones in pieces."""
    total, shares = view.total, Amount(view.shares.value)
    each = Fraction(total.value // shares.value)
    rest = total.like(total.value - each * shares.value)
    piece = view.share(rest.value / shares.value)
    steps = []
    if each:
        used = total.like(each * shares.value)
        steps.append(
            step(
                "Give {each} to each, {used} in all: {rest} left.",
                equation(minus(total, used), rest),
                each=total.like(each),
                used=used,
                rest=rest,
            )
        )
    steps.append(
        step(
            f"Share {'the other ' if each else ''}{{rest}} in equal pieces: {{piece}} each.",
            equation(over(rest, shares), piece),
            rest=rest,
            piece=piece,
        )
    )
    result = view.share(each + piece.value)
    if each:
        together = equation(plus(total.like(each), piece), result)
        steps.append(step("Together: {result} each.", together, result=result))
    return Method("Whole ones first", tuple(steps), result)


def _all_cut(view: _View) -> Method:
    """Every thing cut into as many pieces as there are shares."""
    total, shares = view.total, view.shares.value
    piece = view.share(1 / shares)
    result = view.share(total.value / shares)
    steps = (
        step(
            "Cut every one into {n} equal pieces: each gets {piece} of every one.",
            equation(
                over(Amount(Fraction(1)), Amount(shares)), Amount(piece.value, form=view.form)
            ),
            n=Amount(shares),
            piece=Amount(piece.value, form=view.form),
        ),
        step(
            "There are {n} to share, so {result} each.",
            equation(times(Amount(total.value), Amount(piece.value, form=view.form)), result),
            n=Amount(total.value),
            result=result,
        ),
    )
    return Method("Every one cut", steps, result)


def _rest_misread(view: _View, division: Division) -> Iterator[MistakenWorking]:
    problem, asked = view.problem, view.problem.finds[0]
    if len(problem.finds) > 1:
        return
    each, rest = view.share(division.quotient), Amount(division.rest, view.unit)
    if asked == LEFT_OVER:
        last = step("So the answer is {each}.", each=each)
        yield misread(problem, division, "quotient given as the remainder", each, last)
        return
    if rest.value:
        last = step("So the answer is {rest}.", rest=rest)
        yield misread(problem, division, "remainder given as the answer", rest, last)
    if problem.fields.remainder == "both":
        last = step("So the answer is {each}.", each=each)
        yield misread(problem, division, "remainder ignored", each, last)


def _part_misread(view: _View) -> Iterator[MistakenWorking]:
    """The rest dropped, or written behind a point as it is: 13 ÷ 4 as 3.1."""
    total, shares = view.total, view.shares.value
    each, rest = Fraction(total.value // shares), total.value % shares
    if not rest or not each or rest.denominator != 1:
        return
    division = Division(total, shares, view.group, False)
    whole = view.share(each)
    last = step("So the answer is {each}.", each=whole)
    yield misread(view.problem, division, "remainder ignored", whole, last)
    behind = view.share(each + rest / 10).written_as(Form.DECIMAL)
    if rest < 10:
        last = step("Write the rest behind the point: {answer}.", answer=behind)
        yield misread(view.problem, division, "remainder written behind the point", behind, last)
