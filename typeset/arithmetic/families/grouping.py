"""Grouping: a total put into groups of a known size; how many groups, and what of the rest?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue, WithRemainder
from typeset.arithmetic.dividing import ways_to_divide
from typeset.arithmetic.division import Division
from typeset.arithmetic.equations import equation, minus, over, plus
from typeset.arithmetic.families.division_mistakes import (
    misread,
    nought_left_out,
    wrong_operations,
)
from typeset.arithmetic.families.grouping_view import grouping_figure
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, UnitField
from typeset.arithmetic.figures import Figure
from typeset.arithmetic.methods import (
    check_alike,
    conversion,
    finest_unit,
    in_unit,
    is_counted,
    without_noun,
)
from typeset.arithmetic.names import as_list
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Unit, noun
from typeset.quantities.writing import say, write_plain

GROUPS = "groups"
LEFT_OVER = "left over"
SHORT = "short"
UP, DOWN, BOTH, NONE = "round up", "round down", "both", "none"
_Found = Literal["groups", "left over", "short"]
_GROUP = noun("group", "groups")


class GroupingFields(FamilyFields):
    """`total: 52 passengers`, `each: 8 passengers`, `remainder: round up`, `answer in: boats`.

    `find: short` asks how many more are needed for another full group. `groups called` names
    the groups in the workings where the answer is not the number of groups.
    """

    total: PositiveAmount
    each: PositiveAmount
    find: _Found | list[_Found] = "groups"
    remainder: Literal["none", "round up", "round down", "both"] = "none"
    groups_called: UnitField | None = Field(default=None, alias="groups called")


class Grouping(Family[GroupingFields]):
    """total = full groups × each + rest, with 0 ≤ rest < each."""

    name = "grouping"
    fields_model = GroupingFields

    def build(self, fields: GroupingFields) -> Problem[GroupingFields]:
        """The problem; total and each may be in different units of one kind."""
        check_alike(fields.total, fields.each)
        if fields.each.value == 1 and is_counted(fields.each):
            raise AmountError("groups of one need no dividing", "choose at least 2 in each")
        finds = as_list(fields.find)
        if fields.remainder != NONE and GROUPS not in finds:
            raise AmountError(
                f"'remainder' says how to count the groups, but 'find' asks for {finds[0]}",
                "leave out 'remainder'",
            )
        if fields.remainder == BOTH and len(finds) > 1:
            raise AmountError("the rest is asked for twice", "leave out 'remainder: both'")
        units = MappingProxyType({asked: _unit(asked, fields) for asked in finds})
        givens = MappingProxyType({"total": fields.total, "each": fields.each})
        return Problem(self.name, givens, finds, units, fields)

    def relation(self, problem: Problem[GroupingFields]) -> Mapping[str, AnswerValue]:
        """total = groups × each + rest with 0 ≤ rest < each, in base units; ⌈total ÷ each⌉ for
        groups rounded up; −total modulo each for what is short."""
        total, each = problem.given("total").base, problem.given("each").base
        groups, rest = total // each, total % each
        view = _View(problem)
        view.check(groups, rest)
        values: dict[str, Fraction | int] = {
            GROUPS: -(-total // each) if problem.fields.remainder == UP else groups,
            LEFT_OVER: rest,
            SHORT: -total % each,
        }
        answers: dict[str, AnswerValue] = {}
        for asked in problem.finds:
            size = 1 if asked == GROUPS else problem.units[asked].per_base
            answers[asked] = problem.answer(asked, values[asked] / Fraction(size))
        if problem.fields.remainder == BOTH:
            left = Amount(rest / view.unit.per_base, view.unit)
            answers[GROUPS] = WithRemainder(problem.answer(GROUPS, groups), left)
        return answers

    def strategies(self, problem: Problem[GroupingFields]) -> Iterator[Working]:
        """Every way to divide, then what the rest means."""
        view = _View(problem)
        opening = (*view.conversion("total")[1], *view.conversion("each")[1])
        for method in ways_to_divide(view.division()):
            told = method.after(*opening)
            answers = view.answers(told.result.value, told.rest)
            yield told.working(answers, *_reading(view, told.result.value, told.rest))

    def mistakes(self, problem: Problem[GroupingFields]) -> Iterator[MistakenWorking]:
        """The rest read wrongly, the wrong operation, a nought forgotten."""
        view = _View(problem)
        division = view.division()
        if len(problem.finds) == 1:
            yield from _misread(view, division)
        if problem.finds[0] != SHORT:
            yield from wrong_operations(problem, division)
        yield from nought_left_out(problem, division)
        yield from _converted_wrongly(view)

    def smooth(self, problem: Problem[GroupingFields]) -> Mapping[str, AnswerValue]:
        """The groups before any rounding, so that the kind shows."""
        exact = problem.given("total").base / problem.given("each").base
        return dict.fromkeys(problem.finds, Amount(exact, _View(problem).group))

    def reason(self, problem: Problem[GroupingFields]) -> Rich | None:
        """Where something is left over, the answer itself does not quite double."""
        view = _View(problem)
        if not view.division().rest:
            return None
        total = problem.given("total")
        return say(
            f"Apart from what is left over, {{new}} instead of {{old}} would make twice as many "
            f"{view.group.plural}.",
            new=total.like(2 * total.value),
            old=total,
        )

    def figure(
        self, problem: Problem[GroupingFields], answers: Mapping[str, AnswerValue]
    ) -> Figure:
        """Counters in rings where they can be counted, else one group marked off on a bar."""
        division = _View(problem).division()
        return grouping_figure(division, problem.given("total"), problem.given("each"))


def _unit(asked: str, fields: GroupingFields) -> Unit:
    answer_in = fields.answer_in
    if asked == GROUPS:
        return answer_in or fields.groups_called or NUMBER
    finest = finest_unit(fields.total, fields.each)
    if fields.find == asked and answer_in is not None:
        in_unit(fields.total, answer_in)
        return answer_in
    return finest if not finest.is_noun and finest.plural else fields.total.unit


@dataclass(frozen=True, slots=True)
class _View:
    """The problem with what the workings need."""

    problem: Problem[GroupingFields]

    @property
    def unit(self) -> Unit:
        """The unit that the division is worked in."""
        total, each = self.problem.given("total"), self.problem.given("each")
        if is_counted(total):
            return total.unit if total.unit.plural else each.unit
        return finest_unit(total, each)

    @property
    def group(self) -> Unit:
        """What a group is called."""
        fields = self.problem.fields
        named = self.problem.units.get(GROUPS, NUMBER)
        return next(
            (unit for unit in (named, fields.groups_called) if unit and unit.singular), _GROUP
        )

    def conversion(self, name: str) -> tuple[Amount, tuple[Step, ...]]:
        return conversion(self.problem.given(name), self.unit)

    def division(self) -> Division:
        each = self.conversion("each")[0].value
        return Division(self.conversion("total")[0], each, self.group, grouping=True)

    def said(self, groups: Fraction) -> Amount:
        return Amount(groups, self.group)

    def answers(self, groups: Fraction, rest: Fraction) -> dict[str, AnswerValue]:
        """Full groups and the rest (in `unit`), as the problem asks for them."""
        return {asked: self.answer(asked, groups, rest) for asked in self.problem.finds}

    def answer(self, asked: str, groups: Fraction, rest: Fraction) -> AnswerValue:
        remainder, unit = self.problem.fields.remainder, self.problem.units[asked]
        if asked == LEFT_OVER:
            return in_unit(Amount(rest, self.unit), unit)
        if asked == SHORT:
            return in_unit(Amount(self.division().by - rest, self.unit), unit)
        if remainder == BOTH:
            return WithRemainder(Amount(groups, unit), Amount(rest, self.unit))
        return Amount(groups + 1 if remainder == UP else groups, unit)

    def check(self, groups: int, rest: Fraction) -> None:
        """Raises AmountError where the author's reading does not fit the numbers."""
        total, each = (write_plain(self.problem.given(name)) for name in ("total", "each"))
        remainder, finds = self.problem.fields.remainder, self.problem.finds
        if not groups:
            raise AmountError(f"{total} do not fill one group of {each}", "choose a larger total")
        reads = remainder != NONE or finds != (GROUPS,)
        if reads and not rest:
            raise AmountError(
                f"{total} divide exactly into groups of {each}, so nothing is left over",
                "leave out 'remainder', or choose other numbers",
            )
        if rest and not reads:
            raise AmountError(
                f"{total} in groups of {each} leave "
                f"{write_plain(Amount(rest / self.unit.per_base, self.unit))} over",
                "say what becomes of it: 'remainder: round up', 'round down' or 'both'",
            )


