"""Other ways through the same formula, by the laws that the national curriculum names.

Distributive law (Year 4 programme of study, number: multiplication and division), and taking
two amounts away together. Each law is tried in both directions.
"""

from __future__ import annotations

from collections.abc import Iterator

from typeset.arithmetic.equations import OF, PLUS
from typeset.arithmetic.formulas.tree import Apply, Formula
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

EACH_PART, TOGETHER = "Each part by itself", "Together first"
AT_ONCE, ONE_BY_ONE = "Take away both at once", "Take away one after the other"
OTHER_ORDER = "In another order"


def rearranged(formula: Formula) -> Iterator[tuple[str, Formula]]:
    """The formula in other ways, each with the name of the strategy."""
    yield from _at_top(formula)
    if isinstance(formula, Apply):
        for strategy, left in rearranged(formula.left):
            yield strategy, Apply(formula.sign, left, formula.right)
        for strategy, right in rearranged(formula.right):
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
        case Apply(sign="+" | "\u2212", left=Apply() as one, right=Apply() as other):
            yield from _collected(formula.sign, one, other)
    yield from _reordered(formula)


def _spread(sign: str, inner: Apply, factor: Formula) -> Formula:
    """(a ± b) × c as a × c ± b × c."""
    return Apply(inner.sign, Apply(sign, inner.left, factor), Apply(sign, inner.right, factor))


def _collected(outer: str, one: Apply, other: Apply) -> Iterator[tuple[str, Formula]]:
    """a × c ± b × c as (a ± b) × c."""
    if one.sign != other.sign or one.sign not in (TIMES, DIVIDE, OF):
        return
    if one.sign != OF and one.right == other.right:
        yield TOGETHER, Apply(one.sign, Apply(outer, one.left, other.left), one.right)
    elif one.sign != DIVIDE and one.left == other.left:
        yield TOGETHER, Apply(one.sign, one.left, Apply(outer, one.right, other.right))


def _reordered(formula: Formula) -> Iterator[tuple[str, Formula]]:
    match formula:
        case Apply(sign="\u2212", left=Apply(sign="\u2212") as inner, right=last):
            yield AT_ONCE, Apply(MINUS, inner.left, Apply(PLUS, inner.right, last))
        case Apply(sign="\u2212", left=first, right=Apply(sign="+") as inner):
            yield ONE_BY_ONE, Apply(MINUS, Apply(MINUS, first, inner.left), inner.right)
        case Apply(sign="\u00f7", left=Apply(sign="\u00f7") as inner, right=last):
            yield OTHER_ORDER, Apply(DIVIDE, inner.left, Apply(TIMES, inner.right, last))
        case Apply(sign="\u00f7", left=Apply(sign="\u00d7") as inner, right=last):
            yield OTHER_ORDER, Apply(TIMES, Apply(DIVIDE, inner.left, last), inner.right)
            yield OTHER_ORDER, Apply(TIMES, inner.left, Apply(DIVIDE, inner.right, last))
        case Apply(sign="\u00d7", left=Apply(sign="\u00d7") as inner, right=last):
            yield OTHER_ORDER, Apply(TIMES, inner.left, Apply(TIMES, inner.right, last))
        case Apply(sign="+", left=Apply(sign="+") as inner, right=last):
            yield OTHER_ORDER, Apply(PLUS, inner.left, Apply(PLUS, inner.right, last))
