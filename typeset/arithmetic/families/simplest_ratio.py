"""A ratio in its simplest form, from amounts that are told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from typeset.arithmetic.answers import AnswerValue, RatioAnswer
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.simplest_ratio_mistakes import ratio_mistakes
from typeset.arithmetic.families.simplest_ratio_ways import WHOLE, RatioView, ways_to_simplify
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import check_alike, conversion, finest_unit, in_unit, is_counted
from typeset.arithmetic.names import as_list, one_of
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import NUMBER, Dimension
from typeset.quantities.writing import say

RATIO = "ratio"
# More sides than these nobody compares at once.
_MOST_SIDES = 4


class SimplestRatioFields(FamilyFields):
    """`parts: {gulls: 12, terns: 18}`; in another order with `find: [terns, gulls]`.

    With `whole: 30 birds` the one part that is asked for and not given is what is left.
    """

    parts: dict[str, PositiveAmount]
    whole: PositiveAmount | None = None
    # The sides in the order that is asked for; 'whole' may be one of them.
    find: list[str] | None = None


class SimplestRatio(Family[SimplestRatioFields]):
    """a : b = ka : kb; the simplest form has whole numbers without a common factor."""

    name = "simplest ratio"
    fields_model = SimplestRatioFields

    def build(self, fields: SimplestRatioFields) -> Problem[SimplestRatioFields]:
        """The problem; without `find` all the parts are compared as they stand."""
        sides = _sides(fields)
        _check_sides(fields, sides)
        amounts = [*fields.parts.values(), *((fields.whole,) if fields.whole else ())]
        check_alike(*amounts)
        if any(each.unit.dimension is Dimension.CLOCK for each in amounts):
            raise AmountError(
                "times of day are in no ratio", "give lengths of time, such as 35 min"
            )
        givens = dict(fields.parts)
        if fields.whole is not None:
            givens[WHOLE] = fields.whole
        units = MappingProxyType({RATIO: NUMBER})
        return Problem(self.name, MappingProxyType(givens), (RATIO,), units, fields)

    def relation(self, problem: Problem[SimplestRatioFields]) -> Mapping[str, AnswerValue]:
        """whole = sum of the parts; then all sides over their greatest common measure."""
        sides = _sides(problem.fields)
        missing = _missing(problem.fields, sides)
        equations = [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        if missing is not None or WHOLE in sides:
            names = [*problem.fields.parts, *([missing] if missing else [])]
            equations.append(Linear({WHOLE: 1, **dict.fromkeys(names, -1)}))
        values = solve_linear(equations)
        measure = values[sides[0]]
        for name in sides[1:]:
            # Euclid's algorithm, which measures fractions as well as whole numbers.
            other = values[name]
            while other:
                measure, other = other, measure % other
        return {RATIO: RatioAnswer(tuple(values[name] / measure for name in sides))}

    def strategies(self, problem: Problem[SimplestRatioFields]) -> Iterator[Working]:
        """By the highest common factor at once, step by step, or through one."""
        view = _view(problem)
        for method in ways_to_simplify(view):
            yield Working(method.name, (*view.opening, *method.steps), {RATIO: method.answer})

    def mistakes(self, problem: Problem[SimplestRatioFields]) -> Iterator[MistakenWorking]:
        """Turned round, not simple enough, part : whole, units unlike, the same taken off."""
        yield from ratio_mistakes(_view(problem))

    def probed(self, problem: Problem[SimplestRatioFields]) -> tuple[str, ...]:
        """Every amount that is told."""
        return tuple(problem.givens)

    def smooth(self, problem: Problem[SimplestRatioFields]) -> Mapping[str, AnswerValue]:
        """How many times the second side the first one is: a ratio itself has no size."""
        first, second = _view(problem).amounts[:2]
        return {RATIO: Amount(first.base / second.base)}

    def reason(self, problem: Problem[SimplestRatioFields]) -> Rich | None:
        """Twice as much of each is the same ratio; a missing side has to be found first."""
        return _reason(_view(problem))


def _sides(fields: SimplestRatioFields) -> tuple[str, ...]:
    return as_list(fields.find) if fields.find else tuple(fields.parts)


def _missing(fields: SimplestRatioFields, sides: tuple[str, ...]) -> str | None:
    """The part that is what the whole leaves, if one is asked for."""
    return next((side for side in sides if side not in fields.parts and side != WHOLE), None)


def _check_sides(fields: SimplestRatioFields, sides: tuple[str, ...]) -> None:
    if WHOLE in fields.parts:
        raise AmountError("'whole' is not one of the parts", "write it beside 'parts'")
    if not 2 <= len(sides) <= _MOST_SIDES or len(set(sides)) != len(sides):
        raise AmountError(
            "a ratio has two, three or four sides", "write such as {gulls: 12, terns: 18}"
        )
    unknown = [side for side in sides if side not in fields.parts and side != WHOLE]
    if fields.whole is None:
        for side in unknown:
            one_of(side, (*fields.parts, WHOLE))
        return
    if len(unknown) > 1:
        raise AmountError(
            f"neither '{unknown[0]}' nor '{unknown[1]}' is known", "give one of them under 'parts'"
        )
    if not unknown:
        raise AmountError(
            "the whole is known without it",
            "leave out 'whole', or ask for a part that is not given",
        )
    if sum(each.base for each in fields.parts.values()) >= fields.whole.base:
        raise AmountError(f"nothing of the whole is left for '{unknown[0]}'", "give a larger whole")


def _view(problem: Problem[SimplestRatioFields]) -> RatioView:
    """The sides in one unit, with the steps that find and convert them."""
    fields = problem.fields
    sides = _sides(fields)
    unit = finest_unit(*problem.givens.values())
    steps: list[Step] = []
    known: dict[str, Amount] = {}
    for name, amount in problem.givens.items():
        known[name] = amount
        if not is_counted(amount):
            known[name], more = conversion(amount, unit)
            steps.extend(more)
    unlike = bool(steps)
    missing = _missing(fields, sides)
    parts = [known[name] for name in fields.parts]
    if missing is not None:
        known[missing] = _rest(known[WHOLE], parts, missing, steps)
    elif WHOLE in sides:
        known[WHOLE] = _all(parts, steps)
    return RatioView(
        problem,
        sides,
        tuple(_number(known[side]) for side in sides),
        {name: _number(each) for name, each in known.items()},
        tuple(steps),
        unlike,
    )


def _number(amount: Amount) -> Amount:
    return Amount(amount.value, form=amount.form) if is_counted(amount) else amount


def _rest(whole: Amount, parts: list[Amount], missing: str, steps: list[Step]) -> Amount:
    left = whole
    for part in parts:
        rest = in_unit(left, whole.unit).like(left.value - part.value)
        text = f"{title(missing)}: {{whole}} without {{part}} leaves {{rest}}."
        told = {"whole": _number(left), "part": _number(part), "rest": _number(rest)}
        steps.append(step(text, equation(minus(left, part), rest), **told))
        left = rest
    return left


def _all(parts: list[Amount], steps: list[Step]) -> Amount:
    total = parts[0].like(sum(part.value for part in parts))
    text = "The whole: {total} in all."
    steps.append(step(text, equation(plus(*parts), total), total=_number(total)))
    return total


def _reason(view: RatioView) -> Rich:
    sides = zip(view.sides, view.amounts, strict=True)
    amounts = [view.problem.givens.get(side, amount) for side, amount in sides]
    twice = [each.like(2 * each.value) for each in amounts]
    much = "many" if is_counted(amounts[0]) else "much"
    told = say(
        f"Twice as {much} of each, {{new}}, would be in the same ratio as {{old}}.",
        new=view.listed(twice),
        old=view.listed(amounts),
    )
    if not view.finds_a_side:
        return told
    missing = next(side for side in view.sides if side not in view.problem.givens)
    which = the(missing)
    lead = say(f"To find {which}, the amounts have to be "
               f"{'added' if missing == WHOLE else 'subtracted'} first. ")  # fmt: skip
    return (*lead, *told)
