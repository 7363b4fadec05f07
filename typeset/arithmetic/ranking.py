"""Problems in order of difficulty, each told from the one before it by what makes it harder.

The score is that of the easiest working (`demand.py`). The reason names the cost that grows
most from one problem to the next, so that it can never point the wrong way.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.demand import (
    Cost,
    costs_of,
    costs_of_sum,
    seen_values,
    sums_of,
)
from typeset.arithmetic.equations import OF, PLUS, Operation, equation
from typeset.arithmetic.solving import Solution
from typeset.arithmetic.workings import Working
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_SIGNS_IN_WORDS = {
    PLUS: "an addition",
    MINUS: "a subtraction",
    TIMES: "a multiplication",
    DIVIDE: "a division",
    OF: "a part of an amount",
}


@dataclass(frozen=True, slots=True)
class Ranked:
    """A problem's place by difficulty. `index` is its place among those that were ranked.

    `reason` says why it is harder than the one before it; it is empty for the first. `rank`
    counts from 1, and problems that are equally hard share it.
    """

    index: int
    rank: int
    score: Fraction
    reason: str
    is_tie: bool = False


def rank(solutions: Sequence[Solution]) -> tuple[Ranked, ...]:
    """The problems, easiest first; those that are equally hard keep their order."""
    order = sorted(range(len(solutions)), key=lambda index: solutions[index].demand)
    ranked: list[Ranked] = []
    for place, index in enumerate(order):
        score = solutions[index].demand
        if not ranked:
            ranked.append(Ranked(index, 1, score, ""))
        elif score == ranked[-1].score:
            ranked.append(Ranked(index, ranked[-1].rank, score, "as hard as the one before", True))
        else:
            before = solutions[ranked[-1].index].workings[0]
            reason = why_harder(before, solutions[index].workings[0])
            ranked.append(Ranked(index, place + 1, score, reason))
    return tuple(ranked)


def why_harder(easier: Working, harder: Working) -> str:
    """What makes the second working harder: the one or two costs that grow most, in words.

    The second must have the higher score.
    """
    first, second = costs_of(easier), costs_of(harder)
    grown = sorted(
        (each for each in Cost if second[each] > first[each]),
        key=lambda each: first[each] - second[each],
    )
    if not list(sums_of(easier)):
        return _first_sum(easier, harder)
    told = [text for each in grown if (text := _TELLERS[each](easier, harder))]
    if all(text.startswith("needs ") for text in told[:2]):
        # As many lines more as sums more is one reason, not two.
        told = [*told[:1], *told[2:]]
    return ", and ".join(told[:2]) or _harder_sums(harder)


def _first_sum(easier: Working, harder: Working) -> str:
    top = _hardest(harder, Cost.SUMS)
    if top is None:
        return _lines(easier, harder)
    return f"needs {_SIGNS_IN_WORDS[top.sign]} ({_text(top)}), where the one before needs no sum"


def _harder_sums(harder: Working) -> str:
    """Where no single cost tells more than the others: the sum that costs most."""
    cost = {each: sum(costs_of_sum(each, rest).values()) for each, rest in sums_of(harder)}
    return f"has harder sums in all ({_text(max(cost, key=lambda each: cost[each]))})"


def _lines(easier: Working, harder: Working) -> str:
    return f"needs {len(harder.steps)} steps and not {len(easier.steps)}"


def _sums(easier: Working, harder: Working) -> str:
    """More sums, or sums of a harder kind, or more of one kind."""
    fewer, more = _signs(easier), _signs(harder)
    if more.total() > fewer.total():
        return f"needs {more.total()} sums and not {fewer.total()}"
    top, other = _hardest(harder, Cost.SUMS), _hardest(easier, Cost.SUMS)
    if top is None or other is None:
        return ""
    if top.sign != other.sign:
        instead = f"{_SIGNS_IN_WORDS[other.sign]} ({_text(other)})"
        return f"needs {_SIGNS_IN_WORDS[top.sign]} ({_text(top)}) and not only {instead}"
    several = f"{_SIGNS_IN_WORDS[top.sign].split(' ', 1)[1]}s"
    if more[top.sign] > fewer[top.sign]:
        return f"needs {more[top.sign]} {several} and not {fewer[top.sign]}"
    return ""


def _signs(working: Working) -> Counter[str]:
    return Counter(each.sign for each, _has_rest in sums_of(working))


def _digits(easier: Working, harder: Working) -> str:
    top, other = _hardest(harder, Cost.DIGITS), _hardest(easier, Cost.DIGITS)
    if top is None or _is_of_times(top):
        return ""
    if other is None or _is_of_times(other):
        return f"has larger numbers ({_text(top)})"
    if _largest(top) <= _largest(other):
        return ""
    instead = f" and not {_text(other)}" if other.sign == top.sign else ""
    return f"has larger numbers ({_text(top)}{instead})"


def _largest(operation: Operation) -> Fraction:
    return max(abs(each) for each in seen_values(operation))


def _is_of_times(operation: Operation) -> bool:
    """True where a time of day or '2 h 35 min' is reckoned with: its digits tell little."""
    sides = (operation.left, operation.right)
    if any(isinstance(each, Operation) and _is_of_times(each) for each in sides):
        return True
    return any(
        isinstance(each, Amount)
        and (each.unit.dimension is Dimension.CLOCK or each.form is Form.COMPOUND)
        for each in sides
    )


def _crossing(_easier: Working, harder: Working) -> str:
    top = _hardest(harder, Cost.CROSSING)
    if top is None or _is_of_times(top):
        return ""
    return f"crosses a ten ({_text(top)})"


def _tables(_easier: Working, harder: Working) -> str:
    top = _hardest(harder, Cost.TABLES)
    if top is None:
        return ""
    rest = any(has_rest for each, has_rest in sums_of(harder) if each == top)
    return (
        f"leaves a remainder ({_text(top)})" if rest else f"goes beyond the tables ({_text(top)})"
    )


def _parts(_easier: Working, harder: Working) -> str:
    top = _hardest(harder, Cost.PARTS)
    if top is None:
        return ""
    kind = "fraction" if "/" in _text(top) else "decimal"
    return f"brings in a {kind} ({_text(top)})"


def _hardest(working: Working, cost: Cost) -> Operation | None:
    """The sum in which this cost is highest; None where it is nowhere."""
    sums = [
        (costs_of_sum(each, rest).get(cost, Fraction(0)), each) for each, rest in sums_of(working)
    ]
    top = max(sums, key=lambda pair: pair[0], default=None)
    return top[1] if top is not None and top[0] > 0 else None


def _text(operation: Operation) -> str:
    return equation(operation).text()


_TELLERS: dict[Cost, Callable[[Working, Working], str]] = {
    Cost.LINES: _lines,
    Cost.SUMS: _sums,
    Cost.DIGITS: _digits,
    Cost.CROSSING: _crossing,
    Cost.TABLES: _tables,
    Cost.PARTS: _parts,
}
