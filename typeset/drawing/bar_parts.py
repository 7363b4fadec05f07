"""Where the labels of one bar's parts go: inside, on one brace for equal parts, or outside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from typeset.arithmetic.figures import Bar, Mark, Show
from typeset.drawing.labels import Label, line_label, mark_label, shown_text
from typeset.drawing.placing import Span
from typeset.quantities.inline import Words, plain
from typeset.quantities.writing import TIMES

# White between a value and the ends of its part.
_SIDE_PT = 3.0


@dataclass(frozen=True, slots=True)
class PartLabels:
    """The labels of a bar's parts: inside them, over runs of equal parts, or outside.

    `inside` and `outside` pair an x (the part's middle) with its label.
    """

    inside: tuple[tuple[float, Label], ...]
    runs: tuple[Span, ...]
    outside: tuple[tuple[float, Label], ...]


def part_labels(bar: Bar, ends_pt: Sequence[float], show: Show, size_pt: float) -> PartLabels:
    """Each part's label where it can be read. `ends_pt` are the x of the parts' ends.

    Values that fit stand in their parts. Equal parts whose value fits in none of them share
    one brace that says '19 × 12'. Any other value goes outside, with a leader.
    """
    inside: list[tuple[float, Label]] = []
    outside: list[tuple[float, Label]] = []
    runs: list[Span] = []
    for run in _equal_runs(bar, show):
        mark = bar.parts[run[0]].mark
        label = mark_label(mark, show, size_pt)
        if mark is None or label is None:
            continue
        middles = [(ends_pt[i] + ends_pt[i + 1]) / 2 for i in run]
        if all(ends_pt[i + 1] - ends_pt[i] >= label.width_pt + 2 * _SIDE_PT for i in run):
            inside.extend((x, label) for x in middles)
        elif len(run) == 1:
            outside.append((middles[0], label))
        else:
            shared = _shared_label(len(run), mark, show, size_pt)
            runs.append(Span(ends_pt[run[0]], ends_pt[run[-1] + 1], shared))
    return PartLabels(tuple(inside), tuple(runs), tuple(outside))


def _equal_runs(bar: Bar, show: Show) -> list[list[int]]:
    """Neighbouring parts of one size with one text."""

    def looks(index: int) -> tuple[object, ...]:
        part = bar.parts[index]
        seen = shown_text(part.mark, show)
        return part.size, None if seen is None else (plain(seen[0]), seen[1])

    return [list(run) for _, run in groupby(range(len(bar.parts)), key=looks)]


def _shared_label(count: int, mark: Mark, show: Show, size_pt: float) -> Label:
    seen = shown_text(mark, show)
    assert seen is not None
    text, face = seen
    return line_label((Words(f"{count}\u00a0{TIMES}\u00a0"), *text), size_pt, face)
