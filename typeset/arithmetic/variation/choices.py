"""A number that may be one of several: '12..48 step 6 floats', '£1.50..£4', '12, 18 or 24'."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction

from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.nouns import looks_plural
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import NUMBER, Dimension, Unit
from typeset.quantities.writing import write_plain

# More values than this for one number are no choice that an author has thought of.
MOST_VALUES = 1000
_BEGINS = r"[-\u2212]?£?\s?[\d½¼¾⅓⅔⅛]"
_RANGE = re.compile(
    rf"(?P<low>{_BEGINS}.*?)\s*\.\.+\s*(?P<high>.+?)(?:\s+(?:in\s+)?steps?\s+(?:of\s+)?(?P<step>.+))?",
    re.ASCII | re.IGNORECASE,
)
_SEPARATOR = re.compile(r"\s*,?\s+or\s+|\s*,\s+", re.IGNORECASE)
_OR = re.compile(r"\sor\s", re.IGNORECASE)
_ITEM = re.compile(rf"{_BEGINS}.*", re.ASCII)
# Longer than any list of numbers that an author types; bounds what the patterns look at.
_LONGEST = 300
# Steps of a range of money or times that names none, largest first: as coins and clocks go.
_PENCE_STEPS = (100, 50, 10, 5, 1)
_MINUTE_STEPS = (60, 30, 15, 5, 1)
_TO_WRITE = "write such as 12..48 step 6 floats, £1.50..£4 step 50p, or 12, 18 or 24 floats"


def offers_choice(text: str) -> bool:
    """True for a text that is meant as a range or a list of numbers."""
    tidy = " ".join(text.split())
    if len(tidy) > _LONGEST:
        return False
    if _RANGE.fullmatch(tidy):
        return True
    parts = _SEPARATOR.split(tidy)
    return bool(_OR.search(tidy)) and all(_ITEM.fullmatch(part) for part in parts)


def read_choice(text: str, nouns: Mapping[str, str]) -> tuple[Amount, ...]:
    """The amounts that the text offers, in its order.

    Raises AmountError for a range that goes down or is too long, and for what is no amount.
    """
    tidy = " ".join(text.split())
    match = _RANGE.fullmatch(tidy)
    if match is None:
        amounts = _of_one_unit(_SEPARATOR.split(tidy), nouns)
        for amount in amounts:
            _check_alike(tidy, amounts[0], amount, is_step=False)
        return tuple(dict.fromkeys(amounts))
    parts = [match["low"], match["high"], *([match["step"]] if match["step"] else [])]
    low, high, *steps = _of_one_unit(parts, nouns)
    return _spread(tidy, low, high, steps[0] if steps else None)


def typed(amount: Amount) -> str:
    """The amount as an author would type it; reading it again gives the same amount."""
    return " ".join(write_plain(amount).split())


def _of_one_unit(texts: Sequence[str], nouns: Mapping[str, str]) -> list[Amount]:
    """The amounts; those typed without a unit get that of the last that has one."""
    unit = next((found for text in reversed(texts) if (found := _unit(text, nouns))), NUMBER)
    return [_in_unit(text, unit, nouns) for text in texts]


def _unit(text: str, nouns: Mapping[str, str]) -> Unit | None:
    """The unit of a text that has one. '1 floats' still counts floats, not 'floatses'."""
    amount = parse_amount(text, nouns)
    if not amount.unit.is_noun:
        return amount.unit if amount.unit != NUMBER else None
    phrase = amount.unit.singular if abs(amount.value) == 1 else amount.unit.plural
    count = 2 if looks_plural(phrase, nouns) else 1
    return parse_amount(f"{count} {phrase}", nouns).unit


def _in_unit(text: str, unit: Unit, nouns: Mapping[str, str]) -> Amount:
    amount = parse_amount(text, nouns)
    if amount.unit == NUMBER and unit.dimension is not Dimension.MONEY:
        return Amount(amount.value, unit, amount.form, amount.places)
    if amount.unit.is_noun and unit.is_noun:
        return Amount(amount.value, unit, amount.form, amount.places)
    return amount


def _spread(text: str, low: Amount, high: Amount, step: Amount | None) -> tuple[Amount, ...]:
    for other in (high, *((step,) if step else ())):
        _check_alike(text, low, other, is_step=other is step)
    if high.base <= low.base:
        raise AmountError(f"'{text}' does not go up", "write the smaller number first")
    gap = step.base if step else _usual_step(text, low, high) * low.unit.per_base
    if gap <= 0:
        raise AmountError(f"'{text}' has a step that leads nowhere", "write a step of 1 or more")
    count = (high.base - low.base) // gap + 1
    if count > MOST_VALUES:
        raise AmountError(
            f"'{text}' has {count:,} numbers; at most {MOST_VALUES:,} are tried",
            "give it a larger step, or let it end earlier",
        )
    if count < 2:
        raise AmountError(f"'{text}' has a step that goes beyond its end", "write a smaller step")
    form = _form(low, high, step)
    first = low if form is low.form else low.written_as(form)
    return tuple(_another(first, low.value + at * gap / low.unit.per_base) for at in range(count))


def _check_alike(text: str, low: Amount, other: Amount, is_step: bool) -> None:
    mine, theirs = low.unit.dimension, other.unit.dimension
    on_clock = is_step and (mine, theirs) == (Dimension.CLOCK, Dimension.TIME)
    if mine is not theirs and not on_clock:
        raise AmountError(f"'{text}' mixes amounts that are not of one kind", _TO_WRITE)


def _usual_step(text: str, low: Amount, high: Amount) -> Fraction:
    """The step of a range that names none, in the unit of its lower end."""
    ends = (low.value, high.to(low.unit).value)
    if low.unit.dimension is Dimension.MONEY:
        return Fraction(_dividing(_PENCE_STEPS, [end * 100 for end in ends], text), 100)
    if low.unit.dimension is Dimension.CLOCK:
        return Fraction(_dividing(_MINUTE_STEPS, ends, text))
    if Form.FRACTION in (low.form, high.form):
        raise AmountError(f"'{text}' needs a step", "write one, such as 1/2..3 step 1/4")
    places = max(_places(end, text) for end in ends)
    return Fraction(1, 10**places)


def _dividing(steps: Sequence[int], values: Sequence[Fraction], text: str) -> int:
    found = next((each for each in steps if not any(value % each for value in values)), None)
    if found is None:
        raise AmountError(f"'{text}' needs a step", _TO_WRITE)
    return found


def _places(value: Fraction, text: str) -> int:
    """How many digits the value has after the point."""
    for places in range(7):
        if (value * 10**places).denominator == 1:
            return places
    raise AmountError(f"'{text}' needs a step", _TO_WRITE)


def _form(low: Amount, high: Amount, step: Amount | None) -> Form:
    """Decimals and fractions are written so throughout, also where the lower end is whole."""
    typed_forms = [each.form for each in (low, high, step) if each is not None]
    for form in (Form.COMPOUND, Form.FRACTION, Form.DECIMAL):
        if form in typed_forms:
            return form
    return Form.AUTO


def _another(first: Amount, value: Fraction) -> Amount:
    """Another value written as the first is, several units included."""
    places = first.places if first.unit.dimension is Dimension.CLOCK else 0
    return Amount(value, first.unit, first.form, places, first.parts)
