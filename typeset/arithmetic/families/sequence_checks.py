"""What must hold of a number sequence before it is solved."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from collections.abc import Sequence as Row
from fractions import Fraction

from typeset.arithmetic.families.sequence_view import (
    FURTHEST,
    GROWING,
    IN_IT,
    MULTIPLY,
    ORDINALS,
    POSITION,
    SAME,
    TERM,
    VALUE,
    Sequence,
)
from typeset.arithmetic.methods import check_alike
from typeset.arithmetic.names import one_of
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension
from typeset.quantities.writing import write_plain

_FEWEST = {SAME: 3, GROWING: 4, MULTIPLY: 3}
_MOST = 6
# How far each rule is followed: by growing steps in pairs, by multiplying in twelve factors.
_FURTHEST_ASKED = {SAME: FURTHEST, GROWING: 100, MULTIPLY: 13}
# Steps of growing rules and factors are counted one by one to a value.
_FURTHEST_VALUE = {SAME: FURTHEST, GROWING: 15, MULTIPLY: 13}


def check_terms(terms: Row[Amount], rule: str) -> None:
    """Raises AmountError where the terms are too few, too many or of different kinds."""
    if not _FEWEST[rule] <= len(terms) <= _MOST:
        raise AmountError(
            f"'terms' has {len(terms)}", f"tell {_FEWEST[rule]} to {_MOST} terms for this rule"
        )
    check_alike(*terms)
    if terms[0].unit.dimension is Dimension.CLOCK:
        raise AmountError("a time of day is no term", "give lengths of time, such as 15 min")


def check_asked(finds: Row[str], givens: Mapping[str, Amount], rule: str) -> None:
    """Raises AmountError where what is asked does not go with what is given."""
    told = [name for name in ORDINALS if name in givens]
    for asked in finds:
        one_of(asked, (TERM, POSITION, IN_IT, *ORDINALS))
        if asked in told:
            raise AmountError(f"'{asked}' is both given and asked for", "ask for a later term")
    by_value = [asked for asked in finds if asked in (POSITION, IN_IT)]
    if by_value and len(finds) > 1:
        raise AmountError(f"'{by_value[0]}' is asked for with others", "ask for it alone")
    if bool(by_value) != (VALUE in givens):
        problem = f"'{finds[0]}' needs a value" if by_value else f"'{finds[0]}' needs no 'value'"
        remedy = "give such as value: 50 floats" if by_value else "leave out 'value'"
        raise AmountError(problem, remedy)
    if (TERM in finds) != (POSITION in givens):
        problem = "'term' needs a position" if TERM in finds else "'position' is not asked about"
        remedy = "give such as position: 10" if TERM in finds else "write find: term"
        raise AmountError(problem, remedy)
    if TERM in finds:
        _check_position(givens[POSITION], len(told), rule)


def _check_position(position: Amount, known: int, rule: str) -> None:
    if position.value <= known:
        raise AmountError(f"term {position.value} is told already", "choose a later position")
    if position.value > _FURTHEST_ASKED[rule]:
        raise AmountError(
            f"position {write_plain(position)} is too far for this rule",
            f"choose one up to {_FURTHEST_ASKED[rule]}",
        )


def check_rule(view: Sequence) -> None:
    """Raises AmountError where the terms do not follow the rule, with the one that fits."""
    values = [term.value for term in view.terms]
    fitting = _fitting(values)
    if view.rule not in fitting:
        shown = ", ".join(write_plain(view.bare(value)) for value in values)
        remedy = f"write rule: {fitting[0]}" if fitting else "change a term"
        raise AmountError(f"{shown} do not follow the rule '{view.rule}'", remedy)
    if VALUE in view.problem.givens:
        _check_value(view)


def _fitting(values: Row[Fraction]) -> list[str]:
    """The rules that the terms follow; steps that grow have to rise from the beginning."""
    gaps = [after - before for before, after in itertools.pairwise(values)]
    grown = {after - before for before, after in itertools.pairwise(gaps)}
    fitting = []
    if len(set(gaps)) == 1 and gaps[0]:
        fitting.append(SAME)
    if len(values) >= _FEWEST[GROWING] and len(grown) == 1 and min(grown) > 0 < gaps[0]:
        fitting.append(GROWING)
    if min(values) > 0:
        ratios = {after / before for before, after in itertools.pairwise(values)}
        ratio = ratios.pop()
        if not ratios and ratio != 1 and 1 in (ratio.denominator, ratio.numerator):
            fitting.append(MULTIPLY)
    return fitting


def _check_value(view: Sequence) -> None:
    value = view.value.value
    if value in [term.value for term in view.terms] or not view.passes(value, view.last):
        raise AmountError(
            f"the value, {write_plain(view.value)}, is told already or comes before the last term",
            "choose one further on",
        )
    position, reached = view.reach(value)
    too_far = position > _FURTHEST_VALUE[view.rule]
    if too_far or not (reached == value or view.passes(reached, value)):
        raise AmountError(
            f"the value, {write_plain(view.value)}, lies too far on",
            f"choose one up to term {_FURTHEST_VALUE[view.rule]}",
        )
