"""Clock faces, and scales that are read off."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from typeset.arithmetic.figures.marks import Mark
from typeset.quantities.inline import Rich


@dataclass(frozen=True, slots=True)
class ClockFace:
    """A twelve-hour face. `at` counts minutes after twelve, from 0 up to 720, and sets both hands.

    `mark` is the time under the face; `name` stands over it ('start'). `hands_given` is false
    where the hands are what is asked.
    """

    at: Fraction
    mark: Mark | None
    name: str = ""
    hands_given: bool = True


@dataclass(frozen=True, slots=True)
class ClockFaces:
    """One face, or a start and an end with the time that passes `between` them."""

    faces: tuple[ClockFace, ...]
    between: Mark | None = None
    reads_as: str = ""


class ScaleShape(Enum):
    """What a scale is drawn on."""

    LINE = "straight scale"
    RULER = "ruler"
    JUG = "measuring jug"
    DIAL = "weighing dial"


@dataclass(frozen=True, slots=True)
class ScaleLabel:
    """A long mark of a scale. It is on the scale in every state; its text may be empty."""

    at: Fraction
    text: Rich = ()


@dataclass(frozen=True, slots=True)
class MeasuringScale:
    """A scale with a pointer, a level or a thing that is measured at `at`.

    `labels` rise in equal steps, at least two; the first and last are the ends of the scale.
    `divisions` is the number of parts between two of them. `mark` is what is read off;
    `pointer_given` is false where the pointer is what is asked.
    """

    shape: ScaleShape
    labels: tuple[ScaleLabel, ...]
    divisions: int
    at: Fraction
    mark: Mark | None
    unit: str = ""
    pointer_given: bool = True
    reads_as: str = ""
