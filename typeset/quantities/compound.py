"""One amount in several units: '1 h 20 min', '2 m 35 cm', '1 stone 4 pounds'."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.numerals import numeral
from typeset.quantities.units import Unit, unit_meant, unit_named

_PART = r"\d[\d,]*(?:\.\d+)?\s?[A-Za-z]+"
_COMPOUND = re.compile(rf"{_PART}(?:\s?{_PART})+", re.ASCII)
_NUMBER_AND_WORD = re.compile(r"([\d,.]+)\s?([A-Za-z]+)", re.ASCII)
_EXAMPLES = "write it such as 1 h 20 min or 2 m 35 cm"


def parse_compound(text: str) -> Amount | None:
    """The amount in the smallest of its units; None where the text is not of this form.

    Raises AmountError where the units do not go from larger to smaller, or a part is as
    large as one of the unit before it, since that would not be written as it was typed.
    """
    if not _COMPOUND.fullmatch(text):
        return None
    parts = [(numeral(digits).value, _unit(word, text)) for digits, word in _found(text)]
    for (larger_value, larger), (value, unit) in pairwise(parts):
        _check_neighbours(text, larger, unit)
        if larger_value.denominator != 1:
            raise AmountError(f"'{text}' has a decimal point before its last part", _EXAMPLES)
        if value * unit.per_base >= larger.per_base:
            raise AmountError(
                f"'{text}' has enough {unit.plural} for another {larger.singular}",
                f"keep the {unit.plural} below 1 {larger.singular}, or use one unit alone",
            )
    smallest = parts[-1][1]
    total = sum((value * unit.per_base for value, unit in parts), Fraction(0))
    units = tuple(unit for _value, unit in parts)
    return Amount(total / smallest.per_base, smallest, Form.COMPOUND, parts=units)


def _found(text: str) -> list[tuple[str, str]]:
    return [(found[1], found[2]) for found in _NUMBER_AND_WORD.finditer(text)]


def _unit(word: str, text: str) -> Unit:
    unit = unit_named(word)
    if unit is None:
        meant = unit_meant(word)
        remedy = f"write {meant}" if meant else _EXAMPLES
        raise AmountError(f"'{word}' in '{text}' is not a unit of measure", remedy)
    return unit


def _check_neighbours(text: str, larger: Unit, unit: Unit) -> None:
    if unit.dimension is not larger.dimension or unit.per_base >= larger.per_base:
        raise AmountError(
            f"'{text}' does not go from a larger unit to a smaller one of the same kind", _EXAMPLES
        )
