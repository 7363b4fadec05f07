"""Figures told in words, for a listener and for a screen reader.

Each tells no more than its state shows. The figure's own sentence, where the problem wrote one,
comes first for the complete figure only, since it may name answers; the values follow.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from typeset.arithmetic.figures import (
    Angles,
    AreaRectangle,
    BranchingTree,
    Choice,
    ClockFace,
    ClockFaces,
    DotArray,
    DoubleNumberLine,
    GroupedObjects,
    JoinedPoints,
    Jump,
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
from typeset.drawing.bar_words import seen_words
from typeset.quantities.inline import plain


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


def outline_words(figure: Outline, show: Show) -> str:
    """The alternative text of a shape with square corners: its sides, clockwise."""
    sides = [seen_words(mark, show) or "no length" for mark in figure.marks]
    told = [f"sides clockwise from the top left: {', '.join(sides)}"]
    told += _if_seen("inside", figure.inside, show) + _if_seen("altogether", figure.total, show)
    return _words(f"shape of {len(figure.marks)} sides", "", told, show, figure.reads_as)


def tree_words(tree: BranchingTree, show: Show) -> str:
    """The alternative text of a branching tree."""
    names = _listed([choice.name for choice in tree.choices if choice.name])
    told = [_choice(choice) for choice in tree.choices]
    told += ["each taken once only"] if tree.without_repeats else []
    told += _if_seen("altogether", tree.total, show)
    return _words("branching tree", names, told, show, tree.reads_as)


def two_way_words(table: TwoWayTable, show: Show) -> str:
    """The alternative text of a two-way table."""
    told = [f"rows {_choice(table.down)}", f"columns {_choice(table.across)}"]
    cells = _some(seen_words(mark, show) for row in table.cells for mark in row)
    told += [f"in the cells {cells[0]} to {cells[-1]}"] if len(cells) > 1 else []
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


def clock_words(figure: ClockFaces, show: Show) -> str:
    """The alternative text of clock faces: where the hands point, as far as they are drawn."""
    names = _listed([face.name for face in figure.faces if face.name])
    told = [_face(face, show) for face in figure.faces]
    told += _if_seen("between them", figure.between, show)
    kind = "clock face" if len(figure.faces) == 1 else "pair of clock faces"
    if len(figure.faces) > 2:
        kind = f"row of {len(figure.faces)} clock faces"
    return _words(kind, names if show is Show.FRAME else "", told, show, figure.reads_as)


def _face(face: ClockFace, show: Show) -> str:
    told = [face.name] if face.name else []
    if show is Show.COMPLETE or face.hands_given:
        told.append(_hands(face))
    told += _some([seen_words(face.mark, show)])
    return ", ".join(told)


def _hands(face: ClockFace) -> str:
    hour, minutes = divmod(face.at, 60)
    before, after = int(hour) or 12, int(hour) % 12 + 1
    if minutes == 0:
        return f"the hour hand at {before}, the minute hand at 12"
    long = f"the minute hand at {_minutes(minutes)}"
    return f"the hour hand between {before} and {after}, {long}"


def _minutes(minutes: Fraction) -> str:
    """Where the minute hand points: at a figure, or at a minute mark."""
    if minutes % 5 == 0:
        return str(int(minutes / 5))
    if minutes.denominator == 1:
        return f"{minutes} minutes"
    return f"{int(minutes)} and a part of the next minute"


def scale_words(scale: MeasuringScale, show: Show) -> str:
    """The alternative text of a measuring scale."""
    labels = [plain(label.text) for label in scale.labels if label.text]
    unit = f" {scale.unit}" if scale.unit else ""
    told = [f"marked {_listed(labels)}{unit}"] if labels else []
    parts = scale.divisions
    told += [f"{parts} divisions between two long marks"] if parts > 1 else []
    if show is Show.FRAME:
        return f"Empty {scale.shape.value}: " + "; ".join(told)
    if show is Show.COMPLETE or scale.pointer_given:
        told.append(_pointer(scale))
    told += _if_seen("reading", scale.mark, show)
    return _words(scale.shape.value, "", told, show, scale.reads_as)


def _pointer(scale: MeasuringScale) -> str:
    """Where the pointer stands, in marks from the start: no reading is given away by its value."""
    start, after = scale.labels[0].at, scale.labels[1].at
    marks = (scale.at - start) / ((after - start) / scale.divisions)
    whole = int(marks)
    near = "at" if marks == whole else "after"
    thing = {"ruler": "the thing ends", "measuring jug": "the level is"}.get(
        scale.shape.value, "the pointer is"
    )
    return f"{thing} {near} division {whole}"


def groups_words(figure: GroupedObjects, show: Show) -> str:
    """The alternative text of grouped objects."""
    groups, each = (seen_words(mark, show) for mark in (figure.groups_mark, figure.each_mark))
    is_whole = show is Show.COMPLETE
    if is_whole or (figure.groups_mark.is_given and figure.each_mark.is_given):
        told = [f"{groups or '?'}, in each ring {each or '?'}"]
        told += _if_seen("outside the rings", figure.rest, show)
    elif figure.groups_mark.is_given:
        told = [f"{groups}, the rings still empty and all counters beside them"]
        told += _if_seen("in each ring", figure.each_mark, show)
    else:
        told = [f"one ring of {each or '?'}, the other counters beside it"]
        told += _if_seen("rings:", figure.groups_mark, show)
    told += _if_seen("altogether", figure.total, show)
    return _words("picture of counters in rings", "", told, show, figure.reads_as)


def angles_words(figure: Angles, show: Show) -> str:
    """The alternative text of angles."""
    told = [seen_words(wedge.mark, show) or "an angle" for wedge in figure.wedges]
    kind = f"diagram of angles {figure.setting.value}"
    return _words(kind, "", [", ".join(told)], show, figure.reads_as)


def joined_words(figure: JoinedPoints, show: Show) -> str:
    """The alternative text of joined points."""
    joined = "each joined to each other" if show is Show.COMPLETE else "the first joined to all"
    told = [f"{_listed(figure.labels)}, {joined}", *_if_seen("lines:", figure.total, show)]
    kind = "diagram of points on a circle"
    names = _listed(figure.labels) if show is Show.FRAME else ""
    return _words(kind, names, told, show, figure.reads_as)


def _words(kind: str, names: str, told: Sequence[str], show: Show, own: str) -> str:
    if show is Show.FRAME:
        return f"Empty {kind} to fill in" + (f": {names}" if names else "")
    sentence = f"{own} " if show is Show.COMPLETE and own else ""
    return f"{sentence}{kind.capitalize()}: " + "; ".join(_some([names, *told]))


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
        f"{text}{' below' if jump.below else ''} from {names[jump.start]} to {names[jump.end]}"
        for jump in jumps
        if (text := seen_words(jump.mark, show)) is not None
    ]


def _choice(choice: Choice) -> str:
    options = ", ".join(choice.options)
    return f"{choice.name}: {options}" if choice.name else options
