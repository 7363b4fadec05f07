"""Small turns of phrase with the author's own names, for sentences of workings."""

from __future__ import annotations

from fractions import Fraction

from typeset.arithmetic.sense import nonsense
from typeset.arithmetic.words_of_names import NOT_ALONE, PREPOSITIONS, VERBS
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import decimal, say

_UNADORNED = (
    *("the ", "each ", "every ", "all ", "both ", "one ", "two ", "a ", "an "),
    *("how ", "what ", "their ", "his ", "her ", "its "),
)
# Grams, millilitres and metres to the thousandth are as fine as these years measure.
_FINEST = 1000


def title(name: str) -> str:
    """The name with a capital letter, as the head of a line ('US dollars' keeps its own)."""
    return name[:1].upper() + name[1:]


def the(name: str) -> str:
    """'the cost', but 'Asha' and 'each share'."""
    if name[:1].isupper() or name.startswith(_UNADORNED):
        return name
    return f"the {name}"


def is_thing(name: str) -> bool:
    """True for a name that may stand after 'find' or with an article: 'cost', 'kites left'.

    False for 'from each', 'all' and 'left', and for the name of a person alone.
    """
    first, *rest = name.split()
    if first.lower() in PREPOSITIONS or first.lower() in VERBS:
        return False
    if rest:
        return rest[-1].lower() not in PREPOSITIONS - {"over", "in", "on", "off", "out"}
    return first.lower() not in NOT_ALONE and not first[:1].isupper()


def head_of(opening: str, name: str) -> str:
    """How a line begins that makes `name`: 'First find the cost', but 'From each'."""
    return f"{opening} {the(name)}" if opening and is_thing(name) else title(name)


def found(name: str) -> str:
    """What is found, inside a sentence: 'the cost', but 'the result' for 'from each'."""
    return the(name) if is_thing(name) else "the result"


def as_much(factor: Fraction | int, unit: Unit) -> Rich:
    """'3 times as many' of what is counted, '3 times as much' of what is measured."""
    word = "many" if unit.is_noun else "much"
    if factor == 2:
        return say(f"twice as {word}")
    return say(f"{{factor}} times as {word}", factor=Amount(Fraction(factor)))


def bare(amount: Amount) -> Amount:
    """The number of an amount without its unit; decimal where its unit is written so."""
    if amount.unit.dimension in (Dimension.NUMBER, Dimension.COUNT):
        return Amount(amount.value, form=amount.form)
    form = Form.FRACTION if amount.form is Form.FRACTION else Form.DECIMAL
    return Amount(amount.value, form=form)


def is_sensible(amount: Amount, may_be_cut: bool) -> bool:
    """True for an amount that may stand in a working: no cut thing, no part of a penny,
    no measure that is finer than a thousandth (unless it is written as a fraction)."""
    if amount.value <= 0 or nonsense(amount, may_be_cut):
        return False
    if amount.unit.dimension in (Dimension.NUMBER, Dimension.COUNT):
        return True
    if amount.form is Form.FRACTION:
        return amount.value.denominator <= 16
    return decimal(amount.value) is not None and (amount.value * _FINEST).denominator == 1
