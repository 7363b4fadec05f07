"""A number of the story read with two digits turned round: 84 for 48, and then reckoned rightly."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.diagnosis.slips import Slip
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.units import Dimension
from typeset.quantities.writing import write_plain


def miscopied(solution: Solution) -> Iterator[tuple[Slip, Mapping[str, AnswerValue]]]:
    """Every given misread in this way, and the answers that it would lead to."""
    problem = solution.problem
    family = FAMILIES.get(problem.family)
    if family is None:
        return
    for name, amount in problem.givens.items():
        if name in problem.fields.facts or amount.unit.dimension is Dimension.CLOCK:
            continue
        for value in _turned_round(amount.value):
            misread = amount.like(value)
            try:
                answers = family.relation(problem.with_given(name, misread))
            except (AmountError, ZeroDivisionError):
                continue
            yield Slip("number miscopied", _told(amount, misread)), answers


def _told(amount: Amount, misread: Amount) -> str:
    return f"took {write_plain(amount)} for {write_plain(misread)} and reckoned rightly with that"


def _turned_round(value: Fraction) -> Iterator[Fraction]:
    """The whole number with each two neighbouring digits exchanged; none begins with a nought."""
    if value.denominator != 1 or value < 10:
        return
    digits = str(value.numerator)
    for place in range(len(digits) - 1):
        one, other = digits[place], digits[place + 1]
        turned = digits[:place] + other + one + digits[place + 2 :]
        if one != other and turned[0] != "0":
            yield Fraction(turned)
