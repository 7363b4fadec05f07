"""The guard proved on every family: a fault planted in it never gets past the solver.

`examples/` holds problems of each family as a teacher types them (a file a family or one of its
questions), enough to bring out its strategies. Into each are planted, one at a time:

- a relation that gives another answer;
- in every strategy, another answer; a wrong number in each equation; the end left off.

Every one must stop the build with a SolvingError.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.published.published_items import solved
from typeset.arithmetic.answers import (
    AnswerValue,
    NameAnswer,
    RatioAnswer,
    WithRemainder,
)
from typeset.arithmetic.equations import (
    EQUAL,
    Equation,
    Expression,
    Operation,
    Parts,
    Remainder,
    Unknown,
)
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.family import AnyFamily
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.reaching import reaches
from typeset.arithmetic.solving import solve
from typeset.arithmetic.workings import Step, Working
from typeset.errors import SolvingError
from typeset.quantities.amount import Amount

FOLDER = Path(__file__).parent / "examples"


def typed_in(file: Path) -> list[dict[str, Any]]:
    found = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    return found if isinstance(found, list) else [found]


ALL = [example for file in sorted(FOLDER.glob("*.yaml")) for example in typed_in(file)]


def examples_of(name: str) -> list[dict[str, Any]]:
    return [example for example in ALL if example["structure"] == name]


EXAMPLES = [
    pytest.param(name, example, id=f"{name} {number}")
    for name in FAMILIES
    for number, example in enumerate(examples_of(name), 1)
]


def problem_of(name: str, example: Mapping[str, Any]) -> Problem[Any]:
    family = FAMILIES[name]
    fields = {key: value for key, value in example.items() if key not in ("structure", "story")}
    return family.build(family.fields_model.model_validate(fields, context={"nouns": {}}))


class Faulty:
    """A family with one thing in it replaced; all else is the sound family's."""

    def __init__(self, sound: AnyFamily, **replaced: Any) -> None:
        self._sound = sound
        self._replaced = replaced

    def __getattr__(self, name: str) -> Any:
        if name in self._replaced:
            return self._replaced[name]
        return getattr(self._sound, name)


def other_answer(value: AnswerValue) -> AnswerValue:
    match value:
        case Amount():
            return replace(value, value=value.value + 1)
        case RatioAnswer(parts=parts):
            return RatioAnswer((parts[0] + 1, *parts[1:]))
        case WithRemainder(groups=groups):
            return replace(value, groups=replace(groups, value=groups.value + 1))
        case NameAnswer(name=name):
            return NameAnswer(f"not {name}")
    raise AssertionError(f"a new kind of answer: {value!r}; say here how to falsify it")


def falsified(answers: Mapping[str, AnswerValue], asked: str) -> dict[str, AnswerValue]:
    return {**answers, asked: other_answer(answers[asked])}


def with_strategies(name: str, workings: list[Working]) -> Any:
    return Faulty(FAMILIES[name], strategies=lambda _problem: iter(workings))


def untrue(equation: Equation) -> Iterator[Equation]:
    """The equation with one number wrong, for every number whose change makes it untrue.

    A missing-number box proves nothing, so an equation that holds one is left out; so are
    comparisons, which a nearby number may well leave true.
    """
    if any(has_box(side) for side in equation.sides) or set(equation.signs) != {EQUAL}:
        return
    for index, side in enumerate(equation.sides):
        for changed in with_a_wrong_number(side):
            sides = (*equation.sides[:index], changed, *equation.sides[index + 1 :])
            yield replace(equation, sides=sides)


def has_box(side: Expression) -> bool:
    match side:
        case Unknown():
            return True
        case Operation(left=left, right=right):
            return has_box(left) or has_box(right)
        case _:
            return False


def with_a_wrong_number(side: Expression) -> Iterator[Expression]:
    match side:
        case Amount():
            yield replace(side, value=side.value + Fraction(1, 3))
        case Operation(left=left, right=right):
            yield from (replace(side, left=each) for each in with_a_wrong_number(left))
            yield from (replace(side, right=each) for each in with_a_wrong_number(right))
        case Parts(parts=parts):
            yield Parts((replace(parts[0], value=parts[0].value + Fraction(1, 3)), *parts[1:]))
        case Remainder(quotient=quotient, rest=rest):
            yield replace(side, rest=replace(rest, value=rest.value + Fraction(1, 3)))
            yield replace(side, quotient=replace(quotient, value=quotient.value + Fraction(1, 3)))
        case _:
            return


