"""Chain of comparisons: each is so much more or fewer than another; one of them, or all
together, is known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from pydantic import BaseModel, ConfigDict, model_validator

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.additive import check_additive
from typeset.arithmetic.families.comparison_chain_mistakes import chain_mistakes
from typeset.arithmetic.families.comparison_chain_view import TOTAL, View, link_name
from typeset.arithmetic.families.comparison_chain_ways import chain_ways
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, refuse
from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import in_unit
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Unit
from typeset.quantities.writing import say, write, write_plain

_LEAST, _MOST = 2, 5


class LinkFields(BaseModel):
    """`{more: 12 shells, than: Rhys}`, `{fewer: 5 shells, than: Idris}`; `less` for measures."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)

    more: PositiveAmount | None = None
    fewer: PositiveAmount | None = None
    less: PositiveAmount | None = None
    than: str

    @model_validator(mode="after")
    def _one_way(self) -> LinkFields:
        if sum(each is not None for each in (self.more, self.fewer, self.less)) != 1:
            raise refuse(
                "a comparison says one of more, fewer and less", "write such as more: 12 shells"
            )
        return self

    @property
    def word(self) -> str:
        """Which of the three words the author uses."""
        return "more" if self.more is not None else "fewer" if self.fewer is not None else "less"

    @property
    def by(self) -> Amount:
        """The difference."""
        amount = self.more or self.fewer or self.less
        assert amount is not None
        return amount


class ChainFields(FamilyFields):
    """`comparisons: {Nell: {more: 12 shells, than: Rhys}, …}`; `known: {Idris: 20 shells}` or
    `known: {total: 43 shells}`; `find: total`, or one or several of those compared."""

    comparisons: dict[str, LinkFields]
    known: dict[str, PositiveAmount]
    find: str | list[str] = TOTAL


