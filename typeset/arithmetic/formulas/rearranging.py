"""Other ways through the same formula, by the laws that the national curriculum names.

Distributive law (Year 4 programme of study, number: multiplication and division), other orders
(Year 2 to 4), and taking amounts away together. Each law is tried in both directions, and
where it gathers or spreads, as far as it goes.
"""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.equations import OF, PLUS
from typeset.arithmetic.formulas.ones import HUNDRED_PER_CENT, ONE
from typeset.arithmetic.formulas.tree import Apply, Formula
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

EACH_PART, TOGETHER = "Each part by itself", "Together first"
AT_ONCE, ONE_BY_ONE = "Take away both at once", "Take away one after the other"
OTHER_ORDER = "In another order"
NET = "The change altogether first"
_GO_ON = (EACH_PART, TOGETHER, AT_ONCE, ONE_BY_ONE)


def rearranged(formula: Formula) -> Iterator[tuple[str, Formula]]:
    """The formula in other ways, each with the name of the strategy."""
    for strategy, first in _once(formula):
        yield strategy, first
        if strategy in _GO_ON:
            further = _as_far_as_it_goes(strategy, first)
            if further != first:
                yield strategy, further


def _as_far_as_it_goes(strategy: str, formula: Formula) -> Formula:
    """The same law again and again; every turn of these laws leaves fewer places for it."""
    while (again := next((f for name, f in _once(formula) if name == strategy), None)) is not None:
        formula = again
    return formula


def _once(formula: Formula) -> Iterator[tuple[str, Formula]]:
    yield from _at_top(formula)
    if isinstance(formula, Apply):
        for strategy, left in _once(formula.left):
            yield strategy, Apply(formula.sign, left, formula.right)
        for strategy, right in _once(formula.right):
            yield strategy, Apply(formula.sign, formula.left, right)


def _at_top(formula: Formula) -> Iterator[tuple[str, Formula]]:
    match formula:
        case Apply(sign="\u00d7" | "\u00f7" as sign, left=Apply(sign="+" | "\u2212") as inner):
            yield EACH_PART, _spread(sign, inner, formula.right)
        case Apply(sign="\u00d7", left=factor, right=Apply(sign="+" | "\u2212") as inner):
            yield EACH_PART, _spread(TIMES, inner, factor)
        case Apply(sign="of", left=part, right=Apply(sign="+" | "\u2212") as inner):
            parts = Apply(OF, part, inner.left), Apply(OF, part, inner.right)
            yield EACH_PART, Apply(inner.sign, *parts)
        case Apply(sign="+" | "\u2212"):
            yield from _collected(formula)
    yield from _reordered(formula)


def _spread(sign: str, inner: Apply, factor: Formula) -> Formula:
    """(a ± b) × c as a × c ± b × c."""
    return Apply(inner.sign, Apply(sign, inner.left, factor), Apply(sign, inner.right, factor))


def _collected(formula: Apply) -> Iterator[tuple[str, Formula]]:
    """a × c ± b × c as (a ± b) × c; a ± p of a as (1 ± p) of a; a + n × a as (1 + n) × a."""
    outer, one, other = formula.sign, formula.left, formula.right
    yield from _alike(outer, one, other)
    # a × c + b × c + x, where x has nothing to do with c, or has c again.
    if outer == PLUS and isinstance(one, Apply) and one.sign == PLUS:
        for strategy, pair in _alike(PLUS, one.right, other):
            yield strategy, Apply(PLUS, one.left, pair)
        for strategy, pair in _alike(PLUS, one.left, other):
            yield strategy, Apply(PLUS, pair, one.right)


