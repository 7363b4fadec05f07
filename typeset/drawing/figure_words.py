"""Figures told in words, for a listener and for a screen reader.

Each tells no more than its state shows. The figure's own text, where the problem wrote one,
is used for the complete figure only, since it may name answers.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from typeset.arithmetic.figures import (
    AreaRectangle,
    BranchingTree,
    Choice,
    DotArray,
    DoubleNumberLine,
    Jump,
    Mark,
    NumberLine,
    PostsAndGaps,
    RatioTable,
    SequenceBoxes,
    Show,
    TimeLine,
    TwoWayTable,
)
from typeset.drawing.bar_words import seen_words


def number_line_words(figure: NumberLine, show: Show) -> str:
    """The alternative text of a number line."""
    told = [seen_words(tick.mark, show) for tick in figure.ticks]
    at = [f"ticks at {_listed(_some(told))}"] if any(told) else []
    names = [seen_words(tick.mark, show) or "a tick" for tick in figure.ticks]
    return _words(
        "number line", figure.name, [*at, *_jumps(figure.jumps, names, show)], show, figure.reads_as
    )


def double_line_words(figure: DoubleNumberLine, show: Show) -> str:
    """The alternative text of a double number line."""
    pairs = [
        f"{upper or 'nothing'} against {lower or 'nothing'}"
        for tick in figure.ticks
        for upper, lower in [(seen_words(tick.upper, show), seen_words(tick.lower, show))]
        if upper or lower
    ]
    places = [f"pair {index + 1}" for index in range(len(figure.ticks))]
    names = _listed([name for name in (figure.upper_name, figure.lower_name) if name])
    return _words(
        "double number line",
        names,
        [*pairs, *_jumps(figure.jumps, places, show)],
        show,
        figure.reads_as,
    )


def ratio_table_words(table: RatioTable, show: Show) -> str:
    """The alternative text of a ratio table."""
    rows = [
        f"{name}: {', '.join(_some(seen_words(mark, show) for mark in row))}"
        for name, row in zip(table.row_names, table.cells, strict=True)
    ]
    columns = [f"column {index + 1}" for index in range(len(table.cells[0]))]
    names = [name or f"row {index + 1}" for index, name in enumerate(table.row_names)]
    told = [*rows, *_jumps(table.jumps, columns, show), *_jumps(table.across, names, show)]
    return _words("ratio table", _listed(table.row_names), told, show, table.reads_as)


def array_words(array: DotArray, show: Show) -> str:
    """The alternative text of an array."""
    sides = [seen_words(array.down, show), seen_words(array.across, show)]
    told = [f"{name} {text}" for name, text in zip(("down", "across"), sides, strict=True) if text]
    told += _if_seen("altogether", array.total, show)
    return _words("array", "", told, show, array.reads_as)


def area_words(figure: AreaRectangle, show: Show) -> str:
    """The alternative text of a divided rectangle."""
    downs = _some(seen_words(part.mark, show) for part in figure.heights)
    acrosses = _some(seen_words(part.mark, show) for part in figure.widths)
    told = [f"across {_listed(acrosses)}"] if acrosses else []
    told += [f"down {_listed(downs)}"] if downs else []
    cells = _some(seen_words(mark, show) for row in figure.cells for mark in row)
    told += [f"in the fields {', '.join(cells)}"] if cells else []
    told += _if_seen("altogether", figure.total, show)
    return _words("rectangle", "", told, show, figure.reads_as)


def tree_words(tree: BranchingTree, show: Show) -> str:
    """The alternative text of a branching tree."""
    names = _listed([choice.name for choice in tree.choices if choice.name])
    told = [_choice(choice) for choice in tree.choices] + _if_seen("altogether", tree.total, show)
    return _words("branching tree", names, told, show, tree.reads_as)


def two_way_words(table: TwoWayTable, show: Show) -> str:
    """The alternative text of a two-way table."""
    told = [f"rows {_choice(table.down)}", f"columns {_choice(table.across)}"]
    told += _if_seen("altogether", table.total, show)
    names = _listed([table.down.name, table.across.name])
    return _words("two-way table", names, told, show, table.reads_as)


def time_line_words(figure: TimeLine, show: Show) -> str:
    """The alternative text of a time line."""
    told = []
    for row in (figure.upper, figure.lower):
        values = [
            f"{moment.name} {text}"
            for moment, mark in zip(figure.moments, row.marks, strict=True)
            if (text := seen_words(mark, show)) is not None
        ]
        told += [f"{row.name}: {', '.join(values)}"] if values else []
    told += _if_seen("the gap at each moment is", figure.gap, show)
    names = _listed([figure.upper.name, figure.lower.name])
    return _words("time line", names, told, show, figure.reads_as)


def posts_words(figure: PostsAndGaps, show: Show) -> str:
    """The alternative text of posts and gaps."""
    told = _if_seen("each gap", figure.gap, show) + _if_seen("the whole", figure.length, show)
    told += _if_seen("posts:", figure.count, show)
    return _words("row of posts", "", told, show, figure.reads_as)


def sequence_words(figure: SequenceBoxes, show: Show) -> str:
    """The alternative text of a number pattern."""
    terms = [seen_words(mark, show) or "an empty box" for mark in figure.terms]
    steps = _some(seen_words(mark, show) for mark in figure.steps)
    told = [", ".join(terms)] + ([f"steps {', '.join(steps)}"] if steps else [])
    return _words("number pattern in boxes", "", told, show, figure.reads_as)


def _words(kind: str, names: str, told: Sequence[str], show: Show, own: str) -> str:
    if show is Show.FRAME:
        return f"Empty {kind} to fill in" + (f": {names}" if names else "")
    if show is Show.COMPLETE and own:
        return own
    return f"{kind.capitalize()}: " + "; ".join(_some([names, *told]))


def _some(texts: Iterable[str | None]) -> list[str]:
    return [text for text in texts if text]


def _listed(names: Sequence[str]) -> str:
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _if_seen(lead: str, mark: Mark | None, show: Show) -> list[str]:
    text = seen_words(mark, show)
    return [] if text is None else [f"{lead} {text}"]


def _jumps(jumps: Sequence[Jump], names: Sequence[str], show: Show) -> list[str]:
    return [
        f"{text} from {names[jump.start]} to {names[jump.end]}"
        for jump in jumps
        if (text := seen_words(jump.mark, show)) is not None
    ]


def _choice(choice: Choice) -> str:
    options = ", ".join(choice.options)
    return f"{choice.name}: {options}" if choice.name else options
