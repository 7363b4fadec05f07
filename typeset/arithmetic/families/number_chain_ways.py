"""Ways through a chain of operations, forwards and back, right ones and wrong ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import PLUS, Expression, equation, minus, over, value_of
from typeset.arithmetic.families.number_chain import (
    INVERSE,
    Link,
    after_text,
    before_text,
    named_operation,
    undone,
)
from typeset.arithmetic.families.trying import Trying, try_and_improve
from typeset.arithmetic.names import so_many
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich, join
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, decimal, say

START, RESULT = "start", "result"
# More equal parts than these nobody draws.
_MOST_PARTS = 8


@dataclass(frozen=True, slots=True)
class Chain:
    """The problem with its operations as they are now; `end` is the first end that is known."""

    problem: Problem[Any]
    links: tuple[Link, ...]
    end: Amount

    @classmethod
    def of(cls, problem: Problem[Any]) -> Chain:
        """The chain of a problem."""
        links = tuple(
            replace(link, by=problem.givens[link.name]) if link.name in problem.givens else link
            for link in problem.fields.operations
        )
        end = problem.givens.get(START) or problem.givens[RESULT]
        return cls(problem, links, end)

    @property
    def asked(self) -> str:
        """What is asked for."""
        return self.problem.finds[0]

    @property
    def at(self) -> int:
        """The place of the operation whose number is asked for."""
        return next(at for at, link in enumerate(self.links) if link.by is None)

    def answer(self, amount: Amount) -> dict[str, AnswerValue]:
        """The answer of this value, in its unit; a decimal where the story has decimals."""
        unit = self.problem.units[self.asked]
        return {self.asked: Amount(amount.value, unit, self.end.like(0).form)}


def done(link: Link, before: Amount) -> Amount:
    """The number after the operation, in the same unit."""
    value, by = before.value, link.known.value
    if link.is_additive:
        return before.like(value - by if link.sign == MINUS else value + by)
    return before.like(value * by if link.sign == TIMES else value / by)


def _forward(
    links: Sequence[Link], start: Amount, again: bool = False
) -> tuple[Amount, list[Step]]:
    """The steps from a number through the operations."""
    now, steps = start, []
    for at, link in enumerate(links):
        after = done(link, now)
        text = after_text(link)
        if at or again:
            text = f"Then {text[:1].lower()}{text[1:]}"
        steps.append(step(text, equation(link.after(now), after), by=link.known, now=after))
        now = after
    return now, steps


def _back(links: Sequence[Link], result: Amount) -> tuple[Amount, list[Step]]:
    """The steps from the result back through the operations, the last one first."""
    now, steps = result, []
    for link in reversed(links):
        before = done(link.inverse, now)
        worked = equation(link.inverse.after(now), before)
        steps.append(step(before_text(link), worked, by=link.known, now=before))
        now = before
    return now, steps


def ways_of(chain: Chain) -> Iterator[Working]:
    """Every way that these numbers allow; at least two."""
    if chain.asked == START:
        yield from _ways_back(chain)
    elif chain.asked == RESULT:
        yield from _ways_on(chain)
    else:
        yield from _ways_between(chain)


def _ways_back(chain: Chain) -> Iterator[Working]:
    result = chain.problem.given(RESULT)
    start, steps = _back(chain.links, result)
    opening = step("Begin at the end, with {result}, and undo the last operation first.",
                   result=result)  # fmt: skip
    yield Working("Undoing from the end", (opening, *steps), chain.answer(start))
    line = _one_line([link.inverse for link in reversed(chain.links)], result)
    told = join([named_operation(_as_named(link.inverse)) for link in reversed(chain.links)], ", ")
    found = result.like(value_of(line) / result.unit.per_base)
    only = step("Turn the whole chain round: {told}.", equation(line, found), told=told)
    check = step("Check from the start: that gives {result}, as the story says.",
                 equation(_one_line(chain.links, found), result), result=result)  # fmt: skip
    yield Working("Writing the inverse chain, then checking", (only, check), chain.answer(found))
    if (parts := equal_parts(chain)) is not None:
        yield _with_a_bar(chain, *parts)
    trying = Trying(lambda each: _one_line(chain.links, each), result, result)
    if (tried := try_and_improve(trying)) is not None:
        yield Working("Trial and improvement", tried[1], chain.answer(tried[0]))


def equal_parts(chain: Chain) -> tuple[int, Amount] | None:
    """How many equal parts and how much more make the result, where the chain is so simple
    that a bar shows it; else None."""
    if chain.asked != START or [link.sign for link in chain.links] != [TIMES, PLUS]:
        return None
    count, more = (link.known for link in chain.links)
    is_drawn = count.is_whole and count.value <= _MOST_PARTS
    if not is_drawn or more.value >= chain.problem.given(RESULT).value:
        return None
    return int(count.value), chain.end.like(more.value)


def _with_a_bar(chain: Chain, count: int, more: Amount) -> Working:
    result = chain.problem.given(RESULT)
    rest = result.like(result.value - more.value)
    one = rest.like(rest.value / count)
    parts = so_many(Fraction(count), "equal part")
    steps = (
        step("Draw a bar of {parts}, each as long as the number, and {more} more: {result} in all.",
             parts=parts, more=more, result=result),
        step("Without the {more}, the parts make {rest}.", equation(minus(result, more), rest),
             more=more, rest=rest),
        step("One of the {parts}: {one}.", equation(over(rest, Amount(Fraction(count))), one),
             parts=parts, one=one),
    )  # fmt: skip
    return Working("A bar of equal parts", steps, chain.answer(one))


def _as_named(link: Link) -> Link:
    """A link that is told with its number ('dividing by 2', not 'halving')."""
    return replace(link, name=link.name or "by")


def _one_line(links: Sequence[Link], start: Amount) -> Expression:
    line: Expression = start
    for link in links:
        line = link.after(line)
    return line


def _ways_on(chain: Chain) -> Iterator[Working]:
    start = chain.problem.given(START)
    result, steps = _forward(chain.links, start)
    yield Working("Step by step", tuple(steps), chain.answer(result))
    line = _one_line(chain.links, start)
    found = start.like(value_of(line) / start.unit.per_base)
    text = "Write the whole chain in one line; brackets show what comes first: {found}."
    if len(chain.links) == 1:
        text = "Write it in one line: {found}."
    only = step(text, equation(line, found), found=found)
    yield Working("In one line", (only,), chain.answer(found))


def _ways_between(chain: Chain) -> Iterator[Working]:
    start, result = chain.problem.given(START), chain.problem.given(RESULT)
    at = chain.at
    before, steps = _forward(chain.links[:at], start)
    after, back = _back(chain.links[at + 1 :], result)
    between = _between(chain, before, after)
    yield Working("Working from both ends", (*steps, *back, between[1]), chain.answer(between[0]))
    asked = chain.links[at]
    like = start if asked.is_additive else Amount(Fraction(1))

    def line(by: Amount) -> Expression:
        links = (*chain.links[:at], replace(asked, by=by), *chain.links[at + 1 :])
        return _one_line(links, start)

    if (tried := try_and_improve(Trying(line, result, like))) is not None:
        yield Working("Trial and improvement", tried[1], chain.answer(tried[0]))
    whole = equation(_one_line(chain.links[: at + 1], start), after)
    opening = step("Write a box for the missing number.", whole)
    closing = (*back, opening, *steps, between[1])
    yield Working("Writing it with a box", closing, chain.answer(between[0]))


def _between(chain: Chain, before: Amount, after: Amount) -> tuple[Amount, Step]:
    """What leads from the one number to the other."""
    link = chain.links[chain.at]
    if link.is_additive:
        large, small = (before, after) if link.sign == MINUS else (after, before)
        found = large.like(large.value - small.value)
        text = "From {before} to {after} it is {found}."
        expression: Expression = minus(large, small)
    else:
        large, small = (before, after) if link.sign == DIVIDE else (after, before)
        found = Amount(large.value / small.value, form=large.form)
        text = "From {before} to {after} it is {found} times as much."
        if link.sign == DIVIDE:
            text = "{after} goes {found} times into {before}."
        expression = over(large, small)
    told = step(text, equation(expression, found), before=before, after=after, found=found)
    return found, told


def mistakes_of(chain: Chain) -> Iterator[MistakenWorking]:
    """The wrong ways that the chain invites, those with tidy numbers."""
    if chain.asked == START:
        yield from _wrong_back(chain)
    elif chain.asked == RESULT:
        yield from _wrong_on(chain)
    else:
        yield from _wrong_between(chain)


def is_tidy(*amounts: Amount) -> bool:
    """True for numbers that a pupil would write down and go on with: at most hundredths."""
    return all(
        decimal(amount.value) is not None and (amount.value * 100).denominator == 1
        for amount in amounts
    )


def _told(chain: Chain, name: str, end: Amount, steps: Sequence[Step]) -> Iterator[MistakenWorking]:
    if is_tidy(end) and end.value > 0:
        yield MistakenWorking(name, tuple(steps), chain.answer(end))


def _wrong_back(chain: Chain) -> Iterator[MistakenWorking]:
    result = chain.problem.given(RESULT)
    end, steps = _forward(chain.links, result)
    yield from _told(chain, "operations done forwards on the result", end, steps)
    if len(chain.links) > 1:
        end, steps = _forward([link.inverse for link in map(_as_named, chain.links)], result)
        yield from _told(chain, "undone in the wrong order", end, steps)
    for at in sorted(range(len(chain.links)), key=lambda each: not chain.links[each].is_additive):
        if len(chain.links) == 1:
            break
        links = [_as_named(link.inverse) for link in chain.links]
        links[at] = _as_named(chain.links[at])
        end, steps = _forward(list(reversed(links)), result)
        yield from _told(chain, "operation repeated instead of inverted", end, steps)


def _wrong_on(chain: Chain) -> Iterator[MistakenWorking]:
    start = chain.problem.given(START)
    back = [_as_named(link.inverse) for link in reversed(chain.links)]
    end, steps = _forward(back, start)
    yield from _told(chain, "operations undone instead of done", end, steps)
    if len(chain.links) > 1:
        end, steps = _forward(chain.links[:-1], start)
        yield from _told(chain, "step left out", end, steps)
    signs = {link.is_additive for link in chain.links}
    if len(signs) == 2:
        # Additions first, wherever they stand: no number in between is looked at.
        links = sorted(chain.links, key=lambda link: not link.is_additive)
        if links == list(chain.links):
            links.reverse()
        end, steps = _forward(links, start)
        yield from _told(chain, "operations in another order", end, steps)


def _wrong_between(chain: Chain) -> Iterator[MistakenWorking]:
    start, result = chain.problem.given(START), chain.problem.given(RESULT)
    link = chain.links[chain.at]
    if len(chain.links) > 1:
        large, small = sorted((start, result), key=lambda each: -each.value)
        if link.is_additive:
            found = large.like(large.value - small.value)
            worked = equation(minus(large, small), found)
        elif small.value:
            found = Amount(large.value / small.value)
            worked = equation(over(large, small), found)
        else:
            return
        text = "From {start} to {result}: {found}."
        only = step(text, worked, start=start, result=result, found=found)
        yield from _told(chain, "other operations ignored", found, (only,))
    for at, other in enumerate(chain.links):
        if other.by is None:
            continue
        # One of the operations before is undone, or one of those after is done again.
        links = list(chain.links)
        links[at] = _as_named(replace(other, sign=INVERSE[other.sign]))
        before, steps = _forward(links[: chain.at], start)
        after, back = _back(links[chain.at + 1 :], result)
        if not (is_tidy(before, after) and before.value > 0 < after.value):
            continue
        found, last = _between(chain, before, after)
        name = "operation repeated instead of inverted"
        yield from _told(chain, name, found, (*steps, *back, last))


def reason_of(chain: Chain) -> Rich:
    """Which operation is undone by which, or what is done one after the other."""
    if chain.asked == START:
        told = [undone(link) for link in reversed(chain.links)]
        text = join(told[:-1], ", ")
        both = join([text, told[-1]], ", and ") if text else told[-1]
        return say("To come back to the start, {told}.", told=both)
    known = [link for link in chain.links if link.by is not None]
    told = [named_operation(link) for link in known]
    if chain.asked == RESULT:
        return say("The way to the result: {told}.", told=join(told, ", then "))
    link = chain.links[chain.at]
    before, _ = _forward(chain.links[: chain.at], chain.problem.given(START))
    after, _ = _back(chain.links[chain.at + 1 :], chain.problem.given(RESULT))
    how = "look for how many times as much it is, from {before} to {after}"
    if link.is_additive:
        how = "look for the difference between {before} and {after}"
    sentence = f"Besides {{told}}, you {how}." if told else f"You {how}."
    return say(sentence, told=join(told, " and "), before=before, after=after)
