"""Checking an answer: undoing every operation, or trying the multiples beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.formulas.explaining import Explainer
from typeset.arithmetic.formulas.plan import Definition
from typeset.arithmetic.formulas.tree import Apply, Formula, Name, names_in
from typeset.arithmetic.formulas.units import entered, meeting
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount


@dataclass(frozen=True, slots=True)
class _Layer:
    """One operation on the way down: its result, the side that is undone, and the other."""

    sign: str
    result: Amount
    inner: Amount
    other: Amount
    inner_is_left: bool


def backwards(formula: Formula, amounts: Mapping[str, Amount], answer: Amount) -> list[Step]:
    """From the answer back to a quantity of the story; empty where no way leads back."""
    ways = {name: _layers(formula, name, amounts) for name in dict.fromkeys(names_in(formula))}
    name = max(ways, key=lambda each: len(ways[each]))
    layers = ways[name]
    if not layers:
        return _last_step_back(formula, amounts, answer)
    steps = [step("Start from the answer, {answer}, and undo every step.", answer=answer)]
    steps += [_undone(layer) for layer in layers]
    text = "That is {given}, as the story says, so the answer is right."
    return [*steps, step(text, given=amounts[name])]


def _last_step_back(formula: Formula, amounts: Mapping[str, Amount], answer: Amount) -> list[Step]:
    """Only the last operation undone, where a quantity is used more than once."""
    if not isinstance(formula, Apply) or formula.sign == "of":
        return []
    layer = _layer(formula, formula.left, formula.right, True, amounts)
    if layer is None:
        return []
    return [
        step("Start from the answer, {answer}, and undo the last step.", answer=answer),
        _undone(layer),
        step("That is {inner} again, so the last step is right.", inner=layer.inner),
    ]


def _layers(formula: Formula, name: str, amounts: Mapping[str, Amount]) -> list[_Layer]:
    """The operations from the outside down to the name; empty where one cannot be undone."""
    if list(names_in(formula)).count(name) != 1:
        return []
    layers: list[_Layer] = []
    while not isinstance(formula, Name):
        if not isinstance(formula, Apply) or formula.sign == "of":
            return []
        is_left = name in names_in(formula.left)
        inner, other = (formula.left, formula.right)[:: 1 if is_left else -1]
        layer = _layer(formula, inner, other, is_left, amounts)
        if layer is None:
            return []
        layers.append(layer)
        formula = inner
    return layers


def _layer(
    formula: Apply, inner: Formula, other: Formula, is_left: bool, amounts: Mapping[str, Amount]
) -> _Layer | None:
    result = amount_of(formula, amounts)
    mine, theirs = amount_of(inner, amounts), amount_of(other, amounts)
    left, right = (mine, theirs) if is_left else (theirs, mine)
    met = meeting(formula.sign, left.unit, right.unit)
    left = entered(left, met.left, met.left_bare)
    right = entered(right, met.right, met.right_bare)
    mine, theirs = (left, right) if is_left else (right, left)
    if not theirs.value or not result.value or not mine.value:
        return None
    return _Layer(formula.sign, result, mine, theirs, is_left)


def amount_of(formula: Formula, amounts: Mapping[str, Amount]) -> Amount:
    """What the formula makes, by its own lines, untold."""
    if isinstance(formula, Name):
        return amounts[formula.name]
    explainer = Explainer(dict(amounts), {})
    return explainer.define(Definition("it", formula), "")


def _undone(layer: _Layer) -> Step:
    result, inner, other = layer.result, layer.inner, layer.other
    made: Expression
    match layer.sign, layer.inner_is_left:
        case "+", _:
            text, made = "To undo adding {other}, take it off.", minus(result, other)
        case "\u2212", True:
            text, made = "To undo taking off {other}, put it back.", plus(result, other)
        case "\u2212", False:
            text, made = "It was taken off {other}, so find what was taken.", minus(other, result)
        case "\u00d7", _:
            text, made = "To undo multiplying by {other}, divide by it.", over(result, other)
        case "\u00f7", True:
            text, made = "To undo dividing by {other}, multiply by it.", times(result, other)
        case _:
            text, made = "{other} was divided, so find by how many.", over(other, result)
    spoken = Amount(other.value) if other.unit.is_noun else other
    return step(text, equation(made, inner), other=spoken)


def multiples_beside(dividend: Amount, divisor: Amount, whole: int) -> Iterator[Step]:
    """The multiple of the divisor that still fits, and the next that is too much.

    Raises AmountError where the two cannot be divided.
    """
    met = meeting("\u00f7", dividend.unit, divisor.unit)
    one = entered(dividend, met.left, met.left_bare)
    other = entered(divisor, met.right, met.right_bare)
    if met.result.dimension.value not in ("number", "count"):
        raise AmountError("only groups are counted in multiples")
    for old, new in ((dividend, one), (divisor, other)):
        if old.unit != new.unit and new.unit.plural:
            yield step("Use one unit: {old} is {new}.", equation(old, new), old=old, new=new)
    for count, fits in ((whole, True), (whole + 1, False)):
        if not count:
            continue
        multiple = one.like(other.value * count)
        said = {"multiple": multiple, "one": one, "count": Amount(one.like(count).value)}
        if multiple.value == one.value:
            text = "Try {count}: it makes exactly {multiple}."
        elif fits:
            text = "Try {count}: it makes {multiple}, and that is not yet {one}."
        else:
            text = "Try {count}: it makes {multiple}, and that is more than {one}."
        yield step(text, equation(times(Amount(said["count"].value), other), multiple), **said)
        if multiple.value == one.value:
            return
