"""Amounts as British schools write them.

'£2.50', '£4', '40p', '1,250 g', '45°', times of the 24-hour clock such as '12:30', and
fractions that will be stacked. Money: pound sign with figures, no zero pence, pence
alone below a pound, comma over 999 (Bristol and GOV.UK style). Space between number
and unit, none before ° and % (NIST SP 811 s. 7.2 for the degree; % as schools do).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache
from string import Formatter

from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Inline, Piece, Rich, Solid, Stacked, Words, plain
from typeset.quantities.units import Dimension, Unit, unit_named

NO_BREAK = "\u00a0"
MINUS = "\u2212"
TIMES = "\u00d7"
DIVIDE = "\u00f7"

# The larger and the smaller unit where an amount is to be written in two and nobody says which.
_USUAL_PAIRS = (
    ("week", "day"),
    ("day", "h"),
    ("h", "min"),
    ("min", "s"),
    ("km", "m"),
    ("m", "cm"),
    ("kg", "g"),
    ("litre", "ml"),
)

# Dimensions whose parts are written as decimals where the decimal ends.
_DECIMAL_DIMENSIONS = {
    Dimension.LENGTH,
    Dimension.MASS,
    Dimension.CAPACITY,
    Dimension.AREA,
    Dimension.VOLUME,
    Dimension.TEMPERATURE,
    Dimension.PERCENT,
    Dimension.ANGLE,
}
_NO_SPACE_BEFORE = {"°", "%"}


def write(amount: Amount) -> Solid:
    """The amount as an unbreakable run."""
    return Solid(_pieces(amount))


def write_plain(amount: Amount) -> str:
    """The amount as plain text: '1,250 g', '2 3/4'."""
    return plain((write(amount),))


def exact(amount: Amount) -> str:
    """The value as an exact string for other programs: '7/2', '2.5', '60', '12:30'."""
    if amount.unit.dimension is Dimension.CLOCK:
        return _clock(amount.value, amount.places)
    value = amount.value
    if value.denominator == 1:
        return str(value.numerator)
    if amount.form is not Form.FRACTION and (digits := decimal(value)) is not None:
        return digits.replace(",", "").replace(MINUS, "-")
    return f"{value.numerator}/{value.denominator}"


def whole(value: int) -> str:
    """A whole number with thousands commas and a true minus sign."""
    return f"{value:,}" if value >= 0 else f"{MINUS}{-value:,}"


def decimal(value: Fraction, places: int = 0) -> str | None:
    """The exact decimal with at least `places` digits after the point; None if it never ends."""
    digits = digits_after_point(value.denominator)
    if digits is None:
        return None
    digits = max(digits, places)
    scaled = abs(value.numerator) * 10**digits // value.denominator
    sign = MINUS if value.numerator < 0 else ""
    if digits == 0:
        return f"{sign}{scaled:,}"
    return f"{sign}{scaled // 10**digits:,}.{scaled % 10**digits:0{digits}d}"


@lru_cache(maxsize=512)
def digits_after_point(under: int) -> int | None:
    """How many digits a decimal with this lower number has after its point; None if it never
    ends."""
    digits = 0
    for prime in (2, 5):
        count = 0
        while under % prime == 0:
            under //= prime
            count += 1
        digits = max(digits, count)
    return digits if under == 1 else None


def unit_text(unit: Unit, value: Fraction) -> str:
    """The unit's word or symbol for this many: one and fractions up to one are singular."""
    return unit.singular if 0 < abs(value.numerator) <= value.denominator else unit.plural


def say(template: str, **values: Amount | Rich | str) -> Rich:
    """A sentence with amounts and texts put in for its `{names}`.

    Raises KeyError for a name that is not given: a mistake of ours, not of the author.
    """
    items: list[Inline] = []
    for literal, name in _split(template):
        if literal:
            _add_words(items, literal)
        if name is None:
            continue
        value = values[name]
        if isinstance(value, Amount):
            items.append(write(value))
        elif isinstance(value, str):
            _add_words(items, value)
        else:
            for item in value:
                _add(items, item)
    return tuple(items)


def _add(items: list[Inline], item: Inline) -> None:
    """The item at the end; words beside words of the same weight become one run."""
    last = items[-1] if items else None
    if isinstance(item, Words) and isinstance(last, Words) and item.bold == last.bold:
        items[-1] = Words(last.text + item.text, item.bold)
    else:
        items.append(item)


def _add_words(items: list[Inline], text: str) -> None:
    last = items[-1] if items else None
    if isinstance(last, Words) and not last.bold:
        items[-1] = Words(last.text + text)
    else:
        items.append(Words(text))