class ComparisonChain(Family[ChainFields]):
    """who = than + difference, for every comparison; total = all of them together."""

    name = "chain of comparisons"
    fields_model = ChainFields

    def build(self, fields: ChainFields) -> Problem[ChainFields]:
        """The problem; the comparisons must connect all that are compared, without a circle.
        A comparison is called by its first and its word in the story: {Nell more}."""
        people = _people(fields)
        _check(fields, people)
        amounts = [*fields.known.values(), *(each.by for each in fields.comparisons.values())]
        check_additive(*amounts)
        givens = dict(fields.known)
        givens |= {link_name(who, each.word): each.by for who, each in fields.comparisons.items()}
        unit = fields.answer_in or _unit(amounts)
        in_unit(amounts[0], unit)
        finds = as_list(fields.find)
        units = MappingProxyType(dict.fromkeys(finds, unit))
        return Problem(self.name, MappingProxyType(givens), finds, units, fields)

    def relation(self, problem: Problem[ChainFields]) -> Mapping[str, AnswerValue]:
        """who − than = ± difference; total − all of them = 0, with one amount known."""
        fields = problem.fields
        people = _people(fields)
        equations = [Linear({TOTAL: 1, **dict.fromkeys(people, -1)})]
        for who, each in fields.comparisons.items():
            by = problem.given(link_name(who, each.word)).base
            equations.append(Linear({who: 1, each.than: -1}, by if each.word == "more" else -by))
        (known,) = fields.known
        equations.append(Linear({known: 1}, problem.given(known).base))
        values = solve_linear(equations)
        for person in people:
            if values[person] < 0:
                raise AmountError(
                    f"'{person}' would be less than nothing", "choose smaller differences"
                )
        return {
            name: problem.answer(name, problem.units[name].of_base(values[name]))
            for name in problem.finds
        }

    def strategies(self, problem: Problem[ChainFields]) -> Iterator[Working]:
        """One after another, or all differences from one; from a total, all made equal."""
        yield from chain_ways(View.of(problem))

    def mistakes(self, problem: Problem[ChainFields]) -> Iterator[MistakenWorking]:
        """A difference on the wrong side, from the wrong one, or not at all."""
        yield from chain_mistakes(View.of(problem))

    def reason(self, problem: Problem[ChainFields]) -> Rich | None:
        """From a total, equal parts are shared; otherwise the differences alone tell it."""
        (known,) = problem.fields.known
        if known != TOTAL:
            by = next(iter(problem.fields.comparisons.values())).by
            text = "Every difference, such as {by}, is only added or taken off."
            return say(text, by=by)
        view = View.of(problem)
        return say(
            "First the differences are taken off {total} or added to it. Then {n} equal parts "
            "are left, so you divide by {n}.",
            total=problem.given(TOTAL),
            n=Amount(view.count),
        )

    def probed(self, problem: Problem[ChainFields]) -> tuple[str, ...]:
        """All givens; where one is known and the total asked for, only what changes one of
        the amounts: the others come into the total several times over."""
        if TOTAL in problem.fields.known or problem.finds[0] != TOTAL:
            return tuple(problem.givens)
        return View.of(problem).end_links()

    def figure(
        self, problem: Problem[ChainFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel | None:
        """A bar for each, the differences between their ends, and the total beside them."""
        view = View.of(problem)
        values = view.values
        if any(value <= 0 for value in values.values()):
            return None
        every = {**values, TOTAL: sum(values.values())}
        told_as = {name: view.amount(value) for name, value in every.items()}
        told_as |= {name: each for name, each in answers.items() if isinstance(each, Amount)}
        told_as |= problem.givens
        bars = tuple(
            Bar(name, (Part(value, _mark(problem, told_as, name)),))
            for name, value in values.items()
        )
        order = list(values)
        gaps = tuple(
            Brace(
                order.index(link.larger),
                _mark(problem, told_as, link.name),
                gap_to=order.index(link.smaller),
            )
            for link in view.links
        )
        asks_total = TOTAL in (*problem.givens, *problem.finds)
        total = _mark(problem, told_as, TOTAL) if asks_total else None
        told = ", ".join(f"{name} {write_plain(each)}" for name, each in problem.givens.items())
        return BarModel(bars, gaps, total, f"{len(bars)} bars, compared one by one: {told}.")


def _mark(problem: Problem[ChainFields], told_as: Mapping[str, Amount], name: str) -> Mark:
    """An amount as the story or the answer writes it."""
    return Mark((write(told_as[name]),), is_given=name in problem.givens)


def _people(fields: ChainFields) -> tuple[str, ...]:
    """All that are compared, in the order of the comparisons."""
    pairs = ((who, each.than) for who, each in fields.comparisons.items())
    return tuple(dict.fromkeys(name for pair in pairs for name in pair))


def _check(fields: ChainFields, people: tuple[str, ...]) -> None:
    """Raises AmountError where the comparisons do not hang together."""
    if TOTAL in people:
        raise AmountError("'total' is not one of those compared", "write it under 'known'")
    if not _LEAST <= len(fields.comparisons) <= _MOST:
        raise AmountError(
            f"a chain has {_LEAST} to {_MOST} comparisons", "for one, write structure: comparison"
        )
    if len(fields.known) != 1:
        raise AmountError("one amount is known", "write such as known: {Idris: 20 shells}")
    (known,) = fields.known
    one_of(known, (*people, TOTAL))
    for name in as_list(fields.find):
        one_of(name, (*people, TOTAL))
        if name == known:
            raise AmountError(f"'{name}' is both given and asked for", "find another one")
    if len(set(as_list(fields.find))) != len(as_list(fields.find)):
        raise AmountError("the same is asked for twice", "ask for each once")
    reached = {people[0]}
    pairs = [{who, each.than} for who, each in fields.comparisons.items()]
    for _ in pairs:
        reached |= {name for pair in pairs if pair & reached for name in pair}
    if reached != set(people) or len(pairs) != len(people) - 1:
        raise AmountError(
            "the comparisons do not lead from one to every other",
            "compare each with one that is compared already, and none twice",
        )


def _unit(amounts: list[Amount]) -> Unit:
    return next((each.unit for each in amounts if each.unit.plural), amounts[0].unit)
