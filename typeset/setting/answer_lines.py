"""Answer lines: 'Answer', a rule to write on (or a box), and the unit printed after it.

The rules of a page start in one vertical line at its right, so that an adult can mark down
the sheet; in a narrow column the rule starts after its label.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from typeset.drawing.fonts import measures
from typeset.drawing.inline_maths import LEAST_RULE_PT, lay_out_rich_line
from typeset.drawing.shapes import (
    PT_PER_MM,
    Drawing,
    Heard,
    Rect,
    Rule,
    Shape,
    heard_as,
    moved,
    on_new_line,
)
from typeset.errors import FitError
from typeset.quantities.inline import BLANK_TEXT, BOX_TEXT, Rich, plain, words
from typeset.quantities.spoken import BLANK
from typeset.setting.frames import FieldKind, Room
from typeset.setting.paragraphs import TextStyle

# Where the rules start, counted from the right edge: a rule for a sum of money or a number of
# nine figures in a pupil's hand, and a unit of up to about twelve letters.
_START_FROM_RIGHT_EMS = 17.0
# Room for a written answer, in mm since it is written by hand: never less.
LEAST_RULE_LENGTH_MM = 18.0
# What a rule gets in a wide column even if a long unit pushes its start to the left.
_EASY_RULE_LENGTH_MM = 30.0
_TO_RULE_EMS = 0.12
_WIDE_EMS = 24.0
_GAP_EMS = 0.5
# The rule runs just under the baseline of its label; the letters hang a little below it.
_RULE_DEPTH_EMS = 0.12
_BOX_WIDTH_MM = 14.0
_BOX_HEIGHT_MM = 8.5
# A line of type with its descenders, for what is typed on a rule.
_FIELD_EMS = 1.5


_ANSWER = words("Answer")


@dataclass(frozen=True, slots=True)
class AnswerLine:
    """One answer: `before` stands close before the rule ('£'), `after` is the unit.

    `boxed` makes the rule a box for one number. `long` starts it right after its label, for
    words rather than a number. `name` is what a field on it is called.
    """

    label: Rich = _ANSWER
    before: Rich = ()
    after: Rich = ()
    boxed: bool = False
    long: bool = False
    name: str = "answer"


@dataclass(frozen=True, slots=True)
class SetAnswerLines:
    """Answer lines ready to be drawn between two heights; `blanks` are the rules and boxes."""

    lines: tuple[Drawing, ...]
    answers: tuple[AnswerLine, ...] = ()
    blanks: tuple[Shape, ...] = ()
    size_pt: float = 0.0

    @property
    def least_pt(self) -> float:
        """What the lines need one under the other, all as high as the highest."""
        return len(self.lines) * max((line.height_pt for line in self.lines), default=0.0)

    def draw(self, top_pt: float, foot_pt: float) -> tuple[Shape, ...]:
        """The lines on the feet of equal shares of the height from top to foot."""
        shapes: list[Shape] = []
        share = (foot_pt - top_pt) / len(self.lines) if self.lines else 0.0
        for index, line in enumerate(self.lines):
            down = top_pt + share * (index + 1) - line.height_pt
            shapes.extend(moved(shape, 0.0, down) for shape in line.shapes)
        return tuple(shapes)

    def rooms(self, top_pt: float, foot_pt: float) -> Iterator[Room]:
        """Where each line is written on: inside its box, or on its rule with a line's height."""
        share = (foot_pt - top_pt) / len(self.lines) if self.lines else 0.0
        parts = zip(self.lines, self.answers, self.blanks, strict=True)
        for index, (line, answer, blank) in enumerate(parts):
            top = top_pt + share * index
            told = (answer.name, plain(answer.label), plain(answer.before) or plain(answer.after))
            match moved(blank, 0.0, top + share - line.height_pt):
                case Rule(x1_pt=left, y1_pt=foot, x2_pt=right):
                    high = min(foot - top, _FIELD_EMS * self.size_pt)
                    box = (left, foot - high, right - left, high)
                case Rect(x_pt=left, y_pt=y, width_pt=width, height_pt=high):
                    box = (left, y, width, high)
                case _:
                    raise AssertionError("a blank is a rule or a box")
            yield Room(FieldKind.TEXT, *box, *told)


def answer_lines(
    answers: Sequence[AnswerLine], style: TextStyle, width_pt: float
) -> SetAnswerLines:
    """The answer lines of a space, their rules starting in one line where there is room.

    Raises GlyphError, FitError where a line is too wide.
    """
    parts = [_parts(answer, style) for answer in answers]
    starts = [_rule_start(part, style, width_pt) for part in parts]
    common, narrow = max(starts, default=0.0), _is_narrow(style, width_pt)
    lines: list[Drawing] = []
    blanks: list[Shape] = []
    for part, own in zip(parts, starts, strict=True):
        rule = part.least_pt if narrow else part.easy_pt
        start = common if common + rule + part.tail_pt <= width_pt else own
        line, blank = _lay_out(part, start, style, width_pt)
        lines.append(line)
        blanks.append(blank)
    return SetAnswerLines(tuple(lines), tuple(answers), tuple(blanks), style.size_pt)


