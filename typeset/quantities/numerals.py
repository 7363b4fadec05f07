"""Numbers as digits: '1,250', '2.50', '3/4', read exactly and remembered as they were typed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from typeset.errors import AmountError
from typeset.quantities.amount import Form

_DECIMAL = re.compile(r"(?P<whole>\d[\d,]*)(?:\.(?P<places>\d+))?", re.ASCII)
_GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+", re.ASCII)
# Longer numbers than any pupil of these years meets; guards against nonsense and slow sums.
_MOST_DIGITS = 15
_MOST_CHARACTERS = 120


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number with how it was typed; see `Amount` for `form` and `places`."""

    value: Fraction
    form: Form = Form.AUTO
    places: int = 0


def check_length(text: str) -> None:
    """Raises AmountError for a text or number longer than any amount."""
    digits = sum(character.isdigit() for character in text)
    if len(text) > _MOST_CHARACTERS or digits > 3 * _MOST_DIGITS:
        raise AmountError(f"'{text[:20]}…' is too long for an amount", "write it shorter")


def numeral(text: str) -> Numeral:
    """The number typed so: '12', '1,250', '2.50'. Raises AmountError for anything else."""
    match = _DECIMAL.fullmatch(text)
    if match is None:
        raise AmountError(f"'{text}' is not a number", "write it such as 12, 1,250 or 2.5")
    places = match["places"] or ""
    whole = digits_value(match["whole"], "." + places if places else "")
    if not places:
        return Numeral(Fraction(whole))
    return Numeral(Fraction(f"{whole}.{places}"), Form.DECIMAL, len(places))


def fraction_numeral(count: int, over: int, under: int) -> Numeral:
    """`count over/under`, a fraction or mixed number. Raises AmountError for division by 0."""
    if under == 0:
        raise AmountError(
            f"'{over}/{under}' divides by 0", "a fraction's lower number is at least 1"
        )
    return Numeral(count + Fraction(over, under), Form.FRACTION, under)


def digits_value(digits: str, rest: str = "") -> int:
    """The whole number of these digits, grouped by commas or not; `rest` is what follows them.

    Raises AmountError for commas out of place, a needless 0 in front, or too many digits.
    """
    if sum(character.isdigit() for character in digits + rest) > _MOST_DIGITS:
        raise AmountError(
            f"'{digits}{rest}' has too many digits", f"at most {_MOST_DIGITS} digits are read"
        )
    value = int(digits.replace(",", ""))
    if "," in digits and not _GROUPED.fullmatch(digits):
        raise AmountError(
            f"'{digits}{rest}' has a comma that does not group thousands",
            f"write {value}{rest}" + (f" or {value:,}{rest}" if value > 999 else ""),
        )
    if digits.startswith("0") and len(digits) > 1:
        raise AmountError(f"'{digits}{rest}' begins with a needless 0", f"write {value}{rest}")
    return value
