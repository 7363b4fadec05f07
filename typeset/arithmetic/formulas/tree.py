"""Formulas as trees over names of quantities."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TypeAlias

from typeset.arithmetic.equations import OF, PLUS
from typeset.quantities.units import Unit
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

STRENGTH = {PLUS: 1, MINUS: 1, TIMES: 2, DIVIDE: 2, OF: 3}


@dataclass(frozen=True, slots=True)
class Name:
    """A quantity, a fact, or what an earlier step made."""

    name: str


@dataclass(frozen=True, slots=True)
class Apply:
    """`left sign right`; the sign is one of + − × ÷ of."""

    sign: str
    left: Formula
    right: Formula


@dataclass(frozen=True, slots=True)
class Call:
    """A function of the trade by name, such as hcf or round up."""

    function: str
    arguments: tuple[Formula, ...]


@dataclass(frozen=True, slots=True)
class As:
    """What an author has given a unit: a count that is money, metres in centimetres."""

    inner: Formula
    unit: Unit
    name: str


Formula: TypeAlias = Name | Apply | Call | As


def names_in(formula: Formula) -> Iterator[str]:
    """Every name, in reading order and as often as it stands there."""
    match formula:
        case Name(name=name):
            yield name
        case Apply(left=left, right=right):
            yield from names_in(left)
            yield from names_in(right)
        case Call(arguments=arguments):
            for argument in arguments:
                yield from names_in(argument)
        case As(inner=inner):
            yield from names_in(inner)


def parts_of(formula: Formula) -> Iterator[Formula]:
    """The formula and everything in it, outermost first."""
    yield formula
    match formula:
        case Apply(left=left, right=right):
            yield from parts_of(left)
            yield from parts_of(right)
        case Call(arguments=arguments):
            for argument in arguments:
                yield from parts_of(argument)
        case As(inner=inner):
            yield from parts_of(inner)


def rebuilt(formula: Formula, change: Callable[[Formula], Formula]) -> Formula:
    """The formula with `change` applied to every part, innermost first."""
    match formula:
        case Apply(left=left, right=right):
            formula = replace(formula, left=rebuilt(left, change), right=rebuilt(right, change))
        case Call(arguments=arguments):
            formula = replace(formula, arguments=tuple(rebuilt(a, change) for a in arguments))
        case As(inner=inner):
            formula = replace(formula, inner=rebuilt(inner, change))
    return change(formula)


def substituted(formula: Formula, known: Mapping[str, Formula]) -> Formula:
    """The formula with the names in `known` put in as formulas."""
    return rebuilt(
        formula, lambda part: known.get(part.name, part) if isinstance(part, Name) else part
    )


def written(formula: Formula) -> str:
    """The formula in names and signs as an author types it, with the brackets that it needs."""
    return _written(formula, _as_typed)


def told(formula: Formula) -> str:
    """The formula for a line of working: functions in words, 'the mean of gulls and terns'."""
    return _written(formula, _in_words)


_CallWriter: TypeAlias = Callable[[str, list[str]], str]


def _written(formula: Formula, call: _CallWriter) -> str:
    match formula:
        case Name(name=name):
            return name
        case As(inner=inner):
            return _written(inner, call)
        case Call(function=function, arguments=arguments):
            return call(function, [_written(argument, call) for argument in arguments])
        case Apply(sign=sign, left=left, right=right):
            first = _operand(left, formula, False, call)
            return f"{first} {sign} {_operand(right, formula, True, call)}"


def _operand(inner: Formula, outer: Apply, is_right: bool, call: _CallWriter) -> str:
    text = _written(inner, call)
    bare = inner.inner if isinstance(inner, As) else inner
    is_words = isinstance(bare, Call) and call is _in_words
    return f"({text})" if is_words or needs_brackets(inner, outer, is_right) else text


def _as_typed(function: str, arguments: list[str]) -> str:
    return f"{function}({', '.join(arguments)})"


def _in_words(function: str, arguments: list[str]) -> str:
    listed = f"{', '.join(arguments[:-1])} and {arguments[-1]}"
    match function:
        case "quotient" | "round down":
            return f"{arguments[0]} ÷ {arguments[1]}, full ones only"
        case "round up":
            return f"{arguments[0]} ÷ {arguments[1]}, rounded up"
        case "remainder":
            return f"what {arguments[0]} ÷ {arguments[1]} leaves over"
        case "difference":
            return f"the difference between {listed}"
        case "larger of" | "smaller of":
            return f"the {function} {listed}"
    return f"the {function} of {listed}"


def needs_brackets(inner: Formula, outer: Apply, is_right: bool) -> bool:
    """True where reading order would change the meaning."""
    inner = inner.inner if isinstance(inner, As) else inner
    if not isinstance(inner, Apply):
        return False
    mine, theirs = STRENGTH[inner.sign], STRENGTH[outer.sign]
    associative = (outer.sign, inner.sign) in {(PLUS, PLUS), (TIMES, TIMES)}
    return mine < theirs or (is_right and mine == theirs and not associative)
