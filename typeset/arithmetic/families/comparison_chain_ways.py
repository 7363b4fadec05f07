"""The right ways through a chain of comparisons."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.equations import Expression, equation, minus, over, plus, times
from typeset.arithmetic.families.comparison_chain_view import TOTAL, View, Walk
from typeset.arithmetic.phrases import is_sensible, the, title
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.writing import say


def chain_ways(view: View) -> Iterator[Working]:
    """From a known one, or from the total."""
    if view.known == TOTAL:
        yield from _from_total(view)
        return
    yield _one_after_another(view)
    if _has_long_way(view):
        yield _differences_first(view)


def _has_long_way(view: View) -> bool:
    """True where something asked for is two comparisons away, or all are added."""
    far = [name for name in view.people if len(view.path(view.known, name)) > 1]
    return view.asks([TOTAL, *far])


def needed_walks(view: View) -> list[Walk]:
    """The comparisons on the way to what is asked for, in order."""
    wanted = view.people if view.asks([TOTAL]) else view.problem.finds
    ends = {walk.end for name in wanted for walk in view.path(view.known, name)}
    return [walk for walk in view.walks(view.known) if walk.end in ends]


def walked(view: View, walk: Walk, start: Amount, goes_up: bool) -> tuple[Step, Amount]:
    """One comparison worked out from `start`, and what the next one has."""
    by = walk.link.by
    word = "more" if goes_up else view.fewer
    verb = "add" if goes_up else "subtract"
    end = start.like(start.value + by.value if goes_up else start.value - by.value)
    said = "turned round, that is " if walk.turned else ""
    text = f"{title(walk.end)}: {said}{{by}} {word} than {the(walk.start)}, so {verb}."
    made = plus(start, by) if goes_up else minus(start, by)
    return step(text, equation(made, end), by=by), end


def together(view: View, values: Mapping[str, Fraction]) -> Step:
    """All of them added."""
    terms = [view.amount(values[name]) for name in view.people if name in values]
    total = view.amount(sum(each.value for each in terms))
    return step("All together: {total}.", equation(plus(*terms), total), total=total)


def _one_after_another(view: View) -> Working:
    steps: list[Step] = list(view.conversions)
    reached = {view.known: view.start}
    for walk in needed_walks(view):
        told, reached[walk.end] = walked(view, walk, reached[walk.start], walk.goes_up)
        steps.append(told)
    if view.asks([TOTAL]):
        steps.append(together(view, view.values))
    steps += view.closing(view.values)
    return Working("One after another", tuple(steps), view.answers(view.values))


def _so_much(view: View, offset: Fraction) -> Rich:
    """'7 shells more', '5 shells fewer', 'no difference'."""
    if not offset:
        return say("no difference")
    word = "more" if offset > 0 else view.fewer
    return say(f"{{by}} {word}", by=view.amount(abs(offset)))


def offsets_told(view: View, start: str, names: Collection[str]) -> list[Step]:
    """How each of these compares with `start`, where the story does not say it itself."""
    offsets = view.offsets(start)
    steps = []
    for walk in view.walks(start):
        if walk.start == start or walk.end not in names:
            continue
        before, after = offsets[walk.start], offsets[walk.end]
        change = after - before
        small, large = sorted((abs(before), abs(change)))
        same_way = before * change >= 0
        made: Expression = plus(view.amount(abs(before)), view.amount(abs(change)))
        if not same_way:
            made = minus(view.amount(large), view.amount(small))
        text = f"{title(walk.end)} against {the(start)}: {{first}} and {{then}}, so {{both}}."
        told = {"first": before, "then": change, "both": after}
        steps.append(
            step(
                text,
                equation(made, view.amount(abs(after))),
                **{key: _so_much(view, value) for key, value in told.items()},
            )
        )
    return steps


def _on_the_way(view: View, start: str) -> set[str]:
    """Those whose difference from `start` is needed."""
    wanted = view.people if view.asks([TOTAL]) or view.known == TOTAL else view.problem.finds
    return {walk.end for name in wanted for walk in view.path(start, name)}


def _differences_first(view: View) -> Working:
    start, offsets = view.start, view.offsets(view.known)
    steps = [*view.conversions, *offsets_told(view, view.known, _on_the_way(view, view.known))]
    for name in view.people:
        if name in view.problem.finds:
            steps.append(_apart(view, name, start, offsets[name], view.known))
    if view.asks([TOTAL]):
        steps += _total_by_differences(view, offsets)
    steps += view.closing(view.values)
    return Working("Differences first", tuple(steps), view.answers(view.values))


def _apart(view: View, name: str, start: Amount, offset: Fraction, other: str) -> Step:
    """One amount from another by their difference."""
    if not offset:
        return step(f"{title(name)}: the same as {the(other)}, {{start}}.", start=start)
    by, end = view.amount(abs(offset)), view.amount(start.value + offset)
    made = plus(start, by) if offset > 0 else minus(start, by)
    text = f"{title(name)}: {{so_much}} than {the(other)}."
    return step(text, equation(made, end), so_much=_so_much(view, offset))


def _total_by_differences(view: View, offsets: Mapping[str, Fraction]) -> list[Step]:
    equal = view.amount(view.start.value * view.count)
    much = "many" if view.fewer == "fewer" else "much"
    steps = [
        step(
            f"If all were as {much} as {the(view.known)}: {{equal}}.",
            equation(times(Amount(view.count), view.start), equal),
            equal=equal,
        )
    ]
    ups = [view.amount(each) for each in offsets.values() if each > 0]
    downs = [view.amount(-each) for each in offsets.values() if each < 0]
    total = view.amount(sum(view.values.values()))
    made: Expression = plus(equal, *ups)
    for each in downs:
        made = minus(made, each)
    beyond, missing = "add what is beyond that", "take off what is missing"
    does = " and ".join([*([beyond] if ups else []), *([missing] if downs else [])])
    if does:
        text = f"Now {does}: {{total}}."
        steps.append(step(text, equation(made, total), total=total))
    return steps


def _from_total(view: View) -> Iterator[Working]:
    values = view.values
    least, most = min(values, key=values.__getitem__), max(values, key=values.__getitem__)
    for start, strategy in (
        (least, "All as small as the smallest"),
        (most, "All as large as the largest"),
    ):
        steps, sensible = _levelled(view, start, values)
        if sensible:
            yield Working(strategy, tuple(steps), view.answers(values))


def _levelled(view: View, start: str, values: Mapping[str, Fraction]) -> tuple[list[Step], bool]:
    """All made as large as `start`, shared equally, and the differences put back."""
    offsets = view.offsets(start)
    apart = [view.amount(abs(each)) for each in offsets.values() if each]
    steps = [*view.conversions, *offsets_told(view, start, _on_the_way(view, start))]
    takes_off = all(each >= 0 for each in offsets.values())
    change = sum((each.value for each in apart), Fraction(0))
    level = view.amount(view.start.value - change if takes_off else view.start.value + change)
    made: Expression = view.start
    for each in apart:
        made = minus(made, each) if takes_off else plus(made, each)
    does = "take off what the others are beyond it" if takes_off else "add what the others lack"
    n = Amount(view.count)
    steps.append(
        step(
            f"To make all equal to {the(start)}, {does}.",
            equation(made, level),
        )
    )
    one = view.amount(values[start])
    steps.append(
        step(f"{title(start)}: one of {{n}} equal parts.", equation(over(level, n), one), n=n)
    )
    for name in view.people:
        if name in view.problem.finds and name != start:
            steps.append(_apart(view, name, one, offsets[name], start))
    steps += view.closing(values)
    return steps, is_sensible(level, view.problem.fields.may_be_cut)
