"""The wrong ways through a chain of comparisons."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, minus, over, plus
from typeset.arithmetic.families.comparison_chain_view import TOTAL, View, Walk
from typeset.arithmetic.families.comparison_chain_ways import (
    needed_walks,
    offsets_told,
    together,
    walked,
)
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount


def chain_mistakes(view: View) -> Iterator[MistakenWorking]:
    """From a known one, or from the total."""
    if view.known == TOTAL:
        yield from _from_total(view)
        return
    walks = needed_walks(view)
    yield from _turned_round(view, walks)
    yield from _from_the_wrong_one(view, walks)
    yield from _left_out(view, walks)


def _told(
    view: View, name: str, walks: list[Walk], wrong: Walk, *, flips: bool, base: str = ""
) -> MistakenWorking:
    """All comparisons in order, one of them wrong."""
    steps: list[Step] = list(view.conversions)
    reached = {view.known: view.start}
    for walk in walks:
        if walk is not wrong:
            told, reached[walk.end] = walked(view, walk, reached[walk.start], walk.goes_up)
        elif flips:
            told, reached[walk.end] = _by_the_word(view, walk, reached[walk.start])
        else:
            taken = Walk(base, walk.end, walk.link)
            told, reached[walk.end] = walked(view, taken, reached[base], walk.goes_up)
        steps.append(told)
    values = {each: amount.value for each, amount in reached.items()}
    if view.asks([TOTAL]):
        steps.append(together(view, values))
    steps += view.closing(values)
    return MistakenWorking(name, tuple(steps), view.answers(values))


def _by_the_word(view: View, walk: Walk, start: Amount) -> tuple[Step, Amount]:
    """'More' added and 'fewer' taken off, although the one with more is known already; or a
    plain comparison read the wrong way."""
    goes_up = not walk.goes_up
    by, word = walk.link.by, "more" if goes_up else view.fewer
    end = start.like(start.value + by.value if goes_up else start.value - by.value)
    made = plus(start, by) if goes_up else minus(start, by)
    if walk.turned:
        verb = "add" if goes_up else "take off"
        text = f"{title(walk.end)}: it says {{by}} {word}, so {verb} {{by}}."
    else:
        text = f"{title(walk.end)}: {{by}} {word} than {the(walk.start)}."
    return step(text, equation(made, end), by=by), end


def _turned_round(view: View, walks: list[Walk]) -> Iterator[MistakenWorking]:
    """Those first where the story's word misleads (the consistency effect)."""
    for walk in sorted(walks, key=lambda each: not each.turned):
        yield _told(view, "difference turned round", walks, walk, flips=True)


def _from_the_wrong_one(view: View, walks: list[Walk]) -> Iterator[MistakenWorking]:
    """A comparison made with the one whose amount the story gives."""
    for walk in walks:
        if walk.start != view.known:
            name = "compared with the wrong one"
            yield _told(view, name, walks, walk, flips=False, base=view.known)


def _left_out(view: View, walks: list[Walk]) -> Iterator[MistakenWorking]:
    """The one between is not counted, or is given as the answer."""
    between = [walk.start for walk in walks if walk.start != view.known]
    if not between:
        return
    steps: list[Step] = list(view.conversions)
    reached = {view.known: view.start}
    for walk in walks:
        told, reached[walk.end] = walked(view, walk, reached[walk.start], walk.goes_up)
        steps.append(told)
    values = {name: amount.value for name, amount in reached.items()}
    if view.problem.finds == (TOTAL,):
        some = {name: value for name, value in values.items() if name not in between}
        told_steps = (*steps, together(view, some))
        yield MistakenWorking("quantity left out", told_steps, view.answers(some))
    elif len(view.problem.finds) == 1:
        stopped = {**values, view.problem.finds[0]: values[between[-1]]}
        last = next(index for index, walk in enumerate(walks) if walk.end == between[-1])
        shown = steps[: len(view.conversions) + last + 1]
        yield MistakenWorking("step left out", tuple(shown), view.answers(stopped))


def _from_total(view: View) -> Iterator[MistakenWorking]:
    values = view.values
    least = min(values, key=values.__getitem__)
    total, n = view.start, Amount(view.count)
    half = view.amount(total.value / view.count)
    shared = step("Share equally: {half} each.", equation(over(total, n), half), half=half)
    yield _mistake(view, "difference ignored", [shared], dict.fromkeys(view.people, half.value))
    yield from _extra_added(view, least)
    if view.problem.finds != (least,) and len(view.problem.finds) == 1:
        steps, one = _levelled(view, least, takes_off=True)
        every = dict.fromkeys(view.people, one.value)
        yield _mistake(view, "step left out", steps, every)


def _mistake(
    view: View, name: str, steps: list[Step], values: Mapping[str, Fraction]
) -> MistakenWorking:
    return MistakenWorking(name, (*view.conversions, *steps), view.answers(values))


def _extra_added(view: View, least: str) -> Iterator[MistakenWorking]:
    """What the others are beyond the smallest is added to the total instead of taken off."""
    steps, one = _levelled(view, least, takes_off=False)
    offsets = view.offsets(least)
    for name in view.problem.finds:
        if offsets[name]:
            by = view.amount(offsets[name])
            end = view.amount(one.value + by.value)
            text = f"{title(name)}: {{by}} more than {the(least)}."
            steps.append(step(text, equation(plus(one, by), end), by=by))
    values = {name: one.value + each for name, each in offsets.items()}
    yield _mistake(view, "adding instead of subtracting", steps, values)


def _levelled(view: View, least: str, *, takes_off: bool) -> tuple[list[Step], Amount]:
    offsets = view.offsets(least)
    made: Expression = view.start
    level = view.start
    for each in offsets.values():
        if each:
            by = view.amount(each)
            made = minus(made, by) if takes_off else plus(made, by)
            level = level.like(level.value - each if takes_off else level.value + each)
    one = level.like(level.value / view.count)
    n = Amount(view.count)
    does = "take off" if takes_off else "add"
    steps = [
        *offsets_told(view, least, view.people),
        step(f"To make all equal, {does} the differences.", equation(made, level)),
        step(f"{title(least)}: one of {{n}} equal parts.", equation(over(level, n), one), n=n),
    ]
    return steps, one
