"""Line breaks by an optimum over the whole paragraph.

The method is that of Knuth and Plass (Breaking paragraphs into lines, Software: Practice
and Experience 11, 1981): every way to break is a path through the possible breaks, and the
path of least total cost is found by dynamic programming. Their lines are justified, so
their cost is how far the spaces must stretch. Ours are ragged on the right, never stretched
and never hyphenated, so the cost of a line is how far it falls short, and how it ends:

    cost of a line = LINE_COST + (shortfall in ems)² + the penalties of its ending

The square makes several lines that are a little short better than one that is very short.
The last line may be short, but not a stub: one short word, or little more.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from typeset.drawing.shapes import PT_PER_MM
from typeset.errors import FitError
from typeset.setting.boxes import Box
from typeset.setting.stretch import TOLERANCE_PT

# A further line must make the others better by more than a space or two: a taller text
# takes room from the answers under it.
LINE_COST = 4.0
# 'a' and 'I' belong to the next word, a number to the noun that it counts, a sign to both its
# sides: worth more than any raggedness of a line of a hundred ems, so only a measure too
# narrow for anything else lets one stand.
STRANDED_COST = 10_000.0
# A last line of one short word looks like a slip: worth lines eight ems shorter.
WIDOW_COST = 64.0
# A last line shorter than this looks like a slip, too, the more so the shorter it is.
STUB_EMS = 6.0
STUB_COST = 3.0
# A sentence that begins with a short word at the end of a line: worth four ems.
STARTER_COST = 16.0
# What counts as short: a word of up to four letters.
_SHORT_LETTERS = 4
_STARTER_LETTERS = 3
_STRANDED_WORDS = {"a", "A", "I"}
_SIGNS = {"=", "<", ">", "+", "\u2212", "-", "\u2013", "\u00d7", "\u00f7", ":", "£"}
_OPENING = "(\u2018\u201c'\"["
_QUOTES_AND_BRACKETS = ")\u2019\u201d'\"]"
_CLOSING = ".,;:?!" + _QUOTES_AND_BRACKETS
_SENTENCE_ENDS = (".", "?", "!")


def break_lines(
    boxes: Sequence[Box], measure_pt: float, size_pt: float
) -> tuple[tuple[Box, ...], ...]:
    """The boxes as lines of least total cost, none wider than the measure.

    Of ways that cost the same the one with the longer first lines wins.
    Raises FitError for a box wider than the measure, naming it.
    """
    _check_widths(boxes, measure_pt, size_pt)
    count, limit = len(boxes), measure_pt + TOLERANCE_PT
    best = [0.0] + [inf] * count
    origin = [0] * (count + 1)
    endings = [0.0, *(_ending_cost(boxes, end) for end in range(1, count))]
    for start, first in enumerate(boxes):
        # Of equal costs the one with the longer last line stays: it was found first.
        reached, letters, spaces = best[start], first.width_pt, 0.0
        for end in range(start + 1, count):
            shortfall = (measure_pt - (letters + spaces)) / size_pt
            cost = reached + (LINE_COST + shortfall * shortfall + endings[end])
            if cost < best[end]:
                best[end], origin[end] = cost, start
            following = boxes[end]
            letters += following.width_pt
            spaces += following.space_pt
            if letters + spaces > limit:
                break
        else:
            last = _last_cost(boxes[start:], start, letters + spaces, size_pt)
            cost = reached + last
            if cost < best[count]:
                best[count], origin[count] = cost, start
    return _path(boxes, origin)


def first_fit(boxes: Sequence[Box], measure_pt: float) -> tuple[tuple[Box, ...], ...]:
    """The boxes as lines, each filled before the next: what the optimum is measured against."""
    lines: list[list[Box]] = []
    for box in boxes:
        if lines and line_width_pt([*lines[-1], box]) <= measure_pt + TOLERANCE_PT:
            lines[-1].append(box)
        else:
            lines.append([box])
    return tuple(tuple(line) for line in lines)


def total_cost(lines: Sequence[Sequence[Box]], measure_pt: float, size_pt: float) -> float:
    """The cost of a paragraph broken in this way."""
    boxes = [box for line in lines for box in line]
    cost, start = 0.0, 0
    for line in lines:
        end = start + len(line)
        cost += line_cost(boxes, (start, end), measure_pt, size_pt)
        start = end
    return cost


def line_cost(
    boxes: Sequence[Box], span: tuple[int, int], measure_pt: float, size_pt: float
) -> float:
    """The cost of the line that holds boxes `span[0]` to before `span[1]`."""
    start, end = span
    line = boxes[start:end]
    width = line_width_pt(line)
    if end == len(boxes):
        return _last_cost(line, start, width, size_pt)
    shortfall = (measure_pt - width) / size_pt
    return LINE_COST + shortfall * shortfall + _ending_cost(boxes, end)


def line_width_pt(line: Sequence[Box]) -> float:
    """The width of boxes on one line, without the space before the first."""
    return sum(box.width_pt for box in line) + sum(box.space_pt for box in line[1:])


def _path(boxes: Sequence[Box], origin: Sequence[int]) -> tuple[tuple[Box, ...], ...]:
    lines: list[tuple[Box, ...]] = []
    end = len(boxes)
    while end:
        lines.append(tuple(boxes[origin[end] : end]))
        end = origin[end]
    return tuple(reversed(lines))


def _ending_cost(boxes: Sequence[Box], end: int) -> float:
    """The penalties of a break before box `end`."""
    last = boxes[end - 1].text.lstrip(_OPENING)
    following = boxes[end].text
    if last in _STRANDED_WORDS or last in _SIGNS or following in _SIGNS:
        return STRANDED_COST
    if last.replace(",", "").replace(".", "").isdigit() and last[-1].isdigit():
        return STRANDED_COST
    begins = end >= 2 and boxes[end - 2].text.rstrip(_QUOTES_AND_BRACKETS).endswith(_SENTENCE_ENDS)
    return STARTER_COST if begins and len(last) <= _STARTER_LETTERS else 0.0


def _last_cost(line: Sequence[Box], start: int, width_pt: float, size_pt: float) -> float:
    """The cost of the last line: only what makes it hardly a line, after others."""
    if start == 0:
        return LINE_COST
    lacking = max(0.0, STUB_EMS - width_pt / size_pt)
    return LINE_COST + (STUB_COST * lacking * lacking + (WIDOW_COST if _is_short(line) else 0.0))


def _is_short(line: Sequence[Box]) -> bool:
    """True for a line of one short word: too little to be a line."""
    return len(line) == 1 and len(line[0].text.strip(_OPENING + _CLOSING)) <= _SHORT_LETTERS


def _check_widths(boxes: Sequence[Box], measure_pt: float, size_pt: float) -> None:
    for box in boxes:
        if box.width_pt > measure_pt + TOLERANCE_PT:
            raise FitError(
                f"'{box.text}' is {box.width_pt / PT_PER_MM:.0f} mm wide at {size_pt:g} pt "
                f"and may not be broken, but the column is {measure_pt / PT_PER_MM:.0f} mm "
                "wide; shorten it, or choose a layout with a wider column or smaller type"
            )
