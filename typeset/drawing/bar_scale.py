"""One scale for all bars of a figure; broken where true lengths could not be seen.

Where the smallest part would be a sliver (2,400 m against 5 m), long stretches between
the ends of parts are shortened, for all bars at the same places, and marked as broken:
bars that are equal stay equal, and what ends together still ends together.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import log

from typeset.arithmetic.figures import BarModel
from typeset.errors import FitError

# A part narrower than this reads as a thick line, not as a part.
_LEAST_TRUE_PT = 3.0
# What the smallest part gets on a broken scale.
_LEAST_BROKEN_PT = 7.0


@dataclass(frozen=True, slots=True)
class BarScale:
    """Where each position along the bars lies. `breaks` are the middles of shortened stretches."""

    places: tuple[tuple[Fraction, float], ...]
    breaks: tuple[float, ...] = ()

    def x_pt(self, position: Fraction) -> float:
        """The x of the end of a part."""
        return dict(self.places)[position]


def ends_of(sizes: list[Fraction]) -> list[Fraction]:
    """The positions at which a bar of such parts starts, divides and ends."""
    return list(accumulate(sizes, initial=Fraction(0)))


def bar_scale(model: BarModel, left_pt: float, right_pt: float) -> BarScale:
    """The scale at which the longest bar fills left to right.

    Raises FitError where there are more parts than even a broken scale can show.
    """
    bars = [ends_of([part.size for part in bar.parts]) for bar in model.bars]
    positions = sorted({end for bar in bars for end in bar})
    longest, room = positions[-1], right_pt - left_pt
    needed = _least_needed(model, bars)
    if float(needed / longest) * room >= _LEAST_TRUE_PT:
        return BarScale(tuple((p, left_pt + float(p / longest) * room) for p in positions))
    return _broken_scale(positions, needed, left_pt, room)


def _least_needed(model: BarModel, bars: list[list[Fraction]]) -> Fraction:
    """The smallest length that has to be seen: a part, or a difference that has a brace."""
    sizes = [part.size for bar in model.bars for part in bar.parts]
    gaps = [
        abs(bars[brace.bar][-1] - bars[brace.gap_to][-1])
        for brace in model.braces
        if brace.gap_to is not None
    ]
    return min(length for length in sizes + gaps if length > 0)


def _broken_scale(
    positions: list[Fraction], needed: Fraction, left_pt: float, room_pt: float
) -> BarScale:
    """Stretches up to a limit keep one scale; longer ones grow with their logarithm only."""
    lengths = [
        float((after - before) / needed) * _LEAST_BROKEN_PT for before, after in pairwise(positions)
    ]
    low, high = 0.0, room_pt
    for _ in range(60):
        limit = (low + high) / 2
        low, high = (limit, high) if _total(lengths, limit) < room_pt else (low, limit)
    if low < _LEAST_BROKEN_PT and max(lengths) > low:
        raise FitError(
            f"{len(positions) - 1} lengths so unequal need more than the {room_pt:.0f} pt of "
            "this bar model; fewer parts or a wider column would help"
        )
    places, breaks, x = [(positions[0], left_pt)], [], left_pt
    for end, length in zip(positions[1:], lengths, strict=True):
        drawn = _drawn(length, low)
        if length > low:
            breaks.append(x + drawn / 2)
        x += drawn
        places.append((end, x))
    return BarScale(tuple(places), tuple(breaks))


def _drawn(length_pt: float, limit_pt: float) -> float:
    """Rising in the length, and true up to the limit."""
    if length_pt <= limit_pt or limit_pt <= 0:
        return min(length_pt, limit_pt)
    return limit_pt * (1 + log(length_pt / limit_pt) / 8)


def _total(lengths: list[float], limit_pt: float) -> float:
    return sum(_drawn(length, limit_pt) for length in lengths)