def answer_lines_reading(answers: Sequence[AnswerLine]) -> str:
    """What the lines read as: 'Answer ____ gulls'."""
    return " ".join(_reading(answer) for answer in answers)


def _reading(answer: AnswerLine) -> str:
    room = BOX_TEXT if answer.boxed else BLANK_TEXT
    parts = (plain(answer.label), plain(answer.before) + room, plain(answer.after))
    return " ".join(part for part in parts if part)


@dataclass(frozen=True, slots=True)
class _Parts:
    """The words of an answer line, laid out, and the room between them."""

    answer: AnswerLine
    label: Drawing
    before: Drawing
    after: Drawing
    # What stands left and right of the rule, gaps included.
    lead_pt: float
    tail_pt: float
    least_pt: float
    easy_pt: float

    @property
    def baseline_pt(self) -> float:
        return max(part.baseline_pt for part in (self.label, self.before, self.after))

    @property
    def below_pt(self) -> float:
        parts = (self.label, self.before, self.after)
        return max(part.height_pt - part.baseline_pt for part in parts)


def _parts(answer: AnswerLine, style: TextStyle) -> _Parts:
    label, before, after = (
        lay_out_rich_line(part, style.size_pt, style.face, style.colour)
        for part in (answer.label, answer.before, answer.after)
    )
    gap, close = _GAP_EMS * style.size_pt, _TO_RULE_EMS * style.size_pt
    lead = label.width_pt + (gap if label.width_pt else 0.0)
    lead += before.width_pt + close if before.width_pt else 0.0
    tail = after.width_pt + (gap if after.width_pt else 0.0)
    least, easy = LEAST_RULE_LENGTH_MM * PT_PER_MM, _EASY_RULE_LENGTH_MM * PT_PER_MM
    if answer.boxed:
        least = easy = _BOX_WIDTH_MM * PT_PER_MM
    return _Parts(answer, label, before, after, lead, tail, least, easy)


def _is_narrow(style: TextStyle, width_pt: float) -> bool:
    return width_pt < _WIDE_EMS * style.size_pt


def _rule_start(parts: _Parts, style: TextStyle, width_pt: float) -> float:
    """Where this rule would start: at the place common to the page, further left for a long
    unit; in a narrow column after its label."""
    if parts.answer.long or _is_narrow(style, width_pt):
        return parts.lead_pt
    common = width_pt - _START_FROM_RIGHT_EMS * style.size_pt
    return max(parts.lead_pt, min(common, width_pt - parts.tail_pt - parts.easy_pt))


def _lay_out(
    parts: _Parts, start_pt: float, style: TextStyle, width_pt: float
) -> tuple[Drawing, Shape]:
    """The line, and of it the rule or box alone."""
    answer, baseline = parts.answer, parts.baseline_pt
    if answer.boxed:
        baseline = max(baseline, _box_above_pt(style))
    end = start_pt + parts.least_pt if answer.boxed else width_pt - parts.tail_pt
    if end - start_pt < parts.least_pt - 0.01 or end + parts.tail_pt > width_pt + 0.01:
        raise FitError(_too_narrow(parts, width_pt))
    close, gap = _TO_RULE_EMS * style.size_pt, _GAP_EMS * style.size_pt
    left = [
        (parts.label, start_pt - parts.lead_pt),
        (parts.before, start_pt - close - parts.before.width_pt),
    ]
    room = _room_shape(answer, (start_pt, end), baseline, style)
    blank = heard_as((room,), Heard.WORDS, BLANK)
    shapes = [*_set(left, baseline), *blank, *_set([(parts.after, end + gap)], baseline)]
    return Drawing(width_pt, baseline + parts.below_pt, on_new_line(shapes), baseline), room


def _room_shape(
    answer: AnswerLine, ends: tuple[float, float], baseline_pt: float, style: TextStyle
) -> Shape:
    start, end = ends
    if not answer.boxed:
        y = baseline_pt + _RULE_DEPTH_EMS * style.size_pt
        return Rule(start, y, end, y, LEAST_RULE_PT, style.colour)
    height = _BOX_HEIGHT_MM * PT_PER_MM
    top = baseline_pt + LEAST_RULE_PT / 2 - _box_above_pt(style)
    return Rect(start, top, end - start, height, LEAST_RULE_PT, style.colour)


def _box_above_pt(style: TextStyle) -> float:
    """How far a box rises above the baseline: its foot is level with hanging letters."""
    return _BOX_HEIGHT_MM * PT_PER_MM + LEAST_RULE_PT - measures().descent * style.size_pt


def _set(parts: Sequence[tuple[Drawing, float]], baseline_pt: float) -> list[Shape]:
    return [
        moved(shape, x, baseline_pt - drawing.baseline_pt)
        for drawing, x in parts
        for shape in drawing.shapes
    ]


def _too_narrow(parts: _Parts, width_pt: float) -> str:
    needed = parts.lead_pt + parts.least_pt + parts.tail_pt
    return (
        f"the answer line '{_reading(parts.answer)}' needs {needed / PT_PER_MM:.0f} mm, but its "
        f"column is {width_pt / PT_PER_MM:.0f} mm wide; shorten the unit, or set the question "
        "over the whole width"
    )
