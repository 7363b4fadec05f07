"""What each pupil of a class list gets: whose sheet, in which version and layout."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from typeset.arithmetic.lessons import SolvedLesson, SolvedWeek
from typeset.documents.layout import Layout
from typeset.drawing.fonts import TypeFamily
from typeset.reading.class_list import Pupil

# See `kind_of`; it holds as long as the sheets are kept.
Kind: TypeAlias = tuple[int, int, str]


@dataclass(frozen=True, slots=True)
class PupilsSheet:
    """One pupil's sheet of a lesson. `solved` is the week in the pupil's version and numbers."""

    pupil: Pupil
    solved: SolvedWeek
    lesson: SolvedLesson
    layout: Layout


def kind_of(sheet: PupilsSheet) -> Kind:
    """What two sheets have in common that differ by the name alone: the content, which is one
    object for both, and the layout."""
    return id(sheet.solved), id(sheet.lesson), sheet.layout.name


def paper_key(layout: Layout) -> tuple[str, str, int, str, TypeFamily | None]:
    """What sheets must have in common to stand in one file: the paper, how it lies and is cut,
    the edge that it is turned over, and the typeface."""
    paper = (layout.upright.name, layout.orientation, layout.copies)
    return *paper, layout.backs, layout.fonts


def lying(layout: Layout) -> Layout:
    """The same with its paper in landscape, one copy: room for a wide table."""
    return layout.model_copy(update={"copies": 1, "orientation": "landscape"})
