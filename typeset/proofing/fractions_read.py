"""Stacked fractions read back: a short level rule with a number right above and right below."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.proofing.page_marks import Glyph, Stroke
from typeset.proofing.places import Box, around

# No bar of a school fraction is longer: six figures and a comma at 48 pt.
_LONGEST_BAR_PT = 200.0
# Where the baselines lie from the bar, in ems of the small figures: the upper number stands
# just over it, the lower one its own height (0.68) and a little white under it.
_OVER_EMS = (0.0, 0.55)
_UNDER_EMS = (0.6, 1.25)
_FIGURE_DEPTH_EMS = 0.04
# A bar reaches little further than the wider of its numbers.
_REACH_EMS = 0.6


@dataclass(frozen=True, slots=True)
class ReadFraction:
    """A fraction as one mark: its text '3/4', and the baseline of the line it belongs to."""

    text: str
    box: Box
    axis: float
    glyphs: tuple[Glyph, ...]
    bar: int


def find_fractions(glyphs: Sequence[Glyph], strokes: Sequence[Stroke]) -> list[ReadFraction]:
    """Every stacked fraction of a page."""
    figures = [glyph for glyph in glyphs if glyph.text.isdigit() or glyph.text == ","]
    bars = [each for each in strokes if each.is_level and each.box.width <= _LONGEST_BAR_PT]
    return [found for bar in bars for found in _fraction(bar, figures)]


def _fraction(bar: Stroke, figures: Sequence[Glyph]) -> Iterator[ReadFraction]:
    y = (bar.box.top + bar.box.bottom) / 2
    near = [each for each in figures if _is_along(each, bar)]
    over = [each for each in near if _is_within(y - each.baseline, each, _OVER_EMS)]
    under = [each for each in near if _is_within(each.baseline - y, each, _UNDER_EMS)]
    if not over or not under:
        return
    widest = max(around(each.box for each in part).width for part in (over, under))
    if bar.box.width > widest + _REACH_EMS * over[0].size_pt:
        return
    together = (*_from_left(over), *_from_left(under))
    text = f"{_text(over)}/{_text(under)}"
    box = around((*(_ink(each) for each in together), bar.box))
    yield ReadFraction(text, box, y, together, bar.order)


def _ink(glyph: Glyph) -> Box:
    """The figure without the room for descenders, which no figure has (a comma hardly)."""
    foot = glyph.baseline + _FIGURE_DEPTH_EMS * glyph.size_pt
    return Box(glyph.box.left, glyph.box.top, glyph.box.right, foot)


def _is_along(glyph: Glyph, bar: Stroke) -> bool:
    middle = (glyph.box.left + glyph.box.right) / 2
    return bar.box.left - 0.5 <= middle <= bar.box.right + 0.5


def _is_within(distance: float, glyph: Glyph, ems: tuple[float, float]) -> bool:
    return ems[0] * glyph.size_pt <= distance <= ems[1] * glyph.size_pt


def _from_left(glyphs: Sequence[Glyph]) -> list[Glyph]:
    return sorted(glyphs, key=lambda glyph: glyph.box.left)


def _text(glyphs: Sequence[Glyph]) -> str:
    return "".join(glyph.text for glyph in _from_left(glyphs))
