"""Ways to change a unit, alone or with one operation before or after it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.conversion_changes import changing
from typeset.arithmetic.families.conversion_view import (
    ANSWER,
    LESS,
    MORE,
    SHARED,
    TIMES,
    Change,
    decimal_of,
)
from typeset.arithmetic.methods import Method, in_unit, without_noun
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount
from typeset.quantities.units import Unit
from typeset.quantities.writing import write


def ways_of(view: Change) -> Iterator[Working]:
    """Every way that suits; at least two."""
    if view.operation in (MORE, LESS):
        yield from _with_another(view)
    elif view.operation:
        yield from _with_a_number(view)
    else:
        for method in changing(view, view.amount):
            yield _answered(view, method)


def _answered(view: Change, method: Method) -> Working:
    return method.working({ANSWER: view.answered(method.result)})


def _with_a_number(view: Change) -> Iterator[Working]:
    """So many times as much, or a share: reckoned first, or converted first."""
    amount, count = view.amount, without_noun(view.operand)
    made = _reckoned(view, amount)
    if made is not None:
        for method in changing(view, made.result):
            yield _answered(view, Method(f"Reckoning first, then {_lower(method)}",
                                         (*made.steps, *method.steps), method.result))  # fmt: skip
    for method in () if view.is_mixed else changing(view, amount):
        last = _reckoned(view, method.result)
        if last is not None and is_sensible(method.result, False):
            yield _answered(view, Method("Converting first", (*method.steps, *last.steps),
                                         last.result))  # fmt: skip
            return
    if made is None:
        whole = next(iter(changing(view, amount)))
        value = whole.result.value / count.value
        result = decimal_of(value, view.target)
        told = step("Share it: {made} each.", equation(over(whole.result, count), result),
                    made=result)  # fmt: skip
        yield _answered(view, Method("Converting first", (*whole.steps, told), result))


def _lower(method: Method) -> str:
    return method.name[:1].lower() + method.name[1:]


def _reckoned(view: Change, amount: Amount) -> Method | None:
    """The operation done with the amount in this unit; None where it comes out unwieldy."""
    count = without_noun(view.operand)
    if view.operation == TIMES:
        made = decimal_of(amount.value * count.value, amount.unit)
        worked, text = equation(times(count, amount), made), "{count} of {amount}: {made}."
    else:
        made = decimal_of(amount.value / count.value, amount.unit)
        worked = equation(over(amount, count), made)
        text = "{amount} shared among {count}: {made} each."
    if view.operation == SHARED and not is_sensible(made, False):
        return None
    only = step(text, worked, count=view.operand, amount=amount, made=made)
    return Method("", (only,), made)


def _with_another(view: Change) -> Iterator[Working]:
    """Something more or less: all in the unit wanted first; or in another unit first."""
    amount, other = view.amount, view.operand
    for name, unit in _meeting_units(view):
        steps: list[Step] = []
        both: list[Amount] = []
        for each in (amount, other):
            now = decimal_of(in_unit(each, unit).value, unit)
            both.append(now)
            if write(now) != write(each):
                steps.append(step("{old} is {new}.", equation(each, now), old=each, new=now))
        value = both[0].value + (both[1].value if view.operation == MORE else -both[1].value)
        made = decimal_of(value, unit)
        worked = plus(*both) if view.operation == MORE else minus(both[0], both[1])
        verb = "Add" if view.operation == MORE else "Subtract"
        steps.append(step(f"{verb}: {{made}}.", equation(worked, made), made=made))
        last = decimal_of(made.base / view.target.per_base, view.target)
        answer = view.answered(last)
        if write(answer) != write(made):
            steps.append(
                step("Write {old} as {new}.", equation(made, answer), old=made, new=answer)
            )
        yield Working(name, tuple(steps), {ANSWER: answer})


def _meeting_units(view: Change) -> Sequence[tuple[str, Unit]]:
    """The units in which both amounts can meet: the one wanted first."""
    units = [view.target, view.amount.unit, view.operand.unit]
    named: dict[str, Unit] = {}
    for unit in units:
        values = [in_unit(each, unit) for each in (view.amount, view.operand)]
        if unit == view.target or all(is_sensible(each, False) for each in values):
            named.setdefault(f"In {unit.plural} first", unit)
    return list(named.items())
