"""Placed shapes: all that can ever be on a page.

Coordinates are in points from the top left corner of whatever holds the shape; x grows to
the right, y downwards. Colours are greys from 0 (black) to 1 (white), or red, green, blue.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from typing import TypeAlias, TypeVar, cast

# An inch is 25.4 mm and 72 points (NIST SP 811 B.8 and ISO 32000-1, both from memory).
PT_PER_MM = 72 / 25.4

Colour: TypeAlias = tuple[float, float, float]
BLACK: Colour = (0.0, 0.0, 0.0)
WHITE: Colour = (1.0, 1.0, 1.0)


def grey(level: float) -> Colour:
    """A grey from 0 (black) to 1 (white)."""
    return (level, level, level)


class Face(Enum):
    """The faces of the document's font family."""

    REGULAR = "regular"
    BOLD = "bold"

    # There is one object of each face, and faces are in the keys of many caches: this is their
    # fastest hash. Nothing may depend on the order of a set of faces.
    __hash__ = object.__hash__


class Heard(Enum):
    """How a part of a drawing reaches a listener; what has none is heard as its letters."""

    # Heard as its letters, too.
    LETTERS = "letters"
    # Words stand for what is drawn: a stacked fraction, a rule to write on.
    WORDS = "words"
    # Maths, heard as a sentence.
    FORMULA = "formula"
    # A picture with an alternative text.
    FIGURE = "figure"
    # Guides and frames, not heard at all.
    SILENT = "silent"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a run of neighbouring shapes is heard as.

    The first shape of a run `begins` it; `new_line` is true where it begins a line of its own.
    """

    heard: Heard
    text: str = ""
    begins: bool = False
    new_line: bool = False


@dataclass(frozen=True, slots=True)
class TextRun:
    """Letters on a baseline that starts at (x_pt, y_pt)."""

    x_pt: float
    y_pt: float
    text: str
    size_pt: float
    face: Face = Face.REGULAR
    colour: Colour = BLACK
    reading: Reading | None = None


@dataclass(frozen=True, slots=True)
class Rule:
    """A straight line. `dash_pt` is the lengths of dash and gap."""

    x1_pt: float
    y1_pt: float
    x2_pt: float
    y2_pt: float
    thickness_pt: float
    colour: Colour = BLACK
    dash_pt: tuple[float, float] | None = None
    reading: Reading | None = None


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle with its top left corner at (x_pt, y_pt)."""

    x_pt: float
    y_pt: float
    width_pt: float
    height_pt: float
    thickness_pt: float = 0.0
    stroke: Colour = BLACK
    fill: Colour | None = None
    dash_pt: tuple[float, float] | None = None
    reading: Reading | None = None


# ('M', x, y) moves, ('L', x, y) draws a line, ('C', x1, y1, x2, y2, x, y) a Bézier curve.
PathStep: TypeAlias = tuple[str | float, ...]


@dataclass(frozen=True, slots=True)
class Path:
    """A line of straight and curved pieces (braces, ticks, arrows)."""

    steps: tuple[PathStep, ...]
    thickness_pt: float
    stroke: Colour = BLACK
    fill: Colour | None = None
    reading: Reading | None = None


Shape: TypeAlias = TextRun | Rule | Rect | Path
_S = TypeVar("_S", bound=Shape)


def moved(shape: _S, right_pt: float, down_pt: float) -> _S:
    """The shape moved to the right and down."""
    # Every shape of every page comes through here, some of them more than once: naming all
    # fields takes a third of the time that dataclasses.replace takes.
    if isinstance(shape, TextRun):
        return cast(
            _S,
            TextRun(
                shape.x_pt + right_pt,
                shape.y_pt + down_pt,
                shape.text,
                shape.size_pt,
                shape.face,
                shape.colour,
                shape.reading,
            ),
        )
    if isinstance(shape, Rule):
        return cast(
            _S,
            Rule(
                shape.x1_pt + right_pt,
                shape.y1_pt + down_pt,
                shape.x2_pt + right_pt,
                shape.y2_pt + down_pt,
                shape.thickness_pt,
                shape.colour,
                shape.dash_pt,
                shape.reading,
            ),
        )
    if isinstance(shape, Path):
        steps = tuple([_moved_step(step, right_pt, down_pt) for step in shape.steps])
        return cast(_S, Path(steps, shape.thickness_pt, shape.stroke, shape.fill, shape.reading))
    return replace(shape, x_pt=shape.x_pt + right_pt, y_pt=shape.y_pt + down_pt)


def _moved_step(step: PathStep, right_pt: float, down_pt: float) -> PathStep:
    numbers = cast("tuple[float, ...]", step[1:])
    if len(numbers) == 2:
        x, y = numbers
        return (step[0], x + right_pt, y + down_pt)
    x1, y1, x2, y2, x3, y3 = numbers
    return (
        step[0],
        x1 + right_pt,
        y1 + down_pt,
        x2 + right_pt,
        y2 + down_pt,
        x3 + right_pt,
        y3 + down_pt,
    )


def heard_as(shapes: Iterable[Shape], heard: Heard, text: str = "") -> tuple[Shape, ...]:
    """The shapes as one run that is heard so, whatever they were heard as before."""
    return tuple(
        replace(shape, reading=Reading(heard, text, begins=index == 0))
        for index, shape in enumerate(shapes)
    )


def on_new_line(shapes: Sequence[Shape]) -> tuple[Shape, ...]:
    """The shapes, the first of them beginning a line of its own."""
    if not shapes:
        return ()
    reading = shapes[0].reading or Reading(Heard.LETTERS, begins=True)
    return (replace(shapes[0], reading=replace(reading, new_line=True)), *shapes[1:])


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes within a box of this size. `baseline_pt` is down from its top, for text."""

    width_pt: float
    height_pt: float
    shapes: tuple[Shape, ...]
    baseline_pt: float = 0.0
    # What a screen reader is told; text drawings are read as their text instead.
    reads_as: str = ""
