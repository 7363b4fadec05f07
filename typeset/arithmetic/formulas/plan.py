"""The steps of a problem as definitions in order, each made from what is known by then."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from typeset.arithmetic.formulas.parsing import parse_formula
from typeset.arithmetic.formulas.tokens import FUNCTIONS, unknown_name
from typeset.arithmetic.formulas.tree import As, Formula, Name, names_in, substituted
from typeset.errors import AmountError
from typeset.quantities.units import Unit

_NAME = re.compile(r"^[^\W\d][\w’' -]*$")


@dataclass(frozen=True, slots=True)
class Definition:
    """`name = formula`, with the author's own sentence if any."""

    name: str
    formula: Formula
    say: str = ""


@dataclass(frozen=True, slots=True)
class TypedStep:
    """A step as typed, before its formula is read."""

    name: str
    by: str
    say: str = ""


def split_step(text: str) -> TypedStep:
    """The two sides of 'name = formula'.

    Raises AmountError where there is not exactly one '='.
    """
    name, equals, formula = text.partition("=")
    if not equals:
        raise AmountError(f"'{text}' has no '='", "write such as cost = tickets × price")
    if "=" in formula:
        raise AmountError(f"'{text}' has more than one '='", "write each step by itself")
    return TypedStep(" ".join(name.split()), formula)


@lru_cache(maxsize=256)
def plan_of(typed: tuple[TypedStep, ...], known: tuple[str, ...]) -> tuple[Definition, ...]:
    """The definitions, checked: every name is known before it is used, and made once.

    Raises AmountError otherwise.
    """
    _check_names(typed, known)
    names = [*known, *(each.name for each in typed)]
    plan: list[Definition] = []
    for each in typed:
        formula = parse_formula(each.by, names)
        if isinstance(formula, Name):
            raise AmountError(f"'{each.name}' only copies '{formula.name}'", "leave the step out")
        _check_made(each.name, formula, [*known, *(done.name for done in plan)])
        plan.append(Definition(each.name, formula, each.say))
    return tuple(plan)


def _check_names(typed: Sequence[TypedStep], known: Collection[str]) -> None:
    made: list[str] = []
    for each in typed:
        if not _NAME.match(each.name) or each.name in FUNCTIONS:
            raise AmountError(
                f"'{each.name}' cannot be the name of a step", "use words, such as cost of tickets"
            )
        if each.name in known:
            raise AmountError(
                f"'{each.name}' is a quantity of the story already", "call the step otherwise"
            )
        if each.name in made:
            raise AmountError(f"'{each.name}' is made twice", "call one of them otherwise")
        made.append(each.name)


def _check_made(name: str, formula: Formula, ready: Collection[str]) -> None:
    for used in names_in(formula):
        if used == name:
            raise AmountError(f"'{name}' is made from itself", "use what is known before it")
        if used not in ready:
            raise AmountError(
                f"'{used}' is used in '{name}' before it is made", "put its step earlier"
            )


def check_used(
    plan: Iterable[Definition],
    givens: Collection[str],
    needless: Collection[str],
    finds: Sequence[str],
) -> None:
    """Every step and quantity is used, except those declared as not needed.

    Raises AmountError for one that is not, or for one declared needless that is.
    """
    plan = tuple(plan)
    made = [each.name for each in plan]
    for name in needless:
        if name not in givens:
            raise unknown_name(name, givens)
    for name in finds:
        if name not in made:
            raise unknown_name(name, made)
    used = {name for each in plan for name in names_in(each.formula)}
    for name in made:
        if name not in used and name not in finds:
            raise AmountError(f"the step '{name}' is never used", "use it, find it or take it out")
    for name in givens:
        if name not in used and name not in needless:
            raise AmountError(
                f"'{name}' is never used", f"use it in a step, or write 'not needed: [{name}]'"
            )
        if name in used and name in needless:
            raise AmountError(f"'{name}' is used, so it is needed", "take it out of 'not needed'")


def needed(plan: Sequence[Definition], finds: Iterable[str]) -> list[Definition]:
    """The plan without the steps that nothing needs."""
    wanted = set(finds)
    kept: list[Definition] = []
    for each in reversed(plan):
        if each.name in wanted:
            kept.insert(0, each)
            wanted |= set(names_in(each.formula))
    return kept


def whole_formulas(plan: Iterable[Definition], units: Mapping[str, Unit]) -> dict[str, Formula]:
    """What every step makes, as one formula over the quantities of the story alone."""
    whole: dict[str, Formula] = {}
    for each in plan:
        formula = substituted(each.formula, whole)
        unit = units.get(each.name)
        whole[each.name] = formula if unit is None else As(formula, unit, each.name)
    return whole
