"""The words that a figure must show, taken from its data: names, values, '?' for what is asked.

Labels may be drawn in any order, so their words are compared as a multiset; the words of each
label stand together in their own order. A value that stands in several equal parts may be
written once, as '19 × 12'.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, product
from math import prod
from typing import TypeAlias

from typeset.arithmetic.figures import (
    Angles,
    AreaRectangle,
    Bar,
    BarModel,
    BranchingTree,
    ClockFaces,
    DotArray,
    DoubleNumberLine,
    Figure,
    GroupedObjects,
    JoinedPoints,
    Mark,
    MeasuringScale,
    NumberLine,
    Outline,
    PostsAndGaps,
    RatioTable,
    SequenceBoxes,
    Show,
    TimeLine,
    TwoWayTable,
)
from typeset.proofing.expected import rich_words
from typeset.quantities.writing import TIMES

ASKED = "?"
# What stands for rows, columns or branches that are left out.
_MORE = ("…",)
_AND_SO_ON = ("and", "so", "on", "to", "for", "each", "of", "the", "other")
# Above this a tree or table may be told in part; below, every label is required.
_MOST_LEAVES = 12
_MOST_OPTIONS = 6
_MOST_COLUMNS = 3


# The words of one label, in their order.
Label: TypeAlias = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FigureWords:
    """What a figure shows: the labels `required` in any order; of each of `choices` one
    alternative, which is some labels; and any number of the words of `allowed`."""

    required: tuple[Label, ...]
    choices: tuple[tuple[tuple[Label, ...], ...], ...] = ()
    allowed: frozenset[str] = frozenset()

    def compare(self, printed: Sequence[str]) -> tuple[list[str], list[int]]:
        """The words that are missing, and the positions of printed ones that are too many."""
        best: tuple[list[str], list[int]] | None = None
        for picked in product(*self.choices):
            labels = [*self.required, *(label for each in picked for label in each)]
            wanted = Counter(word for label in labels for word in label)
            missing, extra = self._against(wanted, printed)
            if not missing:
                missing = _torn(labels, printed)
            if best is None or len(missing) + len(extra) < len(best[0]) + len(best[1]):
                best = missing, extra
        assert best is not None
        return best

    def _against(self, wanted: Counter[str], printed: Sequence[str]) -> tuple[list[str], list[int]]:
        left = Counter(wanted)
        extra = []
        for index, word in enumerate(printed):
            if left[word] > 0:
                left[word] -= 1
            elif word not in self.allowed:
                extra.append(index)
        return list(left.elements()), extra


def _torn(labels: Sequence[Label], printed: Sequence[str]) -> list[str]:
    """The labels whose words are all there, but not together in their order."""
    texts = tuple(printed)
    wanted = Counter(label for label in labels if len(label) > 1)
    return [" ".join(label) for label, count in wanted.items() if _runs_of(label, texts) < count]


def _runs_of(label: Label, texts: tuple[str, ...]) -> int:
    """How often these words stand together in this order."""
    count, at = 0, 0
    while at <= len(texts) - len(label):
        if texts[at : at + len(label)] == label:
            count, at = count + 1, at + len(label)
        else:
            at += 1
    return count


def seen(mark: Mark | None, show: Show) -> tuple[str, ...] | None:
    """The words of a mark in this state of the figure; None where it is not shown."""
    if mark is None or show is Show.FRAME:
        return None
    if mark.is_given or show is Show.COMPLETE:
        return rich_words(mark.text)
    return None if mark.hidden else (ASKED,)


def figure_words(figure: Figure, show: Show) -> FigureWords:
    """Everything that the figure must show in this state."""
    match figure:
        case BarModel():
            return _bar_model(figure, show)
        case BranchingTree():
            return _tree(figure, show)
        case Outline(marks=marks):
            return FigureWords(tuple(_marks((*marks, figure.inside, figure.total), show)))
        case TwoWayTable():
            return _two_way(figure, show)
        case TimeLine():
            return _time_line(figure, show)
        case ClockFaces():
            return _clocks(figure, show)
        case MeasuringScale(labels=labels, unit=unit, mark=mark):
            printed = (rich_words(label.text) for label in labels)
            return FigureWords((*printed, *_texts((unit,)), *_marks((mark,), show)))
        case GroupedObjects():
            return _groups(figure, show)
        case Angles(wedges=wedges):
            return FigureWords(tuple(_marks((wedge.mark for wedge in wedges), show)))
        case JoinedPoints(labels=labels, total=total):
            return FigureWords((*_texts(labels), *_marks((total,), show)))
        case _:
            names, marks = _plain_labels(figure)
            return FigureWords((*_texts(names), *_marks(marks, show)))


def _texts(names: Iterable[str]) -> Iterator[Label]:
    for name in names:
        if label := tuple(name.split()):
            yield label


def _marks(marks: Iterable[Mark | None], show: Show) -> Iterator[Label]:
    for mark in marks:
        if label := seen(mark, show):
            yield label


def _plain_labels(
    figure: NumberLine
    | DoubleNumberLine
    | RatioTable
    | DotArray
    | AreaRectangle
    | PostsAndGaps
    | SequenceBoxes,
) -> tuple[tuple[str, ...], tuple[Mark | None, ...]]:
    """Names and marks of the figures that show each of them once."""
    match figure:
        case NumberLine(ticks=ticks, jumps=jumps, name=name):
            return (name,), (*(t.mark for t in ticks), *(j.mark for j in jumps))
        case DoubleNumberLine(ticks=ticks, jumps=jumps):
            marks = [mark for tick in ticks for mark in (tick.upper, tick.lower)]
            return (figure.upper_name, figure.lower_name), (*marks, *(j.mark for j in jumps))
        case RatioTable(row_names=names, cells=cells):
            arrows = (jump.mark for jump in (*figure.jumps, *figure.across))
            return names, (*(mark for row in cells for mark in row), *arrows)
        case DotArray():
            return (), (figure.down, figure.across, figure.total)
        case AreaRectangle(widths=widths, heights=heights, cells=cells):
            sides = (part.mark for part in (*widths, *heights))
            return (), (*sides, *(mark for row in cells for mark in row), figure.total)
        case PostsAndGaps():
            return (), (figure.gap, figure.length, figure.count)
        case SequenceBoxes(terms=terms, steps=steps):
            return (), (*terms, *steps)


def _bar_model(model: BarModel, show: Show) -> FigureWords:
    names = _texts(bar.name for bar in model.bars)
    marks = [*(brace.mark for brace in model.braces), model.total]
    runs = tuple(run for bar in model.bars for run in _runs(bar, show))
    return FigureWords((*names, *_marks(marks, show)), runs)


def _runs(bar: Bar, show: Show) -> Iterator[tuple[tuple[Label, ...], ...]]:
    """Neighbouring parts of one size and text: each labelled, or all together by one brace."""
    for (_size, words), run in groupby(bar.parts, key=lambda p: (p.size, seen(p.mark, show))):
        count = len(list(run))
        if not words:
            continue
        each, together = (words,) * count, ((str(count), TIMES, *words),)
        yield (each, together) if count > 1 else (each,)


def _tree(tree: BranchingTree, show: Show) -> FigureWords:
    heads = tuple(_texts(choice.name for choice in tree.choices))
    total = tuple(_marks((tree.total,), show))
    if show is Show.FRAME:
        return FigureWords(heads)
    counts = [len(choice.options) for choice in tree.choices]
    if tree.without_repeats:
        counts = [count - level for level, count in enumerate(counts)]
    if show is Show.COMPLETE and prod(counts) <= _MOST_LEAVES and counts[-1] <= _MOST_OPTIONS:
        nodes = [
            tuple(option.split())
            for level, choice in enumerate(tree.choices)
            for option in choice.options
            for _ in range(prod(counts[: level + 1]) // len(choice.options))
        ]
        return FigureWords((*heads, *nodes, *total))
    firsts = tuple(
        _texts(
            choice.options[level if tree.without_repeats else 0]
            for level, choice in enumerate(tree.choices)
        )
    )
    return FigureWords((*heads, *firsts, *total), allowed=_told_in_part(tree))


def _told_in_part(tree: BranchingTree) -> frozenset[str]:
    """The words with which a large tree may tell its rest."""
    options = [word for each in tree.choices for option in each.options for word in option.split()]
    counts = [
        str(len(choice.options) - 1 - (level if tree.without_repeats else 0))
        for level, choice in enumerate(tree.choices)
    ]
    return frozenset({*options, *(f"{word}," for word in options), *counts, *_AND_SO_ON})


def _two_way(table: TwoWayTable, show: Show) -> FigureWords:
    names = (table.down.name, table.across.name)
    every = tuple(_texts((*table.down.options, *table.across.options)))
    cells = tuple(_marks((mark for row in table.cells for mark in row), show))
    total = tuple(_marks((table.total,), show))
    down, across = len(table.down.options), len(table.across.options)
    if down <= _MOST_OPTIONS and across <= _MOST_COLUMNS:
        return FigureWords((*_texts(names), *every, *cells, *total))
    ends = [
        each.options[index]
        for each in (table.down, table.across)
        for index in sorted({0, len(each.options) - 1})
    ]
    allowed = frozenset({*(word for label in (*every, *cells) for word in label), *_MORE})
    return FigureWords((*_texts(names), *_texts(ends), *total), allowed=allowed)


def _time_line(line: TimeLine, show: Show) -> FigureWords:
    names = (line.upper.name, line.lower.name, *(moment.name for moment in line.moments))
    gaps = [line.gap] * len(line.moments)
    marks = (*line.upper.marks, *line.lower.marks, *gaps)
    return FigureWords((*_texts(names), *_marks(marks, show)))


def _clocks(figure: ClockFaces, show: Show) -> FigureWords:
    hours = [(str(hour),) for _ in figure.faces for hour in range(1, 13)]
    names = _texts(face.name for face in figure.faces)
    between = [figure.between] * (len(figure.faces) - 1)
    marks = (*(face.mark for face in figure.faces), *between)
    return FigureWords((*hours, *names, *_marks(marks, show)))


def _groups(figure: GroupedObjects, show: Show) -> FigureWords:
    """What is left over can be told only where the rings are full."""
    is_whole = figure.groups_mark.is_given and figure.each_mark.is_given
    rest = figure.rest if is_whole or show is Show.COMPLETE else None
    marks = (figure.groups_mark, figure.each_mark, rest, figure.total)
    return FigureWords(tuple(_marks(marks, show)))
