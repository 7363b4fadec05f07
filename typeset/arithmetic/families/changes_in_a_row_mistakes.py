"""The wrong ways through changes in a row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, minus
from typeset.arithmetic.families.changes_in_a_row_view import END, START, One, View
from typeset.arithmetic.workings import MistakenWorking, Step, step


def row_mistakes(view: View) -> Iterator[MistakenWorking]:
    """For a start or an end; for a change between them."""
    if view.asked in (START, END):
        undo = view.asked == START
        if undo:
            name = "operations done forwards on the result"
            yield _told(view, name, view.changes, undo=False)
        for index in reversed(range(len(view.changes))):
            yield from _wrong_way(view, index, undo=undo)
        for index in reversed(range(len(view.changes))):
            left = view.changes[:index] + view.changes[index + 1 :]
            yield _told(view, "quantity left out", left, undo=undo)
        # Of two changes the first alone is the second one left out.
        if len(view.changes) > 2:
            yield _told(view, "step left out", _order(view, undo)[:1], undo=undo, ordered=True)
        return
    yield _ends_compared(view)


def _order(view: View, undo: bool) -> Sequence[One]:
    return tuple(reversed(view.changes)) if undo else view.changes


def _told(
    view: View, name: str, changes: Sequence[One], *, undo: bool, ordered: bool = False
) -> MistakenWorking:
    """These changes, done or undone in order, from what the story gives."""
    reached = view.given(END if view.asked == START else START)
    steps: list[Step] = view.opening
    for each in reversed(changes) if undo and not ordered else changes:
        told, reached = view.does(each, reached, undo=undo)
        steps.append(told)
    steps += view.closing(reached.value)
    return MistakenWorking(name, tuple(steps), {view.asked: view.answer(reached.value)})


def _wrong_way(view: View, index: int, *, undo: bool) -> Iterator[MistakenWorking]:
    """One change taken for its opposite."""
    right = view.changes[index]
    wrong = replace(right, is_up=not right.is_up)
    changes = (*view.changes[:index], wrong, *view.changes[index + 1 :])
    adds = wrong.is_up != undo
    name = "adding instead of subtracting" if adds else "subtracting instead of adding"
    yield _told(view, name, changes, undo=undo)


def _ends_compared(view: View) -> MistakenWorking:
    """Start and end compared as if nothing else had happened."""
    before, after = view.given(START), view.given(END)
    gap = abs(after.value - before.value)
    large, small = (after, before) if after.value >= before.value else (before, after)
    made: Expression = minus(large, small)
    only = step(
        "From {before} to {after}.",
        equation(made, view.amount(gap)),
        before=before,
        after=after,
    )
    answer = view.answer(Fraction(gap))
    shown = (*view.opening, only, *view.closing(gap))
    return MistakenWorking("other operations ignored", shown, {view.asked: answer})