@lru_cache(maxsize=2048)
def _split(template: str) -> tuple[tuple[str, str | None], ...]:
    """The text before each name, with the name; None after the last."""
    return tuple((literal, name) for literal, name, _, _ in Formatter().parse(template))


def _pieces(amount: Amount) -> tuple[Piece, ...]:
    dimension = amount.unit.dimension
    if dimension is Dimension.CLOCK:
        return (_clock(amount.value, amount.places),)
    if dimension is Dimension.MONEY:
        return tuple(_money(amount))
    if amount.form is Form.COMPOUND and amount.value > 0:
        return (_compound(amount),)
    return _number_and_unit(amount)


def _clock(minutes: Fraction, hour_digits: int = 0) -> str:
    """'12:30'; with seconds, '12:30:15', only where there are any."""
    hour, rest = divmod(minutes, 60)
    minute, part = divmod(rest, 1)
    text = f"{hour:0{hour_digits}d}:{minute:02d}"
    if not part:
        return text
    return f"{text}:{decimal(part * 60) if part * 60 >= 10 else f'0{decimal(part * 60)}'}"


def _money(amount: Amount) -> Iterator[Piece]:
    """Pounds; pence below a pound and for parts of a penny ('112.5p')."""
    value = amount.value
    if value.denominator == 1 and value and amount.form is not Form.PENCE:
        yield f"{MINUS if value < 0 else ''}£{abs(value.numerator):,}"
        return
    value = abs(value)
    sign = MINUS if amount.value < 0 else ""
    pence = decimal(value * 100)
    has_whole_pence = (value * 100).denominator == 1
    if pence is None:
        yield f"{sign}£"
        yield from mixed_number(value)
    elif 0 < value < 1 or amount.form is Form.PENCE or not has_whole_pence:
        yield f"{sign}{pence}p"
    elif value.denominator == 1:
        yield f"{sign}£{whole(value.numerator)}"
    else:
        yield f"{sign}£{decimal(value, 2)}"


def _compound(amount: Amount) -> str:
    """The amount in several units, largest first; what the smallest leaves stays a decimal."""
    units = amount.parts or _usual_parts(amount)
    texts: list[str] = []
    rest = amount.base
    for unit in units:
        count = rest / unit.per_base
        if unit is not units[-1]:
            count = Fraction(count.numerator // count.denominator)
        if count:
            number = decimal(count) or f"{count.numerator}/{count.denominator}"
            texts.append(f"{number}{NO_BREAK}{unit_text(unit, count)}")
            rest -= count * unit.per_base
    return NO_BREAK.join(texts)


def _usual_parts(amount: Amount) -> tuple[Unit, ...]:
    """The unit with the next larger one; with the next smaller one for '2 1/2 h'."""
    name = amount.unit.singular
    symbol = {"hour": "h", "minute": "min", "second": "s"}.get(name, name)
    below = [pair for pair in _USUAL_PAIRS if pair[0] == symbol]
    above = [pair for pair in _USUAL_PAIRS if pair[1] == symbol]
    pairs = above + below if amount.is_whole else below + above
    if not pairs:
        return (amount.unit,)
    return tuple(found for each in pairs[0] if (found := unit_named(each)) is not None)


def _number_and_unit(amount: Amount) -> tuple[Piece, ...]:
    text = unit_text(amount.unit, amount.value)
    if not text:
        return _number(amount)
    gap = "" if text in _NO_SPACE_BEFORE else NO_BREAK
    return (*_number(amount), f"{gap}{text.replace(' ', NO_BREAK)}")


def _number(amount: Amount) -> tuple[Piece, ...]:
    value = amount.value
    if amount.form is Form.FRACTION:
        return tuple(mixed_number(value, amount.places))
    if value.denominator == 1 and not amount.places:
        return (whole(value.numerator),)
    digits = decimal(value, amount.places) if _wants_decimal(amount) else None
    return (digits,) if digits is not None else tuple(mixed_number(value))


def _wants_decimal(amount: Amount) -> bool:
    return amount.form is not Form.AUTO or amount.unit.dimension in _DECIMAL_DIMENSIONS


def mixed_number(value: Fraction, lower: int = 0) -> Iterator[Piece]:
    """A fraction or mixed number: '2' and 3 over 4.

    Its lower number is `lower` where the value is so many of those parts ('2/4'), else the
    least one.
    """
    sign = MINUS if value < 0 else ""
    count, rest = divmod(abs(value), 1)
    if count or sign or not rest:
        yield f"{sign}{count:,}" if count or not rest else sign
    if rest:
        under = lower if lower and (rest * lower).denominator == 1 else rest.denominator
        yield Stacked(whole((rest * under).numerator), whole(under))