def _alike(outer: str, one: Formula, other: Formula) -> Iterator[tuple[str, Formula]]:
    match one, other:
        case Apply(sign=sign), Apply() if sign == other.sign and sign in (TIMES, DIVIDE, OF):
            if sign != OF and one.right == other.right:
                yield TOGETHER, Apply(sign, Apply(outer, one.left, other.left), one.right)
            elif sign != DIVIDE and one.left == other.left:
                yield TOGETHER, Apply(sign, one.left, Apply(outer, one.right, other.right))
            elif sign == TIMES and one.left == other.right:
                yield TOGETHER, Apply(sign, one.left, Apply(outer, one.right, other.left))
            elif sign == TIMES and one.right == other.left:
                yield TOGETHER, Apply(sign, Apply(outer, one.left, other.right), one.right)
        case _, Apply(sign="of", left=part, right=whole) if whole == one:
            for all_of_it in (HUNDRED_PER_CENT, ONE):
                yield TOGETHER, Apply(OF, Apply(outer, all_of_it, part), whole)
        case _, Apply(sign="\u00d7", left=left, right=right) if outer == PLUS and one in (
            left,
            right,
        ):
            times = left if right == one else right
            yield TOGETHER, Apply(TIMES, Apply(PLUS, times, ONE), one)
        case Apply(sign="\u00d7", left=left, right=right), _ if other in (left, right):
            times = left if right == other else right
            yield TOGETHER, Apply(TIMES, Apply(outer, times, ONE), other)


def _reordered(formula: Formula) -> Iterator[tuple[str, Formula]]:
    match formula:
        case Apply(sign="\u2212", left=Apply(sign="\u2212") as inner, right=last):
            yield AT_ONCE, Apply(MINUS, inner.left, Apply(PLUS, inner.right, last))
        case Apply(sign="\u2212", left=first, right=Apply(sign="+") as inner):
            yield ONE_BY_ONE, Apply(MINUS, Apply(MINUS, first, inner.left), inner.right)
        case Apply(sign="\u2212", left=Apply(sign="+") as inner, right=last):
            yield NET, Apply(PLUS, inner.left, Apply(MINUS, inner.right, last))
            yield NET, Apply(MINUS, inner.left, Apply(MINUS, last, inner.right))
            yield OTHER_ORDER, Apply(PLUS, Apply(MINUS, inner.left, last), inner.right)
        case Apply(sign="+", left=Apply(sign="\u2212") as inner, right=last):
            yield NET, Apply(MINUS, inner.left, Apply(MINUS, inner.right, last))
            yield NET, Apply(PLUS, inner.left, Apply(MINUS, last, inner.right))
            yield OTHER_ORDER, Apply(MINUS, Apply(PLUS, inner.left, last), inner.right)
        case Apply(sign="\u00f7", left=Apply(sign="\u00f7") as inner, right=last):
            yield OTHER_ORDER, Apply(DIVIDE, inner.left, Apply(TIMES, inner.right, last))
        case Apply(sign="\u00f7", left=first, right=Apply(sign="\u00d7") as inner):
            yield OTHER_ORDER, Apply(DIVIDE, Apply(DIVIDE, first, inner.left), inner.right)
            yield OTHER_ORDER, Apply(DIVIDE, Apply(DIVIDE, first, inner.right), inner.left)
        case Apply(sign="\u00f7", left=Apply(sign="\u00d7") as inner, right=last):
            yield OTHER_ORDER, Apply(TIMES, Apply(DIVIDE, inner.left, last), inner.right)
            yield OTHER_ORDER, Apply(TIMES, inner.left, Apply(DIVIDE, inner.right, last))
        case Apply(sign="\u00d7", left=Apply(sign="\u00f7") as inner, right=last):
            yield OTHER_ORDER, Apply(DIVIDE, Apply(TIMES, inner.left, last), inner.right)
        case Apply(sign="\u00d7", left=first, right=Apply(sign="\u00f7") as inner):
            yield OTHER_ORDER, Apply(DIVIDE, Apply(TIMES, first, inner.left), inner.right)
        case Apply(sign="\u00d7", left=Apply(sign="\u00d7") as inner, right=last):
            yield OTHER_ORDER, Apply(TIMES, inner.left, Apply(TIMES, inner.right, last))
        case Apply(sign="\u00d7", left=first, right=Apply(sign="\u00d7") as inner):
            yield OTHER_ORDER, Apply(TIMES, Apply(TIMES, first, inner.left), inner.right)
        case Apply(sign="+", left=Apply(sign="+") as inner, right=last):
            yield OTHER_ORDER, Apply(PLUS, inner.left, Apply(PLUS, inner.right, last))
        case Apply(sign="+", left=first, right=Apply(sign="+") as inner):
            yield OTHER_ORDER, Apply(PLUS, Apply(PLUS, first, inner.left), inner.right)
