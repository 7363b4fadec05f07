"""Room to answer in: a line, room to work, ruled lines, squares, a frame, a box, tick boxes.

Heights are in millimetres, not in ems: a pupil's handwriting does not shrink with the print.
Ruled lines 8 mm apart and squares of 10 or 7 mm are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum

from typeset.drawing.inline_maths import LEAST_RULE_PT
from typeset.drawing.pens import GUIDE_COLOUR
from typeset.drawing.shapes import (
    PT_PER_MM,
    Drawing,
    Heard,
    Rect,
    Rule,
    Shape,
    heard_as,
    moved,
)
from typeset.quantities.inline import Rich, plain
from typeset.quantities.spoken import BLANK, spoken
from typeset.setting.answer_lines import AnswerLine, answer_lines, answer_lines_reading
from typeset.setting.frames import FieldKind, Placed, Role, Room
from typeset.setting.paragraphs import TextStyle
from typeset.setting.stretch import Stretch, fixed
from typeset.setting.tick_boxes import lay_out_tick_boxes, tick_boxes_reading

# From one ruled line to the next, and the height of a line of unruled working.
RULED_LINE_MM = 8.0
# From the working above to the rule of an answer line: a written figure with some air,
# and how much more it may get to fill a side.
ANSWER_LINE_MM = 9.0
_ANSWER_LINE_MORE_MM = Stretch(0.0, 1.0, 4.0)
# In large print the printed line itself is 8 mm high: whoever needs it writes larger too.
ANSWER_LINE_EMS = Stretch(1.3, 1.5, 2.0)
_FRAME_PADDING_MM = 3.0
_GAP_TO_ANSWER_MM = 1.5


class SpaceKind(Enum):
    """The kinds of room."""

    LINE = "line"
    WORKING = "working"
    LINES = "lines"
    SQUARES = "squares"
    BAR_MODEL = "bar model"
    TICKS = "ticks"


@dataclass(frozen=True, slots=True)
class Rows:
    """How many lines (8 mm) or rows of squares a space has: at least, naturally, at most."""

    least: int = 2
    natural: int = 3
    greatest: int = 7


@dataclass(frozen=True, slots=True)
class AnswerSpace:
    """What a pupil answers in.

    `answers` are the answer lines under the room (none for tick boxes); `choices` the words
    after tick boxes, `choice_names` what fields on these are called; `started` is drawn inside
    the frame of a bar model (its first bar).
    """

    kind: SpaceKind
    rows: Rows = Rows()
    answers: tuple[AnswerLine, ...] = (AnswerLine(),)
    square_mm: float = 10.0
    ruled_mm: float = RULED_LINE_MM
    line_mm: float = ANSWER_LINE_MM
    choices: tuple[Rich, ...] = ()
    choice_names: tuple[str, ...] = ()
    started: Drawing | None = None


@dataclass(frozen=True, slots=True)
class SpacePiece:
    """An answer space as a piece: `draw(height_pt)` gives its shapes from its top left corner,
    `rooms(height_pt)` where it is written in."""

    width_pt: float
    height: Stretch
    draw: Callable[[float], tuple[Shape, ...]]
    reads_as: str = ""
    source: str = ""
    rooms: Callable[[float], tuple[Room, ...]] = lambda _: ()

    @property
    def baseline_pt(self) -> float | None:
        """None: it stands under a text, never beside one."""
        return None

    def place(self, x_pt: float, y_pt: float, height_pt: float) -> tuple[Placed, ...]:
        """The whole room as one item, empty or drawn."""
        shapes = tuple(moved(shape, x_pt, y_pt) for shape in self.draw(height_pt))
        box = (x_pt, y_pt, self.width_pt, height_pt)
        rooms = self.rooms(height_pt)
        told = (self.source, self.reads_as)
        return (Placed(Role.ANSWER_SPACE, *box, shapes, *told, rooms=rooms),)


def answer_space(
    space: AnswerSpace, style: TextStyle, width_pt: float, source: str = ""
) -> SpacePiece:
    """The space as a piece of this width.

    Raises GlyphError, and FitError where a label, unit or choice is wider than the width.
    """
    if space.kind is SpaceKind.TICKS:
        boxes = lay_out_tick_boxes(space.choices, style, width_pt)
        reading = tick_boxes_reading(space.choices)
        high, ticks = fixed(boxes.height_pt), tuple(_tick_rooms(space, boxes))
        return SpacePiece(
            width_pt, high, lambda _: boxes.shapes, reading, source, rooms=lambda _: ticks
        )
    room = _room(space, width_pt)
    foot = answer_lines(space.answers, style, width_pt)
    gap = _GAP_TO_ANSWER_MM * PT_PER_MM if space.answers and room.height.greatest_pt else 0.0
    height = room.height.plus(gap) + _foot_height(space, style.size_pt, foot.least_pt)

    def draw(height_pt: float) -> tuple[Shape, ...]:
        looseness = height.looseness(height_pt)
        room_height = room.height.at(looseness)
        guides = _heard_room(room.draw(room_height), space)
        return guides + foot.draw(room_height + gap, height_pt)

    def rooms(height_pt: float) -> tuple[Room, ...]:
        room_height = room.height.at(height.looseness(height_pt))
        lines = foot.rooms(room_height + gap, height_pt)
        return (*_room_to_work_in(space, width_pt, room_height), *lines)

    reading = answer_lines_reading(space.answers)
    return SpacePiece(width_pt, height, draw, reading, source, rooms)


def _room_to_work_in(space: AnswerSpace, width_pt: float, height_pt: float) -> tuple[Room, ...]:
    """The room above the answer lines; a model that is begun is drawn, so nobody types there."""
    if space.started is not None or height_pt <= 0:
        return ()
    name = "working" if space.answers else "writing"
    return (Room(FieldKind.TEXT, 0.0, 0.0, width_pt, height_pt, name, several_lines=True),)


def _tick_rooms(space: AnswerSpace, boxes: Drawing) -> Iterator[Room]:
    """The boxes to tick, with what stands after each."""
    ticks = [s for s in boxes.shapes if isinstance(s, Rect) and s.reading is not None]
    for tick, name, choice in zip(ticks, space.choice_names, space.choices, strict=False):
        box = (tick.x_pt, tick.y_pt, tick.width_pt, tick.height_pt)
        yield Room(FieldKind.TICK, *box, name, plain(choice))


def _heard_room(shapes: tuple[Shape, ...], space: AnswerSpace) -> tuple[Shape, ...]:
    """Guides are heard as a blank where no answer line under them is; a figure as itself."""
    if not space.answers and space.started is None:
        return heard_as(shapes, Heard.WORDS, BLANK)
    guides = 1 if space.started is not None else len(shapes)
    figure, told = shapes[guides:], space.started.reads_as if space.started is not None else ""
    silent = heard_as(shapes[:guides], Heard.SILENT)
    return silent + heard_as(figure, Heard.FIGURE, spoken(told))


@dataclass(frozen=True, slots=True)
class _Room:
    height: Stretch
    draw: Callable[[float], tuple[Shape, ...]]


def _room(space: AnswerSpace, width_pt: float) -> _Room:
    match space.kind:
        case SpaceKind.WORKING:
            return _Room(_rows_height(space.rows, space.ruled_mm), lambda _: ())
        case SpaceKind.LINES:
            height = _rows_height(space.rows, space.ruled_mm)
            return _Room(height, lambda h: _ruled(width_pt, h, space.ruled_mm * PT_PER_MM))
        case SpaceKind.SQUARES:
            height = _rows_height(space.rows, space.square_mm)
            return _Room(height, lambda h: _squared(width_pt, h, space.square_mm * PT_PER_MM))
        case SpaceKind.BAR_MODEL:
            height = _frame_height(space)
            return _Room(height, lambda h: _framed(width_pt, h, space.started))
        case _:
            return _Room(fixed(0.0), lambda _: ())


def _rows_height(rows: Rows, row_mm: float) -> Stretch:
    row = row_mm * PT_PER_MM
    return Stretch(rows.least * row, rows.natural * row, rows.greatest * row)


def _frame_height(space: AnswerSpace) -> Stretch:
    """The rows asked for, or what the first bar needs if that is more."""
    rows = _rows_height(space.rows, space.ruled_mm)
    needed = 2 * _FRAME_PADDING_MM * PT_PER_MM + (space.started.height_pt if space.started else 0.0)
    least = max(rows.least_pt, needed)
    return Stretch(least, max(rows.natural_pt, least), max(rows.greatest_pt, least))


def _foot_height(space: AnswerSpace, size_pt: float, needed_pt: float) -> Stretch:
    """That of all answer lines: never less than what is printed on them needs."""
    count, more, printed = len(space.answers), _ANSWER_LINE_MORE_MM, ANSWER_LINE_EMS

    def height(more_mm: float, ems: float) -> float:
        return max(count * (space.line_mm + more_mm) * PT_PER_MM, count * ems * size_pt, needed_pt)

    return Stretch(
        height(more.least_pt, printed.least_pt),
        height(more.natural_pt, printed.natural_pt),
        height(more.greatest_pt, printed.greatest_pt),
    )


def _ruled(width_pt: float, height_pt: float, step_pt: float) -> tuple[Shape, ...]:
    """Whole lines only, counted from the foot: the odd rest is room above the first."""
    count = int(height_pt / step_pt + 1e-6)
    tops = (height_pt - index * step_pt for index in reversed(range(count)))
    return tuple(
        Rule(0.0, y - LEAST_RULE_PT, width_pt, y - LEAST_RULE_PT, LEAST_RULE_PT, GUIDE_COLOUR)
        for y in tops
    )


def _squared(width_pt: float, height_pt: float, side_pt: float) -> tuple[Shape, ...]:
    """Whole squares only, from the left; the odd rest of the height is shared above and below."""
    columns, rows = int(width_pt / side_pt + 1e-6), int(height_pt / side_pt + 1e-6)
    right, top = columns * side_pt, (height_pt - rows * side_pt) / 2
    foot = top + rows * side_pt
    level = [(0.0, top + i * side_pt, right, top + i * side_pt) for i in range(rows + 1)]
    upright = [(i * side_pt, top, i * side_pt, foot) for i in range(columns + 1)]
    return tuple(Rule(*ends, LEAST_RULE_PT, GUIDE_COLOUR) for ends in level + upright)


def _framed(width_pt: float, height_pt: float, started: Drawing | None) -> tuple[Shape, ...]:
    frame = Rect(0.0, 0.0, width_pt, height_pt, LEAST_RULE_PT, GUIDE_COLOUR)
    if started is None:
        return (frame,)
    inset = _FRAME_PADDING_MM * PT_PER_MM
    return (frame, *(moved(shape, inset, inset) for shape in started.shapes))
