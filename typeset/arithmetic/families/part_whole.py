"""Part–whole: parts that make up a whole; one of them, or the whole, is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from typeset.arithmetic.adding import total_of
from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.families.additive import (
    Plan,
    check_additive,
    common_unit,
    finished,
    slips,
    workings,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount
from typeset.arithmetic.figures import Bar, BarModel, Mark, Part
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.methods import Method, conversion, in_unit, without_noun
from typeset.arithmetic.names import listed
from typeset.arithmetic.phrases import title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import NUMBER, Unit
from typeset.quantities.writing import write

WHOLE = "whole"


class PartWholeFields(FamilyFields):
    """`parts: {red: 14 kites, green: 6 kites}`; or `whole: 20 kites`, a part, and `find: green`."""

    parts: dict[str, PositiveAmount]
    whole: PositiveAmount | None = None
    find: str = WHOLE


class PartWhole(Family[PartWholeFields]):
    """whole = sum of the parts."""

    name = "part whole"
    fields_model = PartWholeFields

    def build(self, fields: PartWholeFields) -> Problem[PartWholeFields]:
        """The problem; `find` is 'whole', or the name of the one part that is not given."""
        amounts = tuple(fields.parts.values())
        _check_names(fields)
        check_additive(*amounts, *((fields.whole,) if fields.whole else ()))
        givens = dict(fields.parts)
        if fields.whole is not None:
            givens[WHOLE] = fields.whole
        unit = fields.answer_in or _unit(fields)
        in_unit(amounts[0], unit)
        units = MappingProxyType({fields.find: unit})
        return Problem(self.name, MappingProxyType(givens), (fields.find,), units, fields)

    def relation(self, problem: Problem[PartWholeFields]) -> Mapping[str, AnswerValue]:
        """whole − sum of all parts = 0, with everything but one known."""
        asked = problem.finds[0]
        parts = dict.fromkeys(problem.fields.parts, -1)
        equations = [Linear({WHOLE: 1, **parts, **({} if asked == WHOLE else {asked: -1})})]
        equations += [Linear({name: 1}, each.base) for name, each in problem.givens.items()]
        value = solve_linear(equations)[asked] / problem.units[asked].per_base
        return {asked: problem.answer(asked, value)}

    def strategies(self, problem: Problem[PartWholeFields]) -> Iterator[Working]:
        """Every way to add, or to take the known parts from the whole."""
        parts = _parts(problem)
        if problem.finds == (WHOLE,):
            yield from workings(problem, _adding(parts))
        elif len(parts) == 1:
            yield from workings(problem, _subtracting(problem, parts[0]))
        else:
            yield _known_parts_first(problem)
            yield _part_after_part(problem)

    def mistakes(self, problem: Problem[PartWholeFields]) -> Iterator[MistakenWorking]:
        """The wrong operation, slips in columns, and parts that are left out."""
        parts = _parts(problem)
        if problem.finds == (WHOLE,):
            yield from slips(problem, _adding(parts))
            yield from _part_left_out(problem)
        elif len(parts) == 1:
            yield from slips(problem, _subtracting(problem, parts[0]))
        else:
            yield from _part_left_out(problem)
            yield from _whole_added(problem)

    def figure(
        self, problem: Problem[PartWholeFields], answers: Mapping[str, AnswerValue]
    ) -> BarModel:
        """The whole as one bar over its parts."""
        asked = problem.finds[0]
        answer = answers[asked]
        assert isinstance(answer, Amount)
        parts = [
            Part(amount.base, Mark((write(amount),)))
            for name, amount in problem.givens.items()
            if name != WHOLE
        ]
        unknown = Mark((write(answer),), is_given=False)
        if asked == WHOLE:
            return BarModel((Bar("", tuple(parts)),), (), unknown)
        if answer.value > 0:
            parts.append(Part(answer.base, unknown, shaded=True))
        whole = Mark((write(problem.given(WHOLE)),))
        return BarModel((Bar("", tuple(parts)),), (), whole)


def _check_names(fields: PartWholeFields) -> None:
    if WHOLE in fields.parts:
        raise AmountError("'whole' is not one of the parts", "write it beside 'parts'")
    if fields.whole is None:
        if len(fields.parts) < 2:
            raise AmountError("a whole has at least two parts", "give another part, or the whole")
        if fields.find != WHOLE:
            raise AmountError(
                f"'{fields.find}' cannot be found without the whole", "give the whole"
            )
        return
    if not fields.parts:
        raise AmountError("no part is known", "give at least one")
    if fields.find == WHOLE or fields.find in fields.parts:
        raise AmountError(
            f"'{fields.find}' is both given and asked for",
            f"let 'find' name the part that is missing beside {listed(tuple(fields.parts), 'and')}",
        )
    known = sum((part.base for part in fields.parts.values()), Fraction(0))
    if fields.whole.base <= known:
        raise AmountError(
            "the known parts are not less than the whole, so nothing is missing",
            "give a larger whole",
        )


def _unit(fields: PartWholeFields) -> Unit:
    """A missing part is called like the whole; a whole like its parts where they agree."""
    if fields.whole is not None and fields.whole.unit.plural:
        return fields.whole.unit
    units = [part.unit for part in fields.parts.values()]
    same = all(unit == units[0] for unit in units)
    return units[0] if same or not units[0].is_noun else NUMBER


def _parts(problem: Problem[PartWholeFields]) -> tuple[Amount, ...]:
    return tuple(problem.given(name) for name in problem.fields.parts)


def _adding(parts: tuple[Amount, ...]) -> Plan:
    both = "Both" if len(parts) == 2 else "All the"
    return Plan(step(f"{both} parts together make the whole, so add."), parts)


def _subtracting(problem: Problem[PartWholeFields], part: Amount) -> Plan:
    why = step("The whole without the known part leaves the other part, so subtract.")
    return Plan(why, (problem.given(WHOLE),), part)


def _converted(problem: Problem[PartWholeFields]) -> tuple[list[Amount], Amount, list[Step]]:
    """The known parts and the whole, bare and in one unit, with the steps that write them so."""
    unit = common_unit(problem)
    amounts = [*_parts(problem), problem.given(WHOLE)]
    steps = [each for amount in amounts for each in conversion(amount, unit)[1]]
    *parts, whole = (without_noun(in_unit(amount, unit)) for amount in amounts)
    return parts, whole, steps


def _known_parts_first(problem: Problem[PartWholeFields]) -> Working:
    parts, whole, opening = _converted(problem)
    known = total_of(parts)
    rest = whole.like(whole.value - known.value)
    steps = (
        step("The known parts together: {known}.", equation(plus(*parts), known), known=known),
        step(
            "The whole without them leaves the other part: {rest}.",
            equation(minus(whole, known), rest),
            rest=rest,
        ),
    )
    return finished(problem, Method("The known parts first", (*opening, *steps), rest))


def _part_after_part(problem: Problem[PartWholeFields]) -> Working:
    parts, reached, steps = _converted(problem)
    for name, part in zip(problem.fields.parts, parts, strict=True):
        left = reached.like(reached.value - part.value)
        told = equation(minus(reached, part), left)
        steps.append(step(f"{title(name)}: take off {{part}}, {{left}} left.", told, part=part,
                          left=left))  # fmt: skip
        reached = left
    return finished(problem, Method("Taking off part after part", tuple(steps), reached))


def _part_left_out(problem: Problem[PartWholeFields]) -> Iterator[MistakenWorking]:
    """Only the first two numbers of the story are used."""
    asked = problem.finds[0]
    unit = common_unit(problem)
    parts = [without_noun(in_unit(part, unit)) for part in _parts(problem)]
    if asked == WHOLE and len(parts) > 2:
        result = total_of(parts[:2])
        worked = equation(plus(*parts[:2]), result)
    elif asked != WHOLE:
        _, whole, _ = _converted(problem)
        result = whole.like(whole.value - parts[0].value)
        worked = equation(minus(whole, parts[0]), result)
    else:
        return
    answer = in_unit(result, problem.units[asked])
    yield MistakenWorking(
        "step left out", (step("That makes {answer}.", worked, answer=answer),), {asked: answer}
    )


def _whole_added(problem: Problem[PartWholeFields]) -> Iterator[MistakenWorking]:
    parts, whole, _ = _converted(problem)
    asked = problem.finds[0]
    result = total_of([*parts, whole])
    answer = in_unit(result, problem.units[asked])
    text = "Put all the numbers together: {answer}."
    only = step(text, equation(plus(*parts, whole), result), answer=answer)
    yield MistakenWorking("adding instead of subtracting", (only,), {asked: answer})
