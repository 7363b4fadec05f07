"""Ways to the number in the box."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import (
    PLUS,
    Expression,
    Operation,
    Unknown,
    equation,
    has_unknown,
    minus,
    over,
    plus,
    times,
    value_of,
)
from typeset.arithmetic.families.number_chain import INVERSE
from typeset.arithmetic.families.number_sentence import Sentence, filled
from typeset.arithmetic.families.trying import Trying, try_and_improve
from typeset.arithmetic.methods import TABLES_TO
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.subtracting import ways_to_subtract
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, join
from typeset.quantities.writing import MINUS, TIMES, say

_BONDS_TO = 20


@dataclass(frozen=True, slots=True)
class Layer:
    """One operation around the box: `other` stands left or right of its sign."""

    sign: str
    other: Expression
    box_first: bool

    @property
    def known(self) -> Fraction:
        """The value of the other number."""
        return value_of(self.other)

    @property
    def is_turned(self) -> bool:
        """True for 45 − box and 36 ÷ box, which are undone by themselves."""
        return not self.box_first and self.sign not in (PLUS, TIMES)


@dataclass(frozen=True, slots=True)
class Box:
    """The problem with its sentence as it is now."""

    problem: Problem[Any]
    sentence: Sentence

    @classmethod
    def of(cls, problem: Problem[Any]) -> Box:
        """The box of a problem."""
        numbers = iter(problem.givens.values())
        return cls(problem, problem.fields.sentence.with_numbers(numbers))

    def number(self, value: Fraction) -> Amount:
        """A number, a decimal where the sentence has decimals."""
        forms = {each.form for each in self.sentence.numbers}
        form = Form.DECIMAL if Form.DECIMAL in forms else Form.AUTO
        return Amount(value, form=form)

    def answer(self, value: Fraction) -> dict[str, AnswerValue]:
        """The number in the box."""
        return {self.problem.finds[0]: self.number(value)}

    @property
    def layers(self) -> tuple[Layer, ...]:
        """The operations around the box, the outermost first."""
        found, inner = [], self.sentence.box_side
        while isinstance(inner, Operation):
            first = has_unknown(inner.left)
            found.append(Layer(inner.sign, inner.right if first else inner.left, first))
            inner = inner.left if first else inner.right
        return tuple(found)

    @property
    def balanced(self) -> bool:
        """True where there is something to work out on both sides."""
        return isinstance(self.sentence.known_side, Operation)


def ways_of(box: Box) -> Iterator[Working]:
    """Every way that these numbers allow; at least two for numbers that can be tried."""
    yield _undone(box)
    yield from _compared(box)
    yield from _known_fact(box)
    yield from _counted_up(box)
    yield from _tried(box)
    yield _checked_by_rewriting(box)


def worked_out(box: Box, expression: Expression, text: str) -> tuple[Amount, list[Step]]:
    """A number as it is, or what an expression comes to, with a step that says so."""
    if isinstance(expression, Amount):
        return expression, []
    found = box.number(value_of(expression))
    return found, [step(text, equation(expression, found), found=found)]


def peeled(box: Box, layer: Layer, now: Amount, other: Amount) -> tuple[Amount, Step]:
    """What stands inside the layer, when the whole comes to `now`."""
    texts: dict[tuple[str, bool], tuple[str, Callable[[Expression, Expression], Expression]]] = {
        (PLUS, True): ("Undo adding {other}: {new}.", minus),
        (PLUS, False): ("Undo adding {other}: {new}.", minus),
        (MINUS, True): ("Undo subtracting {other}: {new}.", plus),
        (MINUS, False): ("{other} less something leaves {now}, so {new} is taken off.",
                         lambda left, right: minus(right, left)),
        (TIMES, True): ("Undo multiplying by {other}: {new}.", over),
        (TIMES, False): ("Undo multiplying by {other}: {new}.", over),
    }  # fmt: skip
    text, inverse = texts.get((layer.sign, layer.box_first), _dividing(layer))
    expression = inverse(now, other)
    new = box.number(value_of(expression))
    told = step(text, equation(expression, new), other=other, now=now, new=new)
    return new, told


def _dividing(layer: Layer) -> tuple[str, Callable[[Expression, Expression], Expression]]:
    if layer.box_first:
        return "Undo dividing by {other}: {new}.", times
    text = "{other} divided by something is {now}, so divide {other} by {now}: {new}."
    return text, lambda left, right: over(right, left)


def _undone(box: Box) -> Working:
    side = "right" if has_unknown(box.sentence.left) else "left"
    now, steps = worked_out(
        box, box.sentence.known_side, f"The {side}-hand side comes to {{found}}."
    )
    for layer in box.layers:
        other, more = worked_out(box, layer.other, "Work out what is known: {found}.")
        now, told = peeled(box, layer, now, other)
        steps += [*more, told]
    steps.append(step("So {found} belongs in the box.", found=now))
    return Working("Inverse operations", tuple(steps), box.answer(now.value))


def _compared(box: Box) -> Iterator[Working]:
    """Both sides of one kind: what is more on the one side must be less in the box."""
    known = box.sentence.known_side
    layers = box.layers
    if not isinstance(known, Operation) or len(layers) != 1 or known.sign != layers[0].sign:
        return
    layer = layers[0]
    ends = (layer.other, known.left, known.right)
    if layer.is_turned or not all(isinstance(each, Amount) for each in ends):
        return
    other, left, right = (each for each in ends if isinstance(each, Amount))
    pairs = [(right, left)]
    if layer.sign in (PLUS, TIMES):
        pairs.append((left, right))
    pairs.sort(key=lambda pair: abs(pair[0].value - other.value))
    for same, rest in pairs:
        steps = _balance(box, layer.sign, (other, same, rest))
        if steps is not None:
            found, told = steps
            yield Working("Keeping both sides equal", tuple(told), box.answer(found.value))
            return


def _balance(
    box: Box, sign: str, numbers: tuple[Amount, Amount, Amount]
) -> tuple[Amount, list[Step]] | None:
    """The box from `rest`, by what `other` is more or less than `same`."""
    other, same, rest = numbers
    if other.value == same.value:
        text = "{other} stands on both sides, so the box is {rest}."
        return rest, [step(text, other=other, rest=rest)]
    larger, smaller = sorted((other, same), key=lambda each: -each.value)
    is_more = larger is other
    if sign in (PLUS, MINUS):
        gap = box.number(larger.value - smaller.value)
        # In a sum the box makes up for the difference; in a difference it goes with it.
        up = is_more if sign == MINUS else not is_more
        line: Expression = plus(rest, gap) if up else minus(rest, gap)
        first = step(
            f"{{other}} is {{gap}} {'more' if is_more else 'less'} than {{same}}.",
            equation(minus(larger, smaller), gap),
            other=other,
            gap=gap,
            same=same,
        )
        how = f"{{gap}} {'more' if up else 'less'} than {{rest}}"
    else:
        if not smaller.value or (larger.value / smaller.value).denominator != 1:
            return None
        gap = box.number(larger.value / smaller.value)
        up = is_more if sign != TIMES else not is_more
        line = times(rest, gap) if up else over(rest, gap)
        first = step(
            "{larger} is {gap} times {smaller}.",
            equation(over(larger, smaller), gap),
            larger=larger,
            gap=gap,
            smaller=smaller,
        )
        how = "{gap} times {rest}" if up else "{rest} divided by {gap}"
    found = box.number(value_of(line))
    text = f"Both sides stay equal when the box is {how}: {{found}}."
    return found, [first, step(text, equation(line, found), gap=gap, rest=rest, found=found)]


def _single(box: Box) -> tuple[Layer, Amount, Amount] | None:
    """The one operation, its number and the result, where the sentence has no more."""
    known, layers = box.sentence.known_side, box.layers
    if len(layers) != 1 or not isinstance(known, Amount):
        return None
    other = layers[0].other
    return (layers[0], other, known) if isinstance(other, Amount) else None


def _known_fact(box: Box) -> Iterator[Working]:
    """A table fact, or a number bond."""
    found = _single(box)
    if found is None:
        return
    side = box.sentence.box_side
    limit = _BONDS_TO if found[0].sign in (PLUS, MINUS) else TABLES_TO
    numbers = (found[1].value, found[2].value)
    if max(numbers) > (_BONDS_TO if limit == _BONDS_TO else TABLES_TO**2):
        return
    if limit == TABLES_TO and min(numbers) > TABLES_TO:
        return
    top = limit if not (limit == TABLES_TO and found[0].box_first) else TABLES_TO**2
    for value in range(top + 1):
        tried = box.number(Fraction(value))
        line = filled(side, tried)
        if found[0].is_turned and not value:
            continue
        if value_of(line) == found[2].value:
            what = "a number bond" if limit == _BONDS_TO else "the tables"
            only = step(f"Know it from {what}: {{value}} fits.", equation(line, found[2]),
                        value=tried)  # fmt: skip
            name = "A number bond" if limit == _BONDS_TO else "A table fact"
            yield Working(name, (only,), box.answer(tried.value))
            return


def _counted_up(box: Box) -> Iterator[Working]:
    """From the number that is known up to the other, in easy jumps."""
    found = _single(box)
    if found is None:
        return
    layer, other, known = found
    pair = {(PLUS, True): (known, other), (PLUS, False): (known, other),
            (MINUS, False): (other, known)}.get((layer.sign, layer.box_first))  # fmt: skip
    if pair is None or pair[0].value <= pair[1].value:
        return
    for method in ways_to_subtract(*pair):
        if method.name == "Counting up":
            yield Working(method.name, method.steps, box.answer(method.result.value))


def _tried(box: Box) -> Iterator[Working]:
    side = box.sentence.box_side
    target, steps = worked_out(box, box.sentence.known_side, "Both sides have to come to {found}.")
    like = box.number(Fraction(1))
    tried = try_and_improve(Trying(lambda each: filled(side, each), target, like))
    if tried is not None:
        found, more = tried
        yield Working("Trial and improvement", (*steps, *more), box.answer(found.value))


def _checked_by_rewriting(box: Box) -> Working:
    """The sentence turned into one with the box alone, and the answer put in."""
    line: Expression = box.sentence.known_side
    for layer in box.layers:
        line = _turned(layer, line)
    found = box.number(value_of(line))
    side = filled(box.sentence.box_side, found)
    steps = (
        step("Write the sentence with the box alone on one side.", equation(Unknown(), line)),
        step("Work that out: {found}.", equation(line, found), found=found),
        step("Put it in: both sides are equal.", equation(side, box.sentence.known_side)),
    )
    return Working("Rewriting with the box alone", steps, box.answer(found.value))


def _turned(layer: Layer, line: Expression) -> Expression:
    """What the inside of the layer equals, when the whole equals `line`."""
    if layer.is_turned:
        return Operation(layer.sign, layer.other, line)
    return Operation(INVERSE[layer.sign], line, layer.other)


def reason_of(box: Box) -> Rich:
    """What undoes what, from the outside in."""
    told = []
    for layer in box.layers:
        other = box.number(layer.known)
        texts = {
            PLUS: "adding {n} is undone by subtracting {n}",
            MINUS: "subtracting {n} is undone by adding {n}",
            TIMES: "multiplying by {n} is undone by dividing by {n}",
        }
        how = texts.get(layer.sign, "dividing by {n} is undone by multiplying by {n}")
        if layer.is_turned and layer.sign == MINUS:
            how = "what is taken from {n} is the difference between {n} and what is left"
        elif layer.is_turned:
            how = "what {n} is divided by is found by dividing {n} by the result"
        told.append(say(how, n=other))
    text = join(told[:-1], ", ")
    both = join([text, told[-1]], ", and ") if text else told[-1]
    if box.balanced:
        total = box.number(value_of(box.sentence.known_side))
        return say("Both sides come to {total}, and {told}.", total=total, told=both)
    return say("To find the number in the box: {told}.", told=both)