def cannot_change(equation: Equation) -> bool:
    """True where a wrong number changes nothing: 0 × 7 = 0."""
    return equation.holds()


@pytest.mark.parametrize("name", FAMILIES)
def test_every_family_has_an_example(name: str) -> None:
    file = f"tests/arithmetic/examples/{name.replace(' ', '-')}.yaml"
    assert examples_of(name), (
        f"the family '{name}' has no example: write one or more problems in {file}"
    )


def test_every_example_is_of_a_family() -> None:
    assert {each["structure"] for each in ALL} <= set(FAMILIES)


@pytest.mark.parametrize(("name", "example"), EXAMPLES)
def test_examples_are_sound_as_typed(name: str, example: dict[str, Any], tmp_path: Path) -> None:
    typed = yaml.dump(example, default_style='"', width=10_000, sort_keys=False, allow_unicode=True)
    assert solved(typed, tmp_path).workings


@pytest.mark.parametrize(("name", "example"), EXAMPLES)
def test_a_broken_relation_stops_the_build(name: str, example: dict[str, Any]) -> None:
    problem = problem_of(name, example)
    answers = FAMILIES[name].relation(problem)
    for asked in answers:
        wrong = falsified(answers, asked)
        faulty: Any = Faulty(FAMILIES[name], relation=lambda _problem, wrong=wrong: wrong)
        with pytest.raises(SolvingError, match="but the relation gives"):
            solve(faulty, problem)


@pytest.mark.parametrize(("name", "example"), EXAMPLES)
def test_a_wrong_answer_of_any_strategy_stops_the_build(name: str, example: dict[str, Any]) -> None:
    problem = problem_of(name, example)
    workings = list(FAMILIES[name].strategies(problem))
    for index, working in enumerate(workings):
        for asked in problem.finds:
            broken = replace(working, answers=falsified(working.answers, asked))
            faulty = with_strategies(name, [*workings[:index], broken, *workings[index + 1 :]])
            with pytest.raises(SolvingError, match="but the relation gives"):
                solve(faulty, problem)


@pytest.mark.parametrize(("name", "example"), EXAMPLES)
def test_a_wrong_number_in_any_equation_stops_the_build(name: str, example: dict[str, Any]) -> None:
    problem = problem_of(name, example)
    for working in FAMILIES[name].strategies(problem):
        for place, step in enumerate(working.steps):
            for equation in untrue(step.equation) if step.equation is not None else ():
                if cannot_change(equation):
                    continue
                steps = list(working.steps)
                steps[place] = Step(step.sentence, equation)
                faulty = with_strategies(name, [replace(working, steps=tuple(steps))])
                with pytest.raises(SolvingError, match="untrue equation"):
                    solve(faulty, problem)


@pytest.mark.parametrize(("name", "example"), EXAMPLES)
def test_the_end_left_off_any_strategy_stops_the_build(name: str, example: dict[str, Any]) -> None:
    """Steps are left off from the last until the answer is gone; then nothing is printed."""
    problem = problem_of(name, example)
    for working in FAMILIES[name].strategies(problem):
        asked = [working.answers[each] for each in problem.finds]
        steps = working.steps
        while steps and all(reaches(steps, value) for value in asked):
            steps = steps[:-1]
        faulty = with_strategies(name, [replace(working, steps=steps)])
        with pytest.raises(SolvingError, match="no step comes to"):
            solve(faulty, problem)


def test_most_equations_can_be_made_untrue() -> None:
    """The plants are many: a test that changes nothing would prove nothing."""
    planted = left = 0
    for example in ALL:
        name = example["structure"]
        for working in FAMILIES[name].strategies(problem_of(name, example)):
            for step in working.steps:
                for equation in untrue(step.equation) if step.equation is not None else ():
                    planted += 1
                    left += cannot_change(equation)
    assert planted > 500 and 50 * left < planted