def _reading(view: _View, groups: Fraction, rest: Fraction) -> Iterator[Step]:
    """What the rest means for the answer."""
    left = Amount(rest, view.unit)
    remainder, group = view.problem.fields.remainder, view.group.singular
    if remainder == UP:
        yield step(
            f"For the other {{rest}}, one more {group}: {{groups}}.",
            equation(plus(Amount(groups), Amount(Fraction(1))), Amount(groups + 1)),
            rest=left,
            groups=view.said(groups + 1),
        )
    elif remainder == DOWN:
        yield step(
            f"What is left over does not make a full {group}: {{groups}}.",
            groups=view.said(groups),
        )
    if SHORT in view.problem.finds:
        each = view.division().part(view.division().by)
        missing = each.like(each.value - rest)
        yield step(
            f"One more full {group} is {{each}}: {{missing}} more.",
            equation(minus(each, without_noun(left)), missing),
            each=each,
            missing=missing,
        )
    last = view.answers(groups, rest).get(LEFT_OVER)
    if isinstance(last, Amount) and last.unit != view.unit and not is_counted(last):
        yield conversion(left, last.unit)[1][0]


def _misread(view: _View, division: Division) -> Iterator[MistakenWorking]:
    """A right division, whose rest is then dropped, counted, or taken for the answer."""
    problem, asked, remainder = view.problem, view.problem.finds[0], view.problem.fields.remainder
    if not division.rest:
        return
    full = Amount(division.quotient, view.group)
    rest = division.part(division.rest)
    missing = division.part(division.by - division.rest)
    both = WithRemainder(full, rest)
    more = full.like(full.value + 1)
    named = step("So the answer is {full} remainder {rest}.", full=Amount(full.value),
                 rest=Amount(rest.value))  # fmt: skip
    says = {
        "remainder ignored": (full, asked == GROUPS and remainder in (UP, BOTH)),
        "remainder rounded up": (more, asked == GROUPS and remainder == DOWN),
        "remainder given as the answer": (rest, asked == GROUPS),
        "quotient given as the remainder": (full, asked != GROUPS),
        "left over and missing exchanged": (
            rest if asked == SHORT else missing, asked in (SHORT, LEFT_OVER),
        ),
    }  # fmt: skip
    for name, (value, fits) in says.items():
        if fits:
            answer = Amount(value.value, problem.units[asked])
            last = step("So the answer is {answer}.", answer=answer)
            yield misread(problem, division, name, answer, last)
    if asked == GROUPS and remainder in (UP, DOWN):
        yield misread(problem, division, "remainder left as it is", both, named)


def _converted_wrongly(view: _View) -> Iterator[MistakenWorking]:
    """1.5 kg written as 150 g: a hundred for a thousand."""
    total, each = view.problem.given("total"), view.problem.given("each")
    if is_counted(total) or total.unit == each.unit or view.problem.finds != (GROUPS,):
        return
    scale = total.unit.per_base / each.unit.per_base
    wrong = Fraction(1000 if scale == 100 else 100)
    if scale not in (10, 100, 1000):
        return
    taken = each.like(total.value * wrong)
    groups = Amount(taken.value / each.value, view.group)
    steps = (
        step("Write {old} as {new}.", equation(total, taken), old=total, new=taken),
        step("So {groups}.", equation(over(taken, each), Amount(groups.value)), groups=groups),
    )
    answer = Amount(groups.value, view.problem.units[GROUPS])
    yield MistakenWorking("unit converted by the wrong number", steps, {GROUPS: answer}, slip=True)
