"""The right ways through changes in a row."""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.equations import Expression, equation, minus, plus
from typeset.arithmetic.families.changes_in_a_row_view import END, START, View
from typeset.arithmetic.phrases import title
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount


def row_ways(view: View) -> Iterator[Working]:
    """Two ways for each thing that can be asked for."""
    if view.asked == END:
        yield _working(view, "One after another", _one_by_one(view, START, undo=False))
        yield _working(view, "The change altogether first", _altogether(view))
    elif view.asked == START:
        yield _working(view, "Back from the end", _one_by_one(view, END, undo=True))
        yield _working(view, "The change altogether first", _altogether(view))
    else:
        yield _working(view, "Forwards and back to the gap", _to_the_gap(view))
        yield _working(view, "The change altogether first", _without_the_gap(view))


def _working(view: View, strategy: str, steps: list[Step]) -> Working:
    told = (*view.opening, *steps, *view.closing(view.found))
    return Working(strategy, told, {view.asked: view.answer(view.found)})


def _one_by_one(view: View, begin: str, *, undo: bool) -> list[Step]:
    reached = view.given(begin)
    steps = [step("Go back from the end: {end}.", end=reached)] if undo else []
    changes = reversed(view.changes) if undo else view.changes
    for each in changes:
        told, reached = view.does(each, reached, undo=undo)
        steps.append(told)
    return steps


def _sum_of(view: View, terms: list[Amount], word: str) -> Step:
    """What comes, or goes, in all; nothing to add where it is one change."""
    total = view.amount(sum(each.value for each in terms))
    if len(terms) == 1:
        return step(f"{word}: {{total}}.", total=total)
    return step(f"{word} in all: {{total}}.", equation(plus(*terms), total), total=total)


def net_told(view: View) -> list[Step]:
    """All known increases, all known decreases, and which of them is more."""
    ups = [each.by for each in view.known_changes() if each.is_up and each.by is not None]
    downs = [each.by for each in view.known_changes() if not each.is_up and each.by is not None]
    steps = []
    if ups:
        steps.append(_sum_of(view, ups, "Added"))
    if downs:
        steps.append(_sum_of(view, downs, "Taken off"))
    if ups and downs and view.net:
        up, down = (view.amount(sum(e.value for e in each)) for each in (ups, downs))
        large, small = (up, down) if view.net > 0 else (down, up)
        fewer = "fewer" if view.unit.is_noun or not view.unit.plural else "less"
        word = "more" if view.net > 0 else fewer
        net = view.amount(abs(view.net))
        result = equation(minus(large, small), net)
        steps.append(step(f"Altogether that is {{net}} {word}.", result, net=net))
    elif not view.net:
        steps.append(step("Altogether as much is added as is taken off."))
    return steps


def _altogether(view: View) -> list[Step]:
    steps = net_told(view)
    begin = view.given(START if view.asked == END else END)
    change = view.net if view.asked == END else -view.net
    if not change:
        return [*steps, step(f"{title(view.asked)}: the same, {{it}}.", it=begin)]
    by, end = view.amount(abs(change)), view.amount(begin.value + change)
    made: Expression = plus(begin, by) if change > 0 else minus(begin, by)
    text = f"{title(view.asked)}: {{end}}."
    if view.asked == START:
        text = "Undo that, back from the end: {end}."
    return [*steps, step(text, equation(made, end), end=end)]


def _to_the_gap(view: View) -> list[Step]:
    """Forwards up to the unknown change, back from the end to it, and the difference."""
    at = next(index for index, each in enumerate(view.changes) if each.by is None)
    before, after = view.given(START), view.given(END)
    steps: list[Step] = []
    for each in view.changes[:at]:
        told, before = view.does(each, before, undo=False)
        steps.append(told)
    if view.changes[at + 1 :]:
        steps.append(step("Go back from the end: {end}.", end=after))
    for each in reversed(view.changes[at + 1 :]):
        told, after = view.does(each, after, undo=True)
        steps.append(told)
    return [*steps, _gap(view, before, after)]


def _gap(view: View, before: Amount, after: Amount) -> Step:
    text = f"{title(view.asked)}: from {{before}} to {{after}}."
    found = view.amount(view.found)
    large, small = (after, before) if after.value >= before.value else (before, after)
    return step(text, equation(minus(large, small), found), before=before, after=after)


def _without_the_gap(view: View) -> list[Step]:
    """The known changes together, then what is still missing to the end."""
    steps, begin = net_told(view), view.given(START)
    reached = begin
    if view.net:
        by = view.amount(abs(view.net))
        reached = view.amount(begin.value + view.net)
        made: Expression = plus(begin, by) if view.net > 0 else minus(begin, by)
        text = "With these changes alone: {reached}."
        steps.append(step(text, equation(made, reached), reached=reached))
    return [*steps, _gap(view, reached, view.given(END))]
