"""Wrong ways to the number in the box."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from typeset.arithmetic.equations import (
    PLUS,
    Expression,
    Operation,
    equation,
    has_unknown,
    operations,
    plus,
    times,
    value_of,
)
from typeset.arithmetic.families.missing_number_ways import Box, Layer, peeled, worked_out
from typeset.arithmetic.families.number_chain_ways import is_tidy
from typeset.arithmetic.families.number_sentence import Sentence, box_value, filled, leaves
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_AGAIN = {
    PLUS: "Add {other}: {new}.",
    MINUS: "Subtract {other}: {new}.",
    TIMES: "Multiply by {other}: {new}.",
    DIVIDE: "Divide by {other}: {new}.",
}


def mistakes_of(box: Box) -> Iterator[MistakenWorking]:
    """The wrong ways that the sentence invites, those with tidy numbers above 0."""
    for name, found, steps in _wrong(box):
        if is_tidy(found) and found.value > 0:
            yield MistakenWorking(name, tuple(steps), box.answer(found.value))


def _wrong(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    if box.balanced:
        yield from _answer_next(box)
        yield from _all_added(box)
    yield from _turned_round(box)
    for at in range(len(box.layers)):
        yield from _repeated(box, at)
    if len(box.layers) > 1:
        yield from _wrong_order(box)
        yield from _stopped_early(box)


def _answer_next(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    """'=' taken for 'makes': what comes next is the answer."""
    name = "equals taken as do it now"
    sentence = box.sentence
    if has_unknown(sentence.right):
        found = box.number(value_of(sentence.left))
        text = "The sum makes {found}, so {found} goes in the box."
        yield name, found, [step(text, equation(sentence.left, found), found=found)]
        return
    first = next(leaves(sentence.right))
    try:
        found = box.number(box_value(Sentence(sentence.left, first)))
    except (AmountError, ZeroDivisionError):
        return
    line = filled(sentence.left, found)
    text = "The answer is {first}, so the box is {found}."
    yield name, found, [step(text, equation(line, first), first=first, found=found)]


def _all_added(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    sides = (box.sentence.left, box.sentence.right)
    if {each.sign for side in sides for each in operations(side)} != {PLUS}:
        return
    total = plus(*box.sentence.numbers)
    found = box.number(value_of(total))
    yield (
        "all numbers added",
        found,
        [step("Add everything: {found}.", equation(total, found), found=found)],
    )


def _opening(box: Box) -> tuple[Amount, list[Step]]:
    return worked_out(box, box.sentence.known_side, "One side comes to {found}.")


def _done(box: Box, sign: str, now: Amount, other: Amount) -> tuple[Amount, Step]:
    """The operation itself, where it should be undone."""
    line: Expression = Operation(sign, now, other)
    new = box.number(value_of(line))
    return new, step(_AGAIN[sign], equation(line, new), other=other, new=new)


def _other(box: Box, layer: Layer) -> tuple[Amount, list[Step]]:
    return worked_out(box, layer.other, "Work out what is known: {found}.")


def _repeated(box: Box, at: int) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    """Layer number `at` is done again, the others are undone rightly."""
    if box.layers[at].is_turned:
        return
    now, steps = _opening(box)
    for index, layer in enumerate(box.layers):
        other, more = _other(box, layer)
        if index == at and layer.sign == DIVIDE and not other.value:
            return
        now, told = (
            _done(box, layer.sign, now, other)
            if index == at
            else _peeled_or_none(box, layer, now, other)
        )
        if now.value < 0 or not is_tidy(now):
            return
        steps += [*more, told]
    yield "operation repeated instead of inverted", now, steps


def _peeled_or_none(box: Box, layer: Layer, now: Amount, other: Amount) -> tuple[Amount, Step]:
    """The layer undone; where that would divide by 0, a number that is refused."""
    try:
        return peeled(box, layer, now, other)
    except ZeroDivisionError:
        return Amount(Fraction(-1)), step("")


def _turned_round(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    """45 − box = 20 answered by 45 + 20, and 36 ÷ box = 4 by 36 × 4."""
    now, steps = _opening(box)
    if len(box.layers) != 1 or not box.layers[0].is_turned:
        return
    layer = box.layers[0]
    other, more = _other(box, layer)
    line = plus(now, other) if layer.sign == MINUS else times(now, other)
    found = box.number(value_of(line))
    text = "Undo the subtraction by adding: {found}."
    if layer.sign == DIVIDE:
        text = "Undo the division by multiplying: {found}."
    last = step(text, equation(line, found), found=found)
    yield "subtraction or division turned round", found, [*steps, *more, last]


def _wrong_order(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    """The innermost operation undone first."""
    if any(layer.is_turned for layer in box.layers):
        return
    now, steps = _opening(box)
    for layer in reversed(box.layers):
        other, more = _other(box, layer)
        now, told = _peeled_or_none(box, layer, now, other)
        if now.value < 0 or not is_tidy(now):
            return
        steps += [*more, told]
    yield "undone in the wrong order", now, steps


def _stopped_early(box: Box) -> Iterator[tuple[str, Amount, Sequence[Step]]]:
    """The last operation is not undone at all."""
    now, steps = _opening(box)
    for layer in box.layers[:-1]:
        other, more = _other(box, layer)
        now, told = _peeled_or_none(box, layer, now, other)
        if now.value < 0:
            return
        steps += [*more, told]
    yield "step left out", now, steps
