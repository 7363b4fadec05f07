"""Sums of money, marked as key stage 2 markers do.

The rule (from memory of the mark schemes): for £3.20, '3.20' and '3.20p' are slips of style
and accepted, since they can mean nothing else; '320', '3.2' and '0.40p' are not.
"""

from __future__ import annotations

from fractions import Fraction

from typeset.arithmetic.diagnosis.verdicts import Mark, Verdict
from typeset.arithmetic.diagnosis.written import WrittenNumber
from typeset.quantities.amount import Amount

_RIGHT = Mark(Verdict.RIGHT)
_STYLE = Mark(Verdict.RIGHT, "a slip of style in writing the money, which markers accept")
_TWO_DIGITS = Mark(Verdict.NOT_AS_MONEY, "pounds need two digits of pence after the point")
_BELOW_A_PENNY = Mark(Verdict.NOT_AS_MONEY, "that would be less than a penny")
_POUND_WORDS = {"pound", "pounds", "quid"}
_PENCE_WORDS = {"p", "pence", "penny", "pennies"}


def mark_pounds(written: WrittenNumber, answer: Amount) -> Mark | None:
    """The mark of a number against a sum of money; None where it is another sum."""
    word = written.unit.split()[0].lower().strip(".,") if written.unit else ""
    if written.pound:
        return _mark_with_pound_sign(written, answer, word)
    if word in _POUND_WORDS:
        return _in_pounds(written, answer, _RIGHT)
    if word in _PENCE_WORDS:
        return _in_pence(written, answer)
    same = _in_pounds(written, answer, _STYLE)
    if word:
        return Mark(Verdict.UNIT_WRONG) if same is not None else None
    if same is None:
        in_pence = Fraction(written.value, 100) == answer.value
        note = "the number of pence, without a p"
        return Mark(Verdict.UNIT_MISSING, note) if in_pence else None
    if written.places is None:
        return Mark(Verdict.UNIT_MISSING, "the number of pounds, without a £ sign")
    return same


def money_value(written: WrittenNumber) -> Fraction:
    """The number of pounds that was most likely meant."""
    word = written.unit.split()[0].lower() if written.unit else ""
    is_pence = word in _PENCE_WORDS and not written.pound and written.places is None
    return written.value / 100 if is_pence else written.value


def _mark_with_pound_sign(written: WrittenNumber, answer: Amount, word: str) -> Mark | None:
    known = not word or word in _POUND_WORDS | _PENCE_WORDS
    return _in_pounds(written, answer, _STYLE if word and known else _RIGHT)


def _in_pounds(written: WrittenNumber, answer: Amount, mark: Mark) -> Mark | None:
    if written.value != answer.value:
        return None
    return mark if written.places in (None, 2) else _TWO_DIGITS


def _in_pence(written: WrittenNumber, answer: Amount) -> Mark | None:
    if written.value == answer.value * 100:
        return _RIGHT
    if written.value != answer.value:
        return None
    if written.places is None:
        return Mark(Verdict.UNIT_WRONG, "pence where pounds are meant")
    if written.value < 1:
        return _BELOW_A_PENNY
    return _STYLE if written.places == 2 else _TWO_DIGITS
