"""The times of an elapsed-time problem, and how a clock is walked from one to the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from typeset.arithmetic.equations import equation, minus, plus
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import CLOCK, UNITS

HOUR, DAY = 60, 24 * 60
MINUTES = UNITS["min"]
_PARTS = (UNITS["h"], MINUTES)
_PARTS_OF_DAYS = (UNITS["day"], *_PARTS)


@dataclass(frozen=True, slots=True)
class Leg:
    """A stretch that does not pass midnight, in minutes after it (24:00 is the day's own end).

    `lead` says what the stretch is for; `back` is true where it is walked backwards.
    """

    before: Fraction
    after: Fraction
    lead: str = ""

    @property
    def minutes(self) -> Fraction:
        """How long it is."""
        return abs(self.after - self.before)

    @property
    def back(self) -> bool:
        """True where it is walked from later to earlier."""
        return self.after < self.before


def lasting(minutes: Fraction | int) -> Amount:
    """A length of time as it is said: 35 min, 2 h, 2 h 35 min, 1 day 3 h."""
    parts = _PARTS_OF_DAYS if minutes >= DAY else _PARTS
    return Amount(Fraction(minutes), MINUTES, Form.COMPOUND, parts=parts)


def clock(minutes: Fraction | int, digits: int) -> Amount:
    """A time of day; `digits` is how many the hour has at least."""
    return Amount(Fraction(minutes), CLOCK, places=digits)


def onwards(start: Fraction, pieces: Iterable[tuple[Fraction, str]]) -> list[Leg]:
    """The legs of pieces walked on from `start`, each broken where it passes midnight."""
    legs: list[Leg] = []
    at = start
    for piece, lead in pieces:
        left, told = piece, lead
        while left:
            at = Fraction(0) if at == DAY else at
            stretch = min(left, DAY - at)
            legs.append(Leg(at, at + stretch, told))
            at, left, told = at + stretch, left - stretch, ""
    return legs


def backwards(end: Fraction, pieces: Iterable[tuple[Fraction, str]]) -> list[Leg]:
    """The legs of pieces walked back from `end`, each broken where it passes midnight."""
    legs: list[Leg] = []
    at = end
    for piece, lead in pieces:
        left, told = piece, lead
        while left:
            at = Fraction(DAY) if at == 0 else at
            stretch = min(left, at)
            legs.append(Leg(at, at - stretch, told))
            at, left, told = at - stretch, left - stretch, ""
    return legs


def told_legs(legs: Sequence[Leg], digits: int, measured: bool = False) -> Iterator[Step]:
    """A sentence and its sum for each leg. `measured` where both ends are known and the leg
    is what is looked for."""
    for leg in legs:
        before, after, by = clock(leg.before, digits), clock(leg.after, digits), lasting(
            leg.minutes
        )  # fmt: skip
        worked = equation(minus(before, by) if leg.back else plus(before, by), after)
        if measured:
            worked = equation(minus(after, before), by)
        yield step(_sentence(leg, measured), worked, before=before, after=after, by=by)


def _sentence(leg: Leg, measured: bool) -> str:
    way = "back to" if leg.back else "on to"
    head = f"{leg.lead}: " if leg.lead else ""
    if not leg.lead:
        head = "Midnight is 24:00 of the day before. " if leg.back else "The new day begins. "
    midnight = ", midnight" if leg.after in (0, DAY) else ""
    middle = f"{{by}} {way} {{after}}{midnight}"
    if measured:
        middle = f"from {{before}} to {{after}}{midnight and ', midnight,'} is {{by}}"
    if not leg.lead:
        middle = middle[:1].upper() + middle[1:] if measured else f"Another {middle}"
    return f"{head}{middle}."


def pieces_by_full_hours(first: Fraction, minutes: Fraction) -> list[tuple[Fraction, str]]:
    """To the full hour (`first` minutes away), then full hours, then what is left."""
    rest = minutes - first
    hours, last = rest - rest % HOUR, rest % HOUR
    told = [(first, "To the full hour"), (hours, "Then the full hours"), (last, "Then the minutes")]
    return [(piece, lead) for piece, lead in told if piece]


def pieces_hours_first(first: Fraction, minutes: Fraction) -> list[tuple[Fraction, str]]:
    """The hours, then the minutes; these in two where a full hour lies `first` minutes away."""
    hours, last = minutes - minutes % HOUR, minutes % HOUR
    lead = "Then the minutes" if hours else "The minutes"
    told = [(hours, "First the hours")]
    if 0 < first < last:
        told += [(first, f"{lead}, to the full hour first"), (last - first, "Then the rest")]
    else:
        told += [(last, lead)]
    return [(piece, said) for piece, said in told if piece]
